//! Who counts, in the tables: what was taken in is withdrawn and comes back, whatever came first.

use std::path::Path;

use proptest::prelude::*;
use serde_json::value::to_raw_value;

use super::members::{Trusted, on_opening, settle};
use super::sealed::tests::{Somebody, crew, entry, somebody};
use super::sealed::{Follows, SealedLeaf};
use super::take_in::{bodies, insert};
use crate::id::PersonId;
use crate::instant::Instant;
use crate::journal::{Admit, Entry, EntryId, HexKey, Hlc, Kind, LastLeaf, Remove};
use crate::store::{Draft, Store, connect, dump};
use crate::trust::{Certificate, Head, Standing, Stop};

/// A coach's device on which Ana was taken in.
pub(super) fn coachs(coach: &Somebody, ana: &Somebody) -> (Store, Trusted, Standing) {
    let (certificate, founder) = (coach.certificate, Some(coach.certificate));
    let trusted = Trusted { certificate, founder };
    let connection = connect(Path::new(":memory:")).unwrap().0;
    let mut store = Store::new(connection, certificate.device(), trusted.own());
    on_opening(&mut store, &trusted).unwrap();
    let (person, keys) = (ana.id(), ana.certificate.person_keys());
    let admit =
        Admit { person, sign: keys.sign.into(), open: keys.open.into(), label: "Ana".into() };
    let at = Instant { wall_ms: 1_793_728_000_000, offset_min: 0, boot_ms: 0, boot_id: "a".into() };
    let draft = Draft::correct(Admit::record_of(person), admit);
    store.append(&at, vec![draft]).unwrap();
    let standing = store.write(|tx| settle(tx, &trusted)).unwrap();
    (store, trusted, standing)
}

/// Four leaves of a chain, an entry each.
fn chain(coach: &Somebody, ana: &Somebody) -> Vec<SealedLeaf> {
    chain_of(coach, ana, 4)
}

/// So many leaves of a chain, an entry each.
pub(super) fn chain_of(coach: &Somebody, ana: &Somebody, leaves: u64) -> Vec<SealedLeaf> {
    let (thread, certificate) = ((crew(coach), ana.id()), ana.certificate);
    let mut follows = Follows::nothing(thread.0, thread.1, &certificate);
    let next = |number: u64| {
        let entries = vec![entry(certificate.device(), number)];
        let leaf = SealedLeaf::write(certificate, thread, follows, Vec::new(), entries);
        follows = Follows { sequence: leaf.header.sequence, content: leaf.content };
        leaf
    };
    (1..=leaves).map(next).collect()
}

/// Another laptop of the coach's, with the keys of somebody else's device.
fn laptop(coach: &Somebody) -> Certificate {
    Certificate::sign(&coach.person, &somebody(3).certificate.device_keys(), 2)
}

/// The coach's leaf in Ana's thread that removes her phone, of whose leaves those count that this one reaches.
fn removal(coach: &Somebody, ana: &Somebody, head: &SealedLeaf) -> SealedLeaf {
    let (laptop, phone) = (laptop(coach), ana.certificate.device());
    let SealedLeaf { header, content, .. } = head;
    let sequence = header.sequence;
    let heads = vec![LastLeaf { device: phone, sequence, content: HexKey(*content) }];
    let body = to_raw_value(&Remove { person: ana.id(), device: Some(phone), heads }).unwrap();
    let at = Instant { wall_ms: 1_793_728_900_000, offset_min: 0, boot_ms: 0, boot_id: "b".into() };
    let hlc = Hlc { ms: at.wall_ms, count: 0 };
    let id = EntryId { device: laptop.device(), number: sequence };
    let record = Some(Remove::record_of(phone));
    let said = Entry::write(id, hlc, &at, record, Vec::new(), Remove::NAME, body).unwrap();
    let follows = Follows { sequence: sequence - 1, content: [0; 32] };
    SealedLeaf::write(laptop, (crew(coach), ana.id()), follows, Vec::new(), vec![said])
}

/// What a device is given.
#[derive(Clone, Copy, Debug)]
enum Given {
    Leaf(usize),
    /// Ana's word that only what a leaf reaches counts.
    Stop(usize),
    /// The coach's.
    Remove(usize),
}

fn give(
    to: &mut (Store, Trusted, Standing),
    [coach, ana]: [&Somebody; 2],
    leaves: &[SealedLeaf],
    given: Given,
) {
    let (store, trusted, standing) = to;
    let mut taken = |leaf: &SealedLeaf, file: &[u8]| {
        let file = (&leaf.name(file), file.len());
        store.write(|tx| insert(tx, trusted, standing, file, leaf, bodies(leaf))).unwrap().1
    };
    let settled = match given {
        Given::Leaf(at) => taken(&leaves[at], &at.to_be_bytes()),
        Given::Remove(at) => taken(&removal(coach, ana, &leaves[at]), &[at as u8]),
        Given::Stop(at) => {
            let SealedLeaf { header, content, .. } = &leaves[at];
            let (device, of, sequence) = (header.device, header.of, header.sequence);
            let stop = Stop::sign(&ana.person, Head { device, of, sequence, content: *content });
            let settled = store.write(|tx| {
                tx.execute("INSERT OR IGNORE INTO stop VALUES (?1)", [&stop.bytes()[..]])?;
                settle(tx, trusted)
            });
            Some(settled.unwrap())
        }
    };
    if let Some(settled) = settled {
        *standing = settled;
    }
}

