//! Parts of a screen, one below the other, of which the less important give way where there is little
//! room: first they shrink to a line, then they go.

use ratatui::style::Style;
use ratatui::text::{Line, Span};
use textwrap::core::display_width;

use super::lines::{fit_in, hanging, shortened};
use crate::say;

/// A part's lines in at most so many rows; fewer where more would not help.
type Draw<'a> = Box<dyn Fn(u16) -> Vec<Line<'static>> + 'a>;

/// A part.
pub(crate) struct Part<'a> {
    rank: u8,
    least: u16,
    good: u16,
    most: u16,
    draw: Draw<'a>,
}

impl<'a> Part<'a> {
    /// A part that is drawn for the rows it gets: at least so many, wanted so many, and at most so
    /// many. The lowest rank is served first.
    pub(crate) fn drawn(
        rank: u8,
        [least, good, most]: [u16; 3],
        draw: impl Fn(u16) -> Vec<Line<'static>> + 'a,
    ) -> Part<'a> {
        Part { rank, least, good, most, draw: Box::new(draw) }
    }

    /// Lines that are never cut: all of them, or as many as there are rows.
    pub(crate) fn whole(rank: u8, lines: Vec<Line<'static>>) -> Part<'a> {
        let high = rows_of(&lines);
        Part::drawn(rank, [high; 3], move |rows| {
            lines.iter().take(usize::from(rows)).cloned().collect()
        })
    }

    /// A text, wrapped, that shrinks to its first line with a mark that there is more.
    pub(crate) fn text(rank: u8, wide: u16, style: Style, text: &str) -> Part<'a> {
        Part::shrinking(rank, wide, hanging(wide, style, text))
    }

    /// Lines of which the first stays longest, with a mark that there are more.
    pub(crate) fn shrinking(rank: u8, wide: u16, lines: Vec<Line<'static>>) -> Part<'a> {
        let high = rows_of(&lines);
        Part::drawn(rank, [high.min(1), high, high], move |rows| cut(&lines, wide, rows))
    }

    /// Lines around the chosen one, as many as there is room for; wanted so many.
    pub(crate) fn table(rank: u8, wide: u16, wanted: u16, table: Table) -> Part<'a> {
        let high = u16::try_from(table.lines.len()).unwrap_or(u16::MAX);
        Part::drawn(rank, [high.min(1), high.min(wanted), high], move |rows| {
            table.around(wide, rows)
        })
    }

    /// The same, and never more than so many rows.
    pub(crate) fn at_most(self, rows: u16) -> Part<'a> {
        let Part { rank, least, good, most, draw } = self;
        Part { rank, least: least.min(rows), good: good.min(rows), most: most.min(rows), draw }
    }

    /// The same with its lines put together with others of so many rows.
    pub(crate) fn over(
        self,
        rows: u16,
        together: impl Fn(Vec<Line<'static>>) -> Vec<Line<'static>> + 'a,
    ) -> Part<'a> {
        let Part { rank, least, good, most, draw } = self;
        let good = good.max(rows);
        let draw = Box::new(move |rows| {
            let mut lines = together(draw(rows));
            lines.truncate(usize::from(rows));
            lines
        });
        Part { rank, least, good, most, draw }
    }

    /// An empty row, where there is room.
    pub(crate) fn gap() -> Part<'a> {
        Part::drawn(u8::MAX, [0, 1, 1], |_| vec![Line::default()])
    }

    /// The rows that are left over.
    pub(crate) fn spring() -> Part<'a> {
        Part::drawn(u8::MAX, [0, 0, u16::MAX], |rows| vec![Line::default(); usize::from(rows)])
    }
}

