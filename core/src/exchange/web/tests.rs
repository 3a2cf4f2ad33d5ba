//! Checks of what both kinds of server have in common, and what the checks of each begin with.

use super::*;
use crate::instant::Instant;

/// A lane's folder and a leaf in it, as they are named.
pub(super) const LANE: &str = "0123456789abcdef0123456789abcdef-00c0ffee";
pub(super) const LEAF: &str =
    "0123456789abcdef0123456789abcdef-00c0ffee-00000001-fedcba9876543210.leaf";

/// What must never be seen.
pub(super) const PASSWORD: &str = "Tr0mb0ne-never-shown";

/// 2026-11-27T11:00:00Z, a Friday.
pub(super) fn now() -> Instant {
    Instant { wall_ms: 1_795_777_200_000, offset_min: 60, boot_ms: 1_000, boot_id: "a boot".into() }
}

pub(super) fn dav_settings() -> WebDav {
    WebDav {
        url: "https://files.example.org/crew".into(),
        user: "ines".into(),
        password: Secret::new(PASSWORD),
        unencrypted: false,
    }
}

pub(super) fn s3_settings() -> S3 {
    S3 {
        endpoint: "https://s3.example.org".into(),
        region: "eu-north-1".into(),
        bucket: "cellar".into(),
        prefix: "crew".into(),
        key_id: "KEYNAME".into(),
        secret: Secret::new(PASSWORD),
        path_style: true,
        unencrypted: false,
    }
}

pub(super) fn remote(carrier: Carrier) -> Remote {
    carrier.remote().unwrap().expect("not a folder")
}

pub(super) fn dav() -> Remote {
    remote(Carrier::WebDav(dav_settings()))
}

pub(super) fn s3() -> Remote {
    remote(Carrier::S3(s3_settings()))
}

pub(super) fn list(folder: Option<&str>) -> Operation {
    Operation::List { folder: folder.map(str::to_owned), after: None }
}

pub(super) fn get() -> Operation {
    Operation::Get { folder: LANE.into(), name: LEAF.into() }
}

pub(super) fn put() -> Operation {
    Operation::Put { folder: LANE.into(), name: LEAF.into(), content: b"sealed".into(), turn: 3 }
}

pub(super) fn delete() -> Operation {
    Operation::Delete { folder: LANE.into(), name: LEAF.into() }
}

pub(super) fn answer(status: u16, headers: &[(&str, &str)], body: &str) -> HttpAnswer {
    let headers = headers.iter().map(|(name, value)| ((*name).into(), (*value).into())).collect();
    HttpAnswer { status, headers, body: body.into() }
}

pub(super) fn begun(remote: &Remote, operation: Operation) -> (Transfer, HttpRequest) {
    Transfer::begin(remote, operation, &now()).unwrap()
}

/// What comes of one answer.
pub(super) fn answered(remote: &Remote, operation: Operation, with: &HttpAnswer) -> Next {
    begun(remote, operation).0.answered(with, &now())
}

/// The fault that one answer means.
pub(super) fn fault(remote: &Remote, operation: Operation, with: &HttpAnswer) -> WebFault {
    match answered(remote, operation, with) {
        Next::Fault(fault) => fault,
        other => panic!("{with:?}: {other:?}"),
    }
}

pub(super) fn header<'a>(request: &'a HttpRequest, name: &str) -> Option<&'a str> {
    let found = request.headers.iter().find(|(found, _)| found.eq_ignore_ascii_case(name));
    found.map(|(_, value)| value.as_str())
}

/// One of each fault.
fn faults() -> Vec<WebFault> {
    let carrier = || "https://files.example.org/crew/".to_owned();
    let mut faults = vec![
        WebFault::WrongPassword { carrier: carrier() },
        WebFault::WrongKey { carrier: carrier() },
        WebFault::OtherSignIn { carrier: carrier(), ways: "Digest".into() },
        WebFault::NotThere { carrier: carrier() },
        WebFault::ReadOnly { carrier: carrier() },
        WebFault::Full { carrier: carrier() },
        WebFault::UploadLimit { carrier: carrier(), bytes: 65_536 },
        WebFault::Moved { carrier: carrier(), to: "https://new.example.org/".into() },
        WebFault::OtherRegion { carrier: carrier(), region: "eu-west-3".into() },
        WebFault::Busy { carrier: carrier(), status: 503, wait_s: None },
        WebFault::NotThisKind { carrier: carrier(), kind: ServerKind::WebDav },
        WebFault::NotThisKind { carrier: carrier(), kind: ServerKind::S3 },
        WebFault::TooLarge { carrier: carrier(), largest: MAX_LISTING_BYTES },
        WebFault::CannotMove { carrier: carrier() },
        WebFault::Refused { carrier: carrier(), status: 418 },
        WebFault::Interrupted { carrier: carrier() },
        WebFault::Certificate { carrier: carrier(), said: "expired".into() },
    ];
    for ahead_s in [None, Some(30), Some(1_000), Some(-1_000), Some(86_400), Some(-86_400)] {
        faults.push(WebFault::ClockOff { carrier: carrier(), ahead_s });
    }
    for ahead_s in [Some(10 * 86_400), Some(i64::MIN)] {
        faults.push(WebFault::ClockOff { carrier: carrier(), ahead_s });
    }
    faults
}

