//! Notes from where people are: who and where, in place of what anybody might meet.

use catalogue::{Language, speaking};

use super::super::{SetAt, Whereabouts, review_plan};
use super::{LOAD, TODAY, spoilt, there, with_piece};
use crate::fixtures::kg;
use crate::mass::MassUnit;
use crate::plan::{Exercise, Problem};

/// Somebody in the piece "Heavy", a squat, whose sets carry these loads.
fn squats(name: &str, loads: &[&str]) -> Whereabouts {
    whereabouts(name, "Heavy", Exercise::of("squat"), loads)
}

/// Somebody in the piece "Rows", one bell of 8, 9 or 16 kg.
fn rows(name: &str, loads: &[&str]) -> Whereabouts {
    whereabouts(name, "Rows", Exercise::of("row"), loads)
}

fn whereabouts(name: &str, piece: &str, exercise: Exercise, loads: &[&str]) -> Whereabouts {
    let at = |(set, load): (u32, &&str)| SetAt {
        set,
        load: kg(load),
        carried: true,
        proposed: Some(kg(load)),
        made: Some(kg(load)),
    };
    Whereabouts {
        name: name.to_owned(),
        unit: MassUnit::Kg,
        day: "Evening".to_owned(),
        piece: piece.to_owned(),
        exercise,
        sets: (1..).zip(loads).map(at).collect(),
    }
}

fn changed(mut of: Whereabouts, change: impl Fn(&mut SetAt)) -> Whereabouts {
    of.sets.iter_mut().for_each(change);
    of
}

fn notes(text: &str, people: &[Whereabouts]) -> Vec<Problem> {
    review_plan(text.as_bytes(), TODAY, people).unwrap().notes
}

fn whats(text: &str, people: &[Whereabouts]) -> Vec<String> {
    notes(text, people).into_iter().map(|note| note.what).collect()
}

/// The one note of a text for some people, in both languages.
fn one(text: &str, people: &[Whereabouts], at: &str, en: (&str, &str), de: (&str, &str)) {
    for (language, (what, help)) in [(Language::En, en), (Language::De, de)] {
        speaking(language, || {
            let found = notes(text, people);
            let [note] = found.as_slice() else { panic!("{what}: {found:#?}") };
            assert!(there(text, note).starts_with(at), "{note:?}");
            assert_eq!((note.what.as_str(), note.help.as_str()), (what, help));
        });
    }
}

/// The plan with a step that no two loads of the bar are near enough for: 2.5 kg lie between them.
fn small_step() -> String {
    spoilt(LOAD, "{ rule = \"step\", step = \"1 kg\" }")
}

/// The plan with rows of one bell, whose own step of 7 kg reaches whatever the room has but the cap does not.
fn bell_rows(reps: &str, top: &str) -> String {
    let piece = format!("name = \"Rows\"\nmovement = \"row\"\nreps = {reps}\n");
    with_piece(&format!("{piece}load = {{ rule = \"step\", step = \"7 kg\"{top} }}"))
}

#[test]
fn a_step_names_who_it_is_too_small_for() {
    let people = [squats("Ines", &["60", "60"]), squats("Ana", &["60", "62.5"])];
    one(
        &small_step(),
        &people,
        "\"1 kg\"",
        (
            "A step of 1 kg does not reach the next load, so reps rise first. Ines is at 60 kg; the next load is \
             62.5 kg, up 4 %. Ana is at 62.5 kg; the next load is 65 kg, up 4 %.",
            "Write a step of 2.5 kg or more, or add smaller weights to `[kit]`.",
        ),
        (
            "Ein Schritt von 1 kg reicht nicht bis zum nächsten Gewicht, also steigen erst die Wiederholungen. Ines \
             steht bei 60 kg, dann kommt 62,5 kg, 4 % mehr. Ana steht bei 62,5 kg, dann kommt 65 kg, 4 % mehr.",
            "Schreib einen Schritt von mindestens 2,5 kg oder ergänze kleinere Gewichte in `[kit]`.",
        ),
    );
    assert_eq!(whats(&small_step().replace("\"1 kg\"", "\"2.5 kg\""), &people), [""; 0]);
    // From 20 to 22.5 kg is 12.5 %: over a tenth no step helps.
    let note = &notes(&small_step(), &[squats("Ines", &["20", "20"])])[0];
    assert!(note.what.ends_with("up 13 %."), "{note:?}");
    assert_eq!(note.help, "Add a weight between them to `[kit]` if you can.");
}

