//! The covariance stays one, however long and however odd the log.

use super::super::follow::Follower;
use super::super::seen::rows;
use super::super::{Evidence, SIZE, SetSeen, State, strength_on};
use super::{day, set};
use crate::mass::Mass;

/// Symmetric, and by Cholesky's decomposition, which needs every pivot: no combination of the four
/// numbers has a negative variance, but for what rounding leaves of a 0.
fn is_covariance(state: &State) {
    let c = &state.covariance;
    let mut root = [[0.0; SIZE]; SIZE];
    for row in 0..SIZE {
        for column in 0..=row {
            assert_eq!(c[row][column], c[column][row], "{state:?}");
            let done: f64 = (0..column).map(|at| root[row][at] * root[column][at]).sum();
            let left = c[row][column] - done;
            if row == column {
                assert!(left >= -1e-15, "{left} in {state:?}");
                root[row][row] = left.max(0.0).sqrt();
            } else if root[column][column] > 0.0 {
                root[row][column] = left / root[column][column];
            }
        }
    }
    assert!(state.mean.iter().all(|mean| mean.is_finite()));
}

/// Everything at once, from a small generator: reps and loads up and down, all kinds of evidence.
fn odd_log(rows: u64, gap: impl Fn(u64) -> u64) -> Vec<SetSeen> {
    let mut chance = 88_172_645_463_325_252_u64;
    let mut next = |below: u64| {
        chance ^= chance << 13;
        chance ^= chance >> 7;
        chance ^= chance << 17;
        chance % below
    };
    let mut on = 0;
    let mut row = |at| {
        on += gap(at);
        let evidence = match next(4) {
            0 => Evidence::Counted,
            1 => Evidence::Reserve(next(11) as u32),
            2 => Evidence::Short,
            _ => Evidence::AsPlanned,
        };
        set(on, 600 + next(800) as i64, next(37) as u32, evidence)
    };
    (0..rows).map(&mut row).collect()
}

fn follow(sets: &[SetSeen]) -> usize {
    let mut follower = Follower::new();
    let rows = rows(sets).unwrap();
    let mut informed = 0;
    for row in &rows {
        follower.take(row);
        if let Some(strength) = follower.at(row.day) {
            is_covariance(strength.state());
            informed += 1;
        }
    }
    informed
}

#[test]
fn ten_thousand_rows() {
    assert!(follow(&odd_log(10_000, |_| 1)) > 8_000);
    assert!(follow(&odd_log(2_000, |at| if at % 100 == 0 { 3_650 } else { 3 })) > 1_600);
}

#[test]
fn ten_years_away_and_a_load_mistyped() {
    let mut sets = odd_log(200, |_| 3);
    sets.push(set(10_000, 1000, 5, Evidence::Counted));
    sets.push(set(10_003, 1000, 5, Evidence::AsPlanned));
    sets.push(set(10_006, 2200, 5, Evidence::Counted));
    sets.push(set(10_009, 1000, 5, Evidence::Counted));
    sets.push(set(10_012, 450, 5, Evidence::AsPlanned));
    follow(&sets);
    let on = strength_on(&sets, &[day(10_012)]).unwrap().pop().flatten().unwrap();
    let band = on.expected_reps(Mass::kg(100), 0);
    assert!(band.low <= 5 && 5 <= band.high, "{band:?}");
}

/// Whoever stays away is never foretold better for it.
#[test]
fn the_deviation_of_a_forecast_never_falls_with_absence() {
    let sets = odd_log(300, |_| 2);
    let dates: Vec<_> = (600..600 + 3_650).map(day).collect();
    let on = strength_on(&sets, &dates).unwrap();
    for kg in [40, 80, 100, 140, 220] {
        let of = |on: &Option<super::super::Strength>| on.unwrap().foretell(Mass::kg(kg), 2).1;
        let all: Vec<f64> = on.iter().map(of).collect();
        assert!(all.is_sorted(), "{kg} kg");
    }
}
