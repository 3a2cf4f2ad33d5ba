//! Ten thousand rows filtered, beside statsmodels' Kalman filter on the same rows in the same run, and
//! strength from as many sets. Aim: 100 times faster, and about a millisecond.
//! Python is `HOLDFAST_PYTHON`, or `target/reference-venv`, or `python3`.
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
    Evidence, Observation, SIZE, Seen, SetSeen, State, Taking, strength,
};
use holdfast_core::{Mass, MassUnit};
use holdfast_tests::timing::fastest;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

const SETS: usize = 10_000;
const WALK: [f64; SIZE] = [2e-5, 1e-4, 0.0, 0.0];

/// The state before the first row: that of a set of five.
fn start() -> State {
    let mut covariance = [[0.0; SIZE]; SIZE];
    for (at, spread) in [0.15_f64, 0.3, 0.025, 0.025].into_iter().enumerate() {
        covariance[at][at] = spread * spread;
    }
    State { mean: [0.2, 1.0, 0.01, 0.0], covariance }
}

/// Rows of counted and rated sets at changing loads, each with the days since the one before.
fn series(chance: &mut ChaCha8Rng) -> Vec<(f64, Observation)> {
    let mut row = |_| {
        let load = chance.random_range(-0.15..0.15);
        let counted = chance.random();
        let part = |there: bool| if there { -1.0 } else { 0.0 };
        let value = 0.18 - load + chance.random_range(-0.05..0.05);
        let variance = if counted { 0.022 * 0.022 } else { 0.04 * 0.04 };
        let design = [1.0, -load, part(counted), part(!counted)];
        let days = f64::from(chance.random_range(1..=7));
        (days, Observation { design, seen: Seen::Exactly(value), variance })
    };
    (0..SETS).map(&mut row).collect()
}

/// Filters all rows as an ordinary Kalman filter does.
fn filter(rows: &[(f64, Observation)]) -> State {
    let how = Taking::new([1.0; SIZE], f64::INFINITY);
    let mut state = start();
    for (at, (days, row)) in rows.iter().enumerate() {
        if at > 0 {
            for (number, walk) in WALK.iter().enumerate() {
                state.covariance[number][number] += walk * days;
            }
        }
        state.take(row, &how);
    }
    state
}

/// As many sets, one a day, all of a kind.
fn sets(chance: &mut ChaCha8Rng, evidence: Evidence) -> Vec<SetSeen> {
    let first = NaiveDate::from_ymd_opt(1990, 1, 1).unwrap();
    let mut set = |day| SetSeen {
        on: first.checked_add_days(Days::new(day)).unwrap(),
        load: Mass::thousandths(2_500 * chance.random_range(30..50), MassUnit::Kg),
        reps: chance.random_range(3..15),
        target: 5,
        open: evidence == Evidence::Counted,
        evidence,
    };
    (0..SETS as u64).map(&mut set).collect()
}

/// Seconds of a call and the last filtered means, from statsmodels; what is missing otherwise.
fn statsmodels(rows: &[(f64, Observation)]) -> Result<(f64, Vec<f64>), String> {
    let tests = Path::new(env!("CARGO_MANIFEST_DIR"));
    let own = tests.join("../target/reference-venv/bin/python");
    let python = std::env::var_os("HOLDFAST_PYTHON")
        .or_else(|| own.exists().then(|| own.into_os_string()))
        .unwrap_or_else(|| "python3".into());
    let seen = |row: &Observation| match row.seen {
        Seen::Exactly(value) | Seen::Above(value) => value,
    };
    let text = serde_json::json!({
        "designs": rows.iter().map(|row| row.1.design).collect::<Vec<_>>(),
        "values": rows.iter().map(|row| seen(&row.1)).collect::<Vec<_>>(),
        "variances": rows.iter().map(|row| row.1.variance).collect::<Vec<_>>(),
        "days": rows.iter().map(|row| row.0).collect::<Vec<_>>(),
        "walk": WALK,
        "mean": start().mean,
        "covariance": start().covariance,
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
    let numbers: Option<Vec<f64>> =
        said.split_whitespace().map(|number| number.parse().ok()).collect();
    match numbers.as_deref() {
        Some([seconds, means @ ..]) if output.status.success() => Ok((*seconds, means.to_vec())),
        _ => {
            let error = String::from_utf8_lossy(&output.stderr).into_owned();
            Err(error.lines().last().unwrap_or("it said nothing").to_owned())
        }
    }
}

fn bench(c: &mut Criterion) {
    let mut chance = ChaCha8Rng::seed_from_u64(20_261_125);
    let rows = series(&mut chance);
    match statsmodels(&rows) {
        Ok((theirs, means)) => {
            for (ours, theirs) in filter(&rows).mean.iter().zip(means) {
                assert!((ours - theirs).abs() < 1e-9, "{ours} against {theirs}");
            }
            let ours = fastest(300, || black_box(filter(black_box(&rows)))).1.as_secs_f64();
            let ratio = theirs / ours;
            println!(
                "{SETS} sets: statsmodels {theirs:.3e} s, here {ours:.3e} s, ratio {ratio:.0}"
            );
        }
        Err(missing) => println!("statsmodels left out: {missing}"),
    }
    c.bench_function("filter 10,000 rows", |b| b.iter(|| black_box(filter(black_box(&rows)))));
    let kinds = [
        ("counted", Evidence::Counted),
        ("rated", Evidence::Reserve(2)),
        ("made as planned", Evidence::AsPlanned),
    ];
    for (name, evidence) in kinds {
        let sets = sets(&mut chance, evidence);
        let today = sets.last().unwrap().on;
        c.bench_function(&format!("strength from 10,000 sets {name}"), |b| {
            b.iter(|| black_box(strength(black_box(&sets), today).unwrap()));
        });
    }
}

criterion_group!(benches, bench);
criterion_main!(benches);
