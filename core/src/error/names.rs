//! What things are called where a person reads that one is not there.

use super::Thing;
use crate::say::error as say;

/// Something asked for is not there: what, by which name, and why.
pub(crate) fn not_found(what: Thing, name: Option<&str>, reason: &str) -> String {
    // Without a name the reason says it all; a device's is a folder, which its reason is about.
    let Some(name) = name else { return reason.into() };
    match what {
        Thing::Bar => say::no_bar(name, reason),
        Thing::Day => say::no_day(name, reason),
        Thing::Device => say::labelled(name, reason),
        Thing::Flag => reason.into(),
        Thing::Member => say::no_member(name, reason),
        Thing::Option => say::no_option(name, reason),
        Thing::Piece => say::no_piece(name, reason),
        Thing::Plan => say::no_plan(name, reason),
        Thing::Proposal => say::no_proposal(name, reason),
    }
}

/// What is handed over as a date and is none.
#[cfg_attr(not(feature = "ffi"), allow(dead_code, reason = "only another language can do so"))]
pub(crate) fn not_a_date(days: i64) -> String {
    say::not_a_date(days)
}

/// What is handed over as an identity and is none.
#[cfg_attr(not(feature = "ffi"), allow(dead_code, reason = "only another language can do so"))]
pub(crate) fn not_an_identity(bytes: usize) -> String {
    say::not_an_identity(bytes)
}
