//! What honest people do, and what happens to their devices.

use holdfast_core::care::Place;
use holdfast_core::coach::MaxGiven;
use holdfast_core::session::Tap;
use holdfast_core::{Holdfast, HoldfastError, Language, Mass, Restore};
use rand::RngExt;

use super::carrier::{Wrong, exchange, search};
use super::template::copy;
use super::{ANA, BEN, MAREN, NAMES, Seat, World};
use crate::pairing::pair;
use crate::{DAY, Device, SMALL_PLAN, Writer};

const ROUGH: Wrong = Wrong { unlisted: 15, spoiled: 12, lost: 8, broken: 8 };

type Done = Result<(), String>;

fn failed(what: &str) -> impl FnOnce(HoldfastError) -> String {
    move |error| format!("{what}: {error}")
}

impl World {
    /// Somebody logs something: their own training, or a coach's word to one member or to all.
    pub(super) fn log(&mut self) -> Done {
        let at = self.any_seat();
        let severity = self.chance.random_range(1..8);
        let which = self.chance.random_range(0..4);
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
        let wrong = if smooth { super::carrier::NEVER } else { ROUGH };
        let device = &self.seats[at].device;
        device.pass(60_000);
        let done = exchange(device, &mut self.files, wrong, &mut self.chance);
        let done = done.map_err(failed("exchange"))?;
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
                let seat = &mut self.seats[at];
                // What a coach said of people to nobody yet would be undone, and nobody could say what should be.
                exchange(&seat.device, &mut self.files, super::carrier::NEVER, &mut self.chance)
                    .map_err(failed("exchange"))?;
                seat.device.pass(60_000);
                seat.device = Device::open(home, seat.device.now()).map_err(failed("open"))?;
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
        let restore = Restore::begin(self.codes[who].clone()).map_err(failed("code"))?;
        search(&restore, &mut self.files, &mut self.chance);
        // A carrier may have lost what is needed: that is said, and nothing is made.
        if restore.text().is_err() {
            self.tell(format!("{} finds nothing to restore", NAMES[who]));
            return Ok(None);
        }
        let home = self.folder(NAMES[who]);
        let now = self.seats[0].device.now();
        let drawn: Vec<u8> = (0..64).map(|_| self.chance.random()).collect();
        let path = home.to_string_lossy().into_owned();
        Holdfast::restore(path, &restore, drawn, now.clone())
            .and_then(|holdfast| holdfast.shut())
            .map_err(failed("restore"))?;
        let device = Device::open(home, now).map_err(failed("open"))?;
        let report = exchange(&device, &mut self.files, super::carrier::NEVER, &mut self.chance);
        report.map_err(failed("exchange"))?;
        self.seats.push(Seat { who, device, stolen: false, ended: false });
        let at = self.seats.len() - 1;
        self.tell(format!("{} restores {at}", NAMES[who]));
        Ok(Some(at))
    }

    /// Somebody takes a device; from now on its keys are an enemy's.
    pub(super) fn steal(&mut self) -> Done {
        let at = self.any_seat();
        let who = self.seats[at].who;
        if self.backup.as_ref().is_some_and(|(of, _)| *of == at) {
            self.backup = None;
        }
        // What it alone knew would be lost with it, and nobody could say what should be.
        let device = &self.seats[at].device;
        exchange(device, &mut self.files, super::carrier::NEVER, &mut self.chance)
            .map_err(failed("exchange"))?;
        self.seats[at].stolen = true;
        self.tell(format!("{} {at} is stolen", NAMES[who]));
        // Whoever has lost the last one sets up another, sooner or later; the story goes on with it.
        if self.seat_of(who).is_none() && self.restore_for(who)?.is_none() {
            self.seats[at].stolen = false;
            self.tell(format!("{at} is found again"));
        }
        Ok(())
    }

    /// Somebody stops a device of theirs that was stolen.
    pub(super) fn stop(&mut self) -> Done {
        let stolen = self.seats.iter().position(|seat| seat.stolen && !seat.ended);
        let Some(stolen) = stolen else { return Ok(()) };
        let who = self.seats[stolen].who;
        let by_coach = who != MAREN && self.chance.random_range(0..2) == 0;
        self.stop_seat(stolen, by_coach)
    }

