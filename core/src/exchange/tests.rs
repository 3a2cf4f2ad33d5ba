//! Who counts, in the tables: what was taken in is withdrawn and comes back, whatever came first.

use std::path::Path;

use proptest::prelude::*;

use super::members::{Trusted, on_opening, settle};
use super::sealed::tests::{Somebody, crew, entry, somebody};
use super::sealed::{Follows, SealedLeaf};
use super::take_in::{bodies, insert};
use crate::id::PersonId;
use crate::instant::Instant;
use crate::journal::Admit;
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

/// What a device is given.
#[derive(Clone, Copy, Debug)]
enum Given {
    Leaf(usize),
    /// Ana's word that only what a leaf reaches counts.
    Stop(usize),
}

fn give(to: &mut (Store, Trusted, Standing), ana: &Somebody, leaves: &[SealedLeaf], given: Given) {
    let (store, trusted, standing) = to;
    let settled = match given {
        Given::Leaf(at) => {
            let (leaf, file) = (&leaves[at], at.to_be_bytes());
            store
                .write(|tx| {
                    insert(
                        tx,
                        trusted,
                        standing,
                        (&leaf.name(&file), file.len()),
                        leaf,
                        bodies(leaf),
                    )
                })
                .unwrap()
                .1
        }
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
        give(&mut device, &ana, &leaves, Given::Leaf(at));
    }
    assert_eq!(numbers(&device.0, &ana), (vec![1, 2, 3, 4], vec![]));
    give(&mut device, &ana, &leaves, Given::Stop(1));
    assert_eq!(numbers(&device.0, &ana), (vec![1, 2], vec![3, 4]));
    give(&mut device, &ana, &leaves, Given::Stop(2));
    assert_eq!(numbers(&device.0, &ana), (vec![1, 2, 3], vec![4]));
    let again = on_opening(&mut device.0, &device.1).unwrap();
    assert_eq!(again, device.2, "an opening finds the same");
}

/// What a coach says to everybody stands in a leaf of every thread. A laptop of the coach's that was stopped counts in one
/// thread, then in another: whichever leaf counts, the entry is there, and that thread has heard of it.
#[test]
fn an_entry_of_two_threads_counts_with_either_leaf() {
    let (coach, ana, ben) = (somebody(1), somebody(2), somebody(3));
    let (mut store, trusted, mut standing) = coachs(&coach, &ana);
    // Another laptop, with the keys of somebody else's device.
    let laptop = Certificate::sign(&coach.person, &ben.certificate.device_keys(), 2);
    let said = entry(laptop.device(), 1);
    let leaves = [ana.id(), ben.id()].map(|of| {
        let follows = Follows::nothing(crew(&coach), of, &laptop);
        SealedLeaf::write(laptop, (crew(&coach), of), follows, Vec::new(), vec![said.clone()])
    });
    for leaf in &leaves {
        let taken = store.write(|tx| {
            insert(tx, &trusted, &standing, (&leaf.name(b"file"), 4), leaf, bodies(leaf))
        });
        standing = taken.unwrap().1.unwrap_or(standing);
    }
    let count = |store: &Store, table: &str, of: &str| -> i64 {
        let sql = format!("SELECT count(*) FROM {table} WHERE device = ?1 {of}");
        store.reader().query_row(&sql, [laptop.device().0], |row| row.get(0)).unwrap()
    };
    let ends = |store: &mut Store, head: Option<&SealedLeaf>, of: PersonId| {
        let nothing = (0, [0; 32]);
        let (sequence, content) = head.map_or(nothing, |leaf| (1, leaf.content));
        let stop =
            Stop::sign(&coach.person, Head { device: laptop.device(), of, sequence, content });
        let settled = store.write(|tx| {
            tx.execute("INSERT OR IGNORE INTO stop VALUES (?1)", [&stop.bytes()[..]])?;
            settle(tx, &trusted)
        });
        drop(settled.unwrap());
    };
    assert_eq!((count(&store, "entry", ""), count(&store, "heard", "")), (1, 2));
    ends(&mut store, None, ana.id());
    assert_eq!((count(&store, "entry", ""), count(&store, "heard", "")), (0, 0));
    // Of the two that were withdrawn the first to come back brings it.
    ends(&mut store, Some(&leaves[0]), ana.id());
    assert_eq!((count(&store, "entry", ""), count(&store, "heard", "")), (1, 1));
    ends(&mut store, Some(&leaves[1]), ben.id());
    assert_eq!((count(&store, "entry", ""), count(&store, "heard", "")), (1, 2));
    assert_eq!(count(&store, "held", ""), 0);
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

    /// Leaves and stops in any order, some of them twice or never: what counts depends on which there are alone.
    #[test]
    fn the_tables_are_a_function_of_the_set(
        order in Just(vec![0_usize, 1, 2, 3, 4, 5]).prop_shuffle(),
        left_out in 0_usize..12,
    ) {
        let (coach, ana) = (somebody(1), somebody(2));
        let leaves = chain(&coach, &ana);
        let all = [Given::Leaf(0), Given::Leaf(1), Given::Leaf(2), Given::Leaf(3), Given::Stop(0), Given::Stop(2)];
        let given: Vec<usize> = order.into_iter().filter(|at| *at != left_out).collect();
        let mut sorted = given.clone();
        sorted.sort_unstable();
        let states = [given.clone(), sorted, [given.clone(), given].concat()].map(|given| {
            let mut device = coachs(&coach, &ana);
            for at in given {
                give(&mut device, &ana, &leaves, all[at]);
            }
            (dump(device.0.reader()).unwrap(), numbers(&device.0, &ana))
        });
        prop_assert_eq!(&states[0], &states[1]);
        prop_assert_eq!(&states[0], &states[2]);
    }
}
