//! Who uses the device and how they read; the cautions; what is stored and who can read it.

use catalogue::Language;

use super::act::{PageAct, PageAsk};
use super::choices::{Heard, PhoneChoices, Shade, TextSize};
use super::record::{PageRow, PageScreen};
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
    page.rows.extend(chosen_here(choices));
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

/// Every choice, with the one that stands; and the cues once, to hear and feel them.
fn chosen_here(chosen: PhoneChoices) -> Vec<PageRow> {
    let row = |words: &str, then: PhoneChoices| {
        PageRow::choice(words, then == chosen, PageAct::Choose { choices: then })
    };
    let text = [
        (TextSize::Phone, say_page::as_the_phone()),
        (TextSize::Larger, say_page::text_larger()),
        (TextSize::Largest, say_page::text_largest()),
    ];
    let text = text.map(|(text, words)| row(words, PhoneChoices { text, ..chosen }));
    let shade = [
        (Shade::Phone, say_page::as_the_phone()),
        (Shade::Light, say_page::shade_light()),
        (Shade::Dark, say_page::shade_dark()),
    ];
    let shade = shade.map(|(shade, words)| row(words, PhoneChoices { shade, ..chosen }));
    let heard = [
        (Heard::Words, say_page::heard_words()),
        (Heard::Tones, say_page::heard_tones()),
        (Heard::Nothing, say_page::heard_nothing()),
    ];
    let heard = heard.map(|(heard, words)| row(words, PhoneChoices { heard, ..chosen }));
    let tried = PageRow { does: Some(PageAct::TryCue), ..PageRow::titled(say_page::try_cue()) };
    let heard = heard.into_iter().chain([tried.says(say_page::try_cue_more())]).collect();
    [
        headed(text.to_vec(), say_page::text_size()),
        headed(shade.to_vec(), say_page::shade()),
        headed(heard, say_page::cues()),
    ]
    .concat()
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
