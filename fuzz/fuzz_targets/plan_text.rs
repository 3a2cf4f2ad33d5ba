//! A plan as a coach types it: a block, or every problem with its place.

#![no_main]

use chrono::NaiveDate;
use holdfast_core::plan::{MAX_PLAN_BYTES, Problem, Reviewed, read_kit, read_plan, review_plan};
use holdfast_fuzz::{laws, within};
use libfuzzer_sys::fuzz_target;

/// The most memory that reading a plan takes.
const MOST: usize = 64 * 1024 * 1024;
/// Nobody fixes more at a time.
const MOST_PROBLEMS: usize = 50;

/// Problems have a place in the text and can be shown, in the order of the text.
fn law(text: &[u8], problems: &[Problem]) {
    assert!(!problems.is_empty() && problems.len() <= MOST_PROBLEMS, "{}", problems.len());
    assert!(problems.is_sorted());
    let lines = text.split(|byte| *byte == b'\n').count();
    for problem in problems {
        laws::said(&problem.what);
        laws::said(&problem.help);
        let line = problem.line as usize;
        assert!((1..=lines).contains(&line), "line {line} of {lines}");
        let of = text.split(|byte| *byte == b'\n').nth(line - 1).unwrap_or_default();
        assert!(
            (1..=of.len() + 1).contains(&(problem.column as usize)),
            "column {}",
            problem.column
        );
    }
}

fuzz_target!(|text: &[u8]| {
    let today = NaiveDate::from_ymd_opt(2026, 11, 4);
    let plan = within(MOST, || read_plan(text));
    let kit = within(MOST, || read_kit(text));
    if let Err(problems) = &kit {
        law(text, problems);
    }
    let reviewed = within(MOST, || review_plan(text, today, &[]));
    match &plan {
        Ok(block) => {
            assert!(text.len() <= MAX_PLAN_BYTES);
            let text = std::str::from_utf8(text).expect("a plan is text");
            assert!(text.parse::<toml::Table>().is_ok(), "a plan is TOML");
            let Ok(Reviewed { block: again, notes }) = reviewed else {
                panic!("what is read is reviewed");
            };
            assert_eq!(&again, block);
            for note in &notes {
                laws::said(&note.what);
            }
            // What means nothing in TOML means nothing here.
            if text.len() + 8 < MAX_PLAN_BYTES {
                let ended = format!("{text}\n# end\n");
                assert_eq!(read_plan(ended.as_bytes()).as_ref(), Ok(block));
            }
        }
        Err(problems) => {
            law(text, problems);
            assert_eq!(reviewed.err().as_ref(), Some(problems), "reviewed is read first");
        }
    }
    if let Ok(summary) = holdfast_core::check_plan("plan".into(), text.to_vec(), today) {
        assert!(plan.is_ok());
        laws::said(&summary.heading);
        summary.lines.iter().for_each(|line| assert!(!line.contains(char::is_control)));
    }
});
