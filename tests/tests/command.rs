//! The program as a person types it: the loop by hand, and what it says when something is wrong.

use std::fs;

use holdfast_tests::{Desk, SMALL_PLAN, changed, this_week};

/// A folder with a plan whose days are this week's.
fn desk() -> Desk {
    let desk = Desk::new();
    desk.write("plan.toml", this_week());
    desk
}

/// A coach who has published and an athlete who has fetched. Gives the carrier's folder.
fn coach_and_ana(desk: &Desk) -> String {
    let (plan, carrier) = (desk.path("plan.toml"), desk.path("carrier"));
    desk.fine("coach", &["start", "--as", "coach", "--name", "Maren"], "");
    desk.fine("coach", &["publish", &plan, "--carrier", &carrier], "");
    desk.fine("ana", &["start", "--as", "athlete", "--name", "Ana"], "");
    desk.pair("coach", "ana");
    desk.fine("ana", &["exchange", "--carrier", &carrier], "");
    carrier
}

#[test]
fn the_whole_loop_by_hand() {
    let desk = desk();
    let (plan, carrier) = (desk.path("plan.toml"), desk.path("carrier"));
    let said = desk.fine("coach", &["start", "--as", "coach", "--name", "Maren"], "");
    assert!(said.contains("coach is set up for Maren, coach\nNext: "), "{said}");
    assert!(said.contains("publish PLAN.toml --carrier"), "{said}");
    assert!(desk.fine("coach", &["check", &plan], "").contains("No problems found"));
    let said = desk.fine("coach", &["publish", &plan, "--carrier", &carrier], "");
    assert!(said.contains("Published Small block") && said.contains("Delivered 1 file."), "{said}");
    desk.fine("ana", &["start", "--as", "athlete", "--name", "Zoë", "--unit", "kg"], "");
    desk.pair("coach", "ana");
    let said = desk.fine("ana", &["exchange", "--carrier", &carrier], "");
    assert!(said.contains("Fetched"), "{said}");
    let said = desk.fine("ana", &["today"], "");
    assert!(said.contains("Back squat on the long bar") && said.contains("you choose"), "{said}");

    // A session through a pipe: a load, a correction of a typing slip, windows by hand and as planned, the
    // rest.
    let typed = "50\nsixty\n\n50 x 8\n\n60 x 6 r2\n\n60 x 7\n15\n12 8\n\n\n10.5 11\nheld 120 95\n\
         11.5 12\nflag low-back 3 chest-pain\n7\n";
    let said = desk.fine("ana", &["session"], typed);
    assert!(said.contains("No load is proposed for this set. Enter the load you used."), "{said}");
    assert!(said.contains("not understood: \"sixty\""), "{said}");
    // Enter ends a rest, and asks where something must be said.
    assert!(said.contains("nothing saved: Type load x reps"), "{said}");
    assert!(said.contains("rest ended"), "{said}");
    assert!(said.contains("Squat set 2, 60 kg × 6, 2 left"), "{said}");
    assert!(said.contains("Corners window 2, 12 done, 8 s to spare"), "{said}");
    assert!(said.contains("Corners window 4, 10 done\n"), "{said}");
    assert!(said.contains("Calves, held left 2 min, right 1 min 35 s"), "{said}");
    // Nothing was left to do any more, and pain is still heard.
    assert!(said.contains("low back 3/10, emergency signs: chest pain"), "{said}");
    assert!(said.contains("Enter: Finish, then get emergency care."), "{said}");
    assert!(said.contains("Session finished and saved."), "{said}");
    let said = desk.fine("ana", &["today"], "");
    assert!(said.contains("Done for today"), "{said}");
    assert!(said.contains("left: +1.0 cm, within the measurement error (1.9 cm)"), "{said}");
    desk.fine("ana", &["exchange", "--carrier", &carrier], "");
    desk.fine("coach", &["exchange", "--carrier", &carrier], "");
    // With an emergency sign open there is no load for anything, and no answer gives one.
    let said = desk.fine("coach", &["board"], "");
    assert!(said.contains("Zoë  1 of ") && !said.contains("62.5 kg"), "{said}");
    let said = desk.wrong("coach", &["answer", "zoë", "Back squat", "change", "--load", "70"]);
    assert!(said.contains("Nothing is proposed for the last set"), "{said}");
    desk.fine("coach", &["clear", "--member", "zoë"], "");
    // The first time after it everything is a tenth lighter.
    let said = desk.fine("coach", &["board"], "");
    assert!(said.contains("50 / 60 / 60 kg -> 45 / 52.5 / 52.5 kg"), "{said}");
    let said = desk.fine(
        "coach",
        &["answer", "zoë", "Back squat", "change", "--load", "50", "--words", "Steady."],
        "",
    );
    assert!(said.contains("/ 50 kg"), "{said}");
    let said = desk.wrong("coach", &["answer", "zoë", "Back squat", "change", "--load", "80"]);
    assert!(said.contains("so at most 65 kg. To send it all the same"), "{said}");
    desk.fine("coach", &["exchange", "--carrier", &carrier], "");
    desk.fine("ana", &["exchange", "--carrier", &carrier], "");
    let said = desk.fine("ana", &["today", "--day", "Any evening"], "");
    assert!(said.contains("coach changed; last time 60 kg:") && said.contains("Steady"), "{said}");
    desk.fine("coach", &["report", &desk.path("report.html")], "");
    assert!(fs::read_to_string(desk.path("report.html")).unwrap().contains("Zoë"));
    let said = desk.fine("coach", &["export", &desk.path("export")], "");
    assert!(said.contains("sets.csv"), "{said}");
    assert!(fs::read_to_string(desk.path("export/sets.csv")).unwrap().contains("Zoë"));
    let said = desk.wrong("coach", &["export", &desk.path("export")]);
    assert!(said.contains("not empty"), "{said}");
}

