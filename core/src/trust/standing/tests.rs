//! Removal, admission and stops, in every order, by those who may and those who may not.

use std::collections::BTreeMap;

use proptest::prelude::*;

use super::*;
use crate::trust::tests::{device, person};
use crate::trust::{device_of, person_of};

/// What a crew's devices hold, built up leaf by leaf.
#[derive(Clone, Default)]
struct World {
    certificates: Vec<Certificate>,
    stops: Vec<Stop>,
    words: Vec<Word>,
    leaves: BTreeMap<Lane, Vec<Link>>,
    stands_in: BTreeMap<WordName, Vec<(Lane, [u8; 32])>>,
}

const COACH: u8 = 1;
const ANA: u8 = 2;
const BEN: u8 = 3;

fn id(of: u8) -> PersonId {
    person_of(&person(of).public().sign)
}

fn phone(number: u8) -> DeviceId {
    device_of(&device(number).public().sign)
}

fn leaf(number: u8, at: u8) -> [u8; 32] {
    let mut content = [number; 32];
    content[0] = at;
    content
}

impl World {
    fn device(&mut self, of: u8, number: u8, index: u8) -> DeviceId {
        let certificate = Certificate::sign(&person(of), &device(number).public(), index);
        self.certificates.push(certificate);
        certificate.device()
    }

    /// So many leaves of a device in a thread, one after the other.
    fn writes(&mut self, number: u8, of: u8, count: u8) -> Lane {
        let lane = Lane { device: phone(number), of: id(of) };
        let link = |at: u8| Link { content: leaf(number, at), previous: leaf(number, at - 1) };
        self.leaves.entry(lane).or_default().extend((1..=count).map(link));
        lane
    }

    fn head(&self, lane: Lane, number: u8, at: u8) -> Head {
        Head { device: lane.device, of: lane.of, sequence: at.into(), content: leaf(number, at) }
    }

    /// Something said by a device in its leaf `at` of a thread.
    fn says(&mut self, number: u8, at: u8, parents: &[&WordName], of: u8, said: Said) -> WordName {
        let name = (phone(number), u64::from(at), i64::from(at));
        let parents = parents.iter().map(|name| (name.0, name.1, Some(name.2))).collect();
        self.words.push(Word { name, parents, person: id(of), said });
        let lane = Lane { device: phone(number), of: id(of) };
        self.stands_in.entry(name).or_default().push((lane, leaf(number, at)));
        name
    }

    fn admits(&mut self, number: u8, at: u8, parents: &[&WordName], of: u8) -> WordName {
        self.says(number, at, parents, of, Said::Admit { keys: person(of).public() })
    }

    fn standing(&self) -> Standing {
        Standing::of(&Facts {
            founder: person(COACH).public(),
            certificates: &self.certificates,
            stops: &self.stops,
            words: &self.words,
            links: &|lane| self.leaves.get(&lane).cloned().unwrap_or_default(),
            stands_in: &|name| self.stands_in.get(name).cloned().unwrap_or_default(),
        })
    }

    fn counting(&self, lane: Lane) -> Vec<u8> {
        let standing = self.standing();
        let links = self.leaves[&lane].iter();
        let counts = links.filter(|link| standing.counts(lane, &link.content) == Counts::Yes);
        counts.map(|link| link.content[0]).collect()
    }
}

/// A coach with laptop 10 and tablet 11; Ana with phone 20, admitted in the laptop's first leaf.
fn crew() -> (World, Lane, WordName) {
    let mut world = World::default();
    world.device(COACH, 10, 1);
    world.device(COACH, 11, 2);
    world.device(ANA, 20, 1);
    world.writes(10, ANA, 5);
    world.writes(11, ANA, 5);
    let ana = world.writes(20, ANA, 5);
    let admitted = world.admits(10, 1, &[], ANA);
    (world, ana, admitted)
}

