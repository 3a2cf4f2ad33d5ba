//! Who counts here: the tables of who signed for whom, worked out again whenever one of the things they follow from
//! arrives, and what that changes.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};

use rusqlite::{Connection, Transaction, params};

use super::counting::recount;
use super::forget::forgotten_elsewhere;
use super::ledger::{self, Holds, holds};
use crate::error::{Error, Result};
use crate::id::{CrewId, DeviceId, PersonId};
use crate::journal::{Admit, Body, Entry, Forgot, Kind, LastLeaf, Remove, Stopped, body_of};
use crate::store::{Own as Whose, Store, line_in, refold, refold_of};
use crate::trust::{
    Certificate, Facts, Head, Lane, Person, PublicKeys, Said, Standing, Stop, Word, WordName,
    crew_of,
};

/// Whose device this is, and whose crew it is in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Trusted {
    /// The device's own certificate.
    pub(crate) certificate: Certificate,
    /// The founder's device that was compared in person; none before.
    pub(crate) founder: Option<Certificate>,
}

impl Trusted {
    /// Whose device it is.
    pub(crate) fn own(&self) -> Whose {
        let person = self.certificate.person();
        let coach = self.founder.is_some_and(|founder| founder.person() == person);
        Whose { person, coach }
    }

    /// The crew.
    pub(crate) fn crew(&self) -> Option<CrewId> {
        Some(crew_of(&self.founder?.person_keys().sign))
    }

    /// What is known from the first on, without anything that a carrier brought.
    fn known(&self) -> impl Iterator<Item = Certificate> + use<> {
        [Some(self.certificate), self.founder].into_iter().flatten()
    }
}

/// Notes a certificate that a device signed under, in a leaf: that it is the person's own is shown by that. What others
/// claimed of the same device goes. Says whether anything changed.
pub(crate) fn add_certificate(tx: &Transaction<'_>, certificate: &Certificate) -> Result<bool> {
    let sql = "INSERT INTO certificate VALUES (?1, 1)
               ON CONFLICT DO UPDATE SET proven = 1 WHERE proven = 0";
    let new = tx.prepare_cached(sql)?.execute([&certificate.bytes()[..]])? > 0;
    if new {
        let sql = "DELETE FROM certificate
                   WHERE proven = 0 AND substr(bytes, ?2, 32) = ?3 AND bytes != ?1";
        let key = certificate.device_keys().sign;
        tx.prepare_cached(sql)?.execute(params![certificate.bytes(), DEVICE_SIGN, key])?;
    }
    Ok(new)
}

/// Where the device's key that signs begins in a certificate, counted from 1.
const DEVICE_SIGN: i64 = 66;

/// Notes a certificate that somebody showed in a pairing: until the device has signed something it is a claim.
pub(crate) fn add_claimed(tx: &Transaction<'_>, certificate: &Certificate) -> Result<()> {
    tx.prepare_cached("INSERT OR IGNORE INTO certificate VALUES (?1, 0)")?
        .execute([&certificate.bytes()[..]])?;
    Ok(())
}

/// True where a device is known as somebody else's than a certificate says: anybody can certify a device's public keys.
pub(crate) fn is_another_persons(
    connection: &Connection,
    certificate: &Certificate,
) -> Result<bool> {
    let sql = "SELECT 1 FROM certificate
               WHERE substr(bytes, ?1, 32) = ?2 AND substr(bytes, 2, 32) != ?3";
    let keys = (certificate.device_keys().sign, certificate.person_keys().sign);
    Ok(connection.prepare_cached(sql)?.exists(params![DEVICE_SIGN, keys.0, keys.1])?)
}

/// The certificate that a device has signed under, where it is known.
pub(super) fn certificate_of(
    tx: &Transaction<'_>,
    device: DeviceId,
) -> Result<Option<Certificate>> {
    let mut statement =
        tx.prepare_cached("SELECT bytes FROM certificate WHERE proven = 1 ORDER BY bytes")?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        let read = Certificate::read(row.get_ref(0)?.as_blob().unwrap_or_default());
        if let Some(certificate) = read.ok().filter(|known| known.device() == device) {
            return Ok(Some(certificate));
        }
    }
    Ok(None)
}

/// Who counts, on opening. The tables are put right only where the home says something that they do not know yet: a
/// kill may have come between the two.
pub(crate) fn on_opening(store: &mut Store, trusted: &Trusted) -> Result<Standing> {
    let sql = "SELECT 1 FROM certificate WHERE bytes = ?1";
    for certificate in trusted.known() {
        if !store.reader().prepare_cached(sql)?.exists([&certificate.bytes()[..]])? {
            return store.write(|tx| settle(tx, trusted));
        }
    }
    standing(store.reader(), trusted)
}