#[test]
fn every_fault_says_where_and_what_to_do_in_each_language() {
    for language in catalogue::Language::ALL {
        let mut said = Vec::new();
        for fault in faults() {
            let sentence = catalogue::speaking(language, || fault.to_string());
            assert!(sentence.contains("https://files.example.org/crew/"), "{sentence}");
            // What is wrong, and what to do: two sentences at least.
            assert!(sentence.matches(['.', ';']).count() >= 4, "{sentence}");
            assert!(sentence.ends_with('.'), "{sentence}");
            said.push(sentence);
        }
        said.sort();
        said.dedup();
        // The clock is off without a figure twice.
        assert_eq!(said.len(), faults().len() - 1);
    }
}

#[test]
fn a_clock_that_is_off_is_said_by_how_much() {
    let said = |ahead_s| {
        let fault = WebFault::ClockOff { carrier: "H".into(), ahead_s };
        catalogue::speaking(catalogue::Language::En, || fault.to_string())
    };
    for (ahead_s, begins) in [
        (1_200, "This device's clock is 20 minutes ahead of H."),
        (-3_601, "This device's clock is 61 minutes behind H."),
        (86_400, "This device's clock is 24 hours ahead of H."),
        (-3 * 86_400, "This device's clock is 3 days behind H."),
    ] {
        assert!(said(Some(ahead_s)).starts_with(begins), "{}", said(Some(ahead_s)));
    }
}

#[test]
fn only_what_may_pass_is_tried_again_and_only_one_files_fault_lets_the_rest_go_on() {
    let passing: Vec<_> = faults().into_iter().filter(WebFault::passes).collect();
    assert!(matches!(passing[..], [WebFault::Busy { .. }, WebFault::Interrupted { .. }]));
    let small: Vec<_> = faults().into_iter().filter(|fault| !fault.ends_exchange()).collect();
    assert!(matches!(
        small[..],
        [WebFault::UploadLimit { .. }, WebFault::TooLarge { .. }, WebFault::Refused { .. }]
    ));
}

/// All of these hold the password somewhere; none may show it, nor what is made of it.
#[test]
fn no_secret_is_printed() {
    let basic = data_encoding::BASE64.encode(format!("ines:{PASSWORD}").as_bytes());
    let mut printed = String::new();
    for (carrier, remote) in
        [(Carrier::WebDav(dav_settings()), dav()), (Carrier::S3(s3_settings()), s3())]
    {
        printed += &format!("{carrier:?} {carrier:#?} {remote:?} {remote:#?} {remote}");
        for operation in [list(None), get(), put(), delete()] {
            let (mut transfer, request) = begun(&remote, operation);
            assert!(!request.authorization.is_empty());
            printed += &format!("{transfer:?} {request:?} {request:#?}");
            for status in [200, 301, 401, 403, 404, 409, 412, 500] {
                printed += &format!("{:?}", transfer.answered(&answer(status, &[], ""), &now()));
            }
            let signature = request.authorization.expose().rsplit('=').next().unwrap();
            assert!(signature.len() < 64 || !printed.contains(signature));
        }
    }
    let wrong = WebDav { url: format!("https://ines:{PASSWORD}@h/"), ..dav_settings() };
    printed += &format!("{:?}", Carrier::WebDav(wrong).remote().unwrap_err());
    let wrong = WebDav { password: Secret::new(format!("{PASSWORD}\n")), ..dav_settings() };
    printed += &format!("{:?}", Carrier::WebDav(wrong).remote().unwrap_err());
    assert!(!printed.contains(PASSWORD) && !printed.contains(&basic));
    assert!(printed.len() > 10_000);
}

