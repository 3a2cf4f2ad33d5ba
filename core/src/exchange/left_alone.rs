//! Files of a carrier that were fetched and are no use to this device: known by name and size, so that they are not fetched
//! again at each exchange.

use std::collections::{BTreeMap, BTreeSet};

use rusqlite::{Connection, Transaction, params};

use super::sealed::{SealedFault, SealedName};
use super::{CarriedFile, ListedFile};
use crate::error::Result;
use crate::store::Store;

/// How often a file is fetched that may still be arriving, where another file of its place in the lane has come meanwhile: then
/// it is taken for damaged.
pub(super) const MOST_TRIES: i64 = 12;

/// What is known of a file that was left alone.
pub(super) enum Known {
    /// It is never fetched again, for this reason; an empty one is nothing to say.
    Useless(String),
    /// It may still have been arriving, at its full size, each of so many times: it is fetched after all others.
    Torn(i64),
}

/// Files that were fetched for nothing, by name and size.
pub(super) fn left_alone(connection: &Connection) -> Result<BTreeMap<(SealedName, u64), Known>> {
    let mut statement =
        connection.prepare_cached("SELECT name, bytes, tries, reason FROM left_alone")?;
    let rows = statement.query_map([], |row| {
        let bytes = row.get::<_, i64>(1)?.unsigned_abs();
        let known = match row.get(2)? {
            0 => Known::Useless(row.get(3)?),
            tries => Known::Torn(tries),
        };
        let name = SealedName::parse(row.get_ref(0)?.as_str().unwrap_or_default());
        Ok(name.map(|name| ((name, bytes), known)))
    })?;
    // Nothing but names of leaves is ever fetched.
    Ok(rows.filter_map(rusqlite::Result::transpose).collect::<rusqlite::Result<_>>()?)
}

/// Notes which files were fetched for nothing, and why.
pub(super) fn leave_alone(store: &mut Store, files: &[(&CarriedFile, SealedFault)]) -> Result<()> {
    if files.is_empty() {
        return Ok(());
    }
    store.write(|tx| {
        let mut statement = tx.prepare_cached(
            "INSERT INTO left_alone VALUES (?1, ?2, ?3, ?4)
             ON CONFLICT DO UPDATE SET tries = tries + excluded.tries, reason = excluded.reason",
        )?;
        for (file, fault) in files {
            let tries = match fault {
                // A newer app reads it.
                SealedFault::Newer { .. } => continue,
                SealedFault::Torn => 1,
                _ => 0,
            };
            let reason = match fault {
                SealedFault::NotForUs => String::new(),
                fault => fault.to_string(),
            };
            let bytes = file.content.len() as i64;
            statement.execute(params![file.name, bytes, tries, reason])?;
        }
        Ok(())
    })
}

/// Notes that a file lies there with other bytes than ours, and that nothing replaces it.
pub(super) fn leave_as_it_is(tx: &Transaction<'_>, name: &SealedName, bytes: u64) -> Result<()> {
    tx.prepare_cached("INSERT OR REPLACE INTO left_alone VALUES (?1, ?2, 0, '')")?
        .execute(params![name.to_string(), bytes as i64])?;
    Ok(())
}

/// Forgets those that this carrier does not have, once there are more than so many: somebody may write new ones for ever.
/// Until then they stay, for another carrier may have them.
const MOST: usize = 10_000;

/// Keeps what is known of files left alone from growing without end.
pub(super) fn keep_few(
    store: &mut Store,
    known: &BTreeMap<(SealedName, u64), Known>,
    listing: &[ListedFile],
    passed_by: impl Fn(&SealedName) -> bool,
) -> Result<()> {
    if known.len() <= MOST {
        return Ok(());
    }
    let there: BTreeSet<SealedName> =
        listing.iter().filter_map(|file| SealedName::parse(&file.name)).collect();
    store.write(|tx| {
        let mut statement = tx.prepare_cached("DELETE FROM left_alone WHERE name = ?1")?;
        let gone = known.keys().filter(|(name, _)| !there.contains(name) && !passed_by(name));
        gone.map(|(name, _)| name.to_string())
            .try_for_each(|name| statement.execute([name]).map(drop))?;
        Ok(())
    })
}
