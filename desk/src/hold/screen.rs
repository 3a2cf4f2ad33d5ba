//! A hold on a full screen.

use holdfast_core::clock::{Act, HoldPhase, HoldState};
use ratatui::Frame;
use ratatui::crossterm::event::{KeyCode, KeyEvent, KeyModifiers};
use ratatui::layout::{Constraint, Layout};

use super::{CAUTION, Timer};
use crate::fault::Outcome;
use crate::full::clock::{Face, until_next};
use crate::full::pane::{Pane, keys};
use crate::full::sound::Sound;
use crate::full::stage::{Came, on_stage};
use crate::full::theme::Theme;
use crate::now::now;

pub(super) fn run(timer: &mut Timer, sound: &mut Sound) -> Outcome {
    let theme = Theme::here();
    on_stage(|stage| {
        let mut watch = timer.begin();
        loop {
            let at = now();
            sound.cue(&watch.due(&at));
            let state = timer.state(&at);
            if matches!(state.phase, HoldPhase::Done { .. }) && state.cues.is_empty() {
                return Ok(());
            }
            stage.draw(|frame| draw(frame, timer, &state, theme))?;
            watch.set(state.cues, &at);
            if let Came::Key(key) = stage.wait(until_next(watch.next_ms(), true))? {
                let at = now();
                sound.cue(&watch.due(&at));
                let state = timer.state(&at);
                if let Some(act) = act(key, &state) {
                    timer.act(act, at.clone());
                }
                watch.set(timer.state(&at).cues, &at);
            }
        }
    })
}

/// What a key does to the clock.
fn act(key: KeyEvent, state: &HoldState) -> Option<Act> {
    let paused = matches!(state.phase, HoldPhase::Paused { .. });
    match key.code {
        KeyCode::Char('c') if key.modifiers.contains(KeyModifiers::CONTROL) => Some(Act::Stop),
        KeyCode::Char(' ' | 'p') | KeyCode::Enter if paused => Some(Act::Resume),
        KeyCode::Char(' ' | 'p') | KeyCode::Enter => Some(Act::Pause),
        KeyCode::Char('+' | '=') => Some(Act::Extend),
        KeyCode::Char('n') => Some(Act::Skip),
        KeyCode::Char('x' | 'q') | KeyCode::Esc => Some(Act::Stop),
        _ => None,
    }
}

fn draw(frame: &mut Frame, timer: &Timer, state: &HoldState, theme: Theme) {
    let area = frame.area();
    let mut head = Pane::new(area.width);
    head.text(theme.strong(), &format!("Hold {} s", timer.spec.hold_ms / 1000));
    let ran = state.held_ms.iter().any(|ms| *ms > 0);
    if ran {
        head.text(theme.quiet(), &timer.held_text(state));
    }
    if area.height >= 14 {
        head.text(theme.warn(), CAUTION);
    }
    let paused = matches!(state.phase, HoldPhase::Paused { .. });
    let pause = if paused { "go on" } else { "pause" };
    let holding = matches!(state.phase, HoldPhase::Holding { .. });
    let more = holding.then_some(("+", "15 s more"));
    let hints = [("Space", pause)].into_iter().chain(more).chain([("n", "next"), ("x", "stop")]);
    let hints: Vec<_> = hints.map(|(key, what)| (key.to_owned(), what.to_owned())).collect();
    let foot = keys(&hints, area.width, 1, theme.key());
    let rows = [
        // In a low window the clock comes first, then the keys.
        Constraint::Length(head.height().min(area.height.saturating_sub(6))),
        Constraint::Min(1),
        Constraint::Length(u16::from(area.height > 1)),
    ];
    let [top, middle, bottom] = Layout::vertical(rows).areas(area);
    head.draw(frame, top);
    let face = Face::of_hold(state, timer.spec.contract_ms > 0);
    face.draw(frame, middle, theme);
    foot.draw(frame, bottom);
}
