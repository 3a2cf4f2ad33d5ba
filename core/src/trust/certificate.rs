//! A device's certificate: a person's word that a device is theirs. Every leaf carries it.

use std::cell::Cell;

use data_encoding::BASE64URL_NOPAD;
use serde::{Deserialize, Serialize};

use super::id::{device_of, person_of};
use super::keys::{
    KEY_BYTES, Keys, PublicKeys, SIGNATURE_BYTES, is_opening_key, is_signed, is_signing_key,
};
use super::label::{self, hash};
use crate::id::{DeviceId, PersonId};
use crate::say::sealed as say;

/// Bytes of a certificate.
pub const CERTIFICATE_BYTES: usize = 194;
/// Signs of one as text: base64url without padding (RFC 4648, section 5).
pub const CERTIFICATE_SIGNS: usize = 259;
/// The most devices a person has in all.
pub const MOST_DEVICES: u8 = 32;

const VERSION: u8 = 1;
/// Everything but the signature.
const SIGNED: usize = CERTIFICATE_BYTES - SIGNATURE_BYTES;

/// A person, one of their devices, and the person's signature.
///
/// | at | bytes | |
/// |---|---|---|
/// | 0 | 1 | version, 1 |
/// | 1, 33 | 32, 32 | the person's keys: to sign, to open |
/// | 65, 97 | 32, 32 | the device's keys: to sign, to open |
/// | 129 | 1 | the device's place among the person's, 1 to 32 |
/// | 130 | 64 | Ed25519 by the person, under the label `holdfast/cert/1`, over bytes 0 to 129 |
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(into = "String", try_from = "String")]
pub struct Certificate {
    bytes: [u8; CERTIFICATE_BYTES],
}

/// Why bytes are no certificate.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{}", say::certificate())]
pub enum CertificateFault {
    /// Of another length, or no text of one.
    Form,
    /// Of a later version.
    Newer,
    /// A device's place that there is none of.
    Index,
    /// A key that is none, or not written as it is.
    Key,
    /// The person did not sign it.
    Signature,
}

thread_local! {
    /// The last one that was found sound: the leaves of a lane all carry the same, and checking it takes as long as checking
    /// what it signs.
    static SOUND: Cell<Option<Certificate>> = const { Cell::new(None) };
}

impl Certificate {
    /// Signs a device's public keys.
    pub fn sign(person: &Keys, device: &PublicKeys, index: u8) -> Certificate {
        let mut bytes = [0; CERTIFICATE_BYTES];
        bytes[0] = VERSION;
        let person_is = person.public();
        let keys = [person_is.sign, person_is.open, device.sign, device.open];
        for (at, key) in keys.iter().enumerate() {
            bytes[1 + at * KEY_BYTES..][..KEY_BYTES].copy_from_slice(key);
        }
        bytes[SIGNED - 1] = index;
        let signature = person.sign(&label::CERTIFICATE, &[&bytes[..SIGNED]]);
        bytes[SIGNED..].copy_from_slice(&signature);
        Certificate { bytes }
    }

    /// Reads a certificate and checks all of it.
    ///
    /// # Errors
    /// Why it is none.
    pub fn read(bytes: &[u8]) -> Result<Certificate, CertificateFault> {
        let bytes: [u8; CERTIFICATE_BYTES] =
            bytes.try_into().map_err(|_| CertificateFault::Form)?;
        let read = Certificate { bytes };
        if SOUND.get() == Some(read) {
            return Ok(read);
        }
        if bytes[0] != VERSION {
            return Err(if bytes[0] > VERSION {
                CertificateFault::Newer
            } else {
                CertificateFault::Form
            });
        }
        if !(1..=MOST_DEVICES).contains(&read.index()) {
            return Err(CertificateFault::Index);
        }
        let (person, device) = (read.person_keys(), read.device_keys());
        let signs = [person.sign, device.sign].iter().all(is_signing_key);
        if !(signs && [person.open, device.open].iter().all(is_opening_key)) {
            return Err(CertificateFault::Key);
        }
        let mut signature = [0; SIGNATURE_BYTES];
        signature.copy_from_slice(&bytes[SIGNED..]);
        match is_signed(&person.sign, &label::CERTIFICATE, &[&bytes[..SIGNED]], &signature) {
            true => {
                SOUND.set(Some(read));
                Ok(read)
            }
            false => Err(CertificateFault::Signature),
        }
    }