/// Works out who counts, from what is here.
fn standing(connection: &Connection, trusted: &Trusted) -> Result<Standing> {
    let own = trusted.certificate.person();
    let keys = trusted.certificate.person_keys();
    let (certificates, stops) = (certificates(connection, trusted)?, stops(connection)?);
    let words = words(connection)?;
    let ended: BTreeSet<DeviceId> = stops.iter().map(|stop| stop.head.device).collect();
    // What cannot be read is no reason to take anything for removed: the first error ends it.
    let failed = RefCell::new(None);
    let links = |lane: Lane| or_failed(ledger::links(connection, lane), &failed);
    let stands_in = |name: &WordName| or_failed(stands_in(connection, &ended, name), &failed);
    // Without a founder nobody is known but oneself.
    let founder = trusted.founder.map_or(keys, |founder| founder.person_keys());
    let (certificates, stops, words) = (&certificates, &stops, &words);
    let (links, stands_in) = (&links, &stands_in);
    let facts = Facts { founder, certificates, stops, words, links, stands_in };
    let mut standing = Standing::of_device(&facts, own, keys);
    if trusted.own().coach {
        standing.forgotten = forgotten_elsewhere(connection, &standing, &trusted.certificate)?;
    }
    failed.into_inner().map_or(Ok(standing), Err)
}

fn or_failed<T>(read: Result<Vec<T>>, failed: &RefCell<Option<Error>>) -> Vec<T> {
    read.unwrap_or_else(|error| {
        failed.borrow_mut().get_or_insert(error);
        Vec::new()
    })
}

/// Works out who counts and puts the tables right: who is whose, which leaves count, and what their entries come to.
pub(crate) fn settle(tx: &Transaction<'_>, trusted: &Trusted) -> Result<Standing> {
    for certificate in trusted.known() {
        add_certificate(tx, &certificate)?;
    }
    add_stops(tx)?;
    let standing = standing(tx, trusted)?;
    let changed = put_people(tx, trusted, &standing)?;
    let touched = recount(tx, &standing, &changed)?;
    refold_of(tx, &changed)?;
    touched.into_iter().try_for_each(|record| refold(tx, record))?;
    Ok(standing)
}

/// Notes the stops that entries hold. Each proves itself, whoever brought it.
fn add_stops(tx: &Transaction<'_>) -> Result<()> {
    for entry in all_said(tx)?.iter().filter(|entry| entry.kind == Stopped::NAME) {
        let Some(Body::Stopped(stopped)) = body_of(&entry.raw) else { continue };
        if let Some(stop) = Stop::read_text(&stopped.stop) {
            tx.prepare_cached("INSERT OR IGNORE INTO stop VALUES (?1)")?
                .execute([&stop.bytes()[..]])?;
        }
    }
    Ok(())
}

/// True for a kind that says something of who counts, or of who is sealed to.
pub(super) fn is_of_people(kind: &str) -> bool {
    [Admit::NAME, Remove::NAME, Stopped::NAME, Forgot::NAME].contains(&kind)
}

pub(super) fn certificates(connection: &Connection, trusted: &Trusted) -> Result<Vec<Certificate>> {
    let mut statement =
        connection.prepare_cached("SELECT bytes FROM certificate ORDER BY bytes")?;
    let rows = statement.query_map([], |row| row.get::<_, Vec<u8>>(0))?;
    let bytes: Vec<Vec<u8>> = rows.collect::<rusqlite::Result<_>>()?;
    // Checked when they were noted; checked again, for a bit may have turned since.
    let read = bytes.iter().filter_map(|bytes| Certificate::read(bytes).ok());
    Ok(read.chain(trusted.known()).collect())
}

fn stops(connection: &Connection) -> Result<Vec<Stop>> {
    let mut statement = connection.prepare_cached("SELECT bytes FROM stop")?;
    let rows = statement.query_map([], |row| row.get::<_, Vec<u8>>(0))?;
    let bytes: Vec<Vec<u8>> = rows.collect::<rusqlite::Result<_>>()?;
    Ok(bytes.iter().filter_map(|bytes| Stop::read(bytes)).collect())
}

/// Everything that was said of people, also in leaves that do not count now: whether they do is what is asked.
fn words(connection: &Connection) -> Result<Vec<Word>> {
    Ok(all_said(connection)?.iter().filter_map(word).collect())
}

/// Entries that say something of who counts: those of leaves that count now, or of the others.
fn said(connection: &Connection, table: &str) -> Result<Vec<Entry>> {
    // The tables' indexes are of these words exactly.
    let sql = format!(
        "SELECT device, raw, digest FROM {table} WHERE kind IN ('admit', 'remove', 'stop')"
    );
    let mut statement = connection.prepare_cached(&sql)?;
    let mut rows = statement.query([])?;
    let mut found = Vec::new();
    while let Some(row) = rows.next()? {
        found.extend(Entry::read(DeviceId(row.get(0)?), line_in(row, 1, 2)?).ok());
    }
    Ok(found)
}

fn all_said(connection: &Connection) -> Result<Vec<Entry>> {
    Ok([said(connection, "entry")?, said(connection, "held")?].concat())
}

