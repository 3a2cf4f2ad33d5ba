//! A leaf of format 1: one immutable file of a lane, signed inside and sealed outside.
//!
//! From the inside out: a first line with certificate and signature, a header line, entries one a line; compressed
//! and padded; sealed by age to the people of one thread. docs/leaf.md says it for whoever reads or writes one
//! elsewhere.

mod digits;
mod envelope;
mod fault;
mod first_line;
mod header;
#[cfg(feature = "fuzz")]
pub mod inside;
mod name;
mod pack;
mod part;
mod scan;

#[cfg(test)]
mod carrier_sees;
#[cfg(test)]
mod limits;
#[cfg(test)]
mod no_secret;
#[cfg(test)]
mod outside;
#[cfg(test)]
pub(super) mod tests;
#[cfg(test)]
mod vectors;

use uuid::Uuid;

pub use digits::{Digits, NoDigits};
pub use envelope::{Audience, MOST_RECIPIENTS, lane_tag};
pub use fault::SealedFault;
pub use header::{LaneHead, SealedHeader};
pub(crate) use name::stored_hash;
pub use name::{FileHash, SealedName, Tag};
pub use part::{LanePart, PLACES_A_PART};

use crate::id::{CrewId, PersonId};
use crate::journal::Entry;
use crate::planted::{Planted, planted};
use crate::trust::{Certificate, Keys, first_link};

/// The largest file.
pub const MAX_SEALED_BYTES: usize = 4 * 1024 * 1024;
/// The most that a file may hold once it is inflated.
pub const MAX_INFLATED_BYTES: usize = 16 * 1024 * 1024;
/// The format that is written here, and the highest that is read.
pub const SEALED_FORMAT: u32 = 1;

/// A leaf that was opened and found whole.
#[derive(Clone, Debug)]
pub struct SealedLeaf {
    /// Who wrote it, on which device.
    pub certificate: Certificate,
    /// What its header says.
    pub header: SealedHeader,
    /// The header as it was written.
    pub header_line: String,
    /// The entries.
    pub entries: Vec<Entry>,
    /// SHA-256 of all after the first line: what the chain is made of.
    pub content: [u8; 32],
    /// Its writer's signature; none before it is signed.
    pub(crate) signature: Option<[u8; 64]>,
}

/// Signed or not yet, it says the same.
impl PartialEq for SealedLeaf {
    fn eq(&self, other: &SealedLeaf) -> bool {
        let says = |leaf: &SealedLeaf| (leaf.certificate, leaf.content);
        says(self) == says(other) && self.entries == other.entries
    }
}

impl Eq for SealedLeaf {}

/// Whose leaves a device takes in.
#[derive(Clone, Copy, Debug)]
pub struct Expected {
    /// The crew.
    pub crew: CrewId,
    /// The coach who founded it.
    pub founder: PersonId,
    /// The member whose device this is; none on one of the founder's, which holds every thread.
    pub member: Option<PersonId>,
}

/// What a leaf follows, in its lane.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Follows {
    /// The sequence of the leaf before it; 0 for the first.
    pub sequence: u64,
    /// That leaf's content hash; for the first the lane's first link.
    pub content: [u8; 32],
}

impl Follows {
    /// What the first leaf of a lane follows.
    pub fn nothing(crew: CrewId, of: PersonId, certificate: &Certificate) -> Follows {
        Follows { sequence: 0, content: first_link(crew.0, of, certificate) }
    }
}

/// Seals bytes that are no leaf, such as a message of a pairing.
pub(crate) fn wrap(bytes: &[u8], audience: &Audience) -> Result<Vec<u8>, SealedFault> {
    envelope::seal(bytes, audience)
}

/// A leaf's file that a recovery code alone opens, sealed once more to a device's own keys: it never leaves the device. None
/// for a file that they open already.
pub(crate) fn own_copy(
    file: &[u8],
    paper: &Keys,
    own: &Keys,
) -> Result<Option<Vec<u8>>, SealedFault> {
    if unwrap(file, &[own]).is_ok() {
        return Ok(None);
    }
    let member = vec![own.public().open];
    let audience = Audience { founder: Vec::new(), member, papers: Vec::new() };
    wrap(&unwrap(file, &[paper])?, &audience).map(Some)
}

