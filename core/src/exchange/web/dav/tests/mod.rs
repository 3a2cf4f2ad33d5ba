//! WebDAV without a network: every operation, every fault.

mod listing;

use proptest::prelude::*;

use super::super::tests::{
    LANE, LEAF, answer, answered, begun, dav, delete, fault, get, header, list, now, put,
};
use super::super::{
    Done, HttpRequest, MAX_FILE_BYTES, MAX_LISTING_BYTES, Method, Next, Operation, Transfer,
    WebFault,
};
use super::*;
use crate::exchange::ListedFile;

const CARRIER: &str = "https://files.example.org/crew/";

fn folder() -> Address {
    Address::parse("https://files.example.org/crew/").unwrap()
}

fn response(href: &str, prop: &str) -> String {
    format!(
        "<D:response><D:href>{href}</D:href><D:propstat><D:prop>{prop}</D:prop>\
         <D:status>HTTP/1.1 200 OK</D:status></D:propstat></D:response>"
    )
}

fn multistatus(responses: &str) -> String {
    format!("<?xml version=\"1.0\"?><D:multistatus xmlns:D=\"DAV:\">{responses}</D:multistatus>")
}

fn file(name: &str, bytes: u64) -> ListedFile {
    ListedFile { name: name.into(), bytes }
}

#[test]
fn what_is_no_listing_of_this_folder_is_said() {
    let other = multistatus(&response("/elsewhere/x", ""));
    for body in ["", "<html><body>Sign in</body></html>", "<multistatus>", &other] {
        let other_kind = fault(&dav(), list(None), &answer(207, &[], body));
        assert!(matches!(other_kind, WebFault::NotThisKind { .. }), "{body}");
    }
    let large = " ".repeat(MAX_LISTING_BYTES as usize + 1);
    let large = fault(&dav(), list(None), &answer(207, &[], &large));
    assert_eq!(large, WebFault::TooLarge { carrier: CARRIER.into(), largest: MAX_LISTING_BYTES });
}

#[test]
fn a_listing_is_asked_for_one_level_deep() {
    let (_, request) = begun(&dav(), list(None));
    assert_eq!((request.method, request.url.as_str()), (Method::Propfind, CARRIER));
    assert_eq!(header(&request, "Depth"), Some("1"));
    // RFC 7617's form: base64 of `ines:...`.
    assert!(request.authorization.expose().starts_with("Basic aW5lczpUcj"));
    let (_, request) = begun(&dav(), list(Some(LANE)));
    assert_eq!(request.url, format!("{CARRIER}{LANE}/"));
    let none = answered(&dav(), list(Some(LANE)), &answer(404, &[], ""));
    let empty = Listing { whole: true, ..Listing::default() };
    assert!(matches!(none, Next::Done(Done::Listed(listing)) if listing == empty));
}

/// Sends answers one after the other; gives the requests after the first, and the end.
fn played(operation: Operation, statuses: &[u16]) -> (Vec<HttpRequest>, Next) {
    let (mut transfer, _) = begun(&dav(), operation);
    let mut sent = Vec::new();
    for (index, status) in statuses.iter().enumerate() {
        match transfer.answered(&answer(*status, &[], ""), &now()) {
            Next::Send(request) => sent.push(request),
            end => {
                assert_eq!(index + 1, statuses.len(), "ended early: {end:?}");
                return (sent, end);
            }
        }
    }
    panic!("not at its end after {statuses:?}");
}

fn done(end: Next) -> Done {
    match end {
        Next::Done(done) => done,
        other => panic!("{other:?}"),
    }
}

