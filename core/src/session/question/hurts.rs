//! Where and how much it hurts, and whether there is a sign of an emergency.

use super::Of;
use super::fields::{Answers, Choice, ChoiceShape, QuestionField, QuestionScreen, QuestionSign};
use super::keys::{saves, waits};
use crate::care::{Felt, Place, STOP_FROM, Sign, advice_for};
use crate::plan::Exercise;
use crate::say::question as say;
use crate::session::{Key, PieceKindView, Row, SessionState, Tap};
use crate::words;

impl Of<'_> {
    pub(super) fn hurts(&self, row: Option<&Row>, answers: Answers) -> Option<QuestionScreen> {
        let of = self.about(row);
        let key = self.hurts_key(row, &of, &answers);
        let fields = match answers.asks_signs {
            true => vec![signs(&answers)],
            false => vec![places(&answers), severity(&answers), ask_for_signs(&answers)],
        };
        Some(QuestionScreen {
            title: if answers.asks_signs { say::which_signs() } else { say::where_hurts() }.into(),
            about: of.map(|(name, _)| name),
            sign: Some(QuestionSign::Pain),
            fields,
            key,
        })
    }

    /// What is done in a row: its name, and the key of the movement.
    fn about(&self, row: Option<&Row>) -> Option<(String, Option<String>)> {
        let row = row?;
        let of = |exercise: &Exercise, name: &str| {
            Some((name.to_owned(), Some(exercise.movement.clone())))
        };
        match (self.kind(row.piece()?)?, row) {
            (PieceKindView::Strength { view }, _) => of(&view.exercise, &view.movement),
            (PieceKindView::Interval { view }, Row::Window { window, .. }) => {
                let shown = view.windows.iter().find(|shown| shown.window == *window)?;
                of(&shown.exercise, &shown.movement)
            }
            (PieceKindView::Hold { view }, _) => Some((view.stretch.clone(), None)),
            _ => None,
        }
    }

    fn hurts_key(
        &self,
        row: Option<&Row>,
        of: &Option<(String, Option<String>)>,
        answers: &Answers,
    ) -> Key {
        let Some(place) = answers.place else { return waits(say::choose_place()) };
        let Some(severity) = answers.severity else { return waits(say::choose_severity()) };
        let signs = answers.signs.clone();
        let felt = if of.is_some() { Felt::Here } else { Felt::Unnamed };
        let advice = advice_for(place, severity, &signs, felt);
        let piece = row.and_then(Row::piece);
        let running = self.screen.state == SessionState::Running && !self.screen.afterwards;
        let movement = of.as_ref().and_then(|(_, movement)| movement.clone());
        let tap = match piece.filter(|_| running) {
            Some(piece) => Tap::Flag { piece: piece.to_owned(), movement, place, severity, signs },
            None => Tap::FlagBetween { movement, place, severity, signs, on: None },
        };
        let words = say::save_flag(words::place(place), severity);
        saves(words, advice.lines.first().cloned(), tap)
    }
}

fn places(answers: &Answers) -> QuestionField {
    let choice = |place: &Place| {
        let then = Answers { place: Some(*place), ..answers.clone() };
        Choice::new(words::place(*place), answers.place == Some(*place), then)
    };
    let choices = Place::ALL.iter().map(choice).collect();
    QuestionField::Choices { label: None, shape: ChoiceShape::Words, choices, notes: Vec::new() }
}

fn severity(answers: &Answers) -> QuestionField {
    let then = |severity| Answers { severity: Some(severity), ..answers.clone() };
    let label = Some(say::how_bad().to_owned());
    let mut field = QuestionField::numbers(label, 1..=10, answers.severity, then);
    if let QuestionField::Choices { choices, notes, .. } = &mut field {
        for (choice, severity) in choices.iter_mut().zip(1..) {
            choice.care = severity >= STOP_FROM;
        }
        *notes = vec![say::loads_stay(STOP_FROM - 1), say::movement_stops(STOP_FROM)];
    }
    field
}

fn ask_for_signs(answers: &Answers) -> QuestionField {
    let ticked: Vec<String> =
        answers.signs.iter().map(|sign| words::sign(*sign).to_owned()).collect();
    let choice = Choice {
        words: say::any_signs().into(),
        more: if ticked.is_empty() { Vec::new() } else { vec![words::list(&ticked)] },
        chosen: !ticked.is_empty(),
        care: true,
        then: Answers { asks_signs: true, ..answers.clone() },
    };
    QuestionField::rows(vec![choice])
}

/// The signs, each ticked or not, and the way back.
fn signs(answers: &Answers) -> QuestionField {
    let choice = |sign: &Sign| {
        let ticked = answers.signs.contains(sign);
        let mut signs = answers.signs.clone();
        match ticked {
            true => signs.retain(|other| other != sign),
            false => signs.push(*sign),
        }
        Choice {
            care: true,
            ..Choice::new(words::sign(*sign), ticked, Answers { signs, ..answers.clone() })
        }
    };
    let back = Answers { asks_signs: false, ..answers.clone() };
    let words = if answers.signs.is_empty() { say::none_of_these() } else { say::back_to_place() };
    let back = Choice::new(words, false, back);
    QuestionField::rows(Sign::ASKED.iter().map(choice).chain([back]).collect())
}
