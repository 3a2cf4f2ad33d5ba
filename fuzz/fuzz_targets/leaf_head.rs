//! The look at a file's head, before the sealing library sees it: what it lets pass is small, and the library reads it too.

#![no_main]

use age::Decryptor;
use holdfast_core::fuzz::scan;
use holdfast_fuzz::{laws, within};
use libfuzzer_sys::fuzz_target;

/// The longest head.
const MAX_HEAD: usize = 4 * 1024;

fuzz_target!(|file: &[u8]| {
    let scanned = within(1024, || scan(file));
    // It decides by the head alone.
    assert_eq!(scan(&file[..file.len().min(MAX_HEAD)]), scanned);
    if let Err(fault) = scanned {
        return laws::said(fault);
    }
    let end = file.windows(5).position(|at| at == b"\n--- ").expect("a head has an end");
    let head = &file[..end + 1 + 4 + 43 + 1];
    assert!(head.len() <= MAX_HEAD && head.ends_with(b"\n"));
    assert_eq!(scan(head), Ok(()), "what follows the head decides nothing");
    let text = std::str::from_utf8(head).expect("a head is text");
    let stanzas: Vec<&str> = text.lines().filter_map(|line| line.strip_prefix("-> ")).collect();
    let sealed_to = stanzas.iter().filter(|stanza| stanza.starts_with("X25519 ")).count();
    assert!((1..=16).contains(&sealed_to));
    assert!(stanzas.len() - sealed_to <= 1, "more than one stanza that means nothing");
    // A nonce has to follow before the library says that it read a file.
    let whole = [head, &[0; 16][..]].concat();
    let read = within(256 * 1024, || Decryptor::new(&whole[..]).map(drop));
    assert!(read.is_ok(), "the library refuses what was let pass: {:?}", read.err());
});
