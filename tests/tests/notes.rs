//! Notes: an athlete's reach the coach, the coach's come back to where they belong, and private ones go nowhere.

use std::fs;

use holdfast_core::coach::{AttentionKind, NoteGiven, SetOfPiece};
use holdfast_core::session::{NoteFrom, NoteView, Row, SessionScreen, Tap, Typed};
use holdfast_core::{Holdfast, HoldfastResult};
use holdfast_tests::taps::{begin, kg, window};
use holdfast_tests::train::{squats, three_squats};
use holdfast_tests::views::piece;
use holdfast_tests::{Crew, Device, SMALL_PLAN};
use proptest::prelude::*;

fn note(words: &str) -> Tap {
    Tap::Note { row: None, words: words.into(), private: false }
}

fn private(words: &str) -> Tap {
    Tap::Note { row: None, words: words.into(), private: true }
}

fn texts(notes: &[NoteView]) -> Vec<&str> {
    notes.iter().map(|note| note.text.as_str()).collect()
}

fn on_squat(screen: &SessionScreen) -> &[NoteView] {
    &piece(screen, "Squat").notes
}

/// What a coach writes to Ines, about a set of squats on a date.
fn coachs(set: Option<u32>, on: &str, words: Option<&str>) -> NoteGiven {
    NoteGiven {
        member: Some("Ines".into()),
        on: on.parse().ok(),
        set: set.map(|set| SetOfPiece { piece: "Squat".into(), set }),
        session: None,
        words: words.map(str::to_owned),
        private: false,
    }
}

fn give(device: &Device, given: NoteGiven) -> HoldfastResult<String> {
    device.holdfast.note(given, device.now()).map(|line| line.text)
}

fn looks(coach: &Holdfast, on: &str) -> Vec<String> {
    let rows = coach.board(on.parse().unwrap()).unwrap().rows;
    let looks = rows.into_iter().flat_map(|row| row.attention);
    looks.filter(|look| look.kind == AttentionKind::Note).map(|look| look.text).collect()
}

#[test]
fn a_note_goes_to_the_coach_and_the_answer_comes_back_to_the_set() {
    let crew = Crew::running().unwrap();
    let (ines, coach) = (&crew.athletes[0], &crew.coach);
    ines.tap(kg(50)).unwrap();
    let screen = ines.tap(note("  the grip\n slipped ")).unwrap();
    assert_eq!(screen.saved_text.as_deref(), Some("Squat, note for your coach: the grip slipped"));
    assert!(screen.saved.is_some(), "it is an entry");
    assert_eq!(texts(on_squat(&screen)), ["For your coach, set 1: the grip slipped"]);
    assert_eq!(on_squat(&screen)[0].row, Some(Row::Set { piece: "Squat".into(), set: 1 }));
    ines.tap(Tap::Finish { rpe: Some(7), minutes: Some(50) }).unwrap();
    let screen = ines.tap(Tap::Note {
        row: Some(Row::Finish),
        words: "a good evening".into(),
        private: false,
    });
    assert_eq!(texts(&screen.unwrap().notes), ["For your coach: a good evening"]);
    crew.exchange_all().unwrap();

    coach.go_to("2026-11-04");
    let said = [
        "Tue 3 Nov: a good evening".to_owned(),
        "Squat set 1, Tue 3 Nov: the grip slipped".to_owned(),
    ];
    let mut seen = looks(&coach.holdfast, "2026-11-04");
    seen.sort();
    let mut expected = said.to_vec();
    expected.sort();
    assert_eq!(seen, expected);
    assert!(looks(&coach.holdfast, "2026-11-18").is_empty(), "after two weeks it is old");
    let sets = coach.holdfast.sets(Some("Ines".into()), None, 1).unwrap().sessions.remove(0);
    assert_eq!(sets.notes, ["Ines: a good evening"]);
    assert_eq!(sets.sets[0].notes, ["Ines: the grip slipped"]);
    let page = coach.holdfast.member("Ines".into(), "2026-11-04".parse().unwrap()).unwrap();
    let page: Vec<&str> = page.notes.iter().map(|line| line.text.as_str()).collect();
    assert_eq!(page, ["Ines, Squat set 1: the grip slipped", "Ines: a good evening"]);

    let answer = give(coach, coachs(Some(1), "2026-11-03", Some("Chalk, and thumbs around")));
    assert_eq!(answer.unwrap(), "You, Squat set 1: Chalk, and thumbs around");
    assert!(
        looks(&coach.holdfast, "2026-11-04").is_empty(),
        "an answer to the session is one to all"
    );
    crew.exchange_all().unwrap();

    // It stands on the set itself, and is read before the next squats.
    let own = ines.holdfast.sets(None, None, 1).unwrap().sessions.remove(0);
    let from_coach = "From your coach: Chalk, and thumbs around";
    assert_eq!(own.sets[0].notes, ["For your coach: the grip slipped", from_coach]);
    ines.go_to("2026-11-05");
    let earlier = "From your coach about Tue 3 Nov, set 1: Chalk, and thumbs around";
    assert_eq!(texts(on_squat(&ines.today().unwrap())), [earlier]);
    assert_eq!(texts(on_squat(&ines.tap(begin()).unwrap())), [earlier]);
}

