//! Signatures and keys that a strict reader refuses: of small order, not reduced, under no label or another one.

use std::rc::Rc;

use curve25519_dalek::constants::ED25519_BASEPOINT_POINT;
use curve25519_dalek::scalar::{Scalar, clamp_integer};
use holdfast_core::trust::{Certificate, Keys, PublicKeys, Recovery};
use rand::RngExt;
use rand::seq::IndexedRandom;
use sha2::{Digest, Sha256, Sha512};

use super::{ANA, BEN, MAREN, World};
use crate::Writer;

/// The neutral point: a key and half a signature that fit many texts.
const NEUTRAL: [u8; 32] = {
    let mut one = [0; 32];
    one[0] = 1;
    one
};

/// The order of the group (RFC 8032, section 5.1), the lowest byte first.
const ORDER: [u8; 32] = [
    0xed, 0xd3, 0xf5, 0x5c, 0x1a, 0x63, 0x12, 0x58, 0xd6, 0x9c, 0xf7, 0xa2, 0xde, 0xf9, 0xde, 0x14,
    0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0x10,
];

/// A signature (RFC 8032, section 5.1.6), with a number of the signer's choice where the standard has one that nobody
/// foresees.
fn signed(seed: &[u8; 32], number: Scalar, text: &[u8]) -> [u8; 64] {
    let hash: [u8; 64] = Sha512::digest(seed).into();
    let mut half = [0; 32];
    half.copy_from_slice(&hash[..32]);
    let secret = Scalar::from_bytes_mod_order(clamp_integer(half));
    let key = (ED25519_BASEPOINT_POINT * secret).compress();
    let point = (ED25519_BASEPOINT_POINT * number).compress();
    let all: [u8; 64] = Sha512::new()
        .chain_update(point.as_bytes())
        .chain_update(key.as_bytes())
        .chain_update(text)
        .finalize()
        .into();
    let rest = number + Scalar::from_bytes_mod_order_wide(&all) * secret;
    both(*point.as_bytes(), rest.to_bytes())
}

fn both(point: [u8; 32], rest: [u8; 32]) -> [u8; 64] {
    let mut signature = [0; 64];
    signature[..32].copy_from_slice(&point);
    signature[32..].copy_from_slice(&rest);
    signature
}

/// A number and the order of the group: the same number, not reduced.
fn not_reduced(rest: &[u8]) -> [u8; 32] {
    let mut sum = [0; 32];
    let mut carried = 0;
    for (at, byte) in sum.iter_mut().enumerate() {
        let all = u16::from(rest[at]) + u16::from(ORDER[at]) + carried;
        *byte = all.to_le_bytes()[0];
        carried = all >> 8;
    }
    sum
}

impl World {
    /// A member who is in the crew signs in a way that fits by some rules and not by the strict ones.
    pub(super) fn signs_weakly(&mut self) {
        let members = [self.honest(ANA), self.honest(BEN)].concat();
        let Some(at) = members.choose(&mut self.chance).copied() else { return };
        let line = self.flag();
        let (who, own) = (self.seats[at].who, Writer::at(&self.seats[at].device));
        // As docs/leaf.md has a key file: a label, a version, the seed.
        let file = std::fs::read(self.seats[at].device.home.join("device.keys")).unwrap();
        let seed: [u8; 32] = file[17..49].try_into().unwrap();
        let (kind, number): (u32, Scalar) =
            (self.chance.random_range(0..7), Scalar::from_bytes_mod_order(self.chance.random()));
        let paper = Recovery::read(&self.codes[who]).unwrap().keys();
        let other = Keys::new(&self.chance.random(), &self.chance.random());
        let PublicKeys { sign, open } = other.public();
        // Two devices of theirs that there are not: one whose key to sign, one whose key to open is weak.
        let weak = match kind {
            5 => Some(PublicKeys { sign: NEUTRAL, open }),
            6 => Some(PublicKeys { sign, open: [0; 32] }),
            _ => None,
        };
        let writer = match weak {
            Some(keys) => Writer::with(other, Certificate::sign(&paper, &keys, 20)),
            None => own,
        };
        let thread = (self.writers[MAREN].crew(), writer.person());
        let lane = self.lane(writer.device(), writer.person());
        let leaf = writer.writes(thread, lane.last().map(Rc::as_ref), &[line]);
        let says = [&Sha256::digest(writer.certificate.bytes())[..], &leaf.content].concat();
        let labelled = [b"holdfast/leaf/1\0", &says[..]].concat();
        let (what, signature) = match kind {
            0 | 1 => ("without a label", Some(signed(&seed, number, &says))),
            2 => {
                let text = [b"holdfast/cert/1\0", &says[..]].concat();
                ("under another label", Some(signed(&seed, number, &text)))
            }
            3 => ("with a weak point", Some(signed(&seed, Scalar::ZERO, &labelled))),
            4 => {
                let [point, rest] = [0, 32].map(|at| {
                    let signature = signed(&seed, number, &labelled);
                    <[u8; 32]>::try_from(&signature[at..at + 32]).unwrap()
                });
                ("with a number that is not reduced", Some(both(point, not_reduced(&rest))))
            }
            5 => ("with a weak key", Some(both(NEUTRAL, [0; 32]))),
            _ => ("with a key that opens nothing", None),
        };
        let leaf = match signature {
            Some(signature) => leaf.with_signature(signature),
            None => leaf,
        };
        self.seal_unsound(&writer, &leaf, what);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The signature made here is one, and the four that are meant to be refused differ from it alone in what they lack.
    #[test]
    fn a_signature_made_by_hand_is_sound() {
        let (keys, paper) = (Keys::new(&[3; 32], &[4; 32]), Recovery::new([5; 16]).keys());
        let certificate = Certificate::sign(&paper, &keys.public(), 1);
        let writer = Writer::with(keys.clone(), certificate);
        let line = "{\"v\":1,\"n\":1,\"hlc\":{\"ms\":1,\"count\":1},\"t\":\"2026-11-06T20:00:00.000+00:00\",\"k\":\"here\",\
                    \"id\":\"00000000-0000-4000-8000-000000000001\",\"body\":{}}";
        let leaf = writer.writes((writer.crew(), writer.person()), None, &[line.to_owned()]);
        let says = [&Sha256::digest(certificate.bytes())[..], &leaf.content].concat();
        let text = [b"holdfast/leaf/1\0", &says[..]].concat();
        let reads = |signature| {
            let written = leaf.clone().with_signature(signature).text(&keys);
            holdfast_core::exchange::sealed::SealedLeaf::read(&written).is_ok()
        };
        let number = Scalar::from(7_u8);
        let good = signed(&[3; 32], number, &text);
        assert!(reads(good));
        assert!(!reads(signed(&[3; 32], number, &says)));
        assert!(!reads(signed(&[3; 32], Scalar::ZERO, &text)));
        let rest = not_reduced(&good[32..]);
        assert!(!reads(both(good[..32].try_into().unwrap(), rest)));
    }
}
