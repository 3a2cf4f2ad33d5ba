//! What a carrier sees of a coach's leaves says nothing of which member they are for.

use std::collections::BTreeSet;

use super::tests::{Somebody, audience, crew, entry, somebody};
use super::*;
use crate::id::DeviceId;

/// The first bytes of a file up to the end of age's head, and how many keys it is sealed to.
fn head(file: &[u8]) -> (usize, usize) {
    let end = file.windows(5).position(|five| five == b"\n--- ").unwrap();
    let text = String::from_utf8_lossy(&file[..end]);
    (text.matches("-> X25519 ").count(), text.matches("-> ").count())
}

/// A leaf of the coach's in a member's thread, whose people have this many devices.
fn of_thread(coach: &Somebody, member: &Somebody, devices: u8, words: usize) -> Vec<u8> {
    let follows = Follows::nothing(crew(coach), member.id(), &coach.certificate);
    let device = coach.certificate.device();
    let entries = (1..=words as u64).map(|number| entry(device, number)).collect();
    let thread = (crew(coach), member.id());
    let leaf = SealedLeaf::write(coach.certificate, thread, follows, Vec::new(), entries);
    let mut audience = audience(coach, member);
    audience.member = (0..devices).map(|more| somebody(100 + more).device.public().open).collect();
    leaf.seal(&coach.device, &audience).unwrap()
}

/// A plan goes to every member in a file of its own: whoever it is for, and however many devices they have, each has as
/// many keys and is as long but for the one stanza of chance that the library adds.
#[test]
fn files_for_different_members_look_alike() {
    let coach = somebody(1);
    let mut seen = BTreeSet::new();
    for number in 0..60 {
        let member = somebody(2 + number % 20);
        let file = of_thread(&coach, &member, 1 + number % 4, 12);
        let (keys, _) = head(&file);
        let end = file.windows(5).position(|five| five == b"\n--- ").unwrap();
        seen.insert((keys, file.len() - end));
    }
    assert_eq!(seen.len(), 1, "{seen:?}");
    assert_eq!(seen.first().unwrap().0, 8);
    // Small ones are as long as each other, whatever is in them.
    let member = somebody(2);
    let long = |words| {
        let file = of_thread(&coach, &member, 1, words);
        file.len() - file.windows(5).position(|five| five == b"\n--- ").unwrap()
    };
    assert_eq!(long(1), long(3));
}

/// What lanes are called by tells nobody which two are of one thread, though a member's own and the coach's are: over a
/// thousand pairs each of the 32 bits is alike as often as chance has it.
#[test]
fn no_bit_of_a_lanes_name_tells_its_thread() {
    let coach = somebody(1);
    let crew = crew(&coach);
    let drawn = |pair: u64, what: &[u8]| {
        let hash = first_line::content_hash(&[&pair.to_be_bytes(), what].concat());
        uuid::Uuid::from_slice(&hash[..16]).unwrap()
    };
    const PAIRS: u64 = 1_000;
    let bits = |tag: Tag| u32::from_str_radix(&tag, 16).unwrap();
    let mut alike = [0_u32; 32];
    for pair in 0..PAIRS {
        let of = PersonId(drawn(pair, b"person"));
        let own = lane_tag(crew, of, DeviceId(drawn(pair, b"device")));
        let coachs = lane_tag(crew, of, coach.certificate.device());
        let same = !(bits(own) ^ bits(coachs));
        for (bit, count) in alike.iter_mut().enumerate() {
            *count += same >> bit & 1;
        }
    }
    // Five standard deviations of a thousand tosses of a coin: 79.
    for (bit, count) in alike.iter().enumerate() {
        assert!((421..=579).contains(count), "bit {bit}: {count} of {PAIRS}");
    }
}
