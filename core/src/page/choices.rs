//! How somebody wants a phone to look and sound: kept by the shell, for it is a matter of this phone alone.

use serde::Serialize;

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
