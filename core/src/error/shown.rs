//! What others wrote, fit to be shown.

/// The most characters of a stranger's text that a sentence quotes.
const MOST: usize = 200;

/// A stranger's text on one line and with an end: it may be long, or made to move a terminal's cursor.
pub(crate) fn shown(text: &str) -> String {
    shown_to(text, MOST)
}

/// The same, with room for so many characters.
pub(crate) fn shown_to(text: &str, most: usize) -> String {
    text.chars().filter(|letter| !letter.is_control()).take(most).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_strangers_text_has_one_line_and_an_end() {
        assert_eq!(shown("a\u{1b}[2Jb\r\nc\u{7f}\u{9b}d"), "a[2Jbcd");
        assert_eq!(shown(&"ü".repeat(1_000)), "ü".repeat(200));
        assert_eq!(shown_to("leaf", 2), "le");
    }
}