/// Opens them, once their head was looked at.
pub(crate) fn unwrap(file: &[u8], keys: &[&Keys]) -> Result<Vec<u8>, SealedFault> {
    scan::scan(file)?;
    envelope::open(file, keys)
}

impl SealedLeaf {
    /// Makes a leaf of some entries, whose numbers rise. The keys are those that `certificate` names.
    pub fn write(
        certificate: Certificate,
        (crew, of): (CrewId, PersonId),
        follows: Follows,
        seen: Vec<LaneHead>,
        entries: Vec<Entry>,
    ) -> SealedLeaf {
        let header = SealedHeader {
            leaf: SEALED_FORMAT,
            crew,
            person: certificate.person(),
            device: certificate.device(),
            of,
            sequence: follows.sequence + 1,
            previous: header::hex(&follows.content),
            count: entries.len() as u64,
            reads: SEALED_FORMAT,
            seen,
        };
        let header_line = header.line();
        let content = first_line::content_hash(&body(&header_line, &entries));
        SealedLeaf { certificate, header, header_line, entries, content, signature: None }
    }

    /// A leaf from what is kept of it; none where that is not what its content hash says.
    pub(crate) fn written(
        certificate: Certificate,
        header_line: String,
        entries: Vec<Entry>,
        content: [u8; 32],
        signature: Option<[u8; 64]>,
    ) -> Option<SealedLeaf> {
        let header = SealedHeader::read(&header_line).ok()?;
        let as_written = first_line::content_hash(&body(&header_line, &entries)) == content;
        let leaf = SealedLeaf { certificate, header, header_line, entries, content, signature };
        as_written.then_some(leaf)
    }

    /// The leaf with its writer's signature.
    pub(crate) fn signed(self, device: &Keys) -> SealedLeaf {
        let signature = first_line::sign(&self.certificate, &self.content, device);
        SealedLeaf { signature: Some(signature), ..self }
    }

    /// The leaf with a signature that was made elsewhere, whether it fits or not: as whoever means ill would write it.
    pub fn with_signature(self, signature: [u8; 64]) -> SealedLeaf {
        SealedLeaf { signature: Some(signature), ..self }
    }

    /// The text of the leaf: its first line, then its body. One that was read keeps its writer's signature; another is
    /// signed by `device`.
    pub fn text(&self, device: &Keys) -> Vec<u8> {
        let first = match &self.signature {
            Some(signature) => first_line::signed(&self.certificate, signature),
            None => first_line::write(&self.certificate, &self.content, device),
        };
        [first.into_bytes(), body(&self.header_line, &self.entries)].concat()
    }

    /// The file: compressed, padded and sealed to `audience`. Sealing draws a key of its own, so no two files of a
    /// leaf are the same.
    ///
    /// # Errors
    /// [`SealedFault`] where it would be larger than a file may be, or the audience than it may be.
    pub fn seal(&self, device: &Keys, audience: &Audience) -> Result<Vec<u8>, SealedFault> {
        let text = self.text(device);
        if text.len() > MAX_INFLATED_BYTES {
            return Err(SealedFault::TooLarge { bytes: text.len() as u64 });
        }
        let file = envelope::seal(&pack::pack(&text), audience)?;
        match file.len() > MAX_SEALED_BYTES {
            true => Err(SealedFault::TooLarge { bytes: file.len() as u64 }),
            false => Ok(file),
        }
    }

    /// The name of a file of it.
    pub fn name(&self, file: &[u8]) -> SealedName {
        let SealedHeader { device, sequence, crew, of, .. } = self.header;
        SealedName {
            device,
            tag: lane_tag(crew, of, device),
            sequence,
            hash: name::stored_hash(file),
        }
    }

    /// Opens a file that a carrier brought, and checks all of it that stands in the file itself. Whether its writer
    /// is known and still counts is not in it.
    ///
    /// # Errors
    /// Why it is left alone, the cheapest reason first.
    pub fn open(
        name: &SealedName,
        file: &[u8],
        keys: &[&Keys],
        expected: &Expected,
    ) -> Result<SealedLeaf, SealedFault> {
        let leaf = SealedLeaf::open_any(name, file, keys)?;
        leaf.is_expected(expected)?;
        Ok(leaf)
    }

