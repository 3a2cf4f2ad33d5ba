//! What somebody says of devices that are not theirs, and of what this device wrote.

use holdfast_core::exchange::sealed::{Follows, LaneHead, SealedLeaf};
use holdfast_core::trust::{Certificate, Message, Recovery, Reply};
use holdfast_core::{Field, HoldfastError, PairDid, PairStep};
use holdfast_tests::train::squats;
use holdfast_tests::{Crew, Device, SMALL_PLAN, Writer};

/// Ana and Ben, who have trained; everybody has everything that is for them.
fn crew() -> Crew {
    let crew = Crew::start(SMALL_PLAN, &["Ana", "Ben"]).unwrap();
    for athlete in &crew.athletes {
        squats(athlete, "2026-11-03", &[(50, 8)]);
    }
    crew.exchange_all().unwrap();
    crew
}

/// What the coach's board says has not arrived, or contradicts itself.
fn arrivals(coach: &Device) -> String {
    coach.holdfast.board("2026-11-06".parse().unwrap()).unwrap().arrivals.join("\n")
}

/// The keys of the coach's and Ana's devices, and her last leaf.
fn last_of(crew: &Crew) -> (Writer, Writer, SealedLeaf) {
    let [maren, ana] = [&crew.coach, &crew.athletes[0]].map(Writer::at);
    let mut leaves: Vec<SealedLeaf> = crew
        .carrier
        .leaves_of(&crew.athletes[0])
        .iter()
        .map(|file| ana.opens(&maren, file))
        .collect();
    leaves.sort_by_key(|leaf| leaf.header.sequence);
    (maren, ana, leaves.pop().unwrap())
}

/// She writes a leaf by hand, and the coach gets it: how many were taken in.
fn brings(crew: &Crew, follows: Follows, seen: Vec<LaneHead>) -> u32 {
    let (maren, ana, last) = last_of(crew);
    let entries = vec![last.entries.last().unwrap().clone()];
    let of = (maren.crew(), ana.person());
    let leaf = SealedLeaf::write(ana.certificate, of, follows, seen, entries);
    crew.coach.take_in(&[ana.seals(&leaf, &[&maren])]).unwrap().leaves
}

fn writes(crew: &Crew, follows: Follows, seen: Vec<LaneHead>) {
    assert_eq!(brings(crew, follows, seen), 1);
}

fn next(last: &SealedLeaf) -> Follows {
    Follows { sequence: last.header.sequence, content: last.content }
}

/// Nobody has seen anything of a third person's devices.
#[test]
fn what_is_claimed_of_a_third_persons_device_means_nothing() {
    let crew = crew();
    let ben = Writer::at(&crew.athletes[1]).device();
    let (_, ana, last) = last_of(&crew);
    writes(&crew, next(&last), vec![LaneHead::new(ben, 50, &[7; 32])]);
    assert_eq!(arrivals(&crew.coach), "");
    // Of one that nobody has heard of here it may be true: it may be hers.
    let tablet = ana.another(9).device();
    let (_, _, last) = last_of(&crew);
    let before = LaneHead::new(tablet, 2, &[7; 32]);
    writes(&crew, Follows { content: [0; 32], ..next(&last) }, vec![before]);
    let said = arrivals(&crew.coach);
    assert!(said.contains("2 files from an unknown device have not arrived"), "{said}");
}

/// A claim above what this device wrote says that it goes on from a backup: that is told, with whose device says so, and
/// nothing of it is missing from others.
#[test]
fn what_others_saw_of_this_device_and_it_does_not_know_is_told() {
    let crew = crew();
    let (maren, _, last) = last_of(&crew);
    writes(&crew, next(&last), vec![LaneHead::new(maren.device(), 19, &[7; 32])]);
    let said = arrivals(&crew.coach);
    assert!(said.contains("Ana's device has seen file 19 of this device"), "{said}");
    assert!(said.contains("restored from a backup") && !said.contains("not arrived"), "{said}");
    // What it writes next follows what it knows.
    crew.coach.publish(&format!("{SMALL_PLAN}\n# again\n")).unwrap();
    crew.exchange_all().unwrap();
    let sequences: Vec<u64> = crew
        .carrier
        .leaves_of(&crew.coach)
        .iter()
        .map(|file| maren.opens(&maren, file).header.sequence)
        .collect();
    assert!(sequences.iter().all(|sequence| *sequence < 19), "{sequences:?}");
}

/// A liar may claim any number.
#[test]
fn a_claim_of_millions_is_named_in_part() {
    let crew = crew();
    let (_, ana, last) = last_of(&crew);
    // One's own lane is no claim: a header that names it is refused.
    let of_own = LaneHead::new(ana.device(), 90_000_000, &[7; 32]);
    assert_eq!(brings(&crew, next(&last), vec![of_own]), 0);
    let stranger = Writer::of(77).device();
    writes(&crew, next(&last), vec![LaneHead::new(stranger, 90_000_000, &[7; 32])]);
    let said = arrivals(&crew.coach);
    assert!(said.starts_with("100 files from an unknown device have not arrived"), "{said}");
}

/// A leaf that does not follow what is there before it: the device was copied, or somebody has its keys.
#[test]
fn a_leaf_that_does_not_follow_is_two_histories() {
    let crew = crew();
    let (_, _, last) = last_of(&crew);
    assert_eq!(arrivals(&crew.coach), "");
    let other = Follows { content: [9; 32], ..next(&last) };
    writes(&crew, other, Vec::new());
    let said = arrivals(&crew.coach);
    assert!(said.contains("Ana's device has two histories"), "{said}");
    let trouble = crew.coach.holdfast.verify().unwrap().trouble.join("\n");
    assert!(trouble.contains("does not follow"), "{trouble}");
}

/// Anybody who has read a leaf knows the public keys of its device, and can certify them. Nobody gets a device by that:
/// not the coach's, and not a member's.
#[test]
fn nobody_pairs_with_a_device_that_is_somebody_elses() {
    let crew = crew();
    let states = || {
        let all = crew.athletes.iter().chain([&crew.coach]);
        all.map(|device| device.holdfast.state_text().unwrap()).collect::<Vec<_>>()
    };
    let before = states();
    for (chance, device) in (1..).zip(crew.athletes.iter().chain([&crew.coach])) {
        let keys = Writer::at(device).certificate.device_keys();
        let somebody = Recovery::new([chance; 16]).keys();
        let certificate = Certificate::sign(&somebody, &keys, 1);
        crew.coach.pair(PairDid::Invite { chance: vec![chance; 32] }).unwrap();
        let reply = Reply { certificate, nonce: [chance; 16], name: "Eva".into() };
        let scan = PairDid::Scan { text: reply.text(), chance: Vec::new() };
        match crew.coach.pair(scan) {
            Err(HoldfastError::Invalid { field: Field::Pairing, reason }) => {
                assert!(reason.contains("somebody else's"), "{reason}");
            }
            other => panic!("{other:?}"),
        }
        assert_eq!(crew.coach.pair(PairDid::Look).unwrap().step, PairStep::Shows);
    }
    assert_eq!(states(), before);
}
