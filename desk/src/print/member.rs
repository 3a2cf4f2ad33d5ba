//! A member's page on a terminal.

use holdfast_core::coach::{LiftSeries, MemberScreen, RangeSeries};
use owo_colors::OwoColorize;

use super::{indented, table};

/// The whole page.
pub(crate) fn member(page: &MemberScreen) -> String {
    let unit = page.unit;
    let mut text = format!("{}\n", page.name.bold());
    for attention in &page.attention {
        text += &format!("  {:<9}{}\n", attention.word, attention.text);
    }
    if page.sessions.is_empty() {
        return text + "  no session has arrived yet\n";
    }
    text += &format!("\n{}\n", "Sessions".bold());
    let mut rows = table(&["date", "day", "sets", "volume load", "RPE", "minutes", "session load"]);
    for session in &page.sessions {
        rows.add_row([
            session.date.to_string(),
            session.day.clone(),
            session.sets.to_string(),
            session.volume.text(unit),
            number(session.rpe),
            number(session.minutes),
            number(session.load),
        ]);
    }
    text += &indented(&rows, 2);
    text += &weeks(page);
    if !page.strengths.is_empty() {
        text += &format!("\n{}\n", "Strength: an estimate from open and rated sets".bold());
        for strength in &page.strengths {
            let trend = after("; ", &strength.trend);
            text += &format!("  {}: {}{trend}\n", strength.movement, strength.text);
        }
    }
    if !page.lifts.is_empty() {
        text += &format!("\n{}\n", "Lifts: heaviest load, and reps in the last set".bold());
        for lift in &page.lifts {
            text += &lift_line(lift, unit);
        }
    }
    if !page.ranges.is_empty() {
        text += &format!("\n{}\n", "Range of motion before the hold".bold());
        page.ranges.iter().for_each(|range| text += &range_line(range));
    }
    if !page.regions.is_empty() {
        text += &format!("\n{}\n", "Under stretch, week by week".bold());
        let mut rows = table(&[]);
        for region in &page.regions {
            rows.add_row([
                format!("week of {}", region.week_of),
                region.region.clone(),
                region.held_text.clone(),
                region.dose_text.clone().unwrap_or_default(),
            ]);
        }
        text += &indented(&rows, 2);
    }
    if !page.options.is_empty() {
        text += &format!("\n{}\n", "Options taken".bold());
        for line in &page.options {
            text += &format!(
                "  {}  {} instead of {}: {}\n",
                line.date, line.option, line.movement, line.because
            );
        }
    }
    if !page.discomfort.is_empty() {
        text += &format!("\n{}\n", "Discomfort".bold());
        for line in &page.discomfort {
            let open = if line.open { "open" } else { "cleared" };
            text += &format!(
                "  {}  {} {}/10 in {}, {open}\n",
                line.date, line.place, line.severity, line.movement
            );
        }
    }
    if !page.proposals.is_empty() {
        text += &format!("\n{}\n", "Next loads".bold());
        for proposal in &page.proposals {
            text += &super::proposal(proposal, 2);
        }
    }
    text
}

fn weeks(page: &MemberScreen) -> String {
    let mut rows =
        table(&["week of", "sessions", "volume load", "session load", "monotony", "strain"]);
    for week in &page.weeks {
        let unrated = match week.unrated_days {
            0 => String::new(),
            days => format!(" + {days} unrated"),
        };
        rows.add_row([
            week.week_of.to_string(),
            week.sessions.to_string(),
            week.volume.text(page.unit),
            format!("{}{unrated}", week.load),
            week.monotony.clone().unwrap_or_default(),
            week.strain.clone().unwrap_or_default(),
        ]);
    }
    let mut text = format!("\n{}\n{}", "Weeks".bold(), indented(&rows, 2));
    if let Some(compared) = &page.load_text {
        text += &format!("  {compared}\n");
    }
    text
}

/// Words after others, where there are any.
fn after(lead: &str, words: &Option<String>) -> String {
    words.as_ref().map_or(String::new(), |words| format!("{lead}{words}"))
}

fn number(value: Option<u32>) -> String {
    value.map_or("-".into(), |value| value.to_string())
}

fn lift_line(lift: &LiftSeries, unit: holdfast_core::MassUnit) -> String {
    let open = if lift.open { "open set" } else { "last set" };
    let points: Vec<String> = lift
        .points
        .iter()
        .map(|point| {
            let load = point.heaviest.map_or("-".into(), |load| load.text(unit));
            let reps = point.last_reps.map_or("-".into(), |reps| reps.to_string());
            let short = if point.made { "" } else { " short" };
            format!("{} {load} x {reps}{short}", point.date.format("%-d %b"))
        })
        .collect();
    format!(
        "  {} ({}, {open}): {}\n",
        lift.movement,
        lift.scheme.replace(',', "-").replace(" open", ""),
        points.join(", ")
    )
}

fn range_line(range: &RangeSeries) -> String {
    let side = after(", ", &range.side_name);
    let reading = |tenths: i64| format!("{:.1}", tenths as f64 / 10.0);
    let points: Vec<String> = range
        .points
        .iter()
        .filter_map(|point| {
            Some(format!("{} {}", point.date.format("%-d %b"), reading(point.before?)))
        })
        .collect();
    let judged = after("; first to last ", &range.judged);
    let trend = after("; trend ", &range.trend);
    format!(
        "  {} ({}{side}), {}: {}{judged}{trend}\n",
        range.name,
        range.piece,
        range.unit,
        points.join(", ")
    )
}
