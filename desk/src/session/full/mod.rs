//! A session on a full screen.

mod bounce;
mod draw;
mod form;
mod go;
mod keys;
mod model;
mod rows;
mod went_by;

use holdfast_core::Holdfast;
use holdfast_core::clock::Cue;
use holdfast_core::companion::{FlagView, PieceView, SessionScreen, SessionState, Tap};

use crate::fault::{Fault, Outcome};
use crate::full::bounce::Bounce;
use crate::full::clock::until_next;
use crate::full::cues::Watch;
use crate::full::sound::{Noise, Sound};
use crate::full::stage::{Came, Stage, on_stage};
use crate::full::theme::Theme;
use crate::now::now;
use crate::print;
use bounce::too_soon;
use form::{Item, Picker};
use model::{Mode, Model, Tone, Wish};

/// Runs a session until it is left. What a line calls saved is on disk.
pub(crate) fn run(companion: &Holdfast, day: Option<String>, noise: Noise) -> Outcome {
    let mut model = begin(companion, day)?;
    let mut sound = Sound::new(noise);
    let theme = Theme::here();
    let played = on_stage(|stage| play(stage, companion, &mut model, &mut sound, theme));
    if let Err(fault @ (Fault::Signal(_) | Fault::Closed)) = played {
        // The terminal may be gone: the log is what counts.
        companion.settle()?;
        return Err(fault);
    }
    played?;
    match model.screen.state {
        SessionState::Finished => {
            print::out("Finished. The next exchange carries it to your coach.\n")
        }
        SessionState::Running => super::left_open(companion),
        // A day that could not be begun says why.
        _ => match model.said {
            Some((Tone::NotSaved, why)) => Err(Fault::Typed(why)),
            _ => Ok(()),
        },
    }
}

/// Goes on with the session that is open, or begins one; a day off asks which day.
fn begin(companion: &Holdfast, day: Option<String>) -> Outcome<Model> {
    let screen = companion.today(now())?;
    let goes_on = match screen.state {
        SessionState::Running => day.as_ref().is_none_or(|day| *day == screen.day),
        SessionState::Finished => day.is_none(),
        _ => false,
    };
    let asks = screen.state == SessionState::DayOff && day.is_none() && !screen.days.is_empty();
    if goes_on {
        return Ok(Model::new(screen));
    }
    if !asks {
        return Ok(Model::new(companion.tap(Tap::Begin { day }, now())?));
    }
    let choice = |day: &String| (Item::of(day), Tap::Begin { day: Some(day.clone()) });
    let days = screen.days.iter().map(choice).collect();
    let mut model = Model::new(screen);
    model.mode = Mode::Picking(Picker::taps("Nothing is planned today. Train which day?", days));
    Ok(model)
}

fn play(
    stage: &mut Stage,
    companion: &Holdfast,
    model: &mut Model,
    sound: &mut Sound,
    theme: Theme,
) -> Outcome {
    let mut watch = Watch::default();
    let mut bounce = Bounce::default();
    loop {
        // The core is asked at each frame: it is cheap, and then nothing is counted twice.
        let at = now();
        sound.cue(&watch.due(&at));
        model.refresh(companion.today(at.clone()), &at);
        watch.set(cues(&model.screen), &at);
        stage.draw(|frame| {
            model.blind = draw::too_small(frame.area());
            draw::draw(frame, model, theme);
        })?;
        let Came::Key(key) = stage.wait(until_next(watch.next_ms(), ticks(model)))? else {
            continue;
        };
        if too_soon(&mut bounce, key, model, std::time::Instant::now()) {
            model.too_soon();
            continue;
        }
        match keys::key(model, key) {
            Wish::Nothing => {}
            Wish::Leave => return Ok(()),
            Wish::Taps(taps) => {
                for tap in taps {
                    let at = now();
                    sound.cue(&watch.due(&at));
                    // What was typed together is taken together: the rest waits for a better line.
                    let done = model.after(&tap, companion.tap(tap.clone(), at.clone()));
                    watch.set(cues(&model.screen), &at);
                    if !done {
                        break;
                    }
                }
            }
        }
        // Without a day begun there is nothing to show.
        if model.screen.state == SessionState::DayOff && matches!(model.mode, Mode::Day) {
            return Ok(());
        }
    }
}

/// The cues ahead, of whichever clock runs, soonest first.
fn cues(screen: &SessionScreen) -> Vec<Cue> {
    let of_piece = |piece: &PieceView| match piece {
        PieceView::Interval { view } => view.clock.as_ref().map(|clock| clock.cues.clone()),
        PieceView::Hold { view } => view.clock.as_ref().map(|clock| clock.cues.clone()),
        _ => None,
    };
    let rest = screen.rest.iter().filter_map(|rest| rest.cue.clone());
    let mut cues: Vec<Cue> =
        screen.pieces.iter().filter_map(of_piece).flatten().chain(rest).collect();
    cues.sort_by_key(|cue| cue.due_in_ms);
    cues
}

/// True while something on the screen counts.
fn ticks(model: &Model) -> bool {
    let rests = model.screen.rest.is_some();
    rests || go::standing(model, &model.at()).0 || !cues(&model.screen).is_empty()
}

/// A piece's name.
fn name(piece: &PieceView) -> &str {
    match piece {
        PieceView::Strength { view } => &view.name,
        PieceView::Interval { view } => &view.name,
        PieceView::Hold { view } => &view.name,
        PieceView::Note { name, .. } => name,
    }
}

/// The open flags of a piece.
fn flags(piece: Option<&PieceView>) -> &[FlagView] {
    match piece {
        Some(PieceView::Strength { view }) => &view.flags,
        Some(PieceView::Interval { view }) => &view.flags,
        Some(PieceView::Hold { view }) => &view.flags,
        Some(PieceView::Note { .. }) | None => &[],
    }
}

#[cfg(test)]
mod tests;