    /// Reads one as text: no padding, and no second spelling of the same bytes.
    ///
    /// # Errors
    /// As [`Certificate::read`].
    pub fn read_text(text: &str) -> Result<Certificate, CertificateFault> {
        let bytes = BASE64URL_NOPAD.decode(text.as_bytes()).map_err(|_| CertificateFault::Form)?;
        Certificate::read(&bytes)
    }

    /// The certificate as text.
    pub fn text(&self) -> String {
        BASE64URL_NOPAD.encode(&self.bytes)
    }

    /// All its bytes.
    pub fn bytes(&self) -> &[u8; CERTIFICATE_BYTES] {
        &self.bytes
    }

    fn keys(&self, at: usize) -> PublicKeys {
        let key = |at: usize| {
            let mut key = [0; KEY_BYTES];
            key.copy_from_slice(&self.bytes[at..][..KEY_BYTES]);
            key
        };
        PublicKeys { sign: key(at), open: key(at + KEY_BYTES) }
    }

    /// The person's keys.
    pub fn person_keys(&self) -> PublicKeys {
        self.keys(1)
    }

    /// The device's keys.
    pub fn device_keys(&self) -> PublicKeys {
        self.keys(1 + 2 * KEY_BYTES)
    }

    /// The person.
    pub fn person(&self) -> PersonId {
        person_of(&self.person_keys().sign)
    }

    /// The device.
    pub fn device(&self) -> DeviceId {
        device_of(&self.device_keys().sign)
    }

    /// The device's place among the person's, from 1.
    pub fn index(&self) -> u8 {
        self.bytes[SIGNED - 1]
    }

    /// SHA-256 of all bytes: what a leaf's signature names.
    pub(crate) fn digest(&self) -> [u8; 32] {
        use sha2::{Digest, Sha256};
        Sha256::digest(self.bytes).into()
    }
}

impl From<Certificate> for String {
    fn from(certificate: Certificate) -> String {
        certificate.text()
    }
}

impl TryFrom<String> for Certificate {
    type Error = CertificateFault;
    fn try_from(text: String) -> Result<Certificate, CertificateFault> {
        Certificate::read_text(&text)
    }
}

