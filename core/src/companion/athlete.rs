//! An athlete's day: the screen now, and what a tap makes of it.

use chrono::NaiveDate;

use super::device::{COUNT_EVERY, Device};
use super::reading::Reading;
use super::screen::{Notice, NoticeKind, SessionScreen, SessionState};
use super::sheet::Sheet;
use super::tap::Tap;
use super::taps::{Taps, undo};
use crate::care::long_holds_before_strength;
use crate::error::{Error, Result};
use crate::instant::Instant;
use crate::journal::{Role, Session};
use crate::plan::{Block, Day};
use crate::store::{Draft, session_entries};
use crate::words;

/// The screen at a moment.
pub(crate) fn screen(
    device: &mut Device,
    at: &Instant,
    saved: Option<u64>,
) -> Result<SessionScreen> {
    let kept = device.take_reading()?.filter(|reading| reading.holds_at(at));
    let reading = kept.map_or_else(|| Reading::now(device, at), Ok)?;
    let drawn = draw(&reading, device, at, saved);
    device.keep_reading(reading);
    Ok(drawn)
}

/// The screen of a day looked at ahead: the one planned for a date, or one named.
pub(crate) fn preview(
    device: &mut Device,
    at: &Instant,
    date: NaiveDate,
    day: Option<&str>,
) -> Result<SessionScreen> {
    let reading = match day {
        Some(name) => Reading::named(device, date, name)?,
        None => Reading::ahead(device, date)?,
    };
    Ok(draw(&reading, device, at, None))
}

/// Finds a day of a block by its name.
pub(crate) fn named_day<'a>(block: &'a Block, name: &str) -> Result<&'a Day> {
    block.day(name).ok_or_else(|| {
        Error::not_found(format!("day \"{name}\""), format!("the block has {}", day_names(block)))
    })
}

fn day_names(block: &Block) -> String {
    let names: Vec<String> = block.days.iter().map(|day| format!("\"{}\"", day.name)).collect();
    words::list(&names)
}

/// Does what a tap says, durably, and gives the screen after it.
pub(crate) fn tap(device: &mut Device, tap: Tap, at: &Instant) -> Result<SessionScreen> {
    let ends = matches!(tap, Tap::Finish { .. });
    let kept = device.take_reading()?.filter(|reading| reading.holds_at(at));
    let mut reading = kept.map_or_else(|| Reading::now(device, at), Ok)?;
    Device::require_of(&reading.profile, Role::Athlete, "a session")?;
    let (drafts, undone) = match (&tap, &reading.log) {
        (Tap::Undo, Some(log)) => {
            undo(&session_entries(device.reader(), log.id(), device.identity.device)?)?
        }
        _ => (drafts(device, &reading, tap, at)?, String::new()),
    };
    let entries = device.log(at, drafts)?;
    let full = entries.iter().any(|entry| entry.version.number % COUNT_EVERY == 0);
    if ends {
        device.cut_after_saving();
    } else if !full && reading.take(&entries) {
        device.keep_reading(reading);
    }
    let saved = entries.last().map(|entry| entry.version.number);
    Ok(SessionScreen { undone, ..screen(device, at, saved)? })
}

fn drafts(device: &mut Device, reading: &Reading, tap: Tap, at: &Instant) -> Result<Vec<Draft>> {
    // An ended session still takes corrections, and gives way to a new one.
    let log = reading
        .log
        .as_ref()
        .filter(|log| log.finish.is_none() || !matches!(tap, Tap::Begin { .. }));
    match (tap, log, reading.day(), &reading.block) {
        (Tap::Begin { day }, None, _, _) => Ok(vec![begin(device, day, at)?]),
        (tap, Some(log), Some(day), Some(block)) => {
            let sheet = Sheet { reading, block, day, now: at };
            Taps { sheet, log, at }.drafts(tap)
        }
        (Tap::ClearFlag { flag }, ..) => {
            let open = reading.flags.iter().any(|open| open.record == flag);
            Ok(vec![super::taps::clear_flag(open, flag, None)?])
        }
        _ => Err(Error::invalid("session", "none is running: begin one first")),
    }
}

