//! What a shell shows of a crew.

use rusqlite::{Connection, OptionalExtension};
use serde::Serialize;

use crate::device::Device;
use crate::error::{Error, Result, Thing};
use crate::id::{DeviceId, PersonId};
use crate::instant::Instant;
use crate::plan::is_called;
use crate::say::crew as say;
use crate::store::{labels, people};
use crate::words;

/// A crew as this device knows it: a coach's has everybody, a member's the coach and its own person.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct CrewScreen {
    /// The coach first, then members by name.
    pub people: Vec<CrewPerson>,
    /// What came of what was done; none where nothing was.
    pub told: Option<String>,
}

/// Somebody of a crew.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct CrewPerson {
    /// The person.
    pub person: PersonId,
    /// What they are called here.
    pub name: String,
    /// True for whoever uses this device.
    pub is_you: bool,
    /// True for the coach.
    pub coach: bool,
    /// False once they were removed.
    pub standing: bool,
    /// What there is to say of them, such as that they were removed; none in the usual case.
    pub state: Option<String>,
    /// Their devices, the first one first.
    pub devices: Vec<CrewDevice>,
}

/// A device of somebody's.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct CrewDevice {
    /// The device.
    pub device: DeviceId,
    /// What it is called by when it is stopped or removed: counted from 1 among the person's.
    pub number: u32,
    /// True for this one.
    pub is_this: bool,
    /// True while others seal to it and what it writes counts.
    pub standing: bool,
    /// The date of its last word, or why it no longer counts.
    pub state: String,
}

/// Reads it.
pub(crate) fn screen(device: &Device, told: Option<String>) -> Result<CrewScreen> {
    let connection = device.reader();
    let (names, labels) = (people(connection)?, labels(connection)?);
    let in_crew = device.crew().is_some();
    let mut found = Vec::new();
    for (person, known) in &device.standing.people {
        let is_you = *person == device.person();
        let coach = known.founder && in_crew;
        let name = names.get(person).map(|(_, profile)| profile.name.clone());
        let name = name.or_else(|| labels.get(person).cloned());
        let own = || device.identity.profile.name.clone();
        let name = name.unwrap_or_else(|| if is_you { own() } else { say::unnamed().to_owned() });
        let state = match (known.standing, is_you) {
            (true, _) if device.standing.forgotten.contains(person) => {
                Some(say::forgotten_elsewhere(&name))
            }
            (true, _) => None,
            (false, true) => Some(say::you_were_removed().to_owned()),
            (false, false) => Some(say::was_removed().to_owned()),
        };
        let devices = (1..)
            .zip(device.standing.of_person(*person))
            .map(|(number, id)| of_device(device, number, id, known.standing))
            .collect::<Result<_>>()?;
        let standing = known.standing;
        found.push(CrewPerson { person: *person, name, is_you, coach, standing, state, devices });
    }
    found.sort_by(|a, b| {
        (!a.coach, !a.standing, &a.name, a.person).cmp(&(!b.coach, !b.standing, &b.name, b.person))
    });
    Ok(CrewScreen { people: found, told })
}

fn of_device(
    device: &Device,
    number: u32,
    id: DeviceId,
    person_standing: bool,
) -> Result<CrewDevice> {
    let placed = device.standing.devices.get(&id);
    let standing = placed.is_some_and(|placed| placed.standing);
    let is_this = id == device.identity.device;
    let state = match (placed.is_some_and(|placed| placed.within), standing) {
        (false, _) => say::too_many().to_owned(),
        (true, false) if person_standing => say::no_longer_counts().to_owned(),
        (true, _) if is_this => say::this_device().to_owned(),
        // Of somebody who is out that is said above.
        (true, _) => match last_word(device.reader(), id)? {
            Some((wall_ms, offset_min)) => {
                let written = Instant { wall_ms, offset_min, boot_ms: 0, boot_id: String::new() };
                say::last_word(words::day(written.date()))
            }
            None => say::no_word_yet().to_owned(),
        },
    };
    Ok(CrewDevice { device: id, number, is_this, standing, state })
}

/// When a device wrote last, by its own clock.
fn last_word(connection: &Connection, device: DeviceId) -> Result<Option<(i64, i32)>> {
    let sql = "SELECT wall_ms, offset_min FROM entry WHERE device = ?1 ORDER BY n DESC LIMIT 1";
    let read = |row: &rusqlite::Row<'_>| Ok((row.get(0)?, row.get(1)?));
    Ok(connection.prepare_cached(sql)?.query_row([device.0], read).optional()?)
}

/// Finds somebody of the crew by what they are called.
pub(super) fn called(screen: &CrewScreen, name: &str) -> Result<CrewPerson> {
    let found = screen.people.iter().find(|person| is_called(&person.name, name));
    found.cloned().ok_or_else(|| {
        let names: Vec<String> = screen.people.iter().map(|person| person.name.clone()).collect();
        Error::not_found(Thing::Member, name, say::people_here(words::list(&names)))
    })
}

/// A device of somebody's by its number.
pub(super) fn numbered(person: &CrewPerson, number: u32) -> Result<CrewDevice> {
    let found = person.devices.iter().find(|device| device.number == number);
    found.cloned().ok_or_else(|| {
        let known = person.devices.len();
        let number = number.to_string();
        Error::not_found(Thing::Device, &number, say::devices_there(known, &person.name))
    })
}
