//! Starting on a device, opening it again, and who uses it.

use std::path::PathBuf;

use serde::Serialize;

use super::device::Device;
use crate::error::{Error, Result};
use crate::id::{CrewId, DeviceId, PersonId, random};
use crate::instant::Instant;
use crate::journal::{Profile, Role};
use crate::mass::MassUnit;
use crate::store::{self, Draft, Identity, Rebuilt, people};
use crate::words;

const MAX_NAME_CHARS: usize = 40;

/// How somebody starts on a device.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Start {
    /// Coach or athlete.
    pub role: Role,
    /// The name others see.
    pub name: String,
    /// The unit they read masses in.
    pub unit: MassUnit,
    /// At least 48 bytes from the system's source of chance: identities are made from them.
    pub chance: Vec<u8>,
}

/// Who uses a device, and how it opened.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
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
    /// True once the device belongs to a crew.
    pub in_crew: bool,
    /// The coaches whose profiles have arrived.
    pub coaches: Vec<String>,
    /// What was put right on opening, in words; empty when all was well.
    pub opening: String,
}

/// Makes a device's home folder, identity and database.
pub(super) fn started(home: String, start: Start, at: Instant) -> Result<Device> {
    let folder = PathBuf::from(&home);
    if folder.join(store::DATABASE).exists() && Identity::read(&folder)?.is_none() {
        let reason = "there is a database here but no device.json: put that file back, or \
                      choose another folder";
        return Err(Error::invalid("home", reason));
    }
    if let Some(known) = Identity::read(&folder)? {
        let reason = format!("{home} is {}'s already; choose another folder", known.profile.name);
        return Err(Error::invalid("home", reason));
    }
    let name = valid_name(&start.name)?;
    let [device, person, crew] = chances(&start.chance)?.map(random);
    let crew = (start.role == Role::Coach).then_some(CrewId(crew));
    let profile =
        Profile { person: PersonId(person), name, role: start.role, unit: start.unit, crew };
    let identity = Identity { device: DeviceId(device), profile: profile.clone() };
    identity.settle(&folder)?;
    let (mut store, rebuilt) = store::open(&folder, &identity, &at, true)?;
    store.log(&at, vec![Draft::new(profile)])?;
    Ok(Device::new(folder, identity, at, store, rebuilt))
}

/// Opens a device that was started before.
pub(super) fn opened(home: String, at: Instant) -> Result<Device> {
    let folder = PathBuf::from(&home);
    let Some(identity) = Identity::read(&folder)? else {
        let reason = "nobody has started here yet: start as coach or athlete first";
        return Err(Error::not_found(home, reason));
    };
    let (mut store, rebuilt) = store::open(&folder, &identity, &at, false)?;
    let known = people(store.reader())?;
    if !known.contains_key(&identity.profile.person) {
        // The journal came back without its first leaf, or the first start was cut short.
        store.log(&at, vec![Draft::new(identity.profile.clone())])?;
    }
    Ok(Device::new(folder, identity, at, store, rebuilt))
}

/// Who uses a device.
pub(super) fn who(device: &mut Device) -> Result<Who> {
    let profile = device.profile()?;
    Ok(Who {
        person: profile.person,
        device: device.identity.device,
        name: profile.name,
        role: profile.role,
        unit: profile.unit,
        in_crew: profile.crew.is_some(),
        coaches: people(device.reader())?
            .into_values()
            .map(|(_, profile)| profile)
            .filter(|profile| profile.role == Role::Coach)
            .map(|profile| profile.name)
            .collect(),
        opening: opening_text(device.rebuilt.as_ref()).unwrap_or_default(),
    })
}

/// What was put right on opening, in words.
pub(crate) fn opening_text(rebuilt: Option<&Rebuilt>) -> Option<String> {
    let Rebuilt { aside, from_leaves, salvaged } = rebuilt?;
    let entries = words::count(*from_leaves, "entry");
    let back = format!("{entries} came back from this device's leaf files");
    Some(match aside {
        Some(aside) => format!(
            "the database was damaged and is kept as {aside}. A new one was built: {back}, and \
             {salvaged} that no leaf held yet from the damaged file"
        ),
        None => format!("the database was missing, or part of it: {back}"),
    })
}

fn valid_name(name: &str) -> Result<String> {
    let name = name.trim();
    let fits = (1..=MAX_NAME_CHARS).contains(&name.chars().count());
    if !fits || name.chars().any(char::is_control) {
        let reason = format!("a name has 1 to {MAX_NAME_CHARS} characters and no line breaks");
        return Err(Error::invalid("name", reason));
    }
    Ok(name.to_owned())
}

fn chances(bytes: &[u8]) -> Result<[[u8; 16]; 3]> {
    let mut made = [[0; 16]; 3];
    if bytes.len() < 48 {
        return Err(Error::invalid("chance", "48 random bytes are needed to make identities"));
    }
    for (made, given) in made.iter_mut().zip(bytes.chunks_exact(16)) {
        made.copy_from_slice(given);
    }
    Ok(made)
}
