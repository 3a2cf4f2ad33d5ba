//! What a clock says, aloud and on screen.

use super::plain::{clock_time, count, list};
use crate::clock::{
    CueKind, HoldPhase, HoldState, IntervalPhase, IntervalState, Phase, Trust, WhyShort,
};
use crate::load::RestBasis;

/// What a cue speaks: short, for somebody on the floor with the phone out of reach.
pub(crate) fn cue(kind: CueKind) -> &'static str {
    match kind {
        CueKind::GetReady => "get ready",
        CueKind::Begin => "go",
        CueKind::Halfway => "halfway",
        CueKind::Contract => "push",
        CueKind::Release => "let go",
        CueKind::SwitchSide => "change sides",
        CueKind::NextWindow => "next",
        CueKind::LastSeconds => "ten seconds",
        CueKind::End => "done",
        CueKind::RestOver => "rest is over",
    }
}

/// What an athlete does now, as it stands over the digits: the word that is spoken too.
pub(crate) fn phase(phase: Phase, turn: u32, turns: u32) -> String {
    match phase {
        Phase::Ready => "Get ready".into(),
        Phase::Hold => "Hold".into(),
        Phase::Push => "Push".into(),
        Phase::LetGo => "Let go".into(),
        Phase::Switch => "Change sides".into(),
        Phase::Window => format!("Window {turn} of {turns}"),
        Phase::Rest => "Rest".into(),
        Phase::RestOver => "Rest is over".into(),
        Phase::Done => "Done".into(),
    }
}

/// `1:24`, rounded up to the whole second: nobody is sent off early.
pub(crate) fn digits(ms: i64) -> String {
    let seconds = (ms.max(0) + 999) / 1000;
    format!("{}:{:02}", seconds / 60, seconds % 60)
}

/// The next cue: `next: halfway in 0:48`.
pub(crate) fn next_cue(words: &str, due_in_ms: i64) -> String {
    format!("next: {words} in {}", digits(due_in_ms))
}

/// The cues that nobody could give, the latest of more than a few.
pub(crate) fn went_by(cues: &[String]) -> String {
    const MOST: usize = 4;
    let latest = cues.len().saturating_sub(MOST);
    let more = if latest > 0 { "...; " } else { "" };
    format!("went by: {more}{}", cues[latest..].join("; "))
}

/// How long ago something was: `40 s ago`, `4 min ago`, `10 h 55 min ago`.
pub(crate) fn long_ago(ms: i64) -> String {
    match ms / 1000 {
        seconds @ ..60 => format!("{seconds} s ago"),
        seconds @ 60..3600 => format!("{} min ago", seconds / 60),
        seconds => format!("{} h {} min ago", seconds / 3600, seconds % 3600 / 60),
    }
}

/// The same for a window that starts, with its movement: `next, Bell swing`.
pub(crate) fn window_cue(kind: CueKind, movement: &str) -> String {
    format!("{}, {movement}", cue(kind))
}

/// Why a side was short, with what the athlete said; none where there is nothing to say.
pub(crate) fn short(short: Option<WhyShort>, said: Option<&str>) -> Option<String> {
    let why = match short {
        Some(WhyShort::Skipped) => Some("skipped"),
        Some(WhyShort::Stopped) => Some("stopped early"),
        Some(WhyShort::Unseen) => Some("not all of it was seen"),
        Some(WhyShort::Said) | None => None,
    };
    match (why, said) {
        (Some(why), Some(said)) => Some(format!("{why}: \"{said}\"")),
        (Some(why), None) => Some(why.to_owned()),
        (None, Some(said)) => Some(format!("\"{said}\"")),
        (None, None) => None,
    }
}

const UNKNOWN: &str = "the phone was started again with another time, so what happened since is not \
                       known";

/// `stopped 4 min ago`; where that is not known it says so.
fn ended(ran_out: bool, ago_ms: i64, trust: Trust) -> String {
    let how = if ran_out { "ran out" } else { "stopped" };
    match trust {
        Trust::Unknown => format!("{how}, how long ago is not known"),
        _ if ago_ms < 1000 => format!("{how} just now"),
        _ => format!("{how} {} ago", ago(ago_ms)),
    }
}

/// A time that is over, with hours where there are any.
fn ago(ms: i64) -> String {
    match ms / 3_600_000 {
        0 => clock_time(ms),
        hours => format!("{hours} h {} min", ms % 3_600_000 / 60_000),
    }
}

