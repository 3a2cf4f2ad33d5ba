//! A training max, and where it comes from.

use super::able::whole_text;
use super::load::load_text;
use super::plain::day;
use crate::load::MaxBasis;
use crate::mass::{Mass, MassUnit};
use crate::say::load as say;

/// An estimate is said in whole units, what was tested or set exactly, and what was worked out from either to a tenth.
pub(super) fn max_text(max: Mass, basis: MaxBasis, unit: MassUnit) -> String {
    match basis {
        MaxBasis::Estimate => whole_text(max, unit),
        MaxBasis::Tested { .. } | MaxBasis::Coach { .. } => load_text(max, unit),
        _ => {
            let tenths = (max.for_drawing(unit) * 10.0).round() as i64;
            load_text(Mass::thousandths(tenths * 100, unit), unit)
        }
    }
}

/// Where a training max comes from, behind what is taken of it.
pub(super) fn based(what: String, basis: MaxBasis) -> String {
    match basis {
        MaxBasis::Estimate => say::max_estimate(what),
        MaxBasis::Tested { on } => say::max_tested(what, day(on)),
        MaxBasis::TestedCapped { on } => say::max_tested_capped(what, day(on)),
        MaxBasis::Coach { on } => say::max_coach(what, day(on)),
        MaxBasis::Again => say::max_again(what),
        MaxBasis::Up => say::max_up(what),
        MaxBasis::Missed => say::max_missed(what),
        MaxBasis::BackOff => say::max_back_off(what),
        MaxBasis::MissedLighter => say::max_missed_lighter(what),
        MaxBasis::Short => say::max_short(what),
        MaxBasis::ShortTwice => say::max_short_twice(what),
        MaxBasis::Away => say::max_away(what),
    }
}
