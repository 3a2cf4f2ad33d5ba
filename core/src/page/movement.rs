//! A movement, or a range of motion, over time.

use super::chart::{Amount, Amounts, chart};
use super::history::{heaviest, of, range_name};
use super::record::{PageNumber, PageRow, PageScreen};
use super::rows::headed;
use crate::coach::{LiftPoint, LiftSeries, StrengthSeries};
use crate::device::Device;
use crate::error::{Error, Field, Result};
use crate::instant::Instant;
use crate::mass::{Mass, MassUnit};
use crate::say::page as say;
use crate::words;

/// A movement: what can be lifted in it, and the heaviest set of each session.
pub(super) fn lifted(
    device: &mut Device,
    (member, movement): (Option<String>, &str),
    at: &Instant,
) -> Result<PageScreen> {
    let screen = of(device, member.as_deref(), at)?;
    let unit = screen.unit;
    let lifts: Vec<&LiftSeries> =
        screen.lifts.iter().filter(|series| series.movement == movement).collect();
    if lifts.is_empty() {
        return Err(Error::invalid(Field::Movement, say::nothing_of(movement)));
    }
    let strength = screen.strengths.iter().find(|series| series.movement == movement);
    let mut points: Vec<&LiftPoint> = lifts.iter().flat_map(|series| &series.points).collect();
    points.sort_by_key(|point| point.date);
    let mut page = PageScreen::titled(movement);
    page.beside = points.first().map(|first| say::since(words::day(first.date)));
    if let Some(series) = strength {
        page.number = series.points.last().map(|last| PageNumber {
            number: whole(last.likely, unit),
            unit: unit.symbol().to_owned(),
            about: vec![
                say::estimated_max().to_owned(),
                say::probably(whole(last.low, unit), whole(last.high, unit)),
            ],
        });
        page.said.extend(page.number.is_none().then(|| series.text.clone()));
        page.said.extend(series.trend.clone());
        page.said.extend(series.ended.clone());
    }
    let estimated = strength.and_then(|series| estimated(series, unit, movement));
    page.chart = estimated.or_else(|| loads(&points, unit, movement));
    if let Some(chart) = &page.chart {
        let banded = chart.points.iter().any(|point| point.low.is_some());
        page.said.push(
            if banded { say::shaded_is_probable() } else { say::line_is_heaviest() }.to_owned(),
        );
    }
    let rows = points.iter().rev().map(|point| {
        let row = PageRow::titled(heaviest(point, unit)).says(words::day(point.date));
        row.worth(say::asked(point.asked))
    });
    page.rows = headed(rows.collect(), say::heaviest_sets());
    page.key = Some(super::home(device)?);
    Ok(page)
}

/// Rounded to whole kilograms or pounds: an estimate is no more exact.
fn whole(mass: Mass, unit: MassUnit) -> String {
    format!("{:.0}", mass.for_drawing(unit))
}

fn estimated(series: &StrengthSeries, unit: MassUnit, movement: &str) -> Option<super::Chart> {
    let points = series.points.iter().map(|point| Amount {
        date: point.date,
        amount: point.likely.for_drawing(unit),
        band: Some((point.low.for_drawing(unit), point.high.for_drawing(unit))),
        words: whole(point.likely, unit),
        missed: false,
    });
    over_time(points.collect(), |first, last, from, to| {
        say::chart_of_strength(movement, first, last, unit.symbol(), from, to)
    })
}

fn loads(points: &[&LiftPoint], unit: MassUnit, movement: &str) -> Option<super::Chart> {
    let points = points.iter().filter_map(|point| {
        let load = point.heaviest?;
        Some(Amount {
            date: point.date,
            amount: load.for_drawing(unit),
            band: None,
            words: load.number(unit),
            missed: !point.made,
        })
    });
    over_time(points.collect(), |first, last, from, to| {
        say::chart_of_loads(movement, first, last, unit.symbol(), from, to)
    })
}

/// A chart with the sentence that says what it shows: of its first and last amount and their days.
fn over_time(
    points: Vec<Amount>,
    says: impl Fn(&str, &str, String, String) -> String,
) -> Option<super::Chart> {
    let (first, last) = (points.first()?, points.last()?);
    let said = says(&first.words, &last.words, words::day(first.date), words::day(last.date));
    chart(&Amounts { points, said, level: Box::new(level) })
}

/// A level, with a decimal only where it has one.
fn level(amount: f64) -> String {
    let rounded = (amount * 10.0).round() / 10.0;
    let text =
        if rounded.fract() == 0.0 { format!("{rounded:.0}") } else { format!("{rounded:.1}") };
    words::decimals(&text)
}

/// A range of motion: each reading before a hold against the first, with the error of measurement around that.
pub(super) fn range(
    device: &mut Device,
    (member, index): (Option<String>, u32),
    at: &Instant,
) -> Result<PageScreen> {
    let screen = of(device, member.as_deref(), at)?;
    let series = screen.ranges.get(index as usize);
    let series = series.ok_or_else(|| Error::invalid(Field::Range, say::no_such_range()))?;
    let unit = series.protocol.unit();
    let read: Vec<(chrono::NaiveDate, i64)> = series
        .points
        .iter()
        .filter_map(|point| Some((point.date, point.before.or(point.after)?)))
        .collect();
    let mut page = PageScreen::titled(range_name(series));
    page.beside = read.first().map(|(date, _)| say::since(words::day(*date)));
    if let Some((date, tenths)) = read.last() {
        page.number = Some(PageNumber {
            number: words::decimals(&format!("{}.{}", tenths / 10, (tenths % 10).abs())),
            unit: series.unit.clone(),
            about: vec![series.piece.clone(), words::day(*date)],
        });
    }
    page.said.extend(series.judged.clone());
    page.said.extend(series.trend.clone());
    let first = read.first().map_or(0, |(_, tenths)| *tenths);
    let points = read.iter().map(|(date, tenths)| Amount {
        date: *date,
        amount: *tenths as f64 / 10.0,
        band: Some((
            (first - series.mdc95_tenths) as f64 / 10.0,
            (first + series.mdc95_tenths) as f64 / 10.0,
        )),
        words: level(*tenths as f64 / 10.0),
        missed: false,
    });
    page.chart = over_time(points.collect(), |first, last, from, to| {
        say::chart_of_range(range_name(series), first, last, &series.unit, from, to)
    });
    page.said.extend(page.chart.as_ref().map(|_| say::shaded_is_error().to_owned()));
    let rows = series.points.iter().rev().map(|point| {
        let text = |tenths: i64| words::tenths(tenths, unit);
        let title = match (point.before, point.after) {
            (Some(before), Some(after)) => say::before_and_after(text(before), text(after)),
            (Some(one), None) | (None, Some(one)) => text(one),
            (None, None) => String::new(),
        };
        PageRow::titled(title).says(words::day(point.date))
    });
    page.rows = headed(rows.collect(), say::readings());
    page.key = Some(super::home(device)?);
    Ok(page)
}
