//! What a durable tap costs: one set through `Holdfast` (validated, logged, folded, screen read
//! back) beside the bare INSERT of a row of the same size with the same pragmas, in the same run on
//! the same disk. Aim: 1.25 times or less.
#![allow(
    missing_docs,
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a measurement that stops has failed, and its figures are what it is for"
)]

use std::hint::black_box;
use std::path::Path;
use std::time::{Duration, Instant};

use criterion::{Criterion, criterion_group, criterion_main};
use holdfast_tests::taps::{begin_day, finish, squat};
use holdfast_tests::timing::median;
use holdfast_tests::{Crew, DEMO_PLAN, Device};
use rusqlite::{Connection, params};

/// An athlete in a session, ready to log sets one after the other.
struct Lifter {
    crew: Crew,
    set: u32,
}

impl Lifter {
    fn new() -> Lifter {
        let crew = Crew::start(DEMO_PLAN, &["Ines"]).unwrap();
        let lifter = Lifter { crew, set: 0 };
        lifter.begin();
        lifter
    }

    fn device(&self) -> &Device {
        &self.crew.athletes[0]
    }

    fn begin(&self) {
        self.device().tap(begin_day("Squat evening")).unwrap();
    }

    /// Logs one set and says how long the tap took. Sessions are changed outside the measurement.
    fn log(&mut self) -> Duration {
        if self.set == 4 {
            self.device().tap(finish(7, 50)).unwrap();
            self.begin();
            self.set = 0;
        }
        self.set += 1;
        let tap = squat(Some(self.set), Some(60), Some(8), None);
        let at = self.device().now();
        let start = Instant::now();
        black_box(self.device().holdfast.tap(tap, None, at).unwrap());
        start.elapsed()
    }
}

/// One table, one row of the size of a set's entry, one durable commit.
struct Bare {
    connection: Connection,
    n: i64,
    raw: String,
}

impl Bare {
    fn new(folder: &Path) -> Bare {
        let connection = Connection::open(folder.join("bare.db")).unwrap();
        connection
            .execute_batch(
                "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA fullfsync = ON;
                 PRAGMA temp_store = MEMORY; PRAGMA journal_size_limit = 2097152;
                 CREATE TABLE entry (n INTEGER PRIMARY KEY, kind TEXT NOT NULL, raw TEXT NOT NULL) STRICT;",
            )
            .unwrap();
        // As long as the line of a set of this plan.
        Bare { connection, n: 0, raw: "x".repeat(517) }
    }

    fn insert(&mut self) -> Duration {
        self.n += 1;
        let start = Instant::now();
        let sql = "INSERT INTO entry VALUES (?1, 'lift', ?2)";
        self.connection.prepare_cached(sql).unwrap().execute(params![self.n, self.raw]).unwrap();
        start.elapsed()
    }
}

fn each(c: &mut Criterion) {
    let folder = tempfile::tempdir().unwrap();
    let (mut bare, mut lifter) = (Bare::new(folder.path()), Lifter::new());
    c.bench_function("bare durable insert", |b| {
        b.iter_custom(|times| (0..times).map(|_| bare.insert()).sum());
    });
    c.bench_function("one set through the holdfast", |b| {
        b.iter_custom(|times| (0..times).map(|_| lifter.log()).sum());
    });
}

/// The two in turn, so that a disk that slows down slows both; the ratio of the medians.
fn paired(_: &mut Criterion) {
    let folder = tempfile::tempdir().unwrap();
    let (mut bare, mut lifter) = (Bare::new(folder.path()), Lifter::new());
    let (mut inserts, mut sets) = (Vec::new(), Vec::new());
    for _ in 0..1500 {
        inserts.push(bare.insert());
        sets.push(lifter.log());
    }
    let (insert, set) = (median(inserts), median(sets));
    println!(
        "paired, 1500 each: bare insert {insert:?}, set {set:?}, ratio {:.2} (aim 1.25)",
        set.as_secs_f64() / insert.as_secs_f64()
    );
}

criterion_group!(benches, each, paired);
criterion_main!(benches);
