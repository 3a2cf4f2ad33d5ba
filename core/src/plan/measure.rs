//! Range-of-motion protocols: each has its own unit, zero point and measurement error.

use super::keyword::keyword;
use crate::say::plan_measure as say;

keyword! {
    /// How range of motion is measured before and after a hold.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    Protocol {
        /// Seated forward reach on a box; the reading at the feet depends on the box, so only
        /// change is judged.
        SitAndReach = "sit-and-reach",
        /// Standing forward bend, distance from fingertip to floor; smaller is further.
        FingertipToFloor = "fingertip-to-floor",
        /// Weight-bearing lunge: greatest distance from toe to wall with the knee touching it and
        /// the heel down.
        KneeToWall = "knee-to-wall",
        /// Weight-bearing lunge: angle of the shin from the vertical.
        ShinAngle = "shin-angle",
    }
}

keyword! {
    /// The unit of a range measure.
    MeasureUnit {
        Centimetre = "cm",
        Degree = "deg",
    }
}

keyword! {
    /// When in a session a range was measured.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    MeasuredWhen {
        Before = "before",
        After = "after",
    }
}

impl Protocol {
    /// The unit its readings are in.
    pub fn unit(self) -> MeasureUnit {
        match self {
            Protocol::ShinAngle => MeasureUnit::Degree,
            _ => MeasureUnit::Centimetre,
        }
    }

    /// The smallest change that is not measurement error with 95 % confidence (MDC95), in tenths
    /// of the unit.
    ///
    /// - Sit-and-reach: 4 cm, forward-reach score of J Sports Sci Med 2009;8(1):116-122, table 1.
    /// - Fingertip to floor: 4.5 cm, Ekedahl et al., Arch Phys Med Rehabil 2012;93:2210-2215.
    /// - Weight-bearing lunge, one rater: 1.9 cm and 4.7 degrees, Powden et al., Man Ther
    ///   2015;20:524-532.
    pub fn mdc95_tenths(self) -> i64 {
        match self {
            Protocol::SitAndReach => 40,
            Protocol::FingertipToFloor => 45,
            Protocol::KneeToWall => 19,
            Protocol::ShinAngle => 47,
        }
    }

    /// Where the measurement error was published.
    pub fn source(self) -> &'static str {
        match self {
            Protocol::SitAndReach => say::sit_and_reach_source(),
            Protocol::FingertipToFloor => say::fingertip_to_floor_source(),
            Protocol::KneeToWall | Protocol::ShinAngle => say::lunge_source(),
        }
    }

    /// True when a larger reading means more range.
    pub fn larger_is_further(self) -> bool {
        !matches!(self, Protocol::FingertipToFloor)
    }

    /// Readings outside these tenths of the unit are a slip of the finger.
    pub fn sane_tenths(self) -> std::ops::RangeInclusive<i64> {
        match self {
            Protocol::SitAndReach | Protocol::FingertipToFloor => -400..=800,
            Protocol::KneeToWall => 0..=300,
            Protocol::ShinAngle => 0..=700,
        }
    }
}
