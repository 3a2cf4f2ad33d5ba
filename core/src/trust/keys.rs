//! Keys: of a person, made from the recovery secret on paper, and of a device.
//!
//! Keys that sign and keys that open are separate and never made from one another. Nothing secret here can be
//! printed, and all of it is wiped when it is let go.

use ed25519_dalek::{Signature, Signer, SigningKey, VerifyingKey};
use hkdf::Hkdf;
use sha2::Sha256;
use x25519_dalek::{PublicKey, StaticSecret};
use zeroize::Zeroizing;

use super::label::{self, Label, under};
use crate::planted::{Planted, planted};

/// Bytes of a public key.
pub const KEY_BYTES: usize = 32;
/// Bytes of a signature.
pub const SIGNATURE_BYTES: usize = 64;

/// A pair of keys that signs, and a pair that opens what is sealed to it.
#[derive(Clone)]
pub struct Keys {
    sign: SigningKey,
    open: StaticSecret,
}

/// The public half of [`Keys`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PublicKeys {
    /// Ed25519: signatures are checked with it.
    pub sign: [u8; KEY_BYTES],
    /// X25519: files are sealed to it.
    pub open: [u8; KEY_BYTES],
}

impl Keys {
    /// Keys of 32 bytes each: of a device, drawn by its shell.
    pub fn new(sign: &[u8; 32], open: &[u8; 32]) -> Keys {
        Keys { sign: SigningKey::from_bytes(sign), open: StaticSecret::from(*open) }
    }

    /// The keys of a person, by HKDF-SHA256 (RFC 5869) without salt from their recovery secret.
    pub(super) fn of_person(secret: &[u8; 16]) -> Keys {
        let derived = Hkdf::<Sha256>::new(None, secret);
        let key = |info: &Label| {
            let mut key = Zeroizing::new([0; 32]);
            // Only a length of over 8160 bytes fails.
            derived.expand(info, key.as_mut()).map(|()| key).unwrap_or_default()
        };
        Keys::new(&key(&label::SIGN), &key(&label::OPEN))
    }

    /// A boot's name and a length in milliseconds, below 2^40, that only this device can make of what its system calls
    /// that boot: with the same every time of one boot nobody tells which boot it was, or how long it lasts.
    pub(super) fn boot(&self, named: &str) -> (String, i64) {
        let hash = label::hash(&label::BOOT, &[&self.secrets()[..], named.as_bytes()]);
        let mut offset = [0; 8];
        offset[3..].copy_from_slice(&hash[8..13]);
        (data_encoding::HEXLOWER.encode(&hash[..8]), i64::from_be_bytes(offset))
    }

    /// The keys of a device that a copied home becomes: by HKDF-SHA256 from the person's recovery secret, salted
    /// with where and when it was found to be a copy.
    pub(super) fn of_copy(secret: &[u8; 16], place: &[u8]) -> Keys {
        let derived = Hkdf::<Sha256>::new(Some(place), secret);
        let mut both = Zeroizing::new([0; 64]);
        // Only a length of over 8160 bytes fails.
        let expanded = derived.expand(&label::COPY, both.as_mut());
        debug_assert!(expanded.is_ok());
        let (mut sign, mut open) = (Zeroizing::new([0; 32]), Zeroizing::new([0; 32]));
        sign.copy_from_slice(&both[..32]);
        open.copy_from_slice(&both[32..]);
        Keys::new(&sign, &open)
    }

    /// The public half.
    pub fn public(&self) -> PublicKeys {
        let open = PublicKey::from(&self.open).to_bytes();
        PublicKeys { sign: self.sign.verifying_key().to_bytes(), open }
    }

    /// Signs bytes under a label.
    pub(crate) fn sign(&self, label: &Label, parts: &[&[u8]]) -> [u8; SIGNATURE_BYTES] {
        self.sign.sign(&under(label, parts)).to_bytes()
    }

    /// Both secrets: to be written into a key file, and nowhere else.
    pub(super) fn secrets(&self) -> Zeroizing<[u8; 64]> {
        let mut both = Zeroizing::new([0; 64]);
        both[..32].copy_from_slice(self.sign.as_bytes());
        both[32..].copy_from_slice(self.open.as_bytes());
        both
    }

    /// The secret that opens, as 32 bytes.
    pub(crate) fn opening(&self) -> &[u8; 32] {
        self.open.as_bytes()
    }
}

/// True when bytes are a signing key's own, only and usual encoding, and the key is not one of the few of small
/// order, under which one signature fits many texts.
///
/// Reading a key as ZIP 215 does takes ten second encodings of good keys; ids are hashes of the bytes, so one key
/// would have several.
pub(crate) fn is_signing_key(key: &[u8; KEY_BYTES]) -> bool {
    VerifyingKey::from_bytes(key)
        .is_ok_and(|read| read.to_edwards().compress().0 == *key && !read.is_weak())
}

