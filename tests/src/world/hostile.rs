//! What enemies put on the carrier: members who write what they must not, thieves with a device's keys, strangers, and
//! whoever runs the carrier.

use std::rc::Rc;

use holdfast_core::exchange::CarriedFile;
use holdfast_core::exchange::sealed::{SealedLeaf, SealedName, lane_tag};
use holdfast_core::trust::{Certificate, Head, Keys, Recovery, Stop};
use holdfast_core::{DeviceId, PersonId};
use rand::RngExt;
use rand::seq::IndexedRandom;
use uuid::Uuid;

use super::{ANA, BEN, MAREN, World};
use crate::{Writer, sha256};

/// An enemy's entries have numbers from here on.
pub(super) const ENEMYS: i64 = 1_000_000;

/// What a flag says.
pub(super) const FLAG: &str = r#"{"session":null,"piece":null,"exercise":null,"place":"hip","severity":9,"signs":[],"on":null}"#;

impl World {
    /// One enemy does one thing.
    pub(super) fn attack(&mut self) {
        match self.chance.random_range(0..18) {
            0 | 1 => self.oversteps(),
            2 => self.writes_in_anothers_thread(),
            3 => self.a_stranger_writes(),
            4..=6 => self.a_thief_writes(),
            7 => self.stops_somebody_else(),
            8 => self.renames(),
            9 => self.certifies_a_stolen_device(),
            10 => self.seals_again_what_they_received(),
            11 => self.signs_for_somebody_else(),
            12 => self.writes_for_another_crew(),
            13 => self.says_to_be_a_coach(),
            14 | 15 => self.signs_weakly(),
            16 => self.vanish(),
            _ => self.a_removed_member_writes(),
        }
    }

    /// A record that must never count.
    pub(super) fn forged(&mut self) -> String {
        let record = Uuid::from_u128(self.chance.random());
        self.forged.insert(record.simple().to_string().to_uppercase());
        record.to_string()
    }

    pub(super) fn line(&mut self, kind: &str, record: &str, body: &str) -> String {
        let number = ENEMYS + i64::from(self.chance.random::<u32>());
        self.enemys.insert(number);
        // Dated ahead, or back to before they all met.
        let ms = [1_999_000_000_000_i64, 1_700_000_000_000][self.chance.random_range(0..2)];
        format!(
            "{{\"v\":1,\"n\":{number},\"hlc\":{{\"ms\":{ms},\"count\":1}},\
             \"t\":\"2026-11-06T20:00:00.000+00:00\",\"k\":\"{kind}\",\"id\":\"{record}\",\"body\":{body}}}"
        )
    }

    pub(super) fn flag(&mut self) -> String {
        let record = self.forged();
        self.line("flag", &record, FLAG)
    }

    /// Everybody's devices, to whom an enemy seals.
    pub(super) fn everybody(&self) -> Vec<Writer> {
        self.seats.iter().map(|seat| Writer::at(&seat.device)).collect()
    }

    pub(super) fn inject(&mut self, file: CarriedFile, what: &str) {
        self.told.push(format!("enemy: {what}: {}", file.name));
        self.injected.insert(file.name.clone());
        self.files.insert(file.name, file.content);
    }

    /// The same of what is no leaf of this crew, whoever can open it.
    pub(super) fn inject_unsound(&mut self, file: CarriedFile, what: &str) {
        self.unsound.insert(file.name.clone());
        self.inject(file, what);
    }

    pub(super) fn seal(&mut self, writer: &Writer, leaf: &SealedLeaf, what: &str) {
        let all = self.everybody();
        // At most as many as a file may be sealed to.
        let to: Vec<&Writer> = all.iter().take(14).collect();
        let file = writer.seals(leaf, &to);
        self.inject(file, what);
    }

