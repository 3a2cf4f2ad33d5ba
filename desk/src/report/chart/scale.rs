//! Where things stand on an axis, and which of them are written.

use std::ops::Range;

use chrono::{Days, NaiveDate};
use plotters::coord::ranged1d::{KeyPointHint, NoDefaultFormatting, Ranged, ValueFormatter};

use super::ink::CHARACTER;
use crate::print::words::{short_day, tenths};

/// One axis: what it spans, and the places that are named on it.
#[derive(Clone, Debug)]
pub(super) struct Ruler {
    pub(super) range: Range<f64>,
    pub(super) marks: Vec<(f64, String)>,
}

/// How much of a chart's width the data has.
const PLOT_WIDTH: f64 = 620.0;

impl Ruler {
    /// An axis of numbers with at most `most` steps, none of them finer than `finest` tenths.
    pub(super) fn numbers(range: Range<f64>, most: i64, finest: i64) -> Ruler {
        let span = (range.end - range.start) * 10.0;
        let fits = |step: &i64| *step >= finest && span / (*step as f64) <= most as f64;
        let steps = (0..12).flat_map(|power| [1, 2, 5].map(|digit| digit * 10_i64.pow(power)));
        let step = steps.into_iter().find(fits).unwrap_or(i64::MAX / 10);
        let first = (range.start * 10.0 / step as f64).ceil() as i64;
        let last = (range.end * 10.0 / step as f64).floor() as i64;
        let mark = |index: i64| ((index * step) as f64 / 10.0, tenths(index * step, true));
        Ruler { marks: (first..=last).map(mark).collect(), range }
    }

    /// An axis of numbers from nothing up to the highest, with room for a word above it.
    pub(super) fn bars(highest: f64, most: i64, finest: i64, headroom: f64) -> Ruler {
        Ruler::numbers(0.0..highest.max(finest as f64 / 10.0) * headroom, most, finest)
    }

    /// An axis of numbers around readings, with room above and below: more where they differ
    /// little, so that a small change does not look large.
    pub(super) fn around(values: impl Iterator<Item = f64>, most: i64) -> Ruler {
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        for value in values {
            (low, high) = (low.min(value), high.max(value));
        }
        let room = (high - low).max(high.abs() * 0.2).max(1.0) * 0.22;
        let mut ruler = Ruler::numbers(low - room..high + room, most, 1);
        // A line right above the axis would look like two axes.
        let least = ruler.range.start + room * 0.15;
        ruler.marks.retain(|(place, _)| *place > least);
        ruler
    }

    /// An axis of days; those given are named as far as there is room.
    pub(super) fn days(dates: &[NaiveDate]) -> Ruler {
        let first = dates.iter().min().copied().unwrap_or_default();
        let last = dates.iter().max().copied().unwrap_or_default();
        let span = (last - first).num_days() as f64;
        let room = (span * 0.07).max(1.0);
        let range = -room..span + room;
        let mut days = dates.to_vec();
        days.sort_unstable();
        days.dedup();
        let places: Vec<f64> = days.iter().map(|day| (*day - first).num_days() as f64).collect();
        Ruler { marks: dated(places, &days, &range), range }
    }

    /// An axis of weeks from one Monday to another; each has a place whether or not it has data.
    pub(super) fn weeks(first: NaiveDate, last: NaiveDate) -> Ruler {
        let count = week_place(first, last) as u64;
        // Few weeks stay as narrow as some.
        let range = -0.5..(count.max(FEWEST_WEEKS - 1) as f64) + 0.5;
        let places: Vec<f64> = (0..=count).map(|week| week as f64).collect();
        let monday = |week: u64| first.checked_add_days(Days::new(7 * week)).unwrap_or(first);
        let mondays: Vec<NaiveDate> = (0..=count).map(monday).collect();
        Ruler { marks: dated(places, &mondays, &range), range }
    }
}

impl Ranged for Ruler {
    type FormatOption = NoDefaultFormatting;
    type ValueType = f64;

    fn map(&self, value: &f64, (from, to): (i32, i32)) -> i32 {
        let part = (value - self.range.start) / (self.range.end - self.range.start);
        from + (part * f64::from(to - from)).round() as i32
    }

    fn key_points<Hint: KeyPointHint>(&self, hint: Hint) -> Vec<f64> {
        if hint.weight().allow_light_points() {
            return Vec::new();
        }
        self.marks.iter().map(|(place, _)| *place).collect()
    }

    fn range(&self) -> Range<f64> {
        self.range.clone()
    }
}

impl ValueFormatter<f64> for Ruler {
    fn format_ext(&self, place: &f64) -> String {
        let known = self.marks.iter().find(|(known, _)| known == place);
        known.map_or(String::new(), |(_, name)| name.clone())
    }
}

const FEWEST_WEEKS: u64 = 4;

/// Where the week of a Monday stands on an axis that starts with another.
pub(super) fn week_place(first: NaiveDate, monday: NaiveDate) -> i64 {
    (monday - first).num_days() / 7
}

