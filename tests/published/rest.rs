//! Rest between sets and against the clock.

use holdfast_core::load::{Intensity, rest_after_work, suggested_rest};

fn seconds(intensity: Intensity) -> Option<(i64, i64, bool)> {
    suggested_rest(intensity)
        .map(|rest| (rest.shortest_ms / 1000, rest.longest_ms / 1000, rest.from_memory))
}

/// P: 3 to 5 minutes for 1 to 6 reps (American College of Sports Medicine 2009, summary), 3 to 5
/// minutes keep the reps at 50 to 90 % (de Salles et al., Sports Med 2009;39:765-777, abstract). M, and
/// said so in the result: 1 to 2 minutes at 8 to 12 reps, 20 to 60 seconds for endurance.
#[test]
fn rest_between_sets() {
    for reps in 1..=6 {
        assert_eq!(seconds(Intensity::Reps(reps)), Some((180, 300, false)));
    }
    for percent in [50, 70, 90, 91, 100] {
        assert_eq!(seconds(Intensity::Percent(percent)), Some((180, 300, false)));
    }
    assert_eq!(seconds(Intensity::Reps(10)), Some((60, 120, true)));
    assert_eq!(seconds(Intensity::Reps(20)), Some((20, 60, true)));
}

/// S: the textbook's worked example, 10 seconds at 1 to 12 up to 1 to 20 are 120 to 200 seconds of
/// rest; and its table's other rows.
#[test]
fn rest_after_a_bout() {
    assert_eq!(rest_after_work(10_000), Some((120_000, 200_000)));
    assert_eq!(rest_after_work(30_000), Some((90_000, 150_000)));
    assert_eq!(rest_after_work(60_000), Some((180_000, 240_000)));
    assert_eq!(rest_after_work(240_000), Some((240_000, 720_000)));
}
