//! Bad plans: what every piece has, intervals and holds.

use super::{Case, bad, check, good, places, spoilt};

#[test]
fn what_every_piece_has() {
    let cases: &[Case<'_>] = &[
        ("kind = \"strength\"\n", "", 38, 1, "a piece needs `kind`", "add `kind = \"strength\"`"),
        (
            "\"strength\"",
            "\"strenght\"",
            39,
            8,
            "`kind` can't be \"strenght\"",
            "mean \"strength\"?",
        ),
        ("\"note\"", "\"video\"", 62, 8, "`kind` can't be \"video\"", "\"hold\" or \"note\""),
        ("name = \"Heavy\"\n", "", 38, 1, "a strength piece needs `name`", "add `name"),
        (
            "\"Last\"",
            "\"Heavy\"",
            63,
            8,
            "the name \"Heavy\" is already on line 40",
            "pieces of a day",
        ),
        ("text = \"Well done.\"", "text = \"\"", 64, 8, "`text` is empty", "at least one letter"),
    ];
    check(cases);
    let problems = bad(&spoilt("text = ", "words = "));
    let expected = [(61, 1, "a note needs `text`"), (64, 1, "`words` is not a key of a note")];
    assert_eq!(places(&problems), expected);
    let long = format!("text = \"{}\"", "x".repeat(1001));
    check(&[(
        "text = \"Well done.\"",
        &long,
        64,
        8,
        "`text` has 1001 characters",
        "shorten it by 1",
    )]);
    // Keys of another kind are named as what they are: not of this one.
    let moved = spoilt("rounds = 3", "rounds = 3\nhold = \"1 min\"");
    let problems = bad(&moved);
    assert_eq!(places(&problems), [(50, 1, "`hold` is not a key of an interval piece")]);
    assert!(problems[0].help.contains("`window`, `rounds`, `station` and `margin`"));
}

#[test]
fn interval() {
    let load = ", load = \"16 kg\"";
    let cases: &[Case<'_>] = &[
        ("\"1 min\"", "\"4 s\"", 48, 10, "`window` must be from 5 s to 30 min", "\"5 s\" or more"),
        ("\"1 min\"", "\"31 min\"", 48, 10, "found \"31 min\"", "\"30 min\" or less"),
        ("window = \"1 min\"\n", "", 45, 1, "an interval piece needs `window`", "add `window"),
        (
            "rounds = 3",
            "rounds = -3",
            49,
            10,
            "`rounds` must be a whole number from 1 to 60, found -3",
            "1 or more",
        ),
        ("rounds = 3", "round = 3", 49, 1, "`round` is not a key", "did you mean `rounds`?"),
        (
            "rounds = 3",
            "rounds = 3\nmargin = \"1 min\"",
            50,
            10,
            "must be shorter than `window`",
            "a window of 1 min",
        ),
        (
            "rounds = 3",
            "rounds = 3\nmargin = \"-1 s\"",
            50,
            10,
            "`margin` must be a time",
            "\"90 s\"",
        ),
        (
            "\"1 min\"\nrounds = 3",
            "\"4 min\"\nrounds = 60",
            49,
            10,
            "60 rounds of 1 station at 4 min each take 4 h",
            "at most 3 h",
        ),
        (
            "station = [{",
            "station = [\"x\", {",
            50,
            12,
            "each of `station` must be a table",
            "write `station",
        ),
        (
            "\"swing\", reps",
            "\"swinging\", reps",
            50,
            25,
            "no movement \"swinging\"",
            "this plan has",
        ),
        ("reps = 10", "reps = 501", 50, 41, "from 1 to 500, found 501", "write 500 or less"),
        (", reps = 10", "", 50, 12, "a station needs `reps`", "add `reps = 15`"),
        (
            load,
            ", load = \"17 kg\"",
            50,
            52,
            "no bell weighs 17 kg",
            "heaviest the kit builds is 16 kg",
        ),
        (load, ", load = 16", 50, 52, "a mass with its unit, found 16", "\"16 kg\" or \"16 lb\""),
        (
            "\"swing\", reps",
            "\"press-up\", reps",
            50,
            55,
            "this movement has the body alone",
            "leave `load` out",
        ),
        (load, ", laod = \"16 kg\"", 50, 45, "`laod` is not a key of a station", "mean `load`?"),
        (
            "bell = [{ mass = \"16 kg\", count = 2 }]",
            "",
            50,
            52,
            "the kit has no bell",
            "bell = [{",
        ),
    ];
    check(cases);
    let problems = bad(&spoilt(
        "station = [{ movement = \"swing\", reps = 10, load = \"16 kg\" }]",
        "station = []",
    ));
    assert_eq!(places(&problems), [(50, 11, "`station` is empty")]);
}

