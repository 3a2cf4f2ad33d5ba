//! How wide bands are, learned from how many of them held.

/// The share of open sets that is to end outside its band: one in five.
pub const OUTSIDE: f64 = 0.2;
/// How far one set moves the share, and where it is held. Among 0.02 to 0.1 the simulation saw no
/// difference; chosen, no source.
const STEP: f64 = 0.05;
const HELD: (f64, f64) = (0.01, 0.6);

/// The share outside that the next band is made for: adaptive conformal inference (Gibbs and Candès,
/// NeurIPS 2021, arXiv 2106.00170). After a set outside its band bands get wider, after one inside a
/// little narrower.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Adaptive {
    outside: f64,
}

impl Default for Adaptive {
    fn default() -> Adaptive {
        Adaptive { outside: OUTSIDE }
    }
}

impl Adaptive {
    /// The share of sets outside that the next band is made for.
    pub fn outside(self) -> f64 {
        self.outside
    }

    /// Takes in whether a set ended outside its band.
    pub fn saw(&mut self, outside: bool) {
        let missed = f64::from(u8::from(outside));
        self.outside = (self.outside + STEP * (OUTSIDE - missed)).clamp(HELD.0, HELD.1);
    }
}

/// How the latest open sets ended, ten at most.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Ended {
    /// So many ended inside their band.
    pub inside: u32,
    /// Of so many.
    pub of: u32,
    /// A bit for each, set for one that ended inside, the latest lowest.
    bits: u32,
}

/// So many of the latest sets are counted.
const LATEST: u32 = 10;

impl Ended {
    pub(super) fn saw(&mut self, outside: bool) {
        self.bits = ((self.bits << 1) | u32::from(!outside)) & ((1 << LATEST) - 1);
        self.of = (self.of + 1).min(LATEST);
        self.inside = self.bits.count_ones();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_share_stays_in_its_range() {
        let mut adaptive = Adaptive::default();
        adaptive.saw(false);
        assert!((adaptive.outside() - 0.21).abs() < 1e-15);
        (0..100).for_each(|_| adaptive.saw(false));
        assert_eq!(adaptive.outside(), 0.6);
        (0..100).for_each(|_| adaptive.saw(true));
        assert_eq!(adaptive.outside(), 0.01);
    }

    #[test]
    fn the_latest_ten_are_counted() {
        let mut ended = Ended::default();
        ended.saw(true);
        assert_eq!((ended.inside, ended.of), (0, 1));
        (0..9).for_each(|_| ended.saw(false));
        assert_eq!((ended.inside, ended.of), (9, 10));
        ended.saw(true);
        assert_eq!((ended.inside, ended.of), (9, 10), "the first one outside is forgotten");
    }
}
