//! Loads that are a share of what the athlete can lift once: the training max is what carries over.

use chrono::NaiveDate;

use super::carried::Carried;
use super::days::{LIGHTER_DAYS, days_between, per_mille, tenths_off};
use super::history::{Did, same_reps};
use super::offer::{Offer, had_spare, in_unit};
use super::settle::{Settled, limits, settle};
use super::{CAP_PERCENT, History, KnownMax, Time};
use crate::id::RecordId;
use crate::load::Reason;
use crate::load::strength::{Interval, curve};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Builds, LoadRule, Scheme, Step};

/// Where a training max comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum MaxBasis {
    /// The lower end of the estimate.
    Estimate,
    /// A single that was lifted.
    Tested {
        /// When.
        on: NaiveDate,
    },
    /// A single that was lifted, more than a tenth over last time's: that tenth.
    TestedCapped {
        /// When.
        on: NaiveDate,
    },
    /// The coach set it.
    Coach {
        /// When.
        on: NaiveDate,
    },
    /// The one of last time.
    Again,
    /// Last time's and the plan's step.
    Up,
    /// A set was missed last time: the same.
    Missed,
    /// A set lighter than it should have been was missed: lower by as much.
    MissedLighter,
    /// The reps that should have been left were not: the same.
    Short,
    /// By far not, in two sessions running: lower.
    ShortTwice,
    /// Missed twice running: lower.
    BackOff,
    /// Lower after weeks away.
    Away,
}

/// A training max.
#[derive(Clone, Debug)]
pub(super) struct TrainingMax {
    pub(super) load: Mass,
    basis: MaxBasis,
    from: Vec<RecordId>,
}

/// The training max of a percent or reserve rule; none where nothing says it, and for other rules.
///
/// It is what was tested or set last, otherwise the one of last time: up by the plan's step when all sets were
/// made, the same after a miss, lower by the plan's percent after a second one running and each further one,
/// and lower after weeks away like a load. Where the plan asks for reps to be left, a set that left fewer is not made,
/// and one that left two fewer is as a miss.
pub(super) fn of(rule: &LoadRule, builds: &Builds, history: &History) -> Option<TrainingMax> {
    let (step, back_off) = match rule {
        LoadRule::Percent { step, back_off_percent, .. } => (step.as_slice(), *back_off_percent),
        LoadRule::Reserve { step, back_off_percent, .. } => (step.as_slice(), *back_off_percent),
        LoadRule::Step(_) | LoadRule::Fixed { .. } | LoadRule::Free => return None,
    };
    let last = history.last();
    let known = history.max.as_ref();
    let known = known.filter(|known| last.is_none_or(|last| last.placed < known.placed));
    let own = || match last.and_then(|last| Some((last, last.max?))) {
        Some((last, max)) => {
            Some((carried_on(rule, (step, back_off), builds, history, (last, max)), last.on))
        }
        None => {
            let able = history.able.as_ref()?;
            let Interval { low, high, .. } = able.strength.estimate()?;
            // What was made as it was asked for is in it, as far as the estimate goes.
            let made = last.and_then(|last| made_max(rule, last));
            let load = whole_tenths(low).max(made.unwrap_or(Mass::ZERO).min(whole_tenths(high)));
            let found = TrainingMax { load, basis: MaxBasis::Estimate, from: able.from.clone() };
            // The estimate heeds weeks away, but by less than a load falls.
            Some((found, last.map_or_else(|| history.date.unwrap_or_default(), |last| last.on)))
        }
    };
    let (found, since) = match known {
        Some(known) => (as_known(known, rule, last, own().map(|(own, _)| own.load)), known.on),
        None => own()?,
    };
    let days = history.date.map_or(0, |date| days_between(&history.days, since, date));
    Some(match tenths_off(days) {
        Some(tenths) => {
            let before = last.and_then(|last| last.max).unwrap_or(found.load);
            let load = per_mille(before.min(found.load), 1000 - tenths);
            TrainingMax { load: load.min(found.load), basis: MaxBasis::Away, ..found }
        }
        None => found,
    })
}

/// What was tested or set last. What an athlete types goes no further up at once than any load: a tenth over last
/// time's, or over what the last sets say. Only the coach's word does.
fn as_known(
    known: &KnownMax,
    rule: &LoadRule,
    last: Option<&Time>,
    own: Option<Mass>,
) -> TrainingMax {
    let (on, load, from) = (known.on, known.load, vec![known.record]);
    if !known.tested {
        return TrainingMax { load, basis: MaxBasis::Coach { on }, from };
    }
    let before = last.and_then(|last| last.max.or_else(|| own.max(made_max(rule, last))));
    let most = before.map(|before| before.percent(CAP_PERCENT)).filter(|most| *most < load);
    match most {
        Some(load) => TrainingMax { load, basis: MaxBasis::TestedCapped { on }, from },
        None => TrainingMax { load, basis: MaxBasis::Tested { on }, from },
    }
}

