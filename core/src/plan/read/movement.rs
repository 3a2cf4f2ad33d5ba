//! Movements with their options, and stretches; and finding the one a piece refers to.

use super::field::{Entry, Field};
use super::fields::Fields;
use super::words::{both, clip, did_you_mean};
use crate::plan::{Because, Lifted, Movement, MovementOption, Pattern, Stretch};

const MOVEMENT: &str =
    "[movement.back-squat] with name = \"Back squat\", pattern = \"squat\", lifted = \"bar\"";
const OPTION: &str = "option.box-squat = { name = \"Squat to a box\", because = \"low-back\" }";
const STRETCH: &str = "[stretch.calf-wall] with name = \"Calf stretch\", region = \"calves\"";

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
    /// What one is called: `movement`.
    noun: &'static str,
    example: &'static str,
    entries: Option<Vec<Known<T>>>,
}

impl<T> Register<T> {
    /// Finds what a piece refers to, reporting a key nobody has.
    pub(super) fn find(&self, field: Field<'_>) -> Option<&Known<T>> {
        let key = field.text(1..=60, false)?;
        let entries = self.entries.as_ref()?;
        let found = entries.iter().find(|entry| entry.key == key);
        if found.is_none() {
            let noun = self.noun;
            let keys: Vec<&str> = entries.iter().map(|entry| entry.key.as_str()).collect();
            let help = if keys.is_empty() {
                format!("add {}", self.example)
            } else {
                let suggestion = did_you_mean(&key, &keys, '"');
                let shown = keys.get(..MOST_SHOWN).unwrap_or(&keys);
                let more = keys.len() - shown.len();
                let more = if more > 0 { format!(", and {more} more") } else { String::new() };
                format!("{suggestion}this plan has {}{more}", both(shown, '"'))
            };
            field.absent(format!("there is no {noun} \"{}\"", clip(&key)), help);
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

/// Reads the section of movements; `written` is false when it may hide behind a misspelt key.
pub(super) fn movements(field: Option<Field<'_>>, written: bool) -> Register<Movement> {
    let entries = entries(field, written, MOVEMENT, |entry| {
        let key = entry.checked_key();
        let mut fields = Fields::of(entry.field, "a movement", MOVEMENT)?;
        let name = fields.required("name", "name = \"Back squat\"").and_then(Field::name);
        let pattern = fields.required("pattern", "pattern = \"squat\"");
        let pattern = pattern.and_then(|field| field.one_of(&Pattern::words()));
        let lifted = fields.required("lifted", "lifted = \"bar\"").and_then(lifted);
        let options = fields.optional("option");
        let pattern = pattern.and_then(Pattern::from_text);
        let usual = (lifted, pattern);
        let options = options.map_or(Some(Vec::new()), |field| options_of(field, usual));
        fields.finish();
        let pattern = pattern?;
        Some(Movement { key: key?, name: name?, pattern, lifted: lifted?, options: options? })
    });
    Register { noun: "movement", example: MOVEMENT, entries }
}

fn lifted(field: Field<'_>) -> Option<Lifted> {
    Lifted::from_text(field.one_of(&Lifted::words())?)
}

fn options_of(
    field: Field<'_>,
    usual: (Option<Lifted>, Option<Pattern>),
) -> Option<Vec<MovementOption>> {
    let options = field.entries(OPTION)?.into_iter().map(|entry| {
        let key = entry.checked_key();
        let mut fields = Fields::of(entry.field, "an option", OPTION)?;
        let name = fields.required("name", "name = \"Squat to a box\"").and_then(Field::name);
        let because = fields.required("because", "because = \"low-back\"");
        let because = because.and_then(|field| field.one_of(&Because::words()));
        let lifted = fields.optional("lifted").map_or(usual.0, lifted);
        let pattern = fields.optional("pattern");
        let pattern =
            pattern.map_or(usual.1, |field| Pattern::from_text(field.one_of(&Pattern::words())?));
        fields.finish();
        let because = Because::from_text(because?)?;
        Some(MovementOption { key: key?, name: name?, because, pattern: pattern?, lifted: lifted? })
    });
    let options: Vec<Option<MovementOption>> = options.collect();
    options.into_iter().collect()
}

/// Reads the section of stretches; `written` is false when it may hide behind a misspelt key.
pub(super) fn stretches(field: Option<Field<'_>>, written: bool) -> Register<Stretch> {
    let entries = entries(field, written, STRETCH, |entry| {
        let key = entry.checked_key();
        let mut fields = Fields::of(entry.field, "a stretch", STRETCH)?;
        let name = fields.required("name", "name = \"Calf stretch\"").and_then(Field::name);
        let region = fields.required("region", "region = \"calves\"").and_then(Field::name);
        fields.finish();
        Some(Stretch { key: key?, name: name?, region: region? })
    });
    Register { noun: "stretch", example: STRETCH, entries }
}

fn entries<T>(
    field: Option<Field<'_>>,
    written: bool,
    example: &str,
    read: impl Fn(&Entry<'_>) -> Option<T>,
) -> Option<Vec<Known<T>>> {
    let Some(field) = field else { return written.then(Vec::new) };
    let known = |entry: Entry<'_>| Known { key: entry.key.to_owned(), read: read(&entry) };
    Some(field.entries(example)?.into_iter().map(known).collect())
}
