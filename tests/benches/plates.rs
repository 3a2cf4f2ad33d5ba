//! The least handling of a ramp beside a general solver on the same question: the integer program of
//! `published/ilp.rs`, by `microlp`. Aim: a thousand times faster, and ten sets of a kit with twelve
//! denominations in less than a millisecond.
#![allow(missing_docs)]

use std::hint::black_box;
use std::time::{Duration, Instant};

use criterion::{Criterion, criterion_group, criterion_main};
use holdfast_core::load::{Builds, Proof, ramp};
use holdfast_core::plan::{Bar, Kit, PlateStack};
use holdfast_core::{Mass, MassUnit};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

#[path = "../published/ilp.rs"]
mod ilp;
use ilp::Instance;

const SEED: u64 = 1;
const MASSES: [i64; 12] =
    [25_000, 20_000, 15_000, 10_000, 5_000, 2_500, 2_000, 1_500, 1_250, 1_000, 500, 250];

fn builds(instance: &Instance) -> Builds {
    let plates = instance.plates.iter().map(|(mass, pairs)| PlateStack {
        mass: Mass::thousandths(*mass, MassUnit::Kg),
        unit: MassUnit::Kg,
        count: pairs * 2,
    });
    let (unit, collars) = (MassUnit::Kg, Mass::ZERO);
    let bar = Bar { name: "bar".into(), mass: Mass::kg(20), unit, collars, count: 1 };
    Builds::bar(&Kit { plates: plates.collect(), ..Kit::default() }, &bar)
}

fn loads(instance: &Instance) -> Vec<Mass> {
    let load = |side: &i64| Mass::kg(20) + Mass::thousandths(side * 2, MassUnit::Kg);
    instance.sides.iter().map(load).collect()
}

/// A kit of the first denominations with up to so many pairs each, and a ramp in steps of `grid`
/// grams a side, rising unless it is to go up and down.
fn random(
    chance: &mut ChaCha8Rng,
    denominations: usize,
    sets: usize,
    pairs: u32,
    grid: i64,
    rising: bool,
) -> Instance {
    let plates = MASSES[..denominations].iter().map(|mass| (*mass, chance.random_range(1..=pairs)));
    let mut instance = Instance { plates: plates.collect(), sides: Vec::new() };
    let side = |load: Mass| (load - Mass::kg(20)).ten_ng / 2 / (MassUnit::Kg.ten_ng() / 1000);
    let all: Vec<i64> = builds(&instance).loads().map(side).collect();
    let all: Vec<i64> =
        all.into_iter().filter(|side| *side <= 90_000 && side % grid == 0).collect();
    instance.sides = (0..sets).map(|_| all[chance.random_range(0..all.len())]).collect();
    if rising {
        instance.sides.sort_unstable();
    }
    instance
}

/// Time of one run, the best of a few.
fn best(times: u32, mut run: impl FnMut() -> u32) -> (u32, Duration) {
    let timed = |_| {
        let start = Instant::now();
        (black_box(run()), start.elapsed())
    };
    (0..times).map(timed).min_by_key(|timed| timed.1).unwrap()
}

fn beside_the_solver(c: &mut Criterion) {
    println!("seed {SEED}");
    let mut chance = ChaCha8Rng::seed_from_u64(SEED);
    let mut ratios = Vec::new();
    for (denominations, sets) in [(5, 4), (5, 5), (6, 4), (6, 5), (7, 4)] {
        let instance = random(&mut chance, denominations, sets, 2, 1250, true);
        let (builds, loads) = (builds(&instance), loads(&instance));
        let (ours, fast) = best(50, || ramp(&builds, &loads).unwrap().handled);
        let (theirs, slow) = best(2, || instance.solve().unwrap());
        assert_eq!(ours, theirs);
        let ratio = slow.as_secs_f64() / fast.as_secs_f64();
        println!(
            "{denominations} denominations, {sets} sets: {ours} plates handled, solver {slow:.1?}, \
             here {fast:.1?}, ratio {ratio:.0}"
        );
        ratios.push(ratio);
        let name = format!("{denominations} denominations, {sets} sets");
        c.bench_function(&format!("ramp, {name}"), |b| {
            b.iter(|| black_box(ramp(&builds, &loads).unwrap()));
        });
    }
    let product: f64 = ratios.iter().map(|ratio| ratio.ln()).sum();
    println!("geometric mean of the ratios: {:.0}", (product / ratios.len() as f64).exp());
}

/// Many kits and ramps, so that no lucky one is shown: the middle, the slowest tenth, the slowest.
fn ten_sets(c: &mut Criterion) {
    let mut chance = ChaCha8Rng::seed_from_u64(SEED);
    for (name, pairs, grid, rising) in [
        ("up to 4 pairs, steps of 2.5 kg, rising", 4, 1250, true),
        ("up to 4 pairs, steps of 2.5 kg, any order", 4, 1250, false),
        ("up to 4 pairs, steps of 0.5 kg, rising", 4, 250, true),
        ("up to 8 pairs, steps of 0.5 kg, any order", 8, 250, false),
        ("one pair, steps of 0.5 kg, any order", 1, 250, false),
    ] {
        let mut times = Vec::new();
        let mut last = None;
        for _ in 0..200 {
            let instance = random(&mut chance, 12, 10, pairs, grid, rising);
            let (builds, loads) = (builds(&instance), loads(&instance));
            assert_eq!(ramp(&builds, &loads).unwrap().proof, Proof::Least);
            times.push(best(3, || ramp(&builds, &loads).unwrap().handled).1);
            last = Some((builds, loads));
        }
        times.sort_unstable();
        println!(
            "12 denominations, 10 sets, {name}: median {:.2?}, nine tenths under {:.2?}, most {:.2?}",
            times[100], times[180], times[199]
        );
        if let Some((builds, loads)) = last {
            c.bench_function(&format!("ramp of ten sets, {name}"), |b| {
                b.iter(|| black_box(ramp(&builds, &loads).unwrap()));
            });
        }
    }
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(50);
    targets = beside_the_solver, ten_sets
}
criterion_main!(benches);
