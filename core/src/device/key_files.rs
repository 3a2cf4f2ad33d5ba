//! A device's keys in its home: two files of the same bytes, so that a bit that turns in one loses nothing.

use std::fs;
use std::path::Path;

use zeroize::Zeroizing;

use crate::error::{Error, Field, Result};
use crate::exchange::replace_private;
use crate::say;
use crate::trust::{Certificate, Kept, KeyFileFault};

/// The file, and its copy.
const FILES: [&str; 2] = ["device.keys", "device-copy.keys"];

/// The 32 bytes that a phone's keystore holds for this device alone: its keys are wrapped with them. None on a desk, which has
/// no such place.
#[derive(Clone, Default)]
pub(crate) struct Keystore(Option<Zeroizing<[u8; KEY]>>);

const KEY: usize = 32;

impl Keystore {
    /// What a shell gave.
    ///
    /// # Errors
    /// Other than 32 bytes.
    pub(crate) fn of(key: Option<Vec<u8>>) -> Result<Keystore> {
        let Some(key) = key.map(Zeroizing::new) else { return Ok(Keystore(None)) };
        let wrong = || Error::invalid(Field::Keystore, say::device::keystore_bytes(KEY, key.len()));
        let bytes: [u8; KEY] = key.as_slice().try_into().map_err(|_| wrong())?;
        Ok(Keystore(Some(Zeroizing::new(bytes))))
    }

    fn key(&self) -> Option<&[u8; KEY]> {
        self.0.as_deref()
    }
}

/// Writes the keys, before anything says whose they are.
pub(super) fn write(home: &Path, kept: &Kept, keystore: &Keystore) -> Result<()> {
    let bytes = Zeroizing::new(kept.write(keystore.key()));
    FILES.iter().try_for_each(|file| replace_private(&home.join(file), &bytes))
}

/// Reads the keys that a certificate names. A file that holds others, or is gone, is put right from the other.
///
/// # Errors
/// [`Error::File`] where neither file has them; [`Field::Keystore`] where one is there and the keystore does not open it:
/// the files stay, for the keystore may come back.
pub(super) fn read(home: &Path, certificate: &Certificate, keystore: &Keystore) -> Result<Kept> {
    let mut closed = false;
    let found = FILES.map(|file| {
        let bytes = Zeroizing::new(fs::read(home.join(file)).ok()?);
        let kept = match Kept::read(&bytes, keystore.key(), certificate.device()) {
            Ok(kept) => kept,
            Err(fault) => {
                closed |= fault == KeyFileFault::Closed && keystore.key().is_some();
                return None;
            }
        };
        is_of(&kept, certificate).then_some((kept, bytes))
    });
    let [first, second] = found;
    let both = first.as_ref().zip(second.as_ref()).is_some_and(|(one, other)| one.1 == other.1);
    // One bit says whether the recovery secret is there: where the files differ in it, it is.
    let with =
        |found: &Option<(Kept, _)>| found.as_ref().is_some_and(|(kept, _)| kept.recovery.is_some());
    let found = if with(&second) && !with(&first) { second } else { first.or(second) };
    let Some((kept, _)) = found else {
        if closed {
            return Err(Error::invalid(Field::Keystore, say::device::keystore_does_not_open()));
        }
        let gone = std::io::Error::other(say::device::keys_unreadable());
        return Err(Error::file(&home.join(FILES[0]))(gone));
    };
    if !both {
        // A home that cannot be written is no reason to keep an athlete from reading it.
        let _ = write(home, &kept, keystore);
    }
    Ok(kept)
}

