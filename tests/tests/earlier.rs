//! What was logged before somebody joined: it is shared only where its person says so.

use std::fs;

use holdfast_core::PairDid;
use holdfast_core::care::Place;
use holdfast_core::journal::Role;
use holdfast_core::session::Tap;
use holdfast_tests::pairing::scan;
use holdfast_tests::{Crew, Device, SMALL_PLAN};

/// Something that hurts, on no session's account: each time elsewhere, or it would correct what was said before.
fn hurts(severity: u32) -> Tap {
    let place = [Place::Knee, Place::Elbow, Place::Hip][severity as usize - 2];
    Tap::FlagBetween { movement: None, place, severity, signs: Vec::new(), on: None }
}

/// A crew's coach, and Ana, who said on 3 November that her knee hurt, and compares words on the fifth.
fn comparing() -> (Crew, Device) {
    let crew = Crew::start(SMALL_PLAN, &[]).unwrap();
    let ana = Device::start(crew.folder().join("ana"), "Ana", Role::Athlete, 9).unwrap();
    ana.go_to("2026-11-03");
    ana.tap(hurts(2)).unwrap();
    crew.coach.go_to("2026-11-05");
    ana.go_to("2026-11-05");
    let invited = crew.coach.pair(PairDid::Invite { chance: vec![50; 32] }).unwrap();
    let answered = ana.pair(scan(&invited, 51)).unwrap();
    let opened = crew.coach.pair(scan(&answered, 52)).unwrap();
    let compared = ana.pair(scan(&opened, 53)).unwrap();
    assert!(compared.earlier.unwrap().contains("1 entry before today"));
    assert!(compared.told.unwrap().contains("from today on"));
    let line = (1..).zip(&opened.lines).find(|(_, line)| **line == compared.words.join(" "));
    crew.coach.pair(PairDid::Pick { line: line.map(|(number, _)| number), label: None }).unwrap();
    (crew, ana)
}

fn matched(share_earlier: bool) -> PairDid {
    PairDid::Match { matches: true, share_earlier }
}

/// How bad what hurts is that the coach hears of, in the order it was flagged.
fn heard(crew: &Crew, ana: &Device) -> Vec<u32> {
    for device in [ana, &crew.coach] {
        device.exchange(&crew.carrier).unwrap();
    }
    let page = crew.coach.holdfast.member("Ana".into(), "2026-11-06".parse().unwrap()).unwrap();
    page.discomfort.iter().map(|flag| flag.severity).collect()
}

#[test]
fn what_came_before_stays_unless_it_is_shared_and_can_be_shared_later() {
    let (crew, ana) = comparing();
    let joined = ana.pair(matched(false)).unwrap();
    assert!(joined.earlier.unwrap().contains("1 entry from before"));
    ana.tap(hurts(3)).unwrap();
    assert_eq!(heard(&crew, &ana), [3]);
    // Nor does it go when the database is built again from what lies beside it.
    ana.holdfast.shut().unwrap();
    fs::remove_file(ana.home.join("holdfast.db")).unwrap();
    let ana = Device::open(ana.home.clone(), ana.now()).unwrap();
    assert_eq!(ana.holdfast.today(ana.now()).unwrap().flags.len(), 2, "she has both");
    ana.tap(hurts(4)).unwrap();
    assert_eq!(heard(&crew, &ana), [3, 4]);
    let shared = ana.pair(PairDid::ShareEarlier).unwrap();
    assert!(shared.told.unwrap().contains("next exchange") && shared.earlier.is_none());
    assert_eq!(heard(&crew, &ana), [2, 3, 4]);
    assert!(ana.pair(PairDid::ShareEarlier).is_err(), "there is nothing left to share");
}

#[test]
fn what_came_before_is_shared_where_that_is_said() {
    let (crew, ana) = comparing();
    let joined = ana.pair(matched(true)).unwrap();
    assert_eq!(joined.earlier, None);
    assert_eq!(heard(&crew, &ana), [2]);
    assert!(ana.pair(PairDid::ShareEarlier).is_err());
}
