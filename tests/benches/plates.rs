//! The least handling of a ramp beside a general solver on the same question: the integer program of
//! `holdfast_tests::ilp`, by `microlp`. Aim: a thousand times faster, and ten sets of a kit with twelve
//! denominations in less than a millisecond, also where the loads of its warm-up float. And what that saves.
#![expect(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a measurement that stops has failed, and its figures are what it is for"
)]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use holdfast_core::load::{Proof, WarmUpFor, WarmUpSet, ramp, ramp_with_warm_up, warm_up};
use holdfast_core::plan::WarmUpRule;
use holdfast_core::{Mass, MassUnit};
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
    let mut instance =
        Instance { plates: plates.collect(), warm_up: Vec::new(), sides: Vec::new() };
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
        let (theirs, slow) = fastest(2, || instance.solve().unwrap().0);
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
            times.push(fastest(9, || ramp(&builds, &loads).unwrap().handled).1);
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

/// The same with a warm-up that floats before sets that climb or stay; ten where the warm-up has seven.
fn floating(c: &mut Criterion) {
    let usual = WarmUpRule::usual(MassUnit::Kg);
    let fine = WarmUpRule {
        unit: MassUnit::Kg,
        smallest_plate: Mass::thousandths(250, MassUnit::Kg),
        multiple: Mass::thousandths(500, MassUnit::Kg),
    };
    let mut chance = ChaCha8Rng::seed_from_u64(SEED);
    for (name, pairs, grid, rule) in [
        ("up to 4 pairs", 4, 1250, usual),
        ("up to 8 pairs", 8, 1250, usual),
        ("up to 8 pairs, sets in steps of 0.5 kg", 8, 250, usual),
        ("one pair", 1, 250, usual),
        ("up to 4 pairs, any build within 5 %", 4, 1250, fine),
        ("up to 8 pairs, any build within 5 %", 8, 250, fine),
    ] {
        let mut times = Vec::new();
        let (mut last, mut sets) = (None, 0);
        for _ in 0..200 {
            let mut instance = random(&mut chance, 12, 0, pairs, grid, true);
            // Loads of 200 kg and more have seven warm-up sets, where the kit goes so far.
            let mut all = sides(&instance.plates);
            all.retain(|side| *side > 0 && *side <= 150_000 && side % grid == 0);
            let heavy = all.partition_point(|side| *side < 90_000).min(all.len() - 3);
            instance.sides = (0..3).map(|_| all[chance.random_range(heavy..all.len())]).collect();
            instance.sides.sort_unstable();
            let (builds, loads) = (builds(&instance.plates), loads(&instance.sides));
            let warm = || warm_up(&builds, loads[0], WarmUpFor::default(), rule);
            sets = sets.max(warm().len() + loads.len());
            let make = || ramp_with_warm_up(&builds, &warm(), &loads).unwrap();
            assert_eq!(make().proof, Proof::Least);
            times.push(fastest(9, || make().handled).1);
            let warm = warm();
            last = Some((builds, warm, loads));
        }
        times.sort_unstable();
        let at = |part: usize| times[(times.len() - 1) * part / 10];
        println!(
            "12 denominations, up to {sets} sets, floating, {name}: median {:.2?}, nine tenths under {:.2?}, \
             most {:.2?}",
            at(5),
            at(9),
            at(10)
        );
        if let Some((builds, warm, loads)) = last {
            c.bench_function(&format!("floating ramp, {name}"), |b| {
                b.iter(|| black_box(ramp_with_warm_up(&builds, &warm, &loads).unwrap()));
            });
        }
    }
}

/// Three sets at one load, from what a beginner presses to what few squat.
const USUAL: [i64; 16] = [30, 40, 50, 60, 70, 80, 90, 100, 110, 120, 130, 140, 150, 160, 180, 200];

/// Plates moved a side over sixteen usual ramps: each set on its own, with the nearest loads in their order, and
/// floating.
fn usual_ramps(_: &mut Criterion) {
    let club: &[(i64, u32)] =
        &[(25_000, 2), (20_000, 2), (15_000, 2), (10_000, 2), (5_000, 2), (2_500, 2), (1_250, 2)];
    let plain: &[(i64, u32)] = &[(20_000, 4), (10_000, 2), (5_000, 2), (2_500, 2), (1_250, 1)];
    let rich: Vec<(i64, u32)> = MASSES.iter().map(|mass| (*mass, 4)).collect();
    for (name, plates) in [("a club kit", club), ("a plain kit", plain), ("a rich kit", &rich)] {
        let builds = builds(plates);
        let (mut alone, mut kept, mut floats, mut sets, mut moved) = (0, 0, 0, 0, 0);
        for work in USUAL.map(Mass::kg) {
            let warm =
                warm_up(&builds, work, WarmUpFor::default(), WarmUpRule::usual(MassUnit::Kg));
            let nearest: Vec<Mass> = warm.iter().map(WarmUpSet::nearest).collect();
            let in_order: Vec<Mass> = nearest.iter().copied().chain([work; 3]).collect();
            let least = |ramp: &holdfast_core::load::Ramp| assert_eq!(ramp.proof, Proof::Least);
            let fixed = ramp(&builds, &in_order).unwrap();
            let free = ramp_with_warm_up(&builds, &warm, &[work; 3]).unwrap();
            least(&fixed);
            least(&free);
            alone += fixed.alone;
            kept += fixed.handled;
            floats += free.handled;
            sets += warm.len();
            let steps = free.steps.iter().zip(&nearest);
            moved += steps.filter(|(step, nearest)| step.build.mass != **nearest).count();
        }
        println!(
            "sixteen usual ramps, {name}: each set on its own {alone} plates moved a side, order kept {kept}, \
             floating {floats}; {moved} of {sets} warm-up sets moved"
        );
    }
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(50);
    targets = usual_ramps, floating, ten_sets, beside_the_solver
}
criterion_main!(benches);
