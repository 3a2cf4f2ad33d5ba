//! The commands about sets that are logged, as a person types them: the list, corrections, what a coach leaves
//! out, and one-rep maxes.

use chrono::Utc;
use holdfast_tests::{Desk, this_week};

/// A coach and an athlete who trained today, the last set of it a slip; the carrier's folder; today's date.
fn trained() -> (Desk, String, String) {
    let desk = Desk::new();
    desk.write("plan.toml", this_week());
    let (plan, carrier) = (desk.path("plan.toml"), desk.path("carrier"));
    desk.fine("coach", &["start", "--as", "coach", "--name", "Maren"], "");
    desk.fine("coach", &["publish", &plan, "--carrier", &carrier], "");
    desk.fine("bram", &["start", "--as", "athlete", "--name", "Bram"], "");
    desk.pair("coach", "bram");
    desk.fine("bram", &["exchange", "--carrier", &carrier], "");
    let said = desk.fine("bram", &["session"], "50 x 8, 2 left\n\n90 x 6\nquit\n");
    let doubt = "really? Far from the proposed 52.5 kg. Type `right`: set 2 is right. Type `undo` if it was a slip.";
    assert!(said.contains(doubt), "{said}");
    (desk, carrier, Utc::now().date_naive().to_string())
}

#[test]
fn an_athlete_lists_and_corrects_sets() {
    let (desk, _, date) = trained();
    let said = desk.fine("bram", &["sets"], "");
    assert!(said.contains(&format!("({date})")), "{said}");
    assert!(said.contains("Squat  set 2  90 kg × 6 (may be a slip)"), "{said}");
    assert!(said.contains(&format!("holdfast correct {date} Squat 2 \"67.5 x 5\"")), "{said}");
    assert_eq!(desk.fine("bram", &["sets", "--on", &date], ""), said);
    let json = desk.fine("bram", &["sets", "--on", &date, "--json"], "");
    assert!(json.contains("\"doubt\": true"), "{json}");

    let correct = |typed: &[&str]| {
        let args = [&["correct", date.as_str(), "squat", "2"], typed].concat();
        desk.fine("bram", &args, "")
    };
    let said = correct(&["right"]);
    assert!(said.contains("90 kg × 6, confirmed. It counts."), "{said}");
    let said = correct(&["52.5 x 6"]);
    assert!(said.contains(": 52.5 kg × 6 (was 90 kg × 6)"), "{said}");
    // Without quotes, and with the number of the session behind it.
    let said = correct(&["52.5", "x", "7,", "1", "left", "--session", "1"]);
    assert!(said.contains(": 52.5 kg × 7, 1 left (was 52.5 kg × 6)"), "{said}");
    let said = correct(&["6.5 x 7"]);
    assert!(said.contains("If it is right: holdfast correct"), "{said}");
    let said = correct(&["none"]);
    assert!(said.contains("taken back (was 6.5 kg × 7, 1 left (may be a slip))"), "{said}");
    assert!(!desk.fine("bram", &["sets"], "").contains("set 2"));
}

/// In the session itself a word confirms it; a second time there is nothing to confirm.
#[test]
fn a_slip_is_confirmed_line_by_line() {
    let (desk, _, _) = trained();
    let said = desk.fine("bram", &["session"], "?\nright\nright\n?\nquit\n");
    assert_eq!(
        said.matches("says that a set that looks like a slip is right").count(),
        1,
        "{said}"
    );
    assert!(said.contains(": Squat set 2, 90 kg × 6\n"), "{said}");
    assert!(said.contains("not understood: Nothing to confirm here."), "{said}");
    assert!(!desk.fine("bram", &["sets"], "").contains("may be a slip"));
}

