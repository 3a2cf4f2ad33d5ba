//! Identities and dates, which cross as text.

use chrono::NaiveDate;
use holdfast_core::CompanionError;
pub(crate) use holdfast_core::{DeviceId, PersonId, RecordId};

uniffi::custom_type!(NaiveDate, String, {
    remote,
    lower: |date| date.to_string(),
    try_lift: |text| text.parse().map_err(|_| not("date", "a date such as 2026-11-25", &text).into()),
});

uniffi::custom_type!(PersonId, String, {
    remote,
    lower: |id| id.to_string(),
    try_lift: |text| PersonId::parse(&text).ok_or_else(|| not("person", ID, &text).into()),
});

uniffi::custom_type!(RecordId, String, {
    remote,
    lower: |id| id.to_string(),
    try_lift: |text| RecordId::parse(&text).ok_or_else(|| not("record", ID, &text).into()),
});

uniffi::custom_type!(DeviceId, String, {
    remote,
    lower: |id| id.to_string(),
    try_lift: |text| DeviceId::parse(&text).ok_or_else(|| not("device", ID, &text).into()),
});

const ID: &str = "an identity";

/// A text that is not what it should be. It crosses as the surface's own error.
fn not(field: &str, wanted: &str, found: &str) -> CompanionError {
    let reason = format!("\"{found}\" is not {wanted}");
    CompanionError::Invalid { field: field.into(), reason }
}
