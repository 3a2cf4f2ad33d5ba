//! A device's keys as they lie on its disk.
//!
//! A phone wraps them with 32 bytes that its system's keystore holds; a desk has no such place, and its file is as
//! open as the account it lies in. Either way the file is of one device alone.

use chacha20poly1305::aead::{Aead, KeyInit, Payload};
use chacha20poly1305::{XChaCha20Poly1305, XNonce};
use hkdf::Hkdf;
use sha2::Sha256;
use zeroize::Zeroizing;

use super::id::device_of;
use super::keys::Keys;
use super::label;
use super::recovery::{RECOVERY_BYTES, Recovery};
use crate::id::DeviceId;
use crate::instant::Instant;

const VERSION: u8 = 1;
const NONCE: usize = 24;
/// Version, both keys, whether there is a recovery secret, and that secret or zeros.
const SECRETS: usize = 1 + 64 + 1 + RECOVERY_BYTES;

/// What a device keeps of its keys.
pub struct Kept {
    /// The device's own.
    pub keys: Keys,
    /// The person's, as long as they have not shown that it is on paper.
    pub recovery: Option<Recovery>,
}

/// Why a key file gives no keys.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum KeyFileFault {
    /// Not one, or cut short.
    Form,
    /// The keystore holds another key, or the file is of another device, or was altered.
    Closed,
}

impl Kept {
    /// The device.
    pub fn device(&self) -> DeviceId {
        device_of(&self.keys.public().sign)
    }

    /// A moment as a journal has it. Its boot is named by a name of our own, and its boot clock counts from a moment of our
    /// own: differences are as they were, and neither which boot it was nor how long ago it began leaves the device.
    pub(crate) fn moment(&self, at: Instant) -> Instant {
        let (boot_id, offset) = self.keys.boot(&at.boot_id);
        Instant { boot_id, boot_ms: at.boot_ms.wrapping_add(offset), ..at }
    }

    /// The bytes of the file. `wrap` is the keystore's key, none on a desk. The nonce is worked out from that key and what
    /// is sealed: the same again is the same file, and nothing else ever has that nonce.
    pub fn write(&self, wrap: Option<&[u8; 32]>) -> Vec<u8> {
        let mut secrets = Zeroizing::new(vec![VERSION]);
        secrets.extend_from_slice(&self.keys.secrets()[..]);
        secrets.push(u8::from(self.recovery.is_some()));
        let none = [0; RECOVERY_BYTES];
        let recovery: &[u8; RECOVERY_BYTES] = self.recovery.as_ref().map_or(&none, Recovery::bytes);
        secrets.extend_from_slice(recovery);
        let Some(wrap) = wrap else { return [&label::KEYS[..], &secrets].concat() };
        let whose = associated(self.device());
        let payload = Payload { msg: &secrets, aad: &whose };
        let hash = label::hash(&label::KEYS, &[&wrap[..], &secrets[..]]);
        let (nonce, _) = hash.split_at(NONCE);
        // Only a text of over 256 GiB fails.
        let sealed = cipher(wrap).encrypt(XNonce::from_slice(nonce), payload).unwrap_or_default();
        [&label::KEYS[..], nonce, &sealed].concat()
    }

