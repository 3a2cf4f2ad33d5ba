//! A session: on a full screen where there is one, otherwise line by line, as through a pipe.

mod full;
mod lines;

use chrono::NaiveDate;
use holdfast_core::Holdfast;
use holdfast_core::session::{SessionScreen, SessionState, Tap};

use crate::args::Session;
use crate::fault::Outcome;
use crate::now::today;
use crate::{print, say};

/// Runs a session: on a full screen where that is possible and wanted, otherwise line by line.
pub(crate) fn run(holdfast: &Holdfast, asked: Session) -> Outcome {
    let wanted = Wanted { day: asked.day, on: asked.on.filter(|on| *on != today()) };
    if crate::full::possible() && !asked.plain {
        let noise = asked.quiet.noise();
        return full::run(holdfast, wanted, noise);
    }
    lines::run(holdfast, wanted)
}

/// The session that somebody wants.
struct Wanted {
    /// Its day by name; otherwise the one planned.
    day: Option<String>,
    /// An earlier date, to write it afterwards.
    on: Option<NaiveDate>,
}

impl Wanted {
    /// True where the session on screen is the one.
    fn is(&self, screen: &SessionScreen) -> bool {
        let day = self.day.is_none() || self.day == screen.day;
        let date = self.on.is_none_or(|on| on == screen.date);
        // One that was written afterwards and is done is not today's.
        let done = self.on.is_none() && screen.afterwards;
        match screen.state {
            SessionState::Running => day && date,
            SessionState::Finished => day && date && !done,
            SessionState::NoPlan | SessionState::DayOff | SessionState::Ready => false,
        }
    }

    /// What begins it.
    fn begin(self) -> Tap {
        match self.on {
            Some(date) => Tap::WriteAfterwards { date, day: self.day },
            None => Tap::Begin { day: self.day },
        }
    }
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
