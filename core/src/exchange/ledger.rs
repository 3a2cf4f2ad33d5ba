//! The leaves of every lane: which are here, which are missing, which contradict each other.

use std::collections::{BTreeMap, BTreeSet};

use rusqlite::{Connection, OptionalExtension, Row, Transaction, params};

use super::sealed::{LaneHead, LanePart, SealedHeader, SealedLeaf, SealedName, Tag};
use crate::error::Result;
use crate::id::{DeviceId, PersonId};
use crate::journal::{Hlc, MAX_AHEAD_MS};
use crate::planted::{Planted, planted, with_planted};
use crate::trust::{Counts, Lane, Link};

/// Entries in a leaf at most: compression saturates there (measured), and a phone that is killed
/// half-way through an upload has little to send again.
pub(crate) const ENTRIES_A_LEAF: u64 = 200;

/// Most lanes that a leaf says it has seen.
const MOST_SEEN: i64 = 16;

/// An entry as a leaf holds it: its number and its line's digest.
pub(super) type Holds = (u64, i64);

/// Own entries that some thread's leaves do not hold yet.
pub(crate) fn unpublished(connection: &Connection) -> Result<u64> {
    let sql = "SELECT count(DISTINCT n) FROM outbox";
    let count: i64 = connection.prepare_cached(sql)?.query_row([], |row| row.get(0))?;
    Ok(count.unsigned_abs())
}

/// The last leaf of a lane: its sequence and content hash. Of two at one place the lower hash.
pub(super) fn last(connection: &Connection, lane: Lane) -> Result<Option<(u64, [u8; 32])>> {
    let sql = "SELECT sequence, content FROM leaf WHERE device = ?1 AND of = ?2
               ORDER BY sequence DESC, content LIMIT 1";
    let sql = &with_planted(Planted::OneChain, sql, "of = ?2", "?2 NOTNULL");
    let read = |row: &rusqlite::Row<'_>| Ok((row.get::<_, i64>(0)?.unsigned_abs(), row.get(1)?));
    let mut statement = connection.prepare_cached(sql)?;
    Ok(statement.query_row(params![lane.device.0, lane.of.0], read).optional()?)
}

/// Notes that a leaf exists here. Says whether it was new.
pub(super) fn insert(tx: &Transaction<'_>, leaf: &SealedLeaf, counts: Counts) -> Result<bool> {
    let latest = leaf.entries.iter().map(|entry| entry.hlc).max().unwrap_or_default();
    let header = &leaf.header;
    let previous = data_encoding::HEXLOWER.decode(header.previous.as_bytes()).unwrap_or_default();
    let holds: Vec<u8> = leaf
        .entries
        .iter()
        .flat_map(|entry| [entry.id.number.to_be_bytes(), entry.digest().to_be_bytes()].concat())
        .collect();
    let changed = tx
        .prepare_cached(
            "INSERT OR IGNORE INTO leaf VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11)",
        )?
        .execute(params![
            header.device.0,
            header.of.0,
            header.sequence as i64,
            leaf.content,
            previous,
            leaf.header_line,
            holds,
            code(counts),
            latest.ms,
            latest.count,
            leaf.signature,
        ])?;
    Ok(changed > 0)
}

/// What a leaf of one's own holds waits no longer.
pub(super) fn posted(tx: &Transaction<'_>, leaf: &SealedLeaf) -> Result<()> {
    let sql = "DELETE FROM outbox WHERE of = ?1 AND n = ?2 AND digest = ?3";
    let mut statement = tx.prepare_cached(sql)?;
    for entry in &leaf.entries {
        statement.execute(params![leaf.header.of.0, entry.id.number as i64, entry.digest()])?;
    }
    Ok(())
}

/// How the table has it.
pub(super) fn code(counts: Counts) -> i64 {
    match counts {
        Counts::Yes => 0,
        Counts::Unknown => 1,
        Counts::Removed => 2,
        Counts::TooMany => 3,
    }
}

