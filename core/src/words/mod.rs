//! Every sentence a person reads that is made from data, in one place, so that all shells say the
//! same thing.

mod clock;
mod load;
mod logged;
mod plain;

pub(crate) use clock::{
    cue, fewer_reps, hold_ask, interval_ask, rest, short, suggested_rest, window_cue,
};
pub(crate) use load::{load_text, plates_text, spared, why};
pub(crate) use logged::logged;
pub(crate) use plain::{
    because, clock_time, count, day, decision, list, place, protocol, sign, tenths,
};
