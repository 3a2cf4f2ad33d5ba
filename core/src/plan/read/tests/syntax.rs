//! Bad plans: text that is not TOML, several problems at once, and more than anyone can mend.

use super::{Case, PLAN, bad, check, places, spoilt};

#[test]
fn a_broken_place_is_one_problem() {
    let cases: &[Case<'_>] = &[
        (
            "\"1 min\"",
            "1 min",
            48,
            10,
            "`1 min` is neither a number nor text in quotes",
            "double quotes",
        ),
        ("[\"tuesday\"]", "[tuesday]", 36, 7, "`tuesday` is neither", "in double quotes"),
        ("rounds = 3", "rounds =", 49, 9, "a value is missing here", "double quotes"),
        (
            "rounds = 3",
            "rounds 3",
            49,
            8,
            "can't be read: key with no value",
            "write `key = value`",
        ),
        ("\"Cellar\"", "\"Cellar", 2, 15, "this line can't be read", "ends with a double quote"),
        (
            "\"Last\"",
            "\"\"\"Last\"",
            63,
            8,
            "the text that starts here is not closed",
            "end it with \"\"\"",
        ),
        ("2026-11-02", "2026-11-31", 3, 10, "can't be read: invalid date", "starts = 2026-11-02"),
        (
            "rounds = 3",
            "rounds = 3\nrounds = 4",
            50,
            1,
            "`rounds` is here a second time",
            "one of the two",
        ),
        (
            "[movement.swing]",
            "[movement.squat]",
            20,
            11,
            "`squat` is here a second time",
            "another key",
        ),
        ("[[day]]", "[[day]", 34, 7, "unclosed array table", "[[ with ]]"),
        ("[[day.piece]]", "day.piece]]", 38, 10, "key with no value", "write `key = value`"),
        ("[5, 5]", "[5, 5", 42, 1, "the list that starts here is not closed", "end it with ]"),
        ("[5, 5]", "[5, 5,", 42, 1, "the list that starts here is not closed", "end it with ]"),
        (
            "\"2.5 kg\" }",
            "\"2.5 kg\"",
            43,
            1,
            "the table that starts here is not closed",
            "end it with }",
        ),
        ("count = 2 },\n]", "count = 2 },\n", 8, 1, "the list that starts here is not closed", "]"),
        ("count = 4 },", "count = 4 }", 10, 3, "a comma is missing before this", "put a comma"),
        (
            "text = \"Well done.\"\n",
            "tags = [1",
            64,
            1,
            "the list that starts here is not closed",
            "]",
        ),
    ];
    check(cases);
}

#[test]
fn all_problems_come_at_once_and_in_order() {
    let edits = [
        ("weeks = 3", "weeks = 0"),
        ("\"20 kg\"", "20"),
        ("pattern = \"hinge\"", "patern = \"hinge\""),
        ("[\"tuesday\"]", "[\"Tuesday\", 3]"),
        ("movement = \"squat\"", "movement = \"row\""),
        ("[5, 5]", "[0, -1]"),
        ("window = \"1 min\"", "window = 1 min"),
        ("rounds = 3", "rounds = 99"),
        ("text = ", "txet = "),
    ];
    let text = edits.iter().fold(PLAN.to_owned(), |text, (from, to)| text.replacen(from, to, 1));
    let problems = bad(&text);
    // The reference to an unknown movement has to wait: a line that can't be read may hold it.
    let expected = [
        (4, 9, "`weeks` must be a whole number from 1 to 26, found 0"),
        (7, 36, "`mass` must be a mass with its unit, found 20"),
        (22, 1, "`patern` is not a key of a movement"),
        (36, 7, "`on` can't hold \"Tuesday\""),
        (36, 18, "each of `on` must be one of"),
        (42, 9, "each of `reps` must be a whole number from 1 to 100, found 0"),
        (42, 12, "each of `reps` must be a whole number from 1 to 100, found -1"),
        (48, 10, "`1 min` is neither a number nor text in quotes"),
        (49, 10, "`rounds` must be a whole number from 1 to 60, found 99"),
        (64, 1, "`txet` is not a key of a note"),
    ];
    assert_eq!(problems.len(), expected.len(), "{problems:#?}");
    for (problem, (line, column, what)) in problems.iter().zip(expected) {
        assert_eq!((problem.line, problem.column), (line, column), "{problem:#?}");
        assert!(problem.what.starts_with(what), "{problem:#?}");
    }
    let sound = text.replace("window = 1 min", "window = \"1 min\"");
    assert!(places(&bad(&sound)).contains(&(41, 12, "there is no movement \"row\"")));
}

#[test]
fn behind_a_broken_header_nothing_is_guessed() {
    let text = spoilt("[[day.piece]]", "[[day.piece]").replace("rounds = 3", "rounds = 0");
    let text = text.replace("weeks = 3", "weeks = 0");
    let problems = bad(&text);
    assert_eq!(problems.len(), 2, "{problems:#?}");
    assert_eq!((problems[0].line, problems[1].line), (4, 38));
}

#[test]
fn fifty_problems_are_enough() {
    let keys = |count: usize| (0..count).map(|key| format!("key{key} = 1\n")).collect::<String>();
    let text = |count| spoilt("[kit]\n", &format!("[kit]\n{}", keys(count)));
    assert_eq!(bad(&text(50)).len(), 50);
    let problems = bad(&text(60));
    assert_eq!(problems.len(), 50);
    assert_eq!(places(&problems)[49], (56, 1, "and 11 more problems from here on"));
}
