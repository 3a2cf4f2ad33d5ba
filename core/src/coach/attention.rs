//! What a coach should look at, and in which order.

use std::cmp::Ordering;

use chrono::NaiveDate;
use rusqlite::Connection;
use serde::Serialize;

use super::attendance::attendance;
use super::notes::unanswered;
use super::proposal::Proposal;
use crate::error::Result;
use crate::history::{in_order, open_flags, set_aside};
use crate::id::PersonId;
use crate::journal::{Admit, Discomfort, Lift, OptionTaken, Session, WindowDone};
use crate::load::{MaxBasis, Reason};
use crate::mass::MassUnit;
use crate::plan::{Because, Block, Exercise};
use crate::say;
use crate::store::{Logged, Query, conflicts, date_of};
use crate::words::{self, Remarks};

/// What kind of look something needs, the most pressing first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum AttentionKind {
    /// Somebody hurts.
    Pain,
    /// Loads do not go up any more.
    Stall,
    /// Not seen for more than one planned day.
    Away,
    /// Words for the coach that are not answered yet.
    Note,
    /// Two devices disagree about a record.
    Conflict,
    /// Options taken instead of the movement.
    Options,
    /// Windows with less to spare than planned.
    Rushed,
    /// A set that looks like a slip of the finger and that nobody has confirmed.
    Slip,
    /// Loads went up.
    Progress,
}

/// One thing to look at.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Attention {
    /// What kind of look it needs.
    pub kind: AttentionKind,
    /// The kind in a word.
    pub word: String,
    /// The words.
    pub text: String,
}

impl Attention {
    fn new(kind: AttentionKind, text: String) -> Attention {
        let word = match kind {
            AttentionKind::Pain => say::coach::kind_pain(),
            AttentionKind::Stall => say::coach::kind_stalled(),
            AttentionKind::Away => say::coach::kind_away(),
            AttentionKind::Note => say::coach::kind_note(),
            AttentionKind::Conflict => say::coach::kind_conflict(),
            AttentionKind::Options => say::coach::kind_option(),
            AttentionKind::Rushed => say::coach::kind_rushed(),
            AttentionKind::Slip => say::coach::kind_slip(),
            AttentionKind::Progress => say::coach::kind_up(),
        };
        Attention { kind, word: word.to_owned(), text }
    }
}

/// How many planned days somebody may miss before the board says so.
const AWAY_AFTER: usize = 2;

/// Everything to look at about one member, the most pressing first.
pub(crate) fn attention(
    connection: &Connection,
    person: PersonId,
    unit: MassUnit,
    block: &Block,
    proposals: &[Proposal],
    today: NaiveDate,
) -> Result<Vec<Attention>> {
    let mine = Query { person: Some(person), ..Query::default() };
    let mut sessions = mine.read::<Session>(connection)?;
    sessions.retain(|session| session.body.date <= today);
    let inside = |date: NaiveDate| block.week_of(date).is_some() && date <= today;
    let mut found = stalls(proposals);
    let notes = unanswered(connection, person, today)?.into_iter();
    found.extend(notes.map(|text| Attention::new(AttentionKind::Note, text)));
    let joined = joined(connection, person)?;
    found.extend(away(block, &sessions, joined, today));
    let conflicts = conflicts(connection, person)?;
    if conflicts > 0 {
        found.push(Attention::new(AttentionKind::Conflict, say::coach::conflict(conflicts)));
    }
    let options = mine.read::<OptionTaken>(connection)?;
    found.extend(options_taken(block, options.iter().filter(|option| inside(date_of(option)))));
    let windows = mine.read::<WindowDone>(connection)?;
    found.extend(rushed(windows.iter().filter(|window| inside(date_of(window)))));
    let lifts = in_order(mine.read::<Lift>(connection)?);
    let lifts = lifts.into_iter().filter(|lift| inside(date_of(lift)));
    let aside = set_aside(connection)?;
    let lifts = lifts.filter(|lift| !aside.contains(&lift.record));
    let (doubted, counted): (Vec<_>, Vec<_>) = lifts.partition(|lift| lift.body.doubt);
    found.extend(doubted.iter().map(|lift| slip(block, unit, lift)));
    found.extend(progress(block, unit, proposals, &counted));
    // Notes stay the latest first.
    found.sort_by(|one, other| match (one.kind, other.kind) {
        (AttentionKind::Note, AttentionKind::Note) => Ordering::Equal,
        _ => one.cmp(other),
    });
    let mut all = pain(connection, person, block)?;
    all.extend(found);
    Ok(all)
}

