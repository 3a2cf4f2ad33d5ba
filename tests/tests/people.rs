//! What a plan means for the people it is for: told to a coach before it is published, from their own logs.

use holdfast_core::coach::PlanSummary;
use holdfast_core::{Holdfast, HoldfastResult, Mass, check_plan};
use holdfast_tests::taps::{begin, finish, set_of};
use holdfast_tests::views::loads;
use holdfast_tests::{Crew, Desk, Device, changed, this_week};
use rusqlite::Connection;

/// One bell of 16 kg and one of 20: a quarter lies between them.
const ROWS: &str = r#"
[block]
name = "One"
starts = 2026-11-02
weeks = 3

[kit]
bell = [{ mass = "16 kg", count = 1 }, { mass = "20 kg", count = 1 }]

[movement.row]
name = "Row"
pattern = "pull"
lifted = "bell"

[[day]]
name = "Evening"
on = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"]

[[day.piece]]
kind = "strength"
name = "Rows"
movement = "row"
reps = [8]
load = { rule = "step", step = "4 kg" }
"#;

/// What the plan says where nobody is known: of eight reps four should be left, so (30 + 13) x 16 / 20 - 30.
const ALONE: &str =
    "From 16 kg the next load is 20 kg, up 25 %. It is proposed after 13 reps with 16 kg.";
/// The same of somebody.
const INES: &str =
    "Ines is at 16 kg; the next load is 20 kg, up 25 %. It is proposed after 13 reps.";

/// The block after it, in which the piece has another name.
fn next_block() -> String {
    changed(&changed(ROWS, "\"One\"", "\"Two\""), "\"Rows\"", "\"One-arm rows\"")
}

fn check(device: &Holdfast, plan: &str, date: &str) -> Vec<String> {
    whats(device.check_plan("plan.toml".into(), plan.into(), date.parse().unwrap()))
}

fn whats(checked: HoldfastResult<PlanSummary>) -> Vec<String> {
    checked.unwrap().notes.into_iter().map(|note| note.what).collect()
}

fn rows(device: &Device, date: &str, load: i64, reps: u32) {
    device.go_to(date);
    device.tap(begin()).unwrap();
    device.tap(set_of("Rows", None, Some(Mass::kg(load)), Some(reps))).unwrap();
    device.tap(finish(7, 30)).unwrap();
}

/// The load that is proposed on a date.
fn proposed(device: &Device, date: &str) -> Option<Mass> {
    device.go_to(date);
    loads(&device.today().unwrap())[0]
}

