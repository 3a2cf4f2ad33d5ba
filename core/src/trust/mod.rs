//! Keys and who they are: recovery secrets on paper, certificates of devices, stops, pairing.
//!
//! Nothing here reads a clock, draws by chance or touches a disk.

mod certificate;
mod id;
mod key_file;
mod keys;
mod label;
mod pairing;
mod recovery;
mod sealing;
mod standing;
mod stop;
mod words;

#[cfg(test)]
pub(crate) mod tests;

pub(crate) use certificate::first_link;
pub use certificate::{
    CERTIFICATE_BYTES, CERTIFICATE_SIGNS, Certificate, CertificateFault, MOST_DEVICES,
};
pub use id::{crew_of, device_of, person_of};
pub use key_file::{Kept, KeyFileFault};
pub(crate) use keys::is_signed;
pub use keys::{KEY_BYTES, Keys, PublicKeys, SIGNATURE_BYTES};
pub(crate) use label::{LEAF, NAME, hash};
pub use pairing::{
    Answered, AnsweredFault, Compared, Invitation, Invited, InvitedFault, MOST_NAME_BYTES, Message,
    MessageFault, NONCE_BYTES, Opened, Opening, Picked, Reply, commitment, word_numbers,
};
pub use recovery::{CodeFault, RECOVERY_BYTES, Recovery};
pub(crate) use sealing::{identity, recipient};
pub use standing::{
    Counts, Facts, Lane, Link, MOST_STANDING, Person, Placed, Said, Standing, Word, WordName,
};
pub use stop::{Head, STOP_BYTES, Stop};
pub use words::WORDS;