/// Open flags, those with emergency signs first.
fn pain(connection: &Connection, person: PersonId, block: &Block) -> Result<Vec<Attention>> {
    let flags = open_flags(connection, person)?;
    let text = |flag: &Logged<Discomfort>| {
        let flagged = &flag.body;
        let signs = flagged.signs.iter().map(|sign| words::sign(*sign).to_owned());
        let (place, severity) = (words::place(flagged.place), flagged.severity);
        let date = words::day(date_of(flag));
        let movement = flagged.exercise.as_ref().map(|exercise| block.name_of(exercise));
        match (signs.collect::<Vec<_>>().as_slice(), movement) {
            ([], Some(movement)) => say::coach::pain(place, severity, movement, date),
            ([], None) => say::coach::pain_alone(place, severity, date),
            (signs, Some(movement)) => {
                let signs = words::list(signs);
                say::coach::pain_with_signs(signs, place, severity, movement, date)
            }
            (signs, None) => {
                say::coach::pain_alone_with_signs(words::list(signs), place, severity, date)
            }
        }
    };
    let pain = |flag: &Logged<Discomfort>| {
        (flag.body.signs.is_empty(), Attention::new(AttentionKind::Pain, text(flag)))
    };
    let mut found: Vec<(bool, Attention)> = flags.iter().map(pain).collect();
    found.sort();
    Ok(found.into_iter().map(|(_, pain)| pain).collect())
}

fn stalls(proposals: &[Proposal]) -> Vec<Attention> {
    let stalled = proposals.iter().filter_map(|proposal| {
        // The last set is the heaviest; what it cannot do any more is the stall.
        let (movement, loads) = (&proposal.called, &proposal.last_text);
        let text = match &proposal.sets.last()?.reason {
            // Once by far is a bad day.
            Reason::BackOff { sessions: 2, .. } => say::coach::stall_missed(movement, loads),
            Reason::BackOff { sessions: 3, .. } => say::coach::stall_thrice(movement, loads),
            Reason::Percent { basis: MaxBasis::BackOff, .. }
            | Reason::Reserve { basis: MaxBasis::BackOff, .. } => {
                say::coach::stall_missed(movement, loads)
            }
            Reason::AtTop { .. } => say::coach::stall_no_step(movement, loads),
            _ => return None,
        };
        Some(Attention::new(AttentionKind::Stall, text))
    });
    stalled.collect()
}

/// The day somebody was taken in: what was planned until then was not planned for them. None for the coach.
fn joined(connection: &Connection, person: PersonId) -> Result<Option<NaiveDate>> {
    let admitted = Query::default().read::<Admit>(connection)?;
    Ok(admitted.iter().find(|admit| admit.body.person == person).map(date_of))
}

fn away(
    block: &Block,
    sessions: &[Logged<Session>],
    joined: Option<NaiveDate>,
    today: NaiveDate,
) -> Option<Attention> {
    let last = sessions.iter().map(|session| session.body.date).max();
    let since = |date: NaiveDate| last.max(joined).is_none_or(|from| date > from);
    // Today is not over yet.
    let missed = attendance(block, sessions, today)
        .into_iter()
        .filter(|of| !of.trained && of.planned.date < today && since(of.planned.date))
        .count();
    if missed < AWAY_AFTER {
        return None;
    }
    let text = match last {
        Some(last) => say::coach::away_since(words::day(last), missed),
        None => say::coach::away_always(missed),
    };
    Some(Attention::new(AttentionKind::Away, text))
}

