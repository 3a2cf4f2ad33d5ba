//! The one key: what "as planned" means where the athlete is, and the keys of clocks.

use holdfast_core::clock::{Act, HoldPhase, IntervalPhase};
use holdfast_core::companion::{HoldView, IntervalView, PieceView, SessionState, Tap};
use holdfast_core::load::Reason;

use super::form::{Then, Typing};
use super::keys::finish;
use super::model::{Mode, Model, Wish};
use super::rows::is_done;
use crate::session::clock;
use crate::session::step::{Step, running_window};

/// What the one key does at a row.
#[derive(Debug, PartialEq, Eq)]
enum Next {
    /// Log it as planned.
    Log(Tap),
    /// Do this to the clock.
    Clock(Act),
    /// Type it.
    Type,
    /// Nothing yet, for this reason.
    Wait(String),
    /// The session's rating.
    Rate,
    /// Leave: all is done.
    Leave,
}

/// Does what the one key does.
pub(super) fn go(model: &mut Model, at: &Step) -> Wish {
    match next(model, at) {
        Next::Log(tap) => Wish::Taps(vec![tap]),
        Next::Clock(act) => Wish::Taps(clock(at.name().unwrap_or_default(), act)),
        Next::Type => edit(model, at, ""),
        Next::Wait(why) => model.hint(why),
        Next::Rate => finish(model),
        Next::Leave => Wish::Leave,
    }
}

fn next(model: &Model, at: &Step) -> Next {
    let screen = &model.screen;
    if is_done(at, screen) {
        return Next::Type;
    }
    match (at, at.piece(screen)) {
        (Step::Set { piece, set, .. }, Some(PieceView::Strength { view })) => {
            let shown = view.sets.iter().find(|it| it.set == *set);
            let known = shown.is_some_and(|it| it.load.is_some() || it.reason == Reason::Free);
            let (piece, set) = (piece.clone(), Some(*set));
            match known {
                true => {
                    Next::Log(Tap::LogSet { piece, set, load: None, reps: None, reserve: None })
                }
                false => Next::Type,
            }
        }
        (Step::Window { window, .. }, Some(PieceView::Interval { view })) => {
            window_next(view, *window, model.chosen.is_some())
        }
        (Step::Hold { .. }, Some(PieceView::Hold { view })) => hold_next(view),
        (Step::Measure { .. }, _) => Next::Type,
        _ if screen.state == SessionState::Finished => Next::Leave,
        _ => Next::Rate,
    }
}

fn window_next(view: &IntervalView, window: u32, by_hand: bool) -> Next {
    let piece = view.name.clone();
    let log = Next::Log(Tap::LogWindow { piece, window: Some(window), reps: None, spare_ms: None });
    let logged = view.windows.iter().any(|it| it.reps.is_some());
    match view.clock.as_ref().map(|clock| &clock.phase) {
        // Windows done without the clock are logged one after the other.
        None | Some(IntervalPhase::NotBegun) if logged => log,
        None | Some(IntervalPhase::NotBegun) => Next::Clock(Act::Begin),
        Some(IntervalPhase::Ready { .. }) => Next::Wait("get ready: the first window comes".into()),
        Some(IntervalPhase::Paused { .. }) => Next::Clock(Act::Resume),
        Some(IntervalPhase::Window { .. }) => match running_window(view) {
            Some(running) if running != window && !by_hand => {
                Next::Wait(format!("window {running} is logged; the next one comes"))
            }
            _ => log,
        },
        Some(IntervalPhase::Done { .. }) => log,
    }
}

fn hold_next(view: &HoldView) -> Next {
    let piece = view.name.clone();
    match view.clock.as_ref().map(|clock| (&clock.phase, &clock.held_ms)) {
        None | Some((HoldPhase::NotBegun, _)) => Next::Clock(Act::Begin),
        Some((HoldPhase::Paused { .. }, _)) => Next::Clock(Act::Resume),
        // Stopped before anything was held: from the start.
        Some((HoldPhase::Done { .. }, held)) if held.iter().all(|ms| *ms == 0) => {
            Next::Clock(Act::Begin)
        }
        Some((HoldPhase::Done { .. }, _)) => {
            Next::Log(Tap::LogHold { piece, held_ms: Vec::new(), said: None })
        }
        Some(_) => Next::Clock(Act::Pause),
    }
}

/// Opens the line for a row.
pub(super) fn edit(model: &mut Model, at: &Step, typed: &str) -> Wish {
    let done = is_done(at, &model.screen);
    let what = if done { "correct" } else { "log" };
    let (ask, hint) = match at {
        Step::Set { movement, set, .. } => (
            format!("{what} {movement}, set {set}"),
            "LOAD x REPS rN, such as `60 x 7 r2`: seven at 60 with two left; or only `7`",
        ),
        Step::Window { piece, window, .. } => (
            format!("{what} {piece}, window {window}"),
            "reps and seconds to spare, such as `12 8`; or only `12`",
        ),
        Step::Measure { piece, when, sides: 2 } => (
            format!("{what} {piece}, the reading {} the hold", when.text()),
            "two readings, one a side, such as `10.5 11`",
        ),
        Step::Measure { piece, when, .. } => (
            format!("{what} {piece}, the reading {} the hold", when.text()),
            "one reading, such as `10.5`",
        ),
        Step::Hold { piece, sides, .. } => (
            format!("{what} {piece} by hand"),
            if *sides == 1 {
                "the seconds held, such as `120`; after it why, if short: `60 cramp`"
            } else {
                "the seconds of each side, such as `120 95`; after them why, if short: `120 60 cramp`"
            },
        ),
        Step::Finish => return finish(model),
    };
    model.mode =
        Mode::Typing(Typing { ask, hint: hint.into(), text: typed.into(), then: Then::Line });
    Wish::Nothing
}

