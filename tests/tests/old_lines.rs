//! Lines that lie in somebody's journal already. They are frozen: a line here is never changed, and what
//! this version or a later one writes otherwise is added beside it.

use std::collections::BTreeSet;

use holdfast_core::journal::{Body, Entry, Role};
use holdfast_core::{DeviceId, Language};
use holdfast_tests::train::squats;
use holdfast_tests::{Crew, Device, SMALL_PLAN, Writer, changed};
use serde_json::Value;

/// Who wrote them.
const WRITER: &str = "1f202122-2324-4526-a728-292a2b2c2d2e";

/// Whose device that was.
const PERSON: &str = "2f303132-3334-4536-b738-393a3b3c3d3e";

/// One of every kind, as the first version wrote them.
pub(super) const LINES: [&str; 16] = [
    r#"{"v":1,"n":1,"hlc":{"ms":1793642400000,"count":0},"t":"2026-11-02T18:00:00.000+00:00","k":"profile","id":"01a19d6b-0900-7702-8b97-3d7d77944a86","body":{"person":"2f303132-3334-4536-b738-393a3b3c3d3e","name":"Zoë","role":"athlete","unit":"kg","crew":null}}"#,
    r#"{"v":1,"n":2,"hlc":{"ms":1793642400000,"count":1},"t":"2026-11-02T18:00:00.000+00:00","k":"plan","id":"01a19d6b-0900-7813-9ffd-f5624fe889d8","body":{"block":"Small block","text":"[block]\nname = \"Small block\"\n"}}"#,
    r#"{"v":1,"n":3,"hlc":{"ms":1793728801000,"count":0},"t":"2026-11-03T18:00:01.000+00:00","k":"session","id":"01a1a291-68e8-752e-997d-f8898d2cf624","body":{"plan":{"d":"38393a3b-3c3d-4e3f-8041-424344454647","n":2},"block":"Small block","day":"Any evening","week":1,"date":"2026-11-03","at":{"wall_ms":1793728801000,"offset_min":0,"boot_ms":1793728801000,"boot_id":"test"}}}"#,
    r#"{"v":1,"n":4,"hlc":{"ms":1793728802000,"count":0},"t":"2026-11-03T18:00:02.000+00:00","k":"lift","id":"01a1a291-6cd0-78f0-b986-5186290d05eb","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Squat","exercise":"back-squat","scheme":{"reps":[8,6,5],"open":true},"set":1,"planned":null,"load":5000000000000,"reps":8,"reserve":1,"at":{"wall_ms":1793728802000,"offset_min":0,"boot_ms":1793728802000,"boot_id":"test"}}}"#,
    r#"{"v":1,"n":5,"hlc":{"ms":1793728806000,"count":0},"t":"2026-11-03T18:00:06.000+00:00","k":"rest","id":"01a1a291-7c70-7399-b2ab-3710f95a089e","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Squat","set":1,"act":"minute","at":{"wall_ms":1793728806000,"offset_min":0,"boot_ms":1793728806000,"boot_id":"test"}}}"#,
    r#"{"v":1,"n":6,"hlc":{"ms":1793728807000,"count":0},"t":"2026-11-03T18:00:07.000+00:00","k":"option","id":"01a1a291-8058-7c18-8102-fb625207d8b1","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Squat","movement":"back-squat","option":"box-squat","because":"low-back"}}"#,
    r#"{"v":1,"n":7,"hlc":{"ms":1793728808000,"count":0},"t":"2026-11-03T18:00:08.000+00:00","k":"window","id":"01a1a291-8440-7ff6-b7b8-7dce7c1b1f34","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Corners","window":1,"exercise":"bell-swing","asked":15,"reps":15,"load":1600000000000,"spare_ms":9000,"margin_ms":10000,"at":{"wall_ms":1793728808000,"offset_min":0,"boot_ms":1793728808000,"boot_id":"test"}}}"#,
    r#"{"v":1,"n":8,"hlc":{"ms":1793728809000,"count":0},"t":"2026-11-03T18:00:09.000+00:00","k":"range","id":"01a1a291-8828-7aaa-9d70-5032de1484fe","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Calves","protocol":"knee-to-wall","when":"before","side":1,"tenths":100}}"#,
    r#"{"v":1,"n":9,"hlc":{"ms":1793728810000,"count":0},"t":"2026-11-03T18:00:10.000+00:00","k":"clock","id":"01a1a291-8c10-7e13-8ca4-58b3d065f0a3","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Calves","mark":{"act":"begin","at":{"wall_ms":1793728810000,"offset_min":0,"boot_ms":1793728810000,"boot_id":"test"}},"station":null}}"#,
    r#"{"v":1,"n":10,"hlc":{"ms":1793728911000,"count":0},"t":"2026-11-03T18:01:51.000+00:00","k":"hold","id":"01a1a293-1698-7c73-928c-444620073b0e","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Calves","stretch":"calf-wall","region":"calves","side":1,"technique":"static","asked_ms":120000,"held_ms":96000,"short":"stopped","said":null,"at":{"wall_ms":1793728911000,"offset_min":0,"boot_ms":1793728911000,"boot_id":"test"}}}"#,
    r#"{"v":1,"n":11,"hlc":{"ms":1793728912000,"count":0},"t":"2026-11-03T18:01:52.000+00:00","k":"put-off","id":"01a1a293-1a80-7f2c-b2fc-77439ce3e55e","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Corners","part":"work","until":"later","at":{"wall_ms":1793728912000,"offset_min":0,"boot_ms":1793728912000,"boot_id":"test"}}}"#,
    r#"{"v":1,"n":12,"hlc":{"ms":1793728913000,"count":0},"t":"2026-11-03T18:01:53.000+00:00","k":"flag","id":"01a1a293-1e68-7b31-95ee-ff29d79d1afe","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Squat","exercise":"back-squat/box-squat","place":"hip","severity":2,"signs":[]}}"#,
    r#"{"v":1,"n":13,"hlc":{"ms":1793728914000,"count":0},"t":"2026-11-03T18:01:54.000+00:00","k":"clear","id":"01a1a293-2250-703a-9ef9-5c35a4cd76e4","body":{"flag":"01a1a293-1e68-7b31-95ee-ff29d79d1afe","session":"01a1a291-68e8-752e-997d-f8898d2cf624"}}"#,
    r#"{"v":1,"n":14,"hlc":{"ms":1793728915000,"count":0},"t":"2026-11-03T18:01:55.000+00:00","k":"taken-back","id":"01a1a291-8828-7aaa-9d70-5032de1484fe","par":[{"d":"1f202122-2324-4526-a728-292a2b2c2d2e","n":8}],"body":{}}"#,
    r#"{"v":1,"n":15,"hlc":{"ms":1793728916000,"count":0},"t":"2026-11-03T18:01:56.000+00:00","k":"finish","id":"01a1a293-2a20-74ac-9a54-5f5edf1298c7","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","rpe":7,"minutes":45}}"#,
    r#"{"v":1,"n":16,"hlc":{"ms":1793815200000,"count":0},"t":"2026-11-04T18:00:00.000+00:00","k":"ruling","id":"01a1a7b7-c100-7501-bc82-a10139f03830","body":{"person":"2f303132-3334-4536-b738-393a3b3c3d3e","exercise":"back-squat","scheme":"8,6,5 open","after":"01a1a291-68e8-752e-997d-f8898d2cf624","decision":"accept","loads":[5000000000000,null,6123496995000],"words":"Gut so – weiter!"}}"#,
];

