//! What a device lists at a server: the parts of lanes that may have something new. What a carrier was seen to hold whole is
//! noted and passed by, so that a listing grows with what may be new and not with the history.

use std::collections::{BTreeMap, BTreeSet};

use rusqlite::{Connection, params};
use sha2::{Digest, Sha256};

use super::left_alone::Known;
use super::own::is_for_us;
use super::sealed::{Digits, LanePart, PLACES_A_PART, SealedName};
use super::{Bag, ListedFile, forget};
use crate::error::Result;
use crate::id::{CrewId, DeviceId};
use crate::store::Store;

const DAY_MS: i64 = 24 * 60 * 60 * 1000;
/// Days for which a part is taken for whole, and some more, up to as many again, that its name draws: parts that were noted
/// together are not all listed again in one exchange.
const WHOLE_DAYS: i64 = 7;
// The triggers of the table count so.
const _: () = assert!(PLACES_A_PART == 32, "the table of what was looked at counts parts of 32");

/// Notes that old are of a carrier that is used no more.
const KEPT_DAYS: i64 = 30;

/// What an exchange with a server looks through.
pub(crate) struct Look {
    carrier: Digits<16>,
    at_ms: i64,
    /// Parts that are listed; with true those of which this carrier was seen to hold all.
    listed: BTreeMap<LanePart, bool>,
    passed_by: BTreeSet<LanePart>,
}

impl Look {
    /// Chooses among the folders that a carrier names: on a coach's device all, on a member's those of the member's own
    /// thread, and of crewmates whose files it carries; but for those of which the carrier was seen to hold all not
    /// long ago. Of a carrier that no longer names one of these everything is listed.
    pub(crate) fn begin(
        (store, bag, crew): (&mut Store, &Bag, CrewId),
        (carrier, folders): (&str, &[String]),
        at_ms: i64,
    ) -> Result<Look> {
        let carrier = Digits::of(&Sha256::digest(carrier));
        let own = store.own();
        let forgotten = forget::forgotten(store.reader(), store.device())?;
        let carried: BTreeSet<LanePart> = bag.files().keys().map(LanePart::of).collect();
        let is_ours = |part: &LanePart| {
            let lane = (part.device, part.tag);
            is_for_us(own, crew, lane) && !forget::is_forgotten(&forgotten, crew, lane)
        };
        let named: BTreeSet<LanePart> =
            folders.iter().filter_map(|folder| LanePart::parse(folder)).collect();
        let mut noted = noted(store.reader(), carrier)?;
        if noted.keys().any(|part| !named.contains(part)) {
            forget_of(store, carrier)?;
            noted.clear();
        }
        let mut look = Look { carrier, at_ms, listed: BTreeMap::new(), passed_by: BTreeSet::new() };
        for part in named {
            let noted = noted.get(&part);
            if carried.contains(&part) {
                look.listed.insert(part, noted.is_some());
            } else if !is_ours(&part) {
                continue;
            } else if noted.is_some_and(|noted| (0..whole_ms(&part)).contains(&(at_ms - noted))) {
                look.passed_by.insert(part);
            } else {
                look.listed.insert(part, noted.is_some());
            }
        }
        Ok(look)
    }

    /// The folders to be listed.
    pub(crate) fn folders(&self) -> Vec<String> {
        self.listed.keys().map(ToString::to_string).collect()
    }

    /// True for a part that is not listed because the carrier holds all of it.
    pub(super) fn passes_by(&self, part: &LanePart) -> bool {
        self.passed_by.contains(part)
    }

    /// How many places there are in all parts that are not listed.
    pub(super) fn places_passed_by(&self) -> u64 {
        self.passed_by.len() as u64 * PLACES_A_PART
    }

    /// One of them, counted from 0.
    pub(super) fn place_passed_by(&self, at: u64) -> Option<(LanePart, u64)> {
        let part = self.passed_by.iter().nth(usize::try_from(at / PLACES_A_PART).ok()?)?;
        Some((*part, part.first + at % PLACES_A_PART))
    }

