//! The member's side.

use serde::{Deserialize, Serialize};

use super::message::{Invitation, NONCE_BYTES, Opening, Reply, commitment, word_numbers};
use super::stored;
use crate::planted::{Planted, planted};
use crate::say::trust as say;
use crate::trust::certificate::Certificate;
use crate::trust::words::said;

/// An invitation answered. Stored before the answer is shown.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(into = "stored::Answered", try_from = "stored::Answered")]
pub struct Answered {
    pub(super) invitation: Invitation,
    pub(super) reply: Reply,
}

/// Why an opening does not belong to the code that was scanned.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum AnsweredFault {
    /// Its certificate and nonce are not what the code committed to, or its key is another.
    #[error("{}", say::not_the_scanned_code())]
    NotTheCode,
}

/// What is compared: the words, and the coach they stand for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Compared {
    /// The coach's certificate: its person is the crew's founder once the words match.
    pub coach: Certificate,
    /// The words to read to the coach.
    pub words: [&'static str; 4],
}

impl Answered {
    /// Answers an invitation; `nonce` is drawn for it alone. Answered again, the same invitation gets the same answer.
    pub fn new(
        before: Option<&Answered>,
        invitation: Invitation,
        certificate: Certificate,
        name: &str,
        nonce: [u8; NONCE_BYTES],
    ) -> Answered {
        match before {
            Some(before) if before.invitation == invitation => before.clone(),
            _ => {
                Answered { invitation, reply: Reply { certificate, nonce, name: name.to_owned() } }
            }
        }
    }

    /// What the code says.
    pub fn reply(&self) -> &Reply {
        &self.reply
    }

    /// The invitation it answers.
    pub fn invitation(&self) -> &Invitation {
        &self.invitation
    }

    /// Checks an opening against the code that was scanned.
    ///
    /// # Errors
    /// [`AnsweredFault::NotTheCode`].
    pub fn open(&self, opening: &Opening) -> Result<Compared, AnsweredFault> {
        let Opening { certificate, nonce } = opening;
        let committed = commitment(certificate, nonce) == self.invitation.commitment;
        let committed = committed || planted(Planted::AnyOpening);
        if !committed || certificate.device_keys().open != self.invitation.open {
            return Err(AnsweredFault::NotTheCode);
        }
        let words = said(word_numbers(&self.invitation, &self.reply, opening));
        Ok(Compared { coach: *certificate, words })
    }
}
