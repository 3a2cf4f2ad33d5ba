//! Words that a phone draws around what the core shows.

use serde::Serialize;

use super::clock::digits;
use crate::say::phone as say;
use crate::session::PlateView;

/// The words of a phone's screens that stand in no record: ask for them again after the language changed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
#[allow(missing_docs, reason = "each is what it says")]
pub struct PhoneWords {
    pub each_side: String,
    pub put_on: String,
    pub take_off: String,
    pub bar_is_ready: String,
    pub then: String,
    pub seconds: String,
    pub next: String,
    pub warm_up: String,
    pub why: String,
    pub today: String,
    pub history: String,
    pub exchange: String,
    pub this_phone: String,
    pub more: String,
    pub back: String,
    pub not_now: String,
    pub empty_bar: String,
    pub set_done: String,
    pub set_now: String,
}

/// In the language that is spoken.
pub(crate) fn phone_words() -> PhoneWords {
    PhoneWords {
        each_side: say::each_side().into(),
        put_on: say::put_on().into(),
        take_off: say::take_off().into(),
        bar_is_ready: say::bar_is_ready().into(),
        then: say::then().into(),
        seconds: say::seconds().into(),
        next: say::next().into(),
        warm_up: say::warm_up().into(),
        why: say::why().into(),
        today: say::today().into(),
        history: say::history().into(),
        exchange: say::exchange().into(),
        this_phone: say::this_phone().into(),
        more: say::more().into(),
        back: say::back().into(),
        not_now: say::not_now().into(),
        empty_bar: say::empty_bar().into(),
        set_done: say::set_done().into(),
        set_now: say::set_now().into(),
    }
}

/// One side of a bar, for a screen reader.
pub(crate) fn bar_from_inside(plates: &[PlateView]) -> String {
    let numbers: Vec<&str> = plates.iter().map(|plate| plate.number.as_str()).collect();
    if numbers.is_empty() {
        say::empty_bar().into()
    } else {
        say::bar_from_inside(numbers.join(", "))
    }
}

/// The digits of a phase, as large as fits: seconds alone below a hundred.
pub(crate) fn floor_digits(ms: i64) -> String {
    let seconds = (ms.max(0) + 999) / 1000;
    if seconds < 100 { seconds.to_string() } else { digits(ms) }
}

/// `1:24 to go`.
pub(crate) fn to_go(ms: i64) -> String {
    say::to_go(digits(ms))
}

/// `over by 0:12`, in whole seconds that are over.
pub(crate) fn over_by(ms: i64) -> String {
    say::rested_over(digits(ms / 1000 * 1000))
}
