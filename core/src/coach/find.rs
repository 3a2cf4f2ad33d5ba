//! Finding a member by name or identity.

use rusqlite::Connection;

use crate::error::{Error, Result, Thing};
use crate::id::PersonId;
use crate::journal::{Profile, Role};
use crate::plan::is_called;
use crate::say;
use crate::store::people;
use crate::words;

/// The athlete of a name, whatever its case, or of an identity.
pub(super) fn find(connection: &Connection, name: &str) -> Result<(PersonId, Profile)> {
    let athletes: Vec<(PersonId, Profile)> = people(connection)?
        .into_iter()
        .map(|(person, (_, profile))| (person, profile))
        .filter(|(_, profile)| profile.role == Role::Athlete)
        .collect();
    let matches = |(person, profile): &&(PersonId, Profile)| {
        is_called(&profile.name, name) || is_called(&person.to_string(), name)
    };
    // Names are made distinct, so two that match are two people with one identity: nothing to choose by.
    if let Some(found) = athletes.iter().find(matches) {
        return Ok(found.clone());
    }
    let names: Vec<String> = athletes.into_iter().map(|(_, profile)| profile.name).collect();
    let alike = |full: &&String| full.to_lowercase().starts_with(&name.trim().to_lowercase());
    let alike: Vec<String> = names.iter().filter(alike).cloned().collect();
    if alike.len() > 1 {
        return Err(Error::missing(Thing::Member, say::coach::which_member(words::list(&alike))));
    }
    let reason = match names.as_slice() {
        [] => say::coach::no_log_yet().to_owned(),
        names => say::coach::members_here(words::list(names)),
    };
    Err(Error::not_found(Thing::Member, name, reason))
}
