//! Forgetting somebody who has left: their thread goes from this device and from the carrier.

use serde::Serialize;

use super::screen::{called, screen};
use crate::device::Device;
use crate::error::{Error, Field, Result};
use crate::exchange::{ListedFile, files_of, forgotten};
use crate::instant::Instant;
use crate::say::crew as say;

/// What came of forgetting somebody on this device.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Forgotten {
    /// What was done.
    pub told: String,
    /// Where something of theirs still is, or may be: a sentence each.
    pub not_reached: Vec<String>,
}

/// Drops all that this device has of somebody who was taken out.
pub(crate) fn forget(device: &mut Device, name: &str, at: &Instant) -> Result<Forgotten> {
    device.require_coach(say::only_coaches_forget)?;
    let person = called(&screen(device, None)?, name)?;
    if person.standing {
        return Err(Error::invalid(Field::Crew, say::take_out_first(&person.name)));
    }
    device.forget(person.person, at)?;
    let mut not_reached = vec![
        say::not_yet_heard(&person.name),
        say::their_own_phone(&person.name),
        say::your_other_devices(&person.name),
        say::backups_and_versions().to_owned(),
    ];
    let aside = device.aside_names()?;
    if !aside.is_empty() {
        not_reached.push(say::kept_aside(aside.join(", ")));
    }
    not_reached.push(say::reports_and_exports().to_owned());
    Ok(Forgotten { told: say::forgotten(&person.name), not_reached })
}

/// The files of a carrier that are of somebody this device has forgotten.
pub(crate) fn to_delete(device: &Device, listing: &[ListedFile]) -> Result<Vec<String>> {
    let Some(crew) = device.crew() else { return Ok(Vec::new()) };
    let forgotten = forgotten(device.reader(), device.identity.device)?;
    Ok(files_of(&forgotten, crew, listing))
}
