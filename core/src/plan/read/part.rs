//! The tables of a plan, and what is said when one has a key nobody knows or lacks one that it needs.

use crate::say::plan_part as say;

/// A table of a plan; of a piece or a load, its kind once that is known.
#[derive(Clone, Copy)]
pub(super) enum Part {
    Plan,
    Block,
    Kit,
    Bar,
    Plate,
    Bell,
    Machine,
    Stack,
    WarmUp,
    Easy,
    Movement,
    Option,
    Stretch,
    Day,
    Piece,
    Strength,
    Interval,
    Hold,
    Note,
    Station,
    Load,
    Step,
    Percent,
    Reserve,
    Fixed,
    Free,
}

impl Part {
    /// Says that it has no such key.
    pub(super) fn has_no(self, key: &str) -> String {
        match self {
            Part::Plan => say::plan_has_no(key),
            Part::Block => say::block_has_no(key),
            Part::Kit => say::kit_has_no(key),
            Part::Bar => say::bar_has_no(key),
            Part::Plate => say::plate_has_no(key),
            Part::Bell => say::bell_has_no(key),
            Part::Machine => say::machine_has_no(key),
            Part::Stack => say::stack_has_no(key),
            Part::WarmUp => say::warm_up_has_no(key),
            Part::Easy => say::easy_has_no(key),
            Part::Movement => say::movement_has_no(key),
            Part::Option => say::option_has_no(key),
            Part::Stretch => say::stretch_has_no(key),
            Part::Day => say::day_has_no(key),
            Part::Piece => say::piece_has_no(key),
            Part::Strength => say::strength_has_no(key),
            Part::Interval => say::interval_has_no(key),
            Part::Hold => say::hold_has_no(key),
            Part::Note => say::note_has_no(key),
            Part::Station => say::station_has_no(key),
            Part::Load => say::load_has_no(key),
            Part::Step => say::step_has_no(key),
            Part::Percent => say::percent_has_no(key),
            Part::Reserve => say::reserve_has_no(key),
            Part::Fixed => say::fixed_has_no(key),
            Part::Free => say::free_has_no(key),
        }
    }

    /// Says that a key is missing.
    pub(super) fn needs(self, key: &str) -> String {
        match self {
            Part::Plan => say::plan_needs(key),
            Part::Block => say::block_needs(key),
            Part::Kit => say::kit_needs(key),
            Part::Bar => say::bar_needs(key),
            Part::Plate => say::plate_needs(key),
            Part::Bell => say::bell_needs(key),
            Part::Machine => say::machine_needs(key),
            Part::Stack => say::stack_needs(key),
            Part::WarmUp => say::warm_up_needs(key),
            Part::Easy => say::easy_needs(key),
            Part::Movement => say::movement_needs(key),
            Part::Option => say::option_needs(key),
            Part::Stretch => say::stretch_needs(key),
            Part::Day => say::day_needs(key),
            Part::Piece => say::piece_needs(key),
            Part::Strength => say::strength_needs(key),
            Part::Interval => say::interval_needs(key),
            Part::Hold => say::hold_needs(key),
            Part::Note => say::note_needs(key),
            Part::Station => say::station_needs(key),
            Part::Step => say::step_needs(key),
            Part::Percent => say::percent_needs(key),
            Part::Reserve => say::reserve_needs(key),
            Part::Fixed => say::fixed_needs(key),
            Part::Load | Part::Free => say::load_needs(key),
        }
    }
}
