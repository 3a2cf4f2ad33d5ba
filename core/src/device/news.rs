//! What an exchange changed of who counts, in words.

use std::collections::BTreeMap;

use crate::id::PersonId;
use crate::say::crew as say;
use crate::trust::{Certificate, Standing};

/// What there is to tell of people who were known before and still are: devices that came, devices and people that no
/// longer count.
pub(super) fn news(
    before: &Standing,
    after: &Standing,
    own: &Certificate,
    names: &BTreeMap<PersonId, String>,
) -> Vec<String> {
    let mut told = Vec::new();
    for (person, was) in before.people.iter().filter(|(_, was)| was.standing) {
        let Some(is) = after.people.get(person) else { continue };
        let you = *person == own.person();
        let name = names.get(person).map_or(say::unnamed(), String::as_str);
        if !is.standing {
            told.push(if you { say::you_were_removed().to_owned() } else { say::is_removed(name) });
            continue;
        }
        debug_assert_eq!(was.keys, is.keys);
        if after.forgotten.contains(person) && !before.forgotten.contains(person) {
            told.push(say::forgotten_elsewhere(name));
        }
        for (device, placed) in after.devices.iter().filter(|(_, of)| of.person == *person) {
            let known = before.devices.get(device);
            let stood = known.is_some_and(|known| known.standing);
            told.extend(match (known.is_some(), stood, placed.standing) {
                (false, _, true) if you => Some(say::you_added_a_device().to_owned()),
                (false, _, true) => Some(say::added_a_device(name)),
                (true, true, false) if *device == own.device() => {
                    Some(say::this_device_stopped().to_owned())
                }
                (true, true, false) if you => Some(say::your_device_stopped().to_owned()),
                (true, true, false) => Some(say::device_no_longer_counts(name)),
                _ => None,
            });
        }
    }
    told
}
