//! Loads worked out from what the athlete can lift now.

use super::before::Before;
use super::by_strength::{Asked, found};
use super::{History, NextLoad, first};
use crate::load::Reason;
use crate::plan::{Builds, Scheme};

pub(super) fn next(
    asked: Asked,
    scheme: &Scheme,
    builds: &Builds,
    history: &History,
    set: u32,
) -> NextLoad {
    let reps = scheme.target(set).unwrap_or(0);
    match (Before::of(scheme, builds, history, set), &history.able) {
        (Some(before), Some(_)) => before.next(|| {
            let (load, reason, mut from) = found(asked, reps, builds, history, Some(&before));
            from.push(before.record);
            (load, reason, from)
        }),
        // Sets that say only "at least so many" tell nothing of strength.
        (Some(before), None) => before.next(|| {
            let reps = before.time.set(set).map_or(0, |done| done.reps);
            let reason = Reason::SayReserve { last: before.last, reps };
            (before.again(), reason, vec![before.record])
        }),
        (None, Some(_)) if history.own_flag().is_none() => {
            let (load, reason, from) = found(asked, reps, builds, history, None);
            NextLoad { set, load: Some(load), reason, from }
        }
        (None, _) => first::next(scheme, builds, history, set),
    }
}
