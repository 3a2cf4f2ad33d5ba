//! Bad plans: what every piece has, intervals and holds.

use super::{Case, bad, check, good, places, spoilt};

#[test]
fn what_every_piece_has() {
    let cases: &[Case<'_>] = &[
        ("kind = \"strength\"\n", "", 38, 1, "A piece needs `kind`", "Add `kind = \"strength\"`"),
        (
            "\"strength\"",
            "\"strenght\"",
            39,
            8,
            "`kind` can't be \"strenght\"",
            "mean \"strength\"?",
        ),
        ("\"note\"", "\"video\"", 62, 8, "`kind` can't be \"video\"", "\"hold\" or \"note\""),
        ("name = \"Heavy\"\n", "", 38, 1, "A strength piece needs `name`", "Add `name"),
        (
            "\"Last\"",
            "\"Heavy\"",
            63,
            8,
            "The name \"Heavy\" is already on line 40",
            "Give each piece of a day its own name.",
        ),
        ("text = \"Well done.\"", "text = \"\"", 64, 8, "`text` is empty", "at least one letter"),
    ];
    check(cases);
    let problems = bad(&spoilt("text = ", "words = "));
    let expected = [(61, 1, "A note needs `text`."), (64, 1, "A note has no `words`.")];
    assert_eq!(places(&problems), expected);
    let long = format!("text = \"{}\"", "x".repeat(1001));
    check(&[(
        "text = \"Well done.\"",
        &long,
        64,
        8,
        "`text` has 1001 characters",
        "Shorten it by 1",
    )]);
    // Keys of another kind are named as what they are: not of this one.
    let moved = spoilt("rounds = 3", "rounds = 3\nhold = \"1 min\"");
    let problems = bad(&moved);
    assert_eq!(places(&problems), [(50, 1, "An interval piece has no `hold`.")]);
    assert!(problems[0].help.contains("`window`, `rounds`, `station` and `margin`"));
}

