//! Who uses the device and how they read; the cautions; what is stored and who can read it.

use catalogue::Language;

use super::PhoneChoices;
use super::choices;
use super::record::{PageAct, PageAsk, PageRow, PageScreen};
use super::rows::headed;
use crate::crew::{self, RecoveryDid};
use crate::device::Device;
use crate::error::Result;
use crate::mass::MassUnit;
use crate::say;
use crate::say::page as say_page;

pub(super) fn page(device: &mut Device, choices: PhoneChoices) -> Result<PageScreen> {
    let profile = device.profile()?;
    let mut page = PageScreen::titled(say_page::this_phone());
    page.beside = Some(profile.name);
    let units = [MassUnit::Kg, MassUnit::Lb]
        .map(|unit| PageRow::choice(unit_name(unit), profile.unit == unit, PageAct::Unit { unit }));
    page.rows.extend(headed(units.to_vec(), say_page::unit()));
    page.rows.extend(headed(languages(profile.language), say_page::language()));
    page.rows.extend(choices::rows(choices));
    let room = PageRow::opens(say_page::room(), PageAsk::Kit);
    let crew = PageRow::opens(say_page::crew(), PageAsk::Crew);
    let mut code = PageRow::opens(say_page::recovery_code(), PageAsk::Recovery { shown: false });
    if crew::recovery(device, RecoveryDid::Look)?.kept {
        code.text = Some(say_page::only_on_this_phone().to_owned());
    }
    let stored = PageRow::opens(say_page::what_is_stored(), PageAsk::Stored);
    let cautions = PageRow::opens(say_page::cautions(), PageAsk::Cautions);
    page.rows.extend(headed(vec![crew, room, code, stored, cautions], say_page::more()));
    page.key = Some(super::home(device)?);
    Ok(page)
}

/// The languages there are, each in its own words; and the phone's own.
pub(super) fn languages(chosen: Option<Language>) -> Vec<PageRow> {
    let choice = |title: &str, language| {
        PageRow::choice(title, chosen == language, PageAct::Language { language })
    };
    let mut rows = vec![choice(say_page::as_the_phone(), None)];
    rows.push(choice(say_page::english(), Some(Language::En)));
    rows.push(choice(say_page::german(), Some(Language::De)));
    rows
}

pub(super) fn unit_name(unit: MassUnit) -> &'static str {
    match unit {
        MassUnit::Kg => say_page::kilograms(),
        MassUnit::Lb => say_page::pounds(),
    }
}

/// The usual cautions.
pub(super) fn cautions() -> PageScreen {
    PageScreen { said: caution_sentences(), ..PageScreen::titled(say_page::cautions()) }
}

pub(super) fn caution_sentences() -> Vec<String> {
    [
        say::care::never_diagnoses(),
        say::care::stop_on(),
        say::care::safety_bars(),
        say::care::see_a_doctor(),
    ]
    .map(str::to_owned)
    .to_vec()
}

/// What is stored, who can read it, and how it is got rid of.
pub(super) fn stored() -> PageScreen {
    PageScreen { said: stored_sentences(), ..PageScreen::titled(say_page::what_is_stored()) }
}

pub(super) fn stored_sentences() -> Vec<String> {
    [
        say_page::stored_here(),
        say_page::stored_read(),
        say_page::stored_private(),
        say_page::stored_carrier(),
        say_page::stored_for_good(),
        say_page::stored_lost(),
    ]
    .map(str::to_owned)
    .to_vec()
}