fn carried_on(
    rule: &LoadRule,
    (step, back_off): (&[Step], u32),
    builds: &Builds,
    history: &History,
    (last, max): (&Time, Mass),
) -> TrainingMax {
    let from: Vec<RecordId> = last.records().collect();
    let leave = leave(rule);
    let failed = |time: &&Time| time.any_missed() || left_short(time, leave) >= FAR_SHORT;
    let run = history.working().rev().take_while(failed).count();
    let was_missed = history.working().rev().take(run).any(Time::any_missed);
    let found = |load, basis| TrainingMax { load, basis, from };
    let flagged = history.flags.iter().any(|flag| flag.cleared.is_none());
    let days = history.days_away(last.on);
    let made = |time: &Time| {
        let load = |time: &Time, set| time.set(set).and_then(|done| done.load);
        let heavy = |set| load(time, set) >= load(last, set);
        time.all_made() && left_short(time, leave) == 0 && last.asked_sets().all(heavy)
    };
    let mut latest = history.working().rev().skip(1);
    let twice = made(last) && latest.next().is_some_and(made);
    match run {
        0 if flagged || !last.all_made() || days >= LIGHTER_DAYS - 7 => found(max, MaxBasis::Again),
        0 if left_short(last, leave) > 0 => found(max, MaxBasis::Short),
        0 => {
            let most = max.percent(CAP_PERCENT);
            let able = history.able.as_ref().and_then(|able| able.strength.estimate());
            let able = able.map(|max| whole_tenths(max.low));
            let unmissed = !history.working().rev().take(4).any(Time::any_missed);
            let wanted = match step {
                [] => able.unwrap_or(max),
                _ if unmissed || had_spare(last) || twice => max + in_unit(step, builds.unit),
                _ => max,
            };
            let load = wanted.min(most).max(max);
            found(load, if load > max { MaxBasis::Up } else { MaxBasis::Again })
        }
        1 => {
            let missed = missed_at(rule, builds, history, last, max);
            let basis = match was_missed {
                true if missed < max => MaxBasis::MissedLighter,
                true => MaxBasis::Missed,
                false => MaxBasis::Short,
            };
            found(missed, basis)
        }
        _ => {
            let missed = missed_at(rule, builds, history, last, max);
            let basis = if was_missed { MaxBasis::BackOff } else { MaxBasis::ShortTwice };
            found(missed.percent(100_u32.saturating_sub(back_off)), basis)
        }
    }
}

/// So many reps fewer left than should have been are more than ratings near failure are off by: about one (Hackett et
/// al., J Strength Cond Res 2017;31:2162-2168).
const FAR_SHORT: u32 = 2;

/// By how many reps a set of a session fell short of those that should have been left, where the athlete said; whoever
/// only pressed the key did as planned.
fn left_short(time: &Time, leave: u32) -> u32 {
    let short = |set| Some(leave.saturating_sub(time.set(set)?.reserve?));
    time.asked_sets().filter_map(short).max().unwrap_or(0)
}

/// The training max after a miss: lower by as much as a set was lighter than it should have been and missed all
/// the same, so that nobody is sent up by missing. What it should have been was proposed; but a coach's answer,
/// or a flag, may have made that lighter for the one day.
fn missed_at(rule: &LoadRule, builds: &Builds, history: &History, last: &Time, max: Mass) -> Mass {
    let before = history.working().rev().nth(1);
    let since = |placed: i64| before.is_none_or(|before| placed > before.placed);
    let flagged = history.flags.iter().any(|flag| flag.cleared.is_none_or(since));
    let after = history.ruling.as_ref().map(|ruled| ruled.after);
    let answered = before.is_some_and(|before| after == Some(before.session));
    let share = |set: u32| {
        let (lifted, proposed) = (last.set(set)?.load?, last.proposal(set)?.load?);
        let usual = || builds.at_or_below(wanted(rule, &last.scheme, max, set)?);
        let usual = (flagged || answered).then(usual).flatten().map(|build| build.mass);
        let whole = usual.unwrap_or(proposed).max(proposed);
        let lighter = last.did(set) == Did::Missed && lifted < whole && lifted > Mass::ZERO;
        let part = i128::from(max.ten_ng) * i128::from(lifted.ten_ng);
        let share = lighter.then(|| part / i128::from(whole.ten_ng))?;
        i64::try_from(share).ok().map(|ten_ng| Mass { ten_ng })
    };
    last.asked_sets().filter_map(share).min().unwrap_or(max)
}

