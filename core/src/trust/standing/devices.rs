//! A person's devices: at most so many, and the lowest of too many.

use super::Placed;
use crate::id::DeviceId;
use crate::trust::certificate::{Certificate, MOST_DEVICES};
use crate::trust::keys::PublicKeys;

/// The most devices of a person that are sealed to at once: two people's, and their papers, fit into one file.
pub const MOST_STANDING: usize = 7;

/// The devices that a person certified, each with how it stands. Of more than one person may have, those with the
/// lowest place count, and of one place the lowest identity: everybody finds the same.
pub(super) fn placed<'c>(
    certificates: &'c [Certificate],
    person: &PublicKeys,
    is_ended: &dyn Fn(DeviceId) -> bool,
) -> Vec<(&'c Certificate, Placed)> {
    let mut theirs: Vec<&Certificate> =
        certificates.iter().filter(|certificate| certificate.person_keys() == *person).collect();
    theirs.sort_by_key(|certificate| (certificate.index(), certificate.device()));
    theirs.dedup_by_key(|certificate| certificate.device());
    let mut standing = 0;
    let place = |(at, certificate): (usize, &'c Certificate)| {
        let device = certificate.device();
        let ended = is_ended(device);
        let stands = !ended && at < usize::from(MOST_DEVICES) && standing < MOST_STANDING;
        standing += usize::from(stands);
        let (person, open) = (certificate.person(), certificate.device_keys().open);
        let within = at < usize::from(MOST_DEVICES) && (ended || stands);
        let index = certificate.index();
        (certificate, Placed { person, open, index, standing: stands, within })
    };
    theirs.into_iter().enumerate().map(place).collect()
}
