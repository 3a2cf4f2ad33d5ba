//! Every sentence a person reads, a function each: made from the Fluent files in `core/messages`.
//!
//! A function says its sentence in the language that is spoken: the program's, or the thread's own.

use std::fmt::Display;

use catalogue::{Arg, Packed, Whole};

include!(concat!(env!("OUT_DIR"), "/say.rs"));