/// What a leaf holds, as the table has it.
pub(super) fn holds(bytes: &[u8]) -> Vec<Holds> {
    let pair = |pair: &[u8]| {
        let eight = |at: usize| pair[at..at + 8].try_into().unwrap_or_default();
        (u64::from_be_bytes(eight(0)), i64::from_be_bytes(eight(8)))
    };
    bytes.chunks_exact(16).map(pair).collect()
}

/// Notes a file of a leaf, and how large it is.
pub(super) fn add_file(
    tx: &Transaction<'_>,
    (name, bytes): (&SealedName, usize),
    leaf: &SealedLeaf,
) -> Result<()> {
    tx.prepare_cached("INSERT OR IGNORE INTO file VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)")?.execute(
        params![
            name.device.0,
            name.tag,
            name.sequence as i64,
            name.hash,
            leaf.header.of.0,
            leaf.content,
            bytes as i64,
        ],
    )?;
    Ok(())
}

/// The files of a leaf.
pub(super) fn files_of(
    tx: &Transaction<'_>,
    lane: Lane,
    content: &[u8; 32],
) -> Result<Vec<SealedName>> {
    let sql = "SELECT device, tag, sequence, hash FROM file
               WHERE device = ?1 AND of = ?2 AND content = ?3";
    let mut statement = tx.prepare_cached(sql)?;
    let rows = statement.query_map(params![lane.device.0, lane.of.0, content], name_in)?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}

/// A file's name, by the first four columns of a row.
fn name_in(row: &Row<'_>) -> rusqlite::Result<SealedName> {
    Ok(SealedName {
        device: DeviceId(row.get(0)?),
        tag: row.get(1)?,
        sequence: row.get::<_, i64>(2)?.unsigned_abs(),
        hash: row.get(3)?,
    })
}

/// The leaf that a file is of: its lane and content hash.
pub(super) fn leaf_of(
    connection: &Connection,
    name: &SealedName,
) -> Result<Option<(Lane, [u8; 32])>> {
    let sql = "SELECT of, content FROM file
               WHERE device = ?1 AND tag = ?2 AND sequence = ?3 AND hash = ?4";
    let key = params![name.device.0, name.tag, name.sequence as i64, name.hash];
    let read = |row: &rusqlite::Row<'_>| {
        Ok((Lane { device: name.device, of: PersonId(row.get(0)?) }, row.get(1)?))
    };
    Ok(connection.prepare_cached(sql)?.query_row(key, read).optional()?)
}

/// Forgets a file that is lost, so that it is fetched again.
pub(super) fn drop_file(tx: &Transaction<'_>, name: &SealedName) -> Result<()> {
    tx.prepare_cached(
        "DELETE FROM file WHERE device = ?1 AND tag = ?2 AND sequence = ?3 AND hash = ?4",
    )?
    .execute(params![name.device.0, name.tag, name.sequence as i64, name.hash])?;
    Ok(())
}

/// True when a leaf has arrived or was cut here.
pub(super) fn is_here(connection: &Connection, lane: Lane, content: &[u8; 32]) -> Result<bool> {
    let sql = "SELECT 1 FROM leaf WHERE device = ?1 AND of = ?2 AND content = ?3";
    Ok(connection.prepare_cached(sql)?.exists(params![lane.device.0, lane.of.0, content])?)
}

/// How many leaves are here.
pub(crate) fn leaves(connection: &Connection) -> Result<u64> {
    let count: i64 = connection.query_row("SELECT count(*) FROM leaf", [], |row| row.get(0))?;
    Ok(count.unsigned_abs())
}

