//! Which version of a record an entry replaces.

use std::collections::BTreeSet;

use serde::de::Error as _;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::EntryId;
use crate::id::DeviceId;

/// An entry as another one names it: writer, number, and which of two lines when a copied device wrote
/// two under that number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Version {
    /// The device that wrote it.
    #[serde(rename = "d")]
    pub device: DeviceId,
    /// Its number in that device's journal.
    #[serde(rename = "n")]
    pub number: u64,
    /// The first eight bytes of its line's SHA-256. Lines of the first days name none: any line will do.
    #[serde(rename = "h", default, skip_serializing_if = "Option::is_none", with = "hexadecimal")]
    pub digest: Option<i64>,
}

impl Version {
    /// Names an entry by its line.
    pub fn of(id: EntryId, digest: i64) -> Version {
        Version { device: id.device, number: id.number, digest: Some(digest) }
    }

    /// True when this names `other`, with its line or with none.
    pub(crate) fn names(self, other: Version) -> bool {
        self == other || self == other.without_line()
    }

    /// True when one of `named` names this one.
    pub(crate) fn is_among(self, named: &BTreeSet<Version>) -> bool {
        named.contains(&self) || named.contains(&self.without_line())
    }

    fn without_line(self) -> Version {
        Version { digest: None, ..self }
    }
}

/// A digest as 16 hexadecimal digits: JSON's numbers are not exact beyond 2^53 everywhere.
mod hexadecimal {
    use super::*;

    pub(super) fn serialize<S: Serializer>(
        digest: &Option<i64>,
        serializer: S,
    ) -> Result<S::Ok, S::Error> {
        digest.map(|digest| format!("{digest:016x}")).serialize(serializer)
    }

    pub(super) fn deserialize<'de, D: Deserializer<'de>>(
        deserializer: D,
    ) -> Result<Option<i64>, D::Error> {
        let text = Option::<String>::deserialize(deserializer)?;
        let read = |text: String| {
            if text.len() != 16 || text.starts_with('+') {
                return Err(D::Error::invalid_length(text.len(), &"16"));
            }
            let read = u64::from_str_radix(&text, 16).map_err(D::Error::custom);
            read.map(u64::cast_signed)
        };
        text.map(read).transpose()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::id::random;

    #[test]
    fn a_digest_is_written_as_sixteen_digits_and_may_be_missing() {
        let id = EntryId { device: DeviceId(random([3; 16])), number: 7 };
        for digest in [0, 1, -1, i64::MIN, i64::MAX] {
            let version = Version::of(id, digest);
            let json = serde_json::to_string(&version).unwrap();
            assert_eq!(serde_json::from_str::<Version>(&json).unwrap(), version);
            let other = Version::of(id, digest ^ 2);
            assert!(version.names(version) && version.is_among(&[version].into()));
            assert!(!version.names(other) && !version.is_among(&[other].into()));
        }
        let json = serde_json::to_string(&Version::of(id, -2)).unwrap();
        assert!(json.ends_with(r#""n":7,"h":"fffffffffffffffe"}"#), "{json}");
        let old = serde_json::to_string(&id).unwrap();
        let version: Version = serde_json::from_str(&old).unwrap();
        assert!(
            version.names(Version::of(id, 5)) && Version::of(id, 5).is_among(&[version].into())
        );
        assert_eq!(serde_json::to_string(&version).unwrap(), old);
        for odd in ["\"\"", "\"fff\"", "\"+ffffffffffffffe\"", "\"g000000000000000\"", "5"] {
            let json = old.replace('}', &format!(",\"h\":{odd}}}"));
            assert!(serde_json::from_str::<Version>(&json).is_err(), "{json}");
        }
    }
}
