//! One thing under way at a server: requests go out, answers come in, and what passes is tried again.

use std::sync::{Mutex, PoisonError};

use super::server::{ServerAnswer, ServerNext, ServerRequest, ServerWant};
use crate::exchange::sealed::LanePart;
use crate::exchange::web::{
    Done, HttpAnswer, Listing, Next, Offline, Operation, Remote, Transfer, WebFault,
    wait_before_next,
};
use crate::exchange::{ListedFile, folder_of};
use crate::instant::{Instant, Millis};

/// One thing under way at a server.
#[cfg_attr(feature = "ffi", derive(uniffi::Object))]
pub struct ServerWork {
    remote: Remote,
    want: ServerWant,
    operation: Operation,
    state: Mutex<Tries>,
}

/// How often it was tried, and what is under way.
#[derive(Default)]
struct Tries {
    begun_ms: Option<i64>,
    count: u32,
    transfer: Option<Transfer>,
}

impl ServerWork {
    /// Not begun yet.
    pub(super) fn new(remote: Remote, want: ServerWant, operation: Operation) -> ServerWork {
        ServerWork { remote, want, operation, state: Mutex::default() }
    }
}

#[cfg_attr(feature = "ffi", uniffi::export)]
impl ServerWork {
    /// Says what came of the last request, and gets what to do next. It begins with [`ServerAnswer::Begin`].
    pub fn next(&self, came: ServerAnswer, at: Instant) -> ServerNext {
        let mut state = self.state.lock().unwrap_or_else(PoisonError::into_inner);
        let begun_ms = *state.begun_ms.get_or_insert(at.boot_ms);
        let carrier = self.remote.to_string();
        let fault = match came {
            ServerAnswer::Offline => {
                return ServerNext::Failed { reason: Offline { carrier }.to_string(), ends: true };
            }
            ServerAnswer::Interrupted => WebFault::Interrupted { carrier },
            ServerAnswer::Untrusted { said } => WebFault::Certificate { carrier, said },
            ServerAnswer::Begin => match self.again(&mut state, &at) {
                Ok(request) => return ServerNext::Send { request },
                Err(fault) => fault,
            },
            ServerAnswer::Came { status, headers, body } => {
                let headers = headers.into_iter().map(|header| (header.name, header.value));
                let answer = HttpAnswer { status, headers: headers.collect(), body };
                let next = state.transfer.as_mut().map(|transfer| transfer.answered(&answer, &at));
                match next {
                    Some(Next::Send(request)) => {
                        return ServerNext::Send { request: request.into() };
                    }
                    Some(Next::Done(done)) => return self.done(done),
                    Some(Next::Fault(fault)) => fault,
                    // An answer to nothing.
                    None => WebFault::Interrupted { carrier },
                }
            }
        };
        state.transfer = None;
        let spent = Millis(at.boot_ms.saturating_sub(begun_ms));
        match wait_before_next(&fault, state.count, spent) {
            Some(length) => ServerNext::Wait { length },
            None => ServerNext::Failed { reason: fault.to_string(), ends: fault.ends_exchange() },
        }
    }
}

impl ServerWork {
    /// Begins the operation, or begins it again.
    fn again(&self, state: &mut Tries, at: &Instant) -> Result<ServerRequest, WebFault> {
        state.count += 1;
        let (transfer, request) = Transfer::begin(&self.remote, self.operation.clone(), at)?;
        state.transfer = Some(transfer);
        Ok(request.into())
    }

    fn done(&self, done: Done) -> ServerNext {
        match done {
            Done::Listed(listing) => self.listed(listing),
            Done::Got { content } => ServerNext::Got { content: Some(content) },
            Done::Missing => ServerNext::Got { content: None },
            Done::Written => ServerNext::Put { written: true },
            Done::AlreadyThere | Done::Deleted => ServerNext::Put { written: false },
        }
    }

    /// What belongs there, and where to go on.
    fn listed(&self, listing: Listing) -> ServerNext {
        let Listing { folders, files, whole, .. } = listing;
        let last = match &self.want {
            ServerWant::Parts { .. } => folders.last().cloned(),
            _ => files.last().map(|file| file.name.clone()),
        };
        let (parts, files) = match &self.want {
            ServerWant::Files { part, .. } => {
                let belongs =
                    |file: &ListedFile| folder_of(&file.name).as_deref() == Some(part.as_str());
                (Vec::new(), files.into_iter().filter(belongs).collect())
            }
            _ => {
                let is_part = |folder: &String| LanePart::parse(folder).is_some();
                (folders.into_iter().filter(is_part).collect(), Vec::new())
            }
        };
        ServerNext::Listed { parts, files, after: last.filter(|_| !whole) }
    }
}
