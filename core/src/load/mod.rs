//! Loads: what the room can build, what comes next and why, how much it was, and what the published
//! formulas make of it.

mod answered;
mod daily;
mod next;
mod one_rep_max;
mod plates;
mod prepared;
mod prilepin;
mod rating;
mod reason;
mod rest;
mod spare;
mod volume;

pub mod strength;

pub use answered::next_loads_and_answer;
pub use daily::{
    ACUTE_DAYS, CHRONIC_DAYS, Compared, DayError, DayLoad, LARGEST_LOAD, LONGEST_SPAN, Spread,
    Week, days, rolling_ratio, smoothed, smoothed_ratio, week, weekly_ratio, weight_of_span,
};
pub use next::{
    Able, CAP_PERCENT, Decision, Flag, History, KnownMax, MaxBasis, NextLoad, NextLoads,
    ProposedSet, Ruled, SetDone, Time, made_lately, most_after, next_loads, weeks_away,
    whole_tenths,
};
pub use one_rep_max::{
    Equation, Estimate, EstimateError, FewestMost, HEAVIEST, Lift, MANY_REPS, RepsTable,
};
pub use plates::{
    Colour, Disc, Federation, FederationBar, MOST_LOADS, Proof, Ramp, RampError, RampStep,
    Tolerance, WarmUpFor, WarmUpSet, colour_of, ramp, ramp_from, ramp_with_warm_up, warm_up,
    warm_up_by_feel,
};
pub use prepared::{Prepared, WayUp};
pub use prilepin::{PRILEPIN, PrilepinRow, prilepin_row};
pub use rating::{RatingError, Reserve, SessionRating, SetRating};
pub use reason::Reason;
pub use rest::{Intensity, Rest, RestBasis, WORK_REST, WorkRest, rest_after_work, suggested_rest};
pub use spare::{HardWork, WorkedSet, hard_work};
pub use volume::{
    PercentError, RelativeSet, RelativeVolume, relative_volume, session_load, volume_load,
};
