//! Keys for the tests of this room, and those that are none.

use super::*;

/// The keys of a person, one for each number.
pub(crate) fn person(number: u8) -> Keys {
    Recovery::new([number; 16]).keys()
}

/// The keys of a device, one for each number.
pub(crate) fn device(number: u8) -> Keys {
    Keys::new(&[number; 32], &[number ^ 0x80; 32])
}

/// Types that cannot be printed. Of one that can there are two `meant`, and which is called is not said: it does not
/// compile.
macro_rules! never_printed {
    ($($kind:ty),+) => {
        const _: fn() = || {
            trait Printed<Way> {
                fn meant() {}
            }
            struct AsItIs;
            impl<T: ?Sized> Printed<()> for T {}
            impl<T: ?Sized + std::fmt::Debug> Printed<AsItIs> for T {}
            $(<$kind as Printed<_>>::meant();)+
        };
    };
}
pub(crate) use never_printed;

never_printed!(Keys, Recovery, Kept);

/// True where a text shows bytes as `Debug` lists them, on one line or on many, or as digits or base64.
pub(crate) fn shows(text: &str, secret: &[u8]) -> bool {
    let dense: String = text.chars().filter(|sign| !sign.is_whitespace()).collect();
    let listed: Vec<String> = secret[..8].iter().map(u8::to_string).collect();
    let digits = data_encoding::HEXLOWER.encode(&secret[..8]);
    let signs = data_encoding::BASE64_NOPAD.encode(&secret[..9]);
    dense.contains(&listed.join(","))
        || dense.to_lowercase().contains(&digits)
        || dense.contains(&signs)
}

/// The points of order 1, 2, 4 and 8 in their usual encodings, from the curve's paper (Bernstein et al., "High-speed
/// high-security signatures", 2012) by calculation: y = 1, -1, 0 twice, and both y of order 8 with both signs.
pub(crate) fn small_order() -> Vec<[u8; 32]> {
    use ed25519_dalek::VerifyingKey;
    let of = |text: &str| {
        let bytes = data_encoding::HEXLOWER.decode(text.as_bytes()).unwrap();
        <[u8; 32]>::try_from(bytes).unwrap()
    };
    let keys = [
        "0100000000000000000000000000000000000000000000000000000000000000",
        "ecffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff7f",
        "0000000000000000000000000000000000000000000000000000000000000000",
        "0000000000000000000000000000000000000000000000000000000000000080",
        "26e8958fc2b227b045c3f489f2ef98f0d5dfac05d3c63339b13802886d53fc05",
        "26e8958fc2b227b045c3f489f2ef98f0d5dfac05d3c63339b13802886d53fc85",
        "c7176a703d4dd84fba3c0b760d10670f2a2053fa2c39ccc64ec7fd7792ac037a",
        "c7176a703d4dd84fba3c0b760d10670f2a2053fa2c39ccc64ec7fd7792ac03fa",
    ]
    .map(of);
    for key in &keys {
        assert!(VerifyingKey::from_bytes(key).unwrap().is_weak());
    }
    keys.to_vec()
}

/// Second encodings of good points: y + p for each small y for which that fits in 255 bits, y = 3 to 18, as far as a
/// point has it. They read as keys that are not weak.
pub(crate) fn with_second_encoding() -> Vec<[u8; 32]> {
    use ed25519_dalek::VerifyingKey;
    let encoded = |y: u8, sign: u8| {
        let mut key = [0xff; 32];
        (key[0], key[31]) = (0xed + y, 0x7f | sign);
        key
    };
    let all = (2..=18).flat_map(|y| [encoded(y, 0), encoded(y, 0x80)]);
    let good = |key: &[u8; 32]| VerifyingKey::from_bytes(key).is_ok_and(|key| !key.is_weak());
    let found: Vec<[u8; 32]> = all.filter(good).collect();
    assert!(found.len() >= 8, "{}", found.len());
    found
}

#[test]
fn keys_that_are_none_are_refused() {
    for key in small_order().iter().chain(&with_second_encoding()) {
        assert!(!keys::is_signing_key(key), "{key:?}");
    }
    for public in (1..100).map(|number| device(number).public()) {
        assert!(keys::is_signing_key(&public.sign));
        assert!(keys::is_opening_key(&public.open));
        // The highest bit means nothing to the curve, and is another encoding.
        let mut other = public.open;
        other[31] |= 0x80;
        assert!(!keys::is_opening_key(&other));
    }
}

