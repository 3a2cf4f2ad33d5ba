//! What a clock did not log: a window by hand, and the seconds of a hold.

use super::super::key;
use super::super::rows::running_window;
use super::Of;
use super::fields::{Answers, Choice, QuestionField, QuestionScreen};
use super::keys::saves;
use crate::clock::Phase;
use crate::instant::Millis;
use crate::say::question as say;
use crate::session::{IntervalView, Key, PieceKindView, Tap};
use crate::words::{self, KeyFor};

const MOST_REPS: u32 = 200;
/// A step of the time to spare.
const SPARE_MS: i64 = 1_000;
/// A step of the time held.
const HELD_MS: i64 = 5_000;

impl Of<'_> {
    pub(super) fn window(
        &self,
        piece: &str,
        window: u32,
        answers: Answers,
    ) -> Option<QuestionScreen> {
        let PieceKindView::Interval { view } = self.kind(piece)? else { return None };
        let shown = view.windows.iter().find(|shown| shown.window == window)?;
        let reps = answers.reps.or(shown.reps).unwrap_or(shown.asked);
        let spare = answers.spare.or(shown.spare);
        let answers = Answers { reps: Some(reps), spare, ..answers };
        let then = |reps| Answers { reps: Some(reps), ..answers.clone() };
        let to = |spare: i64| {
            let then = || Answers { spare: Some(Millis(spare)), ..answers.clone() };
            (0..=view.window.0)
                .contains(&spare)
                .then(|| Choice::new(words::digits(spare), false, then()))
        };
        let stands = spare.map_or(0, |spare| spare.0);
        let fields = vec![
            QuestionField::count(say::good_reps().into(), (reps, 0..=MOST_REPS), then),
            QuestionField::Stepper {
                label: say::to_spare().into(),
                value: spare.map(|spare| words::digits(spare.0)),
                unit: None,
                less: spare.and_then(|_| to(stands - SPARE_MS)),
                more: to(spare.map_or(view.margin.0, |_| stands + SPARE_MS)),
                typed: None,
            },
        ];
        let to_come = shown.reps.is_none().then(|| to_come(view, window)).flatten();
        let key = to_come.unwrap_or_else(|| {
            let more = match shown.reps {
                Some(_) => say::corrects_window(window),
                None => crate::say::key::saves_window(window),
            };
            let (piece, window, reps) = (piece.to_owned(), Some(window), Some(reps));
            let tap = Tap::LogWindow { piece, window, reps, spare };
            saves(say::save_reps(reps.unwrap_or_default()), Some(more), tap)
        });
        let title = say::what_did_you_do().to_owned();
        Some(QuestionScreen { title, about: Some(shown.movement.clone()), sign: None, fields, key })
    }

    pub(super) fn hold(&self, piece: &str, answers: Answers) -> Option<QuestionScreen> {
        let PieceKindView::Hold { view } = self.kind(piece)? else { return None };
        let held: Vec<Millis> = (view.sides.iter().zip(0..))
            .map(|(side, at)| answers.held.get(at).copied().or(side.held).unwrap_or(view.hold))
            .collect();
        let fields = (view.sides.iter().zip(0..)).map(|(side, at): (_, usize)| {
            let Millis(value) = held[at];
            let to = |next: i64| {
                let mut held = held.clone();
                held[at] = Millis(next);
                let then = Answers { held, ..answers.clone() };
                (next >= 0).then(|| Choice::new(words::digits(next), false, then))
            };
            QuestionField::Stepper {
                label: side.name.clone().unwrap_or_else(|| say::held().into()),
                value: Some(words::digits(value)),
                unit: None,
                less: to(value - HELD_MS),
                more: to(value + HELD_MS),
                typed: None,
            }
        });
        let fields = fields.collect();
        let said: Vec<String> = held.iter().map(|held| words::clock_time(held.0)).collect();
        let tap = Tap::LogHold { piece: piece.to_owned(), held, said: None };
        let key = saves(crate::say::key::save_held(words::list(&said)), None, tap);
        let title = say::how_long_held().to_owned();
        Some(QuestionScreen { title, about: Some(view.stretch.clone()), sign: None, fields, key })
    }
}

/// While a clock runs a window that has not begun is not logged.
fn to_come(view: &IntervalView, window: u32) -> Option<Key> {
    let clock = view.clock.as_ref().filter(|clock| clock.phase != Phase::Done)?;
    let running = running_window(view).filter(|_| clock.phase == Phase::Window);
    let to_come = running.is_none_or(|running| running < window);
    to_come.then(|| key::waits(KeyFor::WindowToCome(running)))
}
