//! Open flags with what to do: what to do now, and what is an emergency, is always in sight.

use holdfast_core::session::{FlagView, NoticeKind};
use ratatui::text::Line;

use super::rank;
use crate::full::lines::{hanging, headed};
use crate::full::stack::Part;
use crate::full::theme::Theme;
use crate::say;
use crate::session::full::model::Model;

/// The flags of the piece at hand.
pub(super) fn parts(model: &Model, wide: u16, theme: Theme) -> Vec<Part<'static>> {
    let flags = model.piece().map_or(&[][..], |piece| &piece.flags);
    // What stands above already, or was said of another flag, is said once.
    let notices = model.screen.notices.iter().filter(|notice| notice.kind == NoticeKind::Care);
    let mut said: Vec<&str> = notices.map(|notice| notice.text.as_str()).collect();
    let mut parts = Vec::new();
    for flag in flags {
        let always = flag.advice.lines.len().min(flag.advice.always as usize);
        let (kept, more) = flag.advice.lines.split_at(always);
        let new = |lines: &[String]| -> Vec<Line<'static>> {
            let new = lines.iter().filter(|line| !said.contains(&line.as_str()));
            new.flat_map(|line| indented(wide, line)).collect()
        };
        let (kept, more) = (new(kept), new(more));
        said.extend(flag.advice.lines.iter().map(String::as_str));
        let lines = heading(flag, wide, theme).into_iter().chain(kept).collect();
        parts.push(Part::whole(rank::CARE, lines));
        if !more.is_empty() {
            parts.push(Part::shrinking(rank::MORE_CARE, wide, more));
        }
    }
    if !parts.is_empty() {
        parts.push(Part::gap());
    }
    parts
}

/// What is flagged.
pub(super) fn heading(flag: &FlagView, wide: u16, theme: Theme) -> Vec<Line<'static>> {
    let urgent = flag.advice.urgent;
    let word = if urgent { say::full::emergency_sign() } else { say::full::discomfort() };
    headed(wide, theme.care(), word, &flag.text)
}

pub(super) fn indented(wide: u16, text: &str) -> Vec<Line<'static>> {
    hanging(wide, Theme::usual(), &format!("  {text}"))
}
