//! What a clock says, aloud and on screen.

use super::plain::{clock_time, list};
use crate::clock::{
    CueKind, HoldPhase, HoldState, IntervalPhase, IntervalState, Phase, Trust, WhyShort,
};
use crate::load::RestBasis;
use crate::say::clock as say;

/// What a cue speaks: short, for somebody on the floor with the phone out of reach.
pub(crate) fn cue(kind: CueKind) -> &'static str {
    match kind {
        CueKind::GetReady => say::cue_get_ready(),
        CueKind::Begin => say::cue_begin(),
        CueKind::Halfway => say::cue_halfway(),
        CueKind::Contract => say::cue_push(),
        CueKind::Release => say::cue_let_go(),
        CueKind::SwitchSide => say::cue_change_sides(),
        CueKind::NextWindow => say::cue_next(),
        CueKind::LastSeconds => say::cue_ten_seconds(),
        CueKind::End => say::cue_done(),
        CueKind::RestOver => say::cue_rest_over(),
    }
}

/// The same for a window that starts, with its movement: `next, Bell swing`.
pub(crate) fn window_cue(kind: CueKind, movement: &str) -> String {
    match kind {
        CueKind::Begin => say::cue_begin_movement(movement),
        CueKind::NextWindow => say::cue_next_movement(movement),
        other => cue(other).into(),
    }
}

/// What an athlete does now, as it stands over the digits: the word that is spoken too.
pub(crate) fn phase(phase: Phase, turn: u32, turns: u32) -> String {
    let word = match phase {
        Phase::Ready => say::get_ready(),
        Phase::Hold => say::hold(),
        Phase::Push => say::push(),
        Phase::LetGo => say::let_go(),
        Phase::Switch => say::change_sides(),
        Phase::Window => return say::window_of(turn, turns),
        Phase::Rest => say::rest(),
        Phase::RestOver => say::rest_is_over(),
        Phase::Done => say::done(),
    };
    word.into()
}

/// The side a switch leads to; none where there is but one.
pub(crate) fn to_side(side: u32, of: u32) -> Option<String> {
    match (side, of) {
        (_, ..=1) => None,
        (1, 2) => Some(say::to_left().into()),
        (2, 2) => Some(say::to_right().into()),
        (side, _) => Some(say::to_side(side)),
    }
}

/// The side that comes after a switch that stands still; none where there is but one.
pub(crate) fn before_side(side: u32, of: u32) -> Option<String> {
    match (side, of) {
        (_, ..=1) => None,
        (1, 2) => Some(say::before_left().into()),
        (2, 2) => Some(say::before_right().into()),
        (side, _) => Some(say::before_side(side)),
    }
}

/// `1:24`, rounded up to the whole second: nobody is sent off early.
pub(crate) fn digits(ms: i64) -> String {
    let seconds = (ms.max(0) + 999) / 1000;
    format!("{}:{:02}", seconds / 60, seconds % 60)
}

/// The next cue: `next: halfway in 0:48`.
pub(crate) fn next_cue(words: &str, due_in_ms: i64) -> String {
    say::next_cue(words, digits(due_in_ms))
}

/// The cues that nobody could give, the latest of more than a few.
pub(crate) fn went_by(cues: &[String]) -> String {
    const MOST: usize = 4;
    let latest = cues.len().saturating_sub(MOST);
    let cues = cues[latest..].join(say::between_cues());
    if latest > 0 { say::missed_cues_and_more(cues) } else { say::missed_cues(cues) }
}

/// How long ago something was: `40 s ago`, `4 min ago`, `10 h 55 min ago`.
pub(crate) fn long_ago(ms: i64) -> String {
    match ms / 1000 {
        seconds @ ..60 => say::seconds_ago(seconds),
        seconds @ 60..3600 => say::minutes_ago(seconds / 60),
        seconds => say::hours_ago(seconds / 3600, seconds % 3600 / 60),
    }
}

/// The time a side was held, with why it was short and what the athlete said about it: `1 min 5 s
/// (stopped early)`.
pub(crate) fn held_side(held_ms: i64, short: Option<WhyShort>, said: Option<&str>) -> String {
    let held = clock_time(held_ms);
    let why = match short {
        // Skipped is what was not held at all, whichever key ended it.
        Some(WhyShort::Skipped | WhyShort::Stopped) if held_ms == 0 => Some(say::skipped()),
        Some(WhyShort::Skipped | WhyShort::Stopped) => Some(say::stopped_early()),
        Some(WhyShort::Unseen) => Some(say::partly_timed()),
        Some(WhyShort::Said) | None => None,
    };
    match (why, said) {
        (Some(why), Some(said)) => say::held_why(held, say::why_said(why, said)),
        (Some(why), None) => say::held_why(held, why),
        (None, Some(said)) => say::held_why(held, say::said(said)),
        (None, None) => held,
    }
}

