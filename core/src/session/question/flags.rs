//! Which discomfort flag to clear.

use super::Of;
use super::fields::{Answers, Choice, QuestionField, QuestionScreen, QuestionSign};
use super::keys::{saves, waits};
use crate::say::question as say;
use crate::session::Tap;

impl Of<'_> {
    pub(super) fn clear(&self, piece: &str, answers: Answers) -> Option<QuestionScreen> {
        let view = self.screen.pieces.iter().find(|view| view.name == piece)?;
        view.flags.first()?;
        let choice = |flag: &crate::session::FlagView| {
            let then = Answers { flag: Some(flag.flag), ..answers.clone() };
            Choice::new(flag.text.clone(), answers.flag == Some(flag.flag), then)
        };
        let chosen = view.flags.iter().find(|flag| answers.flag == Some(flag.flag));
        let key = match chosen {
            Some(flag) => {
                let tap = Tap::ClearFlags { flags: vec![flag.flag] };
                saves(say::clear_this().into(), Some(say::loads_come_back().into()), tap)
            }
            None => waits(say::choose_flag()),
        };
        Some(QuestionScreen {
            title: say::which_is_over().into(),
            about: Some(piece.to_owned()),
            sign: Some(QuestionSign::Pain),
            fields: vec![QuestionField::rows(view.flags.iter().map(choice).collect())],
            key,
        })
    }
}
