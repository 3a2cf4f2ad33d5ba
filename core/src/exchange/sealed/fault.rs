//! Why a file is left alone.

use crate::say;
use crate::say::sealed as said;

use super::{MAX_SEALED_BYTES, SEALED_FORMAT};

/// Why a file is left alone. It is kept where it lies, and the rest is taken in.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum SealedFault {
    /// The name is not one we write.
    #[error("{}", say::exchange::foreign())]
    Foreign,
    /// Larger than any leaf.
    #[error("{}", say::exchange::too_large(bytes, MAX_SEALED_BYTES))]
    TooLarge {
        /// The size.
        bytes: u64,
    },
    /// The bytes are not those its name was made from: cut short, or still arriving.
    #[error("{}", say::exchange::torn())]
    Torn,
    /// Not sealed as leaves are.
    #[error("{}", said::not_sealed_so())]
    Envelope,
    /// Sealed to others: no fault.
    #[error("{}", said::not_for_this_device())]
    NotForUs,
    /// It opens, and is altered.
    #[error("{}", said::altered())]
    Altered,
    /// Compressed in a way that leaves are not, or inflating without end.
    #[error("{}", said::packed_wrongly())]
    Packed,
    /// The first line is none.
    #[error("{}", said::first_line())]
    FirstLine,
    /// The writer's certificate is none.
    #[error("{}", said::certificate())]
    Certificate,
    /// The writer's device did not sign it.
    #[error("{}", said::signature())]
    Signature,
    /// Not text, or cut off.
    #[error("{}", said::not_text())]
    NotText,
    /// Its header cannot be read.
    #[error("{}", say::exchange::unreadable(2, reason))]
    Header {
        /// What is wrong.
        reason: String,
    },
    /// A line of it cannot be read.
    #[error("{}", say::exchange::unreadable(line, reason))]
    Line {
        /// The line, counted from 1.
        line: u64,
        /// What is wrong.
        reason: String,
    },
    /// Written by a newer app.
    #[error("{}", say::exchange::newer(found, SEALED_FORMAT))]
    Newer {
        /// The format found.
        found: u32,
    },
    /// Its header names another device or person than its certificate.
    #[error("{}", said::not_the_writers())]
    NotTheWriters,
    /// Another crew's.
    #[error("{}", say::exchange::other_crew())]
    OtherCrew,
    /// Of a thread that is not for this device, or not its writer's to write in.
    #[error("{}", said::other_thread())]
    OtherThread,
    /// Its name says something else than its header.
    #[error("{}", said::other_name())]
    OtherName,
    /// More people and devices than a file is sealed to.
    #[error("{}", said::too_many_recipients(found, super::MOST_RECIPIENTS))]
    TooMany {
        /// How many.
        found: usize,
    },
}
