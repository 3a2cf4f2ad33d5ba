//! What an S3-compatible server answers: pages of listings, and errors with a code.

#![no_main]

use std::fmt::Write;
use std::sync::LazyLock;

use holdfast_core::exchange::web::{Carrier, Listing, Remote, S3, Secret};
use holdfast_fuzz::answers::{PASSWORD, play};
use holdfast_fuzz::within;
use libfuzzer_sys::fuzz_target;
use percent_encoding::{NON_ALPHANUMERIC, utf8_percent_encode};

const ORIGIN: &str = "https://s3.example.org";
/// The most pages of a listing, and the request after them.
const MOST_REQUESTS: usize = 201;

static REMOTE: LazyLock<Remote> = LazyLock::new(|| {
    let carrier = Carrier::S3(S3 {
        endpoint: ORIGIN.into(),
        region: "eu-north-1".into(),
        bucket: "cellar".into(),
        prefix: "crew".into(),
        key_id: "KEYNAME".into(),
        secret: Secret::new(PASSWORD),
        path_style: true,
        unencrypted: false,
    });
    carrier.remote().ok().flatten().expect("a carrier")
});

/// The listing as a server writes it that encodes all it can.
fn written(listing: &Listing) -> Vec<u8> {
    let encoded = |name: &str| utf8_percent_encode(name, NON_ALPHANUMERIC).to_string();
    let mut text = String::from("l200\n\n<ListBucketResult><EncodingType>url</EncodingType>");
    for name in &listing.folders {
        let name = encoded(name);
        let _ = write!(text, "<CommonPrefixes><Prefix>crew/{name}/</Prefix></CommonPrefixes>");
    }
    for file in &listing.files {
        let (name, bytes) = (encoded(&file.name), file.bytes);
        let _ = write!(text, "<Contents><Key>crew/{name}</Key><Size>{bytes}</Size></Contents>");
    }
    (text + "</ListBucketResult>").into_bytes()
}

fuzz_target!(|data: &[u8]| {
    // Every page may be kept until the last has come.
    let most = MOST_REQUESTS * 64 * data.len() + 64 * 1024;
    let Some(listing) = within(most, || play(&REMOTE, ORIGIN, MOST_REQUESTS, data)) else { return };
    let again = play(&REMOTE, ORIGIN, MOST_REQUESTS, &written(&listing)).expect("a listing");
    let wanted = Listing { refused: 0, whole: true, ..listing };
    assert_eq!(again, wanted, "a listing reads as it is written");
});
