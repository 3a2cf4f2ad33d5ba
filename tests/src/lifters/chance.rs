//! Draws that the generator needs, from the seeded source.

use rand::RngExt;
use rand_chacha::ChaCha8Rng;

/// A seeded source with the draws of this simulation.
pub(crate) struct Chance(pub(crate) ChaCha8Rng);

impl Chance {
    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.0.random::<f64>()
    }

    pub(crate) fn happens(&mut self, share: f64) -> bool {
        self.0.random::<f64>() < share
    }

    pub(crate) fn pick(&mut self, from: &[u32]) -> u32 {
        from[self.0.random_range(0..from.len())]
    }

    pub(crate) fn whole(&mut self, low: u32, high: u32) -> u32 {
        self.0.random_range(low..=high)
    }

    /// Standard normal, by Box and Muller.
    pub(crate) fn normal(&mut self) -> f64 {
        let radius = (-2.0 * (1.0 - self.0.random::<f64>()).ln()).sqrt();
        radius * (std::f64::consts::TAU * self.0.random::<f64>()).cos()
    }

    /// Student's t with four degrees of freedom: rare days far from the rest.
    pub(crate) fn heavy(&mut self) -> f64 {
        let squares: f64 = (0..4).map(|_| self.normal().powi(2)).sum();
        self.normal() / (squares / 4.0).sqrt()
    }
}