/// A profile as it is written since people choose the language they read.
const IN_GERMAN: &str = r#"{"v":1,"n":1,"hlc":{"ms":1793642400000,"count":0},"t":"2026-11-02T18:00:00.000+00:00","k":"profile","id":"01a19d6b-0900-7702-8b97-3d7d77944a86","body":{"person":"2f303132-3334-4536-b738-393a3b3c3d3e","name":"Zoë","role":"athlete","unit":"kg","language":"de","crew":null}}"#;

/// A set as it is written since it says which plates are on the bar.
const WITH_PLATES: &str = r#"{"v":1,"n":4,"hlc":{"ms":1793728802000,"count":0},"t":"2026-11-03T18:00:02.000+00:00","k":"lift","id":"01a1a291-6cd0-78f0-b986-5186290d05eb","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Squat","exercise":"back-squat","scheme":{"reps":[8,6,5],"open":true},"set":1,"planned":null,"load":5000000000000,"reps":8,"reserve":1,"side":[1000000000000,500000000000],"at":{"wall_ms":1793728802000,"offset_min":0,"boot_ms":1793728802000,"boot_id":"test"}}}"#;

/// A set as it is written since it says whether the athlete gave the reps.
const COUNTED: &str = r#"{"v":1,"n":4,"hlc":{"ms":1793728802000,"count":0},"t":"2026-11-03T18:00:02.000+00:00","k":"lift","id":"01a1a291-6cd0-78f0-b986-5186290d05eb","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Squat","exercise":"back-squat","scheme":{"reps":[8,6,5],"open":true},"set":1,"planned":null,"load":5000000000000,"reps":8,"reserve":1,"counted":true,"side":[1000000000000,500000000000],"at":{"wall_ms":1793728802000,"offset_min":0,"boot_ms":1793728802000,"boot_id":"test"}}}"#;

