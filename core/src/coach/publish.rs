//! Publishing plans.

use serde::Serialize;

use crate::device::Device;
use crate::error::{Error, Result};
use crate::instant::Instant;
use crate::journal::{PlanText, Role};
use crate::plan::{Block, Exercise, PieceKind, read_plan};
use crate::store::{Draft, Query};
use crate::words;

/// What a plan amounts to, in words.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
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
    let query =
        Query { person: Some(device.person()), subject: Some(&block.name), ..Query::default() };
    let before = query.last::<PlanText>(device.reader())?;
    let replaced = before.is_some();
    let body = PlanText { block: block.name.clone(), text };
    let unchanged = before.as_ref().is_some_and(|before| before.body == body);
    if !unchanged {
        let draft = Draft::new_or_corrected(before.map(|before| before.record), body);
        device.append(at, vec![draft])?;
    }
    device.cut_after_saving();
    Ok(summary(&block, replaced && !unchanged))
}

fn summary(block: &Block, replaced: bool) -> PlanSummary {
    let weeks = words::count(u64::from(block.weeks), "week");
    let mut lines = Vec::new();
    for day in &block.days {
        let on: Vec<String> = day.on.iter().map(|weekday| weekday.to_string()).collect();
        lines.push(format!("{} ({})", day.name, words::list(&on)));
        for piece in &day.pieces {
            lines.push(format!("  {}: {}", piece.name, piece_line(block, &piece.kind)));
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

fn piece_line(block: &Block, kind: &PieceKind) -> String {
    match kind {
        PieceKind::Strength(strength) => {
            let reps: Vec<String> = strength.scheme.reps.iter().map(u32::to_string).collect();
            let open = if strength.scheme.open { ", the last set open" } else { "" };
            let rest = words::clock_time(strength.rest_ms);
            format!(
                "{}, sets of {}{open}, rest {rest}",
                block.name_of(&Exercise::of(&strength.movement)),
                words::list(&reps)
            )
        }
        PieceKind::Interval(interval) => {
            let names: Vec<String> = interval
                .stations
                .iter()
                .map(|station| block.name_of(&Exercise::of(&station.movement)).to_lowercase())
                .collect();
            let total = words::clock_time(interval.window_ms * i64::from(interval.windows()));
            format!(
                "{} of {}: {} ({total})",
                words::count(u64::from(interval.windows()), "window"),
                words::clock_time(interval.window_ms),
                words::list(&names)
            )
        }
        PieceKind::Hold(hold) => {
            let sides = words::count(u64::from(hold.sides), "side");
            format!(
                "{}, {} a side, {sides}",
                block.name_of(&Exercise::of(&hold.stretch)),
                words::clock_time(hold.hold_ms)
            )
        }
        PieceKind::Note(_) => "a note".into(),
    }
}
