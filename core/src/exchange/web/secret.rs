//! A password or a key, kept out of everything that is printed.

use std::fmt;

use zeroize::Zeroizing;

/// What only a carrier may be told. It has no `Display`, its `Debug` shows nothing of it, and its memory is
/// wiped when it is dropped.
#[derive(Clone, Default)]
pub struct Secret(Zeroizing<String>);

impl Secret {
    /// Keeps a text secret.
    pub fn new(text: impl Into<String>) -> Secret {
        Secret(Zeroizing::new(text.into()))
    }

    /// The text itself: for the header of a request, and for a file that only its owner reads.
    pub fn expose(&self) -> &str {
        &self.0
    }

    /// True when there is nothing in it.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

impl fmt::Debug for Secret {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Secret")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_of_it_is_printed_not_even_its_length() {
        for text in ["", "a", "correct horse battery staple"] {
            assert_eq!(
                format!("{:?} {:#?}", Secret::new(text), Secret::new(text)),
                "Secret Secret"
            );
        }
    }
}
