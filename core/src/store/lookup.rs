//! Questions about people, flags and earlier times, answered from the records.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use rusqlite::Connection;

use super::{Ask, Logged};
use crate::error::Result;
use crate::id::{DeviceId, PersonId, RecordId};
use crate::instant::Instant;
use crate::journal::{Cleared, Discomfort, Lift, Profile, Role, Ruling};
use crate::load::strength::{Effort, SetSeen, curve, strength};
use crate::load::{Able, History, OpenFlag, Ruled, SetDone, Time};
use crate::mass::MassUnit;

/// Everybody whose profile is here, by person, with the device it was last written on.
///
/// Two people of one name get the end of their identity behind it, so that a coach can tell them
/// apart and name one of them.
pub(crate) fn people(connection: &Connection) -> Result<BTreeMap<PersonId, (DeviceId, Profile)>> {
    let profiles = Ask::default().read::<Profile>(connection)?;
    let mut people: BTreeMap<PersonId, (DeviceId, Profile)> =
        profiles.into_iter().map(|it| (it.person, (it.version.device, it.body))).collect();
    let mut seen: BTreeMap<String, u32> = BTreeMap::new();
    for (_, profile) in people.values() {
        *seen.entry(profile.name.to_lowercase()).or_default() += 1;
    }
    for (person, (_, profile)) in &mut people {
        if seen.get(&profile.name.to_lowercase()).is_some_and(|count| *count > 1) {
            let id = person.to_string();
            profile.name = format!("{} ({})", profile.name, &id[id.len() - 4..]);
        }
    }
    Ok(people)
}

/// A person's discomfort flags that nobody has cleared, the earliest first.
pub(crate) fn open_flags(
    connection: &Connection,
    person: PersonId,
) -> Result<Vec<Logged<Discomfort>>> {
    let flags = Ask { person: Some(person), ..Ask::default() }.read::<Discomfort>(connection)?;
    let mut open = Vec::new();
    for flag in flags {
        if !is_cleared(connection, flag.record, person)? {
            open.push(flag);
        }
    }
    Ok(open)
}

/// True when the athlete whose flag it is, or a coach, has cleared it. Nobody else's word counts.
pub(crate) fn is_cleared(
    connection: &Connection,
    flag: RecordId,
    person: PersonId,
) -> Result<bool> {
    let subject = flag.to_string();
    let ask = Ask { subject: Some(&subject), ..Ask::default() };
    for cleared in ask.read::<Cleared>(connection)? {
        if cleared.person == person || is_coach(connection, cleared.person)? {
            return Ok(true);
        }
    }
    Ok(false)
}

/// True for somebody whose profile says coach.
pub(crate) fn is_coach(connection: &Connection, person: PersonId) -> Result<bool> {
    let ask = Ask { person: Some(person), ..Ask::default() };
    Ok(ask.last::<Profile>(connection)?.is_some_and(|profile| profile.body.role == Role::Coach))
}

/// The local date a record was first written on.
pub(crate) fn date_of<T>(logged: &Logged<T>) -> NaiveDate {
    let offset_min = logged.offset_min;
    Instant { wall_ms: logged.first_ms, offset_min, boot_ms: 0, boot_id: String::new() }.date()
}

/// How many of somebody's latest sets of a movement are looked at.
const LATEST_SETS: u32 = 100;

