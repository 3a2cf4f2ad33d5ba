//! The folders of lanes on a server: each holds one lane, and is called by the device and the lane's tag.

use super::sealed::{SealedName, lane_tag};
use super::{Bag, forget};
use crate::error::Result;
use crate::id::CrewId;
use crate::store::Store;

/// The folders, of those named, that this device has to look into: all on a coach's device; on a member's those of the
/// member's own thread, and of crewmates whose files it carries. A member's listing does not grow with the crew.
pub(crate) fn to_look_into(
    store: &Store,
    bag: &Bag,
    crew: CrewId,
    folders: Vec<String>,
) -> Result<Vec<String>> {
    let own = store.own();
    let forgotten = forget::forgotten(store.reader(), store.device())?;
    let carried = bag.files();
    let wanted = |folder: &String| {
        // A leaf's name begins with its lane.
        let Some(name) = SealedName::parse(&format!("{folder}-00000001-{}.leaf", "0".repeat(16)))
        else {
            return false;
        };
        if carried.keys().any(|file| (file.device, &file.tag) == (name.device, &name.tag)) {
            return true;
        }
        let ours = own.coach || lane_tag(crew, own.person, name.device) == name.tag;
        ours && !forget::is_forgotten(&forgotten, crew, &name)
    };
    Ok(folders.into_iter().filter(wanted).collect())
}