/// 2^255 - 19, less by some, the lowest byte first.
const fn prime_less(less: u8) -> [u8; KEY_BYTES] {
    let mut prime = [0xff; KEY_BYTES];
    prime[0] = 0xed - less;
    prime[31] = 0x7f;
    prime
}

/// A small number, the lowest byte first.
const fn small(number: u8) -> [u8; KEY_BYTES] {
    let mut bytes = [0; KEY_BYTES];
    bytes[0] = number;
    bytes
}

/// Every key that gives the secret zero whatever it is sealed with, in the usual encoding: the points of small order
/// (RFC 7748, section 7; Bernstein, "Curve25519: new Diffie-Hellman speed records", 2006, names them).
const OF_SMALL_ORDER: [[u8; KEY_BYTES]; 5] = [
    small(0),
    small(1),
    [
        0xe0, 0xeb, 0x7a, 0x7c, 0x3b, 0x41, 0xb8, 0xae, 0x16, 0x56, 0xe3, 0xfa, 0xf1, 0x9f, 0xc4,
        0x6a, 0xda, 0x09, 0x8d, 0xeb, 0x9c, 0x32, 0xb1, 0xfd, 0x86, 0x62, 0x05, 0x16, 0x5f, 0x49,
        0xb8, 0x00,
    ],
    [
        0x5f, 0x9c, 0x95, 0xbc, 0xa3, 0x50, 0x8c, 0x24, 0xb1, 0xd0, 0xb1, 0x55, 0x9c, 0x83, 0xef,
        0x5b, 0x04, 0x44, 0x5c, 0xc4, 0x58, 0x1c, 0x8e, 0x86, 0xd8, 0x22, 0x4e, 0xdd, 0xd0, 0x9f,
        0x11, 0x57,
    ],
    prime_less(1),
];

/// True when bytes are the usual encoding of a key that sealing with gives a secret: RFC 7748, section 6.1, asks for
/// a check against the few that give zero.
pub(crate) fn is_opening_key(key: &[u8; KEY_BYTES]) -> bool {
    let usual = key.iter().rev().lt(prime_less(0).iter().rev());
    usual && !OF_SMALL_ORDER.contains(key)
}

/// True when a key signed bytes under a label: strictly, which refuses keys and points of small order and numbers
/// that are not reduced (RFC 8032, section 5.1.7).
pub(crate) fn is_signed(
    key: &[u8; KEY_BYTES],
    label: &Label,
    parts: &[&[u8]],
    signature: &[u8; SIGNATURE_BYTES],
) -> bool {
    let (signature, text) = (Signature::from_bytes(signature), under(label, parts));
    let strictly = |key: VerifyingKey| match planted(Planted::LooseSignature) {
        false => key.verify_strict(&text, &signature).is_ok(),
        true => ed25519_dalek::Verifier::verify(&key, &text, &signature).is_ok(),
    };
    is_signing_key(key) && VerifyingKey::from_bytes(key).is_ok_and(strictly)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn gives_a_secret(key: &[u8; KEY_BYTES]) -> bool {
        [[1; KEY_BYTES], [0x5a; KEY_BYTES]].iter().all(|secret| {
            let shared = StaticSecret::from(*secret).diffie_hellman(&PublicKey::from(*key));
            shared.was_contributory()
        })
    }

    #[test]
    fn keys_of_small_order_give_no_secret_and_no_others_are_refused() {
        for key in OF_SMALL_ORDER {
            assert!(!gives_a_secret(&key) && !is_opening_key(&key), "{key:?}");
        }
        for number in 2..=255 {
            assert!(gives_a_secret(&small(number)) && is_opening_key(&small(number)), "{number}");
        }
        // Another encoding of 0 and of 1, and the highest bit.
        let mut high = small(9);
        high[31] = 0x80;
        for key in [
            prime_less(0),
            {
                let mut one = prime_less(0);
                one[0] += 1;
                one
            },
            high,
        ] {
            assert!(!is_opening_key(&key));
        }
    }

    proptest! {
        /// As multiplying with it says.
        #[test]
        fn any_other_key_gives_one(key: [u8; KEY_BYTES], lower: bool) {
            let mut key = key;
            key[31] &= if lower { 0x7f } else { 0xff };
            let usual = key[31] < 0x80 && key < [0xff; KEY_BYTES];
            prop_assert_eq!(is_opening_key(&key), usual && gives_a_secret(&key));
        }
    }
}
