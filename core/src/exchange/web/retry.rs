//! How long to wait before an operation is tried again: a pure function, so that every shell waits alike.

use super::WebFault;
use crate::instant::Millis;

/// Tries of one operation in all.
pub const MAX_TRIES: u32 = 5;

/// The first wait, doubled at each further try.
const FIRST_MS: i64 = 500;

/// Longer than this nobody waits with a device in hand: the fault is said, and a later exchange tries again.
const LONGEST_MS: i64 = 30_000;

/// How long to wait after the `tries`-th try, counted from 1, ended in a fault; `None`: say the fault.
///
/// An operation starts over when it is tried again: each may be done twice without harm. A server that asks for
/// more time gets it, up to half a minute. `spent` is how long it has taken since the first try began, waits and all: a
/// server that says no only after half a minute is not asked again. SeaweedFS 4.53 with too few volume servers is one.
pub fn wait_before_next(fault: &WebFault, tries: u32, spent: Millis) -> Option<Millis> {
    if !fault.passes() || tries == 0 || tries >= MAX_TRIES || spent.0 >= LONGEST_MS {
        return None;
    }
    let own = FIRST_MS << (tries - 1);
    let asked = match fault {
        WebFault::Busy { wait_s: Some(wait_s), .. } => i64::from(*wait_s) * 1_000,
        _ => 0,
    };
    let wait = own.max(asked);
    (wait <= LONGEST_MS).then_some(Millis(wait))
}

#[cfg(test)]
mod tests {
    use super::*;

    const NONE: Millis = Millis(0);

    fn busy(wait_s: Option<u32>) -> WebFault {
        WebFault::Busy { carrier: "https://h.example/".into(), status: 503, wait_s }
    }

    #[test]
    fn waits_double_and_end() {
        let next = |tries| wait_before_next(&busy(None), tries, NONE);
        let waits: Vec<_> = (0..=6).map(next).collect();
        let ms = |ms| Some(Millis(ms));
        assert_eq!(waits, [None, ms(500), ms(1_000), ms(2_000), ms(4_000), None, None]);
        let lost = WebFault::Interrupted { carrier: String::new() };
        assert_eq!(wait_before_next(&lost, 1, NONE), ms(500));
    }

    #[test]
    fn a_server_that_asks_for_more_time_gets_it_within_reason() {
        assert_eq!(wait_before_next(&busy(Some(7)), 1, NONE), Some(Millis(7_000)));
        assert_eq!(wait_before_next(&busy(Some(0)), 3, NONE), Some(Millis(2_000)));
        assert_eq!(wait_before_next(&busy(Some(30)), 1, NONE), Some(Millis(30_000)));
        assert_eq!(wait_before_next(&busy(Some(31)), 1, NONE), None);
        assert_eq!(wait_before_next(&busy(Some(u32::MAX)), 1, NONE), None);
    }

    #[test]
    fn a_server_that_is_slow_to_say_no_is_not_asked_again() {
        let after = |spent| wait_before_next(&busy(None), 1, Millis(spent));
        assert_eq!(
            [after(29_999), after(30_000), after(i64::MAX)],
            [Some(Millis(500)), None, None]
        );
    }

    #[test]
    fn what_does_not_pass_is_not_tried_again() {
        let wrong = WebFault::WrongPassword { carrier: String::new() };
        assert_eq!(wait_before_next(&wrong, 1, NONE), None);
    }
}
