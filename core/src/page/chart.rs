//! A chart from days and amounts: where each lies, which levels are written, and which days.

use chrono::NaiveDate;

use super::record::{Chart, ChartMark, ChartPoint};
use crate::words;

/// What a chart is of, the earliest first. Amounts in any unit; the words are written beside them.
pub(super) struct Amounts {
    /// A point each.
    pub(super) points: Vec<Amount>,
    /// The whole of it in a sentence.
    pub(super) said: String,
    /// Writes a level.
    pub(super) level: Box<dyn Fn(f64) -> String>,
}

/// A point before it has a place.
#[derive(Clone, Debug)]
pub(super) struct Amount {
    pub(super) date: NaiveDate,
    pub(super) amount: f64,
    pub(super) band: Option<(f64, f64)>,
    pub(super) words: String,
    pub(super) missed: bool,
}

/// Most levels that are written.
const MOST_LEVELS: f64 = 4.0;

/// Draws them; none below two points, which are a line of text and no chart.
pub(super) fn chart(of: &Amounts) -> Option<Chart> {
    let [first, .., last] = &of.points[..] else { return None };
    let ends = of.points.iter().flat_map(|point| {
        let (low, high) = point.band.unwrap_or((point.amount, point.amount));
        [low.min(point.amount), high.max(point.amount)]
    });
    let (least, most) =
        ends.fold((f64::MAX, f64::MIN), |(least, most), end| (least.min(end), most.max(end)));
    let step = step((most - least).max(f64::EPSILON.max(most.abs() * 0.02)));
    let foot = (least / step).floor() * step;
    let top = ((most / step).ceil() * step).max(foot + step);
    let up = |amount: f64| (amount - foot) / (top - foot);
    let days = (last.date - first.date).num_days().max(1) as f64;
    let along = |date: NaiveDate| (date - first.date).num_days() as f64 / days;
    let points = of.points.iter().map(|point| ChartPoint {
        x: along(point.date),
        y: up(point.amount),
        low: point.band.map(|(low, _)| up(low)),
        high: point.band.map(|(_, high)| up(high)),
        missed: point.missed,
    });
    let count = ((top - foot) / step).round() as u32;
    let levels = (0..=count).map(|level| {
        let amount = foot + f64::from(level) * step;
        ChartMark { at: up(amount), words: (of.level)(amount) }
    });
    let middle = of.points.get(of.points.len() / 2).filter(|middle| {
        // Three days that are written must not run into each other.
        (0.3..0.7).contains(&along(middle.date))
    });
    let dated = [Some(first), middle, Some(last)].into_iter().flatten();
    Some(Chart {
        said: of.said.clone(),
        points: points.collect(),
        first: first.words.clone(),
        last: last.words.clone(),
        levels: levels.collect(),
        days: dated
            .map(|point| ChartMark { at: along(point.date), words: words::short_day(point.date) })
            .collect(),
    })
}

/// The smallest of 1, 2, 5 times a power of ten that leaves no more levels than can be written.
fn step(range: f64) -> f64 {
    let rough = range / (MOST_LEVELS - 1.0);
    let power = 10f64.powf(rough.log10().floor());
    let times = [1.0, 2.0, 5.0, 10.0].into_iter().find(|times| times * power >= rough);
    times.unwrap_or(10.0) * power
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn amounts(of: &[(u64, f64)]) -> Amounts {
        let first: NaiveDate = "2026-11-02".parse().unwrap();
        let mut day = first;
        let points = of.iter().map(|(days, amount)| {
            day = day + chrono::Days::new(*days);
            Amount {
                date: day,
                amount: *amount,
                band: Some((amount - 3.0, amount + 4.0)),
                words: amount.to_string(),
                missed: false,
            }
        });
        Amounts {
            points: points.collect(),
            said: String::new(),
            level: Box::new(|at| at.to_string()),
        }
    }

    proptest! {
        /// Whatever was lifted lies on the paper, its band too, and the levels are few, even and round.
        #[test]
        fn everything_lies_inside_and_levels_are_round(
            of in prop::collection::vec((0u64..60, 1.0f64..500.0), 2..60),
        ) {
            let of = amounts(&of);
            let drawn = chart(&of).unwrap();
            let inside = |at: f64| (-1e-9..=1.0 + 1e-9).contains(&at);
            for point in &drawn.points {
                prop_assert!(inside(point.x) && inside(point.y));
                prop_assert!(inside(point.low.unwrap()) && inside(point.high.unwrap()));
                prop_assert!(point.low.unwrap() <= point.y && point.y <= point.high.unwrap());
            }
            prop_assert!(drawn.points.is_sorted_by(|one, next| one.x <= next.x));
            prop_assert!((2..=5).contains(&drawn.levels.len()), "{:?}", drawn.levels);
            let read: Vec<f64> = drawn.levels.iter().map(|mark| mark.words.parse().unwrap()).collect();
            let step = read[1] - read[0];
            let power = 10f64.powf(step.log10().floor());
            let leading = step / power;
            prop_assert!([1.0, 2.0, 5.0, 10.0].iter().any(|round| (round - leading).abs() < 1e-6), "{step}");
            // A point lies between levels as its amount lies between theirs.
            for (point, of) in drawn.points.iter().zip(&of.points) {
                let foot = read[0];
                let top = *read.last().unwrap();
                prop_assert!((point.y - (of.amount - foot) / (top - foot)).abs() < 1e-9);
            }
        }
    }

    #[test]
    fn one_day_is_no_chart() {
        assert_eq!(chart(&amounts(&[(0, 60.0)])), None);
        assert!(chart(&amounts(&[(0, 60.0), (7, 60.0)])).is_some(), "a level line is one");
    }

    #[test]
    fn no_more_days_are_written_than_there_is_room_for() {
        let days = |of: &[(u64, f64)]| chart(&amounts(of)).unwrap().days.len();
        assert_eq!(days(&[(0, 1.0), (7, 2.0), (7, 3.0)]), 3);
        assert_eq!(days(&[(0, 1.0), (1, 2.0), (70, 3.0)]), 2, "the second stands beside the first");
    }
}
