//! Loads worked out from what the athlete can lift now.

use super::work::{Found, Work};
use super::{History, NextLoad, away, first};
use crate::load::{Rack, Reason};
use crate::mass::{Mass, MassUnit};
use crate::plan::Scheme;

/// What a rule asks of an athlete's strength.
#[derive(Clone, Copy)]
pub(super) enum Asked {
    /// A percentage of the one-rep max.
    Percent(u32),
    /// Reps that should be left.
    Reserve(u32),
}

pub(super) fn next(
    asked: Asked,
    scheme: &Scheme,
    rack: &Rack,
    history: &History,
    set: u32,
) -> NextLoad {
    let reps = scheme.target(set).unwrap_or(0);
    match (Work::before(scheme, rack, history, set), &history.able) {
        (Some(work), Some(_)) => work.next(|| {
            let (load, reason, mut from) = found(asked, reps, rack, history, Some(&work));
            from.push(work.record);
            (load, reason, from)
        }),
        // Sets that say only "at least so many" tell nothing of strength.
        (Some(work), None) => work.next(|| {
            let reps = work.time.set(set).map_or(0, |done| done.reps);
            let reason = Reason::SayReserve { last: work.last, reps };
            (work.again(), reason, vec![work.record])
        }),
        (None, Some(_)) if history.own_flag().is_none() => {
            let (load, reason, from) = found(asked, reps, rack, history, None);
            NextLoad { set, load: Some(load), reason, from }
        }
        (None, _) => first::next(scheme, rack, history, set),
    }
}

/// The load of a strength, inside the cap of last time and lighter after weeks away.
pub(super) fn found(
    asked: Asked,
    reps: u32,
    rack: &Rack,
    history: &History,
    before: Option<&Work<'_>>,
) -> Found {
    let Some(able) = &history.able else { return (Mass::ZERO, Reason::FirstTime, Vec::new()) };
    let now = able.strength.now();
    // A scheme never done before starts at the lower end.
    let max = if before.is_some() { now.likely } else { now.low };
    let kg = match asked {
        Asked::Percent(percent) => max * f64::from(percent) / 100.0,
        Asked::Reserve(leave) => able.strength.load_for(reps, leave) * max / now.likely,
    };
    let (weeks, less) = away::eased(history).unwrap_or((0, 0));
    let wanted = whole_tenths(kg).percent(100_u32.saturating_sub(less));
    let most = before.map_or(wanted, |work| work.cap());
    let build = rack.at_or_below(wanted.min(most)).or(rack.lightest());
    let load = build.map_or(wanted.min(most), |build| build.mass);
    let capped = before.filter(|_| wanted > most).map(|work| work.last);
    let (max, low) = (whole_tenths(max), before.is_none());
    let reason = match asked {
        Asked::Percent(percent) => Reason::Percent { percent, max, capped, weeks, low },
        Asked::Reserve(leave) => Reason::Reserve { reps, leave, max, capped, weeks, low },
    };
    (load, reason, able.from.clone())
}

/// A modelled mass as a load: rounded down to a tenth of a kilogram, so that the last digits of a
/// float, which differ between devices, decide nothing.
pub fn whole_tenths(kg: f64) -> Mass {
    let tenths = (kg * 10.0 + 1e-6).floor().clamp(0.0, 50_000.0);
    Mass::thousandths(tenths as i64 * 100, MassUnit::Kg)
}