/// The numbers of Ana's entries that count, and of those that are kept.
fn numbers(store: &Store, ana: &Somebody) -> (Vec<i64>, Vec<i64>) {
    let read = |table: &str| -> Vec<i64> {
        let sql = format!("SELECT n FROM {table} WHERE device = ?1 ORDER BY n");
        let mut statement = store.reader().prepare(&sql).unwrap();
        let rows = statement.query_map([ana.certificate.device().0], |row| row.get(0)).unwrap();
        rows.collect::<rusqlite::Result<_>>().unwrap()
    };
    (read("entry"), read("held"))
}

#[test]
fn a_stop_that_comes_late_withdraws_and_a_higher_one_gives_back() {
    let (coach, ana) = (somebody(1), somebody(2));
    let leaves = chain(&coach, &ana);
    let mut device = coachs(&coach, &ana);
    for at in 0..4 {
        give(&mut device, [&coach, &ana], &leaves, Given::Leaf(at));
    }
    assert_eq!(numbers(&device.0, &ana), (vec![1, 2, 3, 4], vec![]));
    give(&mut device, [&coach, &ana], &leaves, Given::Stop(1));
    assert_eq!(numbers(&device.0, &ana), (vec![1, 2], vec![3, 4]));
    give(&mut device, [&coach, &ana], &leaves, Given::Stop(2));
    assert_eq!(numbers(&device.0, &ana), (vec![1, 2, 3], vec![4]));
    let again = on_opening(&mut device.0, &device.1).unwrap();
    assert_eq!(again, device.2, "an opening finds the same");
}

/// A coach's device that took in what another laptop of the coach's said in Ana's thread and in Ben's.
struct SaidTwice {
    store: Store,
    trusted: Trusted,
    laptop: Certificate,
    leaves: [SealedLeaf; 2],
}

impl SaidTwice {
    fn new([coach, ana, ben]: [&Somebody; 3], said: [&Entry; 2]) -> SaidTwice {
        let (mut store, trusted, mut standing) = coachs(coach, ana);
        let laptop = laptop(coach);
        let thread = |of: &Somebody, said: &Entry| {
            let follows = Follows::nothing(crew(coach), of.id(), &laptop);
            let of = (crew(coach), of.id());
            SealedLeaf::write(laptop, of, follows, Vec::new(), vec![said.clone()])
        };
        let leaves = [thread(ana, said[0]), thread(ben, said[1])];
        for leaf in &leaves {
            let taken = store.write(|tx| {
                insert(tx, &trusted, &standing, (&leaf.name(b"file"), 4), leaf, bodies(leaf))
            });
            standing = taken.unwrap().1.unwrap_or(standing);
        }
        SaidTwice { store, trusted, laptop, leaves }
    }

    /// The lines of the laptop's in a table.
    fn lines(&self, table: &str) -> Vec<i64> {
        let sql = format!("SELECT digest FROM {table} WHERE device = ?1 ORDER BY digest");
        let mut statement = self.store.reader().prepare(&sql).unwrap();
        let rows = statement.query_map([self.laptop.device().0], |row| row.get(0)).unwrap();
        rows.collect::<rusqlite::Result<_>>().unwrap()
    }

    /// How many of them count, and in how many threads they were heard.
    fn counts(&self) -> (usize, usize) {
        (self.lines("entry").len(), self.lines("heard").len())
    }

    /// The coach's paper ends the laptop's lane in one thread, after that leaf or before any.
    fn ends(&mut self, coach: &Somebody, after: Option<usize>, of: PersonId) {
        let nothing = (0, [0; 32]);
        let (sequence, content) = after.map_or(nothing, |at| (1, self.leaves[at].content));
        let head = Head { device: self.laptop.device(), of, sequence, content };
        let stop = Stop::sign(&coach.person, head);
        let settled = self.store.write(|tx| {
            tx.execute("INSERT OR IGNORE INTO stop VALUES (?1)", [&stop.bytes()[..]])?;
            settle(tx, &self.trusted)
        });
        drop(settled.unwrap());
    }
}

/// What a coach says to everybody stands in a leaf of every thread. A laptop of the coach's that was stopped counts in one
/// thread, then in another: whichever leaf counts, the entry is there, and that thread has heard of it.
#[test]
fn an_entry_of_two_threads_counts_with_either_leaf() {
    let (coach, ana, ben) = (somebody(1), somebody(2), somebody(3));
    let said = entry(laptop(&coach).device(), 1);
    let mut twice = SaidTwice::new([&coach, &ana, &ben], [&said, &said]);
    assert_eq!(twice.counts(), (1, 2));
    twice.ends(&coach, None, ana.id());
    assert_eq!(twice.counts(), (0, 0));
    // Of the two that were withdrawn the first to come back brings it.
    twice.ends(&coach, Some(0), ana.id());
    assert_eq!(twice.counts(), (1, 1));
    twice.ends(&coach, Some(1), ben.id());
    assert_eq!(twice.counts(), (1, 2));
    assert!(twice.lines("held").is_empty());
}

