//! Pieces, sets, windows and holds, each in a line.

use super::plain::{clock_time, count, list};
use crate::plan::Technique;

/// `Back squat on the long bar, rest 2 min`.
pub(crate) fn strength_heading(movement: &str, bar: Option<&str>, rest_ms: i64) -> String {
    let bar = bar.map_or(String::new(), |bar| format!(" on the {bar}"));
    format!("{movement}{bar}, rest {}", clock_time(rest_ms))
}

/// `12 windows of 1 min, 3 rounds, aim for 10 s to spare`.
pub(crate) fn interval_heading(
    windows: u32,
    window_ms: i64,
    rounds: u32,
    margin_ms: i64,
) -> String {
    format!(
        "{} of {}, {}, aim for {} to spare",
        count(u64::from(windows), "window"),
        clock_time(window_ms),
        count(u64::from(rounds), "round"),
        clock_time(margin_ms)
    )
}

/// `Calf stretch at the wall, 2 min each side, static`.
pub(crate) fn hold_heading(stretch: &str, hold_ms: i64, sides: u32, how: Technique) -> String {
    let sides = if sides > 1 { " each side" } else { "" };
    let how = match how {
        Technique::Static => "held still",
        Technique::ContractRelax => "push and let go",
    };
    format!("{stretch}, {}{sides}, {how}", clock_time(hold_ms))
}

/// `6`, `5 or more`.
pub(crate) fn reps(asked: u32, open: bool) -> String {
    if open { format!("{asked} or more") } else { asked.to_string() }
}

/// `60 kg x 5, 2 left (short) (Squat to a box) (two versions)`.
pub(crate) fn set_done(
    load: Option<&str>,
    reps: u32,
    left: Option<u32>,
    made: bool,
    other: Option<&str>,
    conflict: bool,
) -> String {
    let load = load.map_or(String::new(), |load| format!("{load} x "));
    let left = left.map_or(String::new(), |left| format!(", {left} left"));
    let short = if made { "" } else { " (short)" };
    let other = other.map_or(String::new(), |other| format!(" ({other})"));
    let conflict = if conflict { " (two versions)" } else { "" };
    format!("{load}{reps}{left}{short}{other}{conflict}")
}

/// `60 kg x 6`; without a load the reps alone.
pub(crate) fn set_asked(load: Option<&str>, reps: &str) -> String {
    match load {
        Some(load) => format!("{load} x {reps}"),
        None => format!("{reps} reps"),
    }
}

/// `20 kg x 10 (empty bar)`.
pub(crate) fn warm_up(load: &str, reps: u32, build: Option<&str>) -> String {
    let build = build.map_or(String::new(), |build| format!(" ({build})"));
    format!("{load} x {reps}{build}")
}

/// `15 x Bell swing, 16 kg`.
pub(crate) fn window_asked(asked: u32, movement: &str, load: Option<&str>) -> String {
    let load = load.map_or(String::new(), |load| format!(", {load}"));
    format!("{asked} x {movement}{load}")
}

/// `12 done, 8 s to spare (rushed)`.
pub(crate) fn window_done(reps: u32, spare_ms: Option<i64>, rushed: bool) -> String {
    let spare = spare_ms.map_or(String::new(), |spare| format!(", {} to spare", clock_time(spare)));
    let rushed = if rushed { " (rushed)" } else { "" };
    format!("{reps} done{spare}{rushed}")
}

/// How far a piece is.
pub(crate) fn progress(done: usize, all: usize) -> String {
    if done == all { "done".into() } else { format!("{done} of {all}") }
}

/// `Back squat, set 2 of 4: 60 kg (5 + 10 kg a side; put on 5 kg) x 6`.
pub(crate) fn set_line(title: &str, load: &str, plates: Option<&str>, reps: &str) -> String {
    let plates = plates.map_or(String::new(), |plates| format!(" ({plates})"));
    format!("{title}: {load}{plates} x {reps}")
}

/// What a hold before anything is begun says.
pub(crate) fn other_days(days: &[String]) -> String {
    format!("also planned for this date: {}", list(days))
}
