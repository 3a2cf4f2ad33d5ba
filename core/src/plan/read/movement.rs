//! Movements with their options, and stretches; and finding the one a piece refers to.

use super::field::{Entry, Field};
use super::fields::Fields;
use super::part::Part;
use super::room::{Carrier, Room};
use super::words::{Mark, both, clip, commas, with_guess};
use crate::plan::{Because, Lifted, Movement, MovementOption, Pattern, Stretch};
use crate::say;

const OPTION: &str = "option.box-squat = { name = \"Squat to a box\", because = \"low-back\" }";

/// A message shows this many keys; nobody reads more.
const MOST_SHOWN: usize = 12;

/// Something pieces refer to by its key. It is known by its key even when the rest of it has a
/// problem, so that one mistake is not reported at every piece.
pub(super) struct Known<T> {
    key: String,
    /// What was read, when all of it was right.
    pub(super) read: Option<T>,
}

/// Everything of one sort that pieces refer to; nothing is known when its section is unreadable.
pub(super) struct Register<T> {
    /// Says that there is none with such a key.
    none: fn(&str) -> String,
    /// Says how one is written.
    example: fn() -> &'static str,
    entries: Option<Vec<Known<T>>>,
}

impl<T> Register<T> {
    /// Finds what a piece refers to, reporting a key nobody has.
    pub(super) fn find(&self, field: Field<'_>) -> Option<&Known<T>> {
        let key = field.text(1..=60, false)?;
        let entries = self.entries.as_ref()?;
        let found = entries.iter().find(|entry| entry.key == key);
        if found.is_none() {
            let keys: Vec<&str> = entries.iter().map(|entry| entry.key.as_str()).collect();
            let help = if keys.is_empty() {
                (self.example)().to_owned()
            } else {
                let shown = keys.get(..MOST_SHOWN).unwrap_or(&keys);
                let has = match keys.len() - shown.len() {
                    0 => say::plan_day::plan_has(both(shown, Mark::Word)),
                    more => say::plan_day::plan_has_more(more, commas(shown, Mark::Word)),
                };
                with_guess(&key, &keys, Mark::Word, has)
            };
            field.absent((self.none)(&clip(&key)), help);
        }
        found
    }

    /// Everything that was read, in the order of the text.
    pub(super) fn into_read(self) -> Vec<T> {
        self.entries.unwrap_or_default().into_iter().filter_map(|entry| entry.read).collect()
    }
}

impl<T> Known<T> {
    /// The key.
    pub(super) fn key(&self) -> String {
        self.key.clone()
    }
}

impl Known<Movement> {
    /// What the movement is done with, when all of it was right.
    pub(super) fn carrier(&self) -> Option<Carrier> {
        let Movement { lifted, bar, machine, .. } = self.read.as_ref()?;
        Some(Carrier { lifted: *lifted, bar: bar.clone(), machine: machine.clone() })
    }
}

/// Reads the section of movements; `written` is false when it may hide behind a misspelt key.
pub(super) fn movements(
    field: Option<Field<'_>>,
    written: bool,
    room: &Room,
) -> Register<Movement> {
    let entries = entries(field, written, say::plan_day::write_movement, |entry| {
        let key = entry.checked_key();
        let mut fields = Fields::of(entry.field, Part::Movement, say::plan_day::write_movement)?;
        let name = fields.required("name", "name = \"Back squat\"").and_then(Field::name);
        let pattern = fields.required("pattern", "pattern = \"squat\"");
        let pattern = pattern.and_then(|field| field.one_of(&Pattern::words()));
        let lifted = fields.required("lifted", "lifted = \"bar\"").and_then(lifted);
        let carrier = carrier(&mut fields, lifted, room);
        let options = fields.optional("option");
        let pattern = pattern.and_then(Pattern::from_text);
        let usual = (lifted, pattern);
        let options = options.map_or(Some(Vec::new()), |field| options_of(field, usual, room));
        fields.finish();
        let (bar, machine) = carrier?;
        let pattern = pattern?;
        Some(Movement {
            key: key?,
            name: name?,
            pattern,
            lifted: lifted?,
            bar,
            machine,
            options: options?,
        })
    });
    let none = |key: &str| say::plan_day::no_movement(key);
    Register { none, example: say::plan_day::write_movement, entries }
}

fn lifted(field: Field<'_>) -> Option<Lifted> {
    Lifted::from_text(field.one_of(&Lifted::words())?)
}

/// The bar and the machine that a movement or an option names; nothing when one has a problem.
fn carrier(
    fields: &mut Fields<'_>,
    lifted: Option<Lifted>,
    room: &Room,
) -> Option<(Option<String>, Option<String>)> {
    let bar = fields.optional("bar").map(|field| room.bar(field, lifted));
    let machine = fields.optional("machine").map(|field| room.machine(field, lifted));
    let told = |name: Option<Option<String>>| name.map_or(Some(None), |name| name.map(Some));
    Some((told(bar)?, told(machine)?))
}

fn options_of(
    field: Field<'_>,
    usual: (Option<Lifted>, Option<Pattern>),
    room: &Room,
) -> Option<Vec<MovementOption>> {
    let help = || say::plan::write_example(OPTION);
    let options = field.entries(help)?.into_iter().map(|entry| {
        let key = entry.checked_key();
        let mut fields = Fields::of(entry.field, Part::Option, help)?;
        let name = fields.required("name", "name = \"Squat to a box\"").and_then(Field::name);
        let because = fields.required("because", "because = \"low-back\"");
        let because = because.and_then(|field| field.one_of(&Because::words()));
        let lifted = fields.optional("lifted").map_or(usual.0, lifted);
        let carrier = carrier(&mut fields, lifted, room);
        let pattern = fields.optional("pattern");
        let pattern =
            pattern.map_or(usual.1, |field| Pattern::from_text(field.one_of(&Pattern::words())?));
        fields.finish();
        let because = Because::from_text(because?)?;
        let (bar, machine) = carrier?;
        Some(MovementOption {
            key: key?,
            name: name?,
            because,
            pattern: pattern?,
            lifted: lifted?,
            bar,
            machine,
        })
    });
    let options: Vec<Option<MovementOption>> = options.collect();
    options.into_iter().collect()
}

/// Reads the section of stretches; `written` is false when it may hide behind a misspelt key.
pub(super) fn stretches(field: Option<Field<'_>>, written: bool) -> Register<Stretch> {
    let entries = entries(field, written, say::plan_day::write_stretch, |entry| {
        let key = entry.checked_key();
        let mut fields = Fields::of(entry.field, Part::Stretch, say::plan_day::write_stretch)?;
        let name = fields.required("name", "name = \"Calf stretch\"").and_then(Field::name);
        let region = fields.required("region", "region = \"calves\"").and_then(Field::name);
        fields.finish();
        Some(Stretch { key: key?, name: name?, region: region? })
    });
    let none = |key: &str| say::plan_day::no_stretch(key);
    Register { none, example: say::plan_day::write_stretch, entries }
}

fn entries<T>(
    field: Option<Field<'_>>,
    written: bool,
    help: fn() -> &'static str,
    read: impl Fn(&Entry<'_>) -> Option<T>,
) -> Option<Vec<Known<T>>> {
    let Some(field) = field else { return written.then(Vec::new) };
    let known = |entry: Entry<'_>| Known { key: entry.key.to_owned(), read: read(&entry) };
    Some(field.entries(help)?.into_iter().map(known).collect())
}
