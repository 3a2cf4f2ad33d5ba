//! Everything a session screen is made from, read from the store once.
//!
//! A snapshot is true as long as the store has the revision it was read at. A tap must be on disk before
//! its screen comes back, and the screen must be what is on disk; but of all that is on disk most taps
//! add one record. So the new record is read back into the snapshot, which then goes on to the revision
//! after it; whatever else changes the database makes the next screen read all of it again.

use std::borrow::Cow;
use std::cell::RefCell;
use std::collections::BTreeSet;
use std::sync::Arc;

use chrono::NaiveDate;
use rusqlite::Connection;

use super::asked::Asked;
use super::log::SessionLog;
use super::noted::Notes;
use super::screen::{PieceView, SessionState};
use crate::device::Device;
use crate::error::{Error, Result, Thing};
use crate::exchange::unpublished;
use crate::history::{Flags, For, bar_taken, flags, last_set, past, set_aside};
use crate::id::RecordId;
use crate::instant::Instant;
use crate::journal::{Body, Entry, Lift, Profile, Session};
use crate::load::{HardWork, History, Prepared, WorkedSet, hard_work};
use crate::plan::{Block, Day, Exercise, PieceKind, Planned};
use crate::say;
use crate::store::{Logged, Query, Revision, Store, Written, conflicts, last_number};
use crate::words;

/// What a session screen is made from.
pub(crate) struct Snapshot {
    /// The store's state it was read at, asked before anything was read.
    revision: Revision,
    /// The number of the last entry that this device wrote.
    pub(crate) last_number: u64,
    pub(crate) profile: Profile,
    pub(crate) state: SessionState,
    pub(crate) block: Option<Arc<Prepared>>,
    pub(crate) planned: Option<Planned>,
    pub(crate) log: Option<SessionLog>,
    /// Discomfort flags, open and cleared.
    pub(crate) flags: Flags,
    /// What was worked hard the day before.
    pub(crate) hard: Vec<HardWork>,
    /// Sets that the coach leaves out.
    pub(crate) aside: BTreeSet<RecordId>,
    /// Notes that are not of the athlete's journal.
    pub(crate) notes: Notes,
    /// Records in conflict.
    pub(crate) conflicts: u32,
    /// Entries no leaf holds yet.
    pub(crate) unpublished: u64,
    /// The day and the date of a session that was left open, while none is on screen.
    pub(crate) left_open: Option<(String, NaiveDate)>,
    /// The earlier times of each strength piece, by its name.
    past: Vec<(String, History)>,
    /// The bar taken for each strength piece instead of the plan's, by the piece's name.
    bars: Vec<(String, String)>,
    /// The set before this session of each movement that nobody planned and somebody did.
    last_sets: Vec<(Exercise, Logged<Lift>)>,
    /// Pieces as they were drawn, without a clock that moves: a tap changes one of them.
    drawn: RefCell<Vec<PieceView>>,
    /// What strength pieces ask for, by their names, and as of how many sets done of each.
    asked: RefCell<Vec<(String, Arc<Asked>, usize)>>,
}

impl Snapshot {
    /// Reads what is on screen at a moment: a session, or what is planned for the date.
    pub(crate) fn now(device: &mut Device, at: &Instant) -> Result<Snapshot> {
        let mut snapshot = Snapshot::bare(device)?;
        match SessionLog::current(device.reader(), &device.identity.written_here(), at)? {
            None => {
                let here = device.identity.written_here();
                let left = SessionLog::left_open(device.reader(), &here, at)?;
                let mut snapshot = Snapshot::ahead(device, at.date())?;
                snapshot.left_open = left.map(|log| (log.session.body.day, log.session.body.date));
                Ok(snapshot)
            }
            Some(log) => {
                let block = pinned(device, &log)?;
                let ended = log.finish.is_some();
                let session = log.session.body.clone();
                snapshot.state = if ended { SessionState::Finished } else { SessionState::Running };
                let planned = Planned { date: session.date, week: session.week, day: session.day };
                snapshot.planned = Some(planned);
                snapshot.block = Some(block);
                snapshot.log = Some(log);
                snapshot.read_past(device.reader())?;
                Ok(snapshot)
            }
        }
    }

