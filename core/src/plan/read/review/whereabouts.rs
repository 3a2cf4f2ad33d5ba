//! Where the people are that a plan is for, as somebody who knows their history says it.

use crate::mass::{Mass, MassUnit};
use crate::plan::Exercise;

/// Where an athlete is in a strength piece of a plan that is about to be published.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Whereabouts {
    /// The athlete's name.
    pub name: String,
    /// The unit that the athlete prefers: it chooses the bar where the plan does not.
    pub unit: MassUnit,
    /// The day, by name.
    pub day: String,
    /// The piece of it, by name.
    pub piece: String,
    /// What is lifted there: the movement, or the option of it that was lifted last.
    pub exercise: Exercise,
    /// Where the sets are; empty where no load is known, so that it will be found by feel or is the plan's start.
    pub sets: Vec<SetAt>,
}

/// Where an athlete is in a set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SetAt {
    /// The set, counted from 1.
    pub set: u32,
    /// The load carried from the sessions before, otherwise the first one that is proposed.
    pub load: Mass,
    /// True where it is carried.
    pub carried: bool,
    /// What is proposed next; none where it is withdrawn or the athlete's to choose.
    pub proposed: Option<Mass>,
    /// The heaviest load that was made in it lately: what was made before comes back with fewer reps.
    pub made: Option<Mass>,
}
