//! Everything a session screen is made from, read from the store once.
//!
//! A tap must be on disk before its screen comes back, and the screen must be what is on disk; but
//! of all that is on disk a tap adds one record. So a reading is kept between taps, the new record
//! is read back into it, and anything else that changes the database makes it read all anew.

use std::sync::Arc;

use chrono::NaiveDate;
use rusqlite::Connection;

use super::device::Device;
use super::screen::SessionState;
use super::session_log::SessionLog;
use crate::error::{Error, Result};
use crate::instant::Instant;
use crate::journal::{
    ClockMark, Discomfort, Entry, Held, Kind, Lift, Profile, Range, Session, WindowDone,
};
use crate::load::{HardWork, History, Prepared, WorkedSet, hard_work};
use crate::plan::{Day, Planned, Work};
use crate::store::{Ask, Logged, conflicts, history, open_flags, unpublished};

/// What a session screen is made from.
pub(crate) struct Reading {
    /// The database's state it was read at, asked before anything was read.
    pub(crate) version: i64,
    pub(crate) profile: Profile,
    pub(crate) state: SessionState,
    pub(crate) block: Option<Arc<Prepared>>,
    pub(crate) planned: Option<Planned>,
    pub(crate) log: Option<SessionLog>,
    /// Open flags, the earliest first.
    pub(crate) flags: Vec<Logged<Discomfort>>,
    /// What was worked hard the day before.
    pub(crate) hard: Vec<HardWork>,
    /// Records in conflict.
    pub(crate) conflicts: u32,
    /// Entries no leaf holds yet.
    pub(crate) unpublished: u64,
    histories: Vec<(String, History)>,
}

impl Reading {
    /// Reads what is on screen at a moment: a session, or what is planned for the date.
    pub(crate) fn now(device: &mut Device, at: &Instant) -> Result<Reading> {
        let mut reading = Reading::bare(device)?;
        match SessionLog::current(device.reader(), device.identity.device, at)? {
            None => Reading::ahead(device, at.date()),
            Some(log) => {
                let block = pinned(device, &log)?;
                let ended = log.finish.is_some();
                let session = log.session.body.clone();
                reading.state = if ended { SessionState::Finished } else { SessionState::Running };
                let planned = Planned { date: session.date, week: session.week, day: session.day };
                reading.planned = Some(planned);
                reading.block = Some(block);
                reading.log = Some(log);
                reading.read_histories(device.reader())?;
                Ok(reading)
            }
        }
    }

    /// Reads what is planned for a date; on a day off the next day planned, so that nobody comes
    /// unprepared.
    pub(crate) fn ahead(device: &mut Device, date: NaiveDate) -> Result<Reading> {
        let mut reading = Reading::bare(device)?;
        let Some(plan) = device.block_for(date)? else { return Ok(reading) };
        let today = plan.block.on(date).into_iter().next();
        reading.state = if today.is_some() { SessionState::Ready } else { SessionState::DayOff };
        reading.planned = today.or_else(|| plan.block.next_from(date));
        reading.block = Some(plan.block);
        reading.read_histories(device.reader())?;
        Ok(reading)
    }

    /// Reads a day of the block by its name, whatever is planned for the date.
    pub(crate) fn named(device: &mut Device, date: NaiveDate, name: &str) -> Result<Reading> {
        let mut reading = Reading::ahead(device, date)?;
        if let Some(block) = &reading.block {
            let day = super::athlete::named_day(block, name)?.name.clone();
            let week = block.week_of(date).unwrap_or(block.weeks);
            reading.planned = Some(Planned { date, week, day });
            reading.state = SessionState::Ready;
            reading.read_histories(device.reader())?;
        }
        Ok(reading)
    }

    fn bare(device: &Device) -> Result<Reading> {
        let (connection, person) = (device.reader(), device.person());
        Ok(Reading {
            version: device.store.data_version()?,
            profile: device.profile()?,
            state: SessionState::NoPlan,
            block: None,
            planned: None,
            log: None,
            flags: open_flags(connection, person)?,
            hard: Vec::new(),
            conflicts: conflicts(connection, person)?,
            unpublished: unpublished(connection, device.identity.device)?,
            histories: Vec::new(),
        })
    }

