//! Text that is not TOML: each broken place is reported once, and what can't be read is left out,
//! so that the rest is still checked.
//!
//! A broken place is mended or blanked and the text is read again, until it can be. That way a
//! forgotten bracket is one problem and not one for every line below it.

use std::borrow::Cow;
use std::ops::Range;

use toml::de::DeTable;

use super::fault::{Fault, Remedy, start};
use super::lines::Lines;
use super::problems::Problems;

/// After so many broken places the rest is not worth reading.
const MOST_FAULTS: usize = 50;

/// The text when it can be read, or what is left of it with the broken places reported and
/// blanked; bytes keep their places. Nothing when no sense can be made of it.
pub(super) fn sound<'t>(text: &'t str, problems: &mut Problems<'_>) -> Option<Cow<'t, str>> {
    let lines = Lines::new(text.as_bytes());
    let mut left = Cow::Borrowed(text);
    let mut certain = text.len();
    for _ in 0..MOST_FAULTS {
        let (_, errors) = DeTable::parse_recoverable(&left);
        let Some(error) = errors.iter().min_by_key(|error| start(error)) else {
            blank(&mut left, certain..text.len());
            return Some(left);
        };
        problems.after_mending();
        let fault = Fault::find(&left, &lines, error, &errors);
        problems.wrong(fault.at, fault.what, fault.help);
        match fault.remedy {
            Remedy::Comma(blank) => left.to_mut().replace_range(blank, ","),
            Remedy::Blank(part) => {
                // Nothing to blank: the same error would come back for ever.
                if left.get(part.clone()).is_none_or(|part| part.trim().is_empty()) {
                    return None;
                }
                blank(&mut left, part);
            }
        }
        certain = certain.min(fault.certain);
    }
    None
}

/// Writes spaces over whole lines, except over their line breaks.
fn blank(text: &mut Cow<'_, str>, part: Range<usize>) {
    if part.is_empty() {
        return;
    }
    let over = |(at, byte)| if part.contains(&at) && byte != b'\n' { b' ' } else { byte };
    let bytes = text.bytes().enumerate().map(over).collect();
    // Whole lines, so no character is cut in two.
    *text = Cow::Owned(String::from_utf8(bytes).unwrap_or_default());
}