/// `Stopped 4 min ago.`; where that is not known it says so.
fn ended(ran_out: bool, ago_ms: i64, trust: Trust) -> String {
    match (trust, ran_out) {
        (Trust::Unknown, true) => say::ran_out_unknown().into(),
        (Trust::Unknown, false) => say::ended_unknown().into(),
        (_, true) if ago_ms < 1000 => say::ran_out().into(),
        (_, false) if ago_ms < 1000 => say::ended().into(),
        (_, true) => say::ran_out_ago(ago(ago_ms)),
        (_, false) => say::ended_ago(ago(ago_ms)),
    }
}

/// A time that is over, with hours where there are any.
fn ago(ms: i64) -> String {
    match ms / 3_600_000 {
        0 => clock_time(ms),
        hours => say::hours(hours, ms % 3_600_000 / 60_000),
    }
}

/// `2 min and 1 min 35 s`.
fn held(ms: &[i64]) -> String {
    list(&ms.iter().map(|ms| clock_time(*ms)).collect::<Vec<_>>())
}

/// What to look at or answer about a hold's clock; `logged` are the sides logged already.
pub(crate) fn hold_question(state: &HoldState, logged: &[i64]) -> Option<String> {
    match (&state.phase, state.trust) {
        (HoldPhase::Done { ran_out, ago_ms }, trust) => {
            let ended = ended(*ran_out, *ago_ms, trust);
            Some(match (logged.is_empty(), state.held_ms.iter().all(|ms| *ms == 0)) {
                (false, _) => say::hold_logged(ended, held(logged)),
                (true, true) => say::hold_nothing(ended),
                (true, false) => say::hold_to_log(ended, held(&state.held_ms)),
            })
        }
        (HoldPhase::NotBegun, _) | (_, Trust::Boot) => None,
        (_, Trust::Wall) => Some(say::hold_restarted().into()),
        (_, Trust::Unknown) => Some(say::hold_unknown(held(&state.held_ms))),
    }
}

/// What to look at or answer about an interval's clock; `open` are the windows not logged.
pub(crate) fn interval_question(state: &IntervalState, open: &[u32]) -> Option<String> {
    match (&state.phase, state.trust) {
        (IntervalPhase::Done { ran_out, ago_ms }, trust) => {
            let first = open.first()?;
            Some(say::windows_to_log(open.len(), ended(*ran_out, *ago_ms, trust), first))
        }
        (IntervalPhase::NotBegun, _) | (_, Trust::Boot) => None,
        (_, Trust::Wall) => Some(say::interval_restarted().into()),
        (_, Trust::Unknown) => Some(say::interval_unknown().into()),
    }
}

/// How many reps leave time to move on.
pub(crate) fn fewer_reps(fit: u32, reps: u32, margin_ms: i64) -> String {
    let margin = clock_time(margin_ms);
    match fit {
        0 => say::no_reps_fit(margin),
        fit => say::fewer_reps(fit, reps, margin),
    }
}

/// Where the length of a rest comes from: `published guidance for heavy sets: 3 to 5 min`.
pub(crate) fn suggested_rest(least_ms: i64, most_ms: i64, basis: RestBasis) -> String {
    match basis {
        RestBasis::Plan => say::rest_by_plan().into(),
        RestBasis::Usual => say::rest_usual().into(),
        RestBasis::Published => say::rest_published(least_ms / 60_000, clock_time(most_ms)),
    }
}

/// How a rest stands; `from` says where its length comes from.
pub(crate) fn rest(rested_ms: Option<i64>, suggested_ms: i64, from: &str, trust: Trust) -> String {
    let suggested = clock_time(suggested_ms);
    let Some(rested_ms) = rested_ms else { return say::rest_unknown(suggested, from) };
    let restarted = trust == Trust::Wall;
    if rested_ms < suggested_ms {
        // Rounded up, so that nobody is sent off early.
        let to_go = clock_time((suggested_ms - rested_ms + 999) / 1000 * 1000);
        if restarted {
            say::rest_to_go_restarted(to_go, suggested, from)
        } else {
            say::rest_to_go(to_go, suggested, from)
        }
    } else {
        let rested = clock_time(rested_ms);
        if restarted {
            say::rested_restarted(rested, suggested, from)
        } else {
            say::rested(rested, suggested, from)
        }
    }
}