/// What the next loads of a scheme on a date are worked out from, leaving out the session `during`.
pub(crate) fn history(
    connection: &Connection,
    person: PersonId,
    subject: &str,
    scheme: &crate::plan::Scheme,
    during: Option<RecordId>,
    date: NaiveDate,
) -> Result<History> {
    let key = scheme.key();
    // Room for the session at hand and the two before it, corrections not counted.
    let latest = Some(scheme.sets().saturating_mul(4));
    let ask = Ask {
        person: Some(person),
        subject: Some(subject),
        scheme: Some(&key),
        latest,
        ..Ask::default()
    };
    let mut times: Vec<Time> = Vec::new();
    for lift in ask.read::<Lift>(connection)? {
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
        .map_or(Ok(None), |time| ruled(connection, person, subject, &key, time.session))?;
    let any = Ask { scheme: None, latest: Some(LATEST_SETS), ..ask };
    let mut lifts = any.read::<Lift>(connection)?;
    lifts.retain(|lift| Some(lift.body.session) != during);
    let last_lifted = lifts.first().map(date_of);
    let able = last_lifted.and_then(|_| able(&lifts, date));
    let date = Some(date);
    Ok(History { date, times, ruling, last_lifted, able, ..History::default() })
}

/// What somebody can lift on a date, from sets that say how near their end they were.
fn able(lifts: &[Logged<Lift>], date: NaiveDate) -> Option<Able> {
    // In the order they were done: what comes later in a day is done tired.
    let sets: Vec<SetSeen> = lifts.iter().rev().filter_map(set_seen).collect();
    let says = |lift: &&Logged<Lift>| set_seen(lift).is_some_and(|set| set.effort != Effort::Plain);
    let from = lifts.iter().filter(says).map(|lift| lift.record).collect();
    // Numbers the journal lets through and the model does not are left to the loads' own rules.
    let strength = strength(&sets, date).ok().flatten()?;
    // A light set that only looked like everything says less than what was lifted beside it: no
    // estimate then, rather than one below what the athlete has just done.
    let likely_most = strength.now().high;
    let recent = sets.iter().filter(|set| (0..RECENT_DAYS).contains(&(date - set.on).num_days()));
    let done =
        |set: &SetSeen| set.load.for_drawing(MassUnit::Kg) * curve(f64::from(set.reps)).exp();
    let contradicted = recent.filter(|set| set.reps > 0).any(|set| done(set) > likely_most);
    (!contradicted).then_some(Able { strength, from })
}

/// Sets of so many days say what somebody can do at least. Chosen, no source.
const RECENT_DAYS: i64 = 28;

/// A set as the strength model reads it; none for one without a load.
pub(crate) fn set_seen(lift: &Logged<Lift>) -> Option<SetSeen> {
    let Lift { set, load, reps, reserve, .. } = lift.body;
    let short = !lift.body.made();
    let effort = match reserve {
        Some(left) => Effort::Reserve(left),
        None if lift.body.scheme.is_open(set) || short => Effort::Open,
        None => Effort::Plain,
    };
    Some(SetSeen { on: date_of(lift), load: load?, reps, effort })
}

/// A logged set, as the load rules see it.
pub(crate) fn set_done(lift: &Logged<Lift>) -> SetDone {
    let Lift { set, load, reps, reserve, .. } = lift.body;
    SetDone { record: lift.record, set, load, reps, reserve }
}

/// The flag that stops a subject from going up: the latest open one on it, otherwise the latest on
/// its movement or on another option of that. Taking an option that does not hurt is what options
/// are for, so a flag elsewhere leaves the loads where they are and takes none away.
pub(crate) fn brake(flags: &[Logged<Discomfort>], subject: &str) -> Option<OpenFlag> {
    let on_it = |flag: &&Logged<Discomfort>| flag.body.subject == subject;
    let near = |flag: &&Logged<Discomfort>| family(&flag.body.subject) == family(subject);
    let own = flags.iter().rev().find(on_it);
    let flag = own.or_else(|| flags.iter().rev().find(near))?;
    Some(OpenFlag {
        record: flag.record,
        place: flag.body.place,
        severity: flag.body.severity,
        on: date_of(flag),
        own: own.is_some(),
    })
}

/// The movement that a subject is, or is an option of.
pub(crate) fn family(subject: &str) -> &str {
    subject.split_once('/').map_or(subject, |(movement, _)| movement)
}

/// The coach's latest answer to the proposal made from `after`.
pub(crate) fn ruled(
    connection: &Connection,
    person: PersonId,
    subject: &str,
    scheme: &str,
    after: RecordId,
) -> Result<Option<Ruled>> {
    let subject = format!("{person}/{subject}");
    let ask = Ask { subject: Some(&subject), scheme: Some(scheme), ..Ask::default() };
    let rulings = ask.read::<Ruling>(connection)?;
    let mut about_it = Vec::new();
    for ruling in rulings {
        if ruling.body.after == after && is_coach(connection, ruling.person)? {
            about_it.push(ruling);
        }
    }
    let about_it = about_it.into_iter();
    // Two answers within one millisecond are told apart by their numbers.
    let last = about_it.max_by_key(|ruling| (ruling.first_ms, ruling.version.number));
    Ok(last.map(|ruling| Ruled {
        record: ruling.record,
        decision: ruling.body.decision,
        loads: ruling.body.loads,
        words: ruling.body.words,
    }))
}
