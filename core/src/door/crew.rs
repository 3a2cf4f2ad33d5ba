//! What a shell asks about the crew and the recovery code.

use super::restore::Restore;
use super::{Holdfast, HoldfastResult};
use crate::crew::{self, CrewScreen, Forgotten, RecoveryDid, RecoveryScreen};
use crate::device::{Keystore, PairDid, PairFiles, PairScreen};
use crate::door::guard::caught;
use crate::exchange::ListedFile;
use crate::instant::Instant;

#[cfg_attr(feature = "ffi", uniffi::export)]
impl Holdfast {
    /// Takes a pairing one step on: a coach takes somebody in, a member joins. When the screen comes back, what it
    /// shows is on disk.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`](super::HoldfastError::Invalid) for a code that is none, or not one of this pairing.
    pub fn pair(&self, did: PairDid, at: Instant) -> HoldfastResult<PairScreen> {
        self.at(at, |state, at| state.device.pair(did, at))
    }

    /// What a pairing has to do with the files that lie in a carrier's folder [`POST_FOLDER`](crate::exchange::POST_FOLDER),
    /// or in a folder that is the carrier: write some, and fetch some for [`PairDid::Fetched`]. Whoever waits for the other
    /// side lists again after a few seconds.
    pub fn pair_files(&self, listed: Vec<ListedFile>) -> HoldfastResult<PairFiles> {
        self.with(|state| state.device.pair_files(&listed))
    }

    /// Who is in the crew, with which devices.
    pub fn crew(&self) -> HoldfastResult<CrewScreen> {
        self.with(|state| crew::screen(&state.device, None))
    }

    /// A coach removes a member, or with a number one device of theirs. What they wrote so far stays.
    ///
    /// # Errors
    /// [`HoldfastError::NotFound`](super::HoldfastError::NotFound) with the names, or the numbers, that there are.
    pub fn remove(
        &self,
        name: String,
        device: Option<u32>,
        at: Instant,
    ) -> HoldfastResult<CrewScreen> {
        self.at(at, |state, at| crew::remove(&mut state.device, &name, device, at))
    }

    /// A coach forgets somebody who was taken out: drops all that this device has of them. What lies on a carrier is
    /// named by [`Holdfast::forgotten_files`].
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`](super::HoldfastError::Invalid) for somebody who is still in the crew.
    pub fn forget(&self, name: String, at: Instant) -> HoldfastResult<Forgotten> {
        self.at(at, |state, at| crew::forget(&mut state.device, &name, at))
    }

    /// The files of a carrier's listing that are of somebody this device has forgotten: a shell deletes them there, and
    /// nothing else ever.
    pub fn forgotten_files(&self, listing: Vec<ListedFile>) -> HoldfastResult<Vec<String>> {
        self.with(|state| crew::to_delete(&state.device, &listing))
    }

    /// Stops a device of one's own, by its number. The recovery code is needed unless it is still on this device.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`](super::HoldfastError::Invalid) for a code that is none, or another person's.
    pub fn stop(
        &self,
        device: u32,
        code: Option<String>,
        at: Instant,
    ) -> HoldfastResult<CrewScreen> {
        self.at(at, |state, at| crew::stop(&mut state.device, device, code.as_deref(), at))
    }

    /// The recovery code: shown, and forgotten once two of its groups were typed back.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`](super::HoldfastError::Invalid) for groups, or a code, that are not right.
    pub fn recovery(&self, did: RecoveryDid, at: Instant) -> HoldfastResult<RecoveryScreen> {
        let copied = matches!(did, RecoveryDid::Copied { .. });
        let screen = self.with(|state| crew::recovery(&mut state.device, did))?;
        if copied {
            // It is another device now, and opened as one.
            self.let_go();
            self.at(at, |state, at| state.device.say_here(at))?;
        }
        Ok(screen)
    }

    /// Starts on a device with what was found by a recovery code. `chance`: at least 64 bytes from the system's source
    /// of chance; `keystore` as in [`Holdfast::start`]. The next exchange brings the log.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`](super::HoldfastError::Invalid) when somebody has started there already, or nothing was found.
    #[cfg_attr(feature = "ffi", uniffi::constructor)]
    pub fn restore(
        home: String,
        found: &Restore,
        chance: Vec<u8>,
        at: Instant,
        keystore: Option<Vec<u8>>,
    ) -> HoldfastResult<Holdfast> {
        caught(|| {
            let device = found.search().start(home, &chance, Keystore::of(keystore)?, at)?;
            Ok(Holdfast::of(device))
        })
    }
}