#[cfg(test)]
mod tests {
    use catalogue::Language;

    use super::*;

    #[test]
    fn what_is_long_ago_is_said_in_minutes_and_hours() {
        let said = [900, 59_999, 60_000, 3_599_999, 3_600_000, 39_359_000].map(long_ago);
        let wanted = ["0 s", "59 s", "1 min", "59 min", "1 h 0 min", "10 h 55 min"];
        assert_eq!(said, wanted.map(|time| format!("{time} ago")));
    }

    #[test]
    fn time_left_is_rounded_up() {
        for (ms, text) in [
            (120_000, "2:00"),
            (119_001, "2:00"),
            (119_000, "1:59"),
            (1, "0:01"),
            (0, "0:00"),
            (-5, "0:00"),
            (3_600_000, "60:00"),
        ] {
            assert_eq!(digits(ms), text, "{ms}");
        }
    }

    #[test]
    fn cues_are_called_in_german() {
        let called = || {
            let kinds = [CueKind::Contract, CueKind::Release, CueKind::SwitchSide];
            (kinds.map(cue), window_cue(CueKind::NextWindow, "Burpee"), to_side(2, 2))
        };
        let german = catalogue::speaking(Language::De, called);
        let next = "weiter, Burpee".to_owned();
        assert_eq!(
            german,
            (["anspannen", "entspannen", "Seite wechseln"], next, Some("nach rechts".into()))
        );
        let next = "next, Burpee".to_owned();
        assert_eq!(
            called(),
            (["push", "let go", "change sides"], next, Some("to the right".into()))
        );
    }

    /// Numbers that choose a form, and words whose order is another one.
    #[test]
    fn windows_and_reps_are_counted_in_both_languages() {
        let state = |ago_ms| IntervalState {
            phase: IntervalPhase::Done { ran_out: false, ago_ms },
            window_ends_in_ms: None,
            cues: Vec::new(),
            ends_in_ms: None,
            passed: Vec::new(),
            trust: Trust::Boot,
        };
        let said = || {
            let asked = [&[4][..], &[3, 4, 5]].map(|open| interval_question(&state(17_000), open));
            (asked, [1, 12].map(|fit| fewer_reps(fit, 15, 10_000)), long_ago(3_600_000))
        };
        let some = |texts: [&str; 2]| texts.map(|text| Some(text.to_owned()));
        let text = |texts: [&str; 2]| texts.map(str::to_owned);
        assert_eq!(
            said(),
            (
                some([
                    "Stopped 17 s ago. 1 window still to log: window 4.",
                    "Stopped 17 s ago. 3 windows still to log, starting with 3.",
                ]),
                text([
                    "At this pace, 1 rep instead of 15 leaves 10 s to change over.",
                    "At this pace, 12 reps instead of 15 leave 10 s to change over.",
                ]),
                "1 h 0 min ago".to_owned(),
            )
        );
        assert_eq!(
            catalogue::speaking(Language::De, said),
            (
                some([
                    "Vor 17 s abgebrochen. Noch 1 Fenster einzutragen: Fenster 4.",
                    "Vor 17 s abgebrochen. Noch 3 Fenster einzutragen, ab Fenster 3.",
                ]),
                text([
                    "Bei diesem Tempo hast du mit 1 Wdh. statt 15 noch 10 s Luft zum Wechseln.",
                    "Bei diesem Tempo hast du mit 12 Wdh. statt 15 noch 10 s Luft zum Wechseln.",
                ]),
                "vor 1 h 0 min".to_owned(),
            )
        );
    }

    #[test]
    fn why_a_side_was_short_is_quoted_as_each_language_quotes() {
        let said = || {
            let of = |short, said| held_side(65_000, short, said);
            [of(Some(WhyShort::Skipped), Some("Rest")), of(Some(WhyShort::Said), Some("Rest"))]
        };
        assert_eq!(said(), ["1 min 5 s (stopped early: \"Rest\")", "1 min 5 s (\"Rest\")"]);
        let german = catalogue::speaking(Language::De, said);
        assert_eq!(german, ["1 min 5 s (vorzeitig abgebrochen: „Rest“)", "1 min 5 s („Rest“)"]);
    }
}
