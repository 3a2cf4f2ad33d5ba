//! Who belongs to a crew.

use serde::{Deserialize, Serialize};

use crate::id::{DeviceId, PersonId, RecordId};

/// A person taken in by the coach: what was compared when they met.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Admit {
    /// The person: an identity made from the key below.
    pub person: PersonId,
    /// Their signing key (Ed25519), 64 hexadecimal digits.
    pub sign: HexKey,
    /// The key that files are sealed to for their recovery code (X25519), 64 hexadecimal digits.
    pub open: HexKey,
    /// What the coach calls them.
    pub label: String,
}

impl Admit {
    /// The record of a person: the same on every device of a coach, so that two of them speak of one.
    pub fn record_of(person: PersonId) -> RecordId {
        RecordId(person.0)
    }
}

/// A person, or one device of theirs, removed by the coach.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Remove {
    /// The person.
    pub person: PersonId,
    /// The one device that is removed, for ever; none for the person with all devices.
    pub device: Option<DeviceId>,
    /// What they wrote that still counts: everything that a chain reaches down from one of these.
    pub heads: Vec<LastLeaf>,
}

impl Remove {
    /// The record of a device's removal. A person's removal is a version of the person's own record.
    pub fn record_of(device: DeviceId) -> RecordId {
        RecordId(device.0)
    }
}

/// A leaf up to which a chain counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct LastLeaf {
    /// The device whose chain it is.
    pub device: DeviceId,
    /// Its place in the chain.
    pub sequence: u64,
    /// Its content hash.
    pub content: HexKey,
}

/// A person's own word, signed with what their recovery code makes, that a device of theirs no longer counts from
/// somewhere on. It proves itself.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Stopped {
    /// The member whose thread it is about.
    pub of: PersonId,
    /// The signed word (docs/leaf.md), base64url.
    pub stop: String,
}

/// The coach has dropped everything of somebody on the device that says so.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Forgot {
    /// The person: an identity made from a key, which names nobody.
    pub person: PersonId,
}

/// A device of this person writes here from now on.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Here {}

/// A key, or a hash, as hexadecimal digits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(into = "String", try_from = "String")]
pub struct HexKey(pub [u8; 32]);

impl From<[u8; 32]> for HexKey {
    fn from(key: [u8; 32]) -> HexKey {
        HexKey(key)
    }
}

impl From<HexKey> for String {
    fn from(key: HexKey) -> String {
        data_encoding::HEXLOWER.encode(&key.0)
    }
}

impl TryFrom<String> for HexKey {
    type Error = String;
    fn try_from(text: String) -> Result<HexKey, String> {
        let read =
            data_encoding::HEXLOWER.decode(text.as_bytes()).map_err(|error| error.to_string())?;
        let length = read.len();
        read.try_into().map(HexKey).map_err(|_| length.to_string())
    }
}
