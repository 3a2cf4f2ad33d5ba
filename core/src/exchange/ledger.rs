//! The leaves of every journal: which are cut, which have arrived, which are missing.

use std::collections::{BTreeMap, BTreeSet};

use rusqlite::{Connection, OptionalExtension, Transaction, params};

use super::{Header, LEAF_FORMAT, Leaf, LeafName, MAX_LEAF_BYTES};
use crate::error::Result;
use crate::id::{CrewId, DeviceId};
use crate::journal::{Entry, Hlc, MAX_AHEAD_MS};
use crate::store::line_in;

/// Entries in a leaf at most: compression saturates there (measured), and a phone that is killed
/// half-way through an upload has little to send again.
pub(crate) const ENTRIES_A_LEAF: u64 = 200;

/// Leaves of a device that are known to exist and have not arrived.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Missing {
    pub device: DeviceId,
    pub sequences: Vec<u64>,
}

/// Entries `device` has written that no leaf holds yet.
pub(crate) fn unpublished(connection: &Connection, device: DeviceId) -> Result<u64> {
    let last: i64 = connection
        .prepare_cached("SELECT last FROM leaf WHERE device = ?1 ORDER BY sequence DESC LIMIT 1")?
        .query_row([device.0], |row| row.get(0))
        .optional()?
        .unwrap_or(0);
    let written: i64 = connection
        .prepare_cached("SELECT coalesce(max(n), 0) FROM entry WHERE device = ?1")?
        .query_row([device.0], |row| row.get(0))?;
    Ok((written - last).max(0).unsigned_abs())
}

/// Cuts one leaf from the entries that no leaf holds yet; `None` when there are none.
pub(crate) fn cut(tx: &Transaction<'_>, device: DeviceId, crew: CrewId) -> Result<Option<Leaf>> {
    let previous: Option<(i64, String, i64)> = tx
        .prepare_cached(
            "SELECT sequence, hash, last FROM leaf WHERE device = ?1 ORDER BY sequence DESC, hash LIMIT 1",
        )?
        .query_row([device.0], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))
        .optional()?;
    let (sequence, previous, _) = previous.unwrap_or((0, String::new(), 0));
    let last: i64 = tx
        .prepare_cached("SELECT coalesce(max(last), 0) FROM leaf WHERE device = ?1")?
        .query_row([device.0], |row| row.get(0))?;
    let mut entries: Vec<Entry> = Vec::new();
    let mut bytes = 0;
    let mut statement = tx.prepare_cached(
        "SELECT raw, digest FROM entry WHERE device = ?1 AND n > ?2 ORDER BY n LIMIT ?3",
    )?;
    let mut rows = statement.query(params![device.0, last, ENTRIES_A_LEAF as i64])?;
    while let Some(row) = rows.next()? {
        let raw = line_in(row, 0, 1)?;
        bytes += raw.len() + 1;
        // Room for the header; the rest goes into the next leaf.
        if bytes > MAX_LEAF_BYTES - 64 * 1024 {
            break;
        }
        // Numbers follow one another, or the leaf would not read.
        let follows =
            |entry: &Entry| entries.last().is_none_or(|last| last.id.number + 1 == entry.id.number);
        match Entry::read(device, raw) {
            Ok(entry) if follows(&entry) => entries.push(entry),
            _ => break,
        }
    }
    let (Some(first), Some(newest)) = (entries.first(), entries.last()) else { return Ok(None) };
    let header = Header {
        leaf: LEAF_FORMAT,
        crew,
        device,
        sequence: sequence.unsigned_abs() + 1,
        first: first.id.number,
        last: newest.id.number,
        previous,
        seen: seen(tx, device)?,
    };
    let leaf = Leaf::write(header, entries)?;
    insert(tx, &leaf)?;
    Ok(Some(leaf))
}

/// Notes that a leaf exists here. Says whether it was new.
pub(crate) fn insert(tx: &Transaction<'_>, leaf: &Leaf) -> Result<bool> {
    let latest = leaf.entries.iter().map(|entry| entry.hlc).max().unwrap_or_default();
    let header = &leaf.header;
    let changed = tx
        .prepare_cached("INSERT OR IGNORE INTO leaf VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)")?
        .execute(params![
            header.device.0,
            header.sequence as i64,
            leaf.hash,
            header.first as i64,
            header.last as i64,
            leaf.header_line,
            latest.ms,
            latest.count,
        ])?;
    Ok(changed > 0)
}

/// True when a leaf has arrived or was cut here.
pub(crate) fn is_here(connection: &Connection, leaf: &Leaf) -> Result<bool> {
    let sql = "SELECT 1 FROM leaf WHERE device = ?1 AND sequence = ?2 AND hash = ?3";
    let key = params![leaf.header.device.0, leaf.header.sequence as i64, leaf.hash];
    Ok(connection.prepare_cached(sql)?.exists(key)?)
}

/// How many leaves are here.
pub(crate) fn leaves(connection: &Connection) -> Result<u64> {
    let count: i64 = connection.query_row("SELECT count(*) FROM leaf", [], |row| row.get(0))?;
    Ok(count.unsigned_abs())
}

/// The names of all leaves that are here.
pub(crate) fn names(connection: &Connection) -> Result<BTreeSet<LeafName>> {
    let mut statement = connection.prepare_cached("SELECT device, sequence, hash FROM leaf")?;
    let rows = statement.query_map([], |row| {
        let hash: String = row.get(2)?;
        Ok(LeafName {
            device: DeviceId(row.get(0)?),
            sequence: row.get::<_, i64>(1)?.unsigned_abs(),
            hash: hash.chars().take(16).collect(),
        })
    })?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}

