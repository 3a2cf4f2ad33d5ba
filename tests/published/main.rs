//! The core held against what was published, and against general libraries.

mod ilp;
mod plates;
