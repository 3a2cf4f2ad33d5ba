//! A member without a connection is carried by a crewmate, who can read none of it.

use holdfast_core::exchange::CarriedFile;
use holdfast_tests::train::squats;
use holdfast_tests::{Carrier, Crew, SMALL_PLAN};

#[test]
fn a_crewmate_delivers_what_it_cannot_open() {
    let mut crew = Crew::start(SMALL_PLAN, &["Ana", "Ben"]).unwrap();
    let stick = Carrier::new(crew.folder().join("stick"));
    squats(&crew.athletes[0], "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    // In the cellar, where neither has a connection.
    crew.athletes[0].exchange(&stick).unwrap();
    let before = crew.athletes[1].holdfast.state_text().unwrap();
    let taken = crew.athletes[1].holdfast.take_along(stick.files()).unwrap();
    assert!(taken.files >= 2 && taken.aside.is_empty(), "{taken:?}");
    let again = crew.athletes[1].holdfast.take_along(stick.files()).unwrap();
    assert_eq!(again.files, 0, "once");
    crew.athletes[1].kill().unwrap();
    let ben = &crew.athletes[1];
    ben.holdfast.take_along(stick.files()).unwrap();
    assert_eq!(ben.holdfast.state_text().unwrap(), before);
    // At home Ben has one.
    ben.exchange(&crew.carrier).unwrap();
    assert_eq!(ben.holdfast.state_text().unwrap(), before);
    let entries = crew.coach.exchange(&crew.carrier).unwrap().entries;
    assert!(entries >= 3, "{entries}");
    // What is delivered is carried no further.
    ben.exchange(&crew.carrier).unwrap();
    let left = std::fs::read_dir(ben.home.join("carried")).unwrap().count();
    assert_eq!(left, 0);
    assert!(crew.athletes[0].exchange(&crew.carrier).unwrap().aside.is_empty());
}

#[test]
fn only_sealed_leaves_are_taken_along_and_not_without_end() {
    let crew = Crew::start(SMALL_PLAN, &["Ana", "Ben"]).unwrap();
    let ben = &crew.athletes[1];
    let sound = crew.carrier.leaves_of(&crew.athletes[0]).remove(0);
    let file =
        |name: &str, content: &[u8]| CarriedFile { name: name.into(), content: content.into() };
    let mut torn = sound.clone();
    torn.content.pop();
    let big = file(&sound.name, &vec![0; 4 * 1024 * 1024 + 1]);
    for (bad, why) in [
        (file("photo.jpg", b"jpg"), "not one of Holdfast's"),
        (file("../up.leaf", b"x"), "not one of Holdfast's"),
        (torn, "damaged"),
        (big, "bytes"),
    ] {
        let taken = ben.holdfast.take_along(vec![bad]).unwrap();
        assert_eq!(taken.files, 0);
        assert!(taken.aside[0].reason.contains(why), "{taken:?}");
    }
    let kept = ben.home.join("carried").exists();
    assert!(!kept, "nothing was written");
    // A flood ends, and is said.
    let keys = holdfast_tests::Writer::at(&crew.athletes[0]);
    let maren = holdfast_tests::Writer::at(&crew.coach);
    let leaf = keys.opens(&maren, &sound);
    let flood: Vec<CarriedFile> = (0..520).map(|_| keys.seals(&leaf, &[&maren])).collect();
    let taken = ben.holdfast.take_along(flood).unwrap();
    assert_eq!(taken.files, 500);
    assert!(taken.aside[0].reason.contains("no room"), "{:?}", taken.aside);
}
