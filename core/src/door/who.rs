//! Who uses a device.

use catalogue::Language;
use serde::Serialize;

use crate::device::{Device, Rebuilt};
use crate::error::Result;
use crate::id::{DeviceId, PersonId};
use crate::journal::Role;
use crate::mass::MassUnit;
use crate::say;
use crate::store::people;

/// Who uses a device, and how it opened.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Who {
    /// The person.
    pub person: PersonId,
    /// The device.
    pub device: DeviceId,
    /// Their name.
    pub name: String,
    /// Coach or athlete.
    pub role: Role,
    /// The unit they read masses in.
    pub unit: MassUnit,
    /// The language they chose to read; none while they leave it to the shell.
    pub language: Option<Language>,
    /// True once the device belongs to a crew.
    pub in_crew: bool,
    /// The coaches whose profiles have arrived.
    pub coaches: Vec<String>,
    /// What was put right on opening, in words; none when all was well.
    pub opening: Option<String>,
}

/// What there is to tell of how the device opened.
fn opening(device: &Device) -> Option<String> {
    let renewed = device.renewed.then(|| say::device::renewed().to_owned());
    let rebuilt = device.rebuilt.as_ref().map(Rebuilt::text);
    let elsewhere = device.elsewhere.then(|| say::crew::moved_or_copied().to_owned());
    // What is logged reaches nobody: said each time, or weeks of it would go nowhere.
    let out = match (device.belongs(), device.is_ended()) {
        (true, _) => None,
        (false, true) => Some(say::crew::this_device_stopped().to_owned()),
        (false, false) => Some(say::crew::you_were_removed().to_owned()),
    };
    let told: Vec<String> =
        rebuilt.into_iter().chain(renewed).chain(elsewhere).chain(out).collect();
    (!told.is_empty()).then(|| told.join(say::device::between_sentences()))
}

/// Reads it.
pub(super) fn who(device: &Device) -> Result<Who> {
    let profile = device.profile()?;
    let people = people(device.reader())?.into_values().map(|(_, profile)| profile);
    let coaches = people.filter(|profile| profile.role == Role::Coach);
    Ok(Who {
        person: profile.person,
        device: device.identity.device,
        name: profile.name,
        role: profile.role,
        unit: profile.unit,
        language: profile.language,
        in_crew: device.crew().is_some(),
        coaches: coaches.map(|profile| profile.name).collect(),
        opening: opening(device),
    })
}
