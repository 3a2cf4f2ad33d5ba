//! A set that was done before, and what comes before every rule: what hurts, and what the coach said.

use super::{CAP_PERCENT, History, NextLoad, Time, flagged, hold};
use crate::id::RecordId;
use crate::load::{Decision, Reason};
use crate::mass::Mass;
use crate::plan::{Builds, Scheme};

/// A load, why, and the records it was read from.
pub(super) type Found = (Mass, Reason, Vec<RecordId>);

/// One set that was done before.
pub(super) struct Before<'a> {
    pub(super) scheme: &'a Scheme,
    pub(super) builds: &'a Builds,
    pub(super) history: &'a History,
    /// The latest time the scheme was done.
    pub(super) time: &'a Time,
    pub(super) set: u32,
    /// The load last time, and the record it stands in.
    pub(super) last: Mass,
    pub(super) record: RecordId,
}

impl<'a> Before<'a> {
    /// Finds what was done before in a set; none the first time.
    pub(super) fn of(
        scheme: &'a Scheme,
        builds: &'a Builds,
        history: &'a History,
        set: u32,
    ) -> Option<Before<'a>> {
        let done = history.last_of(set)?;
        let (last, record) = (done.load?, done.record);
        let time = history.times.first()?;
        Some(Before { scheme, builds, history, time, set, last, record })
    }

    /// The load of the set, by `rule` unless a flag or the coach says otherwise.
    pub(super) fn next(&self, rule: impl FnOnce() -> Found) -> NextLoad {
        let again = self.again();
        let (load, reason, from) = match (&self.history.flag, self.ruled()) {
            // Lighter is always allowed.
            (Some(_), Some(ruled)) if ruled.0 < again => ruled,
            (Some(flag), _) => {
                (again, flagged(flag, Some(self.last)), vec![self.record, flag.record])
            }
            (None, Some(ruled)) => ruled,
            (None, None) => rule(),
        };
        NextLoad { set: self.set, load: Some(load), reason, from }
    }

    /// The same load again, or the nearest lighter one that can be built.
    pub(super) fn again(&self) -> Mass {
        hold(self.builds, self.last, self.last)
    }

    /// The most that is allowed.
    pub(super) fn cap(&self) -> Mass {
        self.last.percent(CAP_PERCENT)
    }

    /// The coach's answer. Even that never goes past the cap, whatever a file says.
    fn ruled(&self) -> Option<Found> {
        let ruled = self.history.ruling.as_ref()?;
        let again = self.again();
        let decided = ruled.loads.get(self.set as usize - 1).copied().flatten().unwrap_or(again);
        let load = if ruled.decision == Decision::Refuse { again } else { decided };
        let cap = self.cap();
        let load = if load > cap { hold(self.builds, cap, self.last) } else { load };
        let (decision, words) = (ruled.decision, ruled.words.clone());
        let reason = Reason::Coach { decision, last: Some(self.last), words };
        Some((load, reason, vec![self.record, ruled.record]))
    }
}
