//! Opening keys as the age library and program write them (age-encryption.org/v1, X25519 recipients): the library
//! takes keys from this text alone.

use bech32::{ToBase32, Variant};
use zeroize::Zeroizing;

/// The secret half, as `AGE-SECRET-KEY-1...`.
pub(crate) fn secret_text(secret: &[u8; 32]) -> Zeroizing<String> {
    let text = Zeroizing::new(encoded("age-secret-key-", secret));
    Zeroizing::new(text.to_uppercase())
}

/// The public half, as `age1...`.
pub(crate) fn recipient_text(key: &[u8; 32]) -> String {
    encoded("age", key)
}

fn encoded(prefix: &str, key: &[u8; 32]) -> String {
    // Only a prefix in mixed case fails.
    bech32::encode(prefix, key.to_base32(), Variant::Bech32).unwrap_or_default()
}

/// The identity that opens, from its secret.
pub(crate) fn identity(secret: &[u8; 32]) -> Option<age::x25519::Identity> {
    secret_text(secret).parse().ok()
}

/// The recipient that is sealed to, from its key.
pub(crate) fn recipient(key: &[u8; 32]) -> Option<age::x25519::Recipient> {
    recipient_text(key).parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trust::tests::device;

    /// The library reads both, and makes the one from the other as we do.
    #[test]
    fn the_library_reads_our_keys() {
        for keys in (1..50).map(device) {
            let identity = identity(keys.opening()).unwrap();
            let recipient = recipient(&keys.public().open).unwrap();
            assert_eq!(identity.to_public().to_string(), recipient.to_string());
            assert_eq!(recipient.to_string(), recipient_text(&keys.public().open));
        }
    }
}