#[test]
fn interval() {
    let load = ", load = \"16 kg\"";
    let cases: &[Case<'_>] = &[
        (
            "\"1 min\"",
            "\"4 s\"",
            48,
            10,
            "`window` can't be \"4 s\".",
            "from \"5 s\" to \"30 min\"",
        ),
        (
            "\"1 min\"",
            "\"31 min\"",
            48,
            10,
            "`window` can't be \"31 min\".",
            "from \"5 s\" to \"30 min\"",
        ),
        ("window = \"1 min\"\n", "", 45, 1, "An interval piece needs `window`", "Add `window"),
        ("rounds = 3", "rounds = -3", 49, 10, "`rounds` can't be -3.", "from 1 to 60."),
        ("rounds = 3", "round = 3", 49, 1, "has no `round`", "Did you mean `rounds`?"),
        (
            "rounds = 3",
            "rounds = 3\nmargin = \"1 min\"",
            50,
            10,
            "`margin` can't be \"1 min\".",
            "It must be shorter than the window of 1 min.",
        ),
        (
            "rounds = 3",
            "rounds = 3\nmargin = \"-1 s\"",
            50,
            10,
            "`margin` can't be \"-1 s\".",
            "\"90 s\"",
        ),
        (
            "\"1 min\"\nrounds = 3",
            "\"4 min\"\nrounds = 60",
            49,
            10,
            "60 rounds of 1 station at 4 min take 4 h.",
            "at most 3 h",
        ),
        (
            "station = [{",
            "station = [\"x\", {",
            50,
            12,
            "`station` can't hold \"x\".",
            "Write `station",
        ),
        (
            "\"swing\", reps",
            "\"swinging\", reps",
            50,
            25,
            "no movement \"swinging\"",
            "The plan has",
        ),
        ("reps = 10", "reps = 501", 50, 41, "`reps` can't be 501.", "from 1 to 500."),
        (", reps = 10", "", 50, 12, "A station needs `reps`", "Add `reps = 15`"),
        (
            load,
            ", load = \"17 kg\"",
            50,
            52,
            "No bell weighs 17 kg.",
            "heaviest load in this kit is 16 kg",
        ),
        (load, ", load = 16", 50, 52, "`load` can't be 16.", "\"16 kg\" or \"16 lb\""),
        (
            "\"swing\", reps",
            "\"press-up\", reps",
            50,
            55,
            "`load` is for a bar or a bell; this is a bodyweight movement",
            "Leave `load` out.",
        ),
        (load, ", laod = \"16 kg\"", 50, 45, "A station has no `laod`", "mean `load`?"),
        (
            "bell = [{ mass = \"16 kg\", count = 2 }]",
            "",
            50,
            52,
            "The kit has no bell",
            "bell = [{",
        ),
    ];
    check(cases);
    let problems = bad(&spoilt(
        "station = [{ movement = \"swing\", reps = 10, load = \"16 kg\" }]",
        "station = []",
    ));
    assert_eq!(places(&problems), [(50, 11, "`station` is empty.")]);
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
            "This plan has no stretch \"calfs\"",
            "Did you mean \"calf\"?",
        ),
        (
            "hold = \"2 min\"",
            "hold = \"21 min\"",
            56,
            8,
            "`hold` can't be \"21 min\".",
            "from \"5 s\" to \"20 min\"",
        ),
        (
            "hold = \"2 min\"",
            "hold = \"20 s\"",
            58,
            12,
            "take 30 s, longer than the hold of 20 s",
            "Shorten them",
        ),
        ("hold = \"2 min\"\n", "", 52, 1, "A hold piece needs `hold`", "Add `hold"),
        (
            "hold = \"2 min\"\n",
            "hold = \"2 min\"\nsides = 3\n",
            57,
            9,
            "`sides` can't be 3.",
            "Write 1 or 2.",
        ),
        (
            "\"contract-relax\"",
            "\"contract relax\"",
            57,
            13,
            "`technique` can't be",
            "mean \"contract-relax\"?",
        ),
        ("contract = \"6 s\"\n", "", 52, 1, "needs `contract`", "Add `contract = \"6 s\"`"),
        ("relax = \"24 s\"\n", "", 52, 1, "A hold piece needs `relax`", "Add `relax"),
        (
            "\"6 s\"",
            "\"61 s\"",
            58,
            12,
            "`contract` can't be \"61 s\".",
            "from \"1 s\" to \"1 min\"",
        ),
        ("\"24 s\"", "\"0 s\"", 59, 9, "`relax` can't be \"0 s\".", "from \"1 s\" to \"2 min\""),
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
        ("technique =", "techniqe =", 57, 1, "A hold piece has no `techniqe`", "mean `technique`?"),
    ];
    check(cases);
    let problems = bad(&spoilt("hold = \"2 min\"", "hold = \"4 s\""));
    assert_eq!(places(&problems), [(56, 8, "`hold` can't be \"4 s\".")]);
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
        (hold, &long, 57, 10, "`switch` can't be \"121 s\".", "from \"0 s\" to \"2 min\""),
        (hold, &short, 57, 10, "`switch` takes 1 min, longer than the hold of 45 s", "Shorten it"),
        (hold, &one, 58, 10, "between two sides; this hold has one", "or write `sides = 2`"),
        (hold, &unit, 57, 10, "`switch` can't be 5.", "\"5 s\" or \"5 min\""),
        (hold, &negative, 57, 10, "`switch` can't be \"-5 s\".", "\"90 s\""),
        (hold, &ready, 57, 9, "`ready` can't be \"6 min\".", "from \"0 s\" to \"5 min\""),
        (hold, &ten_hours, 57, 10, "`switch` can't be \"600 min\".", "from \"0 s\" to \"2 min\""),
        ("\"2 min\"", "\"0 s\"", 56, 8, "`hold` can't be \"0 s\".", "from \"5 s\" to \"20 min\""),
        ("\"2 min\"", "\"-2 min\"", 56, 8, "`hold` can't be \"-2 min\".", "\"90 s\""),
        (
            "\"2 min\"",
            "\"600 min\"",
            56,
            8,
            "`hold` can't be \"600 min\".",
            "from \"5 s\" to \"20 min\"",
        ),
    ];
    check(cases);
}
