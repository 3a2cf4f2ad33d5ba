//! What a large crew costs its coach: 20 athletes over two years and 200 over five, two evenings a week,
//! through the real program; and beside each figure the bare work of SQLite, or of the file system, on the
//! same rows. `cargo task scale` runs it: about a quarter of an hour and 5 GB of disk. The smaller crew alone:
//! `cargo bench -p holdfast-tests --bench scale -- small`.
#![expect(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a measurement that stops has failed, and its figures are what it is for"
)]

use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use chrono::{Datelike, Days, Utc};
use holdfast_tests::crowd::{Crowd, Made};
use holdfast_tests::{program, seed_or};
use rusqlite::Connection;

/// What one thing costs.
#[derive(Clone, Copy)]
struct Cost {
    took: Duration,
    /// The most memory the process had, in MB.
    memory: f64,
}

/// A thing done, and the bare work on the same rows.
struct Figure {
    what: &'static str,
    cost: Cost,
    bare: Cost,
}

fn main() {
    // The bare work is done by a process of its own, so that its memory can be told.
    let args: Vec<String> = std::env::args().skip(1).filter(|arg| arg != "--bench").collect();
    if let [bare, home, other] = &args[..] {
        return do_bare(bare, Path::new(home), Path::new(other));
    }
    let mut crowds = vec![Crowd { members: 20, blocks: 4 }, Crowd { members: 200, blocks: 10 }];
    if args == ["small"] {
        crowds.truncate(1);
    }
    let measured: Vec<Vec<Figure>> = crowds.into_iter().map(measure).collect();
    println!(
        "\n| what | 20 x 2 years | beside it, bare | 200 x 5 years | beside it, bare | grows | bare grows |"
    );
    println!("|---|---|---|---|---|---|---|");
    let cell = |cost: Cost| format!("{:.3} s, {:.0} MB", cost.took.as_secs_f64(), cost.memory);
    for (at, small) in measured[0].iter().enumerate() {
        let mut line = format!("| {} | {} | {} |", small.what, cell(small.cost), cell(small.bare));
        if let Some(large) = measured.get(1).map(|large| &large[at]) {
            let grows = |of: fn(&Figure) -> Cost| {
                of(large).took.as_secs_f64() / of(small).took.as_secs_f64()
            };
            line += &format!(
                " {} | {} | {:.1} | {:.1} |",
                cell(large.cost),
                cell(large.bare),
                grows(|figure| figure.cost),
                grows(|figure| figure.bare),
            );
        }
        println!("{line}");
    }
}

fn measure(crowd: Crowd) -> Vec<Figure> {
    let folder = tempfile::tempdir().unwrap();
    let today = Utc::now().date_naive();
    let monday = today - Days::new(u64::from(today.weekday().num_days_from_monday()));
    let made = crowd.write(folder.path(), monday, seed_or(12));
    let Made { coach, carrier, ends, sessions, entries } = &made;
    let files = fs::read_dir(carrier).unwrap().count();
    println!("{crowd:?}: {sessions} sessions, {entries} entries in {files} files");
    let (home, files) = (coach.to_str().unwrap(), carrier.to_str().unwrap());
    let on = (*ends - Days::new(1)).to_string();
    let report = folder.path().join("report.html");
    let copy = folder.path().join("bare.db");
    let exchange = ["--home", home, "exchange", "--carrier", files];
    let of_date = |args: [&str; 2]| {
        run(program().as_path(), &["--home", home, args[0], args[1], "--on", &on])
    };
    let first = run(&program(), &exchange);
    println!(
        "folded {:.0} entries a second: {} MB in the database, {} MB on the shelf",
        *entries as f64 / first.took.as_secs_f64(),
        fs::metadata(coach.join("holdfast.db")).unwrap().len() / 1_000_000,
        size(&coach.join("leaves")) / 1_000_000,
    );
    let bare = |what: &str, other: &Path| {
        let args = [what, home, other.to_str().unwrap()];
        run(&std::env::current_exe().unwrap(), &args)
    };
    vec![
        Figure { what: "first exchange", cost: first, bare: bare("insert", &copy) },
        Figure {
            what: "opening, with what is kept aside",
            cost: fastest(|| run(&program(), &["--home", home, "aside"])),
            bare: fastest(|| bare("open", &copy)),
        },
        Figure {
            what: "exchange with nothing new",
            cost: fastest(|| run(&program(), &exchange)),
            bare: fastest(|| bare("list", carrier)),
        },
        Figure {
            what: "board",
            cost: fastest(|| of_date(["board", "--json"])),
            bare: fastest(|| bare("week", &copy)),
        },
        Figure {
            what: "report",
            cost: fastest(|| of_date(["report", report.to_str().unwrap()])),
            bare: fastest(|| bare("all", &copy)),
        },
        Figure {
            what: "full check",
            cost: run(&program(), &["--home", home, "verify"]),
            bare: bare("check", &copy),
        },
    ]
}

fn fastest(call: impl Fn() -> Cost) -> Cost {
    (0..3).map(|_| call()).min_by_key(|cost| cost.took).unwrap()
}

fn size(folder: &Path) -> u64 {
    fs::read_dir(folder).unwrap().map(|file| file.unwrap().metadata().unwrap().len()).sum()
}

