//! A clock as it is drawn: what to do now in a word, the time left in big digits, what comes next.

use holdfast_core::clock::{During, HoldPhase, HoldState, IntervalPhase, IntervalState};
use holdfast_core::companion::RestView;
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::text::Line;
use ratatui::widgets::{Clear, Paragraph};

use super::theme::Theme;
use super::{cues, digits};
use crate::print;

/// What a clock shows.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Face {
    /// What to do now, in capitals.
    pub(crate) now: String,
    /// More about it.
    pub(crate) about: String,
    /// The time in digits; empty where there is none.
    pub(crate) time: String,
    /// How much of this stretch is over: the part and the whole.
    pub(crate) over: Option<(i64, i64)>,
    /// The next cue.
    pub(crate) next: String,
}

impl Face {
    /// A hold's. `pushes` says whether contractions are part of it.
    pub(crate) fn of_hold(state: &HoldState, pushes: bool) -> Face {
        let sides = state.held_ms.len();
        let of =
            |side: u32| if sides > 1 { format!("side {side} of {sides}") } else { String::new() };
        // With what extending added.
        let length = |side: u32| state.length_ms.get((side as usize).checked_sub(1)?).copied();
        let face = |now: &str, about: String, left_ms: i64, whole: Option<i64>| Face {
            now: now.into(),
            about,
            time: digits::left(left_ms),
            over: whole.map(|whole| (whole - left_ms, whole)),
            next: cues::next_line(&state.cues),
        };
        match &state.phase {
            HoldPhase::NotBegun => Face::default(),
            HoldPhase::Ready { left_ms } => face("GET READY", of(1), *left_ms, None),
            HoldPhase::Holding { side, left_ms, push } => {
                let now = match (pushes, *push) {
                    (false, _) => "HOLD",
                    (true, true) => "PUSH",
                    (true, false) => "LET GO, SINK IN",
                };
                face(now, of(*side), *left_ms, length(*side))
            }
            HoldPhase::Switching { to_side, left_ms } => {
                face("SWITCH SIDES", format!("to side {to_side} of {sides}"), *left_ms, None)
            }
            HoldPhase::Paused { during, side, left_ms } => {
                let whole = length(*side).filter(|_| *during == During::Work);
                let about = match during {
                    During::Switch => format!("in the switch to side {side} of {sides}"),
                    During::Ready | During::Work => of(*side),
                };
                face("PAUSED", about, *left_ms, whole)
            }
            HoldPhase::Done { ran_out, ago_ms } => ended(*ran_out, *ago_ms),
        }
    }

    /// An interval's. `about` says what a window asks for.
    pub(crate) fn of_interval(
        state: &IntervalState,
        window_ms: i64,
        windows: usize,
        about: impl Fn(u32) -> String,
    ) -> Face {
        let face = |now: String, about: String, left_ms: i64, whole: Option<i64>| Face {
            now,
            about,
            time: digits::left(left_ms),
            over: whole.map(|whole| (whole - left_ms, whole)),
            next: cues::next_line(&state.cues),
        };
        match &state.phase {
            IntervalPhase::NotBegun => Face::default(),
            IntervalPhase::Ready { left_ms } => {
                face("GET READY".into(), format!("first: {}", about(1)), *left_ms, None)
            }
            IntervalPhase::Window { window, left_ms } => {
                let now = format!("WINDOW {window} OF {windows}");
                face(now, about(*window), *left_ms, Some(window_ms))
            }
            IntervalPhase::Paused { during, window, left_ms } => {
                let whole = (*during == During::Work).then_some(window_ms);
                face(format!("PAUSED IN WINDOW {window}"), about(*window), *left_ms, whole)
            }
            IntervalPhase::Done { ran_out, ago_ms } => ended(*ran_out, *ago_ms),
        }
    }