/// Anybody can certify a device's public keys: whoever has it stays whose it is, the founder's first of all.
#[test]
fn certifying_anothers_device_takes_it_from_nobody() {
    let (mut world, ana, _) = crew();
    world.admits(10, 2, &[], BEN);
    world.device(BEN, 10, 1);
    world.device(BEN, 30, 2);
    let standing = world.standing();
    assert_eq!(standing.devices[&phone(10)].person, id(COACH));
    assert_eq!(standing.devices[&phone(30)].person, id(BEN));
    assert_eq!(world.counting(ana), [1, 2, 3, 4, 5]);
}

#[test]
fn somebody_nobody_took_in_is_set_aside() {
    let (mut world, ana, _) = crew();
    let ben = world.writes(30, BEN, 2);
    assert_eq!(world.standing().counts(ben, &leaf(30, 1)), Counts::Unknown);
    world.device(BEN, 30, 1);
    assert_eq!(world.counting(ben), [0; 0]);
    // A word in the thread of somebody else, or by a member, takes nobody in.
    world.writes(20, BEN, 9);
    world.admits(20, 9, &[], BEN);
    assert_eq!(world.counting(ben), [0; 0]);
    let elsewhere = world.admits(10, 2, &[], BEN);
    world.stands_in.insert(elsewhere, vec![(Lane { device: phone(10), of: id(ANA) }, leaf(10, 2))]);
    assert_eq!(world.counting(ben), [0; 0]);
    world.writes(10, BEN, 3);
    world.admits(10, 3, &[], BEN);
    assert_eq!(world.counting(ben), [1, 2]);
    assert_eq!(world.counting(ana), [1, 2, 3, 4, 5]);
}

/// Nobody gives somebody other keys under an old identity.
#[test]
fn an_admission_with_other_keys_is_none() {
    let (mut world, ..) = crew();
    let ben = world.writes(30, BEN, 1);
    world.device(BEN, 30, 1);
    world.writes(10, BEN, 1);
    let forged = Said::Admit { keys: person(9).public() };
    world.says(10, 1, &[], BEN, forged);
    assert_eq!(world.counting(ben), [0; 0]);
}

#[test]
fn of_a_removed_device_what_a_head_reaches_counts() {
    let (mut world, ana, _) = crew();
    let heads = vec![world.head(ana, 20, 3)];
    world.says(10, 2, &[], ANA, Said::RemoveDevice { device: phone(20), heads });
    assert_eq!(world.counting(ana), [1, 2, 3]);
    assert!(world.standing().open_keys(id(ANA)).is_empty(), "nobody seals to it any more");
    // A leaf that was dated back: another second one, that says it follows the first.
    let backdated = Link { content: [99; 32], previous: leaf(20, 1) };
    world.leaves.get_mut(&ana).unwrap().push(backdated);
    assert_eq!(world.counting(ana), [1, 2, 3]);
    // One beside the head itself.
    let forked = Link { content: [98; 32], previous: leaf(20, 2) };
    world.leaves.get_mut(&ana).unwrap().push(forked);
    assert_eq!(world.counting(ana), [1, 2, 3]);
    // Another phone of hers goes on.
    world.device(ANA, 21, 2);
    let other = world.writes(21, ANA, 2);
    assert_eq!(world.counting(other), [1, 2]);
}

/// Several removals add their heads, in whatever order; below a hole a head of its own counts.
#[test]
fn heads_add_up_and_a_hole_ends_a_chain() {
    let (mut world, ana, _) = crew();
    let device = phone(20);
    world.leaves.get_mut(&ana).unwrap().retain(|link| link.content[0] != 3);
    let heads = vec![world.head(ana, 20, 4)];
    world.says(10, 2, &[], ANA, Said::RemoveDevice { device, heads });
    assert_eq!(world.counting(ana), [4]);
    let heads = vec![world.head(ana, 20, 2)];
    world.says(11, 2, &[], ANA, Said::RemoveDevice { device, heads });
    assert_eq!(world.counting(ana), [1, 2, 4]);
    // A leaf that was dated back into the hole: the head above it does not follow it.
    let backdated = Link { content: [99; 32], previous: leaf(20, 2) };
    world.leaves.get_mut(&ana).unwrap().push(backdated);
    assert_eq!(world.counting(ana), [1, 2, 4]);
}

