//! A WebDAV or S3-compatible server as carrier, for a shell that sends requests itself: what is sent, what an answer means and
//! how long to wait before the next try is said here, so a shell opens connections and does nothing else.

use std::sync::Arc;
use std::sync::atomic::{AtomicU32, Ordering};

use super::guard::caught;
use super::{HoldfastResult, ServerWork};
use crate::error::{Error, Field};
use crate::exchange::web::{Carrier, HttpRequest, Operation, Remote, S3, Secret, WebDav};
use crate::exchange::{ListedFile, folder_of};
use crate::instant::Millis;
use crate::say;

/// A server whose settings were checked.
#[cfg_attr(feature = "ffi", derive(uniffi::Object))]
pub struct Server {
    remote: Remote,
    /// Of the next file to write.
    turn: AtomicU32,
}

/// One thing to do at a server.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum ServerWant {
    /// The folders of parts of lanes. What lies beside them is not told.
    Parts {
        /// Only those that sort behind this one.
        after: Option<String>,
    },
    /// The files of such a folder that belong there.
    Files {
        /// The folder.
        part: String,
        /// Only those that sort behind this one.
        after: Option<String>,
    },
    /// A file.
    Get {
        /// Its name.
        name: String,
    },
    /// To write a file; what is there under its name stays.
    Put {
        /// Its name.
        name: String,
        /// What is in it.
        content: Vec<u8>,
    },
}

/// A header of a request or an answer.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
#[allow(missing_docs, reason = "the names say it")]
pub struct ServerHeader {
    pub name: String,
    pub value: String,
}

/// A request, whole: a shell sends it as it is, follows no redirect, adds no cookie and no credentials, asks for no
/// other encoding, and reads no more of the answer than `largest` bytes and one. It prints and keeps none of it.
#[derive(Clone)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct ServerRequest {
    /// What is asked: `PROPFIND`.
    pub method: String,
    /// Of what.
    pub url: String,
    /// All headers but `Host` and `Content-Length`, the password or the signature among them.
    pub headers: Vec<ServerHeader>,
    /// What is sent; none where the method sends nothing.
    pub body: Option<Vec<u8>>,
    /// The largest answer that is of use, in bytes.
    pub largest: u64,
}

/// What came of a request.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum ServerAnswer {
    /// Nothing was sent yet, or a wait is over.
    Begin,
    /// An answer.
    Came {
        /// Its status.
        status: u16,
        /// Its headers, with names in any case.
        headers: Vec<ServerHeader>,
        /// What came: whole, or one byte more than was asked for at most.
        body: Vec<u8>,
    },
    /// No way to the server: no network, no such host, nothing that listens.
    Offline,
    /// It broke on the way, or took too long.
    Interrupted,
    /// The server is not trusted.
    Untrusted {
        /// What the verifier said.
        said: String,
    },
}

/// What a shell does next.
#[derive(Clone)]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum ServerNext {
    /// Send this and bring the answer.
    Send {
        /// The request.
        request: ServerRequest,
    },
    /// Wait so long, then say [`ServerAnswer::Begin`].
    Wait {
        /// How long.
        length: Millis,
    },
    /// Names, and where to go on where there are more.
    Listed {
        /// Folders of parts.
        parts: Vec<String>,
        /// Files.
        files: Vec<ListedFile>,
        /// Ask again behind this name; none where that is all.
        after: Option<String>,
    },
    /// A file; none where it is not there.
    Got {
        /// What is in it.
        content: Option<Vec<u8>>,
    },
    /// It is there.
    Put {
        /// True where it was not there before.
        written: bool,
    },
    /// It cannot be done.
    Failed {
        /// Why, and what to do.
        reason: String,
        /// True where nothing else at this server will work either.
        ends: bool,
    },
}

