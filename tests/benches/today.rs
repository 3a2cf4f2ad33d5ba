//! Today's screen after ten years of one athlete's log beside the same after two weeks. Aim: under
//! 5 ms, and flat. Opening looks for damage in the whole file, so it grows with the log.
#![expect(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a measurement that stops has failed, and its figures are what it is for"
)]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use holdfast_tests::taps::begin_day;
use holdfast_tests::train::whole_day;
use holdfast_tests::{Crew, DAY, DEMO_PLAN};

/// An athlete with so many sessions behind them, three a week.
fn after(sessions: u32) -> Crew {
    let crew = Crew::start(DEMO_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    for session in 0..sessions {
        whole_day(ines, if session % 2 == 0 { "Squat evening" } else { "Row evening" });
        ines.pass(7 * DAY / 3);
    }
    crew
}

fn today(c: &mut Criterion) {
    for (name, sessions) in [("two weeks", 6), ("ten years", 1560)] {
        let crew = after(sessions);
        let ines = &crew.athletes[0];
        let entries = ines.holdfast.export().unwrap().journal.len();
        println!("{name}: {sessions} sessions, {entries} entries");
        let (day, date) = (Some("Squat evening".to_owned()), ines.now().date());
        c.bench_function(&format!("today after {name}"), |b| {
            b.iter(|| black_box(ines.holdfast.preview(date, day.clone(), ines.now()).unwrap()));
        });
        ines.tap(begin_day("Squat evening")).unwrap();
        c.bench_function(&format!("running session after {name}"), |b| {
            b.iter(|| black_box(ines.today().unwrap()));
        });
        ines.holdfast.shut().unwrap();
        c.bench_function(&format!("open with today's screen after {name}"), |b| {
            b.iter(|| black_box(ines.open_again().unwrap().today(ines.now()).unwrap()));
        });
        c.bench_function(&format!("check after {name}"), |b| {
            let open = ines.open_again().unwrap();
            b.iter(|| black_box(open.verify().unwrap()));
        });
    }
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(50);
    targets = today
}
criterion_main!(benches);
