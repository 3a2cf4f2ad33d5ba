//! An athlete's day: the snapshot a screen is made from, taps into entries, what comes next, the
//! screens.

mod able;
mod afterwards;
mod asked;
mod bar;
mod bars;
mod begin;
mod came_to;
mod clock_view;
mod correct;
mod doubt;
mod draw;
mod extra;
mod flags;
mod here;
mod key;
mod lately;
mod line;
mod log;
mod noted;
mod notes;
mod pace;
mod phone;
mod plates;
mod platform;
mod question;
mod rest;
mod rows;
mod said;
mod screen;
mod set_line;
mod sheet;
mod snapshot;
mod strength;
mod sure;
mod tap;
mod taps;
mod timed;
mod went_by;

use chrono::NaiveDate;

use crate::care::{Place, Sign};
use crate::clock::Act;
use crate::device::{Device, require_of};
use crate::error::{Error, Field, Result};
use crate::history::{last_set, open_flags};
use crate::instant::Instant;
use crate::journal::Role;
use crate::say;
use crate::store::{Draft, Written, latest_session, session_entries};
use crate::words;
use begin::begin;
use said::Saved;
use snapshot::Snapshot;
use taps::{Taps, clear_flags, to_undo, undo};
use went_by::WentBy;

pub use crate::journal::NoteFrom;
pub use clock_view::hold_clock;
pub use correct::Correction;
pub(crate) use correct::correct;
pub use here::{extra_form, rating_form};
pub(crate) use line::read_correction;
pub use line::{Typed, line_help};
pub use pace::FewerReps;
pub use phone::PhoneWords;
pub(crate) use phone::phone_words;
pub(crate) use plates::plates;
pub use plates::{PlatesAsked, PlatesScreen, PlatesStep};
pub use platform::{PlatformTrouble, PlatformWords};
pub(crate) use platform::{platform_trouble, platform_words};
pub(crate) use question::question;
pub use question::{
    Answers, Ask, Choice, ChoiceShape, QuestionField, QuestionScreen, QuestionSign, TypedNumber,
};
pub use screen::*;
pub use tap::{SideReading, Tap};
pub use went_by::LATE_MS;

/// What is kept in memory between two calls. All of it can be lost: it is read or worked out again.
#[derive(Default)]
pub(crate) struct Kept {
    snapshot: Option<Snapshot>,
    /// The row chosen by hand; none follows the day.
    chosen: Option<Row>,
    /// What was saved last, and the number of the last entry as of which that is known.
    saved: Option<Saved>,
    saved_as_of: Option<u64>,
    /// When the last tap came that answered a screen.
    answered: Option<Instant>,
    went_by: WentBy,
}

impl Kept {
    /// The snapshot of a moment: the one kept while it is true, otherwise read again.
    fn snapshot(&mut self, device: &mut Device, at: &Instant) -> Result<Snapshot> {
        let revision = device.store.revision();
        let kept = self.snapshot.take();
        match kept.filter(|snapshot| snapshot.is_true_at(revision, at)) {
            Some(snapshot) => Ok(snapshot),
            None => Snapshot::now(device, at),
        }
    }
}

/// The screen at a moment.
pub(crate) fn screen(device: &mut Device, kept: &mut Kept, at: &Instant) -> Result<SessionScreen> {
    let snapshot = kept.snapshot(device, at)?;
    show(device, kept, snapshot, at)
}

/// The screen made from a snapshot, which is kept.
fn show(
    device: &Device,
    kept: &mut Kept,
    snapshot: Snapshot,
    at: &Instant,
) -> Result<SessionScreen> {
    require_of(&snapshot.profile, Role::Athlete)?;
    if kept.saved_as_of != Some(snapshot.last_number) {
        kept.saved = last_saved(device, &snapshot)?;
        kept.saved_as_of = Some(snapshot.last_number);
    }
    let drawn = draw::draw(&snapshot, device, kept, at);
    kept.snapshot = Some(snapshot);
    Ok(drawn)
}

/// The screen at a moment with a row chosen by hand; without one it follows the day again.
pub(crate) fn choose(
    device: &mut Device,
    kept: &mut Kept,
    row: Option<Row>,
    at: &Instant,
) -> Result<SessionScreen> {
    kept.chosen = row;
    screen(device, kept, at)
}

/// The screen of a day looked at ahead: the one planned for a date, or one named.
pub(crate) fn preview(
    device: &mut Device,
    at: &Instant,
    date: NaiveDate,
    day: Option<&str>,
) -> Result<SessionScreen> {
    device.require(Role::Athlete)?;
    let snapshot = match day {
        Some(name) => match being_trained(device, at, date, name)? {
            Some(now) => now,
            None => Snapshot::named(device, date, name)?,
        },
        None => Snapshot::ahead(device, date)?,
    };
    Ok(draw::draw(&snapshot, device, &mut Kept::default(), at))
}

