//! The whole plan: its block, and the order its sections are read in.

use chrono::{Datelike, Days, NaiveDate, Weekday};
use toml::de::DeTable;

use super::day;
use super::field::Field;
use super::fields::{Fields, whole_plan};
use super::given::{Given, MOST_WEEKS};
use super::part::Part;
use super::problems::Problems;
use super::room::Room;
use super::{easy, kit, movement};
use crate::plan::{Block, Easy};
use crate::say;

const STARTS: &str = "starts = 2026-11-02";

/// Reads the plan from its tree.
pub(super) fn read<'r>(tree: &'r DeTable<'r>, problems: &'r Problems<'r>) -> Option<Block> {
    let mut plan = whole_plan(tree, problems);
    let block = plan.required("block", "[block]");
    let kit = plan.optional("kit");
    let movements = plan.optional("movement");
    let stretches = plan.optional("stretch");
    let days = plan.required("day", "[[day]]");
    let meant = plan.finish();
    let head = block.and_then(head);
    let weeks = head.as_ref().and_then(|head| head.weeks);
    let room = match kit {
        Some(kit) => kit::read(kit),
        None if meant.contains(&"kit") => Room::unknown(),
        None => Room::empty(),
    };
    let given = Given {
        weeks,
        movements: movement::movements(movements, !meant.contains(&"movement"), &room),
        room,
        stretches: movement::stretches(stretches, !meant.contains(&"stretch")),
    };
    let days = days.and_then(|days| day::read(days, &given));
    let Head { name, starts, weeks, easy } = head?;
    Some(Block {
        name: name?,
        starts: starts?,
        weeks: weeks?,
        easy: easy?,
        kit: given.room.kit,
        movements: given.movements.into_read(),
        stretches: given.stretches.into_read(),
        days: days?,
    })
}

/// What stands in `[block]`; of each key nothing where it has a problem.
struct Head {
    name: Option<String>,
    starts: Option<NaiveDate>,
    weeks: Option<u32>,
    easy: Option<Option<Easy>>,
}

fn head(field: Field<'_>) -> Option<Head> {
    let mut fields = Fields::of(field, Part::Block, || say::plan::write_example("[block]"))?;
    let name = fields.required("name", "name = \"Cellar block one\"").and_then(Field::name);
    let starts = fields.required("starts", STARTS).and_then(monday);
    let weeks = fields.required("weeks", "weeks = 3").and_then(|f| f.whole(1..=MOST_WEEKS));
    let easy = fields.optional("easy");
    let easy = easy.map_or(Some(None), |field| easy::read(field, weeks).map(Some));
    fields.finish();
    Some(Head { name, starts, weeks, easy })
}

fn monday(field: Field<'_>) -> Option<NaiveDate> {
    let date = field.date()?;
    let weekday = date.weekday();
    let what = match weekday {
        Weekday::Mon => return Some(date),
        Weekday::Tue => say::plan_day::starts_on_tuesday(date),
        Weekday::Wed => say::plan_day::starts_on_wednesday(date),
        Weekday::Thu => say::plan_day::starts_on_thursday(date),
        Weekday::Fri => say::plan_day::starts_on_friday(date),
        Weekday::Sat => say::plan_day::starts_on_saturday(date),
        Weekday::Sun => say::plan_day::starts_on_sunday(date),
    };
    let since = u64::from(weekday.num_days_from_monday());
    let before = date.checked_sub_days(Days::new(since));
    let after = date.checked_add_days(Days::new(7 - since));
    let help = match (before, after) {
        (Some(before), Some(after)) => say::plan_day::mondays(before, after),
        _ => say::plan_day::write_monday(STARTS),
    };
    field.wrong(what, help);
    None
}
