//! What somebody logged before they joined: it waits to be sent only where they say so.

use std::collections::BTreeSet;

use chrono::NaiveDate;
use rusqlite::{Connection, Transaction, params};

use super::ledger::{Holds, holds};
use crate::error::Result;
use crate::id::{DeviceId, PersonId};
use crate::journal::{Here, Kind as _, Profile};

/// Entries of a device that were written before a date, by its own clock, and that none of its leaves holds. Who its
/// person is does not count as logged.
pub(crate) fn unsent_before(
    connection: &Connection,
    device: DeviceId,
    date: NaiveDate,
) -> Result<BTreeSet<Holds>> {
    let days = date.signed_duration_since(NaiveDate::default()).num_days();
    let sql = "SELECT n, digest FROM entry WHERE device = ?1 AND kind NOT IN (?2, ?3)
                 AND (wall_ms + offset_min * 60000) / 86400000 < ?4";
    let mut statement = connection.prepare(sql)?;
    let mut rows = statement.query(params![device.0, Profile::NAME, Here::NAME, days])?;
    let mut unsent = BTreeSet::new();
    while let Some(row) = rows.next()? {
        unsent.insert((row.get::<_, i64>(0)?.unsigned_abs(), row.get(1)?));
    }
    let mut statement = connection.prepare("SELECT holds FROM leaf WHERE device = ?1")?;
    let mut rows = statement.query([device.0])?;
    while let Some(row) = rows.next()? {
        for sent in holds(row.get_ref(0)?.as_blob().unwrap_or_default()) {
            unsent.remove(&sent);
        }
    }
    Ok(unsent)
}

/// Takes what was logged before a date out of what waits to be sent.
pub(crate) fn withhold(tx: &Transaction<'_>, device: DeviceId, date: NaiveDate) -> Result<()> {
    let mut statement = tx.prepare("DELETE FROM outbox WHERE n = ?1 AND digest = ?2")?;
    for (number, digest) in unsent_before(tx, device, date)? {
        statement.execute(params![number as i64, digest])?;
    }
    Ok(())
}

/// Lets it wait to be sent, in the thread of its person.
pub(crate) fn release(
    tx: &Transaction<'_>,
    person: PersonId,
    device: DeviceId,
    date: NaiveDate,
) -> Result<()> {
    let mut statement = tx.prepare("INSERT OR IGNORE INTO outbox VALUES (?1, ?2, ?3)")?;
    for (number, digest) in unsent_before(tx, device, date)? {
        statement.execute(params![person.0, number as i64, digest])?;
    }
    Ok(())
}
