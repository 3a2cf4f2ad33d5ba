//! What is lifted, bars, tracks, starts and easy weeks: read as written, and every way to get them wrong.

use chrono::NaiveDate;

use super::{Problem, bad, good};
use crate::fixtures::kg;
use crate::mass::{Mass, MassUnit};
use crate::plan::{
    Block, Easy, Exercise, Lifted, LoadKind, LoadRule, PieceKind, Rack, Step, Strength,
};

const ALL: &str = include_str!("../../../../../bindings/fixtures/every-kind.toml");

fn piece<'b>(block: &'b Block, name: &str) -> &'b Strength {
    let PieceKind::Strength(strength) = &block.days[0].piece(name).unwrap().kind else { panic!() };
    strength
}

/// The plan with its first `from` replaced has one problem: its line as it is written, and what is said.
fn check(cases: &[(&str, &str, &str, &str, &str)]) {
    for (from, to, at, what, help) in cases {
        assert!(ALL.contains(from), "{from}");
        let text = ALL.replacen(from, to, 1);
        let problems = bad(&text);
        let [Problem { line, column, what: said, help: helps }] = problems.as_slice() else {
            panic!("{to}: {problems:#?}")
        };
        let written = text.lines().nth(*line as usize - 1).unwrap();
        let there: String = written.chars().skip(*column as usize - 1).collect();
        assert!(there.starts_with(at), "{to}: {there}");
        assert!(said.contains(what), "{to}: {said}");
        assert!(helps.contains(help), "{to}: {helps}");
    }
}

#[test]
fn all_is_read_as_written() {
    let block = good(ALL);
    assert_eq!(block.easy, Some(Easy { weeks: vec![4], percent: 40, sets: 1 }));
    let date = |day| NaiveDate::from_ymd_opt(2026, 11, day).unwrap();
    assert_eq!((block.easy_on(date(22)), block.easy_on(date(23))), (None, block.easy.as_ref()));
    assert_eq!(block.easy_on(date(30)), None, "after the block");

    let kit = &block.kit;
    assert_eq!(kit.assistance.masses, [kg("10"), kg("20"), kg("35")]);
    assert_eq!(kit.machines[0].stack.masses, (1..=6).map(|n| kg("10") * n).collect::<Vec<_>>());
    assert_eq!(kit.machines[1].stack.masses, [Mass::lb(5), Mass::lb(10), Mass::lb(15)]);
    assert_eq!(kit.machines[1].stack.unit, MassUnit::Lb);
    let lifted = |key| block.lifted(&Exercise::from_text(key)).unwrap();
    assert_eq!(
        ["farmer-walk", "dip", "dip/bench-dip", "chin-up", "cable-row"].map(lifted),
        [Lifted::Pair, Lifted::Added, Lifted::Body, Lifted::Assisted, Lifted::Machine]
    );

    let heavy = piece(&block, "Heavy squat");
    assert_eq!((heavy.track("Heavy squat"), heavy.bar.as_deref()), ("heavy", None));
    assert_eq!([1, 2, 3].map(|set| heavy.start(set)), [Some(kg("40")), Some(kg("45")), None]);
    let LoadRule::Step(rule) = &heavy.load else { panic!() };
    assert_eq!((rule.top, rule.earned_by), (8, 2));
    let press = piece(&block, "Press");
    assert_eq!((press.track("Press"), press.start(3)), ("Press", Some(kg("20"))));
    let step = |mass| vec![Step { mass, unit: MassUnit::Kg }];
    let percent = LoadRule::Percent {
        percents: vec![70, 80, 90],
        step: step(kg("2.5")),
        back_off_percent: 10,
    };
    assert_eq!(press.load, percent);
    let reserve = LoadRule::Reserve { reserve: 2, step: step(kg("4")), back_off_percent: 5 };
    assert_eq!(piece(&block, "Carry").load, reserve);
    assert_eq!(piece(&block, "Dips").start, [Mass::ZERO]);
    assert_eq!(piece(&block, "Chin-ups").start, [kg("20") * -1]);
    let PieceKind::Interval(corners) = &block.days[0].pieces[7].kind else { panic!() };
    assert_eq!(corners.stations[0].load, Some(kg("35") * -1));
}

