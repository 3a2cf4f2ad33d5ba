//! One value and the key it is written under: text, numbers, words, lists and tables.

use std::ops::RangeInclusive;

use toml::Spanned;
use toml::de::{DeString, DeTable, DeValue};

use super::problems::Problems;
use super::words::{clip, counted, did_you_mean, either};

/// A value, its key and where to report what is wrong with it. Every reading method answers
/// `None` when it has a problem to report, and only then.
#[derive(Clone, Copy)]
pub(super) struct Field<'r> {
    key: &'r str,
    /// The value is one of a list that is written under the key.
    listed: bool,
    value: &'r Spanned<DeValue<'r>>,
    problems: &'r Problems<'r>,
}

/// A table's entry under a key of the coach's own choice.
pub(super) struct Entry<'r> {
    /// The key.
    pub(super) key: &'r str,
    /// Where the key is, in bytes.
    pub(super) at: usize,
    /// The value under it.
    pub(super) field: Field<'r>,
}

/// The longest name, in characters.
const LONGEST_NAME: usize = 60;

impl<'r> Field<'r> {
    /// A value read from the text.
    pub(super) fn new(
        key: &'r str,
        value: &'r Spanned<DeValue<'r>>,
        problems: &'r Problems<'r>,
    ) -> Field<'r> {
        Field { key, listed: false, value, problems }
    }

    /// Where the value starts, in bytes.
    pub(super) fn at(self) -> usize {
        self.value.span().start
    }

    /// The value itself.
    pub(super) fn value(self) -> &'r DeValue<'r> {
        self.value.get_ref()
    }

    /// True when the value is a list.
    pub(super) fn is_list(self) -> bool {
        matches!(self.value(), DeValue::Array(_))
    }

    /// The line the value starts in, counted from 1.
    pub(super) fn line(self) -> u32 {
        self.problems.line(self.at())
    }

    /// The key as messages call it.
    pub(super) fn label(self) -> String {
        if self.listed { format!("each of `{}`", self.key) } else { format!("`{}`", self.key) }
    }

    /// The value as messages show it.
    pub(super) fn found(self) -> String {
        match self.value() {
            DeValue::String(text) => format!("\"{}\"", clip(text)),
            DeValue::Integer(number) => clip(&number.to_string()),
            DeValue::Float(number) => clip(number.as_str()),
            DeValue::Boolean(flag) => flag.to_string(),
            DeValue::Datetime(date) => date.to_string(),
            DeValue::Array(_) => "a list".to_owned(),
            DeValue::Table(_) => "a table".to_owned(),
        }
    }

    /// Reports that the value is wrong.
    pub(super) fn wrong(self, what: impl Into<String>, help: impl Into<String>) {
        self.problems.wrong(self.at(), what.into(), help.into());
    }

    /// Reports that something the value needs is written nowhere.
    pub(super) fn absent(self, what: impl Into<String>, help: impl Into<String>) {
        self.problems.absent(self.at(), what.into(), help.into());
    }

    /// Reports that the value is not what it must be.
    pub(super) fn must_be(self, wanted: &str, help: impl Into<String>) {
        self.wrong(format!("{} must be {wanted}, found {}", self.label(), self.found()), help);
    }

    /// A name on screen: one line, not blank.
    pub(super) fn name(self) -> Option<String> {
        self.text(1..=LONGEST_NAME, false)
    }

    /// Text of so many characters, without blanks around it.
    pub(super) fn text(self, length: RangeInclusive<usize>, breaks: bool) -> Option<String> {
        let DeValue::String(text) = self.value() else {
            self.must_be("text", "write it in double quotes");
            return None;
        };
        let (text, label) = (text.trim(), self.label());
        let count = text.chars().count();
        if count < *length.start() {
            self.wrong(format!("{label} is empty"), "write at least one letter");
            return None;
        }
        if count > *length.end() {
            let most = length.end();
            let what = format!("{label} has {count} characters, and {most} is the most");
            self.wrong(what, format!("shorten it by {}", counted(count - most, "character")));
            return None;
        }
        let odd = text.chars().find(|c| c.is_control() && !(breaks && matches!(c, '\n' | '\r')));
        if let Some(odd) = odd {
            let code = u32::from(odd);
            let what = format!("{label} holds a character that can't be shown (U+{code:04X})");
            let place = if breaks { "without tabs" } else { "on one line, without tabs" };
            self.wrong(what, format!("write it {place}"));
            return None;
        }
        Some(text.to_owned())
    }

    /// A whole number in a range.
    pub(super) fn whole(self, range: RangeInclusive<u32>) -> Option<u32> {
        let (least, most) = (*range.start(), *range.end());
        let wanted = match most - least {
            1 => format!("{least} or {most}"),
            _ => format!("a whole number from {least} to {most}"),
        };
        let DeValue::Integer(number) = self.value() else {
            let text = match self.value() {
                DeValue::String(text) => text.trim().parse().ok(),
                _ => None,
            };
            let help = match text.filter(|number| range.contains(number)) {
                Some(number) => format!("write it without quotes: {number}"),
                None => "write digits only, without quotes".to_owned(),
            };
            self.must_be(&wanted, help);
            return None;
        };
        let read = i64::from_str_radix(number.as_str(), number.radix()).ok();
        match read.and_then(|number| u32::try_from(number).ok()) {
            Some(number) if range.contains(&number) => return Some(number),
            _ if number.as_str().starts_with('-') || read.is_some_and(|n| n < i64::from(least)) => {
                self.must_be(&wanted, format!("write {least} or more"));
            }
            _ => self.must_be(&wanted, format!("write {most} or less")),
        }
        None
    }

    /// `true` or `false`.
    pub(super) fn flag(self) -> Option<bool> {
        if let DeValue::Boolean(flag) = self.value() {
            return Some(*flag);
        }
        self.must_be("true or false", "write true or false, without quotes");
        None
    }

    /// One of some words.
    pub(super) fn one_of(self, words: &[&'static str]) -> Option<&'static str> {
        let list = either(words, '"');
        let DeValue::String(text) = self.value() else {
            self.must_be(&format!("one of {list}"), "write the word in double quotes");
            return None;
        };
        let known = words.iter().copied().find(|word| *word == text.as_ref());
        if known.is_none() {
            let can = if self.listed { "can't hold" } else { "can't be" };
            let what = format!("`{}` {can} {}", self.key, self.found());
            let suggestion = did_you_mean(text, words, '"');
            self.wrong(what, format!("{suggestion}write {list}"));
        }
        known
    }

    /// The entries of a list; `example` is a line that writes one.
    pub(super) fn list(
        self,
        count: RangeInclusive<usize>,
        example: &str,
    ) -> Option<Vec<Field<'r>>> {
        let DeValue::Array(values) = self.value() else {
            self.must_be("a list", format!("write it in square brackets: `{example}`"));
            return None;
        };
        if values.len() < *count.start() {
            self.absent(format!("{} is empty", self.label()), format!("write `{example}`"));
            return None;
        }
        if values.len() > *count.end() {
            let (found, most) = (values.len(), count.end());
            let what = format!("{} lists {found}, and {most} is the most", self.label());
            self.wrong(what, format!("take {} out", found - most));
            return None;
        }
        Some(values.iter().map(|value| Field { listed: true, value, ..self }).collect())
    }

    /// The entries of a list, or the value alone where no list was written.
    pub(super) fn one_or_list(self, most: usize, example: &str) -> Option<Vec<Field<'r>>> {
        match self.value() {
            DeValue::Array(_) => self.list(1..=most, example),
            _ => Some(vec![self]),
        }
    }

    /// Where a table starts and what is in it, when the value is one.
    pub(super) fn as_table(self) -> Option<(usize, &'r DeTable<'r>)> {
        match self.value() {
            DeValue::Table(table) => Some((self.at(), table)),
            _ => None,
        }
    }

    /// Where problems are gathered.
    pub(super) fn problems(self) -> &'r Problems<'r> {
        self.problems
    }

    /// The entries of a table under keys of the coach's own choice, in the order of the text.
    pub(super) fn entries(self, example: &str) -> Option<Vec<Entry<'r>>> {
        let DeValue::Table(table) = self.value() else {
            self.must_be("a table with a key for each", format!("write `{example}`"));
            return None;
        };
        let mut entries: Vec<Entry<'r>> = table.iter().map(|entry| self.entry(entry)).collect();
        entries.sort_by_key(|entry| entry.at);
        Some(entries)
    }

    fn entry(
        self,
        (key, value): (&'r Spanned<DeString<'r>>, &'r Spanned<DeValue<'r>>),
    ) -> Entry<'r> {
        let (at, key) = (key.span().start, key.get_ref().as_ref());
        Entry { key, at, field: Field::new(key, value, self.problems) }
    }
}

impl Entry<'_> {
    /// The longest key, in characters.
    const LONGEST: usize = 40;

    /// The key when pieces can refer to it.
    pub(super) fn checked_key(&self) -> Option<String> {
        let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
        let length = self.key.chars().count();
        if (1..=Entry::LONGEST).contains(&length) && self.key.chars().all(plain) {
            return Some(self.key.to_owned());
        }
        let what = format!("`{}` can't be a key", clip(self.key));
        let help = "use 1 to 40 small letters, digits and hyphens, such as `back-squat`";
        self.field.problems.wrong(self.at, what, help.to_owned());
        None
    }
}
