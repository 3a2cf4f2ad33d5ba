//! Bad plans: strength pieces and their loads.

use super::{Case, PLAN, bad, check, places};

const LOAD: &str = "load = { rule = \"step\", step = \"2.5 kg\" }";

#[test]
fn strength() {
    let many = format!("reps = [{}]", ["5"; 21].join(", "));
    let cases: &[Case<'_>] = &[
        (
            "\"squat\"\nreps",
            "\"sqaut\"\nreps",
            41,
            12,
            "no movement \"sqaut\"",
            "mean \"squat\"? The plan has",
        ),
        (
            "\"squat\"\nreps",
            "\"row\"\nreps",
            41,
            12,
            "no movement \"row\"",
            "\"squat\", \"swing\" and \"press-up\"",
        ),
        ("movement = \"squat\"\n", "", 38, 1, "A strength piece needs `movement`", "Add `movement"),
        ("[5, 5]", "[]", 42, 8, "`reps` is empty", "Write `reps = ["),
        ("[5, 5]", "5", 42, 8, "`reps` can't be 5.", "square brackets"),
        ("[5, 5]", "[5, -3]", 42, 12, "`reps` can't hold -3.", "from 1 to 100."),
        ("[5, 5]", "[0, 5]", 42, 9, "`reps` can't hold 0.", "from 1 to 100."),
        ("[5, 5]", "[5, 101]", 42, 12, "`reps` can't hold 101.", "from 1 to 100."),
        (
            "[5, 5]",
            "[5, 99999999999999999999]",
            42,
            12,
            "`reps` can't hold 99999999999999999999.",
            "from 1 to 100.",
        ),
        ("reps = [5, 5]", &many, 42, 8, "`reps` has 21 entries; 20 is the most.", "Take 1 out."),
        (
            "[5, 5]\n",
            "[5, 5]\nopen = \"yes\"\n",
            43,
            8,
            "`open` can't be \"yes\".",
            "without quotes",
        ),
        ("[5, 5]\n", "[5, 5]\nrest = 90\n", 43, 8, "`rest` can't be 90.", "\"90 s\" or \"90 min\""),
        ("[5, 5]\n", "[5, 5]\nrest = \"90\"\n", 43, 8, "`rest` can't be \"90\".", "\"1 min 30 s\""),
        (
            "[5, 5]\n",
            "[5, 5]\nrest = \"31 min\"\n",
            43,
            8,
            "`rest` can't be \"31 min\".",
            "from \"0 s\" to \"30 min\"",
        ),
        (
            "[5, 5]\n",
            "[5, 5]\nrest = \"4000 min\"\n",
            43,
            8,
            "`rest` can't be \"4000 min\".",
            "from \"0 s\" to \"30 min\"",
        ),
        ("[5, 5]\n", "[5, 5]\nrest = [1]\n", 43, 8, "`rest` can't be a list.", "\"90 s\""),
        (
            "[5, 5]\n",
            "[5, 5]\nrset = \"2 min\"\n",
            43,
            1,
            "A strength piece has no `rset`",
            "mean `rest`?",
        ),
    ];
    check(cases);
}