    pub(super) fn stop_seat(&mut self, stolen: usize, by_coach: bool) -> Done {
        let who = self.seats[stolen].who;
        let Some(by) = self.seat_of(if by_coach { MAREN } else { who }) else { return Ok(()) };
        let lost = Writer::at(&self.seats[stolen].device).device();
        let device = &self.seats[by].device;
        device.pass(60_000);
        let crew = device.holdfast.crew().map_err(failed("crew"))?;
        let person = crew.people.iter().find(|person| {
            person.devices.iter().any(|known| known.device == lost && known.standing)
        });
        // It has not heard of it yet.
        let Some(person) = person else { return Ok(()) };
        let number = person.devices.iter().find(|known| known.device == lost).map(|of| of.number);
        let (Some(number), name) = (number, person.name.clone()) else { return Ok(()) };
        let code = Some(self.codes[who].clone());
        let done = if by_coach {
            device.holdfast.remove(name, Some(number), device.now())
        } else {
            device.holdfast.stop(number, code, device.now())
        };
        let crew = done.map_err(failed("stop"))?;
        self.seats[stolen].ended = true;
        // What the stopped laptop had said of people and this one has not read does not count any more.
        if who == MAREN {
            for (at, writer) in self.writers.iter().enumerate() {
                let known = crew.people.iter().find(|person| person.person == writer.person());
                self.in_crew[at] = known.map_or(self.in_crew[at], |known| known.standing);
            }
        }
        self.tell(format!("{by} stops {stolen}, by the coach: {by_coach}"));
        Ok(())
    }

    /// The coach takes a member out, or in again in person.
    pub(super) fn take_out_or_in(&mut self) -> Done {
        let who = if self.chance.random_range(0..2) == 0 { ANA } else { BEN };
        let (Some(coach), Some(member)) = (self.seat_of(MAREN), self.seat_of(who)) else {
            return Ok(());
        };
        let done = if self.in_crew[who] {
            // What a coach names before a stop has come counts for good, a thief's too: so they hear of it first.
            for at in (0..self.seats.len()).filter(|at| {
                let seat = &self.seats[*at];
                seat.who == who && !seat.stolen && !seat.ended
            }) {
                exchange(
                    &self.seats[at].device,
                    &mut self.files,
                    super::carrier::NEVER,
                    &mut self.chance,
                )
                .map_err(failed("exchange"))?;
            }
            let device = &self.seats[coach].device;
            exchange(device, &mut self.files, super::carrier::NEVER, &mut self.chance)
                .map_err(failed("exchange"))?;
            let device = &self.seats[coach].device;
            device.pass(60_000);
            device.holdfast.remove(NAMES[who].into(), None, device.now()).map(drop)
        } else {
            // They meet: both exchange first, so that each knows where it stands.
            for at in [coach, member] {
                let device = &self.seats[at].device;
                exchange(device, &mut self.files, super::carrier::NEVER, &mut self.chance)
                    .map_err(failed("exchange"))?;
            }
            let chance: u8 = self.chance.random();
            pair(&self.seats[coach].device, &self.seats[member].device, chance).map(drop)
        };
        match done {
            // One coach's laptop may not have heard what the other did.
            Err(HoldfastError::NotFound { .. } | HoldfastError::Invalid { .. }) => return Ok(()),
            done => done.map_err(failed("out or in"))?,
        }
        self.tell(format!("{} was in the crew: {}", NAMES[who], self.in_crew[who]));
        self.in_crew[who] = !self.in_crew[who];
        Ok(())
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
        for _ in 0..3 {
            self.everybody_meets()?;
        }
        Ok(())
    }

    fn everybody_meets(&mut self) -> Done {
        // What rotted is gone, as a device that has it whole brings it again.
        for at in 0..self.seats.len() {
            if !self.seats[at].stolen && !self.seats[at].ended {
                let device = &self.seats[at].device;
                device.pass(60_000);
                let report =
                    exchange(device, &mut self.files, super::carrier::NEVER, &mut self.chance)
                        .map_err(failed("exchange"))?;
                self.tell(format!("all meet, {at}: {report:?}"));
            }
        }
        Ok(())
    }
}
