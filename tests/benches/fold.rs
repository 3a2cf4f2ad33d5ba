//! What taking in a long log costs, beside the bare durable insert of the same rows into the same tables with the same
//! indexes and pragmas, in the same run on the same disk, in turn: 100,000 entries in sealed leaves, as a coach and as a
//! member, sealed to 5 keys and to 16. Aim: at most 1.5 times.
#![expect(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a measurement that stops has failed, and its figures are what it is for"
)]

use std::time::{Duration, Instant};

use criterion::{Criterion, criterion_group, criterion_main};
use holdfast_tests::bare::Rows;
use holdfast_tests::long_log::{LongLog, Side, Told, exchange};
use holdfast_tests::timing::{median, worked};
use tempfile::TempDir;

const ENTRIES: usize = 100_000;
/// What a device cuts at most into a leaf.
const FULL: Option<usize> = Some(200);
/// Leaves of a transaction of the bare insert: as many as the core takes in together.
const TOGETHER: usize = 32;

/// A log, the rows that it comes to, and somewhere to work.
struct Both {
    folder: TempDir,
    told: Told,
    rows: Rows,
    count: u32,
}

impl Both {
    fn of(log: LongLog) -> Both {
        let folder = tempfile::tempdir().unwrap();
        let told = log.tell(&folder.path().join("told"));
        let filled = folder.path().join("filled");
        let device = told.copied(&filled);
        let report = exchange(&device, told.files.listing(), &told.files);
        assert_eq!(report.entries, told.entries, "{report:?}");
        device.holdfast.shut().unwrap();
        let rows = Rows::of(&filled);
        let (files, bytes) = (told.files.count(), told.files.bytes() / 1_000);
        println!("{log:?}: {files} files, {bytes} kB; rows {:?}", rows.counts());
        Both { folder, told, rows, count: 0 }
    }

    fn fold(&mut self) -> Duration {
        self.count += 1;
        let home = self.folder.path().join(format!("home-{}", self.count));
        let device = self.told.copied(&home);
        let listing = self.told.files.listing();
        let begun = Instant::now();
        let report = exchange(&device, listing, &self.told.files);
        let took = begun.elapsed();
        assert_eq!(report.entries, self.told.entries);
        drop(device);
        std::fs::remove_dir_all(home).unwrap();
        took
    }

    fn bare(&mut self, leaves: usize) -> Duration {
        let path = self.folder.path().join("bare.db");
        let mut into = self.rows.empty(&path);
        let begun = Instant::now();
        self.rows.insert(&mut into, leaves);
        let took = begun.elapsed();
        drop(into);
        std::fs::remove_file(path).unwrap();
        took
    }
}

fn logs() -> Vec<(String, LongLog)> {
    let mut logs = Vec::new();
    for side in [Side::Coach, Side::Member] {
        for recipients in [5, 16] {
            for (leaf, a_leaf) in [("200 a leaf", FULL), ("a leaf an evening", None)] {
                let log = LongLog { side, entries: ENTRIES, a_leaf, recipients };
                logs.push((format!("{side:?}, {recipients} recipients, {leaf}"), log));
            }
        }
    }
    logs
}

/// The two in turn, so that a disk that slows down slows both; the median of the ratios.
fn paired(_: &mut Criterion) {
    let wanted = std::env::args().skip(1).find(|arg| !arg.starts_with('-')).unwrap_or_default();
    for (name, log) in logs().into_iter().filter(|(name, _)| name.contains(&wanted)) {
        let mut both = Both::of(log);
        let (mut ratios, mut work, mut folds, mut bares) = (vec![], vec![], vec![], vec![]);
        for _ in 0..5 {
            let before = worked();
            let bare = both.bare(TOGETHER);
            let between = worked();
            let fold = both.fold();
            work.push((worked() - between).as_secs_f64() / (between - before).as_secs_f64());
            ratios.push(fold.as_secs_f64() / bare.as_secs_f64());
            folds.push(fold);
            bares.push(bare);
        }
        ratios.sort_by(f64::total_cmp);
        work.sort_by(f64::total_cmp);
        println!(
            "paired, {name}: fold {:?}, bare insert {:?}, ratio {:.2} ({:.2} to {:.2}; aim 1.5); of the processors' work, on all threads together: {:.2}",
            median(folds),
            median(bares),
            ratios[2],
            ratios[0],
            ratios[4],
            work[2],
        );
    }
}

fn each(c: &mut Criterion) {
    let mut group = c.benchmark_group("100,000 entries");
    group.sample_size(10).warm_up_time(Duration::from_millis(1));
    for (name, log) in logs() {
        // Made only when it is asked for: a log takes seconds to tell.
        let mut both: Option<Both> = None;
        group.bench_function(format!("{name}, bare insert"), |b| {
            let both = both.get_or_insert_with(|| Both::of(log));
            b.iter_custom(|times| (0..times).map(|_| both.bare(TOGETHER)).sum());
        });
        group.bench_function(format!("{name}, fold"), |b| {
            let both = both.get_or_insert_with(|| Both::of(log));
            b.iter_custom(|times| (0..times).map(|_| both.fold()).sum());
        });
    }
    group.finish();
}

criterion_group!(benches, paired, each);
criterion_main!(benches);
