//! Notes and errors on loads: steps, gaps, plates, bars, and weeks one after the other.

use catalogue::{Language, speaking};

use super::super::apart::Gap;
use super::super::review_plan;
use super::{LOAD, PLAN, TODAY, notes, one, spoilt, there, with_piece};
use crate::mass::Mass;
use crate::plan::read_plan;

#[test]
fn steps() {
    let load = |to: &str| spoilt(LOAD, to);
    one(
        &load("{ rule = \"step\", step = \"1 kg\" }"),
        "\"1 kg\"",
        (
            "A step of 1 kg leads to no other load: no two loads here are less than 2.5 kg apart.",
            "Write a step of 2.5 kg or more, or add smaller weights to `[kit]`. Until then only reps go up.",
        ),
        (
            "Ein Schritt von 1 kg führt zu keinem anderen Gewicht: Hier liegen keine zwei näher als 2,5 kg beieinander.",
            "Schreib einen Schritt von mindestens 2,5 kg oder ergänze kleinere Gewichte in `[kit]`. Bis dahin \
             steigen nur die Wiederholungen.",
        ),
    );
    // 62.5 is 20 with 10 + 10 + 1.25 a side; three of 1.25 make 67.5, and 5 + 10 + 10 the 70.
    one(
        &load("{ rule = \"step\", step = [\"2 kg\"], start = [\"62.5 kg\", \"60 kg\"] }"),
        "\"2 kg\"",
        (
            "From 62.5 kg a step of 2 kg leads to no other load: the next one is 65 kg.",
            "Write a step of 2.5 kg or more, or add smaller weights to `[kit]`. Until then only reps go up.",
        ),
        (
            "Von 62,5 kg führt ein Schritt von 2 kg zu keinem anderen Gewicht: Das nächste ist 65 kg.",
            "Schreib einen Schritt von mindestens 2,5 kg oder ergänze kleinere Gewichte in `[kit]`. Bis dahin \
             steigen nur die Wiederholungen.",
        ),
    );
    let earned = "{ rule = \"step\", step = \"5 kg\", earned_step = \"2.5 kg\" }";
    one(
        &load(earned),
        "\"2.5 kg\"",
        (
            "The earned step of 2.5 kg is no larger than the step of 5 kg.",
            "Write a larger one, or leave `earned_step` out.",
        ),
        (
            "Der verdiente Schritt von 2,5 kg ist nicht größer als der Schritt von 5 kg.",
            "Schreib einen größeren oder lass `earned_step` weg.",
        ),
    );
    assert_eq!(notes(&load(&earned.replace("2.5", "7.5"))), []);
}

#[test]
fn a_step_for_each_unit() {
    let pounds = spoilt("mass = \"15 kg\"", "mass = \"45 lb\"");
    let pounds =
        pounds.replace("{ mass = \"5 kg\"", "{ mass = \"2.5 lb\", count = 8 }, { mass = \"5 kg\"");
    one(
        &pounds,
        "\"2.5 kg\" }",
        (
            "`step` has no mass in lb, in which the bar \"short bar\" is loaded.",
            "Add one in lb. Otherwise the first one is rounded down to what can be loaded.",
        ),
        (
            "`step` hat kein Gewicht in lb, worin die Stange \"short bar\" beladen wird.",
            "Ergänze eins in lb. Sonst wird das erste auf das abgerundet, was sich laden lässt.",
        ),
    );
    let both = pounds.replace(LOAD, "{ rule = \"step\", step = [\"2.5 kg\", \"5 lb\"] }");
    assert_eq!(notes(&both), []);
    // Whoever names the bar needs no other unit.
    let named = pounds.replace("reps = [5, 5]", "reps = [5, 5]\nbar = \"long bar\"");
    assert_eq!(notes(&named), []);
    let percent = both.replace("rule = \"step\"", "rule = \"percent\", percents = 70");
    assert_eq!(notes(&percent), []);
    let percent = percent.replace("[\"2.5 kg\", \"5 lb\"]", "\"5 lb\"");
    assert_eq!(
        notes(&percent)[0].what,
        "`step` has no mass in kg, in which the bar \"long bar\" is loaded."
    );
}

#[test]
fn a_rule_that_needs_plates() {
    let bare = spoilt("mass = \"15 kg\"", "mass = \"45 lb\"")
        .replace(LOAD, "{ rule = \"reserve\", reserve = 2 }");
    one(
        &bare,
        "\"reserve\"",
        (
            "The bar \"short bar\" takes no plates of this kit, so this load never changes.",
            "Add a `plate` marked in the bar's unit, or name another `bar`.",
        ),
        (
            "Auf die Stange \"short bar\" passen keine Scheiben dieser Ausstattung, also ändert sich dieses Gewicht nie.",
            "Ergänze `plate` in der Einheit der Stange oder nenne eine andere Stange: `bar`.",
        ),
    );
    assert_eq!(notes(&bare.replace("rule = \"reserve\", reserve = 2", "rule = \"free\"")), []);
}

