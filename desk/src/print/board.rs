//! The board on a terminal.

use holdfast_core::coach::{AttentionKind, BoardRow, BoardScreen};
use owo_colors::OwoColorize;

/// The whole board.
pub(crate) fn board(board: &BoardScreen) -> String {
    let mut text = format!("{}  {}\n", board.heading.bold(), board.date.format("%a %-d %b %Y"));
    for arrival in &board.arrivals {
        text += &format!("{} {arrival}\n", "files:".yellow().bold());
    }
    if board.rows.is_empty() {
        text += "Nobody's log has arrived yet: publish a plan, let the others exchange, exchange again.\n";
    }
    for row in &board.rows {
        text += &member(row);
    }
    text
}

fn member(row: &BoardRow) -> String {
    let last = row.last.map_or("never".into(), |last| last.format("%a %-d %b").to_string());
    let sessions = match row.trained {
        1 => "1 session".to_owned(),
        more => format!("{more} sessions"),
    };
    let mut text = format!(
        "\n{}  {sessions}, {} planned, last {last}, session load of 7 days {}\n",
        row.name.bold(),
        row.planned,
        row.week_load
    );
    for attention in &row.attention {
        let word = &attention.word;
        let line = match attention.kind {
            AttentionKind::Pain => {
                format!("  {:<9}{}\n", word.to_uppercase().red().bold(), attention.text)
            }
            AttentionKind::Progress => format!("  {:<9}{}\n", word.green(), attention.text),
            _ => format!("  {:<9}{}\n", word.yellow(), attention.text),
        };
        text += &line;
    }
    if !row.proposals.is_empty() {
        text += &format!("  {}\n", "next loads".dimmed());
    }
    for proposal in &row.proposals {
        text += &super::proposal(proposal, 4);
    }
    text
}
