//! Leaves written by hand, with the keys that a device of the checks has.

use std::path::Path;

use holdfast_core::exchange::CarriedFile;
use holdfast_core::exchange::sealed::{
    Audience, Expected, Follows, SealedFault, SealedLeaf, SealedName,
};
use holdfast_core::journal::Entry;
use holdfast_core::trust::{Certificate, Kept, Keys, Recovery, crew_of};
use holdfast_core::{CrewId, DeviceId, PersonId};
use sha2::{Digest, Sha256};

use crate::Device;

/// Whoever has a device's keys.
pub struct Writer {
    /// The device's keys.
    pub keys: Keys,
    /// Its certificate.
    pub certificate: Certificate,
    /// The person's, as long as the device has them.
    paper: Option<Keys>,
}

impl Writer {
    /// Somebody with these keys, and this certificate, whether they fit or not.
    pub fn with(keys: Keys, certificate: Certificate) -> Writer {
        Writer { keys, certificate, paper: None }
    }

    /// The keys of a device that was started with a `chance`: see [`Device::start`].
    pub fn of(chance: u8) -> Writer {
        let drawn: Vec<u8> = (0..80).map(|at| chance.wrapping_mul(31).wrapping_add(at)).collect();
        let part = |at: usize| drawn[at..at + 32].try_into().unwrap_or_default();
        let recovery = Recovery::new(drawn[..16].try_into().unwrap_or_default());
        let keys = Keys::new(&part(16), &part(48));
        let certificate = Certificate::sign(&recovery.keys(), &keys.public(), 1);
        Writer { keys, certificate, paper: Some(recovery.keys()) }
    }

    /// Another device of the same person, whose recovery code still lies on this one.
    ///
    /// # Panics
    /// When it does not.
    pub fn another(&self, place: u8) -> Writer {
        let paper = self.paper.as_ref().unwrap();
        let keys = Keys::new(&[place; 32], &[place + 100; 32]);
        let certificate = Certificate::sign(paper, &keys.public(), place);
        Writer { keys, certificate, paper: None }
    }

    /// The keys that lie in a device's home.
    ///
    /// # Panics
    /// When they cannot be read.
    pub fn at(device: &Device) -> Writer {
        Writer::in_home(&device.home)
    }

    /// The same of a home folder.
    ///
    /// # Panics
    /// As [`Writer::at`].
    pub fn in_home(home: &Path) -> Writer {
        let read = |file: &str| std::fs::read(home.join(file)).unwrap();
        let own: serde_json::Value = serde_json::from_slice(&read("device.json")).unwrap();
        let certificate = Certificate::read_text(own["certificate"].as_str().unwrap()).unwrap();
        let kept = Kept::read(&read("device.keys"), None, certificate.device());
        let Kept { keys, recovery } = kept.ok().unwrap();
        Writer { keys, certificate, paper: recovery.map(|recovery| recovery.keys()) }
    }

    /// True as long as the device keeps the recovery code.
    pub fn has_paper(&self) -> bool {
        self.paper.is_some()
    }

    /// The person.
    pub fn person(&self) -> PersonId {
        self.certificate.person()
    }

    /// The device.
    pub fn device(&self) -> DeviceId {
        self.certificate.device()
    }

    /// The crew that the person founded.
    pub fn crew(&self) -> CrewId {
        crew_of(&self.certificate.person_keys().sign)
    }

    /// A leaf of lines in a thread, after another one of its lane.
    ///
    /// # Panics
    /// When a line is none.
    pub fn writes(
        &self,
        (crew, of): (CrewId, PersonId),
        after: Option<&SealedLeaf>,
        lines: &[String],
    ) -> SealedLeaf {
        let follows = match after {
            Some(leaf) => Follows { sequence: leaf.header.sequence, content: leaf.content },
            None => Follows::nothing(crew, of, &self.certificate),
        };
        let read = |line: &String| Entry::read(self.device(), line).unwrap();
        let entries = lines.iter().map(read).collect();
        SealedLeaf::write(self.certificate, (crew, of), follows, Vec::new(), entries)
    }

    /// The file of a leaf, sealed to whoever `to` are.
    ///
    /// # Panics
    /// When it cannot be sealed.
    pub fn seals(&self, leaf: &SealedLeaf, to: &[&Writer]) -> CarriedFile {
        let founder = to.iter().map(|one| one.certificate.device_keys().open).collect();
        self.seals_to(leaf, &Audience { founder, ..Audience::default() })
    }

    /// The same for an audience.
    ///
    /// # Panics
    /// As [`Writer::seals`].
    pub fn seals_to(&self, leaf: &SealedLeaf, audience: &Audience) -> CarriedFile {
        let content = leaf.seal(&self.keys, audience).unwrap();
        CarriedFile { name: leaf.name(&content).to_string(), content }
    }

    /// A leaf of one's own with other lines, at the same place, sealed to `to`: as a newer app, or a hostile one, would
    /// have written it.
    ///
    /// # Panics
    /// When a line is none any more.
    pub fn rewrites(
        &self,
        leaf: &SealedLeaf,
        change: impl Fn(&str) -> String,
        to: &[&Writer],
    ) -> CarriedFile {
        let header = &leaf.header;
        let mut previous = [0; 32];
        for (byte, at) in previous.iter_mut().zip((0..).step_by(2)) {
            *byte = u8::from_str_radix(&header.previous[at..at + 2], 16).unwrap();
        }
        let follows = Follows { sequence: header.sequence - 1, content: previous };
        let lines = leaf.entries.iter().map(|entry| change(&entry.raw));
        let entries = lines.map(|line| Entry::read(self.device(), &line).unwrap()).collect();
        let (thread, seen) = ((header.crew, header.of), header.seen.clone());
        let rewritten = SealedLeaf::write(self.certificate, thread, follows, seen, entries);
        self.seals(&rewritten, to)
    }

    /// Opens a leaf of the crew that `coach` founded.
    ///
    /// # Panics
    /// When it cannot be opened.
    pub fn opens(&self, coach: &Writer, file: &CarriedFile) -> SealedLeaf {
        self.reads(coach, file).unwrap()
    }

    /// The same, where it can be.
    ///
    /// # Errors
    /// Why it cannot.
    pub fn reads(&self, coach: &Writer, file: &CarriedFile) -> Result<SealedLeaf, SealedFault> {
        let expected = Expected { crew: coach.crew(), founder: coach.person(), member: None };
        let name = SealedName::parse(&file.name).ok_or(SealedFault::Foreign)?;
        let keys: Vec<&Keys> = std::iter::once(&self.keys).chain(&self.paper).collect();
        SealedLeaf::open(&name, &file.content, &keys, &expected)
    }
}

/// SHA-256 in hexadecimal.
pub fn sha256(content: &[u8]) -> String {
    Sha256::digest(content).iter().map(|byte| format!("{byte:02x}")).collect()
}