/// How many leaves do not count, by why: nobody knows their writer, a removed device, too many devices.
pub(crate) fn uncounted(connection: &Connection) -> Result<[u64; 3]> {
    let mut found = [0; 3];
    let sql = "SELECT counts, count(*) FROM leaf WHERE counts != 0 GROUP BY counts";
    let mut statement = connection.prepare_cached(sql)?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        let at = usize::try_from(row.get::<_, i64>(0)? - 1).unwrap_or_default();
        if let Some(place) = found.get_mut(at) {
            *place = row.get::<_, i64>(1)?.unsigned_abs();
        }
    }
    Ok(found)
}

/// The place of the leaf that came last.
pub(super) fn arrived(connection: &Connection) -> Result<i64> {
    let sql = "SELECT coalesce(max(rowid), 0) FROM leaf";
    Ok(connection.query_row(sql, [], |row| row.get(0))?)
}

/// Leaves that came after that one and do not count: a file of each, and why.
pub(super) fn uncounted_since(
    connection: &Connection,
    since: i64,
) -> Result<Vec<(String, Counts)>> {
    let sql = "SELECT f.device, f.tag, f.sequence, min(f.hash), l.counts FROM leaf l
               JOIN file f ON f.device = l.device AND f.of = l.of AND f.sequence = l.sequence AND f.content = l.content
               WHERE l.counts != 0 AND l.rowid > ?1 GROUP BY l.rowid ORDER BY l.rowid";
    let mut statement = connection.prepare_cached(sql)?;
    let rows = statement.query_map([since], |row| {
        let name = name_in(row)?;
        let why = match row.get::<_, i64>(4)? {
            2 => Counts::Removed,
            3 => Counts::TooMany,
            _ => Counts::Unknown,
        };
        Ok((name.to_string(), why))
    })?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}

/// The names of all files that are here.
pub(crate) fn names(connection: &Connection) -> Result<BTreeSet<SealedName>> {
    Ok(files(connection)?.into_keys().collect())
}

/// All files that are here, each with its size; 0 where that was not noted.
pub(super) fn files(connection: &Connection) -> Result<BTreeMap<SealedName, u64>> {
    let sql = "SELECT device, tag, sequence, hash, bytes FROM file";
    let mut statement = connection.prepare_cached(sql)?;
    let rows =
        statement.query_map([], |row| Ok((name_in(row)?, row.get::<_, i64>(4)?.unsigned_abs())))?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}

/// The files that are here but for those in some parts, which are not read: each with its size.
pub(super) fn files_but(
    connection: &Connection,
    passed_by: impl Fn(&LanePart) -> bool,
) -> Result<BTreeMap<SealedName, u64>> {
    let sql = "SELECT device, tag, sequence, hash, bytes FROM file
               WHERE (device, tag, sequence) > (?1, ?2, ?3) ORDER BY device, tag, sequence, hash";
    let mut statement = connection.prepare_cached(sql)?;
    let mut found = BTreeMap::new();
    let (mut device, mut tag, mut place) = (DeviceId(uuid::Uuid::nil()), Tag::of(&[]), -1);
    'behind: loop {
        let mut rows = statement.query(params![device.0, tag, place])?;
        while let Some(row) = rows.next()? {
            let name = name_in(row)?;
            let part = LanePart::of(&name);
            if passed_by(&part) {
                (device, tag, place) = (part.device, part.tag, part.last() as i64);
                continue 'behind;
            }
            found.insert(name, row.get::<_, i64>(4)?.unsigned_abs());
        }
        return Ok(found);
    }
}

/// A file of the leaf at a place, with its size.
pub(super) fn file_at(
    connection: &Connection,
    part: &LanePart,
    place: u64,
) -> Result<Option<(SealedName, u64)>> {
    let sql = "SELECT device, tag, sequence, hash, bytes FROM file
               WHERE device = ?1 AND tag = ?2 AND sequence = ?3 LIMIT 1";
    let key = params![part.device.0, part.tag, place as i64];
    let read = |row: &Row<'_>| Ok((name_in(row)?, row.get::<_, i64>(4)?.unsigned_abs()));
    Ok(connection.prepare_cached(sql)?.query_row(key, read).optional()?)
}

