//! What is done to the bar, the largest on the screen of a rest, with the clock under it.

use holdfast_core::session::{ChangeView, ClockView};
use ratatui::text::{Line, Span};

use super::rank;
use crate::full::clock::Face;
use crate::full::digits;
use crate::full::lines::{beside, hanging};
use crate::full::stack::Part;
use crate::full::theme::Theme;

/// What comes off or goes on, and the plates of one side.
struct Step {
    verb: &'static str,
    plates: String,
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
    let steps = steps(change);
    let draw = move |rows: u16| {
        let (scale, mut lines) = bar(&steps, wide, rows, theme);
        let left = rows.saturating_sub(lines.len() as u16);
        // The clock's digits are never larger than what is to be done.
        lines.extend(face.lines(wide, left, scale.unwrap_or(rows), theme));
        lines
    };
    Part::drawn(rank::CLOCK, [2, 11, u16::MAX], draw)
}

fn steps(change: &ChangeView) -> Vec<Step> {
    let step = |verb, text: &Option<String>| text.clone().map(|plates| Step { verb, plates });
    let off = step("Take off", &change.off_text);
    off.into_iter().chain(step("Put on", &change.on_text)).collect()
}

/// What is done to the bar, in letters as big as leave room for the clock; and how big they are.
fn bar(steps: &[Step], wide: u16, rows: u16, theme: Theme) -> (Option<u16>, Vec<Line<'static>>) {
    if steps.is_empty() {
        return (None, vec![Line::styled("Bar is ready.", theme.strong()).centered()]);
    }
    // The clock wants its word, its digits and a line about it; in a low window less.
    for for_clock in (1..=5).rev() {
        let room = rows.saturating_sub(for_clock);
        for scale in (1..=room * 2 / 5).rev() {
            let lines = big(steps, wide, scale, theme);
            if let Some(lines) = lines.filter(|lines| lines.len() <= usize::from(room)) {
                return (Some(scale), lines);
            }
        }
    }
    (None, in_words(steps, wide, theme))
}

/// `Each side: take off 2.5 kg, put on 20 + 5 kg`, in bold.
fn in_words(steps: &[Step], wide: u16, theme: Theme) -> Vec<Line<'static>> {
    let each: Vec<String> =
        steps.iter().map(|step| format!("{} {}", step.verb.to_uppercase(), step.plates)).collect();
    hanging(wide, theme.strong(), &format!("{}, each side", each.join(", ")))
}

/// The steps at a scale, beside each other where there is room; none where one does not fit.
fn big(steps: &[Step], wide: u16, scale: u16, theme: Theme) -> Option<Vec<Line<'static>>> {
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
fn block(step: &Step, wide: u16, scale: u16, theme: Theme) -> Option<(u16, Vec<Line<'static>>)> {
    let tight = step.plates.replace(" + ", "+");
    let fits = |text: &&String| digits::width(text, scale).is_some_and(|width| width <= wide);
    let text = [&step.plates, &tight].into_iter().find(fits)?;
    let verb = format!("{}, each side", step.verb.to_uppercase());
    let width = digits::width(text, scale)?.max(verb.len() as u16);
    if width > wide {
        return None;
    }
    let mut lines = vec![Line::from(Span::styled(verb, theme.here_now()))];
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