/// A set as it is written since it says which bar it was.
const ON_A_BAR: &str = r#"{"v":1,"n":4,"hlc":{"ms":1793728802000,"count":0},"t":"2026-11-03T18:00:02.000+00:00","k":"lift","id":"01a1a291-6cd0-78f0-b986-5186290d05eb","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Squat","exercise":"back-squat","scheme":{"reps":[8,6,5],"open":true},"set":1,"planned":null,"load":5000000000000,"reps":8,"reserve":1,"bar":"short bar","side":[1000000000000,500000000000]}}"#;

/// A bar taken instead of the plan's.
const BAR: &str = r#"{"v":1,"n":6,"hlc":{"ms":1793728807000,"count":0},"t":"2026-11-03T18:00:07.000+00:00","k":"bar","id":"01a1a291-8058-7c18-8102-fb625207d8b2","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Squat","exercise":"back-squat","planned":"long bar","bar":"short bar","on":null}}"#;

/// What later versions write otherwise.
pub(super) const LATER: [&str; 26] = [
    ADMITTED,
    REMOVED,
    STOPPED,
    HERE,
    FORGOT,
    ON_A_BAR,
    BAR,
    BETWEEN,
    UNPLANNED,
    IN_GERMAN,
    WITH_PLATES,
    COUNTED,
    OF_A_LINE,
    WITH_PROPOSAL,
    ON_A_TRACK,
    ASIDE,
    NOTED,
    TESTED,
    AFTERWARDS,
    SET_ON,
    OPTION_ON,
    WINDOW_ON,
    RANGE_ON,
    HOLD_ON,
    FLAG_ON,
    FINISH_ON,
];

/// A session as it is written since one can be written afterwards.
const AFTERWARDS: &str = r#"{"v":1,"n":3,"hlc":{"ms":1793728801000,"count":0},"t":"2026-11-03T18:00:01.000+00:00","k":"session","id":"01a1a291-68e8-752e-997d-f8898d2cf624","body":{"plan":{"d":"38393a3b-3c3d-4e3f-8041-424344454647","n":2},"block":"Small block","day":"Any evening","week":1,"date":"2026-11-01","afterwards":true,"at":{"wall_ms":1793728801000,"offset_min":0,"boot_ms":1793728801000,"boot_id":"test"}}}"#;

