//! S3 without a network: the API reference's own answers, every fault, every limit.

use proptest::prelude::*;

use super::super::tests::{
    LANE, LEAF, PASSWORD, answer, answered, begun, delete, fault, get, header, list, now, put,
    remote, s3, s3_settings,
};
use super::super::{Carrier, HttpRequest, S3, Secret, Transfer};
use super::*;
use crate::exchange::ListedFile;

const CARRIER: &str = "https://s3.example.org/cellar/crew/";

fn file(name: &str, bytes: u64) -> ListedFile {
    ListedFile { name: name.into(), bytes }
}

fn query(request: &HttpRequest) -> Vec<(String, String)> {
    let query = request.url.split_once('?').map_or("", |(_, query)| query);
    let decoded =
        |text: &str| percent_encoding::percent_decode_str(text).decode_utf8().unwrap().into_owned();
    let pairs = query.split('&').filter_map(|pair| pair.split_once('='));
    pairs.map(|(name, value)| (decoded(name), decoded(value))).collect()
}

fn page(names: &[String], next: Option<&str>) -> HttpAnswer {
    let contents: String = names
        .iter()
        .map(|name| format!("<Contents><Key>{name}</Key><Size>7</Size></Contents>"))
        .collect();
    let next = next.map_or_else(String::new, |next| {
        format!(
            "<IsTruncated>true</IsTruncated><NextContinuationToken>{next}</NextContinuationToken>"
        )
    });
    answer(200, &[], &format!("<ListBucketResult>{contents}{next}</ListBucketResult>"))
}

fn error(status: u16, code: &str) -> HttpAnswer {
    let body = format!("<?xml version=\"1.0\"?><Error><Code>{code}</Code></Error>");
    answer(status, &[("Content-Type", "application/xml")], &body)
}

/// Amazon S3 API reference, ListObjectsV2, "Sample Response ... using the prefix and delimiter".
#[test]
fn the_published_listing_is_read() {
    let body = r#"<ListBucketResult xmlns="http://s3.amazonaws.com/doc/2006-03-01/">
  <Name>example-bucket</Name>
  <Prefix></Prefix>
  <KeyCount>2</KeyCount>
  <MaxKeys>1000</MaxKeys>
  <Delimiter>/</Delimiter>
  <IsTruncated>false</IsTruncated>
  <Contents>
    <Key>sample.jpg</Key>
    <LastModified>2011-02-26T01:56:20.000Z</LastModified>
    <ETag>"bf1d737a4d46a19f3bced6905cc8b902"</ETag>
    <Size>142863</Size>
    <StorageClass>STANDARD</StorageClass>
  </Contents>
  <CommonPrefixes>
    <Prefix>photos/</Prefix>
  </CommonPrefixes>
</ListBucketResult>"#;
    let mut listing = Listing::default();
    let page = list::read(body.as_bytes(), "", &mut listing).unwrap();
    assert_eq!(page.next, None);
    assert_eq!(listing.files, [file("sample.jpg", 142_863)]);
    assert_eq!(listing.folders, ["photos"]);
}

#[test]
fn a_folder_is_a_prefix_and_a_bucket_stands_in_the_path_or_before_the_host() {
    let (_, request) = begun(&s3(), list(Some(LANE)));
    assert!(request.url.starts_with("https://s3.example.org/cellar?"), "{}", request.url);
    let wanted = [
        ("delimiter", "/".to_owned()),
        ("encoding-type", "url".into()),
        ("list-type", "2".into()),
        ("max-keys", "1000".into()),
        ("prefix", format!("crew/{LANE}/")),
    ];
    let wanted: Vec<_> = wanted.into_iter().map(|(name, value)| (name.into(), value)).collect();
    assert_eq!(query(&request), wanted);
    assert_eq!(header(&request, "x-amz-date"), Some("20261127T110000Z"));

    let settings = S3 { path_style: false, prefix: String::new(), ..s3_settings() };
    let (_, request) = begun(&remote(Carrier::S3(settings)), get());
    assert_eq!(request.url, format!("https://cellar.s3.example.org/{LANE}/{LEAF}"));
    let signed = request.authorization.expose();
    assert!(signed.contains("KEYNAME/20261127/eu-north-1/s3/aws4_request"), "{signed}");
}

