//! The step rule: every set goes up a little when last time was done as planned.

use super::before::{Before, Found};
use super::{History, NextLoad, away, first, hold};
use crate::id::RecordId;
use crate::load::Reason;
use crate::mass::{Mass, MassUnit};
use crate::plan::{Builds, Scheme, Step, StepRule};

pub(super) fn next(
    rule: &StepRule,
    scheme: &Scheme,
    builds: &Builds,
    history: &History,
    set: u32,
) -> NextLoad {
    match Before::of(scheme, builds, history, set) {
        Some(before) => before.next(|| from_last(rule, &before)),
        None => first::next(scheme, builds, history, set),
    }
}

/// In the order of what must win: weeks away, what went wrong, progress.
fn from_last(rule: &StepRule, before: &Before<'_>) -> Found {
    match (eased(before), unmet(rule, before)) {
        // After weeks away and two misses: whichever is lighter.
        (Some(eased), Some(unmet)) => {
            if unmet.0 < eased.0 {
                unmet
            } else {
                eased
            }
        }
        (Some(found), None) | (None, Some(found)) => found,
        (None, None) => up(rule, before),
    }
}

fn eased(before: &Before<'_>) -> Option<Found> {
    let (weeks, percent) = away::eased(before.history)?;
    let (last, on) = (before.last, before.time.on);
    let lighter = last.percent(100_u32.saturating_sub(percent));
    let reason = Reason::EasedIn { last, weeks, percent, on };
    Some((hold(before.builds, lighter, last), reason, vec![before.record]))
}

/// What keeps all sets where they are, or takes them back.
fn unmet(rule: &StepRule, before: &Before<'_>) -> Option<Found> {
    let Before { scheme, time, last, record, .. } = *before;
    let (on, again) = (time.on, before.again());
    if let Some((missed, asked)) = time.missed(scheme).next() {
        let earlier = before.history.times.get(1);
        if let Some(earlier) = earlier.filter(|time| time.any_missed(scheme)) {
            let percent = rule.back_off_percent;
            let lighter = last.percent(100_u32.saturating_sub(percent));
            let from = time.records().chain(earlier.records()).collect();
            return Some((
                hold(before.builds, lighter, last),
                Reason::BackOff { last, percent, on },
                from,
            ));
        }
        let reason = Reason::Missed { last, set: missed.set, reps: missed.reps, asked, on };
        return Some((again, reason, vec![record, missed.record]));
    }
    let of = scheme.sets();
    let done = (1..=of).filter(|set| time.set(*set).is_some()).count() as u32;
    let reason = Reason::Unfinished { last, done, of, on };
    (done < of).then(|| (again, reason, time.records().collect()))
}

fn up(rule: &StepRule, before: &Before<'_>) -> Found {
    let Before { scheme, builds, time, last, .. } = *before;
    let on = time.on;
    let open = time.sets.last().filter(|done| scheme.is_open(done.set));
    let asked = scheme.target(scheme.sets()).unwrap_or(0);
    let earned = open.map(|done| done.reps).filter(|reps| {
        !rule.earned_step.is_empty() && *reps >= asked.saturating_add(rule.earned_by)
    });
    let steps = if earned.is_some() { &rule.earned_step } else { &rule.step };
    let step = in_unit(steps, builds.unit);
    let (allowed, capped) = ((last + step).min(before.cap()), last + step > before.cap());
    let from: Vec<RecordId> = time.records().collect();
    let Some(build) = builds.at_or_below(allowed).filter(|build| build.mass > last) else {
        let again = before.again();
        if again < last {
            return (again, Reason::NotInThisRoom { last, on }, from);
        }
        let above = builds.above(last).map(|build| build.mass);
        return (again, Reason::NoLegalStep { last, above, allowed, on }, from);
    };
    let by = build.mass - last;
    let reason = match earned {
        Some(reps) => Reason::Earned { last, by, reps, asked, capped, on },
        None => Reason::Step { last, by, capped, on },
    };
    (build.mass, reason, from)
}

/// The step as written for `unit`, otherwise the first one written.
fn in_unit(steps: &[Step], unit: MassUnit) -> Mass {
    let step = steps.iter().find(|step| step.unit == unit).or(steps.first());
    step.map_or(Mass::ZERO, |step| step.mass)
}