/// A set of a movement that nobody planned.
const UNPLANNED: &str = r#"{"v":1,"n":4,"hlc":{"ms":1793728802000,"count":0},"t":"2026-11-03T18:00:02.000+00:00","k":"lift","id":"01a1a291-6cd0-78f0-b986-5186290d05eb","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Face pull","track":"extra","exercise":"face-pull","scheme":{"reps":[],"open":false},"set":1,"planned":null,"load":5000000000000,"reps":8,"reserve":1,"at":{"wall_ms":1793728802000,"offset_min":0,"boot_ms":1793728802000,"boot_id":"test"},"on":"2026-11-01"}}"#;

/// A set of it.
const SET_ON: &str = r#"{"v":1,"n":4,"hlc":{"ms":1793728802000,"count":0},"t":"2026-11-03T18:00:02.000+00:00","k":"lift","id":"01a1a291-6cd0-78f0-b986-5186290d05eb","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Squat","exercise":"back-squat","scheme":{"reps":[8,6,5],"open":true},"set":1,"planned":null,"load":5000000000000,"reps":8,"reserve":1,"at":{"wall_ms":1793728802000,"offset_min":0,"boot_ms":1793728802000,"boot_id":"test"},"on":"2026-11-01"}}"#;

/// An option of it.
const OPTION_ON: &str = r#"{"v":1,"n":6,"hlc":{"ms":1793728807000,"count":0},"t":"2026-11-03T18:00:07.000+00:00","k":"option","id":"01a1a291-8058-7c18-8102-fb625207d8b1","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Squat","movement":"back-squat","option":"box-squat","because":"low-back","on":"2026-11-01"}}"#;

/// A window of it.
const WINDOW_ON: &str = r#"{"v":1,"n":7,"hlc":{"ms":1793728808000,"count":0},"t":"2026-11-03T18:00:08.000+00:00","k":"window","id":"01a1a291-8440-7ff6-b7b8-7dce7c1b1f34","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Corners","window":1,"exercise":"bell-swing","asked":15,"reps":15,"load":1600000000000,"spare_ms":9000,"margin_ms":10000,"at":{"wall_ms":1793728808000,"offset_min":0,"boot_ms":1793728808000,"boot_id":"test"},"on":"2026-11-01"}}"#;

/// A reading of it.
const RANGE_ON: &str = r#"{"v":1,"n":8,"hlc":{"ms":1793728809000,"count":0},"t":"2026-11-03T18:00:09.000+00:00","k":"range","id":"01a1a291-8828-7aaa-9d70-5032de1484fe","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Calves","protocol":"knee-to-wall","when":"before","side":1,"tenths":100,"on":"2026-11-01"}}"#;

/// A side of a hold of it.
const HOLD_ON: &str = r#"{"v":1,"n":10,"hlc":{"ms":1793728911000,"count":0},"t":"2026-11-03T18:01:51.000+00:00","k":"hold","id":"01a1a293-1698-7c73-928c-444620073b0e","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Calves","stretch":"calf-wall","region":"calves","side":1,"technique":"static","asked_ms":120000,"held_ms":96000,"short":"stopped","said":null,"at":{"wall_ms":1793728911000,"offset_min":0,"boot_ms":1793728911000,"boot_id":"test"},"on":"2026-11-01"}}"#;

/// A flag raised between two sessions: readers before it keep and carry it.
const BETWEEN: &str = r#"{"v":1,"n":12,"hlc":{"ms":1793728913000,"count":0},"t":"2026-11-03T18:01:53.000+00:00","k":"flag","id":"01a1a293-1e68-7b31-95ee-ff29d79d1afe","body":{"session":null,"piece":null,"exercise":null,"place":"hip","severity":2,"signs":[],"on":"2026-11-01"}}"#;

/// A flag of it.
const FLAG_ON: &str = r#"{"v":1,"n":12,"hlc":{"ms":1793728913000,"count":0},"t":"2026-11-03T18:01:53.000+00:00","k":"flag","id":"01a1a293-1e68-7b31-95ee-ff29d79d1afe","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Squat","exercise":"back-squat/box-squat","place":"hip","severity":2,"signs":[],"on":"2026-11-01"}}"#;

