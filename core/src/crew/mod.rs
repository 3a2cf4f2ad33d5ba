//! The crew: who is in it with which devices, who is taken out, which device no longer counts, and the recovery code.

mod forget;
mod recovery;
mod remove;
mod screen;
mod search;
mod stop;

pub use forget::Forgotten;
pub(crate) use forget::{forget, to_delete};
pub(crate) use recovery::recovery;
pub use recovery::{RecoveryDid, RecoveryScreen};
pub(crate) use remove::remove;
pub(crate) use screen::screen;
pub use screen::{CrewDevice, CrewPerson, CrewScreen};
pub(crate) use search::Search;
pub(crate) use stop::stop;
