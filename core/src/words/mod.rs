//! Every sentence a person reads that is made from data, in one place, so that all shells say the
//! same thing.

mod able;
mod clock;
mod load;
mod logged;
mod motion;
mod plain;
mod plates;

pub(crate) use able::{able, expected_reps, trend};
pub(crate) use clock::{
    cue, fewer_reps, hold_ask, interval_ask, rest, short, suggested_rest, window_cue,
};
pub(crate) use load::{load_text, plates_text, spared, why};
pub(crate) use logged::logged;
pub(crate) use motion::{dose, load_compared, long_hold, range_trend};
pub(crate) use plain::{
    because, clock_time, count, day, decision, list, place, protocol, sign, tenths,
};
pub(crate) use plates::{change_text, exact_text, handling_text, ramp_error};
