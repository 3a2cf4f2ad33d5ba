//! What was done: movements, ranges of motion, sessions; each with what it came to last.

use super::act::PageAsk;
use super::record::{PageRow, PageScreen};
use super::rows::{headed, told};
use crate::coach::{self, LiftPoint, MemberScreen};
use crate::device::Device;
use crate::error::{Error, Result, Thing};
use crate::instant::Instant;
use crate::mass::MassUnit;
use crate::say::page as say;
use crate::words;

/// What is to be looked at stands above all else, and must not push it away.
const MOST_TOLD: usize = 4;

/// The sessions that are listed: those of some two months.
const SESSIONS: usize = 20;

pub(super) fn page(
    device: &mut Device,
    member: Option<String>,
    at: &Instant,
) -> Result<PageScreen> {
    let screen = match of(device, member.as_deref(), at) {
        // Before somebody has logged or joined there is nobody of that name.
        Err(Error::NotFound { what: Thing::Member, .. }) if member.is_none() => {
            let said = vec![say::nothing_yet().to_owned()];
            return Ok(PageScreen { said, ..PageScreen::titled(say::history()) });
        }
        screen => screen?,
    };
    let mut rows = Vec::new();
    rows.extend(attention(&screen));
    rows.extend(movements(&screen, &member));
    rows.extend(ranges(&screen, &member));
    rows.extend(sessions(&screen, &member));
    let said = if rows.is_empty() { vec![say::nothing_yet().to_owned()] } else { Vec::new() };
    let title = member.unwrap_or_else(|| say::history().to_owned());
    Ok(PageScreen { said, rows, ..PageScreen::titled(title) })
}

/// Everything about a member, or about oneself.
pub(super) fn of(device: &mut Device, member: Option<&str>, at: &Instant) -> Result<MemberScreen> {
    let name = match member {
        Some(name) => name.to_owned(),
        None => device.person().to_string(),
    };
    coach::member(device, &name, at.date())
}

fn attention(screen: &MemberScreen) -> Vec<PageRow> {
    let told = screen.attention.iter().take(MOST_TOLD).map(told);
    headed(told.collect(), say::to_look_at())
}

fn movements(screen: &MemberScreen, member: &Option<String>) -> Vec<PageRow> {
    let mut names: Vec<&str> = screen.lifts.iter().map(|series| series.movement.as_str()).collect();
    names.dedup();
    names.sort_unstable();
    names.dedup();
    let rows = names.into_iter().filter_map(|name| {
        let of_it = screen.lifts.iter().filter(|series| series.movement == name);
        let last = of_it.flat_map(|series| &series.points).max_by_key(|point| point.date)?;
        let page = PageAsk::Movement { member: member.clone(), movement: name.to_owned() };
        let row = PageRow::opens(name, page).says(words::day(last.date));
        Some(row.worth(heaviest(last, screen.unit)))
    });
    headed(rows.collect(), say::movements())
}

/// The heaviest set of a session: `65 kg × 10`.
pub(super) fn heaviest(point: &LiftPoint, unit: MassUnit) -> String {
    let load = point.heaviest.map(|load| words::load_text(load, unit));
    words::set_done(load.as_deref(), point.heaviest_reps, None, words::Remarks::default())
}

fn ranges(screen: &MemberScreen, member: &Option<String>) -> Vec<PageRow> {
    let rows = (0..).zip(&screen.ranges).filter_map(|(index, series)| {
        let (date, tenths) = last_reading(series)?;
        let page = PageAsk::Range { member: member.clone(), index };
        let row = PageRow::opens(range_name(series), page).says(words::day(date));
        Some(row.worth(words::tenths(tenths, series.protocol.unit())))
    });
    headed(rows.collect(), say::ranges())
}

/// `knee to wall, left`.
pub(super) fn range_name(series: &coach::RangeSeries) -> String {
    match &series.side_name {
        Some(side) => say::range_of_side(&series.name, side),
        None => series.name.clone(),
    }
}

/// The latest reading before a hold; where there is none, after one.
pub(super) fn last_reading(series: &coach::RangeSeries) -> Option<(chrono::NaiveDate, i64)> {
    let read = |point: &coach::RangePoint| Some((point.date, point.before.or(point.after)?));
    series.points.iter().rev().find_map(read)
}

fn sessions(screen: &MemberScreen, member: &Option<String>) -> Vec<PageRow> {
    let rows = screen.sessions.iter().rev().take(SESSIONS).map(|session| {
        let page = PageAsk::Session { member: member.clone(), session: session.session };
        let row = PageRow::opens(&session.day, page).says(words::day(session.date));
        match (session.rpe, session.minutes) {
            (Some(rpe), Some(minutes)) => row.worth(say::rated(rpe, minutes)),
            _ => row.worth(say::sets(session.sets)),
        }
    });
    headed(rows.collect(), say::sessions())
}
