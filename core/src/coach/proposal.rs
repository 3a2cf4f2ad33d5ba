//! The next loads a member would be given, for a coach to accept, change or refuse.

use chrono::NaiveDate;
use serde::Serialize;

use crate::history::Proposed;
use crate::id::RecordId;
use crate::load::{Decision, Flag, NextLoad, Prepared, Reason, Time};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Exercise, Piece, Strength};
use crate::say;
use crate::words;

/// The next loads of one exercise and scheme, with their reason.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Proposal {
    /// What is lifted: what the history is kept under.
    pub exercise: Exercise,
    /// Its name.
    pub movement: String,
    /// What the board calls it: the movement, with the piece where the member has several proposals of it.
    pub called: String,
    /// The bar it is lifted with; none for what needs none.
    pub bar: Option<String>,
    /// The piece it is for.
    pub piece: String,
    /// The scheme's key.
    pub scheme: String,
    /// The track it is kept under.
    pub track: String,
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
    /// What else would have kept the last set down, in one line; none where nothing would.
    pub others: Option<String>,
    /// What holds the coach's answer, and until when, in words; none where it decides, and without one.
    pub held: Option<String>,
    /// The coach's answer, once given, while it stands.
    pub ruled: Option<Decision>,
    /// The answer in a word, once given.
    pub ruled_text: Option<String>,
}

/// The next load of one set.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct ProposedSet {
    /// The set, counted from 1.
    pub set: u32,
    /// The load carried from last time.
    pub last: Option<Mass>,
    /// Reps done last time.
    pub reps: Option<u32>,
    /// What is proposed.
    pub next: Option<Mass>,
    /// Reps asked for.
    pub asked: u32,
    /// True when it is taken to as many good reps as possible.
    pub open: bool,
    /// The most that would be allowed without a coach's word.
    pub most: Option<Mass>,
    /// Why.
    pub reason: Reason,
    /// The records it was read from: sets, a flag, a coach's answer.
    pub from: Vec<RecordId>,
}

/// A proposal as a coach reads it; none without a session before it. What it is called, those beside it say.
pub(super) fn view(
    block: &Prepared,
    unit: MassUnit,
    piece: &Piece,
    strength: &Strength,
    proposed: Proposed<'_>,
) -> Option<Proposal> {
    let Proposed { exercise, builds, history, next, .. } = proposed;
    let last: &Time = history.last()?;
    let set = |next: NextLoad| ProposedSet {
        set: next.set,
        last: next.carried.or_else(|| last.set(next.set).and_then(|done| done.load)),
        reps: last.set(next.set).map(|done| done.reps),
        next: next.load,
        asked: next.reps,
        open: next.open,
        most: next.most,
        reason: next.reason,
        from: next.from,
    };
    let others = next.sets.last().map(|next| next.others.clone()).unwrap_or_default();
    let answers = |next: &NextLoad| {
        let mut reasons = std::iter::once(&next.reason).chain(&next.others);
        reasons.find_map(|reason| match reason {
            Reason::Coach { decision, .. } | Reason::Answered { decision, .. } => Some(*decision),
            _ => None,
        })
    };
    let ruled = next.sets.iter().find_map(answers);
    let held = held(&next.sets, &history.flags, unit);
    let sets: Vec<ProposedSet> = next.sets.into_iter().map(set).collect();
    Some(Proposal {
        movement: block.name_of(&exercise),
        called: String::new(),
        bar: builds.has_plates().then(|| builds.bar.clone()),
        piece: piece.name.clone(),
        scheme: strength.scheme.key(),
        track: strength.track(&piece.name).to_owned(),
        after: last.session,
        on: last.on,
        last_text: loads_text(sets.iter().map(|set| set.last), unit),
        next_text: loads_text(sets.iter().map(|set| set.next), unit),
        why: sets.last().map_or(String::new(), |set| words::why(&set.reason, set.next, unit)),
        others: words::also(&others, unit),
        held,
        ruled_text: ruled.map(|decision| words::decision(decision).to_owned()),
        ruled,
        sets,
        exercise,
    })
}

/// What holds the coach's answer: pain before an easy week, whichever set it is about.
fn held(sets: &[NextLoad], flags: &[Flag], unit: MassUnit) -> Option<String> {
    let answered = |next: &NextLoad| {
        next.others.iter().find_map(|other| match other {
            Reason::Answered { load, .. } => Some(*load),
            _ => None,
        })
    };
    let held = || sets.iter().filter_map(|next| Some((&next.reason, answered(next)?)));
    held().next()?;
    let loads = loads_text(sets.iter().map(|next| answered(next).unwrap_or(next.load)), unit);
    // In an easy week what pain left is what is made lighter.
    let pain = held().any(|(reason, load)| match reason {
        Reason::Easy { of } => load != Some(*of),
        _ => true,
    });
    let open = flags.iter().any(|flag| flag.cleared.is_none());
    Some(match (pain, open) {
        (true, true) => say::coach::held_by_pain(loads),
        (true, false) => say::coach::held_after_pain(loads),
        (false, _) => say::coach::held_by_easy_week(loads),
    })
}

/// `50 / 60 / 70 kg`, a dash where there is none; where there is none at all it says so.
fn loads_text(loads: impl Iterator<Item = Option<Mass>>, unit: MassUnit) -> String {
    let loads: Vec<Option<Mass>> = loads.collect();
    if loads.iter().all(Option::is_none) {
        return say::screen::load_withdrawn().to_owned();
    }
    let number = |load: &Option<Mass>| load.map_or("-".into(), |load| load.number(unit));
    let loads: Vec<String> = loads.iter().map(number).collect();
    format!("{} {}", loads.join(" / "), unit.symbol())
}
