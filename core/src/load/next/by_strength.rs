//! A load by what the athlete can lift now.

use super::before::{Before, Found};
use super::{History, away};
use crate::load::Reason;
use crate::mass::{Mass, MassUnit};
use crate::plan::Builds;

/// What a rule asks of an athlete's strength.
#[derive(Clone, Copy)]
pub(super) enum Asked {
    /// A percentage of the one-rep max.
    Percent(u32),
    /// Reps that should be left.
    Reserve(u32),
}

/// The load of a strength, inside the cap of last time and lighter after weeks away.
pub(super) fn found(
    asked: Asked,
    reps: u32,
    builds: &Builds,
    history: &History,
    before: Option<&Before<'_>>,
) -> Found {
    let both = history.able.as_ref().and_then(|able| {
        let load = match asked {
            Asked::Percent(_) => able.strength.estimate(),
            Asked::Reserve(leave) => able.strength.load_for(reps, leave),
        };
        Some((able, able.strength.estimate()?, load?))
    });
    let Some((able, max, load)) = both else { return (Mass::ZERO, Reason::FirstTime, Vec::new()) };
    // The lower ends: an estimate is not a test.
    let max = max.low;
    let kg = match asked {
        Asked::Percent(percent) => max * f64::from(percent) / 100.0,
        Asked::Reserve(_) => load.low,
    };
    let (weeks, less) = away::eased(history).unwrap_or((0, 0));
    let wanted = whole_tenths(kg).percent(100_u32.saturating_sub(less));
    let most = before.map_or(wanted, |before| before.cap());
    let build = builds.at_or_below(wanted.min(most)).or(builds.lightest());
    let load = build.map_or(wanted.min(most), |build| build.mass);
    let capped = before.filter(|_| wanted > most).map(|before| before.last);
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