/// The first link of a device's chain in a thread: what stands where a later leaf names the one before it.
pub(crate) fn first_link(crew: uuid::Uuid, of: PersonId, certificate: &Certificate) -> [u8; 32] {
    hash(&label::LANE, &[crew.as_bytes(), of.0.as_bytes(), &certificate.bytes])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trust::tests::{device, person, small_order, with_second_encoding};

    fn good() -> Certificate {
        Certificate::sign(&person(1), &device(2).public(), 3)
    }

    /// Signs bytes as a certificate, whatever they say.
    fn forged(
        person: &Keys,
        change: impl FnOnce(&mut [u8; CERTIFICATE_BYTES]),
    ) -> [u8; CERTIFICATE_BYTES] {
        let mut bytes = good().bytes;
        change(&mut bytes);
        let signature = person.sign(&label::CERTIFICATE, &[&bytes[..SIGNED]]);
        bytes[SIGNED..].copy_from_slice(&signature);
        bytes
    }

    /// Keys that give no secret, or are written otherwise than they are.
    fn not_to_seal_to() -> [[u8; 32]; 3] {
        let mut one = [0; 32];
        one[0] = 1;
        [[0; 32], one, [0xff; 32]]
    }

    #[test]
    fn a_certificate_says_whose_device_it_is() {
        let certificate = good();
        let text = certificate.text();
        assert_eq!(text.len(), CERTIFICATE_SIGNS);
        assert_eq!(Certificate::read_text(&text), Ok(certificate));
        assert_eq!(certificate.person(), person_of(&person(1).public().sign));
        assert_eq!(certificate.device(), device_of(&device(2).public().sign));
        assert_eq!(certificate.index(), 3);
        assert_ne!(certificate.person().0, certificate.device().0);
    }

    /// Any one bit turned: none is a certificate.
    #[test]
    fn no_other_bytes_are_one() {
        let certificate = good();
        for bit in 0..CERTIFICATE_BYTES * 8 {
            let mut turned = certificate.bytes;
            turned[bit / 8] ^= 1 << (bit % 8);
            assert!(Certificate::read(&turned).is_err(), "bit {bit}");
        }
        assert_eq!(Certificate::read(&certificate.bytes[..193]), Err(CertificateFault::Form));
        let longer = [&certificate.bytes[..], &[0]].concat();
        assert_eq!(Certificate::read(&longer), Err(CertificateFault::Form));
    }

    /// Each of these is signed as it stands.
    #[test]
    fn what_is_signed_must_be_right_as_well() {
        let faults = |change: &dyn Fn(&mut [u8; CERTIFICATE_BYTES])| {
            Certificate::read(&forged(&person(1), change)).err()
        };
        for index in [0, 33, 255] {
            assert_eq!(faults(&|bytes| bytes[129] = index), Some(CertificateFault::Index));
        }
        assert_eq!(faults(&|bytes| bytes[0] = 2), Some(CertificateFault::Newer));
        assert_eq!(faults(&|bytes| bytes[0] = 0), Some(CertificateFault::Form));
        // A device's keys the other way round: neither is what its place says.
        let swapped = faults(&|bytes| bytes[65..129].rotate_left(32));
        assert!(swapped.is_none() || swapped == Some(CertificateFault::Key));
        for key in small_order() {
            assert_eq!(
                faults(&|bytes| bytes[65..97].copy_from_slice(&key)),
                Some(CertificateFault::Key)
            );
        }
        for key in not_to_seal_to() {
            assert_eq!(
                faults(&|bytes| bytes[97..129].copy_from_slice(&key)),
                Some(CertificateFault::Key),
                "{key:?}"
            );
        }
        for key in with_second_encoding() {
            assert_eq!(
                faults(&|bytes| bytes[65..97].copy_from_slice(&key)),
                Some(CertificateFault::Key)
            );
        }
        for key in not_to_seal_to() {
            let person_open = faults(&|bytes| bytes[33..65].copy_from_slice(&key));
            assert_eq!(person_open, Some(CertificateFault::Key), "{key:?}");
        }
        // Somebody else's signature, or one under another label.
        let other = forged(&person(9), |_| {});
        assert_eq!(Certificate::read(&other), Err(CertificateFault::Signature));
        let mut mislabelled = good().bytes;
        let signature = person(1).sign(&label::STOP, &[&mislabelled[..SIGNED]]);
        mislabelled[SIGNED..].copy_from_slice(&signature);
        assert_eq!(Certificate::read(&mislabelled), Err(CertificateFault::Signature));
    }

    /// A person's key of small order, under which one signature fits many texts: checked loosely, the neutral point and
    /// zero fit every text under the neutral key.
    #[test]
    fn a_person_whose_key_anybody_signs_for_is_nobody() {
        let mut signature = [0; SIGNATURE_BYTES];
        signature[0] = 1;
        for key in small_order().into_iter().chain(with_second_encoding()) {
            let mut bytes = good().bytes;
            bytes[1..33].copy_from_slice(&key);
            bytes[SIGNED..].copy_from_slice(&signature);
            assert_eq!(Certificate::read(&bytes), Err(CertificateFault::Key), "{key:?}");
        }
    }

    /// The last sign of 259 has two bits that say nothing: spelled otherwise it is another text of the same bytes.
    #[test]
    fn a_text_has_one_spelling() {
        let text = good().text();
        for wrong in [
            format!("{text}="),
            format!("{text}\n"),
            text.replace('-', "+"),
            text[..258].to_owned(),
        ] {
            if wrong != text {
                assert_eq!(Certificate::read_text(&wrong), Err(CertificateFault::Form), "{wrong}");
            }
        }
        let last = text.as_bytes()[258];
        let others = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
        for other in others.iter().filter(|other| **other != last) {
            let wrong = format!("{}{}", &text[..258], char::from(*other));
            assert!(Certificate::read_text(&wrong).is_err(), "{wrong}");
        }
    }
}
