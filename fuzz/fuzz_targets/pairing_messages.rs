//! A pairing with somebody in between who alters one message. Whoever sees another message than was sent is told, or reads other words.

#![no_main]

use std::sync::LazyLock;

use holdfast_core::trust::{Answered, Invited, MOST_NAME_BYTES, Message};
use holdfast_fuzz::people::Crew;
use holdfast_fuzz::{laws, within};
use libfuzzer_sys::fuzz_target;

static CREW: LazyLock<Crew> = LazyLock::new(Crew::new);

/// What the one in between does: which message, where, and by which bits or bytes.
struct Altered<'d> {
    message: u8,
    at: usize,
    by: &'d [u8],
}

impl Altered<'_> {
    /// A message as it arrives; none where it is read no more.
    fn arrives<M: Message + PartialEq + std::fmt::Debug>(&self, number: u8, sent: &M) -> Option<M> {
        let mut bytes = sent.bytes();
        if self.message % 4 == number {
            let at = self.at % bytes.len();
            for (byte, by) in bytes[at..].iter_mut().zip(self.by) {
                *byte ^= by;
            }
            if self.message >= 128 {
                bytes.truncate(at);
                bytes.extend_from_slice(self.by);
            }
        }
        match M::read(&bytes) {
            Ok(read) => {
                assert_eq!(read.bytes(), bytes, "a message prints as it was read");
                assert_eq!(read == *sent, bytes == sent.bytes());
                assert_eq!(M::read_text(&read.text()).as_ref(), Ok(&read));
                Some(read)
            }
            Err(fault) => {
                assert_ne!(bytes, sent.bytes(), "what was sent is read");
                laws::said(fault);
                None
            }
        }
    }
}

fn pair(data: &[u8]) -> Option<()> {
    let (coach_nonce, rest) = data.split_first_chunk::<16>()?;
    let (member_nonce, rest) = rest.split_first_chunk::<16>()?;
    let ([message, high, low, length], rest) = rest.split_first_chunk::<4>()?;
    let (by, name) = rest.split_at(usize::from(*length).min(rest.len()));
    let altered =
        Altered { message: *message, at: usize::from(*high) * 256 + usize::from(*low), by };
    let name = std::str::from_utf8(name).ok()?;
    if name.len() > MOST_NAME_BYTES || name.contains(char::is_control) {
        return None;
    }
    let invited = Invited::new(CREW.coach.certificate, *coach_nonce);
    let invitation = invited.invitation();
    let scanned = altered.arrives(1, &invitation)?;
    let answered = Answered::new(None, scanned, CREW.ana.certificate, name, *member_nonce);
    let reply = altered.arrives(2, answered.reply())?;
    let opened =
        invited.take(&[reply.clone(), reply]).expect("one answer twice").expect("an answer");
    let opening = altered.arrives(3, opened.opening())?;
    let same = answered.invitation() == &invitation && opening == *opened.opening();
    match answered.open(&opening) {
        Ok(compared) => {
            assert!(same, "another invitation or opening is taken for the one that was scanned");
            assert_eq!(compared.coach, CREW.coach.certificate);
            if answered.reply() == opened.reply() {
                assert_eq!(compared.words, opened.words(), "both saw the same, and read the same");
            }
        }
        Err(fault) => {
            assert!(!same, "what was sent is refused");
            laws::said(fault);
        }
    }
    let lines = opened.lines(*coach_nonce);
    assert_eq!(lines.iter().filter(|line| **line == opened.words()).count(), 1);
    // Stored and read back, so that a kill loses nothing.
    let stored = serde_json::to_string(&answered).expect("JSON");
    assert_eq!(serde_json::from_str::<Answered>(&stored).ok().as_ref(), Some(&answered));
    Some(())
}

fuzz_target!(|data: &[u8]| {
    within(256 * 1024, || pair(data));
});
