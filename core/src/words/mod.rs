//! Every sentence a person reads that is made from data, in one place, so that all shells say the
//! same thing.

mod load;
mod logged;
mod plain;
mod plates;

pub(crate) use load::{load_text, plates_text, why};
pub(crate) use logged::logged;
pub(crate) use plain::{
    because, clock_time, count, day, decision, list, place, protocol, sign, tenths,
};
pub(crate) use plates::{change_text, exact_text, handling_text, ramp_error};
