//! Which places a movement loads.

use super::Place;
use crate::plan::Pattern;

/// True when a movement of a pattern loads a place: with pain there it goes no heavier. Common practice, no
/// source: the joints that each pattern bends or braces under load. Muscle and other places are not told
/// apart by it.
pub fn is_loaded_by(place: Place, pattern: Pattern) -> bool {
    let by: &[Pattern] = match place {
        Place::Neck => &[Pattern::Squat, Pattern::Push, Pattern::Pull, Pattern::Carry],
        Place::Shoulder | Place::Wrist => &[Pattern::Push, Pattern::Pull, Pattern::Carry],
        Place::Elbow => &[Pattern::Push, Pattern::Pull],
        Place::UpperBack => &[Pattern::Hinge, Pattern::Pull, Pattern::Carry],
        Place::LowBack => {
            &[Pattern::Squat, Pattern::Hinge, Pattern::Pull, Pattern::Carry, Pattern::Trunk]
        }
        Place::Hip => &[Pattern::Squat, Pattern::Hinge, Pattern::Step, Pattern::Carry],
        Place::Knee | Place::Ankle => &[Pattern::Squat, Pattern::Step],
        Place::Muscle | Place::Other => &[],
    };
    by.contains(&pattern)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_knee_is_loaded_by_squats_and_steps_and_no_press() {
        assert!(
            is_loaded_by(Place::Knee, Pattern::Squat) && is_loaded_by(Place::Knee, Pattern::Step)
        );
        assert!(!is_loaded_by(Place::Knee, Pattern::Push));
        assert!(is_loaded_by(Place::LowBack, Pattern::Hinge));
        // Every joint is loaded by something; what is not told apart holds nothing back.
        for place in Place::ALL {
            let known = Pattern::ALL.iter().any(|pattern| is_loaded_by(*place, *pattern));
            assert_eq!(known, !matches!(place, Place::Muscle | Place::Other), "{place:?}");
        }
    }
}