#[cfg_attr(feature = "ffi", uniffi::export)]
impl Server {
    /// A folder on a WebDAV server: checks what somebody typed; nothing is asked of the server. `chance` is a number drawn by
    /// chance, so that what two devices write at once has different names until it is whole.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`](super::HoldfastError::Invalid) with the first thing that cannot be, and what is wanted.
    #[cfg_attr(feature = "ffi", uniffi::constructor)]
    pub fn webdav(
        address: String,
        user: String,
        password: String,
        chance: u32,
    ) -> HoldfastResult<Server> {
        let (url, password) = (address, Secret::new(password));
        Server::checked(Carrier::WebDav(WebDav { url, user, password, unencrypted: false }), chance)
    }

    /// A bucket on an S3-compatible server, or the `folder` in it: the same. The bucket stands in the path, as servers of
    /// one's own have it and others take it. What is copied often has a space behind it, which belongs to none of these.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`](super::HoldfastError::Invalid) with the first thing that cannot be, and what is wanted.
    #[cfg_attr(feature = "ffi", uniffi::constructor)]
    pub fn s3(
        address: String,
        bucket: String,
        region: String,
        folder: String,
        key_id: String,
        secret: String,
        chance: u32,
    ) -> HoldfastResult<Server> {
        let secret = Secret::new(secret);
        let trimmed = |text: String| text.trim().to_owned();
        let s3 = S3 {
            endpoint: address,
            region: trimmed(region),
            bucket: trimmed(bucket),
            prefix: trimmed(folder),
            key_id: trimmed(key_id),
            secret: Secret::new(secret.expose().trim()),
            path_style: true,
            unencrypted: false,
        };
        Server::checked(Carrier::S3(s3), chance)
    }

    /// Where it is, without what signs in there: the same for the same server.
    pub fn place(&self) -> String {
        self.remote.to_string()
    }

    /// Begins one thing: [`ServerWork::next`] takes it on.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`](super::HoldfastError::Invalid) for a name that none of ours has.
    pub fn begin(&self, want: ServerWant) -> HoldfastResult<Arc<ServerWork>> {
        caught(|| {
            let no_such = || Error::invalid(Field::Text, say::web::no_such_name());
            let folder_of = |name: &str| folder_of(name).ok_or_else(no_such);
            let operation = match want.clone() {
                ServerWant::Parts { after } => Operation::List { folder: None, after },
                ServerWant::Files { part, after } => Operation::List { folder: Some(part), after },
                ServerWant::Get { name } => Operation::Get { folder: folder_of(&name)?, name },
                ServerWant::Put { name, content } => {
                    let turn = self.turn.fetch_add(1, Ordering::Relaxed);
                    Operation::Put { folder: folder_of(&name)?, name, content, turn }
                }
            };
            let remote = self.remote.clone();
            Ok(Arc::new(ServerWork::new(remote, want, operation)))
        })
    }
}

impl Server {
    fn checked(carrier: Carrier, chance: u32) -> HoldfastResult<Server> {
        caught(|| match carrier.remote() {
            Ok(Some(remote)) => Ok(Server { remote, turn: AtomicU32::new(chance) }),
            Ok(None) => Err(Error::invalid(Field::Text, say::web::no_host()).into()),
            Err(faults) => {
                let first = faults.into_iter().next().map(|fault| fault.reason);
                Err(Error::invalid(Field::Text, first.unwrap_or_default()).into())
            }
        })
    }
}

