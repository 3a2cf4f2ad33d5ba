//! What the parts of a plan refer to, and names that must differ.

use super::field::Field;
use super::movement::Register;
use super::room::Room;
use crate::plan::{Movement, Stretch};
use crate::say;

/// The most weeks of a block.
pub(super) const MOST_WEEKS: u32 = 26;

/// The most sets of a piece.
pub(super) const MOST_SETS: usize = 20;

/// The most reps of a set.
pub(super) const MOST_REPS: u32 = 100;

/// What the pieces of a day refer to.
pub(super) struct Given {
    /// Weeks of the block, when they could be read.
    pub(super) weeks: Option<u32>,
    /// What the kit can build.
    pub(super) room: Room,
    /// The plan's movements.
    pub(super) movements: Register<Movement>,
    /// The plan's stretches.
    pub(super) stretches: Register<Stretch>,
}

/// Names that must differ, and the lines they are on.
pub(super) struct Names {
    /// Says that each needs its own.
    help: fn() -> &'static str,
    seen: Vec<(String, u32)>,
}

impl Names {
    /// No names yet; `help` says that each needs its own.
    pub(super) fn new(help: fn() -> &'static str) -> Names {
        Names { help, seen: Vec::new() }
    }

    /// Reads a name; one that was there before is a problem.
    pub(super) fn first(&mut self, field: Field<'_>) -> Option<String> {
        let name = field.name()?;
        if let Some((_, line)) = self.seen.iter().find(|(known, _)| *known == name) {
            field.wrong(say::plan_day::name_taken(field.found(), line), (self.help)());
            return None;
        }
        self.seen.push((name.clone(), field.line()));
        Some(name)
    }
}
