//! A hold on its own: no plan, no home folder, nothing written.

mod plain;
mod screen;

use holdfast_core::Instant;
use holdfast_core::clock::{Act, HoldSpec, HoldState, Mark, WhyShort, hold_state};
use holdfast_core::plan::HOLD_SWITCH_MS;
use holdfast_core::session::{ClockView, CueView, hold_clock, side_text};

use crate::args::Hold;
use crate::fault::{Fault, Outcome};
use crate::full;
use crate::full::cues::Watch;
use crate::full::sound::Sound;
use crate::now::now;
use crate::{print, say};

/// A hold and what was done to its clock, in memory only.
struct Timer {
    spec: HoldSpec,
    marks: Vec<Mark>,
}

impl Timer {
    /// Starts it, and gives the cues from that very moment on.
    fn begin(&mut self) -> Watch {
        let (mut watch, at) = (Watch::default(), now());
        self.act(Act::Begin, at.clone());
        watch.set(self.cues(&at), &at);
        watch
    }

    fn act(&mut self, act: Act, at: Instant) {
        self.marks.push(Mark { act, at });
    }

    fn state(&self, now: &Instant) -> HoldState {
        hold_state(&self.spec, &self.marks, now)
    }

    /// The clock as it is drawn.
    fn view(&self, now: &Instant) -> Option<ClockView> {
        hold_clock(&self.spec, &self.state(now))
    }

    /// The cues ahead.
    fn cues(&self, now: &Instant) -> Vec<CueView> {
        self.view(now).map_or(Vec::new(), |clock| clock.cues)
    }

    /// The seconds really held, side by side, with the reason where a side is short.
    fn held_text(&self, state: &HoldState) -> String {
        let seconds = |ms: &i64| match (ms / 1000, ms % 1000 / 100) {
            (whole, 0) => format!("{whole} s"),
            (whole, tenths) => format!("{whole}{}{tenths} s", catalogue::spoken().decimal()),
        };
        let with_why = |held: String, ms: i64, short: &Option<WhyShort>| match short {
            Some(WhyShort::Skipped | WhyShort::Stopped) if ms == 0 => say::hold::skipped(held),
            Some(WhyShort::Skipped | WhyShort::Stopped) => say::hold::stopped_early(held),
            Some(WhyShort::Unseen) => say::hold::not_all_seen(held),
            Some(WhyShort::Said) | None => held,
        };
        let sides = state.held_ms.iter().zip(&state.short).zip(1..);
        let count = state.held_ms.len() as u32;
        let each = sides.map(|((ms, short), side)| {
            let held = match side_text(side, count) {
                Some(side) => say::hold::held_side(side, seconds(ms)),
                None => seconds(ms),
            };
            with_why(held, *ms, short)
        });
        say::hold::held(each.collect::<Vec<_>>().join(say::hold::comma()))
    }
}

/// Runs a hold until it ends or is stopped, and says what was really held.
pub(crate) fn run(hold: &Hold) -> Outcome {
    let spec = spec(hold)?;
    let mut timer = Timer { spec, marks: Vec::new() };
    let mut sound = Sound::new(hold.quiet.noise());
    let ended = if full::possible() && !hold.plain {
        screen::run(&mut timer, &mut sound)
    } else {
        plain::run(&mut timer, &mut sound)
    };
    let now = now();
    if let Err(Fault::Signal(_)) = ended {
        // Ended from outside: what was held up to here is still worth saying, where anybody reads it.
        timer.act(Act::Stop, now.clone());
        let _ = print::out(&format!("{}\n", timer.held_text(&timer.state(&now))));
        return ended;
    }
    ended?;
    print::out(&format!("{}\n", timer.held_text(&timer.state(&now))))
}

fn spec(hold: &Hold) -> Outcome<HoldSpec> {
    let ms = |seconds: u32| i64::from(seconds) * 1000;
    let (contract, relax) = (hold.contract.unwrap_or(0), hold.relax.unwrap_or(0));
    if contract > hold.seconds {
        return Err(Fault::Typed(say::fault::contract_too_long(contract, hold.seconds)));
    }
    if let Some(switch) = hold.switch.filter(|switch| *switch > hold.seconds) {
        return Err(Fault::Typed(say::fault::switch_too_long(switch, hold.seconds)));
    }
    Ok(HoldSpec {
        ready_ms: ms(hold.ready),
        hold_ms: ms(hold.seconds),
        switch_ms: hold.switch.map_or(HOLD_SWITCH_MS.min(ms(hold.seconds)), ms),
        sides: hold.sides,
        contract_ms: ms(contract),
        relax_ms: ms(relax),
    })
}

#[cfg(test)]
mod tests {
    use clap::Parser;

    use super::*;

    #[test]
    fn the_switch_is_never_longer_than_the_hold() {
        #[derive(Parser)]
        struct Typed {
            #[command(flatten)]
            hold: Hold,
        }
        let switch = |typed: &[&str]| {
            let typed = Typed::parse_from([&["hold", "--sides", "2"], typed].concat());
            spec(&typed.hold).map(|spec| spec.switch_ms)
        };
        assert_eq!(switch(&["60"]).unwrap(), HOLD_SWITCH_MS);
        assert_eq!(switch(&["5"]).unwrap(), 5_000, "when left out");
        assert_eq!(switch(&["5", "--switch", "0"]).unwrap(), 0);
        assert!(switch(&["5", "--switch", "10"]).unwrap_err().to_string().contains("longer"));
    }
}
