//! What people of the crew do who mean ill, and whoever has their devices: with keys that others trust.

use std::rc::Rc;

use holdfast_core::PersonId;
use holdfast_core::exchange::CarriedFile;
use holdfast_core::exchange::sealed::{SealedName, lane_tag};
use holdfast_core::trust::{Certificate, Keys, PublicKeys, Recovery};
use rand::RngExt;
use rand::seq::IndexedRandom;
use uuid::Uuid;

use super::hostile::FLAG;
use super::{ANA, BEN, MAREN, World};
use crate::Writer;

impl World {
    /// A device that was stolen, and is stopped: it goes on, dates back, or forks.
    pub(super) fn a_thief_writes(&mut self) {
        let ended: Vec<usize> = (0..self.seats.len())
            .filter(|at| self.seats[*at].stolen && self.seats[*at].ended)
            .collect();
        let Some(at) = ended.choose(&mut self.chance).copied() else { return };
        let who = self.seats[at].who;
        if who == MAREN {
            return self.a_thief_is_coach(at);
        }
        let line = self.flag();
        self.goes_on(at, self.writers[who].person(), line, "a thief");
    }

    /// Whoever has the coach's laptop, which is stopped, says what only a coach may: not everybody has heard of the stop.
    fn a_thief_is_coach(&mut self, at: usize) {
        let member = [ANA, BEN][self.chance.random_range(0..2)];
        let person = self.writers[member].person();
        let record = self.forged();
        let (kind, of, body) = match self.chance.random_range(0..6) {
            0 => ("plan", person, r#"{"block":"Thief","text":""}"#.to_owned()),
            1 => {
                self.doubt_everything_of(member);
                (
                    "remove",
                    person,
                    format!("{{\"person\":\"{person}\",\"device\":null,\"heads\":[]}}"),
                )
            }
            2 => {
                self.doubt_everything_of(member);
                let device = self.seats[member].id;
                let body =
                    format!("{{\"person\":\"{person}\",\"device\":\"{device}\",\"heads\":[]}}");
                ("remove", person, body)
            }
            3 => ("forgot", self.writers[MAREN].person(), format!("{{\"person\":\"{person}\"}}")),
            _ => {
                let stranger = self.stranger();
                let id = stranger.person();
                self.stranger_writes_in_their_own(&stranger);
                let PublicKeys { sign, open } = stranger.certificate.person_keys();
                let hex = |key: [u8; 32]| key.iter().map(|byte| format!("{byte:02x}")).collect();
                let (sign, open): (String, String) = (hex(sign), hex(open));
                let body = format!(
                    "{{\"person\":\"{id}\",\"sign\":\"{sign}\",\"open\":\"{open}\",\"label\":\"Eve\"}}"
                );
                ("admit", id, body)
            }
        };
        let line = self.line(kind, &record, &body);
        self.goes_on(at, of, line, kind);
    }

    /// Somebody whom nobody knows.
    pub(super) fn stranger(&mut self) -> Writer {
        let recovery = Recovery::new(self.chance.random());
        let keys = Keys::new(&self.chance.random(), &self.chance.random());
        let certificate = Certificate::sign(&recovery.keys(), &keys.public(), 1);
        Writer::with(keys, certificate)
    }

    fn stranger_writes_in_their_own(&mut self, stranger: &Writer) {
        let line = self.flag();
        let thread = (self.writers[MAREN].crew(), stranger.person());
        let leaf = stranger.writes(thread, None, &[line]);
        self.seal(stranger, &leaf, "a stranger whom a thief takes in");
    }

    /// A member who was taken out, or whoever has a device of theirs, writes on.
    pub(super) fn a_removed_member_writes(&mut self) {
        let out = (0..self.seats.len()).filter(|at| {
            let seat = &self.seats[*at];
            !self.in_crew[seat.who] && !seat.ended
        });
        let Some(at) = out.collect::<Vec<_>>().choose(&mut self.chance).copied() else { return };
        let who = self.seats[at].who;
        // Once they are taken in again, it counts.
        let record = Uuid::from_u128(self.chance.random());
        self.while_out.push((who, record.simple().to_string().to_uppercase()));
        let line = self.line("flag", &record.to_string(), FLAG);
        self.goes_on(at, self.writers[who].person(), line, "taken out");
    }

    /// A device's next leaf in a thread, one beside an older one of its, or another first one.
    fn goes_on(&mut self, at: usize, of: PersonId, line: String, what: &str) {
        let writer = Writer::at(&self.seats[at].device);
        let lane = self.lane(writer.device(), of);
        let after = match self.chance.random_range(0..3) {
            0 => lane.last().map(Rc::as_ref),
            1 => lane.choose(&mut self.chance).map(Rc::as_ref),
            _ => None,
        };
        let leaf = writer.writes((self.writers[MAREN].crew(), of), after, &[line]);
        self.seal(&writer, &leaf, what);
    }

    /// A member seals what was for them again, to everybody: under its own name, and under one that another looks for.
    pub(super) fn seals_again_what_they_received(&mut self) {
        let (from, to) = if self.chance.random() { (ANA, BEN) } else { (BEN, ANA) };
        let reader = self.writers[from].person();
        let opened = self.files.iter().filter_map(|(name, content)| {
            let leaf = self.opened(name, content)?;
            (leaf.header.of == reader && leaf.header.person != reader).then_some(leaf)
        });
        let leaves: Vec<_> = opened.collect();
        let Some(leaf) = leaves.choose(&mut self.chance).cloned() else { return };
        let all = self.everybody();
        let audience: Vec<&Writer> = all.iter().take(14).collect();
        let file = self.writers[from].seals(&leaf, &audience);
        let Some(named) = SealedName::parse(&file.name) else { return };
        let tag = lane_tag(self.writers[MAREN].crew(), self.writers[to].person(), named.device);
        let other = SealedName { tag, ..named };
        let misnamed = CarriedFile { name: other.to_string(), content: file.content.clone() };
        self.inject(file, "received, and sealed again");
        self.inject_unsound(misnamed, "the same as somebody else's");
    }

    /// Ben writes under the coach's certificate, which he has from every leaf of the coach's.
    pub(super) fn signs_for_somebody_else(&mut self) {
        let record = self.forged();
        let line = self.line("plan", &record, r#"{"block":"Signed by Ben","text":""}"#);
        let Some(coach) = self.seat_of(MAREN) else { return };
        let [maren, _, ben] = &self.writers;
        let certificate = Writer::at(&self.seats[coach].device).certificate;
        let claimed = Writer::with(ben.keys.clone(), certificate);
        let thread = (maren.crew(), ben.person());
        let lane = self.lane(claimed.device(), ben.person());
        let leaf = claimed.writes(thread, lane.last().map(Rc::as_ref), &[line]);
        self.seal_unsound(&claimed, &leaf, "under another's certificate");
    }

    /// Ben writes for a crew of his own, and shows it to this one.
    pub(super) fn writes_for_another_crew(&mut self) {
        let line = self.flag();
        let ben = &self.writers[BEN];
        let leaf = ben.writes((ben.crew(), ben.person()), None, &[line]);
        let ben = Writer::with(ben.keys.clone(), ben.certificate);
        self.seal_unsound(&ben, &leaf, "for another crew");
    }

    /// Ben says of himself that he is a coach, which he may say, and writes a plan.
    pub(super) fn says_to_be_a_coach(&mut self) {
        let person = self.writers[BEN].person();
        let record = Uuid::from_u128(self.chance.random());
        self.tolerated.insert(record.simple().to_string().to_uppercase());
        let body = format!(
            "{{\"person\":\"{person}\",\"name\":\"Ben\",\"role\":\"coach\",\"unit\":\"kg\",\"language\":null,\"crew\":null}}"
        );
        let said = self.line("profile", &record.to_string(), &body);
        let forged = self.forged();
        let plan = self.line("plan", &forged, r#"{"block":"A coach's","text":""}"#);
        let ben = Writer::with(self.writers[BEN].keys.clone(), self.writers[BEN].certificate);
        let thread = (self.writers[MAREN].crew(), person);
        let lane = self.lane(ben.device(), person);
        let first = ben.writes(thread, lane.last().map(Rc::as_ref), &[said]);
        let second = ben.writes(thread, Some(&first), &[plan]);
        self.seal(&ben, &first, "says to be a coach");
        self.seal(&ben, &second, "and writes a plan");
    }
}