fn word(entry: &Entry) -> Option<Word> {
    let (person, said) = match body_of(&entry.raw)? {
        Body::Admit(admit) => {
            let keys = PublicKeys { sign: admit.sign.0, open: admit.open.0 };
            (admit.person, Said::Admit { keys })
        }
        Body::Remove(Remove { person, device, heads }) => {
            let heads = heads.into_iter().map(|LastLeaf { device, sequence, content }| Head {
                device,
                of: person,
                sequence,
                content: content.0,
            });
            let heads = heads.collect();
            let said = match device {
                Some(device) => Said::RemoveDevice { device, heads },
                None => Said::Remove { heads },
            };
            (person, said)
        }
        _ => return None,
    };
    let name = (entry.id.device, entry.id.number, entry.digest());
    let parents = entry.parents.iter();
    let parents = parents.map(|parent| (parent.device, parent.number, parent.digest)).collect();
    Some(Word { name, parents, person, said })
}

/// The leaves an entry stands in, by their threads. Which leaf it is matters where its device was stopped, and is
/// looked up only there. What this device has just said is in no leaf yet, and counts as long as the device does.
fn stands_in(
    connection: &Connection,
    ended: &BTreeSet<DeviceId>,
    (device, number, digest): &WordName,
) -> Result<Vec<(Lane, [u8; 32])>> {
    let (device, number, digest) = (*device, *number, *digest);
    let sql = "SELECT of FROM heard WHERE device = ?1 AND n = ?2 AND digest = ?3
               UNION SELECT of FROM held WHERE device = ?1 AND n = ?2 AND digest = ?3";
    let mut statement = connection.prepare_cached(sql)?;
    let threads: Vec<PersonId> = statement
        .query_map(params![device.0, number as i64, digest], |row| Ok(PersonId(row.get(0)?)))?
        .collect::<rusqlite::Result<_>>()?;
    let mut found = Vec::new();
    let mut statement = connection
        .prepare_cached("SELECT content, holds FROM leaf WHERE device = ?1 AND of = ?2")?;
    for of in threads {
        let lane = Lane { device, of };
        if !ended.contains(&device) {
            found.push((lane, [0; 32]));
            continue;
        }
        let mut rows = statement.query(params![device.0, of.0])?;
        while let Some(row) = rows.next()? {
            let held: Vec<Holds> = holds(row.get_ref(1)?.as_blob().unwrap_or_default());
            if held.contains(&(number, digest)) {
                found.push((lane, row.get(0)?));
            }
        }
    }
    Ok(found)
}

/// Writes down who is whose. Gives the devices that are somebody else's now.
fn put_people(
    tx: &Transaction<'_>,
    trusted: &Trusted,
    standing: &Standing,
) -> Result<BTreeSet<DeviceId>> {
    let before: BTreeMap<DeviceId, PersonId> = tx
        .prepare_cached("SELECT device, person FROM device_person")?
        .query_map([], |row| Ok((DeviceId(row.get(0)?), PersonId(row.get(1)?))))?
        .collect::<rusqlite::Result<_>>()?;
    let now: BTreeMap<DeviceId, PersonId> =
        standing.devices.iter().map(|(device, placed)| (*device, placed.person)).collect();
    let mut changed: BTreeSet<DeviceId> = BTreeSet::new();
    for (device, person) in &now {
        if before.get(device) != Some(person) {
            tx.execute(
                "INSERT OR REPLACE INTO device_person VALUES (?1, ?2)",
                params![device.0, person.0],
            )?;
            changed.insert(*device);
        }
    }
    for device in before.keys().filter(|device| !now.contains_key(device)) {
        tx.execute("DELETE FROM device_person WHERE device = ?1", [device.0])?;
        changed.insert(*device);
    }
    let labels = if trusted.own().coach { labels(tx, standing)? } else { BTreeMap::new() };
    tx.execute("DELETE FROM person", [])?;
    for (person, known) in &standing.people {
        let Person { founder, standing, .. } = known;
        // Before there is a crew nobody is its coach.
        let coach = *founder && trusted.founder.is_some();
        tx.prepare_cached("INSERT INTO person VALUES (?1, ?2, ?3, ?4)")?.execute(params![
            person.0,
            coach,
            standing,
            labels.get(person)
        ])?;
    }
    Ok(changed)
}

/// What the coach calls each member, in the coach's own words that count. A removal says nothing of that.
fn labels(tx: &Transaction<'_>, standing: &Standing) -> Result<BTreeMap<PersonId, String>> {
    let founders = |entry: &Entry| {
        let writer = standing.devices.get(&entry.id.device).map(|writer| writer.person);
        writer.and_then(|person| standing.people.get(&person)).is_some_and(|known| known.founder)
    };
    let mut admitted: Vec<(Entry, Admit)> = Vec::new();
    for entry in said(tx, "entry")?.into_iter().filter(founders) {
        if let Some(Body::Admit(admit)) = body_of(&entry.raw) {
            admitted.push((entry, admit));
        }
    }
    admitted.sort_by_key(|(entry, _)| (entry.hlc, entry.id));
    Ok(admitted.into_iter().map(|(_, admit)| (admit.person, admit.label)).collect())
}
