//! Ids are hashes of keys: nobody can claim another's, and no table from id to key can be attacked.

use uuid::{Builder, Uuid};

use super::keys::KEY_BYTES;
use super::label::{self, hash};
use crate::id::{CrewId, DeviceId, PersonId};

/// The first 16 bytes of a hash, as a UUID of version 8 (RFC 9562, section 5.8).
fn id(of: u8, key: &[u8; KEY_BYTES]) -> Uuid {
    let hash = hash(&label::ID, &[&[of], key]);
    let mut bytes = [0; 16];
    bytes.copy_from_slice(&hash[..16]);
    Builder::from_custom_bytes(bytes).into_uuid()
}

/// The person whose signing key this is.
pub fn person_of(key: &[u8; KEY_BYTES]) -> PersonId {
    PersonId(id(b'p', key))
}

/// The device whose signing key this is.
pub fn device_of(key: &[u8; KEY_BYTES]) -> DeviceId {
    DeviceId(id(b'd', key))
}

/// The crew that the person with this signing key founded.
pub fn crew_of(key: &[u8; KEY_BYTES]) -> CrewId {
    CrewId(id(b'c', key))
}