    fn read_histories(&mut self, connection: &Connection) -> Result<()> {
        let mut histories = Vec::new();
        if let (Some(day), Some(date)) = (self.day(), self.planned.as_ref().map(|it| it.date)) {
            let during = self.log.as_ref().map(SessionLog::id);
            for piece in &day.pieces {
                if let Work::Strength(strength) = &piece.work {
                    let subject = self.subject(&piece.name, &strength.movement);
                    let person = self.profile.person;
                    let scheme = &strength.scheme;
                    let read = history(connection, person, &subject, scheme, during, date)?;
                    histories.push((piece.name.clone(), read));
                }
            }
        }
        self.histories = histories;
        self.hard = self.worked_the_day_before(connection)?;
        Ok(())
    }

    fn worked_the_day_before(&self, connection: &Connection) -> Result<Vec<HardWork>> {
        let (Some(block), Some(planned)) = (&self.block, &self.planned) else {
            return Ok(Vec::new());
        };
        let before = planned.date.pred_opt();
        let person = Some(self.profile.person);
        // One may have been begun twice, or on two devices.
        let ask =
            Ask { person, subject: Some(""), scheme: Some(""), latest: Some(4), ..Ask::default() };
        let mut worked = Vec::new();
        for session in ask.read::<Session>(connection)? {
            if Some(session.body.date) != before {
                continue;
            }
            let log = SessionLog::read(connection, session)?;
            let sets = log.lifts.iter().filter_map(|lift| {
                Some(WorkedSet {
                    record: lift.record,
                    pattern: block.pattern_of(&lift.body.subject)?,
                    to_the_end: lift.body.scheme.is_open(lift.body.set) || !lift.body.made(),
                    reserve: lift.body.reserve,
                })
            });
            let sets: Vec<WorkedSet> = sets.collect();
            worked.extend(hard_work(&sets, log.finish.and_then(|finish| finish.body.effort)));
        }
        Ok(worked)
    }

    /// The day on screen.
    pub(crate) fn day(&self) -> Option<&Day> {
        self.block.as_ref()?.day(&self.planned.as_ref()?.day)
    }

    /// What a movement's history is kept under in this session: itself, or the option taken.
    pub(crate) fn subject(&self, piece: &str, movement: &str) -> String {
        let option = self.log.as_ref().and_then(|log| log.option(piece, movement));
        let known = self.block.as_ref().and_then(|block| block.movement(movement));
        known.map_or(movement.to_owned(), |it| it.subject(option))
    }

    /// The earlier times of a strength piece.
    pub(crate) fn history(&self, piece: &str) -> History {
        let found = self.histories.iter().find(|(name, _)| name == piece);
        found.map(|(_, history)| history.clone()).unwrap_or_default()
    }

    /// Takes in entries that were just committed, from the very lines that were written. False when
    /// they change more than the session at hand, and all must be read anew.
    pub(crate) fn take(&mut self, entries: &[Entry]) -> bool {
        const OF_THE_SESSION: [&str; 5] =
            [Lift::NAME, WindowDone::NAME, ClockMark::NAME, Held::NAME, Range::NAME];
        let Some(log) = &mut self.log else { return false };
        for entry in entries {
            // After a wall clock set back a fresh reading would order records otherwise.
            if log.all.last().is_some_and(|last| last.first_ms > entry.wall_ms) {
                return false;
            }
            // The first version of a record stands alone: nothing else can change what it shows.
            let alone = entry.parents.is_empty() && OF_THE_SESSION.contains(&entry.kind.as_str());
            match Logged::first_version(entry, self.profile.person).filter(|_| alone) {
                Some(logged) => log.add(logged),
                None => return false,
            }
            self.unpublished += 1;
        }
        true
    }

    /// True while the reading's session is still the one to show at a moment.
    pub(crate) fn holds_at(&self, at: &Instant) -> bool {
        self.log.as_ref().is_some_and(|log| log.is_shown_at(at))
    }
}

/// The block a session began with, whatever was published since.
fn pinned(device: &mut Device, log: &SessionLog) -> Result<Arc<Prepared>> {
    let session = &log.session.body;
    let block = device.block(session.plan, None)?.ok_or_else(|| {
        Error::not_found(
            format!("the plan of {}", session.block),
            "its file has not arrived on this device: exchange first",
        )
    })?;
    match block.day(&session.day) {
        Some(_) => Ok(block),
        None => {
            let what = format!("day \"{}\"", session.day);
            Err(Error::not_found(what, "the plan does not have it"))
        }
    }
}
