//! Training days and when they come round.

use chrono::Weekday;

use super::field::Field;
use super::fields::Fields;
use super::given::{Given, MOST_WEEKS, Names};
use super::part::Part;
use super::piece;
use crate::plan::{Day, Piece};
use crate::say;

/// Days of the week as a plan writes them, from Monday.
const WEEKDAYS: [&str; 7] =
    ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"];

/// A text has no room for more days or more pieces than this.
const MOST: usize = 500;

const DAY: &str = "[[day]]";
const ON: &str = "on = [\"tuesday\", \"friday\"]";
const PIECE: &str = "[[day.piece]]";

/// Reads every day.
pub(super) fn read(field: Field<'_>, given: &Given) -> Option<Vec<Day>> {
    let mut names = Names::new(say::plan_day::name_each_day);
    let days = field.list(1..=MOST, DAY)?.into_iter();
    let days: Vec<Option<Day>> = days.map(|day| one(day, given, &mut names)).collect();
    days.into_iter().collect()
}

fn one(field: Field<'_>, given: &Given, names: &mut Names) -> Option<Day> {
    let mut fields = Fields::of(field, Part::Day, || say::plan::write_example(DAY))?;
    let name = fields.required("name", "name = \"Squat evening\"");
    let name = name.and_then(|name| names.first(name));
    let on = fields.required("on", ON).and_then(weekdays);
    let weeks = fields.optional("weeks");
    let most = given.weeks.unwrap_or(MOST_WEEKS);
    let weeks = weeks.map_or(Some(Vec::new()), |weeks| weeks_of(weeks, most));
    let pieces = fields.required("piece", PIECE).and_then(|field| pieces(field, given));
    fields.finish();
    Some(Day { name: name?, on: on?, weeks: weeks?, pieces: pieces? })
}

fn weekdays(field: Field<'_>) -> Option<Vec<Weekday>> {
    // Seven would do, but an eighth is always a repetition, which says it better.
    let words = field.list(1..=MOST, ON)?.into_iter();
    let read = words.map(|word| {
        let index =
            word.one_of(&WEEKDAYS).and_then(|text| WEEKDAYS.iter().position(|w| *w == text));
        Some((word, Weekday::try_from(u8::try_from(index?).ok()?).ok()?))
    });
    each_once(read.collect())
}

/// Weeks of a block of `most`, each once.
pub(super) fn weeks_of(field: Field<'_>, most: u32) -> Option<Vec<u32>> {
    // Left out, a day comes every week; an empty list would say the same in a confusing way.
    let weeks = field.list(1..=MOST, "weeks = [1, 2]")?.into_iter();
    each_once(weeks.map(|week| Some((week, week.whole(1..=most)?))).collect())
}

/// The values, when all were read and none is there twice.
fn each_once<T: PartialEq>(read: Vec<Option<(Field<'_>, T)>>) -> Option<Vec<T>> {
    let (mut once, mut good): (Vec<T>, bool) = (Vec::new(), true);
    for entry in read {
        match entry {
            Some((_, value)) if !once.contains(&value) => once.push(value),
            Some((field, _)) => {
                field.wrong(say::plan::listed_twice(field.found()), say::plan::take_one_out());
                good = false;
            }
            None => good = false,
        }
    }
    good.then_some(once)
}

fn pieces(field: Field<'_>, given: &Given) -> Option<Vec<Piece>> {
    let mut names = Names::new(say::plan_day::name_each_piece);
    let pieces = field.list(1..=MOST, PIECE)?.into_iter();
    let pieces: Vec<Option<Piece>> =
        pieces.map(|piece| piece::read(piece, given, &mut names)).collect();
    pieces.into_iter().collect()
}
