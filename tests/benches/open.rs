//! What opening costs, with the screen of the day: after a thousand entries and after a million, in one
//! run. Aim: no more than half as much again. The full check, which reads everything, is beside it.
#![expect(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a measurement that stops has failed, and its figures are what it is for"
)]

use std::time::{Duration, Instant};

use holdfast_tests::taps::begin;
use holdfast_tests::timing::median;
use holdfast_tests::train::squats;
use holdfast_tests::{Crew, SMALL_PLAN};
use rusqlite::Connection;

/// Entries of another device of the same person, each a record of its own, as a long log has them.
const MORE: &str = "
INSERT INTO device_person SELECT zeroblob(16), person FROM device_person LIMIT 1;
WITH RECURSIVE number(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM number WHERE n < ?1)
INSERT INTO entry
  SELECT zeroblob(16), n, n, n * 1000, 0, n * 1000, 0, randomblob(16), 'lift', printf('%450d', n) FROM number;
INSERT INTO record
  SELECT record, (SELECT person FROM device_person LIMIT 1), kind, device, n, digest, wall_ms,
         hlc_ms * 1048576, randomblob(16), 'old-movement', '5-5-5', 1, 0
  FROM entry WHERE device = zeroblob(16);
";

fn main() {
    let mut took = Vec::new();
    for more in [1_000_u32, 1_000_000] {
        let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
        let ines = &crew.athletes[0];
        squats(ines, "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
        ines.go_to("2026-11-05");
        ines.tap(begin()).unwrap();
        ines.holdfast.shut().unwrap();
        let mut connection = Connection::open(ines.home.join("holdfast.db")).unwrap();
        let tx = connection.transaction().unwrap();
        tx.execute_batch(&MORE.replace("?1", &more.to_string())).unwrap();
        tx.commit().unwrap();
        connection.close().unwrap();
        let open = || {
            let begun = Instant::now();
            let open = ines.open_again().unwrap();
            open.today(ines.now()).unwrap();
            let took = begun.elapsed();
            open.shut().unwrap();
            took
        };
        open();
        let times: Vec<Duration> = (0..200).map(|_| open()).collect();
        let file = std::fs::metadata(ines.home.join("holdfast.db")).unwrap().len() / 1_000_000;
        let each = median(times);
        println!("opened with the day's screen after {more} entries ({file} MB): {each:?}");
        took.push(each.as_secs_f64());
    }
    println!("ratio {:.2} (aim 1.5)", took[1] / took[0]);
}
