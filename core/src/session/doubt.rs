//! What is odd about a set: it is taken as it was logged, and asked about.

use super::log::SessionLog;
use crate::journal::{Held, Lift, WindowDone};
use crate::load::{CAP_PERCENT, most_after};
use crate::mass::MassUnit;
use crate::plan::{Build, Builds, FASTEST_REP_MS};
use crate::say::screen as say;
use crate::words;

/// More reps than this look like a slip when three times as many as the set asked for (common practice,
/// no source).
const MANY_REPS: u32 = 30;
/// So does a load a fifth under what was proposed: common practice, no source.
const FAR_PERCENT: u32 = 20;
/// A set said again this near to what was proposed is no second slip. Chosen, no source.
const REPAIR_PERCENT: u32 = 25;
/// Near zero no percentage means anything: so many picks under. Common practice, no source.
const FAR_PICKS: usize = 3;

/// True for a set that looks like a slip of the finger: nothing is proposed from it before the athlete has
/// said that it is none.
pub(super) fn is_slip(lift: &Lift, builds: &Builds) -> bool {
    // Nothing is proposed from what nobody planned, nor is it known how many are many.
    !lift.is_extra() && (has_many_reps(lift) || is_far(lift, builds))
}

/// True for a set that was doubted and is said again otherwise, near what was proposed: that is the answer to the
/// question, and not another one.
pub(super) fn is_repair(lift: &Lift, before: &Lift, builds: &Builds) -> bool {
    let near = lift.load.zip(lift.planned).is_some_and(|(load, planned)| {
        let off = planned.percent(100 - REPAIR_PERCENT)..=planned.percent(100 + REPAIR_PERCENT);
        off.contains(&load) && builds.exactly(load).is_some() && !builds.is_picks()
    });
    before.doubt && near && !has_many_reps(lift)
}

fn has_many_reps(lift: &Lift) -> bool {
    lift.reps > MANY_REPS.max(lift.target().saturating_mul(3))
}

/// Over what was proposed: more than a tenth and more than one build, further than any proposal goes. Of picks,
/// and where nothing was proposed, what the room cannot build.
fn is_far(lift: &Lift, builds: &Builds) -> bool {
    let Some(load) = lift.load else { return false };
    let Some(planned) = lift.planned else { return builds.exactly(load).is_none() };
    let next = builds.above(planned).map_or(planned, |build| build.mass);
    if builds.is_picks() {
        let under = builds.loads().filter(|build| (load..planned).contains(build)).count();
        return load > most_after(builds, planned)
            || under >= FAR_PICKS
            || builds.exactly(load).is_none();
    }
    load > planned.percent(CAP_PERCENT).max(next) || load < planned.percent(100 - FAR_PERCENT)
}

/// What is odd about a set that was logged; none where nothing is, and once the athlete is sure of it.
pub(super) fn doubt(lift: &Lift, builds: &Builds, unit: MassUnit) -> Option<String> {
    if lift.doubt && has_many_reps(lift) {
        return Some(say::odd_reps(lift.reps, lift.target()));
    }
    let load = lift.load?;
    if builds.exactly(load).is_none() {
        let text = |build: &Build| words::load_text(build.mass, unit);
        let near = (builds.below(load).as_ref().map(text), builds.above(load).as_ref().map(text));
        let load = || words::load_text(load, unit);
        match near {
            (Some(below), Some(above)) => return Some(say::odd_load_between(load(), below, above)),
            (Some(near), None) | (None, Some(near)) => return Some(say::odd_load(load(), near)),
            (None, None) => {}
        }
    }
    let planned = lift.planned.filter(|_| lift.doubt)?;
    Some(say::far_from_proposed(words::load_text(planned, unit)))
}

/// What is odd about a window that was logged: more reps than its time has room for.
pub(super) fn doubt_of_window(done: &WindowDone, window_ms: i64) -> Option<String> {
    let worked = window_ms.saturating_sub(done.spare_ms.unwrap_or(0)).max(0);
    if worked >= i64::from(done.reps).saturating_mul(FASTEST_REP_MS) {
        return None;
    }
    Some(say::odd_window(done.reps, words::clock_time(worked)))
}

/// What is odd about the seconds logged of a hold: those typed by hand are the athlete's word, but more than
/// the session had gone on may be a slip.
pub(super) fn doubt_of_hold(log: &SessionLog, piece: &str) -> Option<String> {
    let logged: Vec<&Held> =
        log.holds.iter().filter(|hold| hold.body.piece == piece).map(|hold| &hold.body).collect();
    let at = logged.first()?.at.as_ref().filter(|_| !log.is_afterwards())?;
    let (held, gone_on) = (logged.iter().map(|held| held.held_ms).sum(), log.gone_on_ms(at));
    if held <= gone_on {
        return None;
    }
    let (held, gone_on) = (words::clock_time(held), words::clock_time(gone_on / 1000 * 1000));
    Some(say::odd_hold(held, gone_on))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixtures;
    use crate::mass::Mass;
    use crate::plan::Scheme;

    #[test]
    fn slips_of_the_finger_are_asked_about_and_training_is_not() {
        let unit = MassUnit::Kg;
        let plates = [20, 10, 5].map(|kg| (Mass::kg(kg), 4));
        let builds = fixtures::builds(&fixtures::kit("0", &plates));
        let lift = |kg: i64, reps: u32, of: u32, planned: Option<i64>| {
            let scheme = Scheme { reps: vec![of], open: true };
            let lift = fixtures::lift(scheme, Mass::kg(kg), reps);
            let lift = Lift { planned: planned.map(Mass::kg), ..lift };
            Lift { doubt: is_slip(&lift, &builds), ..lift }
        };
        let asked = |kg, reps, of| doubt(&lift(kg, reps, of, Some(60)), &builds, unit);
        for (kg, reps, of) in [(60, 8, 8), (60, 30, 5), (70, 45, 15), (50, 0, 8)] {
            assert_eq!(asked(kg, reps, of), None, "{kg} x {reps}");
        }
        assert_eq!(asked(60, 31, 5).as_deref(), Some("31 reps, 5 planned"));
        assert_eq!(asked(60, 1000, 30).as_deref(), Some("1000 reps, 30 planned"));
        assert_eq!(
            asked(61, 8, 8).as_deref(),
            Some("This cannot be loaded to 61 kg; the nearest are 60 kg and 70 kg")
        );
        assert_eq!(asked(80, 8, 8).as_deref(), Some("Far from the proposed 60 kg"));
        assert_eq!(asked(40, 8, 8).as_deref(), Some("Far from the proposed 60 kg"));
        // 70 is the next build after 60, and 71 is further than any proposal goes.
        let doubted = |kg, planned| lift(kg, 8, 8, planned).doubt;
        assert!(!doubted(70, Some(60)) && doubted(71, Some(60)));
        // A tenth over 130 is 143.
        assert!(!doubted(143, Some(130)) && doubted(144, Some(130)));
        assert!(!doubted(60, None) && doubted(600, None), "the first time, by feel");
    }

    #[test]
    fn fifteen_swings_in_four_seconds_are_asked_about() {
        let asked =
            |reps, spare_ms| doubt_of_window(&fixtures::window_done(reps, spare_ms), 60_000);
        assert_eq!(asked(15, Some(56_000)).as_deref(), Some("15 reps in 4 s"));
        assert_eq!(asked(15, Some(52_500)), None, "half a second each");
        assert_eq!(asked(15, None), None);
        assert_eq!(asked(121, None).as_deref(), Some("121 reps in 1 min"));
    }
}