/// Who names a bar first: the piece, the option, the movement, the unit.
#[test]
fn each_kind_is_loaded_with_its_own() {
    let block = good(ALL);
    let rack = Rack::new(&block);
    let builds = |piece: Option<&Strength>, exercise: &str, unit| {
        rack.builds(&block, piece, &Exercise::from_text(exercise), unit)
    };
    let bar = |piece: &str, exercise: &str, unit| {
        let piece = (!piece.is_empty()).then(|| self::piece(&block, piece));
        builds(piece, exercise, unit).bar.clone()
    };
    let (kilograms, pounds) = (MassUnit::Kg, MassUnit::Lb);
    assert_eq!(bar("", "squat", kilograms), "long bar");
    assert_eq!(bar("", "squat", pounds), "pound bar");
    assert_eq!(bar("Heavy squat", "squat", pounds), "pound bar");
    assert_eq!(bar("Light squat", "squat", pounds), "short bar");
    assert_eq!(bar("Heavy squat", "squat/light-squat", pounds), "short bar");
    assert_eq!(bar("", "press", pounds), "short bar");
    assert_eq!(builds(None, "press", kilograms).lightest().unwrap().mass, kg("15"));

    let of = |exercise, unit| {
        let builds = builds(None, exercise, unit);
        (builds.kind, builds.loads().collect::<Vec<Mass>>())
    };
    assert_eq!(of("farmer-walk", kilograms), (LoadKind::Pair, vec![kg("12"), kg("16")]));
    let (kind, hung) = of("dip", kilograms);
    assert_eq!(
        (kind, hung[..4].to_vec()),
        (LoadKind::Added, ["0", "1.25", "2.5", "3.75"].map(kg).to_vec())
    );
    // Four plates of 10 kg are the most a belt carries; a bell hangs alone.
    assert_eq!(hung.last(), Some(&kg("40")));
    assert!(hung.contains(&kg("24")) && !hung.contains(&kg("34")), "{hung:?}");
    let pounds_hung = of("dip", pounds).1;
    assert_eq!(pounds_hung[..4], [0, 5, 10, 25].map(Mass::lb));
    assert_eq!(pounds_hung.last(), Some(&Mass::lb(60)));
    let less = |text| kg(text) * -1;
    let assisted = vec![less("35"), less("20"), less("10"), Mass::ZERO];
    assert_eq!(of("chin-up", pounds), (LoadKind::Assisted, assisted));
    let chin_up = builds(None, "chin-up", kilograms);
    assert_eq!(chin_up.lightest().unwrap().mass, less("35"), "more assistance is lighter");
    assert_eq!(chin_up.at_or_below(less("15")).unwrap().mass, less("20"));
    assert_eq!(chin_up.above(less("10")).unwrap().mass, Mass::ZERO);
    assert_eq!(of("cable-row", kilograms), (LoadKind::Stack, [5, 10, 15].map(Mass::lb).to_vec()));
    assert_eq!(of("cable-row/press-down", kilograms).1.len(), 6);
    assert!(of("dip/bench-dip", kilograms).1.is_empty());
    let picks: Vec<&str> = ["squat", "farmer-walk", "dip", "chin-up", "cable-row"]
        .into_iter()
        .filter(|exercise| builds(None, exercise, kilograms).is_picks())
        .collect();
    assert_eq!(picks, ["dip", "chin-up"]);
    assert!(builds(None, "squat", kilograms).has_plates());
    assert!(!builds(None, "dip", kilograms).has_plates());
}

#[test]
fn kits() {
    let machine = "{ from = \"10 kg\", to = \"60 kg\", step = \"10 kg\" }";
    let stack = |stack: &'static str| (machine, stack);
    for (from, to, at, what, help) in [
        (
            "\"cable\", stack",
            "\"leg press\", stack",
            "\"leg press\"",
            "line 31 is called \"leg press\" too",
            "own name",
        ),
        (machine, "[]", "[]", "`stack` is empty", "stack = [\"10 kg\""),
        (machine, "\"10 kg\"", "\"10 kg\"", "`stack` can't be \"10 kg\"", "square brackets"),
        (machine, "[\"10 kg\", \"20 lb\"]", "\"20 lb\"", "hold \"20 lb\"", "in kg, like"),
        (machine, "[\"10 kg\", \"10.0 kg\"]", "\"10.0 kg\"", "listed twice", "Take one"),
        (machine, "[\"0 kg\"]", "\"0 kg\"", "can't hold \"0 kg\"", "above zero"),
        (
            "\"10 kg\", \"20 kg\"]",
            "\"-10 kg\", \"20 kg\"]",
            "\"-10 kg\"",
            "hold \"-10 kg\"",
            "92.5 kg",
        ),
    ] {
        check(&[(from, to, at, what, help)]);
    }
    for (to, at, what, help) in [
        ("{ from = \"10 kg\", to = \"60 kg\" }", "{ from", "needs `step`", "Add `step"),
        (
            "{ from = \"10 kg\", to = \"60 kg\", step = \"10 lb\" }",
            "\"10 lb\"",
            "can't be \"10 lb\"",
            "in kg",
        ),
        (
            "{ from = \"70 kg\", to = \"60 kg\", step = \"10 kg\" }",
            "\"60 kg\"",
            "`to` can't be \"60 kg\"",
            "at least 70 kg",
        ),
        (
            "{ from = \"10 kg\", to = \"60 kg\", step = \"7.5 kg\" }",
            "\"60 kg\"",
            "From 10 kg up in steps of 7.5 kg, a stack never ends at 60 kg.",
            "End it at 55 kg or 62.5 kg.",
        ),
        (
            "{ from = \"10 kg\", to = \"60 kg\", step = \"0.5 kg\" }",
            "\"0.5 kg\"",
            "This stack has 101 loads; 100 is the most.",
            "larger step",
        ),
    ] {
        let (from, to) = stack(to);
        check(&[(from, to, at, what, help)]);
    }
}