/// A laptop that was copied says one thing to Ana and another to Ben under one number: both are kept, and each counts
/// with the leaf that it stands in.
#[test]
fn two_lines_of_one_number_count_each_with_its_own_leaf() {
    let (coach, ana, ben) = (somebody(1), somebody(2), somebody(3));
    let device = laptop(&coach).device();
    let said = entry(device, 1);
    let other = Entry::read(device, &said.raw.replace("Zoë", "Zoe")).unwrap();
    assert!(said.id == other.id && said.digest() != other.digest());
    let mut twice = SaidTwice::new([&coach, &ana, &ben], [&said, &other]);
    let mut both = [said.digest(), other.digest()];
    both.sort_unstable();
    assert_eq!((twice.lines("entry"), twice.lines("heard")), (both.to_vec(), both.to_vec()));
    assert!(twice.lines("held").is_empty());
    twice.ends(&coach, None, ana.id());
    twice.ends(&coach, Some(1), ben.id());
    assert_eq!(twice.lines("entry"), [other.digest()]);
    assert_eq!(twice.lines("heard"), [other.digest()]);
    assert_eq!(twice.lines("held"), [said.digest()]);
}

/// Leaves that somebody dated back once their phone was removed, into a hole and beside a head: they are kept, and never
/// count; what a head reaches does when it comes.
#[test]
fn what_was_dated_back_is_held() {
    let (coach, ana) = (somebody(1), somebody(2));
    let mut leaves = chain(&coach, &ana);
    let after = |leaf: &SealedLeaf, number: u64| {
        let follows = Follows { sequence: leaf.header.sequence, content: leaf.content };
        let entries = vec![entry(ana.certificate.device(), number)];
        SealedLeaf::write(ana.certificate, (crew(&coach), ana.id()), follows, Vec::new(), entries)
    };
    leaves.extend([after(&leaves[0], 8), after(&leaves[1], 9)]);
    let mut device = coachs(&coach, &ana);
    let given = [0, 1, 3].map(Given::Leaf).into_iter();
    for given in given.chain([Given::Remove(3), Given::Remove(1)]) {
        give(&mut device, [&coach, &ana], &leaves, given);
    }
    assert_eq!(numbers(&device.0, &ana), (vec![1, 2, 4], vec![]));
    give(&mut device, [&coach, &ana], &leaves, Given::Leaf(4));
    give(&mut device, [&coach, &ana], &leaves, Given::Leaf(5));
    assert_eq!(numbers(&device.0, &ana), (vec![1, 2, 4], vec![8, 9]));
    give(&mut device, [&coach, &ana], &leaves, Given::Leaf(2));
    assert_eq!(numbers(&device.0, &ana), (vec![1, 2, 3, 4], vec![8, 9]));
}

/// An error while who counts is worked out ends that, and withdraws nothing.
#[test]
fn what_cannot_be_read_removes_nobody() {
    let (coach, ana) = (somebody(1), somebody(2));
    let leaves = chain(&coach, &ana);
    let (mut store, trusted, standing) = coachs(&coach, &ana);
    let taken = |tx: &rusqlite::Transaction<'_>| {
        insert(
            tx,
            &trusted,
            &standing,
            (&leaves[0].name(b"file"), 4),
            &leaves[0],
            bodies(&leaves[0]),
        )
    };
    store.write(taken).unwrap();
    // No identity has one byte: reading it fails, and nothing else does.
    store.write(|tx| Ok(tx.execute("UPDATE heard SET of = x'00'", [])?)).unwrap();
    assert!(store.write(|tx| settle(tx, &trusted)).is_err());
    assert_eq!(numbers(&store, &ana).0, [1]);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, ..ProptestConfig::default() })]

    /// Leaves, stops and removals in any order, some of them twice or never: what counts depends on which there are alone.
    #[test]
    fn the_tables_are_a_function_of_the_set(
        order in Just((0_usize..8).collect::<Vec<_>>()).prop_shuffle(),
        left_out in 0_usize..16,
    ) {
        let (coach, ana) = (somebody(1), somebody(2));
        let leaves = chain(&coach, &ana);
        let all = [
            Given::Leaf(0), Given::Leaf(1), Given::Leaf(2), Given::Leaf(3),
            Given::Stop(0), Given::Stop(2), Given::Remove(1), Given::Remove(2),
        ];
        let given: Vec<usize> = order.into_iter().filter(|at| *at != left_out).collect();
        let mut sorted = given.clone();
        sorted.sort_unstable();
        let states = [given.clone(), sorted, [given.clone(), given].concat()].map(|given| {
            let mut device = coachs(&coach, &ana);
            for at in given {
                give(&mut device, [&coach, &ana], &leaves, all[at]);
            }
            (dump(device.0.reader()).unwrap(), numbers(&device.0, &ana))
        });
        prop_assert_eq!(&states[0], &states[1]);
        prop_assert_eq!(&states[0], &states[2]);
    }
}
