//! Everything on a session screen that can be logged, in order.

use holdfast_core::companion::{HoldView, PieceView, SessionScreen, StrengthView};
use holdfast_core::plan::MeasuredWhen;

use crate::session::step::{Step, window_row};

/// Every row, done or not, the end of the session last.
pub(super) fn rows(screen: &SessionScreen) -> Vec<Step> {
    let mut rows: Vec<Step> = screen.pieces.iter().flat_map(of_piece).collect();
    rows.push(Step::Finish);
    rows
}

fn of_piece(piece: &PieceView) -> Vec<Step> {
    match piece {
        PieceView::Strength { view } => {
            view.sets.iter().map(|set| set_row(view, set.set)).collect()
        }
        PieceView::Interval { view } => {
            view.windows.iter().filter_map(|it| window_row(view, it.window)).collect()
        }
        PieceView::Hold { view } => {
            let sides = view.sides.len() as u32;
            let clock = view.clock.is_some();
            let hold = Step::Hold { piece: view.name.clone(), sides, clock };
            let measure = |when| {
                let sides = view.range.as_ref()?.sides;
                Some(Step::Measure { piece: view.name.clone(), when, sides })
            };
            let before = measure(MeasuredWhen::Before);
            let after = measure(MeasuredWhen::After);
            before.into_iter().chain([hold]).chain(after).collect()
        }
        PieceView::Note { .. } => Vec::new(),
    }
}

fn set_row(view: &StrengthView, set: u32) -> Step {
    Step::Set {
        piece: view.name.clone(),
        movement: view.movement.clone(),
        set,
        options: view.options.iter().map(|it| (it.movement.clone(), it.key.clone())).collect(),
    }
}

/// True when two rows are the same place, whatever has changed about it.
pub(super) fn same_place(one: &Step, other: &Step) -> bool {
    match (one, other) {
        (Step::Set { piece: a, set: m, .. }, Step::Set { piece: b, set: n, .. })
        | (Step::Window { piece: a, window: m, .. }, Step::Window { piece: b, window: n, .. }) => {
            a == b && m == n
        }
        (Step::Measure { piece: a, when: m, .. }, Step::Measure { piece: b, when: n, .. }) => {
            a == b && m == n
        }
        (Step::Hold { piece: a, .. }, Step::Hold { piece: b, .. }) => a == b,
        (Step::Finish, Step::Finish) => true,
        _ => false,
    }
}

/// True when a row is logged.
pub(super) fn is_done(step: &Step, screen: &SessionScreen) -> bool {
    match (step, step.piece(screen)) {
        (Step::Set { set, .. }, Some(PieceView::Strength { view })) => {
            view.sets.iter().any(|it| it.set == *set && it.done.is_some())
        }
        (Step::Window { window, .. }, Some(PieceView::Interval { view })) => {
            view.windows.iter().any(|it| it.window == *window && it.reps.is_some())
        }
        (Step::Hold { .. }, Some(PieceView::Hold { view })) => hold_done(view),
        (Step::Measure { when, sides, .. }, Some(PieceView::Hold { view })) => {
            let readings = view.range.iter().flat_map(|range| &range.readings);
            readings.filter(|it| it.when == *when).count() >= *sides as usize
        }
        _ => false,
    }
}

/// True when a side of a hold is logged.
pub(super) fn hold_done(view: &HoldView) -> bool {
    view.sides.iter().any(|side| side.held_ms.is_some())
}
