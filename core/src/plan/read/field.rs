//! One value and the key it is written under: text, numbers, words, lists and tables.

use std::ops::RangeInclusive;

use toml::Spanned;
use toml::de::{DeString, DeTable, DeValue};

use super::problems::Problems;
use super::words::{Mark, clip, either, with_guess};
use crate::say;

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

    /// The key the value is written under.
    pub(super) fn key(self) -> &'r str {
        self.key
    }

    /// The value as messages show it; lists and tables have messages of their own.
    pub(super) fn found(self) -> String {
        match self.value() {
            DeValue::String(text) => format!("\"{}\"", clip(text)),
            DeValue::Integer(number) => clip(&number.to_string()),
            DeValue::Float(number) => clip(number.as_str()),
            DeValue::Boolean(flag) => flag.to_string(),
            DeValue::Datetime(date) => date.to_string(),
            DeValue::Array(_) => "[]".to_owned(),
            DeValue::Table(_) => "{}".to_owned(),
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

    /// Reports that the key can't have this value; `help` says what it can have.
    pub(super) fn cant_be(self, help: impl Into<String>) {
        let key = clip(self.key);
        let what = match (self.value(), self.listed) {
            (DeValue::Array(_), false) => say::plan::cant_be_list(key),
            (DeValue::Array(_), true) => say::plan::cant_hold_list(key),
            (DeValue::Table(_), false) => say::plan::cant_be_table(key),
            (DeValue::Table(_), true) => say::plan::cant_hold_table(key),
            (_, false) => say::plan::cant_be(key, self.found()),
            (_, true) => say::plan::cant_hold(key, self.found()),
        };
        self.wrong(what, help);
    }

    /// A name on screen: one line, not blank.
    pub(super) fn name(self) -> Option<String> {
        self.text(1..=LONGEST_NAME, false)
    }

    /// Text of so many characters, without blanks around it.
    pub(super) fn text(self, length: RangeInclusive<usize>, breaks: bool) -> Option<String> {
        let DeValue::String(text) = self.value() else {
            self.cant_be(say::plan::write_text());
            return None;
        };
        let text = text.trim();
        let count = text.chars().count();
        if count < *length.start() {
            self.wrong(say::plan::nothing_in_it(self.key), say::plan::write_a_letter());
            return None;
        }
        if count > *length.end() {
            let most = length.end();
            let what = say::plan::text_too_long(self.key, count, most);
            self.wrong(what, say::plan::shorten_text(count - most));
            return None;
        }
        let odd = text.chars().find(|c| c.is_control() && !(breaks && matches!(c, '\n' | '\r')));
        if let Some(odd) = odd {
            let code = format!("U+{:04X}", u32::from(odd));
            let help = match breaks {
                true => say::plan::write_without_tabs(),
                false => say::plan::write_on_one_line(),
            };
            self.wrong(say::plan::unshown_character(self.key, code), help);
            return None;
        }
        Some(text.to_owned())
    }

    /// A whole number in a range.
    pub(super) fn whole(self, range: RangeInclusive<u32>) -> Option<u32> {
        let DeValue::Integer(number) = self.value() else {
            let text = match self.value() {
                DeValue::String(text) => text.trim().parse().ok(),
                _ => None,
            };
            let help = match text.filter(|number| range.contains(number)) {
                Some(number) => say::plan::unquote(number),
                None => one_in(&range, true),
            };
            self.cant_be(help);
            return None;
        };
        let read = i64::from_str_radix(number.as_str(), number.radix()).ok();
        let read = read.and_then(|number| u32::try_from(number).ok());
        let read = read.filter(|number| range.contains(number));
        if read.is_none() {
            self.cant_be(one_in(&range, false));
        }
        read
    }

    /// `true` or `false`.
    pub(super) fn flag(self) -> Option<bool> {
        if let DeValue::Boolean(flag) = self.value() {
            return Some(*flag);
        }
        self.cant_be(say::plan::write_true_or_false());
        None
    }

    /// One of some words.
    pub(super) fn one_of(self, words: &[&'static str]) -> Option<&'static str> {
        let DeValue::String(text) = self.value() else {
            self.cant_be(say::plan::write_quoted_word(either(words, Mark::Word)));
            return None;
        };
        let known = words.iter().copied().find(|word| *word == text.as_ref());
        if known.is_none() {
            let list = say::plan::write_word(either(words, Mark::Word));
            self.cant_be(with_guess(text, words, Mark::Word, list));
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
            self.cant_be(say::plan::write_list(example));
            return None;
        };
        if values.len() < *count.start() {
            self.absent(say::plan::nothing_in_it(self.key), say::plan::write_example(example));
            return None;
        }
        if values.len() > *count.end() {
            let (found, most) = (values.len(), count.end());
            let what = say::plan::list_too_long(self.key, found, most);
            self.wrong(what, say::plan::take_out(found - most));
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

    /// The entries of a table under keys of the coach's own choice, in the order of the text; `help` says
    /// how one is written.
    pub(super) fn entries<H: Into<String>>(
        self,
        help: impl FnOnce() -> H,
    ) -> Option<Vec<Entry<'r>>> {
        let DeValue::Table(table) = self.value() else {
            self.cant_be(help());
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
        let what = say::plan::bad_key(clip(self.key));
        self.field.problems.wrong(self.at, what, say::plan::write_key().to_owned());
        None
    }
}

/// How to write a number in a range; `unquoted` where it is no number yet.
fn one_in(range: &RangeInclusive<u32>, unquoted: bool) -> String {
    let (least, most) = (*range.start(), *range.end());
    match (most - least, unquoted) {
        (0, _) => say::plan::write_example(least),
        (1, false) => say::plan::write_either_number(least, most),
        (1, true) => say::plan::write_either_number_unquoted(least, most),
        (_, false) => say::plan::write_number(least, most),
        (_, true) => say::plan::write_number_unquoted(least, most),
    }
}
