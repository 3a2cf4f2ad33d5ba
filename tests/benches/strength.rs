//! Ten thousand sets filtered, beside statsmodels' Kalman filter on the same series in the same run.
//! Aim: 100 times faster. Python is `HOLDFAST_PYTHON`, or `target/reference-venv`, or `python3`.
#![expect(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a measurement that stops has failed, and its figures are what it is for"
)]

use std::hint::black_box;
use std::io::Write;
use std::path::Path;
use std::process::{Command, Stdio};

use chrono::{Days, NaiveDate};
use criterion::{Criterion, criterion_group, criterion_main};
use holdfast_core::load::strength::{
    Evidence, LocalLevel, Moment, Normal, SetSeen, Start, filter, strength,
};
use holdfast_core::{Mass, MassUnit};
use holdfast_tests::timing::fastest;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

const SETS: usize = 10_000;
const START: Normal = Normal { mean: 4.1, variance: 1.0 };
const MODEL: LocalLevel = LocalLevel { per_day: 1.5e-5, start: Start::Known(START) };

/// A walk seen on days one to seven apart, with one of two errors.
fn series(chance: &mut ChaCha8Rng) -> Vec<Moment> {
    let (mut day, mut level) = (0, 4.4);
    let mut moment = |_| {
        day += chance.random_range(1..=7);
        level += chance.random_range(-0.01..0.01);
        let error: f64 = if chance.random() { 0.025 } else { 0.04 };
        let value = Some(level + chance.random_range(-error..error));
        Moment { day, value, variance: error * error }
    };
    (0..SETS).map(&mut moment).collect()
}

/// As many open sets, one a day.
fn sets(chance: &mut ChaCha8Rng) -> Vec<SetSeen> {
    let first = NaiveDate::from_ymd_opt(1990, 1, 1).unwrap();
    let mut set = |day| SetSeen {
        on: first.checked_add_days(Days::new(day)).unwrap(),
        load: Mass::thousandths(2_500 * chance.random_range(30..50), MassUnit::Kg),
        reps: chance.random_range(3..15),
        evidence: Evidence::Open,
    };
    (0..SETS as u64).map(&mut set).collect()
}

/// Seconds of a call and the last filtered mean, from statsmodels; what is missing otherwise.
fn statsmodels(series: &[Moment]) -> Result<(f64, f64), String> {
    let tests = Path::new(env!("CARGO_MANIFEST_DIR"));
    let own = tests.join("../target/reference-venv/bin/python");
    let python = std::env::var_os("HOLDFAST_PYTHON")
        .or_else(|| own.exists().then(|| own.into_os_string()))
        .unwrap_or_else(|| "python3".into());
    let text = serde_json::json!({
        "days": series.iter().map(|series| series.day).collect::<Vec<_>>(),
        "values": series.iter().map(|series| series.value).collect::<Vec<_>>(),
        "variances": series.iter().map(|series| series.variance).collect::<Vec<_>>(),
        "per_day": MODEL.per_day,
        "start": [START.mean, START.variance],
    });
    let mut child = Command::new(python)
        .arg(tests.join("benches/strength_time.py"))
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .map_err(|error| format!("no Python: {error}"))?;
    // A Python that stops before reading says why on its way out.
    let _ = child.stdin.take().map(|mut pipe| pipe.write_all(text.to_string().as_bytes()));
    let output = child.wait_with_output().map_err(|error| error.to_string())?;
    let said = String::from_utf8_lossy(&output.stdout).into_owned();
    let mut numbers = said.split_whitespace().map(str::parse::<f64>);
    match (numbers.next(), numbers.next()) {
        (Some(Ok(seconds)), Some(Ok(mean))) if output.status.success() => Ok((seconds, mean)),
        _ => {
            let error = String::from_utf8_lossy(&output.stderr).into_owned();
            Err(error.lines().last().unwrap_or("it said nothing").to_owned())
        }
    }
}

fn bench(c: &mut Criterion) {
    let mut chance = ChaCha8Rng::seed_from_u64(20_261_125);
    let (series, sets) = (series(&mut chance), sets(&mut chance));
    match statsmodels(&series) {
        Ok((theirs, mean)) => {
            let last = filter(&MODEL, &series).unwrap().steps.pop().unwrap().filtered.unwrap();
            assert!((last.mean - mean).abs() < 1e-9, "{} against {mean}", last.mean);
            // What is found is let go within the time, as it is in Python.
            let ours =
                fastest(300, || drop(black_box(filter(&MODEL, black_box(&series)).unwrap())));
            let ours = ours.1.as_secs_f64();
            let ratio = theirs / ours;
            println!(
                "{SETS} sets: statsmodels {theirs:.3e} s, here {ours:.3e} s, ratio {ratio:.0}"
            );
        }
        Err(missing) => println!("statsmodels left out: {missing}"),
    }
    c.bench_function("filter 10,000 sets", |b| {
        b.iter(|| black_box(filter(&MODEL, black_box(&series)).unwrap()));
    });
    let today = sets.last().unwrap().on;
    c.bench_function("strength from 10,000 open sets", |b| {
        b.iter(|| black_box(strength(black_box(&sets), today).unwrap()));
    });
    c.bench_function("strength from 200 open sets", |b| {
        b.iter(|| black_box(strength(black_box(&sets[..200]), today).unwrap()));
    });
}

criterion_group!(benches, bench);
criterion_main!(benches);
