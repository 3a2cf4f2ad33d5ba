//! Words that a phone draws around what the core shows.

use serde::Serialize;

use crate::say::page;
use crate::say::phone as say;

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
    pub next: String,
    pub warm_up: String,
    pub today: String,
    pub more: String,
    pub back: String,
    pub empty_bar: String,
    pub history: String,
    pub exchange: String,
    pub this_phone: String,
    pub board: String,
    pub read_on: String,
}

/// In the language that is spoken.
pub(crate) fn phone_words() -> PhoneWords {
    PhoneWords {
        each_side: say::each_side().into(),
        put_on: say::put_on().into(),
        take_off: say::take_off().into(),
        bar_is_ready: say::bar_is_ready().into(),
        then: say::then().into(),
        next: say::next().into(),
        warm_up: say::warm_up().into(),
        today: say::today().into(),
        more: say::more().into(),
        back: say::back().into(),
        empty_bar: say::empty_bar().into(),
        history: page::history().into(),
        exchange: page::exchange().into(),
        this_phone: page::this_phone().into(),
        board: page::board().into(),
        read_on: page::read_on().into(),
    }
}
