//! A member's page on a terminal.

use chrono::NaiveDate;
use holdfast_core::MassUnit;
use holdfast_core::coach::{
    DiscomfortLine, LiftPoint, LiftSeries, MemberScreen, OptionLine, RangeSeries, StrengthSeries,
};
use owo_colors::OwoColorize;

use super::board::column;
use super::words::{self, short_day, tenths};
use super::{indented, table};
use crate::say;

/// The whole page, as of a date.
pub(crate) fn member(page: &MemberScreen, date: NaiveDate) -> String {
    let mut text = format!("{}\n", page.name.bold());
    let width = column(&page.attention);
    for attention in &page.attention {
        text += &format!("  {:<width$}{}\n", attention.word, attention.text);
    }
    if page.sessions.is_empty() {
        return text + &format!("  {}\n", say::member::no_session());
    }
    text += &sessions(page, date);
    text += &weeks(page, date);
    text += &listed(say::member::strength(), &page.strengths, strength_line);
    text += &listed(say::member::maxes(), &page.maxes, |max| max.text.clone());
    text += &listed(say::member::lifts(), &page.lifts, |lift| lift_line(lift, page.unit));
    text += &listed(say::member::ranges(), &page.ranges, range_line);
    text += &regions(page, date);
    text += &listed(say::member::options(), &page.options, |line| option_line(line, date));
    text +=
        &listed(say::member::discomfort(), &page.discomfort, |line| discomfort_line(line, date));
    text += &listed(say::member::notes(), &page.notes, |line| {
        format!("{}  {}", words::day(line.date, date), line.text)
    });
    if !page.proposals.is_empty() {
        text += &heading(say::member::next_loads());
        for proposal in &page.proposals {
            text += &super::proposal(proposal, 2);
        }
    }
    text
}

fn heading(words: &str) -> String {
    format!("\n{}\n", words.bold())
}

/// A line for each under a heading; nothing for none.
fn listed<T>(words: &str, all: &[T], line: impl Fn(&T) -> String) -> String {
    if all.is_empty() {
        return String::new();
    }
    let lines: String = all.iter().map(|one| format!("  {}\n", line(one))).collect();
    heading(words) + &lines
}

fn sessions(page: &MemberScreen, date: NaiveDate) -> String {
    let mut rows = table(&[
        say::member::column_date(),
        say::member::column_day(),
        say::member::column_sets(),
        say::member::column_volume_load(),
        say::member::column_rpe(),
        say::member::column_minutes(),
        say::member::column_session_load(),
    ]);
    for session in &page.sessions {
        rows.add_row([
            words::day(session.date, date),
            session.day.clone(),
            session.sets.to_string(),
            session.volume.text(page.unit),
            number(session.rpe),
            number(session.minutes),
            number(session.load),
        ]);
    }
    heading(say::member::sessions()) + &indented(&rows, 2)
}

fn weeks(page: &MemberScreen, date: NaiveDate) -> String {
    let mut rows = table(&[
        say::member::column_week(),
        say::member::column_sessions(),
        say::member::column_volume_load(),
        say::member::column_session_load(),
        say::member::column_monotony(),
        say::member::column_strain(),
    ]);
    for week in &page.weeks {
        let load = match week.unrated_days {
            0 => week.load.to_string(),
            days => say::member::load_unrated(days, week.load),
        };
        rows.add_row([
            words::day(week.week_of, date),
            week.sessions.to_string(),
            week.volume.text(page.unit),
            load,
            week.monotony.clone().unwrap_or_default(),
            week.strain.clone().unwrap_or_default(),
        ]);
    }
    let mut text = heading(say::member::weeks()) + &indented(&rows, 2);
    if page.weeks.iter().any(|week| week.monotony.is_some()) {
        text += &format!("  {}\n", say::member::what_monotony_is());
    }
    if let Some(compared) = &page.load_text {
        text += &format!("  {compared}\n");
    }
    text
}

fn regions(page: &MemberScreen, date: NaiveDate) -> String {
    if page.regions.is_empty() {
        return String::new();
    }
    let mut rows = table(&[]);
    for region in &page.regions {
        rows.add_row([
            say::member::week_of(words::day(region.week_of, date)),
            region.region.clone(),
            region.held_text.clone(),
            region.dose_text.clone().unwrap_or_default(),
        ]);
    }
    heading(say::member::stretched()) + &indented(&rows, 2)
}

fn number(value: Option<u32>) -> String {
    value.map_or("-".into(), |value| value.to_string())
}

fn strength_line(strength: &StrengthSeries) -> String {
    let mut parts = vec![match &strength.trend {
        Some(trend) => say::member::estimated_with_trend(&strength.movement, &strength.text, trend),
        None => say::member::estimated(&strength.movement, &strength.text),
    }];
    parts.extend(strength.ended.clone());
    parts.join(say::member::between_parts())
}

fn lift_line(lift: &LiftSeries, unit: MassUnit) -> String {
    let points: Vec<String> = lift.points.iter().map(|point| lift_point(point, unit)).collect();
    let points = points.join(say::member::between_points());
    say::member::lift(&lift.movement, words::scheme(&lift.scheme), points)
}

fn lift_point(point: &LiftPoint, unit: MassUnit) -> String {
    let done = match point.heaviest {
        Some(load) => say::member::load_and_reps(load.text(unit), point.heaviest_reps),
        None => say::member::only_reps(point.heaviest_reps),
    };
    if point.made {
        say::member::point(short_day(point.date), done)
    } else {
        say::member::point_missed(short_day(point.date), done)
    }
}

fn range_line(range: &RangeSeries) -> String {
    let read = range.points.iter().filter_map(|point| {
        Some(say::member::range_point(short_day(point.date), tenths(point.before?, false)))
    });
    let read = read.collect::<Vec<_>>().join(say::member::between_points());
    let (name, piece, unit) = (&range.name, &range.piece, words::sign(&range.unit));
    let mut parts = vec![match &range.side_name {
        Some(side) => say::member::range_of_side(name, piece, side, unit, read),
        None => say::member::range(name, piece, unit, read),
    }];
    parts.extend(range.judged.as_ref().map(say::member::first_to_last));
    parts.extend(range.trend.as_ref().map(say::member::trend));
    parts.join(say::member::between_parts())
}

fn option_line(line: &OptionLine, date: NaiveDate) -> String {
    let (option, movement, because) = (&line.option, &line.movement, &line.because);
    let took = if because.is_empty() {
        say::member::took_option(option, movement)
    } else {
        say::member::took_option_because(option, movement, because)
    };
    format!("{}  {took}", words::day(line.date, date))
}

fn discomfort_line(line: &DiscomfortLine, date: NaiveDate) -> String {
    let flag = if line.open {
        say::member::flag_open(&line.text)
    } else {
        say::member::flag_cleared(&line.text)
    };
    format!("{}  {flag}", words::day(line.date, date))
}
