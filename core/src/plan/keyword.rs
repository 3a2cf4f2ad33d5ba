//! Closed sets of words: one definition gives the enum, its text in plans and journals, and the
//! list an error message offers.

macro_rules! keyword {
    ($(#[$doc:meta])* $name:ident { $($(#[$variant_doc:meta])* $variant:ident = $text:literal),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(
            Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash,
            serde::Serialize, serde::Deserialize,
        )]
        #[allow(missing_docs, reason = "a variant says what its text says")]
        pub enum $name {
            $($(#[$variant_doc])* #[serde(rename = $text)] $variant),+
        }

        impl $name {
            /// Every value, in the order of its definition.
            pub const ALL: &'static [$name] = &[$($name::$variant),+];

            /// The word as plans and journals write it.
            pub fn text(self) -> &'static str {
                match self { $($name::$variant => $text),+ }
            }

            /// Finds the value for a word.
            pub fn from_text(text: &str) -> Option<$name> {
                $name::ALL.iter().copied().find(|value| value.text() == text)
            }

            /// Every word, in the order of its definition.
            pub fn words() -> Vec<&'static str> {
                $name::ALL.iter().map(|value| value.text()).collect()
            }
        }
    };
}
pub(crate) use keyword;