    /// A rest's: down to its end, then up from there.
    pub(crate) fn of_rest(rest: &RestView) -> Face {
        let over = rest.over_ms.filter(|over| *over > 0);
        Face {
            now: if over.is_some() { "REST IS OVER" } else { "REST" }.into(),
            about: rest.words.clone(),
            time: match (over, rest.left_ms) {
                // Whole seconds that are over.
                (Some(over), _) => format!("+{}", digits::left(over / 1000 * 1000)),
                (None, Some(left)) => digits::left(left),
                (None, None) => String::new(),
            },
            over: None,
            next: String::new(),
        }
    }

    /// Rows it wants at least: without digits bigger than the text.
    pub(crate) const LEAST: u16 = 5;

    /// Draws it as big as the area allows.
    pub(crate) fn draw(&self, frame: &mut Frame, area: Rect, theme: Theme) {
        frame.render_widget(Clear, area);
        if area.height == 0 {
            return;
        }
        let mut lines: Vec<Line> = Vec::new();
        if area.height < 3 {
            // The time first: a line that is cut loses its end.
            let text = format!("{} {} {}", self.time, self.now, self.about);
            lines.push(Line::styled(text.trim().to_owned(), theme.here_now()));
            lines.push(Line::raw(self.next.clone()));
            return frame.render_widget(Paragraph::new(lines), area);
        }
        lines.push(Line::styled(self.now.clone(), theme.here_now()));
        let below = u16::from(self.over.is_some()) + u16::from(!self.next.is_empty());
        // As many lines as it wants, but the time keeps its own.
        let about = textwrap::wrap(&self.about, usize::from(area.width.max(1)));
        let rows = usize::from(area.height.saturating_sub(2 + below).max(1));
        let about = about.into_iter().filter(|line| !line.is_empty()).take(rows);
        lines.extend(about.map(|line| Line::raw(line.into_owned())));
        let room = area.height.saturating_sub(lines.len() as u16 + below);
        let fits =
            if self.time.is_empty() { None } else { digits::fit(&self.time, area.width, room) };
        match fits {
            Some(scale) => {
                // An empty row above and below where there is room for both.
                let spare = room.saturating_sub(digits::size(&self.time, scale).1);
                let gap = usize::from((spare / 2).min(1));
                lines.extend(vec![Line::default(); gap]);
                lines.extend(digits::rows(&self.time, scale).into_iter().map(Line::raw));
                lines.extend(vec![Line::default(); gap]);
            }
            None if self.time.is_empty() => {}
            None => lines.push(Line::styled(self.time.clone(), theme.strong())),
        }
        if let Some((over, whole)) = self.over {
            lines.push(Line::raw(bar(over, whole, area.width)));
        }
        if !self.next.is_empty() {
            lines.push(Line::raw(self.next.clone()));
        }
        frame.render_widget(Paragraph::new(lines).centered(), area);
    }
}

fn ended(ran_out: bool, ago_ms: i64) -> Face {
    let now = if ran_out { "DONE" } else { "STOPPED" };
    Face { now: now.into(), about: print::ago(ago_ms), ..Face::default() }
}

/// `[=====-----]`, as wide as it may be.
fn bar(over: i64, whole: i64, width: u16) -> String {
    let inside = i64::from(width.saturating_sub(2).min(60));
    let full = over.clamp(0, whole.max(0)) * inside / whole.max(1);
    let [full, left] = [full, inside - full].map(|count| usize::try_from(count).unwrap_or(0));
    format!("[{}{}]", "=".repeat(full), "-".repeat(left))
}

/// Milliseconds to wait before the next frame: a few a second while something runs, and at cues.
pub(crate) fn until_next(next_cue_ms: Option<i64>, running: bool) -> i64 {
    let most = if running { 200 } else { 500 };
    next_cue_ms.map_or(most, |ms| ms.clamp(1, most))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_bar_is_as_full_as_the_time_is_over() {
        assert_eq!(bar(0, 100, 12), "[----------]");
        assert_eq!(bar(50, 100, 12), "[=====-----]");
        assert_eq!(bar(100, 100, 12), "[==========]");
        assert_eq!(bar(900, 100, 12), "[==========]");
        assert_eq!(bar(5, 0, 12), "[----------]");
        assert_eq!(bar(5, 10, 0), "[]");
    }
}