/// The reps that the note names are the first after which the load rules propose the next load.
#[test]
fn the_reps_that_a_coach_is_told_are_those_it_takes() {
    let crew = Crew::start(ROWS, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    rows(ines, "2026-11-03", 16, 8);
    crew.exchange_all().unwrap();
    assert_eq!(check(&crew.coach.holdfast, &next_block(), "2026-11-04"), [INES]);
    rows(ines, "2026-11-05", 16, 12);
    assert_eq!(proposed(ines, "2026-11-06"), Some(Mass::kg(16)));
    rows(ines, "2026-11-07", 16, 13);
    assert_eq!(proposed(ines, "2026-11-08"), Some(Mass::kg(20)));
    // Now it is no longer ahead of her; and what she made once comes back with two over.
    crew.exchange_all().unwrap();
    assert_eq!(check(&crew.coach.holdfast, &next_block(), "2026-11-08"), [""; 0]);
    rows(ines, "2026-11-09", 20, 8);
    rows(ines, "2026-11-11", 16, 8);
    crew.exchange_all().unwrap();
    let said = check(&crew.coach.holdfast, &next_block(), "2026-11-12");
    assert_eq!(said, [INES.replace("13 reps", "10 reps")]);
    rows(ines, "2026-11-13", 16, 9);
    assert_eq!(proposed(ines, "2026-11-14"), Some(Mass::kg(16)));
    rows(ines, "2026-11-15", 16, 10);
    assert_eq!(proposed(ines, "2026-11-16"), Some(Mass::kg(20)));
}

#[test]
fn only_a_coach_who_knows_somebody_is_told_of_them() {
    let crew = Crew::start(ROWS, &["Ines", "Theo"]).unwrap();
    let (ines, coach) = (&crew.athletes[0], &crew.coach);
    let next = next_block();
    // Nobody has lifted anything: the plan is judged alone, as without a device.
    crew.exchange_all().unwrap();
    assert_eq!(check(&coach.holdfast, &next, "2026-11-03"), [ALONE]);
    let nobody = check_plan("plan.toml".into(), next.clone().into(), None);
    assert_eq!(whats(nobody), [ALONE]);
    rows(ines, "2026-11-03", 16, 8);
    crew.exchange_all().unwrap();
    assert_eq!(check(&coach.holdfast, &next, "2026-11-04"), [INES]);
    // An athlete's device tells nobody where others are.
    assert_eq!(check(&crew.athletes[1].holdfast, &next, "2026-11-04"), [ALONE]);
    // Theo's own load is not known: what Ines, at the heaviest, does not meet he still may.
    rows(ines, "2026-11-05", 20, 8);
    crew.exchange_all().unwrap();
    assert_eq!(check(&coach.holdfast, &next, "2026-11-06"), [ALONE]);
    rows(&crew.athletes[1], "2026-11-05", 20, 8);
    crew.exchange_all().unwrap();
    assert_eq!(check(&coach.holdfast, &next, "2026-11-06"), [""; 0]);
    // Twelve weeks later both still count; a day more, and nobody is known.
    assert_eq!(check(&coach.holdfast, &next, "2027-01-28"), [""; 0]);
    assert_eq!(check(&coach.holdfast, &next, "2027-01-29"), [ALONE]);
}

/// Publishing says what checking said, with its place. Nothing is carried to other reps: Ines begins where the plan
/// says, for her strength is not known.
#[test]
fn publishing_tells_the_same() {
    let crew = Crew::start(ROWS, &["Ines"]).unwrap();
    rows(&crew.athletes[0], "2026-11-03", 16, 8);
    rows(&crew.athletes[0], "2026-11-05", 16, 10);
    crew.exchange_all().unwrap();
    crew.coach.go_to("2026-11-06");
    let next = changed(&next_block(), "reps = [8]", "reps = [5]");
    let next = changed(&next, "step = \"4 kg\"", "step = \"4 kg\", start = \"16 kg\"");
    let published = crew.coach.publish(&next).unwrap();
    let note = &published.notes[0];
    assert_eq!((note.line, note.column, published.notes.len()), (24, 32, 1));
    assert!(note.what.starts_with("Ines starts at 16 kg; the next load is 20 kg"), "{note:?}");
    // The same again, checked on the device that has it by now.
    assert_eq!(check(&crew.coach.holdfast, &next, "2026-11-06"), [note.what.as_str()]);
}

#[test]
fn the_program_asks_the_device_that_is_there() {
    let desk = Desk::new();
    let (plan, carrier) = (desk.path("plan.toml"), desk.path("carrier"));
    desk.write("plan.toml", this_week());
    desk.fine("coach", &["start", "--as", "coach", "--name", "Maren"], "");
    desk.fine("coach", &["publish", &plan, "--carrier", &carrier], "");
    desk.fine("ana", &["start", "--as", "athlete", "--name", "Ana"], "");
    desk.pair("coach", "ana");
    desk.fine("ana", &["exchange", "--carrier", &carrier], "");
    desk.fine("ana", &["session"], "50x8\n60x6\n70x5\nfinish 7 50\n");
    desk.fine("ana", &["exchange", "--carrier", &carrier], "");
    desk.fine("coach", &["exchange", "--carrier", &carrier], "");
    let small = changed(&this_week(), "step = [\"2.5 kg\"", "step = [\"1 kg\"");
    desk.write("small.toml", changed(&small, "\"Small block\"", "\"Next block\""));
    let small = desk.path("small.toml");
    let said = desk.fine("coach", &["check", &small], "");
    assert!(said.contains("Ana is at 70 kg; the next load is 72.5 kg, up 4 %."), "{said}");
    let strict = desk.wrong("coach", &["check", &small, "--strict"]);
    assert!(strict.contains("Ana is at 70 kg") && strict.contains("1 problem to fix"), "{strict}");
    let german = desk.fine("coach", &["--lang", "de", "check", &small], "");
    assert!(german.contains("Ana steht bei 70 kg, dann kommt 72,5 kg, 4 % mehr."), "{german}");
    let nobody = desk.fine("nobody", &["check", &small], "");
    assert!(!nobody.contains("Ana") && nobody.contains("no two loads here"), "{nobody}");
    assert!(!std::path::Path::new(&desk.path("nobody")).exists(), "checking makes no home");
    // A home that cannot be opened keeps nobody from checking a plan.
    let newer = Connection::open(desk.path("coach/holdfast.db")).unwrap();
    newer.pragma_update(None, "user_version", 99).unwrap();
    newer.close().unwrap();
    let ran = desk.run("coach", &["check", &small], "");
    assert!(ran.fine && ran.out.contains("no two loads here"), "{ran:?}");
    assert!(ran.err.starts_with("Checked without your members' loads. "), "{ran:?}");
}