/// A coach's note is shown in the two sessions of that movement that are begun after it, wherever it was written;
/// one on a whole session in the next two of any.
#[test]
fn a_coachs_note_is_shown_until_it_was_read_twice() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let (ines, coach) = (&crew.athletes[0], &crew.coach);
    squats(ines, "2026-11-03", &[(50, 8)]);
    crew.exchange_all().unwrap();
    coach.go_to("2026-11-04");
    give(coach, coachs(Some(1), "2026-11-03", Some("deeper"))).unwrap();
    give(coach, coachs(None, "2026-11-03", Some("well done"))).unwrap();
    crew.exchange_all().unwrap();
    let shown = |screen: &SessionScreen| (on_squat(screen).len(), screen.notes.len());
    for (date, before) in [("2026-11-05", (1, 1)), ("2026-11-10", (1, 1)), ("2026-11-12", (0, 0))] {
        ines.go_to(date);
        assert_eq!(shown(&ines.today().unwrap()), before, "{date}");
        assert_eq!(shown(&ines.tap(begin()).unwrap()), before, "{date}");
        squats_on(ines);
        assert_eq!(shown(&ines.today().unwrap()), before, "{date}, also when it is over");
    }
}

fn squats_on(device: &Device) {
    device.tap(kg(50)).unwrap();
    device.tap(Tap::Finish { rpe: Some(6), minutes: Some(40) }).unwrap();
}

/// Where sets alone are listed, a note on a window says which.
#[test]
fn a_note_on_a_window_says_which() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    ines.tap(window(None, Some(15), Some(9_000))).unwrap();
    let screen = ines.tap(note("too hot")).unwrap();
    assert_eq!(texts(&piece(&screen, "Corners").notes), ["For your coach, window 1: too hot"]);
    ines.tap(kg(50)).unwrap();
    crew.exchange_all().unwrap();
    let listed = |device: &Device, name: Option<String>| {
        device.holdfast.sets(name, None, 1).unwrap().sessions.remove(0).notes
    };
    assert_eq!(listed(ines, None), ["For your coach, Corners window 1: too hot"]);
    assert_eq!(listed(&crew.coach, Some("Ines".into())), ["Ines, Corners window 1: too hot"]);
}

/// What is private is in no journal, no leaf, no file of the carrier and on no other device; exported, it stands apart.
#[test]
fn a_private_note_never_leaves() {
    let crew = Crew::running().unwrap();
    let (ines, coach) = (&crew.athletes[0], &crew.coach);
    ines.tap(kg(50)).unwrap();
    let before = ines.today().unwrap().unpublished;
    let screen = ines.tap(private("quarrelled at home")).unwrap();
    assert_eq!(screen.unpublished, before, "nothing waits to be sent");
    assert_eq!(screen.saved_text.as_deref(), Some("Squat, note for you alone: quarrelled at home"));
    assert_eq!(texts(on_squat(&screen)), ["For you alone, set 1: quarrelled at home"]);
    assert_eq!(on_squat(&screen)[0].from, NoteFrom::Private);
    // After a start it is there, and undo still knows that it came last.
    let again = ines.open_again().unwrap();
    assert_eq!(again.today(ines.now()).unwrap().saved_text, screen.saved_text);
    ines.tap(kg(60)).unwrap();
    crew.exchange_all().unwrap();
    let export = ines.holdfast.export().unwrap();
    let everything = |export: &holdfast_core::history::Export| {
        serde_json::to_string(&export.tables).unwrap() + &export.journal.concat()
    };
    assert!(!everything(&export).contains("quarrelled"));
    assert_eq!(export.private.unwrap().rows[0].cells.last().unwrap(), "quarrelled at home");
    let export = coach.holdfast.export().unwrap();
    assert_eq!(export.private, None);
    assert!(!everything(&export).contains("quarrelled"));
    let page = ines.holdfast.member("Ines".into(), "2026-11-04".parse().unwrap()).unwrap();
    assert_eq!(page.notes[0].text, "For you alone, Squat set 1: quarrelled at home");
    let page = coach.holdfast.member("Ines".into(), "2026-11-04".parse().unwrap()).unwrap();
    assert!(page.notes.is_empty());
    // A coach has no use for one: whoever trains would never see it.
    let given = NoteGiven { private: true, ..coachs(None, "2026-11-03", Some("x")) };
    assert!(give(coach, given).unwrap_err().to_string().contains("athlete"));
}

