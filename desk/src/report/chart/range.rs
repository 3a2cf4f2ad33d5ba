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
use crate::report::words::{short_day, tenths};

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
        let axis = format!("{}, {}", series.unit, series.name);
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
    let side = series.side_name.iter().map(|side| format!(", {side}")).collect::<String>();
    let title = format!("{}: {}{side}", series.piece, series.name);
    let mut note = Vec::new();
    let before = points.iter().any(|point| point.before.is_some());
    let after = points.iter().any(|point| point.after.is_some());
    note.push(match (before, after) {
        (true, true) => "Dots: before the hold; rings: after it.".to_owned(),
        (true, false) => "Dots: before the hold.".to_owned(),
        _ => "Rings: after the hold.".to_owned(),
    });
    if before {
        let error = tenths(series.mdc95_tenths, false);
        let unit = &series.unit;
        note.push(format!(
            "Band: the first reading ± {error} {unit} of measurement error (MDC95)."
        ));
    }
    if !series.protocol.larger_is_further() {
        note.push("A smaller reading is further.".to_owned());
    }
    if let Some(judged) = &series.judged {
        note.push(format!("First to last before the hold: {judged}."));
    }
    if let Some(trend) = &series.trend {
        note.push(format!("Trend before the hold: {trend}."));
    }
    let unit = &series.unit;
    let each = points.iter().map(|point| {
        let read = |when: &str, read: Option<i64>| {
            read.map(|read| format!("{when} {} {unit}", tenths(read, false)))
        };
        let read = [read("before", point.before), read("after", point.after)];
        let read = read.into_iter().flatten().collect::<Vec<_>>().join(" and ");
        format!("{} {read}", short_day(point.date))
    });
    let says = format!("Readings: {}.", each.collect::<Vec<_>>().join(", "));
    (title, note.join(" "), says)
}
