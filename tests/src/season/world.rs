//! What happens to somebody in 24 weeks, whatever is proposed to them: the form of each day, days missed, weeks
//! away, pain, slips of the finger. The same for the load rules and for the plain rule beside them.
//!
//! All chosen, no source: one day in twenty missed; four of ten away for 3 to 8 weeks, two more of ten for two;
//! mild pain on one day of 120 for 3 to 12 days, severe pain on one of 140 for 4 to 12 days; a slip in one set
//! of 200; the coach wants last time's loads again one day in fifty.

use chrono::{Days, NaiveDate};
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

use super::cast::{Member, STARTS};
use super::expected::WEEKS;
use crate::lifters::Chance;

/// A day somebody comes to train.
pub(super) struct Day {
    pub(super) on: NaiveDate,
    pub(super) week: u32,
    /// Of the day's strength, as a logarithm.
    pub(super) form: f64,
    /// Pain that begins before a set: the set, how bad, and days until it is gone.
    pub(super) pain: Option<(u32, u32, u64)>,
    /// True where the coach wants last time's loads again.
    pub(super) refused: bool,
    /// Where the chance of its sets comes from.
    pub(super) seed: u64,
}

/// All days of one lifter.
pub(super) struct Calendar {
    pub(super) days: Vec<Day>,
    /// Weeks away: the first Monday, and the Monday training goes on.
    pub(super) absences: Vec<(NaiveDate, NaiveDate)>,
}

/// Draws a lifter's calendar.
pub(super) fn calendar(chance: &mut Chance, member: &Member) -> Calendar {
    let monday: NaiveDate = STARTS.parse().unwrap();
    let week_of = |week: u32| monday + Days::new(u64::from(week) * 7);
    let kind = chance.between(0.0, 1.0);
    let long = if kind < 0.4 { chance.whole(3, 8) } else { 2 };
    let from = chance.whole(4, 12);
    let away = (kind < 0.6).then_some(from..from + long);
    let absences = away.iter().map(|away| (week_of(away.start), week_of(away.end))).collect();
    let sets = member.scheme().sets();
    let mut days = Vec::new();
    for week in 0..WEEKS {
        for weekday in member.on {
            // Drawn for every day, so that one who is away draws as many.
            let form = (0.015 * chance.heavy()).clamp(-0.08, 0.08);
            let (missed, seed) = (chance.happens(0.05), chance.whole(0, u32::MAX).into());
            let (mild, severe) = (chance.happens(1.0 / 120.0), chance.happens(1.0 / 140.0));
            let refused = chance.happens(0.02);
            let (before, how_bad) = (chance.whole(1, sets), chance.whole(1, 3));
            let (worse, soon, late) =
                (chance.whole(4, 7), chance.whole(3, 12), chance.whole(4, 12));
            let pain = match (mild, severe) {
                (_, true) => Some((before, worse, u64::from(late))),
                (true, false) => Some((before, how_bad, u64::from(soon))),
                (false, false) => None,
            };
            let off = missed || away.as_ref().is_some_and(|away| away.contains(&week));
            if !off {
                let on = week_of(week) + Days::new(*weekday);
                days.push(Day { on, week: week + 1, form, pain, refused, seed });
            }
        }
    }
    Calendar { days, absences }
}

impl Day {
    /// The chance of a set: the same whoever proposes its load.
    pub(super) fn chance(&self, set: u32) -> Chance {
        let seed = self.seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ u64::from(set);
        Chance(ChaCha8Rng::seed_from_u64(seed))
    }
}
