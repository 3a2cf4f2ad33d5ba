//! What a coach answers, and what they are told of it: by the core, and by the program as it is typed.

use holdfast_tests::{Desk, changed, this_week};

/// The small plan's day with a light squat of its own behind the squat.
fn two_squats(plan: &str) -> String {
    let light = "  [[day.piece]]\n  kind = \"strength\"\n  name = \"Squat light\"\n  movement = \"back-squat\"\n  \
                 reps = [5, 5]\n  load = { rule = \"step\", step = \"2.5 kg\" }\n\n  [[day.piece]]\n  kind = \"interval\"";
    changed(plan, "  [[day.piece]]\n  kind = \"interval\"", light)
}

/// A coach, and Ana who trained both squats today; the carrier's folder.
fn trained() -> (Desk, String) {
    let desk = Desk::new();
    desk.write("plan.toml", two_squats(&this_week()));
    let (plan, carrier) = (desk.path("plan.toml"), desk.path("carrier"));
    desk.fine("coach", &["start", "--as", "coach", "--name", "Maren"], "");
    desk.fine("coach", &["publish", &plan, "--carrier", &carrier], "");
    desk.fine("ana", &["start", "--as", "athlete", "--name", "Ana"], "");
    desk.fine("ana", &["exchange", "--carrier", &carrier], "");
    let typed =
        "65 x 8, 2 left\n\n65 x 6, 2 left\n\n65 x 5\n\n45 x 5, 2 left\n\n45 x 5, 2 left\nquit\n";
    let said = desk.fine("ana", &["session"], typed);
    assert!(said.contains("Squat light set 2, 45 kg × 5, 2 left"), "{said}");
    desk.fine("ana", &["exchange", "--carrier", &carrier], "");
    desk.fine("coach", &["exchange", "--carrier", &carrier], "");
    (desk, carrier)
}

#[test]
fn two_pieces_of_one_movement_are_told_apart() {
    let (desk, _) = trained();
    for page in [&["board"] as &[&str], &["member", "Ana"]] {
        let said = desk.fine("coach", page, "");
        assert!(said.contains("Back squat (Squat): 65 / 65 / 65 kg ->"), "{said}");
        assert!(said.contains("Back squat (Squat light): 45 / 45 kg ->"), "{said}");
    }
    let refused = desk.wrong("coach", &["answer", "Ana", "Back squat", "refuse"]);
    let asked = "Ana has more than one proposal for Back squat: \"Squat\" and \"Squat light\". Name the piece. \
                 Add --piece and one of these names.";
    assert!(refused.contains(asked), "{refused}");
    for which in [
        &["answer", "ana", "back squat", "refuse", "--piece", "SQUAT LIGHT"] as &[&str],
        &["answer", "Ana", "squat light", "refuse"],
    ] {
        let said = desk.fine("coach", which, "");
        assert!(said.contains("Back squat (Squat light): 45 / 45 kg -> 45 / 45 kg"), "{said}");
    }
    let said = desk.fine("coach", &["board"], "");
    assert!(said.contains("Back squat (Squat): 65 / 65 / 65 kg ->"), "{said}");
    assert!(said.contains("Back squat (Squat light) (refused): 45 / 45 kg"), "{said}");
    let none = desk.wrong("coach", &["answer", "Ana", "Bench", "refuse"]);
    assert!(
        none.contains("proposals for Back squat (Squat) and Back squat (Squat light)."),
        "{none}"
    );
}
