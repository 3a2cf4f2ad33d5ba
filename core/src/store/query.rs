//! Reading records back.

use chrono::NaiveDate;
use rusqlite::{Connection, OptionalExtension, ToSql, params};

use super::connect::line_in;
use crate::error::Result;
use crate::id::{DeviceId, PersonId, RecordId};
use crate::instant::Instant;
use crate::journal::{Body, Entry, EntryId, Kind, Session, body_of};

/// A record as it stands now.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Logged<T> {
    /// The record.
    pub record: RecordId,
    /// Whose it is.
    pub person: PersonId,
    /// The entry that is shown.
    pub id: EntryId,
    /// When its first version was written, milliseconds since 1970.
    pub first_ms: i64,
    /// The same in logical time: what sorts records.
    pub placed: i64,
    /// The wall clock's offset from UTC at the version shown, minutes east.
    pub offset_min: i32,
    /// The date it is about, where that is not the one it was first written on.
    pub on: Option<NaiveDate>,
    /// Versions nobody has replaced; more than one is a conflict.
    pub heads: u32,
    /// What it says.
    pub body: T,
}

impl Logged<Body> {
    /// The record that an entry begins, as a query would find it.
    pub(crate) fn begun(entry: &Entry, person: PersonId, body: Body) -> Logged<Body> {
        Logged {
            record: entry.record,
            person,
            id: entry.id,
            first_ms: entry.wall_ms,
            placed: entry.hlc.place(),
            offset_min: entry.offset_min,
            on: body.on(),
            heads: 1,
            body,
        }
    }

    /// The same record with its body's own type, when it is of that kind.
    pub(crate) fn of_kind<T: Kind>(self) -> Option<Logged<T>> {
        let Logged { record, person, id, first_ms, placed, offset_min, on, heads, body } = self;
        let body = T::from_body(body)?;
        Some(Logged { record, person, id, first_ms, placed, offset_min, on, heads, body })
    }
}

/// The date a record is about: the one it says, otherwise the local date it was first written on.
pub(crate) fn date_of<T>(logged: &Logged<T>) -> NaiveDate {
    let offset_min = logged.offset_min;
    let written = || {
        Instant { wall_ms: logged.first_ms, offset_min, boot_ms: 0, boot_id: String::new() }.date()
    };
    logged.on.unwrap_or_else(written)
}

/// Which records to read: every part left out matches all. Records taken back never match.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Query<'a> {
    pub record: Option<RecordId>,
    pub person: Option<PersonId>,
    pub session: Option<RecordId>,
    pub subject: Option<&'a str>,
    pub scheme: Option<&'a str>,
    /// At most so many, the latest first; without it all, the earliest first.
    pub latest: Option<u32>,
}

impl Query<'_> {
    /// Reads the matching records of kind `T`.
    pub(crate) fn read<T: Kind>(self, connection: &Connection) -> Result<Vec<Logged<T>>> {
        let found = self.bodies(Some(T::NAME), connection)?;
        Ok(found.into_iter().filter_map(Logged::of_kind).collect())
    }

    /// Reads the matching records of one kind, or of all.
    pub(crate) fn bodies(
        self,
        kind: Option<&str>,
        connection: &Connection,
    ) -> Result<Vec<Logged<Body>>> {
        let mut sql = String::from(
            "SELECT r.record, r.person, r.device, r.n, r.first_ms, e.offset_min, r.heads, e.raw, r.digest,
               r.placed
             FROM record r JOIN entry e ON e.device = r.device AND e.n = r.n AND e.digest = r.digest
             WHERE r.taken_back = 0",
        );
        let (person, session) = (self.person.map(|id| id.0), self.session.map(|id| id.0));
        let record = self.record.map(|id| id.0);
        fn param<T: ToSql>(value: &Option<T>) -> Option<&dyn ToSql> {
            value.as_ref().map(|value| value as &dyn ToSql)
        }
        let narrowed = [
            (" AND r.record = ?", param(&record)),
            (" AND r.kind = ?", param(&kind)),
            (" AND r.person = ?", param(&person)),
            (" AND r.session = ?", param(&session)),
            (" AND r.subject = ?", param(&self.subject)),
            (" AND r.scheme = ?", param(&self.scheme)),
        ];
        let mut values: Vec<&dyn ToSql> = Vec::new();
        for (condition, value) in narrowed {
            if let Some(value) = value {
                sql.push_str(condition);
                values.push(value);
            }
        }
        if let Some(limit) = &self.latest {
            sql.push_str(" ORDER BY r.placed DESC, r.record DESC LIMIT ?");
            values.push(limit);
        } else {
            sql.push_str(" ORDER BY r.placed, r.record");
        }
        let mut statement = connection.prepare_cached(&sql)?;
        let mut rows = statement.query(values.as_slice())?;
        let mut found = Vec::new();
        while let Some(row) = rows.next()? {
            let raw = line_in(row, 7, 8)?;
            let Some(body) = body_of(raw) else { continue };
            found.push(Logged {
                record: RecordId(row.get(0)?),
                person: PersonId(row.get(1)?),
                id: EntryId {
                    device: DeviceId(row.get(2)?),
                    number: row.get::<_, i64>(3)?.unsigned_abs(),
                },
                first_ms: row.get(4)?,
                placed: row.get(9)?,
                offset_min: row.get(5)?,
                on: body.on(),
                heads: row.get(6)?,
                body,
            });
        }
        Ok(found)
    }

    /// Reads the latest matching record.
    pub(crate) fn last<T: Kind>(self, connection: &Connection) -> Result<Option<Logged<T>>> {
        Ok(Query { latest: Some(1), ..self }.read(connection)?.into_iter().next())
    }
}