#[test]
fn pages_follow_each_other_and_a_page_is_signed_at_its_own_moment() {
    let after = Operation::List { folder: Some(LANE.into()), after: Some("b".into()) };
    let (mut transfer, first) = begun(&s3(), after);
    assert!(query(&first).contains(&("start-after".into(), format!("crew/{LANE}/b"))));
    let key = |name: &str| format!("crew/{LANE}/{name}");
    // One that a server gives though it sorts before.
    let given = [key("a"), key("c"), key("d")];
    let later = Instant { wall_ms: now().wall_ms + 61_000, ..now() };
    match transfer.answered(&page(&given, Some("to+ken/=")), &later) {
        Next::Send(request) => {
            let token = ("continuation-token".into(), "to+ken/=".into());
            assert!(query(&request).contains(&token), "{}", request.url);
            assert_eq!(header(&request, "x-amz-date"), Some("20261127T110101Z"));
        }
        other => panic!("{other:?}"),
    }
    match transfer.answered(&page(&[key("e")], None), &later) {
        Next::Done(Done::Listed(listing)) => {
            assert_eq!(listing.files, [file("c", 7), file("d", 7), file("e", 7)]);
            assert!(listing.whole);
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_listing_ends_at_its_limit_and_a_circle_is_noticed() {
    let (mut transfer, _) = begun(&s3(), list(None));
    let mut pages = 0;
    let listing = loop {
        let names: Vec<String> =
            (0..1_000).map(|name| format!("crew/{:06}", pages * 1_000 + name)).collect();
        pages += 1;
        match transfer.answered(&page(&names, Some(&format!("t{pages}"))), &now()) {
            Next::Send(_) => {}
            Next::Done(Done::Listed(listing)) => break listing,
            other => panic!("{other:?}"),
        }
    };
    assert_eq!((pages, listing.files.len(), listing.whole), (100, MAX_NAMES, false));

    // Pages with nothing in them, without end.
    let (mut transfer, _) = begun(&s3(), list(None));
    let mut pages = 0;
    while let Next::Send(_) = transfer.answered(&page(&[], Some(&format!("t{pages}"))), &now()) {
        pages += 1;
        assert!(pages <= MAX_PAGES);
    }
    let (mut transfer, _) = begun(&s3(), list(None));
    assert!(matches!(transfer.answered(&page(&[], Some("t")), &now()), Next::Send(_)));
    let circle = transfer.answered(&page(&[], Some("t")), &now());
    assert!(matches!(circle, Next::Fault(WebFault::NotThisKind { .. })));
}

#[test]
fn only_what_lies_one_level_below_is_given_out() {
    let keys = [
        "crew/",
        "crew/a.leaf",
        "crew/%C3%BC+b",
        "crew/a%2Fb",
        "crew/%2E%2E",
        "crew/a%5Cb",
        "crew/a%00",
        "crew/%ff",
        "other/x",
        "crew",
    ];
    let contents: String =
        keys.iter().map(|key| format!("<Contents><Key>{key}</Key></Contents>")).collect();
    let folders = ["crew/lane/", "crew//", "crew/../", "other/lane/", "crew/lane"];
    let folders: String = folders
        .iter()
        .map(|folder| format!("<CommonPrefixes><Prefix>{folder}</Prefix></CommonPrefixes>"))
        .collect();
    // How keys are written may stand behind them.
    let body = format!(
        "<ListBucketResult>{contents}{folders}<EncodingType>url</EncodingType></ListBucketResult>"
    );
    match answered(&s3(), list(None), &answer(200, &[], &body)) {
        Next::Done(Done::Listed(listing)) => {
            assert_eq!(listing.files, [file("a.leaf", 0), file("ü b", 0)]);
            assert_eq!(listing.folders, ["lane"]);
            assert_eq!(listing.refused, 7 + 4);
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn what_is_no_listing_is_said() {
    let more = "<ListBucketResult><IsTruncated>true</IsTruncated></ListBucketResult>";
    let long = format!(
        "<ListBucketResult><IsTruncated>true</IsTruncated><NextContinuationToken>{}\
         </NextContinuationToken></ListBucketResult>",
        "x".repeat(4_097)
    );
    for body in ["", "{}", "<html></html>", "<multistatus/>", more, &long] {
        let said = fault(&s3(), list(None), &answer(200, &[], body));
        assert!(matches!(said, WebFault::NotThisKind { .. }), "{body}");
    }
    let page = answer(200, &[("content-type", "text/html")], "<html></html>");
    for operation in [list(None), get(), put(), delete()] {
        let said = fault(&s3(), operation, &page);
        assert!(matches!(said, WebFault::NotThisKind { .. }));
    }
    let large = "x".repeat(MAX_LISTING_BYTES as usize + 1);
    let large = fault(&s3(), list(None), &answer(200, &[], &large));
    assert!(matches!(large, WebFault::TooLarge { .. }));
    let large = "x".repeat(MAX_FILE_BYTES as usize + 1);
    let large = fault(&s3(), get(), &answer(200, &[], &large));
    assert!(matches!(large, WebFault::TooLarge { .. }));
}

fn done(operation: Operation, with: &HttpAnswer) -> Done {
    match answered(&s3(), operation, with) {
        Next::Done(done) => done,
        other => panic!("{with:?}: {other:?}"),
    }
}

#[test]
fn a_file_is_written_if_absent_read_and_deleted() {
    let (_, request) = begun(&s3(), put());
    assert_eq!(request.url, format!("{CARRIER}{LANE}/{LEAF}"));
    assert_eq!(header(&request, "if-none-match"), Some("*"));
    assert!(request.authorization.expose().contains(";if-none-match;"), "signed as well");
    assert_eq!(request.body, b"sealed");
    assert_eq!(done(put(), &answer(200, &[], "")), Done::Written);
    assert_eq!(done(put(), &error(412, "PreconditionFailed")), Done::AlreadyThere);

    assert_eq!(done(get(), &answer(200, &[], "x")), Done::Got { content: b"x".into() });
    assert_eq!(done(get(), &error(404, "NoSuchKey")), Done::Missing);
    assert_eq!(done(get(), &answer(404, &[], "")), Done::Missing);
    assert_eq!(done(delete(), &answer(204, &[], "")), Done::Deleted);
    assert_eq!(done(delete(), &error(404, "NoSuchKey")), Done::Missing);
    // Only a no says that: whoever sends on, or fails, has not looked.
    for status in [307, 500, 503] {
        let said = fault(&s3(), get(), &error(status, "NoSuchKey"));
        assert!(
            matches!(said, WebFault::Moved { .. } | WebFault::Busy { .. }),
            "{status} {said:?}"
        );
    }
}

#[test]
fn a_server_without_conditions_is_asked_without_once() {
    let (mut transfer, _) = begun(&s3(), put());
    match transfer.answered(&error(501, "NotImplemented"), &now()) {
        Next::Send(request) => assert_eq!(header(&request, "if-none-match"), None),
        other => panic!("{other:?}"),
    }
    let again = transfer.answered(&error(501, "NotImplemented"), &now());
    assert!(matches!(again, Next::Fault(WebFault::Busy { status: 501, .. })), "{again:?}");
}

#[test]
fn every_error_has_its_fault() {
    let carrier = || CARRIER.to_owned();
    let wrong = || WebFault::WrongKey { carrier: carrier() };
    let full = || WebFault::Full { carrier: carrier() };
    let read_only = || WebFault::ReadOnly { carrier: carrier() };
    let not_there = || WebFault::NotThere { carrier: carrier() };
    let limit = || WebFault::UploadLimit { carrier: carrier(), bytes: 6 };
    let busy = |status, wait_s| WebFault::Busy { carrier: carrier(), status, wait_s };
    let clock = |ahead_s| WebFault::ClockOff { carrier: carrier(), ahead_s };
    let dated = |status, code: &str, date: &str| {
        let mut with = error(status, code);
        with.headers.push(("Date".into(), date.into()));
        with
    };
    let region =
        "<Error><Code>AuthorizationHeaderMalformed</Code><Region>eu-west-3</Region></Error>";
    let moved =
        "<Error><Code>PermanentRedirect</Code><Endpoint>cellar.s3.eu.example</Endpoint></Error>";
    for (operation, with, wanted) in [
        (list(None), error(403, "InvalidAccessKeyId"), wrong()),
        (list(None), error(403, "SignatureDoesNotMatch"), wrong()),
        (list(None), error(404, "XAdminUserNotFound"), wrong()),
        (get(), error(404, "XAdminUserNotFound"), wrong()),
        (list(None), error(403, "AccessDenied"), wrong()),
        (list(None), answer(403, &[], ""), wrong()),
        (list(None), answer(401, &[], ""), wrong()),
        (
            list(None),
            answer(401, &[("WWW-Authenticate", "Basic realm=\"crew\"")], "<html>"),
            WebFault::NotThisKind { carrier: carrier(), kind: ServerKind::S3 },
        ),
        (put(), error(403, "SignatureDoesNotMatch"), wrong()),
        (put(), error(403, "AccessDenied"), read_only()),
        (delete(), error(403, "AccessDenied"), read_only()),
        (put(), answer(403, &[], ""), read_only()),
        (put(), error(405, "MethodNotAllowed"), read_only()),
        (list(None), error(404, "NoSuchBucket"), not_there()),
        (get(), error(404, "NoSuchBucket"), not_there()),
        (put(), error(404, "NoSuchBucket"), not_there()),
        (list(None), answer(404, &[], ""), not_there()),
        (put(), error(403, "QuotaExceeded"), full()),
        (put(), error(507, "XMinioStorageFull"), full()),
        (put(), answer(507, &[], ""), full()),
        (put(), error(400, "EntityTooLarge"), limit()),
        (put(), answer(413, &[], ""), limit()),
        (list(None), error(503, "SlowDown"), busy(503, None)),
        (list(None), answer(429, &[("Retry-After", "3")], ""), busy(429, Some(3))),
        (put(), error(409, "ConditionalRequestConflict"), busy(409, None)),
        (list(None), error(403, "RequestTimeTooSkewed"), clock(None)),
        (
            list(None),
            dated(403, "RequestTimeTooSkewed", "Sat, 28 Nov 2026 11:00:00 GMT"),
            clock(Some(-86_400)),
        ),
        // Some servers call it a wrong signature: the answer's own date tells.
        (
            put(),
            dated(403, "SignatureDoesNotMatch", "Fri, 27 Nov 2026 10:40:00 GMT"),
            clock(Some(1_200)),
        ),
        (list(None), dated(403, "SignatureDoesNotMatch", "Fri, 27 Nov 2026 10:50:00 GMT"), wrong()),
        (
            list(None),
            answer(400, &[], region),
            WebFault::OtherRegion { carrier: carrier(), region: "eu-west-3".into() },
        ),
        (
            put(),
            answer(301, &[], moved),
            WebFault::Moved { carrier: carrier(), to: "cellar.s3.eu.example".into() },
        ),
        (list(None), answer(418, &[], ""), WebFault::Refused { carrier: carrier(), status: 418 }),
    ] {
        assert_eq!(fault(&s3(), operation, &with), wanted, "{with:?}");
    }
}

#[test]
fn nothing_follows_to_another_place() {
    for status in [301, 302, 303, 307, 308] {
        for place in ["https://s3.example.org/cellar/x", "https://evil.example/?token=x"] {
            for operation in [list(None), get(), put(), delete()] {
                let said = fault(&s3(), operation, &answer(status, &[("Location", place)], ""));
                let to = place.split('?').next().unwrap().to_owned();
                assert_eq!(said, WebFault::Moved { carrier: CARRIER.into(), to });
            }
        }
    }
}

#[test]
fn a_clock_that_cannot_be_signs_nothing() {
    for wall_ms in [i64::MIN, -1, i64::MAX] {
        let never = Instant { wall_ms, ..now() };
        let begun = Transfer::begin(&s3(), get(), &never);
        assert!(matches!(begun.unwrap_err(), WebFault::ClockOff { ahead_s: None, .. }));
    }
}

#[test]
fn the_secret_is_in_no_part_of_a_request() {
    for operation in [list(None), get(), put(), delete()] {
        let (_, request) = begun(&s3(), operation);
        let all = format!("{request:?}{}", request.authorization.expose());
        assert!(!all.contains(PASSWORD));
        let settings = S3 { secret: Secret::new("another"), ..s3_settings() };
        let (_, other) = begun(&remote(Carrier::S3(settings)), list(None));
        assert_ne!(request.authorization.expose(), other.authorization.expose());
    }
}

proptest! {
    #[test]
    fn no_body_makes_the_reader_panic(body: Vec<u8>, status: u16) {
        let mut listing = Listing::default();
        let _ = list::read(&body, "crew/", &mut listing);
        let _ = code::read(&body);
        for operation in [list(None), get(), put(), delete()] {
            let with = HttpAnswer { status, headers: Vec::new(), body: body.clone() };
            let _ = answered(&s3(), operation, &with);
        }
    }

    #[test]
    fn no_key_gives_out_a_name_that_leads_elsewhere(
        keys in prop::collection::vec("(crew/|)[a-c./%2eEfF5cC0+\\\\]{0,12}/?", 0..8),
        is_encoded: bool,
    ) {
        let each: String = keys
            .iter()
            .map(|key| format!(
                "<Contents><Key>{key}</Key></Contents><CommonPrefixes><Prefix>{key}</Prefix></CommonPrefixes>"
            ))
            .collect();
        let encoding = if is_encoded { "<EncodingType>url</EncodingType>" } else { "" };
        let body = format!("<ListBucketResult>{encoding}{each}</ListBucketResult>");
        let mut listing = Listing::default();
        list::read(body.as_bytes(), "crew/", &mut listing).unwrap();
        let names = listing.folders.iter().chain(listing.files.iter().map(|file| &file.name));
        for name in names {
            prop_assert!(!name.is_empty() && name != "." && name != "..");
            prop_assert!(!name.contains(['/', '\\', '\0']), "{name}");
        }
    }
}