#[test]
fn a_removal_wins_over_an_admission_that_did_not_see_it() {
    let (mut world, ana, admitted) = crew();
    let heads = vec![world.head(ana, 20, 2)];
    let removed = world.says(10, 2, &[&admitted], ANA, Said::Remove { heads });
    assert_eq!(world.counting(ana), [1, 2]);
    assert!(!world.standing().people[&id(ANA)].standing);
    world.admits(11, 1, &[&admitted], ANA);
    assert_eq!(world.counting(ana), [1, 2], "the tablet had not seen it");
    world.admits(11, 2, &[&removed], ANA);
    assert_eq!(world.counting(ana), [1, 2, 3, 4, 5], "let in again");
}

/// A member's own paper stops their phone; nobody else's does, nor the phone itself.
#[test]
fn a_stop_is_the_persons_own() {
    let (mut world, ana, _) = crew();
    let head = world.head(ana, 20, 2);
    for keys in [person(BEN), device(20), person(COACH)] {
        world.stops.push(Stop::sign(&keys, head));
    }
    assert_eq!(world.counting(ana), [1, 2, 3, 4, 5]);
    world.stops.push(Stop::sign(&person(ANA), head));
    assert_eq!(world.counting(ana), [1, 2]);
    let nothing = Head { sequence: 0, content: [0; 32], of: id(BEN), ..head };
    let mut elsewhere = crew().0;
    elsewhere.stops.push(Stop::sign(&person(ANA), nothing));
    assert_eq!(elsewhere.counting(ana), [0; 0], "stopped in a thread, and reached in no other");
}

/// Somebody who was removed stops a phone of theirs with a later leaf for its head: that leaf counts no more than before,
/// until they are taken in again.
#[test]
fn who_was_removed_names_no_heads() {
    let (mut world, ana, admitted) = crew();
    let heads = vec![world.head(ana, 20, 2)];
    let removed = world.says(10, 2, &[&admitted], ANA, Said::Remove { heads });
    assert_eq!(world.counting(ana), [1, 2]);
    world.stops.push(Stop::sign(&person(ANA), world.head(ana, 20, 4)));
    assert_eq!(world.counting(ana), [1, 2]);
    world.admits(10, 3, &[&removed], ANA);
    assert_eq!(world.counting(ana), [1, 2, 3, 4]);
}

/// What a stolen laptop says after it was stopped takes nobody in and removes nobody.
#[test]
fn a_stopped_laptop_decides_nothing_more() {
    let (mut world, ana, _) = crew();
    world.device(BEN, 30, 1);
    let ben = world.writes(30, BEN, 2);
    world.writes(10, BEN, 3);
    world.admits(10, 3, &[], BEN);
    let heads = Vec::new();
    world.says(10, 4, &[], ANA, Said::Remove { heads });
    assert_eq!((world.counting(ana), world.counting(ben)), (vec![], vec![1, 2]));
    let last = Head { device: phone(10), of: id(ANA), sequence: 2, content: leaf(10, 2) };
    world.stops.push(Stop::sign(&person(COACH), last));
    assert_eq!(world.counting(ana), [1, 2, 3, 4, 5]);
    assert_eq!(world.counting(ben), [0; 0], "the laptop never spoke in a thread of Ben's");
    let standing = world.standing();
    assert_eq!(standing.open_keys(id(COACH)).len(), 1);
    assert!(standing.is_limited(phone(10)) && !standing.is_limited(phone(11)));
}

