//! What full-screen programs share: the terminal while it is theirs, big digits, clocks, cues, sound.

pub(crate) mod bounce;
pub(crate) mod clock;
pub(crate) mod cues;
pub(crate) mod digits;
mod gauge;
pub(crate) mod lines;
pub(crate) mod signals;
pub(crate) mod sound;
pub(crate) mod stack;
pub(crate) mod stage;
pub(crate) mod theme;

use std::io::IsTerminal;

/// True when a full screen can be drawn: both ends are a terminal that is more than a line printer.
pub(crate) fn possible() -> bool {
    std::io::stdin().is_terminal() && std::io::stdout().is_terminal() && !is_line_printer()
}

/// True for a terminal that says of itself that it knows no control sequences.
pub(crate) fn is_line_printer() -> bool {
    std::env::var("TERM").is_ok_and(|term| term.is_empty() || term == "dumb")
}
