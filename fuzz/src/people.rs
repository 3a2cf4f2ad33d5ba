//! A coach and a member with fixed keys: those of docs/vectors.

use holdfast_core::exchange::sealed::{Expected, Follows, SealedHeader, SealedLeaf, SealedName};
use holdfast_core::trust::{Certificate, Keys, Recovery, crew_of};
use holdfast_core::{CrewId, PersonId};

/// Somebody with one device and a paper.
pub struct Somebody {
    /// What is on paper.
    pub recovery: Recovery,
    /// The device's keys.
    pub device: Keys,
    /// The device's certificate.
    pub certificate: Certificate,
}

fn somebody(recovery: [u8; 16], sign: u8, open: u8) -> Somebody {
    let (recovery, device) = (Recovery::new(recovery), Keys::new(&[sign; 32], &[open; 32]));
    let certificate = Certificate::sign(&recovery.keys(), &device.public(), 1);
    Somebody { recovery, device, certificate }
}

/// The crew of two.
pub struct Crew {
    /// Its founder.
    pub coach: Somebody,
    /// Its member.
    pub ana: Somebody,
    /// Its id.
    pub id: CrewId,
}

impl Crew {
    /// The coach and the member of docs/vectors.
    pub fn new() -> Crew {
        let (coach, ana) =
            (somebody(*b"the coach's code", 1, 2), somebody(*b"what is on paper", 3, 4));
        let id = crew_of(&coach.recovery.keys().public().sign);
        Crew { coach, ana, id }
    }

    /// The member whose thread it is.
    pub fn of(&self) -> PersonId {
        self.ana.certificate.person()
    }

    /// Whose leaves the member's device takes in.
    pub fn expected(&self) -> Expected {
        let founder = self.coach.certificate.person();
        Expected { crew: self.id, founder, member: Some(self.of()) }
    }

    /// What the member's lane begins with.
    pub fn follows(&self) -> Follows {
        Follows::nothing(self.id, self.of(), &self.ana.certificate)
    }

    /// The header of the first leaf of the member's lane, with so many entries.
    pub fn header(&self, count: u64) -> SealedHeader {
        let thread = (self.id, self.of());
        let none = SealedLeaf::write(self.ana.certificate, thread, self.follows(), vec![], vec![]);
        SealedHeader { count, ..none.header }
    }

    /// The name that the first file of the member's lane has.
    pub fn name(&self, file: &[u8]) -> SealedName {
        let thread = (self.id, self.of());
        SealedLeaf::write(self.ana.certificate, thread, self.follows(), vec![], vec![]).name(file)
    }
}

impl Default for Crew {
    fn default() -> Crew {
        Crew::new()
    }
}
