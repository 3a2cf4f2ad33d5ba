//! Sets that a coach leaves out of what is proposed, and counts again: the athlete sees it, and nothing that was
//! logged changes.

use catalogue::{Language, speaking};
use holdfast_core::coach::{AttentionKind, LoggedSet, SetNamed};
use holdfast_core::load::Reason;
use holdfast_core::session::SessionScreen;
use holdfast_core::{Mass, RecordId};
use holdfast_tests::taps::{finish, squat};
use holdfast_tests::train::squats;
use holdfast_tests::views::{load_texts, strength};
use holdfast_tests::{Crew, SMALL_PLAN};

/// A crew whose athlete trained on Tuesday and Thursday; the coach has it all.
fn trained() -> Crew {
    let crew = Crew::start(SMALL_PLAN, &["Bram"]).unwrap();
    let bram = &crew.athletes[0];
    squats(bram, "2026-11-03", &[(50, 8), (60, 6), (70, 5)]);
    squats(bram, "2026-11-05", &[(50, 8), (60, 6), (75, 9)]);
    crew.exchange_all().unwrap();
    crew
}

fn set(crew: &Crew, date: &str, set: u32) -> LoggedSet {
    let member = Some("Bram".into());
    let named =
        SetNamed { member, on: date.parse().unwrap(), piece: "Squat".into(), set, session: None };
    crew.coach.holdfast.find_set(named).unwrap()
}

fn put_aside(crew: &Crew, lift: RecordId, aside: bool) -> LoggedSet {
    let set = crew.coach.holdfast.set_aside(lift, aside, crew.coach.now()).unwrap().unwrap();
    crew.exchange_all().unwrap();
    set
}

/// The next loads, as the athlete sees them on a later day.
fn next(crew: &Crew) -> SessionScreen {
    crew.athletes[0].go_to("2026-11-07");
    crew.athletes[0].today().unwrap()
}

