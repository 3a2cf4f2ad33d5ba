//! What honest people do, and what happens to their devices.

use std::path::PathBuf;

use holdfast_core::care::Place;
use holdfast_core::coach::MaxGiven;
use holdfast_core::session::Tap;
use holdfast_core::{Holdfast, HoldfastError, Language, Mass, Restore};
use rand::RngExt;
use rand::seq::IteratorRandom;

use super::carrier::{Files, NEVER, Wrong, search};
use super::template::copy;
use super::{Done, MAREN, NAMES, Seat, World, failed};
use crate::taps::{begin, finish_unrated};
use crate::{DAY, Device, SMALL_PLAN, Writer};

/// Rounds after which all must have all.
const ROUNDS: u32 = 8;

const ROUGH: Wrong = Wrong { unlisted: 15, spoiled: 12, lost: 8, broken: 8 };

/// What a private note begins with.
pub(super) const FOR_NOBODY: &str = "for nobody else";

/// An athlete writes a note in a session of its own, where one can begin.
fn note(device: &Device, number: u32, private: bool) -> Result<(), HoldfastError> {
    let said = if private { FOR_NOBODY } else { "for the coach" };
    let taps = [
        begin(),
        Tap::Note { row: None, words: format!("{said} {number}"), private },
        finish_unrated(),
    ];
    for tap in taps {
        match device.tap(tap) {
            // Nothing is planned, or the day was trained already.
            Err(HoldfastError::Invalid { .. } | HoldfastError::NotFound { .. }) => {}
            done => done.map(drop)?,
        }
    }
    Ok(())
}

impl World {
    /// Somebody logs something: their own training, or a coach's word to one member or to all.
    pub(super) fn log(&mut self) -> Done {
        let at = self.any_seat();
        let severity = self.chance.random_range(1..8);
        let which = self.chance.random_range(0..5);
        let Seat { who, device, .. } = &self.seats[at];
        device.pass(60_000);
        let (who, now) = (*who, device.now());
        let done = match (who, which) {
            (_, 0) => {
                let language = [Language::En, Language::De][severity as usize % 2];
                device.holdfast.choose_language(Some(language), now).map(drop)
            }
            (MAREN, 1) => {
                let plan = SMALL_PLAN.replace("Small", &format!("Small {severity}"));
                device.publish(&plan).map(drop)
            }
            (MAREN, _) => {
                let member = Some(NAMES[1 + which % 2].to_owned());
                let load = Some(Mass::kg(40 + i64::from(severity)));
                let given = MaxGiven { member, movement: "back-squat".into(), load, anyway: true };
                match device.holdfast.give_max(given, now) {
                    // A restored laptop may not have met the member's name yet.
                    Err(HoldfastError::NotFound { .. } | HoldfastError::Invalid { .. }) => Ok(()),
                    done => done.map(drop),
                }
            }
            (_, 3 | 4) => note(device, severity, which == 4),
            _ => {
                let (movement, signs, on) = (None, Vec::new(), None);
                let tap = Tap::FlagBetween { movement, place: Place::Knee, severity, signs, on };
                device.tap(tap).map(drop)
            }
        };
        self.tell(format!("{} {at} logs {which}", NAMES[who]));
        done.map_err(failed("log"))
    }

    /// Somebody exchanges, and much goes wrong.
    pub(super) fn meet(&mut self) -> Done {
        let at = self.any_seat();
        let smooth = self.chance.random_range(0..3) == 0;
        let wrong = if smooth { NEVER } else { ROUGH };
        self.seats[at].device.pass(60_000);
        let done = self.exchange(at, wrong)?;
        self.tell(format!("{} {at} exchanges: {done:?}", NAMES[self.seats[at].who]));
        Ok(())
    }

    /// The power goes: what lies on disk is opened again.
    pub(super) fn kill(&mut self) -> Done {
        let at = self.any_seat();
        let name = NAMES[self.seats[at].who];
        let home = self.folder(name);
        let seat = &mut self.seats[at];
        copy(&seat.device.home, &home);
        seat.device = Device::open(home, seat.device.now()).map_err(failed("open"))?;
        self.tell(format!("{name} {at} is killed"));
        Ok(())
    }

    pub(super) fn set_a_clock(&mut self) -> Done {
        let at = self.any_seat();
        let years = self.chance.random_range(-10..=10_i64);
        let device = &self.seats[at].device;
        device.set_wall(years * 365 * DAY);
        if device.now().wall_ms < 0 {
            device.set_wall(-device.now().wall_ms + DAY);
        }
        self.tell(format!("{at}: a clock jumps by {years} years"));
        Ok(())
    }

    /// A backup is taken, or one comes back: the device goes on from where it was then.
    pub(super) fn back_up_or_bring_back(&mut self) -> Done {
        match self.backup.take() {
            None => {
                let at = self.any_seat();
                let home = self.folder("backup");
                copy(&self.seats[at].device.home, &home);
                self.backup = Some((at, home));
                self.tell(format!("{at} is backed up"));
            }
            Some((at, home)) if !self.seats[at].stolen && !self.seats[at].ended => {
                // What a coach said of people to nobody yet would be undone, and nobody could say what should be.
                self.exchange(at, NEVER)?;
                let brought = self.folder("brought-back");
                copy(&home, &brought);
                let seat = &mut self.seats[at];
                seat.device.pass(60_000);
                seat.device = Device::open(brought, seat.device.now()).map_err(failed("open"))?;
                // With the code, where that was not on paper yet.
                self.on_paper.remove(&at);
                self.tell(format!("{at} comes back from its backup"));
            }
            Some(_) => {}
        }
        Ok(())
    }

