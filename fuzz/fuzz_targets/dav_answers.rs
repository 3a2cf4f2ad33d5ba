//! What a WebDAV server answers, to listings above all (RFC 4918, section 9.1).

#![no_main]

use std::fmt::Write;
use std::sync::LazyLock;

use holdfast_core::exchange::web::{Carrier, Listing, Remote, Secret, WebDav};
use holdfast_fuzz::answers::{PASSWORD, play};
use holdfast_fuzz::within;
use libfuzzer_sys::fuzz_target;
use percent_encoding::{NON_ALPHANUMERIC, utf8_percent_encode};

const ORIGIN: &str = "https://files.example.org";
/// A file is written, its folder made, written again, named twice and tidied up; reading follows three redirects.
const MOST_REQUESTS: usize = 8;

static REMOTE: LazyLock<Remote> = LazyLock::new(|| {
    let carrier = Carrier::WebDav(WebDav {
        url: format!("{ORIGIN}/crew"),
        user: "ines".into(),
        password: Secret::new(PASSWORD),
        unencrypted: false,
    });
    carrier.remote().ok().flatten().expect("a carrier")
});

/// The listing as a server writes it that encodes all it can.
fn written(listing: &Listing) -> Vec<u8> {
    let mut text = String::from("l207\n\n<multistatus><response><href>/crew/</href></response>");
    let mut one = |name: &str, prop: &str| {
        let name = utf8_percent_encode(name, NON_ALPHANUMERIC);
        let _ = write!(
            text,
            "<response><href>/crew/{name}</href><propstat><prop>{prop}</prop>\
             <status>HTTP/1.1 200 OK</status></propstat></response>"
        );
    };
    let folder = "<resourcetype><collection/></resourcetype>";
    listing.folders.iter().for_each(|name| one(name, folder));
    for file in &listing.files {
        one(&file.name, &format!("<getcontentlength>{}</getcontentlength>", file.bytes));
    }
    (text + "</multistatus>").into_bytes()
}

fuzz_target!(|data: &[u8]| {
    let most = 128 * data.len() + 64 * 1024;
    let Some(listing) = within(most, || play(&REMOTE, ORIGIN, MOST_REQUESTS, data)) else { return };
    assert!(listing.whole, "so few names are one listing");
    let again = play(&REMOTE, ORIGIN, MOST_REQUESTS, &written(&listing)).expect("a listing");
    let wanted = Listing { refused: 0, whole: true, ..listing };
    assert_eq!(again, wanted, "a listing reads as it is written");
});
