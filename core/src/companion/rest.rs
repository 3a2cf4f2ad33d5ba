//! The rest between sets. It starts by itself when a set is logged, and nobody has to stop it.
//!
//! **What is on disk decides.** A set's entry carries the moment it was logged first, by both clocks
//! of the device, and a correction keeps it. So after a kill or a reboot the rest is where it would
//! have been: by the boot clock within one boot, by the wall clock across boots, and where that ran
//! backwards the screen says that it does not know. A set logged by an older app, which wrote the
//! wall clock alone, is counted by that.
//!
//! The set that counts is the one logged last: what was seen in the boot that runs now came after
//! all of other boots, the boot clock orders what is of one boot, and the wall clock the rest.
//!
//! **When there is none**: before the first set, once no set of the day is left, once the athlete
//! has gone on to a window, a hold or any clock, once the session is finished, and once the rest is
//! over by [`FORGOTTEN_MS`]. There is one cue, when it is over, and nothing after.

use serde::Serialize;

use super::session_log::SessionLog;
use crate::clock::{Cue, CueKind, Trust};
use crate::instant::{Elapsed, Instant};
use crate::journal::Lift;
use crate::load::{Intensity, suggested_rest as published_rest};
use crate::plan::{Day, Strength, Work, keyword};
use crate::store::Logged;
use crate::words;

/// After a rest was over for so long nobody is resting any more, in milliseconds: as long as the
/// longest rest a plan can ask for.
pub(crate) const FORGOTTEN_MS: i64 = 30 * 60 * 1000;

keyword! {
    /// Where the suggested length of a rest comes from.
    RestBasis {
        /// The plan says it.
        Plan = "plan",
        /// The published range for heavy sets.
        Published = "published",
        /// What is usual after lighter sets: common practice, no source.
        Usual = "usual",
    }
}

/// The rest that runs since the last set.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct RestView {
    /// The piece of the set it follows.
    pub piece: String,
    /// That set, counted from 1.
    pub set: u32,
    /// When that set was logged, by the wall clock, milliseconds since 1970.
    pub since_wall_ms: i64,
    /// Milliseconds rested; none when it is not known.
    pub rested_ms: Option<i64>,
    /// The least suggested, in milliseconds: the rest is over then.
    pub suggested_ms: i64,
    /// The most suggested, in milliseconds; the same where one length is suggested.
    pub most_ms: i64,
    /// Where that comes from.
    pub basis: RestBasis,
    /// Where the suggested length comes from, in words.
    pub suggested_text: String,
    /// Milliseconds left, 0 once it is over; none when it is not known.
    pub left_ms: Option<i64>,
    /// Milliseconds over, 0 until then; none when it is not known.
    pub over_ms: Option<i64>,
    /// The one cue, while it lies ahead.
    pub cue: Option<Cue>,
    /// What the time rests on.
    pub trust: Trust,
    /// How it stands, in words; where it is not known they say so.
    pub words: String,
}

/// How long to rest after a set: the plan's own rest where it says one, otherwise the published
/// range when the set was heavy, otherwise the plan reader's usual rest.
///
/// Reps done and reps left together are the repetition maximum that the set was; without reps left
/// the reps done are taken for it, which errs towards the longer rest.
fn suggested_rest(strength: &Strength, lift: &Lift) -> (i64, i64, RestBasis) {
    let to_failure = lift.reps.saturating_add(lift.reserve.unwrap_or(0));
    let usual = strength.rest_ms;
    // Numbers that were only remembered are not shown to anybody.
    let published = published_rest(Intensity::Reps(to_failure.max(1)));
    match published.filter(|rest| !rest.from_memory) {
        _ if strength.rest_said => (usual, usual, RestBasis::Plan),
        Some(rest) => (rest.shortest_ms, rest.longest_ms, RestBasis::Published),
        None => (usual, usual, RestBasis::Usual),
    }
}

/// When a set was logged first.
fn logged_at(lift: &Logged<Lift>) -> Instant {
    // An older app wrote the wall clock alone.
    let by_wall = || Instant::by_wall(lift.first_ms, lift.offset_min);
    lift.body.at.clone().unwrap_or_else(by_wall)
}

/// The rest at a moment of a session.
pub(crate) fn rest(log: &SessionLog, day: &Day, now: &Instant) -> Option<RestView> {
    if log.finish.is_some() {
        return None;
    }
    let mut last: Option<(&Logged<Lift>, Instant)> = None;
    for lift in &log.lifts {
        let at = logged_at(lift);
        if last.as_ref().is_none_or(|(_, latest)| !latest.is_after(&at, now)) {
            last = Some((lift, at));
        }
    }
    let (lift, since) = last?;
    let next = next_set(log, day, &lift.body.piece)?;
    let mut others = log.clock_moments().chain(log.timed_moments());
    if others.any(|at| at.is_after(&since, now)) {
        return None;
    }
    let Work::Strength(strength) = &day.piece(&lift.body.piece)?.work else { return None };
    let (suggested_ms, most_ms, basis) = suggested_rest(strength, &lift.body);
    let (rested_ms, trust) = match now.elapsed_since(&since) {
        Elapsed::Boot(ms) => (Some(ms), Trust::Boot),
        Elapsed::Wall(ms) => (Some(ms), Trust::Wall),
        Elapsed::Unknown => (None, Trust::Unknown),
    };
    if rested_ms.is_some_and(|rested| rested > suggested_ms.saturating_add(FORGOTTEN_MS)) {
        return None;
    }
    let left_ms = rested_ms.map(|rested| (suggested_ms - rested).max(0));
    let due = rested_ms.map(|rested| suggested_ms - rested).filter(|due| *due >= 0);
    let cue = due.map(|due_in_ms| Cue {
        due_in_ms,
        due_boot_ms: now.boot_ms.saturating_add(due_in_ms),
        kind: CueKind::RestOver,
        turn: next,
        words: words::cue(CueKind::RestOver).into(),
    });
    let suggested_text = words::suggested_rest(suggested_ms, most_ms, basis);
    Some(RestView {
        piece: lift.body.piece.clone(),
        set: lift.body.set,
        since_wall_ms: since.wall_ms,
        rested_ms,
        suggested_ms,
        most_ms,
        basis,
        left_ms,
        over_ms: rested_ms.map(|rested| (rested - suggested_ms).max(0)),
        cue,
        trust,
        words: words::rest(rested_ms, suggested_ms, &suggested_text, trust),
        suggested_text,
    })
}

/// The set to come: the next of the piece, otherwise the first that is left of another.
fn next_set(log: &SessionLog, day: &Day, piece: &str) -> Option<u32> {
    let left = |piece: &crate::plan::Piece| match &piece.work {
        Work::Strength(strength) => {
            (1..=strength.scheme.sets()).find(|set| log.lift(&piece.name, *set).is_none())
        }
        _ => None,
    };
    let others = || day.pieces.iter().find_map(left);
    day.piece(piece).and_then(left).or_else(others)
}