#[test]
fn movements_and_pieces() {
    let short = "bar     = \"short bar\"";
    check(&[
        (short, "bar = \"shrot bar\"", "\"shrot", "no bar \"shrot bar\"", "mean \"short bar\"?"),
        (
            short,
            "machine = \"cable\"",
            "\"cable\"",
            "this movement has none",
            "Leave `machine` out",
        ),
        (
            "lifted  = \"pair\"",
            "lifted = \"pair\"\nbar = \"long bar\"",
            "\"long bar\"",
            "`bar` names a bar; this movement has none.",
            "Leave `bar` out",
        ),
        (
            "machine = \"cable\"",
            "machine = \"cabel\"",
            "\"cabel\"",
            "no machine \"cabel\"",
            "\"cable\"?",
        ),
        (
            "bar      = \"short bar\"",
            "bar = \"bar\"",
            "\"bar\"",
            "no bar \"bar\"",
            "\"long bar\", \"short",
        ),
        ("bar      = \"short bar\"", "bar = \"long bar\"\ntrack = 3", "track", "second time", ""),
        (
            "name     = \"Dips\"\n",
            "name = \"Dips\"\nbar = \"long bar\"\n",
            "\"long bar\"",
            "this movement has none",
            "Leave `bar` out",
        ),
        ("track    = \"light\"", "track = \"\"", "\"\"", "`track` is empty", "one letter"),
        (
            "load = \"16 kg\"",
            "load = \"24 kg\"",
            "\"24 kg\"",
            "No two bells weigh 24 kg each.",
            "16 kg",
        ),
        (
            "load = \"24 kg\"",
            "load = \"34 kg\"",
            "\"34 kg\"",
            "to hang on weigh 34 kg",
            "32.5 kg and 35 kg",
        ),
        ("\"-35 kg\"", "\"-30 kg\"", "\"-30 kg\"", "no assistance of -30 kg", "-35 kg and -20 kg"),
        (
            "\"-35 kg\"",
            "\"35 kg\"",
            "\"35 kg\"",
            "`load` can't be \"35 kg\"",
            "with a minus, such as \"-35",
        ),
        ("load = \"16 kg\"", "load = \"-16 kg\"", "\"-16 kg\"", "can't be \"-16 kg\"", "92.5 kg"),
    ]);
}

#[test]
fn loads() {
    check(&[
        ("top = 8", "top = 4", "4", "`top` can't be 4.", "from 5 to 100"),
        ("top = 8", "top = 101", "101", "`top` can't be 101.", "from 5 to 100"),
        (
            "[\"40 kg\", \"45 kg\"]",
            "[\"40 kg\"]",
            "[",
            "`start` has 1 entry for 2 sets.",
            "one load",
        ),
        (
            "\"45 kg\"]",
            "\"46 kg\"]",
            "\"46 kg\"",
            "No bar can be loaded to 46 kg.",
            "45 kg and 47.5",
        ),
        (
            "loads = \"30 kg\"",
            "loads = \"31 kg\"",
            "\"31 kg\"",
            "The bar \"short bar\" can't be loaded to 31 kg.",
            "30 kg and 32.5 kg",
        ),
        (
            "start = \"20 kg\"",
            "start = \"75.5 kg\"",
            "\"75.5",
            "bar \"short bar\" can't",
            "is 72.5 kg",
        ),
        (
            "step = \"1.25 kg\", start",
            "step = \"0 kg\", start",
            "\"0 kg\"",
            "`step` can't",
            "above zero",
        ),
        ("start = \"-20 kg\"", "start = \"20 kg\"", "\"20 kg\"", "`start` can't", "\"-20 kg\""),
        ("loads = \"10 lb\"", "loads = \"7 lb\"", "\"7 lb\"", "has no 7 lb", "5 lb and 10 lb"),
        (
            "rule = \"step\", step = \"10 kg\", start = \"-20 kg\"",
            "rule = \"percent\", percents = 70",
            "\"percent\"",
            "for a load on a body: near zero",
            "`rule = \"fixed\"` or",
        ),
        (
            "rule = \"fixed\", loads = \"30 kg\"",
            "rule = \"fixed\", loads = \"30 kg\", start = \"30 kg\"",
            "start",
            "has no `start`",
            "Possible keys",
        ),
        (
            "step = \"4 kg\", start",
            "step = [\"4 kg\", \"2 kg\"], start",
            "\"2 kg\"",
            "second step",
            "one step",
        ),
    ]);
    // Without the stations, so that only a rule wants what is not there.
    let stations = ALL.find("  [[day.piece]]\n  kind    = \"interval\"").unwrap();
    let cut = ["machine = \"cable\"\n", ", machine = \"leg press\""];
    let plain = cut.iter().fold(ALL[..stations].to_owned(), |text, cut| text.replace(cut, ""));
    let plain = plain.replace("loads = \"10 lb\"", "loads = \"10 kg\"");
    let without = |from: &str, to: &str, instead: &str| {
        let start = plain.find(from).unwrap();
        let end = start + plain[start..].find(to).unwrap() + to.len();
        let text = format!("{}{instead}{}", &plain[..start], &plain[end..]);
        bad(&text).into_iter().map(|problem| problem.what).collect::<Vec<String>>()
    };
    let none = without("assistance =", "\n", "");
    assert_eq!(none, ["The kit has no assistance for this load."]);
    let one = without("bell = [", "\n]\n", "bell = [{ mass = \"12 kg\", count = 1 }]\n");
    assert_eq!(one, ["The kit has no two bells of one weight for this load."]);
    let none = without("machine = [", "\n]\n", "");
    assert_eq!(none, ["The kit has no machine for this load."]);
}

