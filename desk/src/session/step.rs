//! What comes next on a session screen.

use holdfast_core::RecordId;
use holdfast_core::clock::{During, HoldPhase, HoldState, IntervalPhase, IntervalState, Trust};
use holdfast_core::companion::{HoldView, IntervalView, PieceView, SessionScreen};
use holdfast_core::plan::MeasuredWhen;

use crate::print;

/// The next thing to log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Step {
    /// A set.
    Set { piece: String, movement: String, set: u32, options: Vec<(String, String)> },
    /// A window.
    Window { piece: String, window: u32, movement: String, options: Vec<(String, String)> },
    /// A measure before or after a hold.
    Measure { piece: String, when: MeasuredWhen, sides: u32 },
    /// A hold.
    Hold { piece: String, sides: u32, clock: bool },
    /// Nothing is left.
    Finish,
}

/// What the athlete passed over.
#[derive(Default)]
pub(crate) struct Skipped {
    steps: Vec<(String, &'static str)>,
}

impl Skipped {
    /// Passes over the rest of a step's piece, or its measure.
    pub(crate) fn add(&mut self, step: &Step) {
        if let Some(key) = step.key() {
            self.steps.push(key);
        }
    }

    /// True when this part of a piece was passed over.
    pub(crate) fn has(&self, piece: &str, part: &'static str) -> bool {
        self.steps.iter().any(|(skipped, of)| skipped == piece && *of == part)
    }
}

impl Step {
    /// The piece's name.
    pub(crate) fn name(&self) -> Option<&str> {
        match self {
            Step::Set { piece, .. }
            | Step::Window { piece, .. }
            | Step::Measure { piece, .. }
            | Step::Hold { piece, .. } => Some(piece),
            Step::Finish => None,
        }
    }

    /// The piece on screen.
    pub(crate) fn piece<'a>(&self, screen: &'a SessionScreen) -> Option<&'a PieceView> {
        let name = self.name()?;
        screen.pieces.iter().find(|piece| match piece {
            PieceView::Strength { view } => view.name == name,
            PieceView::Interval { view } => view.name == name,
            PieceView::Hold { view } => view.name == name,
            PieceView::Note { .. } => false,
        })
    }

    /// Open flags on the step's piece.
    pub(crate) fn flags(&self, screen: &SessionScreen) -> Vec<RecordId> {
        let flags = self.piece(screen).map_or(&[][..], |piece| match piece {
            PieceView::Strength { view } => &view.flags,
            PieceView::Interval { view } => &view.flags,
            PieceView::Hold { view } => &view.flags,
            PieceView::Note { .. } => &[],
        });
        flags.iter().map(|flag| flag.flag).collect()
    }

    fn key(&self) -> Option<(String, &'static str)> {
        let part = match self {
            Step::Measure { when: MeasuredWhen::Before, .. } => "before",
            Step::Measure { when: MeasuredWhen::After, .. } => "after",
            _ => "work",
        };
        Some((self.name()?.to_owned(), part))
    }
}

/// The first thing on the screen that is neither logged nor passed over. A piece whose clock runs comes
/// before all others: whoever comes back to a session comes back to it.
fn next(screen: &SessionScreen, skipped: &Skipped) -> Step {
    let timed = screen.pieces.iter().filter(|piece| is_timed(piece));
    let step = timed.chain(&screen.pieces).find_map(|piece| of_piece(piece, skipped));
    step.unwrap_or(Step::Finish)
}

/// What comes next by itself: the window that runs, where one does and is not logged yet; otherwise
/// the first thing that is neither logged nor passed over.
pub(crate) fn follow(screen: &SessionScreen, skipped: &Skipped) -> Step {
    let step = next(screen, skipped);
    let Some(PieceView::Interval { view }) = step.piece(screen) else { return step };
    let running = running_window(view)
        .filter(|running| view.windows.iter().any(|it| it.window == *running && it.reps.is_none()));
    running.and_then(|running| window_row(view, running)).unwrap_or(step)
}

/// The window that runs by the clock.
pub(crate) fn running_window(view: &IntervalView) -> Option<u32> {
    match view.clock.as_ref()?.phase {
        IntervalPhase::Window { window, .. } => Some(window),
        _ => None,
    }
}

/// A window as a step.
pub(crate) fn window_row(view: &IntervalView, window: u32) -> Option<Step> {
    let shown = view.windows.iter().find(|it| it.window == window)?;
    Some(Step::Window {
        piece: view.name.clone(),
        window,
        movement: shown.key.clone(),
        options: view.options.iter().map(|it| (it.movement.clone(), it.key.clone())).collect(),
    })
}

/// What to do instead, where a piece cannot be passed over: a clock that runs on, or seconds that wait
/// to be logged, would be out of reach.
pub(crate) fn stays(screen: &SessionScreen, step: &Step) -> Option<&'static str> {
    match step.piece(screen)? {
        PieceView::Hold { view } if is_to_log(view) => {
            let over = |clock: &HoldState| matches!(clock.phase, HoldPhase::Done { .. });
            Some(match view.clock.as_ref().is_some_and(over) {
                true => "its seconds wait to be logged: Enter logs what was held",
                false => "its clock runs: `next` goes to the next side, `stop` ends it",
            })
        }
        piece @ PieceView::Interval { .. } if is_timed(piece) => {
            Some("its clock runs: `next` goes to the next window, `stop` ends it")
        }
        _ => None,
    }
}

