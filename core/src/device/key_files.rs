//! A device's keys in its home: two files of the same bytes, so that a bit that turns in one loses nothing.

use std::fs;
use std::path::Path;

use zeroize::Zeroizing;

use crate::error::{Error, Result};
use crate::exchange::replace_private;
use crate::say;
use crate::trust::{Certificate, Kept};

/// The file, and its copy.
const FILES: [&str; 2] = ["device.keys", "device-copy.keys"];

/// Writes the keys, before anything says whose they are.
pub(super) fn write(home: &Path, kept: &Kept) -> Result<()> {
    // A desk has no keystore, and what is not wrapped needs no nonce.
    let bytes = Zeroizing::new(kept.write(None, &[0; 24]));
    FILES.iter().try_for_each(|file| replace_private(&home.join(file), &bytes))
}

/// Reads the keys that a certificate names. A file that holds others, or is gone, is put right from the other.
///
/// # Errors
/// [`Error::File`] where neither file has them.
pub(super) fn read(home: &Path, certificate: &Certificate) -> Result<Kept> {
    let found = FILES.map(|file| {
        let bytes = Zeroizing::new(fs::read(home.join(file)).ok()?);
        let kept = Kept::read(&bytes, None, certificate.device()).ok()?;
        is_of(&kept, certificate).then_some((kept, bytes))
    });
    let [first, second] = found;
    let both = first.as_ref().zip(second.as_ref()).is_some_and(|(one, other)| one.1 == other.1);
    // One bit says whether the recovery secret is there: where the files differ in it, it is.
    let with =
        |found: &Option<(Kept, _)>| found.as_ref().is_some_and(|(kept, _)| kept.recovery.is_some());
    let found = if with(&second) && !with(&first) { second } else { first.or(second) };
    let Some((kept, _)) = found else {
        let gone = std::io::Error::other(say::device::keys_unreadable());
        return Err(Error::file(&home.join(FILES[0]))(gone));
    };
    if !both {
        // A home that cannot be written is no reason to keep an athlete from reading it.
        let _ = write(home, &kept);
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
        let home = tempfile::tempdir().unwrap();
        let (own, certificate) = kept(7);
        write(home.path(), &own).unwrap();
        let [path, copy] = FILES.map(|file| home.path().join(file));
        let whole = fs::read(&path).unwrap();
        for (path, copy) in [(&path, &copy), (&copy, &path)] {
            for bit in 0..whole.len() * 8 {
                let mut turned = whole.clone();
                turned[bit / 8] ^= 1 << (bit % 8);
                fs::write(path, &turned).unwrap();
                fs::write(copy, &whole).unwrap();
                let read = read(home.path(), &certificate).unwrap();
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
        write(home.path(), &kept(7).0).unwrap();
        let error = read(home.path(), &kept(8).1).err().unwrap().to_string();
        assert!(error.contains("device.keys"), "{error}");
    }

    /// At no moment anybody else may read them: not while they are written either.
    #[cfg(unix)]
    #[test]
    fn they_are_their_owners_alone() {
        use std::os::unix::fs::PermissionsExt;
        let home = tempfile::tempdir().unwrap();
        // Left half-written, and open to all.
        fs::write(home.path().join("device.tmp"), b"tor").unwrap();
        write(home.path(), &kept(7).0).unwrap();
        for file in FILES {
            let mode = fs::metadata(home.path().join(file)).unwrap().permissions().mode();
            assert_eq!(mode & 0o777, 0o600);
        }
        assert_eq!(fs::read_dir(home.path()).unwrap().count(), 2);
    }
}