    /// Reads a file that is to be `device`'s.
    ///
    /// # Errors
    /// Why it gives no keys. A phone keeps a file that stays closed: its keystore may come back.
    pub fn read(
        bytes: &[u8],
        wrap: Option<&[u8; 32]>,
        device: DeviceId,
    ) -> Result<Kept, KeyFileFault> {
        let rest = bytes.strip_prefix(&label::KEYS).ok_or(KeyFileFault::Form)?;
        let secrets = match wrap {
            None => Zeroizing::new(rest.to_vec()),
            Some(wrap) => {
                let (nonce, sealed) = rest.split_at_checked(NONCE).ok_or(KeyFileFault::Form)?;
                let whose = associated(device);
                let payload = Payload { msg: sealed, aad: &whose };
                let opened = cipher(wrap).decrypt(XNonce::from_slice(nonce), payload);
                Zeroizing::new(opened.map_err(|_| KeyFileFault::Closed)?)
            }
        };
        let secrets: &[u8; SECRETS] =
            secrets.as_slice().try_into().map_err(|_| KeyFileFault::Form)?;
        let key = |at: usize| {
            let mut key = Zeroizing::new([0; 32]);
            key.copy_from_slice(&secrets[at..at + 32]);
            key
        };
        let recovery = match secrets[65] {
            0 => None,
            1 => {
                let mut secret = Zeroizing::new([0; RECOVERY_BYTES]);
                secret.copy_from_slice(&secrets[66..]);
                Some(Recovery::new(*secret))
            }
            _ => return Err(KeyFileFault::Form),
        };
        let kept = Kept { keys: Keys::new(&key(1), &key(33)), recovery };
        match (secrets[0] == VERSION, kept.device() == device) {
            (true, true) => Ok(kept),
            (true, false) => Err(KeyFileFault::Closed),
            (false, _) => Err(KeyFileFault::Form),
        }
    }
}

fn cipher(wrap: &[u8; 32]) -> XChaCha20Poly1305 {
    let mut key = Zeroizing::new([0; 32]);
    // Only a length of over 8160 bytes fails.
    let derived = Hkdf::<Sha256>::new(None, wrap).expand(&label::KEYS, key.as_mut());
    debug_assert!(derived.is_ok());
    XChaCha20Poly1305::new((&*key).into())
}

fn associated(device: DeviceId) -> Vec<u8> {
    [&label::KEYS[..], device.0.as_bytes()].concat()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trust::tests::device;

    fn kept(recovery: bool) -> Kept {
        Kept { keys: device(4), recovery: recovery.then(|| Recovery::new([5; 16])) }
    }

    #[test]
    fn keys_come_back_as_they_were() {
        for (wrap, recovery) in
            [(None, true), (None, false), (Some([7; 32]), true), (Some([7; 32]), false)]
        {
            let kept = kept(recovery);
            let bytes = kept.write(wrap.as_ref());
            let read = Kept::read(&bytes, wrap.as_ref(), kept.device()).ok().unwrap();
            assert_eq!(read.keys.public(), kept.keys.public());
            assert_eq!(read.keys.opening(), kept.keys.opening());
            assert_eq!(read.recovery.map(|secret| *secret.bytes()), recovery.then_some([5; 16]));
            // Cut anywhere it gives nothing.
            for length in 0..bytes.len() {
                assert!(
                    Kept::read(&bytes[..length], wrap.as_ref(), kept.device()).is_err(),
                    "{length}"
                );
            }
        }
    }

    /// Another keystore's key, another device's name, any bit turned.
    #[test]
    fn a_wrapped_file_opens_for_one_device_with_one_key() {
        let kept = kept(true);
        let bytes = kept.write(Some(&[7; 32]));
        let open =
            |bytes: &[u8], wrap: [u8; 32], device| Kept::read(bytes, Some(&wrap), device).err();
        assert_eq!(open(&bytes, [9; 32], kept.device()), Some(KeyFileFault::Closed));
        let other = device_of(&device(6).public().sign);
        assert_eq!(open(&bytes, [7; 32], other), Some(KeyFileFault::Closed));
        for bit in 0..bytes.len() * 8 {
            let mut turned = bytes.clone();
            turned[bit / 8] ^= 1 << (bit % 8);
            assert!(open(&turned, [7; 32], kept.device()).is_some(), "bit {bit}");
        }
        let secrets = kept.keys.secrets();
        assert!(!bytes.windows(16).any(|part| secrets.windows(16).any(|secret| secret == part)));
        assert_eq!(Kept::read(&bytes, None, kept.device()).err(), Some(KeyFileFault::Form));
        // On a desk it is open, and still of one device.
        let open = kept.write(None);
        assert_eq!(Kept::read(&open, None, other).err(), Some(KeyFileFault::Closed));
    }
}
