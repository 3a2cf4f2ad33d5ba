//! An operation under way: requests go out, answers come in, and nothing here touches a network or a clock.

use super::WebFault;
use super::dav::DavTransfer;
use super::http::{HttpAnswer, HttpRequest};
use super::operation::{Done, Operation};
use super::remote::Remote;
use super::s3::S3Transfer;
use crate::instant::Instant;

/// What a shell does next.
#[derive(Clone, Debug)]
pub enum Next {
    /// Send this and bring the answer.
    Send(HttpRequest),
    /// It is done.
    Done(Done),
    /// It cannot be done.
    Fault(WebFault),
}

/// An operation under way at a carrier.
#[derive(Clone, Debug)]
pub struct Transfer(Kind);

#[derive(Clone, Debug)]
enum Kind {
    Dav(DavTransfer),
    S3(S3Transfer),
}

impl Transfer {
    /// Begins an operation, with its first request.
    ///
    /// # Errors
    /// A name that no file of a carrier has; a clock that no request can be signed with.
    pub fn begin(
        remote: &Remote,
        operation: Operation,
        moment: &Instant,
    ) -> Result<(Transfer, HttpRequest), WebFault> {
        operation.check()?;
        match remote {
            Remote::Dav(at) => {
                let (transfer, request) = DavTransfer::begin(at.clone(), operation);
                Ok((Transfer(Kind::Dav(transfer)), request))
            }
            Remote::S3(at) => {
                let (transfer, request) = S3Transfer::begin(at.clone(), operation, moment)?;
                Ok((Transfer(Kind::S3(transfer)), request))
            }
        }
    }

    /// Takes in the answer to the last request; `moment` is when it came.
    pub fn answered(&mut self, answer: &HttpAnswer, moment: &Instant) -> Next {
        let next = match &mut self.0 {
            Kind::Dav(transfer) => transfer.answered(answer),
            Kind::S3(transfer) => transfer.answered(answer, moment),
        };
        next.unwrap_or_else(Next::Fault)
    }
}