/// Why the window at hand cannot have been done as asked yet: the first has not come, or the one that
/// runs is logged.
pub(crate) fn not_yet(screen: &SessionScreen, step: &Step) -> Option<String> {
    let (Step::Window { window, .. }, Some(PieceView::Interval { view })) =
        (step, step.piece(screen))
    else {
        return None;
    };
    match view.clock.as_ref()?.phase {
        IntervalPhase::Ready { .. } => Some("get ready: the first window comes".into()),
        IntervalPhase::Window { window: running, .. } if running != *window => Some(format!(
            "window {running} is logged; the next one comes. `window {window}` logs that one as asked"
        )),
        _ => None,
    }
}

/// True for a piece whose clock runs or stands still, and for a hold whose clock is over and whose
/// seconds wait to be logged.
fn is_timed(piece: &PieceView) -> bool {
    match piece {
        PieceView::Interval { view } => view.clock.as_ref().is_some_and(|clock| {
            !matches!(clock.phase, IntervalPhase::NotBegun | IntervalPhase::Done { .. })
        }),
        PieceView::Hold { view } => is_to_log(view),
        _ => false,
    }
}

/// True for a hold whose clock was begun and whose seconds are not logged. One that was stopped before
/// anything was held is as if it had not been begun.
pub(crate) fn is_to_log(view: &HoldView) -> bool {
    let begun = view.clock.as_ref().is_some_and(|clock| match clock.phase {
        HoldPhase::NotBegun => false,
        HoldPhase::Done { .. } => clock.held_ms.iter().any(|ms| *ms > 0),
        _ => true,
    });
    begun && view.sides.iter().all(|side| side.held_ms.is_none())
}

fn of_piece(piece: &PieceView, skipped: &Skipped) -> Option<Step> {
    match piece {
        PieceView::Strength { view } if !skipped.has(&view.name, "work") => Some(Step::Set {
            piece: view.name.clone(),
            movement: view.movement.clone(),
            set: view.next_set?,
            options: view.options.iter().map(|it| (it.movement.clone(), it.key.clone())).collect(),
        }),
        PieceView::Interval { view } if !skipped.has(&view.name, "work") => Some(Step::Window {
            piece: view.name.clone(),
            window: view.next_window?,
            movement: view
                .windows
                .iter()
                .find(|it| Some(it.window) == view.next_window)?
                .key
                .clone(),
            options: view.options.iter().map(|it| (it.movement.clone(), it.key.clone())).collect(),
        }),
        PieceView::Hold { view } => of_hold(view, skipped),
        _ => None,
    }
}

fn of_hold(view: &HoldView, skipped: &Skipped) -> Option<Step> {
    // One side logged is a hold ended early; both sides are not asked for again.
    let held = view.sides.iter().any(|side| side.held_ms.is_some());
    let measure = |when, part| {
        let range = view.range.as_ref()?;
        let read = range.readings.iter().filter(|reading| reading.when == when).count();
        let due = read < range.sides as usize && !skipped.has(&view.name, part);
        due.then(|| Step::Measure { piece: view.name.clone(), when, sides: range.sides })
    };
    // Once the clock is begun it is too late to measure first.
    let late = held || is_to_log(view);
    let before = if late { None } else { measure(MeasuredWhen::Before, "before") };
    let hold = || {
        let due = !held && !skipped.has(&view.name, "work");
        let sides = view.sides.len() as u32;
        due.then(|| Step::Hold { piece: view.name.clone(), sides, clock: is_to_log(view) })
    };
    // Without a reading before, one after says nothing.
    let first = view
        .range
        .iter()
        .flat_map(|range| &range.readings)
        .any(|it| it.when == MeasuredWhen::Before);
    before
        .or_else(hold)
        .or_else(|| if first { measure(MeasuredWhen::After, "after") } else { None })
}

/// A hold's clock in a few words.
pub(crate) fn hold_text(state: &HoldState) -> String {
    let left = |ms: i64| format!("{} s left", (ms + 999) / 1000);
    match &state.phase {
        HoldPhase::NotBegun => "not begun".into(),
        HoldPhase::Ready { left_ms } => format!("get ready, {}", left(*left_ms)),
        HoldPhase::Holding { side, left_ms, push } => {
            let push = if *push { ", contract" } else { "" };
            format!("side {side}, {}{push}", left(*left_ms))
        }
        HoldPhase::Switching { to_side, left_ms } => {
            format!("change to side {to_side}, {}", left(*left_ms))
        }
        HoldPhase::Paused { during: During::Switch, side, left_ms } => {
            format!("paused, change to side {side}, {}", left(*left_ms))
        }
        HoldPhase::Paused { side, left_ms, .. } => {
            format!("paused, side {side}, {}", left(*left_ms))
        }
        HoldPhase::Done { ago_ms, .. } => ended(*ago_ms, state.trust),
    }
}

/// An interval's clock in a few words.
pub(crate) fn interval_text(state: &IntervalState) -> String {
    let left = |ms: i64| format!("{} s left", (ms + 999) / 1000);
    match &state.phase {
        IntervalPhase::NotBegun => "not begun".into(),
        IntervalPhase::Ready { left_ms } => format!("get ready, {}", left(*left_ms)),
        IntervalPhase::Window { window, left_ms } => format!("window {window}, {}", left(*left_ms)),
        IntervalPhase::Paused { window, left_ms, .. } => {
            format!("paused, window {window}, {}", left(*left_ms))
        }
        IntervalPhase::Done { ago_ms, .. } => ended(*ago_ms, state.trust),
    }
}

/// `ended 10 h 55 min ago`; without a time where that is not known.
fn ended(ago_ms: i64, trust: Trust) -> String {
    match trust {
        Trust::Unknown => "ended".into(),
        _ => format!("ended {}", print::ago(ago_ms)),
    }
}