/// How the leaves of a lane follow one another.
pub(super) fn links(connection: &Connection, lane: Lane) -> Result<Vec<Link>> {
    let sql = "SELECT content, previous FROM leaf WHERE device = ?1 AND of = ?2";
    let sql = &with_planted(Planted::ByPlace, sql, "of = ?2", "of = ?2 ORDER BY sequence, content");
    let sql = &with_planted(Planted::ByClock, sql, "of = ?2", "of = ?2 ORDER BY hlc_ms, hlc_count");
    let mut statement = connection.prepare_cached(sql)?;
    let rows = statement.query_map(params![lane.device.0, lane.of.0], |row| {
        Ok(Link { content: row.get(0)?, previous: row.get(1)? })
    })?;
    let mut links: Vec<Link> = rows.collect::<rusqlite::Result<_>>()?;
    if planted(Planted::ByPlace) || planted(Planted::ByClock) {
        for at in 1..links.len() {
            links[at].previous = links[at - 1].content;
        }
    }
    Ok(links)
}

/// The threads that a device has leaves in, as far as they are here.
pub(crate) fn threads_of(connection: &Connection, device: DeviceId) -> Result<Vec<PersonId>> {
    let mut statement =
        connection.prepare_cached("SELECT DISTINCT of FROM leaf WHERE device = ?1 ORDER BY of")?;
    let rows = statement.query_map([device.0], |row| Ok(PersonId(row.get(0)?)))?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}

/// The last leaf of every run without a hole in a lane, the highest first: all that is here of it and counts is reached
/// down from these. What does not count is named by nobody, or it would count from then on.
pub(crate) fn tops(connection: &Connection, lane: Lane) -> Result<Vec<(u64, [u8; 32])>> {
    let sql = "SELECT l.sequence, l.content FROM leaf l WHERE l.device = ?1 AND l.of = ?2 AND l.counts = 0
                 AND NOT EXISTS (SELECT 1 FROM leaf n WHERE n.device = ?1 AND n.of = ?2
                                   AND n.previous = l.content AND n.counts = 0)
               ORDER BY l.sequence DESC, l.content";
    let mut statement = connection.prepare_cached(sql)?;
    let rows = statement.query_map(params![lane.device.0, lane.of.0], |row| {
        Ok((row.get::<_, i64>(0)?.unsigned_abs(), row.get(1)?))
    })?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}

/// How far the other lanes of a thread have come without a gap: what a leaf says its writer has seen.
pub(super) fn seen(connection: &Connection, own: Lane) -> Result<Vec<LaneHead>> {
    // The highest place below which as many places are taken as it says.
    let sql = "SELECT device, max(sequence), content FROM (
                 SELECT device, sequence, min(content) AS content,
                   row_number() OVER (PARTITION BY device ORDER BY sequence) AS place
                 FROM leaf WHERE of = ?1 AND device != ?2 GROUP BY device, sequence)
               WHERE place = sequence GROUP BY device ORDER BY device LIMIT ?3";
    let sql = &with_planted(Planted::SeenEverywhere, sql, "of = ?1", "?1 NOTNULL");
    let mut statement = connection.prepare_cached(sql)?;
    let rows = statement.query_map(params![own.of.0, own.device.0, MOST_SEEN], |row| {
        let content: [u8; 32] = row.get(2)?;
        let sequence = row.get::<_, i64>(1)?.unsigned_abs();
        Ok(LaneHead::new(DeviceId(row.get(0)?), sequence, &content))
    })?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}

/// The heads that a leaf names, by its header.
pub(super) fn seen_in(row: &Row<'_>) -> Result<Vec<LaneHead>> {
    let header: Option<SealedHeader> =
        serde_json::from_str(row.get_ref(0)?.as_str().unwrap_or("")).ok();
    Ok(header.map(|header| header.seen).unwrap_or_default())
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
