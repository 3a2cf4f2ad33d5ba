//! What answers the question whether a set was a slip.

use super::key::At;
use super::screen::Row;
use super::tap::Tap;
use crate::journal::Lift;
use crate::say::screen as say;
use crate::store::Logged;

impl At<'_> {
    /// What says that a set which looks like a slip is right, by its name. A question on screen is answered for its own
    /// set and for no other; without one it is the set at hand, otherwise the latest that looks like a slip. None where
    /// that set does not.
    pub(super) fn sure(&self) -> Option<(String, Tap)> {
        let doubted = self.doubted();
        let is = |row: Option<&Row>, lift: &Lift| match row {
            Some(Row::Set { piece, set }) => *piece == lift.piece && *set == lift.set,
            _ => false,
        };
        let of = |row| doubted.iter().find(|lift| is(row, &lift.body));
        let found = match self.asked.filter(|_| !self.chosen) {
            Some(asked) => of(Some(asked)),
            None => of(self.row).or(doubted.last()),
        }?;
        let (piece, set) = (&found.body.piece, found.body.set);
        let words = if self.row.and_then(Row::piece) == Some(piece.as_str()) {
            say::set_is_right(set)
        } else {
            say::set_of_piece_is_right(piece, set)
        };
        Some((words, Tap::Sure { lift: found.record }))
    }

    /// The sets of the session that look like a slip, as they were logged.
    pub(super) fn doubted(&self) -> Vec<&Logged<Lift>> {
        let lifts = self.snapshot.log.iter().flat_map(|log| &log.lifts);
        lifts.filter(|lift| lift.body.doubt).collect()
    }
}