/// Runs a process to its end.
#[expect(clippy::cast_precision_loss, reason = "a figure to read")]
#[expect(clippy::zombie_processes, reason = "it is waited for, with its memory")]
fn run(program: &Path, args: &[&str]) -> Cost {
    let mut command = Command::new(program);
    command.args(args).env("LC_ALL", "C").env_remove("HOLDFAST_LANG").stdout(Stdio::null());
    let begun = Instant::now();
    let child = command.spawn().unwrap();
    let (mut status, mut usage) = (0, std::mem::MaybeUninit::<libc::rusage>::zeroed());
    let pid = libc::pid_t::try_from(child.id()).unwrap();
    // SAFETY: both places are there to be written to.
    #[expect(unsafe_code, reason = "the standard library tells no memory of a child")]
    let usage = unsafe {
        libc::wait4(pid, &raw mut status, 0, usage.as_mut_ptr());
        usage.assume_init()
    };
    let took = begun.elapsed();
    assert_eq!(status, 0, "{args:?}");
    // Linux counts it in KiB.
    Cost { took, memory: usage.ru_maxrss as f64 * 1024.0 / 1e6 }
}

/// The same rows without us.
fn do_bare(what: &str, home: &Path, other: &Path) {
    let database = home.join("holdfast.db");
    let open = |path: &Path| {
        let connection = Connection::open(path).unwrap();
        connection.execute_batch("PRAGMA locking_mode = EXCLUSIVE; PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;").unwrap();
        connection
    };
    let count = |sql: &str| {
        let connection = open(&database);
        connection.query_row(sql, [], |row| row.get::<_, i64>(0)).unwrap()
    };
    match what {
        "insert" => insert(&database, &open(other)),
        "open" => drop(count("SELECT count(*) FROM (SELECT 1 FROM record LIMIT 1)")),
        "list" => {
            let names = fs::read_dir(other).unwrap().map(|file| {
                let file = file.unwrap();
                (file.file_name(), file.metadata().unwrap().len())
            });
            assert!(names.count() > 0);
            count("SELECT sum(length(hash)) FROM file");
        }
        "week" => drop(count(
            "SELECT sum(length(e.raw)) FROM record s JOIN record r ON r.session = s.record
             JOIN entry e ON e.device = r.device AND e.n = r.n AND e.digest = r.digest
             WHERE s.kind = 'session' AND s.placed >= (SELECT max(placed) FROM record) - 604800000 * 1048576",
        )),
        "all" => drop(count(
            "SELECT sum(length(e.raw)) FROM record r
             JOIN entry e ON e.device = r.device AND e.n = r.n AND e.digest = r.digest",
        )),
        _ => {
            let connection = open(&database);
            let found: String =
                connection.query_row("PRAGMA integrity_check", [], |row| row.get(0)).unwrap();
            assert_eq!(found, "ok");
        }
    }
}

/// Leaves of one transaction: about as many as the core takes in together.
const TOGETHER: usize = 128;

/// Inserts the same rows into the same tables and indexes, in the order they came.
fn insert(from: &Path, into: &Connection) {
    let attach = format!("ATTACH '{}' AS filled", from.display());
    into.execute_batch(&attach).unwrap();
    let sql: Vec<String> = {
        let made = "SELECT sql FROM filled.sqlite_master WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%'";
        let mut statement = into.prepare(made).unwrap();
        statement.query_map([], |row| row.get(0)).unwrap().map(Result::unwrap).collect()
    };
    for sql in sql {
        into.execute_batch(&sql).unwrap();
    }
    let mut leaves =
        into.prepare("SELECT rowid, device, holds FROM filled.leaf ORDER BY rowid").unwrap();
    let number = |pair: Option<&[u8]>| {
        let pair = pair.unwrap();
        i64::from_be_bytes(pair[..8].try_into().unwrap())
    };
    let leaves: Vec<(i64, Vec<u8>, i64, i64)> = leaves
        .query_map([], |row| {
            let holds: Vec<u8> = row.get(2)?;
            let mut pairs = holds.chunks(16);
            let first = number(pairs.clone().next());
            Ok((row.get(0)?, row.get(1)?, first, number(pairs.next_back())))
        })
        .unwrap()
        .map(Result::unwrap)
        .collect();
    let [mut leaf, mut file, mut entry, mut record] = [
        "INSERT INTO leaf SELECT * FROM filled.leaf WHERE rowid = ?1",
        "INSERT INTO file SELECT f.* FROM filled.leaf l JOIN filled.file f
           ON f.device = l.device AND f.of = l.of AND f.sequence = l.sequence AND f.content = l.content WHERE l.rowid = ?1",
        "INSERT OR IGNORE INTO entry SELECT * FROM filled.entry WHERE device = ?1 AND n BETWEEN ?2 AND ?3",
        "INSERT OR IGNORE INTO record SELECT r.* FROM filled.entry e JOIN filled.record r ON r.record = e.record
         WHERE e.device = ?1 AND e.n BETWEEN ?2 AND ?3",
    ]
    .map(|sql| into.prepare(sql).unwrap());
    for leaves in leaves.chunks(TOGETHER) {
        into.execute_batch("BEGIN IMMEDIATE").unwrap();
        for (rowid, device, first, last) in leaves {
            leaf.execute([rowid]).unwrap();
            file.execute([rowid]).unwrap();
            entry.execute(rusqlite::params![device, first, last]).unwrap();
            record.execute(rusqlite::params![device, first, last]).unwrap();
        }
        into.execute_batch("COMMIT").unwrap();
    }
}
