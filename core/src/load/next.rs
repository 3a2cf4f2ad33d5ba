//! The next load of every set, from the last times the same scheme was done.

use chrono::NaiveDate;

use super::{Rack, Reason};
use crate::care::Place;
use crate::id::RecordId;
use crate::journal::Decision;
use crate::mass::{Mass, MassUnit};
use crate::plan::{LoadRule, Scheme, Step, StepRule};

/// No load goes up by more than a tenth from one time to the next.
///
/// The upper end of the 2 to 10 % step of the American College of Sports Medicine's position
/// stands (Kraemer et al., Med Sci Sports Exerc 2002;34:364-380; Ratamess et al. 2009;41:687-708).
pub const CAP_PERCENT: u32 = 110;

/// One time a scheme was done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Time {
    /// The session.
    pub session: RecordId,
    /// The local date.
    pub on: NaiveDate,
    /// The sets done, in order.
    pub sets: Vec<SetDone>,
}

/// A set of an earlier time.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SetDone {
    /// The set, counted from 1.
    pub set: u32,
    /// What was lifted.
    pub load: Option<Mass>,
    /// Good reps.
    pub reps: u32,
}

/// A discomfort flag that is open.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OpenFlag {
    /// Where it was felt.
    pub place: Place,
    /// How bad, 1 to 10.
    pub severity: u32,
    /// When it was flagged.
    pub on: NaiveDate,
}

/// A coach's answer that still counts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ruled {
    /// The answer.
    pub decision: Decision,
    /// Loads set by set; none where there was none to decide.
    pub loads: Vec<Option<Mass>>,
    /// The coach's words.
    pub words: String,
}

/// What the next loads are worked out from.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct History {
    /// The times this scheme was done, the latest first; two are enough.
    pub times: Vec<Time>,
    /// An open flag on the movement.
    pub flag: Option<OpenFlag>,
    /// The coach's answer to the proposal made from the latest time.
    pub ruling: Option<Ruled>,
}

/// The load proposed for a set.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NextLoad {
    /// The set, counted from 1.
    pub set: u32,
    /// The load; none where it is the athlete's to choose.
    pub load: Option<Mass>,
    /// Why.
    pub reason: Reason,
}

impl Time {
    fn set(&self, set: u32) -> Option<&SetDone> {
        self.sets.iter().find(|done| done.set == set)
    }

    fn missed<'a>(&'a self, scheme: &'a Scheme) -> impl Iterator<Item = (&'a SetDone, u32)> {
        let asked = |done: &SetDone| scheme.target(done.set).unwrap_or(0);
        self.sets
            .iter()
            .map(move |done| (done, asked(done)))
            .filter(|(done, asked)| done.reps < *asked)
    }

    fn any_missed(&self, scheme: &Scheme) -> bool {
        self.missed(scheme).next().is_some()
    }
}

/// Works out the next load of every set of `scheme`, built from `rack`.
pub fn next_loads(
    rule: &LoadRule,
    scheme: &Scheme,
    rack: &Rack,
    history: &History,
) -> Vec<NextLoad> {
    let sets = 1..=scheme.sets();
    match rule {
        LoadRule::Free => {
            sets.map(|set| NextLoad { set, load: None, reason: Reason::Free }).collect()
        }
        LoadRule::Fixed { loads } => sets
            .map(|set| {
                let load = loads.get(set as usize - 1).or(loads.first()).copied();
                NextLoad { set, load, reason: Reason::Fixed }
            })
            .collect(),
        LoadRule::Step(rule) => {
            sets.map(|set| step_load(rule, scheme, rack, history, set)).collect()
        }
    }
}

fn step_load(
    rule: &StepRule,
    scheme: &Scheme,
    rack: &Rack,
    history: &History,
    set: u32,
) -> NextLoad {
    // A set skipped last time carries on from the time before.
    let last = history.times.iter().find_map(|time| time.set(set)?.load);
    let (load, reason) = match (last, history.times.first()) {
        (Some(last), Some(time)) => {
            let (load, reason) = from_last(rule, scheme, rack, history, time, set, last);
            (Some(load), reason)
        }
        _ => match &history.flag {
            Some(flag) => (None, flagged(flag, None)),
            None => (None, Reason::FirstTime),
        },
    };
    NextLoad { set, load, reason }
}

