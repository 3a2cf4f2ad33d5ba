//! Who the people are: read from the profiles that are here.

use std::collections::BTreeMap;

use rusqlite::Connection;

use super::Query;
use crate::error::Result;
use crate::id::{DeviceId, PersonId};
use crate::journal::{Profile, Role};

/// Everybody whose profile is here, by person, with the device it was last written on.
///
/// Two people of one name get the end of their identity behind it, so that a coach can tell them
/// apart and name one of them.
pub(crate) fn people(connection: &Connection) -> Result<BTreeMap<PersonId, (DeviceId, Profile)>> {
    let profiles = Query::default().read::<Profile>(connection)?;
    let mut people: BTreeMap<PersonId, (DeviceId, Profile)> = profiles
        .into_iter()
        .map(|profile| (profile.person, (profile.id.device, profile.body)))
        .collect();
    let mut seen: BTreeMap<String, u32> = BTreeMap::new();
    for (_, profile) in people.values() {
        *seen.entry(profile.name.to_lowercase()).or_default() += 1;
    }
    for (person, (_, profile)) in &mut people {
        if seen.get(&profile.name.to_lowercase()).is_some_and(|count| *count > 1) {
            let id = person.to_string();
            profile.name = format!("{} ({})", profile.name, &id[id.len() - 4..]);
        }
    }
    Ok(people)
}

/// True when a device's own journal says whose it is.
pub(crate) fn is_claimed(connection: &Connection, device: DeviceId) -> Result<bool> {
    let sql = "SELECT 1 FROM device_person WHERE device = ?1";
    Ok(connection.prepare_cached(sql)?.exists([device.0])?)
}

/// True for somebody whose profile says coach.
pub(crate) fn is_coach(connection: &Connection, person: PersonId) -> Result<bool> {
    let ask = Query { person: Some(person), ..Query::default() };
    Ok(ask.last::<Profile>(connection)?.is_some_and(|profile| profile.body.role == Role::Coach))
}
