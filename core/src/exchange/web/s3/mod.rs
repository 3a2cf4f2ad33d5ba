//! The operations on an S3-compatible server. Each request is signed at its own moment.

mod code;
mod list;
mod sign;
#[cfg(test)]
mod tests;

use chrono::DateTime;

use self::code::Meaning;
use self::sign::{Unsigned, sign};
use super::fault::{self, WebFault};
use super::http::{HttpAnswer, HttpRequest, Method};
use super::operation::{Done, Listing, Operation};
use super::remote::{Remote, S3At, ServerKind};
use super::transfer::Next;
use super::{MAX_ANSWER_BYTES, MAX_FILE_BYTES, MAX_LISTING_BYTES, MAX_NAMES};
use crate::error::shown;
use crate::instant::Instant;

/// Names on one page: the most that servers give.
const NAMES_A_PAGE: usize = 1_000;
/// Pages of one listing, empty ones too.
const MAX_PAGES: usize = 2 * MAX_NAMES / NAMES_A_PAGE;
/// Amazon S3 refuses requests further off than this.
const MAX_SKEW_S: u64 = 15 * 60;

/// An operation under way.
#[derive(Clone, Debug)]
pub(super) struct S3Transfer {
    at: S3At,
    operation: Operation,
    listing: Listing,
    /// The mark of the page that is asked for.
    page: Option<String>,
    pages: usize,
    /// False once a server said that it does not know put-if-absent.
    is_conditional: bool,
}

impl S3Transfer {
    pub(super) fn begin(
        at: S3At,
        operation: Operation,
        moment: &Instant,
    ) -> Result<(S3Transfer, HttpRequest), WebFault> {
        let listing = Listing { whole: true, ..Listing::default() };
        let transfer =
            S3Transfer { at, operation, listing, page: None, pages: 0, is_conditional: true };
        let request = transfer.request(moment)?;
        Ok((transfer, request))
    }

    /// What all names of a folder begin with.
    fn prefix(&self, folder: Option<&str>) -> String {
        folder
            .map_or_else(|| self.at.prefix.clone(), |folder| format!("{}{folder}/", self.at.prefix))
    }

    fn request(&self, moment: &Instant) -> Result<HttpRequest, WebFault> {
        let now = DateTime::from_timestamp_millis(moment.wall_ms).filter(|_| moment.is_sane());
        let now =
            now.ok_or_else(|| WebFault::ClockOff { carrier: self.carrier(), ahead_s: None })?;
        let unsigned = match &self.operation {
            Operation::List { folder, after } => self.page(folder.as_deref(), after.as_deref()),
            Operation::Get { folder, name } => {
                Unsigned { largest: MAX_FILE_BYTES, ..self.of_file(Method::Get, folder, name) }
            }
            Operation::Put { folder, name, content, .. } => {
                let mut headers = vec![("content-type", "application/octet-stream".to_owned())];
                if self.is_conditional {
                    headers.push(("if-none-match", "*".to_owned()));
                }
                let body = content.clone();
                Unsigned { headers, body, ..self.of_file(Method::Put, folder, name) }
            }
            Operation::Delete { folder, name } => self.of_file(Method::Delete, folder, name),
        };
        let mut request = sign(&self.at, unsigned, now);
        request.headers.push(("User-Agent".into(), "holdfast".into()));
        Ok(request)
    }

    fn of_file(&self, method: Method, folder: &str, name: &str) -> Unsigned {
        let key = format!("{}{name}", self.prefix(Some(folder)));
        let parts: Vec<&str> = key.split('/').collect();
        let path = self.at.bucket.with(&parts).file_path();
        let (query, headers) = (Vec::new(), Vec::new());
        Unsigned { method, path, query, headers, body: Vec::new(), largest: MAX_ANSWER_BYTES }
    }

    fn page(&self, folder: Option<&str>, after: Option<&str>) -> Unsigned {
        let prefix = self.prefix(folder);
        let mut query = vec![
            ("list-type", "2".to_owned()),
            ("delimiter", "/".to_owned()),
            // Keys may hold signs that XML cannot.
            ("encoding-type", "url".to_owned()),
            ("max-keys", NAMES_A_PAGE.to_string()),
        ];
        query.extend(after.map(|after| ("start-after", format!("{prefix}{after}"))));
        query.extend(self.page.clone().map(|page| ("continuation-token", page)));
        query.push(("prefix", prefix));
        Unsigned {
            method: Method::Get,
            path: self.at.bucket.file_path(),
            query,
            headers: Vec::new(),
            body: Vec::new(),
            largest: MAX_LISTING_BYTES,
        }
    }

    pub(super) fn answered(
        &mut self,
        answer: &HttpAnswer,
        moment: &Instant,
    ) -> Result<Next, WebFault> {
        match (self.operation.clone(), answer.status) {
            (_, 200..=299) if answer.is_page() => Err(self.other_kind()),
            (Operation::List { folder, after }, 200) => {
                self.listed(answer, folder.as_deref(), after.as_deref(), moment)
            }
            (Operation::Get { .. }, 200) => {
                self.fits(answer, MAX_FILE_BYTES)?;
                Ok(Next::Done(Done::Got { content: answer.body.clone() }))
            }
            (Operation::Put { .. }, 200 | 201 | 204) => Ok(Next::Done(Done::Written)),
            (Operation::Delete { .. }, 200 | 204) => Ok(Next::Done(Done::Deleted)),
            (operation, _) => self.refused(&operation, answer, moment),
        }
    }

