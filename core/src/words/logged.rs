//! What entries say, in a few words: to tell that they were saved, and that they were taken back.

use super::clock::short;
use super::load::load_text;
use super::plain::{because, clock_time, list, place, side, side_of_two, sign, tenths};
use crate::clock::Act;
use crate::journal::{Body, Discomfort, Held, Lift, Part, RestAct, Until, WindowDone};
use crate::mass::MassUnit;
use crate::plan::{Exercise, MeasuredWhen};

/// How names are made of what entries hold.
pub(crate) struct Names<'a> {
    /// The unit loads are written in.
    pub(crate) unit: MassUnit,
    /// The name of an exercise.
    pub(crate) of: &'a dyn Fn(&Exercise) -> String,
}

/// What the entries of one tap say together: `Squat set 2, 70 kg x 5`, `Calves, held left 2 min, right
/// 1 min 5 s (stopped early)`.
pub(crate) fn logged(bodies: &[Body], names: &Names<'_>) -> String {
    let sides = bodies.iter().filter(|body| matches!(body, Body::Held(_))).count() as u32;
    let mut said: Vec<String> = Vec::new();
    let mut held: Vec<(String, String)> = Vec::new();
    for body in bodies {
        match body {
            Body::Held(side) => held.push((side.piece.clone(), one_side(side, sides))),
            // What a clock's stop leads to says it already.
            Body::ClockMark(mark) if mark.mark.act == Act::Stop && bodies.len() > 1 => {}
            other => said.push(one(other, names)),
        }
    }
    if let Some((piece, _)) = held.first().cloned() {
        let sides: Vec<String> = held.into_iter().map(|(_, side)| side).collect();
        said.insert(0, format!("{piece}, held {}", sides.join(", ")));
    }
    list(&said)
}

fn one_side(held: &Held, sides: u32) -> String {
    // One side alone may be the right one.
    let name = side(held.side, sides.max(held.side));
    let name = name.map_or(String::new(), |name| format!("{name} "));
    let why = short(held.short, held.said.as_deref());
    let why = why.map_or(String::new(), |why| format!(" ({why})"));
    format!("{name}{}{why}", clock_time(held.held_ms))
}

fn one(body: &Body, names: &Names<'_>) -> String {
    match body {
        Body::Lift(lift) => set(lift, names.unit),
        Body::WindowDone(done) => window(done),
        Body::Held(held) => one_side(held, 1),
        Body::Range(range) => {
            let side = side_of_two(range.side).map_or(String::new(), |side| format!(" {side}"));
            let when = match range.when {
                MeasuredWhen::Before => "before",
                MeasuredWhen::After => "after",
            };
            let reading = tenths(range.tenths, range.protocol.unit());
            format!("{}, {when}{side} {reading}", range.piece)
        }
        Body::ClockMark(mark) => {
            let act = match mark.mark.act {
                Act::Begin => "started",
                Act::Pause => "paused",
                Act::Resume => "going on",
                Act::Extend => "15 s longer",
                Act::Skip => "next",
                Act::Stop => "stopped",
            };
            format!("{}, clock {act}", mark.piece)
        }
        Body::OptionTaken(taken) => match (&taken.option, taken.because) {
            (Some(option), why) => {
                let name = (names.of)(&Exercise::option_of(&taken.movement, option));
                let why = why.map_or(String::new(), |why| format!(", for {}", because(why)));
                format!("{}, {name}{why}", taken.piece)
            }
            (None, _) => {
                format!("{}, back to {}", taken.piece, (names.of)(&Exercise::of(&taken.movement)))
            }
        },
        Body::Discomfort(flag) => flagged(flag, names),
        Body::Cleared(_) => "flag cleared".into(),
        Body::RestMark(mark) => match mark.act {
            RestAct::End => "rest ended".into(),
            RestAct::Minute => "a minute more rest".into(),
        },
        Body::PutOff(off) => {
            let what = put_off(&off.piece, off.part);
            match off.until {
                Until::Later => format!("{what}: later"),
                Until::Left => format!("{what}: left for today"),
            }
        }
        Body::Session(session) => format!("session begun: {}", session.day),
        Body::Finish(finish) => match finish.rpe {
            Some(rpe) => format!("session finished, {rpe} of 10"),
            None => "session finished".into(),
        },
        Body::Profile(profile) => profile.name.clone(),
        Body::PlanText(plan) => plan.block.clone(),
        Body::Ruling(_) => "the coach's answer".into(),
        Body::TakenBack(_) => "taken back".into(),
    }
}

/// A part of a piece that is put off.
pub(crate) fn put_off(piece: &str, part: Part) -> String {
    match part {
        Part::Work => piece.to_owned(),
        Part::Before => format!("{piece}, the measure before"),
        Part::After => format!("{piece}, the measure after"),
    }
}

fn set(lift: &Lift, unit: MassUnit) -> String {
    let load = lift.load.map_or(String::new(), |load| format!("{} x ", load_text(load, unit)));
    let left = lift.reserve.map_or(String::new(), |left| format!(", {left} left"));
    format!("{} set {}, {load}{}{left}", lift.piece, lift.set, lift.reps)
}

fn window(done: &WindowDone) -> String {
    let spare = done.spare_ms.map(|spare| format!(", {} to spare", clock_time(spare)));
    format!(
        "{} window {}, {} done{}",
        done.piece,
        done.window,
        done.reps,
        spare.unwrap_or_default()
    )
}

fn flagged(flag: &Discomfort, names: &Names<'_>) -> String {
    let signs: Vec<String> = flag.signs.iter().map(|ticked| sign(*ticked).to_owned()).collect();
    let with = if signs.is_empty() { String::new() } else { format!(", with {}", list(&signs)) };
    let (what, place) = ((names.of)(&flag.exercise), place(flag.place));
    format!("{}, {what}: {place} {}/10{with}", flag.piece, flag.severity)
}
