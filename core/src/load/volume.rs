//! Volume load and session load.

use crate::mass::Mass;

/// Volume load: reps times load, summed over sets. Sets without a load add nothing.
pub fn volume_load(sets: impl IntoIterator<Item = (u32, Option<Mass>)>) -> Mass {
    sets.into_iter().filter_map(|(reps, load)| Some(load? * i64::from(reps))).sum()
}

/// Session load in arbitrary units: the session's rating of perceived effort, 0 to 10 on the
/// modified CR-10 scale, times its minutes (Foster et al., J Strength Cond Res 2001;15:109-115).
pub fn session_load(effort: u32, minutes: u32) -> u32 {
    effort.saturating_mul(minutes)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The unit example of the method's own papers: an hour rated 7 is 420 units.
    #[test]
    fn an_hour_rated_seven_is_420() {
        assert_eq!(session_load(7, 60), 420);
    }

    /// Common practice, no source: sets times reps times load. 5 x 100 + 3 x 110 = 830.
    #[test]
    fn volume_is_reps_times_load() {
        let sets = [(5, Some(Mass::kg(100))), (3, Some(Mass::kg(110))), (20, None)];
        assert_eq!(volume_load(sets), Mass::kg(830));
    }
}