/// Its end.
const FINISH_ON: &str = r#"{"v":1,"n":15,"hlc":{"ms":1793728916000,"count":0},"t":"2026-11-03T18:01:56.000+00:00","k":"finish","id":"01a1a293-2a20-74ac-9a54-5f5edf1298c7","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","rpe":7,"minutes":45,"on":"2026-11-01"}}"#;

/// A set as it is written since it keeps what was proposed for the whole piece.
const WITH_PROPOSAL: &str = r#"{"v":1,"n":4,"hlc":{"ms":1793728802000,"count":0},"t":"2026-11-03T18:00:02.000+00:00","k":"lift","id":"01a1a291-6cd0-78f0-b986-5186290d05eb","body":{"session":"01a1a291-68e8-752e-997d-f8898d2cf624","piece":"Squat","track":"Heavy","exercise":"back-squat","scheme":{"reps":[8,6,5],"open":true},"easy":false,"proposed":[{"load":5000000000000,"reps":8,"open":false},{"load":6000000000000,"reps":6,"open":false},{"load":null,"reps":5,"open":true}],"max":8570000000000,"set":1,"planned":5000000000000,"load":67500000000000,"reps":8,"reserve":1,"doubt":true,"side":null,"at":null}}"#;

/// An answer as it is written since it names the track.
const ON_A_TRACK: &str = r#"{"v":1,"n":16,"hlc":{"ms":1793815200000,"count":0},"t":"2026-11-04T18:00:00.000+00:00","k":"ruling","id":"01a1a7b7-c100-7501-bc82-a10139f03830","body":{"person":"2f303132-3334-4536-b738-393a3b3c3d3e","exercise":"back-squat","scheme":"8,6,5 open","track":"Squat","after":"01a1a291-68e8-752e-997d-f8898d2cf624","decision":"accept","loads":[5000000000000,null,6123496995000],"words":"Gut so – weiter!"}}"#;

/// A coach's word that a set is left out.
const ASIDE: &str = r#"{"v":1,"n":17,"hlc":{"ms":1793815200000,"count":1},"t":"2026-11-04T18:00:00.000+00:00","k":"set-aside","id":"01a1a7b7-c100-7501-bc82-a10139f03831","body":{"lift":"01a1a291-6cd0-78f0-b986-5186290d05eb","aside":true}}"#;

/// An athlete's note on a set.
const NOTED: &str = r#"{"v":1,"n":24,"hlc":{"ms":1793815200000,"count":8},"t":"2026-11-04T18:00:00.000+00:00","k":"note","id":"01a1a7b7-c100-7501-bc82-a10139f03836","body":{"person":"2f303132-3334-4536-b738-393a3b3c3d3e","session":"01a1a291-68e8-752e-997d-f8898d2cf624","about":"01a1a291-6cd0-78f0-b986-5186290d05eb","piece":"Squat","exercise":"back-squat","words":"Griff rutschte – Magnesia?","on":null}}"#;

/// A single taken as a test.
const TESTED: &str = r#"{"v":1,"n":18,"hlc":{"ms":1793815200000,"count":2},"t":"2026-11-04T18:00:00.000+00:00","k":"max","id":"01a1a7b7-c100-7501-bc82-a10139f03832","body":{"person":"2f303132-3334-4536-b738-393a3b3c3d3e","exercise":"back-squat","load":10000000000000,"tested":true}}"#;

/// A member taken in.
const ADMITTED: &str = r#"{"v":1,"n":19,"hlc":{"ms":1793815200000,"count":3},"t":"2026-11-04T18:00:00.000+00:00","k":"admit","id":"457e0295-312d-8e89-bc6f-517e1af3d830","body":{"person":"457e0295-312d-8e89-bc6f-517e1af3d830","sign":"8a88e3dd7409f195fd52db2d3cba5d72ca6709bf1d94121bf3748801b40f6f5c","open":"0faa684ed28867b97f4a6a2dee5df8ce974e76b7018e3f22a1c4cf2678570f20","label":"Zoë"}}"#;

