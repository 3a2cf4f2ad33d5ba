//! What a coach is told before a plan is published: loads that nobody can build where they will be built,
//! which are errors, and whatever is allowed and may not be meant, which are notes.
//!
//! A plan that was published reads without this, so that no rule added here takes it away again.

mod apart;
mod fixed;
mod gap;
mod names;
mod people;
mod place;
mod steps;
mod time;
mod tracks;
mod whereabouts;

#[cfg(test)]
mod tests;

use chrono::NaiveDate;
use toml::de::DeTable;

use self::place::{Path, place};
pub use self::whereabouts::{SetAt, Whereabouts};
use super::problems::Problems;
use super::read_plan;
use crate::mass::MassUnit;
use crate::plan::{
    Block, Builds, Exercise, Interval, Lifted, Piece, PieceKind, Problem, Rack, Strength,
};

/// A plan that can be published, and what its coach should hear first.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reviewed {
    /// The plan.
    pub block: Block,
    /// What is allowed and may not be meant, in the order of the text.
    pub notes: Vec<Problem>,
}

/// Reads a plan text as it is read before it is published, for `people` who are somewhere by now: what they
/// meet from there is told instead of what anybody might meet. Without `today` nothing is said about when the
/// block starts.
///
/// # Errors
/// Every problem found, in the order of the text: all that [`read_plan`] finds; and where that finds none,
/// loads that cannot be built on the bar that they will be lifted with.
pub fn review_plan(
    bytes: &[u8],
    today: Option<NaiveDate>,
    people: &[Whereabouts],
) -> Result<Reviewed, Vec<Problem>> {
    let block = read_plan(bytes)?;
    let text = std::str::from_utf8(bytes).unwrap_or_default();
    let tree = super::tree(text);
    let review = Review {
        rack: Rack::new(&block),
        block: &block,
        people,
        tree: tree.get_ref(),
        errors: Problems::new(bytes),
        notes: Problems::new(bytes),
    };
    names::review(&review);
    steps::review(&review);
    gap::review(&review);
    fixed::review(&review);
    tracks::review(&review);
    time::review(&review, today);
    let Review { errors, notes, .. } = review;
    errors.or(Some(()))?;
    Ok(Reviewed { notes: notes.all(), block })
}

/// A plan without problems, and what is found about it.
struct Review<'t> {
    block: &'t Block,
    rack: Rack,
    people: &'t [Whereabouts],
    tree: &'t DeTable<'t>,
    errors: Problems<'t>,
    notes: Problems<'t>,
}

/// A piece of a day and where it is written.
struct Placed<'t, K> {
    /// The day's name.
    day: &'t str,
    piece: &'t Piece,
    kind: &'t K,
    at: Path<'t>,
}

impl<'t> Review<'t> {
    fn note(&self, at: &Path<'_>, what: impl Into<String>, help: impl Into<String>) {
        self.notes.wrong(place(self.tree, at), what.into(), help.into());
    }

    fn wrong(&self, at: &Path<'_>, what: impl Into<String>, help: impl Into<String>) {
        self.errors.wrong(place(self.tree, at), what.into(), help.into());
    }

    /// The line of something, counted from 1.
    fn line(&self, at: &Path<'_>) -> u32 {
        self.notes.line(place(self.tree, at))
    }

    fn pieces(&self) -> impl Iterator<Item = (&'t str, &'t Piece, Path<'t>)> + use<'t> {
        let days = self.block.days.iter().enumerate();
        days.flat_map(|(day, of)| {
            let pieces = of.pieces.iter().enumerate();
            pieces.map(move |(index, piece)| {
                (
                    of.name.as_str(),
                    piece,
                    Path::new().key("day").index(day).key("piece").index(index),
                )
            })
        })
    }

    fn strengths(&self) -> impl Iterator<Item = Placed<'t, Strength>> + use<'t> {
        self.pieces().filter_map(|(day, piece, at)| match &piece.kind {
            PieceKind::Strength(kind) => Some(Placed { day, piece, kind, at }),
            PieceKind::Interval(_) | PieceKind::Hold(_) | PieceKind::Note(_) => None,
        })
    }

    fn intervals(&self) -> impl Iterator<Item = Placed<'t, Interval>> + use<'t> {
        self.pieces().filter_map(|(day, piece, at)| match &piece.kind {
            PieceKind::Interval(kind) => Some(Placed { day, piece, kind, at }),
            PieceKind::Strength(_) | PieceKind::Hold(_) | PieceKind::Note(_) => None,
        })
    }

    /// What carries the loads of a piece: for athletes who prefer either unit, each once.
    fn carriers(&self, strength: &Strength) -> Vec<&Builds> {
        let exercise = Exercise::of(&strength.movement);
        let of = |unit| self.rack.builds(self.block, Some(strength), &exercise, unit);
        let (kilograms, pounds) = (of(MassUnit::Kg), of(MassUnit::Lb));
        let same = kilograms.bar == pounds.bar && kilograms.loads().eq(pounds.loads());
        if same { vec![kilograms] } else { vec![kilograms, pounds] }
    }

    fn lifted(&self, movement: &str) -> Lifted {
        self.block.lifted(&Exercise::of(movement)).unwrap_or(Lifted::Body)
    }
}
