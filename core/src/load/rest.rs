//! How long to rest: between sets, and between bouts against the clock.

use crate::plan::keyword;

keyword! {
    /// Where the suggested length of a rest comes from.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    RestBasis {
        /// The plan says it.
        Plan = "plan",
        /// The published range for heavy sets.
        Published = "published",
        /// What is usual after lighter sets: common practice, no source.
        Usual = "usual",
    }
}

/// What a set is told by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Intensity {
    /// Reps the load allows at most.
    Reps(u32),
    /// Percent of the one-rep max.
    Percent(u32),
}

/// A published rest.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rest {
    /// The shortest, in milliseconds.
    pub shortest_ms: i64,
    /// The longest, in milliseconds.
    pub longest_ms: i64,
    /// What it is for.
    pub purpose: &'static str,
    /// Where it was published.
    pub source: &'static str,
    /// True when the numbers were not seen in their source but remembered.
    pub from_memory: bool,
}

const HEAVY: Rest = Rest {
    shortest_ms: 180_000,
    longest_ms: 300_000,
    purpose: "heavy sets of 1 to 6 reps, with some months of training",
    source: "Ratamess et al. (American College of Sports Medicine), Med Sci Sports Exerc \
             2009;41:687-708, summary",
    from_memory: false,
};

const MODERATE: Rest = Rest {
    shortest_ms: 60_000,
    longest_ms: 120_000,
    purpose: "sets of 8 to 12 reps of beginners",
    source: "Ratamess et al. (American College of Sports Medicine), Med Sci Sports Exerc \
             2009;41:687-708",
    from_memory: true,
};

const ENDURANCE: Rest = Rest {
    shortest_ms: 20_000,
    longest_ms: 60_000,
    purpose: "sets of more than 15 reps for endurance",
    source: "de Salles et al., Sports Med 2009;39:765-777",
    from_memory: true,
};

const KEEP_REPS: Rest = Rest {
    shortest_ms: 180_000,
    longest_ms: 300_000,
    purpose: "keeping the reps up over several sets",
    source: "de Salles et al., Sports Med 2009;39:765-777, abstract",
    from_memory: false,
};

/// A rest between sets that was published for such a set; none where none was (7 reps, 13 to 15
/// reps, less than half the maximum, more than all of it).
///
/// By reps: 1 to 6, 8 to 12, and 16 and more. By percent: 50 to 90 as in the review, 91 to 100 as
/// for heavy sets. The two do not say the same of one set: the first goes by what is usually
/// trained for, the second by what keeps the reps up.
pub fn suggested_rest(intensity: Intensity) -> Option<&'static Rest> {
    match intensity {
        Intensity::Reps(1..=6) | Intensity::Percent(91..=100) => Some(&HEAVY),
        Intensity::Reps(8..=12) => Some(&MODERATE),
        Intensity::Reps(16..=100) => Some(&ENDURANCE),
        Intensity::Percent(50..=90) => Some(&KEEP_REPS),
        _ => None,
    }
}

/// A published ratio of rest to work against the clock.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WorkRest {
    /// The work, shortest and longest, in milliseconds.
    pub work_ms: (i64, i64),
    /// Rest as a multiple of the work, least and most.
    pub times: (i64, i64),
}

/// Rest for a bout of work, by the textbook's table of energy systems (Essentials of Strength
/// Training and Conditioning, Human Kinetics, table 3.6, seen in a secondary copy). "More than 3
/// min" ends at an hour here.
pub const WORK_REST: [WorkRest; 4] = [
    WorkRest { work_ms: (5_000, 10_000), times: (12, 20) },
    WorkRest { work_ms: (15_000, 30_000), times: (3, 5) },
    WorkRest { work_ms: (60_000, 180_000), times: (3, 4) },
    WorkRest { work_ms: (180_001, 3_600_000), times: (1, 3) },
];

/// The shortest and longest rest after so much work, in milliseconds; none in the table's gaps
/// (under 5, 10 to 15 and 30 to 60 seconds, more than an hour).
pub fn rest_after_work(work_ms: i64) -> Option<(i64, i64)> {
    let row = WORK_REST.iter().find(|row| (row.work_ms.0..=row.work_ms.1).contains(&work_ms))?;
    Some((work_ms * row.times.0, work_ms * row.times.1))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_not_published_is_none() {
        for reps in [0, 7, 13, 14, 15, 101, u32::MAX] {
            assert_eq!(suggested_rest(Intensity::Reps(reps)), None, "{reps} reps");
        }
        for percent in [0, 49, 101, u32::MAX] {
            assert_eq!(suggested_rest(Intensity::Percent(percent)), None, "{percent} %");
        }
        for work in [i64::MIN, -1, 0, 4_999, 10_001, 14_999, 30_001, 59_999, 3_600_001, i64::MAX] {
            assert_eq!(rest_after_work(work), None, "{work} ms");
        }
    }
}
