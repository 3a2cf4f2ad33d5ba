//! What servers answer, as a text that a fuzzer can alter and a person can read; and what holds of each exchange with them.
//!
//! The first byte says what is done. Answers follow, with a line `%%%%` between them: the status, headers, an empty line, the body.
//! When there are no more, it begins with the first again: a server may say the same for ever.

use holdfast_core::Instant;
use holdfast_core::exchange::web::{
    Done, HttpAnswer, HttpRequest, Listing, MAX_FILE_BYTES, MAX_LISTING_BYTES, MAX_NAMES, Next,
    Operation, Remote, Transfer, is_file_name,
};

use crate::laws;

/// A lane's folder.
pub const LANE: &str = "0123456789abcdef0123456789abcdef-00c0ffee";
/// A leaf in it.
pub const LEAF: &str = "0123456789abcdef0123456789abcdef-00c0ffee-00000001-fedcba9876543210.leaf";
/// What a request shows to its own server alone, and nothing else shows to anybody.
pub const PASSWORD: &str = "Tr0mb0ne-never-shown";

/// 2026-11-27T11:00:00Z.
pub fn now() -> Instant {
    Instant { wall_ms: 1_795_777_200_000, offset_min: 60, boot_ms: 1_000, boot_id: "a".into() }
}

/// What the first byte says is done.
fn operation(byte: u8) -> Operation {
    let (folder, name) = (LANE.to_owned(), LEAF.to_owned());
    match byte {
        b'l' => Operation::List { folder: None, after: None },
        b'a' => Operation::List { folder: None, after: Some("b".into()) },
        b'g' => Operation::Get { folder, name },
        b'p' => Operation::Put { folder, name, content: b"sealed".to_vec(), turn: 3 },
        b'd' => Operation::Delete { folder, name },
        _ => Operation::List { folder: Some(folder), after: None },
    }
}

/// Splits at the first of some bytes.
fn split<'b>(bytes: &'b [u8], at: &[u8]) -> Option<(&'b [u8], &'b [u8])> {
    let place = bytes.windows(at.len()).position(|found| found == at)?;
    Some((&bytes[..place], &bytes[place + at.len()..]))
}

fn answer(text: &[u8]) -> HttpAnswer {
    let (head, body) = split(text, b"\n\n").unwrap_or((text, b""));
    let head = String::from_utf8_lossy(head);
    let mut lines = head.lines();
    let status = lines.next().and_then(|line| line.trim().parse().ok()).unwrap_or(200);
    let headers = lines.filter_map(|line| line.split_once(':'));
    let headers = headers.map(|(name, value)| (name.to_owned(), value.to_owned())).collect();
    HttpAnswer { status, headers, body: body.to_vec() }
}

fn answers(mut text: &[u8]) -> Vec<HttpAnswer> {
    let mut answers = Vec::new();
    while let Some((one, rest)) = split(text, b"\n%%%%\n") {
        answers.push(answer(one));
        text = rest;
    }
    answers.push(answer(text));
    answers
}

/// Plays an operation against a server that says what `data` has it say. `origin` is where every request goes, and after at most
/// `most` requests it has come to an end.
///
/// # Panics
/// Where something of that does not hold.
pub fn play(remote: &Remote, origin: &str, most: usize, data: &[u8]) -> Option<Listing> {
    let (first, rest) = data.split_first()?;
    let operation = operation(*first);
    let (mut transfer, mut request) = Transfer::begin(remote, operation.clone(), &now()).ok()?;
    let answers = answers(rest);
    for turn in 0.. {
        assert!(turn < most, "no end after {most} requests");
        asked(&request, origin, &operation);
        let answer = &answers[turn % answers.len()];
        match transfer.answered(answer, &now()) {
            Next::Send(next) => request = next,
            Next::Fault(fault) => {
                assert!(!format!("{fault} {fault:?}").contains(PASSWORD));
                laws::said(fault);
                return None;
            }
            Next::Done(done) => return ended(done, answer, &operation),
        }
    }
    None
}

/// A request goes to the carrier's own server, and nothing that another server said is in it but a place there.
fn asked(request: &HttpRequest, origin: &str, operation: &Operation) {
    let at = request.url.strip_prefix(origin);
    assert!(at.is_some_and(|path| path.starts_with('/')), "asks {}", request.url);
    assert!(request.url.bytes().all(|byte| byte.is_ascii_graphic()), "{:?}", request.url);
    assert!(request.largest <= MAX_LISTING_BYTES);
    for (name, value) in &request.headers {
        assert!(!name.contains(char::is_control) && !value.contains(char::is_control));
        assert!(!value.contains(PASSWORD));
    }
    assert!(!request.url.contains(PASSWORD));
    assert!(!request.authorization.expose().contains(char::is_control));
    let content = matches!(operation, Operation::Put { content, .. } if *content == request.body);
    let asks = request.body.is_empty() || request.body.starts_with(b"<?xml");
    assert!(content || asks, "a body that nobody meant");
}

fn ended(done: Done, answer: &HttpAnswer, operation: &Operation) -> Option<Listing> {
    match (done, operation) {
        (Done::Listed(listing), Operation::List { after, .. }) => {
            listed(&listing, after.as_deref());
            return Some(listing);
        }
        (Done::Got { content }, Operation::Get { .. }) => {
            assert_eq!(content, answer.body, "what came is what is given out");
            assert!(content.len() as u64 <= MAX_FILE_BYTES);
            no_page(answer);
        }
        (Done::Written, Operation::Put { .. }) | (Done::Deleted, Operation::Delete { .. }) => {
            assert!((200..300).contains(&answer.status), "done, says {}", answer.status);
            no_page(answer);
        }
        (Done::Missing, Operation::Get { .. } | Operation::Delete { .. }) => {
            assert!(answer.status >= 400, "missing, says {}", answer.status);
        }
        (Done::AlreadyThere, Operation::Put { .. }) => {}
        (done, operation) => panic!("{done:?} is no end of {operation:?}"),
    }
    None
}

/// A network's sign-in page is taken for no success.
fn no_page(answer: &HttpAnswer) {
    let is_kind = |(name, _): &&(String, String)| name.eq_ignore_ascii_case("content-type");
    let kind = answer.headers.iter().find(is_kind).map_or("", |(_, value)| value.trim());
    let is_page = kind.to_ascii_lowercase().starts_with("text/html");
    assert!(!(answer.status == 200 && is_page), "a page is taken for a success");
}

/// Names lie directly in the folder that was asked for, sorted, each once, none before where it was to begin.
fn listed(listing: &Listing, after: Option<&str>) {
    let files: Vec<&str> = listing.files.iter().map(|file| file.name.as_str()).collect();
    let folders: Vec<&str> = listing.folders.iter().map(String::as_str).collect();
    for names in [&files, &folders] {
        assert!(names.windows(2).all(|two| two[0] < two[1]), "sorted, each once: {names:?}");
        for name in names {
            let leads_away = |letter: char| letter == '/' || letter == '\\' || letter.is_control();
            assert!(
                !name.is_empty() && *name != "." && *name != ".." && !name.contains(leads_away)
            );
            assert!(after.is_none_or(|after| *name > after));
            // What becomes a path is narrower still.
            assert!(!is_file_name(name) || name.bytes().all(|byte| byte.is_ascii_graphic()));
        }
    }
    assert!(files.len() + folders.len() <= MAX_NAMES);
}
