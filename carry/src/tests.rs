//! A line against a server of a few lines, which answers what no real one should.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{TcpListener, TcpStream};
use std::sync::mpsc::{Receiver, channel};
use std::thread;

use holdfast_core::Instant;
use holdfast_core::exchange::web::{Carrier, MAX_FILE_BYTES, S3, Secret, WebDav, WebFault};

use crate::{Carried, Line};

const PASSWORD: &str = "Tr0mb0ne-never-shown";
const LANE: &str = "0123456789abcdef0123456789abcdef-00c0ffee";
const LEAF: &str = "0123456789abcdef0123456789abcdef-00c0ffee-00000001-fedcba9876543210.leaf";

/// What a request said: its first line, its headers in small letters, and how long its body was.
struct Asked {
    line: String,
    headers: Vec<String>,
    body: usize,
}

/// A server that gives these answers, one a connection, and then listens no more.
struct Server {
    port: u16,
    asked: Receiver<Asked>,
}

impl Server {
    fn answering(answers: Vec<Vec<u8>>) -> Server {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let port = listener.local_addr().unwrap().port();
        let (tell, asked) = channel();
        thread::spawn(move || {
            for answer in answers {
                let (mut stream, _) = listener.accept().unwrap();
                tell.send(read(&stream)).unwrap();
                // Whoever is told enough closes early.
                let _ = stream.write_all(&answer);
            }
        });
        Server { port, asked }
    }

    fn url(&self, path: &str) -> String {
        format!("http://127.0.0.1:{}{path}", self.port)
    }

    /// All that was asked so far.
    fn asked(&self) -> Vec<Asked> {
        self.asked.try_iter().collect()
    }
}

fn read(stream: &TcpStream) -> Asked {
    let mut reader = BufReader::new(stream);
    let mut line = String::new();
    reader.read_line(&mut line).unwrap();
    let mut headers = Vec::new();
    loop {
        let mut header = String::new();
        reader.read_line(&mut header).unwrap();
        if header.trim().is_empty() {
            break;
        }
        headers.push(header.trim().to_ascii_lowercase());
    }
    let length = headers.iter().find_map(|header| header.strip_prefix("content-length: "));
    let mut body = vec![0; length.map_or(0, |length| length.parse().unwrap())];
    reader.read_exact(&mut body).unwrap();
    Asked { line: line.trim().to_owned(), headers, body: body.len() }
}

fn answer(status: &str, headers: &str, body: &str) -> Vec<u8> {
    let length = body.len();
    format!(
        "HTTP/1.1 {status}\r\n{headers}Content-Length: {length}\r\nConnection: close\r\n\r\n{body}"
    )
    .into_bytes()
}

fn now() -> Instant {
    Instant { wall_ms: 1_795_777_200_000, offset_min: 0, boot_ms: 0, boot_id: String::new() }
}

fn dav(url: String) -> Line {
    let password = Secret::new(PASSWORD);
    let settings = WebDav { url, user: "ines".into(), password, unencrypted: false };
    Line::open(&Carrier::WebDav(settings), now, 7).unwrap()
}

fn s3(endpoint: String) -> Line {
    let settings = S3 {
        endpoint,
        region: "us-east-1".into(),
        bucket: "cellar".into(),
        prefix: String::new(),
        key_id: "KEYNAME".into(),
        secret: Secret::new(PASSWORD),
        path_style: true,
        unencrypted: false,
    };
    Line::open(&Carrier::S3(settings), now, 7).unwrap()
}

fn web<T: std::fmt::Debug>(carried: Result<T, Carried>) -> WebFault {
    match carried {
        Err(Carried::Web(fault)) => fault,
        other => panic!("{other:?}"),
    }
}

