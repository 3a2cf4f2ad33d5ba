//! What real servers say when something is wrong, and what is made of it.

use std::fs::{self, Permissions};
use std::os::unix::fs::PermissionsExt;

use carry::{Carried, Line};
use holdfast_core::Instant;
use holdfast_core::exchange::web::{Carrier, S3, ServerKind, WebDav, WebFault};

use crate::server::{LANE, LEAF, PASSWORD, Server, now, open};
use crate::servers::{ALL, APACHE, NGINX, VERSITYGW, WEBDAV};

fn fault<T: std::fmt::Debug>(carried: Result<T, Carried>, name: &str) -> WebFault {
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
fn at(server: &Server, folder: &str) -> Line {
    match server.carrier() {
        Carrier::WebDav(dav) => open(&Carrier::WebDav(WebDav {
            url: dav.url.replace("/crew", &format!("/{folder}")),
            ..dav
        })),
        Carrier::S3(s3) => open(&Carrier::S3(S3 { bucket: folder.into(), ..s3 })),
        Carrier::Folder { .. } => panic!("no server"),
    }
}

fn make(server: &Server, folder: &str) {
    let path = server.files().parent().unwrap().join(folder);
    fs::create_dir_all(&path).unwrap();
    fs::set_permissions(&path, Permissions::from_mode(0o777)).unwrap();
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

#[test]
fn a_share_that_may_only_be_read_is_called_so() {
    for kind in [APACHE, NGINX] {
        let server = Server::start(kind);
        make(&server, "readonly");
        let line = at(&server, "readonly");
        assert_eq!(line.list(None, None).unwrap().files.len(), 0, "{}", kind.name);
        let said = fault(line.put(LANE, LEAF, b"x".to_vec()), kind.name);
        assert!(matches!(said, WebFault::ReadOnly { .. }), "{}: {said:?}", kind.name);
    }
}

#[test]
fn a_limit_for_uploads_and_a_full_disk_are_told_apart() {
    for kind in [APACHE, NGINX] {
        let server = Server::start(kind);
        make(&server, "small");
        let said = fault(at(&server, "small").put(LANE, LEAF, vec![0; 5_000]), kind.name);
        assert!(
            matches!(said, WebFault::UploadLimit { bytes: 5_000, .. }),
            "{}: {said:?}",
            kind.name
        );
    }
    let server = Server::start(NGINX);
    make(&server, "full");
    let said = fault(at(&server, "full").put(LANE, LEAF, vec![0; 5_000]), "nginx");
    assert!(matches!(said, WebFault::Full { .. }), "{said:?}");
}

#[test]
fn a_carrier_that_has_moved_says_where_to() {
    let server = Server::start(NGINX);
    let line = at(&server, "old");
    let to = format!("http://localhost:{}/crew/", server.port);
    for said in
        [fault(line.list(None, None), "nginx"), fault(line.put(LANE, LEAF, b"x".to_vec()), "nginx")]
    {
        assert!(matches!(&said, WebFault::Moved { to: named, .. } if *named == to), "{said:?}");
    }
    assert!(fs::read_dir(server.files()).unwrap().next().is_none());
}

fn a_day_late() -> Instant {
    Instant { wall_ms: now().wall_ms - 24 * 60 * 60 * 1_000 - 30_000, ..now() }
}

fn in_20_minutes() -> Instant {
    Instant { wall_ms: now().wall_ms + 20 * 60 * 1_000, ..now() }
}

#[test]
fn a_clock_that_is_off_is_said_by_how_much() {
    let server = Server::start(VERSITYGW);
    for (clock, range) in
        [(a_day_late as fn() -> Instant, -86_440..=-86_400), (in_20_minutes, 1_190..=1_201)]
    {
        let line = Line::open(&server.carrier(), clock, 7).unwrap();
        for said in [
            fault(line.list(None, None), "versitygw"),
            fault(line.put(LANE, LEAF, b"x".to_vec()), "versitygw"),
        ] {
            match &said {
                WebFault::ClockOff { ahead_s: Some(ahead_s), .. } => {
                    assert!(range.contains(ahead_s), "{said:?}");
                }
                _ => panic!("{said:?}"),
            }
        }
    }
    // WebDAV has no use for a clock.
    let server = Server::start(APACHE);
    let line = Line::open(&server.carrier(), a_day_late, 7).unwrap();
    assert!(line.put(LANE, LEAF, b"x".to_vec()).unwrap());
}

#[test]
fn a_server_of_the_other_kind_is_called_so() {
    let s3 = Server::start(VERSITYGW);
    let as_dav = WebDav { url: s3.base(), user: "ines".into(), ..WebDav::default() };
    let password = holdfast_core::exchange::web::Secret::new(PASSWORD);
    let line = open(&Carrier::WebDav(WebDav { password, ..as_dav }));
    let said = fault(line.list(None, None), "versitygw");
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