    /// Reads what is planned for a date; on a day off the next day planned, so that nobody comes
    /// unprepared.
    pub(crate) fn ahead(device: &mut Device, date: NaiveDate) -> Result<Snapshot> {
        let mut snapshot = Snapshot::bare(device)?;
        let Some(plan) = device.block_for(date)? else { return Ok(snapshot) };
        let today = plan.block.on(date).into_iter().next();
        snapshot.state = if today.is_some() { SessionState::Ready } else { SessionState::DayOff };
        snapshot.planned = today.or_else(|| plan.block.next_from(date));
        snapshot.block = Some(plan.block);
        snapshot.read_past(device.reader())?;
        Ok(snapshot)
    }

    /// Reads a day of the block by its name, whatever is planned for the date.
    pub(crate) fn named(device: &mut Device, date: NaiveDate, name: &str) -> Result<Snapshot> {
        let mut snapshot = Snapshot::ahead(device, date)?;
        if let Some(block) = &snapshot.block {
            let day = named_day(block, name)?.name.clone();
            let week = block.week_of(date).unwrap_or(block.weeks);
            snapshot.planned = Some(Planned { date, week, day });
            snapshot.state = SessionState::Ready;
            snapshot.read_past(device.reader())?;
        }
        Ok(snapshot)
    }

    fn bare(device: &Device) -> Result<Snapshot> {
        let (connection, person) = (device.reader(), device.person());
        Ok(Snapshot {
            revision: device.store.revision(),
            last_number: last_number(connection, device.identity.device)?,
            profile: device.profile()?,
            state: SessionState::NoPlan,
            block: None,
            planned: None,
            log: None,
            flags: flags(connection, person)?,
            hard: Vec::new(),
            aside: set_aside(connection)?,
            notes: Notes::of(device.trusted().founder.map(|founder| founder.person())),
            conflicts: conflicts(connection, person)?,
            unpublished: unpublished(connection)?,
            left_open: None,
            past: Vec::new(),
            bars: Vec::new(),
            last_sets: Vec::new(),
            drawn: RefCell::default(),
            asked: RefCell::default(),
        })
    }

    fn read_past(&mut self, connection: &Connection) -> Result<()> {
        let (mut all, mut bars) = (Vec::new(), Vec::new());
        if let (Some(day), Some(planned), Some(block)) = (self.day(), &self.planned, &self.block) {
            let during = self.log.as_ref().map(SessionLog::id);
            let of = For { date: planned.date, during, afterwards: self.is_afterwards() };
            for piece in &day.pieces {
                if let PieceKind::Strength(strength) = &piece.kind {
                    let exercise = self.exercise(&piece.name, &strength.movement);
                    let (person, piece_of) = (self.profile.person, (piece, strength));
                    let read = past(connection, person, block, piece_of, &exercise, of)?;
                    all.push((piece.name.clone(), read));
                    let whose = (person, self.profile.unit);
                    let bar = bar_taken(connection, whose, block, strength, &exercise, of)?;
                    bars.extend(bar.map(|bar| (piece.name.clone(), bar)));
                }
            }
        }
        (self.past, self.bars) = (all, bars);
        let (during, done) =
            (self.log.as_ref().map(SessionLog::id), |piece: &str, movement: &str| {
                self.exercise(piece, movement)
            });
        self.notes = self.notes.read(connection, self.profile.person, during, self.day(), &done)?;
        self.last_sets = self.read_last_sets(connection)?;
        self.hard = self.worked_the_day_before(connection)?;
        Ok(())
    }

    fn read_last_sets(&self, connection: &Connection) -> Result<Vec<(Exercise, Logged<Lift>)>> {
        let mut found = Vec::new();
        let Some(log) = &self.log else { return Ok(found) };
        for (_, exercise) in log.unplanned_pieces() {
            let last = last_set(connection, self.profile.person, exercise, self.asked_for(log))?;
            found.extend(last.map(|last| (exercise.clone(), last)));
        }
        Ok(found)
    }

    /// What the loads of a session are worked out for.
    pub(crate) fn asked_for(&self, log: &SessionLog) -> For {
        let (date, afterwards) = (log.session.body.date, log.is_afterwards());
        For { date, during: Some(log.id()), afterwards }
    }

