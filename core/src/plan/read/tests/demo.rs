//! The demo plan, and what is filled in where a plan says nothing.

use chrono::{NaiveDate, Weekday};

use super::{PLAN, good, spoilt};
use crate::mass::{Mass, MassUnit};
use crate::plan::{
    Because, Block, Hold, Interval, Lifted, LoadRule, Piece, PieceKind, Protocol, Step, StepRule,
    Strength, Technique,
};

const DEMO: &str = include_str!("../../../../../desk/demo/plan.toml");

fn strength(piece: &Piece) -> &Strength {
    let PieceKind::Strength(strength) = &piece.kind else { panic!("{piece:?}") };
    strength
}

fn interval(piece: &Piece) -> &Interval {
    let PieceKind::Interval(interval) = &piece.kind else { panic!("{piece:?}") };
    interval
}

fn hold(piece: &Piece) -> &Hold {
    let PieceKind::Hold(hold) = &piece.kind else { panic!("{piece:?}") };
    hold
}

#[test]
fn the_demo_reads_with_its_numbers() {
    let block = good(DEMO);
    assert_eq!(block.name, "Cellar block one");
    assert_eq!(Some(block.starts), NaiveDate::from_ymd_opt(2026, 11, 2));
    assert_eq!(block.weeks, 3);

    let kit = &block.kit;
    assert_eq!(kit.name, "Boathouse cellar");
    assert_eq!((kit.bars.len(), kit.plates.len(), kit.bells.len()), (2, 11, 3));
    assert_eq!((kit.bars[0].mass, kit.bars[0].count), (Mass::kg(20), 2));
    assert_eq!((kit.bars[1].mass, kit.bars[1].unit), (Mass::lb(45), MassUnit::Lb));
    assert_eq!(kit.bars[1].collars, Mass::ZERO);
    assert_eq!(kit.plates[5].mass, Mass::thousandths(1250, MassUnit::Kg));
    assert_eq!((kit.plates[10].unit, kit.plates[10].count), (MassUnit::Lb, 4));

    let keys: Vec<&str> = block.movements.iter().map(|movement| movement.key.as_str()).collect();
    assert_eq!(keys, ["back-squat", "bent-row", "bell-swing", "press-up", "split-squat"]);
    let squat = block.movement("back-squat").unwrap();
    assert_eq!(squat.option("box-squat").unwrap().lifted, Lifted::Bar);
    assert_eq!(squat.option("step-up").unwrap().lifted, Lifted::Bell);
    assert_eq!(squat.options[1].because, Because::SoreLegs);
    assert_eq!(block.stretch("calf-wall").unwrap().region, "calves");

    assert_eq!(block.days.len(), 2);
    let day = block.day("Squat evening").unwrap();
    assert_eq!((day.on.as_slice(), day.weeks.len()), (&[Weekday::Tue][..], 0));
    let squats = strength(day.piece("Squat").unwrap());
    assert_eq!(squats.scheme.key(), "8,6,5,5 open");
    assert_eq!(squats.rest_ms, 120_000);
    let step = |mass, unit| Step { mass, unit };
    let kg = |thousandths| step(Mass::thousandths(thousandths, MassUnit::Kg), MassUnit::Kg);
    let lb = |pounds| step(Mass::lb(pounds), MassUnit::Lb);
    let rule = StepRule {
        step: vec![kg(2500), lb(5)],
        earned_step: vec![kg(5000), lb(10)],
        earned_by: 4,
        top: 20,
        back_off_percent: 5,
    };
    assert_eq!(squats.load, LoadRule::Step(rule));
    let corners = interval(day.piece("Four corners").unwrap());
    assert_eq!((corners.window_ms, corners.rounds, corners.margin_ms), (60_000, 3, 10_000));
    assert_eq!(corners.stations[0].load, Some(Mass::kg(16)));
    assert_eq!((corners.stations[2].reps, corners.stations[2].load), (12, None));
    let hips = hold(day.piece("Hip flexors").unwrap());
    assert_eq!((hips.hold_ms, hips.sides), (120_000, 2));
    assert_eq!((hips.contract_ms, hips.relax_ms), (6000, 24_000));
    let calves = hold(day.piece("Calves").unwrap());
    assert_eq!((calves.technique, calves.contract_ms), (Technique::Static, 0));
    assert_eq!(calves.measure, Some(Protocol::KneeToWall));
    let door = interval(block.days[1].piece("Two by the door").unwrap());
    assert_eq!((door.window_ms, door.margin_ms), (90_000, 15_000));
}

