//! The least handling as an integer program, solved by a general library (`good_lp` with `microlp`:
//! simplex, branch and bound). It shares nothing with the core's search but the question.
//!
//! A variable counts the plates of one denomination that stay on during sets `i..=j`; a binary says
//! whether any plate has that stay. Heavier plates lie inside: none can go on or come off between two sets
//! in which a lighter one stays on. All plates come off in the end. A warm-up set picks one of its loads, by a
//! binary each; of as few plates moved the loads count that are the least away from the planned ones.

use good_lp::{
    Expression, ProblemVariables, Solution, SolverModel, Variable, constraint, microlp, variable,
};

/// A ramp to be built.
pub struct Instance {
    /// Denominations in grams, with their pairs.
    pub plates: Vec<(i64, u32)>,
    /// The warm-up, before the sets.
    pub warm_up: Vec<Window>,
    /// What a side weighs in each set, in grams.
    pub sides: Vec<i64>,
}

/// What a warm-up set may be.
pub struct Window {
    /// What a side may weigh, in grams, and how many kilograms the load is then away from the plan.
    pub sides: Vec<(i64, f64)>,
    /// The lightest plate there may be, in grams.
    pub smallest: i64,
}

/// As many plates as a side takes, in the core.
const MOST_PLATES: u32 = 10;

impl Instance {
    /// Plates put on and taken off a side at the least, and the kilograms that the warm-up is then away from the
    /// plan at the least.
    ///
    /// # Errors
    /// Why the solver has no answer.
    pub fn solve(&self) -> Result<(u32, f64), String> {
        let sets = self.warm_up.len() + self.sides.len();
        let stays: Vec<(usize, usize)> =
            (0..sets).flat_map(|from| (from..sets).map(move |to| (from, to))).collect();
        let mut all = ProblemVariables::new();
        let mut used: Vec<Vec<Variable>> = Vec::new();
        let mut counts: Vec<Vec<Variable>> = Vec::new();
        for (_, pairs) in &self.plates {
            let most = f64::from((*pairs).min(MOST_PLATES));
            let count = || variable().integer().min(0.0).max(most);
            counts.push(stays.iter().map(|_| all.add(count())).collect());
            used.push(stays.iter().map(|_| all.add(variable().binary())).collect());
        }
        let picks: Vec<Vec<Variable>> = self
            .warm_up
            .iter()
            .map(|set| set.sides.iter().map(|_| all.add(variable().binary())).collect())
            .collect();
        let handled: Expression = counts.iter().flatten().map(|count| 2.0 * *count).sum();
        let mut away = Expression::from(0.0);
        let mut farthest = 1.0;
        for (set, picks) in self.warm_up.iter().zip(&picks) {
            for ((_, kilograms), pick) in set.sides.iter().zip(picks) {
                away += *kilograms * *pick;
            }
            farthest += set.sides.iter().map(|(_, away)| *away).fold(0.0, f64::max);
        }
        // One plate is worth more than any distance.
        let price = farthest * handled.clone() + away.clone();
        let mut model = all.minimise(price).using(microlp);
        for (((_, pairs), counts), used) in self.plates.iter().zip(&counts).zip(&used) {
            let most = f64::from((*pairs).min(MOST_PLATES));
            for (count, used) in counts.iter().zip(used) {
                model.add_constraint(constraint!(*count <= most * *used));
            }
        }
        for set in 0..sets {
            let during = |stay: &(usize, usize)| (stay.0..=stay.1).contains(&set);
            let mut weight = Expression::from(0.0);
            let mut plates = Expression::from(0.0);
            let smallest = self.warm_up.get(set).map_or(0, |window| window.smallest);
            for ((mass, pairs), counts) in self.plates.iter().zip(&counts) {
                let pairs = if *mass < smallest { &0 } else { pairs };
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
            let mut side = Expression::from(0.0);
            match set.checked_sub(self.warm_up.len()) {
                Some(set) => side += self.sides[set] as f64 / 250.0,
                None => {
                    let picks = &picks[set];
                    for ((grams, _), pick) in self.warm_up[set].sides.iter().zip(picks) {
                        side += *grams as f64 / 250.0 * *pick;
                    }
                    let one: Expression = picks.iter().copied().map(Expression::from).sum();
                    model.add_constraint(constraint!(one == 1.0));
                }
            }
            model.add_constraint(constraint!(weight == side));
            model.add_constraint(constraint!(plates <= f64::from(MOST_PLATES)));
        }
        // Plates of one denomination are alike: the order among them is no constraint.
        for (inner, heavier) in used.iter().enumerate() {
            for lighter in &used[inner + 1..] {
                for (moves, (start, end)) in heavier.iter().zip(&stays) {
                    for (stays_on, (from, to)) in lighter.iter().zip(&stays) {
                        let goes_on = from < start && start <= to;
                        let comes_off = from <= end && end < to;
                        if goes_on || comes_off {
                            model.add_constraint(constraint!(*moves + *stays_on <= 1.0));
                        }
                    }
                }
            }
        }
        let solution = model.solve().map_err(|error| error.to_string())?;
        Ok((solution.eval(&handled).round() as u32, solution.eval(&away)))
    }
}