/// The least training max that gives each set of a session the load it was made with, all reps done and so many left
/// as the rule asks for where the athlete said; none where nothing was.
fn made_max(rule: &LoadRule, last: &Time) -> Option<Mass> {
    let leave = leave(rule);
    let made = |set| {
        let done = last.set(set).filter(|_| last.did(set) == Did::Made)?;
        let load = done.load.filter(|_| done.reserve.is_none_or(|left| left >= leave))?;
        // By the shares of 100 kg, and from there tenth by tenth: each is rounded.
        let share =
            wanted(rule, &last.scheme, Mass::kg(100), set).filter(|share| *share > Mass::ZERO)?;
        let about =
            i128::from(load.ten_ng) * i128::from(Mass::kg(100).ten_ng) / i128::from(share.ten_ng);
        let about = Mass { ten_ng: i64::try_from(about).ok()? }.for_drawing(MassUnit::Kg) - 0.5;
        let near = (0..20).map(|tenth| whole_tenths(about + f64::from(tenth) / 10.0));
        near.into_iter().find(|max| wanted(rule, &last.scheme, *max, set) >= Some(load))
    };
    last.asked_sets().filter_map(made).max()
}

/// Reps that a rule asks to be left.
fn leave(rule: &LoadRule) -> u32 {
    match rule {
        LoadRule::Reserve { reserve, .. } => *reserve,
        LoadRule::Step(_) | LoadRule::Percent { .. } | LoadRule::Fixed { .. } | LoadRule::Free => 0,
    }
}

/// The load of a set by a training max, before the room builds it; none for other rules.
fn wanted(rule: &LoadRule, scheme: &Scheme, max: Mass, set: u32) -> Option<Mass> {
    match rule {
        LoadRule::Percent { percents, .. } => Some(max.percent(share(percents, set))),
        LoadRule::Reserve { reserve: leave, .. } => {
            Some(share_for(max, scheme.target(set).unwrap_or(0) + leave))
        }
        LoadRule::Step(_) | LoadRule::Fixed { .. } | LoadRule::Free => None,
    }
}

/// The percentage of a set: its own, or the one for all.
fn share(percents: &[u32], set: u32) -> u32 {
    percents.get(set as usize - 1).or(percents.first()).copied().unwrap_or(0)
}

impl TrainingMax {
    /// The load of a set.
    pub(super) fn settled(
        &self,
        rule: &LoadRule,
        scheme: &Scheme,
        builds: &Builds,
        set: u32,
    ) -> Settled {
        let reps = scheme.target(set).unwrap_or(0);
        let (max, basis) = (self.load, self.basis);
        let reason = match rule {
            LoadRule::Percent { percents, .. } => {
                Reason::Percent { percent: share(percents, set), max, basis }
            }
            LoadRule::Reserve { reserve: leave, .. } => {
                Reason::Reserve { reps, leave: *leave, max, basis }
            }
            LoadRule::Step(_) | LoadRule::Fixed { .. } | LoadRule::Free => Reason::FirstTime,
        };
        let wanted = wanted(rule, scheme, max, set).unwrap_or(max);
        let build = builds.at_or_below(wanted).or(builds.lightest());
        let load = build.map_or(wanted, |build| build.mass);
        Settled { load: Some(load), reps, from: self.from.clone(), ..Settled::because(reason) }
    }
}

/// Without a training max: the load of last time, and the question that leads to one.
pub(super) fn unknown(rule: &LoadRule, carried: &Carried<'_>, set: u32) -> Settled {
    let back_off = match rule {
        LoadRule::Percent { back_off_percent, .. } | LoadRule::Reserve { back_off_percent, .. } => {
            *back_off_percent
        }
        LoadRule::Step(_) | LoadRule::Fixed { .. } | LoadRule::Free => 0,
    };
    let last = carried.load(set);
    let reps = carried.last().set(set).map_or(0, |done| done.reps);
    let reason = Reason::SayReserve { last, reps };
    let offer = Offer {
        load: carried.built(set, last),
        reps: Some(carried.first_reps(set)),
        reason,
        from: vec![carried.record(set)],
    };
    // Misses and weeks away keep it down like any load.
    settle(carried, set, offer, limits(carried, set, back_off))
}

/// The load of which so many reps can be done, by the published curve, from the load that can be lifted once.
fn share_for(max: Mass, reps: u32) -> Mass {
    let kg = max.for_drawing(MassUnit::Kg) * (-curve(f64::from(reps))).exp();
    whole_tenths(kg)
}

/// A modelled mass as a load: rounded down to a tenth of a kilogram, so that the last digits of a
/// float, which differ between devices, decide nothing.
pub fn whole_tenths(kg: f64) -> Mass {
    let tenths = (kg * 10.0 + 1e-6).floor().clamp(0.0, 50_000.0);
    Mass::thousandths(tenths as i64 * 100, MassUnit::Kg)
}

/// What was lifted last on the track with other reps.
pub(super) fn other_reps<'a>(history: &'a History, scheme: &Scheme) -> Option<&'a Time> {
    history.last().filter(|time| !same_reps(&time.scheme, scheme))
}
