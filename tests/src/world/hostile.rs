//! What enemies put on the carrier: members who write what they must not, thieves with a device's keys, strangers, and
//! whoever runs the carrier.

use holdfast_core::exchange::CarriedFile;
use holdfast_core::exchange::sealed::{SealedLeaf, SealedName};
use holdfast_core::trust::{Certificate, Head, Keys, Recovery, Stop};
use holdfast_core::{DeviceId, PersonId};
use rand::RngExt;
use rand::seq::IndexedRandom;
use uuid::Uuid;

use super::{ANA, BEN, MAREN, World};
use crate::Writer;

impl World {
    /// One enemy does one thing.
    pub(super) fn attack(&mut self) {
        match self.chance.random_range(0..8) {
            0 => self.oversteps(),
            1 => self.writes_in_anothers_thread(),
            2 => self.a_stranger_writes(),
            3 | 4 => self.a_thief_writes(),
            5 => self.stops_somebody_else(),
            6 => self.renames(),
            _ => self.certifies_a_stolen_device(),
        }
    }

    /// A record that must never count.
    fn forged(&mut self) -> String {
        let record = Uuid::from_u128(self.chance.random());
        self.forged.insert(record.simple().to_string().to_uppercase());
        record.to_string()
    }

    fn line(&mut self, kind: &str, record: &str, body: &str) -> String {
        let number = 1_000_000 + i64::from(self.chance.random::<u32>());
        self.enemys.insert(number);
        format!(
            "{{\"v\":1,\"n\":{number},\"hlc\":{{\"ms\":1999000000000,\"count\":1}},\
             \"t\":\"2026-11-06T20:00:00.000+00:00\",\"k\":\"{kind}\",\"id\":\"{record}\",\"body\":{body}}}"
        )
    }

    fn flag(&mut self) -> String {
        let record = self.forged();
        let body = r#"{"session":null,"piece":null,"exercise":null,"place":"hip","severity":9,"signs":[],"on":null}"#;
        self.line("flag", &record, body)
    }

    /// Everybody's devices, to whom an enemy seals.
    fn everybody(&self) -> Vec<Writer> {
        self.seats.iter().map(|seat| Writer::at(&seat.device)).collect()
    }

    fn inject(&mut self, file: CarriedFile, what: &str) {
        self.told.push(format!("enemy: {what}: {}", file.name));
        self.injected.insert(file.name.clone());
        self.files.insert(file.name, file.content);
    }

    fn seal(&mut self, writer: &Writer, leaf: &SealedLeaf, what: &str) {
        let all = self.everybody();
        // At most as many as a file may be sealed to.
        let to: Vec<&Writer> = all.iter().take(14).collect();
        let file = writer.seals(leaf, &to);
        self.inject(file, what);
    }

    /// A device's leaves in a thread, as far as the carrier has them.
    fn lane(&self, device: DeviceId, of: PersonId) -> Vec<SealedLeaf> {
        let maren = &self.writers[MAREN];
        let named = self.files.iter().filter_map(|(name, content)| {
            let parsed = SealedName::parse(name).filter(|parsed| parsed.device == device)?;
            Some(CarriedFile { name: parsed.to_string(), content: content.clone() })
        });
        let mut leaves: Vec<SealedLeaf> =
            named.filter_map(|file| maren.reads(maren, &file).ok()).collect();
        leaves.retain(|leaf| leaf.header.of == of);
        leaves.sort_by_key(|leaf| leaf.header.sequence);
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
        let leaf = self.writers[BEN].writes(thread, lane.last(), &[line]);
        let ben = Writer::with(self.writers[BEN].keys.clone(), self.writers[BEN].certificate);
        self.seal(&ben, &leaf, kind);
    }

    fn writes_in_anothers_thread(&mut self) {
        let line = self.flag();
        let [maren, ana, ben] = &self.writers;
        let leaf = ben.writes((maren.crew(), ana.person()), None, &[line]);
        let ben = Writer::with(ben.keys.clone(), ben.certificate);
        self.seal(&ben, &leaf, "in another's thread");
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

    /// A device that was stolen, and is stopped: it goes on, dates back, or forks.
    fn a_thief_writes(&mut self) {
        let ended: Vec<usize> = (0..self.seats.len())
            .filter(|at| self.seats[*at].stolen && self.seats[*at].ended)
            .collect();
        let Some(at) = ended.choose(&mut self.chance).copied() else { return };
        let who = self.seats[at].who;
        let thief = Writer::at(&self.seats[at].device);
        let (crew, maren) = (self.writers[MAREN].crew(), who == MAREN);
        let of = self.writers[if maren { ANA } else { who }].person();
        let line = if maren {
            let record = self.forged();
            self.line("plan", &record, "{\"block\":\"Thief\",\"text\":\"\"}")
        } else {
            self.flag()
        };
        let lane = self.lane(thief.device(), of);
        let after = match self.chance.random_range(0..3) {
            0 => lane.last(),
            1 => lane.choose(&mut self.chance),
            _ => None,
        };
        let leaf = thief.writes((crew, of), after, &[line]);
        self.seal(&thief, &leaf, "a thief");
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
        let leaf = self.writers[BEN].writes((crew, of), lane.last(), &[line]);
        let ben = Writer::with(self.writers[BEN].keys.clone(), self.writers[BEN].certificate);
        self.seal(&ben, &leaf, "a stop");
    }

    /// A file under another's name, or at another place.
    fn renames(&mut self) {
        let names: Vec<String> = self.files.keys().cloned().collect();
        let two = (names.choose(&mut self.chance), names.choose(&mut self.chance));
        let (Some(one), Some(other)) = two else { return };
        let (Some(from), Some(to)) = (SealedName::parse(one), SealedName::parse(other)) else {
            return;
        };
        let content = self.files[one].clone();
        let name = match self.chance.random_range(0..3) {
            0 => SealedName { tag: to.tag, ..from },
            1 => SealedName { sequence: to.sequence + 1, ..from },
            _ => SealedName { device: to.device, ..from },
        };
        self.inject(CarriedFile { name: name.to_string(), content }, "another name");
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