/// The same taken out again, as far as a leaf.
const REMOVED: &str = r#"{"v":1,"n":20,"hlc":{"ms":1793815200000,"count":4},"t":"2026-11-04T18:00:00.000+00:00","k":"remove","id":"457e0295-312d-8e89-bc6f-517e1af3d830","par":[{"d":"1f202122-2324-4526-a728-292a2b2c2d2e","n":19,"h":"358c594634cf6103"}],"body":{"person":"457e0295-312d-8e89-bc6f-517e1af3d830","device":null,"heads":[{"device":"1f202122-2324-8526-a728-292a2b2c2d2e","sequence":3,"content":"8a88e3dd7409f195fd52db2d3cba5d72ca6709bf1d94121bf3748801b40f6f5c"}]}}"#;

/// A person's own word on a device. What is signed is read by another part.
const STOPPED: &str = r#"{"v":1,"n":21,"hlc":{"ms":1793815200000,"count":5},"t":"2026-11-04T18:00:00.000+00:00","k":"stop","id":"01a1a7b7-c100-7501-bc82-a10139f03833","body":{"of":"457e0295-312d-8e89-bc6f-517e1af3d830","stop":"AQ"}}"#;

/// A device that writes from now on.
const HERE: &str = r#"{"v":1,"n":22,"hlc":{"ms":1793815200000,"count":6},"t":"2026-11-04T18:00:00.000+00:00","k":"here","id":"01a1a7b7-c100-7501-bc82-a10139f03834","body":{}}"#;

/// Somebody forgotten on the device that says so.
const FORGOT: &str = r#"{"v":1,"n":23,"hlc":{"ms":1793815200000,"count":7},"t":"2026-11-04T18:00:00.000+00:00","k":"forgot","id":"01a1a7b7-c100-7501-bc82-a10139f03835","body":{"person":"457e0295-312d-8e89-bc6f-517e1af3d830"}}"#;

/// The reading of line 8 taken back, as it is written since an entry names the line it replaces.
const OF_A_LINE: &str = r#"{"v":1,"n":14,"hlc":{"ms":1793728915000,"count":0},"t":"2026-11-03T18:01:55.000+00:00","k":"taken-back","id":"01a1a291-8828-7aaa-9d70-5032de1484fe","par":[{"d":"1f202122-2324-4526-a728-292a2b2c2d2e","n":8,"h":"358c594634cf6103"}],"body":{}}"#;

pub(super) fn writer() -> DeviceId {
    serde_json::from_value(Value::from(WRITER)).unwrap()
}

/// A kind added to the journal without a frozen line fails here.
#[test]
fn every_kind_there_is_has_a_line_and_every_line_still_reads() {
    let mut seen = BTreeSet::new();
    for line in LINES.into_iter().chain(LATER) {
        let entry = Entry::read(writer(), line).unwrap();
        let body = serde_json::from_str::<Value>(line).unwrap()["body"].to_string();
        let body = Body::decode(&entry.kind, &body).unwrap_or_else(|| panic!("{line}"));
        assert_eq!(body.kind(), entry.kind);
        seen.insert(body.kind());
    }
    assert_eq!(seen, Body::KINDS.iter().copied().collect::<BTreeSet<_>>());
}

#[test]
fn a_profile_says_which_language_was_chosen_and_without_one_says_none() {
    let chosen = [LINES[0], IN_GERMAN].map(|line| {
        assert!(Entry::read(writer(), line).is_ok(), "{line}");
        let body = serde_json::from_str::<Value>(line).unwrap()["body"].to_string();
        let Some(Body::Profile(profile)) = Body::decode("profile", &body) else { panic!("{line}") };
        profile.language
    });
    assert_eq!(chosen, [None, Some(Language::De)]);
}

