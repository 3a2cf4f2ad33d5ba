//! What kinds say, together.

mod body;
