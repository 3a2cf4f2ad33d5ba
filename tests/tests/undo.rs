//! Undo: one tap back at a time.

use holdfast_core::Mass;
use holdfast_core::care::{Place, Sign};
use holdfast_core::clock::Act;
use holdfast_core::plan::MeasuredWhen;
use holdfast_core::session::Tap;
use holdfast_tests::taps::{clock, flag, held, range, squat};
use holdfast_tests::views::{flags, hold, reps, strength};
use holdfast_tests::{Crew, Device};

/// What one step back takes back, in words.
fn undone(device: &Device) -> String {
    device.tap(Tap::Undo).unwrap().undone.unwrap()
}

#[test]
fn a_correction_replaces_and_undo_brings_back() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    ines.tap(squat(None, Some(50), None, None)).unwrap();
    ines.tap(squat(None, Some(60), None, None)).unwrap();
    let screen = ines.tap(squat(Some(1), None, Some(7), Some(0))).unwrap();
    let first = strength(&screen).sets[0].done.clone().unwrap();
    assert_eq!((first.reps, first.load, first.made), (7, Some(Mass::kg(50)), false));
    assert_eq!(reps(&ines.today().unwrap()), [Some(7), Some(6), None]);
    let screen = ines.tap(Tap::Undo).unwrap();
    // What is taken back is told in the words it was saved with.
    assert_eq!(screen.undone.as_deref(), Some("Squat set 1, 50 kg × 7, 0 left"));
    assert_eq!(
        reps(&ines.today().unwrap()),
        [Some(8), Some(6), None],
        "the correction is taken back"
    );
    // Again goes further back, never forward.
    assert_eq!(undone(ines), "Squat set 2, 60 kg × 6");
    assert_eq!(reps(&ines.today().unwrap()), [Some(8), None, None]);
    assert_eq!(undone(ines), "Squat set 1, 50 kg × 8");
    assert_eq!(reps(&ines.today().unwrap()), [None, None, None]);
}

#[test]
fn undo_takes_back_a_whole_tap_clocks_too_and_says_what() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    ines.tap(range(MeasuredWhen::Before, Some(1), 100)).unwrap();
    ines.tap(held(&[60_000, 50_000], None)).unwrap();
    let both = ines.tap(Tap::Undo).unwrap();
    assert_eq!(both.undone.as_deref(), Some("Calves, held left 1 min, right 50 s"));
    assert!(hold(&both).sides.iter().all(|side| side.held.is_none()));
    ines.tap(clock("Calves", Act::Begin)).unwrap();
    let begun = ines.tap(Tap::Undo).unwrap();
    assert_eq!(begun.undone.as_deref(), Some("Calves, clock started"));
    assert_eq!(hold(&begun).clock, None);
    assert_eq!(undone(ines), "Calves before the hold, left 10.0 cm");
    ines.tap(flag(Place::Knee, 2, &[])).unwrap();
    ines.tap(flag(Place::Knee, 2, &[Sign::ChestPain])).unwrap();
    assert!(ines.tap(Tap::Undo).unwrap().notices.is_empty());
    let cleared = ines.tap(Tap::Undo).unwrap();
    assert_eq!(cleared.undone.as_deref(), Some("Squat, Back squat: knee 2/10"));
    assert!(flags(&cleared).is_empty() && cleared.notices.is_empty());
}

#[test]
fn undo_walks_back_through_first_entries_and_says_when_there_is_nothing() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    ines.tap(squat(None, Some(50), None, None)).unwrap();
    ines.tap(squat(None, Some(60), None, None)).unwrap();
    ines.tap(Tap::Undo).unwrap();
    assert_eq!(reps(&ines.today().unwrap()), [Some(8), None, None]);
    ines.tap(Tap::Undo).unwrap();
    assert_eq!(reps(&ines.today().unwrap()), [None, None, None]);
    let nothing = ines.tap(Tap::Undo).unwrap_err();
    assert!(nothing.to_string().contains("Nothing is logged"), "{nothing}");
    // What was taken back can be logged again.
    ines.tap(squat(None, Some(55), None, None)).unwrap();
    assert_eq!(reps(&ines.today().unwrap()), [Some(8), None, None]);
}

/// However often something was corrected, undo goes through all of it and never comes back.
#[test]
fn undo_goes_back_through_every_correction() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    let first = || reps(&ines.today().unwrap())[0];
    for done in [8, 7, 6, 5, 4] {
        ines.tap(squat(Some(1), Some(50), Some(done), None)).unwrap();
    }
    let back: Vec<Option<u32>> = (0..5)
        .map(|_| {
            ines.tap(Tap::Undo).unwrap();
            first()
        })
        .collect();
    assert_eq!(back, [Some(5), Some(6), Some(7), Some(8), None]);
    // Corrected again in between: from there on it goes back the same way.
    for done in [8, 7, 6] {
        ines.tap(squat(Some(1), Some(50), Some(done), None)).unwrap();
    }
    ines.tap(Tap::Undo).unwrap();
    ines.tap(squat(Some(1), Some(50), Some(3), None)).unwrap();
    let back: Vec<Option<u32>> = (0..3)
        .map(|_| {
            ines.tap(Tap::Undo).unwrap();
            first()
        })
        .collect();
    assert_eq!(back, [Some(7), Some(8), None]);
}

/// Through a pipe two sets come within one millisecond: they stay two, in their order, and undo takes
/// back one.
#[test]
fn two_taps_of_one_millisecond_stay_two() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    for load in [50, 60, 70] {
        ines.tap_now(squat(None, Some(load), Some(8), None)).unwrap();
    }
    let loads = |device: &Device| {
        let screen = device.today().unwrap();
        let done = strength(&screen).sets.iter().filter_map(|set| set.done.as_ref());
        done.map(|done| done.load_text.clone().unwrap()).collect::<Vec<_>>()
    };
    assert_eq!(loads(ines), ["50 kg", "60 kg", "70 kg"]);
    let tables = ines.holdfast.export().unwrap().tables;
    let lifts = tables.into_iter().find(|table| table.name == "sets").unwrap();
    let set = lifts.columns.iter().position(|column| column == "set").unwrap();
    let sets: Vec<String> = lifts.rows.iter().map(|row| row.cells[set].clone()).collect();
    assert_eq!(sets, ["1", "2", "3"], "as they were lifted");
    assert_eq!(undone(ines), "Squat set 3, 70 kg × 8");
    assert_eq!(loads(ines), ["50 kg", "60 kg"]);
}
