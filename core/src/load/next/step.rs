//! The step rule: every set goes up a little when last time was done as planned.

use super::{CAP_PERCENT, History, NextLoad, Time, away, first, flagged, hold};
use crate::id::RecordId;
use crate::journal::Decision;
use crate::load::{Rack, Reason};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Scheme, Step, StepRule};

pub(super) fn next(
    rule: &StepRule,
    scheme: &Scheme,
    rack: &Rack,
    history: &History,
    set: u32,
) -> NextLoad {
    let last = history.last_of(set);
    match (last.and_then(|done| Some((done.record, done.load?))), history.times.first()) {
        (Some((record, last)), Some(time)) => {
            let work = Work { rule, scheme, rack, history, time, set, last, record };
            let (load, reason, from) = work.next();
            NextLoad { set, load: Some(load), reason, from }
        }
        _ => first::next(scheme, rack, history, set),
    }
}

/// One set that was done before.
struct Work<'a> {
    rule: &'a StepRule,
    scheme: &'a Scheme,
    rack: &'a Rack,
    history: &'a History,
    time: &'a Time,
    set: u32,
    last: Mass,
    record: RecordId,
}

type Found = (Mass, Reason, Vec<RecordId>);

impl Work<'_> {
    /// In the order of what must win: what hurts, what the coach said, weeks away, what went wrong,
    /// progress.
    fn next(&self) -> Found {
        let again = self.again();
        let ruled = self.ruled();
        match (&self.history.flag, ruled) {
            // Lighter is always allowed.
            (Some(_), Some(ruled)) if ruled.0 < again => ruled,
            (Some(flag), _) => {
                let from = vec![self.record, flag.record];
                (again, flagged(flag, Some(self.last)), from)
            }
            (None, Some(ruled)) => ruled,
            (None, None) => {
                let unmet = self.unmet();
                match (self.eased(), unmet) {
                    // After weeks away and two misses: whichever is lighter.
                    (Some(eased), Some(unmet)) => {
                        if unmet.0 < eased.0 {
                            unmet
                        } else {
                            eased
                        }
                    }
                    (Some(found), None) | (None, Some(found)) => found,
                    (None, None) => self.up(),
                }
            }
        }
    }

    fn again(&self) -> Mass {
        hold(self.rack, self.last, self.last)
    }

    /// The coach's answer. Even that never goes past the cap, whatever a file says.
    fn ruled(&self) -> Option<Found> {
        let (last, ruled) = (self.last, self.history.ruling.as_ref()?);
        let again = self.again();
        let decided = ruled.loads.get(self.set as usize - 1).copied().flatten().unwrap_or(again);
        let load = if ruled.decision == Decision::Refuse { again } else { decided };
        let cap = last.percent(CAP_PERCENT);
        let load = if load > cap { hold(self.rack, cap, last) } else { load };
        let (decision, words) = (ruled.decision, ruled.words.clone());
        let reason = Reason::Coach { decision, last: Some(last), words };
        Some((load, reason, vec![self.record, ruled.record]))
    }

    fn eased(&self) -> Option<Found> {
        let (weeks, percent) = away::eased(self.history)?;
        let (last, on) = (self.last, self.time.on);
        let lighter = last.percent(100_u32.saturating_sub(percent));
        let reason = Reason::EasedIn { last, weeks, percent, on };
        Some((hold(self.rack, lighter, last), reason, vec![self.record]))
    }

    /// What keeps all sets where they are, or takes them back.
    fn unmet(&self) -> Option<Found> {
        let (last, on, again) = (self.last, self.time.on, self.again());
        if let Some((missed, asked)) = self.time.missed(self.scheme).next() {
            let before = self.history.times.get(1);
            if let Some(before) = before.filter(|before| before.any_missed(self.scheme)) {
                let percent = self.rule.back_off_percent;
                let lighter = last.percent(100_u32.saturating_sub(percent));
                let from = self.time.records().chain(before.records()).collect();
                let reason = Reason::BackOff { last, percent, on };
                return Some((hold(self.rack, lighter, last), reason, from));
            }
            let reason = Reason::Missed { last, set: missed.set, reps: missed.reps, asked, on };
            return Some((again, reason, vec![self.record, missed.record]));
        }
        let of = self.scheme.sets();
        let done = (1..=of).filter(|set| self.time.set(*set).is_some()).count() as u32;
        let reason = Reason::Unfinished { last, done, of, on };
        (done < of).then(|| (again, reason, self.time.records().collect()))
    }

    fn up(&self) -> Found {
        let (rule, scheme, last, on) = (self.rule, self.scheme, self.last, self.time.on);
        let open = self.time.sets.last().filter(|done| scheme.is_open(done.set));
        let asked = scheme.target(scheme.sets()).unwrap_or(0);
        let earned = open.map(|done| done.reps).filter(|reps| {
            !rule.earned_step.is_empty() && *reps >= asked.saturating_add(rule.earned_by)
        });
        let steps = if earned.is_some() { &rule.earned_step } else { &rule.step };
        let step = in_unit(steps, self.rack.unit);
        let cap = last.percent(CAP_PERCENT);
        let (allowed, capped) = ((last + step).min(cap), last + step > cap);
        let from: Vec<RecordId> = self.time.records().collect();
        let Some(build) = self.rack.at_or_below(allowed).filter(|build| build.mass > last) else {
            let again = self.again();
            if again < last {
                return (again, Reason::NotInThisRoom { last, on }, from);
            }
            let above = self.rack.above(last).map(|build| build.mass);
            return (again, Reason::NoLegalStep { last, above, allowed, on }, from);
        };
        let by = build.mass - last;
        let reason = match earned {
            Some(reps) => Reason::Earned { last, by, reps, asked, capped, on },
            None => Reason::Step { last, by, capped, on },
        };
        (build.mass, reason, from)
    }
}

/// The step as written for `unit`, otherwise the first one written.
fn in_unit(steps: &[Step], unit: MassUnit) -> Mass {
    let step = steps.iter().find(|step| step.unit == unit).or(steps.first());
    step.map_or(Mass::ZERO, |step| step.mass)
}
