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

/// What anybody can read off a file: where in its head the meaningless stanza stands, how many keys it is sealed to, how
/// long its body is, each bit that its name has of it, and how each stanza begins.
fn seen_of(file: &[u8]) -> Vec<f64> {
    let end = file.windows(5).position(|five| five == b"\n--- ").unwrap();
    let head = String::from_utf8_lossy(&file[..end]);
    let stanzas: Vec<&str> = head.lines().filter_map(|line| line.strip_prefix("-> ")).collect();
    let keys: Vec<&str> = stanzas.iter().filter_map(|line| line.strip_prefix("X25519 ")).collect();
    let grease = stanzas.iter().position(|line| !line.starts_with("X25519 "));
    let mut seen = vec![grease.unwrap() as f64, keys.len() as f64, (file.len() - end) as f64];
    let hash = u64::from_str_radix(&name::stored_hash(file), 16).unwrap();
    seen.extend((0..64).map(|bit| (hash >> bit & 1) as f64));
    // Of files that are sealed to more keys than others the first stanzas alone are held against each other.
    seen.extend(keys.iter().take(8).map(|key| f64::from(key.as_bytes()[0])));
    seen
}

/// Mean, and variance of the mean, of each thing seen of so many files for a member.
fn means(coach: &Somebody, member: &Somebody, devices: u8, files: u32) -> Vec<(f64, f64)> {
    let (mut sums, mut squares) = (vec![0.0; 75], vec![0.0; 75]);
    for _ in 0..files {
        let seen = seen_of(&of_thread(coach, member, devices, 12));
        for ((sum, square), seen) in sums.iter_mut().zip(&mut squares).zip(seen) {
            *sum += seen;
            *square += seen * seen;
        }
    }
    let files = f64::from(files);
    let of = |(sum, square): (f64, f64)| {
        let mean = sum / files;
        (mean, (square / files - mean * mean) / files)
    };
    sums.into_iter().zip(squares).map(of).collect()
}

/// Over a thousand files of a coach's, for a member with one device and for one with four, nothing that a carrier sees
/// is larger on average for one of them. Six deviations: of 75 means one goes beyond by chance once in six million
/// runs.
#[test]
fn nothing_in_a_thousand_files_tells_their_members_apart() {
    let (coach, ana, ben) = (somebody(1), somebody(2), somebody(3));
    let [ana, ben] = [(&ana, 1), (&ben, 4)].map(|(who, devices)| means(&coach, who, devices, 500));
    for (at, (ana, ben)) in ana.iter().zip(&ben).enumerate() {
        let apart = (ana.0 - ben.0).abs();
        assert!(apart <= 6.0 * (ana.1 + ben.1).sqrt(), "{at}: {ana:?} {ben:?}");
    }
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
