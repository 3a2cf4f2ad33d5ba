//! Volume load, relative volume and session load.

use crate::mass::Mass;

/// Volume load: reps times load, summed over sets. Sets without a load add nothing, nor do those with a
/// load below zero, which is what was taken off a body.
pub fn volume_load(sets: impl IntoIterator<Item = (u32, Option<Mass>)>) -> Mass {
    let lifted = |(reps, load): (u32, Option<Mass>)| Some(load?.max(Mass::ZERO) * i64::from(reps));
    sets.into_iter().filter_map(lifted).sum()
}

/// A set at a percent of the one-rep max.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RelativeSet {
    /// Reps done.
    pub reps: u32,
    /// Percent of the one-rep max, above 0 and at most 200.
    pub percent: f64,
}

/// Why there is no relative volume.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("set {set}: the percent of the maximum is above 0 and at most 200")]
pub struct PercentError {
    /// The set, counted from 1.
    pub set: usize,
}

/// What sets at percents of the maximum add up to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RelativeVolume {
    /// Reps times percent of the one-rep max, summed over sets.
    pub percent_reps: f64,
    /// The mean percent of all reps; none without a rep.
    pub mean_percent: Option<f64>,
}

/// Relative volume: reps times percent of the maximum, summed over sets (Kraft et al., J Strength
/// Cond Res 2014;28:2042-2046), and the mean percent of a rep (common practice, no source).
///
/// Equal volume is not equal strain: the same paper's two bouts of equal volume were rated 4.3
/// and 5.7.
///
/// # Errors
/// [`PercentError`] names the first set whose percent is not above 0 and at most 200.
pub fn relative_volume(sets: &[RelativeSet]) -> Result<RelativeVolume, PercentError> {
    if let Some(wrong) = sets.iter().position(|set| !(set.percent > 0.0 && set.percent <= 200.0)) {
        return Err(PercentError { set: wrong + 1 });
    }
    let percent_reps = sets.iter().map(|set| f64::from(set.reps) * set.percent).sum();
    let reps: f64 = sets.iter().map(|set| f64::from(set.reps)).sum();
    Ok(RelativeVolume { percent_reps, mean_percent: (reps > 0.0).then(|| percent_reps / reps) })
}

/// Session load in arbitrary units: the session's rating of perceived effort, 0 to 10 on the
/// modified CR-10 scale, times its minutes (Foster et al., J Strength Cond Res 2001;15:109-115).
///
/// [`super::SessionRating`] refuses a number that is not on the scale.
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
        let sets = sets.into_iter().chain([(8, Some(Mass::kg(-20))), (8, Some(Mass::ZERO))]);
        assert_eq!(volume_load(sets), Mass::kg(830));
    }

    #[test]
    fn a_percent_that_is_none_is_refused() {
        let fine = RelativeSet { reps: 5, percent: 80.0 };
        for percent in [0.0, -80.0, 200.5, f64::NAN, f64::INFINITY, 1e300] {
            let sets = [fine, RelativeSet { reps: 5, percent }];
            assert_eq!(relative_volume(&sets), Err(PercentError { set: 2 }));
        }
        let nothing = RelativeVolume { percent_reps: 0.0, mean_percent: None };
        assert_eq!(relative_volume(&[]), Ok(nothing));
        assert_eq!(relative_volume(&[RelativeSet { reps: 0, percent: 80.0 }]), Ok(nothing));
    }
}
