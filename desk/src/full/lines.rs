//! Text as lines of so many columns.

use ratatui::style::Style;
use ratatui::text::{Line, Span};
use textwrap::core::display_width;

use crate::print::units::{NO_BREAK, together};

/// A text wrapped; words longer than a line are broken.
pub(crate) fn fill(text: &str, wide: u16) -> Vec<String> {
    let lines = text.lines().flat_map(|part| wrapped(part, wide, ""));
    lines.filter(|line| !line.is_empty()).collect()
}

/// A line wrapped, never between a number and its unit.
fn wrapped(line: &str, wide: u16, indent: &str) -> Vec<String> {
    let options = textwrap::Options::new(usize::from(wide.max(1))).subsequent_indent(indent);
    let line = together(line);
    let lines = textwrap::wrap(&line, options).into_iter();
    lines.map(|line| line.replace(NO_BREAK, " ")).collect()
}

/// A text in a style, wrapped; the second line on is indented by two.
pub(crate) fn hanging(wide: u16, style: Style, text: &str) -> Vec<Line<'static>> {
    let mut lines = Vec::new();
    for part in text.lines() {
        let wrapped = wrapped(part, wide, "  ").into_iter();
        lines.extend(wrapped.map(|line| Line::styled(line, style)));
    }
    lines
}

/// A word in a style and a text after it, wrapped.
pub(crate) fn headed(wide: u16, style: Style, word: &str, text: &str) -> Vec<Line<'static>> {
    let mut lines = hanging(wide, Style::new(), &format!("{word} {text}"));
    if let Some(line) = lines.first_mut() {
        let whole = line.to_string();
        *line = match whole.strip_prefix(word) {
            Some(rest) => {
                Line::from(vec![Span::styled(word.to_owned(), style), Span::raw(rest.to_owned())])
            }
            None => Line::styled(whole, style),
        };
    }
    lines
}

/// As much of a text as fits in so many columns.
pub(crate) fn fit_in(text: &str, wide: u16) -> String {
    let mut kept = String::new();
    for letter in text.chars() {
        kept.push(letter);
        if display_width(&kept) > usize::from(wide) {
            kept.pop();
            break;
        }
    }
    kept
}

/// A text in as many columns as there are, with a mark where it is cut.
pub(crate) fn shortened(text: &str, wide: u16) -> String {
    if display_width(text) <= usize::from(wide) {
        return text.to_owned();
    }
    let kept = fit_in(text, wide.saturating_sub(1));
    kept.trim_end().to_owned() + if wide > 0 { "~" } else { "" }
}

/// Lines with others to the right of them, from a column on.
pub(crate) fn beside(
    left: Vec<Line<'static>>,
    column: u16,
    right: Vec<Line<'static>>,
) -> Vec<Line<'static>> {
    let high = left.len().max(right.len());
    let (mut left, mut right) = (left.into_iter(), right.into_iter());
    let line = |_| {
        let mut line = left.next().unwrap_or_default();
        let fill = usize::from(column).saturating_sub(line.width());
        // A line's own style is its spans' style, and no more than that.
        let style = line.style;
        for span in &mut line.spans {
            span.style = style.patch(span.style);
        }
        line.style = Style::new();
        line.spans.push(Span::raw(" ".repeat(fill)));
        if let Some(right) = right.next() {
            let style = right.style;
            let spans = right.spans.into_iter();
            line.spans.extend(spans.map(|span| Span { style: style.patch(span.style), ..span }));
        }
        line
    };
    (0..high).map(line).collect()
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

/// Keys and what they do, in rows as long as there is room.
pub(crate) fn keys(hints: &[(String, String)], wide: u16, key: Style) -> Vec<Line<'static>> {
    let mut lines = Vec::new();
    let mut spans: Vec<Span<'static>> = Vec::new();
    let mut used = 0;
    for (name, what) in hints {
        let columns = display_width(name) + display_width(what) + 5;
        if used + columns > usize::from(wide) + 2 && used > 0 {
            lines.push(Line::from(std::mem::take(&mut spans)));
            used = 0;
        }
        spans.push(Span::styled(format!(" {name} "), key));
        spans.push(Span::raw(format!(" {what}  ")));
        used += columns;
    }
    if !spans.is_empty() {
        lines.push(Line::from(spans));
    }
    lines
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
    fn keys_stand_in_rows() {
        let hints: Vec<_> = ["Enter", "q", "u"].map(|key| (key.into(), "does that".into())).into();
        assert_eq!(keys(&hints, 80, Style::new()).len(), 1);
        let text = |line: &Line| line.to_string();
        assert_eq!(
            keys(&hints, 34, Style::new()).iter().map(text).collect::<Vec<_>>(),
            [" Enter  does that   q  does that  ", " u  does that  "]
        );
    }

    #[test]
    fn what_is_cut_says_so() {
        assert_eq!(shortened("Zoë 漢字", 8), "Zoë 漢字");
        assert_eq!(shortened("Zoë 漢字", 7), "Zoë 漢~");
        assert_eq!(shortened("Zoë 漢字", 6), "Zoë~");
        assert_eq!(shortened("Zoë", 0), "");
    }

    #[test]
    fn two_columns_stand_beside_each_other() {
        let lines =
            |texts: &[&str]| texts.iter().map(|text| Line::raw((*text).to_owned())).collect();
        let both = beside(lines(&["a", "漢"]), 4, lines(&["x", "y", "z"]));
        let text: Vec<String> = both.iter().map(|line| line.to_string()).collect();
        assert_eq!(text, ["a   x", "漢  y", "    z"]);
    }
}
