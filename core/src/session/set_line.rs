//! A set in a line, and what can be typed of it: with loads that the room can build.

use super::key::At;
use super::rows::set_of;
use super::screen::{Question, SetView, StrengthView};
use super::snapshot::Snapshot;
use crate::load::Reason;
use crate::plan::{Builds, PieceKind};
use crate::say::screen as say;
use crate::session::PieceKindView;
use crate::words;

/// The loads that a set can have; none where it has none.
pub(super) fn loads_of(
    snapshot: &Snapshot,
    piece: &str,
    view: &StrengthView,
    shown: &SetView,
) -> Option<Builds> {
    let (block, unit) = (snapshot.block.as_ref()?, snapshot.profile.unit);
    let planned = snapshot.day()?.piece(piece).and_then(|piece| match &piece.kind {
        PieceKind::Strength(strength) => Some(strength),
        _ => None,
    });
    let bar = snapshot.bar(piece);
    let builds = match planned {
        Some(strength) => block.builds_for(strength, &view.exercise, unit, bar),
        None => block.builds(&view.exercise, unit),
    };
    // What is free may be done with no load, where there is nothing to lift.
    let none = shown.reason == Reason::Free && builds.loads().next().is_none();
    let lifted = shown.done.as_ref().and_then(|done| done.load).is_some();
    (!none || lifted).then(|| builds.clone())
}

impl At<'_> {
    pub(super) fn set_line(&self, title: &str, view: &StrengthView, set: u32) -> String {
        let Some(shown) = set_of(view, set) else { return title.to_owned() };
        let Some(load) = &shown.load else {
            let asked = &shown.asked_text;
            return match shown.reason {
                Reason::Free => say::titled(title, asked),
                Reason::Withdrawn { .. } => say::set_withdrawn(title),
                _ => say::set_without_load(title, asked, self.example(view, shown)),
            };
        };
        let change = load.change.as_ref().map(|change| change.text.as_str());
        let plates = load.build.as_ref().map(|build| match change {
            Some(change) => say::build_and_change(&build.text, change),
            None => build.text.clone(),
        });
        words::set_line(title, &load.text, plates.as_deref(), &shown.reps_text)
    }

    /// What can be typed of a set, with one that could be done.
    pub(super) fn set_hint(&self, set: u32, asks: Option<Question>) -> String {
        let Some(PieceKindView::Strength { view }) = self.piece().map(|piece| &piece.kind) else {
            return String::new();
        };
        let Some(shown) = set_of(view, set) else { return String::new() };
        let (typed, reps) = (self.example(view, shown), shown.asked);
        match asks {
            Some(Question::Load) => say::hint_load(typed),
            Some(Question::Reps) => say::hint_reps(reps, typed),
            Some(Question::Reserve) => say::hint_reserve(typed),
            _ => say::hint_set(typed, reps),
        }
    }

    /// A set as it is typed, such as `40 x 8`: with the load that is planned, otherwise the lightest there is.
    fn example(&self, view: &StrengthView, shown: &SetView) -> String {
        let planned = shown.load.as_ref().map(|load| load.mass);
        let lightest = || {
            let piece = self.piece()?;
            let builds = loads_of(self.snapshot, &piece.name, view, shown)?;
            builds.lightest().map(|build| build.mass)
        };
        let reps = shown.asked;
        match planned.or_else(lightest) {
            Some(load) => say::typed_set(load.number(self.snapshot.profile.unit), reps),
            None => reps.to_string(),
        }
    }
}
