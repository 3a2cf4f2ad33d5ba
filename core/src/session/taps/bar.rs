//! The tap on another bar.

use super::Taps;
use crate::error::{Error, Field, Result};
use crate::journal::BarTaken;
use crate::plan::PieceKind;
use crate::say;
use crate::session::plates::bar_typed;
use crate::store::Draft;

impl Taps<'_> {
    /// Takes a bar of the room, named in whatever case.
    pub(super) fn take_bar(&self, name: &str, bar: &str) -> Result<Draft> {
        let PieceKind::Strength(strength) = &self.piece(name)?.kind else {
            return Err(Error::invalid(Field::Piece, say::tap::no_sets(name)));
        };
        let (block, unit) = (self.sheet.block, self.sheet.unit());
        let exercise = self.sheet.snapshot.exercise(name, &strength.movement);
        let builds = self.sheet.builds(name, strength, &exercise);
        let planned = block.bar_for(Some(strength), &exercise, unit);
        let Some(planned) = planned.filter(|_| builds.has_plates()) else {
            return Err(Error::invalid(Field::Piece, say::tap::needs_no_bar(name)));
        };
        let found = bar_typed(&block.kit, bar)?;
        if found.name == builds.bar {
            return Err(Error::invalid(Field::Bar, say::tap::bar_taken_already(&found.name)));
        }
        let (session, piece, on) = (self.log.id(), name.to_owned(), self.log.on());
        let (planned, bar) = (planned.name.clone(), found.name.clone());
        Ok(Draft::new(BarTaken { session, piece, exercise, planned, bar, on }))
    }
}
