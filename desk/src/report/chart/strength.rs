//! The estimated one-rep max, training day by training day, with the band that holds four cases of five.

use holdfast_core::coach::{StrengthPoint, StrengthSeries};
use holdfast_core::{Mass, MassUnit};
use plotters::element::{Circle, Polygon};
use plotters::series::LineSeries;
use plotters::style::Color;

use super::frame::{Beside, frame, size, word};
use super::ink::{BAND, MAIN};
use super::scale::{Ruler, written};
use super::{Figure, Painted};
use crate::print::words::short_day;
use crate::report::words::row;
use crate::say;

const HEIGHT: u32 = 360;

/// Draws a movement's strength; nothing from a single day, which is a number and no curve.
pub(in crate::report) fn strength(
    series: &StrengthSeries,
    unit: MassUnit,
) -> Painted<Option<Figure>> {
    let points = &series.points;
    let (Some(first), true) = (points.first(), points.len() > 1) else { return Ok(None) };
    let dates: Vec<_> = points.iter().map(|point| point.date).collect();
    let days = Ruler::days(&dates);
    let number = |mass: Mass| mass.for_drawing(unit);
    let place = |found: &StrengthPoint, mass: Mass| {
        ((found.date - first.date).num_days() as f64, number(mass))
    };
    let y =
        Ruler::around(points.iter().flat_map(|point| [number(point.low), number(point.high)]), 6);
    Figure::drawn(words(series, unit), HEIGHT, |sheet| {
        let mut plot = frame(sheet, unit.symbol(), &days, &y)?;
        let over = points.iter().map(|point| place(point, point.high));
        let under = points.iter().rev().map(|point| place(point, point.low));
        let band: Vec<(f64, f64)> = over.chain(under).collect();
        plot.draw_series([Polygon::new(band, BAND.filled())])?;
        let places: Vec<(f64, f64)> =
            points.iter().map(|point| place(point, point.likely)).collect();
        plot.draw_series(LineSeries::new(places.iter().copied(), MAIN.stroke_width(4)))?;
        let size = size(points.len());
        for (at, written) in places.iter().zip(written(&places, &days.range, 5)) {
            plot.draw_series([Circle::new(*at, size, MAIN.filled())])?;
            if written {
                word(&mut plot, *at, whole(at.1), Beside::Above)?;
            }
        }
        Ok(())
    })
    .map(Some)
}

fn words(series: &StrengthSeries, unit: MassUnit) -> (String, String, String) {
    let title = say::report::strength(&series.movement);
    let mut note = say::report::note_strength(&series.text);
    if let Some(trend) = &series.trend {
        note += &format!(" {}", say::report::note_strength_trend(trend));
    }
    if let Some(ended) = &series.ended {
        note += &format!(" {}", say::report::note_strength_ended(ended));
    }
    let number = |mass: Mass| whole(mass.for_drawing(unit));
    let each = series.points.iter().map(|point| {
        let [low, likely, high] = [point.low, point.likely, point.high].map(number);
        say::report::strength_point(short_day(point.date), likely, unit.symbol(), low, high)
    });
    (title, note, say::report::says_strength(row(each)))
}

/// An estimate is not known to a tenth.
fn whole(estimate: f64) -> String {
    format!("{estimate:.0}")
}
