//! What entries say, in a few words: to tell that they were saved, and that they were taken back.

use super::clock::held_side;
use super::load::load_text;
use super::name::{because, place, sign};
use super::piece::{Remarks, set_done, window_done};
use super::plain::{day, list, side, side_of_two, tenths};
use crate::clock::Act;
use crate::journal::{
    Body, ClockMark, Discomfort, Held, Lift, OptionTaken, Part, PutOff, Range, RestAct, Until,
    WindowDone,
};
use crate::mass::MassUnit;
use crate::plan::{Exercise, MeasuredWhen};
use crate::say::{logged as say, note as notes};

/// How names are made of what entries hold.
pub(crate) struct Names<'a> {
    /// The unit loads are written in.
    pub(crate) unit: MassUnit,
    /// The name of an exercise.
    pub(crate) of: &'a dyn Fn(&Exercise) -> String,
}

/// What the entries of one tap say together: `Squat set 2, 70 kg × 5`, `Calves, held left 2 min, right
/// 1 min 5 s (stopped early)`.
pub(crate) fn logged(bodies: &[Body], names: &Names<'_>) -> String {
    let sides = bodies.iter().filter(|body| matches!(body, Body::Held(_))).count() as u32;
    let mut said: Vec<String> = Vec::new();
    let mut held: Vec<(String, String)> = Vec::new();
    for body in bodies {
        match body {
            Body::Held(side) => held.push((side.piece.clone(), one_side(side, sides))),
            // What opens a session again says it already.
            Body::TakenBack(_) if bodies.len() > 1 => {}
            // What a clock's stop leads to says it already.
            Body::ClockMark(mark) if mark.mark.act == Act::Stop && bodies.len() > 1 => {}
            other => said.push(one(other, names)),
        }
    }
    if let Some((piece, _)) = held.first().cloned() {
        let sides: Vec<String> = held.into_iter().map(|(_, side)| side).collect();
        said.insert(0, say::held(piece, sides.join(say::between_sides())));
    }
    list(&said)
}

fn one_side(held: &Held, sides: u32) -> String {
    let time = held_side(held.held_ms, held.short, held.said.as_deref());
    // One side alone may be the right one.
    match side(held.side, sides.max(held.side)) {
        Some(side) => say::of_side(side, time),
        None => time,
    }
}

fn one(body: &Body, names: &Names<'_>) -> String {
    let words = match body {
        Body::Lift(lift) => return logged_set(lift, names.unit),
        Body::WindowDone(done) => return window(done),
        Body::Held(held) => return one_side(held, 1),
        Body::Range(range) => return reading(range),
        Body::ClockMark(mark) => return clock(mark),
        Body::OptionTaken(taken) => return option(taken, names),
        Body::BarTaken(taken) => return say::took_bar(&taken.piece, &taken.bar),
        Body::Discomfort(flag) => return flagged(flag, names),
        Body::PutOff(off) => return off_until(off),
        Body::Session(session) if session.afterwards => {
            return say::session_afterwards(&session.day, day(session.date));
        }
        Body::Session(session) => return say::session_begun(&session.day),
        Body::Profile(profile) => return profile.name.clone(),
        Body::PlanText(plan) => return plan.block.clone(),
        Body::Finish(finish) => match finish.rpe {
            Some(rpe) => return say::session_rated(rpe),
            None => say::session_finished(),
        },
        Body::RestMark(mark) => match mark.act {
            RestAct::End => say::rest_ended(),
            RestAct::Minute => say::rest_longer(),
        },
        Body::Cleared(_) => say::flag_cleared(),
        Body::Ruling(_) => say::coach_answer(),
        Body::SetAside(_) => say::set_aside(),
        Body::Max(_) => say::one_rep_max(),
        Body::Note(note) => {
            return match &note.piece {
                Some(piece) => notes::noted_on(piece, &note.words),
                None => notes::noted(&note.words),
            };
        }
        Body::Admit(admit) => return say::taken_in(&admit.label),
        Body::Remove(removed) if removed.device.is_some() => say::device_removed(),
        Body::Remove(_) => say::removed_from_crew(),
        Body::Stopped(_) => say::device_stopped(),
        Body::Here(_) => say::device_added(),
        Body::Forgot(_) => say::somebody_forgotten(),
        Body::TakenBack(_) => say::taken_back(),
    };
    words.into()
}

/// A part of a piece that is put off.
pub(crate) fn put_off(piece: &str, part: Part) -> String {
    match part {
        Part::Work => piece.to_owned(),
        Part::Before => say::measure_before(piece),
        Part::After => say::measure_after(piece),
    }
}

fn off_until(off: &PutOff) -> String {
    let what = put_off(&off.piece, off.part);
    match off.until {
        Until::Later => say::put_off(what),
        Until::Left => say::left_for_today(what),
    }
}

/// A set as it was logged: `Squat set 1, 675 kg × 5`.
pub(crate) fn logged_set(lift: &Lift, unit: MassUnit) -> String {
    let load = lift.load.map(|load| load_text(load, unit));
    let done = set_done(load.as_deref(), lift.reps, lift.reserve, Remarks::default());
    say::set(&lift.piece, lift.set, done)
}

fn window(done: &WindowDone) -> String {
    say::window(&done.piece, done.window, window_done(done.reps, done.spare_ms, false))
}

fn reading(range: &Range) -> String {
    let (piece, read) = (&range.piece, tenths(range.tenths, range.protocol.unit()));
    match (range.when, side_of_two(range.side)) {
        (MeasuredWhen::Before, None) => say::read_before(piece, read),
        (MeasuredWhen::Before, Some(side)) => say::read_before_side(piece, side, read),
        (MeasuredWhen::After, None) => say::read_after(piece, read),
        (MeasuredWhen::After, Some(side)) => say::read_after_side(piece, side, read),
    }
}

fn clock(mark: &ClockMark) -> String {
    let piece = &mark.piece;
    match mark.mark.act {
        Act::Begin => say::clock_started(piece),
        Act::Pause => say::clock_paused(piece),
        Act::Resume => say::clock_resumed(piece),
        Act::Extend => say::clock_extended(piece),
        Act::Skip => say::clock_skipped(piece),
        Act::Stop => say::clock_stopped(piece),
    }
}

fn option(taken: &OptionTaken, names: &Names<'_>) -> String {
    let (piece, movement) = (&taken.piece, &taken.movement);
    let Some(option) = &taken.option else {
        return say::back_to_movement(piece, (names.of)(&Exercise::of(movement)));
    };
    let option = (names.of)(&Exercise::option_of(movement, option));
    match taken.because {
        Some(why) => say::took_option_because(piece, option, because(why)),
        None => say::took_option(piece, option),
    }
}

fn flagged(flag: &Discomfort, names: &Names<'_>) -> String {
    let (place, severity) = (place(flag.place), flag.severity);
    let signs: Vec<String> = flag.signs.iter().map(|ticked| sign(*ticked).to_owned()).collect();
    let movement = flag.exercise.as_ref().map(names.of);
    match (&flag.piece, movement, signs.as_slice()) {
        (Some(piece), Some(movement), []) => say::flagged(piece, movement, place, severity),
        (Some(piece), Some(movement), signs) => {
            say::flagged_with_signs(piece, movement, place, severity, list(signs))
        }
        (_, Some(movement), []) => say::flagged_between(movement, place, severity),
        (_, Some(movement), signs) => {
            say::flagged_between_with_signs(movement, place, severity, list(signs))
        }
        (_, None, []) => say::flagged_alone(place, severity),
        (_, None, signs) => say::flagged_alone_with_signs(place, severity, list(signs)),
    }
}
