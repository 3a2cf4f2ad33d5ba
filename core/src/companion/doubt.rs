//! What is odd about a set: it is taken as it was logged, and asked about.

use super::session_log::SessionLog;
use crate::journal::{Held, Lift};
use crate::load::Rack;
use crate::mass::MassUnit;
use crate::words;

/// More reps than this are asked about when three times as many as the set asked for (common practice,
/// no source).
const MANY_REPS: u32 = 30;

/// What is odd about a set that was logged, perhaps a slip of the finger; empty where nothing is.
pub(super) fn doubt(lift: &Lift, rack: &Rack, unit: MassUnit) -> String {
    let asked = lift.scheme.target(lift.set).unwrap_or(0);
    if lift.reps > MANY_REPS.max(asked.saturating_mul(3)) {
        return format!("{} reps where {asked} were asked for", lift.reps);
    }
    let Some(load) = lift.load else { return String::new() };
    let near = [rack.at_or_below(load), rack.above(load)].into_iter().flatten();
    let near: Vec<String> = near.map(|build| words::load_text(build.mass, unit)).collect();
    if !near.is_empty() && rack.exactly(load).is_none() {
        let load = words::load_text(load, unit);
        return format!("this room cannot build {load}: nearest is {}", near.join(" or "));
    }
    // A fifth off what was proposed: common practice, no source.
    match lift.planned {
        Some(planned) if load > planned.percent(120) || load < planned.percent(80) => {
            format!("far from the {} proposed", words::load_text(planned, unit))
        }
        _ => String::new(),
    }
}

/// What is odd about the seconds logged of a hold: those typed by hand are the athlete's word, but more than
/// the session had gone on may be a slip.
pub(super) fn doubt_of_hold(log: &SessionLog, piece: &str) -> String {
    let logged: Vec<&Held> =
        log.holds.iter().filter(|it| it.body.piece == piece).map(|it| &it.body).collect();
    let Some(at) = logged.first().and_then(|held| held.at.as_ref()) else { return String::new() };
    let (held, gone_on) = (logged.iter().map(|held| held.held_ms).sum(), log.gone_on_ms(at));
    if held <= gone_on {
        return String::new();
    }
    let (held, gone_on) = (words::clock_time(held), words::clock_time(gone_on / 1000 * 1000));
    format!("{held} held altogether, {gone_on} after the session was begun")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::id::{RecordId, random};
    use crate::mass::Mass;
    use crate::plan::{Bar, Kit, PlateStack, Scheme};

    #[test]
    fn slips_of_the_finger_are_asked_about_and_training_is_not() {
        let unit = MassUnit::Kg;
        let bar = Bar {
            name: "long bar".into(),
            mass: Mass::kg(20),
            unit,
            collars: Mass::ZERO,
            count: 1,
        };
        let plates = [20, 10, 5].map(|kg| PlateStack { mass: Mass::kg(kg), unit, count: 4 }).into();
        let kit = Kit { bars: vec![bar], plates, ..Kit::default() };
        let rack = Rack::bar(&kit, &kit.bars[0]);
        let asked = |kg: i64, reps: u32, of: u32| {
            let lift = Lift {
                session: RecordId(random([1; 16])),
                piece: "Squat".into(),
                subject: "squat".into(),
                scheme: Scheme { reps: vec![of], open: true },
                set: 1,
                planned: Some(Mass::kg(60)),
                load: Some(Mass::kg(kg)),
                reps,
                reserve: None,
                at: None,
            };
            doubt(&lift, &rack, unit)
        };
        for (kg, reps, of) in [(60, 8, 8), (60, 30, 5), (70, 45, 15), (50, 0, 8)] {
            assert_eq!(asked(kg, reps, of), "", "{kg} x {reps}");
        }
        assert_eq!(asked(60, 31, 5), "31 reps where 5 were asked for");
        assert_eq!(asked(60, 1000, 30), "1000 reps where 30 were asked for");
        assert_eq!(asked(61, 8, 8), "this room cannot build 61 kg: nearest is 60 kg or 70 kg");
        assert_eq!(asked(80, 8, 8), "far from the 60 kg proposed");
        assert_eq!(asked(40, 8, 8), "far from the 60 kg proposed");
    }
}