#[test]
fn a_block_survives_json() {
    for text in [DEMO, PLAN] {
        let block = good(text);
        let json = serde_json::to_string(&block).unwrap();
        assert_eq!(serde_json::from_str::<Block>(&json).unwrap(), block);
    }
}

#[test]
fn what_a_plan_leaves_out_is_filled_in() {
    let block = good(PLAN);
    let pieces = &block.days[0].pieces;
    assert_eq!((block.kit.name.as_str(), block.kit.bars[0].count), ("", 1));
    let heavy = strength(&pieces[0]);
    assert_eq!((heavy.rest_ms, heavy.scheme.open), (120_000, false));
    let LoadRule::Step(rule) = &heavy.load else { panic!() };
    assert_eq!((rule.earned_step.len(), rule.earned_by, rule.back_off_percent), (0, 2, 5));
    assert_eq!(interval(&pieces[1]).margin_ms, 10_000);
    assert_eq!((hold(&pieces[2]).sides, hold(&pieces[2]).measure), (2, None));

    let free = good(&spoilt("load = { rule = \"step\", step = \"2.5 kg\" }\n", ""));
    assert_eq!(strength(&free.days[0].pieces[0]).load, LoadRule::Free);
    for (window, margin) in [("5 s", 2500), ("10 s", 5000), ("11 s", 10_000)] {
        let block = good(&spoilt("\"1 min\"", &format!("\"{window}\"")));
        assert_eq!(interval(&block.days[0].pieces[1]).margin_ms, margin, "{window}");
    }
}

#[test]
fn other_ways_to_write_the_same_are_read_alike() {
    let plain = good(PLAN);
    let bar = "bar = [{ name = \"long bar\", mass = \"20 kg\" }]\n";
    let headed =
        "[[kit.bar]]\nname = \"long bar\"\nmass = \"20.0kg\"\ncount = 1\n\n[movement.squat]";
    let text = spoilt(bar, "").replace("[movement.squat]", headed);
    assert_eq!(good(&text), plain);
    assert_eq!(good(&PLAN.replace('\n', "\r\n")), plain);
    assert_eq!(good(&format!("\u{feff}{PLAN}")), plain);
    assert_eq!(good(&spoilt("\"2 min\"", "\"120s\"")), plain);
    assert_eq!(good(&spoilt("weeks = 3", "weeks = 0b11")), plain);
    assert_eq!(good(&spoilt("\"2.5 kg\" }\n", "[\"2,5 kg\"], back_off = 5 }\n")), plain);
}

#[test]
fn a_limit_belongs_to_what_it_limits() {
    let longest = format!("\"{}\"", "ü".repeat(60));
    for (from, to) in [
        ("\"Cellar\"", longest.as_str()),
        ("weeks = 3", "weeks = 26"),
        ("on = [\"tuesday\"]", "on = [\"sunday\", \"monday\"]\nweeks = [3, 1]"),
        ("reps = [5, 5]", "reps = [1, 100]\nrest = \"0 s\""),
        ("reps = [5, 5]", "reps = [5, 5]\nrest = \"30 min\""),
        ("rounds = 3", "rounds = 60\nmargin = \"0 s\""),
        ("\"1 min\"\nrounds = 3", "\"30 min\"\nrounds = 6"),
        ("hold = \"2 min\"", "hold = \"30 s\""),
        ("rule = \"step\", step = \"2.5 kg\"", "rule = \"fixed\", loads = \"65 kg\""),
        ("rule = \"step\", step = \"2.5 kg\"", "rule = \"fixed\", loads = [\"20 kg\", \"45 kg\"]"),
        ("rule = \"step\", step = \"2.5 kg\"", "rule = \"free\""),
        ("text = \"Well done.\"", "text = \"\"\"\nWell\ndone.\"\"\""),
    ] {
        good(&spoilt(from, to));
    }
}
