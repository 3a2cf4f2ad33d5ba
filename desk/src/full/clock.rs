//! A clock as it is drawn: what to do now in a word, the time left in big digits, what comes next.

use holdfast_core::clock::Phase;
use holdfast_core::session::ClockView;
use ratatui::text::Line;
use textwrap::core::display_width;

use super::lines::{fill, shortened};
use super::theme::Theme;
use super::{digits, gauge};
use crate::say;

/// What a clock shows.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Face {
    /// What to do now, in capitals.
    now: String,
    /// More about it.
    about: String,
    /// The time in digits; empty where there is none.
    time: String,
    /// How much of this side or window is over, as marks; empty where there is no length to it.
    gauge: Vec<char>,
    /// The next cue.
    next: String,
}

impl Face {
    /// A clock's. The digits count the phase; where that is only a part of the side, the side's own
    /// time stands small beside it.
    pub(crate) fn of(clock: &ClockView) -> Face {
        let about = match (&clock.about, clock.turn_left) {
            (Some(side), Some(left)) => say::full::side_to_go(side, digits::left(left.0)),
            (None, Some(left)) => say::full::to_go(digits::left(left.0)),
            (about, None) => about.clone().unwrap_or_default(),
        };
        let time = match (clock.left, clock.over) {
            (Some(left), _) => digits::left(left.0),
            // Whole seconds that are over.
            (None, Some(over)) if clock.phase == Phase::RestOver => {
                format!("+{}", digits::left(over.0 / 1000 * 1000))
            }
            _ => String::new(),
        };
        Face {
            now: clock.now.to_uppercase(),
            about,
            time,
            gauge: gauge::marks(clock),
            next: clock.next.clone().unwrap_or_default(),
        }
    }

    /// Its lines in at most so many rows, the digits no bigger than a scale. The time comes first, then
    /// what to do, then more about it, how far it is, what comes next, and last bigger digits.
    pub(crate) fn lines(
        &self,
        wide: u16,
        rows: u16,
        biggest: u16,
        theme: Theme,
    ) -> Vec<Line<'static>> {
        if rows < 3 {
            return self.low(wide, rows, theme);
        }
        let mut left = rows - 1;
        let fits = |left: u16| digits::fit(&self.time, wide, left).map(|fit| fit.min(biggest));
        let least = fits(left).map(|_| 1).filter(|_| biggest > 0);
        let least_rows = match least {
            Some(scale) => digits::height(scale),
            None => u16::from(!self.time.is_empty()),
        };
        left = left.saturating_sub(least_rows);
        let mut about = fill(&self.about, wide);
        if about.len() > usize::from(left) {
            about.truncate(usize::from(left));
            if let Some(last) = about.last_mut() {
                *last = shortened(&format!("{last} ..."), wide);
            }
        }
        left -= about.len() as u16;
        let [gauge, next] = [!self.gauge.is_empty(), !self.next.is_empty()].map(|wanted| {
            let taken = wanted && left > 0;
            left -= u16::from(taken);
            taken
        });
        let scale = least.and_then(|_| fits(left + least_rows));
        left -= scale.map_or(0, |scale| digits::height(scale) - least_rows);
        // An empty row above and below where there is room for both.
        let gap = usize::from((left / 2).min(1)) * usize::from(scale.is_some());
        let mut lines = vec![Line::styled(shortened(&self.now, wide), theme.here_now())];
        lines.extend(about.into_iter().map(Line::raw));
        lines.extend(vec![Line::default(); gap]);
        match scale {
            Some(scale) => lines.extend(digits::rows(&self.time, scale).into_iter().map(Line::raw)),
            None if self.time.is_empty() => {}
            None => lines.push(Line::styled(self.time.clone(), theme.strong())),
        }
        lines.extend(vec![Line::default(); gap]);
        if gauge {
            lines.push(Line::raw(gauge::bar(&self.gauge, wide)));
        }
        if next {
            lines.push(Line::raw(shortened(&self.next, wide)));
        }
        lines.into_iter().map(Line::centered).collect()
    }

    /// In a row or two. The time first: a line that is cut loses its end.
    fn low(&self, wide: u16, rows: u16, theme: Theme) -> Vec<Line<'static>> {
        let short = format!("{} {}", self.time, self.now);
        let whole = format!("{short} {}", self.about);
        // What is cut off the first line is worth more than what comes next.
        let fits = rows < 2 || display_width(whole.trim()) <= usize::from(wide);
        let (first, second) = if fits { (whole, &self.next) } else { (short, &self.about) };
        let mut lines = vec![Line::styled(shortened(first.trim(), wide), theme.here_now())];
        if !second.is_empty() {
            lines.push(Line::raw(shortened(second, wide)));
        }
        lines.truncate(usize::from(rows));
        // A time stands where it is looked for, at the start.
        if self.time.is_empty() {
            lines = lines.into_iter().map(Line::centered).collect();
        }
        lines
    }
}

/// Milliseconds to wait before the next frame: a few a second while something runs, and at cues.
pub(crate) fn until_next(next_cue_ms: Option<i64>, running: bool) -> i64 {
    let most = if running { 200 } else { 500 };
    next_cue_ms.map_or(most, |ms| ms.clamp(1, most))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn face() -> Face {
        Face {
            now: "PUSH".into(),
            about: say::full::side_to_go("left", "1:54"),
            time: "0:04".into(),
            gauge: vec!['#', '-'],
            next: "next: let go in 0:04".into(),
        }
    }

    #[test]
    fn the_time_is_there_in_any_room_and_never_more_rows_than_there_are() {
        for wide in [8, 20, 40, 60, 160] {
            for rows in 1..40 {
                let lines = face().lines(wide, rows, 99, Theme::plain());
                assert!(lines.len() <= usize::from(rows), "{wide} x {rows}");
                let text: String = lines.iter().map(|line| line.to_string() + "\n").collect();
                assert!(text.contains("0:04") || text.contains('█'), "{wide} x {rows}:\n{text}");
                assert!(lines.iter().all(|line| line.width() <= usize::from(wide)), "{text}");
            }
        }
    }

    #[test]
    fn digits_grow_last() {
        let lines = |rows| face().lines(40, rows, 99, Theme::plain());
        let has = |rows, text: &str| lines(rows).iter().any(|line| line.to_string().contains(text));
        assert!(has(5, "1:54 to go") && !has(4, "1:54 to go"));
        assert!(has(6, "[") && !has(5, "["));
        assert!(has(7, "next:") && !has(6, "next:"));
        assert_eq!(lines(9).len(), 9, "five rows of digits");
    }
}
