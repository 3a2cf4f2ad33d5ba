//! An athlete's phone in a session.

use holdfast_core::Instant;
use holdfast_core::clock::Act;
use holdfast_core::session::{RestView, Row, SessionScreen, Tap};

use crate::taps::{begin, clock};
use crate::{Crew, Device, at};

/// An athlete's device in a session, for checks of the clocks: taps take no time, calls follow one
/// another, and one that the core refuses fails the check.
pub struct Phone {
    crew: Crew,
}

impl Phone {
    /// A phone that begins its session on the first Tuesday, at six in the evening.
    ///
    /// # Panics
    /// As everything here: when the core refuses.
    pub fn new(plan: &str) -> Phone {
        Phone::begun(plan, at("2026-11-03", 18))
    }

    /// A phone that begins its session at a moment.
    ///
    /// # Panics
    /// When the core refuses.
    pub fn begun(plan: &str, now: Instant) -> Phone {
        let crew = Crew::start(plan, &["Ines"]).unwrap();
        crew.athletes[0].holdfast.shut().unwrap();
        crew.athletes[0].put_at(now);
        let mut phone = Phone { crew };
        phone.kill().tap(begin());
        phone
    }

    fn device(&self) -> &Device {
        &self.crew.athletes[0]
    }

    /// The phone's moment.
    pub fn now(&self) -> Instant {
        self.device().now()
    }

    /// Puts the phone into another zone.
    pub fn zone(&mut self, offset_min: i32) {
        let now = self.now();
        self.device().put_at(Instant { offset_min, ..now });
    }

    /// Lets time pass.
    pub fn pass(&mut self, ms: i64) -> &mut Phone {
        self.device().pass(ms);
        self
    }

    /// Sets the wall clock on by so much, or back.
    pub fn set_wall(&mut self, ms: i64) -> &mut Phone {
        self.device().set_wall(ms);
        self
    }

    /// The app is killed and opened again.
    ///
    /// # Panics
    /// When the core refuses.
    pub fn kill(&mut self) -> &mut Phone {
        self.crew.athletes[0].kill().unwrap();
        self
    }

    /// Off for a while, and on again.
    ///
    /// # Panics
    /// When the core refuses.
    pub fn reboot(&mut self, off_ms: i64) -> &mut Phone {
        self.crew.athletes[0].reboot(off_ms).unwrap();
        self
    }

    /// Taps at this very moment.
    ///
    /// # Panics
    /// When the core refuses.
    pub fn tap(&mut self, tap: Tap) -> SessionScreen {
        self.device().tap_now(tap).unwrap()
    }

    /// Works the clock of the calves' hold.
    ///
    /// # Panics
    /// When the core refuses.
    pub fn calves(&mut self, act: Act) -> SessionScreen {
        self.tap(clock("Calves", act))
    }

    /// Why a tap is refused.
    ///
    /// # Panics
    /// When it is not.
    pub fn refused(&mut self, tap: Tap) -> String {
        self.device().tap_now(tap).unwrap_err().to_string()
    }

    /// The screen now.
    ///
    /// # Panics
    /// When the core refuses.
    pub fn screen(&self) -> SessionScreen {
        self.device().today().unwrap()
    }

    /// The screen now with a row chosen by hand.
    ///
    /// # Panics
    /// When the core refuses.
    pub fn choose(&self, row: Row) -> SessionScreen {
        self.device().choose(Some(row)).unwrap()
    }

    /// The rest that runs.
    ///
    /// # Panics
    /// When none runs.
    pub fn rest(&self) -> RestView {
        self.screen().rest.unwrap()
    }

    /// The lines of its journal.
    ///
    /// # Panics
    /// When the core refuses.
    pub fn journal(&self) -> Vec<String> {
        self.device().journal()
    }
}
