//! A member's sets as they were logged, session by session: to look at, and to find the one that is meant.

use chrono::{Datelike, NaiveDate};
use serde::Serialize;

use super::find::find;
use super::notes::notes_on;
use crate::device::Device;
use crate::error::{Error, Field, Result, Thing};
use crate::history::{in_order, set_aside};
use crate::id::{PersonId, RecordId};
use crate::journal::{Lift, Profile, Role, Session};
use crate::mass::{Mass, MassUnit};
use crate::say;
use crate::store::{Logged, Query};
use crate::words::{self, Remarks};

/// A member's sets.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct SetsScreen {
    /// The member.
    pub person: PersonId,
    /// Their name.
    pub name: String,
    /// The unit they read masses in.
    pub unit: MassUnit,
    /// The sessions with sets, the earliest first.
    pub sessions: Vec<SessionSets>,
}

/// The sets of one session.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct SessionSets {
    /// The session.
    pub session: RecordId,
    /// The date it was trained on.
    pub date: NaiveDate,
    /// One line to head it: `Any evening, Tue 3 Nov`.
    pub heading: String,
    /// Notes on the session, or on what is no set of it, each in a line.
    pub notes: Vec<String>,
    /// The sets, piece by piece.
    pub sets: Vec<LoggedSet>,
}

/// A set as it was logged.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct LoggedSet {
    /// The set's record: what a correction names.
    pub lift: RecordId,
    /// The piece's name.
    pub piece: String,
    /// The set, counted from 1.
    pub set: u32,
    /// What was lifted: the movement's name, or the option's taken for it.
    pub movement: String,
    /// The load.
    pub load: Option<Mass>,
    /// Good reps.
    pub reps: u32,
    /// Reps in reserve, where the athlete said.
    pub reserve: Option<u32>,
    /// True while it looks like a slip: then nothing is proposed from it.
    pub doubt: bool,
    /// True where the coach leaves it out.
    pub aside: bool,
    /// What was done, in a few words: `675 kg × 5 (may be a slip)`.
    pub text: String,
    /// Notes on it, each in a line.
    pub notes: Vec<String>,
}

/// The sets of a member, or of whoever uses the device where nobody is named: those of a date, otherwise of
/// the latest sessions that have any.
pub(crate) fn sets(
    device: &mut Device,
    name: Option<&str>,
    on: Option<NaiveDate>,
    latest: u32,
) -> Result<SetsScreen> {
    let (person, profile) = whose(device, name)?;
    let mut sessions = Vec::new();
    for session in sessions_of(device, person)?.into_iter().rev() {
        if on.is_some_and(|on| session.body.date != on) {
            continue;
        }
        let found = session_sets(device, session, &profile)?;
        if !found.sets.is_empty() {
            sessions.push(found);
        }
        if on.is_none() && sessions.len() >= latest as usize {
            break;
        }
    }
    sessions.reverse();
    Ok(SetsScreen { person, name: profile.name, unit: profile.unit, sessions })
}

/// Which set is meant.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct SetNamed {
    /// The member's name or identity; none for whoever uses the device.
    pub member: Option<String>,
    /// The date it was trained on.
    pub on: NaiveDate,
    /// The piece's name, or that of the movement.
    pub piece: String,
    /// The set, counted from 1.
    pub set: u32,
    /// Which session of the date, counted from 1; needed where two have such a set.
    pub session: Option<u32>,
}

/// Finds the set that is meant.
pub(crate) fn find_set(device: &mut Device, named: &SetNamed) -> Result<LoggedSet> {
    let (on, set) = (named.on, named.set);
    let own = device.profile()?;
    if named.member.is_none() && own.role == Role::Coach {
        // A set of one's own is looked for to correct it.
        let reason = say::device::only_athletes_correct(&own.name);
        return Err(Error::invalid(Field::Role, reason));
    }
    let mut sessions = sets(device, named.member.as_deref(), Some(on), 0)?.sessions;
    if sessions.is_empty() {
        return Err(Error::invalid(Field::Date, no_sets(device, named)?));
    }
    if let Some(number) = named.session {
        let count = sessions.len();
        let at = (number as usize).checked_sub(1).filter(|at| *at < count);
        let at = at.ok_or_else(|| {
            let reason = say::coach::no_such_session(count, words::day(on), number);
            Error::invalid(Field::Session, reason)
        })?;
        sessions = vec![sessions.swap_remove(at)];
    }
    let typed = named.piece.trim().to_lowercase();
    let is_meant =
        |of: &LoggedSet| of.piece.to_lowercase() == typed || of.movement.to_lowercase() == typed;
    let all = || sessions.iter().flat_map(|session| &session.sets);
    let numbers: Vec<u32> = all().filter(|of| is_meant(of)).map(|of| of.set).collect();
    if numbers.is_empty() {
        let pieces = distinct(all().map(|of| say::tap::quoted(&of.piece)));
        let reason = say::coach::pieces_with_sets(words::day(on), words::list(&pieces));
        return Err(Error::not_found(Thing::Piece, &named.piece, reason));
    }
    let mut found: Vec<&LoggedSet> = all().filter(|of| is_meant(of) && of.set == set).collect();
    let with: Vec<usize> = (1..)
        .zip(&sessions)
        .filter(|(_, of)| of.sets.iter().any(|of| is_meant(of) && of.set == set))
        .map(|(number, _)| number)
        .collect();
    let Some(last) = found.pop() else {
        let numbers = distinct(numbers.iter().map(u32::to_string));
        let piece = &named.piece;
        let reason =
            say::coach::no_such_logged_set(words::day(on), piece, words::list(&numbers), set, on);
        return Err(Error::invalid(Field::Set, reason));
    };
    if with.len() > 1 {
        let numbers: Vec<String> = with.iter().map(usize::to_string).collect();
        let reason = say::coach::which_session(words::day(on), words::list(&numbers));
        return Err(Error::invalid(Field::Session, reason));
    }
    // Two pieces of one movement; a set that two devices logged counts as it was logged last.
    let pieces = distinct(found.iter().chain([&last]).map(|of| say::tap::quoted(&of.piece)));
    if pieces.len() > 1 {
        let reason = say::coach::which_piece(&named.piece, words::list(&pieces));
        return Err(Error::invalid(Field::Piece, reason));
    }
    Ok(last.clone())
}

