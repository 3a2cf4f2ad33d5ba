//! The recovery secret and its code on paper.

use data_encoding::{Encoding, Specification};
use zeroize::Zeroizing;

use super::keys::Keys;
use super::label::{self, hash};
use crate::say::trust as say;

/// Bytes of a recovery secret: against guessing they are enough.
pub const RECOVERY_BYTES: usize = 16;
/// So many bytes of a hash stand behind the secret: of 2^32 errors in typing, one is not caught.
const CHECK_BYTES: usize = 4;
/// Signs of a code, without what stands between its groups.
const SIGNS: usize = 32;
/// Signs of a group.
const GROUP: usize = 4;

/// Sixteen bytes from which a person's keys are made. They stand on paper, and on a device only until the person
/// has shown that they are on paper.
#[derive(Clone)]
pub struct Recovery(Zeroizing<[u8; RECOVERY_BYTES]>);

/// Why a typed code is none.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum CodeFault {
    /// A sign that no code has.
    #[error("{}", say::code_sign(visible(*sign), SIGNS / GROUP))]
    Sign {
        /// The sign.
        sign: char,
    },
    /// Nothing was typed.
    #[error("{}", say::code_missing())]
    Missing,
    /// Too few or too many.
    #[error("{}", say::code_length(SIGNS, found))]
    Length {
        /// How many were found.
        found: usize,
    },
    /// Not what was written down: a sign is wrong, or two are swapped.
    #[error("{}", say::code_wrong())]
    Check,
}

/// Crockford's base32: no I, L, O and U, so that nothing is mistaken for another sign. `data-encoding` is asked to
/// take small letters, O for 0 and I and L for 1, and to pass over what stands between groups.
pub(super) fn base32() -> Option<Encoding> {
    let mut specification = Specification::new();
    specification.symbols.push_str("0123456789ABCDEFGHJKMNPQRSTVWXYZ");
    specification.translate.from.push_str("abcdefghjkmnpqrstvwxyzOoIiLl");
    specification.translate.to.push_str("ABCDEFGHJKMNPQRSTVWXYZ001111");
    specification.ignore.push_str(" -\t\r\n");
    specification.encoding().ok()
}

/// A sign as it can be shown: what a paste brings along may be no letter at all, or move a terminal's cursor.
fn visible(sign: char) -> String {
    // A quotation mark and a backslash are escaped by one sign more, what nobody sees by its number.
    match sign.is_control() || sign.escape_debug().count() > 2 {
        true => format!("U+{:04X}", u32::from(sign)),
        false => sign.to_string(),
    }
}

impl Recovery {
    /// A secret of bytes that a shell drew.
    pub fn new(bytes: [u8; RECOVERY_BYTES]) -> Recovery {
        Recovery(Zeroizing::new(bytes))
    }

    /// The person's keys.
    pub fn keys(&self) -> Keys {
        Keys::of_person(&self.0)
    }

    /// Keys of another device, where nothing can be drawn: others for each `place`, which says which device it is.
    pub(crate) fn another_device(&self, place: &[u8]) -> Keys {
        Keys::of_copy(&self.0, place)
    }

    pub(super) fn bytes(&self) -> &[u8; RECOVERY_BYTES] {
        &self.0
    }

    /// The code to write down: eight groups of four.
    pub fn code(&self) -> Zeroizing<String> {
        let bytes = Zeroizing::new([&self.0[..], &check(&self.0)[..]].concat());
        let signs = base32().map_or_else(String::new, |base32| base32.encode(&bytes));
        let signs = Zeroizing::new(signs);
        let mut code = Zeroizing::new(String::with_capacity(SIGNS + SIGNS / GROUP));
        for (at, sign) in signs.chars().enumerate() {
            if at > 0 && at % GROUP == 0 {
                code.push('-');
            }
            code.push(sign);
        }
        code
    }

    /// Reads a code as somebody types it: in large or small letters, with or without anything between its groups.
    ///
    /// # Errors
    /// What of it is wrong.
    pub fn read(typed: &str) -> Result<Recovery, CodeFault> {
        let between = |sign: &char| sign.is_whitespace() || *sign == '-';
        let signs: Zeroizing<String> =
            Zeroizing::new(typed.chars().filter(|sign| !between(sign)).collect());
        if let Some(sign) = signs.chars().find(|sign| !is_sign(*sign)) {
            return Err(CodeFault::Sign { sign });
        }
        if signs.is_empty() {
            return Err(CodeFault::Missing);
        }
        if signs.len() != SIGNS {
            return Err(CodeFault::Length { found: signs.len() });
        }
        let read = base32().and_then(|base32| base32.decode(signs.as_bytes()).ok());
        let read = Zeroizing::new(read.unwrap_or_default());
        let (secret, rest) = read.split_first_chunk().ok_or(CodeFault::Check)?;
        if *rest != check(secret) {
            return Err(CodeFault::Check);
        }
        Ok(Recovery::new(*secret))
    }

