//! What can be typed at the row at hand.

use super::listed::{self, Say};
use super::{bars_at_hand, sides_of};
use crate::care::{Place, Sign};
use crate::say::line as said;
use crate::session::screen::{Row, SessionScreen, SideKeyKind};

/// Lines as they are typed, each with what it does.
type Lines = &'static [(Say, Say)];

const SET: Lines = &[
    (said::enter, said::enter_does),
    (said::set_reps, said::set_reps_does),
    (said::set_load, said::set_load_does),
    (said::set_left, said::set_left_does),
    (said::set_other, said::set_other_does),
];

/// Only while a set looks like a slip.
const SLIP: Lines = &[(said::right, said::right_does)];

/// Only where there is another bar.
const BAR: Lines = &[(said::bar, said::bar_does)];

const WINDOW: Lines = &[
    (said::enter, said::enter_does),
    (said::window_reps, said::window_reps_does),
    (said::window_spare, said::window_spare_does),
    (said::window_other, said::window_other_does),
    (said::begin_at, said::begin_at_does),
    (said::next, said::next_window_does),
    (said::window_clock, said::clock_does),
];

const READING: Lines = &[(said::reading, said::reading_does)];
const READINGS: Lines = &[(said::readings, said::readings_does)];

const HOLD: Lines = &[
    (said::enter, said::enter_does),
    (said::held_one, said::held_one_does),
    (said::held_one_short, said::held_one_short_does),
    (said::next, said::next_side_does),
    (said::hold_clock, said::clock_does),
];

const HOLD_OF_SIDES: Lines = &[
    (said::enter, said::enter_does),
    (said::held_sides, said::held_sides_does),
    (said::held_sides_short, said::held_sides_short_does),
    (said::next, said::next_side_does),
    (said::hold_clock, said::clock_does),
];

const RATING: Lines = &[(said::rating, said::rating_does)];

const ALWAYS: Lines = &[
    (said::option, said::option_does),
    (said::extra, said::extra_does),
    (said::flag, said::flag_does),
    (said::clear, said::clear_does),
    (said::note, said::note_does),
    (said::private, said::private_does),
    (said::undo, said::undo_does),
    (said::skip, said::skip_does),
    (said::sheet, said::sheet_does),
    (said::finish, said::finish_does),
    (said::finish_minutes, said::finish_minutes_does),
    (said::quit, said::quit_does),
];

/// The lines that can be typed at the row at hand.
pub(super) fn lines(screen: &SessionScreen) -> impl Iterator<Item = &'static (Say, Say)> {
    let here = match &screen.here.row {
        Some(Row::Set { .. }) => SET,
        Some(Row::Window { .. }) => WINDOW,
        Some(Row::Measure { piece, .. }) if sides_of(piece, screen) == 1 => READING,
        Some(Row::Measure { .. }) => READINGS,
        Some(Row::Hold { piece }) if sides_of(piece, screen) == 1 => HOLD,
        Some(Row::Hold { .. }) => HOLD_OF_SIDES,
        Some(Row::Finish) | None => RATING,
    };
    let slip = screen.here.side_keys.iter().any(|key| key.kind == SideKeyKind::Sure);
    let bars = !bars_at_hand(screen).1.is_empty();
    let only_here = [(slip, SLIP), (bars, BAR)].into_iter().filter(|(is, _)| *is);
    here.iter().chain(only_here.flat_map(|(_, lines)| lines)).chain(ALWAYS)
}

/// What can be typed at the row at hand.
pub fn line_help(screen: &SessionScreen) -> String {
    let line = |(typed, does): &(Say, Say)| format!("  {:<16}  {}\n", typed(), does());
    let mut text: String = lines(screen).map(line).collect();
    text += &format!("  {}\n", said::help_places(listed::names::<Place>()));
    text + &format!("  {}\n", said::help_signs(listed::names::<Sign>()))
}