    /// The same of whatever crew and thread: what a person looks for who has nothing but their recovery code.
    pub(crate) fn open_any(
        name: &SealedName,
        file: &[u8],
        keys: &[&Keys],
    ) -> Result<SealedLeaf, SealedFault> {
        if file.len() > MAX_SEALED_BYTES {
            return Err(SealedFault::TooLarge { bytes: file.len() as u64 });
        }
        if name::stored_hash(file) != name.hash {
            return Err(SealedFault::Torn);
        }
        scan::scan(file)?;
        let packed = envelope::open(file, keys)?;
        let text = pack::unpack(&packed)?;
        let leaf = SealedLeaf::read(&text)?;
        leaf.is_called(name)?;
        Ok(leaf)
    }

    /// Opens what a device kept for itself of a file that it no longer opens: see [`own_copy`].
    pub(crate) fn open_own(
        name: &SealedName,
        copy: &[u8],
        keys: &Keys,
        expected: &Expected,
    ) -> Result<SealedLeaf, SealedFault> {
        let leaf = SealedLeaf::read(&pack::unpack(&unwrap(copy, &[keys])?)?)?;
        leaf.is_called(name)?;
        leaf.is_expected(expected)?;
        Ok(leaf)
    }

    /// Reads the text of a leaf and checks signature, header and entries.
    ///
    /// # Errors
    /// What of it is wrong.
    pub fn read(text: &[u8]) -> Result<SealedLeaf, SealedFault> {
        let first_line::Signed { certificate, signature, content, body } = first_line::read(text)?;
        let body = std::str::from_utf8(body).map_err(|_| SealedFault::NotText)?;
        if body.contains('\r') || !body.ends_with('\n') {
            return Err(SealedFault::NotText);
        }
        let mut lines = body[..body.len() - 1].split('\n');
        let header_line = lines.next().unwrap_or_default();
        let header = SealedHeader::read(header_line)?;
        if header.device != certificate.device() || header.person != certificate.person() {
            return Err(SealedFault::NotTheWriters);
        }
        let entries = header.entries(lines)?;
        Ok(SealedLeaf {
            certificate,
            header,
            header_line: header_line.to_owned(),
            entries,
            content,
            signature: Some(signature),
        })
    }

    fn is_expected(&self, expected: &Expected) -> Result<(), SealedFault> {
        let SealedHeader { crew, person, of, .. } = self.header;
        if crew != expected.crew && !planted(Planted::AnyCrew) {
            return Err(SealedFault::OtherCrew);
        }
        // Only a member and the founder write in a thread, and a member's device has its own alone.
        let written = person == of || person == expected.founder;
        let elsewhere = !written || expected.member.is_some_and(|member| member != of);
        if elsewhere && !planted(Planted::AnyThread) {
            return Err(SealedFault::OtherThread);
        }
        Ok(())
    }

    fn is_called(&self, name: &SealedName) -> Result<(), SealedFault> {
        let SealedHeader { crew, of, device, sequence, .. } = self.header;
        let called = SealedName { device, tag: lane_tag(crew, of, device), sequence, ..*name };
        if called == *name { Ok(()) } else { Err(SealedFault::OtherName) }
    }
}

/// True for bytes that a name was made from.
pub(crate) fn is_as_named(name: &SealedName, file: &[u8]) -> bool {
    name::stored_hash(file) == name.hash
}

/// Says whether bytes have the outermost layer of a leaf: all that anybody sees who cannot open them.
pub(crate) fn is_sealed(file: &[u8]) -> Result<(), SealedFault> {
    scan::scan(file)
}

/// Header and entries, each with its newline.
fn body(header_line: &str, entries: &[Entry]) -> Vec<u8> {
    let lines = std::iter::once(header_line).chain(entries.iter().map(|entry| entry.raw.as_str()));
    let mut body = Vec::new();
    for line in lines {
        body.extend_from_slice(line.as_bytes());
        body.push(b'\n');
    }
    body
}

/// The identity that names of files are made of: nobody reads a person or a crew off it.
fn simple(id: Uuid) -> String {
    id.simple().to_string()
}
