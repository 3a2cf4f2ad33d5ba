//! Everything logged in one session, read with one query.

use chrono::NaiveDate;
use rusqlite::Connection;

use super::lately::is_lately;
use crate::clock::{Act, Mark};
use crate::error::Result;
use crate::id::RecordId;
use crate::instant::{Elapsed, Instant};
use crate::journal::{
    Body, ClockMark, Discomfort, Finish, Held, Kind, Lift, Note, OptionTaken, Part, PutOff, Range,
    RestMark, Session, Until, WindowDone,
};
use crate::plan::Exercise;
use crate::store::{Logged, Query, WrittenHere, latest_session};

/// After so long without an end a session no longer counts as running: the athlete went home.
pub(crate) const OPEN_MS: i64 = 12 * 60 * 60 * 1000;

/// For so long after its end a session is still the one to show, whatever the date.
const JUST_MS: i64 = 60 * 60 * 1000;

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
    /// The athlete's own for the coach.
    pub(crate) notes: Vec<Logged<Note>>,
    pub(crate) finish: Option<Logged<Finish>>,
    rests: Vec<RestMark>,
    put_off: Vec<PutOff>,
    marks: Vec<(u64, ClockMark)>,
}

impl SessionLog {
    /// Reads a session's log.
    pub(crate) fn read(connection: &Connection, session: Logged<Session>) -> Result<SessionLog> {
        let query = Query {
            person: Some(session.person),
            session: Some(session.record),
            ..Query::default()
        };
        let all = query.bodies(None, connection)?;
        let mut log = SessionLog {
            lifts: Vec::new(),
            options: Vec::new(),
            windows: Vec::new(),
            holds: Vec::new(),
            ranges: Vec::new(),
            flags: Vec::new(),
            notes: Vec::new(),
            finish: None,
            rests: Vec::new(),
            put_off: Vec::new(),
            marks: Vec::new(),
            all: Vec::with_capacity(all.len()),
            session,
        };
        all.into_iter().for_each(|logged| log.add(logged));
        // Two marks may share a millisecond; the journal's own order is the order they were made in.
        log.marks.sort_by_key(|(number, _)| *number);
        Ok(log)
    }

    /// Adds a record of the session.
    pub(crate) fn add(&mut self, logged: Logged<Body>) {
        fn to<T: Kind>(of: &mut Vec<Logged<T>>, logged: &Logged<Body>) {
            of.extend(logged.clone().of_kind());
        }
        match &logged.body {
            Body::Lift(_) => to(&mut self.lifts, &logged),
            Body::OptionTaken(_) => to(&mut self.options, &logged),
            Body::WindowDone(_) => to(&mut self.windows, &logged),
            Body::Held(_) => to(&mut self.holds, &logged),
            Body::Range(_) => to(&mut self.ranges, &logged),
            Body::Discomfort(_) => to(&mut self.flags, &logged),
            Body::Note(_) => to(&mut self.notes, &logged),
            Body::Finish(_) => self.finish = logged.clone().of_kind(),
            Body::ClockMark(mark) => self.marks.push((logged.id.number, mark.clone())),
            Body::RestMark(mark) => self.rests.push(mark.clone()),
            Body::PutOff(off) => self.put_off.push(off.clone()),
            // Not of a session, or not shown in it.
            Body::Profile(_)
            | Body::PlanText(_)
            // Read with those of earlier sessions.
            | Body::BarTaken(_)
            | Body::Session(_)
            | Body::Cleared(_)
            | Body::Ruling(_)
            | Body::SetAside(_)
            | Body::Max(_)
            | Body::Admit(_)
            | Body::Remove(_)
            | Body::Stopped(_)
            | Body::Here(_)
            | Body::Forgot(_)
            | Body::TakenBack(_) => {}
        }
        self.all.push(logged);
    }

