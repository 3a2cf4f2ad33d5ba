//! What crosses to Kotlin and Swift besides the types and the object that say so themselves.

use catalogue::Language;
use chrono::NaiveDate;
use uuid::Uuid;

use crate::door::{Field, HoldfastError, HoldfastResult};
use crate::error::{not_a_date, not_an_identity};
use crate::id::{DeviceId, PersonId, RecordId};
use crate::instant::Millis;

/// An error in words, for whoever holds the device.
#[uniffi::export]
pub(crate) fn explain(error: HoldfastError) -> String {
    error.to_string()
}

// Identities cross as their sixteen bytes, dates as days since 1970, lengths of time as milliseconds:
// each language makes its own type of them, as `bindings/uniffi.toml` says, and nothing is written
// as text and read again.

uniffi::custom_type!(NaiveDate, i64, {
    remote,
    lower: |date| date.to_epoch_days().into(),
    try_lift: |days| {
        let date = i32::try_from(days).ok().and_then(NaiveDate::from_epoch_days);
        date.ok_or_else(|| invalid(Field::Date, not_a_date(days)).into())
    },
});

uniffi::custom_type!(PersonId, Vec<u8>, {
    lower: |id| id.0.as_bytes().to_vec(),
    try_lift: |bytes| Ok(PersonId(sixteen(Field::Identity, &bytes)?)),
});

uniffi::custom_type!(RecordId, Vec<u8>, {
    lower: |id| id.0.as_bytes().to_vec(),
    try_lift: |bytes| Ok(RecordId(sixteen(Field::Identity, &bytes)?)),
});

uniffi::custom_type!(DeviceId, Vec<u8>, {
    lower: |id| id.0.as_bytes().to_vec(),
    try_lift: |bytes| Ok(DeviceId(sixteen(Field::Identity, &bytes)?)),
});

uniffi::custom_type!(Millis, i64, {
    lower: |length| length.0,
    try_lift: |ms| Ok(Millis(ms)),
});

fn sixteen(field: Field, bytes: &[u8]) -> HoldfastResult<Uuid> {
    Uuid::from_slice(bytes).map_err(|_| invalid(field, not_an_identity(bytes.len())))
}

/// Something that is not what it should be. It crosses as the surface's own error.
fn invalid(field: Field, reason: String) -> HoldfastError {
    HoldfastError::Invalid { field, reason }
}

/// The languages there are, as the catalogues name them.
#[uniffi::remote(Enum)]
pub enum Language {
    En,
    De,
}
