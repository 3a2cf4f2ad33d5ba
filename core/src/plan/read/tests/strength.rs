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
            "mean \"squat\"? this plan has",
        ),
        (
            "\"squat\"\nreps",
            "\"row\"\nreps",
            41,
            12,
            "no movement \"row\"",
            "\"squat\", \"swing\" and \"press-up\"",
        ),
        ("movement = \"squat\"\n", "", 38, 1, "a strength piece needs `movement`", "add `movement"),
        ("[5, 5]", "[]", 42, 8, "`reps` is empty", "write `reps = ["),
        ("[5, 5]", "5", 42, 8, "`reps` must be a list, found 5", "square brackets"),
        (
            "[5, 5]",
            "[5, -3]",
            42,
            12,
            "each of `reps` must be a whole number from 1 to 100, found -3",
            "write 1 or more",
        ),
        ("[5, 5]", "[0, 5]", 42, 9, "found 0", "write 1 or more"),
        ("[5, 5]", "[5, 101]", 42, 12, "found 101", "write 100 or less"),
        (
            "[5, 5]",
            "[5, 99999999999999999999]",
            42,
            12,
            "found 99999999999999999999",
            "100 or less",
        ),
        ("reps = [5, 5]", &many, 42, 8, "`reps` lists 21, and 20 is the most", "take 1 out"),
        (
            "[5, 5]\n",
            "[5, 5]\nopen = \"yes\"\n",
            43,
            8,
            "`open` must be true or false",
            "without quotes",
        ),
        (
            "[5, 5]\n",
            "[5, 5]\nrest = 90\n",
            43,
            8,
            "a time with its unit, found 90",
            "\"90 s\" or \"90 min\"",
        ),
        (
            "[5, 5]\n",
            "[5, 5]\nrest = \"90\"\n",
            43,
            8,
            "`rest` must be a time, found \"90\"",
            "\"1 min 30 s\"",
        ),
        (
            "[5, 5]\n",
            "[5, 5]\nrest = \"31 min\"\n",
            43,
            8,
            "from 0 s to 30 min",
            "\"30 min\" or less",
        ),
        ("[5, 5]\n", "[5, 5]\nrest = \"4000 min\"\n", 43, 8, "from 0 s to 30 min", "or less"),
        ("[5, 5]\n", "[5, 5]\nrest = [1]\n", 43, 8, "must be a time, found a list", "\"90 s\""),
        (
            "[5, 5]\n",
            "[5, 5]\nrset = \"2 min\"\n",
            43,
            1,
            "`rset` is not a key of a strength piece",
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
        (
            "load = \"60 kg\"".to_owned(),
            8,
            "`load` must be a table, found \"60 kg\"",
            "write `load = { rule",
        ),
        (
            "load = { step = \"2.5 kg\" }".to_owned(),
            8,
            "a load needs `rule`",
            "add `rule = \"step\"`",
        ),
        (
            "load = { rule = \"steps\" }".to_owned(),
            17,
            "`rule` can't be \"steps\"",
            "did you mean \"step\"?",
        ),
        (
            "load = { rule = \"free\", step = \"1 kg\" }".to_owned(),
            25,
            "`step` is not a key",
            "can have `rule`",
        ),
        ("load = { rule = \"step\" }".to_owned(), 8, "needs `step`", "add `step = ["),
        (step("step = \"0 kg\""), 32, "`step` must be more than 0", "as it is marked"),
        (
            step("step = [\"1 kg\", \"2 kg\"]"),
            41,
            "\"2 kg\" is a second step in kg",
            "one step a unit",
        ),
        (step("step = []"), 32, "`step` is empty", "write `step = ["),
        (
            step("step = \"1 kg\", earned_by = 3"),
            52,
            "no `earned_step` to earn",
            "leave `earned_by` out",
        ),
        (
            step("step = \"1 kg\", earned_step = 5"),
            54,
            "a mass with its unit",
            "\"5 kg\" or \"5 lb\"",
        ),
        (
            step("step = \"1 kg\", earned_step = \"5 kg\", earned_by = 21"),
            74,
            "from 1 to 20",
            "20 or less",
        ),
        (step("step = \"1 kg\", back_off = 51"), 51, "from 1 to 50, found 51", "write 50 or less"),
        (step("step = \"1 kg\", back_off = \"5 %\""), 51, "found \"5 %\"", "digits only"),
        ("load = { rule = \"fixed\" }".to_owned(), 8, "needs `loads`", "add `loads = ["),
        (fixed("\"41 kg\""), 34, "no bar can be loaded to 41 kg", "the kit builds 40 kg and 45 kg"),
        (fixed("[\"40 kg\", \"47.5 kg\"]"), 44, "loaded to 47.5 kg", "builds 45 kg and 60 kg"),
        (fixed("\"15 kg\""), 34, "loaded to 15 kg", "the lightest the kit builds is 20 kg"),
        (fixed("\"150 lb\""), 34, "loaded to 150 lb", "the heaviest the kit builds is 65 kg"),
        (fixed("[\"40 kg\"]"), 34, "`loads` has 1 load for 2 sets", "one load for each set"),
        (rule("percent"), 8, "needs `percents`", "add `percents = ["),
        (rule("percent\", percents = \"70"), 39, "whole number from 30 to 100", "without quotes"),
        (
            "load = { rule = \"percent\", percents = [70] }".to_owned(),
            39,
            "1 percent for 2 sets",
            "alone for all",
        ),
        (
            "load = { rule = \"percent\", percents = [70, 101] }".to_owned(),
            44,
            "from 30 to 100",
            "100 or less",
        ),
        ("load = { rule = \"reserve\", reserve = 7 }".to_owned(), 38, "from 0 to 6", "6 or less"),
        (rule("reserve"), 8, "needs `reserve`", "add `reserve = 2`"),
        (fixed("[]"), 34, "`loads` is empty", "write `loads = ["),
        (fixed("\"0 kg\""), 34, "`loads` must be more than 0", ""),
    ];
    for (load, column, what, help) in &cases {
        check(&[(LOAD, load, 43, *column, what, help)]);
    }
    let swing = |load: &str| {
        PLAN.replace("movement = \"squat\"", "movement = \"swing\"").replace(LOAD, load)
    };
    let problems = bad(&swing(&fixed("\"18 kg\"")));
    assert_eq!(places(&problems), [(43, 34, "no bell weighs 18 kg")]);
    assert_eq!(problems[0].help, "the heaviest the kit builds is 16 kg");
    for load in [LOAD.to_owned(), fixed("\"20 kg\"")] {
        let body =
            swing(&load).replace("movement = \"swing\"\nreps", "movement = \"press-up\"\nreps");
        let problems = bad(&body);
        assert_eq!(places(&problems)[0].1, 17);
        assert!(problems[0].what.contains("for a movement with the body alone"), "{problems:#?}");
        assert_eq!(problems[0].help, "write rule = \"free\"");
        let none = PLAN.replace("bar = [{ name = \"long bar\", mass = \"20 kg\" }]\n", "\n");
        let problems = bad(&none.replace(LOAD, &load));
        assert_eq!(places(&problems), [(43, 17, "the kit has no bar for this load")]);
        assert!(problems[0].help.contains("add `bar = [{"));
        let none = swing(&load).replace("bell = [{ mass = \"16 kg\", count = 2 }]\n", "\n");
        let none = none.replace(", load = \"16 kg\"", "");
        assert_eq!(places(&bad(&none)), [(43, 17, "the kit has no bell for this load")]);
    }
}
