//! What a durable tap costs: one set through `Holdfast` (checked, logged, folded, screen back) beside
//! the bare durable INSERT of the same rows into the same tables with the same indexes and pragmas, in
//! the same run on the same disk, in turn. What lies between the two is our own work. Aim: at most 50
//! microseconds, whatever the disk takes.
#![expect(
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
use rusqlite::types::Value;
use rusqlite::{Connection, TransactionBehavior, params_from_iter};

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
        let screen = black_box(self.device().holdfast.tap(tap, None, at).unwrap());
        let took = start.elapsed();
        // Until the screen is there: a shell lets go of it when it has drawn the next.
        drop(screen);
        took
    }
}

/// The tables of a device's own database, empty, and the rows that logging one set put there.
struct Bare {
    connection: Connection,
    n: i64,
    entry: Vec<Value>,
    record: Vec<Value>,
}

/// The place of a column among a table's.
fn column(connection: &Connection, table: &str, name: &str) -> usize {
    let sql = format!("SELECT * FROM {table} LIMIT 0");
    connection.prepare(&sql).unwrap().column_index(name).unwrap()
}

impl Bare {
    /// Copies the tables from a device's file, and the rows of its last set.
    fn like(device: &Device, folder: &Path) -> Bare {
        // The device holds its own file.
        let copy = folder.join("copy");
        device.copy_to(&copy);
        let real = Connection::open(copy.join("holdfast.db")).unwrap();
        let connection = Connection::open(folder.join("bare.db")).unwrap();
        connection
            .execute_batch(
                "PRAGMA locking_mode = EXCLUSIVE; PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA fullfsync = ON;
                 PRAGMA checkpoint_fullfsync = ON; PRAGMA temp_store = MEMORY;
                 PRAGMA cell_size_check = ON; PRAGMA journal_size_limit = 2097152;",
            )
            .unwrap();
        let sql = "SELECT sql FROM sqlite_master WHERE sql IS NOT NULL ORDER BY type = 'index'";
        let mut tables = real.prepare(sql).unwrap();
        let made = tables.query_map([], |row| row.get::<_, String>(0)).unwrap();
        made.for_each(|sql| connection.execute_batch(&sql.unwrap()).unwrap());
        let last = |table: &str| {
            let sql = format!("SELECT * FROM {table} WHERE kind = 'lift' ORDER BY n DESC LIMIT 1");
            let mut rows = real.prepare(&sql).unwrap();
            let count = rows.column_count();
            let row = |row: &rusqlite::Row<'_>| (0..count).map(|at| row.get(at)).collect();
            rows.query_row([], row).unwrap()
        };
        Bare { entry: last("entry"), record: last("record"), connection, n: 0 }
    }

    fn insert(&mut self) -> Duration {
        self.n += 1;
        // Another number and another record each time, as time-ordered as the real ones.
        let mut id = self.n.to_be_bytes().to_vec();
        id.extend_from_slice(&[0x70; 8]);
        for (table, row) in [("entry", &mut self.entry), ("record", &mut self.record)] {
            row[column(&self.connection, table, "n")] = Value::Integer(self.n);
            row[column(&self.connection, table, "record")] = Value::Blob(id.clone());
        }
        let start = Instant::now();
        let tx = self.connection.transaction_with_behavior(TransactionBehavior::Immediate).unwrap();
        for (sql, row) in [(ENTRY, &self.entry), (RECORD, &self.record)] {
            tx.prepare_cached(sql).unwrap().execute(params_from_iter(row)).unwrap();
        }
        tx.commit().unwrap();
        start.elapsed()
    }
}

const ENTRY: &str = "INSERT INTO entry VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)";
const RECORD: &str =
    "INSERT INTO record VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13)";

/// A lifter who has logged a set, and the bare tables like theirs.
fn both(folder: &Path) -> (Bare, Lifter) {
    let mut lifter = Lifter::new();
    lifter.log();
    (Bare::like(lifter.device(), folder), lifter)
}

fn each(c: &mut Criterion) {
    let folder = tempfile::tempdir().unwrap();
    let (mut bare, mut lifter) = both(folder.path());
    c.bench_function("bare durable insert", |b| {
        b.iter_custom(|times| (0..times).map(|_| bare.insert()).sum());
    });
    c.bench_function("one set through Holdfast", |b| {
        b.iter_custom(|times| (0..times).map(|_| lifter.log()).sum());
    });
}

/// The two in turn, so that a disk that slows down slows both; the median of what each set took longer
/// than the insert before it. Of two medians the difference would follow the disk's moods.
fn paired(_: &mut Criterion) {
    let folder = tempfile::tempdir().unwrap();
    let (mut bare, mut lifter) = both(folder.path());
    let (mut inserts, mut sets) = (Vec::new(), Vec::new());
    for _ in 0..1500 {
        inserts.push(bare.insert());
        sets.push(lifter.log());
    }
    let longer = |(set, insert): (&Duration, &Duration)| set.as_secs_f64() - insert.as_secs_f64();
    let mut own: Vec<f64> = sets.iter().zip(&inserts).map(longer).collect();
    own.sort_by(f64::total_cmp);
    let (insert, set, own) = (median(inserts), median(sets), own[own.len() / 2]);
    println!(
        "paired, 1500 each: bare insert {insert:?}, set {set:?}, own work {:.1} us (aim 50)",
        own * 1e6
    );
}

criterion_group!(benches, each, paired);
criterion_main!(benches);
