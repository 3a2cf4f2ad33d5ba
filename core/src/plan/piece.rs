//! The parts of a day.

use serde::{Deserialize, Serialize};

use super::keyword::keyword;
use super::{Protocol, Scheme};
use crate::mass::{Mass, MassUnit};

/// A part of a day. Its name is unique in the day and is what entries refer to.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Piece {
    /// The name on screen.
    pub name: String,
    /// What it asks for.
    pub kind: PieceKind,
}

/// What a piece asks for.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "lowercase")]
pub enum PieceKind {
    /// Sets of one movement.
    Strength(Strength),
    /// Movements against the clock.
    Interval(Interval),
    /// A timed stretch.
    Hold(Hold),
    /// Words from the coach.
    Note(Note),
}

/// Sets of one movement, their scheme and how their loads are found.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Strength {
    /// The movement's key.
    pub movement: String,
    /// Reps set by set.
    pub scheme: Scheme,
    /// Rest between sets: what the plan says, otherwise the usual 2 min.
    pub rest_ms: i64,
    /// True when the plan says it.
    pub rest_said: bool,
    /// The history it belongs to: with other pieces of the same exercise that name it too. Without one
    /// the piece has its own, under its name.
    #[serde(default)]
    pub track: Option<String>,
    /// The name of the kit's bar it is done with, where the plan names one.
    #[serde(default)]
    pub bar: Option<String>,
    /// How the next loads are found.
    pub load: LoadRule,
    /// The load of the first time, one for all sets or one a set; found by feel where there is none. Only
    /// with the rules step, percent and reserve.
    #[serde(default)]
    pub start: Vec<Mass>,
}

impl Strength {
    /// The name of the history that `piece`, which asks for this, belongs to.
    pub fn track<'a>(&'a self, piece: &'a str) -> &'a str {
        self.track.as_deref().unwrap_or(piece)
    }

    /// The load a set counted from 1 begins with the first time, where the plan says one.
    pub fn start(&self, set: u32) -> Option<Mass> {
        let index = usize::try_from(set).ok()?.checked_sub(1)?;
        match self.start.as_slice() {
            [one] => Some(*one),
            each => each.get(index).copied(),
        }
    }
}

/// How the loads of a strength piece are found.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "rule", rename_all = "lowercase")]
pub enum LoadRule {
    /// A step on top of the last time the same scheme was done.
    Step(StepRule),
    /// The same loads each time.
    Fixed {
        /// One load for all sets, or one a set.
        loads: Vec<Mass>,
    },
    /// A percentage of what the athlete can lift once.
    Percent {
        /// Whole percent, one for all sets or one a set.
        percents: Vec<u32>,
        /// What that one-rep max goes up by when all was done as planned, at most one in each unit;
        /// none when empty.
        step: Vec<Step>,
        /// Percent taken off after two misses in a row.
        back_off_percent: u32,
    },
    /// As much as leaves some reps in reserve.
    Reserve {
        /// Reps that should be left at the end of each set.
        reserve: u32,
        /// What the one-rep max behind it goes up by when all was done as planned, at most one in each
        /// unit; none when empty.
        step: Vec<Step>,
        /// Percent taken off after two misses in a row.
        back_off_percent: u32,
    },
    /// No load: body mass, or whatever the athlete writes down.
    Free,
}

/// The step rule: every set goes up a little when last time was done as planned.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct StepRule {
    /// The usual step, at most one in each unit.
    pub step: Vec<Step>,
    /// The larger step an open set can earn; none when empty.
    pub earned_step: Vec<Step>,
    /// Reps past the target in the open set that earn it.
    pub earned_by: u32,
    /// Percent taken off after two misses in a row.
    pub back_off_percent: u32,
    /// Reps stop rising here when no heavier build is in reach.
    pub top: u32,
}

/// A step in the unit it was written in: the two columns are rounded on their own, never converted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Step {
    /// How much.
    pub mass: Mass,
    /// The unit it was written in.
    pub unit: MassUnit,
}

/// Movements against the clock, one a window.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Interval {
    /// Length of one window.
    pub window_ms: i64,
    /// Times through the stations.
    pub rounds: u32,
    /// What is asked for in the windows of one round, in order.
    pub stations: Vec<Station>,
    /// What a member should have to spare at the end of a window.
    pub margin_ms: i64,
}

/// What is asked for in one window.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Station {
    /// The movement's key.
    pub movement: String,
    /// Reps asked for.
    pub reps: u32,
    /// What is lifted, where there is a load.
    pub load: Option<Mass>,
}

impl Interval {
    /// Windows in the whole piece.
    pub fn windows(&self) -> u32 {
        self.rounds.saturating_mul(u32::try_from(self.stations.len()).unwrap_or(u32::MAX))
    }

    /// The station of a window counted from 1.
    pub fn station(&self, window: u32) -> Option<&Station> {
        self.station_from(1, window)
    }

    /// The station of a window for a member who starts at station `start`; both counted from 1. The
    /// stations follow in their order, and the first comes after the last.
    pub fn station_from(&self, start: u32, window: u32) -> Option<&Station> {
        if start == 0 || window == 0 || window > self.windows() {
            return None;
        }
        self.stations.get(self.station_index(start, window) as usize - 1)
    }

    /// Which station that is, counted from 1; 1 where there is none.
    pub fn station_index(&self, start: u32, window: u32) -> u32 {
        let count = self.stations.len().max(1) as u64;
        let along = u64::from(start.saturating_sub(1)) + u64::from(window.saturating_sub(1));
        (along % count) as u32 + 1
    }

    /// The keys of its movements, each once, in the order of the stations.
    pub fn movements(&self) -> Vec<&str> {
        let mut movements: Vec<&str> = Vec::new();
        for station in &self.stations {
            if !movements.contains(&station.movement.as_str()) {
                movements.push(&station.movement);
            }
        }
        movements
    }

    /// Milliseconds of all windows together.
    pub fn total_ms(&self) -> i64 {
        self.window_ms.saturating_mul(i64::from(self.windows()))
    }
}

/// No rep of anything is done faster than this, in milliseconds: common practice, no source.
pub(crate) const FASTEST_REP_MS: i64 = 500;

/// Milliseconds to get into the stretch before the first side, where the plan does not say: common
/// practice, no source.
pub const HOLD_READY_MS: i64 = 5_000;

/// Milliseconds to change over to the next side, where the plan does not say: common practice, no
/// source.
pub const HOLD_SWITCH_MS: i64 = 10_000;

/// A timed stretch.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Hold {
    /// The stretch's key.
    pub stretch: String,
    /// How long each side is held.
    pub hold_ms: i64,
    /// One or two sides.
    pub sides: u32,
    /// Still, or contracting against the stretch.
    pub technique: Technique,
    /// With contract-relax: how long each contraction is.
    pub contract_ms: i64,
    /// With contract-relax: how long each release is.
    pub relax_ms: i64,
    /// How range is measured before and after.
    pub measure: Option<Protocol>,
    /// Time to get into the stretch before the first side.
    pub ready_ms: i64,
    /// Time to change over to the next side.
    pub switch_ms: i64,
}

keyword! {
    /// How a stretch is held.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    Technique {
        Static = "static",
        ContractRelax = "contract-relax",
    }
}

/// Words from the coach.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Note {
    /// The words.
    pub text: String,
}
