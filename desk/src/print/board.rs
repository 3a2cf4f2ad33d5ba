//! The board on a terminal.

use chrono::NaiveDate;
use holdfast_core::coach::{Attention, AttentionKind, BoardRow, BoardScreen};
use owo_colors::OwoColorize;
use textwrap::core::display_width;

use super::words;
use crate::say;

/// The whole board.
pub(crate) fn board(board: &BoardScreen) -> String {
    let mut text = format!("{}: {}\n", words::day_of_year(board.date), board.heading.bold());
    for arrival in &board.arrivals {
        text += &format!("{} {arrival}\n", say::board::files().yellow().bold());
    }
    if board.rows.is_empty() {
        text += &format!("{}\n", say::board::nobody());
    }
    for row in &board.rows {
        text += &member(row, board.date);
    }
    text
}

fn member(row: &BoardRow, date: NaiveDate) -> String {
    let mut text = format!("\n{}  {}\n", row.name.bold(), summary(row, date));
    let width = column(&row.attention);
    for attention in &row.attention {
        let word = &attention.word;
        let line = match attention.kind {
            AttentionKind::Pain => {
                format!("  {:<width$}{}\n", word.to_uppercase().red().bold(), attention.text)
            }
            AttentionKind::Progress => format!("  {:<width$}{}\n", word.green(), attention.text),
            _ => format!("  {:<width$}{}\n", word.yellow(), attention.text),
        };
        text += &line;
    }
    if !row.proposals.is_empty() {
        text += &format!("  {}\n", say::board::next_loads().dimmed());
    }
    for proposal in &row.proposals {
        text += &super::proposal(proposal, 4);
    }
    text
}

/// How much was trained, when last, and how hard the week was.
fn summary(row: &BoardRow, date: NaiveDate) -> String {
    let sessions = if row.trained > row.planned {
        say::board::trained_more(row.trained, row.planned)
    } else {
        say::board::trained(row.planned, row.trained)
    };
    let last = match row.last {
        Some(last) => say::board::last_trained(words::day(last, date)),
        None => say::board::never_trained().to_owned(),
    };
    say::board::row(sessions, last, say::board::week_load(row.week_load))
}

/// How wide the words before what is to look at are, with a space behind the longest.
pub(super) fn column(attention: &[Attention]) -> usize {
    let widths = attention.iter().map(|attention| display_width(&attention.word));
    widths.max().unwrap_or(0).max(8) + 1
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};

    use crate::say;

    #[test]
    fn sessions_are_counted_in_both_languages() {
        let all = || {
            [(0, 0), (1, 1), (4, 6)].map(|(trained, planned)| say::board::trained(planned, trained))
        };
        assert_eq!(all(), ["no session planned yet", "1 of 1 session", "4 of 6 sessions"]);
        let german = speaking(Language::De, all);
        assert_eq!(german, ["noch keine Einheit geplant", "1 von 1 Einheit", "4 von 6 Einheiten"]);
        let more = || say::board::trained_more(7, 6);
        assert_eq!(more(), "7 sessions, 6 planned");
        assert_eq!(speaking(Language::De, more), "7 Einheiten, 6 geplant");
    }
}