/// Places with their dates, as far as there is room for those.
fn dated(places: Vec<f64>, dates: &[NaiveDate], range: &Range<f64>) -> Vec<(f64, String)> {
    let words: Vec<String> = dates.iter().map(|date| short_day(*date)).collect();
    // As many as `10 Nov` has at least, so that dates of one digit stand no closer.
    let longest = words.iter().map(|words| words.chars().count()).max().unwrap_or(0).max(6);
    let named = named(&places, range, longest);
    let marks = places.into_iter().zip(words).zip(named);
    marks.filter(|(_, named)| *named).map(|(mark, _)| mark).collect()
}

/// Which of some places can have a word of so many characters beside them without one running into
/// the next: the last first, then the others from the earliest on.
fn named(places: &[f64], range: &Range<f64>, characters: usize) -> Vec<bool> {
    let order = (0..places.len()).rev().take(1).chain(0..places.len());
    chosen(places, range, characters, order)
}

/// Which readings have their number written: all of them if there is room for all, otherwise the
/// last and, where it is not too near, the highest.
pub(super) fn written(points: &[(f64, f64)], range: &Range<f64>, characters: usize) -> Vec<bool> {
    let places: Vec<f64> = points.iter().map(|(place, _)| *place).collect();
    let all = chosen(&places, range, characters, 0..places.len());
    if all.iter().all(|written| *written) {
        return all;
    }
    let highest =
        (0..points.len()).max_by(|one, other| points[*one].1.total_cmp(&points[*other].1));
    let order = [places.len().checked_sub(1), highest];
    chosen(&places, range, characters, order.into_iter().flatten())
}

fn chosen(
    places: &[f64],
    range: &Range<f64>,
    characters: usize,
    order: impl Iterator<Item = usize>,
) -> Vec<bool> {
    let scale = PLOT_WIDTH / (range.end - range.start);
    let apart = (characters as f64 + 0.7) * CHARACTER / scale;
    let mut taken = vec![false; places.len()];
    for index in order {
        let near = |place: &usize| (places[*place] - places[index]).abs() < apart;
        if !(0..places.len()).filter(|found| taken[*found]).any(|found| near(&found)) {
            taken[index] = true;
        }
    }
    taken
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts(ruler: &Ruler) -> Vec<&str> {
        ruler.marks.iter().map(|(_, text)| text.as_str()).collect()
    }

    #[test]
    fn steps_are_round_and_written_with_no_needless_digits() {
        assert_eq!(texts(&Ruler::numbers(68.0..81.0, 5, 1)), ["70", "75", "80"]);
        assert_eq!(texts(&Ruler::numbers(9.9..10.6, 4, 1)), ["10", "10.2", "10.4", "10.6"]);
        assert_eq!(texts(&Ruler::numbers(0.0..3.0, 9, 10)), ["0", "1", "2", "3"]);
        assert_eq!(texts(&Ruler::numbers(-4.0..4.0, 4, 1)), ["-4", "-2", "0", "2", "4"]);
    }

    #[test]
    fn many_days_are_named_only_as_far_as_there_is_room() {
        let start = NaiveDate::from_ymd_opt(2026, 1, 6).unwrap();
        let dates: Vec<NaiveDate> = (0..40).map(|week| start + Days::new(week * 7)).collect();
        let ruler = Ruler::days(&dates);
        assert!(ruler.marks.len() < 8, "{:?}", texts(&ruler));
        assert_eq!(texts(&ruler).last(), Some(&"6 Oct"));
        assert_eq!(texts(&Ruler::days(&dates[..1])), ["6 Jan"]);
    }

    #[test]
    fn german_dates_and_decimals_have_the_room_they_need() {
        catalogue::speaking(catalogue::Language::De, || {
            assert_eq!(texts(&Ruler::numbers(9.9..10.6, 4, 1)), ["10", "10,2", "10,4", "10,6"]);
            let start = NaiveDate::from_ymd_opt(2026, 11, 3).unwrap();
            let dates: Vec<NaiveDate> = (0..8).map(|week| start + Days::new(week * 7)).collect();
            let ruler = Ruler::days(&dates);
            assert_eq!(texts(&ruler).last(), Some(&"22. Dez."));
            let scale = PLOT_WIDTH / (ruler.range.end - ruler.range.start);
            let apart = ruler.marks.windows(2).map(|two| (two[1].0 - two[0].0) * scale);
            assert!(apart.fold(f64::MAX, f64::min) > 8.0 * CHARACTER, "{:?}", ruler.marks);
        });
    }

    #[test]
    fn numbers_are_written_on_all_readings_or_on_two() {
        let points = |count: u32| {
            (0..count).map(|found| (f64::from(found), f64::from(found.min(60 - found))))
        };
        let few: Vec<_> = points(4).collect();
        assert_eq!(written(&few, &(0.0..4.0), 4), [true; 4]);
        let many: Vec<_> = points(60).collect();
        let written = written(&many, &(0.0..60.0), 4);
        let which: Vec<usize> = (0..60).filter(|found| written[*found]).collect();
        assert_eq!(which, [30, 59]);
    }

    #[test]
    fn no_readings_at_all_are_no_trouble() {
        assert!(written(&[], &(0.0..1.0), 3).is_empty());
        assert!(Ruler::days(&[]).marks.len() < 2);
    }
}
