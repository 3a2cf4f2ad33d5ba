//! A session: on a full screen where there is one, otherwise line by line, as through a pipe.

mod full;
mod lines;

use holdfast_core::Holdfast;

use crate::args::Session;
use crate::fault::Outcome;
use crate::print;

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
    print::out("Session left open. Your log is saved; run `session` to continue.\n")
}

/// Said once a session is finished.
const FINISHED: &str = "Finished. The next exchange carries it to your coach.\n";
