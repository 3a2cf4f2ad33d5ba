//! The keys of one table: which are asked for, which are missing, which nobody knows.

use toml::de::DeTable;

use super::field::Field;
use super::part::Part;
use super::problems::Problems;
use super::words::{Mark, both, clip, nearest, with_guess};
use crate::say;

/// A table that is being read. It remembers what it was asked for, so that [`Fields::finish`] can
/// name every other key.
pub(super) struct Fields<'r> {
    /// What the table is.
    part: Part,
    at: usize,
    table: &'r DeTable<'r>,
    problems: &'r Problems<'r>,
    asked: Vec<&'static str>,
    /// Keys that are needed and not there, with what to write.
    missing: Vec<(&'static str, &'static str)>,
}

impl<'r> Fields<'r> {
    /// The keys of a value that is a table; `help` says how one is written.
    pub(super) fn of<H: Into<String>>(
        field: Field<'r>,
        part: Part,
        help: impl FnOnce() -> H,
    ) -> Option<Fields<'r>> {
        let Some((at, table)) = field.as_table() else {
            field.cant_be(help());
            return None;
        };
        Some(Fields::new(part, at, table, field.problems()))
    }

    /// The keys of `table`, which starts at byte `at`.
    fn new(
        part: Part,
        at: usize,
        table: &'r DeTable<'r>,
        problems: &'r Problems<'r>,
    ) -> Fields<'r> {
        Fields { part, at, table, problems, asked: Vec::new(), missing: Vec::new() }
    }

    /// Says more exactly what the table is, once its kind is known.
    pub(super) fn rename(&mut self, part: Part) {
        self.part = part;
    }

    /// The value of a key that may be left out.
    pub(super) fn optional(&mut self, key: &'static str) -> Option<Field<'r>> {
        self.asked.push(key);
        let value = self.table.get(key)?;
        Some(Field::new(key, value, self.problems))
    }

    /// The value of a key that must be there; `example` is a line that writes it.
    pub(super) fn required(
        &mut self,
        key: &'static str,
        example: &'static str,
    ) -> Option<Field<'r>> {
        let field = self.optional(key);
        if field.is_none() {
            self.missing.push((key, example));
        }
        field
    }

    /// Reports the keys nobody asked for and the keys that are missing.
    ///
    /// Gives back the keys that were most likely meant by a misspelt one: they are there after
    /// all, so nothing should be said about their absence.
    pub(super) fn finish(self) -> Vec<&'static str> {
        let mut meant = Vec::new();
        for key in self.table.keys() {
            let written: &str = key.get_ref();
            if self.asked.contains(&written) {
                continue;
            }
            let what = self.part.has_no(&clip(written));
            let possible = say::plan::possible_keys(both(&self.asked, Mark::Key));
            let help = with_guess(written, &self.asked, Mark::Key, possible);
            self.problems.wrong(key.span().start, what, help);
            meant.extend(nearest(written, &self.asked));
        }
        self.report_missing(&meant);
        meant
    }

    /// Reports only the keys that are missing: of a table whose kind is unknown, nobody can say
    /// which other keys are right.
    pub(super) fn abandon(self) {
        self.report_missing(&[]);
    }

    fn report_missing(&self, meant: &[&str]) {
        for (key, example) in self.missing.iter().filter(|(key, _)| !meant.contains(key)) {
            let help = say::plan::add_example(example);
            self.problems.absent(self.at, self.part.needs(key), help);
        }
    }
}

/// The keys of the whole plan.
pub(super) fn whole_plan<'r>(tree: &'r DeTable<'r>, problems: &'r Problems<'r>) -> Fields<'r> {
    Fields::new(Part::Plan, 0, tree, problems)
}
