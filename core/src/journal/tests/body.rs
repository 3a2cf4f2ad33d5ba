//! What bodies read and keep of lines that are older or newer than this app.

use catalogue::Language;

use crate::journal::{Body, Profile};

#[test]
fn a_correction_keeps_what_a_newer_app_wrote() {
    let newer = r#"{"flag":"0199aa00-0000-7000-8000-000000000000","told":"by phone"}"#;
    let body = Body::decode("clear", newer).unwrap();
    assert!(body.encode_over(newer).unwrap().get().contains(r#""told":"by phone""#));
    // As it stands, whatever numbers are to us.
    for kept in [r#""told":1e400"#, r#""told":1.0000000000000000001"#, r#""told":[1E2,-0]"#] {
        let newer = newer.replace(r#""told":"by phone""#, kept);
        let body = Body::decode("clear", &newer).unwrap();
        assert!(body.encode_over(&newer).unwrap().get().contains(kept), "{kept}");
    }
}

/// Lines as they were written before rest, start stations and reasons were.
#[test]
fn entries_of_an_older_shape_still_read() {
    let session = "0199aa00-0000-7000-8000-000000000000";
    let lift = format!(
        r#"{{"session":"{session}","piece":"Squat","exercise":"squat","scheme":{{"reps":[5],
        "open":false}},"set":1,"planned":null,"load":null,"reps":5,"reserve":2}}"#
    );
    let Some(Body::Lift(lift)) = Body::decode("lift", &lift) else { panic!("not a lift") };
    assert_eq!((lift.reserve, lift.at), (Some(2), None));
    let at = r#"{"wall_ms":1,"offset_min":0,"boot_ms":2,"boot_id":"a"}"#;
    let mark =
        format!(r#"{{"session":"{session}","piece":"C","mark":{{"act":"begin","at":{at}}}}}"#);
    let Some(Body::ClockMark(mark)) = Body::decode("clock", &mark) else { panic!("no mark") };
    assert_eq!((mark.mark.at.boot_ms, mark.station), (2, None));
    let profile = format!(
        r#"{{"person":"{session}","name":"Zoë","role":"athlete","unit":"kg","crew":null}}"#
    );
    let Some(Body::Profile(profile)) = Body::decode("profile", &profile) else { panic!("nobody") };
    assert_eq!((profile.name.as_str(), profile.language), ("Zoë", None));
    let held = format!(
        r#"{{"session":"{session}","piece":"C","stretch":"calf","region":"calves","side":1,
        "technique":"static","asked_ms":120000,"held_ms":90000}}"#
    );
    let Some(Body::Held(held)) = Body::decode("hold", &held) else { panic!("not a hold") };
    assert_eq!((held.held_ms, held.short, held.said), (90_000, None, None));
}

/// A language that only a newer app speaks is left out; the person who reads it stays.
#[test]
fn a_language_that_is_not_known_here_is_none() {
    let read = |language: &str| {
        let person = "0199aa00-0000-7000-8000-000000000000";
        let line = format!(
            r#"{{"person":"{person}","name":"Zoë","role":"athlete","unit":"kg","language":{language},"crew":null}}"#
        );
        let Some(Body::Profile(profile)) = Body::decode("profile", &line) else { panic!("nobody") };
        profile.language
    };
    let [en, de] = [Some(Language::En), Some(Language::De)];
    assert_eq!([r#""en""#, r#""de""#, r#""rm""#, "null"].map(read), [en, de, None, None]);
}

/// Going back to no language must not leave the one that was chosen before.
#[test]
fn a_choice_taken_back_is_written() {
    let before = r#"{"person":"0199aa00-0000-7000-8000-000000000000","name":"Zoë","role":"athlete","unit":"kg","language":"de","crew":null}"#;
    let Some(Body::Profile(profile)) = Body::decode("profile", before) else { panic!("nobody") };
    let none = Body::Profile(Profile { language: None, ..profile });
    assert!(none.encode_over(before).unwrap().get().contains(r#""language":null"#));
}

#[test]
fn an_unknown_kind_is_no_body() {
    assert_eq!(Body::decode("sauna", "{}"), None);
    assert_eq!(Body::decode("finish", r#"{"minutes":-1}"#), None);
}