/// 61 kg is built as 60 here, and what is not carried is where somebody begins.
#[test]
fn who_changes_rooms_or_reps_starts_somewhere() {
    let new = |set: &mut SetAt| set.carried = false;
    let people = [changed(squats("Ines", &["60", "60"]), new), squats("Ana", &["61", "61"])];
    let said = &whats(&small_step(), &people)[0];
    assert!(said.contains("first. Ana and Ines start at 60 kg; the"), "{said}");
    speaking(Language::De, || {
        let said = &whats(&small_step(), &people)[0];
        assert!(said.contains(". Ana und Ines beginnen mit 60 kg, dann"), "{said}");
    });
    // One set that carries it is enough to be there.
    let said = &whats(&small_step(), &[squats("Ana", &["60", "61"])])[0];
    assert!(said.contains("Ana is at 60 kg; the"), "{said}");
}

/// As for the plan alone: of 5 reps three should be left at 16 kg, so 29 at 9; 20 is the most.
#[test]
fn a_gap_names_who_is_before_it() {
    let people = [rows("Ines", &["9"]), rows("Theo", &["9.5"]), rows("Ana", &["8"])];
    one(
        &bell_rows("[5]", ""),
        &people,
        "\"7 kg\"",
        (
            "Ines is at 9 kg; the next load is 16 kg, up 78 %. Even 20 reps do not prepare it. Theo starts at 9 kg; \
             the next load is 16 kg, up 78 %. Even 20 reps do not prepare it.",
            "Add a weight between them to `[kit]` if you can, or let reps rise further: `top = 29`.",
        ),
        (
            "Ines steht bei 9 kg, dann kommt 16 kg, 78 % mehr. Auch 20 Wiederholungen bereiten das nicht vor. Theo \
             beginnt mit 9 kg, dann kommt 16 kg, 78 % mehr. Auch 20 Wiederholungen bereiten das nicht vor.",
            "Ergänze in `[kit]` ein Gewicht dazwischen, wenn du kannst, oder lass die Wiederholungen weiter \
             steigen: `top = 29`.",
        ),
    );
    one(
        &bell_rows("[5]", ", top = 29"),
        &people[..1],
        "\"7 kg\"",
        (
            "Ines is at 9 kg; the next load is 16 kg, up 78 %. It is proposed after 29 reps.",
            "Add a weight between them to `[kit]` if you can.",
        ),
        (
            "Ines steht bei 9 kg, dann kommt 16 kg, 78 % mehr. Es wird nach 29 Wiederholungen vorgeschlagen.",
            "Ergänze in `[kit]` ein Gewicht dazwischen, wenn du kannst.",
        ),
    );
    // The step does not say the same once more, not of the plan either, where a load is not known.
    let small = bell_rows("[5]", "").replace("\"7 kg\"", "\"0.5 kg\"");
    assert_eq!(notes(&small, &[]).len(), 2);
    assert_eq!(notes(&small, &people[..1]).len(), 1);
    assert_eq!(notes(&small, &[rows("Ines", &["9"]), rows("Bo", &[])]).len(), 1);
}

/// Of eight reps four should be left: (30 + 4) x 16 / 9 - 30 is 30.4, so 31; of five 29.
#[test]
fn sets_with_other_reps_take_other_reps() {
    let text = bell_rows("[8, 5]", ", top = 40");
    let both = [rows("Ines", &["9", "16"]), rows("Ana", &["16", "9"])];
    let said = whats(&text, &both);
    assert_eq!(
        said,
        [
            "Ana and Ines are at 9 kg; the next load is 16 kg, up 78 %. It is proposed after 29 to 31 reps."
        ]
    );
    speaking(Language::De, || {
        assert!(whats(&text, &both)[0].ends_with("nach 29 bis 31 Wiederholungen vorgeschlagen."));
    });
}

