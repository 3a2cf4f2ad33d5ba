//! The published equations as data: what each is for, where it holds, where it was published.

use crate::plan::keyword;

keyword! {
    /// A published equation for the one-rep max.
    ///
    /// With `w` the load in kilograms and `r` the reps to failure:
    Equation {
        /// `w (1 + r/30)`. The chart of 1985 prints the constant as 0.0333; the two differ by
        /// 0.0033 % of `w` a rep.
        Epley = "epley",
        /// `36 w / (37 - r)`. The paper prints `w / (1.0278 - 0.0278 r)`, the same rounded.
        Brzycki = "brzycki",
        /// `w r^0.10`.
        Lombardi = "lombardi",
        /// `100 w / (52.2 + 41.9 e^(-0.055 r))`, for the bench press.
        Mayhew = "mayhew",
        /// `w (1 + 0.025 r)`.
        OConner = "oconner",
        /// `100 w / (48.8 + 53.8 e^(-0.075 r))`.
        Wathen = "wathen",
        /// `100 w / (101.3 - 2.67123 r)`.
        Lander = "lander",
        /// `w r^0.1 + 1.49`, for the bench press and 4 to 10 reps.
        RobertsBench = "roberts-bench",
        /// `w r^0.1 + 1.06`, for the leg extension and 4 to 10 reps.
        RobertsLegExtension = "roberts-leg-extension",
        /// `1.1307 w + 0.6999`, for the bench press and a load that allows just 5 reps.
        ReynoldsBench = "reynolds-bench",
        /// `1.0970 w + 14.2546`, for the leg press and a load that allows just 5 reps.
        ReynoldsLegPress = "reynolds-leg-press",
        /// `159.9 + 0.103 r w - 11.552 r`, for the squat near 70 % of the maximum.
        KravitzSquat = "kravitz-squat",
        /// `90.66 + 0.085 r w - 5.306 r`, for the bench press near 70 % of the maximum.
        KravitzBench = "kravitz-bench",
        /// `156.08 + 0.098 r w - 12.106 r`, for the deadlift near 80 % of the maximum.
        KravitzDeadlift = "kravitz-deadlift",
    }
}

keyword! {
    /// What an equation was made for.
    Lift {
        /// Whatever lift; made and tested mostly on the bench press and the squat.
        Any = "any",
        BenchPress = "bench-press",
        LegExtension = "leg-extension",
        LegPress = "leg-press",
        Squat = "squat",
        Deadlift = "deadlift",
    }
}

/// The reps an equation holds for, both ends included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FewestMost {
    /// The fewest.
    pub fewest: u32,
    /// The most.
    pub most: u32,
}

impl Equation {
    /// The lift it was published for.
    pub fn lift(self) -> Lift {
        match self {
            Equation::Mayhew
            | Equation::RobertsBench
            | Equation::ReynoldsBench
            | Equation::KravitzBench => Lift::BenchPress,
            Equation::RobertsLegExtension => Lift::LegExtension,
            Equation::ReynoldsLegPress => Lift::LegPress,
            Equation::KravitzSquat => Lift::Squat,
            Equation::KravitzDeadlift => Lift::Deadlift,
            _ => Lift::Any,
        }
    }

    /// The reps it holds for.
    ///
    /// Where none were published the range ends at 36: Brzycki's has a pole at 37 and Lander's
    /// just before 38, and beyond them they give negative loads.
    pub fn reps(self) -> FewestMost {
        match self {
            Equation::RobertsBench | Equation::RobertsLegExtension => {
                FewestMost { fewest: 4, most: 10 }
            }
            Equation::ReynoldsBench | Equation::ReynoldsLegPress => {
                FewestMost { fewest: 5, most: 5 }
            }
            _ => FewestMost { fewest: 1, most: 36 },
        }
    }

    /// The percent of the maximum it was fitted at, where it was fitted at one.
    pub fn fitted_percent(self) -> Option<u32> {
        match self {
            Equation::KravitzSquat | Equation::KravitzBench => Some(70),
            Equation::KravitzDeadlift => Some(80),
            _ => None,
        }
    }

    /// The standard error its authors gave, in kilograms, where they gave one.
    pub fn standard_error_kg(self) -> Option<f64> {
        match self {
            Equation::ReynoldsBench => Some(2.98),
            Equation::ReynoldsLegPress => Some(16.16),
            Equation::KravitzSquat => Some(5.06),
            Equation::KravitzBench => Some(2.69),
            Equation::KravitzDeadlift => Some(4.97),
            _ => None,
        }
    }

    /// Where it was published.
    pub fn source(self) -> &'static str {
        match self {
            Equation::Epley => "Epley, Poundage Chart, Body Enterprises 1985",
            Equation::Brzycki => "Brzycki, J Phys Educ Recreat Dance 1993;64(1):88-90",
            Equation::Lombardi => "Lombardi, Beginning Weight Training, Brown 1989",
            Equation::Mayhew => "Mayhew et al., J Appl Sport Sci Res 1992;6(4):200-206",
            Equation::OConner => "O'Conner et al., Weight Training Today, West 1989",
            Equation::Wathen => {
                "Wathen, Load assignment, in: Essentials of Strength Training and Conditioning, \
                 Human Kinetics 1994"
            }
            Equation::Lander => "Lander, NSCA Journal 1985;6(6):60-61",
            Equation::RobertsBench | Equation::RobertsLegExtension => {
                "Roberts et al., J Strength Cond Res 2024"
            }
            Equation::ReynoldsBench | Equation::ReynoldsLegPress => {
                "Reynolds et al., J Strength Cond Res 2006;20(3):584-592"
            }
            Equation::KravitzSquat | Equation::KravitzBench | Equation::KravitzDeadlift => {
                "Kravitz et al., J Strength Cond Res 2003;17(1):167-172"
            }
        }
    }

    /// The bare formula, kilograms in and out, with no look at what it is given.
    pub(super) fn kilograms(self, w: f64, r: f64) -> f64 {
        match self {
            Equation::Epley => w * (1.0 + r / 30.0),
            // In this order, so that a single is just what was lifted.
            Equation::Brzycki => w * (36.0 / (37.0 - r)),
            Equation::Lombardi => w * r.powf(0.10),
            Equation::Mayhew => 100.0 * w / (52.2 + 41.9 * (-0.055 * r).exp()),
            Equation::OConner => w * (1.0 + 0.025 * r),
            Equation::Wathen => 100.0 * w / (48.8 + 53.8 * (-0.075 * r).exp()),
            Equation::Lander => 100.0 * w / (101.3 - 2.67123 * r),
            Equation::RobertsBench => r.powf(0.1) * w + 1.49,
            Equation::RobertsLegExtension => r.powf(0.1) * w + 1.06,
            Equation::ReynoldsBench => 1.1307 * w + 0.6999,
            Equation::ReynoldsLegPress => 1.0970 * w + 14.2546,
            Equation::KravitzSquat => 159.9 + 0.103 * r * w - 11.552 * r,
            Equation::KravitzBench => 90.66 + 0.085 * r * w - 5.306 * r,
            Equation::KravitzDeadlift => 156.08 + 0.098 * r * w - 12.106 * r,
        }
    }
}
