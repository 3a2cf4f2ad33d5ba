//! A session on a full screen.

mod asks;
mod bounce;
mod draw;
mod form;
mod grant;
mod keys;
mod letters;
mod model;

use holdfast_core::Holdfast;
use holdfast_core::session::SessionState;

use super::{Wanted, finished, left_open};
use crate::fault::{Fault, Outcome};
use crate::full::clock::until_next;
use crate::full::cues::Watch;
use crate::full::sound::{Noise, Sound};
use crate::full::stage::{Came, Stage, on_stage};
use crate::full::theme::Theme;
use crate::now::now;
use bounce::Bounced;
use model::{Mode, Model, Tone};

/// Runs a session until it is left. Once it says saved, it is safely stored.
pub(super) fn run(holdfast: &Holdfast, wanted: Wanted, noise: Noise) -> Outcome {
    let mut model = begin(holdfast, wanted)?;
    let mut sound = Sound::new(noise);
    let theme = Theme::here();
    let played = on_stage(|stage| play(stage, holdfast, &mut model, &mut sound, theme));
    if let Err(fault @ (Fault::Signal(_) | Fault::Closed)) = played {
        // The terminal may be gone: the log is what counts.
        holdfast.cut_leaves()?;
        return Err(fault);
    }
    played?;
    match model.screen.state {
        SessionState::Finished => finished(&model.screen),
        SessionState::Running => left_open(holdfast),
        // A day that could not be begun says why.
        _ => match model.said {
            Some((Tone::NotSaved, why)) => Err(Fault::Typed(why)),
            _ => Ok(()),
        },
    }
}

/// Goes on with the session that is open, or begins one; a day off asks which day.
fn begin(holdfast: &Holdfast, wanted: Wanted) -> Outcome<Model> {
    let screen = holdfast.today(now())?;
    if wanted.is(&screen) {
        return Ok(Model::new(screen));
    }
    let any = wanted.day.is_none() && wanted.on.is_none();
    if screen.state == SessionState::DayOff && any && !screen.days.is_empty() {
        let mut model = Model::new(screen);
        asks::days(&mut model);
        return Ok(model);
    }
    Ok(Model::new(holdfast.tap(wanted.begin(), None, now())?))
}

fn play(
    stage: &mut Stage,
    holdfast: &Holdfast,
    model: &mut Model,
    sound: &mut Sound,
    theme: Theme,
) -> Outcome {
    let mut watch = Watch::default();
    let mut bounced = Bounced::default();
    loop {
        // The core is asked at each frame: it is cheap, and then nothing is counted twice.
        let at = now();
        sound.cue(&watch.due(&at));
        model.refresh(holdfast.today(at.clone()));
        watch.set(model.screen.cues.clone(), &at);
        stage.draw(|frame| {
            model.blind = draw::too_small(frame.area());
            draw::draw(frame, model, theme);
        })?;
        let Came::Key(key) = stage.wait(until_next(watch.next_ms(), ticks(model)))? else {
            continue;
        };
        if bounced.is(key, model, std::time::Instant::now()) {
            model.twice = true;
            continue;
        }
        let wish = keys::key(model, key);
        let at = now();
        sound.cue(&watch.due(&at));
        if grant::grant(holdfast, model, wish, &at) {
            return Ok(());
        }
        watch.set(model.screen.cues.clone(), &at);
        // Without a day begun there is nothing to show.
        if model.screen.state == SessionState::DayOff && matches!(model.mode, Mode::Day) {
            return Ok(());
        }
    }
}

/// True while something on the screen counts.
fn ticks(model: &Model) -> bool {
    let clock = model.screen.here.clock.as_ref();
    clock.is_some_and(|clock| clock.runs) || !model.screen.cues.is_empty()
}

#[cfg(test)]
mod tests;