/// What a clock's letter does; any other letter says where the keys are.
pub(super) fn clock_act(model: &mut Model, at: &Step, letter: char) -> Wish {
    let (live, paused) = standing(model, at);
    let act = match letter {
        'b' => Act::Begin,
        'p' if paused => Act::Resume,
        'p' => Act::Pause,
        '+' | '=' => Act::Extend,
        'n' => Act::Skip,
        'x' => Act::Stop,
        _ => return model.hint("? shows all keys"),
    };
    if !matches!(at, Step::Window { .. } | Step::Hold { .. }) {
        return model.hint("there is no clock here");
    }
    if !live && act != Act::Begin {
        return model.hint("the clock is not running");
    }
    Wish::Taps(clock(at.name().unwrap_or_default(), act))
}

/// Whether the clock of a row runs, and whether it stands still in that.
pub(super) fn standing(model: &Model, at: &Step) -> (bool, bool) {
    match at.piece(&model.screen) {
        Some(PieceView::Interval { view }) => view.clock.as_ref().map_or((false, false), |clock| {
            let idle = matches!(clock.phase, IntervalPhase::NotBegun | IntervalPhase::Done { .. });
            (!idle, matches!(clock.phase, IntervalPhase::Paused { .. }))
        }),
        Some(PieceView::Hold { view }) => view.clock.as_ref().map_or((false, false), |clock| {
            let idle = matches!(clock.phase, HoldPhase::NotBegun | HoldPhase::Done { .. });
            (!idle, matches!(clock.phase, HoldPhase::Paused { .. }))
        }),
        _ => (false, false),
    }
}

/// True while a side of a hold is held: only then is there something to extend.
fn holding(model: &Model, at: &Step) -> bool {
    let Some(PieceView::Hold { view }) = at.piece(&model.screen) else { return false };
    view.clock.as_ref().is_some_and(|clock| matches!(clock.phase, HoldPhase::Holding { .. }))
}

/// The keys of the day at its row, the most wanted first.
pub(super) fn hints(model: &Model) -> Vec<(String, String)> {
    let at = model.at();
    let screen = &model.screen;
    let one = match next(model, &at) {
        Next::Log(Tap::LogSet { set, .. }) => {
            format!("set {} as planned", set.unwrap_or_default())
        }
        Next::Log(Tap::LogWindow { window, .. }) => {
            format!("window {} as asked", window.unwrap_or_default())
        }
        Next::Log(_) => "log what was held".into(),
        Next::Clock(Act::Begin) => "start the clock".into(),
        Next::Clock(Act::Pause) => "pause".into(),
        Next::Clock(_) => "go on".into(),
        Next::Type if is_done(&at, screen) => "correct".into(),
        Next::Type if matches!(at, Step::Set { .. }) => "say the load".into(),
        Next::Type => "type the reading".into(),
        Next::Wait(_) => "wait".into(),
        Next::Rate => "finish with a rating".into(),
        Next::Leave => "leave".into(),
    };
    let mut keys: Vec<(&str, &str)> = Vec::new();
    let (live, paused) = standing(model, &at);
    if live {
        if matches!(at, Step::Hold { .. }) {
            keys.extend(holding(model, &at).then_some(("+", "15 s more")));
        } else {
            keys.push(("p", if paused { "go on" } else { "pause" }));
        }
        keys.extend([("n", "skip to the next"), ("x", "stop")]);
    }
    if !live && matches!(at.piece(screen), Some(PieceView::Interval { view }) if view.stations > 1)
    {
        keys.push(("w", "start elsewhere"));
    }
    keys.extend([("e", "type it"), ("u", "undo")]);
    let options = match at.piece(screen) {
        Some(PieceView::Strength { view }) => !view.options.is_empty(),
        Some(PieceView::Interval { view }) => !view.options.is_empty(),
        _ => false,
    };
    if options {
        keys.push(("o", "options"));
    }
    if at.name().is_some() {
        keys.push(("d", "discomfort"));
    }
    if !super::flags(at.piece(screen)).is_empty() {
        keys.push(("c", "clear flag"));
    }
    keys.push(("?", "all keys"));
    keys.push(("q", "leave"));
    if !live {
        if at.name().is_some() {
            keys.push(("s", "later"));
        }
        keys.extend([("f", "finish"), ("Up Down", "move")]);
    }
    let one = ("Enter".to_owned(), one);
    std::iter::once(one)
        .chain(keys.into_iter().map(|(key, what)| (key.to_owned(), what.to_owned())))
        .collect()
}