/// Seven stand, thirty-two ever; two of one place both count, and everybody finds the same.
#[test]
fn of_too_many_devices_the_lowest_count() {
    let (mut world, ..) = crew();
    for number in 21..=27 {
        world.device(ANA, number, number - 19);
    }
    let lane = world.writes(27, ANA, 1);
    assert_eq!(world.standing().counts(lane, &leaf(27, 1)), Counts::TooMany);
    assert_eq!(world.standing().open_keys(id(ANA)).len(), MOST_STANDING);
    world.says(10, 2, &[], ANA, Said::RemoveDevice { device: phone(20), heads: Vec::new() });
    assert_eq!(world.standing().counts(lane, &leaf(27, 1)), Counts::Yes);
    let mut two = crew().0;
    two.device(ANA, 40, 1);
    let lane = two.writes(40, ANA, 1);
    assert_eq!(two.counting(lane), [1]);
    let mut many = crew().0;
    for number in 21..=52 {
        many.device(ANA, number, 2);
        let (device, heads) = (phone(number), Vec::new());
        many.says(10, 2, &[], ANA, Said::RemoveDevice { device, heads });
    }
    let known = many.standing();
    let theirs = known.devices.values().filter(|placed| placed.person == id(ANA));
    assert_eq!(theirs.filter(|placed| placed.within).count(), 32);
}

proptest! {
    /// Whatever order everything comes in, and however often, the result is the same.
    #[test]
    fn it_is_a_function_of_the_set(
        said in proptest::collection::vec((0_u8..5, 1_u8..6, 0_u8..6, any::<bool>()), 0..12),
        stops in proptest::collection::vec((0_u8..3, 0_u8..6), 0..4),
        seed in any::<u64>(),
    ) {
        let (mut world, ana, admitted) = crew();
        world.device(ANA, 21, 2);
        let other = world.writes(21, ANA, 5);
        let mut names = vec![admitted];
        for (what, at, head, by_tablet) in said {
            let by = if by_tablet { 11 } else { 10 };
            let parent = names[usize::from(head) % names.len()];
            let heads = vec![world.head(ana, 20, head)];
            let said = match what {
                0 | 1 => Said::Admit { keys: person(ANA).public() },
                2 => Said::Remove { heads },
                3 => Said::RemoveDevice { device: phone(20), heads },
                _ => Said::RemoveDevice { device: phone(21), heads: vec![world.head(other, 21, head)] },
            };
            let parents: &[&WordName] = if what == 1 { &[] } else { &[&parent] };
            names.push(world.says(by, at, parents, ANA, said));
        }
        for (who, at) in stops {
            let (of, number) = [(ANA, 20), (COACH, 10), (COACH, 11)][usize::from(who)];
            let keys = person(of);
            let lane = Lane { device: phone(number), of: id(ANA) };
            world.stops.push(Stop::sign(&keys, world.head(lane, number, at)));
        }
        let before = world.standing();
        let mut order = seed;
        let mut shuffle = |len: usize| -> Vec<usize> {
            let mut all: Vec<usize> = (0..len).chain(0..len).collect();
            for at in (1..all.len()).rev() {
                order = order.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
                all.swap(at, (order >> 33) as usize % (at + 1));
            }
            all
        };
        let mut again = World { leaves: world.leaves.clone(), stands_in: world.stands_in.clone(), ..World::default() };
        again.certificates = shuffle(world.certificates.len()).into_iter().map(|at| world.certificates[at]).collect();
        again.stops = shuffle(world.stops.len()).into_iter().map(|at| world.stops[at]).collect();
        again.words = shuffle(world.words.len()).into_iter().map(|at| world.words[at].clone()).collect();
        for links in again.leaves.values_mut() {
            let shuffled = shuffle(links.len()).into_iter().map(|at| links[at]).collect();
            *links = shuffled;
        }
        prop_assert_eq!(again.standing(), before);
    }
}
