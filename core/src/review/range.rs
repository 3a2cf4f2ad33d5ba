//! A change in range of motion, judged against its protocol's measurement error.

use crate::motion::{Change, change};
use crate::plan::Protocol;
use crate::words;

/// Says what a change from `before` to `after` (tenths of the protocol's unit) amounts to.
///
/// Only a change of at least the MDC95 is called one: less may be the measurement alone. See
/// [`Protocol::mdc95_tenths`] for the sources.
pub(crate) fn judge(protocol: Protocol, before: i64, after: i64) -> String {
    let unit = protocol.unit();
    let mdc95 = protocol.mdc95_tenths();
    let error = words::tenths(mdc95, unit);
    let signed = |gained: i64| {
        let sign = if gained > 0 { "+" } else { "-" };
        format!("{sign}{}", words::tenths(gained.saturating_abs(), unit))
    };
    let beyond = |gained| format!("{}, at least the measurement error ({error})", signed(gained));
    match change(protocol, before, after, mdc95) {
        Change::None => "no change".into(),
        Change::WithinError { gained } => {
            format!("{}, within the measurement error ({error})", signed(gained))
        }
        Change::Further { gained } => beyond(gained),
        Change::Less { lost } => beyond(-lost),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Powden et al. 2015: 1.9 cm for the weight-bearing lunge by one rater; Ekedahl et al. 2012:
    /// 4.5 cm for fingertip to floor, where less is further.
    #[test]
    fn only_more_than_the_error_is_called_a_change() {
        let wall = |before, after| judge(Protocol::KneeToWall, before, after);
        assert_eq!(wall(100, 118), "+1.8 cm, within the measurement error (1.9 cm)");
        assert_eq!(wall(100, 119), "+1.9 cm, at least the measurement error (1.9 cm)");
        assert_eq!(wall(100, 60), "-4.0 cm, at least the measurement error (1.9 cm)");
        assert_eq!(wall(100, 100), "no change");
        let floor = judge(Protocol::FingertipToFloor, 150, 100);
        assert_eq!(floor, "+5.0 cm, at least the measurement error (4.5 cm)");
    }
}
