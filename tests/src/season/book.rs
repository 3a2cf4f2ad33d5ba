//! What a lifter trains from: something that proposes loads and is told what was lifted.

use chrono::NaiveDate;
use holdfast_core::Mass;
use holdfast_core::load::NextLoad;

/// A set as it is typed.
#[derive(Clone, Copy, Debug)]
pub(super) struct Typed {
    pub(super) set: u32,
    pub(super) load: Mass,
    pub(super) reps: u32,
    pub(super) left: Option<u32>,
}

/// Proposes, and is told.
pub(super) trait Book {
    /// The loads for a date: with what was logged in the session at hand, if there is one.
    fn next(&mut self, on: NaiveDate) -> Vec<NextLoad>;

    /// Begins a session.
    fn begin(&mut self, on: NaiveDate);

    /// Logs a set. True where it is asked about: perhaps a slip of the finger.
    fn log(&mut self, typed: Typed) -> bool;

    /// Corrects a set of the session at hand.
    fn correct(&mut self, typed: Typed);

    /// Corrects a set of an earlier session: the athlete says it right, or with no set the coach sets it aside.
    fn repair(&mut self, on: NaiveDate, set: u32, right: Option<Typed>);

    /// Flags discomfort in the session at hand.
    fn flag(&mut self, severity: u32);

    /// Clears the open flag.
    fn clear(&mut self);

    /// Ends the session.
    fn finish(&mut self);

    /// The coach answers the proposal for a date: last time's loads again.
    fn refuse(&mut self, on: NaiveDate);

    /// The loads for a date as they would be had no session of an easy week been logged; none where the book
    /// cannot say.
    fn without_easy(&self, on: NaiveDate) -> Option<Vec<NextLoad>>;
}