#[test]
fn a_set_left_out_proposes_nothing_until_it_counts_again() {
    let crew = trained();
    let before = next(&crew);
    assert_eq!(load_texts(&before)[2], "77.5 kg", "a tenth over the 72.5 kg that were proposed");
    let third = set(&crew, "2026-11-05", 3);
    let read_from = |screen: &SessionScreen| {
        let able = strength(screen).able.as_ref();
        able.is_some_and(|able| able.from.contains(&third.lift))
    };
    assert!(read_from(&before));
    let entries = |crew: &Crew| {
        let lines = crew.athletes[0].journal().into_iter();
        lines.filter(|line| line.contains(r#""k":"lift""#)).collect::<Vec<_>>()
    };
    let written = entries(&crew);

    let left = put_aside(&crew, third.lift, true);
    assert_eq!((left.aside, left.text.as_str()), (true, "75 kg × 9 (left out by the coach)"));
    let without = next(&crew);
    let third_set = &strength(&without).sets[2];
    assert!(matches!(third_set.reason, Reason::LeftOut { set: 3, .. }), "{:?}", third_set.reason);
    assert_eq!(load_texts(&without), ["50 kg", "60 kg", "70 kg"]);
    let why = third_set.why.as_deref();
    assert_eq!(why, Some("same again: 70 kg on Thu 5 Nov, set 3 left out by the coach"));
    let german = speaking(Language::De, || strength(&next(&crew)).sets[2].why.clone());
    let wanted = "noch einmal dasselbe: 70 kg am Do 5. Nov., Satz 3 vom Coach nicht gezählt";
    assert_eq!(german.as_deref(), Some(wanted));
    assert!(!read_from(&without), "the estimate of strength does without it");
    // The athlete sees whose word it is; their own log is as they wrote it.
    let own = crew.athletes[0].holdfast.sets(None, None, 1).unwrap().sessions.remove(0);
    assert_eq!(own.sets[2].text, "75 kg × 9 (left out by the coach)");
    assert_eq!(entries(&crew), written);

    let again = put_aside(&crew, third.lift, false);
    assert_eq!((again.aside, again.text.as_str()), (false, "75 kg × 9"));
    let after = next(&crew);
    assert_eq!(strength(&after).sets, strength(&before).sets);
    assert_eq!(strength(&after).able, strength(&before).able);
}

#[test]
fn the_page_and_the_files_say_what_is_left_out() {
    let crew = trained();
    put_aside(&crew, set(&crew, "2026-11-05", 3).lift, true);
    let date = "2026-11-06".parse().unwrap();
    let page = crew.coach.holdfast.member("Bram".into(), date).unwrap();
    let lifted = &page.sessions[1];
    assert_eq!((lifted.sets, lifted.volume), (3, Mass::kg(50 * 8 + 60 * 6)));
    assert_eq!(page.lifts[0].points[1].heaviest, Some(Mass::kg(60)));
    assert!(page.attention.iter().all(|line| line.kind != AttentionKind::Progress));
    for device in [&crew.coach, &crew.athletes[0]] {
        let tables = device.holdfast.export().unwrap().tables;
        let sets = tables.into_iter().find(|table| table.name == "sets").unwrap();
        let at = sets.columns.iter().position(|column| column == "left_out").unwrap();
        let out: Vec<bool> = sets.rows.iter().map(|row| row.cells[at] == "true").collect();
        assert_eq!(out, [false, false, false, false, false, true]);
    }
}

/// While the session is still on screen, the set says so too.
#[test]
fn the_screen_of_the_day_says_what_is_left_out() {
    let crew = trained();
    put_aside(&crew, set(&crew, "2026-11-05", 1).lift, true);
    let screen = crew.athletes[0].today().unwrap();
    let done: Vec<_> = strength(&screen).sets.iter().filter_map(|set| set.done.as_ref()).collect();
    let texts: Vec<&str> = done.iter().map(|done| done.text.as_str()).collect();
    assert_eq!(texts, ["50 kg × 8 (left out by the coach)", "60 kg × 6", "75 kg × 9"]);
}

/// A slip that nobody confirmed is settled by leaving it out: it is no longer asked about.
#[test]
fn a_slip_that_is_left_out_asks_for_no_look() {
    let crew = trained();
    let bram = &crew.athletes[0];
    bram.go_to("2026-11-06");
    bram.tap(holdfast_tests::taps::begin()).unwrap();
    bram.tap(squat(Some(1), Some(100), Some(8), None)).unwrap();
    bram.tap(finish(7, 60)).unwrap();
    crew.exchange_all().unwrap();
    let slips = || {
        let page =
            crew.coach.holdfast.member("Bram".into(), "2026-11-06".parse().unwrap()).unwrap();
        page.attention.iter().filter(|line| line.kind == AttentionKind::Slip).count()
    };
    assert_eq!(slips(), 1);
    let left = put_aside(&crew, set(&crew, "2026-11-06", 1).lift, true);
    assert_eq!(left.text, "100 kg × 8 (may be a slip) (left out by the coach)");
    assert_eq!(slips(), 0);
}

#[test]
fn only_a_coach_leaves_out_and_only_what_changes_something() {
    let crew = trained();
    let lift = set(&crew, "2026-11-05", 3).lift;
    let refused = |device: &holdfast_tests::Device, lift, aside| {
        device.holdfast.set_aside(lift, aside, device.now()).unwrap_err().to_string()
    };
    let said = refused(&crew.athletes[0], lift, true);
    assert!(
        said.starts_with("Only coaches leave sets out; this is Bram's athlete device"),
        "{said}"
    );
    assert_eq!(refused(&crew.coach, lift, false), "This set is not left out.");
    put_aside(&crew, lift, true);
    assert_eq!(refused(&crew.coach, lift, true), "This set is left out already.");
    let session =
        crew.coach.holdfast.sets(Some("Bram".into()), None, 1).unwrap().sessions[0].session;
    assert!(refused(&crew.coach, session, true).starts_with("This set is not here"));
    assert!(!crew.coach.holdfast.refold().unwrap());
}
