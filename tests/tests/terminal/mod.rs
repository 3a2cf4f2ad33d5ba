//! The real program in a pseudo-terminal, as a person sees it.

#![cfg(unix)]

mod ends;
mod hold;
mod session;
