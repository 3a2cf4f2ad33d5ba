//! The problems found so far, and what becomes of them.

use std::cell::RefCell;

use super::lines::Lines;
use crate::plan::Problem;
use crate::say;

/// Nobody fixes more than this at a time; the last one then says how many more there are.
const MAX_PROBLEMS: usize = 50;

/// Collects problems from every part of the reader.
pub(super) struct Problems<'t> {
    lines: Lines<'t>,
    found: RefCell<Vec<Problem>>,
    /// Lines were left out to read the rest, so what is absent may have been in them.
    mended: bool,
}

impl<'t> Problems<'t> {
    /// No problems yet in `bytes`.
    pub(super) fn new(bytes: &'t [u8]) -> Problems<'t> {
        Problems { lines: Lines::new(bytes), found: RefCell::default(), mended: false }
    }

    /// Something written at byte `at` is wrong.
    pub(super) fn wrong(&self, at: usize, what: String, help: String) {
        let (line, column) = self.lines.place(at);
        self.found.borrow_mut().push(Problem { line, column, what, help });
    }

    /// Something that byte `at` needs is not written anywhere.
    pub(super) fn absent(&self, at: usize, what: String, help: String) {
        if !self.mended {
            self.wrong(at, what, help);
        }
    }

    /// From now on nothing is held to be absent: lines that can't be read were left out.
    pub(super) fn after_mending(&mut self) {
        self.mended = true;
    }

    /// True when there is a problem.
    pub(super) fn any(&self) -> bool {
        !self.found.borrow().is_empty()
    }

    /// The line of a byte, counted from 1, for a message that points to another place.
    pub(super) fn line(&self, at: usize) -> u32 {
        self.lines.place(at).0
    }

    /// Every problem, in the order of the text.
    pub(super) fn all(self) -> Vec<Problem> {
        let mut found = self.found.into_inner();
        found.sort();
        found.dedup();
        found
    }

    /// What was read when nothing is wrong with it, otherwise the problems in the order of the text.
    pub(super) fn or<T>(self, read: Option<T>) -> Result<T, Vec<Problem>> {
        let mut found = self.all();
        if let (Some(read), true) = (read, found.is_empty()) {
            return Ok(read);
        }
        let more = found.len().saturating_sub(MAX_PROBLEMS - 1);
        if more > 1 {
            found.truncate(MAX_PROBLEMS);
            if let Some(last) = found.last_mut() {
                last.what = say::plan::more_problems(more);
                last.help = say::plan::fix_these_first().to_owned();
            }
        }
        Err(found)
    }
}