    /// The set of an exercise that nobody planned before this session.
    pub(crate) fn last_set(&self, exercise: &Exercise) -> Option<&Logged<Lift>> {
        self.last_sets.iter().find(|(of, _)| of == exercise).map(|(_, last)| last)
    }

    fn worked_the_day_before(&self, connection: &Connection) -> Result<Vec<HardWork>> {
        let (Some(block), Some(planned)) = (&self.block, &self.planned) else {
            return Ok(Vec::new());
        };
        if self.is_afterwards() {
            return Ok(Vec::new());
        }
        let before = planned.date.pred_opt();
        // One may have been begun twice, or on two devices.
        let query = Query {
            person: Some(self.profile.person),
            subject: Some(""),
            scheme: Some(""),
            latest: Some(4),
            ..Query::default()
        };
        let mut worked = Vec::new();
        for session in query.read::<Session>(connection)? {
            if Some(session.body.date) != before {
                continue;
            }
            let log = SessionLog::read(connection, session)?;
            let sets = log.lifts.iter().filter_map(|lift| {
                Some(WorkedSet {
                    record: lift.record,
                    pattern: block.pattern_of(&lift.body.exercise)?,
                    to_the_end: lift.body.is_open() || !lift.body.made(),
                    reserve: lift.body.reserve,
                })
            });
            let sets: Vec<WorkedSet> = sets.collect();
            worked.extend(hard_work(&sets, log.finish.and_then(|finish| finish.body.rpe)));
        }
        Ok(worked)
    }

    /// True while its session is written afterwards.
    pub(crate) fn is_afterwards(&self) -> bool {
        self.log.as_ref().is_some_and(SessionLog::is_afterwards)
    }

    /// The flags that loads are worked out with: for a session written afterwards those of then.
    pub(crate) fn flags_for_loads(&self) -> Cow<'_, Flags> {
        match &self.planned {
            Some(planned) if self.is_afterwards() => Cow::Owned(self.flags.until(planned.date)),
            _ => Cow::Borrowed(&self.flags),
        }
    }

    /// The day on screen.
    pub(crate) fn day(&self) -> Option<&Day> {
        self.block.as_ref()?.day(&self.planned.as_ref()?.day)
    }

    /// What is done for a movement of a piece in this session: itself, or the option taken.
    pub(crate) fn exercise(&self, piece: &str, movement: &str) -> Exercise {
        let option = self.log.as_ref().and_then(|log| log.option(piece, movement));
        let known = self.block.as_ref().and_then(|block| block.movement(movement));
        known.map_or_else(|| Exercise::of(movement), |movement| movement.exercise(option))
    }

    /// The bar taken for a strength piece instead of the plan's.
    pub(crate) fn bar(&self, piece: &str) -> Option<&str> {
        let taken = self.bars.iter().find(|(name, _)| name == piece);
        taken.map(|(_, bar)| bar.as_str())
    }

    /// The earlier times of a strength piece.
    pub(crate) fn past(&self, piece: &str) -> History {
        let found = self.past.iter().find(|(name, _)| name == piece);
        found.map(|(_, past)| past.clone()).unwrap_or_default()
    }

    /// A piece as it was drawn, or drawn now. One with a clock is drawn each time: it moves.
    pub(crate) fn drawn(&self, piece: &str, draw: impl FnOnce() -> PieceView) -> PieceView {
        if self.log.as_ref().is_some_and(|log| log.has_clock(piece)) {
            return draw();
        }
        if let Some(known) = self.drawn.borrow().iter().find(|known| known.name == piece) {
            return known.clone();
        }
        let view = draw();
        self.drawn.borrow_mut().push(view.clone());
        view
    }

    /// What a strength piece asked for when that was worked out last, and after how many sets of it.
    pub(crate) fn asked(&self, piece: &str) -> Option<(Arc<Asked>, usize)> {
        let known = self.asked.borrow();
        let known = known.iter().find(|(name, _, _)| name == piece);
        known.map(|(_, asked, as_of)| (Arc::clone(asked), *as_of))
    }

    /// Keeps what a strength piece asks for after so many sets of it.
    pub(crate) fn keep_asked(&self, piece: &str, asked: &Arc<Asked>, as_of: usize) {
        let mut known = self.asked.borrow_mut();
        known.retain(|(name, _, _)| name != piece);
        known.push((piece.to_owned(), Arc::clone(asked), as_of));
    }

    /// True while it is what a screen at a moment is made from.
    pub(crate) fn is_true_at(&self, revision: Revision, at: &Instant) -> bool {
        self.revision == revision && self.is_shown_at(at)
    }

    /// True while its session is the one to show.
    pub(crate) fn is_shown_at(&self, at: &Instant) -> bool {
        self.log.as_ref().is_some_and(|log| log.is_shown_at(at))
    }

    /// Goes on to the revision after what was just committed. False where that changes more than the
    /// session at hand: then it is no longer true.
    ///
    /// Whatever another program wrote to the database in between is found by the next reading, which
    /// asks for the revision: until then this is the state before it, with what was committed here.
    pub(crate) fn went_on(&mut self, written: Written, store: &Store) -> bool {
        if store.writes_since(self.revision) != 1 {
            return false;
        }
        let last_number = written.entries.last().map(|entry| entry.id.number);
        let (Some(taken), Some(log)) = (self.taken(written), &mut self.log) else { return false };
        self.unpublished += taken.len() as u64;
        self.last_number = last_number.unwrap_or(self.last_number);
        let drawn = self.drawn.get_mut();
        for logged in taken {
            drawn.retain(|piece| Some(piece.name.as_str()) != logged.body.piece());
            log.add(logged);
        }
        self.revision = self.revision.after_a_write();
        true
    }

    /// The records that entries begin, where those change nothing but the session at hand.
    fn taken(&self, Written { entries, bodies }: Written) -> Option<Vec<Logged<Body>>> {
        let one = |(entry, body): (Entry, Body)| {
            // The first entry of a record stands alone: nothing else can change what it shows.
            let alone = entry.parents.is_empty();
            let taken = alone && is_of_the_session(&body);
            taken.then(|| Logged::begun(&entry, self.profile.person, body))
        };
        entries.into_iter().zip(bodies).map(one).collect()
    }
}

