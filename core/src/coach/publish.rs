//! Publishing plans.

use chrono::{NaiveDate, Weekday};
use serde::Serialize;

use super::whereabouts::whereabouts;
use crate::device::Device;
use crate::error::{Error, Result};
use crate::instant::Instant;
use crate::journal::{PlanText, Role};
use crate::plan::{Block, Exercise, PieceKind, Problem, Reviewed, read_plan, review_plan};
use crate::say;
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
    /// What is allowed and may not be meant, in the order of the text.
    pub notes: Vec<Problem>,
}

/// Reads a plan without publishing it, and without anybody it is for. Without `today` nothing is said about
/// when it starts.
pub(crate) fn check_alone(
    source_name: &str,
    text: &[u8],
    today: Option<NaiveDate>,
) -> Result<PlanSummary> {
    let reviewed = review_plan(text, today, &[]);
    let Reviewed { block, notes } = reviewed.map_err(wrong(source_name))?;
    Ok(summary(&block, notes, false))
}

/// Reads a plan without publishing it. On a coach's device its notes are about the athletes, as they are when
/// it is published; an athlete's tells nothing of others.
pub(crate) fn check(
    device: &Device,
    source_name: &str,
    text: &[u8],
    today: NaiveDate,
) -> Result<PlanSummary> {
    match device.profile()?.role {
        Role::Coach => {
            let Reviewed { block, notes } = reviewed(device, source_name, text, today)?;
            Ok(summary(&block, notes, false))
        }
        Role::Athlete => check_alone(source_name, text, Some(today)),
    }
}

fn reviewed(device: &Device, source_name: &str, text: &[u8], today: NaiveDate) -> Result<Reviewed> {
    let block = read_plan(text).map_err(wrong(source_name))?;
    let people = whereabouts(device.reader(), block, today)?;
    review_plan(text, Some(today), &people).map_err(wrong(source_name))
}

fn wrong(source_name: &str) -> impl FnOnce(Vec<Problem>) -> Error {
    |problems| Error::Plan { source_name: source_name.to_owned(), problems }
}

/// Publishes a plan. The same block's name again replaces it; sessions begun keep theirs.
pub(crate) fn publish(
    device: &mut Device,
    source_name: &str,
    text: &[u8],
    at: &Instant,
) -> Result<PlanSummary> {
    device.require_coach(say::device::only_coaches_publish)?;
    let Reviewed { block, notes } = reviewed(device, source_name, text, at.date())?;
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
    Ok(summary(&block, notes, replaced && !unchanged))
}

fn summary(block: &Block, notes: Vec<Problem>, replaced: bool) -> PlanSummary {
    let mut lines = Vec::new();
    for day in &block.days {
        let on: Vec<String> = day.on.iter().map(|on| weekday(*on).to_owned()).collect();
        lines.push(say::coach::plan_day(&day.name, words::list(&on)));
        for piece in &day.pieces {
            let what = piece_line(block, &piece.kind);
            lines.push(format!("  {}", say::coach::plan_piece(&piece.name, what)));
        }
    }
    let (starts, ends) = (words::day(block.starts), words::day(block.ends()));
    PlanSummary {
        block: block.name.clone(),
        heading: say::coach::plan_heading(&block.name, block.weeks, starts, ends),
        lines,
        replaced,
        notes,
    }
}

fn piece_line(block: &Block, kind: &PieceKind) -> String {
    match kind {
        PieceKind::Strength(strength) => {
            let scheme = &strength.scheme;
            let reps = (1..).zip(&scheme.reps);
            let reps: Vec<String> =
                reps.map(|(set, reps)| words::reps(*reps, scheme.is_open(set))).collect();
            let movement = block.name_of(&Exercise::of(&strength.movement));
            let (reps, rest) = (words::list(&reps), words::clock_time(strength.rest_ms));
            // Without one in the plan it follows from what is lifted, set by set.
            match strength.rest_said {
                true => say::coach::piece_strength(movement, reps, rest),
                false => say::coach::piece_strength_alone(movement, reps),
            }
        }
        PieceKind::Interval(interval) => {
            let names: Vec<String> = interval
                .stations
                .iter()
                .map(|station| block.name_of(&Exercise::of(&station.movement)))
                .collect();
            let total = interval.window_ms * i64::from(interval.windows());
            say::coach::piece_interval(
                interval.windows(),
                words::clock_time(interval.window_ms),
                words::list(&names),
                words::clock_time(total),
            )
        }
        PieceKind::Hold(hold) => say::coach::piece_hold(
            block.name_of(&Exercise::of(&hold.stretch)),
            hold.sides,
            words::clock_time(hold.hold_ms),
        ),
        PieceKind::Note(_) => say::coach::piece_note().into(),
    }
}

fn weekday(on: Weekday) -> &'static str {
    match on {
        Weekday::Mon => say::coach::monday(),
        Weekday::Tue => say::coach::tuesday(),
        Weekday::Wed => say::coach::wednesday(),
        Weekday::Thu => say::coach::thursday(),
        Weekday::Fri => say::coach::friday(),
        Weekday::Sat => say::coach::saturday(),
        Weekday::Sun => say::coach::sunday(),
    }
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};

    use super::*;

    #[test]
    fn a_plan_is_summed_up_in_both_languages() {
        let plan = include_bytes!("../../../bindings/fixtures/small-plan.toml");
        let line = |of: &PlanSummary, begin: &str| {
            let found = of.lines.iter().find(|line| line.trim_start().starts_with(begin));
            found.unwrap().clone()
        };
        let english = check_alone("plan.toml", plan, None).unwrap();
        assert!(english.heading.starts_with("Small block: 2 weeks, "), "{}", english.heading);
        let begin = "  Squat: Back squat, sets of 8, 6 and 5 or more, rest ";
        assert!(line(&english, "Squat:").starts_with(begin), "{:?}", english.lines);
        assert!(line(&english, "Calves:").ends_with(" each side"), "{:?}", english.lines);
        let german = speaking(Language::De, || check_alone("plan.toml", plan, None).unwrap());
        assert!(german.heading.starts_with("Small block: 2 Wochen, "), "{}", german.heading);
        assert!(line(&german, "Any evening").contains("(Mo"), "{:?}", german.lines);
        assert!(line(&german, "Corners:").starts_with("  Corners: 4 Fenster zu "));
        assert!(line(&german, "Calves:").contains(" je Seite"), "{:?}", german.lines);
    }
}
