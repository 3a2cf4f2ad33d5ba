//! How somebody wants a phone to look and sound: kept by the shell, for it is a matter of this phone alone.

use serde::Serialize;

use super::record::{PageAct, PageRow};
use super::rows::headed;
use crate::say::page as say;

/// How large the text is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum TextSize {
    /// As the phone has it.
    #[default]
    Phone,
    /// Larger than that.
    Larger,
    /// As large as it gets.
    Largest,
}

/// Light or dark.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum Shade {
    /// As the phone has it.
    #[default]
    Phone,
    /// Dark on light.
    Light,
    /// Light on dark.
    Dark,
}

/// What is heard of a clock's cues. They are seen, and felt, whatever is heard.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum Heard {
    /// A tone, then the words.
    #[default]
    Words,
    /// A tone alone.
    Tones,
    /// Nothing.
    Nothing,
}

/// What was chosen on a phone.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct PhoneChoices {
    /// How large the text is.
    pub text: TextSize,
    /// Light or dark.
    pub shade: Shade,
    /// What is heard of cues.
    pub heard: Heard,
}

/// Every choice, with the one that stands; and the cues once, to hear and feel them.
pub(super) fn rows(chosen: PhoneChoices) -> Vec<PageRow> {
    let row = |words: &str, then: PhoneChoices| {
        PageRow::choice(words, then == chosen, PageAct::Choose { choices: then })
    };
    let text = [
        (TextSize::Phone, say::as_the_phone()),
        (TextSize::Larger, say::text_larger()),
        (TextSize::Largest, say::text_largest()),
    ];
    let text = text.map(|(text, words)| row(words, PhoneChoices { text, ..chosen }));
    let shade = [
        (Shade::Phone, say::as_the_phone()),
        (Shade::Light, say::shade_light()),
        (Shade::Dark, say::shade_dark()),
    ];
    let shade = shade.map(|(shade, words)| row(words, PhoneChoices { shade, ..chosen }));
    let heard = [
        (Heard::Words, say::heard_words()),
        (Heard::Tones, say::heard_tones()),
        (Heard::Nothing, say::heard_nothing()),
    ];
    let heard = heard.map(|(heard, words)| row(words, PhoneChoices { heard, ..chosen }));
    let tried = PageRow { does: Some(PageAct::TryCue), ..PageRow::titled(say::try_cue()) };
    let heard = heard.into_iter().chain([tried.says(say::try_cue_more())]).collect();
    [
        headed(text.to_vec(), say::text_size()),
        headed(shade.to_vec(), say::shade()),
        headed(heard, say::cues()),
    ]
    .concat()
}
