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

/// True when bytes are the usual encoding of a key that sealing with gives a secret: RFC 7748, section 6.1, asks for
/// a check against the few that give zero.
pub(crate) fn is_opening_key(key: &[u8; KEY_BYTES]) -> bool {
    // 2^255 - 19, the lowest byte first.
    let mut prime = [0xff; KEY_BYTES];
    (prime[0], prime[31]) = (0xed, 0x7f);
    let usual = key.iter().rev().lt(prime.iter().rev());
    let any = StaticSecret::from([1; KEY_BYTES]);
    usual && any.diffie_hellman(&PublicKey::from(*key)).was_contributory()
}

/// True when a key signed bytes under a label: strictly, which refuses keys and points of small order and numbers
/// that are not reduced (RFC 8032, section 5.1.7).
pub(crate) fn is_signed(
    key: &[u8; KEY_BYTES],
    label: &Label,
    parts: &[&[u8]],
    signature: &[u8; SIGNATURE_BYTES],
) -> bool {
    let signature = Signature::from_bytes(signature);
    let strictly = |key: VerifyingKey| key.verify_strict(&under(label, parts), &signature).is_ok();
    is_signing_key(key) && VerifyingKey::from_bytes(key).is_ok_and(strictly)
}
