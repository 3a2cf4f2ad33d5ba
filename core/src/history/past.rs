//! The earlier times of an exercise, as the load rules read them.

use chrono::NaiveDate;
use rusqlite::Connection;

use super::strength::{LATEST_SETS, known, set_done};
use crate::error::Result;
use crate::id::{PersonId, RecordId};
use crate::journal::{Lift, Ruling};
use crate::load::{History, Ruled, Time};
use crate::plan::{Exercise, Scheme};
use crate::store::{Query, date_of, is_coach};

/// What the next loads of a scheme on a date are worked out from, leaving out the session `during`.
/// Flags, and the sets of that session, are added by [`super::propose()`].
pub(crate) fn past(
    connection: &Connection,
    person: PersonId,
    exercise: &Exercise,
    scheme: &Scheme,
    during: Option<RecordId>,
    date: NaiveDate,
) -> Result<History> {
    let (key, subject) = (scheme.key(), exercise.to_string());
    // Room for the session at hand and the two before it, corrections not counted.
    let latest = Some(scheme.sets().saturating_mul(4));
    let query = Query {
        person: Some(person),
        subject: Some(&subject),
        scheme: Some(&key),
        latest,
        ..Query::default()
    };
    let mut times: Vec<Time> = Vec::new();
    for lift in query.read::<Lift>(connection)? {
        if Some(lift.body.session) == during {
            continue;
        }
        let session = lift.body.session;
        let done = set_done(&lift);
        match times.iter_mut().find(|time| time.session == session) {
            Some(time) => time.sets.push(done),
            None => times.push(Time { session, on: date_of(&lift), sets: vec![done] }),
        }
    }
    for time in &mut times {
        time.sets.sort_by_key(|done| done.set);
    }
    times.truncate(2);
    let ruling = times
        .first()
        .map_or(Ok(None), |time| ruled(connection, person, exercise, &key, time.session))?;
    let any = Query { scheme: None, latest: Some(LATEST_SETS), ..query };
    let mut lifts = any.read::<Lift>(connection)?;
    if lifts.len() as u32 == LATEST_SETS {
        let oldest = lifts.last().map(date_of);
        lifts.retain(|lift| Some(date_of(lift)) != oldest);
    }
    lifts.retain(|lift| Some(lift.body.session) != during);
    let last_lifted = lifts.first().map(date_of);
    let known = known(&lifts, date);
    Ok(History {
        date: Some(date),
        times,
        ruling,
        last_lifted,
        able: known.able,
        informed: known.informed,
        ..History::default()
    })
}

/// The coach's latest answer to the proposal made from `after`.
fn ruled(
    connection: &Connection,
    person: PersonId,
    exercise: &Exercise,
    scheme: &str,
    after: RecordId,
) -> Result<Option<Ruled>> {
    let subject = format!("{person}/{exercise}");
    let query = Query { subject: Some(&subject), scheme: Some(scheme), ..Query::default() };
    let mut about_it = Vec::new();
    for ruling in query.read::<Ruling>(connection)? {
        if ruling.body.after == after && is_coach(connection, ruling.person)? {
            about_it.push(ruling);
        }
    }
    let last = about_it.into_iter().max_by_key(|ruling| (ruling.placed, ruling.id.number));
    Ok(last.map(|ruling| Ruled {
        record: ruling.record,
        decision: ruling.body.decision,
        loads: ruling.body.loads,
        words: ruling.body.words,
    }))
}
