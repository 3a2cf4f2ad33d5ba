//! The tap on another bar.

use super::Taps;
use crate::error::{Error, Field, Result, Thing};
use crate::journal::BarTaken;
use crate::plan::PieceKind;
use crate::say;
use crate::store::Draft;
use crate::words;

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
        let same = |of: &str| of.to_lowercase() == bar.trim().to_lowercase();
        let Some(found) = block.kit.bars.iter().find(|known| same(&known.name)) else {
            let names: Vec<String> = block.kit.bars.iter().map(|bar| bar.name.clone()).collect();
            let reason = say::plates::no_such_bar(words::list(&names));
            return Err(Error::not_found(Thing::Bar, bar, reason));
        };
        if found.name == builds.bar {
            return Err(Error::invalid(Field::Bar, say::tap::bar_taken_already(&found.name)));
        }
        let (session, piece, on) = (self.log.id(), name.to_owned(), self.log.on());
        let (planned, bar) = (planned.name.clone(), found.name.clone());
        Ok(Draft::new(BarTaken { session, piece, exercise, planned, bar, on }))
    }
}
