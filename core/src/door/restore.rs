//! Looking, with a recovery code alone, for what a carrier has of a person.

use std::sync::{Mutex, MutexGuard, PoisonError};

use super::HoldfastResult;
use super::guard::caught;
use crate::crew::Search;
use crate::exchange::{ExchangeDid, ExchangeStep};

/// A search by a recovery code. A shell takes it on step by step as it does an exchange; when that is done,
/// [`Restore::text`] says what was found, and [`Holdfast::restore`](super::Holdfast::restore) starts on the device with it.
/// Nothing is written anywhere before that.
#[cfg_attr(feature = "ffi", derive(uniffi::Object))]
pub struct Restore {
    search: Mutex<Search>,
}

#[cfg_attr(feature = "ffi", uniffi::export)]
impl Restore {
    /// Begins with a code as somebody types it.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`](super::HoldfastError::Invalid) with what of the code is wrong.
    #[cfg_attr(feature = "ffi", uniffi::constructor)]
    pub fn begin(code: String) -> HoldfastResult<Restore> {
        caught(|| Ok(Restore { search: Mutex::new(Search::begin(&code)?) }))
    }

    /// Takes it one step on. It lists and fetches, and never writes to the carrier.
    pub fn step(&self, did: ExchangeDid) -> HoldfastResult<ExchangeStep> {
        caught(|| Ok(self.search().step(did)))
    }

    /// What was found, in words.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`](super::HoldfastError::Invalid) where it is not enough to go on from, with what to do.
    pub fn text(&self) -> HoldfastResult<String> {
        caught(|| Ok(self.search().text()?))
    }

    /// The key of the code as the program `age` reads one: with it stock tools open one's own leaves.
    pub fn age_key(&self) -> String {
        self.search().age_key()
    }
}

impl Restore {
    pub(super) fn search(&self) -> MutexGuard<'_, Search> {
        self.search.lock().unwrap_or_else(PoisonError::into_inner)
    }
}
