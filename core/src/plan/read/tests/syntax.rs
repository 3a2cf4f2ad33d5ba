//! Bad plans: text that is not TOML, several problems at once, and more than anyone can fix.

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
        ("rounds = 3", "rounds =", 49, 9, "A value is missing here", "double quotes"),
        ("rounds = 3", "rounds 3", 49, 8, "An `=` is missing here.", "Write `key = value`"),
        ("\"Cellar\"", "\"Cellar", 2, 15, "no closing quote", "on the same line"),
        (
            "\"Last\"",
            "\"\"\"Last\"",
            63,
            8,
            "text that starts here is not closed",
            "End it with `\"\"\"`.",
        ),
        (
            "2026-11-02",
            "2026-11-31",
            3,
            10,
            "This date or time does not exist.",
            "such as `2026-11-02`",
        ),
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
        ("[[day]]", "[[day]", 34, 7, "The brackets here don't match.", "`[[` with `]]`"),
        ("[[day.piece]]", "day.piece]]", 38, 10, "An `=` is missing here.", "Write `key = value`"),
        ("[5, 5]", "[5, 5", 42, 1, "list that starts here is not closed", "End it with `]`."),
        ("[5, 5]", "[5, 5,", 42, 1, "list that starts here is not closed", "End it with `]`."),
        (
            "\"2.5 kg\" }",
            "\"2.5 kg\"",
            43,
            1,
            "The table that starts here is not closed",
            "End it with `}`.",
        ),
        ("count = 2 },\n]", "count = 2 },\n", 8, 1, "list that starts here is not closed", "]"),
        ("count = 4 },", "count = 4 }", 10, 3, "A comma is missing before this", "Put a comma"),
        ("text = \"Well done.\"\n", "tags = [1", 64, 1, "list that starts here is not closed", "]"),
    ];
    check(cases);
}

#[test]
fn what_the_parser_says_is_said_in_plain_words() {
    let rounds = "rounds = 3";
    let cases: &[Case<'_>] = &[
        (rounds, "rounds = 1_", 49, 11, "This number can't be read.", "Write digits only"),
        (rounds, "rounds = 01", 49, 10, "This number can't be read.", "Write digits only"),
        (rounds, "rounds == 3", 49, 9, "There is one `=` too many here.", "Take it out."),
        (rounds, "rounds = [1,,2]", 49, 13, "There is one comma too many here.", "Take it out."),
        (rounds, "r\u{fc}nde = 3", 49, 2, "This key can't be read.", "no blanks in them"),
        (rounds, "rounds = \"3\" \"4\"", 49, 14, "more than one key", "on each line"),
        (
            rounds,
            "name.x = 3",
            49,
            1,
            "The part before the dot has a value already.",
            "one of the two",
        ),
        ("\"Corners\"", "\"a\\qb\"", 47, 11, "This `\\` can't be read.", "write `\\\\`"),
        ("\"Corners\"", "'Corners", 47, 16, "This line can't be read.", "on the same line"),
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
        (4, 9, "`weeks` can't be 0."),
        (7, 36, "`mass` can't be 20."),
        (22, 1, "A movement has no `patern`"),
        (36, 7, "`on` can't hold \"Tuesday\""),
        (36, 18, "`on` can't hold 3."),
        (42, 9, "`reps` can't hold 0."),
        (42, 12, "`reps` can't hold -1."),
        (48, 10, "`1 min` is neither a number nor text in quotes"),
        (49, 10, "`rounds` can't be 99."),
        (64, 1, "A note has no `txet`"),
    ];
    assert_eq!(problems.len(), expected.len(), "{problems:#?}");
    for (problem, (line, column, what)) in problems.iter().zip(expected) {
        assert_eq!((problem.line, problem.column), (line, column), "{problem:#?}");
        assert!(problem.what.starts_with(what), "{problem:#?}");
    }
    let sound = text.replace("window = 1 min", "window = \"1 min\"");
    assert!(places(&bad(&sound)).contains(&(41, 12, "This plan has no movement \"row\".")));
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
    assert_eq!(places(&problems)[49], (56, 1, "11 more problems from here on."));
}

#[test]
fn a_key_with_a_line_break_stays_on_one_line() {
    let text = spoilt("[movement.swing]", "[movement]\n\"a\\nb\" = 1\n\n[movement.swing]");
    let problems = bad(&text);
    assert!(problems.iter().any(|problem| problem.what == "`a\u{fffd}b` can't be 1."));
    assert!(problems.iter().all(|problem| !problem.what.contains('\n')), "{problems:#?}");
}