    /// Somebody sets up one more device with the code from paper.
    pub(super) fn restore(&mut self) -> Done {
        let who = self.chance.random_range(0..3_usize);
        self.restore_for(who).map(drop)
    }

    /// The new device; none where there can be none now.
    pub(super) fn restore_for(&mut self, who: usize) -> Result<Option<usize>, String> {
        let theirs = self.seats.iter().filter(|seat| seat.who == who).count();
        if theirs > 3 || !self.in_crew[who] {
            return Ok(None);
        }
        let home = self.folder(NAMES[who]);
        // A carrier may have lost what is needed: that is said, and nothing is made.
        let Some(device) = self.set_up(who, home, &self.files.clone())? else {
            self.tell(format!("{} finds nothing to restore", NAMES[who]));
            return Ok(None);
        };
        self.seats.push(Seat::of(who, device));
        let at = self.seats.len() - 1;
        self.exchange(at, NEVER)?;
        self.tell(format!("{} restores {at}", NAMES[who]));
        Ok(Some(at))
    }

    /// A device set up with the code from paper and what some files say; none where they do not say enough.
    pub(super) fn set_up(
        &mut self,
        who: usize,
        home: PathBuf,
        files: &Files,
    ) -> Result<Option<Device>, String> {
        let restore = Restore::begin(self.codes[who].clone()).map_err(failed("code"))?;
        search(&restore, files, &mut self.chance);
        if restore.text().is_err() {
            return Ok(None);
        }
        let now = self.seats[0].device.now();
        let drawn: Vec<u8> = (0..64).map(|_| self.chance.random()).collect();
        let path = home.to_string_lossy().into_owned();
        Holdfast::restore(path, &restore, drawn, now.clone(), None)
            .and_then(|holdfast| holdfast.shut())
            .map_err(failed("restore"))?;
        Device::open(home, now).map(Some).map_err(failed("open"))
    }

    /// Somebody takes a device; from now on its keys are an enemy's.
    pub(super) fn steal(&mut self) -> Done {
        let at = self.any_seat();
        let who = self.seats[at].who;
        if self.backup.as_ref().is_some_and(|(of, _)| *of == at) {
            self.backup = None;
        }
        // What it alone knew would be lost with it, and nobody could say what should be.
        self.exchange(at, NEVER)?;
        if self.on_paper.contains(&at) {
            self.keeps_no_code(at)?;
        }
        self.seats[at].stolen = true;
        self.tell(format!("{} {at} is stolen", NAMES[who]));
        // Whoever has lost the last one sets up another, sooner or later; the story goes on with it.
        if self.seat_of(who).is_none() && self.restore_for(who)?.is_none() {
            self.seats[at].stolen = false;
            self.tell(format!("{at} is found again"));
        }
        Ok(())
    }

    /// Somebody writes their recovery code down and types two groups back: from then on the device has it no more.
    pub(super) fn put_code_on_paper(&mut self) -> Done {
        // A restored device forgets it by itself.
        let firsts = (0..NAMES.len()).filter(|at| {
            !self.seats[*at].stolen && !self.seats[*at].ended && !self.on_paper.contains(at)
        });
        let Some(at) = firsts.choose(&mut self.chance) else { return Ok(()) };
        let device = &self.seats[at].device;
        device.on_paper().map_err(failed("recovery"))?;
        self.on_paper.insert(at);
        self.tell(format!("{at} has the code on paper"));
        self.keeps_no_code(at)
    }

    /// Whoever steals a device finds no code there, once it is on paper.
    pub(super) fn keeps_no_code(&self, at: usize) -> Done {
        match Writer::at(&self.seats[at].device).has_paper() {
            true => Err(format!("{at} still has the recovery code that is on paper")),
            false => Ok(()),
        }
    }

    /// Everything comes together: whoever was stolen is stopped, and all meet on a carrier that works and on which all
    /// lies that anybody ever wrote.
    pub(super) fn come_together(&mut self) -> Done {
        for _ in 0..2 {
            self.everybody_meets()?;
            for at in 0..self.seats.len() {
                if self.seats[at].stolen && !self.seats[at].ended {
                    self.stop_seat(at, false)?;
                }
            }
            self.attack();
            self.attack();
        }
        // What is sealed again is brought in one round, and answered in the next.
        for _ in 0..ROUNDS {
            if !self.everybody_meets()? {
                return Ok(());
            }
        }
        Err(format!("after {ROUNDS} rounds there is still something new"))
    }

    /// True where something new came of it.
    pub(super) fn everybody_meets(&mut self) -> Result<bool, String> {
        let mut new = false;
        for at in 0..self.seats.len() {
            if !self.seats[at].stolen && !self.seats[at].ended {
                self.seats[at].device.pass(60_000);
                let report = self.exchange(at, NEVER)?;
                new |= report.as_ref().is_some_and(|did| did.leaves > 0 || did.put > 0);
                self.tell(format!("all meet, {at}: {report:?}"));
            }
        }
        Ok(new)
    }
}
