//! The outermost layer: age, to the people of one thread.

use std::io::{Read, Write};

use age::{Decryptor, Encryptor};

use super::{SealedFault, Tag, scan, simple};
use crate::id::{CrewId, DeviceId, PersonId};
use crate::trust::{Keys, NAME, hash, identity, recipient};

/// The most that a leaf is sealed to: seven devices and a paper for each of two people.
pub const MOST_RECIPIENTS: usize = scan::MOST_STANZAS;
/// Up to so many the number is filled up to this.
const FEW: usize = MOST_RECIPIENTS / 2;

/// Who can open a leaf: the opening keys of a thread's two people. Their order tells a carrier nothing, for a key
/// that was sealed to names nobody; it only says who finds theirs first.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Audience {
    /// The founder's standing devices.
    pub founder: Vec<[u8; 32]>,
    /// The member's.
    pub member: Vec<[u8; 32]>,
    /// Both papers.
    pub papers: Vec<[u8; 32]>,
}

/// Seals bytes. Unfilled, the number of recipients would tell which thread a coach's leaf is in: so keys that nobody
/// has are added, up to 8 or 16.
pub(super) fn seal(bytes: &[u8], audience: &Audience) -> Result<Vec<u8>, SealedFault> {
    let Audience { founder, member, papers } = audience;
    let mut keys: Vec<[u8; 32]> = Vec::new();
    for key in founder.iter().chain(member).chain(papers) {
        // A coach who trains is both.
        if !keys.contains(key) {
            keys.push(*key);
        }
    }
    if keys.is_empty() || keys.len() > MOST_RECIPIENTS {
        return Err(SealedFault::TooMany { found: keys.len() });
    }
    let size = if keys.len() <= FEW { FEW } else { MOST_RECIPIENTS };
    let mut recipients: Vec<age::x25519::Recipient> =
        keys.iter().map(recipient).collect::<Option<_>>().ok_or(SealedFault::Envelope)?;
    recipients.resize_with(size, || age::x25519::Identity::generate().to_public());
    let all = recipients.iter().map(|recipient| recipient as &dyn age::Recipient);
    // No error of the library is boxed: what it says of itself would bring its own messages, and what reads them, into
    // the program.
    let sealing = Encryptor::with_recipients(all).map_err(|_| SealedFault::Envelope)?;
    let mut file = Vec::new();
    let written = sealing.wrap_output(&mut file).and_then(|mut writer| {
        writer.write_all(bytes)?;
        writer.finish()
    });
    written.map(|_| ()).map_err(|_| SealedFault::Envelope)?;
    Ok(file)
}

/// Opens a file whose head was looked at. Not to be opened with these keys is no fault of the file.
pub(super) fn open(file: &[u8], keys: &[&Keys]) -> Result<Vec<u8>, SealedFault> {
    let identities: Vec<age::x25519::Identity> =
        keys.iter().filter_map(|keys| identity(keys.opening())).collect();
    // Unbuffered the library reads the head a few signs at a time, and from its beginning each time.
    let decryptor = Decryptor::new_buffered(file).map_err(|_| SealedFault::Envelope)?;
    let identities = identities.iter().map(|identity| identity as &dyn age::Identity);
    let mut opened = match decryptor.decrypt(identities) {
        Ok(opened) => opened,
        Err(age::DecryptError::NoMatchingKeys) => return Err(SealedFault::NotForUs),
        Err(_) => return Err(SealedFault::Altered),
    };
    let mut bytes = Vec::with_capacity(file.len());
    opened.read_to_end(&mut bytes).map_err(|_| SealedFault::Altered)?;
    Ok(bytes)
}

/// What a lane is called by on a carrier: eight hexadecimal digits. Who knows crew and member works it out for any
/// device; a carrier, which knows neither, cannot tell which thread a device's lane is in.
pub fn lane_tag(crew: CrewId, of: PersonId, device: DeviceId) -> Tag {
    let hash = hash(&NAME, &[crew.0.as_bytes(), of.0.as_bytes(), device.0.as_bytes()]);
    Tag::of(&hash)
}

/// A device as names have it.
pub(super) fn device_digits(device: DeviceId) -> String {
    simple(device.0)
}
