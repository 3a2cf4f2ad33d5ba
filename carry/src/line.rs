//! A line to a carrier of any kind, with the same four operations.

use std::path::PathBuf;
use std::sync::atomic::{AtomicU32, Ordering};
use std::thread::sleep;
use std::time::{Duration, Instant as Clock};

use holdfast_core::exchange::web::{
    Carrier, Done, Listing, Next, Offline, Operation, Remote, SettingFault, Transfer, WebFault,
    is_file_name, wait_before_next,
};
use holdfast_core::{Instant, Millis};

use crate::folder::Folder;
use crate::send::{Sender, Unsent};

/// Why something was not carried.
#[derive(Debug, thiserror::Error)]
pub enum Carried {
    /// There is no way to the carrier now: no fault, and nothing is lost.
    #[error(transparent)]
    Offline(#[from] Offline),
    /// The carrier said no, or something else than a carrier says.
    #[error(transparent)]
    Web(#[from] WebFault),
    /// A file or folder could not be read or written.
    #[error("{path}: {source}")]
    File {
        /// Which.
        path: String,
        /// What the system said.
        source: std::io::Error,
    },
    /// A file of the folder could not be written as one of ours.
    #[error(transparent)]
    Holdfast(#[from] holdfast_core::HoldfastError),
}

/// A line to a carrier.
#[derive(Debug)]
pub struct Line {
    kind: Kind,
    now: fn() -> Instant,
    /// Of the next file to write.
    turn: AtomicU32,
}

#[derive(Debug)]
enum Kind {
    Folder(Folder),
    Web(Box<(Remote, Sender)>),
}

impl Line {
    /// Opens a line: nothing is asked of the carrier yet. `now` gives the moment; `chance` is a number drawn by
    /// chance, so that what two devices write at once has different names until it is whole.
    ///
    /// # Errors
    /// Settings that cannot be, each with what is wanted.
    pub fn open(
        carrier: &Carrier,
        now: fn() -> Instant,
        chance: u32,
    ) -> Result<Line, Vec<SettingFault>> {
        let kind = match (carrier.remote()?, carrier) {
            (Some(remote), _) => Kind::Web(Box::new((remote, Sender::new()))),
            (None, Carrier::Folder { path }) => Kind::Folder(Folder(PathBuf::from(path))),
            (None, Carrier::WebDav(_) | Carrier::S3(_)) => return Err(Vec::new()),
        };
        Ok(Line { kind, now, turn: AtomicU32::new(chance) })
    }

    /// Where it leads, without user and password: the same for the same carrier.
    pub fn place(&self) -> String {
        match &self.kind {
            Kind::Folder(folder) => folder.0.display().to_string(),
            Kind::Web(web) => web.0.to_string(),
        }
    }

    /// Lists a folder, or with `None` the carrier's own; only what sorts behind `after`.
    ///
    /// # Errors
    /// Whatever kept it from being listed.
    pub fn list(&self, folder: Option<&str>, after: Option<&str>) -> Result<Listing, Carried> {
        let (folder, after) = (folder.map(str::to_owned), after.map(str::to_owned));
        match self.carry(Operation::List { folder, after })? {
            Done::Listed(listing) => Ok(listing),
            _ => Ok(Listing::default()),
        }
    }

    /// Reads a file; `None` when it is not there.
    ///
    /// # Errors
    /// Whatever kept it from being read.
    pub fn get(&self, folder: &str, name: &str) -> Result<Option<Vec<u8>>, Carried> {
        let get = Operation::Get { folder: folder.into(), name: name.into() };
        match self.carry(get)? {
            Done::Got { content } => Ok(Some(content)),
            _ => Ok(None),
        }
    }

    /// Writes a file; `false` when one of this name was there, and stays.
    ///
    /// # Errors
    /// Whatever kept it from being written: then no file has this name because of it.
    pub fn put(&self, folder: &str, name: &str, content: Vec<u8>) -> Result<bool, Carried> {
        let turn = self.turn.fetch_add(1, Ordering::Relaxed);
        let put = Operation::Put { folder: folder.into(), name: name.into(), content, turn };
        Ok(self.carry(put)? == Done::Written)
    }

    /// Deletes a file, for `forget` alone; `false` when it was not there. S3 tells no difference.
    ///
    /// # Errors
    /// Whatever kept it from being deleted.
    pub fn delete(&self, folder: &str, name: &str) -> Result<bool, Carried> {
        let delete = Operation::Delete { folder: folder.into(), name: name.into() };
        Ok(self.carry(delete)? == Done::Deleted)
    }

    fn carry(&self, operation: Operation) -> Result<Done, Carried> {
        match &self.kind {
            Kind::Folder(folder) => {
                let names = match &operation {
                    Operation::List { folder, .. } => [folder.as_deref(), None],
                    Operation::Get { folder, name }
                    | Operation::Put { folder, name, .. }
                    | Operation::Delete { folder, name } => {
                        [Some(folder.as_str()), Some(name.as_str())]
                    }
                };
                if !names.into_iter().flatten().all(is_file_name) {
                    return Err(WebFault::NoSuchName.into());
                }
                folder.carry(operation)
            }
            Kind::Web(web) => self.over_network(&web.0, &web.1, &operation),
        }
    }

    /// Does an operation, and again from its beginning where the core says that this is worth a wait.
    fn over_network(
        &self,
        remote: &Remote,
        sender: &Sender,
        operation: &Operation,
    ) -> Result<Done, Carried> {
        let (begun, mut tries) = (Clock::now(), 0);
        loop {
            tries += 1;
            let fault = match self.once(remote, sender, operation.clone()) {
                Err(Carried::Web(fault)) => fault,
                end => return end,
            };
            let spent = i64::try_from(begun.elapsed().as_millis()).unwrap_or(i64::MAX);
            match wait_before_next(&fault, tries, Millis(spent)) {
                Some(wait) => sleep(Duration::from_millis(wait.0.unsigned_abs())),
                None => return Err(fault.into()),
            }
        }
    }

    fn once(
        &self,
        remote: &Remote,
        sender: &Sender,
        operation: Operation,
    ) -> Result<Done, Carried> {
        let (mut transfer, mut request) = Transfer::begin(remote, operation, &(self.now)())?;
        loop {
            let answer = sender.send(&request).map_err(|unsent| -> Carried {
                let carrier = remote.to_string();
                match unsent {
                    Unsent::Offline => Offline { carrier }.into(),
                    Unsent::Interrupted => WebFault::Interrupted { carrier }.into(),
                    Unsent::Certificate(said) => WebFault::Certificate { carrier, said }.into(),
                }
            })?;
            request = match transfer.answered(&answer, &(self.now)()) {
                Next::Send(request) => request,
                Next::Done(done) => return Ok(done),
                Next::Fault(fault) => return Err(fault.into()),
            };
        }
    }
}