    /// Notes of which parts the carrier holds all, by what was listed. One that it no longer holds all of says that the others
    /// have to be looked at too.
    pub(super) fn note(
        &self,
        store: &mut Store,
        here: &BTreeMap<SealedName, u64>,
        listing: &[ListedFile],
        left_alone: &BTreeMap<(SealedName, u64), Known>,
    ) -> Result<()> {
        let there: BTreeMap<SealedName, u64> = listing
            .iter()
            .filter_map(|file| Some((SealedName::parse(&file.name)?, file.bytes)))
            .collect();
        let mut lacking = BTreeSet::new();
        let mut places: BTreeMap<LanePart, BTreeSet<u64>> = BTreeMap::new();
        for (name, bytes) in here {
            match there.get(name) {
                Some(there) if there == bytes => {
                    places.entry(LanePart::of(name)).or_default().insert(name.sequence);
                }
                _ => _ = lacking.insert(LanePart::of(name)),
            }
        }
        if self.listed.iter().any(|(part, whole)| *whole && lacking.contains(part)) {
            return self.forget(store);
        }
        // What is not here may have to be fetched, or told of, unless it is sealed to others.
        let is_told = |(name, bytes): (&SealedName, &u64)| {
            let known = left_alone.get(&(*name, *bytes));
            let silent = matches!(known, Some(Known::Useless(reason)) if reason.is_empty());
            // One of ours that is of no use lies there with other bytes.
            let useless = matches!(known, Some(Known::Useless(_)));
            if here.contains_key(name) { useless } else { !silent }
        };
        let told: BTreeSet<LanePart> = there
            .iter()
            .filter(|file| is_told(*file))
            .map(|(name, _)| LanePart::of(name))
            .collect();
        let full = |part: &&LanePart| {
            places.get(*part).is_some_and(|places| places.len() as u64 == PLACES_A_PART)
        };
        let whole: Vec<&LanePart> = (self.listed.keys())
            .filter(|part| !lacking.contains(*part) && !told.contains(*part))
            .filter(full)
            .collect();
        if whole.is_empty() {
            return Ok(());
        }
        store.write(|tx| {
            let mut insert =
                tx.prepare_cached("INSERT OR REPLACE INTO looked VALUES (?1, ?2, ?3, ?4, ?5)")?;
            for part in whole {
                if is_chained(tx, part)? {
                    let LanePart { device, tag, first } = part;
                    insert.execute(params![
                        device.0,
                        tag,
                        *first as i64,
                        self.carrier,
                        self.at_ms
                    ])?;
                }
            }
            tx.prepare_cached("DELETE FROM looked WHERE abs(at_ms - ?1) > ?2")?
                .execute([self.at_ms, KEPT_DAYS * DAY_MS])?;
            Ok(())
        })
    }

    /// Forgets what was noted of this carrier: the next exchange lists everything.
    pub(super) fn forget(&self, store: &mut Store) -> Result<()> {
        forget_of(store, self.carrier)
    }
}

fn forget_of(store: &mut Store, carrier: Digits<16>) -> Result<()> {
    let forget = "DELETE FROM looked WHERE carrier = ?1";
    store.write(|tx| Ok(tx.execute(forget, [carrier]).map(drop)?))
}

/// For how long a part is taken for whole.
fn whole_ms(part: &LanePart) -> i64 {
    let drawn = Sha256::digest(part.to_string())[0];
    (WHOLE_DAYS + i64::from(drawn) % WHOLE_DAYS) * DAY_MS
}

/// What was noted of a carrier, and when.
fn noted(connection: &Connection, carrier: Digits<16>) -> Result<BTreeMap<LanePart, i64>> {
    let sql = "SELECT device, tag, first, at_ms FROM looked WHERE carrier = ?1";
    let mut statement = connection.prepare_cached(sql)?;
    let rows = statement.query_map([carrier], |row| {
        let first = row.get::<_, i64>(2)?.unsigned_abs();
        let part = LanePart { device: DeviceId(row.get(0)?), tag: row.get(1)?, first };
        Ok((part, row.get(3)?))
    })?;
    Ok(rows.collect::<rusqlite::Result<_>>()?)
}

/// True when each leaf of a part, and each at the place after it, follows one that is here. Where one does not, the lane has a
/// second branch, of which this part may hold more.
fn is_chained(connection: &Connection, part: &LanePart) -> Result<bool> {
    let sql = "SELECT 1 FROM leaf n
               WHERE n.device = ?1 AND n.sequence BETWEEN max(2, ?3) AND ?4 + 1
                 AND n.of = (SELECT of FROM file WHERE device = ?1 AND tag = ?2 AND sequence = ?4 LIMIT 1)
                 AND NOT EXISTS (SELECT 1 FROM leaf p WHERE p.device = n.device AND p.of = n.of
                                   AND p.sequence = n.sequence - 1 AND p.content = n.previous)";
    let LanePart { device, tag, first } = part;
    let of_part = params![device.0, tag, *first as i64, part.last() as i64];
    Ok(!connection.prepare_cached(sql)?.exists(of_part)?)
}
