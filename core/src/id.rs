//! The identities that entries and files carry.

use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use uuid::{Builder, Uuid};

macro_rules! id {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(pub Uuid);

        impl $name {
            /// Reads an identity in any form of RFC 9562.
            pub fn parse(text: &str) -> Option<$name> {
                Uuid::try_parse(text).ok().map($name)
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                self.0.fmt(f)
            }
        }
    };
}

id! {
    /// One install on one device: the only writer of its journal.
    DeviceId
}
id! {
    /// A person: an athlete or a coach.
    PersonId
}
id! {
    /// A group that trains together under one coach.
    CrewId
}
id! {
    /// Something logged, through all its corrections.
    RecordId
}

/// Makes a version 4 UUID of 16 bytes.
#[cfg(test)]
pub(crate) fn random(bytes: [u8; 16]) -> Uuid {
    Builder::from_random_bytes(bytes).into_uuid()
}

impl RecordId {
    /// Makes a version 7 UUID (RFC 9562, section 5.7) for the entry `number` of `device`.
    ///
    /// The core has no source of chance, so the bits that the standard leaves random are a digest
    /// of what is unique already, the device, the number, the time and the content, with the number in
    /// front. Two copies of
    /// one device that write different entries under one number so get different records.
    pub fn derive(device: DeviceId, number: u64, wall_ms: i64, content: &[u8]) -> RecordId {
        let digest = Sha256::new()
            .chain_update(device.0.as_bytes())
            .chain_update(number.to_be_bytes())
            .chain_update(wall_ms.to_be_bytes())
            .chain_update(content)
            .finalize();
        let mut chance = [0; 10];
        chance.copy_from_slice(&digest[..10]);
        // The standard's counter (section 6.2, method 1): records of one millisecond sort as they were
        // written.
        let counter = (number % (1 << 12)) as u16;
        chance[..2].copy_from_slice(&counter.to_be_bytes());
        let millis = u64::try_from(wall_ms).unwrap_or(0);
        RecordId(Builder::from_unix_timestamp_millis(millis, &chance).into_uuid())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 9562, appendix A.6: the time field of 2022-02-22T19:22:22Z is 017F22E279B0.
    #[test]
    fn the_time_field_is_that_of_the_standard() {
        let device = DeviceId(random([7; 16]));
        let id = RecordId::derive(device, 1, 1_645_557_742_000, b"x").to_string();
        assert!(id.starts_with("017f22e2-79b0-7001-"), "{id}");
        assert!(matches!(id.as_bytes()[19], b'8' | b'9' | b'a' | b'b'), "{id}");
    }

    #[test]
    fn content_number_and_device_all_count() {
        let (one, two) = (DeviceId(random([1; 16])), DeviceId(random([2; 16])));
        let base = RecordId::derive(one, 1, 5, b"x");
        assert_eq!(base, RecordId::derive(one, 1, 5, b"x"));
        assert_ne!(base, RecordId::derive(two, 1, 5, b"x"));
        assert_ne!(base, RecordId::derive(one, 2, 5, b"x"));
        assert_ne!(base, RecordId::derive(one, 1, 5, b"y"));
    }
}
