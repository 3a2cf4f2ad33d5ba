//! Whose device it is: what decides the threads of an entry.

use crate::id::PersonId;

/// Whose device it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Own {
    /// The person.
    pub(crate) person: PersonId,
    /// True for the coach who founded the crew.
    pub(crate) coach: bool,
}
