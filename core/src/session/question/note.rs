//! A note, with who can read it chosen before it is typed.

use super::Of;
use super::fields::{Answers, Choice, ChoiceShape, QuestionField, QuestionScreen};
use super::whole::waits;
use crate::say::question as say;
use crate::session::{Key, KeyKind, Row, Tap};

impl Of<'_> {
    pub(super) fn note(&self, row: Option<&Row>, answers: Answers) -> QuestionScreen {
        let who = |private: bool| {
            let words = if private { say::stays_here() } else { say::coach_reads() };
            let then = Answers { private: Some(private), ..answers.clone() };
            Choice::new(words, answers.private == Some(private), then)
        };
        let words = answers.words.clone().unwrap_or_default();
        let fields = vec![
            QuestionField::Choices {
                label: None,
                shape: ChoiceShape::Rows,
                choices: vec![who(false), who(true)],
                notes: Vec::new(),
            },
            QuestionField::Words { label: say::note().into(), words: words.clone() },
        ];
        let key = match answers.private {
            None => waits(say::choose_reader()),
            Some(_) if words.trim().is_empty() => waits(say::type_note()),
            Some(private) => Key {
                kind: KeyKind::Saves,
                words: say::save_note().into(),
                more: Some(if private { say::stays_here() } else { say::coach_reads() }.into()),
                tap: Some(Tap::Note { row: row.cloned(), words, private }),
                asks: None,
            },
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