/// True when an entry is here as this line.
pub(crate) fn has_line(connection: &Connection, id: EntryId, digest: i64) -> Result<bool> {
    // Also where it does not count: it is there.
    let sql = "SELECT 1 FROM entry WHERE device = ?1 AND n = ?2 AND digest = ?3
               UNION ALL SELECT 1 FROM held WHERE device = ?1 AND n = ?2 AND digest = ?3";
    let mut statement = connection.prepare_cached(sql)?;
    Ok(statement.exists(params![id.device.0, id.number as i64, digest])?)
}

/// The entries of a record, the latest first.
pub(crate) fn versions(connection: &Connection, record: RecordId) -> Result<Vec<EntryId>> {
    let sql = "SELECT device, n FROM entry WHERE record = ?1
               ORDER BY hlc_ms DESC, hlc_count DESC, device DESC, n DESC";
    let mut statement = connection.prepare_cached(sql)?;
    let rows = statement.query_map([record.0], |row| {
        let number = row.get::<_, i64>(1)?.unsigned_abs();
        Ok(EntryId { device: DeviceId(row.get(0)?), number })
    })?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}

/// How many entries are here.
pub(crate) fn entries(connection: &Connection) -> Result<u64> {
    let count: i64 = connection.query_row("SELECT count(*) FROM entry", [], |row| row.get(0))?;
    Ok(count.unsigned_abs())
}

/// The number of the last entry that `device` wrote; 0 before the first.
pub(crate) fn last_number(connection: &Connection, device: DeviceId) -> Result<u64> {
    let sql = "SELECT coalesce(max(n), 0) FROM entry WHERE device = ?1";
    let last = connection.prepare_cached(sql)?.query_row([device.0], |row| row.get::<_, i64>(0))?;
    Ok(last.unsigned_abs())
}

/// The line of one entry, whatever became of its record since. In a forked journal the first by
/// digest.
pub(crate) fn line_of(connection: &Connection, id: EntryId) -> Result<Option<String>> {
    let sql = "SELECT raw, digest FROM entry WHERE device = ?1 AND n = ?2 ORDER BY digest LIMIT 1";
    let mut statement = connection.prepare_cached(sql)?;
    let key = params![id.device.0, id.number as i64];
    Ok(statement.query_row(key, |row| line_in(row, 0, 1).map(str::to_owned)).optional()?)
}

/// Devices, each with the number of the last entry of it that counts.
pub(crate) type WrittenHere = [(DeviceId, u64)];