fn rows_of(lines: &[Line<'static>]) -> u16 {
    u16::try_from(lines.len()).unwrap_or(u16::MAX)
}

/// The first lines, with a mark at the end of the last where more were left out.
fn cut(lines: &[Line<'static>], wide: u16, rows: u16) -> Vec<Line<'static>> {
    const MORE: &str = " (v)";
    let shown = usize::from(rows).min(lines.len());
    let mut kept: Vec<Line<'static>> = lines.iter().take(shown).cloned().collect();
    if shown < lines.len()
        && let Some(last) = kept.last_mut()
    {
        let style = last.spans.first().map_or(Style::new(), |span| span.style.patch(last.style));
        let room = wide.saturating_sub(MORE.len() as u16);
        let text = format!("{} ...", fit_in(&last.to_string(), room.saturating_sub(4)).trim_end());
        *last = Line::from(vec![Span::styled(text, style), Span::raw(MORE)]);
    }
    kept
}

/// Lines of which one is chosen.
#[derive(Clone)]
pub(crate) struct Table {
    pub(crate) lines: Vec<String>,
    pub(crate) chosen: usize,
    /// The style of the chosen line, of the others, and of what says that there are more.
    pub(crate) styles: [Style; 3],
}

impl Table {
    /// The chosen line and those around it. Where some are left out, the ends say so.
    fn around(&self, wide: u16, rows: u16) -> Vec<Line<'static>> {
        let (all, room) = (self.lines.len(), usize::from(rows));
        let from = self.chosen.saturating_sub(room / 2).min(all.saturating_sub(room));
        let [chosen, other, more] = self.styles;
        let line = |(index, line): (usize, &String)| {
            let here = index == self.chosen;
            let (mark, style) = if here { ('>', chosen) } else { (' ', other) };
            let text = format!("{mark} {line}");
            // In few rows it is plain that there are more.
            let end = if room <= FEW || here {
                String::new()
            } else if index == from && from > 0 {
                format!(" {}", say::full::more_above())
            } else if index + 1 == from + room && index + 1 < all {
                format!(" {}", say::full::more_below())
            } else {
                String::new()
            };
            let text = shortened(&text, wide.saturating_sub(display_width(&end) as u16));
            Line::from(vec![Span::styled(text, style), Span::styled(end, more)])
        };
        self.lines.iter().enumerate().skip(from).take(room).map(line).collect()
    }
}

/// Rows that show no more than what is around the chosen one.
const FEW: usize = 3;

/// Parts in the order in which they stand.
#[derive(Default)]
pub(crate) struct Stack<'a> {
    parts: Vec<Part<'a>>,
}

impl<'a> Stack<'a> {
    /// Adds a part below.
    pub(crate) fn push(&mut self, part: Part<'a>) {
        self.parts.push(part);
    }

    /// Adds parts below.
    pub(crate) fn extend(&mut self, parts: impl IntoIterator<Item = Part<'a>>) {
        self.parts.extend(parts);
    }

    /// The whole as a part of another: what is of a rank up to `rank` in it is what it needs.
    pub(crate) fn into_part(self, rank: u8) -> Part<'a> {
        let needed = self.parts.iter().filter(|part| part.rank <= rank);
        let least = needed.map(|part| part.least).fold(0, u16::saturating_add);
        let good = self.parts.iter().map(|part| part.good).fold(0, u16::saturating_add);
        Part::drawn(0, [least, good, u16::MAX], move |rows| self.lines(rows))
    }

    /// The lines in so many rows.
    pub(crate) fn lines(&self, rows: u16) -> Vec<Line<'static>> {
        let mut order: Vec<usize> = (0..self.parts.len()).collect();
        order.sort_by_key(|index| self.parts.get(*index).map(|part| part.rank));
        let mut heights = vec![0_u16; self.parts.len()];
        let mut left = rows;
        let passes: [fn(&Part) -> u16; 3] = [|part| part.least, |part| part.good, |part| part.most];
        for wanted in passes {
            for index in &order {
                let (Some(part), Some(high)) = (self.parts.get(*index), heights.get_mut(*index))
                else {
                    continue;
                };
                let may = wanted(part).min(high.saturating_add(left));
                if may > *high {
                    let used = rows_of(&(part.draw)(may)).clamp(*high, may);
                    left -= used - *high;
                    *high = used;
                }
            }
        }
        let drawn = self.parts.iter().zip(heights).filter(|(_, high)| *high > 0);
        drawn.flat_map(|(part, high)| (part.draw)(high)).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn numbered(rank: u8, count: usize) -> Part<'static> {
        let lines = (1..=count).map(|line| Line::raw(format!("{rank}.{line}"))).collect();
        Part::shrinking(rank, 20, lines)
    }

    fn drawn(rows: u16) -> Vec<String> {
        let mut stack = Stack::default();
        stack.extend([numbered(3, 2), Part::whole(0, vec![Line::raw("key"); 2]), numbered(1, 3)]);
        stack.push(Part::spring());
        stack.lines(rows).iter().map(|line| line.to_string()).collect()
    }

    #[test]
    fn the_less_important_shrinks_to_a_line_and_then_goes() {
        assert_eq!(drawn(9), ["3.1", "3.2", "key", "key", "1.1", "1.2", "1.3", "", ""]);
        assert_eq!(drawn(6), ["3.1 ... (v)", "key", "key", "1.1", "1.2", "1.3"]);
        assert_eq!(drawn(4), ["3.1 ... (v)", "key", "key", "1.1 ... (v)"]);
        assert_eq!(drawn(3), ["key", "key", "1.1 ... (v)"]);
        assert_eq!(drawn(2), ["key", "key"]);
        assert_eq!(drawn(1), ["key"]);
        assert!(drawn(0).is_empty());
    }

    #[test]
    fn the_chosen_line_is_always_in_sight() {
        for chosen in 0..9 {
            let lines = (0..9).map(|line| line.to_string()).collect();
            let table = Table { lines, chosen, styles: [Style::new(); 3] };
            for rows in 1..12 {
                let drawn: Vec<String> =
                    table.around(30, rows).iter().map(|line| line.to_string()).collect();
                assert!(drawn.contains(&format!("> {chosen}")), "{drawn:?}");
                assert!(drawn.len() <= usize::from(rows));
                let says = drawn.iter().any(|line| line.contains("more"));
                assert_eq!(says, (4..9).contains(&rows), "{rows}: {drawn:?}");
            }
        }
    }
}
