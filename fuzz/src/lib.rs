//! What the fuzzers share: fixed people, bounded memory, and the laws that every reader owes.
//!
//! A reader of what others wrote owes more than not to panic. What it takes prints as the bytes it was read from; it stays below its
//! limits; it needs no more memory than its input is worth; and what it says of a bad input can be shown to a person.

pub mod answers;
pub mod homes;
pub mod laws;
pub mod memory;
pub mod people;

pub use memory::within;
