//! Hard work on one pattern two days running: what to spare.

use crate::id::RecordId;
use crate::plan::Pattern;

/// From so many sets on one pattern in a day, it was worked. Common practice, no source, like the
/// rest of this rule.
const SETS: usize = 3;
/// A set that left at most so many reps was near its end.
const NEAR_END: u32 = 2;
/// A session rated so hard was hard throughout: "very hard" on the modified CR-10 scale (Foster et
/// al., J Strength Cond Res 2001;15:109-115).
const HARD_RPE: u32 = 7;

/// A set as this rule sees it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WorkedSet {
    /// Its record.
    pub record: RecordId,
    /// What the body did.
    pub pattern: Pattern,
    /// True for an open set and for one that fell short.
    pub to_the_end: bool,
    /// Reps in reserve, where the athlete said.
    pub reserve: Option<u32>,
}

/// A pattern that was worked hard on a day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HardWork {
    /// What the body did.
    pub pattern: Pattern,
    /// The sets it is read from.
    pub from: Vec<RecordId>,
}

/// The patterns worked hard in a session: three sets or more, with one near its end or the whole
/// session rated very hard.
pub fn hard_work(sets: &[WorkedSet], rpe: Option<u32>) -> Vec<HardWork> {
    let hard_session = rpe.is_some_and(|rpe| rpe >= HARD_RPE);
    let worked = Pattern::ALL.iter().map(|pattern| {
        let of: Vec<&WorkedSet> = sets.iter().filter(|set| set.pattern == *pattern).collect();
        (*pattern, of)
    });
    let near_end =
        |set: &&WorkedSet| set.to_the_end || set.reserve.is_some_and(|left| left <= NEAR_END);
    worked
        .filter(|(_, sets)| sets.len() >= SETS && (hard_session || sets.iter().any(near_end)))
        .map(|(pattern, sets)| {
            let from = sets.iter().map(|set| set.record).collect();
            HardWork { pattern, from }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn set(n: u8, pattern: Pattern, to_the_end: bool, reserve: Option<u32>) -> WorkedSet {
        WorkedSet { record: RecordId(crate::id::random([n; 16])), pattern, to_the_end, reserve }
    }

    #[test]
    fn hard_is_three_sets_with_one_near_its_end_or_a_hard_session() {
        let easy = [1, 2, 3].map(|n| set(n, Pattern::Squat, false, Some(3)));
        assert!(hard_work(&easy, Some(6)).is_empty());
        assert!(hard_work(&easy, None).is_empty());
        let found = hard_work(&easy, Some(7));
        assert_eq!(found[0].pattern, Pattern::Squat);
        assert_eq!(found[0].from, easy.each_ref().map(|set| set.record));
        for last in [set(3, Pattern::Squat, true, None), set(3, Pattern::Squat, false, Some(2))] {
            let sets = [easy[0].clone(), easy[1].clone(), last];
            assert_eq!(hard_work(&sets, None).len(), 1);
        }
        let two = [set(1, Pattern::Pull, true, None), set(2, Pattern::Pull, true, None)];
        assert!(hard_work(&two, Some(10)).is_empty(), "two sets are not a day's work");
        let mixed = [&easy[..2], &two[..1]].concat();
        assert!(hard_work(&mixed, Some(10)).is_empty(), "each pattern for itself");
    }
}
