//! A file made by hand as age makes one (age-encryption.org/v1), sealed with a share that gives the secret zero whoever
//! it is sealed to: anybody could have sealed it so that everybody opens it.

use chacha20poly1305::aead::{Aead, KeyInit};
use chacha20poly1305::{ChaCha20Poly1305, Nonce};
use data_encoding::BASE64_NOPAD;
use hkdf::Hkdf;
use hmac::{Hmac, Mac};
use sha2::Sha256;
use x25519_dalek::{PublicKey, StaticSecret};

use super::tests::{leaf, somebody};
use super::*;

const FILE_KEY: [u8; 16] = [7; 16];

fn derived(key: &[u8], salt: &[u8], info: &str) -> [u8; 32] {
    let mut out = [0; 32];
    Hkdf::<Sha256>::new(Some(salt), key).expand(info.as_bytes(), &mut out).unwrap();
    out
}

fn sealed(key: [u8; 32], nonce: [u8; 12], bytes: &[u8]) -> Vec<u8> {
    let cipher = ChaCha20Poly1305::new_from_slice(&key).unwrap();
    cipher.encrypt(Nonce::from_slice(&nonce), bytes).unwrap()
}

/// A file for `recipient` with one stanza, of this share and the secret that it is said to give.
fn by_hand(packed: &[u8], recipient: [u8; 32], share: [u8; 32], secret: [u8; 32]) -> Vec<u8> {
    let salt = [share, recipient].concat();
    let wrap = derived(&secret, &salt, "age-encryption.org/v1/X25519");
    let body = BASE64_NOPAD.encode(&sealed(wrap, [0; 12], &FILE_KEY));
    let share = BASE64_NOPAD.encode(&share);
    let head = format!("age-encryption.org/v1\n-> X25519 {share}\n{body}\n---");
    let mut mac =
        <Hmac<Sha256> as Mac>::new_from_slice(&derived(&FILE_KEY, &[], "header")).unwrap();
    mac.update(head.as_bytes());
    let mac = BASE64_NOPAD.encode(&mac.finalize().into_bytes());
    let nonce = [9; 16];
    // One chunk, which is the last.
    let mut of_chunk = [0; 12];
    of_chunk[11] = 1;
    let payload = sealed(derived(&FILE_KEY, &nonce, "payload"), of_chunk, packed);
    [format!("{head} {mac}\n").as_bytes(), &nonce, &payload].concat()
}

#[test]
fn a_share_that_gives_no_secret_opens_nothing() {
    let (coach, ana) = (somebody(1), somebody(2));
    let leaf = leaf(&coach, &ana, &coach, &[1]);
    let packed = pack::pack(&leaf.text(&coach.device));
    let recipient = ana.device.public().open;
    let open = |file: &[u8]| {
        assert_eq!(scan::scan(file), Ok(()));
        SealedLeaf::open(&leaf.name(file), file, &[&ana.device], &ana.expects(&coach))
    };
    let throwaway = StaticSecret::from([5; 32]);
    let secret = throwaway.diffie_hellman(&PublicKey::from(recipient)).to_bytes();
    let share = PublicKey::from(&throwaway).to_bytes();
    assert_eq!(open(&by_hand(&packed, recipient, share, secret)), Ok(leaf.clone()));
    for share in [0, 1].map(|first| {
        let mut share = [0; 32];
        share[0] = first;
        share
    }) {
        let shared = StaticSecret::from(*ana.device.opening()).diffie_hellman(&share.into());
        assert_eq!(shared.to_bytes(), [0; 32]);
        let opened = open(&by_hand(&packed, recipient, share, [0; 32]));
        assert_eq!(opened, Err(SealedFault::Altered), "{share:?}");
    }
}
