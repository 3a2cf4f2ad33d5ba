//! Lists to choose from, and the page of all keys.

use holdfast_core::care::ALWAYS;
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::style::Style;
use ratatui::text::Line;

use crate::full::pane::Pane;
use crate::full::theme::Theme;
use crate::session::full::form::Picker;

pub(super) fn picker(frame: &mut Frame, area: Rect, picker: &Picker, theme: Theme) {
    let mut pane = Pane::new(area.width);
    pane.text(theme.strong(), &picker.ask);
    pane.gap();
    // The choice at hand is always in sight.
    let room = usize::from(area.height).saturating_sub(4).max(1);
    let from = (picker.at + 1).saturating_sub(room);
    for (index, item) in picker.items.iter().enumerate().skip(from) {
        let style = if index == picker.at { theme.here_now() } else { Style::new() };
        pane.text(style, &picker.line(index));
        if !item.more.is_empty() {
            pane.headed(theme.warn(), "    suggested:", &item.more);
        }
    }
    pane.draw(frame, area);
}

const KEYS: [&str; 17] = [
    "Enter, Space  the one key: done as planned; starts, pauses and goes on with a hold's clock",
    "e or a digit  types it in one line: `60 x 7 r2` a set, `12 8` a window, `10.5 11` readings",
    "u             takes back what was logged last, and further each time",
    "Up, Down      another row: what is done is corrected there. Esc goes back to what is next",
    "o             options of this movement, with their reasons",
    "d             discomfort: where, how bad, and emergency signs. It stops progression",
    "c             clears a flag of this piece",
    "s             leaves the rest of this piece for later; at a reading only the reading",
    "f             finishes the session, with its rating",
    "b, p, n, x    the clock: begin, pause or go on, skip to the next, stop",
    "+, w          15 s more for the side held; start the windows at another station",
    "q, Ctrl-C     leaves the session open; everything logged is kept",
    "",
    "The line takes more: `option KEY`, `flag knee 4`, `skip`, `finish 7`, `held 120 95`.",
    "A window's seconds to spare are read off the running clock when it is logged.",
    "The clock goes on when this program is left, and is right when it comes back.",
    "",
];

pub(super) fn help(frame: &mut Frame, area: Rect, from: u16, theme: Theme) {
    let mut pane = Pane::new(area.width);
    for line in KEYS.iter().skip(usize::from(from).min(KEYS.len())) {
        if line.is_empty() {
            pane.line(Line::default());
        } else {
            pane.text(Style::new(), line);
        }
    }
    for line in ALWAYS {
        pane.text(theme.warn(), line);
    }
    pane.draw(frame, area);
}
