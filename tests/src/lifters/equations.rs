//! The published equations used the plain way.

/// A published equation.
pub struct Equation {
    /// Whose it is.
    pub name: &'static str,
    /// For any movement; Mayhew's is for the bench press only.
    pub general: bool,
    /// One-rep max over load.
    pub over: fn(f64) -> f64,
}

/// The ways to use an equation: the latest set read, the best of the last three, the latest of at most
/// ten reps.
pub const WAYS: [&str; 3] = ["latest", "best of three", "latest to ten reps"];

/// Formulae and sources: Epley 1985; Brzycki, JOPERD 1993;64(1):88-90; Lombardi 1989; O'Conner et
/// al. 1989; Wathen 1994; Lander, NSCA J 1985;6(6):60-61; Mayhew et al., J Appl Sport Sci Res
/// 1992;6(4):200-206.
pub const EQUATIONS: [Equation; 7] = [
    Equation { name: "Epley", general: true, over: |r| 1.0 + r / 30.0 },
    Equation { name: "Brzycki", general: true, over: |r| 36.0 / (37.0 - r) },
    Equation { name: "Lombardi", general: true, over: |r| r.powf(0.1) },
    Equation { name: "O'Conner", general: true, over: |r| 1.0 + r / 40.0 },
    Equation {
        name: "Wathen",
        general: true,
        over: |r| 100.0 / (48.8 + 53.8 * (-0.075 * r).exp()),
    },
    Equation { name: "Lander", general: true, over: |r| 100.0 / (101.3 - 2.67123 * r) },
    Equation {
        name: "Mayhew",
        general: false,
        over: |r| 100.0 / (52.2 + 41.9 * (-0.055 * r).exp()),
    },
];

#[cfg(test)]
mod tests {
    use super::*;

    /// Check values for 100 kg at 1, 5, 10 and 15 reps, computed from the published formulae apart from
    /// this code.
    #[test]
    fn equations_are_the_published_ones() {
        let rows = [
            [103.3333, 116.6667, 133.3333, 150.0],
            [100.0, 112.5, 133.3333, 163.6364],
            [100.0, 117.4619, 125.8925, 131.1019],
            [102.5, 112.5, 125.0, 137.5],
            [101.3042, 116.5825, 134.7467, 150.9063],
            [101.3903, 113.7089, 134.0704, 163.3145],
            [108.8640, 119.0107, 130.9343, 141.7192],
        ];
        for (equation, row) in EQUATIONS.iter().zip(rows) {
            for (reps, max) in [1.0, 5.0, 10.0, 15.0].into_iter().zip(row) {
                let ours = 100.0 * (equation.over)(reps);
                assert!((ours - max).abs() < 1e-4, "{} at {reps}: {ours}", equation.name);
            }
        }
    }
}
