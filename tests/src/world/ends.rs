//! How devices end and people leave: stops and removals, and what whoever said so had of theirs.

use holdfast_core::HoldfastError;
use rand::RngExt;

use super::carrier::NEVER;
use super::check::{Held, Line};
use super::template::copy;
use super::{ANA, BEN, Done, MAREN, NAMES, World, failed};
use crate::pairing::pair;

/// What was ended by an honest device, and what that device had of it: this goes on counting, whatever else ends it.
pub(super) struct Ended {
    pub(super) who: usize,
    pub(super) by: usize,
    pub(super) lines: Vec<Line>,
}

impl World {
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
        self.end(stolen, by)?;
        // Another device of theirs, or the other's, that has not heard of it yet does the same, with what it has.
        if self.seats[stolen].ended && self.chance.random_range(0..3) == 0 {
            let may = |at: &usize| {
                let seat = &self.seats[*at];
                *at != by && !seat.stolen && !seat.ended && [MAREN, who].contains(&seat.who)
            };
            if let Some(other) = (0..self.seats.len()).find(may) {
                self.end(stolen, other)?;
            }
        }
        Ok(())
    }

    fn end(&mut self, stolen: usize, by: usize) -> Done {
        let who = self.seats[stolen].who;
        let by_coach = self.seats[by].who != who;
        let lost = self.seats[stolen].id;
        let device = &self.seats[by].device;
        device.pass(60_000);
        let crew = device.holdfast.crew().map_err(failed("crew"))?;
        let person = crew.people.iter().find(|person| {
            person.devices.iter().any(|known| known.device == lost && known.standing)
        });
        // It has not heard of it yet, or of its end already.
        let Some(person) = person else { return Ok(()) };
        let number = person.devices.iter().find(|known| known.device == lost).map(|of| of.number);
        let (Some(number), name) = (number, person.name.clone()) else { return Ok(()) };
        let had = self.lines_of(by, &[stolen]);
        let device = &self.seats[by].device;
        let code = Some(self.codes[who].clone());
        let done = if by_coach {
            device.holdfast.remove(name, Some(number), device.now())
        } else {
            device.holdfast.stop(number, code, device.now())
        };
        let crew = done.map_err(failed("stop"))?;
        self.seats[stolen].ended = true;
        self.doubted.insert(lost);
        self.ends.push(Ended { who, by, lines: had });
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

    /// What a device has of others, as it counts there.
    fn lines_of(&mut self, at: usize, others: &[usize]) -> Vec<Line> {
        let copied = self.folder("looked-at");
        copy(&self.seats[at].device.home, &copied);
        let held = Held::of(&copied);
        let id = |other: &usize| self.seats[*other].id.0.simple().to_string();
        let ids: Vec<String> = others.iter().map(id).collect();
        let honest = |line: &&Line| ids.contains(&line.0) && !self.enemys.contains(&line.1);
        held.lines.iter().filter(honest).cloned().collect()
    }

    /// The coach takes a member out, or in again in person.
    pub(super) fn take_out_or_in(&mut self) -> Done {
        let who = if self.chance.random_range(0..2) == 0 { ANA } else { BEN };
        match self.in_crew[who] {
            true => self.take_out(who),
            false => self.take_in_again(who),
        }
    }

    pub(super) fn take_out(&mut self, who: usize) -> Done {
        let (Some(coach), Some(_)) = (self.seat_of(MAREN), self.seat_of(who)) else {
            return Ok(());
        };
        // What a coach names before a stop has come counts for good, a thief's too: so they hear of it first.
        let theirs = (0..self.seats.len()).filter(|at| {
            let seat = &self.seats[*at];
            seat.who == who && !seat.stolen && !seat.ended
        });
        for at in theirs.collect::<Vec<_>>() {
            self.exchange(at, NEVER)?;
        }
        self.exchange(coach, NEVER)?;
        let person = self.writers[who].person();
        let device = &self.seats[coach].device;
        device.pass(60_000);
        // A thief with another laptop of the coach's may have said so already, and nobody has heard of the stop.
        let crew = device.holdfast.crew().map_err(failed("crew"))?;
        let known = crew.people.iter().find(|known| known.person == person && known.standing);
        let Some(name) = known.map(|known| known.name.clone()) else { return Ok(()) };
        let seats: Vec<usize> =
            (0..self.seats.len()).filter(|at| self.seats[*at].who == who).collect();
        let had = self.lines_of(coach, &seats);
        let device = &self.seats[coach].device;
        device.holdfast.remove(name, None, device.now()).map_err(failed("out"))?;
        self.ends.push(Ended { who, by: coach, lines: had });
        self.in_crew[who] = false;
        self.doubt_everything_of(who);
        self.tell(format!("{} is taken out", NAMES[who]));
        Ok(())
    }

    fn take_in_again(&mut self, who: usize) -> Done {
        let (Some(coach), Some(member)) = (self.seat_of(MAREN), self.seat_of(who)) else {
            return Ok(());
        };
        // They meet: both exchange first, so that each knows where it stands.
        for at in [coach, member] {
            self.exchange(at, NEVER)?;
        }
        let chance: u8 = self.chance.random();
        match pair(&self.seats[coach].device, &self.seats[member].device, chance) {
            // One coach's laptop may not have heard what the other did.
            Err(HoldfastError::NotFound { .. } | HoldfastError::Invalid { .. }) => return Ok(()),
            done => done.map_err(failed("in"))?,
        };
        self.in_crew[who] = true;
        self.tell(format!("{} is taken in again", NAMES[who]));
        Ok(())
    }

    /// Somebody may take every device of theirs for removed.
    pub(super) fn doubt_everything_of(&mut self, who: usize) {
        let theirs = self.seats.iter().filter(|seat| seat.who == who);
        self.doubted.extend(theirs.map(|seat| seat.id));
    }
}