/// The running session, when it is the day named: that is not ahead, and what is done of it shows.
fn being_trained(
    device: &mut Device,
    at: &Instant,
    date: NaiveDate,
    name: &str,
) -> Result<Option<Snapshot>> {
    let running = latest_session(device.reader(), &device.identity.written_here(), |_| Ok(true))?;
    if date != at.date() || running.is_none_or(|session| session.body.day != name) {
        return Ok(None);
    }
    let now = Snapshot::now(device, at)?;
    let runs = now.state == SessionState::Running;
    Ok(Some(now).filter(|now| runs && now.day().is_some_and(|today| today.name == name)))
}

/// After a tap that answers a screen, the next one within so many milliseconds is a finger that
/// bounced, or a key held down: taken once. Longer than the time after which a held key repeats.
const APART_MS: i64 = 600;

/// Does what a tap says, durably, and gives the screen after it.
///
/// `answers` is the revision of the screen that the tap answers. One that answers an older screen, or
/// comes at once after the one before, is not done: what it meant is done already. A tap without it,
/// such as a typed line, is always meant.
pub(crate) fn tap(
    device: &mut Device,
    kept: &mut Kept,
    tap: Tap,
    answers: Option<u64>,
    at: &Instant,
) -> Result<SessionScreen> {
    let mut snapshot = kept.snapshot(device, at)?;
    require_of(&snapshot.profile, Role::Athlete)?;
    if let Some(revision) = answers
        && bounced(kept, &tap, revision, &snapshot, at)
    {
        let drawn = draw::draw(&snapshot, device, kept, at);
        kept.snapshot = Some(snapshot);
        return Ok(SessionScreen { ignored: true, ..drawn });
    }
    let done = append(device, &snapshot, tap.clone(), at);
    let (written, undone) = match done {
        Ok(done) => done,
        Err(error) => {
            kept.snapshot = Some(snapshot);
            return Err(error);
        }
    };
    if leads_on(&tap) {
        kept.chosen = None;
    }
    let saved = written.entries.last().map(|entry| entry.id.number);
    let of_any_day = matches!(tap, Tap::Correct { .. });
    if written.entries.is_empty() || of_any_day {
        // A private note came or went, or a set that may be of this session was corrected: what undo would take back is
        // read again.
        kept.saved_as_of = None;
    } else if undone.is_none() && !matches!(tap, Tap::FlagBetween { .. }) {
        // What is of no session is not what undo takes back.
        kept.saved = Saved::of(&snapshot, &written.bodies);
        kept.saved_as_of = saved;
    }
    if matches!(tap, Tap::Finish { .. }) {
        device.cut_after_saving();
    }
    let of_the_journal = !written.entries.is_empty();
    let went_on = of_the_journal && snapshot.went_on(written, &device.store);
    if !went_on || !snapshot.is_shown_at(at) {
        snapshot = Snapshot::now(device, at)?;
    }
    Ok(SessionScreen { saved, undone, ..show(device, kept, snapshot, at)? })
}

/// True for a tap that is not to be done: its screen is not the latest, or it came at once.
fn bounced(kept: &mut Kept, tap: &Tap, revision: u64, snapshot: &Snapshot, at: &Instant) -> bool {
    let again = matches!(tap, Tap::Clock { act: Act::Extend, .. });
    // Each one that is too soon begins the time again: a key held down repeats for long.
    let last = kept.answered.replace(at.clone());
    let soon = last.is_some_and(|last| at.ms_since(&last) < APART_MS);
    revision != snapshot.last_number || (soon && !again)
}

/// True for what leads on to the next row: a clock's row is still the one to be at.
fn leads_on(tap: &Tap) -> bool {
    match tap {
        Tap::Clock { .. }
        | Tap::Rest { .. }
        | Tap::TakeOption { .. }
        | Tap::TakeBar { .. }
        | Tap::Flag { .. }
        | Tap::FlagBetween { .. }
        | Tap::Correct { .. }
        | Tap::Note { .. }
        | Tap::ClearFlags { .. } => false,
        Tap::Begin { .. }
        | Tap::WriteAfterwards { .. }
        | Tap::LogSet { .. }
        | Tap::Sure { .. }
        | Tap::LogExtra { .. }
        | Tap::LogWindow { .. }
        | Tap::LogHold { .. }
        | Tap::LogRange { .. }
        | Tap::PutOff { .. }
        | Tap::Undo
        | Tap::Finish { .. } => true,
    }
}

