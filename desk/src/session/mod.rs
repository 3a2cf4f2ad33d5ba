//! A session: on a full screen where there is one, otherwise line by line, as through a pipe.

mod full;
mod lines;

use holdfast_core::Holdfast;
use holdfast_core::session::SessionScreen;

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

/// Says that a session is finished, and what its screen says comes next.
fn finished(screen: &SessionScreen) -> Outcome {
    let next = screen.here.key.more.as_deref().unwrap_or_default();
    print::out(&format!("{}\n", say::command::session_finished(next)))
}

/// Words closed with a full stop, unless they close themselves.
fn sentence(words: &str) -> String {
    if words.ends_with(['.', '?', '!']) { words.to_owned() } else { format!("{words}.") }
}
