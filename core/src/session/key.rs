//! What the one key does at a row: what is planned, what a clock or a rest asks for, or, where somebody
//! hurts, what care asks for first.

use super::rows::{is_done, is_timed, piece_of, running_window, set_of};
use super::screen::{
    HoldView, IntervalView, Key, KeyKind, PieceKindView, PieceView, Question, RestView, Row,
    SessionState, StrengthView,
};
use super::snapshot::Snapshot;
use super::tap::Tap;
use crate::clock::{Act, Phase};
use crate::history::stops;
use crate::instant::Millis;
use crate::journal::{Part, RestAct, Until};
use crate::load::Reason;
use crate::plan::{Exercise, PieceKind};
use crate::words::{self, KeyFor};

/// What a key is worked out from.
pub(super) struct At<'a> {
    pub(super) snapshot: &'a Snapshot,
    pub(super) pieces: &'a [PieceView],
    pub(super) rest: Option<&'a RestView>,
    /// None before the session is begun.
    pub(super) row: Option<&'a Row>,
    /// True when the row was chosen by hand.
    pub(super) chosen: bool,
    /// The row of what was saved last, where that is asked about.
    pub(super) asked: Option<&'a Row>,
}

pub(super) fn key(of: KeyFor<'_>, kind: KeyKind, tap: Option<Tap>, asks: Option<Question>) -> Key {
    Key { kind, words: words::key(&of), more: words::key_more(&of), tap, asks }
}

fn saves(of: KeyFor<'_>, tap: Tap) -> Key {
    key(of, KeyKind::Saves, Some(tap), None)
}

pub(super) fn moves(of: KeyFor<'_>, tap: Tap) -> Key {
    key(of, KeyKind::Moves, Some(tap), None)
}

fn asks(of: KeyFor<'_>, question: Question) -> Key {
    key(of, KeyKind::Waits, None, Some(question))
}

pub(super) fn waits(of: KeyFor<'_>) -> Key {
    key(of, KeyKind::Waits, None, None)
}

fn clock(piece: &str, act: Act) -> Key {
    let tap = Tap::Clock { piece: piece.to_owned(), act, station: None };
    moves(KeyFor::Clock(act), tap)
}

