//! What has not arrived, contradicts itself or does not count, in words.

use rusqlite::Connection;

use crate::error::Result;
use crate::exchange::{forked, gaps, uncounted};
use crate::id::DeviceId;
use crate::say;
use crate::store::{people, unread};

/// All of it, as a device of `own` knows it.
pub(crate) fn arrivals(connection: &Connection, own: DeviceId) -> Result<Vec<String>> {
    let people = people(connection)?;
    // Whose device it is, once that person's profile is here.
    let owner = |device| {
        let of = people.values().find(|(known, _)| *known == device);
        of.map(|(_, profile)| profile.name.as_str())
    };
    let mut arrivals: Vec<String> = Vec::new();
    let gaps = gaps(connection, own)?;
    for gap in gaps.missing {
        let count = gap.sequences.len();
        let numbers: Vec<String> = gap.sequences.iter().map(u64::to_string).collect();
        let numbers = numbers.join(", ");
        arrivals.push(match owner(gap.device) {
            Some(name) => say::coach::uploads_missing(count, name, numbers),
            None => say::coach::uploads_missing_unknown(count, numbers),
        });
    }
    for beyond in gaps.beyond {
        arrivals.push(match owner(beyond.by) {
            Some(name) => say::coach::seen_beyond(name, beyond.sequence, beyond.last),
            None => say::coach::seen_beyond_unknown(beyond.sequence, beyond.last),
        });
    }
    for device in forked(connection)? {
        arrivals.push(match owner(device) {
            Some(name) => say::coach::two_histories(name),
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
