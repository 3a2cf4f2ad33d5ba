//! The heaviest load of each session, and the reps of the open set under it.

use holdfast_core::MassUnit;
use holdfast_core::coach::{LiftPoint, LiftSeries};
use plotters::element::{Circle, Cross, PathElement};
use plotters::series::LineSeries;
use plotters::style::Color;

use super::frame::{Area, Beside, frame, size, word};
use super::ink::{INK, MAIN, OTHER, SOFT};
use super::scale::{Ruler, written};
use super::{Figure, Painted};
use crate::print::words::{scheme, short_day};
use crate::report::words::row;
use crate::say;

const LOADS: u32 = 380;
const REPS: u32 = 200;

/// Draws a lift; nothing where there are neither loads nor reps of an open set.
pub(in crate::report) fn lift(series: &LiftSeries, unit: MassUnit) -> Painted<Option<Figure>> {
    let loads: Vec<&LiftPoint> =
        series.points.iter().filter(|point| point.heaviest.is_some()).collect();
    let reps: Vec<&LiftPoint> = if series.open {
        series.points.iter().filter(|point| point.last_reps.is_some()).collect()
    } else {
        Vec::new()
    };
    let dates: Vec<_> = loads.iter().chain(&reps).map(|load| load.date).collect();
    let height = match (loads.is_empty(), reps.is_empty()) {
        (true, true) => return Ok(None),
        (false, false) => LOADS + REPS,
        (false, true) => LOADS,
        (true, false) => REPS,
    };
    let days = Ruler::days(&dates);
    let first = dates.iter().min().copied().unwrap_or_default();
    let place = |point: &LiftPoint| (point.date - first).num_days() as f64;
    Figure::drawn(words(series, unit, &loads, &reps), height, |sheet| {
        if loads.is_empty() {
            return draw_reps(sheet, &days, &reps, place);
        }
        if reps.is_empty() {
            return draw_loads(sheet, &days, &loads, unit, place);
        }
        let (above, below) = sheet.split_vertically(LOADS);
        // The days are named once, under both.
        let unnamed = Ruler { marks: Vec::new(), ..days.clone() };
        draw_loads(&above, &unnamed, &loads, unit, place)?;
        draw_reps(&below, &days, &reps, place)
    })
    .map(Some)
}

fn draw_loads(
    area: &Area<'_>,
    days: &Ruler,
    points: &[&LiftPoint],
    unit: MassUnit,
    place: impl Fn(&LiftPoint) -> f64,
) -> Painted<()> {
    let at = |point: &LiftPoint| Some((place(point), point.heaviest?.for_drawing(unit)));
    let places: Vec<(f64, f64)> = points.iter().filter_map(|point| at(point)).collect();
    let y = Ruler::around(places.iter().map(|(_, y)| *y), 6);
    let mut plot = frame(area, unit.symbol(), days, &y)?;
    plot.draw_series(LineSeries::new(places.iter().copied(), MAIN.stroke_width(4)))?;
    let size = size(points.len());
    let written = written(&places, &days.range, 5);
    for ((point, at), written) in points.iter().zip(places).zip(written) {
        if point.made {
            plot.draw_series([Circle::new(at, size, MAIN.filled())])?;
        } else {
            plot.draw_series([Cross::new(at, size + 2, INK.stroke_width(5))])?;
        }
        if let (true, Some(load)) = (written, point.heaviest) {
            word(&mut plot, at, load.number(unit), Beside::Above)?;
        }
    }
    Ok(())
}

fn draw_reps(
    area: &Area<'_>,
    days: &Ruler,
    points: &[&LiftPoint],
    place: impl Fn(&LiftPoint) -> f64,
) -> Painted<()> {
    let reps = |point: &LiftPoint| f64::from(point.last_reps.unwrap_or(0));
    let highest = points.iter().map(|point| reps(point).max(f64::from(point.asked)));
    let y = Ruler::bars(highest.fold(1.0, f64::max), 3, 10, 1.45);
    let mut plot = frame(area, say::report::axis_reps(), days, &y)?;
    let asked = points.first().map_or(0.0, |point| f64::from(point.asked));
    let across = vec![(days.range.start, asked), (days.range.end, asked)];
    plot.draw_series([PathElement::new(across, SOFT.stroke_width(2))])?;
    let places: Vec<(f64, f64)> = points.iter().map(|point| (place(point), reps(point))).collect();
    let size = size(points.len());
    for (at, written) in places.iter().zip(written(&places, &days.range, 2)) {
        let stem = PathElement::new(vec![(at.0, 0.0), *at], OTHER.stroke_width(4));
        plot.draw_series([stem])?;
        plot.draw_series([Circle::new(*at, size, OTHER.filled())])?;
        if written {
            word(&mut plot, *at, at.1.to_string(), Beside::Above)?;
        }
    }
    Ok(())
}

fn words(
    series: &LiftSeries,
    unit: MassUnit,
    loads: &[&LiftPoint],
    reps: &[&LiftPoint],
) -> (String, String, String) {
    let title = say::report::lift(&series.movement, scheme(&series.scheme));
    let mut note = Vec::new();
    let mut says = Vec::new();
    if !loads.is_empty() {
        note.push(if loads.iter().all(|load| load.made) {
            say::report::note_loads().to_owned()
        } else {
            say::report::note_loads_missed().to_owned()
        });
        let each = loads.iter().filter_map(|load| {
            let (date, text) = (short_day(load.date), load.heaviest?.text(unit));
            Some(if load.made {
                say::report::load_point(date, text)
            } else {
                say::report::load_point_missed(date, text)
            })
        });
        says.push(say::report::says_loads(row(each)));
    }
    if let Some(first) = reps.first() {
        note.push(say::report::note_reps(first.asked));
        let each = reps.iter().filter_map(|rep| {
            Some(say::report::reps_point(short_day(rep.date), rep.last_reps?, rep.asked))
        });
        says.push(say::report::says_reps(row(each)));
    }
    (title, note.join(" "), says.join(" "))
}
