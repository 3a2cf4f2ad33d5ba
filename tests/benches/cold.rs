//! What 25 new entries cost a device that was closed: opening, the exchange, everything on disk. After a thousand
//! entries and after a hundred thousand, in full leaves and in a leaf an evening, from a server and from a folder, in turn.
//! Aim: at most 3 ms, and the same whatever is there already.
#![expect(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a measurement that stops has failed, and its figures are what it is for"
)]

use std::path::PathBuf;
use std::time::{Duration, Instant};

use criterion::{Criterion, criterion_group, criterion_main};
use holdfast_core::exchange::ListedFile;
use holdfast_tests::long_log::{LongLog, Parts, Side, Told, exchange};
use holdfast_tests::timing::median;
use tempfile::TempDir;

const NEW: usize = 25;

/// A device that has a long log.
struct Full {
    folder: TempDir,
    told: Told,
    home: PathBuf,
    /// The listing of a folder; none where it is a server.
    listing: Option<Vec<ListedFile>>,
    parts: Parts,
    /// Names that were listed last.
    listed: usize,
}

impl Full {
    fn of((log, on_a_server): (LongLog, bool)) -> Full {
        let folder = tempfile::tempdir().unwrap();
        let mut told = log.tell(&folder.path().join("told"));
        let home = folder.path().join("home");
        let device = told.copied(&home);
        let report = exchange(&device, told.files.listing(), &told.files);
        assert_eq!(report.entries, told.entries);
        let mut parts = Parts::default();
        told.files.listing().into_iter().for_each(|listed| parts.add(listed));
        if on_a_server {
            // Once to bring what is lacking, once to see that all is there.
            parts.exchange(&device, &mut told.files);
            parts.exchange(&device, &mut told.files);
        }
        device.holdfast.shut().unwrap();
        let listing = (!on_a_server).then(|| told.files.listing());
        Full { folder, told, home, listing, parts, listed: 0 }
    }

    /// One more leaf: how long until it is taken in, and how much of that was opening.
    fn more(&mut self) -> [Duration; 2] {
        let file = self.told.more(NEW);
        let bytes = file.content.len() as u64;
        let listed = ListedFile { name: file.name.clone(), bytes };
        if let Some(listing) = &mut self.listing {
            let place = listing.partition_point(|other| other.name < listed.name);
            listing.insert(place, listed.clone());
        }
        self.parts.add(listed);
        self.told.files.add(file);
        let listing = self.listing.clone();
        let begun = Instant::now();
        let device = self.told.open(&self.home);
        let opened = begun.elapsed();
        let report = match listing {
            Some(listing) => {
                self.listed = listing.len();
                exchange(&device, listing, &self.told.files)
            }
            None => {
                let (report, listed) = self.parts.exchange(&device, &mut self.told.files);
                self.listed = listed;
                report
            }
        };
        let took = begun.elapsed();
        assert_eq!((report.leaves, report.entries), (1, NEW as u64), "{report:?}");
        device.holdfast.shut().unwrap();
        [took, opened]
    }

    /// What the disk takes for as much: a file, its name, and a row, each flushed.
    fn bare(&self) -> Duration {
        let content = self.told.files.iter().next().unwrap().content;
        let path = self.folder.path().join("bare.db");
        let connection = rusqlite::Connection::open(&path).unwrap();
        connection.execute_batch(holdfast_tests::bare::PRAGMAS).unwrap();
        connection.execute_batch("CREATE TABLE IF NOT EXISTS row (bytes BLOB)").unwrap();
        let begun = Instant::now();
        let file = self.folder.path().join("bare.leaf");
        std::fs::write(&file, &content).unwrap();
        std::fs::File::open(&file).unwrap().sync_all().unwrap();
        std::fs::File::open(self.folder.path()).unwrap().sync_all().unwrap();
        connection.execute("INSERT INTO row VALUES (?1)", [&content]).unwrap();
        let took = begun.elapsed();
        std::fs::remove_file(file).unwrap();
        took
    }
}

fn logs() -> [(&'static str, (LongLog, bool)); 6] {
    let log = |side, entries, a_leaf| (LongLog { side, entries, a_leaf, recipients: 5 }, true);
    let in_a_folder = |(log, _)| (log, false);
    [
        ("coach, after 1,000 entries", log(Side::Coach, 1_000, Some(200))),
        ("coach, after 100,000 entries", log(Side::Coach, 100_000, Some(200))),
        ("coach, after 100,000 entries, a leaf an evening", log(Side::Coach, 100_000, None)),
        ("member, after 100,000 entries", log(Side::Member, 100_000, Some(200))),
        (
            "coach, after 1,000 entries, in a folder",
            in_a_folder(log(Side::Coach, 1_000, Some(200))),
        ),
        (
            "coach, after 100,000 entries, a leaf an evening, in a folder",
            in_a_folder(log(Side::Coach, 100_000, None)),
        ),
    ]
}

/// In turn, so that a disk that slows down slows all.
fn in_turn(_: &mut Criterion) {
    let mut all =
        logs().map(|(name, log)| (name, Full::of(log), Vec::new(), Vec::new(), Vec::new()));
    for _ in 0..40 {
        for (_, full, took, opened, bare) in &mut all {
            let [each, opening] = full.more();
            took.push(each);
            opened.push(opening);
            bare.push(full.bare());
        }
    }
    let mut first = None;
    for (name, full, took, opened, bare) in all {
        let took = median(took);
        let first = *first.get_or_insert(took);
        println!(
            "25 new entries, {name}: {took:?}, {:?} of it opening (aim 3 ms); {:.2} times the first; {} of {} names listed; three bare flushes {:?}",
            median(opened),
            took.as_secs_f64() / first.as_secs_f64(),
            full.listed,
            full.told.files.count(),
            median(bare),
        );
    }
}

fn each(c: &mut Criterion) {
    let mut group = c.benchmark_group("25 new entries");
    group.sample_size(20);
    for (name, log) in logs() {
        let mut full: Option<Full> = None;
        group.bench_function(name, |b| {
            let full = full.get_or_insert_with(|| Full::of(log));
            b.iter_custom(|times| (0..times).map(|_| full.more()[0]).sum());
        });
    }
    group.finish();
}

criterion_group!(benches, in_turn, each);
criterion_main!(benches);
