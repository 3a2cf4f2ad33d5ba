//! Who may say what. Whoever somebody is stands in certificates, never in what an entry says of them.

use rusqlite::{Connection, OptionalExtension, params};

use crate::error::Result;
use crate::id::PersonId;
use crate::journal::{Body, EntryId, Role, body_of};
use crate::planted::{Planted, planted};

/// Whose word something is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Word {
    /// The coach's alone; about this person, where it is about one.
    Coachs(Option<PersonId>),
    /// Whoever's thread it is.
    Own,
    /// Everybody's, of themselves.
    OfOneself(PersonId),
    /// The coach's, or the person's own.
    Either(Option<PersonId>),
    /// Whoever's: it proves itself, or says nothing more than that its writer is there.
    Anybodys,
}

fn word(body: &Body) -> Word {
    match body {
        Body::PlanText(_) | Body::SetAside(_) | Body::Forgot(_) => Word::Coachs(None),
        Body::Ruling(ruling) => Word::Coachs(Some(ruling.person)),
        Body::Admit(admit) => Word::Coachs(Some(admit.person)),
        Body::Remove(removed) => Word::Coachs(Some(removed.person)),
        Body::Stopped(_) | Body::Here(_) => Word::Anybodys,
        Body::Max(max) => Word::Either(Some(max.person)),
        Body::Note(note) => Word::Either(Some(note.person)),
        // Whose flag it is, whoever reads it asks.
        Body::Cleared(_) | Body::TakenBack(_) => Word::Either(None),
        Body::Profile(profile) => Word::OfOneself(profile.person),
        Body::Session(_)
        | Body::OptionTaken(_)
        | Body::BarTaken(_)
        | Body::Lift(_)
        | Body::WindowDone(_)
        | Body::ClockMark(_)
        | Body::Held(_)
        | Body::Range(_)
        | Body::Discomfort(_)
        | Body::Finish(_)
        | Body::RestMark(_)
        | Body::PutOff(_) => Word::Own,
    }
}

/// True where an entry's writer, who may be the coach, may say what it says. What nobody can read yet is nobody's to judge.
pub(super) fn may(
    connection: &Connection,
    (writer, coach): (PersonId, bool),
    (id, digest): (EntryId, i64),
    body: Option<&Body>,
) -> Result<bool> {
    let Some(body) = body else { return Ok(true) };
    let heard = |of: PersonId| -> Result<bool> {
        let sql = "SELECT 1 FROM heard WHERE device = ?1 AND n = ?2 AND digest = ?3 AND of = ?4";
        let key = params![id.device.0, id.number as i64, digest, of.0];
        Ok(connection.prepare_cached(sql)?.exists(key)?)
    };
    match word(body) {
        Word::OfOneself(person) => Ok(person == writer),
        Word::Anybodys => Ok(true),
        Word::Coachs(about) => Ok(coach && about.map_or(Ok(true), heard)?),
        Word::Either(about) if coach => about.map_or(Ok(true), heard),
        Word::Either(about) => Ok(about.is_none_or(|person| person == writer)),
        // A member writes in the member's own thread; what a coach logs in somebody else's is nobody's.
        Word::Own => Ok(!coach || heard(writer)?),
    }
}

/// True for the coach who founded the crew.
pub(crate) fn is_coach(connection: &Connection, person: PersonId) -> Result<bool> {
    let sql = "SELECT coach FROM person WHERE person = ?1";
    let coach =
        connection.prepare_cached(sql)?.query_row([person.0], |row| row.get(0)).optional()?;
    if planted(Planted::RoleFromProfile) {
        let sql = "SELECT e.raw FROM entry e JOIN device_person USING (device)
                   WHERE person = ?1 AND e.kind = 'profile'";
        let mut statement = connection.prepare_cached(sql)?;
        let mut rows = statement.query([person.0])?;
        while let Some(row) = rows.next()? {
            let said = row.get_ref(0)?.as_str().ok().and_then(body_of);
            if matches!(said, Some(Body::Profile(profile)) if profile.role == Role::Coach) {
                return Ok(true);
            }
        }
    }
    Ok(coach.unwrap_or(false))
}
