//! A note, with who can read it chosen before it is typed.

use super::Of;
use super::fields::{Answers, Choice, QuestionField, QuestionScreen};
use super::keys::{saves, waits};
use crate::say::question as say;
use crate::session::{Row, Tap};

impl Of<'_> {
    pub(super) fn note(&self, row: Option<&Row>, answers: Answers) -> QuestionScreen {
        let who = |private: bool| {
            let words = if private { say::stays_here() } else { say::coach_reads() };
            let then = Answers { private: Some(private), ..answers.clone() };
            Choice::new(words, answers.private == Some(private), then)
        };
        let words = answers.words.clone().unwrap_or_default();
        let fields = vec![
            QuestionField::rows(vec![who(false), who(true)]),
            QuestionField::Words { label: say::note().into(), then: answers.clone() },
        ];
        let key = match answers.private {
            None => waits(say::choose_reader()),
            Some(_) if words.trim().is_empty() => waits(say::type_note()),
            Some(private) => {
                let more = if private { say::stays_here() } else { say::coach_reads() };
                let tap = Tap::Note { row: row.cloned(), words, private };
                saves(say::save_note().into(), Some(more.into()), tap)
            }
        };
        let about = row.and_then(Row::piece).map(str::to_owned);
        let title = say::add_note().to_owned();
        QuestionScreen {
            title,
            about: about.or_else(|| self.screen.day.clone()),
            sign: None,
            fields,
            key,
        }
    }
}
