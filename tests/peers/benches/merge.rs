//! The merge that Holdfast does, beside three libraries that merge: 25 new entries into 100,000 from cold, and 100,000
//! entries of ten writers. All read from a file and end in a flushed one; Holdfast's are signed, sealed and indexed as
//! well, which no other does. Where a peer does not write the whole document again it appends what is new, and its next
//! start reads both: that costs it the load alone.

use std::fs::File;
use std::io::Write;
use std::path::Path;
use std::time::{Duration, Instant};

use criterion::{Criterion, criterion_group, criterion_main};
use holdfast_core::exchange::ListedFile;
use holdfast_tests::long_log::{LongLog, Side, Told, exchange};
use peers::{Automerge, Loro, Peer, Saved, Yrs};

const ENTRIES: usize = 100_000;
const NEW: usize = 25;
const WRITERS: usize = 10;

struct Scene {
    folder: tempfile::TempDir,
    told: Told,
    listing: Vec<ListedFile>,
    lines: Vec<String>,
    count: u32,
}

fn scene() -> Scene {
    let folder = tempfile::tempdir().unwrap();
    let log =
        LongLog { side: Side::Coach, entries: ENTRIES, a_leaf: Some(200), recipients: 5 };
    let told = log.tell(&folder.path().join("told"));
    let listing = told.files.listing();
    let mut scene = Scene { folder, told, listing, lines: Vec::new(), count: 0 };
    let (home, _) = scene.fold();
    let device = scene.told.open(&home);
    scene.lines = device.journal();
    device.holdfast.shut().unwrap();
    std::fs::rename(home, scene.folder.path().join("full")).unwrap();
    scene
}

impl Scene {
    fn fold(&mut self) -> (std::path::PathBuf, Duration) {
        self.count += 1;
        let home = self.folder.path().join(format!("home-{}", self.count));
        let device = self.told.copied(&home);
        let listing = self.listing.clone();
        let begun = Instant::now();
        let report = exchange(&device, listing, &self.told.files);
        let took = begun.elapsed();
        assert_eq!(report.entries, self.told.entries);
        device.holdfast.shut().unwrap();
        (home, took)
    }

    fn cold(&mut self) -> Duration {
        let file = self.told.more(NEW);
        let bytes = file.content.len() as u64;
        self.listing.push(ListedFile { name: file.name.clone(), bytes });
        self.told.files.add(file);
        let listing = self.listing.clone();
        let home = self.folder.path().join("full");
        let begun = Instant::now();
        let device = self.told.open(&home);
        let report = exchange(&device, listing, &self.told.files);
        let took = begun.elapsed();
        assert_eq!(report.entries, NEW as u64);
        device.holdfast.shut().unwrap();
        took
    }
}

fn write(path: &Path, bytes: &[u8]) {
    let mut file = File::create(path).unwrap();
    file.write_all(bytes).unwrap();
    file.sync_all().unwrap();
}

fn cold<P: Peer>(scene: &Scene) -> impl FnMut() -> Duration + use<P> {
    let folder = tempfile::tempdir().unwrap();
    let new: Vec<String> = scene.lines[..NEW].to_vec();
    let saved = P::save(0, &scene.lines, &new);
    let base = folder.path().join("base");
    write(&base, &saved.base);
    let count = scene.lines.len() + NEW;
    move || {
        let begun = Instant::now();
        let read = Saved { base: std::fs::read(&base).unwrap(), new: saved.new.clone() };
        let (whole, merged) = P::merge(&read);
        write(&folder.path().join("merged"), &whole);
        let took = begun.elapsed();
        assert_eq!(merged, count);
        took
    }
}

fn all<P: Peer>(scene: &Scene) -> impl FnMut() -> Duration + use<P> {
    // Each writer's own entries under keys of their own: no two write the same.
    let each = scene.lines.len().div_ceil(WRITERS);
    let lines = scene.lines.chunks(each).enumerate();
    let documents: Vec<Vec<u8>> =
        lines.map(|(writer, lines)| P::save(writer * each, lines, &[]).base).collect();
    let count = scene.lines.len();
    move || {
        let begun = Instant::now();
        let merged = P::merge_all(&documents);
        let took = begun.elapsed();
        assert_eq!(merged, count);
        took
    }
}

fn merge(c: &mut Criterion) {
    let mut scene = scene();
    println!("{} entries in {} files", scene.lines.len(), scene.told.files.count());
    let mut group = c.benchmark_group("25 new entries into 100,000 from cold");
    group.sample_size(10).warm_up_time(Duration::from_millis(1));
    group.bench_function("holdfast", |b| {
        b.iter_custom(|times| (0..times).map(|_| scene.cold()).sum());
    });
    let mut bench = |name: &str, mut each: Box<dyn FnMut() -> Duration>| {
        group.bench_function(name, |b| b.iter_custom(|times| (0..times).map(|_| each()).sum()));
    };
    bench(Yrs::NAME, Box::new(cold::<Yrs>(&scene)));
    bench(Automerge::NAME, Box::new(cold::<Automerge>(&scene)));
    bench(Loro::NAME, Box::new(cold::<Loro>(&scene)));
    group.finish();
    let mut group = c.benchmark_group("100,000 entries of ten writers");
    group.sample_size(10).warm_up_time(Duration::from_millis(1));
    group.bench_function("holdfast", |b| {
        b.iter_custom(|times| {
            let mut took = Duration::ZERO;
            for _ in 0..times {
                let (home, each) = scene.fold();
                std::fs::remove_dir_all(home).unwrap();
                took += each;
            }
            took
        });
    });
    let mut bench = |name: &str, mut each: Box<dyn FnMut() -> Duration>| {
        group.bench_function(name, |b| b.iter_custom(|times| (0..times).map(|_| each()).sum()));
    };
    bench(Yrs::NAME, Box::new(all::<Yrs>(&scene)));
    bench(Automerge::NAME, Box::new(all::<Automerge>(&scene)));
    bench(Loro::NAME, Box::new(all::<Loro>(&scene)));
    group.finish();
}

criterion_group!(benches, merge);
criterion_main!(benches);
