//! The next loads a member would be given, for a coach to accept, change or refuse.

use chrono::NaiveDate;
use rusqlite::Connection;
use serde::Serialize;

use crate::error::Result;
use crate::id::{PersonId, RecordId};
use crate::journal::{Decision, Lift};
use crate::load::{Prepared, Reason, next_loads};
use crate::mass::{Mass, MassUnit};
use crate::plan::{LoadRule, Strength, Work};
use crate::store::{Ask, brake, history, open_flags};
use crate::words;

/// The next loads of one movement and scheme, with their reason.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Proposal {
    /// What the history is kept under.
    pub subject: String,
    /// Its name.
    pub movement: String,
    /// The piece it is for.
    pub piece: String,
    /// The scheme's key.
    pub scheme: String,
    /// The session it is made from.
    pub after: RecordId,
    /// The date of that session.
    pub on: NaiveDate,
    /// Set by set.
    pub sets: Vec<ProposedSet>,
    /// Last time, in words.
    pub last_text: String,
    /// Next time, in words.
    pub next_text: String,
    /// Why, in words: the last set's reason.
    pub why: String,
    /// The coach's answer, once given.
    pub ruled: Option<Decision>,
    /// The answer in a word; empty until it is given.
    pub ruled_text: String,
}

/// The next load of one set.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct ProposedSet {
    /// The set, counted from 1.
    pub set: u32,
    /// What was lifted last time.
    pub last: Option<Mass>,
    /// Reps done last time.
    pub reps: Option<u32>,
    /// What is proposed.
    pub next: Option<Mass>,
    /// Why.
    pub reason: Reason,
    /// The records it was read from: sets, a flag, a coach's answer.
    pub from: Vec<RecordId>,
}

/// Every proposal for a member, as it would be on a date, from the strength pieces of a block: one a piece, for what was
/// lifted in it last.
pub(crate) fn proposals(
    connection: &Connection,
    person: PersonId,
    unit: MassUnit,
    block: &Prepared,
    date: NaiveDate,
) -> Result<Vec<Proposal>> {
    let flags = open_flags(connection, person)?;
    let mut found: Vec<Proposal> = Vec::new();
    for piece in block.days.iter().flat_map(|day| &day.pieces) {
        let Work::Strength(strength) = &piece.work else { continue };
        if matches!(strength.load, LoadRule::Free | LoadRule::Fixed { .. }) {
            continue;
        }
        let Some(subject) = last_subject(connection, person, block, strength)? else { continue };
        let scheme = strength.scheme.key();
        if found.iter().any(|it| it.subject == subject && it.scheme == scheme) {
            continue;
        }
        let mut history = history(connection, person, &subject, &strength.scheme, None, date)?;
        history.flag = brake(&flags, &subject);
        let Some(last) = history.times.first() else { continue };
        let rack = block.rack(&subject, unit);
        let next = next_loads(&strength.load, &strength.scheme, rack, &history);
        let sets: Vec<ProposedSet> = next
            .into_iter()
            .map(|next| ProposedSet {
                set: next.set,
                last: history.last_of(next.set).and_then(|done| done.load),
                reps: last.set(next.set).map(|done| done.reps),
                next: next.load,
                reason: next.reason,
                from: next.from,
            })
            .collect();
        found.push(Proposal {
            movement: block.name_of(&subject),
            piece: piece.name.clone(),
            scheme,
            after: last.session,
            on: last.on,
            last_text: loads_text(sets.iter().map(|set| set.last), unit),
            next_text: loads_text(sets.iter().map(|set| set.next), unit),
            why: sets.last().map_or(String::new(), |set| words::why(&set.reason, unit)),
            sets,
            ruled: history.ruling.as_ref().map(|ruled| ruled.decision),
            ruled_text: history
                .ruling
                .as_ref()
                .map_or(String::new(), |ruled| words::decision(ruled.decision).to_owned()),
            subject,
        });
    }
    Ok(found)
}

/// The movement or the option of it that a member lifted last in a scheme.
fn last_subject(
    connection: &Connection,
    person: PersonId,
    block: &Prepared,
    strength: &Strength,
) -> Result<Option<String>> {
    let Some(movement) = block.movement(&strength.movement) else { return Ok(None) };
    let scheme = strength.scheme.key();
    let options = movement.options.iter().map(|option| Some(option.key.as_str()));
    let mut latest: Option<(i64, String)> = None;
    for subject in std::iter::once(None).chain(options).map(|option| movement.subject(option)) {
        let ask = Ask {
            person: Some(person),
            subject: Some(&subject),
            scheme: Some(&scheme),
            ..Ask::default()
        };
        if let Some(lift) = ask.last::<Lift>(connection)? {
            latest = latest.max(Some((lift.first_ms, subject)));
        }
    }
    Ok(latest.map(|(_, subject)| subject))
}

/// `50 / 60 / 70 kg`, a dash where there is none.
fn loads_text(loads: impl Iterator<Item = Option<Mass>>, unit: MassUnit) -> String {
    let loads: Vec<String> =
        loads.map(|load| load.map_or("-".into(), |load| load.number(unit))).collect();
    format!("{} {}", loads.join(" / "), unit.symbol())
}