/// `2 min and 1 min 35 s`.
fn held(ms: &[i64]) -> String {
    list(&ms.iter().map(|ms| clock_time(*ms)).collect::<Vec<_>>())
}

/// What to look at or answer about a hold's clock; `logged` are the sides logged already.
pub(crate) fn hold_question(state: &HoldState, logged: &[i64]) -> Option<String> {
    let seen = held(&state.held_ms);
    match (&state.phase, state.trust) {
        (HoldPhase::Done { ran_out, ago_ms }, trust) => {
            let ended = ended(*ran_out, *ago_ms, trust);
            Some(match (logged.is_empty(), state.held_ms.iter().all(|ms| *ms == 0)) {
                (false, _) => format!("{ended}; logged: {}", held(logged)),
                (true, true) => format!("{ended}; nothing was held"),
                (true, false) => format!("{ended}; to be logged: {seen}. Is that right?"),
            })
        }
        (HoldPhase::NotBegun, _) | (_, Trust::Boot) => None,
        (_, Trust::Wall) => Some(
            "the phone was started again: counted on by its wall clock. Are the seconds right?"
                .into(),
        ),
        (_, Trust::Unknown) => {
            Some(format!("{UNKNOWN}. Seen: {seen}. Go on, or say the seconds of each side?"))
        }
    }
}

/// What to look at or answer about an interval's clock; `open` are the windows not logged.
pub(crate) fn interval_question(state: &IntervalState, open: &[u32]) -> Option<String> {
    match (&state.phase, state.trust) {
        (IntervalPhase::Done { ran_out, ago_ms }, trust) => {
            let first = open.first()?;
            let ended = ended(*ran_out, *ago_ms, trust);
            let windows = count(open.len() as u64, "window");
            let are = if open.len() == 1 { "is" } else { "are" };
            Some(format!(
                "{ended}: {windows} {are} not logged, from window {first} on. How many reps?"
            ))
        }
        (IntervalPhase::NotBegun, _) | (_, Trust::Boot) => None,
        (_, Trust::Wall) => Some(
            "the phone was started again: counted on by its wall clock. Is the window right?"
                .into(),
        ),
        (_, Trust::Unknown) => {
            Some(format!("{UNKNOWN}. Go on from here, or stop and begin again?"))
        }
    }
}

/// How many reps leave time to move on, and at what pace.
pub(crate) fn fewer_reps(pace_ms: i64, fit: u32, reps: u32, margin_ms: i64) -> String {
    let (pace, margin) =
        (format!("{}.{}", pace_ms / 1000, pace_ms % 1000 / 100), clock_time(margin_ms));
    match fit {
        0 => {
            format!("at {pace} s a rep not even one rep leaves {margin} to move on: take an option")
        }
        fit => format!("at {pace} s a rep, {fit} rather than {reps} leave {margin} to move on"),
    }
}

/// Where the length of a rest comes from: `3 to 5 min is the published range after heavy sets`.
pub(crate) fn suggested_rest(least_ms: i64, most_ms: i64, basis: RestBasis) -> String {
    match basis {
        RestBasis::Plan => "as the plan says".into(),
        RestBasis::Usual => "as usual".into(),
        RestBasis::Published => format!(
            "{} to {} is the published range after heavy sets",
            least_ms / 60_000,
            clock_time(most_ms)
        ),
    }
}

/// How a rest stands; `from` says where its length comes from.
pub(crate) fn rest(rested_ms: Option<i64>, suggested_ms: i64, from: &str, trust: Trust) -> String {
    let suggested = clock_time(suggested_ms);
    let Some(rested_ms) = rested_ms else {
        return format!("{UNKNOWN}. {suggested} is suggested, {from}: go by feel");
    };
    let by =
        if trust == Trust::Wall { "; by the wall clock: the phone was started again" } else { "" };
    if rested_ms < suggested_ms {
        // Rounded up, so that nobody is sent off early.
        let left = clock_time((suggested_ms - rested_ms + 999) / 1000 * 1000);
        format!("{left} of {suggested} left, {from}{by}")
    } else {
        format!("rested {} of {suggested}, {from}{by}", clock_time(rested_ms))
    }
}

#[cfg(test)]
mod tests {
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
}