    fn listed(
        &mut self,
        answer: &HttpAnswer,
        folder: Option<&str>,
        after: Option<&str>,
        moment: &Instant,
    ) -> Result<Next, WebFault> {
        self.fits(answer, MAX_LISTING_BYTES)?;
        let prefix = self.prefix(folder);
        let page = list::read(&answer.body, &prefix, &mut self.listing);
        let next = page.map_err(|_| self.other_kind())?.next;
        self.pages += 1;
        // A server that sends round in a circle never comes to an end.
        if next.is_some() && next == self.page {
            return Err(self.other_kind());
        }
        self.page = next;
        let is_full = self.listing.len() >= MAX_NAMES || self.pages >= MAX_PAGES;
        if self.page.is_some() && !is_full {
            return Ok(Next::Send(self.request(moment)?));
        }
        self.listing.whole = self.page.is_none();
        Ok(Next::Done(Done::Listed(std::mem::take(&mut self.listing).sorted(after))))
    }

    /// What an answer means that says no.
    fn refused(
        &mut self,
        operation: &Operation,
        answer: &HttpAnswer,
        moment: &Instant,
    ) -> Result<Next, WebFault> {
        let said = code::read(&answer.body);
        let meaning = code::meaning(&said.code);
        let is_write = matches!(operation, Operation::Put { .. } | Operation::Delete { .. });
        let missing = match meaning {
            // By an error alone: one that is sent on, or that failed, may be there.
            Meaning::NoFile => (400..=499).contains(&answer.status),
            Meaning::Unknown => answer.status == 404 && !answer.is_page(),
            _ => false,
        };
        match operation {
            Operation::Put { .. } if answer.status == 412 => {
                return Ok(Next::Done(Done::AlreadyThere));
            }
            Operation::Put { .. } if self.is_conditional && answer.status == 501 => {
                self.is_conditional = false;
                return Ok(Next::Send(self.request(moment)?));
            }
            Operation::Get { .. } | Operation::Delete { .. } if missing => {
                return Ok(Next::Done(Done::Missing));
            }
            _ => {}
        }
        let carrier = self.carrier();
        let ahead_s = fault::ahead_s(answer, moment);
        let is_skewed = ahead_s.is_some_and(|ahead_s| ahead_s.unsigned_abs() > MAX_SKEW_S);
        let status = answer.status;
        Err(match (meaning, status) {
            (Meaning::Clock, _) => WebFault::ClockOff { carrier, ahead_s },
            // Some servers call a request from another day forged.
            (Meaning::Key | Meaning::NoRight | Meaning::Unknown, 400 | 403) if is_skewed => {
                WebFault::ClockOff { carrier, ahead_s }
            }
            (Meaning::Region, _) if said.region.is_some() => {
                WebFault::OtherRegion { carrier, region: shown(&said.region.unwrap_or_default()) }
            }
            (Meaning::Elsewhere, _) if said.endpoint.is_some() => {
                WebFault::Moved { carrier, to: shown(&said.endpoint.unwrap_or_default()) }
            }
            _ if answer.is_elsewhere() => {
                WebFault::Moved { carrier, to: fault::destination(answer) }
            }
            (Meaning::Full, _) | (_, 507) => WebFault::Full { carrier },
            (Meaning::Limit, _) | (_, 413) => {
                let bytes = match operation {
                    Operation::Put { content, .. } => content.len() as u64,
                    _ => 0,
                };
                WebFault::UploadLimit { carrier, bytes }
            }
            (Meaning::NoRight, _) if is_write => WebFault::ReadOnly { carrier },
            (Meaning::Unknown, 403 | 405) if is_write => WebFault::ReadOnly { carrier },
            (Meaning::Key | Meaning::NoRight | Meaning::Region, _) => {
                WebFault::WrongKey { carrier }
            }
            (Meaning::NoBucket, _) => WebFault::NotThere { carrier },
            (Meaning::Busy, _) | (_, 408 | 425 | 429 | 500..=599) => {
                WebFault::Busy { carrier, status, wait_s: fault::wait_s(answer) }
            }
            // No S3-compatible server asks for a password so: this is another kind of server.
            (_, 401) if answer.header("www-authenticate").is_some() => self.other_kind(),
            (_, 401 | 403) => WebFault::WrongKey { carrier },
            _ if answer.is_page() => self.other_kind(),
            (_, 404) => WebFault::NotThere { carrier },
            (_, 200..=299) => self.other_kind(),
            _ => WebFault::Refused { carrier, status },
        })
    }

    fn fits(&self, answer: &HttpAnswer, largest: u64) -> Result<(), WebFault> {
        if answer.body.len() as u64 <= largest {
            return Ok(());
        }
        Err(WebFault::TooLarge { carrier: self.carrier(), largest })
    }

    fn carrier(&self) -> String {
        Remote::S3(self.at.clone()).to_string()
    }

    fn other_kind(&self) -> WebFault {
        WebFault::NotThisKind { carrier: self.carrier(), kind: ServerKind::S3 }
    }
}
