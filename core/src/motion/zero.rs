//! What a reading of zero means: it belongs to the protocol, and on a box to the box.

use crate::plan::{Protocol, keyword};

/// Where a protocol's readings count from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ZeroPoint {
    /// Wherever the box's scale starts: see [`FootLine`].
    Box,
    /// The floor, upwards: below it, off a step, a reading is negative.
    Floor,
    /// The wall, away from it.
    Wall,
    /// The vertical, away from it.
    Vertical,
}

/// Where readings of `protocol` count from.
pub fn zero_point(protocol: Protocol) -> ZeroPoint {
    match protocol {
        Protocol::SitAndReach => ZeroPoint::Box,
        Protocol::FingertipToFloor => ZeroPoint::Floor,
        Protocol::KneeToWall => ZeroPoint::Wall,
        Protocol::ShinAngle => ZeroPoint::Vertical,
    }
}

keyword! {
    /// A sit-and-reach box, by where its foot line is.
    ///
    /// Readings of two boxes can only be held together after [`FootLine::beyond_feet`]; the
    /// protocols differ in more than the scale, so a change of box still is a new series.
    FootLine {
        /// The scale reads 0 at the feet.
        FeetZero = "feet-zero",
        /// The Eurofit box reads 15 cm at the feet.
        Eurofit = "eurofit",
        /// A box of the school type reads 23 cm at the feet (secondary source).
        School = "school",
        /// The flexometer of Wells and Dillon reads 26 cm at the feet (secondary source).
        Flexometer = "flexometer",
        /// The yardstick on the floor reads 15 in, 38.1 cm, at the feet (secondary sources).
        Yardstick = "yardstick",
    }
}

impl FootLine {
    /// The reading at the feet, in tenths of a centimetre.
    pub fn at_feet_tenths(self) -> i64 {
        match self {
            FootLine::FeetZero => 0,
            FootLine::Eurofit => 150,
            FootLine::School => 230,
            FootLine::Flexometer => 260,
            FootLine::Yardstick => 381,
        }
    }

    /// How far beyond the feet a reading is, in tenths of a centimetre; negative short of them. A
    /// reading past what an `i64` holds stays at its end.
    pub fn beyond_feet(self, tenths: i64) -> i64 {
        tenths.saturating_sub(self.at_feet_tenths())
    }

    /// What another box would have read for the same reach, in tenths of a centimetre.
    pub fn read_on(self, other: FootLine, tenths: i64) -> i64 {
        self.beyond_feet(tenths).saturating_add(other.at_feet_tenths())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn there_and_back_is_the_same_reading() {
        for one in FootLine::ALL {
            assert_eq!(one.beyond_feet(one.at_feet_tenths()), 0);
            for two in FootLine::ALL {
                for tenths in [-400, 0, 1, 333, 800] {
                    assert_eq!(two.read_on(*one, one.read_on(*two, tenths)), tenths);
                }
            }
            assert_eq!(one.read_on(FootLine::FeetZero, i64::MAX), i64::MAX - one.at_feet_tenths());
        }
        assert_eq!(FootLine::Eurofit.beyond_feet(i64::MIN), i64::MIN);
    }

    #[test]
    fn a_protocol_that_can_read_below_its_zero_may_be_negative() {
        for protocol in Protocol::ALL {
            let below = *protocol.sane_tenths().start() < 0;
            let open = matches!(zero_point(*protocol), ZeroPoint::Box | ZeroPoint::Floor);
            assert_eq!(below, open, "{protocol:?}");
        }
    }
}
