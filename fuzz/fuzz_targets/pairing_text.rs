//! The text of a pairing code, scanned or pasted: one of three messages, or none.

#![no_main]

use std::fmt::Debug;

use holdfast_core::trust::{Invitation, MOST_NAME_BYTES, Message, Opening, Reply};
use holdfast_fuzz::{laws, within};
use libfuzzer_sys::fuzz_target;

/// What was pasted, in the one spelling that codes have.
fn spelled(text: &str) -> String {
    let signs = text.trim().chars().filter(|sign| !" -\t\r\n".contains(*sign));
    let plain = |(at, sign): (usize, char)| match sign.to_ascii_uppercase() {
        'O' if at >= 4 => '0',
        'I' | 'L' if at >= 4 => '1',
        sign => sign,
    };
    signs.enumerate().map(plain).collect()
}

fn read<M: Message + PartialEq + Debug>(text: &str) -> Option<M> {
    match within(8 * text.len() + 4096, || M::read_text(text)) {
        Ok(message) => {
            assert_eq!(message.text(), spelled(text), "a message has one spelling");
            assert_eq!(M::read(&message.bytes()).as_ref(), Ok(&message));
            Some(message)
        }
        Err(fault) => {
            laws::said(fault);
            None
        }
    }
}

fuzz_target!(|data: &[u8]| {
    let Ok(text) = std::str::from_utf8(data) else { return };
    let invitation = read::<Invitation>(text);
    let reply = read::<Reply>(text);
    let opening = read::<Opening>(text);
    let read = [invitation.is_some(), reply.is_some(), opening.is_some()];
    assert!(read.into_iter().filter(|is| *is).count() <= 1, "a text is one message");
    if let Some(reply) = reply {
        assert!(reply.name.len() <= MOST_NAME_BYTES && !reply.name.contains(char::is_control));
    }
});