/// The gravest thing a client can get wrong: the other server hears nothing at all, the password least.
#[test]
fn another_server_is_never_asked_and_never_given_the_password() {
    let other = Server::answering(vec![answer("200 OK", "", "x")]);
    for status in ["301 Moved", "302 Found", "303 See Other", "307 Temporary", "308 Permanent"] {
        let moved = || answer(status, &format!("Location: {}\r\n", other.url("/x")), "");
        for line in [
            dav(Server::answering(vec![moved()]).url("/crew")),
            s3(Server::answering(vec![moved()]).url("/")),
        ] {
            match web(line.get(LANE, LEAF)) {
                WebFault::Moved { to, .. } => assert_eq!(to, other.url("/x")),
                fault => panic!("{status}: {fault:?}"),
            }
        }
    }
    assert_eq!(other.asked().len(), 0);
}

#[test]
fn within_one_server_reading_follows_and_signs_in_again() {
    let moved = answer("301 Moved", "Location: /new/place.leaf\r\n", "");
    let server = Server::answering(vec![moved, answer("200 OK", "", "sealed")]);
    let got = dav(server.url("/crew")).get(LANE, LEAF).unwrap();
    assert_eq!(got.as_deref(), Some(&b"sealed"[..]));
    let asked = server.asked();
    assert_eq!(asked[1].line, "GET /new/place.leaf HTTP/1.1");
    for asked in &asked {
        assert!(asked.headers.iter().any(|header| header.starts_with("authorization: basic ")));
    }
}

/// A PUT that turns into a GET loses the file, and nobody is told.
#[test]
fn a_redirected_put_stays_an_error_and_is_sent_once() {
    for status in ["301 Moved", "302 Found", "303 See Other", "307 Temporary", "308 Permanent"] {
        let moved = || answer(status, "Location: /elsewhere\r\n", "");
        for (line, server) in [
            {
                let server = Server::answering(vec![moved(), answer("200 OK", "", "")]);
                (dav(server.url("/crew")), server)
            },
            {
                let server = Server::answering(vec![moved(), answer("200 OK", "", "")]);
                (s3(server.url("/")), server)
            },
        ] {
            let fault = web(line.put(LANE, LEAF, b"sealed".to_vec()));
            assert!(matches!(fault, WebFault::Moved { .. }), "{status}: {fault:?}");
            let asked = server.asked();
            assert_eq!(asked.len(), 1);
            assert!(asked[0].line.starts_with("PUT "), "{}", asked[0].line);
            assert_eq!(asked[0].body, 6);
        }
    }
}

#[test]
fn a_busy_server_is_asked_again_from_the_beginning() {
    let busy = answer("503 Busy", "Retry-After: 0\r\n", "");
    let server = Server::answering(vec![
        answer("201 Created", "", ""),
        busy.clone(),
        // The temporary file is taken away, then all begins again.
        answer("204 Gone", "", ""),
        answer("201 Created", "", ""),
        answer("201 Created", "", ""),
    ]);
    assert!(dav(server.url("/crew")).put(LANE, LEAF, b"sealed".to_vec()).unwrap());
    let methods: Vec<_> = server
        .asked()
        .iter()
        .map(|asked| asked.line.split(' ').next().unwrap().to_owned())
        .collect();
    assert_eq!(methods, ["PUT", "MOVE", "DELETE", "PUT", "MOVE"]);
}

#[test]
fn a_connection_that_breaks_is_tried_again() {
    let torn = b"HTTP/1.1 200 OK\r\nContent-Length: 6\r\n\r\nsea".to_vec();
    let server = Server::answering(vec![torn, answer("200 OK", "", "sealed")]);
    let got = dav(server.url("/crew")).get(LANE, LEAF).unwrap();
    assert_eq!(got.as_deref(), Some(&b"sealed"[..]));
}

