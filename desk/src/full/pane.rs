//! Lines gathered for a part of the screen, wrapped to its width.

use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::style::Style;
use ratatui::text::{Line, Span};
use ratatui::widgets::{Clear, Paragraph};
use textwrap::core::display_width;

/// The part's lines so far.
pub(crate) struct Pane {
    width: usize,
    lines: Vec<Line<'static>>,
}

impl Pane {
    /// A part of so many columns.
    pub(crate) fn new(width: u16) -> Pane {
        Pane { width: usize::from(width.max(1)), lines: Vec::new() }
    }

    /// How many lines there are.
    pub(crate) fn height(&self) -> u16 {
        u16::try_from(self.lines.len()).unwrap_or(u16::MAX)
    }

    /// Adds a text, wrapped; the second line on is indented by two.
    pub(crate) fn text(&mut self, style: Style, text: &str) {
        for part in text.lines() {
            let options = textwrap::Options::new(self.width).subsequent_indent("  ");
            let wrapped = textwrap::wrap(part, options);
            self.lines
                .extend(wrapped.into_iter().map(|line| Line::styled(line.into_owned(), style)));
        }
    }

    /// Adds a word in a style and a text after it, wrapped.
    pub(crate) fn headed(&mut self, style: Style, word: &str, text: &str) {
        let first = self.lines.len();
        self.text(Style::new(), &format!("{word} {text}"));
        let Some(line) = self.lines.get_mut(first) else { return };
        let whole = line.to_string();
        let rest = whole.strip_prefix(word).map(str::to_owned);
        *line = match rest {
            Some(rest) => Line::from(vec![Span::styled(word.to_owned(), style), Span::raw(rest)]),
            None => Line::styled(whole, style),
        };
    }

    /// Adds a line as it is; what is too long is cut.
    pub(crate) fn line(&mut self, line: Line<'static>) {
        self.lines.push(line);
    }

    /// Adds an empty line, unless the part is empty.
    pub(crate) fn gap(&mut self) {
        if !self.lines.is_empty() {
            self.lines.push(Line::default());
        }
    }

    /// Draws it; where there is more than fits, the last line says so.
    pub(crate) fn draw(mut self, frame: &mut Frame, area: Rect) {
        let room = usize::from(area.height);
        if self.lines.len() > room {
            self.lines.truncate(room.saturating_sub(1));
            self.lines.push(Line::raw("(more than fits here)"));
        }
        frame.render_widget(Clear, area);
        frame.render_widget(Paragraph::new(self.lines), area);
    }
}

/// Rows of cells as lines, each column as wide as its widest cell. The last column takes what is
/// left.
pub(crate) fn columns(rows: &[Vec<String>]) -> Vec<String> {
    let count = rows.iter().map(Vec::len).max().unwrap_or(0);
    let widest = |column: usize| {
        rows.iter().filter_map(|row| row.get(column)).map(|cell| display_width(cell)).max()
    };
    let widths: Vec<usize> = (0..count).map(|column| widest(column).unwrap_or(0)).collect();
    let line = |row: &Vec<String>| {
        let mut text = String::new();
        for (cell, width) in row.iter().zip(&widths) {
            text += cell;
            let fill = width.saturating_sub(display_width(cell));
            // An empty column takes no room.
            text += &" ".repeat(if *width == 0 { 0 } else { fill + 2 });
        }
        text.trim_end().to_owned()
    };
    rows.iter().map(line).collect()
}

/// Keys and what they do, in as many rows as there are; what does not fit is left out from the end.
pub(crate) fn keys(hints: &[(String, String)], width: u16, rows: u16, key: Style) -> Pane {
    let mut pane = Pane::new(width);
    let mut spans: Vec<Span<'static>> = Vec::new();
    let mut used = 0;
    for (name, what) in hints {
        let wide = display_width(name) + display_width(what) + 5;
        if used + wide > usize::from(width) + 2 && used > 0 {
            pane.line(Line::from(std::mem::take(&mut spans)));
            used = 0;
        }
        if pane.height() == rows {
            return pane;
        }
        spans.push(Span::styled(format!(" {name} "), key));
        spans.push(Span::raw(format!(" {what}  ")));
        used += wide;
    }
    if !spans.is_empty() {
        pane.line(Line::from(spans));
    }
    pane
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_line_up_by_what_is_seen() {
        let row = |cells: [&str; 3]| cells.map(str::to_owned).to_vec();
        let lines = columns(&[row(["1", "Zoë", "x"]), row(["12", "", "漢"]), row(["3", "b", ""])]);
        assert_eq!(lines, ["1   Zoë  x", "12       漢", "3   b"]);
    }

    #[test]
    fn keys_that_do_not_fit_are_left_out_from_the_end() {
        let hints: Vec<_> = ["Enter", "q", "u"].map(|key| (key.into(), "does that".into())).into();
        assert_eq!(keys(&hints, 80, 2, Style::new()).height(), 1);
        let pane = keys(&hints, 34, 1, Style::new());
        assert_eq!(
            pane.lines.iter().map(Line::to_string).collect::<Vec<_>>(),
            [" Enter  does that   q  does that  "]
        );
    }
}
