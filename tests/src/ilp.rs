//! The least handling as an integer program, solved by a general library (`good_lp` with `microlp`:
//! simplex, branch and bound). It shares nothing with the core's search but the question.
//!
//! A variable counts the plates of one denomination that stay on during sets `i..=j`; a binary says
//! whether any plate has that stay. Two stays that cross cannot both be: the plate that went on
//! first would have to come off from below the other.

use good_lp::{
    Expression, ProblemVariables, Solution, SolverModel, Variable, constraint, microlp, variable,
};

/// A ramp to be built.
pub struct Instance {
    /// Denominations in grams, with their pairs.
    pub plates: Vec<(i64, u32)>,
    /// What a side weighs in each set, in grams.
    pub sides: Vec<i64>,
}

/// As many plates as a side takes, in the core.
const MOST_PLATES: u32 = 10;

impl Instance {
    /// Plates put on and taken off a side at the least.
    ///
    /// # Errors
    /// Why the solver has no answer.
    pub fn solve(&self) -> Result<u32, String> {
        let sets = self.sides.len();
        let stays: Vec<(usize, usize)> =
            (0..sets).flat_map(|from| (from..sets).map(move |to| (from, to))).collect();
        let mut all = ProblemVariables::new();
        let used: Vec<Variable> = stays.iter().map(|_| all.add(variable().binary())).collect();
        let mut counts: Vec<Vec<Variable>> = Vec::new();
        for (_, pairs) in &self.plates {
            let most = f64::from((*pairs).min(MOST_PLATES));
            let count = || variable().integer().min(0.0).max(most);
            counts.push(stays.iter().map(|_| all.add(count())).collect());
        }
        let handled: Expression = counts
            .iter()
            .flat_map(|counts| counts.iter().zip(&stays))
            .map(|(count, (_, to))| if to + 1 == sets { 1.0 * *count } else { 2.0 * *count })
            .sum();
        let mut model = all.minimise(handled).using(microlp);
        for ((_, pairs), counts) in self.plates.iter().zip(&counts) {
            let most = f64::from((*pairs).min(MOST_PLATES));
            for (count, used) in counts.iter().zip(&used) {
                model.add_constraint(constraint!(*count <= most * *used));
            }
        }
        for (set, side) in self.sides.iter().enumerate() {
            let during = |stay: &(usize, usize)| (stay.0..=stay.1).contains(&set);
            let mut weight = Expression::from(0.0);
            let mut plates = Expression::from(0.0);
            for ((mass, pairs), counts) in self.plates.iter().zip(&counts) {
                let on: Expression = counts
                    .iter()
                    .zip(&stays)
                    .filter(|(_, stay)| during(stay))
                    .map(|count| count.0)
                    .sum();
                model.add_constraint(constraint!(on.clone() <= f64::from(*pairs)));
                weight += on.clone() * (*mass as f64 / 250.0);
                plates += on;
            }
            model.add_constraint(constraint!(weight == *side as f64 / 250.0));
            model.add_constraint(constraint!(plates <= f64::from(MOST_PLATES)));
        }
        for (one, (from, to)) in used.iter().zip(&stays) {
            for (other, (start, end)) in used.iter().zip(&stays) {
                if from < start && start <= to && to < end {
                    model.add_constraint(constraint!(*one + *other <= 1.0));
                }
            }
        }
        let solution = model.solve().map_err(|error| error.to_string())?;
        let value = |(count, (_, to)): (&Variable, &(usize, usize))| {
            solution.value(*count) * if to + 1 == sets { 1.0 } else { 2.0 }
        };
        let total: f64 =
            counts.iter().flat_map(|counts| counts.iter().zip(&stays)).map(value).sum();
        Ok(total.round() as u32)
    }
}
