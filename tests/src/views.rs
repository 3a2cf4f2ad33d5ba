//! What a screen says: a piece's view, and what checks read from it.

use holdfast_core::Mass;
use holdfast_core::session::{
    HoldView, IntervalView, PieceKindView, PieceView, SessionScreen, StrengthView,
};

/// The first piece of sets.
///
/// # Panics
/// When the day has none.
pub fn strength(screen: &SessionScreen) -> &StrengthView {
    let found = screen.pieces.iter().find_map(|piece| match &piece.kind {
        PieceKindView::Strength { view } => Some(view),
        _ => None,
    });
    found.unwrap()
}

/// The first piece of windows.
///
/// # Panics
/// When the day has none.
pub fn interval(screen: &SessionScreen) -> &IntervalView {
    let found = screen.pieces.iter().find_map(|piece| match &piece.kind {
        PieceKindView::Interval { view } => Some(view),
        _ => None,
    });
    found.unwrap()
}

/// The first hold.
///
/// # Panics
/// When the day has none.
pub fn hold(screen: &SessionScreen) -> &HoldView {
    let found = screen.pieces.iter().find_map(|piece| match &piece.kind {
        PieceKindView::Hold { view } => Some(view),
        _ => None,
    });
    found.unwrap()
}

/// A piece by its name.
///
/// # Panics
/// When the day has none of it.
pub fn piece<'a>(screen: &'a SessionScreen, name: &str) -> &'a PieceView {
    screen.pieces.iter().find(|piece| piece.name == name).unwrap()
}

/// The loads of the first sets.
pub fn loads(screen: &SessionScreen) -> Vec<Option<Mass>> {
    strength(screen).sets.iter().map(|set| Some(set.load.as_ref()?.mass)).collect()
}

/// The same in words; `-` where none is proposed.
pub fn load_texts(screen: &SessionScreen) -> Vec<String> {
    let sets = &strength(screen).sets;
    sets.iter().map(|set| set.load.as_ref().map_or("-".into(), |load| load.text.clone())).collect()
}

/// The reps of the first sets, as far as they are done.
pub fn reps(screen: &SessionScreen) -> Vec<Option<u32>> {
    strength(screen).sets.iter().map(|set| set.done.as_ref().map(|done| done.reps)).collect()
}