#[test]
fn a_session_left_open_goes_on_and_flags_options_and_clocks_work_by_hand() {
    let desk = desk();
    let carrier = coach_and_ana(&desk);
    let said = desk.fine("ana", &["session"], "50x8\nflag knee 4\nquit\n");
    assert!(said.contains("knee 4/10") && said.contains("Session left open"), "{said}");
    // The rest stands above the next set.
    assert!(
        said.contains("\nrest: 2 min of 2 min to go (from the plan)\nBack squat, set 2 of 3"),
        "{said}"
    );
    let said = desk.fine(
        "ana",
        &["session"],
        "option box-squat\n40x6\nundo\nskip\nbegin\n\npause\nresume\nstop\nskip\n?\n\
         skip\n\nstop\n",
    );
    // A clock that ended asks before the next line.
    assert!(said.contains("still to log, starting with 1.\nCorners, window 1 of 4"), "{said}");
    assert!(
        said.contains("\nStopped just now. Nothing held.\nCalves: Calf stretch at the wall"),
        "{said}"
    );
    assert!(said.contains("nothing saved: Get ready. The first window is next."), "{said}");
    assert!(said.contains("Squat to a box"), "{said}");
    assert!(said.contains("Stop this movement for today"), "{said}");
    assert!(said.contains("Squat set 2, 40 kg × 6"), "{said}");
    assert!(said.contains("undone: Squat set 2, 40 kg × 6"), "{said}");
    assert!(
        said.contains("Corners, clock started") && said.contains("Corners, clock stopped"),
        "{said}"
    );
    assert!(said.contains("the readings, left and right"), "{said}");
    desk.fine("ana", &["exchange", "--carrier", &carrier], "");
    desk.fine("coach", &["exchange", "--carrier", &carrier], "");
    let said = desk.fine("coach", &["board"], "");
    assert!(said.contains("PAIN") && said.contains("option"), "{said}");
    assert!(
        desk.fine("coach", &["clear", "--member", "Ana"], "")
            .contains("Cleared: knee 4/10 in Back squat")
    );
    assert!(desk.wrong("coach", &["clear", "--member", "Ana"]).contains("Ana has no open flag."));
}

