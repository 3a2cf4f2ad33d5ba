//! The strength model on crews whose true strength is known ([`crew`] says how they are made).
//!
//! Measures: root mean square of the log of said over true one-rep max (0.05 is about 5 %), mean
//! absolute error of the reps on open sets held back, and how many of these end within their band.

mod chance;
mod crew;
mod equations;
mod score;

use std::hash::{BuildHasher, RandomState};

use holdfast_core::load::strength::Model;

use crew::{World, crew};
use equations::EQUATIONS;
use score::{Errors, Score, WAYS, score};

const ATHLETES: usize = 2_000;

/// Drawn when all constants stood, and never fitted on.
const FRESH_SEED: u64 = 20_270_301;

/// What the constants of [`Model::USUAL`] were fitted on.
const FIT_SEEDS: [u64; 2] = [11, 12];

/// What other worlds are tried on.
const OTHER_SEED: u64 = 20_261_125;

#[test]
fn better_than_every_equation_and_four_of_five_within_the_band() {
    holds(FRESH_SEED);
}

/// Another crew at every run; `HOLDFAST_SEED` runs one again.
#[test]
fn the_same_for_a_random_crew() {
    let seed = std::env::var("HOLDFAST_SEED").ok().and_then(|text| text.parse().ok());
    holds(seed.unwrap_or_else(|| RandomState::new().hash_one(0) >> 32));
}

fn holds(seed: u64) {
    println!("{ATHLETES} athletes from seed {seed}");
    let score = score(&Model::USUAL, &crew(seed, ATHLETES, World::USUAL));
    show(&score);
    assert!(score.in_band.count > 5_000.0, "{} sets held out", score.in_band.count);
    let within = |share: f64, low: f64, high: f64| (low..=high).contains(&share);
    assert!(within(score.in_band.percent(), 75.0, 85.0), "seed {seed}");
    // In each range of reps too, a little wider: nothing is made up for elsewhere.
    for share in score.in_band_by_reps {
        assert!(within(share.percent(), 72.0, 88.0), "seed {seed}: {}", share.percent());
    }
    assert!(within(score.in_interval.percent(), 75.0, 86.0), "seed {seed}");
    for (plain, equation) in score.plain.iter().zip(&EQUATIONS) {
        for (errors, way) in plain.iter().zip(WAYS) {
            let name = format!("{}, {way}, seed {seed}", equation.name);
            assert!(score.model.reps() < errors.reps(), "reps: {name}");
            // Mayhew's is for the bench press; that it is near the truth here is this crew's doing.
            assert!(!equation.general || score.model.max() < errors.max(), "max: {name}");
        }
    }
}

fn show(score: &Score) {
    let row = |name: &str, it: &Errors| {
        let (max, bias, reps) = (it.max(), it.bias(), it.reps());
        println!("{name:30} max rms {max:.4} mean {bias:+.4}  reps {reps:.3}");
    };
    row("model", &score.model);
    for (plain, equation) in score.plain.iter().zip(&EQUATIONS) {
        for (errors, way) in plain.iter().zip(WAYS) {
            row(&format!("{}, {way}", equation.name), errors);
        }
    }
    println!("{} sets; {}", score.in_band.count, covers(score));
}

fn covers(score: &Score) -> String {
    let [few, some, many] = score.in_band_by_reps.map(|it| it.percent());
    format!(
        "in band {:.1} % (to 5 reps {few:.1}, to 10 {some:.1}, more {many:.1}), {:.2} reps wide; \
         max in interval {:.1} %, change in trend {:.1} %",
        score.in_band.percent(),
        score.width,
        score.in_interval.percent(),
        score.in_trend.percent(),
    )
}

/// How the constants were fitted: what the ones in use and their neighbours give on other crews. The
/// errors of those in use are within a twentieth of the least.
#[test]
#[ignore = "slow: for whoever fits the constants again"]
fn fit() {
    let crews = FIT_SEEDS.map(|seed| crew(seed, ATHLETES, World::USUAL));
    let usual = Model::USUAL;
    let models = [
        ("usual", usual),
        ("per_day 1e-5", Model { per_day: 1e-5, ..usual }),
        ("per_day 2e-5", Model { per_day: 2e-5, ..usual }),
        ("per_day 4e-5", Model { per_day: 4e-5, ..usual }),
        ("open_error 0.02", Model { open_error: 0.02, ..usual }),
        ("open_error 0.03", Model { open_error: 0.03, ..usual }),
        ("curve_spread 0", Model { curve_spread: 0.0, ..usual }),
        ("curve_spread 0.16", Model { curve_spread: 0.16, ..usual }),
        ("curve_spread 0.24", Model { curve_spread: 0.24, ..usual }),
        ("usual_days 4", Model { usual_days: 4.0, ..usual }),
        ("usual_days 16", Model { usual_days: 16.0, ..usual }),
        ("usual_days 1e9", Model { usual_days: 1e9, ..usual }),
        ("tires 0", Model { tires: 0.0, ..usual }),
        ("tires 0.005", Model { tires: 0.005, ..usual }),
        ("tires 0.012", Model { tires: 0.012, ..usual }),
    ];
    for crew in &crews {
        let scores = models.map(|(name, model)| (name, score(&model, crew)));
        for (name, score) in &scores {
            println!("{}", line(name, score));
        }
        let best = |of: fn(&Errors) -> f64| {
            scores.iter().map(|it| of(&it.1.model)).fold(f64::INFINITY, f64::min)
        };
        let usual = &scores[0].1;
        assert!(usual.model.max() < 1.05 * best(Errors::max));
        assert!(usual.model.reps() < 1.05 * best(Errors::reps));
        assert!((usual.in_band.percent() - 80.0).abs() < 3.0);
    }
}

/// Crews made otherwise than the constants were fitted on. The band of reps keeps its promise and the
/// error in reps stays the least. The one-rep max rests on the curve and on how sets tire, so where
/// those are others its interval falls short and an equation can come as near: printed, not hidden.
#[test]
#[ignore = "slow: how far the figures rest on what was chosen for the crew"]
fn other_worlds() {
    let usual = World::USUAL;
    let worlds = [
        ("usual", usual),
        ("12 reps at 70 %", World { reps_at_70: 12.0, ..usual }),
        ("20 reps at 70 %", World { reps_at_70: 20.0, ..usual }),
        ("tires not at all", World { tires: (0.0, 0.0), ..usual }),
        ("tires twice", World { tires: (0.006, 0.04), ..usual }),
        ("form half", World { form: 0.0075, ..usual }),
        ("form twice", World { form: 0.03, ..usual }),
    ];
    for (name, world) in worlds {
        let score = score(&Model::USUAL, &crew(OTHER_SEED, ATHLETES, world));
        println!("{}", line(name, &score));
        let general = score.plain.iter().zip(&EQUATIONS).filter(|it| it.1.general);
        let best = general.flat_map(|it| it.0).map(Errors::max).fold(f64::INFINITY, f64::min);
        println!("    best equation's max rms {best:.4}");
        assert!((75.0..=87.0).contains(&score.in_band.percent()), "{name}");
        for errors in score.plain.iter().flatten() {
            assert!(score.model.reps() < errors.reps(), "{name}");
        }
    }
}

fn line(name: &str, score: &Score) -> String {
    let (max, bias, reps) = (score.model.max(), score.model.bias(), score.model.reps());
    format!("{name:18} max rms {max:.4} mean {bias:+.4} reps {reps:.3}; {}", covers(score))
}
