//! What the leaves here say of others that are not: what has not arrived, and what contradicts itself.

use std::collections::{BTreeMap, BTreeSet};

use rusqlite::Connection;

use super::sealed::SealedHeader;
use crate::error::Result;
use crate::id::{DeviceId, PersonId};
use crate::trust::Lane;

/// Most missing leaves of a lane that are named: a liar may claim any number.
const MOST_NAMED: usize = 100;

/// What is known to exist and is not here.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Gaps {
    /// Holes before a leaf that is here, and what leaves of the same thread say they have seen.
    pub(crate) missing: Vec<Missing>,
    /// What others have seen of this device and it does not know: it goes on from a backup, or was copied.
    pub(crate) beyond: Vec<Beyond>,
}

/// Leaves of a device that are known to exist and have not arrived.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Missing {
    pub(crate) device: DeviceId,
    pub(crate) sequences: Vec<u64>,
}

/// A leaf of this device's own that another has seen, above the last that this one knows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Beyond {
    pub(crate) by: DeviceId,
    pub(crate) sequence: u64,
    pub(crate) last: u64,
}

/// Finds the gaps. A last leaf that nobody has seen cannot be known. Nobody has seen anything of a third person's devices:
/// what is claimed of those means nothing.
pub(crate) fn gaps(connection: &Connection, own: DeviceId) -> Result<Gaps> {
    let owners = owners(connection)?;
    let mut here: BTreeMap<Lane, BTreeSet<u64>> = BTreeMap::new();
    let mut known: BTreeMap<Lane, u64> = BTreeMap::new();
    let mut of_own: BTreeMap<(Lane, DeviceId), u64> = BTreeMap::new();
    let mut statement =
        connection.prepare_cached("SELECT device, of, sequence, header, counts FROM leaf")?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        let lane = Lane { device: DeviceId(row.get(0)?), of: PersonId(row.get(1)?) };
        let sequence = row.get::<_, i64>(2)?.unsigned_abs();
        here.entry(lane).or_default().insert(sequence);
        raise(known.entry(lane).or_default(), sequence);
        if row.get::<_, i64>(4)? != 0 {
            continue;
        }
        let header: Option<SealedHeader> =
            serde_json::from_str(row.get_ref(3)?.as_str().unwrap_or("")).ok();
        for seen in header.map(|header| header.seen).unwrap_or_default() {
            let claimed = Lane { device: seen.0, ..lane };
            if seen.0 == own {
                raise(of_own.entry((claimed, lane.device)).or_default(), seen.1);
            } else if owners
                .get(&seen.0)
                .is_none_or(|owner| owner.founder || owner.person == lane.of)
            {
                raise(known.entry(claimed).or_default(), seen.1);
            }
        }
    }
    let nothing = BTreeSet::new();
    let missing = known.into_iter().map(|(lane, highest)| {
        let here = here.get(&lane).unwrap_or(&nothing);
        let lacking = (1..=highest).filter(|sequence| !here.contains(sequence));
        Missing { device: lane.device, sequences: lacking.take(MOST_NAMED).collect() }
    });
    let last = |lane: &Lane| here.get(lane).and_then(BTreeSet::last).copied().unwrap_or_default();
    let beyond = of_own.iter().map(|((lane, by), sequence)| Beyond {
        by: *by,
        sequence: *sequence,
        last: last(lane),
    });
    Ok(Gaps {
        missing: missing.filter(|missing| !missing.sequences.is_empty()).collect(),
        beyond: beyond.filter(|beyond| beyond.sequence > beyond.last).collect(),
    })
}

fn raise(highest: &mut u64, to: u64) {
    *highest = to.max(*highest);
}

/// Whose a device is.
struct Owner {
    person: PersonId,
    founder: bool,
}

fn owners(connection: &Connection) -> Result<BTreeMap<DeviceId, Owner>> {
    let sql =
        "SELECT device, person, coalesce((SELECT coach FROM person p WHERE p.person = d.person), 0)
               FROM device_person d";
    let mut statement = connection.prepare_cached(sql)?;
    let rows = statement.query_map([], |row| {
        let owner = Owner { person: PersonId(row.get(1)?), founder: row.get(2)? };
        Ok((DeviceId(row.get(0)?), owner))
    })?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}

/// Devices with two different leaves at one place, or one that does not follow what is there before it: a restored backup or
/// a cloned device.
pub(crate) fn forked(connection: &Connection) -> Result<Vec<DeviceId>> {
    let mut statement = connection.prepare_cached(
        "SELECT device FROM (SELECT device FROM leaf GROUP BY device, of, sequence HAVING count(*) > 1)
         UNION
         SELECT l.device FROM leaf l JOIN leaf b
           ON b.device = l.device AND b.of = l.of AND b.sequence = l.sequence - 1
         WHERE NOT EXISTS (SELECT 1 FROM leaf p WHERE p.device = l.device AND p.of = l.of
                             AND p.sequence = l.sequence - 1 AND p.content = l.previous)
         ORDER BY 1",
    )?;
    let rows = statement.query_map([], |row| Ok(DeviceId(row.get(0)?)))?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}
