//! A stop: a person's word that one of their devices no longer counts from somewhere on.

use data_encoding::BASE64URL_NOPAD;

use super::id::person_of;
use super::keys::{Keys, SIGNATURE_BYTES, is_signed};
use super::label;
use crate::id::{DeviceId, PersonId};

/// Bytes of a stop.
pub const STOP_BYTES: usize = 169;

const VERSION: u8 = 1;
const SIGNED: usize = STOP_BYTES - SIGNATURE_BYTES;

/// Where a chain ends for good: one device's leaf in one thread.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Head {
    /// The device whose chain it is.
    pub device: DeviceId,
    /// The member whose thread it is in.
    pub of: PersonId,
    /// The last leaf's place; 0 where nothing counts.
    pub sequence: u64,
    /// The last leaf's content hash; zeros where nothing counts.
    pub content: [u8; 32],
}

/// A person's signature under a [`Head`]. It proves itself, so any device carries it.
///
/// | at | bytes | |
/// |---|---|---|
/// | 0 | 1 | version, 1 |
/// | 1 | 32 | the person's key |
/// | 33, 49 | 16, 16 | the device, the member whose thread it is |
/// | 65, 73 | 8, 32 | the head: sequence (the highest byte first), content hash |
/// | 105 | 64 | Ed25519 by the person, under the label `holdfast/stop/1`, over bytes 0 to 104 |
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stop {
    /// The person's key.
    pub by: [u8; 32],
    /// What still counts.
    pub head: Head,
    signature: [u8; SIGNATURE_BYTES],
}

impl Stop {
    /// Signs a head.
    pub fn sign(person: &Keys, head: Head) -> Stop {
        let by = person.public().sign;
        let signature = person.sign(&label::STOP, &[&signed(&by, &head)]);
        Stop { by, head, signature }
    }

    /// Reads a stop and checks its signature.
    pub fn read(bytes: &[u8]) -> Option<Stop> {
        let bytes: &[u8; STOP_BYTES] = bytes.try_into().ok()?;
        let part = |at: usize| -> Option<[u8; 16]> { bytes.get(at..at + 16)?.try_into().ok() };
        let head = Head {
            device: DeviceId(uuid::Uuid::from_bytes(part(33)?)),
            of: PersonId(uuid::Uuid::from_bytes(part(49)?)),
            sequence: u64::from_be_bytes(bytes[65..73].try_into().ok()?),
            content: bytes[73..105].try_into().ok()?,
        };
        let stop = Stop {
            by: bytes[1..33].try_into().ok()?,
            head,
            signature: bytes[SIGNED..].try_into().ok()?,
        };
        let is_none = head.content == [0; 32];
        let whole = bytes[0] == VERSION && (head.sequence == 0) == is_none;
        let is = whole && is_signed(&stop.by, &label::STOP, &[&bytes[..SIGNED]], &stop.signature);
        is.then_some(stop)
    }

    /// Reads one as text.
    pub fn read_text(text: &str) -> Option<Stop> {
        Stop::read(&BASE64URL_NOPAD.decode(text.as_bytes()).ok()?)
    }

    /// All its bytes.
    pub fn bytes(&self) -> [u8; STOP_BYTES] {
        let mut bytes = [0; STOP_BYTES];
        bytes[..SIGNED].copy_from_slice(&signed(&self.by, &self.head));
        bytes[SIGNED..].copy_from_slice(&self.signature);
        bytes
    }

    /// The stop as text.
    pub fn text(&self) -> String {
        BASE64URL_NOPAD.encode(&self.bytes())
    }

    /// Who signed it.
    pub fn person(&self) -> PersonId {
        person_of(&self.by)
    }
}

fn signed(by: &[u8; 32], head: &Head) -> [u8; SIGNED] {
    let mut bytes = [0; SIGNED];
    bytes[0] = VERSION;
    bytes[1..33].copy_from_slice(by);
    bytes[33..49].copy_from_slice(head.device.0.as_bytes());
    bytes[49..65].copy_from_slice(head.of.0.as_bytes());
    bytes[65..73].copy_from_slice(&head.sequence.to_be_bytes());
    bytes[73..].copy_from_slice(&head.content);
    bytes
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trust::tests::{device, person, small_order, with_second_encoding};
    use crate::trust::{device_of, person_of};

    fn head() -> Head {
        let of = person_of(&person(1).public().sign);
        Head { device: device_of(&device(2).public().sign), of, sequence: 7, content: [9; 32] }
    }

    #[test]
    fn a_stop_is_read_as_it_was_signed() {
        let stop = Stop::sign(&person(1), head());
        assert_eq!(Stop::read_text(&stop.text()), Some(stop));
        assert_eq!(stop.person(), head().of);
        let nothing = Head { sequence: 0, content: [0; 32], ..head() };
        assert!(Stop::read(&Stop::sign(&person(1), nothing).bytes()).is_some());
    }

    #[test]
    fn no_other_bytes_are_one() {
        let bytes = Stop::sign(&person(1), head()).bytes();
        for bit in 0..STOP_BYTES * 8 {
            let mut turned = bytes;
            turned[bit / 8] ^= 1 << (bit % 8);
            assert_eq!(Stop::read(&turned), None, "bit {bit}");
        }
        assert_eq!(Stop::read(&bytes[..168]), None);
        assert_eq!(Stop::read(&[&bytes[..], &[0]].concat()), None);
    }

    /// By the device itself it names another person, whose word it is not; and a head that is half one is none.
    #[test]
    fn a_stop_is_its_signers_word_alone() {
        let by_device = Stop::sign(&device(2), head());
        assert_ne!(Stop::read(&by_device.bytes()).map(|stop| stop.person()), Some(head().of));
        for head in [Head { sequence: 0, ..head() }, Head { content: [0; 32], ..head() }] {
            assert_eq!(Stop::read(&Stop::sign(&person(1), head).bytes()), None);
        }
    }

    /// Under a key of small order the neutral point and zero fit some texts, where they are checked loosely: here a
    /// sequence is found for each such key.
    #[test]
    fn nobody_stops_by_a_key_that_anybody_signs_for() {
        use ed25519_dalek::{Signature, Verifier, VerifyingKey};
        let mut signature = [0; SIGNATURE_BYTES];
        signature[0] = 1;
        let stop = |by: [u8; 32], sequence: u64| {
            let head = Head { sequence, ..head() };
            Stop { by, head, signature }
        };
        for by in small_order() {
            let loosely = |sequence: &u64| {
                let text = label::under(&label::STOP, &[&signed(&by, &stop(by, *sequence).head)]);
                let key = VerifyingKey::from_bytes(&by).unwrap();
                key.verify(&text, &Signature::from_bytes(&signature)).is_ok()
            };
            let fits = (1..200).find(loosely).expect("a text that it fits");
            assert_eq!(Stop::read(&stop(by, fits).bytes()), None, "{by:?}");
        }
        for by in with_second_encoding() {
            assert_eq!(Stop::read(&stop(by, 1).bytes()), None, "{by:?}");
        }
    }
}
