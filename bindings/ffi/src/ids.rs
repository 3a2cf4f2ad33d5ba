//! Identities and dates, which cross as text.

use chrono::NaiveDate;
pub(crate) use holdfast_core::{DeviceId, PersonId, RecordId};

use crate::NotText;

uniffi::custom_type!(NaiveDate, String, {
    remote,
    lower: |date| date.to_string(),
    try_lift: |text| Ok(text.parse().map_err(|_| NotText::of("a date such as 2026-11-25", &text))?),
});

uniffi::custom_type!(PersonId, String, {
    remote,
    lower: |id| id.to_string(),
    try_lift: |text| Ok(PersonId::parse(&text).ok_or_else(|| NotText::of("an identity", &text))?),
});

uniffi::custom_type!(RecordId, String, {
    remote,
    lower: |id| id.to_string(),
    try_lift: |text| Ok(RecordId::parse(&text).ok_or_else(|| NotText::of("an identity", &text))?),
});

uniffi::custom_type!(DeviceId, String, {
    remote,
    lower: |id| id.to_string(),
    try_lift: |text| Ok(DeviceId::parse(&text).ok_or_else(|| NotText::of("an identity", &text))?),
});
