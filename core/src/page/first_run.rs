//! Somebody starts: who they are, how they read, what is stored and the cautions. Three pages, then the device is theirs.

use catalogue::speaking;

use super::act::{PageAct, StartAnswers};
use super::record::{PageField, PageKey, PageRow, PageScreen};
use super::rows::headed;
use super::this_phone::{caution_sentences, languages, stored_sentences, unit_name};
use crate::journal::Role;
use crate::mass::MassUnit;
use crate::say::page as say;

/// The page that somebody who starts is at. A name is held against the rules when it is used.
pub(crate) fn first_run(answers: StartAnswers) -> PageScreen {
    match answers.language {
        Some(language) => speaking(language, || at_step(answers)),
        None => at_step(answers),
    }
}

fn at_step(answers: StartAnswers) -> PageScreen {
    match answers.step {
        0 => who(answers),
        1 => how(answers),
        _ => what(answers),
    }
}

fn to(answers: StartAnswers) -> PageAct {
    PageAct::Answer { answers }
}

fn who(answers: StartAnswers) -> PageScreen {
    let role = |title: &str, text: &str, role| {
        let then = StartAnswers { role: Some(role), ..answers.clone() };
        PageRow::choice(title, answers.role == Some(role), to(then)).says(text)
    };
    let rows = vec![
        role(say::athlete(), say::athlete_does(), Role::Athlete),
        role(say::coach(), say::coach_does(), Role::Coach),
        PageRow { does: Some(PageAct::BringBack), ..PageRow::titled(say::has_a_code()) }
            .says(say::has_a_code_more()),
    ];
    let name = PageField { text: answers.name.clone(), ..PageField::empty(say::your_name()) };
    let key = match answers.role {
        Some(_) => PageKey::moves(say::next(), to(StartAnswers { step: 1, ..answers })),
        None => PageKey::waits(say::choose_who()),
    };
    PageScreen {
        said: vec![say::what_holdfast_does().to_owned()],
        fields: vec![name],
        rows,
        key: Some(key),
        ..PageScreen::titled(say::who_are_you())
    }
}

fn how(answers: StartAnswers) -> PageScreen {
    // A name that was left out is asked for again.
    if answers.name.trim().is_empty() {
        let again = who(StartAnswers { step: 0, ..answers });
        let block =
            super::PageBlock { heading: say::name_missing().into(), text: say::name_seen().into() };
        return PageScreen { block: Some(block), ..again };
    }
    let unit = |unit: MassUnit| {
        let then = StartAnswers { unit: Some(unit), ..answers.clone() };
        PageRow::choice(unit_name(unit), answers.unit == Some(unit), to(then))
    };
    let mut rows = headed(vec![unit(MassUnit::Kg), unit(MassUnit::Lb)], say::unit());
    let spoken = languages(answers.language).into_iter().map(|row| {
        let Some(PageAct::Language { language }) = row.does else { return row };
        PageRow { does: Some(to(StartAnswers { language, ..answers.clone() })), ..row }
    });
    rows.extend(headed(spoken.collect(), say::language()));
    let key = match answers.unit {
        Some(_) => PageKey::moves(say::next(), to(StartAnswers { step: 2, ..answers })),
        None => PageKey::waits(say::choose_unit()),
    };
    PageScreen { rows, key: Some(key), ..PageScreen::titled(say::how_you_read()) }
}

fn what(answers: StartAnswers) -> PageScreen {
    let said = [stored_sentences(), caution_sentences()].concat();
    let key = PageKey::saves(say::agree_and_begin(), PageAct::Begin { answers });
    PageScreen {
        said,
        key: Some(key.more(say::makes_a_folder()).once_read()),
        ..PageScreen::titled(say::before_you_begin())
    }
}
