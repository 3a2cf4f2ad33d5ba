//! The carried load: one for each set, folded over the sessions of a track.

use super::days;
use super::history::{Did, same_reps};
use super::{History, SetDone, Time, most_after};
use crate::id::RecordId;
use crate::load::Reason;
use crate::mass::Mass;
use crate::plan::{Builds, Scheme};

/// What the sessions of a track leave for the next one.
///
/// - A set that made the plan's reps leaves the load lifted; one with fewer the lighter of the load
///   lifted and the load proposed, so that nobody is sent up by missing.
/// - One with no rep at all says only that it was too heavy: it leaves the lighter of that and of what was carried so
///   far, and nothing the first time.
/// - A set skipped, in doubt or set aside leaves the lighter of what was carried so far and the load
///   proposed.
/// - A set never logged carries that of the set before it.
/// - Easy weeks and other tracks change nothing.
pub(super) struct Carried<'a> {
    pub(super) scheme: &'a Scheme,
    pub(super) builds: &'a Builds,
    pub(super) history: &'a History,
    /// The sessions the loads are carried over, the earliest first; never empty.
    pub(super) times: Vec<&'a Time>,
    /// Days away since the last of them.
    pub(super) away: i64,
    sets: Vec<Set>,
}

#[derive(Clone, Copy)]
struct Set {
    load: Mass,
    record: RecordId,
}

impl<'a> Carried<'a> {
    /// Folds a history; none where no session of the track has the reps of this scheme.
    pub(super) fn of(
        scheme: &'a Scheme,
        builds: &'a Builds,
        history: &'a History,
    ) -> Option<Carried<'a>> {
        let fits = |time: &&Time| same_reps(&time.scheme, scheme);
        let mut times: Vec<&Time> = history.working().rev().take_while(fits).collect();
        times.reverse();
        let last = times.last()?;
        let away = history.days_away(last.on);
        let sets = fold_all(&times, scheme)?;
        Some(Carried { scheme, builds, history, times, away, sets })
    }

    /// The carried load of a set.
    pub(super) fn load(&self, set: u32) -> Mass {
        self.at(set).map_or(Mass::ZERO, |found| found.load)
    }

    /// The record it stands in.
    pub(super) fn record(&self, set: u32) -> RecordId {
        self.at(set).map_or(self.last().session, |found| found.record)
    }

    fn at(&self, set: u32) -> Option<&Set> {
        self.sets.get(set.checked_sub(1)? as usize)
    }

    /// The last session.
    pub(super) fn last(&self) -> &'a Time {
        self.times[self.times.len() - 1]
    }

    /// The sessions, the latest first.
    pub(super) fn latest(&self) -> impl Iterator<Item = &'a Time> {
        self.times.iter().rev().copied()
    }

    /// The plan's reps of a set.
    pub(super) fn first_reps(&self, set: u32) -> u32 {
        self.scheme.target(set).unwrap_or(0)
    }

    /// Reps asked for last time; the plan's where the set is new.
    pub(super) fn asked(&self, set: u32) -> u32 {
        let last = self.last();
        if set > last.scheme.sets() { self.first_reps(set) } else { last.asked(set) }
    }

    /// The plan's reps of a set, or fewer while the athlete is on the way back to them.
    pub(super) fn reps(&self, set: u32) -> u32 {
        self.first_reps(set).min(self.asked(set))
    }

    /// A load of a set as the room builds it: the nearest lighter one, otherwise the lightest there is
    /// where that is within the cap of the carried load. None where even that is not.
    pub(super) fn built(&self, set: u32, load: Mass) -> Option<Mass> {
        let most = self.cap(set);
        let lightest = || self.builds.lightest().filter(|build| build.mass <= most);
        self.builds.at_or_below(load).or_else(lightest).map(|build| build.mass)
    }

    /// The most that is allowed in a set: a tenth over the carried load, or what picks allow. Whoever
    /// lifted more than was proposed goes no further at once than from the proposal: a load typed a little
    /// too high is not gone on from.
    pub(super) fn cap(&self, set: u32) -> Mass {
        let over = |load: Mass| most_after(self.builds, load);
        let last = self.load(set);
        match self.exceeded(set) {
            Some(proposed) => {
                let next = self.builds.above(proposed).map_or(proposed, |build| build.mass);
                over(last).min(over(proposed).max(next).max(last))
            }
            None => over(last),
        }
    }

    /// What was proposed last time in a set in which more was lifted.
    pub(super) fn exceeded(&self, set: u32) -> Option<Mass> {
        let proposed = self.last().proposal(set)?.load?;
        let lifted = self.last().set(set)?.load?;
        (lifted > proposed).then_some(proposed)
    }

    /// So many picks lighter; fewer where the room has no more.
    pub(super) fn picks_below(&self, load: Mass, picks: u32) -> Option<Mass> {
        let below = |load: &Mass| self.builds.below(*load).map(|build| build.mass);
        std::iter::successors(below(&load), below).take(picks as usize).last()
    }

    /// The load carried in a set after so many of the sessions, and which of them it was lifted in.
    pub(super) fn load_after(&self, sessions: usize, set: u32) -> Option<(Mass, usize)> {
        let times = self.times.get(..sessions)?;
        let found = *fold_all(times, self.scheme)?.get(set.checked_sub(1)? as usize)?;
        let is_it = |done: &SetDone| done.record == found.record;
        let at = times.iter().position(|time| time.sets.iter().any(is_it))?;
        Some((found.load, at))
    }

    /// The heaviest load made in a set in the 26 weeks before the latest break of three weeks or more; none
    /// without such a break.
    pub(super) fn former_best(&self, set: u32) -> Option<Mass> {
        let broke = |pair: &[&Time]| {
            days::days_between(&self.history.days, pair[0].on, pair[1].on) >= days::LIGHTER_DAYS
        };
        let at = self.times.windows(2).rposition(broke)?;
        let end = self.times[at].on;
        let recent =
            self.times[..=at].iter().filter(|time| (end - time.on).num_days() <= FORMER_DAYS);
        let made = recent.filter_map(|time| {
            time.set(set)
                .filter(|done| done.reps >= time.first_reps(set))
                .and_then(|done| done.load)
        });
        made.max()
    }

    /// The heaviest load that was made in a set in the last 26 weeks.
    pub(super) fn made(&self, set: u32) -> Option<Mass> {
        let end = self.last().on;
        let recent = self.latest().filter(|time| (end - time.on).num_days() <= FORMER_DAYS);
        let made = recent.filter_map(|time| {
            time.set(set).filter(|done| done.reps >= time.first_reps(set))?.load
        });
        made.max()
    }

    /// True where a load was made in a set in the last 26 weeks.
    pub(super) fn was_made(&self, set: u32, load: Mass) -> bool {
        self.made(set) >= Some(load)
    }

    /// What keeps a set, and all others, where it is; none when all of them were made.
    pub(super) fn unmet(&self, set: u32) -> Option<Reason> {
        let (time, on, last) = (self.last(), self.last().on, self.load(set));
        let first = |did| time.asked_sets().find(|set| time.did(*set) == did);
        let short = |set: u32| Some((set, time.set(set)?.reps, time.asked(set)));
        if let Some((set, reps, asked)) = first(Did::Missed).and_then(short) {
            return Some(Reason::Missed { last, set, reps, asked, on });
        }
        if first(Did::Out).is_some() {
            let out = |done: &&SetDone| !done.counts && time.set(done.set).is_none();
            if let Some(SetDone { set, aside, .. }) = time.sets.iter().find(out) {
                let set = *set;
                return Some(match aside {
                    true => Reason::LeftOut { last, set, on },
                    false => Reason::InDoubt { last, set, on },
                });
            }
            let done = time.asked_sets().filter(|set| time.set(*set).is_some()).count() as u32;
            return Some(Reason::Unfinished { last, done, of: time.scheme.sets(), on });
        }
        let (set, reps, asked) = first(Did::Held).and_then(short)?;
        Some(Reason::Held { last, set, reps, asked, on })
    }
}

