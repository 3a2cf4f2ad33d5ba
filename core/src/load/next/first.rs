//! The first time: no load is invented. The athlete chooses the first one and says how many reps were
//! left; the sets after it are found from that.

use super::by_strength::{Asked, found};
use super::{History, NextLoad, SetDone, flagged};
use crate::load::Reason;
use crate::mass::Mass;
use crate::plan::{Builds, Scheme};

/// Reps that should be left at the end of a set while a load is being found.
///
/// Two is the middle of what ratings near failure tell apart: their error is about one rep from 0 to
/// 5 reps before failure and above two from 7 to 10 (Hackett et al., J Strength Cond Res
/// 2017;31:2162-2168).
const LEAVE: u32 = 2;
/// Reps to failure beyond which an equation says nothing: taken as so many, which is lighter
/// (Reynolds et al., J Strength Cond Res 2006;20:584-592: no more than 10).
const MOST_REPS: u32 = 10;
/// No set is more than a fourth above the one before it. Common practice, no source.
const MOST_PERCENT: u32 = 125;

pub(super) fn next(scheme: &Scheme, builds: &Builds, history: &History, set: u32) -> NextLoad {
    if let Some(flag) = history.own_flag() {
        let (reason, from) = (flagged(flag, None), vec![flag.record]);
        return NextLoad { set, load: None, reason, from };
    }
    let before = history.so_far.iter().rfind(|done| done.set < set && done.load.is_some());
    let asked = scheme.target(set).unwrap_or(0);
    let led = before.and_then(|done| {
        let load = done.load?;
        let short = done.reps < scheme.target(done.set).unwrap_or(0);
        // Whoever stopped short had none left.
        let reserve = done.reserve.or(short.then_some(0));
        Some((done, load, reserve))
    });
    let says = led.as_ref().is_some_and(|(_, _, reserve)| reserve.is_some());
    if !says && history.able.is_some() {
        // Known from other schemes of the same movement.
        let (load, reason, from) = found(Asked::Reserve(LEAVE), asked, builds, history, None);
        return NextLoad { set, load: Some(load), reason, from };
    }
    match led {
        None => NextLoad { set, load: None, reason: Reason::FirstTime, from: Vec::new() },
        Some((done, last, None)) => {
            let reason = Reason::SayReserve { last, reps: done.reps };
            NextLoad { set, load: None, reason, from: vec![done.record] }
        }
        Some((done, last, Some(reserve))) => {
            let wanted = carried(last, done, reserve, asked);
            let (most, capped) = (last.percent(MOST_PERCENT), wanted > last.percent(MOST_PERCENT));
            let build = builds.at_or_below(wanted.min(most)).or(builds.lightest());
            let reason = Reason::Found { last, reps: done.reps, reserve, leave: LEAVE, capped };
            NextLoad { set, load: build.map(|build| build.mass), reason, from: vec![done.record] }
        }
    }
}

/// The load that leaves [`LEAVE`] of `asked` reps, by Brzycki's equation on both sides:
/// `1RM = load * 36 / (37 - reps to failure)` (JOPERD 1993;64(1):88-90), in whole numbers.
fn carried(last: Mass, done: &SetDone, reserve: u32, asked: u32) -> Mass {
    let able = done.reps.saturating_add(reserve).clamp(1, MOST_REPS);
    let wanted = asked.saturating_add(LEAVE).min(36);
    let ten_ng = i128::from(last.ten_ng) * i128::from(37 - wanted) / i128::from(37 - able);
    Mass { ten_ng: i64::try_from(ten_ng).unwrap_or(i64::MAX) }
}
