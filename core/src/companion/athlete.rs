//! An athlete's day: the screen now, and what a tap makes of it.

use std::sync::Arc;

use chrono::NaiveDate;

use super::device::Device;
use super::screen::{Notice, NoticeKind, SessionScreen, SessionState};
use super::session_log::SessionLog;
use super::sheet::Sheet;
use super::tap::Tap;
use super::taps::Taps;
use crate::error::{Error, Result};
use crate::instant::Instant;
use crate::journal::{Profile, Role, Session};
use crate::plan::{Block, Day, Planned};
use crate::store::{Draft, conflicts, open_flags, unpublished};
use crate::words;

/// The day on screen: from a running session, or from the plan.
struct OnScreen {
    state: SessionState,
    block: Arc<Block>,
    planned: Option<Planned>,
    log: Option<SessionLog>,
}

/// The screen at a moment.
pub(crate) fn screen(
    device: &mut Device,
    at: &Instant,
    saved: Option<u64>,
) -> Result<SessionScreen> {
    let profile = device.profile()?;
    let shown = on_screen(device, at)?;
    draw(device, &profile, at, shown, saved)
}

/// The screen of a day looked at ahead: the one planned for a date, or one named.
pub(crate) fn preview(
    device: &mut Device,
    at: &Instant,
    date: NaiveDate,
    day: Option<&str>,
) -> Result<SessionScreen> {
    let profile = device.profile()?;
    let shown = match (planned_for(device, date)?, day) {
        (Some(shown), Some(name)) => {
            let week = shown.block.week_of(date).unwrap_or(shown.block.weeks);
            let day = named_day(&shown.block, name)?.name.clone();
            let planned = Some(Planned { date, week, day });
            Some(OnScreen { planned, state: SessionState::Ready, ..shown })
        }
        (shown, _) => shown,
    };
    draw(device, &profile, at, shown, None)
}

fn named_day<'a>(block: &'a Block, name: &str) -> Result<&'a Day> {
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
    let profile = device.require(Role::Athlete, "a session")?;
    let ends = matches!(tap, Tap::Finish { .. });
    let log = SessionLog::current(device.reader(), device.person(), at)?;
    let running = log.filter(|log| log.finish.is_none() || tap_reopens(&tap));
    let drafts = match (tap, running) {
        (Tap::Begin { day }, None) => vec![begin(device, day, at)?],
        (tap, Some(log)) => {
            let (block, day) = pinned(device, &log)?;
            let flags = open_flags(device.reader(), device.person())?;
            let sheet = Sheet {
                connection: device.reader(),
                person: device.person(),
                unit: profile.unit,
                block: &block,
                day: &day,
                log: Some(&log),
                flags: &flags,
                now: at,
            };
            Taps { sheet, log: &log, at }.drafts(tap)?
        }
        (Tap::ClearFlag { flag }, None) => {
            let flags = open_flags(device.reader(), device.person())?;
            vec![super::taps::clear_flag(flags.iter().any(|open| open.record == flag), flag)?]
        }
        (_, None) => return Err(Error::invalid("session", "none is running: begin one first")),
    };
    let saved = device.log(at, drafts)?;
    if ends {
        device.cut_leaves()?;
    }
    screen(device, at, saved)
}

/// A finished session takes corrections of how it ended, and gives way to a new one.
fn tap_reopens(tap: &Tap) -> bool {
    !matches!(tap, Tap::Begin { .. })
}

/// The block and day a session began with, whatever was published since.
fn pinned(device: &mut Device, log: &SessionLog) -> Result<(Arc<Block>, Day)> {
    let session = &log.session.body;
    let block = device.block(session.plan, None)?.ok_or_else(|| {
        Error::not_found(
            format!("the plan of {}", session.block),
            "its file has not arrived on this device: exchange first",
        )
    })?;
    let day = block.day(&session.day).cloned().ok_or_else(|| {
        Error::not_found(format!("day \"{}\"", session.day), "the plan does not have it")
    })?;
    Ok((block, day))
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
    }))
}