fn faulty(end: Next) -> WebFault {
    match end {
        Next::Fault(fault) => fault,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_file_is_written_under_another_name_and_then_renamed_without_replacing() {
    let (_, first) = begun(&dav(), put());
    let temporary = format!("{CARRIER}{LANE}/.{LEAF}.3.tmp");
    assert_eq!((first.method, &first.url), (Method::Put, &temporary));
    assert_eq!(first.body, b"sealed");
    let (sent, end) = played(put(), &[201, 201]);
    assert_eq!(done(end), Done::Written);
    assert_eq!((sent[0].method, &sent[0].url), (Method::Move, &temporary));
    assert_eq!(header(&sent[0], "Destination"), Some(&*format!("{CARRIER}{LANE}/{LEAF}")));
    assert_eq!(header(&sent[0], "Overwrite"), Some("F"));
}

/// Behind a proxy that ends TLS, Apache answers 502 to its own outer address.
#[test]
fn a_server_that_knows_itself_by_another_address_is_given_a_path_alone() {
    for refused in [400, 502] {
        let (sent, end) = played(put(), &[201, refused, 201]);
        assert_eq!(done(end), Done::Written);
        assert_eq!(header(&sent[1], "Destination"), Some(&*format!("/crew/{LANE}/{LEAF}")));
    }
    let cannot = WebFault::CannotMove { carrier: CARRIER.into() };
    assert_eq!(faulty(played(put(), &[201, 502, 400, 204]).1), cannot);
    assert!(faulty(played(put(), &[201, 502, 502, 204]).1).passes());
}

/// rclone closes the connection on a large file that it refuses, and what it said is lost.
#[test]
fn a_large_file_is_sent_once_its_folder_is_there() {
    let large = |bytes| match put() {
        Operation::Put { folder, name, turn, .. } => {
            Operation::Put { folder, name, content: vec![7; bytes], turn }
        }
        other => other,
    };
    assert_eq!(begun(&dav(), large(MAX_AT_ONCE)).1.method, Method::Put);
    let large = || large(MAX_AT_ONCE + 1);
    let (_, first) = begun(&dav(), large());
    assert_eq!((first.method, first.url), (Method::Mkcol, format!("{CARRIER}{LANE}/")));
    assert!(first.body.is_empty());
    // Made, there already, and what Apache says of one that was made a moment ago.
    for there in [201, 405, 403] {
        let (sent, end) = played(large(), &[there, 201, 201]);
        assert_eq!(done(end), Done::Written);
        assert_eq!((sent[0].method, sent[0].body.len()), (Method::Put, MAX_AT_ONCE + 1));
    }
    // What is wrong is said before anything of the file is sent.
    let wrong = WebFault::WrongPassword { carrier: CARRIER.into() };
    assert_eq!(faulty(played(large(), &[401]).1), wrong);
    let not_there = WebFault::NotThere { carrier: CARRIER.into() };
    assert_eq!(faulty(played(large(), &[409]).1), not_there);
    assert_eq!(faulty(played(large(), &[405, 409]).1), not_there);
}

#[test]
fn the_folder_of_a_lane_is_made_once() {
    for missing in [404, 409, 500] {
        let (sent, end) = played(put(), &[missing, 201, 201, 201]);
        assert_eq!(done(end), Done::Written);
        assert_eq!((sent[0].method, &sent[0].url), (Method::Mkcol, &format!("{CARRIER}{LANE}/")));
        assert_eq!(sent[1].method, Method::Put);
    }
    // Somebody else made it meanwhile.
    assert_eq!(done(played(put(), &[409, 405, 204, 204]).1), Done::Written);
    // It was there, and the server is out of order all the same.
    assert!(faulty(played(put(), &[500, 405, 500]).1).passes());
    // Somebody else made it a moment ago, and Apache says 403 of that (2.4.71, met under load).
    assert_eq!(done(played(put(), &[409, 403, 201, 204]).1), Done::Written);
    for missing in [404, 409, 500] {
        let read_only = WebFault::ReadOnly { carrier: CARRIER.into() };
        assert_eq!(faulty(played(put(), &[missing, 403, missing]).1), read_only);
    }
    let not_there = WebFault::NotThere { carrier: CARRIER.into() };
    assert_eq!(faulty(played(put(), &[500, 409]).1), not_there);
    assert_eq!(faulty(played(put(), &[409, 409]).1), not_there);
    assert_eq!(faulty(played(put(), &[409, 201, 409]).1), not_there);
    assert_eq!(faulty(played(put(), &[404, 201, 404]).1), not_there);
}

#[test]
fn what_is_there_stays_and_the_temporary_file_goes() {
    for tidied in [204, 404, 403, 500] {
        let (sent, end) = played(put(), &[201, 412, tidied]);
        assert_eq!(done(end), Done::AlreadyThere);
        assert_eq!(sent[1].method, Method::Delete);
        assert!(sent[1].url.ends_with(".3.tmp"));
    }
    let cannot = WebFault::CannotMove { carrier: CARRIER.into() };
    assert_eq!(faulty(played(put(), &[201, 405, 204]).1), cannot);
    let full = WebFault::Full { carrier: CARRIER.into() };
    assert_eq!(faulty(played(put(), &[201, 507, 204]).1), full);
    // A multistatus says that something in it failed.
    assert!(matches!(faulty(played(put(), &[201, 207, 204]).1), WebFault::NotThisKind { .. }));
    assert!(faulty(played(put(), &[201, 404]).1).passes());
}

#[test]
fn a_file_is_read_and_deleted() {
    let (_, request) = begun(&dav(), get());
    assert_eq!((request.method, request.url), (Method::Get, format!("{CARRIER}{LANE}/{LEAF}")));
    assert_eq!(request.largest, MAX_FILE_BYTES);
    let got = answered(&dav(), get(), &answer(200, &[], "sealed"));
    assert_eq!(done(got), Done::Got { content: b"sealed".into() });
    assert_eq!(done(played(get(), &[404]).1), Done::Missing);
    let large = "x".repeat(MAX_FILE_BYTES as usize + 1);
    let large = fault(&dav(), get(), &answer(200, &[], &large));
    assert!(matches!(large, WebFault::TooLarge { .. }));

    let (_, request) = begun(&dav(), delete());
    assert_eq!((request.method, request.url), (Method::Delete, format!("{CARRIER}{LANE}/{LEAF}")));
    assert_eq!(done(played(delete(), &[204]).1), Done::Deleted);
    assert_eq!(done(played(delete(), &[404]).1), Done::Missing);
    assert_eq!(faulty(played(delete(), &[403]).1), WebFault::ReadOnly { carrier: CARRIER.into() });
}

/// A wireless network's sign-in page answers everything with 200.
#[test]
fn a_page_for_people_is_neither_a_file_nor_a_success() {
    let page = answer(200, &[("Content-Type", "text/html; charset=utf-8")], "<html>Sign in</html>");
    for operation in [list(None), list(Some(LANE)), get(), put(), delete()] {
        let said = fault(&dav(), operation.clone(), &page);
        assert!(matches!(said, WebFault::NotThisKind { .. }), "{operation:?}");
    }
    let (mut transfer, _) = begun(&dav(), put());
    assert!(matches!(transfer.answered(&answer(201, &[], ""), &now()), Next::Send(_)));
    assert!(matches!(transfer.answered(&page, &now()), Next::Send(_)), "tidies up");
    let end = transfer.answered(&page, &now());
    assert!(matches!(end, Next::Fault(WebFault::NotThisKind { .. })));
}

/// Apache mod_dav 2.4 says "201 Created" in a page as well.
#[test]
fn a_page_that_says_created_is_believed() {
    let created = answer(201, &[("Content-Type", "text/html; charset=iso-8859-1")], "<html>");
    let (mut transfer, _) = begun(&dav(), put());
    assert!(matches!(transfer.answered(&created, &now()), Next::Send(_)));
    assert_eq!(done(transfer.answered(&created, &now())), Done::Written);
}

#[test]
fn every_status_has_its_fault() {
    let carrier = || CARRIER.to_owned();
    let busy = |status, wait_s| WebFault::Busy { carrier: carrier(), status, wait_s };
    let webdav = super::super::ServerKind::WebDav;
    let not_dav = || WebFault::NotThisKind { carrier: carrier(), kind: webdav };
    let digest = [("WWW-Authenticate", "Digest realm=\"x\"")];
    let both = [digest[0], ("www-authenticate", "Basic realm=\"x\"")];
    let html = [("Content-Type", "text/html")];
    for (operation, with, wanted) in [
        (list(None), answer(401, &[], ""), WebFault::WrongPassword { carrier: carrier() }),
        (list(None), answer(401, &both, ""), WebFault::WrongPassword { carrier: carrier() }),
        (
            list(None),
            answer(401, &digest, ""),
            WebFault::OtherSignIn { carrier: carrier(), ways: "Digest".into() },
        ),
        (list(None), answer(403, &[], ""), WebFault::WrongPassword { carrier: carrier() }),
        (list(None), answer(404, &[], ""), WebFault::NotThere { carrier: carrier() }),
        (list(None), answer(405, &[], ""), not_dav()),
        (list(None), answer(400, &html, ""), not_dav()),
        (list(None), answer(418, &[], ""), WebFault::Refused { carrier: carrier(), status: 418 }),
        (put(), answer(401, &[], ""), WebFault::WrongPassword { carrier: carrier() }),
        (put(), answer(403, &[], ""), WebFault::ReadOnly { carrier: carrier() }),
        (put(), answer(405, &[], ""), WebFault::ReadOnly { carrier: carrier() }),
        (put(), answer(413, &[], ""), WebFault::UploadLimit { carrier: carrier(), bytes: 6 }),
        (put(), answer(507, &[], ""), WebFault::Full { carrier: carrier() }),
        (put(), answer(423, &[], ""), busy(423, None)),
        (get(), answer(429, &[("Retry-After", "7")], ""), busy(429, Some(7))),
        (
            get(),
            answer(503, &[("Retry-After", "Fri, 27 Nov 2026 11:00:00 GMT")], ""),
            busy(503, None),
        ),
        (get(), answer(500, &html, "<html>"), busy(500, None)),
        (get(), answer(204, &[], ""), not_dav()),
    ] {
        assert_eq!(fault(&dav(), operation, &with), wanted, "{with:?}");
    }
}

#[test]
fn reading_follows_within_the_same_server_and_never_beyond() {
    let to = |to: &str| answer(301, &[("Location", to)], "");
    let (mut transfer, _) = begun(&dav(), list(None));
    match transfer.answered(&to("https://files.example.org:443/new/crew"), &now()) {
        Next::Send(request) => {
            assert_eq!(request.url, "https://files.example.org/new/crew/");
            assert_eq!(request.method, Method::Propfind);
            assert!(!request.authorization.is_empty());
        }
        other => panic!("{other:?}"),
    }
    let body = multistatus(&response("/new/crew/x.leaf", ""));
    let end = done(transfer.answered(&answer(207, &[], &body), &now()));
    assert!(matches!(end, Done::Listed(listing) if listing.files == [file("x.leaf", 0)]));

    // In a circle: not without end.
    let (mut transfer, _) = begun(&dav(), get());
    for _ in 0..MAX_HOPS {
        assert!(matches!(transfer.answered(&to("/crew/again"), &now()), Next::Send(_)));
    }
    let moved = transfer.answered(&to("/crew/again"), &now());
    assert!(matches!(moved, Next::Fault(WebFault::Moved { .. })));

    for (elsewhere, shown) in [
        ("https://evil.example/crew/", "https://evil.example/crew/"),
        ("http://files.example.org/crew/", "http://files.example.org/crew/"),
        ("https://files.example.org:444/crew/", "https://files.example.org:444/crew/"),
        ("//evil.example/", "//evil.example/"),
        ("https://ana:pw@evil.example/?token=x#y", "https://evil.example/"),
        ("/login?next=/crew/", "/login"),
        ("", ""),
    ] {
        for operation in [list(None), list(Some(LANE)), get()] {
            let wanted = WebFault::Moved { carrier: CARRIER.into(), to: shown.into() };
            assert_eq!(fault(&dav(), operation, &to(elsewhere)), wanted, "{elsewhere}");
        }
    }
}

/// Some clients turn a redirected PUT into a GET: the file is lost, and nobody is told.
#[test]
fn writing_follows_nowhere() {
    for status in [300, 301, 302, 303, 305, 307, 308] {
        for place in ["/crew/new", "https://files.example.org/crew/x", "https://evil.example/"] {
            for operation in [put(), delete()] {
                let with = answer(status, &[("Location", place)], "");
                let said = fault(&dav(), operation, &with);
                assert!(matches!(said, WebFault::Moved { .. }), "{status} {place}");
            }
        }
    }
    let see_other = answer(303, &[("Location", "/crew/x")], "");
    assert!(matches!(fault(&dav(), get(), &see_other), WebFault::Moved { .. }));
}

proptest! {
    #[test]
    fn no_answers_make_an_operation_panic_or_go_on_without_end(
        statuses in prop::collection::vec(
            prop::sample::select(vec![200_u16, 201, 204, 207, 301, 302, 404, 405, 409, 412, 500]),
            40,
        ),
        which in 0_usize..4,
    ) {
        let operation = [list(None), get(), put(), delete()][which].clone();
        let (mut transfer, _) = Transfer::begin(&dav(), operation, &now()).unwrap();
        let ended = statuses.iter().any(|status| {
            let with = answer(*status, &[("Location", "/crew/x")], "");
            !matches!(transfer.answered(&with, &now()), Next::Send(_))
        });
        prop_assert!(ended);
    }
}