#[test]
fn load_rules() {
    let fixed = |loads: &str| format!("load = {{ rule = \"fixed\", loads = {loads} }}");
    let step = |rest: &str| format!("load = {{ rule = \"step\", {rest} }}");
    let rule = |rest: &str| format!("load = {{ rule = \"{rest}\" }}");
    let cases = [
        ("load = \"60 kg\"".to_owned(), 8, "`load` can't be \"60 kg\".", "Write `load = { rule"),
        (
            "load = { step = \"2.5 kg\" }".to_owned(),
            8,
            "A load needs `rule`",
            "Add `rule = \"step\"`",
        ),
        (
            "load = { rule = \"steps\" }".to_owned(),
            17,
            "`rule` can't be \"steps\"",
            "Did you mean \"step\"?",
        ),
        (
            "load = { rule = \"free\", step = \"1 kg\" }".to_owned(),
            25,
            "A load with `rule = \"free\"` has no `step`.",
            "Possible keys: `rule`.",
        ),
        ("load = { rule = \"step\" }".to_owned(), 8, "needs `step`", "Add `step = ["),
        (step("step = \"0 kg\""), 32, "`step` can't be \"0 kg\".", "Write a weight above zero."),
        (
            step("step = [\"1 kg\", \"2 kg\"]"),
            41,
            "\"2 kg\" is a second step in kg",
            "one step for each unit",
        ),
        (step("step = []"), 32, "`step` is empty", "Write `step = ["),
        (
            step("step = \"1 kg\", earned_by = 3"),
            52,
            "`earned_by` needs an `earned_step`.",
            "leave `earned_by` out",
        ),
        (
            step("step = \"1 kg\", earned_step = 5"),
            54,
            "`earned_step` can't be 5.",
            "\"5 kg\" or \"5 lb\"",
        ),
        (
            step("step = \"1 kg\", earned_step = \"5 kg\", earned_by = 21"),
            74,
            "`earned_by` can't be 21.",
            "from 1 to 20.",
        ),
        (step("step = \"1 kg\", back_off = 51"), 51, "`back_off` can't be 51.", "from 1 to 50."),
        (
            step("step = \"1 kg\", back_off = \"5 %\""),
            51,
            "`back_off` can't be \"5 %\".",
            "from 1 to 50, without quotes",
        ),
        ("load = { rule = \"fixed\" }".to_owned(), 8, "needs `loads`", "Add `loads = ["),
        (
            fixed("\"41 kg\""),
            34,
            "No bar can be loaded to 41 kg.",
            "nearest loads in this kit are 40 kg and 45 kg",
        ),
        (fixed("[\"40 kg\", \"47.5 kg\"]"), 44, "loaded to 47.5 kg", "kit are 45 kg and 60 kg"),
        (fixed("\"15 kg\""), 34, "loaded to 15 kg", "The lightest load in this kit is 20 kg."),
        (fixed("\"150 lb\""), 34, "loaded to 150 lb", "The heaviest load in this kit is 65 kg."),
        (fixed("[\"40 kg\"]"), 34, "`loads` has 1 entry for 2 sets.", "one load for each set"),
        (rule("percent"), 8, "needs `percents`", "Add `percents = ["),
        (rule("percent\", percents = \"70"), 39, "`percents` can't be \"70\".", "without quotes"),
        (
            "load = { rule = \"percent\", percents = [70] }".to_owned(),
            39,
            "`percents` has 1 entry for 2 sets.",
            "alone for all",
        ),
        (
            "load = { rule = \"percent\", percents = [70, 101] }".to_owned(),
            44,
            "`percents` can't hold 101.",
            "from 30 to 100.",
        ),
        (
            "load = { rule = \"reserve\", reserve = 7 }".to_owned(),
            38,
            "`reserve` can't be 7.",
            "from 0 to 6.",
        ),
        (rule("reserve"), 8, "needs `reserve`", "Add `reserve = 2`"),
        (fixed("[]"), 34, "`loads` is empty", "Write `loads = ["),
        (fixed("\"0 kg\""), 34, "`loads` can't be \"0 kg\".", ""),
    ];
    for (load, column, what, help) in &cases {
        check(&[(LOAD, load, 43, *column, what, help)]);
    }
    let swing = |load: &str| {
        PLAN.replace("movement = \"squat\"", "movement = \"swing\"").replace(LOAD, load)
    };
    let problems = bad(&swing(&fixed("\"18 kg\"")));
    assert_eq!(places(&problems), [(43, 34, "No bell weighs 18 kg.")]);
    assert_eq!(problems[0].help, "The heaviest load in this kit is 16 kg.");
    for load in [LOAD.to_owned(), fixed("\"20 kg\"")] {
        let body =
            swing(&load).replace("movement = \"swing\"\nreps", "movement = \"press-up\"\nreps");
        let problems = bad(&body);
        assert_eq!(places(&problems)[0].1, 17);
        assert!(problems[0].what.contains("for a bodyweight movement"), "{problems:#?}");
        assert_eq!(problems[0].help, "Write `rule = \"free\"`.");
        let none = PLAN.replace("bar = [{ name = \"long bar\", mass = \"20 kg\" }]\n", "\n");
        let problems = bad(&none.replace(LOAD, &load));
        assert_eq!(places(&problems), [(43, 17, "The kit has no bar for this load.")]);
        assert!(problems[0].help.contains("Add `bar = [{"));
        let none = swing(&load).replace("bell = [{ mass = \"16 kg\", count = 2 }]\n", "\n");
        let none = none.replace(", load = \"16 kg\"", "");
        assert_eq!(places(&bad(&none)), [(43, 17, "The kit has no bell for this load.")]);
    }
}
