//! What needs no device.

use std::path::Path;

use catalogue::Language;
use chrono::NaiveDate;

use super::HoldfastResult;
use super::guard::caught;
use crate::coach::{self, PlanSummary};
use crate::exchange::{self, CarriedFile};
use crate::session::{self, PhoneWords, PlatesAsked, PlatesScreen, PlatformTrouble, PlatformWords};

/// Reads a plan text without publishing it, and without a device: [`super::Holdfast::check_plan`] knows the
/// people it is for. `source_name` is what errors call it. Without `today` no note
/// says that the block starts far away.
///
/// # Errors
/// [`super::HoldfastError::Plan`] with every problem and its place.
#[cfg_attr(feature = "ffi", uniffi::export(default(today = None)))]
pub fn check_plan(
    source_name: String,
    text: Vec<u8>,
    today: Option<NaiveDate>,
) -> HoldfastResult<PlanSummary> {
    caught(|| Ok(coach::check_alone(&source_name, &text, today)?))
}

/// From now on everything is said in a language, by every device that is open. A screen that was drawn
/// before stays as it is: ask for it again.
#[cfg_attr(feature = "ffi", uniffi::export)]
pub fn speak(language: Language) {
    catalogue::speak(language);
}

/// The words of a phone's screens that stand in no record, in the language that is spoken.
#[cfg_attr(feature = "ffi", uniffi::export)]
pub fn phone_words() -> PhoneWords {
    session::phone_words()
}

/// Sentences that an app needs for its system alone, in the language that is spoken.
#[cfg_attr(feature = "ffi", uniffi::export)]
pub fn platform_words() -> PlatformWords {
    session::platform_words()
}

/// What a phone's system refused as a sentence to show, in the language that is spoken.
#[cfg_attr(feature = "ffi", uniffi::export)]
#[allow(clippy::needless_pass_by_value, reason = "what crosses is given away")]
pub fn platform_trouble(trouble: PlatformTrouble) -> String {
    session::platform_trouble(&trouble)
}

/// The builds of some loads on one bar of a kit, with the least plate handling. `text` is a plan, of
/// which only `[kit]` is read, or has only that; `source_name` is what errors call it.
///
/// # Errors
/// [`super::HoldfastError::Plan`] with every problem of the kit; [`super::HoldfastError::Invalid`] for
/// a load that is none or that the kit cannot build, with the nearest it can;
/// [`super::HoldfastError::NotFound`] for a bar the kit has not.
pub fn plates(source_name: &str, text: &[u8], asked: &PlatesAsked) -> HoldfastResult<PlatesScreen> {
    caught(|| Ok(session::plates(source_name, text, asked)?))
}

/// Publishes a file in a folder: temporary name, flush, rename without replacing, flush the folder.
/// Says whether it was not there yet. For shells whose carrier is a plain folder.
///
/// # Errors
/// [`super::HoldfastError::Storage`] names the file.
pub fn put_file(folder: &Path, file: &CarriedFile) -> HoldfastResult<bool> {
    Ok(exchange::publish(folder, &file.name, &file.content)?)
}
