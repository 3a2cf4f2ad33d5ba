//! Short makers of taps. Where a piece is not named they are about the small plan's own: squats, the
//! windows in the corners, the calves' hold.

use holdfast_core::care::{Place, Sign};
use holdfast_core::clock::Act;
use holdfast_core::journal::{Part, RestAct, Until};
use holdfast_core::plan::MeasuredWhen;
use holdfast_core::session::{SideReading, Tap};
use holdfast_core::{Mass, Millis, RecordId};

/// Begins the day that is planned.
pub fn begin() -> Tap {
    Tap::Begin { day: None }
}

/// Begins a day by its name.
pub fn begin_day(day: &str) -> Tap {
    Tap::Begin { day: Some(day.into()) }
}

/// Finishes with the session's rating and its minutes.
pub fn finish(rpe: u32, minutes: u32) -> Tap {
    Tap::Finish { rpe: Some(rpe), minutes: Some(minutes) }
}

/// Finishes with a rating, and the minutes that the clocks counted.
pub fn rate(rpe: u32) -> Tap {
    Tap::Finish { rpe: Some(rpe), minutes: None }
}

/// Finishes without a rating.
pub fn finish_unrated() -> Tap {
    Tap::Finish { rpe: None, minutes: None }
}

/// Logs the next set of squats.
pub fn set(load: Option<Mass>, reps: Option<u32>) -> Tap {
    set_of("Squat", None, load, reps)
}

/// Logs the next set of squats as planned, with so many kilograms.
pub fn kg(load: i64) -> Tap {
    set(Some(Mass::kg(load)), None)
}

/// Logs a set of squats, the next one or one by its number: kilograms, reps, reps left.
pub fn squat(set: Option<u32>, kg: Option<i64>, reps: Option<u32>, reserve: Option<u32>) -> Tap {
    Tap::LogSet { piece: "Squat".into(), set, load: kg.map(Mass::kg), reps, reserve }
}

/// Logs a set of any piece, without a word on the reps left.
pub fn set_of(piece: &str, set: Option<u32>, load: Option<Mass>, reps: Option<u32>) -> Tap {
    Tap::LogSet { piece: piece.into(), set, load, reps, reserve: None }
}

/// Logs a window in the corners, the next one or one by its number.
pub fn window(window: Option<u32>, reps: Option<u32>, spare_ms: Option<i64>) -> Tap {
    Tap::LogWindow { piece: "Corners".into(), window, reps, spare: spare_ms.map(Millis) }
}

/// Logs the calves' hold: each side by hand, or what the clock counted when none is given.
pub fn held(held_ms: &[i64], said: Option<&str>) -> Tap {
    let said = said.map(str::to_owned);
    Tap::LogHold {
        piece: "Calves".into(),
        held: held_ms.iter().copied().map(Millis).collect(),
        said,
    }
}

/// Works a piece's clock.
pub fn clock(piece: &str, act: Act) -> Tap {
    clock_from(piece, act, None)
}

/// Works a piece's clock, from a station.
pub fn clock_from(piece: &str, act: Act, station: Option<u32>) -> Tap {
    Tap::Clock { piece: piece.into(), act, station }
}

/// Logs a reading at the calves, in tenths.
pub fn range(when: MeasuredWhen, side: Option<u32>, tenths: i64) -> Tap {
    let readings = vec![SideReading { side, tenths }];
    Tap::LogRange { piece: "Calves".into(), when, readings }
}

/// Takes an option for the squats, or the movement itself again.
pub fn option(option: Option<&str>) -> Tap {
    Tap::TakeOption { piece: "Squat".into(), movement: None, option: option.map(str::to_owned) }
}

/// Clears a flag.
pub fn clear(flag: RecordId) -> Tap {
    Tap::ClearFlags { flags: vec![flag] }
}

/// Ends the rest after the last set.
pub fn end_rest() -> Tap {
    Tap::Rest { act: RestAct::End }
}

/// Puts the work of a piece off.
pub fn put_off(piece: &str, until: Until) -> Tap {
    Tap::PutOff { piece: piece.into(), part: Part::Work, until }
}

/// Flags discomfort in the squats.
pub fn flag(place: Place, severity: u32, signs: &[Sign]) -> Tap {
    flag_in("Squat", place, severity, signs)
}

/// Flags discomfort in a piece.
pub fn flag_in(piece: &str, place: Place, severity: u32, signs: &[Sign]) -> Tap {
    let (piece, signs) = (piece.into(), signs.to_vec());
    Tap::Flag { piece, movement: None, place, severity, signs }
}
