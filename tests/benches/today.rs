//! Today's screen after ten years of one athlete's log beside the same after two weeks. Aim: under
//! 5 ms, and flat. Opening looks for damage in the whole file, so it grows with the log.
#![allow(missing_docs)]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use holdfast_core::companion::{PieceView, SessionScreen, Tap};
use holdfast_core::{Holdfast, Mass};
use holdfast_tests::{Crew, DEMO_PLAN, Device};

const DAY_MS: i64 = 24 * 60 * 60 * 1000;

fn piece_name(piece: &PieceView) -> &str {
    match piece {
        PieceView::Strength { view } => &view.name,
        PieceView::Interval { view } => &view.name,
        PieceView::Hold { view } => &view.name,
        PieceView::Note { name, .. } => name,
    }
}

/// One whole session: every set, window and hold of the day.
fn train(device: &Device, day: &str) {
    let tap = |tap| device.tap(tap).unwrap();
    let screen: SessionScreen = tap(Tap::Begin { day: Some(day.into()) });
    for piece in &screen.pieces {
        let name = || piece_name(piece).to_owned();
        match piece {
            PieceView::Strength { view } => {
                for _ in &view.sets {
                    let load = Some(Mass::kg(60));
                    tap(Tap::LogSet { piece: name(), set: None, load, reps: None, reserve: None });
                }
            }
            PieceView::Interval { view } => {
                for _ in &view.windows {
                    let spare_ms = Some(12_000);
                    tap(Tap::LogWindow { piece: name(), window: None, reps: None, spare_ms });
                }
            }
            PieceView::Hold { .. } => {
                tap(Tap::LogHold { piece: name(), held_ms: vec![120_000, 120_000], said: None });
            }
            PieceView::Note { .. } => {}
        }
    }
    tap(Tap::Finish { effort: Some(7), minutes: Some(50) });
}

/// An athlete with so many sessions behind them, three a week.
fn after(sessions: u32) -> Crew {
    let crew = Crew::start(DEMO_PLAN, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    for session in 0..sessions {
        train(ines, if session % 2 == 0 { "Squat evening" } else { "Row evening" });
        ines.pass(7 * DAY_MS / 3);
    }
    crew
}

fn today(c: &mut Criterion) {
    for (name, sessions) in [("two weeks", 6), ("ten years", 1560)] {
        let crew = after(sessions);
        let ines = &crew.athletes[0];
        let entries = ines.companion.export().unwrap().journal.len();
        println!("{name}: {sessions} sessions, {entries} entries");
        let (day, date) = (Some("Squat evening".to_owned()), ines.now().date());
        c.bench_function(&format!("today after {name}"), |b| {
            b.iter(|| black_box(ines.companion.preview(date, day.clone(), ines.now()).unwrap()));
        });
        let home = ines.home.to_string_lossy().into_owned();
        c.bench_function(&format!("open and check after {name}"), |b| {
            b.iter(|| black_box(Holdfast::open(home.clone(), ines.now()).unwrap()));
        });
        ines.tap(Tap::Begin { day: Some("Squat evening".into()) }).unwrap();
        c.bench_function(&format!("running session after {name}"), |b| {
            b.iter(|| black_box(ines.today().unwrap()));
        });
    }
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(50);
    targets = today
}
criterion_main!(benches);