fn dav_fault(change: impl FnOnce(&mut WebDav)) -> Vec<Setting> {
    let mut settings = dav_settings();
    change(&mut settings);
    let faults = Carrier::WebDav(settings).remote().err().unwrap_or_default();
    faults.into_iter().map(|fault| fault.setting).collect()
}

fn s3_fault(change: impl FnOnce(&mut S3)) -> Vec<Setting> {
    let mut settings = s3_settings();
    change(&mut settings);
    let faults = Carrier::S3(settings).remote().err().unwrap_or_default();
    faults.into_iter().map(|fault| fault.setting).collect()
}

#[test]
fn each_part_of_the_settings_is_checked() {
    use Setting::{Bucket, Endpoint, KeyId, Password, Path, Prefix, Region, Url, User};
    let folder = Carrier::Folder { path: " ".into() };
    assert_eq!(folder.remote().unwrap_err()[0].setting, Path);
    assert!(Carrier::Folder { path: "/mnt/stick".into() }.remote().unwrap().is_none());

    assert_eq!(dav_fault(|_| {}), []);
    assert_eq!(dav_fault(|dav| dav.url = "http://files.example.org/".into()), [Url]);
    let unencrypted = |dav: &mut WebDav| {
        dav.url = "http://files.example.org/".into();
        dav.unencrypted = true;
    };
    assert_eq!(dav_fault(unencrypted), []);
    assert_eq!(dav_fault(|dav| dav.url = "http://192.168.178.2/dav".into()), []);
    assert_eq!(dav_fault(|dav| dav.url = "https://ana:pw@h.example/".into()), [Url]);
    for user in ["", "in:es", "in\nes"] {
        assert_eq!(dav_fault(|dav| dav.user = user.into()), [User], "{user}");
    }
    for password in ["", "a\r\nX-Evil: 1"] {
        assert_eq!(dav_fault(|dav| dav.password = Secret::new(password)), [Password]);
    }
    let all = |dav: &mut WebDav| *dav = WebDav::default();
    assert_eq!(dav_fault(all), [Url, User, Password]);

    assert_eq!(s3_fault(|_| {}), []);
    assert_eq!(s3_fault(|s3| s3.endpoint = "s3.example.org".into()), [Endpoint]);
    assert_eq!(s3_fault(|s3| s3.region = "eu north".into()), [Region]);
    for bucket in ["", "ab", "Cellar", "-ab", "a..b", "a/b", &"a".repeat(64)] {
        assert_eq!(s3_fault(|s3| s3.bucket = bucket.into()), [Bucket], "{bucket}");
    }
    for prefix in ["../x", "a b", "a/ü", &"a".repeat(201)] {
        assert_eq!(s3_fault(|s3| s3.prefix = prefix.into()), [Prefix], "{prefix}");
    }
    for prefix in ["", "/crew/", "crew/cellar"] {
        assert_eq!(s3_fault(|s3| s3.prefix = prefix.into()), [], "{prefix}");
    }
    assert_eq!(s3_fault(|s3| s3.key_id = "a/b".into()), [KeyId]);
    assert_eq!(s3_fault(|s3| s3.secret = Secret::default()), [Setting::Secret]);
    let numbered = |s3: &mut S3| {
        s3.endpoint = "http://127.0.0.1:9000".into();
        s3.path_style = false;
    };
    assert_eq!(s3_fault(numbered), [Bucket]);
}

#[test]
fn nothing_but_names_of_ours_becomes_a_path() {
    let long = "a".repeat(97);
    for name in ["", "..", "a/b", "a\\b", "A.leaf", ".hidden", "ü", "a%2fb", "a b", &long] {
        for remote in [dav(), s3()] {
            let get = Operation::Get { folder: LANE.into(), name: name.into() };
            let begun = Transfer::begin(&remote, get, &now());
            assert_eq!(begun.unwrap_err(), WebFault::NoSuchName, "{name}");
            let list = Operation::List { folder: Some(name.into()), after: None };
            assert_eq!(Transfer::begin(&remote, list, &now()).unwrap_err(), WebFault::NoSuchName);
        }
    }
    // What a stop left half-written can be taken away.
    let name = operation::temporary(LEAF, u32::MAX);
    for remote in [dav(), s3()] {
        let delete = Operation::Delete { folder: LANE.into(), name: name.clone() };
        assert!(Transfer::begin(&remote, delete, &now()).is_ok());
    }
}
