//! What somebody sees of a leaf who cannot open it.

use super::tests::{audience, crew, leaf, somebody};
use super::*;
use crate::trust::tests::device;

/// A carrier sees of a thread neither who is in it nor how many: eight keys, or sixteen, and sizes in steps.
#[test]
fn the_envelope_says_nothing_of_who_is_inside() {
    let (coach, ana) = (somebody(1), somebody(2));
    let keys = |numbers: std::ops::Range<u8>| {
        numbers.map(|number| device(number).public().open).collect::<Vec<_>>()
    };
    let stanzas = |file: &[u8]| String::from_utf8_lossy(file).matches("-> X25519 ").count();
    let leaf = leaf(&ana, &ana, &coach, &[1]);
    let mut sizes = Vec::new();
    for (founder, member, wanted) in [(1, 1, 8), (3, 4, 8), (6, 2, 8), (7, 2, 16), (8, 8, 16)] {
        let audience = Audience {
            founder: keys(1..1 + founder),
            member: keys(100..100 + member),
            papers: Vec::new(),
        };
        let file = leaf.seal(&ana.device, &audience).unwrap();
        assert_eq!(stanzas(&file), wanted, "{founder} {member}");
        let body = file.len() - file.windows(4).position(|at| at == b"--- ").unwrap();
        sizes.push(body);
    }
    assert!(sizes.iter().all(|size| *size == sizes[0]), "{sizes:?}");
    for (founder, member) in [(0, 0), (9, 8)] {
        let audience = Audience {
            founder: keys(1..1 + founder),
            member: keys(100..100 + member),
            papers: Vec::new(),
        };
        let found = usize::from(founder + member);
        assert_eq!(leaf.seal(&ana.device, &audience), Err(SealedFault::TooMany { found }));
    }
    // A coach who trains is both people of the thread.
    let both = audience(&coach, &coach);
    assert_eq!(stanzas(&leaf.seal(&ana.device, &both).unwrap()), 8);
    // Of one device two lanes have tags that only who knows crew and member can tell.
    let tags = [2, 3]
        .map(|number| lane_tag(crew(&coach), somebody(number).id(), coach.certificate.device()));
    assert_ne!(tags[0], tags[1]);
}

#[test]
fn what_is_too_large_is_no_leaf() {
    let (coach, ana) = (somebody(1), somebody(2));
    let name = SealedName {
        device: ana.certificate.device(),
        tag: "00000000".parse().unwrap(),
        sequence: 1,
        hash: "0".repeat(16).parse().unwrap(),
    };
    let large = vec![0; MAX_SEALED_BYTES + 1];
    let bytes = large.len() as u64;
    let opened = SealedLeaf::open(&name, &large, &[&ana.device], &ana.expects(&coach));
    assert_eq!(opened, Err(SealedFault::TooLarge { bytes }));
}
