//! How many fewer reps leave time to move on, from the athlete's own pace.

use serde::Serialize;

use crate::instant::Millis;
use crate::journal::WindowDone;
use crate::plan::Interval;
use crate::words;

/// How many fewer reps leave time to move on.
///
/// The pace is the time worked in a window by the reps done in it: what the window's length less
/// what was to spare took. It is this athlete's own, at that station, in this session.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct FewerReps {
    /// The time a rep takes, rounded down to the millisecond.
    pub pace: Millis,
    /// The most reps that leave the time asked for; 0 when not one does.
    pub reps: u32,
    /// How many fewer that is than were done, or than are asked for in a window to come; 1 or more.
    pub fewer: u32,
    /// The same in words.
    pub words: String,
}

/// What to say about `reps` at the pace of a window that was done: nothing when they leave the time
/// asked for, or when there is no pace to go by.
pub(crate) fn fewer_reps(interval: &Interval, done: &WindowDone, reps: u32) -> Option<FewerReps> {
    let worked = interval.window_ms.checked_sub(done.spare_ms?).filter(|worked| *worked > 0)?;
    let pace_ms = worked.checked_div(i64::from(done.reps))?;
    let time = i128::from(interval.window_ms.saturating_sub(interval.margin_ms).max(0));
    // Whole reps: as many as done for the time worked, no fraction of one counted.
    let fit = time * i128::from(done.reps) / i128::from(worked);
    let fit = u32::try_from(fit).unwrap_or(u32::MAX);
    let fewer = reps.checked_sub(fit).filter(|fewer| *fewer > 0)?;
    let words = words::fewer_reps(fit, reps, interval.margin_ms);
    Some(FewerReps { pace: Millis(pace_ms), reps: fit, fewer, words })
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::fixtures::window_done as done;
    use crate::plan::Station;

    fn interval(window_ms: i64, margin_ms: i64) -> Interval {
        let station = Station { movement: "swing".into(), reps: 15, load: None };
        Interval { window_ms, rounds: 1, stations: vec![station], margin_ms }
    }

    #[test]
    fn worked_by_hand() {
        let minute = interval(60_000, 10_000);
        // 56 s for 14 reps are 4 s each; 50 s hold 12 of them and a half.
        let found = fewer_reps(&minute, &done(14, Some(4_000)), 14).unwrap();
        assert_eq!((found.pace, found.reps, found.fewer), (Millis(4_000), 12, 2));
        assert_eq!(found.words, "At this pace, 12 reps instead of 14 leave 10 s to change over.");
        // Exactly enough is enough, one millisecond less is not.
        assert_eq!(fewer_reps(&minute, &done(10, Some(10_000)), 10), None);
        assert_eq!(fewer_reps(&minute, &done(10, Some(9_999)), 10).unwrap().fewer, 1);
        // One rep that took all of the window: no number of reps leaves time.
        let none = fewer_reps(&minute, &done(1, Some(0)), 1).unwrap();
        assert_eq!((none.reps, none.fewer), (0, 1));
        assert!(none.words.contains("not even one rep"), "{}", none.words);
    }

    #[test]
    fn without_a_pace_nothing_is_said() {
        let minute = interval(60_000, 10_000);
        for without in [done(14, None), done(0, Some(0)), done(14, Some(60_000))] {
            assert_eq!(fewer_reps(&minute, &without, 14), None);
        }
    }

    proptest! {
        /// Counted up rep by rep: the most whole reps whose time fits.
        #[test]
        fn the_most_reps_that_fit(
            window in 1..1_800_i64, margin in 0..1_800_i64, spare in 0..1_800_i64,
            reps in 1..200_u32, asked in 1..200_u32,
        ) {
            prop_assume!(margin < window && spare <= window);
            let (window, margin, spare) = (window * 1000, margin * 1000, spare * 1000);
            let worked = window - spare;
            let mut fits = 0_u32;
            // n reps take n * worked / reps.
            while worked > 0 && i64::from(fits + 1) * worked <= (window - margin) * i64::from(reps) {
                fits += 1;
            }
            let found = fewer_reps(&interval(window, margin), &done(reps, Some(spare)), asked);
            match found {
                Some(found) => {
                    prop_assert_eq!(found.reps, fits);
                    prop_assert_eq!(found.reps + found.fewer, asked);
                }
                None => prop_assert!(worked == 0 || fits >= asked),
            }
            // What was done in a tight window can always be fewer.
            let own = fewer_reps(&interval(window, margin), &done(reps, Some(spare)), reps);
            prop_assert_eq!(own.is_some(), spare < margin);
        }
    }
}