fn on_screen(device: &mut Device, at: &Instant) -> Result<Option<OnScreen>> {
    let Some(log) = SessionLog::current(device.reader(), device.person(), at)? else {
        return planned_for(device, at.date());
    };
    let (block, _) = pinned(device, &log)?;
    let session = log.session.body.clone();
    let state = if log.finish.is_some() { SessionState::Finished } else { SessionState::Running };
    let planned = Planned { date: session.date, week: session.week, day: session.day };
    Ok(Some(OnScreen { state, block, planned: Some(planned), log: Some(log) }))
}

fn planned_for(device: &mut Device, date: NaiveDate) -> Result<Option<OnScreen>> {
    let Some(plan) = device.block_for(date)? else { return Ok(None) };
    let today = plan.block.on(date).into_iter().next();
    let state = if today.is_some() { SessionState::Ready } else { SessionState::DayOff };
    // On a day off the next one is shown, so that nobody comes unprepared.
    let planned = today.or_else(|| plan.block.next_from(date));
    Ok(Some(OnScreen { state, block: plan.block, planned, log: None }))
}

fn draw(
    device: &Device,
    profile: &Profile,
    at: &Instant,
    shown: Option<OnScreen>,
    saved: Option<u64>,
) -> Result<SessionScreen> {
    let mut notices = notices(device)?;
    let unpublished = unpublished(device.reader(), device.identity.device)?;
    let mut screen = SessionScreen {
        name: profile.name.clone(),
        unit: profile.unit,
        date: at.date(),
        state: SessionState::NoPlan,
        heading: "No plan yet: exchange with your coach".into(),
        block: String::new(),
        day: String::new(),
        days: Vec::new(),
        pieces: Vec::new(),
        notices: Vec::new(),
        saved,
        unpublished,
    };
    if let Some(shown) = shown {
        let block = &shown.block;
        screen.state = shown.state;
        screen.block = block.name.clone();
        screen.days = block.days.iter().map(|day| day.name.clone()).collect();
        screen.heading = heading(&shown);
        if let Some(planned) = &shown.planned {
            screen.date = planned.date;
            screen.day = planned.day.clone();
            let flags = open_flags(device.reader(), device.person())?;
            if let Some(day) = block.day(&planned.day) {
                let sheet = Sheet {
                    connection: device.reader(),
                    person: device.person(),
                    unit: profile.unit,
                    block,
                    day,
                    log: shown.log.as_ref(),
                    flags: &flags,
                    now: at,
                };
                screen.pieces = sheet.pieces()?;
            }
            for flag in flags.iter().filter(|flag| !flag.body.signs.is_empty()) {
                let body = &flag.body;
                let advice = crate::care::advice_for(body.place, body.severity, &body.signs);
                let care = |text| Notice { kind: NoticeKind::Care, text };
                notices.extend(advice.lines.into_iter().map(care));
            }
        }
    }
    notices.sort_by_key(|notice| notice.kind);
    screen.notices = notices;
    Ok(screen)
}

fn heading(shown: &OnScreen) -> String {
    let block = &shown.block;
    match (&shown.planned, shown.state) {
        (Some(planned), SessionState::DayOff) => {
            format!("Nothing planned today. Next: {}, {}", planned.day, words::day(planned.date))
        }
        (Some(planned), _) => {
            let (week, weeks) = (planned.week, block.weeks);
            format!("{}, {}, week {week} of {weeks}", planned.day, words::day(planned.date))
        }
        (None, _) => {
            format!(
                "{} ended on {}: any of its days can still be trained by name",
                block.name,
                words::day(block.ends())
            )
        }
    }
}

fn notices(device: &Device) -> Result<Vec<Notice>> {
    let mut notices = Vec::new();
    if let Some(text) = super::opening_text(device.rebuilt.as_ref()) {
        notices.push(Notice { kind: NoticeKind::Warning, text });
    }
    let conflicts = conflicts(device.reader(), device.person())?;
    if conflicts > 0 {
        let what = words::count(u64::from(conflicts), "entry");
        let text = format!("two of your devices disagree about {what}; the later one is shown");
        notices.push(Notice { kind: NoticeKind::Warning, text });
    }
    Ok(notices)
}