/// What was made lately comes back with two over in every set.
#[test]
fn a_load_made_before_takes_fewer_reps() {
    let made = |set: &mut SetAt| set.made = Some(kg("16"));
    let back = changed(rows("Ines", &["9", "9"]), made);
    let said = whats(&bell_rows("[8, 6]", ""), &[back]);
    assert!(said[0].ends_with("up 78 %. It is proposed after 10 reps."), "{said:?}");
}

#[test]
fn no_gap_is_told_that_is_not_ahead() {
    let next = |set: &mut SetAt| set.proposed = Some(kg("16"));
    assert_eq!(whats(&bell_rows("[5]", ""), &[changed(rows("Ines", &["9"]), next)]), [""; 0]);
    let next = |set: &mut SetAt| set.proposed = Some(kg("62.5"));
    let said = whats(&small_step(), &[changed(squats("Ines", &["60", "60"]), next)]);
    assert!(
        said[0].contains("Ines is at 60 kg"),
        "reps got her there, and the step stays: {said:?}"
    );
    assert_eq!(whats(&bell_rows("[5]", ""), &[rows("Ines", &["16"])]), [""; 0], "the heaviest");
    assert_eq!(whats(&bell_rows("[5]", ""), &[rows("Ines", &["7"])]).len(), 0, "lighter than all");
    // What hangs on a body goes up pick by pick: no step of it is too small, no gap too wide.
    let dips =
        spoilt("lifted = \"bar\"", "lifted = \"added\"").replace("\"2.5 kg\" }", "\"1 kg\" }");
    assert_eq!(whats(&dips, &[squats("Ines", &["0", "1.25"])]), [""; 0]);
}

/// Somebody whose loads nobody knows may begin anywhere: what the plan says alone stands for them, unless
/// others have said as much.
#[test]
fn people_nobody_knows_are_judged_by_the_plan() {
    let alone = whats(&bell_rows("[5]", ""), &[]);
    assert!(
        alone.len() == 1 && alone[0].starts_with("From 9 kg the next load is 16 kg"),
        "{alone:?}"
    );
    let (new, far) = (rows("Bo", &[]), rows("Ana", &["16"]));
    assert_eq!(whats(&bell_rows("[5]", ""), std::slice::from_ref(&new)), alone);
    assert_eq!(whats(&bell_rows("[5]", ""), &[new.clone(), far.clone()]), alone);
    let named = whats(&bell_rows("[5]", ""), &[new, far, rows("Ines", &["9"])]);
    assert!(named.len() == 1 && named[0].starts_with("Ines is at 9 kg"), "{named:?}");
    // The same of a step.
    let alone = whats(&small_step(), &[]);
    assert_eq!(whats(&small_step(), &[squats("Bo", &[])]), alone);
    let named = whats(&small_step(), &[squats("Bo", &[]), squats("Ines", &["60", "60"])]);
    assert!(named.len() == 1 && named[0].contains("Ines is at 60 kg"), "{named:?}");
    // Of somebody in another piece nothing follows here.
    assert_eq!(whats(&small_step(), &[rows("Ines", &["9"])]), alone);
}

/// Somebody who takes an option is where its loads are: a bell for a bar.
#[test]
fn an_option_is_named() {
    let bell = "because = \"grip\", lifted = \"bell\"";
    let text =
        spoilt("because = \"grip\"", bell).replace(LOAD, "{ rule = \"step\", step = \"7 kg\" }");
    let people = [whereabouts("Ines", "Heavy", Exercise::option_of("squat", "box-squat"), &["9"])];
    let said = whats(&text, &people);
    assert!(said[0].starts_with("Ines (Box squat) is at 9 kg; the next load is 16 kg"), "{said:?}");
}

