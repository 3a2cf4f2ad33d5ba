//! Messages of a pairing as files on a carrier: each sealed to the one device that is to read it, under a name that says
//! neither who pairs nor with whom.

use super::sealed::{Audience, FileHash, stored_hash, unwrap, wrap};
use crate::trust::{Invitation, Keys, Message};

/// The folder on a server that they lie in; in a folder as carrier they lie beside the leaves.
pub const POST_FOLDER: &str = "pairing";
/// The largest of them that is looked at.
pub(crate) const MOST_POST_BYTES: u64 = 4 * 1024;
/// The most of one pairing that are looked at.
pub(crate) const MOST_POSTS: usize = 16;

/// Which message of a pairing a file holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Post {
    /// A member's answer.
    Reply,
    /// What opens the coach's invitation.
    Opening,
}

impl Post {
    /// What the names of such files begin with, for one invitation.
    pub(crate) fn begin(self, invitation: &Invitation) -> String {
        let step = match self {
            Post::Reply => 2,
            Post::Opening => 3,
        };
        format!("{}-{step}-", invitation.post_tag())
    }

    /// Seals a message to a device; its name and what is in it.
    pub(crate) fn sealed(
        self,
        invitation: &Invitation,
        message: &impl Message,
        to: [u8; 32],
    ) -> Option<(String, Vec<u8>)> {
        let audience = Audience { founder: vec![to], ..Audience::default() };
        let sealed = wrap(&message.bytes(), &audience).ok()?;
        let name = format!("{}{}.pair", self.begin(invitation), stored_hash(&sealed));
        Some((name, sealed))
    }
}

/// Opens a message that was sealed to this device; none where it was not, or is none.
pub(crate) fn opened<M: Message>(file: &[u8], keys: &Keys) -> Option<M> {
    let fits = file.len() as u64 <= MOST_POST_BYTES;
    fits.then(|| unwrap(file, &[keys]).ok()).flatten().and_then(|bytes| M::read(&bytes).ok())
}

/// True for the name of such a file: tag, step and hash.
pub fn is_post(name: &str) -> bool {
    let digits = |part: &str| part.parse::<FileHash>().is_ok();
    let parts: Option<Vec<&str>> = name.strip_suffix(".pair").map(|name| name.split('-').collect());
    matches!(parts.as_deref(), Some([tag, "2" | "3", hash]) if digits(tag) && digits(hash))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trust::tests::{device, person};
    use crate::trust::{Certificate, Invited, MessageFault, Reply};

    #[test]
    fn a_message_opens_for_one_device_and_its_name_says_nothing() {
        let [coach, ana, ben] = [1, 2, 3].map(device);
        let certificate =
            |number: u8| Certificate::sign(&person(number), &device(number).public(), 1);
        let invitation = Invited::new(certificate(1), [5; 16]).invitation();
        let reply = Reply { certificate: certificate(2), nonce: [6; 16], name: "Zoë".into() };
        let (name, sealed) = Post::Reply.sealed(&invitation, &reply, coach.public().open).unwrap();
        assert!(is_post(&name) && name.starts_with(&Post::Reply.begin(&invitation)), "{name}");
        assert!((sealed.len() as u64) < MOST_POST_BYTES, "{}", sealed.len());
        assert_eq!(opened::<Reply>(&sealed, &coach), Some(reply.clone()));
        for other in [&ana, &ben] {
            assert_eq!(opened::<Reply>(&sealed, other), None);
        }
        assert_eq!(opened::<Invitation>(&sealed, &coach), None, "another message");
        for bit in (0..sealed.len() * 8).step_by(13) {
            let mut turned = sealed.clone();
            turned[bit / 8] ^= 1 << (bit % 8);
            // A stanza of a key that nobody has may change as it likes.
            let read = opened::<Reply>(&turned, &coach);
            assert!(read.is_none() || read == Some(reply.clone()), "bit {bit}");
        }
        // Twice the same is two files: nothing tells a carrier that they are one answer.
        assert_ne!(Post::Reply.sealed(&invitation, &reply, coach.public().open).unwrap().0, name);
    }

    /// A message of whatever bytes.
    struct Any(Vec<u8>);

    impl Message for Any {
        fn bytes(&self) -> Vec<u8> {
            self.0.clone()
        }

        fn read(bytes: &[u8]) -> Result<Any, MessageFault> {
            Ok(Any(bytes.to_vec()))
        }
    }

    /// Nothing else of it is wrong, and it is sealed to this device.
    #[test]
    fn a_message_over_4_kib_is_not_opened() {
        let ana = device(2);
        let certificate = Certificate::sign(&person(1), &device(1).public(), 1);
        let invitation = Invited::new(certificate, [5; 16]).invitation();
        let sent = |bytes: usize| {
            let message = Any(vec![7; bytes]);
            Post::Reply.sealed(&invitation, &message, ana.public().open).unwrap().1
        };
        let (fits, large) = (sent(2_000), sent(4_000));
        assert!(fits.len() as u64 <= MOST_POST_BYTES && large.len() as u64 > MOST_POST_BYTES);
        assert_eq!(opened::<Any>(&fits, &ana).map(|read| read.0.len()), Some(2_000));
        assert!(opened::<Any>(&large, &ana).is_none());
    }

    #[test]
    fn other_names_are_none() {
        let name = format!("{}-2-{}.pair", "0123456789abcdef", "fedcba9876543210");
        assert!(is_post(&name));
        for odd in [
            name.to_uppercase(),
            name.replace("-2-", "-1-"),
            name.replace("-2-", "-4-"),
            name.replace("-2-", "-2-2-"),
            name.replace(".pair", ".leaf"),
            name.replace("0123", "012"),
            name.replace("0123", "../3"),
            format!("x/{name}"),
            ".pair".into(),
            String::new(),
        ] {
            assert!(!is_post(&odd), "{odd}");
        }
    }
}