#[test]
fn what_is_typed_wrongly_is_told_and_changes_nothing() {
    let (desk, _, date) = trained();
    let before = desk.fine("bram", &["sets"], "");
    for (args, said) in [
        (vec!["correct", &date, "Squat", "2", "67.5 x 5 easy"], "\"easy\" means nothing here"),
        (vec!["correct", &date, "Squat", "2", "67.5"], "\"67.5\" is not a whole number"),
        (vec!["correct", &date, "Squat", "3", "5"], "there is no set 3"),
        (vec!["correct", &date, "Bench", "2", "5"], "There is no piece \"Bench\""),
        (vec!["correct", "2020-01-01", "Squat", "2", "5"], "No set is logged on Wed 1 Jan"),
        (vec!["correct", "yesterday", "Squat", "2", "5"], "The date it was trained on, such as"),
        (vec!["correct", &date, "Squat", "two", "5"], "The set's number in the piece"),
        (vec!["correct", &date, "Squat", "2"], "Missing: <DONE>..."),
        (vec!["correct", &date, "Squat", "2", "5", "--session", "2"], "There is only one session"),
        (vec!["sets", "--on", &date, "--sessions", "2"], "do not go together"),
        (vec!["leave-out", "Bram", &date, "Squat", "2"], "Only coaches leave sets out"),
        (vec!["max", "Squat", "heavy"], "\"heavy\" is no load"),
        (vec!["max", "Bench", "100kg"], "There is no movement \"Bench\" in the plan"),
        (vec!["max", "Back squat", "0kg"], "A load must be above zero."),
    ] {
        let wrong = desk.wrong("bram", &args);
        assert!(wrong.contains(said), "{args:?}: {wrong}");
    }
    assert_eq!(desk.fine("bram", &["sets"], ""), before);
    let german = desk.wrong("bram", &["--lang", "de", "correct", &date, "Squat", "2", ""]);
    assert!(german.contains("Tippe, was du gemacht hast"), "{german}");
}

#[test]
fn a_coach_leaves_sets_out_and_sets_a_training_max() {
    let (desk, carrier, date) = trained();
    desk.fine("bram", &["exchange", "--carrier", &carrier], "");
    desk.fine("coach", &["exchange", "--carrier", &carrier], "");
    let board = desk.fine("coach", &["board"], "");
    assert!(board.contains("slip") && board.contains("90 kg × 6 may be a slip"), "{board}");
    let said = desk.fine("coach", &["sets", "--member", "Bram"], "");
    assert!(said.contains(&format!("holdfast leave-out Bram {date} Squat 2")), "{said}");
    let said = desk.fine("coach", &["leave-out", "Bram", &date, "Squat", "2"], "");
    assert!(said.contains("(left out by the coach). Nothing is proposed from it."), "{said}");
    assert!(!desk.fine("coach", &["board"], "").contains("may be a slip"));
    let again = desk.wrong("coach", &["leave-out", "Bram", &date, "Squat", "2"]);
    assert!(again.contains("This set is left out already."), "{again}");
    let said = desk.fine("coach", &["leave-out", "Bram", &date, "Squat", "2", "--count"], "");
    assert!(said.contains("It counts again."), "{said}");
    let whose = desk.wrong("coach", &["sets"]);
    assert!(whose.contains("Name the member."), "{whose}");

    // What a coach cannot do is told before what is wrong with it.
    for done in ["50 x 8", "heavy"] {
        let wrong = desk.wrong("coach", &["correct", &date, "Squat", "2", done]);
        let only = "Only athletes correct their own sets; this is Maren's coach device. A coach can leave a set out.";
        let typed = format!("Type: holdfast leave-out NAME {date} Squat 2");
        assert!(wrong.contains(only) && wrong.contains(&typed), "{wrong}");
    }

    let said = desk.fine("coach", &["max", "Back squat", "100kg", "--member", "Bram"], "");
    assert!(said.starts_with("Back squat: 100 kg, training max set by the coach on"), "{said}");
    let far = desk.wrong("coach", &["max", "Back squat", "1000", "--member", "Bram"]);
    assert!(far.contains("more than twice the heaviest set"), "{far}");
    let page = desk.fine("coach", &["member", "Bram"], "");
    assert!(page.contains("One-rep maxes, tested or set\n  Back squat: 100 kg"), "{page}");
    let said = desk.fine("coach", &["max", "Back squat", "none", "--member", "Bram"], "");
    assert!(said.contains("Taken back."), "{said}");
    let said = desk.fine("bram", &["max", "back-squat", "90 kg"], "");
    assert!(said.starts_with("Back squat: 90 kg, tested on"), "{said}");
    let (exchange, html) = (["exchange", "--carrier", carrier.as_str()], desk.path("out.html"));
    desk.fine("bram", &exchange, "");
    desk.fine("coach", &exchange, "");
    desk.fine("coach", &["report", &html], "");
    let html = std::fs::read_to_string(html).unwrap();
    assert!(html.contains("<li>Back squat: 90\u{a0}kg, tested on"), "{html}");
}
