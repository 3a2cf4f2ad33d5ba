//! What fields and things are called where a person reads them.

use super::{Field, Thing};
use crate::say;

impl Field {
    /// Its name, for a person.
    pub fn name(self) -> &'static str {
        match self {
            Field::Chance => say::error::field_chance(),
            Field::Clock => say::error::field_clock(),
            Field::Date => say::error::field_date(),
            Field::Day => say::error::field_day(),
            Field::DeviceClock => say::error::field_device_clock(),
            Field::Exchange => say::error::field_exchange(),
            Field::Flag => say::error::field_flag(),
            Field::Home => say::error::field_home(),
            Field::Identity => say::error::field_identity(),
            Field::Load => say::error::field_load(),
            Field::Loads => say::error::field_loads(),
            Field::Measure => say::error::field_measure(),
            Field::Minutes => say::error::field_minutes(),
            Field::Movement => say::error::field_movement(),
            Field::Name => say::error::field_name(),
            Field::Piece => say::error::field_piece(),
            Field::Range => say::error::field_range(),
            Field::Rest => say::error::field_rest(),
            Field::Reps => say::error::field_reps(),
            Field::Reserve => say::error::field_reserve(),
            Field::Role => say::error::field_role(),
            Field::Rpe => say::error::field_rpe(),
            Field::Said => say::error::field_said(),
            Field::Seconds => say::error::field_seconds(),
            Field::Session => say::error::field_session(),
            Field::Set => say::error::field_set(),
            Field::Severity => say::error::field_severity(),
            Field::Side => say::error::field_side(),
            Field::Spare => say::error::field_spare(),
            Field::Station => say::error::field_station(),
            Field::Text => say::error::field_text(),
            Field::Undo => say::error::field_undo(),
            Field::Window => say::error::field_window(),
            Field::Words => say::error::field_words(),
        }
    }
}

impl Thing {
    /// Its name, for a person.
    pub fn name(self) -> &'static str {
        match self {
            Thing::Bar => say::error::thing_bar(),
            Thing::Day => say::error::thing_day(),
            Thing::Device => say::error::thing_device(),
            Thing::Flag => say::error::thing_flag(),
            Thing::Member => say::error::thing_member(),
            Thing::Option => say::error::thing_option(),
            Thing::Piece => say::error::thing_piece(),
            Thing::Plan => say::error::thing_plan(),
            Thing::Proposal => say::error::thing_proposal(),
        }
    }
}

/// Something given cannot be: what it is about, and why.
pub(crate) fn invalid(field: Field, reason: &str) -> String {
    match field {
        // What is said about these names what it is about.
        Field::Chance | Field::Exchange | Field::Home | Field::Name | Field::Role => reason.into(),
        field => say::error::labelled(field.name(), reason),
    }
}

/// Something asked for is not there: what, by which name, and why.
pub(crate) fn not_found(what: Thing, name: Option<&str>, reason: &str) -> String {
    match name {
        Some(name) => say::error::labelled_named(what.name(), name, reason),
        None => say::error::labelled(what.name(), reason),
    }
}

/// What is handed over as a date and is none.
#[cfg_attr(not(feature = "ffi"), allow(dead_code, reason = "only another language can do so"))]
pub(crate) fn not_a_date(days: i64) -> String {
    say::error::not_a_date(days)
}

/// What is handed over as an identity and is none.
#[cfg_attr(not(feature = "ffi"), allow(dead_code, reason = "only another language can do so"))]
pub(crate) fn not_an_identity(bytes: usize) -> String {
    say::error::not_an_identity(bytes)
}