/// A set as it stands now; none where it was taken back.
pub(crate) fn logged_set(device: &mut Device, lift: RecordId) -> Result<Option<LoggedSet>> {
    let query = Query { record: Some(lift), ..Query::default() };
    let Some(found) = query.last::<Lift>(device.reader())? else { return Ok(None) };
    let query = Query { record: Some(found.body.session), ..Query::default() };
    let Some(session) = query.last::<Session>(device.reader())? else { return Ok(None) };
    let profile = crate::store::people(device.reader())?.remove(&found.person);
    let profile = profile.map_or(device.profile()?, |(_, profile)| profile);
    let all = session_sets(device, session, &profile)?.sets;
    Ok(all.into_iter().find(|set| set.lift == lift))
}

/// Whose sets are asked for: a member's for a coach, and for anybody their own.
pub(super) fn whose(device: &Device, name: Option<&str>) -> Result<(PersonId, Profile)> {
    let own = device.profile()?;
    let name = match (name, own.role) {
        (Some(name), _) => name.to_owned(),
        (None, Role::Athlete) => return Ok((own.person, own)),
        (None, Role::Coach) => {
            return Err(Error::missing(Thing::Member, say::coach::name_the_member()));
        }
    };
    let (person, profile) = find(device.reader(), &name)?;
    if person != own.person {
        device.require_coach(say::device::only_coaches_see_others)?;
    }
    Ok((person, profile))
}

pub(super) fn sessions_of(device: &Device, person: PersonId) -> Result<Vec<Logged<Session>>> {
    let query = Query { person: Some(person), ..Query::default() };
    query.read(device.reader()).map(in_order)
}

pub(super) fn session_sets(
    device: &mut Device,
    session: Logged<Session>,
    profile: &Profile,
) -> Result<SessionSets> {
    let unit = profile.unit;
    let block = device.block(session.body.plan, None)?;
    let (reader, own) = (device.profile()?, session.person == device.person());
    let query =
        Query { person: Some(session.person), session: Some(session.record), ..Query::default() };
    let mut lifts = query.read::<Lift>(device.reader())?;
    let pieces = distinct(lifts.iter().map(|lift| lift.body.piece.clone()));
    lifts.sort_by_key(|lift| {
        (pieces.iter().position(|piece| *piece == lift.body.piece), lift.body.set)
    });
    let aside = set_aside(device.reader())?;
    let is_listed = |about: RecordId| lifts.iter().any(|lift| lift.record == about);
    let whose = (&reader, profile.name.as_str(), own);
    let notes = notes_on(device.reader(), session.record, whose, is_listed)?;
    let on = |done: Option<RecordId>| -> Vec<String> {
        notes.iter().filter(|(about, _)| *about == done).map(|(_, text)| text.clone()).collect()
    };
    let set = |lift: &Logged<Lift>| {
        let Lift { ref exercise, ref piece, set, load, reps, reserve, doubt, .. } = lift.body;
        let aside = aside.contains(&lift.record);
        let (short, conflict) = (!lift.body.made(), lift.heads > 1);
        let remarks = Remarks { short, other: None, conflict, slip: doubt, aside };
        let load_text = load.map(|load| words::load_text(load, unit));
        LoggedSet {
            lift: lift.record,
            piece: piece.clone(),
            set,
            movement: block
                .as_ref()
                .map_or_else(|| exercise.to_string(), |block| block.name_of(exercise)),
            load,
            reps,
            reserve,
            doubt,
            aside,
            text: words::set_done(load_text.as_deref(), reps, reserve, remarks),
            notes: on(Some(lift.record)),
        }
    };
    let date = session.body.date;
    Ok(SessionSets {
        session: session.record,
        date,
        heading: say::coach::session_heading(&session.body.day, words::day(date)),
        // On the session as a whole, and on windows and holds, which are not listed here.
        notes: on(None),
        sets: lifts.iter().map(set).collect(),
    })
}

/// Why a date has none: on which dates there are some instead.
fn no_sets(device: &mut Device, named: &SetNamed) -> Result<String> {
    let latest = sets(device, named.member.as_deref(), None, LATEST)?.sessions;
    // A day of another year looks like one of this year.
    let one_year = latest.iter().all(|session| session.date.year() == named.on.year());
    let day = |date: NaiveDate| if one_year { words::day(date) } else { date.to_string() };
    let dates = distinct(latest.iter().map(|session| day(session.date)));
    Ok(match dates.as_slice() {
        [] => say::coach::no_sets_at_all().to_owned(),
        dates => say::coach::no_sets_on(day(named.on), words::list(dates)),
    })
}

/// So many of the latest sessions are named where a date has none.
const LATEST: u32 = 3;

fn distinct(texts: impl Iterator<Item = String>) -> Vec<String> {
    let mut kept: Vec<String> = Vec::new();
    for text in texts {
        if !kept.contains(&text) {
            kept.push(text);
        }
    }
    kept
}