/// Logs what a tap says. Gives the entries, and what was taken back, in words.
fn append(
    device: &mut Device,
    snapshot: &Snapshot,
    tap: Tap,
    at: &Instant,
) -> Result<(Written, Option<String>)> {
    let (drafts, undone) = match (&tap, &snapshot.log) {
        (Tap::Undo, Some(log)) => {
            let entries =
                session_entries(device.reader(), log.id(), &device.identity.written_here())?;
            if let Some(kept) = snapshot.notes.private_after(to_undo(&entries)) {
                device.drop_private(kept.number)?;
                return Ok((Written::default(), Some(words::noted_privately(&kept.note))));
            }
            let (drafts, bodies) = undo(&entries)?;
            (drafts, Some(said::said(snapshot, &bodies)))
        }
        (Tap::Note { row, words, private: true }, Some(log)) => {
            let Some(taps) = taps_of(snapshot, log, at) else {
                return Err(Error::invalid(Field::Session, say::tap::session_not_running()));
            };
            let note = taps.note(row.as_ref(), words)?;
            device.add_private(note, at)?;
            return Ok((Written::default(), None));
        }
        _ => (drafts(device, snapshot, tap, at)?, None),
    };
    Ok((device.append(at, drafts)?, undone))
}

/// What undo would take back, as what was saved last: read once after a start, or after an undo. Where
/// nothing is left to take back it is that the session was begun.
fn last_saved(device: &Device, snapshot: &Snapshot) -> Result<Option<Saved>> {
    let Some(log) = &snapshot.log else { return Ok(None) };
    let entries = session_entries(device.reader(), log.id(), &device.identity.written_here())?;
    if let Some(kept) = snapshot.notes.private_after(to_undo(&entries)) {
        return Ok(Some(Saved::privately(&kept.note)));
    }
    let begun = || Vec::from([log.session.body.clone().into()]);
    let bodies = undo(&entries).map_or_else(|_| begun(), |(_, bodies)| bodies);
    Ok(Saved::of(snapshot, &bodies))
}

fn drafts(device: &mut Device, snapshot: &Snapshot, tap: Tap, at: &Instant) -> Result<Vec<Draft>> {
    // An ended session still takes corrections, and gives way to a new one.
    let log = snapshot.log.as_ref().filter(|log| log.finish.is_none() || !begins(&tap));
    match (tap, log, snapshot.day(), &snapshot.block) {
        (Tap::Begin { day }, None, _, _) => Ok(vec![begin(device, day, at)?]),
        (Tap::WriteAfterwards { date, day }, None, _, _) => {
            afterwards::begin(device, date, day, at)
        }
        (Tap::Correct { lift, correction }, ..) => {
            Ok(vec![correct::drafted(device, lift, correction)?])
        }
        (tap @ Tap::FlagBetween { .. }, ..) => Ok(vec![flags::between(device, snapshot, tap, at)?]),
        (tap, Some(log), Some(_), Some(_)) => {
            let Some(taps) = taps_of(snapshot, log, at) else {
                return Err(Error::invalid(Field::Session, say::tap::session_not_running()));
            };
            match tap {
                // Nothing is proposed for it: what was done last is all there is to go by.
                Tap::LogExtra { movement, set: None, reps: None, .. } => {
                    let exercise = taps.unplanned(&movement)?;
                    let of = snapshot.asked_for(log);
                    let last = last_set(device.reader(), device.person(), &exercise, of)?;
                    Err(taps.how_many(&movement, last.as_ref()))
                }
                tap => taps.drafts(tap),
            }
        }
        (Tap::ClearFlags { flags }, ..) => {
            let open = open_flags(device.reader(), device.person())?;
            clear_flags(&open, &flags, None)
        }
        _ => Err(Error::invalid(Field::Session, say::tap::session_not_running())),
    }
}

/// Taps in a session that is on screen.
fn taps_of<'a>(
    snapshot: &'a Snapshot,
    log: &'a log::SessionLog,
    at: &'a Instant,
) -> Option<Taps<'a>> {
    let (day, block) = (snapshot.day()?, snapshot.block.as_ref()?);
    Some(Taps { sheet: sheet::Sheet { snapshot, block, day, now: at }, log, at })
}

/// True for what begins a session.
fn begins(tap: &Tap) -> bool {
    matches!(tap, Tap::Begin { .. } | Tap::WriteAfterwards { .. })
}

/// A place where it can hurt, in words.
pub fn place_text(place: Place) -> &'static str {
    words::place(place)
}

/// A side of a hold, counted from 1, in words: of two, `left` and `right`. None where there is but one.
pub fn side_text(side: u32, sides: u32) -> Option<String> {
    words::side(side, sides)
}

/// An emergency sign, in words.
pub fn sign_text(sign: Sign) -> &'static str {
    words::sign(sign)
}

/// What a `flag` typed outside a session's screen means: of the session that runs. One that is over, or is written
/// afterwards, is not where it hurts now.
pub(crate) fn read_flag(
    device: &mut Device,
    kept: &mut Kept,
    typed: &str,
    at: &Instant,
) -> Result<Typed> {
    let mut screen = screen(device, kept, at)?;
    if screen.state == SessionState::Finished || screen.afterwards {
        screen.state = SessionState::Ready;
    }
    line::read(typed, &screen)
}

/// What a typed line means at the row at hand.
pub(crate) fn read_line(
    device: &mut Device,
    kept: &mut Kept,
    typed: &str,
    at: &Instant,
) -> Result<Typed> {
    let screen = screen(device, kept, at)?;
    line::read(typed, &screen)
}
