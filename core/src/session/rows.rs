//! Everything on a session screen that can be logged, in order, and which of it comes next.

use super::log::SessionLog;
use super::screen::{
    HoldView, IntervalView, PieceKindView, PieceState, PieceView, Row, SetView, StrengthView,
};
use crate::clock::Phase;
use crate::instant::Millis;
use crate::journal::Part;
use crate::plan::MeasuredWhen;

/// Every row, done or not, the end of the session last.
pub(super) fn rows(pieces: &[PieceView]) -> Vec<Row> {
    let mut rows: Vec<Row> = pieces.iter().flat_map(of_piece).collect();
    rows.push(Row::Finish);
    rows
}

fn of_piece(piece: &PieceView) -> Vec<Row> {
    let name = || piece.name.clone();
    match &piece.kind {
        PieceKindView::Strength { view } => {
            view.sets.iter().map(|set| Row::Set { piece: name(), set: set.set }).collect()
        }
        PieceKindView::Interval { view } => {
            let row = |window: u32| Row::Window { piece: name(), window };
            view.windows.iter().map(|window| row(window.window)).collect()
        }
        PieceKindView::Hold { view } => {
            let measure = |when| view.range.as_ref().map(|_| Row::Measure { piece: name(), when });
            let before = measure(MeasuredWhen::Before);
            let after = measure(MeasuredWhen::After);
            before.into_iter().chain([Row::Hold { piece: name() }]).chain(after).collect()
        }
        PieceKindView::Note { .. } => Vec::new(),
    }
}

/// The row to be at in a piece that is gone to by hand.
pub(super) fn stands_at(piece: &PieceView) -> Option<Row> {
    let rows = of_piece(piece);
    let open = rows.iter().position(|row| !is_done(row, std::slice::from_ref(piece)));
    rows.into_iter().nth(open.unwrap_or(0))
}

/// The piece of a row.
pub(super) fn piece_of<'a>(pieces: &'a [PieceView], row: &Row) -> Option<&'a PieceView> {
    let name = row.piece()?;
    pieces.iter().find(|piece| piece.name == name)
}

/// True when a row is logged.
pub(super) fn is_done(row: &Row, pieces: &[PieceView]) -> bool {
    match (row, piece_of(pieces, row).map(|piece| &piece.kind)) {
        (Row::Set { set, .. }, Some(PieceKindView::Strength { view })) => {
            view.sets.iter().any(|shown| shown.set == *set && shown.done.is_some())
        }
        (Row::Window { window, .. }, Some(PieceKindView::Interval { view })) => {
            view.windows.iter().any(|shown| shown.window == *window && shown.reps.is_some())
        }
        (Row::Hold { .. }, Some(PieceKindView::Hold { view })) => is_held(view),
        (Row::Measure { when, .. }, Some(PieceKindView::Hold { view })) => {
            view.range.as_ref().is_some_and(|range| {
                let read = range.readings.iter().filter(|reading| reading.when == *when).count();
                read >= range.sides as usize
            })
        }
        _ => false,
    }
}

/// The row that comes next by itself. A piece whose clock runs comes before all others: whoever comes
/// back to a session comes back to it. In windows it is the one that runs, while it is not logged.
pub(super) fn follow(pieces: &[PieceView], log: Option<&SessionLog>) -> Row {
    let timed = pieces.iter().filter(|piece| is_timed(piece));
    let row = timed.chain(pieces).find_map(|piece| next_in(piece, log)).unwrap_or(Row::Finish);
    let Some(PieceKindView::Interval { view }) = piece_of(pieces, &row).map(|piece| &piece.kind)
    else {
        return row;
    };
    let running = running_window(view).map(|window| match &row {
        Row::Window { piece, .. } => Row::Window { piece: piece.clone(), window },
        other => other.clone(),
    });
    running.filter(|running| !is_done(running, pieces)).unwrap_or(row)
}

/// The first row of a piece that is neither logged nor put off.
fn next_in(piece: &PieceView, log: Option<&SessionLog>) -> Option<Row> {
    let name = || piece.name.clone();
    // A clock that was begun outlives being put off: its seconds would be out of reach.
    let open = piece.state == PieceState::Todo || is_timed(piece);
    match &piece.kind {
        PieceKindView::Strength { view } if open => {
            Some(Row::Set { piece: name(), set: view.next_set? })
        }
        PieceKindView::Interval { view } if open => {
            Some(Row::Window { piece: name(), window: view.next_window? })
        }
        PieceKindView::Hold { view } => next_in_hold(piece, view, log),
        _ => None,
    }
}

fn next_in_hold(piece: &PieceView, view: &HoldView, log: Option<&SessionLog>) -> Option<Row> {
    let name = || piece.name.clone();
    let put_off = |part| log.is_some_and(|log| log.put_off(&piece.name, part).is_some());
    let measure = |when, part| {
        let range = view.range.as_ref()?;
        let read = range.readings.iter().filter(|reading| reading.when == when).count();
        let due = read < range.sides as usize && !put_off(part);
        due.then(|| Row::Measure { piece: name(), when })
    };
    let (held, to_log) = (is_held(view), is_to_log(view));
    // Once the clock is begun it is too late to measure first.
    let before = if held || to_log { None } else { measure(MeasuredWhen::Before, Part::Before) };
    let hold =
        (!held && (to_log || piece.state == PieceState::Todo)).then(|| Row::Hold { piece: name() });
    // Without a reading before, one after says nothing.
    let first = view
        .range
        .iter()
        .flat_map(|range| &range.readings)
        .any(|reading| reading.when == MeasuredWhen::Before);
    let after = || if first { measure(MeasuredWhen::After, Part::After) } else { None };
    // A piece left because it hurts is left with its measures.
    let left = piece.state == PieceState::Left;
    before.or(hold).or_else(after).filter(|_| !left || to_log)
}

/// True for a piece whose clock runs or stands still, and for a hold whose clock is over and whose
/// seconds wait to be logged.
pub(super) fn is_timed(piece: &PieceView) -> bool {
    match &piece.kind {
        PieceKindView::Interval { view } => {
            view.clock.as_ref().is_some_and(|clock| clock.phase != Phase::Done)
        }
        PieceKindView::Hold { view } => is_to_log(view),
        PieceKindView::Strength { .. } | PieceKindView::Note { .. } => false,
    }
}

/// True for a hold whose clock was begun and whose seconds are not logged. One that was stopped before
/// anything was held is as if it had not been begun.
pub(super) fn is_to_log(view: &HoldView) -> bool {
    let begun = view.clock.as_ref().is_some_and(|clock| match clock.phase {
        Phase::Done => clock.held.iter().any(|held| *held > Millis(0)),
        _ => true,
    });
    begun && !is_held(view)
}

/// True when a side of a hold is logged.
pub(super) fn is_held(view: &HoldView) -> bool {
    view.sides.iter().any(|side| side.held.is_some())
}

/// The window that runs by the clock.
pub(super) fn running_window(view: &IntervalView) -> Option<u32> {
    let clock = view.clock.as_ref()?;
    (clock.phase == Phase::Window && !clock.paused).then_some(clock.turn)
}

/// A set of a strength piece.
pub(super) fn set_of(view: &StrengthView, set: u32) -> Option<&SetView> {
    view.sets.iter().find(|shown| shown.set == set)
}
