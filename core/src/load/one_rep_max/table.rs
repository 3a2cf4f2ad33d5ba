//! Reps against percent of the maximum: two printed tables that do not agree, with their gaps.

use crate::mass::{Mass, MassUnit};
use crate::plan::keyword;

keyword! {
    /// A printed table of how many reps a percent of the one-rep max allows.
    ///
    /// The two differ at 12 reps, and neither prints 13 or 14: a missing cell is `None`, never a
    /// guess between its neighbours.
    RepsTable {
        /// The textbook's: 1 to 12 and 15 reps. Its cell for 12 reps is from memory.
        Textbook = "textbook",
        /// The one-page training load chart: 1 to 10 and 12 reps.
        LoadChart = "load-chart",
    }
}

/// What both print for 1 to 10 reps.
const COMMON: [(u32, u32); 10] =
    [(1, 100), (2, 95), (3, 93), (4, 90), (5, 87), (6, 85), (7, 83), (8, 80), (9, 77), (10, 75)];

impl RepsTable {
    /// The percent of the one-rep max that `reps` reps go with, where the table prints it.
    pub fn percent(self, reps: u32) -> Option<u32> {
        let own: &[(u32, u32)] = match self {
            RepsTable::Textbook => &[(11, 70), (12, 67), (15, 65)],
            RepsTable::LoadChart => &[(12, 70)],
        };
        COMMON.iter().chain(own).find(|(printed, _)| *printed == reps).map(|(_, percent)| *percent)
    }

    /// The load that `reps` reps go with, rounded down to a unit of 10 ng. None where the table has
    /// no such cell or the maximum is not above zero.
    pub fn load(self, one_rep_max: Mass, reps: u32) -> Option<Mass> {
        let percent = self.percent(reps)?;
        (one_rep_max > Mass::ZERO).then(|| one_rep_max.percent(percent))
    }

    /// The one-rep max in kilograms that a load for `reps` reps goes with. None where the table has
    /// no such cell or the load is not above zero. For showing, never for building.
    pub fn one_rep_max_kg(self, load: Mass, reps: u32) -> Option<f64> {
        let percent = self.percent(reps)?;
        let kg = load.for_drawing(MassUnit::Kg);
        (load > Mass::ZERO).then(|| kg * 100.0 / f64::from(percent))
    }

    /// Where it is printed.
    pub fn source(self) -> &'static str {
        match self {
            RepsTable::Textbook => {
                "Baechle, Earle and Wathen, in: Essentials of Strength Training and Conditioning, \
                 Human Kinetics, 3rd and 4th edition"
            }
            RepsTable::LoadChart => "NSCA training load chart",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cell_that_is_not_printed_is_none() {
        let gaps = |table: RepsTable| -> Vec<u32> {
            (0..=20).filter(|reps| table.percent(*reps).is_none()).collect()
        };
        assert_eq!(gaps(RepsTable::Textbook), [0, 13, 14, 16, 17, 18, 19, 20]);
        assert_eq!(gaps(RepsTable::LoadChart), [0, 11, 13, 14, 15, 16, 17, 18, 19, 20]);
        assert_eq!(RepsTable::Textbook.load(Mass::kg(100), 13), None);
        assert_eq!(RepsTable::Textbook.load(Mass::kg(-100), 5), None);
        assert_eq!(RepsTable::LoadChart.one_rep_max_kg(Mass::ZERO, 5), None);
        assert_eq!(RepsTable::LoadChart.percent(u32::MAX), None);
    }

    #[test]
    fn more_reps_are_a_smaller_percent() {
        for table in RepsTable::ALL {
            let percents: Vec<u32> = (1..=15).filter_map(|reps| table.percent(reps)).collect();
            assert!(percents.is_sorted_by(|more, fewer| more > fewer), "{table:?}");
        }
    }
}