fn begin(device: &mut Device, day: Option<String>, at: &Instant) -> Result<Draft> {
    let date = at.date();
    let Some(plan) = device.block_for(date)? else {
        return Err(Error::not_found(
            "a plan",
            "none has arrived yet: exchange with your coach first",
        ));
    };
    let block = &plan.block;
    let day = match day {
        Some(name) => named_day(block, &name)?,
        None => {
            let planned = block.on(date).into_iter().next();
            planned.and_then(|planned| block.day(&planned.day)).ok_or_else(|| {
                let (today, days) = (words::day(date), day_names(block));
                Error::invalid("day", format!("nothing is planned for {today}: name one of {days}"))
            })?
        }
    };
    Ok(Draft::new(Session {
        plan: plan.version,
        block: block.name.clone(),
        day: day.name.clone(),
        week: block.week_of(date).unwrap_or(if date < block.starts { 1 } else { block.weeks }),
        date,
        at: Some(at.clone()),
    }))
}

fn draw(reading: &Reading, device: &Device, at: &Instant, saved: Option<u64>) -> SessionScreen {
    let mut screen = SessionScreen {
        name: reading.profile.name.clone(),
        unit: reading.profile.unit,
        date: at.date(),
        state: reading.state,
        heading: "No plan yet: exchange with your coach".into(),
        block: String::new(),
        day: String::new(),
        days: Vec::new(),
        pieces: Vec::new(),
        notices: notices(reading, device),
        saved,
        undone: String::new(),
        unpublished: reading.unpublished,
        rest: None,
    };
    if let Some(block) = &reading.block {
        screen.block = block.name.clone();
        screen.days = block.days.iter().map(|day| day.name.clone()).collect();
        screen.heading = heading(reading, block, at.date());
        if let Some(day) = reading.day() {
            screen.day = day.name.clone();
            screen.notices.extend(long_holds_before_strength(day).into_iter().map(|it| {
                let stretch = block.name_of(&it.stretch);
                let text = words::long_hold(&stretch, it.held_ms, &it.before);
                Notice { kind: NoticeKind::Info, text }
            }));
            screen.pieces = Sheet { reading, block, day, now: at }.pieces();
            screen.rest = reading.log.as_ref().and_then(|log| super::rest::rest(log, day, at));
        }
    }
    if let Some(planned) = &reading.planned {
        screen.date = planned.date;
        let others = reading.block.iter().flat_map(|block| block.on(planned.date));
        let others: Vec<String> =
            others.map(|other| other.day).filter(|day| *day != planned.day).collect();
        if !others.is_empty() && reading.state != SessionState::DayOff {
            let text = format!("also planned for this date: {}", words::list(&others));
            screen.notices.push(Notice { kind: NoticeKind::Info, text });
        }
    }
    screen
}

fn heading(reading: &Reading, block: &Block, today: NaiveDate) -> String {
    match (&reading.planned, reading.state) {
        (Some(planned), SessionState::DayOff) => {
            format!("Nothing planned today. Next: {}, {}", planned.day, words::day(planned.date))
        }
        (Some(planned), _) => {
            let (week, weeks) = (planned.week, block.weeks);
            format!("{}, {}, week {week} of {weeks}", planned.day, words::day(planned.date))
        }
        (None, _) => {
            let (name, end) = (&block.name, words::day(block.ends()));
            let how = if today > block.ends() { "ended on" } else { "has no day left and ends on" };
            format!("{name} {how} {end}: any of its days can still be trained by name")
        }
    }
}

/// What should be read first, the most pressing first.
fn notices(reading: &Reading, device: &Device) -> Vec<Notice> {
    let mut notices = Vec::new();
    for flag in reading.flags.iter().filter(|flag| !flag.body.signs.is_empty()) {
        let body = &flag.body;
        let advice = crate::care::advice_for(body.place, body.severity, &body.signs);
        let care = |text| Notice { kind: NoticeKind::Care, text };
        notices.extend(advice.lines.into_iter().map(care));
    }
    let warning = |text| Notice { kind: NoticeKind::Warning, text };
    notices.extend(super::start::opening_text(device.rebuilt.as_ref()).map(warning));
    notices.extend(device.shelf_trouble.as_ref().map(|trouble| {
        warning(format!("everything is saved, but not yet ready for the exchange: {trouble}"))
    }));
    if reading.conflicts > 0 {
        let what = words::count(u64::from(reading.conflicts), "entry");
        let text = format!("two of your devices disagree about {what}; the later one is shown");
        notices.push(warning(text));
    }
    notices
}
