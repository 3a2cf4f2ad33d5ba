//! Range of motion before and after a hold, against its measurement error.

use chrono::NaiveDate;
use holdfast_core::coach::{RangePoint, RangeSeries};
use holdfast_core::plan::MeasuredWhen;
use plotters::element::{Circle, PathElement, Rectangle};
use plotters::series::{DashedLineSeries, LineSeries};
use plotters::style::{Color, ShapeStyle};

use super::frame::{Beside, Plot, frame, size, word};
use super::ink::{BAND, MAIN, OTHER, PAPER, SOFT};
use super::scale::{Ruler, written};
use super::{Figure, Painted};
use crate::print::words::{reading, short_day, sign, tenths};
use crate::report::words::row;
use crate::say;

const HEIGHT: u32 = 390;

/// Draws a range series; nothing where nothing was measured.
pub(in crate::report) fn range(series: &RangeSeries) -> Painted<Option<Figure>> {
    let read = |point: &&RangePoint| point.before.is_some() || point.after.is_some();
    let points: Vec<&RangePoint> = series.points.iter().filter(read).collect();
    let Some(start) = points.iter().map(|point| point.date).min() else { return Ok(None) };
    let dates: Vec<_> = points.iter().map(|point| point.date).collect();
    let days = Ruler::days(&dates);
    let band = points
        .iter()
        .find_map(|point| point.before)
        .map(|first| [first - series.mdc95_tenths, first, first + series.mdc95_tenths].map(number));
    let all = points.iter().flat_map(|point| [point.before, point.after]).flatten().map(number);
    let y = Ruler::around(all.chain(band.into_iter().flatten()), 7);
    Figure::drawn(words(series, &points), HEIGHT, |sheet| {
        let axis = say::report::axis_range(sign(&series.unit), &series.name);
        let mut plot = frame(sheet, &axis, &days, &y)?;
        if let Some([low, first, high]) = band {
            let (left, right) = (days.range.start, days.range.end);
            plot.draw_series([Rectangle::new([(left, low), (right, high)], BAND.filled())])?;
            let level = PathElement::new(vec![(left, first), (right, first)], SOFT);
            plot.draw_series([level])?;
        }
        let [before, after] =
            [MeasuredWhen::Before, MeasuredWhen::After].map(|when| readings(&points, when, start));
        draw_readings(&mut plot, &days, &before, &after)
    })
    .map(Some)
}

fn number(tenths: i64) -> f64 {
    tenths as f64 / 10.0
}

/// A reading, its number, and the side of it that is away from the other reading of the session.
struct Reading {
    at: (f64, f64),
    text: String,
    side: Beside,
}

fn readings(points: &[&RangePoint], when: MeasuredWhen, start: NaiveDate) -> Vec<Reading> {
    let reading = |point: &&RangePoint| {
        let (read, below) = match when {
            MeasuredWhen::Before => (point.before?, point.after >= point.before),
            MeasuredWhen::After => (point.after?, point.before > point.after),
        };
        Some(Reading {
            at: ((point.date - start).num_days() as f64, number(read)),
            text: tenths(read, false),
            side: if below { Beside::Below } else { Beside::Above },
        })
    };
    points.iter().filter_map(reading).collect()
}

fn draw_readings(
    plot: &mut Plot<'_>,
    days: &Ruler,
    before: &[Reading],
    after: &[Reading],
) -> Painted<()> {
    let places = |of: &[Reading]| of.iter().map(|found| found.at).collect::<Vec<_>>();
    let thin = ShapeStyle::from(&OTHER).stroke_width(3);
    plot.draw_series(DashedLineSeries::new(places(after), 8, 8, thin))?;
    plot.draw_series(LineSeries::new(places(before), MAIN.stroke_width(4)))?;
    let size = size(before.len().max(after.len()));
    for at in places(after) {
        // A ring hides what is under it.
        plot.draw_series([Circle::new(at, size, PAPER.filled()), Circle::new(at, size, thin)])?;
    }
    plot.draw_series(places(before).into_iter().map(|at| Circle::new(at, size, MAIN.filled())))?;
    for of in [before, after] {
        for (reading, written) in of.iter().zip(written(&places(of), &days.range, 4)) {
            if written {
                word(plot, reading.at, reading.text.clone(), reading.side)?;
            }
        }
    }
    Ok(())
}

fn words(series: &RangeSeries, points: &[&RangePoint]) -> (String, String, String) {
    let title = match &series.side_name {
        Some(side) => say::report::range_of_side(&series.piece, &series.name, side),
        None => say::report::range(&series.piece, &series.name),
    };
    let each = points.iter().map(|point| said(point, &series.unit));
    (title, note(series, points), say::report::says_range(row(each)))
}

/// How to read it, sentence by sentence.
fn note(series: &RangeSeries, points: &[&RangePoint]) -> String {
    let before = points.iter().any(|point| point.before.is_some());
    let after = points.iter().any(|point| point.after.is_some());
    let marks = match (before, after) {
        (true, true) => say::report::note_dots_and_rings(),
        (true, false) => say::report::note_dots(),
        _ => say::report::note_rings(),
    };
    let mut note = vec![marks.to_owned()];
    if before {
        note.push(say::report::note_band(reading(series.mdc95_tenths, &series.unit)));
    }
    if !series.protocol.larger_is_further() {
        note.push(say::report::note_smaller_is_further().to_owned());
    }
    note.extend(series.judged.as_ref().map(say::report::note_judged));
    note.extend(series.trend.as_ref().map(say::report::note_range_trend));
    note.join(" ")
}

fn said(point: &RangePoint, unit: &str) -> String {
    let date = short_day(point.date);
    let [before, after] =
        [point.before, point.after].map(|read| read.map(|read| reading(read, unit)));
    match (before, after) {
        (Some(before), Some(after)) => say::report::range_point_both(date, before, after),
        (Some(before), None) => say::report::range_point_before(date, before),
        (None, Some(after)) => say::report::range_point_after(date, after),
        (None, None) => date,
    }
}
