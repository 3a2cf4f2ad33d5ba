//! The earlier sessions of a track, as the load rules read them.

use std::collections::BTreeSet;

use chrono::{NaiveDate, NaiveTime};
use rusqlite::Connection;

use super::in_order;
use super::strength::{LATEST_SETS, known};
use crate::error::Result;
use crate::id::{PersonId, RecordId};
use crate::journal::{Hlc, Lift, Max, Ruling, SetAside};
use crate::load::{History, KnownMax, ProposedSet, Ruled, SetDone, Time};
use crate::plan::{Block, Exercise, Piece, PieceKind, Strength};
use crate::store::{Logged, Query, date_of, is_coach};

/// The set of an exercise that was done last, on whatever track, before what it is asked for.
pub(crate) fn last_set(
    connection: &Connection,
    person: PersonId,
    exercise: &Exercise,
    of: For,
) -> Result<Option<Logged<Lift>>> {
    let subject = exercise.to_string();
    let (person, subject, latest) = (Some(person), Some(subject.as_str()), Some(LATEST_SETS));
    let mut lifts =
        Query { person, subject, latest, ..Query::default() }.read::<Lift>(connection)?;
    lifts.retain(|lift| Some(lift.body.session) != of.during && of.knows(lift));
    lifts.reverse();
    Ok(in_order(lifts).pop())
}

/// What loads are worked out for.
#[derive(Clone, Copy, Debug)]
pub(crate) struct For {
    /// The date.
    pub(crate) date: NaiveDate,
    /// The session at hand: what was done in it is no history yet.
    pub(crate) during: Option<RecordId>,
    /// True where that is written afterwards: what was done, tested or answered later was not known then.
    pub(crate) afterwards: bool,
}

impl For {
    /// A date to come, or today.
    pub(crate) fn on(date: NaiveDate) -> For {
        For { date, during: None, afterwards: false }
    }

    pub(super) fn knows<T>(&self, logged: &Logged<T>) -> bool {
        !self.afterwards || date_of(logged) <= self.date
    }
}

/// What the next loads of a piece are worked out from.
/// Flags, and the sets of the session at hand, are added by [`super::propose()`].
pub(crate) fn past(
    connection: &Connection,
    person: PersonId,
    block: &Block,
    (piece, strength): (&Piece, &Strength),
    exercise: &Exercise,
    of: For,
) -> Result<History> {
    let subject = exercise.to_string();
    let (person_is, subject_is) = (Some(person), Some(subject.as_str()));
    let latest = Some(LATEST_SETS);
    let query = Query { person: person_is, subject: subject_is, latest, ..Query::default() };
    let mut lifts = query.read::<Lift>(connection)?;
    if lifts.len() as u32 == LATEST_SETS {
        // Whole days alone.
        let oldest = lifts.last().map(date_of);
        lifts.retain(|lift| Some(date_of(lift)) != oldest);
    }
    lifts.retain(|lift| Some(lift.body.session) != of.during && of.knows(lift));
    lifts.reverse();
    let lifts = in_order(lifts);
    let aside = set_aside(connection)?;
    let known = known(&lifts, &aside, of.date);
    let days: BTreeSet<NaiveDate> = lifts.iter().map(date_of).collect();
    let days = days.into_iter().collect();
    let named = strength.track(&piece.name);
    let track = track_of(&lifts, block, named, exercise);
    let mut times: Vec<Time> = Vec::new();
    let on_it = |lift: &&Logged<Lift>| lift.body.track() == track && !lift.body.is_unplanned();
    for lift in lifts.iter().filter(on_it) {
        match times.iter_mut().find(|time| time.session == lift.body.session) {
            Some(time) => add(time, lift, &aside),
            None => {
                let mut time = begun(lift);
                add(&mut time, lift, &aside);
                times.push(time);
            }
        }
    }
    for time in &mut times {
        time.sets.sort_by_key(|done| done.set);
    }
    let afterwards = lifts.iter().filter(|lift| lift.on.is_some());
    let afterwards: BTreeSet<RecordId> = afterwards.map(|lift| lift.body.session).collect();
    let mut ruling = ruled(connection, person, exercise, track, &times, of)?;
    if let Some((ruled, placed)) = &mut ruling {
        ruled.after = trained_before(ruled.after, *placed, &times, &afterwards);
    }
    let ruling = ruling.map(|(ruled, _)| ruled);
    let max = known_max(connection, person, exercise, of)?;
    // The plan's first load is said of the movement itself: an option of it may be carried by a bell.
    let start = if exercise.option.is_none() { strength.start.clone() } else { Vec::new() };
    let (able, informed) = (known.able, known.informed);
    let history = History { able, informed, max, ruling, ..History::default() };
    Ok(History { date: Some(of.date), times, days, start, ..history })
}

/// The track to go on with: the one of this name, otherwise the exercise's latest one that no other piece of
/// the block names. So a piece that is renamed keeps its loads, and one that is added takes nobody's.
fn track_of<'a>(
    lifts: &'a [Logged<Lift>],
    block: &Block,
    named: &'a str,
    exercise: &Exercise,
) -> &'a str {
    let lifts = || lifts.iter().rev().filter(|lift| !lift.body.is_unplanned());
    if lifts().any(|lift| lift.body.track() == named) {
        return named;
    }
    let pieces = block.days.iter().flat_map(|day| &day.pieces);
    let taken: Vec<&str> = pieces
        .filter_map(|piece| match &piece.kind {
            PieceKind::Strength(other) if other.movement == exercise.movement => {
                Some(other.track(&piece.name))
            }
            _ => None,
        })
        .collect();
    let mut latest = lifts().map(|lift| lift.body.track());
    latest.find(|track| !taken.contains(track)).unwrap_or(named)
}