#[test]
fn hold() {
    let phases = "technique = \"contract-relax\"\ncontract = \"6 s\"\nrelax = \"24 s\"\n";
    let cases: &[Case<'_>] = &[
        (
            "\"calf\"",
            "\"calfs\"",
            55,
            11,
            "there is no stretch \"calfs\"",
            "did you mean \"calf\"?",
        ),
        (
            "hold = \"2 min\"",
            "hold = \"21 min\"",
            56,
            8,
            "from 5 s to 20 min",
            "\"20 min\" or less",
        ),
        (
            "hold = \"2 min\"",
            "hold = \"20 s\"",
            58,
            12,
            "take 30 s, longer than the hold of 20 s",
            "shorten",
        ),
        ("hold = \"2 min\"\n", "", 52, 1, "a hold piece needs `hold`", "add `hold"),
        (
            "hold = \"2 min\"\n",
            "hold = \"2 min\"\nsides = 3\n",
            57,
            9,
            "`sides` must be 1 or 2, found 3",
            "2 or less",
        ),
        (
            "\"contract-relax\"",
            "\"contract relax\"",
            57,
            13,
            "`technique` can't be",
            "mean \"contract-relax\"?",
        ),
        (
            "contract = \"6 s\"\n",
            "",
            52,
            1,
            "a hold piece needs `contract`",
            "add `contract = \"6 s\"`",
        ),
        ("relax = \"24 s\"\n", "", 52, 1, "a hold piece needs `relax`", "add `relax"),
        ("\"6 s\"", "\"61 s\"", 58, 12, "from 1 s to 1 min", "\"1 min\" or less"),
        ("\"24 s\"", "\"0 s\"", 59, 9, "from 1 s to 2 min", "\"1 s\" or more"),
        (
            phases,
            "technique = \"static\"\nrelax = \"24 s\"\n",
            58,
            9,
            "`relax` is only for contract-relax",
            "leave `relax` out",
        ),
        (
            phases,
            "contract = \"6 s\"\n",
            57,
            12,
            "this hold is static",
            "technique = \"contract-relax\"",
        ),
        (
            phases,
            "measure = \"knee to wall\"\n",
            57,
            11,
            "`measure` can't be",
            "mean \"knee-to-wall\"?",
        ),
        (
            "technique =",
            "techniqe =",
            57,
            1,
            "`techniqe` is not a key of a hold piece",
            "mean `technique`?",
        ),
    ];
    check(cases);
    let problems = bad(&spoilt("hold = \"2 min\"", "hold = \"4 s\""));
    assert_eq!(places(&problems), [(56, 8, "`hold` must be from 5 s to 20 min, found \"4 s\"")]);
}

#[test]
fn time_to_get_ready_and_to_switch() {
    let hold = "hold = \"2 min\"\n";
    let with = |lines: &str| format!("{hold}{lines}\n");
    let timing = |text: &str| {
        let block = good(text);
        let piece = block.days[0].piece("Calves").unwrap().clone();
        let crate::plan::PieceKind::Hold(hold) = piece.kind else { panic!("not a hold") };
        (hold.ready_ms, hold.switch_ms)
    };
    assert_eq!(timing(&spoilt(hold, hold)), (5_000, 10_000), "as usual");
    let written = with("ready = \"0 s\"\nswitch = \"1 min 30 s\"");
    assert_eq!(timing(&spoilt(hold, &written)), (0, 90_000));
    let [long, short, one, unit, negative, ready, ten_hours] = [
        "switch = \"121 s\"",
        "switch = \"1 min\"",
        "sides = 1\nswitch = \"5 s\"",
        "switch = 5",
        "switch = \"-5 s\"",
        "ready = \"6 min\"",
        "switch = \"600 min\"",
    ]
    .map(with);
    let short = short.replace("hold = \"2 min\"", "hold = \"45 s\"");
    let cases: &[Case<'_>] = &[
        (hold, &long, 57, 10, "`switch` must be from 0 s to 2 min", "\"2 min\" or less"),
        (hold, &short, 57, 10, "`switch` takes 1 min, longer than the hold of 45 s", "shorten it"),
        (hold, &one, 58, 10, "between two sides, and this hold has one", "or write sides = 2"),
        (hold, &unit, 57, 10, "a time with its unit, found 5", "\"5 s\" or \"5 min\""),
        (hold, &negative, 57, 10, "`switch` must be a time", "\"90 s\""),
        (hold, &ready, 57, 9, "`ready` must be from 0 s to 5 min", "\"5 min\" or less"),
        (hold, &ten_hours, 57, 10, "from 0 s to 2 min", "or less"),
        ("\"2 min\"", "\"0 s\"", 56, 8, "from 5 s to 20 min", "\"5 s\" or more"),
        ("\"2 min\"", "\"-2 min\"", 56, 8, "must be a time", "\"90 s\""),
        ("\"2 min\"", "\"600 min\"", 56, 8, "from 5 s to 20 min", "\"20 min\" or less"),
    ];
    check(cases);
}