#[test]
fn easy_weeks() {
    let easy = "{ weeks = [4], load = \"-40 %\", sets = -1 }";
    let others: &[(&str, &str, &str, &str)] = &[
        ("\"4\"", "\"4\"", "`easy` can't be \"4\"", "easy = { weeks = [4]"),
        ("{ weeks = [5], sets = -1 }", "5", "`weeks` can't hold 5.", "from 1 to 4"),
        ("{ weeks = [4, 4], sets = -1 }", "4]", "4 is listed twice", "Take one"),
        ("{ sets = -1 }", "{ sets", "`easy` needs `weeks`", "Add `weeks = [4]`"),
        ("{ weeks = [4] }", "{ weeks", "`easy` makes nothing easier.", "`sets = -1` or both"),
        (
            "{ weeks = [4], load = \"40 %\" }",
            "\"40 %\"",
            "`load` can't be",
            "from \"-1 %\" to \"-90 %\"",
        ),
        ("{ weeks = [4], load = \"-91 %\" }", "\"-91 %\"", "`load` can't be", "\"-90 %\""),
        ("{ weeks = [4], load = \"-\u{fc} %\" }", "\"-\u{fc} %\"", "`load` can't be", "\"-90 %\""),
        ("{ weeks = [4], load = -40 }", "-40", "`load` can't be -40", "\"-90 %\""),
        ("{ weeks = [4], sets = 1 }", "1", "`sets` can't be 1.", "from -1 to -19"),
        ("{ weeks = [4], sets = \"-1\" }", "\"-1\"", "`sets` can't be", "from -1 to -19"),
        ("{ weeks = [4], set = -1 }", "set ", "`easy` has no `set`", "mean `sets`?"),
    ];
    for (to, at, what, help) in others {
        check(&[(easy, to, at, what, help)]);
    }
    for (text, percent, sets) in [
        ("{ weeks = [1, 3], load = \"-5%\" }", 5, 0),
        ("{ weeks = [2], sets = -19, load = \"\u{2212} 90 %\" }", 90, 19),
    ] {
        let read = good(&ALL.replacen(easy, text, 1)).easy.unwrap();
        assert_eq!((read.percent, read.sets), (percent, sets), "{text}");
    }
}

/// A plan of before reads as it did: no track, no bar, nothing easier, and reps that stop where the plan's
/// own are above twenty.
#[test]
fn what_is_left_out_changes_nothing() {
    let block = good(super::PLAN);
    let PieceKind::Strength(heavy) = &block.days[0].pieces[0].kind else { panic!() };
    assert_eq!((heavy.track("Heavy"), &heavy.bar, heavy.start(1)), ("Heavy", &None, None));
    assert_eq!((block.easy, block.kit.machines.len()), (None, 0));
    let tops = [("[5, 5]", 20), ("[25, 10]", 25)].map(|(reps, top)| {
        let block = good(&super::spoilt("[5, 5]", reps));
        let PieceKind::Strength(heavy) = &block.days[0].pieces[0].kind else { panic!() };
        let LoadRule::Step(rule) = &heavy.load else { panic!() };
        (rule.top, top)
    });
    assert!(tops.iter().all(|(found, wanted)| found == wanted), "{tops:?}");
}
