//! What a clock costs: its state at a moment after 10,000 marks, beside just reading those marks;
//! and all cues of an hour of one-minute windows, beside making as many cues. Nothing ticks, so this
//! is all that a clock ever costs. No aim but that both stay far below a frame, 16 ms.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use holdfast_core::Instant;
use holdfast_core::clock::{
    Act, Cue, CueKind, HoldSpec, IntervalSpec, Mark, hold_state, interval_state,
};
use holdfast_tests::{at, later};

/// So many milliseconds into the evening, in a boot named as Linux names them.
fn evening(ms: i64) -> Instant {
    let boot_id = "6f1c2a34-0c1e-4a53-9d35-0c5a1f6d7e88".into();
    later(&Instant { boot_id, ..at("2026-11-25", 18) }, ms)
}

/// A hold that is paused and resumed every 50 ms, 10,000 marks in all.
fn many_marks(c: &mut Criterion) {
    let spec = HoldSpec {
        ready_ms: 5_000,
        hold_ms: 1_200_000,
        switch_ms: 10_000,
        sides: 2,
        contract_ms: 6_000,
        relax_ms: 24_000,
    };
    let act = |n: i64| match n {
        0 => Act::Begin,
        n if n % 2 == 1 => Act::Pause,
        _ => Act::Resume,
    };
    let marks: Vec<Mark> = (0..10_000).map(|n| Mark { act: act(n), at: evening(n * 50) }).collect();
    let now = evening(500_000);
    let read = |marks: &[Mark]| {
        let one = |mark: &Mark| mark.at.boot_ms ^ i64::from(mark.act == Act::Skip);
        marks.iter().fold(0_i64, |sum, mark| sum.wrapping_add(one(mark)))
    };
    c.bench_function("10,000 marks, just read", |b| b.iter(|| black_box(read(black_box(&marks)))));
    c.bench_function("10,000 marks, state", |b| {
        b.iter(|| black_box(hold_state(&spec, black_box(&marks), &now)));
    });
}

/// Every cue of an hour: 64 are listed at once, so the list is asked for again where it ended.
fn all_cues(spec: &IntervalSpec, marks: &[Mark]) -> Vec<(i64, Cue)> {
    let (mut found, mut from): (Vec<(i64, Cue)>, i64) = (Vec::new(), 0);
    loop {
        let cues = interval_state(spec, marks, &evening(from)).cues;
        found.extend(cues.into_iter().map(|cue| (from + cue.due_in_ms, cue)));
        match found.last() {
            Some((due, cue)) if cue.kind != CueKind::End => from = due + 1,
            _ => return found,
        }
    }
}

fn hour_of_cues(c: &mut Criterion) {
    let spec = IntervalSpec { ready_ms: 10_000, window_ms: 60_000, windows: 60 };
    let marks = [Mark { act: Act::Begin, at: evening(0) }];
    let cues = all_cues(&spec, &marks);
    // Ready, and of each window its start, its half and its last seconds; then the end.
    assert_eq!(cues.len(), 1 + 60 * 3 + 1);
    c.bench_function("cues of an hour, just made", |b| b.iter(|| black_box(cues.clone())));
    c.bench_function("cues of an hour, found", |b| {
        b.iter(|| black_box(all_cues(black_box(&spec), &marks)));
    });
}

criterion_group!(benches, many_marks, hour_of_cues);
criterion_main!(benches);