/// 9 to 16 kg is 78 %. Of 5 reps three should be left: (30 + r) * 9 / 16 - 30 >= 3 from 28.67 reps on, by
/// hand; of 12 reps six: 34. Reps stop at 20.
#[test]
fn gaps() {
    let row = |reps: &str, rest: &str| {
        let piece = format!("name = \"Rows\"\nmovement = \"row\"\nreps = {reps}\n");
        with_piece(&format!("{piece}load = {{ rule = \"step\", step = \"1 kg\"{rest} }}"))
    };
    let far = "From 9 kg the next load is 16 kg, up 78 %. Even 20 reps do not prepare it.";
    one(
        &row("[5]", ""),
        "\"1 kg\"",
        (
            far,
            "Add a weight between them to `[kit]` if you can, or let reps rise further: `top = 29`.",
        ),
        (
            "Nach 9 kg kommt 16 kg, 78 % mehr. Auch 20 Wiederholungen bereiten das nicht vor.",
            "Ergänze in `[kit]` ein Gewicht dazwischen, wenn du kannst, oder lass die Wiederholungen weiter \
             steigen: `top = 29`.",
        ),
    );
    assert!(notes(&row("[12, 14]", ""))[0].help.ends_with("`top = 34`."));
    one(
        &row("[5]", ", top = 29"),
        "\"1 kg\"",
        (
            "From 9 kg the next load is 16 kg, up 78 %. It is proposed after 29 reps with 9 kg.",
            "Add a weight between them to `[kit]` if you can.",
        ),
        (
            "Nach 9 kg kommt 16 kg, 78 % mehr. Es wird nach 29 Wiederholungen mit 9 kg vorgeschlagen.",
            "Ergänze in `[kit]` ein Gewicht dazwischen, wenn du kannst.",
        ),
    );
    assert_eq!(notes(&row("[5]", ", start = \"16 kg\"")), [], "nothing lies ahead");
    // No reps lead from 1 to 16 kg.
    let widest = row("[5]", "").replace("mass = \"9 kg\"", "mass = \"1 kg\"");
    let widest = widest.replace("step = \"1 kg\"", "step = \"7 kg\"");
    assert_eq!(
        notes(&widest)[0].what,
        "From 1 kg the next load is 8 kg, up 700 %. Even 20 reps do not prepare it."
    );
    assert_eq!(notes(&widest)[0].help, "Add a weight between them to `[kit]` if you can.");
    // A load on a body goes up pick by pick: from 1.25 to 2.5 kg is no gap of 100 %.
    let dips = spoilt("lifted = \"bar\"", "lifted = \"added\"");
    assert_eq!(notes(&dips), []);
}

/// The law that the sentence states, against its own equation with fractions.
#[test]
fn a_gap_opens_at_the_first_reps_that_promise_enough() {
    for (from, to) in [(9, 16), (20, 25), (12, 16), (100, 116), (1, 8)] {
        for fewest in 1..=20_u32 {
            let gap = Gap { from: Mass::kg(from), to: Mass::kg(to) };
            let promised =
                |reps: i128| ((30 + reps) as f64 * from as f64 / to as f64 - 30.0 + 1e-9).floor();
            let enough = f64::max(f64::from(fewest) / 2.0, f64::from(fewest.min(3)));
            let reps = gap.reps_before(fewest);
            assert!(promised(reps) >= enough, "{from} to {to}, {fewest}: {reps}");
            assert!(promised(reps - 1) < enough, "{from} to {to}, {fewest}: {reps}");
        }
    }
}

/// The kit builds 15 kg on its short bar alone; the long one is taken where no bar is named. A plan that
/// was published so still reads.
#[test]
fn loads_are_held_against_the_bar_that_is_taken() {
    let fixed = |rest: &str| spoilt(LOAD, &format!("{{ rule = \"fixed\", loads = {rest} }}"));
    let text = fixed("[\"20 kg\", \"15 kg\"]");
    assert!(read_plan(text.as_bytes()).is_ok());
    let en = (
        "The bar \"long bar\" can't be loaded to 15 kg.",
        "Name a bar that can, for the piece or its movement: `bar = \"short bar\"`.",
    );
    let de = (
        "Die Stange \"long bar\" lässt sich nicht auf 15 kg beladen.",
        "Nenne beim Teil oder bei seiner Übung eine Stange, die es kann: `bar = \"short bar\"`.",
    );
    for (language, (what, help)) in [(Language::En, en), (Language::De, de)] {
        let problems = speaking(language, || review_plan(text.as_bytes(), TODAY, &[])).unwrap_err();
        let [problem] = problems.as_slice() else { panic!("{problems:#?}") };
        assert_eq!((problem.what.as_str(), problem.help.as_str()), (what, help));
        assert!(there(&text, problem).starts_with("\"15 kg\""), "{problem:?}");
    }
    let named = fixed("\"15 kg\"").replace("reps = [5, 5]", "reps = [5, 5]\nbar = \"short bar\"");
    assert_eq!(notes(&named), []);
    let movement =
        fixed("\"15 kg\"").replace("lifted = \"bar\"", "lifted = \"bar\"\nbar = \"short bar\"");
    assert_eq!(notes(&movement), []);
    for (from, to) in [
        ("step = \"2.5 kg\"", "step = \"2.5 kg\", start = \"15 kg\""),
        ("load = \"20 kg\"", "load = \"15 kg\""),
    ] {
        let problems = review_plan(spoilt(from, to).as_bytes(), TODAY, &[]).unwrap_err();
        assert_eq!(problems.len(), 1, "{to}");
        assert_eq!(problems[0].what, en.0);
    }
}