    /// The latest session written here, when it is running at `at` or was trained on that date.
    pub(crate) fn current(
        connection: &Connection,
        here: &WrittenHere,
        at: &Instant,
    ) -> Result<Option<SessionLog>> {
        let mut shown = None;
        // One that was written afterwards stands before nothing else once it is done.
        latest_session(connection, here, |session| {
            let log = SessionLog::read(connection, session.clone())?;
            let (is_shown, afterwards) = (log.is_shown_at(at), log.is_afterwards());
            shown = is_shown.then_some(log);
            Ok(is_shown || !afterwards)
        })?;
        Ok(shown)
    }

    /// The latest session written here, where it was left open so lately that it can still be finished, and anything
    /// was logged in it.
    pub(crate) fn left_open(
        connection: &Connection,
        here: &WrittenHere,
        at: &Instant,
    ) -> Result<Option<SessionLog>> {
        let Some(session) = latest_session(connection, here, |_| Ok(true))? else {
            return Ok(None);
        };
        let log = SessionLog::read(connection, session)?;
        let logged = !(log.lifts.is_empty() && log.windows.is_empty() && log.holds.is_empty());
        let date = log.session.body.date;
        let can_be = date != at.date() && is_lately(date, at);
        Ok(Some(log).filter(|log| log.finish.is_none() && logged && can_be))
    }

    /// True for a session that was written afterwards.
    pub(crate) fn is_afterwards(&self) -> bool {
        self.session.body.afterwards
    }

    /// The date that what is logged now is about, where that is not today.
    pub(crate) fn on(&self) -> Option<NaiveDate> {
        self.session.on
    }

    /// True when the session is running at a moment, was just finished or was trained on that date.
    pub(crate) fn is_shown_at(&self, at: &Instant) -> bool {
        let today = self.session.body.date == at.date();
        today
            || match &self.finish {
                None => self.is_recent(at),
                // Past midnight too it can be looked at, rated again and taken back.
                Some(end) => (0..JUST_MS).contains(&at.wall_ms.saturating_sub(end.first_ms)),
            }
    }

    /// True when it was begun, or anything was logged in it since the phone was started, not long ago.
    /// Within a boot the boot clock decides, whatever date the wall clock says. After a reboot the wall
    /// clock is all there is; one that ran backwards was set, and the session that was open still is.
    fn is_recent(&self, at: &Instant) -> bool {
        let begun = self.begun();
        let here = self.moments().filter(|moment| moment.boot_id == at.boot_id);
        let passed = match here.map(|moment| at.ms_since(moment)).min() {
            Some(passed) if begun.boot_id != at.boot_id => passed,
            _ => at.ms_since(&begun),
        };
        passed < OPEN_MS
    }

    /// When the session was begun. An older app wrote the wall clock alone: as if in another boot.
    pub(crate) fn begun(&self) -> Instant {
        let Logged { body, first_ms, offset_min, .. } = &self.session;
        let by_wall = || Instant::by_wall(*first_ms, *offset_min);
        body.at.clone().unwrap_or_else(by_wall)
    }

    /// Every moment of the session that was written down by both clocks.
    fn moments(&self) -> impl Iterator<Item = &Instant> {
        let lifts = self.lifts.iter().filter_map(|lift| lift.body.at.as_ref());
        let marked = self.rests.iter().map(|mark| &mark.at);
        let put_off = self.put_off.iter().map(|off| &off.at);
        lifts.chain(self.timed_moments()).chain(self.clock_moments()).chain(marked).chain(put_off)
    }

    /// When windows and holds were logged.
    pub(crate) fn timed_moments(&self) -> impl Iterator<Item = &Instant> {
        let windows = self.windows.iter().filter_map(|window| window.body.at.as_ref());
        windows.chain(self.holds.iter().filter_map(|hold| hold.body.at.as_ref()))
    }

    /// How long the session has gone on at a moment. Where the wall clock was set between boots it is as
    /// long as was seen.
    pub(crate) fn gone_on_ms(&self, at: &Instant) -> i64 {
        let begun = self.begun();
        match at.elapsed_since(&begun) {
            Elapsed::Boot(ms) | Elapsed::Wall(ms) => ms,
            Elapsed::Unknown => {
                self.moments().map(|moment| moment.ms_since(&begun)).max().unwrap_or(0)
            }
        }
    }