    /// What a file says to the coach who founded the crew; none where it is no leaf of it. Each file is opened once.
    pub(super) fn opened(&self, name: &str, content: &[u8]) -> Option<Rc<SealedLeaf>> {
        let parsed = SealedName::parse(name)?;
        // What lies there now may be torn, and whole later.
        if !sha256(content).starts_with(&*parsed.hash) {
            return None;
        }
        let mut known = self.opened.borrow_mut();
        let open = || {
            let maren = &self.writers[MAREN];
            let file = CarriedFile { name: name.to_owned(), content: content.to_vec() };
            maren.reads(maren, &file).ok().map(Rc::new)
        };
        known.entry(name.to_owned()).or_insert_with(open).clone()
    }

    /// A device's leaves in a thread, as far as the carrier has them.
    pub(super) fn lane(&self, device: DeviceId, of: PersonId) -> Vec<Rc<SealedLeaf>> {
        let tag = lane_tag(self.writers[MAREN].crew(), of, device);
        let of_lane = |name: &str| {
            SealedName::parse(name).is_some_and(|name| name.device == device && name.tag == tag)
        };
        let files = self.files.iter().filter(|(name, _)| of_lane(name));
        let opened = files.filter_map(|(name, content)| self.opened(name, content));
        let mut leaves: Vec<Rc<SealedLeaf>> = opened.filter(|leaf| leaf.header.of == of).collect();
        leaves.sort_by_key(|leaf| (leaf.header.sequence, leaf.content));
        leaves
    }

    /// Ben writes what only a coach says, and what nobody says of somebody else.
    fn oversteps(&mut self) {
        let [maren, ana, ben] = &self.writers;
        let (maren_id, ana_id, ben_id) = (maren.person(), ana.person(), ben.person());
        let (thread, device) = ((maren.crew(), ben_id), ben.device());
        let record = self.forged();
        let (kind, body) = match self.chance.random_range(0..6) {
            0 => (
                "ruling",
                format!(
                    "{{\"person\":\"{ben_id}\",\"exercise\":\"back-squat\",\"scheme\":\"8,6,5 open\",\"track\":\"Squat\",\
                     \"after\":\"{}\",\"decision\":\"change\",\"loads\":[9000000000000],\"words\":\"\"}}",
                    Uuid::nil()
                ),
            ),
            1 => ("plan", "{\"block\":\"Forged\",\"text\":\"\"}".to_owned()),
            2 => (
                "profile",
                format!(
                    "{{\"person\":\"{maren_id}\",\"name\":\"Forged\",\"role\":\"coach\",\"unit\":\"kg\",\"language\":null,\"crew\":null}}"
                ),
            ),
            3 => ("remove", format!("{{\"person\":\"{ana_id}\",\"device\":null,\"heads\":[]}}")),
            4 => ("forgot", format!("{{\"person\":\"{ana_id}\"}}")),
            _ => (
                "max",
                format!(
                    "{{\"person\":\"{ana_id}\",\"exercise\":\"back-squat\",\"load\":9000000000000,\"tested\":true}}"
                ),
            ),
        };
        let line = self.line(kind, &record, &body);
        let lane = self.lane(device, ben_id);
        let leaf = self.writers[BEN].writes(thread, lane.last().map(Rc::as_ref), &[line]);
        let ben = Writer::with(self.writers[BEN].keys.clone(), self.writers[BEN].certificate);
        self.seal(&ben, &leaf, kind);
    }

    /// The same of what is no leaf of this crew.
    pub(super) fn seal_unsound(&mut self, writer: &Writer, leaf: &SealedLeaf, what: &str) {
        let all = self.everybody();
        let to: Vec<&Writer> = all.iter().take(14).collect();
        let file = writer.seals(leaf, &to);
        self.inject_unsound(file, what);
    }

    fn writes_in_anothers_thread(&mut self) {
        let line = self.flag();
        let [maren, ana, ben] = &self.writers;
        let leaf = ben.writes((maren.crew(), ana.person()), None, &[line]);
        let ben = Writer::with(ben.keys.clone(), ben.certificate);
        self.seal_unsound(&ben, &leaf, "in another's thread");
    }