impl At<'_> {
    /// The one key.
    pub(super) fn key(&self) -> Key {
        let day = self.snapshot.day().map_or("", |day| day.name.as_str());
        match self.snapshot.state {
            SessionState::NoPlan => waits(KeyFor::NoPlan),
            SessionState::DayOff => asks(KeyFor::DayOff, Question::Day),
            SessionState::Ready => {
                moves(KeyFor::Begin(day), Tap::Begin { day: Some(day.to_owned()) })
            }
            SessionState::Running => self.running(),
            // What nobody did is logged by no key any more; what was logged can be corrected.
            SessionState::Finished => match self.row {
                Some(row) if self.chosen && is_done(row, self.pieces) => {
                    asks(KeyFor::Correct, Question::Correction)
                }
                _ if self.is_emergency() => key(KeyFor::FinishedInNeed, KeyKind::Care, None, None),
                _ => key(KeyFor::Finished, KeyKind::Moves, None, None),
            },
        }
    }

    /// True while a flag with an emergency sign is open.
    fn is_emergency(&self) -> bool {
        self.snapshot.flags.open.iter().any(|flag| !flag.body.signs.is_empty())
    }

    fn running(&self) -> Key {
        let finish = || Tap::Finish { rpe: None, minutes: None };
        if self.is_emergency() {
            return key(KeyFor::Emergency, KeyKind::Care, Some(finish()), None);
        }
        let Some(row) = self.row else { return waits(KeyFor::NoPlan) };
        if is_done(row, self.pieces) {
            return asks(KeyFor::Correct, Question::Correction);
        }
        let piece = piece_of(self.pieces, row);
        if let Some(hurt) = piece.and_then(|piece| self.hurt(row, piece)) {
            return hurt;
        }
        match (row, piece.map(|piece| &piece.kind)) {
            (Row::Set { piece, set }, Some(PieceKindView::Strength { view })) => {
                self.set(piece, view, *set)
            }
            (Row::Window { piece, window }, Some(PieceKindView::Interval { view })) => {
                self.window(piece, view, *window)
            }
            (Row::Hold { piece }, Some(PieceKindView::Hold { view })) => {
                let afterwards = self.snapshot.is_afterwards();
                hold_afterwards(piece, view)
                    .filter(|_| afterwards)
                    .unwrap_or_else(|| hold(piece, view))
            }
            (Row::Measure { .. }, _) => asks(KeyFor::Range, Question::Range),
            _ => asks(KeyFor::Finish, Question::Rpe),
        }
    }

    /// With pain from which the movement itself should stop, the key leaves it; a clock that runs is
    /// stopped first.
    fn hurt(&self, row: &Row, piece: &PieceView) -> Option<Key> {
        let exercise = self.exercise(row, piece)?;
        let flags = self.snapshot.flags_for_loads();
        let block = self.snapshot.block.as_ref()?;
        flags.open.iter().find(|flag| stops(&flag.body, &exercise, block))?;
        let name = block.name_of(&exercise);
        let runs = is_timed(piece);
        let tap = if runs {
            Tap::Clock { piece: piece.name.clone(), act: Act::Stop, station: None }
        } else {
            Tap::PutOff { piece: piece.name.clone(), part: Part::Work, until: Until::Left }
        };
        // What a clock has counted by its end is saved, whatever hurts.
        let over = match &piece.kind {
            PieceKindView::Hold { view } => {
                view.clock.as_ref().is_some_and(|clock| clock.phase == Phase::Done) && runs
            }
            _ => false,
        };
        // The words say what this press does: it stops the clock, or leaves all of the piece.
        let name = if matches!(row, Row::Window { .. }) { piece.name.clone() } else { name };
        let of = if runs { KeyFor::Stop(&name) } else { KeyFor::Leave(&name) };
        (!over).then(|| key(of, KeyKind::Care, Some(tap), None))
    }

    /// What is done in a row.
    pub(super) fn exercise(&self, row: &Row, piece: &PieceView) -> Option<Exercise> {
        match (&piece.kind, row) {
            (PieceKindView::Strength { view }, _) => Some(view.exercise.clone()),
            (PieceKindView::Interval { view }, Row::Window { window, .. }) => {
                let shown = view.windows.iter().find(|shown| shown.window == *window)?;
                Some(shown.exercise.clone())
            }
            (PieceKindView::Hold { .. }, _) => {
                let day = self.snapshot.day()?;
                let PieceKind::Hold(hold) = &day.piece(&piece.name)?.kind else { return None };
                Some(Exercise::of(&hold.stretch))
            }
            _ => None,
        }
    }

    fn set(&self, piece: &str, view: &StrengthView, set: u32) -> Key {
        let Some(shown) = set_of(view, set) else { return waits(KeyFor::NoPlan) };
        let what = shown.asked_text.as_str();
        // Nobody lifts while they rest, wherever they look: the key ends the rest first.
        if self.rest.is_some_and(|rest| rest.left.is_some_and(|left| left > Millis(0))) {
            return moves(KeyFor::Rest { set, what }, Tap::Rest { act: RestAct::End });
        }
        let known = shown.load.is_some() || shown.reason == Reason::Free;
        if !known {
            return asks(KeyFor::Load, Question::Load);
        }
        if shown.open {
            return asks(KeyFor::Reps(what), Question::Reps);
        }
        if shown.reason.is_first_time() {
            let last = view.sets.iter().filter(|other| !other.extra).all(|other| other.set <= set);
            return asks(KeyFor::Reserve { what, last }, Question::Reserve);
        }
        let tap = Tap::LogSet {
            piece: piece.to_owned(),
            set: Some(set),
            load: None,
            reps: None,
            reserve: None,
        };
        saves(KeyFor::Set { what, set, rests: !self.snapshot.is_afterwards() }, tap)
    }

    fn window(&self, piece: &str, view: &IntervalView, window: u32) -> Key {
        let shown = view.windows.iter().find(|shown| shown.window == window);
        let what = shown.map_or("", |shown| shown.asked_text.as_str());
        let tap = Tap::LogWindow {
            piece: piece.to_owned(),
            window: Some(window),
            reps: None,
            spare: None,
        };
        let log = || saves(KeyFor::Window { what, window }, tap.clone());
        let logged = view.windows.iter().any(|window| window.reps.is_some());
        let Some(clock_view) = &view.clock else {
            // Windows done without the clock are logged one after the other.
            return if logged || self.snapshot.is_afterwards() {
                log()
            } else {
                clock(piece, Act::Begin)
            };
        };
        match (clock_view.phase, clock_view.paused) {
            (_, true) => clock(piece, Act::Resume),
            (Phase::Ready, _) => waits(KeyFor::WindowToCome(None)),
            (Phase::Window, _) => match running_window(view) {
                // One that was forgotten is logged when it is chosen by hand.
                Some(running) if running < window || (running > window && !self.chosen) => {
                    waits(KeyFor::WindowToCome(Some(running)))
                }
                _ => log(),
            },
            _ => log(),
        }
    }
}

/// Without a clock a hold is saved as it was planned.
fn hold_afterwards(piece: &str, view: &HoldView) -> Option<Key> {
    if view.clock.is_some() {
        return None;
    }
    let held = vec![view.hold; view.sides.len()];
    let words: Vec<String> = held.iter().map(|held| words::clock_time(held.0)).collect();
    let tap = Tap::LogHold { piece: piece.to_owned(), held, said: None };
    Some(saves(KeyFor::HeldAsPlanned(&words::list(&words)), tap))
}

fn hold(piece: &str, view: &HoldView) -> Key {
    let Some(clock_view) = &view.clock else { return clock(piece, Act::Begin) };
    match (clock_view.phase, clock_view.paused) {
        (_, true) => clock(piece, Act::Resume),
        // Stopped before anything was held: from the start.
        (Phase::Done, _) if clock_view.held.iter().all(|held| *held == Millis(0)) => {
            clock(piece, Act::Begin)
        }
        (Phase::Done, _) => {
            let held: Vec<String> =
                clock_view.held.iter().map(|held| words::clock_time(held.0)).collect();
            let tap = Tap::LogHold { piece: piece.to_owned(), held: Vec::new(), said: None };
            saves(KeyFor::Held(&words::list(&held)), tap)
        }
        _ => clock(piece, Act::Pause),
    }
}
