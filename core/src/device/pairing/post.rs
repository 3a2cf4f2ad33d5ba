//! A pairing over a carrier: the two messages after the invitation go as files, where the two screens do not face each
//! other, or a laptop has no camera. The words are compared as ever.

use super::stored::{Now, Stored};
use super::{Device, Result, refused};
use crate::exchange::{
    CarriedFile, ListedFile, MOST_POST_BYTES, MOST_POSTS, Post, is_post, opened,
};
use crate::instant::Instant;
use crate::say::pairing as say;
use crate::trust::{Invitation, Message, Opening, Reply};

/// What a shell does on a carrier in a pairing: write these, then fetch those and hand them on.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct PairFiles {
    /// Files to write.
    pub put: Vec<CarriedFile>,
    /// Names of files to fetch, for [`PairDid::Fetched`](super::PairDid::Fetched).
    pub get: Vec<String>,
}

impl Device {
    /// What a pairing has to do with the files of a carrier's folder. Which file is its own is stored before it is given out.
    pub(crate) fn pair_files(&self, listed: &[ListedFile]) -> Result<PairFiles> {
        let mut stored = Stored::read(&self.home)?;
        let (invitation, put, get) = match &stored.now {
            Now::Invited { invited, .. } => (invited.invitation(), None, Some(Post::Reply)),
            Now::Opened { opened, .. } => {
                let to = opened.reply().certificate.device_keys().open;
                let invitation = opened.invitation().clone();
                let put = sealed(Post::Opening, &invitation, opened.opening(), to);
                (invitation, Some(put), Some(Post::Reply))
            }
            Now::Answered { answered } | Now::Compared { answered, .. } => {
                let invitation = answered.invitation().clone();
                let to = invitation.open;
                let put = sealed(Post::Reply, &invitation, answered.reply(), to);
                let waits = matches!(stored.now, Now::Answered { .. });
                (invitation, Some(put), waits.then_some(Post::Opening))
            }
            Now::Nothing {} | Now::Admitted { .. } | Now::Joined {} => {
                return Ok(PairFiles::default());
            }
        };
        let mut files = PairFiles::default();
        if let Some(begin) = get.map(|post| post.begin(&invitation)) {
            let wanted = listed.iter().filter(|file| {
                is_post(&file.name)
                    && file.name.starts_with(&begin)
                    && file.bytes <= MOST_POST_BYTES
            });
            files.get = wanted.take(MOST_POSTS).map(|file| file.name.clone()).collect();
        }
        let mut changed = !std::mem::replace(&mut stored.over, true);
        if let Some((begin, Some((name, content)))) = put {
            let posted = stored.posted.as_ref().filter(|posted| posted.starts_with(&begin));
            if posted.is_none_or(|posted| !listed.iter().any(|file| file.name == *posted)) {
                stored.posted = Some(name.clone());
                files.put.push(CarriedFile { name, content });
                changed = true;
            }
        }
        if changed {
            stored.write(&self.home)?;
        }
        Ok(files)
    }

    /// Takes what was fetched: on a coach's device the answers, on a member's what opens the invitation.
    pub(super) fn fetched(
        &mut self,
        stored: &mut Stored,
        files: &[CarriedFile],
        at: &Instant,
    ) -> Result<Option<String>> {
        let files = files.iter().take(MOST_POSTS).map(|file| file.content.as_slice());
        match &stored.now {
            Now::Invited { .. } => {
                let replies: Vec<Reply> =
                    files.filter_map(|file| opened(file, &self.kept.keys)).collect();
                self.replied(stored, &replies, at)
            }
            // It is opened for one, whoever else answers: that is told, and stops nothing.
            Now::Opened { opened: for_one, .. } => {
                let mut replies = files.filter_map(|file| opened::<Reply>(file, &self.kept.keys));
                let other = replies.find_map(|reply| for_one.take(&reply).err());
                Ok(other.map(|fault| fault.to_string()))
            }
            Now::Answered { answered } => {
                let found = files.len() > 0;
                let openings: Vec<Opening> =
                    files.filter_map(|file| opened(file, &self.kept.keys)).collect();
                let fits = openings.iter().find(|opening| answered.open(opening).is_ok());
                match fits {
                    Some(opening) => {
                        let opening = opening.clone();
                        self.open_code(stored, &opening)
                    }
                    // Sealed to somebody else, or for another code.
                    None => Ok(found.then(|| say::another_used_it().to_owned())),
                }
            }
            Now::Compared { .. } | Now::Admitted { .. } | Now::Joined {} => Ok(None),
            Now::Nothing {} => Err(refused(say::nothing_under_way())),
        }
    }
}

/// What the names of such files begin with, and one of them.
fn sealed(
    post: Post,
    invitation: &Invitation,
    message: &impl Message,
    to: [u8; 32],
) -> (String, Option<(String, Vec<u8>)>) {
    (post.begin(invitation), post.sealed(invitation, message, to))
}