    /// The option taken for a movement of a piece.
    pub(crate) fn option(&self, piece: &str, movement: &str) -> Option<&str> {
        let taken = self.options.iter().rev();
        let mut of_it =
            taken.filter(|found| found.body.piece == piece && found.body.movement == movement);
        of_it.next().and_then(|found| found.body.option.as_deref())
    }

    /// The set of a piece that is logged.
    pub(crate) fn lift(&self, piece: &str, set: u32) -> Option<&Logged<Lift>> {
        self.lifts.iter().rev().find(|lift| lift.body.piece == piece && lift.body.set == set)
    }

    /// The pieces of movements that nobody planned, each with its exercise, in the order they were begun.
    pub(crate) fn unplanned_pieces(&self) -> Vec<(&str, &Exercise)> {
        let mut found: Vec<(&str, &Exercise)> = Vec::new();
        for lift in self.lifts.iter().map(|lift| &lift.body).filter(|lift| lift.is_unplanned()) {
            if !found.iter().any(|(piece, _)| *piece == lift.piece) {
                found.push((&lift.piece, &lift.exercise));
            }
        }
        found
    }

    /// The window of a piece that is logged.
    pub(crate) fn window(&self, piece: &str, window: u32) -> Option<&Logged<WindowDone>> {
        self.windows
            .iter()
            .rev()
            .find(|shown| shown.body.piece == piece && shown.body.window == window)
    }

    /// The side of a hold that is logged.
    pub(crate) fn hold(&self, piece: &str, side: u32) -> Option<&Logged<Held>> {
        self.holds.iter().rev().find(|hold| hold.body.piece == piece && hold.body.side == side)
    }

    /// The marks of a piece's clock since it was last begun afresh. `done` says whether a clock
    /// with these marks is over at a moment: only then does another begin start again.
    pub(crate) fn marks(&self, piece: &str, done: impl Fn(&[Mark], &Instant) -> bool) -> Vec<Mark> {
        let mut run: Vec<Mark> = Vec::new();
        let of_piece = self.marks.iter().filter(|(_, mark)| mark.piece == piece);
        for mark in of_piece.map(|(_, mark)| &mark.mark) {
            if mark.act == Act::Begin && done(&run, &mark.at) {
                run.clear();
            }
            run.push(mark.clone());
        }
        run
    }

    /// The station an interval piece is started at: what was said last on beginning its clock.
    pub(crate) fn start_station(&self, piece: &str) -> u32 {
        let said = self.marks.iter().rev().filter(|(_, mark)| mark.piece == piece);
        said.filter_map(|(_, mark)| mark.station).next().unwrap_or(1)
    }

    /// True for a piece whose clock was ever begun.
    pub(crate) fn has_clock(&self, piece: &str) -> bool {
        self.marks.iter().any(|(_, mark)| mark.piece == piece)
    }

    /// When anything was done to any clock.
    pub(crate) fn clock_moments(&self) -> impl Iterator<Item = &Instant> {
        self.marks.iter().map(|(_, mark)| &mark.mark.at)
    }

    /// What was done to the rest after a set.
    pub(crate) fn rest_marks(&self, piece: &str, set: u32) -> impl Iterator<Item = &RestMark> {
        self.rests.iter().filter(move |mark| mark.piece == piece && mark.set == set)
    }

    /// Until when a part of a piece was put off; none where it was not.
    pub(crate) fn put_off(&self, piece: &str, part: Part) -> Option<Until> {
        let mut of_it = self.put_off.iter().rev();
        of_it.find(|off| off.piece == piece && off.part == part).map(|off| off.until)
    }

    /// The session's record.
    pub(crate) fn id(&self) -> RecordId {
        self.session.record
    }
}
