//! What is tried once all is over: last words that the stopped cannot read, a file that rots, a gap that is told, somebody
//! who is forgotten.

use std::collections::BTreeSet;

use holdfast_core::exchange::CarriedFile;
use holdfast_core::exchange::sealed::{SealedFault, SealedName, lane_tag};
use holdfast_core::{DeviceId, Language};
use rand::RngExt;
use rand::seq::IndexedRandom;
use rusqlite::Connection;

use super::carrier::{Files, NEVER, Passed, exchange, turn_a_bit};
use super::hostile::ENEMYS;
use super::template::copy;
use super::{ANA, BEN, Done, MAREN, NAMES, World, failed};
use crate::{Device, Writer};

/// Exchanges within which a rotten file is written again: each looks at five of at most some hundred.
const HEALED_WITHIN: usize = 600;

impl World {
    pub(super) fn epilogue(&mut self) -> Done {
        self.check()?;
        self.last_words()?;
        let drawn = self.chance.random_range(0..12);
        match drawn {
            0..=2 => self.what_rots_is_written_again()?,
            3 => self.a_gap_is_told()?,
            _ => {}
        }
        self.check_homes()?;
        if drawn >= 9 {
            self.somebody_is_forgotten()?;
        }
        Ok(())
    }

    /// The coach and a member say something once more. Whoever was stopped or taken out opens nothing of it.
    fn last_words(&mut self) -> Done {
        let before: BTreeSet<String> = self.files.names().into_iter().collect();
        let speaks = [self.honest(MAREN), [self.honest(ANA), self.honest(BEN)].concat()];
        for at in speaks.iter().filter_map(|of| of.first().copied()) {
            let device = &self.seats[at].device;
            device.pass(60_000);
            let language = [Language::En, Language::De][at % 2];
            let chosen = device.holdfast.choose_language(Some(language), device.now());
            chosen.map_err(failed("last words"))?;
            self.exchange(at, NEVER)?;
        }
        for at in [MAREN, ANA, BEN].map(|who| self.honest(who)).concat() {
            self.exchange(at, NEVER)?;
        }
        let maren = &self.writers[MAREN];
        let mut gone: Vec<(String, Writer)> = Vec::new();
        for (at, seat) in self.seats.iter().enumerate().filter(|(_, seat)| seat.ended) {
            let Writer { keys, certificate, .. } = Writer::at(&seat.device);
            gone.push((format!("{at}, which was stopped,"), Writer::with(keys, certificate)));
        }
        for who in [ANA, BEN].into_iter().filter(|who| !self.in_crew[*who]) {
            let home = &self.seats[who].device;
            gone.push((format!("{}, who was taken out,", NAMES[who]), Writer::at(home)));
        }
        for (name, content) in self.files.iter().filter(|(name, _)| !before.contains(*name)) {
            let file = CarriedFile { name: name.clone(), content: content.clone() };
            let Some(leaf) = self.opened(name, content) else { continue };
            // What ends somebody is read by them too, and may be sealed again now.
            if leaf.entries.iter().any(|entry| ["remove", "stop"].contains(&&entry.kind[..])) {
                continue;
            }
            for (who, writer) in &gone {
                if !matches!(writer.reads(maren, &file), Err(SealedFault::NotForUs)) {
                    return Err(format!("{who} opens what was said afterwards: {name}"));
                }
            }
        }
        Ok(())
    }

    /// A file that was written by a device and lies there with other bytes of the same number is written again.
    fn what_rots_is_written_again(&mut self) -> Done {
        let who = self.chance.random_range(0..NAMES.len());
        let Some(at) = self.honest(who).first().copied() else { return Ok(()) };
        let sealed = self.sealed_by.iter().filter(|(_, by)| **by == at).map(|(name, _)| name);
        let there: Vec<&String> = sealed.filter(|name| self.files.get(name).is_some()).collect();
        let Some(name) = there.choose(&mut self.chance).map(|name| (*name).clone()) else {
            return Ok(());
        };
        let whole = self.files.get(&name).cloned().unwrap_or_default();
        if let Some(there) = self.files.get_mut(&name) {
            turn_a_bit(there, &mut self.chance);
        }
        for _ in 0..HEALED_WITHIN {
            self.seats[at].device.pass(61_000);
            self.exchange(at, NEVER)?;
            if self.files.get(&name) == Some(&whole) {
                return Ok(());
            }
        }
        Err(format!("{at} never writes again what rotted: {name}"))
    }

