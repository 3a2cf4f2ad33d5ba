//! Which planned days were trained: on their date, or on another date of the same week.

use chrono::NaiveDate;

use crate::journal::Session;
use crate::plan::{Block, Planned};
use crate::store::Logged;

/// A planned day, and whether it was trained.
pub(super) struct Attended {
    pub(super) planned: Planned,
    pub(super) trained: bool,
}

/// The planned days of a block to the end of the week of a date, each with whether one of the sessions was it.
///
/// A session is the day planned under its name for its date; otherwise it makes up for the first day of that
/// name in its week that nothing else was. Each is one day and no more.
pub(super) fn attendance(
    block: &Block,
    sessions: &[Logged<Session>],
    date: NaiveDate,
) -> Vec<Attended> {
    let week = block.week_of(date);
    let all = block.planned_until(block.ends()).into_iter();
    let up_to = all.filter(|of| of.date <= date || Some(of.week) == week);
    let mut days: Vec<Attended> =
        up_to.map(|planned| Attended { planned, trained: false }).collect();
    let mut others: Vec<&Session> = Vec::new();
    for session in sessions.iter().map(|session| &session.body) {
        if session.block != block.name {
            continue;
        }
        let own = days.iter_mut().find(|of| {
            !of.trained && of.planned.date == session.date && of.planned.day == session.day
        });
        match own {
            Some(of) => of.trained = true,
            None => others.push(session),
        }
    }
    for session in others {
        let week = block.week_of(session.date);
        let same = |of: &&mut Attended| {
            !of.trained && Some(of.planned.week) == week && of.planned.day == session.day
        };
        if let Some(of) = days.iter_mut().find(same) {
            of.trained = true;
        }
    }
    days
}