fn begun(lift: &Logged<Lift>) -> Time {
    let Lift { session, ref scheme, easy, .. } = lift.body;
    Time {
        session,
        on: date_of(lift),
        placed: placed(lift),
        scheme: scheme.clone(),
        easy,
        proposed: Vec::new(),
        max: None,
        sets: Vec::new(),
    }
}

/// When a set was done, in logical time: written afterwards, by the end of its date.
fn placed(lift: &Logged<Lift>) -> i64 {
    let Some(on) = lift.on else { return lift.placed };
    let midnight = on.succ_opt().unwrap_or(on).and_time(NaiveTime::MIN).and_utc();
    let ms = midnight.timestamp_millis() - i64::from(lift.offset_min) * 60_000 - 1;
    lift.placed.min(Hlc { ms, count: 0 }.place())
}

fn add(time: &mut Time, lift: &Logged<Lift>, aside: &BTreeSet<RecordId>) {
    let Lift { ref scheme, ref proposed, set, planned, max, .. } = lift.body;
    time.placed = time.placed.max(placed(lift));
    time.scheme.clone_from(scheme);
    time.max = max.or(time.max);
    if !proposed.is_empty() {
        time.proposed.clone_from(proposed);
    } else if let Some(at) = set.checked_sub(1) {
        // An older app wrote what was proposed for the set alone.
        while time.proposed.len() < scheme.reps.len() {
            let set = time.proposed.len() as u32 + 1;
            let (reps, open) = (scheme.target(set).unwrap_or(0), scheme.is_open(set));
            time.proposed.push(ProposedSet { load: None, reps, open });
        }
        if let Some(known) = time.proposed.get_mut(at as usize) {
            known.load = planned;
        }
    }
    // One over those planned says what somebody can, and changes nothing that is planned.
    if set <= scheme.sets() {
        time.sets.push(set_done(lift, aside.contains(&lift.record)));
    }
}

/// A logged set, as the load rules see it.
pub(crate) fn set_done(lift: &Logged<Lift>, aside: bool) -> SetDone {
    let Lift { set, load, reps, reserve, .. } = lift.body;
    let counts = !aside && !lift.body.doubt;
    let bar = lift.body.bar.clone();
    SetDone { record: lift.record, set, load, reps, reserve, counts, aside, bar }
}

/// The logged sets that a coach has set aside.
pub(crate) fn set_aside(connection: &Connection) -> Result<BTreeSet<RecordId>> {
    let mut aside = BTreeSet::new();
    for set in Query::default().read::<SetAside>(connection)? {
        if !is_coach(connection, set.person)? {
            continue;
        }
        if set.body.aside {
            aside.insert(set.body.lift);
        } else {
            aside.remove(&set.body.lift);
        }
    }
    Ok(aside)
}

/// The coach's latest answer on a track, with when it was given in logical time.
fn ruled(
    connection: &Connection,
    person: PersonId,
    exercise: &Exercise,
    track: &str,
    times: &[Time],
    of: For,
) -> Result<Option<(Ruled, i64)>> {
    let subject = format!("{person}/{exercise}");
    let query = Query { subject: Some(&subject), ..Query::default() };
    let mut latest: Option<Logged<Ruling>> = None;
    for ruling in query.read::<Ruling>(connection)? {
        let about = |time: &Time| {
            // An older app named the scheme instead of the track.
            let of = ruling
                .body
                .track
                .as_deref()
                .map_or(time.scheme.key() == ruling.body.scheme, |named| named == track);
            time.session == ruling.body.after && of
        };
        let later = latest.as_ref().is_none_or(|latest| {
            (latest.placed, latest.id.number) <= (ruling.placed, ruling.id.number)
        });
        if later
            && of.knows(&ruling)
            && times.iter().any(about)
            && is_coach(connection, ruling.person)?
        {
            latest = Some(ruling);
        }
    }
    let ruled = |ruling: Logged<Ruling>| {
        let (record, on) = (ruling.record, date_of(&ruling));
        let Ruling { after, decision, loads, words, .. } = ruling.body;
        (Ruled { record, after, on, decision, loads, words }, ruling.placed)
    };
    Ok(latest.map(ruled))
}

/// The last session before an answer: the one it was given after, or one of those written afterwards that were
/// trained before it was given. They do not use it up.
fn trained_before(
    after: RecordId,
    placed: i64,
    times: &[Time],
    afterwards: &BTreeSet<RecordId>,
) -> RecordId {
    let since = times.iter().skip_while(|time| time.session != after).skip(1);
    let before =
        since.take_while(|time| afterwards.contains(&time.session) && time.placed < placed);
    before.last().map_or(after, |time| time.session)
}

/// The latest one-rep max that the athlete tested or a coach set.
fn known_max(
    connection: &Connection,
    person: PersonId,
    exercise: &Exercise,
    of: For,
) -> Result<Option<KnownMax>> {
    let subject = format!("{person}/{exercise}");
    let query = Query { subject: Some(&subject), ..Query::default() };
    let mut latest = None;
    for max in query.read::<Max>(connection)? {
        let counts = max.person == person || is_coach(connection, max.person)?;
        if counts && of.knows(&max) {
            latest = Some(max);
        }
    }
    Ok(latest.map(|max| KnownMax {
        record: max.record,
        load: max.body.load,
        placed: max.placed,
        on: date_of(&max),
        tested: max.body.tested,
    }))
}