impl From<HttpRequest> for ServerRequest {
    fn from(request: HttpRequest) -> ServerRequest {
        let HttpRequest { method, url, headers, authorization, body, largest } = request;
        let headers = headers.into_iter().map(|(name, value)| ServerHeader { name, value });
        let mut headers: Vec<ServerHeader> = headers.collect();
        let (name, value) = ("authorization".into(), authorization.expose().into());
        headers.push(ServerHeader { name, value });
        let body = method.has_body().then_some(body);
        ServerRequest { method: method.as_str().into(), url, headers, body, largest }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::instant::Instant;

    const ADDRESS: &str = "https://files.example.org/cellar";

    fn at(boot_ms: i64) -> Instant {
        Instant { wall_ms: 1_793_728_800_000, offset_min: 0, boot_ms, boot_id: "one".into() }
    }

    fn server() -> Server {
        Server::webdav(ADDRESS.into(), "ines".into(), "only for this app".into(), 7).unwrap()
    }

    fn leaf() -> String {
        format!("{}-0123abcd-00000033-fedcba9876543210.leaf", "0123456789abcdef".repeat(2))
    }

    fn came(status: u16, body: &[u8]) -> ServerAnswer {
        ServerAnswer::Came { status, headers: Vec::new(), body: body.to_vec() }
    }

    #[test]
    fn a_file_is_asked_for_in_the_folder_of_its_part_with_the_password() {
        let work = server().begin(ServerWant::Get { name: leaf() }).unwrap();
        let ServerNext::Send { request } = work.next(ServerAnswer::Begin, at(0)) else {
            panic!("nothing to send")
        };
        let lane = format!("{}-0123abcd-00000033", "0123456789abcdef".repeat(2));
        assert_eq!(request.url, format!("{ADDRESS}/{lane}/{}", leaf()));
        assert_eq!((request.method.as_str(), request.body), ("GET", None));
        let signs = request.headers.iter().find(|header| header.name == "authorization");
        assert_eq!(signs.unwrap().value, "Basic aW5lczpvbmx5IGZvciB0aGlzIGFwcA==");
        let ServerNext::Got { content } = work.next(came(200, b"sealed"), at(9)) else {
            panic!("no file")
        };
        assert_eq!(content.as_deref(), Some(b"sealed".as_slice()));
    }

    #[test]
    fn a_broken_connection_is_waited_for_and_then_said() {
        let work = server().begin(ServerWant::Get { name: leaf() }).unwrap();
        let mut waits = Vec::new();
        loop {
            work.next(ServerAnswer::Begin, at(0));
            match work.next(ServerAnswer::Interrupted, at(0)) {
                ServerNext::Wait { length } => waits.push(length.0),
                ServerNext::Failed { reason, ends } => {
                    assert!(ends && reason.contains("broke"), "{reason}");
                    break;
                }
                _ => panic!("neither a wait nor a reason"),
            }
        }
        assert_eq!(waits, [500, 1_000, 2_000, 4_000]);
    }

    #[test]
    fn without_a_way_there_is_no_wait_and_a_wrong_password_ends_it() {
        for (answer, said) in [
            (ServerAnswer::Offline, "No connection to"),
            (came(401, b""), "does not accept this user name"),
            (ServerAnswer::Untrusted { said: "expired".into() }, "expired"),
        ] {
            let work = server().begin(ServerWant::Parts { after: None }).unwrap();
            work.next(ServerAnswer::Begin, at(0));
            let ServerNext::Failed { reason, ends } = work.next(answer, at(5)) else {
                panic!("no reason: {said}")
            };
            assert!(ends && reason.contains(said), "{reason}");
            assert!(!reason.contains("only for this app"), "{reason}");
        }
    }

    #[test]
    fn what_is_no_file_of_ours_is_not_asked_for() {
        for name in ["../x", "", "plan.toml"] {
            assert!(server().begin(ServerWant::Get { name: name.into() }).is_err(), "{name}");
        }
        let typed = |address: &str, user: &str, password: &str| {
            let server = Server::webdav(address.into(), user.into(), password.into(), 0);
            server.err().unwrap().to_string()
        };
        assert!(typed("files", "ines", "word").contains("https://"));
        assert!(typed("http://files.example.org/x", "ines", "word").contains("not encrypted"));
        assert!(typed(ADDRESS, "", "word").contains("user name"));
        assert!(typed(ADDRESS, "ines", "").contains("password is missing"));
    }
}