    /// True when two groups, counted from 1, are those of the code: who can type them has it on paper.
    pub fn confirms(&self, groups: [(usize, &str); 2]) -> bool {
        let code = self.code();
        let is = |(number, typed): (usize, &str)| {
            let right = code.split('-').nth(number.wrapping_sub(1)).and_then(group);
            right.is_some() && right == group(typed)
        };
        groups[0].0 != groups[1].0 && groups.into_iter().all(is)
    }

    /// The key that opens what is sealed to the person, as a secret key of the program `age`.
    pub fn age_key(&self) -> Zeroizing<String> {
        super::sealing::secret_text(self.keys().opening())
    }
}

/// What a group of four signs says, however it is typed. Eight signs make whole bytes, four do not.
fn group(typed: &str) -> Option<Vec<u8>> {
    let signs = format!("{}0000", typed.trim());
    base32()?.decode(signs.as_bytes()).ok()
}

fn is_sign(sign: char) -> bool {
    sign.is_ascii_alphanumeric() && !matches!(sign, 'U' | 'u')
}

fn check(secret: &[u8; RECOVERY_BYTES]) -> [u8; CHECK_BYTES] {
    let hash = hash(&label::CODE, &[secret]);
    let mut check = [0; CHECK_BYTES];
    check.copy_from_slice(&hash[..CHECK_BYTES]);
    check
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn recovery() -> Recovery {
        Recovery::new(*b"sixteen bytes ok")
    }

    #[test]
    fn a_code_is_eight_groups_of_four_signs() {
        let code = recovery().code();
        let groups: Vec<&str> = code.split('-').collect();
        assert_eq!(groups.len(), 8);
        assert!(groups.iter().all(|group| group.len() == GROUP), "{groups:?}");
        assert!(code.chars().all(|sign| sign == '-' || (is_sign(sign) && !"ILO".contains(sign))));
    }

    #[test]
    fn it_is_read_however_it_is_typed() {
        let code = recovery().code();
        let spaced = code.replace('-', "  ");
        for typed in [code.to_lowercase(), spaced, code.replace('-', ""), format!("\t{}\n", *code)]
        {
            assert_eq!(
                Recovery::read(&typed).map(|read| *read.bytes()),
                Ok(*recovery().bytes()),
                "{typed}"
            );
        }
        // What is easily mistaken.
        let typed = code.replace('0', "O").replace('1', "l");
        assert!(Recovery::read(&typed).is_ok(), "{typed}");
        assert!(Recovery::read(&code.replace('0', "o").replace('1', "I")).is_ok());
    }

    /// Every single sign in another's place, and two groups in each other's, are caught.
    #[test]
    fn what_was_not_written_down_is_no_code() {
        let code = recovery().code();
        for (at, right) in code.char_indices().filter(|(_, sign)| *sign != '-') {
            for wrong in "0123456789ABCDEFGHJKMNPQRSTVWXYZ".chars().filter(|wrong| *wrong != right)
            {
                let mut typed = code.to_string();
                typed.replace_range(at..=at, &wrong.to_string());
                assert_eq!(Recovery::read(&typed).err(), Some(CodeFault::Check), "{typed}");
            }
        }
        let groups: Vec<&str> = code.split('-').collect();
        for one in 0..8 {
            for other in 0..one {
                let mut swapped = groups.clone();
                swapped.swap(one, other);
                assert_eq!(Recovery::read(&swapped.join("-")).err(), Some(CodeFault::Check));
            }
        }
        assert_eq!(Recovery::read("U000").err(), Some(CodeFault::Sign { sign: 'U' }));
        assert_eq!(Recovery::read("ä").err(), Some(CodeFault::Sign { sign: 'ä' }));
        let invisible = [('\0', "U+0000"), ('\u{5}', "U+0005"), ('\u{200b}', "U+200B")];
        for (sign, shown) in invisible.into_iter().chain([('ä', "ä"), ('"', "\"")]) {
            let said = Recovery::read(&format!("0{sign}0")).err().unwrap().to_string();
            assert!(said.contains(shown) && !said.contains(char::is_control), "{said:?}");
        }
        assert_eq!(Recovery::read("").err(), Some(CodeFault::Missing));
        assert_eq!(
            Recovery::read(&format!("{}0", *code)).err(),
            Some(CodeFault::Length { found: 33 })
        );
    }

    #[test]
    fn two_groups_show_that_it_is_on_paper() {
        let code = recovery().code();
        let groups: Vec<&str> = code.split('-').collect();
        assert!(recovery().confirms([(2, groups[1]), (7, &groups[6].to_lowercase())]));
        assert!(!recovery().confirms([(2, groups[1]), (7, groups[5])]));
        assert!(!recovery().confirms([(2, groups[1]), (2, groups[1])]), "one group is not two");
        assert!(!recovery().confirms([(0, groups[0]), (9, groups[0])]));
    }

    proptest! {
        #[test]
        fn every_secret_comes_back(bytes in any::<[u8; 16]>()) {
            let read = Recovery::read(&Recovery::new(bytes).code()).map(|read| *read.bytes());
            prop_assert_eq!(read, Ok(bytes));
        }

        #[test]
        fn anything_can_be_typed(typed in ".{0,60}") {
            let _ = Recovery::read(&typed).map(drop);
        }
    }
}
