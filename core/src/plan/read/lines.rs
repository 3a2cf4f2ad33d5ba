//! Where a byte of the text is, the way an editor counts.

use std::ops::Range;

/// The byte order mark some editors put first and none shows.
const MARK: &[u8] = "\u{feff}".as_bytes();

/// The lines of a text.
pub(super) struct Lines<'t> {
    bytes: &'t [u8],
    /// Where each line starts, in bytes.
    starts: Vec<usize>,
}

impl<'t> Lines<'t> {
    /// Finds the lines.
    pub(super) fn new(bytes: &'t [u8]) -> Lines<'t> {
        let breaks = bytes.iter().enumerate().filter(|(_, byte)| **byte == b'\n');
        let starts = std::iter::once(0).chain(breaks.map(|(at, _)| at + 1)).collect();
        Lines { bytes, starts }
    }

    /// The line and the column of a byte, in characters, both counted from 1.
    ///
    /// What is wrong at the very end is shown after the last thing written, not in blank lines
    /// below it.
    pub(super) fn place(&self, at: usize) -> (u32, u32) {
        let at = at.min(self.bytes.trim_ascii_end().len());
        let index = self.index(at);
        let mut start = self.start(index);
        if index == 0 && self.bytes.starts_with(MARK) {
            start = MARK.len().min(at);
        }
        // A byte that continues a character starts with the bits 10.
        let before = self.bytes.get(start..at).unwrap_or_default();
        let column = before.iter().filter(|byte| **byte & 0xC0 != 0x80).count();
        (count(index + 1), count(column + 1))
    }

    /// The bytes of the line `at` is in, with its line break.
    pub(super) fn around(&self, at: usize) -> Range<usize> {
        let index = self.index(at);
        self.start(index)..self.start(index + 1)
    }

    /// Every line from the first, with its line break.
    pub(super) fn each(&self) -> impl DoubleEndedIterator<Item = Range<usize>> + '_ {
        (0..self.starts.len()).map(|index| self.start(index)..self.start(index + 1))
    }

    fn index(&self, at: usize) -> usize {
        self.starts.partition_point(|start| *start <= at).saturating_sub(1)
    }

    fn start(&self, index: usize) -> usize {
        self.starts.get(index).copied().unwrap_or(self.bytes.len())
    }
}

fn count(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_are_characters_and_the_mark_is_none() {
        let text = "\u{feff}ab\nü = 1\n\n";
        let lines = Lines::new(text.as_bytes());
        assert_eq!(lines.place(0), (1, 1));
        assert_eq!(lines.place(4), (1, 2));
        assert_eq!(lines.place(text.find('=').unwrap()), (2, 3));
        assert_eq!(lines.place(text.len()), (2, 6));
        assert_eq!(&text[lines.around(6)], "ü = 1\n");
        assert_eq!(Lines::new(b"").place(7), (1, 1));
    }
}
