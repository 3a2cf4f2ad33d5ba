//! A lifter whose true strength is known.
//!
//! Reps at a load, what a set takes from the next and how reps left are misjudged are those of
//! [`crate::lifters`]. What is added here, all of it chosen, no source, unless it says otherwise:
//!
//! - **Gains** come from what is done. A set gives the more the heavier it is for the lifter (nothing at 40 % of
//!   the one-rep max, all of it at 85 %; that heavier is better is published: Schoenfeld et al., J Strength
//!   Cond Res 2017;31(12):3508-3523), and with fewer reps than the plan's less, by the square root. How near
//!   to failure it ends makes no difference (Grgic et al., J Sport Health Sci 2022;11(2):202-211) up to five
//!   reps left; a tenth less for each one more. Novices gain up to 1.5 to 2.5 % a week, trained
//!   lifters 0.4 to 0.8, strong ones 0.15 to 0.35, the less the nearer their ceiling.
//! - **Tiredness**: a set takes 0.25 % of the day's strength, one to failure 0.15 more, a missed one another 0.3.
//!   Half of it is gone after three days. What is left of it slows the gains.
//! - **Weeks away**: nothing for ten days, then 0.8 % a week. It comes back at twice the pace of new strength
//!   beside it, or a tenth of it with a session, whichever is more. That strength falls with the weeks away is published (Bosquet et al., Scand J Med Sci Sports
//!   2013;23(3):e140-e149).
//! - **Pain** takes strength while it is open, and some of it for a while after.

use crate::lifters::{Body, Chance, World};

/// How long somebody has trained.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Level {
    Novice,
    Trained,
    Strong,
}

/// A body that gets stronger by what it does.
pub(super) struct Athlete {
    body: Body,
    /// One-rep max fresh and in usual form, kilograms, with the body where it is lifted too.
    pub(super) max: f64,
    begun_at: f64,
    ceiling: f64,
    /// The most it grows by in a session, as a logarithm.
    rate: f64,
    /// Lost by weeks away, as a logarithm: won back faster.
    lost: f64,
    tired: f64,
    sore: f64,
    /// Reps left at the end of an open set.
    leaves: u32,
    /// Says the reps left after a last set.
    pub(super) rates: bool,
    /// Won in the session at hand.
    won: f64,
}

/// A set that was tried.
#[derive(Clone, Copy, Debug)]
pub(super) struct Tried {
    /// Good reps.
    pub(super) reps: u32,
    /// Reps that were left.
    pub(super) left: u32,
}

/// What is asked in a set.
#[derive(Clone, Copy, Debug)]
pub(super) struct Set {
    /// Kilograms, with the body where it is lifted too.
    pub(super) kg: f64,
    /// The set of the session, counted from 1.
    pub(super) set: u32,
    pub(super) asked: u32,
    /// The plan's reps.
    pub(super) first: u32,
    pub(super) open: bool,
}

impl Athlete {
    /// Draws one of a level and a one-rep max, training so often a week.
    pub(super) fn draw(chance: &mut Chance, level: Level, max: f64, a_week: u32) -> Athlete {
        let (low, high, above) = match level {
            Level::Novice => (0.015, 0.025, 0.7),
            Level::Trained => (0.004, 0.008, 0.2),
            Level::Strong => (0.0015, 0.0035, 0.1),
        };
        Athlete {
            body: Body::draw(chance, World::USUAL),
            max,
            begun_at: max,
            ceiling: max * (1.0 + above),
            rate: chance.between(low, high) / f64::from(a_week),
            lost: 0.0,
            tired: 0.0,
            sore: 0.0,
            leaves: chance.whole(0, 2),
            rates: chance.happens(0.5),
            won: 0.0,
        }
    }

    /// What can be lifted so many times, in usual form.
    pub(super) fn can(&self, reps: f64) -> f64 {
        self.max * self.body.share(reps)
    }

    /// Lets days pass; so many of them since the last session.
    pub(super) fn rest(&mut self, days: i64, away: i64) {
        self.tired *= 0.5_f64.powf(days as f64 / 3.0);
        self.sore *= 0.5_f64.powf(days as f64 / 10.0);
        let idle = (away - 10).clamp(0, days) as f64;
        self.max *= (-0.008 * idle / 7.0).exp();
        self.lost += 0.008 * idle / 7.0;
    }

    /// Begins to hurt so much.
    pub(super) fn hurts(&mut self, severity: u32) {
        self.sore = self.sore.max(0.01 * f64::from(severity));
    }

    /// Does a set as well as it can, and stops by sense: at the reps asked, or when no good rep is left.
    pub(super) fn tries(&mut self, of: Set, form: f64, chance: &mut Chance) -> Tried {
        let tires = self.body.tires * f64::from(of.set - 1);
        let able = self.max * (form - tires - self.tired - self.sore).exp();
        let capacity = self.body.capacity(of.kg / able);
        let capacity = capacity + (0.2 + 0.05 * capacity.max(0.0)) * chance.normal();
        let can = capacity.clamp(0.0, 40.0).floor() as u32;
        let reps = if of.open {
            can.saturating_sub(self.leaves).max(can.min(of.asked))
        } else {
            can.min(of.asked)
        };
        let left = can - reps;
        let missed = reps < of.asked.min(of.first);
        self.tired +=
            0.0025 + if left == 0 { 0.0015 } else { 0.0 } + if missed { 0.003 } else { 0.0 };
        let heavy = ((of.kg / self.max - 0.4) / 0.45).clamp(0.0, 1.0);
        let near = 1.0 - 0.1 * f64::from(left.clamp(5, 10) - 5);
        let whole = (f64::from(reps) / f64::from(of.first.max(1))).min(1.0).sqrt();
        self.won += heavy * near * whole;
        Tried { reps, left }
    }

    /// The reps left, as the lifter says them.
    pub(super) fn says(&self, tried: Tried, chance: &mut Chance) -> u32 {
        let left = f64::from(tried.left);
        let error = (0.8 + 0.25 * left) * chance.normal() + self.body.bias - 0.15 * left;
        (left + error).round().clamp(0.0, 10.0) as u32
    }

    /// Ends a session of so many planned sets: it made the lifter stronger.
    pub(super) fn ends(&mut self, planned: u32) {
        let share = std::mem::take(&mut self.won) / f64::from(planned.max(1));
        let room = ((self.ceiling - self.max) / (self.ceiling - self.begun_at)).clamp(0.0, 1.2);
        let fresh = (1.0 - 8.0 * self.tired).clamp(0.3, 1.0);
        let new = self.rate * share * room * fresh;
        let again = (2.0 * new).max(0.1 * self.lost * share).min(self.lost);
        self.lost -= again;
        self.max *= (new + again).exp();
    }
}