#[test]
fn being_offline_is_no_fault() {
    let port = {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        listener.local_addr().unwrap().port()
    };
    for url in [format!("http://127.0.0.1:{port}/crew"), "http://no-such-host.invalid/".into()] {
        let settings = WebDav {
            url: url.clone(),
            user: "ines".into(),
            password: Secret::new(PASSWORD),
            unencrypted: true,
        };
        let line = Line::open(&Carrier::WebDav(settings), now, 7).unwrap();
        match line.list(None, None) {
            Err(Carried::Offline(offline)) => {
                assert!(offline.to_string().contains(&url), "{offline}");
            }
            other => panic!("{other:?}"),
        }
    }
}

/// A server that sends without end is read no further than is of use.
#[test]
fn no_more_is_read_than_is_of_use() {
    let huge = u64::MAX / 2;
    let mut endless = format!("HTTP/1.1 200 OK\r\nContent-Length: {huge}\r\n\r\n").into_bytes();
    endless.resize(usize::try_from(MAX_FILE_BYTES).unwrap() + 200_000, b'x');
    let server = Server::answering(vec![endless]);
    match web(dav(server.url("/crew")).get(LANE, LEAF)) {
        WebFault::TooLarge { largest, .. } => assert_eq!(largest, MAX_FILE_BYTES),
        fault => panic!("{fault:?}"),
    }
}

#[test]
fn neither_a_line_nor_what_it_says_shows_the_password() {
    let mut printed = String::new();
    for status in ["200 OK", "401 No", "403 No", "404 No", "409 No", "500 No", "302 Found"] {
        let answers = || vec![answer(status, "Location: /a\r\nRetry-After: 99\r\n", "<x>"); 4];
        let (one, two) = (Server::answering(answers()), Server::answering(answers()));
        for line in [dav(one.url("/crew")), s3(two.url("/"))] {
            for said in [
                format!("{:?}", line.list(None, None)),
                format!("{:?}", line.put(LANE, LEAF, Vec::new())),
                format!("{line:?} {line:#?}"),
            ] {
                printed += &said;
            }
        }
    }
    // base64 of `ines:` and the password's first letters.
    assert!(!printed.contains(PASSWORD) && !printed.contains("aW5lczpUcj"), "{printed}");
    assert!(printed.contains("Secret"));
}

#[test]
fn a_folder_does_the_same_four_things() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("crew");
    let carrier = Carrier::Folder { path: path.to_str().unwrap().into() };
    let line = Line::open(&carrier, now, 7).unwrap();
    // One that is not there is not made: the stick is not plugged in.
    assert!(matches!(line.list(None, None), Err(Carried::File { .. })));
    assert!(matches!(line.put(LANE, LEAF, Vec::new()), Err(Carried::File { .. })));
    assert!(!path.exists());
    std::fs::create_dir(&path).unwrap();

    assert!(line.list(Some(LANE), None).unwrap().files.is_empty());
    assert!(line.put(LANE, LEAF, b"sealed".to_vec()).unwrap());
    assert!(!line.put(LANE, LEAF, b"sealed".to_vec()).unwrap());
    assert_eq!(line.get(LANE, LEAF).unwrap().as_deref(), Some(&b"sealed"[..]));
    assert_eq!(line.list(None, None).unwrap().folders, [LANE]);
    assert_eq!(line.list(Some(LANE), None).unwrap().files[0].bytes, 6);
    assert!(line.list(Some(LANE), Some(LEAF)).unwrap().files.is_empty());
    assert!(line.delete(LANE, LEAF).unwrap());
    assert!(!line.delete(LANE, LEAF).unwrap());
    assert_eq!(line.get(LANE, LEAF).unwrap(), None);
    for name in ["..", "a/b", "/etc/passwd"] {
        assert!(matches!(line.get(LANE, name), Err(Carried::Web(WebFault::NoSuchName))));
    }
    #[cfg(unix)]
    {
        std::os::unix::fs::symlink("/etc/hostname", path.join(LANE).join(LEAF)).unwrap();
        assert_eq!(line.get(LANE, LEAF).unwrap(), None, "links are not followed");
        assert!(line.list(Some(LANE), None).unwrap().files.is_empty());
    }
}
