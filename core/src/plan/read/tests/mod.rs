//! Tests of the reader.

mod any;
mod demo;
mod german;
mod kinds;
mod pieces;
mod sections;
mod strength;
mod syntax;

use super::read_plan;
use crate::plan::{Block, Problem};

/// A small plan with one piece of every kind. Tests spoil it in one place at a time.
const PLAN: &str = r#"[block]
name = "Cellar"
starts = 2026-11-02
weeks = 3

[kit]
bar = [{ name = "long bar", mass = "20 kg" }]
plate = [
  { mass = "10 kg", count = 4 },
  { mass = "2.5 kg", count = 2 },
]
bell = [{ mass = "16 kg", count = 2 }]

[movement.squat]
name = "Squat"
pattern = "squat"
lifted = "bar"
option.step-up = { name = "Step-up", because = "sore-legs", lifted = "bell" }

[movement.swing]
name = "Swing"
pattern = "hinge"
lifted = "bell"

[movement.press-up]
name = "Press-up"
pattern = "push"
lifted = "body"

[stretch.calf]
name = "Calf stretch"
region = "calves"

[[day]]
name = "Evening"
on = ["tuesday"]

[[day.piece]]
kind = "strength"
name = "Heavy"
movement = "squat"
reps = [5, 5]
load = { rule = "step", step = "2.5 kg" }

[[day.piece]]
kind = "interval"
name = "Corners"
window = "1 min"
rounds = 3
station = [{ movement = "swing", reps = 10, load = "16 kg" }]

[[day.piece]]
kind = "hold"
name = "Calves"
stretch = "calf"
hold = "2 min"
technique = "contract-relax"
contract = "6 s"
relax = "24 s"

[[day.piece]]
kind = "note"
name = "Last"
text = "Well done."
"#;

/// What to replace, with what; the line and column of the one problem, what it says, what helps.
type Case<'c> = (&'c str, &'c str, u32, u32, &'c str, &'c str);

/// The small plan with its first `from` replaced.
fn spoilt(from: &str, to: &str) -> String {
    assert!(PLAN.contains(from), "{from}");
    PLAN.replacen(from, to, 1)
}

fn good(text: &str) -> Block {
    read_plan(text.as_bytes()).unwrap_or_else(|problems| panic!("{problems:#?}\n{text}"))
}

fn bad(text: &str) -> Vec<Problem> {
    read_plan(text.as_bytes()).expect_err(text)
}

/// The places of problems and how each begins.
fn places(problems: &[Problem]) -> Vec<(u32, u32, &str)> {
    problems.iter().map(|p| (p.line, p.column, p.what.as_str())).collect()
}

fn check(cases: &[Case<'_>]) {
    for (from, to, line, column, what, help) in cases {
        let problems = bad(&spoilt(from, to));
        let [problem] = problems.as_slice() else { panic!("{to}: {problems:#?}") };
        assert_eq!((problem.line, problem.column), (*line, *column), "{to}: {problem:#?}");
        assert!(problem.what.contains(what), "{to}: {problem:#?}");
        assert!(problem.help.contains(help), "{to}: {problem:#?}");
        // The line ends of another editor make no difference.
        let other = bad(&spoilt(from, to).replace('\n', "\r\n"));
        let [other] = other.as_slice() else { panic!("{to}: {other:#?}") };
        assert_eq!((other.line, other.column, &other.help), (*line, *column, &problem.help));
    }
}

#[test]
fn the_small_plan_has_no_problem() {
    let block = good(PLAN);
    assert_eq!((block.movements.len(), block.stretches.len()), (3, 1));
    assert_eq!(block.days[0].pieces.len(), 4);
}
