//! An option for a piece, or back to the movement.

use super::Of;
use super::fields::{Answers, Choice, QuestionField, QuestionScreen, QuestionSign};
use super::keys::{saves, waits};
use crate::plan::Exercise;
use crate::say::question as say;
use crate::session::{OptionView, Tap};

impl Of<'_> {
    pub(super) fn option(&self, piece: &str, answers: Answers) -> Option<QuestionScreen> {
        let view = self.screen.pieces.iter().find(|view| view.name == piece)?;
        let block = self.snapshot.block.as_ref()?;
        let name_of = |movement: &str| block.name_of(&Exercise::of(movement));
        let several = view.options.iter().any(|option| option.movement != view.options[0].movement);
        let then = |movement: &str, option: Option<&str>| Answers {
            movement: Some(movement.to_owned()),
            name: option.map(str::to_owned),
            ..answers.clone()
        };
        let is_chosen = |movement: &str, option: Option<&str>| {
            answers.movement.as_deref() == Some(movement) && answers.name.as_deref() == option
        };
        let mut choices = Vec::new();
        for option in &view.options {
            let mut more = vec![say::option_for(&option.because_text)];
            if several {
                more.insert(0, say::instead_of(name_of(&option.movement)));
            }
            more.extend(option.suggested.clone());
            more.extend(option.taken.then(|| say::taken_now().to_owned()));
            let (movement, key) = (option.movement.as_str(), Some(option.key.as_str()));
            choices.push(Choice {
                words: option.name.clone(),
                more,
                chosen: is_chosen(movement, key),
                care: false,
                then: then(movement, key),
            });
        }
        // Back to what was planned, where something else is taken.
        for taken in view.options.iter().filter(|option| option.taken) {
            let (words, movement) = (name_of(&taken.movement), taken.movement.as_str());
            choices.push(Choice::new(
                say::back_to(words),
                is_chosen(movement, None),
                then(movement, None),
            ));
        }
        let chosen =
            |option: &&OptionView| is_chosen(&option.movement, Some(&option.key)) && !option.taken;
        let takes = view.options.iter().find(chosen).map(|option| option.name.clone());
        let goes_back = answers.movement.as_deref().filter(|movement| is_chosen(movement, None));
        let words =
            takes.map(say::take).or_else(|| goes_back.map(|back| say::back_to(name_of(back))));
        let key = match words {
            Some(words) => {
                let (movement, option) = (answers.movement.clone(), answers.name.clone());
                let tap = Tap::TakeOption { piece: piece.to_owned(), movement, option };
                saves(words, Some(say::logged_with_reason().into()), tap)
            }
            None => waits(say::choose_option()),
        };
        let first = view.options.first()?;
        Some(QuestionScreen {
            title: if several {
                say::options().to_owned()
            } else {
                say::instead_of(name_of(&first.movement))
            },
            about: Some(piece.to_owned()),
            sign: Some(QuestionSign::Option),
            fields: vec![QuestionField::rows(choices)],
            key,
        })
    }
}
