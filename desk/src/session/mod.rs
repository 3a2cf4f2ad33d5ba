//! A session: on a full screen where there is one, otherwise line by line, as through a pipe.

mod full;
mod lines;

use holdfast_core::Holdfast;

use crate::args::Session;
use crate::fault::Outcome;
use crate::{print, say};

/// Runs a session: on a full screen where that is possible and wanted, otherwise line by line.
pub(crate) fn run(holdfast: &Holdfast, asked: Session) -> Outcome {
    if crate::full::possible() && !asked.plain {
        let noise = asked.quiet.noise();
        return full::run(holdfast, asked.day, noise);
    }
    lines::run(holdfast, asked.day)
}

/// Says that a session stays open, and publishes what is logged.
fn left_open(holdfast: &Holdfast) -> Outcome {
    holdfast.cut_leaves()?;
    print::out(&format!("{}\n", say::command::session_left_open()))
}

/// Says that a session is finished.
fn finished() -> Outcome {
    print::out(&format!("{}\n", say::command::session_finished()))
}

/// Words closed with a full stop, unless they close themselves.
fn sentence(words: &str) -> String {
    if words.ends_with(['.', '?', '!']) { words.to_owned() } else { format!("{words}.") }
}
