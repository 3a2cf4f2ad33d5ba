//! What a part of a ramp costs at the least, were there plates of every denomination without end.
//!
//! The plates' stays on the bar are a laminar family: a side is a stack, so any two stays are nested
//! or apart. Given what lies on the bar all through some steps, the next plate of the first of them
//! stays for some of the steps, and what follows is the same question twice: those steps with that
//! plate below, and the steps after them without it. With plates without end only the mass and the
//! number of the plates below matter, and a table over (first step, last step, mass, number) holds
//! every answer. Of the real counts the table knows one thing: with how many plates each mass can
//! be made at all. For the rest they can only cost more, which makes the table a bound for the exact
//! search.

use super::side::{NEVER, Side};
use crate::plan::MAX_PLATES_A_SIDE;

/// Prices by the number of plates below, up to the most a side takes, and one that is never. Floats,
/// because a processor takes the lesser of four of them at once; they are whole and under 2^24, so
/// nothing is rounded, and what is never stays infinite whatever is added.
type Row = [f32; MAX_PLATES_A_SIDE + 2];

const BLANK: Row = [f32::INFINITY; MAX_PLATES_A_SIDE + 2];

/// The least price of every run of steps above every mass and number of plates below it.
pub(super) struct Bound {
    steps: usize,
    /// Where the rows of a run of steps begin, and how many there are: one for each sum up to the
    /// lightest that its steps want.
    runs: Vec<(usize, usize)>,
    rows: Vec<Row>,
    /// What it costs that a sum is made of so many plates: nothing, or never.
    gates: Vec<Row>,
}

impl Bound {
    /// How many elementary steps the table for `side` takes.
    pub(super) fn work(side: &Side) -> usize {
        let (steps, sums) = (side.steps(), side.sums.len() + 1);
        let row = side.masses.len() + steps / 2 + 1;
        steps.saturating_mul(steps + 1).saturating_mul(sums).saturating_mul(row) / 2
    }

    /// Fills the table.
    pub(super) fn new(side: &Side) -> Bound {
        let (steps, width) = (side.steps(), side.sums.len() + 1);
        let gates = side.numbers.iter().map(|numbers| gate(*numbers)).collect();
        let runs = vec![(0, 0); steps * steps];
        let mut bound = Bound { steps, runs, rows: Vec::new(), gates };
        // For each end of its stay: the least price with one more plate on from the first step.
        let mut laid = vec![BLANK; steps * width];
        let mut run = vec![BLANK; width];
        for from in (0..steps).rev() {
            let mut reach = width;
            for last in from..steps {
                reach = reach.min(side.wanted[last] + 1);
                bound.fill(side, from, last, &mut run[..], reach, &mut laid);
                bound.runs[from * steps + last] = (bound.rows.len(), reach);
                bound.rows.extend_from_slice(&run[..reach]);
            }
        }
        bound
    }

    /// The steps from `from` to `last`, above the first `reach` sums.
    fn fill(
        &self,
        side: &Side,
        from: usize,
        last: usize,
        run: &mut [Row],
        reach: usize,
        laid: &mut [Row],
    ) {
        run.fill(BLANK);
        for end in from..last {
            let laid = &laid[end * run.len()..][..reach];
            for ((best, laid), rest) in run.iter_mut().zip(laid).zip(self.run(end + 1, last)) {
                for at in 0..best.len() {
                    best[at] = lesser(best[at], laid[at] + rest[at]);
                }
            }
        }
        let done = side.wanted[from];
        if done < reach {
            // Nothing more can go on at the first step.
            run[done] = if from == last { [0.0; _] } else { self.run(from + 1, last)[done] };
            run[done][MAX_PLATES_A_SIDE + 1] = f32::INFINITY;
        }
        let price = side.price(from, last + 1) as f32;
        let plates = side.masses.len();
        let laid = &mut laid[last * run.len()..][..run.len()];
        laid.fill(BLANK);
        for sum in (0..reach).rev() {
            let mut over = BLANK;
            for next in &side.next[sum * plates..][..plates] {
                let next = &run[*next as usize];
                for at in 0..over.len() {
                    over[at] = lesser(over[at], next[at]);
                }
            }
            let (gate, laid, run) = (&self.gates[sum], &mut laid[sum], &mut run[sum]);
            for at in 0..=MAX_PLATES_A_SIDE {
                laid[at] = over[at + 1] + price + gate[at];
                run[at] = lesser(run[at] + gate[at], laid[at]);
            }
        }
    }

    fn run(&self, from: usize, last: usize) -> &[Row] {
        let (start, reach) = self.runs[from * self.steps + last];
        &self.rows[start..start + reach]
    }

    /// The least price of steps `from..to` above a sum of so many plates, counts without end.
    pub(super) fn least(&self, from: usize, to: usize, sum: usize, plates: usize) -> i32 {
        if from == to {
            return 0;
        }
        let price = self.run(from, to - 1).get(sum).map(|row| row[plates]);
        price.filter(|price| price.is_finite()).map_or(NEVER, |price| price as i32)
    }
}

/// The lesser of two prices, neither of which is ever no number: one instruction, which `min` is not.
fn lesser(one: f32, other: f32) -> f32 {
    if one < other { one } else { other }
}

fn gate(numbers: u16) -> Row {
    let open = |at| if numbers >> at & 1 == 1 { 0.0 } else { f32::INFINITY };
    std::array::from_fn(open)
}
