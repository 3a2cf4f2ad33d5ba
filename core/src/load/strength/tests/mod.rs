mod cases;
mod laws;
mod state;

use chrono::{Days, NaiveDate};

use super::{Evidence, SetSeen};
use crate::mass::{Mass, MassUnit};

fn day(days: u64) -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 1, 5).unwrap().checked_add_days(Days::new(days)).unwrap()
}

/// A set on a day counted from the first Monday of 2026, of tenths of a kilogram, 5 reps asked.
fn set(days: u64, tenths: i64, reps: u32, evidence: Evidence) -> SetSeen {
    SetSeen {
        on: day(days),
        load: Mass::thousandths(tenths * 100, MassUnit::Kg),
        reps,
        target: 5,
        open: evidence == Evidence::Counted,
        evidence,
    }
}
