//! Somebody's log comes back on a new phone: the code from paper, what carries the crew's files, what was found there. Nothing is
//! written before the last key.

use serde::Serialize;

use super::act::PageAct;
use super::record::{PageField, PageKey, PageRow, PageScreen};
use super::rows::{adds_carrier, headed};
use super::this_phone::{caution_sentences, stored_sentences};
use crate::say::page as say;

/// How far somebody is who restores.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct RestoreAnswers {
    /// The code as it was typed.
    pub code: String,
    /// Where the carriers are that the shell keeps, as it shows them.
    pub carriers: Vec<String>,
    /// What was found, in words; none before anything was.
    pub found: Option<String>,
}

/// The page that somebody who restores is at.
pub(crate) fn restore(answers: RestoreAnswers) -> PageScreen {
    match answers.found {
        Some(found) => agree(found),
        None => look(answers),
    }
}

fn look(answers: RestoreAnswers) -> PageScreen {
    let kept: Vec<PageRow> = answers.carriers.iter().map(PageRow::titled).collect();
    let mut rows = headed(kept, say::carriers());
    rows.extend(adds_carrier());
    let key = if answers.carriers.is_empty() {
        PageKey::waits(say::add_a_carrier_first())
    } else {
        PageKey::moves(say::look_for_log(), PageAct::Search).once_typed()
    };
    PageScreen {
        said: vec![say::code_brings_log().to_owned(), say::where_files_lie().to_owned()],
        fields: vec![PageField { text: answers.code, ..PageField::empty(say::recovery_code()) }],
        rows,
        key: Some(key),
        ..PageScreen::titled(say::restore_a_log())
    }
}

/// What is stored and the cautions are agreed to on each phone.
fn agree(found: String) -> PageScreen {
    let said = [vec![found], stored_sentences(), caution_sentences()].concat();
    let key = PageKey::saves(say::agree_and_restore(), PageAct::Restore);
    PageScreen {
        said,
        key: Some(key.more(say::brings_all_of_it()).once_read()),
        ..PageScreen::titled(say::log_was_found())
    }
}
