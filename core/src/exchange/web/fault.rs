//! What stands between a device and its carrier, in sentences with the way out. Being offline is no fault.

use super::http::HttpAnswer;
use super::remote::ServerKind;
use crate::error::shown;
use crate::instant::Instant;
use crate::say::web as say;

/// What kept a file from its carrier. `carrier` is where that is, without user and password.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[allow(missing_docs, reason = "fields are named by what they hold")]
pub enum WebFault {
    /// User or password are not taken, or may not read there.
    #[error("{}", say::wrong_password(carrier))]
    WrongPassword { carrier: String },
    /// The S3 key or its secret is not taken, or may not read there.
    #[error("{}", say::wrong_key(carrier))]
    WrongKey { carrier: String },
    /// The server takes passwords another way.
    #[error("{}", say::other_sign_in(carrier, ways))]
    OtherSignIn { carrier: String, ways: String },
    /// The carrier's own folder or bucket is not there.
    #[error("{}", say::not_there(carrier))]
    NotThere { carrier: String },
    /// Reading is allowed, writing is not.
    #[error("{}", say::read_only(carrier))]
    ReadOnly { carrier: String },
    /// No room left.
    #[error("{}", say::full(carrier))]
    Full { carrier: String },
    /// The server takes no file of this size.
    #[error("{}", say::upload_limit(carrier, bytes))]
    UploadLimit { carrier: String, bytes: u64 },
    /// The server sends on to another place.
    #[error("{}", say::moved(carrier, to))]
    Moved { carrier: String, to: String },
    /// S3 says that the bucket lies in another region.
    #[error("{}", say::other_region(carrier, region))]
    OtherRegion { carrier: String, region: String },
    /// The server refuses the time of the request.
    #[error("{}", clock_off(carrier, *ahead_s))]
    ClockOff {
        carrier: String,
        /// Seconds that this device is ahead of the server; `None` when the server does not say.
        ahead_s: Option<i64>,
    },
    /// The server is overloaded or out of order.
    #[error("{}", say::busy(carrier, status))]
    Busy {
        carrier: String,
        status: u16,
        /// Seconds after which it asks to be tried again.
        wait_s: Option<u32>,
    },
    /// What answers speaks something else.
    #[error("{}", not_this_kind(carrier, *kind))]
    NotThisKind { carrier: String, kind: ServerKind },
    /// More came than can be of use.
    #[error("{}", say::too_large(carrier, largest))]
    TooLarge { carrier: String, largest: u64 },
    /// The server has no MOVE.
    #[error("{}", say::cannot_move(carrier))]
    CannotMove { carrier: String },
    /// An answer that nothing here expects.
    #[error("{}", say::refused(carrier, status))]
    Refused { carrier: String, status: u16 },
    /// The connection broke while something was on its way. For a shell to say.
    #[error("{}", say::interrupted(carrier))]
    Interrupted { carrier: String },
    /// The server's certificate is not trusted. For a shell to say.
    #[error("{}", say::certificate(carrier, said))]
    Certificate { carrier: String, said: String },
    /// A name that no file of a carrier has: nothing is asked of the server.
    #[error("{}", say::no_such_name())]
    NoSuchName,
}

/// There is no way to the carrier now. No fault: whatever was to be sent is sent another time.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{}", say::offline(carrier))]
pub struct Offline {
    /// Where it is, without user and password.
    pub carrier: String,
}

impl WebFault {
    /// True for what may be gone a little later, so that trying again is worth it.
    pub fn passes(&self) -> bool {
        matches!(self, WebFault::Busy { .. } | WebFault::Interrupted { .. })
    }

    /// True where nothing else at this carrier will work either: the password, the address, the clock.
    pub fn ends_exchange(&self) -> bool {
        match self {
            WebFault::UploadLimit { .. }
            | WebFault::TooLarge { .. }
            | WebFault::Refused { .. }
            | WebFault::NoSuchName => false,
            WebFault::WrongPassword { .. }
            | WebFault::WrongKey { .. }
            | WebFault::OtherSignIn { .. }
            | WebFault::NotThere { .. }
            | WebFault::ReadOnly { .. }
            | WebFault::Full { .. }
            | WebFault::Moved { .. }
            | WebFault::OtherRegion { .. }
            | WebFault::ClockOff { .. }
            | WebFault::Busy { .. }
            | WebFault::NotThisKind { .. }
            | WebFault::CannotMove { .. }
            | WebFault::Interrupted { .. }
            | WebFault::Certificate { .. } => true,
        }
    }
}

/// Where a server sends on to, without anything that could be a secret: no user, no query.
pub(super) fn destination(answer: &HttpAnswer) -> String {
    let to = answer.header("location").unwrap_or_default();
    let to = to.split(['?', '#']).next().unwrap_or_default();
    match to.split_once("://") {
        Some((scheme, rest)) => {
            let (authority, path) = rest.split_at(rest.find('/').unwrap_or(rest.len()));
            let host = authority.rsplit('@').next().unwrap_or_default();
            shown(&format!("{scheme}://{host}{path}"))
        }
        None => shown(to),
    }
}

/// Seconds that a device is ahead of the server, by the answer's `Date`.
pub(super) fn ahead_s(answer: &HttpAnswer, moment: &Instant) -> Option<i64> {
    let date = chrono::DateTime::parse_from_rfc2822(answer.header("date")?).ok()?;
    Some((moment.wall_ms - date.timestamp_millis()) / 1_000)
}

/// Seconds after which a server asks to be tried again. A date in their place is ignored: its clock is not ours.
pub(super) fn wait_s(answer: &HttpAnswer) -> Option<u32> {
    answer.header("retry-after")?.parse().ok()
}

fn not_this_kind(carrier: &str, kind: ServerKind) -> String {
    match kind {
        ServerKind::WebDav => say::not_webdav(carrier),
        ServerKind::S3 => say::not_s3(carrier),
    }
}

fn clock_off(carrier: &str, ahead_s: Option<i64>) -> String {
    const HOUR: u64 = 3_600;
    let Some(ahead_s) = ahead_s else { return say::clock_off(carrier) };
    let (off, ahead) = (ahead_s.unsigned_abs(), ahead_s > 0);
    match (off, ahead) {
        (0..=60, _) => say::clock_off(carrier),
        (61..7_200, true) => say::clock_ahead_minutes(off.div_ceil(60), carrier),
        (61..7_200, false) => say::clock_behind_minutes(off.div_ceil(60), carrier),
        (7_200..259_200, true) => say::clock_ahead_hours(off / HOUR, carrier),
        (7_200..259_200, false) => say::clock_behind_hours(off / HOUR, carrier),
        (_, true) => say::clock_ahead_days(off / (24 * HOUR), carrier),
        (_, false) => say::clock_behind_days(off / (24 * HOUR), carrier),
    }
}