fn options_taken<'a>(
    block: &Block,
    options: impl Iterator<Item = &'a Logged<OptionTaken>>,
) -> Vec<Attention> {
    let mut counts: Vec<((String, Option<Because>), u64)> = Vec::new();
    for taken in options {
        let OptionTaken { movement, option: Some(option), because, .. } = &taken.body else {
            continue;
        };
        let found = (block.name_of(&Exercise::option_of(movement, option)), *because);
        match counts.iter_mut().find(|(known, _)| *known == found) {
            Some((_, count)) => *count += 1,
            None => counts.push((found, 1)),
        }
    }
    let text = |((option, because), count): ((String, Option<Because>), u64)| match because {
        Some(because) => say::coach::option_taken(option, words::because(because), count),
        None => say::coach::option_taken_no_reason(option, count),
    };
    let one = |found| Attention::new(AttentionKind::Options, text(found));
    counts.into_iter().map(one).collect()
}

fn rushed<'a>(windows: impl Iterator<Item = &'a Logged<WindowDone>>) -> Option<Attention> {
    let (mut all, mut rushed) = (0_u64, 0);
    for window in windows {
        if let Some(spare) = window.body.spare_ms {
            all += 1;
            rushed += u64::from(spare < window.body.margin_ms);
        }
    }
    // A third or more is a pattern, not a bad minute. Common practice, no source.
    let attention = || Attention::new(AttentionKind::Rushed, say::coach::rushed(rushed, all));
    (rushed * 3 >= all && rushed > 0).then(attention)
}

fn slip(block: &Block, unit: MassUnit, lift: &Logged<Lift>) -> Attention {
    let Lift { ref exercise, set, load, reps, reserve, .. } = lift.body;
    let load = load.map(|load| words::load_text(load, unit));
    let done = words::set_done(load.as_deref(), reps, reserve, Remarks::default());
    let (movement, date) = (block.name_of(exercise), words::day(date_of(lift)));
    Attention::new(AttentionKind::Slip, say::coach::slip(movement, set, date, done))
}

fn progress(
    block: &Block,
    unit: MassUnit,
    proposals: &[Proposal],
    lifts: &[Logged<Lift>],
) -> Vec<Attention> {
    let called = |lift: &Lift| {
        let is_it = |of: &&Proposal| of.exercise == lift.exercise && of.track == lift.track();
        let proposal = proposals.iter().find(is_it);
        proposal.map_or_else(|| block.name_of(&lift.exercise), |of| of.called.clone())
    };
    let mut firsts: Vec<(&Lift, &Lift)> = Vec::new();
    for lift in lifts.iter().map(|lift| &lift.body) {
        let last_set = lift.set == lift.scheme.sets();
        // An easy week is outside progression.
        if !last_set || lift.easy || lift.load.is_none() {
            continue;
        }
        let same = |found: &&mut (&Lift, &Lift)| {
            // Two pieces of one movement go up each on its own.
            found.0.exercise == lift.exercise
                && found.0.track() == lift.track()
                && found.0.scheme == lift.scheme
        };
        match firsts.iter_mut().find(same) {
            Some((_, latest)) => *latest = lift,
            None => firsts.push((lift, lift)),
        }
    }
    let gained = firsts.into_iter().filter_map(|(first, latest)| {
        let (from, to) = (first.load?, latest.load?);
        let movement = called(latest);
        let (up_from, up_to) = (words::load_text(from, unit), words::load_text(to, unit));
        let text = say::coach::progress(movement, up_from, up_to);
        // A load that was not made is no progress yet.
        (to > from && latest.made()).then(|| Attention::new(AttentionKind::Progress, text))
    });
    gained.collect()
}
