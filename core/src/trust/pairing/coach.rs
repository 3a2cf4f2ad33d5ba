//! The coach's side.

use serde::{Deserialize, Serialize};

use super::message::{Invitation, NONCE_BYTES, Opening, Reply, commitment, word_numbers};
use super::stored;
use crate::say::trust as say;
use crate::trust::certificate::Certificate;
use crate::trust::words::said;

/// So many lines of words a coach chooses from, one of which is right.
const LINES: usize = 3;

/// An invitation that nobody has answered yet. Stored before its code is shown.
#[derive(Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Invited {
    pub(super) certificate: Certificate,
    pub(super) nonce: [u8; NONCE_BYTES],
}

/// Why an invitation ends without a member.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum InvitedFault {
    /// Two devices answered one code, and nobody can say which is the member's.
    #[error("{}", say::two_answered())]
    TwoAnswered,
    /// Another answer has been opened already.
    #[error("{}", say::opened_for_another())]
    OpenedForAnother,
}

/// An invitation opened for one answer. Stored before the opening is sent, and never opened for another.
#[derive(Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(into = "stored::Opened", try_from = "stored::Opened")]
pub struct Opened {
    pub(super) invitation: Invitation,
    pub(super) reply: Reply,
    pub(super) opening: Opening,
}

/// What a coach picked of the lines.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Picked {
    /// A line, counted from 0.
    Line(usize),
    /// None of these.
    None,
}

impl std::fmt::Debug for Invited {
    // The nonce is secret until somebody has answered.
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let Invited { certificate, nonce: _ } = self;
        out.debug_struct("Invited").field("certificate", certificate).finish_non_exhaustive()
    }
}

impl std::fmt::Debug for Opened {
    // The opening holds the nonce, and is the member's to see first.
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let Opened { invitation, reply, opening: _ } = self;
        let mut opened = out.debug_struct("Opened");
        opened.field("invitation", invitation).field("reply", reply).finish_non_exhaustive()
    }
}

impl Invited {
    /// Invites somebody; `nonce` is drawn for this invitation alone.
    pub fn new(certificate: Certificate, nonce: [u8; NONCE_BYTES]) -> Invited {
        Invited { certificate, nonce }
    }

    /// What the code says.
    pub fn invitation(&self) -> Invitation {
        let open = self.certificate.device_keys().open;
        Invitation { open, commitment: commitment(&self.certificate, &self.nonce) }
    }

    /// Opens the invitation for the one answer there is; none while there is none. The same answer twice is one.
    ///
    /// # Errors
    /// [`InvitedFault::TwoAnswered`]: the invitation is to be forgotten then, its nonce with it.
    pub fn take(&self, replies: &[Reply]) -> Result<Option<Opened>, InvitedFault> {
        let Some((first, others)) = replies.split_first() else { return Ok(None) };
        if others.iter().any(|other| other != first) {
            return Err(InvitedFault::TwoAnswered);
        }
        let opening = Opening { certificate: self.certificate, nonce: self.nonce };
        Ok(Some(Opened { invitation: self.invitation(), reply: first.clone(), opening }))
    }
}

impl Opened {
    /// The invitation that it opens.
    pub fn invitation(&self) -> &Invitation {
        &self.invitation
    }

    /// The message that opens it: always the same.
    pub fn opening(&self) -> &Opening {
        &self.opening
    }

    /// The member's answer.
    pub fn reply(&self) -> &Reply {
        &self.reply
    }

    /// Takes an answer that comes after the opening.
    ///
    /// # Errors
    /// [`InvitedFault::OpenedForAnother`] unless it is the same again.
    pub fn take(&self, reply: &Reply) -> Result<(), InvitedFault> {
        if *reply == self.reply { Ok(()) } else { Err(InvitedFault::OpenedForAnother) }
    }

    /// The words that the member reads out.
    pub fn words(&self) -> [&'static str; 4] {
        said(word_numbers(&self.invitation, &self.reply, &self.opening))
    }

    /// Three lines of four words, one of them right, at a place that `chance` draws: who picks the right one has
    /// listened. No word stands in two lines.
    pub fn lines(&self, chance: [u8; 16]) -> [[&'static str; 4]; LINES] {
        let right = word_numbers(&self.invitation, &self.reply, &self.opening);
        let mut taken: Vec<u8> = right.to_vec();
        let place = usize::from(chance[0]) % LINES;
        let mut lines = [right; LINES];
        let mut drawn = chance[1..].iter().copied();
        for line in
            lines.iter_mut().enumerate().filter(|(at, _)| *at != place).map(|(_, line)| line)
        {
            for number in line {
                let from = drawn.next().unwrap_or_default();
                // The next that is in no line yet.
                *number = (0..=u8::MAX)
                    .map(|more| from.wrapping_add(more))
                    .find(|one| !taken.contains(one))
                    .unwrap_or(from);
                taken.push(*number);
            }
        }
        lines.map(said)
    }

    /// True when the line picked is the one that the member reads.
    pub fn is_right(&self, chance: [u8; 16], picked: Picked) -> bool {
        match picked {
            Picked::Line(at) => self.lines(chance).get(at) == Some(&self.words()),
            Picked::None => false,
        }
    }
}
