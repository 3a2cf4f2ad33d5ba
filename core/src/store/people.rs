//! Who the people are: who they are stands in certificates and in the coach's word, what they are called by and how they
//! read masses in their profiles.

use std::collections::{BTreeMap, BTreeSet};

use rusqlite::{Connection, OptionalExtension};

use super::Query;
use crate::error::Result;
use crate::id::{DeviceId, PersonId};
use crate::journal::{Profile, Role};

/// Everybody whose profile is here, by person, with the device it was last written on. The coach's own word for a
/// member stands before the member's name: no two are alike.
pub(crate) fn people(connection: &Connection) -> Result<BTreeMap<PersonId, (DeviceId, Profile)>> {
    let profiles = Query::default().read::<Profile>(connection)?;
    let mut people = BTreeMap::new();
    let mut known =
        connection.prepare_cached("SELECT coach, label FROM person WHERE person = ?1")?;
    for profile in profiles {
        let read = |row: &rusqlite::Row<'_>| Ok((row.get::<_, bool>(0)?, row.get(1)?));
        let found: Option<(bool, Option<String>)> =
            known.query_row([profile.person.0], read).optional()?;
        let (coach, label) = found.unwrap_or_default();
        let role = if coach { Role::Coach } else { Role::Athlete };
        let name = label.unwrap_or_else(|| profile.body.name.clone());
        people.insert(profile.person, (profile.id.device, Profile { role, name, ..profile.body }));
    }
    Ok(people)
}

/// Everybody who was removed from the crew.
pub(crate) fn removed(connection: &Connection) -> Result<BTreeSet<PersonId>> {
    let mut statement =
        connection.prepare_cached("SELECT person FROM person WHERE standing = 0")?;
    let people = statement.query_map([], |row| Ok(PersonId(row.get(0)?)))?;
    Ok(people.collect::<rusqlite::Result<_>>()?)
}

/// What the coach calls each member, whether or not their profile has arrived.
pub(crate) fn labels(connection: &Connection) -> Result<BTreeMap<PersonId, String>> {
    let sql = "SELECT person, label FROM person WHERE label IS NOT NULL";
    let mut statement = connection.prepare_cached(sql)?;
    let labels = statement.query_map([], |row| Ok((PersonId(row.get(0)?), row.get(1)?)))?;
    Ok(labels.collect::<rusqlite::Result<_>>()?)
}

/// What everybody is called here whose profile has come or whom the coach has named.
pub(crate) fn called(connection: &Connection) -> Result<BTreeMap<PersonId, String>> {
    let mut names = labels(connection)?;
    for (person, (_, profile)) in people(connection)? {
        names.insert(person, profile.name);
    }
    Ok(names)
}
