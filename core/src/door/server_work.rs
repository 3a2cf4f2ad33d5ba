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

#[cfg(test)]
mod tests {
    use super::super::{Server, ServerHeader};
    use super::*;
    use crate::exchange::web::{Carrier, S3, Secret};

    const PLACE: &str = "https://nas.example.org:9000/cellar/crew/";
    const SECRET: &str = "Tr0mb0ne/never+shown";

    /// Sat 28 Nov 2026, 10:40 UTC, as the signature has it.
    const TIME: &str = "20261128T104000Z";

    fn at(boot_ms: i64) -> Instant {
        let wall_ms = 1_795_862_400_000;
        Instant { wall_ms, offset_min: 0, boot_ms, boot_id: "one".into() }
    }

    fn typed(change: impl FnOnce(&mut [&str; 6])) -> Result<Server, String> {
        // As somebody pastes it: with a space behind.
        let mut typed =
            ["https://nas.example.org:9000 ", "cellar ", "eu-west-3", "crew/", "KEY ", SECRET];
        change(&mut typed);
        let [address, bucket, region, folder, key_id, secret] = typed.map(str::to_owned);
        Server::s3(address, bucket, region, folder, key_id, secret, 7)
            .map_err(|error| error.to_string())
    }

    fn s3() -> Server {
        typed(|_| ()).unwrap()
    }

    fn parts() -> ServerWant {
        ServerWant::Parts { after: None }
    }

    fn sent(next: ServerNext) -> ServerRequest {
        let ServerNext::Send { request } = next else { panic!("nothing to send") };
        request
    }

    /// What is said of an answer to the first request.
    fn said(want: ServerWant, status: u16, code: &str, date: &str) -> (String, bool) {
        let work = s3().begin(want).unwrap();
        sent(work.next(ServerAnswer::Begin, at(0)));
        let header =
            |name: &str, value: &str| ServerHeader { name: name.into(), value: value.into() };
        let headers = vec![header("content-type", "application/xml"), header("date", date)];
        let body = format!("<Error><Code>{code}</Code></Error>").into_bytes();
        let answer = ServerAnswer::Came { status, headers, body };
        let ServerNext::Failed { reason, ends } = work.next(answer, at(5)) else {
            panic!("no reason: {code}")
        };
        (reason, ends)
    }

    /// What the desk sends: the carrier as it is kept there, through the same operations.
    #[test]
    fn a_phone_sends_what_the_desk_sends() {
        assert_eq!(s3().place(), PLACE);
        let carrier = Carrier::S3(S3 {
            endpoint: "https://nas.example.org:9000".into(),
            region: "eu-west-3".into(),
            bucket: "cellar".into(),
            prefix: "crew".into(),
            key_id: "KEY".into(),
            secret: Secret::new(SECRET),
            path_style: true,
            unencrypted: false,
        });
        let remote = carrier.remote().unwrap().unwrap();
        let list = Operation::List { folder: None, after: None };
        let desk: ServerRequest = Transfer::begin(&remote, list, &at(0)).unwrap().1.into();
        let phone = sent(s3().begin(parts()).unwrap().next(ServerAnswer::Begin, at(0)));
        assert_eq!((&phone.method, &phone.url), (&desk.method, &desk.url));
        assert_eq!(phone.headers, desk.headers);
        let value = |name: &str| {
            let header = phone.headers.iter().find(|header| header.name == name);
            header.map(|header| header.value.clone()).unwrap_or_default()
        };
        assert_eq!(value("x-amz-date"), TIME);
        let signed = "AWS4-HMAC-SHA256 Credential=KEY/20261128/eu-west-3/s3/aws4_request,";
        assert!(value("authorization").starts_with(signed), "{}", value("authorization"));
    }

    /// Each try is signed again: a signature of some minutes ago is refused.
    #[test]
    fn a_try_is_signed_at_its_own_moment() {
        let work = s3().begin(parts()).unwrap();
        let first = sent(work.next(ServerAnswer::Begin, at(0)));
        assert!(matches!(work.next(ServerAnswer::Interrupted, at(0)), ServerNext::Wait { .. }));
        let later = Instant { wall_ms: at(0).wall_ms + 60_000, ..at(900) };
        let second = sent(work.next(ServerAnswer::Begin, later));
        assert!(second.headers.iter().any(|header| header.value == "20261128T104100Z"));
        assert_eq!(first.url, second.url);
    }

    #[test]
    fn what_a_bucket_refuses_is_said_with_the_way_out_and_without_the_secret() {
        let now = "Sat, 28 Nov 2026 10:40:00 GMT";
        let name =
            format!("{}-0123abcd-00000033-fedcba9876543210.leaf", "0123456789abcdef".repeat(2));
        let put = ServerWant::Put { name, content: b"sealed".to_vec() };
        for (want, status, code, date, wanted) in [
            (parts(), 403, "InvalidAccessKeyId", now, "Check the key id, the secret key"),
            (parts(), 403, "SignatureDoesNotMatch", now, "Check the key id, the secret key"),
            (parts(), 404, "XAdminUserNotFound", now, "Check the key id, the secret key"),
            (parts(), 404, "NoSuchBucket", now, "create this folder or bucket on the server first"),
            (put, 403, "AccessDenied", now, "Ask whoever runs it for the right to write"),
            // A day ahead, a day behind, and a server that calls another day's request forged.
            (
                parts(),
                403,
                "RequestTimeTooSkewed",
                "Fri, 27 Nov 2026 10:40:00 GMT",
                "This device's clock is 24 hours ahead of",
            ),
            (
                parts(),
                403,
                "SignatureDoesNotMatch",
                "Sun, 29 Nov 2026 10:40:00 GMT",
                "This device's clock is 24 hours behind",
            ),
        ] {
            let (reason, ends) = said(want, status, code, date);
            assert!(reason.contains(wanted) && reason.contains(PLACE) && ends, "{code}: {reason}");
            assert!(!reason.contains(SECRET), "{reason}");
        }
    }

    #[test]
    fn each_part_that_cannot_be_is_named_with_what_is_wanted() {
        for (part, text, wanted) in [
            (0, "nas", "https://"),
            (0, "http://nas.example.org", "not encrypted"),
            (1, "Cellar", "small letters, digits, hyphens and dots"),
            (2, "", "us-east-1"),
            (3, "../x", "folder in the bucket"),
            (4, "", "key id must have"),
            (5, " ", "secret key is missing"),
        ] {
            let reason = typed(|typed| typed[part] = text).err().unwrap();
            assert!(reason.contains(wanted) && !reason.contains(SECRET), "{text}: {reason}");
        }
        assert_eq!(
            typed(|typed| typed[3] = "").unwrap().place(),
            "https://nas.example.org:9000/cellar/"
        );
    }
}
