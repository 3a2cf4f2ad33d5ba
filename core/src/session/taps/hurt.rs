//! Taps about discomfort.

use super::Taps;
use crate::care::{Place, Sign};
use crate::error::{Error, Field, Result, Thing};
use crate::id::RecordId;
use crate::journal::{Cleared, Discomfort};
use crate::say;
use crate::store::{Draft, Logged};

impl Taps<'_> {
    pub(super) fn flag(
        &self,
        name: &str,
        movement: Option<String>,
        place: Place,
        severity: u32,
        mut signs: Vec<Sign>,
    ) -> Result<Draft> {
        if !(1..=10).contains(&severity) {
            return Err(Error::invalid(Field::Severity, say::tap::severity_out_of_range()));
        }
        let unplanned = self.log.unplanned_pieces();
        let unplanned = unplanned.into_iter().find(|(piece, _)| *piece == name);
        let exercise = match unplanned {
            Some((_, exercise)) => exercise.clone(),
            None => self.sheet.snapshot.exercise(name, &self.movement(name, movement)?),
        };
        // Only a flag that is still open is corrected: pain that comes back is a new flag.
        let open = |record| self.sheet.snapshot.flags.open.iter().any(|flag| flag.record == record);
        let mut before = self.log.flags.iter().rev();
        let before =
            before.find(|flag| flag.body.exercise.as_ref() == Some(&exercise) && open(flag.record));
        // Nothing said later about pain takes an emergency sign away: only undoing or clearing does.
        let told = before.map_or(&[][..], |flag| &flag.body.signs);
        signs.extend(told.iter().copied().filter(|sign| !signs.contains(sign)).collect::<Vec<_>>());
        let (session, piece, on) = (Some(self.log.id()), Some(name.to_owned()), self.log.on());
        let exercise = Some(exercise);
        let flag = Discomfort { session, piece, exercise, place, severity, signs, on };
        Ok(Draft::new_or_corrected(before.map(|flag| flag.record), flag))
    }
}

/// The entries that clear open flags, all of them or none.
pub(crate) fn clear_flags(
    open: &[Logged<Discomfort>],
    flags: &[RecordId],
    session: Option<RecordId>,
) -> Result<Vec<Draft>> {
    if flags.is_empty() {
        return Err(Error::missing(Thing::Flag, say::tap::no_open_flag()));
    }
    let one = |flag: &RecordId| {
        if open.iter().any(|open| open.record == *flag) {
            return Ok(Draft::new(Cleared { flag: *flag, session }));
        }
        Err(Error::missing(Thing::Flag, say::tap::flag_not_open()))
    };
    flags.iter().map(one).collect()
}