/// 45 kg is 12.5 % over 40; one build over 40 is 42.5.
#[test]
fn fixed_loads_from_week_to_week() {
    let day = |week: u32, loads: &str| {
        format!(
            "[[day]]\nname = \"Week {week}\"\non = [\"friday\"]\nweeks = [{week}]\n[[day.piece]]\nkind = \
             \"strength\"\nname = \"Ramp\"\nmovement = \"squat\"\nreps = [3, 3]\nload = {{ rule = \"fixed\", \
             loads = {loads} }}\n"
        )
    };
    let plan = |second: &str, third: &str| {
        let days = [day(3, third), day(1, "[\"40 kg\", \"60 kg\"]"), day(2, second)].concat();
        format!("{PLAN}\n{days}")
    };
    one(
        &plan("[\"42.5 kg\", \"67.5 kg\"]", "[\"45 kg\", \"70 kg\"]"),
        "\"67.5 kg\"",
        (
            "67.5 kg is more than 10 % above the 60 kg of week 1.",
            "Write a smaller jump, or leave it if you mean it.",
        ),
        (
            "67,5 kg sind mehr als 10 % über den 60 kg aus Woche 1.",
            "Schreib einen kleineren Sprung oder lass es so, wenn du es meinst.",
        ),
    );
    assert_eq!(notes(&plan("[\"42.5 kg\", \"65 kg\"]", "[\"45 kg\", \"70 kg\"]")), []);
    let ramp = notes(&plan("\"40 kg\"", "\"45 kg\""));
    assert_eq!(
        ramp.iter().map(|note| note.what.as_str()).collect::<Vec<_>>(),
        ["45 kg is more than 10 % above the 40 kg of week 2."]
    );
}

/// Bells of 8, 12 and 16 kg, and one of 32: who starts with 12 is before the third that leads to 16, though the way from
/// there is wider. Both are said, the nearer one first.
#[test]
fn where_people_start_is_said_beside_the_widest_gap() {
    let bells = spoilt("mass = \"8 kg\"", "mass = \"32 kg\"")
        .replace("mass = \"9 kg\"", "mass = \"12 kg\"");
    let rows = |start: &str| {
        let piece = "name = \"Rows\"\nmovement = \"row\"\nreps = [5]\n";
        let load = format!("load = {{ rule = \"step\", step = \"4 kg\", start = \"{start}\" }}");
        let text = format!("{bells}\n[[day.piece]]\nkind = \"strength\"\n{piece}{load}\n");
        notes(&text).into_iter().map(|note| note.what).collect::<Vec<_>>()
    };
    let first =
        "From 12 kg the next load is 16 kg, up 33 %. It is proposed after 14 reps with 12 kg.";
    let widest = "From 16 kg the next load is 32 kg, up 100 %. Even 20 reps do not prepare it.";
    assert_eq!(rows("12 kg"), [first, widest]);
    let far = rows("16 kg").into_iter().filter(|what| what.contains(", up "));
    assert_eq!(far.collect::<Vec<_>>(), [widest]);
}

/// Where no week is usual nothing goes up.
#[test]
fn a_block_of_easy_weeks_alone_is_noted() {
    let easy = |weeks: &str| {
        spoilt("weeks = 3", &format!("weeks = 3\neasy = {{ weeks = {weeks}, load = \"-40 %\" }}"))
    };
    one(
        &easy("[1, 2, 3]"),
        "[1, 2, 3]",
        (
            "Every week of this block is easy, so no load goes up in it.",
            "Leave out a week that is meant to be usual.",
        ),
        (
            "Jede Woche dieses Blocks ist leicht, also wird in ihm nichts schwerer.",
            "Lass eine Woche weg, die wie sonst sein soll.",
        ),
    );
    assert_eq!(notes(&easy("[1, 3]")), []);
}
