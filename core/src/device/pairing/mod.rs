//! Pairing on a device: what was done, the state it leads to, stored before anything of it is shown, and the screen.
//!
//! Who a member is to a coach, and who the coach is to a member, is known by this and by nothing that a carrier
//! brings.

mod coach;
mod member;
mod post;
mod screen;
mod stored;

use crate::error::{Error, Field, Result};
use crate::exchange::CarriedFile;
use crate::instant::Instant;
use crate::journal::Role;
use crate::say::pairing as say;
use stored::{Now, Stored};

use super::Device;
pub use post::PairFiles;
pub use screen::{PairScreen, PairStep};

/// What somebody does in a pairing.
#[derive(Clone, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum PairDid {
    /// Looks where it stands.
    Look,
    /// A coach invites somebody. What was under way ends.
    Invite {
        /// At least 32 bytes from the system's source of chance.
        chance: Vec<u8>,
    },
    /// A code was scanned, pasted or typed.
    Scan {
        /// Its text.
        text: String,
        /// At least 16 bytes from the system's source of chance.
        chance: Vec<u8>,
    },
    /// Files of a carrier were fetched that [`PairFiles`] asked for.
    Fetched {
        /// Those that could be read.
        files: Vec<CarriedFile>,
    },
    /// A coach picked the line that the member reads out.
    Pick {
        /// The line, counted from 1; none when it is none of them.
        line: Option<u32>,
        /// What the coach calls the member; the member's own name where it is left out.
        label: Option<String>,
    },
    /// A member says whether the words match.
    Match {
        /// True where they do.
        matches: bool,
        /// True to share also what was logged before today. Otherwise that stays with the member.
        share_earlier: bool,
    },
    /// A member shares after all what was logged before the day of joining.
    ShareEarlier,
    /// Ends what is under way.
    Stop,
}

impl Device {
    /// Does what somebody did in a pairing. When the screen comes back, what it leads to is on disk.
    pub(crate) fn pair(&mut self, did: PairDid, at: &Instant) -> Result<PairScreen> {
        let mut stored = Stored::read(&self.home)?;
        let told = match did {
            PairDid::Look => None,
            PairDid::Invite { chance } => self.invite(&mut stored, &chance, at)?,
            PairDid::Scan { text, chance } => self.scan(&mut stored, &text, &chance, at)?,
            PairDid::Fetched { files } => self.fetched(&mut stored, &files, at)?,
            PairDid::Pick { line, label } => self.pick(&mut stored, line, label, at)?,
            PairDid::Match { matches, share_earlier } => {
                let from = (!share_earlier).then(|| at.date());
                self.compare(&mut stored, matches, from)?
            }
            PairDid::ShareEarlier => self.share_earlier()?,
            PairDid::Stop => {
                stored.now = Now::Nothing {};
                stored.write(&self.home)?;
                Some(say::stopped().to_owned())
            }
        };
        self.pair_screen(&stored, told, at)
    }

    fn scan(
        &mut self,
        stored: &mut Stored,
        text: &str,
        chance: &[u8],
        at: &Instant,
    ) -> Result<Option<String>> {
        match self.identity.profile.role {
            Role::Coach => self.scan_reply(stored, text, at),
            Role::Athlete => self.scan_code(stored, text, chance),
        }
    }
}

/// Some bytes that a shell drew.
fn drawn<const N: usize>(chance: &[u8]) -> Result<[u8; N]> {
    let drawn = chance.first_chunk().copied();
    drawn.ok_or_else(|| Error::invalid(Field::Chance, say::more_random_bytes(N, chance.len())))
}

fn refused(reason: impl Into<String>) -> Error {
    Error::invalid(Field::Pairing, reason)
}
