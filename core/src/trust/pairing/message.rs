//! The three messages of a pairing, as bytes and as text for a QR code, a chat or a carrier.

use crate::planted::{Planted, planted};
use crate::say::trust as say;
use crate::trust::certificate::{CERTIFICATE_BYTES, Certificate};
use crate::trust::keys::{KEY_BYTES, is_opening_key};
use crate::trust::label::{self, hash};
use crate::trust::recovery::base32;

/// Bytes of a nonce.
pub const NONCE_BYTES: usize = 16;
/// The longest name, in bytes of UTF-8.
pub const MOST_NAME_BYTES: usize = 80;

const VERSION: u8 = 1;
const BEGIN: &str = "HF1:";

/// The coach's first word: a key to answer to, and a commitment to what they will open.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Invitation {
    /// The coach's device's opening key.
    pub open: [u8; KEY_BYTES],
    /// The hash of their certificate and nonce.
    pub commitment: [u8; 32],
}

/// The member's answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reply {
    /// The certificate of the member's device.
    pub certificate: Certificate,
    /// Drawn for this invitation alone.
    pub nonce: [u8; NONCE_BYTES],
    /// What the member calls themselves: the coach chooses the label they go by.
    pub name: String,
}

/// The coach opens what they committed to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Opening {
    /// The certificate of the coach's device.
    pub certificate: Certificate,
    /// The nonce that the commitment hides.
    pub nonce: [u8; NONCE_BYTES],
}

/// Why a text or a file is no message of a pairing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum MessageFault {
    /// Something else, or cut short.
    #[error("{}", say::no_pairing_code())]
    Form,
    /// Of a later version.
    #[error("{}", say::newer_pairing_code())]
    Newer,
    /// A certificate or key in it is none.
    #[error("{}", say::bad_pairing_code())]
    Key,
}

/// The hash of what a coach will open.
pub fn commitment(certificate: &Certificate, nonce: &[u8; NONCE_BYTES]) -> [u8; 32] {
    hash(&label::PAIR, &[certificate.bytes(), nonce])
}

/// A message of a pairing.
pub trait Message: Sized {
    /// Its bytes.
    fn bytes(&self) -> Vec<u8>;

    /// Reads its bytes, all of them.
    ///
    /// # Errors
    /// Why they are none.
    fn read(bytes: &[u8]) -> Result<Self, MessageFault>;

    /// The text of a code: `HF1:` and Crockford's base32, which a QR code holds in its densest way.
    fn text(&self) -> String {
        let signs = base32().map_or_else(String::new, |base32| base32.encode(&self.bytes()));
        format!("{BEGIN}{signs}")
    }

    /// Reads the text of a code, however it came: with spaces and line breaks, in small letters.
    ///
    /// # Errors
    /// Why it is none.
    fn read_text(text: &str) -> Result<Self, MessageFault> {
        let text = text.trim();
        let (begin, signs) = text.split_at_checked(BEGIN.len()).ok_or(MessageFault::Form)?;
        if !begin.eq_ignore_ascii_case(BEGIN) {
            return Err(MessageFault::Form);
        }
        let read = base32().and_then(|base32| base32.decode(signs.as_bytes()).ok());
        Self::read(&read.ok_or(MessageFault::Form)?)
    }
}

/// A version, and the parts of fixed length after it.
struct Parts<'b>(&'b [u8]);

impl<'b> Parts<'b> {
    fn of(bytes: &'b [u8]) -> Result<Parts<'b>, MessageFault> {
        match bytes.split_first() {
            Some((&VERSION, rest)) => Ok(Parts(rest)),
            Some((version, _)) if *version > VERSION => Err(MessageFault::Newer),
            _ => Err(MessageFault::Form),
        }
    }

    fn next<const N: usize>(&mut self) -> Result<[u8; N], MessageFault> {
        let (part, rest) = self.0.split_first_chunk().ok_or(MessageFault::Form)?;
        self.0 = rest;
        Ok(*part)
    }

    fn certificate(&mut self) -> Result<Certificate, MessageFault> {
        let bytes = self.next::<CERTIFICATE_BYTES>()?;
        Certificate::read(&bytes).map_err(|_| MessageFault::Key)
    }

    fn end(self) -> Result<(), MessageFault> {
        if self.0.is_empty() { Ok(()) } else { Err(MessageFault::Form) }
    }
}

impl Message for Invitation {
    fn bytes(&self) -> Vec<u8> {
        [&[VERSION][..], &self.open, &self.commitment].concat()
    }

    fn read(bytes: &[u8]) -> Result<Invitation, MessageFault> {
        let mut parts = Parts::of(bytes)?;
        let (open, commitment) = (parts.next()?, parts.next()?);
        parts.end()?;
        if is_opening_key(&open) {
            Ok(Invitation { open, commitment })
        } else {
            Err(MessageFault::Key)
        }
    }
}

impl Invitation {
    /// What the files of this pairing are called by on a carrier, 16 hexadecimal digits: nothing of it says who
    /// pairs with whom.
    pub fn post_tag(&self) -> String {
        let hash = hash(&label::POST, &[&self.bytes()]);
        hash[..8].iter().map(|byte| format!("{byte:02x}")).collect()
    }
}

impl Message for Reply {
    fn bytes(&self) -> Vec<u8> {
        let name = self.name.as_bytes();
        let length = u8::try_from(name.len()).unwrap_or(u8::MAX);
        [&[VERSION][..], self.certificate.bytes(), &self.nonce, &[length], name].concat()
    }

    fn read(bytes: &[u8]) -> Result<Reply, MessageFault> {
        let mut parts = Parts::of(bytes)?;
        let (certificate, nonce) = (parts.certificate()?, parts.next()?);
        let [length] = parts.next::<1>()?;
        let name = parts.0;
        if name.len() != usize::from(length) || name.len() > MOST_NAME_BYTES {
            return Err(MessageFault::Form);
        }
        let name = std::str::from_utf8(name).map_err(|_| MessageFault::Form)?;
        // It is shown to the coach before anything is known of who wrote it.
        if name.chars().any(char::is_control) {
            return Err(MessageFault::Form);
        }
        Ok(Reply { certificate, nonce, name: name.to_owned() })
    }
}

impl Message for Opening {
    fn bytes(&self) -> Vec<u8> {
        [&[VERSION][..], self.certificate.bytes(), &self.nonce].concat()
    }

    fn read(bytes: &[u8]) -> Result<Opening, MessageFault> {
        let mut parts = Parts::of(bytes)?;
        let (certificate, nonce) = (parts.certificate()?, parts.next()?);
        parts.end()?;
        Ok(Opening { certificate, nonce })
    }
}

/// The four words that coach and member compare: each one byte of a hash of all three messages, so that whoever
/// alters any of them, and has bound themselves to the first before they saw the second, has one guess in 2^32.
pub fn word_numbers(invitation: &Invitation, reply: &Reply, opening: &Opening) -> [u8; 4] {
    let parts = [invitation.bytes(), reply.bytes(), opening.bytes()];
    let [one, two, three] = &parts;
    let hash = match planted(Planted::WordsOfTwo) {
        false => hash(&label::WORD, &[one, two, three]),
        true => hash(&label::WORD, &[one, two]),
    };
    [hash[0], hash[1], hash[2], hash[3]]
}
