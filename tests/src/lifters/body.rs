//! What an athlete can really do.
//!
//! It is not the model's own twin:
//!
//! - **Curve.** The share of the one-rep max that can be lifted `r` times is a mix, in proportions of
//!   the athlete's own, of an exponential and of a hyperbola (as work and critical power make it),
//!   with an asymptote of 20 to 45 % of the athlete's own, through the reps they have at 70 %: 16 with a
//!   standard deviation of 4, held to 6 to 26 (Zourdos et al., J Strength Cond Res
//!   2021;35(2S):S158-165). The model's curve is a mean of three other shapes.
//! - **Form.** Of the day, Student's t with four degrees of freedom, scale 1.5 %, at most 12 %.
//! - **Sets.** Each makes the next weaker by 0.3 to 2 %. Reps are what is whole of the athlete's capacity
//!   plus an error that grows with the reps.
//! - **Ratings.** The reps really left, called too low by 15 % of them and by the athlete's own bias (0.7
//!   reps), with an error of 0.8 reps and a quarter of the reps left more: about 1 rep near
//!   failure, more than 2 at 7 to 10 away (Hackett et al., J Strength Cond Res 2017;31(8):2162-2168).
//!
//! All of these but the two cited are chosen, no source.

use super::behaviour::Behaviour;
use super::chance::Chance;

pub(crate) struct Body {
    steep: f64,
    asymptote: f64,
    at_70: f64,
    hyperbolic: f64,
    /// What a set takes from the next.
    pub(crate) tires: f64,
    /// Of the reps left that this lifter says.
    pub(crate) bias: f64,
}

impl Body {
    pub(crate) fn draw(chance: &mut Chance, behaviour: Behaviour) -> Body {
        let steep = behaviour.steep();
        // A curve bent on purpose is spread less.
        let spread = if steep == 1.0 { 4.0 } else { 2.0 };
        Body {
            steep,
            // Sixteen whole reps are sixteen and a half of capacity.
            at_70: (16.0 + spread * chance.normal()).clamp(6.0, 26.0) + 0.5,
            asymptote: chance.between(0.2, 0.45),
            hyperbolic: chance.between(0.0, 1.0),
            tires: chance.between(0.003, 0.02),
            bias: 0.7 * chance.normal(),
        }
    }

    /// The form of a day.
    pub(super) fn form(chance: &mut Chance) -> f64 {
        (0.015 * chance.heavy()).clamp(-0.12, 0.12)
    }

    /// The good reps of a set that so many came before, all logarithms: strength, form, load.
    pub(super) fn reps(&self, chance: &mut Chance, strength: f64, before: u32, load: f64) -> u32 {
        let able = self.capacity(strength - self.tires * f64::from(before) - load);
        let error = (0.2 + 0.05 * able.max(0.0)) * chance.normal();
        (able + error).max(0.0).floor() as u32
    }

    /// What is said to be left of so many reps more.
    pub(super) fn said(&self, chance: &mut Chance, spare: u32) -> u32 {
        let spare = f64::from(spare);
        let error = (0.8 + 0.25 * spare) * chance.normal() + self.bias - 0.15 * spare;
        (spare + error).round().max(0.0) as u32
    }

    /// The share of the one-rep max that goes up `reps` times; above 1 for less than one.
    pub(crate) fn share(&self, reps: f64) -> f64 {
        if reps < 1.0 {
            return 1.0 + 0.05 * (1.0 - reps);
        }
        let (above, at) = (1.0 - self.asymptote, 0.7 - self.asymptote);
        let (more, more_at_70) = (reps - 1.0, self.at_70 - 1.0);
        let work = more_at_70 * at / (above - at);
        let hyperbola = work / (work + more);
        let exponential = (at / above).powf(more / more_at_70);
        let mixed = self.hyperbolic * hyperbola + (1.0 - self.hyperbolic) * exponential;
        self.asymptote + above * mixed
    }

    /// The reps, not whole, at a load so far below the one-rep max.
    pub(crate) fn capacity(&self, below: f64) -> f64 {
        let share = (-below / self.steep).exp();
        let (mut low, mut high) = (-20.0, 200.0);
        for _ in 0..36 {
            let middle = (low + high) / 2.0;
            if self.share(middle) > share { low = middle } else { high = middle }
        }
        low
    }
}
