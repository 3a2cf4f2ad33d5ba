//! Pieces, sets, windows and holds, each in a line.

use super::plain::{clock_time, list};
use crate::plan::Technique;
use crate::say::piece as say;

/// `Back squat on the long bar, rest 2 min`.
pub(crate) fn strength_heading(movement: &str, bar: Option<&str>, rest_ms: Option<i64>) -> String {
    match (bar, rest_ms.map(clock_time)) {
        (Some(bar), Some(rest)) => say::strength_on_bar(movement, bar, rest),
        (None, Some(rest)) => say::strength(movement, rest),
        (Some(bar), None) => say::strength_on_bar_alone(movement, bar),
        (None, None) => movement.to_owned(),
    }
}

/// `12 windows of 1 min, 3 rounds, aim for 10 s to spare`.
pub(crate) fn interval_heading(
    windows: u32,
    window_ms: i64,
    rounds: u32,
    margin_ms: i64,
) -> String {
    say::interval(windows, clock_time(window_ms), rounds, clock_time(margin_ms))
}

/// `Calf stretch at the wall, 2 min each side, held still`.
pub(crate) fn hold_heading(stretch: &str, hold_ms: i64, sides: u32, how: Technique) -> String {
    let time = clock_time(hold_ms);
    match (how, sides > 1) {
        (Technique::Static, false) => say::hold_still(stretch, time),
        (Technique::Static, true) => say::hold_still_sides(stretch, time),
        (Technique::ContractRelax, false) => say::hold_push(stretch, time),
        (Technique::ContractRelax, true) => say::hold_push_sides(stretch, time),
    }
}

/// `6`, `5 or more`.
pub(crate) fn reps(asked: u32, open: bool) -> String {
    if open { say::or_more(asked) } else { asked.to_string() }
}

/// What is remarked on a set that was done.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Remarks<'a> {
    /// Fewer reps than asked for.
    pub(crate) short: bool,
    /// The option that was lifted instead of the movement.
    pub(crate) other: Option<&'a str>,
    /// Two devices say different things about it.
    pub(crate) conflict: bool,
    /// It looks like a slip of the finger.
    pub(crate) slip: bool,
    /// The coach leaves it out.
    pub(crate) aside: bool,
}

/// `60 kg × 5, 2 left (short) (Squat to a box) (two versions)`.
pub(crate) fn set_done(
    load: Option<&str>,
    reps: u32,
    left: Option<u32>,
    remarks: Remarks<'_>,
) -> String {
    let set = load.map_or_else(|| say::reps_alone(reps), |load| say::load_times_reps(load, reps));
    let set = left.map_or_else(|| set.clone(), |left| say::set_left(&set, left));
    let Remarks { short, other, conflict, slip, aside } = remarks;
    let notes = [
        short.then(say::fell_short),
        other,
        conflict.then(say::two_versions),
        slip.then(say::may_be_a_slip),
        aside.then(say::left_out),
    ];
    notes.into_iter().flatten().fold(set, say::noted)
}

/// `60 kg × 6`; without a load the reps alone.
pub(crate) fn set_asked(load: Option<&str>, reps: &str) -> String {
    match (load, reps.parse::<u32>()) {
        (Some(load), _) => say::load_times_reps(load, reps),
        (None, Ok(reps)) => say::reps_alone(reps),
        (None, Err(_)) => say::reps_open(reps),
    }
}

/// `20 kg × 10 (empty bar)`.
pub(crate) fn warm_up(load: &str, reps: u32, build: Option<&str>) -> String {
    let set = say::load_times_reps(load, reps);
    build.map_or_else(|| set.clone(), |build| say::noted(&set, build))
}

/// `15 × Bell swing, 16 kg`.
pub(crate) fn window_asked(asked: u32, movement: &str, load: Option<&str>) -> String {
    match load {
        Some(load) => say::window_asked_load(asked, movement, load),
        None => say::window_asked(asked, movement),
    }
}

/// `12 done, 8 s to spare (rushed)`.
pub(crate) fn window_done(reps: u32, spare_ms: Option<i64>, rushed: bool) -> String {
    match (spare_ms.map(clock_time), rushed) {
        (None, _) => say::window_done(reps),
        (Some(spare), false) => say::window_done_spare(reps, spare),
        (Some(spare), true) => say::window_done_rushed(reps, spare),
    }
}

/// How far a piece is.
pub(crate) fn progress(done: usize, all: usize) -> String {
    if done == all { say::progress_done().to_owned() } else { say::progress(done, all) }
}

/// `Back squat, set 2 of 4: 60 kg × 6 (5 + 10 kg a side; put on 5 kg)`.
pub(crate) fn set_line(title: &str, load: &str, plates: Option<&str>, reps: &str) -> String {
    match plates {
        Some(plates) => say::set_line_plates(title, load, reps, plates),
        None => say::set_line(title, load, reps),
    }
}

/// Other training days of the plan for the same date.
pub(crate) fn other_days(days: &[String]) -> String {
    say::other_days(list(days))
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};

    use super::*;

    #[test]
    fn a_set_says_what_was_done_and_what_is_odd_about_it() {
        let other = Some("Squat to a box");
        let all = Remarks { short: true, other, conflict: true, slip: true, aside: true };
        let some = Remarks { slip: false, aside: false, ..all };
        let said = |load| set_done(load, 5, Some(2), some);
        let odd = || set_done(Some("60 kg"), 5, None, Remarks { short: false, other: None, ..all });
        assert_eq!(odd(), "60 kg × 5 (two versions) (may be a slip) (left out by the coach)");
        assert_eq!(
            speaking(Language::De, odd),
            "60 kg × 5 (zwei Fassungen) (vielleicht ein Versehen) (vom Coach nicht gezählt)"
        );
        assert_eq!(
            said(Some("60 kg")),
            "60 kg × 5, 2 left (short) (Squat to a box) (two versions)"
        );
        assert_eq!(set_done(None, 1, None, Remarks::default()), "1 rep");
        assert_eq!(set_done(None, 5, None, Remarks::default()), "5 reps");
        let german = speaking(Language::De, || said(None));
        assert_eq!(german, "5 Wdh., 2 übrig (nicht geschafft) (Squat to a box) (zwei Fassungen)");
    }

    #[test]
    fn reps_alone_have_their_plural() {
        let said = || ["1", "6", &reps(5, true)].map(|reps| set_asked(None, reps));
        assert_eq!(said(), ["1 rep", "6 reps", "5 or more reps"]);
        assert_eq!(speaking(Language::De, said), ["1 Wdh.", "6 Wdh.", "5 oder mehr Wdh."]);
    }

    #[test]
    fn windows_and_rounds_have_their_plurals() {
        let said = |windows, rounds| interval_heading(windows, 60_000, rounds, 10_000);
        assert_eq!(said(12, 3), "12 windows of 1 min, 3 rounds, aim for 10 s to spare");
        assert_eq!(said(1, 1), "1 window of 1 min, 1 round, aim for 10 s to spare");
        let german = speaking(Language::De, || said(12, 1));
        assert_eq!(german, "12 Fenster zu 1 min, 1 Runde, Ziel: 10 s Luft");
    }
}
