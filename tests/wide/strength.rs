//! The strength model's constants and promises, on many simulated lifters.

use holdfast_core::load::strength::Model;
use holdfast_tests::fresh_seed;
use holdfast_tests::lifters::{EQUATIONS, Errors, LIFTERS, World, holds, lifters, score};

/// What the constants of [`Model::USUAL`] were fitted on.
const FIT_SEEDS: [u64; 2] = [11, 12];

/// What other worlds are tried on.
const OTHER_SEED: u64 = 20_261_125;

/// The promises of the usual checks hold for a hundred times two thousand lifters, drawn anew at every
/// run: smaller errors than every equation, and four of five sets within their band. A minute or two.
#[test]
fn the_promises_hold_for_two_hundred_thousand_lifters() {
    let first = fresh_seed();
    (0..100).for_each(|more| holds(first.wrapping_add(more)));
}

/// The constants in use are well fitted: beside fourteen neighbours, on the lifters they were fitted on,
/// their errors are within a twentieth of the least, and their band holds what it promises. Some five
/// seconds.
#[test]
fn no_neighbour_of_the_fitted_constants_is_much_better() {
    println!("seeds {FIT_SEEDS:?}");
    let crews = FIT_SEEDS.map(|seed| lifters(seed, LIFTERS, World::USUAL));
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
            println!("{}", score.line(name));
        }
        let best = |of: fn(&Errors) -> f64| {
            scores.iter().map(|score| of(&score.1.model)).fold(f64::INFINITY, f64::min)
        };
        let usual = &scores[0].1;
        assert!(usual.model.max() < 1.05 * best(Errors::max));
        assert!(usual.model.reps() < 1.05 * best(Errors::reps));
        assert!((usual.in_band.percent() - 80.0).abs() < 3.0);
    }
}

/// Lifters made otherwise than the constants were fitted on: the band of reps keeps its promise and the
/// error in reps stays the least. The one-rep max rests on the curve and on how sets tire, so where those
/// are others its interval falls short and an equation can come as near: printed, not hidden. Some five
/// seconds.
#[test]
fn the_band_keeps_its_promise_in_other_worlds() {
    println!("seed {OTHER_SEED}");
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
        let score = score(&Model::USUAL, &lifters(OTHER_SEED, LIFTERS, world));
        println!("{}", score.line(name));
        let general = score.plain.iter().zip(&EQUATIONS).filter(|plain| plain.1.general);
        let best =
            general.flat_map(|general| general.0).map(Errors::max).fold(f64::INFINITY, f64::min);
        println!("    best equation's max rms {best:.4}");
        assert!((75.0..=87.0).contains(&score.in_band.percent()), "{name}");
        for errors in score.plain.iter().flatten() {
            assert!(score.model.reps() < errors.reps(), "{name}");
        }
    }
}
