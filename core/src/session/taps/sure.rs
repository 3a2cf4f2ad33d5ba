//! A set that looks like a slip of the finger, and is none.

use super::Taps;
use crate::error::{Error, Field, Result};
use crate::id::RecordId;
use crate::journal::Lift;
use crate::say;
use crate::store::Draft;

impl Taps<'_> {
    /// Takes the doubt from a set of the session: it stays as it was logged, and counts.
    pub(super) fn sure(&self, lift: RecordId) -> Result<Draft> {
        let found = self.log.lifts.iter().find(|found| found.record == lift);
        let found =
            found.ok_or_else(|| Error::invalid(Field::Set, say::tap::set_not_in_session()))?;
        confirmed(lift, &found.body)
    }
}

/// What takes the doubt from a set.
pub(crate) fn confirmed(record: RecordId, lift: &Lift) -> Result<Draft> {
    if !lift.doubt {
        return Err(Error::invalid(Field::Set, say::tap::set_counts_already()));
    }
    Ok(Draft::correct(record, Lift { doubt: false, ..lift.clone() }))
}
