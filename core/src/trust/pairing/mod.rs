//! Pairing: two people in one room make each other's keys known.
//!
//! Three messages, of which the first binds the coach to the third before the member's answer is seen. Whoever
//! stands in between has therefore one guess at the words that both then compare. Each side's state is stored
//! before its message is shown, so that a kill at any moment goes on where it was.

mod coach;
mod member;
mod message;
mod stored;

#[cfg(test)]
mod tests;

pub use coach::{Invited, InvitedFault, Opened, Picked};
pub use member::{Answered, AnsweredFault, Compared};
pub use message::{
    Invitation, MOST_NAME_BYTES, Message, MessageFault, NONCE_BYTES, Opening, Reply, commitment,
    word_numbers,
};