/// Days before a break in which a load counts as the former best: 26 weeks. Common practice, no source.
pub(super) const FORMER_DAYS: i64 = 182;

fn least_proposed(times: &[&Time], set: u32) -> Option<Mass> {
    times.iter().filter_map(|time| time.proposal(set)?.load).min()
}

/// The lightest load that no rep was made with.
fn least_failed(times: &[&Time], set: u32) -> Option<Mass> {
    let failed = times.iter().filter_map(|time| time.set(set)).filter(|done| done.reps == 0);
    failed.filter_map(|done| done.load).min()
}

fn fold_all(times: &[&Time], scheme: &Scheme) -> Option<Vec<Set>> {
    let mut sets: Vec<Set> = Vec::new();
    for set in 1..=scheme.sets() {
        // What was never logged carries that of the set before it, a first one that of the next; but no
        // more than was proposed.
        let near = || {
            let after = || (set + 1..=scheme.sets()).find_map(|set| fold(times, set));
            let near = sets.last().copied().or_else(after)?;
            let least =
                least_proposed(times, set).into_iter().chain(least_failed(times, set)).min();
            Some(Set { load: near.load.min(least.unwrap_or(near.load)), ..near })
        };
        let found = fold(times, set).or_else(near);
        sets.push(found?);
    }
    Some(sets)
}

fn fold(times: &[&Time], set: u32) -> Option<Set> {
    let mut carried: Option<Set> = None;
    for time in times {
        let proposed = time.proposal(set).and_then(|proposed| proposed.load);
        match time.set(set) {
            Some(done) => {
                let Some(load) = done.load else { continue };
                let made = done.reps >= time.first_reps(set);
                let lighter = proposed.filter(|proposed| !made && *proposed < load);
                let load = lighter.unwrap_or(load);
                if done.reps > 0 {
                    carried = Some(Set { load, record: done.record });
                } else if let Some(before) = carried {
                    carried = Some(Set { load: load.min(before.load), record: done.record });
                }
            }
            None => {
                if let (Some(set), Some(proposed)) = (&mut carried, proposed) {
                    set.load = set.load.min(proposed);
                }
            }
        }
    }
    carried
}
