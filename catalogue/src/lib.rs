//! Sentences in several languages.
//!
//! They stand in Fluent files, one folder a language. At build time (feature `build`) they are read,
//! checked against each other and packed: a message, a variable or a plural form that is missing in one
//! language stops the build. At run time a sentence is a number and its arguments, put together in the
//! language that is being spoken.

#[cfg(feature = "build")]
pub mod build;
mod language;
mod render;

pub use language::{Language, speak, speaking, spoken};
pub use render::{Arg, Packed, Whole};
