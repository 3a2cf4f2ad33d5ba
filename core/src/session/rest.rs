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
//! has ended it or gone on to a window, a hold or any clock, once the session is finished, and once the
//! rest is over by [`FORGOTTEN_MS`]. There is one cue, when it is over, and nothing after.

use super::bars::builds_of;
use super::log::SessionLog;
use super::screen::{CueView, RestView};
use crate::clock::{CueKind, Trust};
use crate::instant::{Elapsed, Instant, Millis};
use crate::journal::{Lift, RestAct, RestMark};
use crate::load::{Intensity, Prepared, RestBasis, suggested_rest as published_rest};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Day, Piece, PieceKind, Strength};
use crate::store::Logged;
use crate::words;

/// After a rest was over for so long nobody is resting any more, in milliseconds: as long as the
/// longest rest a plan can ask for.
pub(crate) const FORGOTTEN_MS: i64 = 30 * 60 * 1000;

/// How long to rest after a set: the plan's own rest where it says one, otherwise the published
/// range when the set was heavy, otherwise the plan reader's usual rest.
///
/// Reps done and reps left together are the repetition maximum that the set was; without reps left
/// the reps done are taken for it, which errs towards the longer rest. But a few reps with the lightest load
/// there is, of which nobody said how many were left, are no heavy set: that is how a first time begins. After
/// warm-up sets no rest is named: they are not logged.
fn suggested_rest(
    strength: &Strength,
    lift: &Lift,
    lightest: Option<Mass>,
) -> (i64, i64, RestBasis) {
    let to_failure = lift.reps.saturating_add(lift.reserve.unwrap_or(0));
    let usual = strength.rest_ms;
    let lightest = lift.load.zip(lightest).is_some_and(|(load, lightest)| load <= lightest);
    let light = lightest && lift.reserve.is_none();
    // Numbers that were only remembered are not shown to anybody.
    let published = published_rest(Intensity::Reps(to_failure.max(1)));
    match published.filter(|rest| !rest.from_memory && !light) {
        _ if strength.rest_said => (usual, usual, RestBasis::Plan),
        Some(rest) => (rest.shortest_ms, rest.longest_ms, RestBasis::Published),
        None => (usual, usual, RestBasis::Usual),
    }
}

/// What one tap makes a rest longer by, in milliseconds.
const MINUTE_MS: i64 = 60_000;

/// When a set was logged first.
fn logged_at(lift: &Logged<Lift>) -> Instant {
    // An older app wrote the wall clock alone.
    let by_wall = || Instant::by_wall(lift.first_ms, lift.offset_min);
    lift.body.at.clone().unwrap_or_else(by_wall)
}

/// The rest at a moment of a session.
pub(crate) fn rest(
    log: &SessionLog,
    block: &Prepared,
    day: &Day,
    unit: MassUnit,
    now: &Instant,
) -> Option<RestView> {
    if log.finish.is_some() || log.is_afterwards() {
        return None;
    }
    let mut last: Option<(&Logged<Lift>, Instant)> = None;
    for lift in log.lifts.iter().filter(|lift| !lift.body.is_unplanned()) {
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
    let PieceKind::Strength(strength) = &day.piece(&lift.body.piece)?.kind else { return None };
    let lightest = builds_of(block, &lift.body, unit).loads().next();
    let (suggested_ms, most_ms, basis) = suggested_rest(strength, &lift.body, lightest);
    let after = |mark: &&RestMark| !since.is_after(&mark.at, now);
    let marks = || log.rest_marks(&lift.body.piece, lift.body.set).filter(after);
    if marks().any(|mark| mark.act == RestAct::End) {
        return None;
    }
    let longer = MINUTE_MS * marks().filter(|mark| mark.act == RestAct::Minute).count() as i64;
    let (suggested_ms, most_ms) = (suggested_ms + longer, most_ms + longer);
    let (rested_ms, trust) = match now.elapsed_since(&since) {
        Elapsed::Boot(ms) => (Some(ms), Trust::Boot),
        Elapsed::Wall(ms) => (Some(ms), Trust::Wall),
        Elapsed::Unknown => (None, Trust::Unknown),
    };
    if rested_ms.is_some_and(|rested| rested > suggested_ms.saturating_add(FORGOTTEN_MS)) {
        return None;
    }
    let left = rested_ms.map(|rested| Millis((suggested_ms - rested).max(0)));
    let due = rested_ms.map(|rested| suggested_ms - rested).filter(|due| *due >= 0);
    let cue = due.map(|due_in_ms| CueView {
        due_in: Millis(due_in_ms),
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
        rested: rested_ms.map(Millis),
        suggested: Millis(suggested_ms),
        most: Millis(most_ms),
        basis,
        left,
        over: rested_ms.map(|rested| Millis((rested - suggested_ms).max(0))),
        cue,
        trust,
        words: words::rest(rested_ms, suggested_ms, &suggested_text, trust),
        suggested_text,
    })
}

/// The set to come: the next of the piece, otherwise the first that is left of another.
fn next_set(log: &SessionLog, day: &Day, piece: &str) -> Option<u32> {
    let left = |piece: &Piece| match &piece.kind {
        PieceKind::Strength(strength) => {
            (1..=strength.scheme.sets()).find(|set| log.lift(&piece.name, *set).is_none())
        }
        _ => None,
    };
    let others = || day.pieces.iter().find_map(left);
    day.piece(piece).and_then(left).or_else(others)
}