    /// A new laptop of the coach's lacks a leaf in the midst of a lane, and says so.
    fn a_gap_is_told(&mut self) -> Done {
        let place = |name: &str| SealedName::parse(name).map(|name| (name.device, name.sequence));
        let members = [ANA, BEN].into_iter().flat_map(|who| self.honest(who));
        // An enemy who writes in a lane need not show it to a new laptop.
        let injected = self.injected.iter().filter_map(|name| place(name));
        let injected: BTreeSet<DeviceId> = injected.map(|(device, _)| device).collect();
        let ids = members.map(|at| self.seats[at].id).filter(|id| !injected.contains(id));
        let ids: BTreeSet<DeviceId> = ids.collect();
        let places: BTreeSet<_> =
            self.files.names().iter().filter_map(|name| place(name)).collect();
        let inner = places.iter().filter(|(device, sequence)| {
            *sequence > 1 && ids.contains(device) && places.contains(&(*device, sequence + 1))
        });
        let inner: Vec<_> = inner.copied().collect();
        let Some(gap) = inner.choose(&mut self.chance).copied() else { return Ok(()) };
        let mut shown = Files::default();
        for (name, content) in self.files.iter().filter(|(name, _)| place(name) != Some(gap)) {
            shown.insert(name.clone(), content.clone());
        }
        let usual = self.arrivals_on_a_new_laptop(self.files.clone())?;
        let now = self.arrivals_on_a_new_laptop(shown)?;
        let number = gap.1.to_string();
        match now.iter().any(|told| !usual.contains(told) && told.contains(&number)) {
            true => Ok(()),
            false => Err(format!("nobody is told that {gap:?} is missing: {now:?}")),
        }
    }

    /// What a laptop of the coach's, set up with the code from paper, says of what has arrived.
    fn arrivals_on_a_new_laptop(&mut self, mut files: Files) -> Result<Vec<String>, String> {
        let home = self.folder("laptop");
        let device = self.set_up(MAREN, home, &files)?.ok_or("nothing to restore")?;
        exchange(&device, &mut files, NEVER, &mut self.chance, &mut Passed::default())
            .map_err(failed("exchange"))?;
        let first = chrono::NaiveDate::from_ymd_opt(2026, 11, 2).ok_or("a date")?;
        Ok(device.holdfast.board(first).map_err(failed("board"))?.arrivals)
    }

    /// The coach forgets somebody who is out: nothing of them comes back, and no member hears of it.
    fn somebody_is_forgotten(&mut self) -> Done {
        let Some(coach) = self.honest(MAREN).first().copied() else { return Ok(()) };
        self.open_again(coach)?;
        let out = [BEN, ANA].into_iter().find(|who| !self.in_crew[*who]);
        let who = out.unwrap_or(BEN);
        let person = self.writers[who].person();
        if out.is_none() {
            for at in self.honest(who) {
                self.open_again(at)?;
            }
            self.take_out(who)?;
        }
        let member = self.honest(ANA + BEN - who).first().copied();
        let device = &self.seats[coach].device;
        let crew = device.holdfast.crew().map_err(failed("crew"))?;
        let known = crew.people.iter().find(|known| known.person == person && !known.standing);
        let Some(name) = known.map(|known| known.name.clone()) else { return Ok(()) };
        device.holdfast.forget(name, device.now()).map_err(failed("forget"))?;
        let crew_id = self.writers[MAREN].crew();
        for _ in 0..2 {
            let mut passed = Passed::default();
            let device = &self.seats[coach].device;
            exchange(device, &mut self.files, NEVER, &mut self.chance, &mut passed)
                .map_err(failed("exchange"))?;
            let theirs = |name: &&String| {
                SealedName::parse(name)
                    .is_some_and(|name| lane_tag(crew_id, person, name.device) == name.tag)
            };
            if let Some(name) = passed.asked.iter().find(theirs) {
                return Err(format!("{coach} fetches of whom it has forgotten: {name}"));
            }
        }
        if let Some(member) = member {
            self.open_again(member)?;
            self.exchange(member, NEVER)?;
            // Enemies say so too, of whom they like.
            let sql = "SELECT count(*) FROM entry WHERE kind = 'forgot' AND n < ?1";
            if self.counts(member, sql, &[&ENEMYS])? > 0 {
                return Err(format!("{member} is told whom the coach has forgotten"));
            }
        }
        let of = person.0;
        for table in ["leaf", "heard", "held", "file", "outbox"] {
            let sql = format!("SELECT count(*) FROM {table} WHERE of = ?1");
            if self.counts(coach, &sql, &[&of])? > 0 {
                return Err(format!("{coach} still has rows of whom it has forgotten: {table}"));
            }
        }
        Ok(())
    }

    fn open_again(&mut self, at: usize) -> Done {
        let home = self.folder("again");
        let seat = &mut self.seats[at];
        copy(&seat.device.home, &home);
        seat.device = Device::open(home, seat.device.now()).map_err(failed("open"))?;
        Ok(())
    }

    /// What a query of a home counts.
    fn counts(&self, at: usize, sql: &str, key: &[&dyn rusqlite::ToSql]) -> Result<i64, String> {
        let device = &self.seats[at].device;
        let _ = device.holdfast.shut();
        let database = Connection::open(device.home.join("holdfast.db")).expect("a database");
        database.query_row(sql, key, |row| row.get(0)).map_err(|error| error.to_string())
    }
}
