//! What has not arrived, contradicts itself or does not count, in words.

use crate::device::Device;
use crate::error::Result;
use crate::exchange::{forked, gaps, uncounted};
use crate::id::DeviceId;
use crate::say;
use crate::store::{called, unread};

/// All of it, as a device knows it.
pub(crate) fn arrivals(device: &Device) -> Result<Vec<String>> {
    let (connection, own) = (device.reader(), device.identity.device);
    let names = called(connection)?;
    // Of somebody with several, the number by which the crew's screen calls it.
    let owner = |id: DeviceId| {
        let person = device.standing.devices.get(&id)?.person;
        let name = names.get(&person)?;
        let theirs = device.standing.of_person(person);
        Some(match theirs.iter().position(|known| *known == id) {
            Some(before) if theirs.len() > 1 => say::coach::device_of_many(name, before + 1),
            _ => say::coach::device_of(name),
        })
    };
    let mut arrivals: Vec<String> = Vec::new();
    let gaps = gaps(connection, own)?;
    for gap in gaps.missing {
        let count = gap.sequences.len();
        let numbers: Vec<String> = gap.sequences.iter().map(u64::to_string).collect();
        let numbers = numbers.join(", ");
        arrivals.push(match owner(gap.device) {
            Some(device) => say::coach::uploads_missing(count, device, numbers),
            None => say::coach::uploads_missing_unknown(count, numbers),
        });
    }
    for beyond in gaps.beyond {
        arrivals.push(match owner(beyond.by) {
            Some(device) => say::coach::seen_beyond(device, beyond.sequence, beyond.last),
            None => say::coach::seen_beyond_unknown(beyond.sequence, beyond.last),
        });
    }
    for id in forked(connection)? {
        arrivals.push(match owner(id) {
            Some(device) => say::coach::two_histories(device),
            None => say::coach::two_histories_unknown().into(),
        });
    }
    let [unknown, removed, too_many] = uncounted(connection)?;
    let kept = [
        (unknown, say::coach::uploads_of_nobody(unknown)),
        (removed, say::coach::uploads_removed(removed)),
        (too_many, say::coach::uploads_too_many(too_many)),
    ];
    arrivals.extend(kept.into_iter().filter(|(count, _)| *count > 0).map(|(_, said)| said));
    let unread = unread(connection)?;
    if unread > 0 {
        arrivals.push(say::coach::newer_entries(unread));
    }
    Ok(arrivals)
}
