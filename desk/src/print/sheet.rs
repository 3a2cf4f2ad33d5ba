//! A session screen as a sheet.

use holdfast_core::session::{FlagView, Notice, NoticeKind, SessionScreen, SessionState};
use owo_colors::OwoColorize;

use super::{flags, pieces, written};
use crate::say;

/// The whole screen.
pub(crate) fn sheet(screen: &SessionScreen) -> String {
    let mut text = format!("{}\n", screen.heading.bold());
    for notice in &screen.notices {
        text += &notice_line(notice);
    }
    if screen.state == SessionState::Finished {
        text += &format!("{}\n", say::sheet::done_for_today());
    }
    text += &flags(&elsewhere(screen));
    text += &written(&screen.notes);
    text += &pieces(screen);
    if screen.pieces.is_empty() && !screen.days.is_empty() {
        let days = screen.days.join(say::sheet::between_days());
        text += &format!("{}\n", say::sheet::days(days));
    }
    if let Some(waiting) = &screen.unpublished_text {
        text += &format!("{}\n", waiting.dimmed());
    }
    text
}

/// Open flags on nothing that the day asks for.
fn elsewhere(screen: &SessionScreen) -> Vec<FlagView> {
    let in_a_piece = |flag: &FlagView| {
        let mut shown = screen.pieces.iter().flat_map(|piece| &piece.flags);
        shown.any(|other| other.flag == flag.flag)
    };
    screen.flags.iter().filter(|flag| !in_a_piece(flag)).cloned().collect()
}

pub(crate) fn notice_line(notice: &Notice) -> String {
    match notice.kind {
        NoticeKind::Care => format!("{} {}\n", say::sheet::care().red().bold(), notice.text),
        NoticeKind::Warning => {
            format!("{} {}\n", say::sheet::note().yellow().bold(), notice.text)
        }
        NoticeKind::Info => format!("{}\n", notice.text),
    }
}