/// A coach's device takes in a leaf of lines, as somebody of the crew would have written them.
fn take_in(crew: &Crew, lines: &[&str]) {
    let zoe = Device::start(crew.folder().join("zoe"), "Zoë", Role::Athlete, 60).unwrap();
    crew.join(&zoe).unwrap();
    let [maren, zoe] = [&crew.coach, &zoe].map(Writer::at);
    let told = |line: &&str| {
        let line = line.replace(WRITER, &zoe.device().to_string());
        line.replace(PERSON, &zoe.person().to_string())
    };
    let told: Vec<String> = lines.iter().map(told).collect();
    let leaf = zoe.writes((maren.crew(), zoe.person()), None, &told);
    let report = crew.coach.take_in(&[zoe.seals(&leaf, &[&maren])]).unwrap();
    assert_eq!((report.leaves, report.entries), (1, lines.len() as u64), "{report:?}");
}

/// An entry that names a line takes back that line, and no other of the same number.
#[test]
fn a_line_that_names_a_line_replaces_that_one_alone() {
    let other = changed(OF_A_LINE, "358c594634cf6103", "0123456789abcdef");
    for (line, ranges) in [(LINES[13], 0), (OF_A_LINE, 0), (&other, 1)] {
        let crew = Crew::start(SMALL_PLAN, &[]).unwrap();
        let mut lines = LINES;
        lines[13] = line;
        take_in(&crew, &lines);
        let page = crew.coach.holdfast.member("Zoë".into(), "2026-11-03".parse().unwrap()).unwrap();
        assert_eq!(page.ranges.len(), ranges, "{line}");
    }
}

/// They still say what they said: a coach's device that gets them shows the session, counts none of them as
/// only for a newer app, and folds them alike again.
#[test]
fn a_leaf_of_old_lines_folds_to_what_it_said() {
    let crew = Crew::start(SMALL_PLAN, &[]).unwrap();
    take_in(&crew, &LINES);
    let date = "2026-11-03".parse().unwrap();
    let board = crew.coach.holdfast.board(date).unwrap();
    assert!(board.arrivals.is_empty(), "{:?}", board.arrivals);
    let page = crew.coach.holdfast.member("Zoë".into(), date).unwrap();
    let session = &page.sessions[0];
    assert_eq!((session.sets, session.rpe, session.minutes), (1, Some(7), Some(45)));
    assert_eq!(page.options.len(), 1);
    assert!(page.ranges.is_empty(), "taken back");
    assert!(!page.discomfort[0].open, "cleared");
    assert!(!crew.coach.holdfast.refold().unwrap());
}

/// A set logged before schemes had one of their fields is of the scheme that does without that field: it is
/// still what was lifted last time, and the next loads go on from it.
#[test]
fn a_set_without_a_later_field_of_its_scheme_still_counts_as_last_time() {
    let plan = changed(SMALL_PLAN, "  open = true\n", "");
    let plan = changed(&plan, r#", earned_step = ["5 kg", "10 lb"], earned_by = 3"#, "");
    let crew = Crew::start(&plan, &["Ines"]).unwrap();
    let ines = &crew.athletes[0];
    squats(ines, "2026-11-03", &[(50, 8), (60, 6), (70, 5)]);
    ines.exchange(&crew.carrier).unwrap();
    let [own, maren] = [ines, &crew.coach].map(Writer::at);
    let now = own.opens(&maren, &crew.carrier.leaves_of(ines).pop().unwrap());
    let (later, early) =
        (r#""scheme":{"reps":[8,6,5],"open":false}"#, r#""scheme":{"reps":[8,6,5]}"#);
    assert!(now.entries.iter().any(|entry| entry.raw.contains(later)));
    let old = own.rewrites(&now, |line| line.replace(later, early), &[&maren]);
    crew.coach.take_in(&crew.carrier.leaves_of(ines)[..1]).unwrap();
    let report = crew.coach.take_in(&[old]).unwrap();
    assert_eq!(report.leaves, 1, "{report:?}");
    let page = crew.coach.holdfast.member("Ines".into(), "2026-11-05".parse().unwrap()).unwrap();
    assert_eq!(page.proposals[0].next_text, "52.5 / 62.5 / 72.5 kg");
}
