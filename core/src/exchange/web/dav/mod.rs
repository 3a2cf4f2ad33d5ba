//! The operations on a WebDAV server. Put-if-absent is asked of none: two of five real servers overwrite all the
//! same. A file is written under a temporary name and then renamed without replacing, which all of them honour.

mod propfind;
#[cfg(test)]
mod tests;

use super::address::Address;
use super::fault::{self, WebFault};
use super::http::{HttpAnswer, HttpRequest, Method};
use super::operation::{Done, Listing, Operation, temporary};
use super::remote::{DavAt, ServerKind};
use super::transfer::Next;
use super::{MAX_ANSWER_BYTES, MAX_FILE_BYTES, MAX_LISTING_BYTES};
use crate::error::shown;

/// Same-origin redirects that are followed when reading.
const MAX_HOPS: u32 = 3;

/// The largest file that is sent before its folder is known to be there. A server may refuse a larger one before it has
/// read it and then close the connection, and its answer is lost: it never shows that only the folder is missing.
/// Go's server reads 256 KiB of what it refused (`net/http`, `maxPostHandlerReadBytes`); rclone's is that one.
const MAX_AT_ONCE: usize = 64 * 1024;

/// An operation under way.
#[derive(Clone, Debug)]
pub(super) struct DavTransfer {
    at: DavAt,
    operation: Operation,
    step: Step,
    /// What is read, after redirects.
    target: Address,
    hops: u32,
    /// True once the missing folder was made: it is made once.
    has_made_folder: bool,
    /// True once a server would not make it.
    no_folder_made: bool,
    /// True once a server refused its own address as the place to move to.
    is_path_alone: bool,
}

#[derive(Clone, Debug)]
enum Step {
    List,
    Get,
    /// Writes the file under its temporary name.
    Write,
    MakeFolder,
    /// Gives the file its name.
    Name,
    /// Takes the temporary file away, and ends so.
    Tidy(Result<Done, WebFault>),
    Delete,
}

impl DavTransfer {
    pub(super) fn begin(at: DavAt, operation: Operation) -> (DavTransfer, HttpRequest) {
        let is_large =
            matches!(&operation, Operation::Put { content, .. } if content.len() > MAX_AT_ONCE);
        let (step, target) = match &operation {
            Operation::List { folder, .. } => {
                let inner: Vec<&str> = folder.iter().map(String::as_str).collect();
                (Step::List, at.base.with(&inner))
            }
            Operation::Get { folder, name } => (Step::Get, at.base.with(&[folder, name])),
            Operation::Put { folder, name, .. } => {
                let step = if is_large { Step::MakeFolder } else { Step::Write };
                (step, at.base.with(&[folder, name]))
            }
            Operation::Delete { folder, name } => (Step::Delete, at.base.with(&[folder, name])),
        };
        let transfer = DavTransfer {
            at,
            operation,
            step,
            target,
            hops: 0,
            has_made_folder: is_large,
            no_folder_made: false,
            is_path_alone: false,
        };
        let request = transfer.request();
        (transfer, request)
    }

    /// The request of the step at hand.
    fn request(&self) -> HttpRequest {
        let request = |method, url| HttpRequest {
            method,
            url,
            headers: vec![("User-Agent".into(), "holdfast".into())],
            authorization: self.at.authorization.clone(),
            body: Vec::new(),
            largest: MAX_ANSWER_BYTES,
        };
        let header = |name: &str, value: &str| (name.to_owned(), value.to_owned());
        match &self.step {
            Step::List => {
                let mut request = request(Method::Propfind, self.target.folder_url());
                request.headers.push(header("Depth", "1"));
                request.headers.push(header("Content-Type", "application/xml; charset=utf-8"));
                HttpRequest { body: propfind::ASKED.into(), largest: MAX_LISTING_BYTES, ..request }
            }
            Step::Get => HttpRequest {
                largest: MAX_FILE_BYTES,
                ..request(Method::Get, self.target.file_url())
            },
            Step::Write => {
                let mut request = request(Method::Put, self.temporary().file_url());
                request.headers.push(header("Content-Type", "application/octet-stream"));
                if let Operation::Put { content, .. } = &self.operation {
                    request.body.clone_from(content);
                }
                request
            }
            Step::MakeFolder => request(Method::Mkcol, self.folder().folder_url()),
            Step::Name => {
                let mut request = request(Method::Move, self.temporary().file_url());
                // Apache wants the whole address. Behind a proxy a server may know itself by another scheme or
                // port and refuse the one that we know; then a path alone is right (RFC 4918, section 10.3).
                let destination = if self.is_path_alone {
                    self.target.file_path()
                } else {
                    self.target.file_url()
                };
                request.headers.push(header("Destination", &destination));
                request.headers.push(header("Overwrite", "F"));
                request
            }
            Step::Tidy(_) => request(Method::Delete, self.temporary().file_url()),
            Step::Delete => request(Method::Delete, self.target.file_url()),
        }
    }

