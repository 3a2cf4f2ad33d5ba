//! Weeks that are made easier.

use toml::de::DeValue;

use super::day::weeks_of;
use super::field::Field;
use super::fields::Fields;
use super::given::{MOST_SETS, MOST_WEEKS};
use super::part::Part;
use crate::plan::Easy;
use crate::say;

const EASY: &str = "easy = { weeks = [4], load = \"-40 %\", sets = -1 }";
const LOAD: &str = "load = \"-40 %\"";
const SETS: &str = "sets = -1";

/// More than this off is no training of the same thing any more: common practice, no source.
const MOST_PERCENT: u32 = 90;

/// Reads which weeks of a block are easier, and how; `weeks` is how many it has, where that is known.
pub(super) fn read(field: Field<'_>, weeks: Option<u32>) -> Option<Easy> {
    let mut fields = Fields::of(field, Part::Easy, || say::plan::write_example(EASY))?;
    let which = fields.required("weeks", "weeks = [4]");
    let which = which.and_then(|which| weeks_of(which, weeks.unwrap_or(MOST_WEEKS)));
    let (lighter, fewer) = (fields.optional("load"), fields.optional("sets"));
    let percent = lighter.map_or(Some(0), percent_off);
    let sets = fewer.map_or(Some(0), sets_off);
    let meant = fields.finish();
    let weeks = which?;
    if lighter.is_none() && fewer.is_none() && meant.is_empty() {
        field.absent(say::plan_day::nothing_easier(), say::plan_day::add_either(LOAD, SETS));
        return None;
    }
    Some(Easy { weeks, percent: percent?, sets: sets? })
}

/// How much lighter, written with a minus and a percent sign.
fn percent_off(field: Field<'_>) -> Option<u32> {
    let read = match field.value() {
        DeValue::String(text) => off(text.trim().strip_suffix('%').unwrap_or_default().trim_end()),
        _ => None,
    };
    let read = read.filter(|percent| (1..=MOST_PERCENT).contains(percent));
    if read.is_none() {
        field.cant_be(say::plan_day::write_lighter("\"-1 %\"", format!("\"-{MOST_PERCENT} %\"")));
    }
    read
}

/// How many sets fewer, written with a minus.
fn sets_off(field: Field<'_>) -> Option<u32> {
    let most = MOST_SETS as u32 - 1;
    let read = match field.value() {
        DeValue::Integer(number) if number.radix() == 10 => off(number.as_str()),
        _ => None,
    };
    let read = read.filter(|sets| (1..=most).contains(sets));
    if read.is_none() {
        field.cant_be(say::plan_day::write_fewer("-1", format!("-{most}")));
    }
    read
}

fn off(text: &str) -> Option<u32> {
    let digits = text.strip_prefix(['-', '\u{2212}'])?.trim_start();
    digits.bytes().all(|byte| byte.is_ascii_digit()).then(|| digits.parse().ok())?
}
