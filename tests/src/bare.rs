//! The bare work beside a fold: the rows that a device's database holds, inserted into the same tables with the same
//! indexes, pragmas and flushes, by SQLite alone.

use std::collections::BTreeMap;
use std::path::Path;

use rusqlite::types::Value;
use rusqlite::{Connection, TransactionBehavior, params_from_iter};

/// What every database of ours is opened with.
pub const PRAGMAS: &str = "PRAGMA locking_mode = EXCLUSIVE; PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;
    PRAGMA fullfsync = ON; PRAGMA checkpoint_fullfsync = ON; PRAGMA foreign_keys = ON; PRAGMA temp_store = MEMORY;
    PRAGMA cell_size_check = ON; PRAGMA journal_size_limit = 2097152;";

/// A row: its table's place among [`TABLES`], and its values.
type Row = (usize, Vec<Value>);

/// The tables that a fold fills, and how a row gets into each.
const TABLES: [(&str, usize); 4] = [("leaf", 11), ("file", 7), ("entry", 10), ("record", 13)];

/// The rows of a database, in memory, leaf by leaf in the order they came.
pub struct Rows {
    made: Vec<String>,
    leaves: Vec<Vec<Row>>,
}

impl Rows {
    /// Reads those of a home that is shut.
    ///
    /// # Panics
    /// When they cannot be read.
    pub fn of(home: &Path) -> Rows {
        let from = Connection::open(home.join("holdfast.db")).unwrap();
        let sql = "SELECT sql FROM sqlite_master WHERE sql IS NOT NULL ORDER BY type = 'index'";
        let mut made = from.prepare(sql).unwrap();
        let made = made.query_map([], |row| row.get(0)).unwrap().map(Result::unwrap).collect();
        let mut rows = Rows { made, leaves: Vec::new() };
        // Which leaf brought an entry: its device, and its place among that device's numbers.
        let mut ends: BTreeMap<(Vec<u8>, i64), usize> = BTreeMap::new();
        // Where a leaf stands among them, by its place in the table.
        let mut places: BTreeMap<i64, usize> = BTreeMap::new();
        let leaves = read(&from, "SELECT rowid, * FROM leaf ORDER BY rowid");
        for (leaf, mut row) in leaves.into_iter().enumerate() {
            let Value::Integer(rowid) = row.remove(0) else { panic!("no leaf") };
            places.insert(rowid, leaf);
            let (Value::Blob(device), Value::Blob(holds)) = (&row[0], &row[6]) else {
                panic!("no leaf")
            };
            let last = &holds[holds.len() - 16..holds.len() - 8];
            let last = i64::from_be_bytes(last.try_into().unwrap());
            ends.insert((device.clone(), last), leaf);
            rows.leaves.push(vec![(0, row)]);
        }
        let file = "SELECT l.rowid, f.* FROM file f JOIN leaf l USING (device, of, sequence, content) ORDER BY l.rowid";
        for mut row in read(&from, file) {
            let Value::Integer(rowid) = row.remove(0) else { panic!("no file") };
            rows.leaves[places[&rowid]].push((1, row));
        }
        let brought = |row: &[Value], device: usize| {
            let (Value::Blob(device), Value::Integer(n)) = (&row[device], &row[device + 1]) else {
                panic!("no entry")
            };
            let after = ends.range((device.clone(), *n)..).next();
            after.filter(|(end, _)| end.0 == *device).map(|(_, leaf)| *leaf)
        };
        for (table, sql, device) in [
            (2, "SELECT * FROM entry ORDER BY device, n", 0),
            (3, "SELECT * FROM record ORDER BY device, n", 3),
        ] {
            for row in read(&from, sql) {
                if let Some(leaf) = brought(&row, device) {
                    rows.leaves[leaf].push((table, row));
                }
            }
        }
        rows
    }

    /// How many there are of each table, by its name.
    pub fn counts(&self) -> BTreeMap<&'static str, usize> {
        let mut counts = BTreeMap::new();
        for (table, _) in self.leaves.iter().flatten() {
            *counts.entry(TABLES[*table].0).or_default() += 1;
        }
        counts
    }

    /// An empty database with the same tables and indexes.
    ///
    /// # Panics
    /// When it cannot be made.
    pub fn empty(&self, at: &Path) -> Connection {
        let into = Connection::open(at).unwrap();
        into.execute_batch(PRAGMAS).unwrap();
        self.made.iter().for_each(|sql| into.execute_batch(sql).unwrap());
        into
    }

    /// Inserts them all, so many leaves a transaction: when this returns they are on disk.
    ///
    /// # Panics
    /// When a row is refused.
    pub fn insert(&self, into: &mut Connection, leaves: usize) {
        let sql = TABLES.map(|(table, columns)| {
            let values: Vec<String> = (1..=columns).map(|at| format!("?{at}")).collect();
            format!("INSERT INTO {table} VALUES ({})", values.join(", "))
        });
        for leaves in self.leaves.chunks(leaves) {
            let tx = into.transaction_with_behavior(TransactionBehavior::Immediate).unwrap();
            for (table, row) in leaves.iter().flatten() {
                tx.prepare_cached(&sql[*table]).unwrap().execute(params_from_iter(row)).unwrap();
            }
            tx.commit().unwrap();
        }
    }
}

fn read(from: &Connection, sql: &str) -> Vec<Vec<Value>> {
    let mut statement = from.prepare(sql).unwrap();
    let count = statement.column_count();
    let row = |row: &rusqlite::Row<'_>| (0..count).map(|at| row.get(at)).collect();
    statement.query_map([], row).unwrap().map(Result::unwrap).collect()
}
