//! What real servers say when something is wrong, and what is made of it.

use carry::{Carried, Line};
use holdfast_core::Instant;
use holdfast_core::exchange::web::{Carrier, S3, ServerKind, WebDav, WebFault};

use crate::server::{LANE, LEAF, PASSWORD, Server, now, open};
use crate::servers::{ALL, S3 as S3_KINDS, WEBDAV};

pub(crate) fn fault<T: std::fmt::Debug>(carried: Result<T, Carried>, name: &str) -> WebFault {
    match carried {
        Err(Carried::Web(fault)) => {
            let said = format!("{fault} {fault:?}");
            assert!(!said.contains(PASSWORD), "{said}");
            fault
        }
        other => panic!("{name}: {other:?}"),
    }
}

/// The same server by another folder of it.
pub(crate) fn at(server: &Server, folder: &str) -> Line {
    match server.carrier() {
        Carrier::WebDav(dav) => open(&Carrier::WebDav(WebDav {
            url: dav.url.replace("/crew", &format!("/{folder}")),
            ..dav
        })),
        Carrier::S3(s3) => open(&Carrier::S3(S3 { bucket: folder.into(), ..s3 })),
        Carrier::Folder { .. } => panic!("no server"),
    }
}

#[test]
fn a_wrong_password_is_called_one() {
    for kind in ALL {
        let server = Server::start(kind);
        let line = open(&server.carrier_at(server.port, "wrong"));
        for said in [
            fault(line.list(None, None), kind.name),
            fault(line.get(LANE, LEAF), kind.name),
            fault(line.put(LANE, LEAF, b"x".to_vec()), kind.name),
        ] {
            let fits = matches!(
                (&said, kind.is_s3),
                (WebFault::WrongPassword { .. }, false) | (WebFault::WrongKey { .. }, true)
            );
            assert!(fits, "{}: {said:?}", kind.name);
        }
    }
}

#[test]
fn a_folder_or_bucket_that_is_not_there_is_called_so() {
    for kind in ALL {
        let server = Server::start(kind);
        let line = at(&server, "nowhere");
        for said in [
            fault(line.list(None, None), kind.name),
            fault(line.put(LANE, LEAF, b"x".to_vec()), kind.name),
        ] {
            assert!(matches!(said, WebFault::NotThere { .. }), "{}: {said:?}", kind.name);
        }
        assert!(!server.files().parent().unwrap().join("nowhere").exists(), "{}", kind.name);
    }
}

fn a_day_late() -> Instant {
    Instant { wall_ms: now().wall_ms - 24 * 60 * 60 * 1_000 - 30_000, ..now() }
}

fn in_20_minutes() -> Instant {
    Instant { wall_ms: now().wall_ms + 20 * 60 * 1_000, ..now() }
}

#[test]
fn a_clock_that_is_off_is_said_by_how_much() {
    for kind in S3_KINDS {
        let server = Server::start(kind);
        for (clock, range) in
            [(a_day_late as fn() -> Instant, -86_440..=-86_400), (in_20_minutes, 1_190..=1_201)]
        {
            let line = Line::open(&server.carrier(), clock, 7).unwrap();
            for said in [
                fault(line.list(None, None), kind.name),
                fault(line.put(LANE, LEAF, b"x".to_vec()), kind.name),
            ] {
                match &said {
                    WebFault::ClockOff { ahead_s: Some(ahead_s), .. } => {
                        assert!(range.contains(ahead_s), "{said:?}");
                    }
                    _ => panic!("{said:?}"),
                }
            }
        }
    }
    // WebDAV has no use for a clock.
    let server = Server::start(WEBDAV[0]);
    let line = Line::open(&server.carrier(), a_day_late, 7).unwrap();
    assert!(line.put(LANE, LEAF, b"x".to_vec()).unwrap());
}

#[test]
fn a_server_of_the_other_kind_is_called_so() {
    let s3 = Server::start(S3_KINDS[0]);
    let as_dav = WebDav { url: s3.base(), user: "ines".into(), ..WebDav::default() };
    let password = holdfast_core::exchange::web::Secret::new(PASSWORD);
    let line = open(&Carrier::WebDav(WebDav { password, ..as_dav }));
    let said = fault(line.list(None, None), s3.kind.name);
    let fits = matches!(said, WebFault::NotThisKind { kind: ServerKind::WebDav, .. });
    assert!(fits, "{said:?}");
    for kind in WEBDAV {
        let server = Server::start(kind);
        let Carrier::S3(settings) = s3.carrier() else { panic!("not S3") };
        let endpoint = format!("http://127.0.0.1:{}", server.port);
        let line = open(&Carrier::S3(S3 { endpoint, bucket: "crew".into(), ..settings }));
        let said = fault(line.list(None, None), kind.name);
        let fits = matches!(said, WebFault::NotThisKind { kind: ServerKind::S3, .. });
        assert!(fits, "{}: {said:?}", kind.name);
    }
}