    fn a_stranger_writes(&mut self) {
        let line = self.flag();
        let drawn: [u8; 16] = self.chance.random();
        let recovery = Recovery::new(drawn);
        let keys = Keys::new(&self.chance.random(), &self.chance.random());
        let certificate = Certificate::sign(&recovery.keys(), &keys.public(), 1);
        let stranger = Writer::with(keys, certificate);
        let [maren, ana, _] = &self.writers;
        // In Ana's thread, in one of their own, or for a crew of their own.
        let thread = match self.chance.random_range(0..3) {
            0 => (maren.crew(), ana.person()),
            1 => (maren.crew(), stranger.person()),
            _ => (stranger.crew(), ana.person()),
        };
        let leaf = stranger.writes(thread, None, &[line]);
        self.seal(&stranger, &leaf, "a stranger");
    }

    /// Words on somebody's device that are signed by somebody else.
    fn stops_somebody_else(&mut self) {
        let Some(at) = self.seat_of(ANA) else { return };
        let device = Writer::at(&self.seats[at].device).device();
        let [maren, ana, ben] = &self.writers;
        let head = Head { device, of: ana.person(), sequence: 0, content: [0; 32] };
        let paper = |who: usize| Recovery::read(&self.codes[who]).unwrap().keys();
        let by = match at % 3 {
            0 => paper(BEN),
            1 => paper(MAREN),
            _ => ben.keys.clone(),
        };
        let body = format!(
            "{{\"of\":\"{}\",\"stop\":\"{}\"}}",
            ana.person(),
            Stop::sign(&by, head).text()
        );
        let (crew, of) = (maren.crew(), ben.person());
        let record = Uuid::from_u128(self.chance.random());
        self.tolerated.insert(record.simple().to_string().to_uppercase());
        let line = self.line("stop", &record.to_string(), &body);
        let lane = self.lane(self.writers[BEN].device(), of);
        let leaf = self.writers[BEN].writes((crew, of), lane.last().map(Rc::as_ref), &[line]);
        let ben = Writer::with(self.writers[BEN].keys.clone(), self.writers[BEN].certificate);
        self.seal(&ben, &leaf, "a stop");
    }

    /// Files are gone: whoever has them brings them again.
    fn vanish(&mut self) {
        for _ in 0..self.chance.random_range(1..6) {
            let names = self.files.names();
            let Some(name) = names.choose(&mut self.chance) else { return };
            self.told.push(format!("enemy: vanishes: {name}"));
            self.files.remove(name);
        }
    }

    /// A file under another's name, or at another place.
    fn renames(&mut self) {
        let names = self.files.names();
        let two = (names.choose(&mut self.chance), names.choose(&mut self.chance));
        let (Some(one), Some(other)) = two else { return };
        let (Some(from), Some(to)) = (SealedName::parse(one), SealedName::parse(other)) else {
            return;
        };
        let content = self.files.get(one).cloned().unwrap_or_default();
        let name = match self.chance.random_range(0..3) {
            0 => SealedName { tag: to.tag, ..from },
            1 => SealedName { sequence: to.sequence + 1, ..from },
            _ => SealedName { device: to.device, ..from },
        };
        // The right one may be drawn, or one that was renamed before gets back its own.
        let is_own = name.to_string() == *one || self.unsound.contains(one);
        if !is_own && self.files.get(&name.to_string()).is_none() {
            self.inject_unsound(CarriedFile { name: name.to_string(), content }, "another name");
        }
    }

    /// Ben says that a device of Ana's is his, with its stolen keys.
    fn certifies_a_stolen_device(&mut self) {
        let stolen = self.seats.iter().position(|seat| seat.stolen && seat.who == ANA);
        let Some(stolen) = stolen else { return };
        let device = Writer::at(&self.seats[stolen].device);
        let ben = Recovery::read(&self.codes[BEN]).unwrap().keys();
        let certificate = Certificate::sign(&ben, &device.keys.public(), 9);
        let line = self.flag();
        let claimed = Writer::with(device.keys.clone(), certificate);
        let (crew, of) = (self.writers[MAREN].crew(), self.writers[ANA].person());
        let leaf = claimed.writes((crew, of), None, &[line]);
        self.seal(&claimed, &leaf, "another's certificate");
    }
}