/// A private note has a second place, as every entry has; one that was taken back stands in neither.
#[test]
fn a_private_note_outlives_its_database() {
    let crew = Crew::running().unwrap();
    let ines = &crew.athletes[0];
    ines.tap(private("first")).unwrap();
    ines.tap(private("second")).unwrap();
    ines.tap(private("third")).unwrap();
    assert_eq!(ines.tap(Tap::Undo).unwrap().undone.as_deref(), Some("note for you alone: third"));
    let kept = |holdfast: &Holdfast| -> Vec<String> {
        let notes = holdfast.today(ines.now()).unwrap().notes;
        notes.into_iter().map(|note| note.words).collect()
    };
    ines.holdfast.shut().unwrap();
    fs::remove_file(ines.home.join("holdfast.db")).unwrap();
    assert_eq!(kept(&ines.open_again().unwrap()), ["first", "second"]);
    // A line that rotted in the copy does not come back as another.
    let copy = ines.home.join("private.jsonl");
    let text = fs::read_to_string(&copy).unwrap();
    assert!(!text.contains("third"));
    ines.open_again().unwrap().shut().unwrap();
    fs::write(&copy, text.replace("first", "worst")).unwrap();
    fs::remove_file(ines.home.join("holdfast.db")).unwrap();
    assert_eq!(kept(&ines.open_again().unwrap()), ["second"]);
}

#[test]
fn a_note_is_taken_back_and_what_is_none_is_refused() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let (ines, coach) = (&crew.athletes[0], &crew.coach);
    crew.exchange_all().unwrap();
    assert!(
        give(coach, coachs(None, "2026-11-03", Some("x")))
            .unwrap_err()
            .to_string()
            .contains("3 Nov")
    );
    assert!(ines.tap(note("nothing runs")).is_err());
    three_squats(ines, "2026-11-03");
    for (words, why) in
        [(" \n\t ", "needs words"), (&"x".repeat(501), "at most 500 characters; this one has 501")]
    {
        let refused = ines.tap(note(words)).unwrap_err().to_string();
        assert!(refused.contains(why), "{refused}");
        assert!(ines.tap(private(words)).unwrap_err().to_string().contains(why));
    }
    ines.tap(note(&"x".repeat(500))).unwrap();
    ines.tap(Tap::Undo).unwrap();
    crew.exchange_all().unwrap();
    coach.go_to("2026-11-04");
    give(coach, coachs(Some(2), "2026-11-03", Some("mistaken"))).unwrap();
    crew.exchange_all().unwrap();
    assert!(give(coach, coachs(None, "2026-11-03", None)).is_err(), "there is none on the whole");
    assert_eq!(
        give(coach, coachs(Some(2), "2026-11-03", None)).unwrap(),
        "You, Squat set 2: mistaken"
    );
    crew.exchange_all().unwrap();
    ines.go_to("2026-11-05");
    assert!(on_squat(&ines.today().unwrap()).is_empty());
    // A line means all that it says.
    let typed = |line: &str| ines.holdfast.read_line(line.into(), ines.now());
    ines.tap(begin()).unwrap();
    let Typed::Tap { tap } = typed("note knee 4 hurts").unwrap() else { panic!() };
    assert_eq!(tap, note("knee 4 hurts"));
    let Typed::Tap { tap } = typed("private tired").unwrap() else { panic!() };
    assert_eq!(tap, private("tired"));
    assert!(typed("note").is_err() && typed("private").is_err());
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, ..ProptestConfig::default() })]

    /// Whatever was noted and logged in whatever order: undo takes back the last first, and all of it.
    #[test]
    fn undo_goes_back_through_notes_and_sets_alike(kinds in proptest::collection::vec(0..3_u8, 1..9), restart in 0..9_usize) {
        let mut crew = Crew::running().unwrap();
        let mut ines = crew.athletes.remove(0);
        let mut said = Vec::new();
        for (number, kind) in kinds.iter().enumerate() {
            let words = format!("words {number}");
            let screen = match kind {
                0 => ines.tap(note(&words)),
                1 => ines.tap(private(&words)),
                _ => ines.tap(holdfast_tests::taps::squat(Some(1), Some(40 + number as i64), None, None)),
            };
            said.push(screen.unwrap().saved_text.unwrap());
        }
        for (number, expected) in said.iter().rev().enumerate() {
            if number == restart {
                ines.holdfast.shut().unwrap();
                ines = Device::open(ines.home.clone(), ines.now()).unwrap();
            }
            let undone = ines.tap(Tap::Undo).unwrap().undone.unwrap();
            prop_assert_eq!(&undone, expected);
        }
        let screen = ines.today().unwrap();
        prop_assert!(screen.notes.is_empty() && on_squat(&screen).is_empty());
        prop_assert!(ines.tap(Tap::Undo).is_err());
    }
}
