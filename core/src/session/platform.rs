//! What a phone's system needs said beside the screens: notifications, permissions, folders.

use serde::Serialize;

use crate::say::platform as say;

/// Sentences that an app needs for its system alone: ask for them again after the language changed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
#[allow(missing_docs, reason = "each is what it says")]
pub struct PlatformWords {
    pub clock_channel: String,
    pub clock_runs: String,
    pub clock_is_paused: String,
    pub cues_here_only: String,
    pub cue_to_try: String,
    pub no_notification: String,
    pub no_speech: String,
    pub file_torn: String,
    pub scan_here: String,
    pub no_camera_right: String,
    pub no_camera: String,
    pub phone_full: String,
    pub no_chooser: String,
    pub no_receiver: String,
    pub carriers_damaged: String,
}

/// What a phone's system refused, with what it is about.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
#[allow(
    missing_docs,
    reason = "`place` is a folder's name or an address, `name` a file's, `what` what was said"
)]
pub enum PlatformTrouble {
    /// The right to a folder was withdrawn, or the folder is gone.
    FolderGone { place: String },
    /// No room is left there.
    FolderFull { place: String },
    /// What shows the folder has not loaded it yet.
    FolderLoading { place: String },
    /// Anything else that the system said of a file there.
    FolderRefused { place: String, what: String },
    /// An exchange in the background ended early.
    ExchangeUnfinished { place: String, what: String },
    /// A file that was chosen cannot be read.
    FileUnreadable { name: String },
    /// A file that was chosen is no plan by its size.
    FileLarge { name: String },
    /// The keystore has lost a server's password.
    PasswordGone { place: String },
}

/// In the language that is spoken.
pub(crate) fn platform_words() -> PlatformWords {
    PlatformWords {
        clock_channel: say::clock_channel().into(),
        clock_runs: say::clock_runs().into(),
        clock_is_paused: say::clock_is_paused().into(),
        cues_here_only: say::cues_here_only().into(),
        // A real one: the words that start a push.
        cue_to_try: crate::say::clock::cue_push().into(),
        no_notification: say::no_notification().into(),
        no_speech: say::no_speech().into(),
        file_torn: say::file_torn().into(),
        scan_here: say::scan_here().into(),
        no_camera_right: say::no_camera_right().into(),
        no_camera: say::no_camera().into(),
        phone_full: say::phone_full().into(),
        no_chooser: say::no_chooser().into(),
        no_receiver: say::no_receiver().into(),
        carriers_damaged: say::carriers_damaged().into(),
    }
}

/// As a sentence to show.
pub(crate) fn platform_trouble(trouble: &PlatformTrouble) -> String {
    match trouble {
        PlatformTrouble::FolderGone { place } => say::folder_gone(place),
        PlatformTrouble::FolderFull { place } => say::folder_full(place),
        PlatformTrouble::FolderLoading { place } => say::folder_loading(place),
        PlatformTrouble::FolderRefused { place, what } => say::folder_refused(place, what),
        PlatformTrouble::ExchangeUnfinished { place, what } => {
            say::exchange_unfinished(place, what)
        }
        PlatformTrouble::FileUnreadable { name } => say::file_unreadable(name),
        PlatformTrouble::FileLarge { name } => say::file_large(name),
        PlatformTrouble::PasswordGone { place } => say::password_gone(place),
    }
}
