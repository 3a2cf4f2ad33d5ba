//! Words and digits that a phone draws large.

use super::clock::digits;
use crate::say::phone as say;

/// One side of a bar, for a screen reader.
pub(crate) fn bar_from_inside(numbers: &[&str]) -> String {
    if numbers.is_empty() {
        say::empty_bar().into()
    } else {
        say::bar_from_inside(numbers.join(", "))
    }
}

/// The digits of a phase, as large as fits: seconds alone below a hundred.
pub(crate) fn floor_digits(ms: i64) -> String {
    let seconds = (ms.max(0) + 999) / 1000;
    if seconds < 100 { seconds.to_string() } else { digits(ms) }
}

/// `1:24 to go`.
pub(crate) fn to_go(ms: i64) -> String {
    say::to_go(digits(ms))
}

/// `over by 0:12`, in whole seconds that are over.
pub(crate) fn over_by(ms: i64) -> String {
    say::rested_over(digits(ms / 1000 * 1000))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// No second is lost where the digits change their form.
    #[test]
    fn seconds_stand_alone_below_a_hundred() {
        for (ms, digits) in [
            (0, "0"),
            (1, "1"),
            (38_000, "38"),
            (99_000, "99"),
            (99_001, "1:40"),
            (120_000, "2:00"),
        ] {
            assert_eq!(floor_digits(ms), digits, "{ms}");
        }
    }
}
