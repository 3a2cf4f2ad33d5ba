//! A coach removes a member, or one device of theirs.

use super::CrewScreen;
use super::screen::{called, numbered, screen};
use crate::device::Device;
use crate::error::{Error, Field, Result};
use crate::exchange::tops;
use crate::id::{DeviceId, PersonId};
use crate::instant::Instant;
use crate::journal::{Admit, LastLeaf, Remove};
use crate::say::crew as say;
use crate::store::Draft;
use crate::trust::Lane;

/// Most ends of runs that a removal names: a line holds that many. Who wrote more forks than that loses the lowest.
const MOST_NAMED: usize = 300;

/// Removes somebody, or one device of theirs. What is here of what they wrote stays and counts; what comes later does
/// not.
pub(crate) fn remove(
    device: &mut Device,
    name: &str,
    number: Option<u32>,
    at: &Instant,
) -> Result<CrewScreen> {
    device.require_coach(say::only_coaches_remove)?;
    let before = screen(device, None)?;
    let person = called(&before, name)?;
    if person.coach {
        return Err(Error::invalid(Field::Crew, say::not_the_coach()));
    }
    let (draft, told) = match number {
        Some(number) => {
            let of = numbered(&person, number)?;
            if !of.standing {
                return Ok(CrewScreen {
                    told: Some(say::nothing_to_remove().to_owned()),
                    ..before
                });
            }
            let heads = heads(device, person.person, &[of.device])?;
            let removal = Remove { person: person.person, device: Some(of.device), heads };
            let told = say::device_was_removed(number, &person.name);
            (Draft::correct(Remove::record_of(of.device), removal), told)
        }
        None if !person.standing => {
            return Ok(CrewScreen { told: Some(say::nothing_to_remove().to_owned()), ..before });
        }
        None => {
            let devices: Vec<DeviceId> =
                person.devices.iter().map(|device| device.device).collect();
            let heads = heads(device, person.person, &devices)?;
            let removal = Remove { person: person.person, device: None, heads };
            let told = say::member_was_removed(&person.name);
            (Draft::correct(Admit::record_of(person.person), removal), told)
        }
    };
    device.append_and_settle(at, vec![draft])?;
    screen(device, Some(told))
}

fn heads(device: &Device, of: PersonId, devices: &[DeviceId]) -> Result<Vec<LastLeaf>> {
    let mut heads = Vec::new();
    for id in devices {
        for (sequence, content) in tops(device.reader(), Lane { device: *id, of })? {
            heads.push(LastLeaf { device: *id, sequence, content: content.into() });
        }
    }
    heads.sort_by_key(|head| std::cmp::Reverse(head.sequence));
    heads.truncate(MOST_NAMED);
    Ok(heads)
}