/// True for what changes nothing but the session it is logged in.
fn is_of_the_session(body: &Body) -> bool {
    match body {
        // Of a movement nobody planned, what was done before is read with it.
        Body::Lift(lift) => !lift.is_unplanned(),
        Body::WindowDone(_)
        | Body::ClockMark(_)
        | Body::Held(_)
        | Body::Range(_)
        | Body::RestMark(_)
        | Body::PutOff(_)
        | Body::Note(_) => true,
        // Options, bars, flags and answers change the loads; an end changes what is on screen.
        Body::OptionTaken(_)
        | Body::BarTaken(_)
        | Body::Discomfort(_)
        | Body::Cleared(_)
        | Body::Finish(_)
        | Body::Session(_)
        | Body::Profile(_)
        | Body::PlanText(_)
        | Body::Ruling(_)
        | Body::SetAside(_)
        | Body::Max(_)
        | Body::Admit(_)
        | Body::Remove(_)
        | Body::Stopped(_)
        | Body::Here(_)
        | Body::Forgot(_)
        | Body::TakenBack(_) => false,
    }
}

/// Finds a day of a block by its name.
pub(crate) fn named_day<'a>(block: &'a Block, name: &str) -> Result<&'a Day> {
    block
        .day(name)
        .ok_or_else(|| Error::not_found(Thing::Day, name, say::tap::block_days(day_names(block))))
}

/// The days of a block, each in quotes.
pub(crate) fn day_names(block: &Block) -> String {
    let names: Vec<String> = block.days.iter().map(|day| say::tap::quoted(&day.name)).collect();
    words::list(&names)
}

/// The block a session began with, whatever was published since.
fn pinned(device: &mut Device, log: &SessionLog) -> Result<Arc<Prepared>> {
    let session = &log.session.body;
    let block = device
        .block(session.plan, None)?
        .ok_or_else(|| Error::not_found(Thing::Plan, &session.block, say::tap::plan_not_here()))?;
    match block.day(&session.day) {
        Some(_) => Ok(block),
        None => Err(Error::not_found(Thing::Day, &session.day, say::tap::plan_without_day())),
    }
}
