//! The least handling of a ramp beside a general solver on the same question: the integer program of
//! `holdfast_tests::ilp`, by `microlp`. Aim: a thousand times faster, and ten sets of a kit with twelve
//! denominations in less than a millisecond.
#![expect(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a measurement that stops has failed, and its figures are what it is for"
)]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use holdfast_core::load::{Proof, ramp};
use holdfast_tests::ilp::Instance;
use holdfast_tests::kits::{builds, loads, sides};
use holdfast_tests::timing::fastest;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

const SEED: u64 = 1;
const MASSES: [i64; 12] =
    [25_000, 20_000, 15_000, 10_000, 5_000, 2_500, 2_000, 1_500, 1_250, 1_000, 500, 250];

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
    let mut all = sides(&instance.plates);
    all.retain(|side| *side <= 90_000 && side % grid == 0);
    instance.sides = (0..sets).map(|_| all[chance.random_range(0..all.len())]).collect();
    if rising {
        instance.sides.sort_unstable();
    }
    instance
}

fn beside_the_solver(c: &mut Criterion) {
    println!("seed {SEED}");
    let mut chance = ChaCha8Rng::seed_from_u64(SEED);
    let mut ratios = Vec::new();
    for (denominations, sets) in [(5, 4), (5, 5), (6, 4), (6, 5), (7, 4)] {
        let instance = random(&mut chance, denominations, sets, 2, 1250, true);
        let (builds, loads) = (builds(&instance.plates), loads(&instance.sides));
        let (ours, fast) = fastest(50, || ramp(&builds, &loads).unwrap().handled);
        let (theirs, slow) = fastest(2, || instance.solve().unwrap());
        assert_eq!(ours, theirs, "{:?} {:?}", instance.plates, instance.sides);
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
            let (builds, loads) = (builds(&instance.plates), loads(&instance.sides));
            assert_eq!(ramp(&builds, &loads).unwrap().proof, Proof::Least);
            times.push(fastest(3, || ramp(&builds, &loads).unwrap().handled).1);
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