/// Each unit has a step of its own, written in a place of its own.
#[test]
fn people_are_told_of_at_the_step_of_their_unit() {
    let text = spoilt(LOAD, "{ rule = \"step\", step = [\"2.5 kg\", \"1 lb\"] }")
        .replace("mass = \"15 kg\"", "mass = \"45 lb\"")
        .replace("{ mass = \"5 kg\"", "{ mass = \"2.5 lb\", count = 8 }, { mass = \"5 kg\"");
    let pounds = Whereabouts { unit: MassUnit::Lb, ..squats("Wyatt", &["60", "60"]) };
    let found = notes(&text, &[pounds, squats("Ines", &["60", "60"])]);
    // 60 kg is 132 lb: all that the short bar takes are eight of 2.5 lb, so Wyatt has no more there.
    assert_eq!(found, []);
    let light = changed(squats("Wyatt", &["24", "24"]), |_| ());
    let found = notes(&text, &[Whereabouts { unit: MassUnit::Lb, ..light }]);
    assert!(there(&text, &found[0]).starts_with("\"1 lb\""), "{found:?}");
    assert!(found[0].what.contains("Wyatt starts at 50 lb; the next load is 55 lb"), "{found:?}");
}

/// Forty athletes at many loads are a few lines; seven at one load are five names and two more.
#[test]
fn a_large_crew_is_a_short_note() {
    let loads = ["40", "42.5", "45", "47.5", "50", "52.5", "55"];
    let person = |(at, load): (usize, &&str)| squats(&format!("P{at:02}"), &[load, load]);
    let crew: Vec<_> = loads.iter().cycle().take(49).enumerate().map(person).collect();
    let said = &whats(&small_step(), &crew)[0];
    assert!(said.contains(" P00, P07, P14, P21, P28 and 2 others are at 40 kg;"), "{said}");
    assert!(said.ends_with(" The same holds for 21 others, at other loads."), "{said}");
    assert_eq!(said.matches(" are at ").count(), 4, "{said}");
    // One more name takes no more room than its number; so does a fifth load.
    let few = &whats(&small_step(), &crew[..5])[0];
    assert!(few.matches(" is at ").count() == 5 && !few.contains("other"), "{few}");
    let six: Vec<_> = (0..6).map(|at| squats(&format!("P{at}"), &["60", "60"])).collect();
    let said = &whats(&small_step(), &six)[0];
    assert!(said.contains(" P0, P1, P2, P3, P4 and P5 are at 60 kg;"), "{said}");
    speaking(Language::De, || {
        let said = &whats(&small_step(), &crew)[0];
        assert!(said.contains(" P28 und 2 weitere stehen bei 40 kg,"), "{said}");
        assert!(said.ends_with(" Dasselbe gilt für 21 weitere bei anderen Gewichten."), "{said}");
    });
}

/// 100 kg where somebody made 60 lately: nobody is given them at once. A tenth more is no jump, and neither is what
/// somebody takes an option for.
#[test]
fn loads_that_the_plan_gives_are_held_against_where_people_are() {
    let fixed = |load: &str| spoilt(LOAD, &format!("{{ rule = \"fixed\", loads = \"{load}\" }}"));
    let people =
        [squats("Wy", &["60", "60"]), squats("Ana", &["60", "60"]), squats("Bo", &["95", "95"])];
    let said = whats(&fixed("100 kg"), &people);
    assert_eq!(said, ["100 kg is more than 10 % above the 60 kg that Ana and Wy made lately."]);
    assert_eq!(whats(&fixed("65 kg"), &people), [""; 0]);
    let option = Exercise { option: Some("box".into()), ..Exercise::of("squat") };
    let other = [whereabouts("Wy", "Heavy", option, &["60", "60"])];
    assert_eq!(whats(&fixed("100 kg"), &other), [""; 0]);
    let new = changed(squats("Wy", &["60", "60"]), |set| set.carried = false);
    assert_eq!(whats(&fixed("100 kg"), &[new]), [""; 0]);
}