#[test]
fn an_athlete_can_put_right_what_slipped() {
    let desk = desk();
    coach_and_ana(&desk);
    // An odd load is saved and asked about; an earlier set and window can be corrected; one side
    // given for two is asked for again; a bad reading takes nothing with it; Enter rates nothing.
    let typed = "61 X 8\n60 × 6\nset 1 60 x 8 R2\n70x5\n15\nwindow 1 12 9\noption none\n\n\n\n\
                 -5 3\n10 11\nheld 120\nheld 120 95\nskip\n\nflag knee 2\n8\n";
    let said = desk.fine("ana", &["session"], typed);
    assert!(
        said.contains("This room cannot build 61 kg; the nearest are 60 kg and 62.5 kg"),
        "{said}"
    );
    assert!(said.contains("Squat set 1, 60 kg × 8"), "{said}");
    assert!(said.contains("A reading here is between 0.0 cm"), "{said}");
    assert!(!said.contains("right 3.0"), "{said}");
    assert!(said.contains("Type whole seconds for each side"), "{said}");
    // More than can have passed since the session was begun a moment ago.
    assert!(said.contains("really? 3 min 35 s held in all, only 0 s into"), "{said}");
    assert!(said.contains("nothing saved: Type a rating from 0 to 10, or `finish`"), "{said}");
    assert!(said.contains("Session finished and saved."), "{said}");
    // Rated 8 by mistake: opened again, then rated 7. And the athlete clears their own flag.
    let said = desk.fine("ana", &["session"], "undo\nset 3 70 x 6\nfinish 7\n");
    assert!(said.contains("undone: session finished, 8 of 10"), "{said}");
    let said = desk.fine("ana", &["session"], "6\n");
    assert!(said.contains("session finished, 6 of 10") && !said.contains("left open"), "{said}");
    let said = desk.fine("ana", &["member"], "");
    assert!(said.contains("Ana") && said.contains("Time under stretch"), "{said}");
    let page = desk.fine("ana", &["member", "--json"], "");
    let page: serde_json::Value = serde_json::from_str(&page).unwrap();
    assert_eq!(page["sessions"][0]["rpe"], 6);
}

#[test]
fn a_wrong_carrier_is_refused() {
    let desk = desk();
    let plan = desk.path("plan.toml");
    for (coach, carrier) in [("one", "carrier-one"), ("two", "carrier-two")] {
        desk.fine(coach, &["start", "--as", "coach", "--name", coach], "");
        desk.fine(coach, &["publish", &plan, "--carrier", &desk.path(carrier)], "");
    }
    let said = desk.wrong("one", &["exchange", "--carrier", &desk.path("carrier-two")]);
    assert!(said.contains("belongs to another crew. Nothing was put there."), "{said}");
    assert_eq!(fs::read_dir(desk.path("carrier-two")).unwrap().count(), 1);
    let said = desk.wrong("one", &["exchange", "--carrier", &desk.path("carier-one")]);
    assert!(said.contains("There is no such folder"), "{said}");
    let said = desk.wrong("one", &["exchange", "--carrier", &plan]);
    assert!(said.contains("A carrier is a folder"), "{said}");
}

#[test]
fn bad_plans_are_refused_with_every_place() {
    let desk = desk();
    let check = |content: &[u8]| {
        desk.write("bad.toml", content);
        desk.wrong("nobody", &["check", &desk.path("bad.toml")])
    };
    let plan = SMALL_PLAN;
    // Where a text stands, as `line:column`.
    let at = |text: &str| {
        let line = plan.lines().position(|line| line.contains(text)).unwrap();
        let column = plan.lines().nth(line).unwrap().find(text).unwrap();
        format!("bad.toml:{}:{}", line + 1, column + 1)
    };
    let reps = changed(plan, "reps = [8, 6, 5]", "reps = [8, -6, 5]");
    let cases: [(String, &[&str]); 7] = [
        (changed(plan, "weeks = 2", "wekes = 2"), &[&at("weeks = 2"), "wekes", "weeks"]),
        (reps.clone(), &[&at("6, 5]"), "-6", "1 to 100"]),
        (changed(plan, "\"Corners\"", "\"Squat\""), &[&at("\"Corners\""), "Squat"]),
        (
            changed(plan, "load = \"16 kg\"", "load = \"18.3 kg\""),
            &[&at("\"16 kg\" }"), "18.3 kg", "16 kg"],
        ),
        (
            changed(plan, "\"low-back\"", "\"tired\""),
            &[&at("\"low-back\""), "tired", "grip", "low-back"],
        ),
        (
            changed(plan, "\"hold\"", "\"plank\""),
            &[&at("\"hold\""), "plank", "strength", "interval"],
        ),
        (String::new(), &["bad.toml:1:1", "empty"]),
    ];
    for (content, wanted) in cases {
        let said = check(content.as_bytes());
        for part in wanted {
            assert!(said.contains(part), "{part} in: {said}");
        }
    }
    // Two at once: both are there.
    let said = check(changed(&reps, "weeks = 2", "wekes = 2").as_bytes());
    assert!(said.contains(&at("weeks = 2")) && said.contains(&at("6, 5]")), "{said}");
    assert!(said.contains("has 2 problems to fix"), "{said}");
    let said = check(b"[block]\nname = \"\xff\"\n");
    assert!(said.contains("bad.toml:2:9") && said.contains("UTF-8"), "{said}");
    let said = check(&vec![b'#'; 5 * 1024 * 1024]);
    assert!(said.contains("5,242,880") && said.contains("30,720"), "{said}");
    let said = desk.wrong("nobody", &["check", &desk.path("none.toml")]);
    assert!(said.contains("none.toml"), "{said}");
}

