//! Prilepin's table: how many reps lifters did at which percent of the maximum.

/// A row of [`PRILEPIN`]; both ends of every range are included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PrilepinRow {
    /// Percent of the maximum, the lowest and the highest.
    pub percent: (u32, u32),
    /// Reps a set, the fewest and the most.
    pub reps: (u32, u32),
    /// Total reps of a session that the table calls best.
    pub best_total: u32,
    /// Total reps of a session, the fewest and the most.
    pub total: (u32, u32),
}

/// Prilepin's table, as one English copy prints its edges: 66 to 69, 76 to 79 and 86 to 89 percent
/// are in no row. Other copies close the gaps; none was seen in the original.
///
/// It describes the snatch and the clean and jerk of weightlifters and prescribes nothing to others.
/// Attributed to Prilepin through Laputin and Oleshko, Managing the Training of Weightlifters, 1982
/// (the citation from memory; the numbers from five secondary copies that agree).
pub const PRILEPIN: [PrilepinRow; 4] = [
    PrilepinRow { percent: (55, 65), reps: (3, 6), best_total: 24, total: (18, 30) },
    PrilepinRow { percent: (70, 75), reps: (3, 6), best_total: 18, total: (12, 24) },
    PrilepinRow { percent: (80, 85), reps: (2, 4), best_total: 15, total: (10, 20) },
    PrilepinRow { percent: (90, 100), reps: (1, 2), best_total: 7, total: (4, 10) },
];

/// The row a percent of the maximum falls in; none below 55, in a gap, or above 100.
pub fn prilepin_row(percent: u32) -> Option<&'static PrilepinRow> {
    PRILEPIN.iter().find(|row| (row.percent.0..=row.percent.1).contains(&percent))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gaps_stay_gaps_and_rows_are_in_order() {
        for percent in [0, 54, 66, 69, 76, 79, 86, 89, 101, u32::MAX] {
            assert_eq!(prilepin_row(percent), None, "{percent}");
        }
        for row in &PRILEPIN {
            assert!(row.total.0 < row.best_total && row.best_total < row.total.1);
            assert_eq!(prilepin_row(row.percent.0), Some(row));
            assert_eq!(prilepin_row(row.percent.1), Some(row));
        }
        assert!(PRILEPIN.is_sorted_by(|light, heavy| light.best_total > heavy.best_total));
    }
}
