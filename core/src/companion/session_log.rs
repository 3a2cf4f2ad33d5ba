//! Everything logged in one session, read with one query.

use rusqlite::Connection;

use crate::clock::{Act, Mark};
use crate::error::Result;
use crate::id::{PersonId, RecordId};
use crate::instant::Instant;
use crate::journal::{
    Body, ClockMark, Discomfort, Finish, Held, Lift, OptionTaken, Range, Session, WindowDone,
};
use crate::store::{Ask, Logged};

/// After so long without an end a session no longer counts as running: the athlete went home.
pub(crate) const OPEN_MS: i64 = 12 * 60 * 60 * 1000;

/// A session and what was logged in it, each in the order it was first logged.
pub(crate) struct SessionLog {
    pub(crate) session: Logged<Session>,
    pub(crate) all: Vec<Logged<Body>>,
    pub(crate) lifts: Vec<Logged<Lift>>,
    pub(crate) options: Vec<Logged<OptionTaken>>,
    pub(crate) windows: Vec<Logged<WindowDone>>,
    pub(crate) holds: Vec<Logged<Held>>,
    pub(crate) ranges: Vec<Logged<Range>>,
    pub(crate) flags: Vec<Logged<Discomfort>>,
    pub(crate) finish: Option<Logged<Finish>>,
    marks: Vec<ClockMark>,
}

impl SessionLog {
    /// Reads a session's log.
    pub(crate) fn read(connection: &Connection, session: Logged<Session>) -> Result<SessionLog> {
        let ask =
            Ask { person: Some(session.person), session: Some(session.record), ..Ask::default() };
        let all = ask.bodies(None, connection)?;
        fn of<T: crate::journal::Kind>(all: &[Logged<Body>]) -> Vec<Logged<T>> {
            all.iter().cloned().filter_map(Logged::of_kind).collect()
        }
        let mut marks = of::<ClockMark>(&all);
        // Two marks may share a millisecond; the journal's own order is the order they were made in.
        marks.sort_by_key(|mark| mark.version.number);
        Ok(SessionLog {
            lifts: of(&all),
            options: of(&all),
            windows: of(&all),
            holds: of(&all),
            ranges: of(&all),
            flags: of(&all),
            finish: of(&all).pop(),
            marks: marks.into_iter().map(|mark| mark.body).collect(),
            session,
            all,
        })
    }

    /// A person's latest session, when it is running at `at` or was trained on that date.
    pub(crate) fn current(
        connection: &Connection,
        person: PersonId,
        at: &Instant,
    ) -> Result<Option<SessionLog>> {
        let ask =
            Ask { person: Some(person), subject: Some(""), scheme: Some(""), ..Ask::default() };
        let Some(session) = ask.last::<Session>(connection)? else { return Ok(None) };
        let log = SessionLog::read(connection, session)?;
        let today = log.session.body.date == at.date();
        let recent = at.wall_ms.saturating_sub(log.session.first_ms) < OPEN_MS;
        let shown = if log.finish.is_some() { today } else { today || recent };
        Ok(shown.then_some(log))
    }

    /// The option taken for a movement of a piece.
    pub(crate) fn option(&self, piece: &str, movement: &str) -> Option<&str> {
        let taken = self.options.iter().rev();
        let mut of_it = taken.filter(|it| it.body.piece == piece && it.body.movement == movement);
        of_it.next().and_then(|it| it.body.option.as_deref())
    }

    /// The set of a piece that is logged.
    pub(crate) fn lift(&self, piece: &str, set: u32) -> Option<&Logged<Lift>> {
        self.lifts.iter().rev().find(|it| it.body.piece == piece && it.body.set == set)
    }

    /// The window of a piece that is logged.
    pub(crate) fn window(&self, piece: &str, window: u32) -> Option<&Logged<WindowDone>> {
        self.windows.iter().rev().find(|it| it.body.piece == piece && it.body.window == window)
    }

    /// The side of a hold that is logged.
    pub(crate) fn hold(&self, piece: &str, side: u32) -> Option<&Logged<Held>> {
        self.holds.iter().rev().find(|it| it.body.piece == piece && it.body.side == side)
    }

    /// The marks of a piece's clock since it was last begun afresh. `done` says whether a clock
    /// with these marks is over at a moment: only then does another begin start again.
    pub(crate) fn marks(&self, piece: &str, done: impl Fn(&[Mark], &Instant) -> bool) -> Vec<Mark> {
        let mut run: Vec<Mark> = Vec::new();
        for mark in self.marks.iter().filter(|mark| mark.piece == piece).map(|mark| &mark.mark) {
            if mark.act == Act::Begin && done(&run, &mark.at) {
                run.clear();
            }
            run.push(mark.clone());
        }
        run
    }

    /// The session's record.
    pub(crate) fn id(&self) -> RecordId {
        self.session.record
    }
}
