//! A coach's side: publishing plans, answering proposals, clearing flags.

use serde::Serialize;

use super::device::Device;
use super::ruling::decided;
use crate::error::{Error, Result};
use crate::id::{PersonId, RecordId};
use crate::instant::Instant;
use crate::journal::{Decision, PlanText, Role, Ruling};
use crate::mass::Mass;
use crate::plan::{Block, Work, read_plan};
use crate::review::{Proposal, proposals};
use crate::store::{Ask, Draft, open_flags, people};
use crate::words;

/// What a plan amounts to, in words.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct PlanSummary {
    /// The block's name.
    pub block: String,
    /// One line: dates and weeks.
    pub heading: String,
    /// A line a day and piece.
    pub lines: Vec<String>,
    /// True when it replaced an earlier version of the same block.
    pub replaced: bool,
}

/// A coach's answer to a proposal.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// The member.
    pub person: PersonId,
    /// What the history is kept under, as the proposal has it.
    pub subject: String,
    /// The scheme's key, as the proposal has it: one movement may have several.
    pub scheme: String,
    /// The answer.
    pub decision: Decision,
    /// With a change: a load a set, or one for the last set that the others follow.
    pub loads: Vec<Mass>,
    /// Words for the athlete; may be empty.
    pub words: String,
}

/// Reads a plan without publishing it.
pub(crate) fn check(source_name: &str, text: &[u8]) -> Result<PlanSummary> {
    let block = read_plan(text)
        .map_err(|problems| Error::Plan { source_name: source_name.to_owned(), problems })?;
    Ok(summary(&block, false))
}

/// Publishes a plan. The same block's name again replaces it; sessions begun keep theirs.
pub(crate) fn publish(
    device: &mut Device,
    source_name: &str,
    text: &[u8],
    at: &Instant,
) -> Result<PlanSummary> {
    device.require(Role::Coach, "publishing a plan")?;
    let block = read_plan(text)
        .map_err(|problems| Error::Plan { source_name: source_name.to_owned(), problems })?;
    // Read as UTF-8 a line ago.
    let text = String::from_utf8_lossy(text).into_owned();
    let ask = Ask { person: Some(device.person()), subject: Some(&block.name), ..Ask::default() };
    let before = ask.last::<PlanText>(device.reader())?;
    let replaced = before.is_some();
    let body = PlanText { block: block.name.clone(), text };
    let unchanged = before.as_ref().is_some_and(|before| before.body == body);
    if !unchanged {
        let draft = match before {
            Some(before) => Draft::correct(before.record, body),
            None => Draft::new(body),
        };
        device.log(at, vec![draft])?;
    }
    device.cut_after_saving();
    Ok(summary(&block, replaced && !unchanged))
}

/// Logs a coach's answer.
pub(crate) fn answer(device: &mut Device, answer: Answer, at: &Instant) -> Result<()> {
    device.require(Role::Coach, "answering a proposal")?;
    let people = people(device.reader())?;
    let Some((_, profile)) = people.get(&answer.person) else {
        return Err(Error::not_found("member", "nobody of this crew"));
    };
    let Some(plan) = device.block_for(at.date())? else {
        return Err(Error::not_found("a plan", "none is published yet"));
    };
    let open = proposals(device.reader(), answer.person, profile.unit, &plan.block, at.date())?;
    let about_it = |it: &&Proposal| it.subject == answer.subject && it.scheme == answer.scheme;
    let Some(proposal) = open.iter().find(about_it) else {
        let known: Vec<String> = open.iter().map(|it| it.subject.clone()).collect();
        let reason = match known.as_slice() {
            [] => format!("{} has no proposals yet", profile.name),
            known => format!("{} has proposals for {}", profile.name, words::list(known)),
        };
        return Err(Error::not_found(format!("proposal \"{}\"", answer.subject), reason));
    };
    let loads = decided(&answer, proposal, profile, &plan.block)?;
    let ruling = Ruling {
        person: answer.person,
        subject: answer.subject,
        scheme: proposal.scheme.clone(),
        after: proposal.after,
        decision: answer.decision,
        loads,
        words: answer.words,
    };
    device.log(at, vec![Draft::new(ruling)])?;
    device.cut_after_saving();
    Ok(())
}

/// Clears a member's discomfort flag after talking with them.
pub(crate) fn clear_flag(
    device: &mut Device,
    person: PersonId,
    flag: RecordId,
    at: &Instant,
) -> Result<()> {
    device.require(Role::Coach, "clearing a member's flag")?;
    let open = open_flags(device.reader(), person)?;
    let draft = super::taps::clear_flag(open.iter().any(|open| open.record == flag), flag, None)?;
    device.log(at, vec![draft])?;
    device.cut_after_saving();
    Ok(())
}

fn summary(block: &Block, replaced: bool) -> PlanSummary {
    let weeks = words::count(u64::from(block.weeks), "week");
    let mut lines = Vec::new();
    for day in &block.days {
        let on: Vec<String> = day.on.iter().map(|weekday| weekday.to_string()).collect();
        lines.push(format!("{} ({})", day.name, words::list(&on)));
        for piece in &day.pieces {
            lines.push(format!("  {}: {}", piece.name, piece_line(block, &piece.work)));
        }
    }
    PlanSummary {
        block: block.name.clone(),
        heading: format!(
            "{}: {weeks}, {} to {}",
            block.name,
            words::day(block.starts),
            words::day(block.ends())
        ),
        lines,
        replaced,
    }
}

fn piece_line(block: &Block, work: &Work) -> String {
    match work {
        Work::Strength(strength) => {
            let reps: Vec<String> = strength.scheme.reps.iter().map(u32::to_string).collect();
            let open = if strength.scheme.open { ", the last set open" } else { "" };
            let rest = words::clock_time(strength.rest_ms);
            format!(
                "{}, sets of {}{open}, rest {rest}",
                block.name_of(&strength.movement),
                words::list(&reps)
            )
        }
        Work::Interval(interval) => {
            let names: Vec<String> = interval
                .stations
                .iter()
                .map(|it| block.name_of(&it.movement).to_lowercase())
                .collect();
            let total = words::clock_time(interval.window_ms * i64::from(interval.windows()));
            format!(
                "{} of {}: {} ({total})",
                words::count(u64::from(interval.windows()), "window"),
                words::clock_time(interval.window_ms),
                words::list(&names)
            )
        }
        Work::Hold(hold) => {
            let sides = words::count(u64::from(hold.sides), "side");
            format!(
                "{}, {} a side, {sides}",
                block.name_of(&hold.stretch),
                words::clock_time(hold.hold_ms)
            )
        }
        Work::Note(_) => "a note".into(),
    }
}
