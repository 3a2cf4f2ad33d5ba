//! A change in range, judged against the error of measuring it.

use crate::plan::Protocol;

/// What the difference of two readings amounts to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// The readings are the same.
    None,
    /// They differ by less than the error: it may be the measurement alone.
    WithinError {
        /// What was gained, in tenths of the unit; negative when lost.
        gained: i64,
    },
    /// More range, by at least the error.
    Further {
        /// What was gained, in tenths of the unit; above zero.
        gained: i64,
    },
    /// Less range, by at least the error.
    Less {
        /// What was lost, in tenths of the unit, as a number above zero.
        lost: i64,
    },
}

/// Judges the readings `before` and `after` of a protocol, all in tenths of its unit, against the
/// smallest change that is not error with 95 % confidence: the published one
/// ([`Protocol::mdc95_tenths`]) or the athlete's own ([`super::TypicalError::mdc95`]).
///
/// Where less is further, as from fingertip to floor, a smaller reading is a gain. An error below
/// zero counts as zero.
pub fn change(protocol: Protocol, before: i64, after: i64, mdc95_tenths: i64) -> Change {
    let (from, to) = if protocol.larger_is_further() { (before, after) } else { (after, before) };
    let gained = to.saturating_sub(from);
    match gained {
        0 => Change::None,
        _ if gained.saturating_abs() < mdc95_tenths => Change::WithinError { gained },
        1.. => Change::Further { gained },
        _ => Change::Less { lost: gained.saturating_neg() },
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        /// Forth and back are the same change the other way round, and nothing overflows.
        #[test]
        fn back_is_forth_turned_round(
            before in any::<i32>(), after in any::<i32>(), error in -1_i64..1 << 32, which in 0..4_usize
        ) {
            let protocol = Protocol::ALL[which];
            let there = change(protocol, before.into(), after.into(), error);
            let back = change(protocol, after.into(), before.into(), error);
            let expected = match there {
                Change::None => Change::None,
                Change::WithinError { gained } => Change::WithinError { gained: -gained },
                Change::Further { gained } => Change::Less { lost: gained },
                Change::Less { lost } => Change::Further { gained: lost },
            };
            prop_assert_eq!(back, expected);
        }
    }

    #[test]
    fn the_ends_of_the_numbers_are_survived() {
        for protocol in Protocol::ALL {
            for (before, after) in [(i64::MIN, i64::MAX), (i64::MAX, i64::MIN), (i64::MIN, 0)] {
                assert_ne!(change(*protocol, before, after, 1), Change::None);
            }
        }
    }
}
