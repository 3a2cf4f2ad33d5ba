//! What a screen says: a piece's view, and what checks read from it.

use holdfast_core::Mass;
use holdfast_core::session::{
    BuildView, ClockView, FlagView, HoldView, IntervalView, LoadView, PieceKindView, PieceView,
    SessionScreen, StrengthView,
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

/// The open flags on the small plan's squats.
///
/// # Panics
/// When the day has none.
pub fn flags(screen: &SessionScreen) -> &[FlagView] {
    &piece(screen, "Squat").flags
}

/// The clock of the first hold.
///
/// # Panics
/// When the day has none, and before its clock is begun.
pub fn hold_clock(screen: &SessionScreen) -> &ClockView {
    hold(screen).clock.as_ref().unwrap()
}

/// What the first hold's clock asks; nothing where it asks nothing, and before it is begun.
///
/// # Panics
/// When the day has none.
pub fn hold_asks(screen: &SessionScreen) -> &str {
    asks(hold(screen).clock.as_ref())
}

/// The clock of the first windows.
///
/// # Panics
/// When the day has none, and before their clock is begun.
pub fn interval_clock(screen: &SessionScreen) -> &ClockView {
    interval(screen).clock.as_ref().unwrap()
}

/// What the first windows' clock asks; nothing where it asks nothing, and before it is begun.
///
/// # Panics
/// When the day has none.
pub fn interval_asks(screen: &SessionScreen) -> &str {
    asks(interval(screen).clock.as_ref())
}

fn asks(clock: Option<&ClockView>) -> &str {
    clock.and_then(|clock| clock.question.as_deref()).unwrap_or_default()
}

/// The build of a load.
///
/// # Panics
/// When there is nothing to build.
pub fn build(load: &LoadView) -> &BuildView {
    load.build.as_ref().unwrap()
}

/// The plates of one side for a load, from the middle of the bar outwards.
///
/// # Panics
/// When there is nothing to build.
pub fn per_side(load: &LoadView) -> Vec<Mass> {
    build(load).plates.iter().map(|plate| plate.mass).collect()
}

/// What to do to each side of the bar for a load, in words; none where nobody knows.
pub fn change(load: &LoadView) -> Option<&str> {
    load.change.as_ref().map(|change| change.text.as_str())
}
