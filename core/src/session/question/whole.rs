//! What is about a session as a whole: its end, its day, where to start, what to lift with.

use super::super::here::can_start_elsewhere;
use super::super::key;
use super::Of;
use super::fields::{Answers, Choice, QuestionField, QuestionScreen};
use super::keys::{saves, waits};
use crate::clock::Act;
use crate::say::question as say;
use crate::session::{Key, PieceKindView, SessionState, Tap};
use crate::words::KeyFor;

/// A step of minutes, and where it begins.
const MINUTES: (u32, u32) = (5, 60);
const MOST_MINUTES: u32 = 600;

impl Of<'_> {
    pub(super) fn finish(&self, answers: Answers) -> Option<QuestionScreen> {
        if !matches!(self.screen.state, SessionState::Running | SessionState::Finished) {
            return None;
        }
        let then = |rpe| Answers { rpe: Some(rpe), ..answers.clone() };
        let mut scale = QuestionField::numbers(None, 0..=10, answers.rpe, then);
        if let QuestionField::Choices { notes, .. } = &mut scale {
            *notes = vec![say::rest_end().into(), say::hardest_end().into()];
        }
        let mut fields = vec![scale];
        // How long it took is counted, but for what is written afterwards.
        if self.screen.afterwards {
            let (step, usual) = MINUTES;
            let to = |minutes: u32| {
                let then = Answers { minutes: Some(minutes), ..answers.clone() };
                (1..=MOST_MINUTES)
                    .contains(&minutes)
                    .then(|| Choice::new(minutes.to_string(), false, then))
            };
            fields.push(QuestionField::Stepper {
                label: say::how_many_minutes().into(),
                value: answers.minutes.map(|minutes| minutes.to_string()),
                unit: Some(say::minutes().into()),
                less: answers.minutes.and_then(|minutes| to(minutes.saturating_sub(step))),
                more: to(answers.minutes.map_or(usual, |minutes| minutes + step)),
                typed: None,
            });
        }
        let lacks_time = self.screen.afterwards && answers.minutes.is_none();
        let key = match answers.rpe {
            Some(rpe) if !lacks_time => saves(
                say::finish_rated(rpe),
                Some(crate::say::key::next_exchange().into()),
                Tap::Finish { rpe: Some(rpe), minutes: answers.minutes },
            ),
            rated => waits(if rated.is_none() { say::choose_rpe() } else { say::choose_minutes() }),
        };
        Some(QuestionScreen {
            title: say::how_hard().into(),
            about: self.screen.day.clone(),
            sign: None,
            fields,
            key,
        })
    }

    pub(super) fn day(&self, answers: Answers) -> Option<QuestionScreen> {
        if self.screen.state == SessionState::Running || self.screen.days.is_empty() {
            return None;
        }
        let names = self.screen.days.iter().map(|day| (day.clone(), day.clone()));
        let (field, chosen) = by_name(names.collect(), &answers);
        let key = match chosen {
            Some(day) => key::moves(KeyFor::Begin(&day), Tap::Begin { day: Some(day.clone()) }),
            None => Key { more: None, ..waits(say::choose_day()) },
        };
        let title = say::which_day().to_owned();
        Some(QuestionScreen {
            title,
            about: self.screen.block.clone(),
            sign: None,
            fields: vec![field],
            key,
        })
    }

    pub(super) fn bar(&self, piece: &str, answers: Answers) -> Option<QuestionScreen> {
        let PieceKindView::Strength { view } = self.kind(piece)? else { return None };
        view.bars.first()?;
        let names = view.bars.iter().map(|bar| (bar.name.clone(), bar.text.clone()));
        let taken = view.bars.iter().find(|bar| bar.taken).map(|bar| bar.name.clone());
        let answers = Answers { name: answers.name.clone().or(taken.clone()), ..answers };
        let (field, chosen) = by_name(names.collect(), &answers);
        let key = match chosen.filter(|chosen| taken.as_ref() != Some(chosen)) {
            Some(bar) => saves(
                say::take(&bar),
                Some(say::stays_next_time().into()),
                Tap::TakeBar { piece: piece.to_owned(), bar },
            ),
            None => waits(say::choose_bar()),
        };
        Some(QuestionScreen {
            title: say::which_bar().into(),
            about: Some(view.movement.clone()),
            sign: None,
            fields: vec![field],
            key,
        })
    }

    pub(super) fn station(&self, piece: &str, answers: Answers) -> Option<QuestionScreen> {
        let PieceKindView::Interval { view } = self.kind(piece)? else { return None };
        if !can_start_elsewhere(view) || self.screen.afterwards {
            return None;
        }
        let chosen = answers.station.unwrap_or(view.start_station);
        let choice = |(station, words): (u32, &String)| {
            let then = Answers { station: Some(station), ..answers.clone() };
            Choice::new(words.clone(), station == chosen, then)
        };
        let choices = (1..).zip(&view.stations).map(choice).collect();
        let tap = Tap::Clock { piece: piece.to_owned(), act: Act::Begin, station: Some(chosen) };
        let key = key::moves(KeyFor::Clock(Act::Begin), tap);
        Some(QuestionScreen {
            title: say::which_station().into(),
            about: Some(piece.to_owned()),
            sign: None,
            fields: vec![QuestionField::rows(choices)],
            key,
        })
    }
}

/// Names with what is said of them, and the one that is chosen.
fn by_name(names: Vec<(String, String)>, answers: &Answers) -> (QuestionField, Option<String>) {
    let is_chosen = |name: &String| answers.name.as_ref() == Some(name);
    let chosen = names.iter().map(|(name, _)| name).find(|name| is_chosen(name)).cloned();
    let choices = names.into_iter().map(|(name, words)| {
        let chosen = is_chosen(&name);
        Choice::new(words, chosen, Answers { name: Some(name), ..answers.clone() })
    });
    (QuestionField::rows(choices.collect()), chosen)
}