fn is_of(kept: &Kept, certificate: &Certificate) -> bool {
    let person = certificate.person_keys();
    let recovery = kept.recovery.as_ref();
    kept.keys.public() == certificate.device_keys()
        && recovery.is_none_or(|recovery| recovery.keys().public() == person)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trust::{Keys, Recovery};

    fn kept(number: u8) -> (Kept, Certificate) {
        let (keys, recovery) =
            (Keys::new(&[number; 32], &[number + 1; 32]), Recovery::new([number; 16]));
        let certificate = Certificate::sign(&recovery.keys(), &keys.public(), 1);
        (Kept { keys, recovery: Some(recovery) }, certificate)
    }

    /// Whichever bit turns in one file, the keys are the same: never others that nobody knows. A bit that X25519
    /// passes over (RFC 7748, section 5) makes another file of the same keys; the two are made alike again.
    #[test]
    fn no_bit_makes_other_keys() {
        for keystore in [None, Some(vec![9; 32])] {
            no_bit_makes_others(&Keystore::of(keystore).unwrap());
        }
    }

    fn no_bit_makes_others(keystore: &Keystore) {
        let home = tempfile::tempdir().unwrap();
        let (own, certificate) = kept(7);
        write(home.path(), &own, keystore).unwrap();
        let [path, copy] = FILES.map(|file| home.path().join(file));
        let whole = fs::read(&path).unwrap();
        for (path, copy) in [(&path, &copy), (&copy, &path)] {
            for bit in 0..whole.len() * 8 {
                let mut turned = whole.clone();
                turned[bit / 8] ^= 1 << (bit % 8);
                fs::write(path, &turned).unwrap();
                fs::write(copy, &whole).unwrap();
                let read = read(home.path(), &certificate, keystore).unwrap();
                assert_eq!(read.keys.public(), own.keys.public(), "bit {bit}");
                let code = read.recovery.map(|recovery| recovery.code());
                assert_eq!(code, own.recovery.as_ref().map(Recovery::code), "bit {bit}");
                assert_eq!(fs::read(path).unwrap(), fs::read(copy).unwrap(), "bit {bit}");
            }
        }
    }

    #[test]
    fn keys_of_another_device_are_none() {
        let home = tempfile::tempdir().unwrap();
        write(home.path(), &kept(7).0, &Keystore::default()).unwrap();
        let error = read(home.path(), &kept(8).1, &Keystore::default()).err().unwrap().to_string();
        assert!(error.contains("device.keys"), "{error}");
    }

    /// A phone whose keystore has lost the key, or has another: the files stay as they are, and open once it is back.
    #[test]
    fn without_its_keystore_a_phone_is_closed_and_nothing_is_lost() {
        let home = tempfile::tempdir().unwrap();
        let (own, certificate) = kept(7);
        let [right, wrong] =
            [[9; 32], [8; 32]].map(|key| Keystore::of(Some(key.to_vec())).unwrap());
        write(home.path(), &own, &right).unwrap();
        let files = || FILES.map(|file| fs::read(home.path().join(file)).unwrap());
        let before = files();
        let error = read(home.path(), &certificate, &wrong).err().unwrap();
        assert!(matches!(error, Error::Invalid { field: Field::Keystore, .. }), "{error}");
        assert!(read(home.path(), &certificate, &Keystore::default()).is_err());
        assert_eq!(files(), before);
        assert_eq!(
            read(home.path(), &certificate, &right).unwrap().keys.public(),
            own.keys.public()
        );
        // The key that opens stands in no file that is wrapped.
        let secret = own.keys.opening();
        let shows = |file: &Vec<u8>| file.windows(secret.len()).any(|part| part == secret);
        assert!(!files().iter().any(shows));
        write(home.path(), &own, &Keystore::default()).unwrap();
        assert!(files().iter().all(shows));
        for length in [0, 31, 33] {
            assert!(Keystore::of(Some(vec![0; length])).is_err(), "{length}");
        }
    }

    /// At no moment anybody else may read them: not while they are written either.
    #[cfg(unix)]
    #[test]
    fn they_are_their_owners_alone() {
        use std::os::unix::fs::PermissionsExt;
        let home = tempfile::tempdir().unwrap();
        // Left half-written, and open to all.
        fs::write(home.path().join("device.tmp"), b"tor").unwrap();
        write(home.path(), &kept(7).0, &Keystore::default()).unwrap();
        for file in FILES {
            let mode = fs::metadata(home.path().join(file)).unwrap().permissions().mode();
            assert_eq!(mode & 0o777, 0o600);
        }
        assert_eq!(fs::read_dir(home.path()).unwrap().count(), 2);
    }
}