/// RFC 8032, section 7.1, test 2 (TEST 1 signs nothing): the public key of a seed.
#[test]
fn a_key_is_the_standards() {
    let of = |text: &str| -> [u8; 32] {
        data_encoding::HEXLOWER.decode(text.as_bytes()).unwrap().try_into().unwrap()
    };
    let seed = of("4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb");
    // RFC 7748, section 6.1: Alice's private and public key.
    let alice = of("77076d0a7318a57d3c16c17251b26645df4c2f87ebc0992ab177fba51db92c2a");
    let keys = Keys::new(&seed, &alice);
    let public = keys.public();
    assert_eq!(public.sign, of("3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c"));
    assert_eq!(public.open, of("8520f0098930a754748b7ddcb43ef75a0dbf3a0d26381af4eba4a98eaa9b4e6a"));
}

/// A signature under one label is none under another, nor for other bytes, nor with an altered half.
#[test]
fn a_signature_is_for_its_label_and_bytes_alone() {
    let keys = device(1);
    let key = keys.public().sign;
    let signature = keys.sign(&label::LEAF, &[b"one", b"two"]);
    assert!(is_signed(&key, &label::LEAF, &[b"onetwo"], &signature));
    assert!(!is_signed(&key, &label::STOP, &[b"onetwo"], &signature));
    assert!(!is_signed(&key, &label::LEAF, &[b"onetwO"], &signature));
    assert!(!is_signed(&device(2).public().sign, &label::LEAF, &[b"onetwo"], &signature));
    // S + L, which the curve's equation holds for as well: L is 2^252 + 27742317777372353535851937790883648493.
    let order = "edd3f55c1a631258d69cf7a2def9de1400000000000000000000000000000010";
    let order = data_encoding::HEXLOWER.decode(order.as_bytes()).unwrap();
    let mut larger = signature;
    let mut carry = 0_u16;
    for (byte, more) in larger[32..].iter_mut().zip(order) {
        carry += u16::from(*byte) + u16::from(more);
        *byte = carry as u8;
        carry >>= 8;
    }
    assert_eq!(carry, 0);
    assert!(!is_signed(&key, &label::LEAF, &[b"onetwo"], &larger));
    // A point R of small order.
    for point in small_order() {
        let mut weak = signature;
        weak[..32].copy_from_slice(&point);
        assert!(!is_signed(&key, &label::LEAF, &[b"onetwo"], &weak));
    }
}

/// A signature whose R is the neutral point: the equation holds, for the signer chose S to be k times their secret, and
/// only a strict check refuses it. Two readers of which one is strict would not agree on which leaves there are.
#[test]
fn a_signature_with_a_point_of_small_order_is_none() {
    use curve25519_dalek::Scalar;
    use ed25519_dalek::{Signature, Verifier, VerifyingKey};
    use sha2::{Digest, Sha512};
    let seed = [1; 32];
    let key = device(1).public().sign;
    let mut secret: [u8; 32] = Sha512::digest(seed)[..32].try_into().unwrap();
    (secret[0], secret[31]) = (secret[0] & 248, (secret[31] & 63) | 64);
    let secret = Scalar::from_bytes_mod_order(secret);
    let mut neutral = [0; 32];
    neutral[0] = 1;
    let text = label::under(&label::LEAF, &[b"one"]);
    let hashed = Sha512::new().chain_update(neutral).chain_update(key).chain_update(&text);
    let k = Scalar::from_bytes_mod_order_wide(&hashed.finalize().into());
    let mut signature = [0; SIGNATURE_BYTES];
    signature[..32].copy_from_slice(&neutral);
    signature[32..].copy_from_slice((k * secret).as_bytes());
    let loosely = VerifyingKey::from_bytes(&key).unwrap();
    assert!(
        loosely.verify(&text, &Signature::from_bytes(&signature)).is_ok(),
        "the equation holds"
    );
    assert!(!is_signed(&key, &label::LEAF, &[b"one"], &signature));
}

/// Whose a key is says its hash, and of one key person, device and crew have three ids.
#[test]
fn ids_are_apart() {
    let key = device(1).public().sign;
    let ids = [person_of(&key).0, device_of(&key).0, crew_of(&key).0];
    assert!(ids[0] != ids[1] && ids[1] != ids[2] && ids[0] != ids[2]);
    for id in ids {
        assert_eq!(id.get_version_num(), 8);
        assert_eq!(id.get_variant(), uuid::Variant::RFC4122);
    }
}