    fn folder(&self) -> Address {
        match &self.operation {
            Operation::List { folder: None, .. } => self.at.base.clone(),
            Operation::List { folder: Some(folder), .. }
            | Operation::Get { folder, .. }
            | Operation::Put { folder, .. }
            | Operation::Delete { folder, .. } => self.at.base.with(&[folder]),
        }
    }

    /// Where a file is while it is being written.
    fn temporary(&self) -> Address {
        match &self.operation {
            Operation::Put { name, turn, .. } => self.folder().with(&[&temporary(name, *turn)]),
            _ => self.target.clone(),
        }
    }

    fn go(&mut self, step: Step) -> Next {
        self.step = step;
        Next::Send(self.request())
    }

    pub(super) fn answered(&mut self, answer: &HttpAnswer) -> Result<Next, WebFault> {
        match self.step.clone() {
            Step::List => self.listed(answer),
            Step::Get => self.got(answer),
            Step::Write => self.written(answer),
            Step::MakeFolder => match answer.status {
                // 405: it is there.
                200..=206 | 405 => Ok(self.go(Step::Write)),
                // Apache says this too where somebody else made it a moment ago: whether it is there shows next.
                403 => {
                    self.no_folder_made = true;
                    Ok(self.go(Step::Write))
                }
                404 | 409 => Err(WebFault::NotThere { carrier: self.carrier() }),
                _ => Err(self.fault(answer, true)),
            },
            Step::Name => self.named(answer),
            Step::Tidy(end) => end.map(Next::Done),
            Step::Delete => match answer.status {
                202 | 204 => Ok(Next::Done(Done::Deleted)),
                200 if !answer.is_page() => Ok(Next::Done(Done::Deleted)),
                404 | 410 => Ok(Next::Done(Done::Missing)),
                _ => Err(self.fault(answer, true)),
            },
        }
    }

    fn listed(&mut self, answer: &HttpAnswer) -> Result<Next, WebFault> {
        let (folder, after) = match &self.operation {
            Operation::List { folder, after } => (folder.clone(), after.clone()),
            _ => (None, None),
        };
        match answer.status {
            207 => {
                self.fits(answer, MAX_LISTING_BYTES)?;
                let read = propfind::read(&answer.body, &self.target, after.as_deref());
                let listing = read.map_err(|_| self.other_kind())?;
                Ok(Next::Done(Done::Listed(listing)))
            }
            // A lane that nobody has written to.
            404 | 410 if folder.is_some() => {
                Ok(Next::Done(Done::Listed(Listing { whole: true, ..Listing::default() })))
            }
            _ => self.follow(answer),
        }
    }

    fn got(&mut self, answer: &HttpAnswer) -> Result<Next, WebFault> {
        match answer.status {
            200 if !answer.is_page() => {
                self.fits(answer, MAX_FILE_BYTES)?;
                Ok(Next::Done(Done::Got { content: answer.body.clone() }))
            }
            404 | 410 => Ok(Next::Done(Done::Missing)),
            _ => self.follow(answer),
        }
    }

    fn written(&mut self, answer: &HttpAnswer) -> Result<Next, WebFault> {
        match answer.status {
            // Apache sends a page along with its 201; a network's sign-in page comes with 200.
            201 | 204 => Ok(self.go(Step::Name)),
            200 if !answer.is_page() => Ok(self.go(Step::Name)),
            // Where the folder is missing nginx calls it an error of its own, 500.
            404 | 409 | 500 if !self.has_made_folder => {
                self.has_made_folder = true;
                Ok(self.go(Step::MakeFolder))
            }
            404 | 409 | 500 if self.no_folder_made => {
                Err(WebFault::ReadOnly { carrier: self.carrier() })
            }
            409 => Err(WebFault::NotThere { carrier: self.carrier() }),
            _ => Err(self.fault(answer, true)),
        }
    }

