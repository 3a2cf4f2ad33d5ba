//! What is done to the bar, the largest on the screen of a rest, with the clock under it.

use holdfast_core::session::{ChangeView, ClockView};
use ratatui::text::{Line, Span};
use textwrap::core::display_width;

use super::rank;
use crate::full::clock::Face;
use crate::full::digits;
use crate::full::lines::{beside, hanging};
use crate::full::stack::Part;
use crate::full::theme::Theme;
use crate::say;

/// What is done at each side, and the plates of one side.
struct Step<'a> {
    verb: &'static str,
    plates: &'a str,
}

/// The rest before a set, with what is done to the bar meanwhile.
pub(super) fn rest(
    clock: &ClockView,
    change: Option<&ChangeView>,
    wide: u16,
    theme: Theme,
) -> Part<'static> {
    let face = Face::of(clock);
    let Some(change) = change else {
        let draw = move |rows| face.lines(wide, rows, rows, theme);
        return Part::drawn(rank::CLOCK, [1, 7, u16::MAX], draw);
    };
    let change = change.clone();
    let draw = move |rows: u16| {
        let (scale, mut lines) = bar(&change, wide, rows, theme);
        let left = rows.saturating_sub(lines.len() as u16);
        // The clock's digits are never larger than what is to be done.
        lines.extend(face.lines(wide, left, scale.unwrap_or(rows), theme));
        lines
    };
    Part::drawn(rank::CLOCK, [2, 11, u16::MAX], draw)
}

fn steps(change: &ChangeView) -> Vec<Step<'_>> {
    let off = change.off_text.as_deref().map(|plates| (say::full::take_off(), plates));
    let on = change.on_text.as_deref().map(|plates| (say::full::put_on(), plates));
    off.into_iter().chain(on).map(|(verb, plates)| Step { verb, plates }).collect()
}

/// What is done to the bar, in letters as big as leave room for the clock; and how big they are.
fn bar(
    change: &ChangeView,
    wide: u16,
    rows: u16,
    theme: Theme,
) -> (Option<u16>, Vec<Line<'static>>) {
    let words = match (&change.off_text, &change.on_text) {
        (None, None) => {
            return (None, vec![Line::styled(say::full::bar_ready(), theme.strong()).centered()]);
        }
        (Some(off), None) => say::full::take_off_plates(off),
        (None, Some(on)) => say::full::put_on_plates(on),
        (Some(off), Some(on)) => say::full::change_plates(off, on),
    };
    let steps = steps(change);
    // The clock wants its word, its digits and a line about it; in a low window less.
    for for_clock in (1..=5).rev() {
        let room = rows.saturating_sub(for_clock);
        for scale in (1..=room * 2 / 5).rev() {
            let lines = big(&steps, wide, scale, theme);
            if let Some(lines) = lines.filter(|lines| lines.len() <= usize::from(room)) {
                return (Some(scale), lines);
            }
        }
    }
    (None, hanging(wide, theme.strong(), &words))
}

/// The steps at a scale, beside each other where there is room; none where one does not fit.
fn big(steps: &[Step<'_>], wide: u16, scale: u16, theme: Theme) -> Option<Vec<Line<'static>>> {
    let mut blocks = steps.iter().map(|step| block(step, wide, scale, theme));
    let first = blocks.next()??;
    let Some(second) = blocks.next() else { return Some(centred(first, wide)) };
    let second = second?;
    let column = first.0 + 6;
    if column + second.0 <= wide {
        let both = (column + second.0, beside(first.1, column, second.1));
        return Some(centred(both, wide));
    }
    let both = centred(first, wide).into_iter().chain(centred(second, wide));
    Some(both.collect())
}

/// A step's lines, and how wide they are. Blanks around the plus are left out where it does not fit
/// with them.
fn block(
    step: &Step<'_>,
    wide: u16,
    scale: u16,
    theme: Theme,
) -> Option<(u16, Vec<Line<'static>>)> {
    let tight = step.plates.replace(" + ", "+");
    let fits = |text: &&str| digits::width(text, scale).is_some_and(|width| width <= wide);
    let text = [step.plates, &tight].into_iter().find(fits)?;
    let width = digits::width(text, scale)?.max(display_width(step.verb) as u16);
    if width > wide {
        return None;
    }
    let mut lines = vec![Line::from(Span::styled(step.verb, theme.here_now()))];
    lines.extend(
        digits::rows(text, scale)
            .into_iter()
            .map(|row| Line::from(Span::styled(row, theme.strong()))),
    );
    Some((width, lines))
}

fn centred((block, lines): (u16, Vec<Line<'static>>), wide: u16) -> Vec<Line<'static>> {
    let margin = wide.saturating_sub(block) / 2;
    beside(vec![Line::default(); lines.len()], margin, lines)
}