/// The latest session written here, by the devices' own numbering and not by a wall clock: a session
/// logged under a clock a year ahead must not stand in the way for a year. Of several devices that a home
/// was, the last one comes first. A session that `is_it` refuses is passed over.
pub(crate) fn latest_session(
    connection: &Connection,
    here: &WrittenHere,
    mut is_it: impl FnMut(&Logged<Session>) -> Result<bool>,
) -> Result<Option<Logged<Session>>> {
    // Nearly every entry belongs to a session, so this looks at a few rows at the journal's end.
    let sql = "SELECT e.record, r.person FROM entry e JOIN record r ON r.record = e.record
               WHERE e.device = ?1 AND e.n <= ?2 AND e.kind = ?3 AND r.taken_back = 0
               ORDER BY e.n DESC";
    let mut statement = connection.prepare_cached(sql)?;
    for (device, last) in here.iter().rev() {
        let mut rows = statement.query(params![device.0, number(*last), Session::NAME])?;
        while let Some(row) = rows.next()? {
            let (record, person) = (RecordId(row.get(0)?), PersonId(row.get(1)?));
            let query = Query { person: Some(person), record: Some(record), ..Query::default() };
            let found = query.last(connection)?;
            // One that cannot be read hides those before it, as ever.
            match found {
                Some(session) if !is_it(&session)? => {}
                found => return Ok(found),
            }
        }
    }
    Ok(None)
}

/// Every entry of one session that was written here, in order, whatever became of it.
pub(crate) fn session_entries(
    connection: &Connection,
    session: RecordId,
    here: &WrittenHere,
) -> Result<Vec<Entry>> {
    let sql =
        "SELECT DISTINCT e.n, e.raw, e.digest FROM record r JOIN entry e ON e.record = r.record
               WHERE r.session = ?1 AND e.device = ?2 AND e.n <= ?3 ORDER BY e.n";
    let mut statement = connection.prepare_cached(sql)?;
    let mut found = Vec::new();
    for (device, last) in here {
        let mut rows = statement.query(params![session.0, device.0, number(*last)])?;
        while let Some(row) = rows.next()? {
            found.extend(Entry::read(*device, line_in(row, 1, 2)?).ok());
        }
    }
    Ok(found)
}

/// A number as SQLite has it: signed.
fn number(of: u64) -> i64 {
    i64::try_from(of).unwrap_or(i64::MAX)
}

/// How many records in conflict a person has.
pub(crate) fn conflicts(connection: &Connection, person: PersonId) -> Result<u32> {
    let sql = "SELECT count(*) FROM record WHERE person = ?1 AND heads > 1 AND taken_back = 0";
    Ok(connection.prepare_cached(sql)?.query_row([person.0], |row| row.get(0))?)
}

/// Entries that ask for a newer reader than this one: kept and carried, not shown.
pub(crate) fn unread(connection: &Connection) -> Result<u64> {
    // What its writer may not say has no record either, and can be read.
    let sql = "SELECT raw FROM entry e
               WHERE NOT EXISTS (SELECT 1 FROM record r WHERE r.record = e.record)";
    let mut statement = connection.prepare_cached(sql)?;
    let mut rows = statement.query([])?;
    let mut count = 0;
    while let Some(row) = rows.next()? {
        count += u64::from(row.get_ref(0)?.as_str().is_ok_and(|raw| body_of(raw).is_none()));
    }
    Ok(count)
}

/// Every entry's line as it was written, device by device.
pub(crate) fn journal_lines(connection: &Connection) -> Result<Vec<String>> {
    let mut statement =
        connection.prepare("SELECT raw, digest FROM entry ORDER BY device, n, digest")?;
    let lines = statement.query_map([], |row| line_in(row, 0, 1).map(str::to_owned))?;
    Ok(lines.collect::<rusqlite::Result<_>>()?)
}

/// The folded tables as text, ordered: equal texts mean equal states.
pub(crate) fn dump(connection: &Connection) -> Result<String> {
    let mut statement = connection.prepare(
        "SELECT hex(record) || ' ' || hex(person) || ' ' || kind || ' ' || hex(device) || ' ' || n
           || ' ' || digest || ' ' || first_ms || ' ' || placed || ' ' || coalesce(hex(session), '-') || ' ' || subject
           || ' ' || scheme || ' ' || heads || ' ' || taken_back FROM record
         UNION ALL SELECT 'device ' || hex(device) || ' ' || hex(person) FROM device_person
         ORDER BY 1",
    )?;
    let rows: Vec<String> =
        statement.query_map([], |row| row.get(0))?.collect::<rusqlite::Result<_>>()?;
    Ok(rows.join("\n"))
}