#[test]
fn wrong_turns_say_what_to_do() {
    let desk = desk();
    let said = desk.wrong("nobody", &["today"]);
    assert!(said.contains("is not set up yet. Run: holdfast --home"), "{said}");
    desk.fine("ana", &["start", "--as", "athlete", "--name", "Ana"], "");
    let said = desk.wrong("ana", &["start", "--as", "athlete", "--name", "Bea"]);
    assert!(said.contains("is already Ana's"), "{said}");
    let said = desk.fine("ana", &["today"], "");
    assert!(said.contains("Exchange with your coach"), "{said}");
    let said = desk.wrong("ana", &["session"]);
    assert!(said.contains("No plan has arrived yet"), "{said}");
    let said = desk.wrong("ana", &["board"]);
    assert!(said.contains("Only coaches see the board"), "{said}");
    let said = desk.wrong("ana", &["start", "--as", "referee", "--name", "X"]);
    assert!(said.contains("coach, athlete"), "{said}");
    desk.fine("coach", &["start", "--as", "coach", "--name", "Maren"], "");
    let said = desk.wrong("coach", &["member", "Zed"]);
    assert!(said.contains("No member's log has arrived yet"), "{said}");
    let said = desk.fine("coach", &["board"], "");
    assert!(said.contains("Publish a plan"), "{said}");
    let help = desk.fine("nobody", &["--help"], "");
    for command in [
        "demo", "start", "check", "publish", "today", "session", "exchange", "board", "member",
        "report", "export",
    ] {
        assert!(help.contains(command), "{command} in {help}");
    }
}

#[test]
fn output_into_a_pipe_has_no_colour() {
    let desk = desk();
    desk.fine("coach", &["start", "--as", "coach", "--name", "Maren"], "");
    assert!(!desk.fine("coach", &["board"], "").contains('\u{1b}'));
    assert!(!desk.wrong("coach", &["today"]).contains('\u{1b}'));
}

/// Notes are told and nothing fails; `--strict` makes them what bad plans say.
#[test]
fn notes_on_a_plan_are_told_and_strictly_refused() {
    let desk = desk();
    let plan = fs::read_to_string(desk.path("plan.toml")).unwrap();
    assert!(
        desk.fine("nobody", &["check", &desk.path("plan.toml"), "--strict"], "")
            .contains("No problems")
    );
    let odd = changed(&plan, "window = \"1 min\"", "window = \"7 s\"");
    desk.write("odd.toml", &odd);
    let path = desk.path("odd.toml");
    let line = odd.lines().position(|line| line.contains("reps = 15")).unwrap();
    let column = odd.lines().nth(line).unwrap().find("15").unwrap();
    let place = format!("odd.toml:{}:{}: ", line + 1, column + 1);
    let said = desk.fine("nobody", &["check", &path], "");
    assert!(said.contains(&format!("{place}note: 15 reps do not fit into 7 s.")), "{said}");
    assert!(said.ends_with("No problems found. 1 note.\n"), "{said}");
    let said = desk.fine("nobody", &["--lang", "de", "check", &path], "");
    assert!(said.contains("Hinweis: 15 Wiederholungen passen nicht in 7 s."), "{said}");
    let said = desk.wrong("nobody", &["check", &path, "--strict"]);
    assert!(said.contains(&format!("{place}15 reps do not fit")), "{said}");
    assert!(said.contains("has 1 problem to fix"), "{said}");
    // Publishing says them too, and publishes.
    desk.fine("coach", &["start", "--as", "coach", "--name", "Maren"], "");
    let said = desk.fine("coach", &["publish", &path, "--carrier", &desk.path("carrier")], "");
    assert!(said.contains("note: 15 reps") && said.contains("Published Small block"), "{said}");
}