/// The names of a device's leaves, the latest first, a few of them: a stop keeps one from the shelf, and no
/// other is cut before that lies there.
pub(crate) fn names_back(connection: &Connection, device: DeviceId) -> Result<Vec<LeafName>> {
    let sql = "SELECT sequence, hash FROM leaf WHERE device = ?1 ORDER BY sequence DESC LIMIT 50";
    let mut statement = connection.prepare_cached(sql)?;
    let rows = statement.query_map([device.0], |row| {
        let hash: String = row.get(1)?;
        let (sequence, hash) = (row.get::<_, i64>(0)?.unsigned_abs(), hash.chars().take(16));
        Ok(LeafName { device, sequence, hash: hash.collect() })
    })?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}

/// The file of a leaf, put together again from what the database holds.
pub(crate) fn bytes(connection: &Connection, name: &LeafName) -> Result<Option<Vec<u8>>> {
    let row: Option<(String, i64, i64)> = connection
        .prepare_cached(
            "SELECT header, first, last FROM leaf
             WHERE device = ?1 AND sequence = ?2 AND substr(hash, 1, 16) = ?3",
        )?
        .query_row(params![name.device.0, name.sequence as i64, name.hash], |row| {
            Ok((row.get(0)?, row.get(1)?, row.get(2)?))
        })
        .optional()?;
    let Some((header, first, last)) = row else { return Ok(None) };
    let mut statement = connection.prepare_cached(
        "SELECT raw FROM entry WHERE device = ?1 AND n BETWEEN ?2 AND ?3 ORDER BY n, digest",
    )?;
    let raws: Vec<String> = statement
        .query_map(params![name.device.0, first, last], |row| row.get(0))?
        .collect::<rusqlite::Result<_>>()?;
    let bytes = Leaf::bytes_of(&header, raws.iter().map(String::as_str));
    // In a forked journal the rows of two branches lie together; then only the file itself will do.
    Ok(Leaf::read(name, &bytes).is_ok().then_some(bytes))
}

/// The highest sequence that is here of every device but `own`.
fn seen(connection: &Connection, own: DeviceId) -> Result<BTreeMap<DeviceId, u64>> {
    let mut statement = connection.prepare_cached(
        "SELECT device, max(sequence) FROM leaf WHERE device != ?1 GROUP BY device",
    )?;
    let rows = statement.query_map([own.0], |row| {
        Ok((DeviceId(row.get(0)?), row.get::<_, i64>(1)?.unsigned_abs()))
    })?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}

/// Counts what is known to exist and has not arrived: holes before a leaf that is here, and what
/// other devices say they have seen. A last leaf that nobody has seen cannot be known.
pub(crate) fn missing(connection: &Connection) -> Result<Vec<Missing>> {
    let mut here: BTreeMap<DeviceId, BTreeSet<u64>> = BTreeMap::new();
    let mut known: BTreeMap<DeviceId, u64> = BTreeMap::new();
    let mut statement = connection.prepare_cached("SELECT device, sequence, header FROM leaf")?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        let device = DeviceId(row.get(0)?);
        let sequence = row.get::<_, i64>(1)?.unsigned_abs();
        here.entry(device).or_default().insert(sequence);
        let header: Option<Header> =
            serde_json::from_str(row.get_ref(2)?.as_str().unwrap_or("")).ok();
        let claims = header.map(|header| header.seen).unwrap_or_default();
        for (device, sequence) in claims.into_iter().chain([(device, sequence)]) {
            let highest = known.entry(device).or_default();
            *highest = sequence.max(*highest);
        }
    }
    let nothing = BTreeSet::new();
    let missing = known.into_iter().map(|(device, highest)| {
        let here = here.get(&device).unwrap_or(&nothing);
        // A liar may claim any number: name the first hundred and stop.
        let sequences =
            (1..=highest).filter(|sequence| !here.contains(sequence)).take(100).collect();
        Missing { device, sequences }
    });
    Ok(missing.filter(|missing: &Missing| !missing.sequences.is_empty()).collect())
}

/// Devices with two different leaves of one sequence: a restored backup or a cloned device.
pub(crate) fn forked(connection: &Connection) -> Result<Vec<DeviceId>> {
    let mut statement = connection.prepare_cached(
        "SELECT DISTINCT device FROM (SELECT device FROM leaf GROUP BY device, sequence HAVING count(*) > 1)",
    )?;
    let rows = statement.query_map([], |row| Ok(DeviceId(row.get(0)?)))?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}

/// The latest logical time in any journal here, not further ahead of `wall_ms` than is followed.
pub(crate) fn latest_hlc(connection: &Connection, own: DeviceId, wall_ms: i64) -> Result<Hlc> {
    let read = |row: &rusqlite::Row<'_>| Ok(Hlc { ms: row.get(0)?, count: row.get(1)? });
    let followed = connection
        .prepare(
            "SELECT hlc_ms, hlc_count FROM leaf WHERE hlc_ms <= ?1
             ORDER BY hlc_ms DESC, hlc_count DESC LIMIT 1",
        )?
        .query_row([wall_ms.saturating_add(MAX_AHEAD_MS)], read)
        .optional()?
        .unwrap_or_default();
    let tail = connection
        .prepare("SELECT hlc_ms, hlc_count FROM entry WHERE device = ?1 ORDER BY n DESC LIMIT 1")?
        .query_row([own.0], read)
        .optional()?;
    // Its own last entry always counts, or its next one would sort before it.
    Ok(followed.max(tail.unwrap_or_default()))
}