fn from_last(
    rule: &StepRule,
    scheme: &Scheme,
    rack: &Rack,
    history: &History,
    time: &Time,
    set: u32,
    last: Mass,
) -> (Mass, Reason) {
    let on = time.on;
    let again = hold(rack, last, last);
    // In the order of what must win: what hurts, what the coach said, what went wrong, progress.
    // Even a coach's answer never goes past the cap, whatever a file says.
    let ruled = history.ruling.as_ref().map(|ruled| {
        let decided = ruled.loads.get(set as usize - 1).copied().flatten().unwrap_or(again);
        let load = if ruled.decision == Decision::Refuse { again } else { decided };
        let cap = last.percent(CAP_PERCENT);
        let load = if load > cap { hold(rack, cap, last) } else { load };
        let (decision, words) = (ruled.decision, ruled.words.clone());
        (load, Reason::Coach { decision, last: Some(last), words })
    });
    match (&history.flag, ruled) {
        // Lighter is always allowed.
        (Some(_), Some((load, reason))) if load < again => return (load, reason),
        (Some(flag), _) => return (again, flagged(flag, Some(last))),
        (None, Some(ruled)) => return ruled,
        (None, None) => {}
    }
    if let Some((missed, asked)) = time.missed(scheme).next() {
        if history.times.get(1).is_some_and(|before| before.any_missed(scheme)) {
            let percent = rule.back_off_percent;
            let lighter = last.percent(100_u32.saturating_sub(percent));
            return (hold(rack, lighter, last), Reason::BackOff { last, percent, on });
        }
        let reason = Reason::Missed { last, set: missed.set, reps: missed.reps, asked, on };
        return (again, reason);
    }
    let of = scheme.sets();
    let done = (1..=of).filter(|set| time.set(*set).is_some()).count() as u32;
    if done < of {
        return (again, Reason::Unfinished { last, done, of, on });
    }
    let open = time.sets.last().filter(|done| scheme.is_open(done.set)).map(|done| done.reps);
    let asked = scheme.target(scheme.sets()).unwrap_or(0);
    let earned = open.filter(|reps| {
        !rule.earned_step.is_empty() && *reps >= asked.saturating_add(rule.earned_by)
    });
    let step = in_unit(if earned.is_some() { &rule.earned_step } else { &rule.step }, rack.unit);
    let cap = last.percent(CAP_PERCENT);
    let (allowed, capped) = ((last + step).min(cap), last + step > cap);
    let Some(build) = rack.at_or_below(allowed).filter(|build| build.mass > last) else {
        if again < last {
            return (again, Reason::NotInThisRoom { last, on });
        }
        let above = rack.above(last).map(|build| build.mass);
        return (again, Reason::NoLegalStep { last, above, allowed, on });
    };
    let by = build.mass - last;
    let reason = match earned {
        Some(reps) => Reason::Earned { last, by, reps, asked, capped, on },
        None => Reason::Step { last, by, capped, on },
    };
    (build.mass, reason)
}

/// A load, or the nearest lighter one that this room can build; on a bar that is heavier empty, the
/// empty bar, unless that is past the cap of `last`.
fn hold(rack: &Rack, load: Mass, last: Mass) -> Mass {
    let lightest = rack.lightest().filter(|build| build.mass <= last.percent(CAP_PERCENT));
    rack.at_or_below(load).or(lightest).map_or(load, |build| build.mass)
}

fn flagged(flag: &OpenFlag, last: Option<Mass>) -> Reason {
    Reason::Flagged { last, place: flag.place, severity: flag.severity, on: flag.on }
}

/// The step as written for `unit`, otherwise the first one written.
fn in_unit(steps: &[Step], unit: MassUnit) -> Mass {
    let step = steps.iter().find(|step| step.unit == unit).or(steps.first());
    step.map_or(Mass::ZERO, |step| step.mass)
}

#[cfg(test)]
#[path = "next_tests.rs"]
mod tests;
