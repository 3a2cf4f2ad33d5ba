//! Intervals, and that of a ratio.

/// A number with an interval around it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interval {
    /// The lower end.
    pub low: f64,
    /// As likely below as above.
    pub likely: f64,
    /// The upper end.
    pub high: f64,
}

/// Two numbers, normal together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pair {
    /// The mean of what is divided.
    pub over: f64,
    /// The mean of what it is divided by.
    pub under: f64,
    /// The variance of what is divided.
    pub over_variance: f64,
    /// The covariance of both.
    pub shared: f64,
    /// The variance of what it is divided by.
    pub under_variance: f64,
}

impl Pair {
    /// The interval of `over / under` by Fieller's theorem (J R Stat Soc B 1954;16(2):175-185): all ratios
    /// `t` for which `over - t under` lies within `reach` of its standard deviations of 0. None where
    /// these don't lie between two ends, because `under` may as well be 0.
    pub fn ratio(&self, reach: f64) -> Option<(f64, f64)> {
        let square = reach * reach;
        let a = self.under * self.under - square * self.under_variance;
        let b = self.over * self.under - square * self.shared;
        let c = self.over * self.over - square * self.over_variance;
        let root = (b * b - a * c).max(0.0).sqrt();
        (a > 0.0).then(|| ((b - root) / a, (b + root) / a))
    }
}