    fn named(&mut self, answer: &HttpAnswer) -> Result<Next, WebFault> {
        match answer.status {
            201 | 204 => Ok(Next::Done(Done::Written)),
            200 if !answer.is_page() => Ok(Next::Done(Done::Written)),
            412 => Ok(self.go(Step::Tidy(Ok(Done::AlreadyThere)))),
            400 | 502 if !self.is_path_alone => {
                self.is_path_alone = true;
                Ok(self.go(Step::Name))
            }
            400 | 405 | 501 => {
                let fault = WebFault::CannotMove { carrier: self.carrier() };
                Ok(self.go(Step::Tidy(Err(fault))))
            }
            // The temporary file is gone: a first answer was lost, or somebody tidied up.
            404 => Err(WebFault::Interrupted { carrier: self.carrier() }),
            _ => {
                let fault = self.fault(answer, true);
                Ok(self.go(Step::Tidy(Err(fault))))
            }
        }
    }

    /// Reads at the place that a server sends on to, if that is its own: another one is never shown a password.
    fn follow(&mut self, answer: &HttpAnswer) -> Result<Next, WebFault> {
        let to = answer.header("location").filter(|to| !to.is_empty());
        let to = to.and_then(|to| self.target.named(to).ok());
        match to {
            Some(to)
                if matches!(answer.status, 301 | 302 | 307 | 308)
                    && to.origin == self.at.base.origin
                    && self.hops < MAX_HOPS =>
            {
                self.hops += 1;
                self.target = to;
                Ok(Next::Send(self.request()))
            }
            _ => Err(self.fault(answer, false)),
        }
    }

    fn fits(&self, answer: &HttpAnswer, largest: u64) -> Result<(), WebFault> {
        if answer.body.len() as u64 <= largest {
            return Ok(());
        }
        Err(WebFault::TooLarge { carrier: self.carrier(), largest })
    }

    fn carrier(&self) -> String {
        self.at.base.folder_url()
    }

    fn other_kind(&self) -> WebFault {
        WebFault::NotThisKind { carrier: self.carrier(), kind: ServerKind::WebDav }
    }

    /// What an answer that is none of those looked for means.
    fn fault(&self, answer: &HttpAnswer, writing: bool) -> WebFault {
        let carrier = self.carrier();
        let status = answer.status;
        if answer.is_elsewhere() {
            return WebFault::Moved { carrier, to: fault::destination(answer) };
        }
        match status {
            401 => {
                let asked = answer.headers("www-authenticate");
                let ways: Vec<&str> =
                    asked.filter_map(|asked| asked.split_whitespace().next()).collect();
                let is_basic = |way: &&str| way.eq_ignore_ascii_case("basic");
                if ways.is_empty() || ways.iter().any(is_basic) {
                    return WebFault::WrongPassword { carrier };
                }
                WebFault::OtherSignIn { carrier, ways: shown(&ways.join(", ")) }
            }
            403 if writing => WebFault::ReadOnly { carrier },
            403 | 407 => WebFault::WrongPassword { carrier },
            404 | 410 => WebFault::NotThere { carrier },
            405 | 501 if writing => WebFault::ReadOnly { carrier },
            405 | 501 => self.other_kind(),
            413 => {
                let bytes = match &self.operation {
                    Operation::Put { content, .. } => content.len() as u64,
                    _ => 0,
                };
                WebFault::UploadLimit { carrier, bytes }
            }
            507 => WebFault::Full { carrier },
            408 | 423 | 425 | 429 | 500..=599 => {
                WebFault::Busy { carrier, status, wait_s: fault::wait_s(answer) }
            }
            // Done, and not what was asked for; or a page for people.
            200..=299 => self.other_kind(),
            _ if answer.is_page() => self.other_kind(),
            _ => WebFault::Refused { carrier, status },
        }
    }
}
