//! `holdfast plates` as a person types it.

use std::path::Path;

use holdfast_tests::{CELLAR_KIT, Desk, SMALL_PLAN, changed};

/// A folder with a kit.
fn desk() -> Desk {
    let desk = Desk::new();
    desk.write("kit.toml", CELLAR_KIT);
    desk
}

/// With a kit from a file, and words between blanks.
fn args<'a>(kit: &'a str, typed: &'a str) -> Vec<&'a str> {
    ["plates", "--kit", kit].into_iter().chain(typed.split(' ')).collect()
}

fn fine(desk: &Desk, kit: &str, typed: &str) -> String {
    let said = desk.fine("nobody", &args(&desk.path(kit), typed), "");
    assert!(!Path::new(&desk.path("nobody")).exists(), "needs no home");
    said
}

fn wrong(desk: &Desk, kit: &str, typed: &str) -> String {
    desk.wrong("nobody", &args(&desk.path(kit), typed))
}

/// The cells of every line, blanks squeezed.
fn lines(text: &str) -> Vec<String> {
    text.lines().map(|line| line.split_whitespace().collect::<Vec<_>>().join(" ")).collect()
}

#[test]
fn one_load_is_answered_with_its_build() {
    let desk = desk();
    // 92.5 - 20 = 72.5, 36.25 a side.
    let said = fine(&desk, "kit.toml", "92.5kg");
    let drawn = "     ██ ██ ▄ ▃▃▃▃\n  ━━━20━10━5━1.25━━━\n";
    let text = "long bar, 20 kg empty\n  92.5 kg: 20 + 10 + 5 + 1.25 kg a side\n";
    assert_eq!(said, format!("{text}{drawn}"));
    assert!(fine(&desk, "kit.toml", "20kg").contains("20 kg: empty bar"));
    // Collars count: 15 + 5 + 2 x 10.
    let said = fine(&desk, "kit.toml", "40kg --bar AXLE");
    assert!(said.contains("axle, 15 kg and collars 5 kg: 20 kg empty"), "{said}");
    assert!(said.contains("40 kg: 10 kg a side"), "{said}");
    // Pounds are loaded on a bar marked in pounds.
    let said = fine(&desk, "kit.toml", "225lb");
    assert!(said.starts_with("pound bar, 45 lb empty\n  225 lb: 45 + 45 lb a side\n"), "{said}");
    // A whole plan has a kit too.
    desk.write("plan.toml", SMALL_PLAN);
    assert!(fine(&desk, "plan.toml", "60kg").contains("60 kg: "));
}

#[test]
fn several_loads_are_a_ramp_with_what_to_do() {
    let desk = desk();
    let said = lines(&fine(&desk, "kit.toml", "60kg 80kg 92.5kg 92.5kg 65kg"));
    assert_eq!(
        said,
        [
            "long bar, 20 kg empty",
            "60 kg: put on 20 kg",
            "██",
            "━━━20━━━",
            "80 kg: put on 10 kg",
            "██ ██",
            "━━━20━10━━━",
            "92.5 kg: put on 5 + 1.25 kg",
            "██ ██ ▄ ▃▃▃▃",
            "━━━20━10━5━1.25━━━",
            "92.5 kg: nothing to change",
            "██ ██ ▄ ▃▃▃▃",
            "━━━20━10━5━1.25━━━",
            "65 kg: take off 1.25 + 5 + 10 kg, put on 2.5 kg",
            "██ ▄▄▄",
            "━━━20━2.5━━━",
            "10 plates put on or taken off each side, until the bar is empty again; nothing needs fewer",
        ]
    );
    let warm_up = |typed: &str| {
        let said = lines(&fine(&desk, "kit.toml", typed));
        let loads = said.iter().filter_map(|line| line.split_once(", warm-up: "));
        loads.map(|(load, _)| load.to_owned()).collect::<Vec<String>>()
    };
    let sets = ["20 kg × 10", "40 kg × 5", "60 kg × 3", "80 kg × 2", "90 kg × 1"];
    assert_eq!(warm_up("100kg --warm-up"), sets);
    assert_eq!(warm_up("100kg --warm-up --from-floor"), ["40 kg × 5", "60 kg × 3", "80 kg × 2"]);
    // As a coach has it: of 72.6 to 82.6 kg, for the set planned at 77.6, only 75 is a multiple of 25.
    let kit = changed(CELLAR_KIT, "[kit]\n", "[kit]\nwarm-up = { multiple = \"25 kg\" }\n");
    desk.write("own.toml", kit);
    let said = fine(&desk, "own.toml", "100kg --warm-up");
    assert!(said.contains("75 kg × 2, warm-up") && !said.contains("80 kg"), "{said}");
    // For 110 kg planned at 20, 45.2, 66.8, 84.8 and 99.2: the nearest loads, in their order, move more plates
    // than those that float.
    let screen = |typed: &str| -> serde_json::Value {
        serde_json::from_str(&fine(&desk, "kit.toml", typed)).unwrap()
    };
    let floats = screen("110kg --warm-up --json");
    let nearest = screen("20kg 45kg 65kg 85kg 100kg 110kg --json");
    let moved = |screen: &serde_json::Value| screen["handled"].as_u64().unwrap();
    assert!(moved(&floats) < moved(&nearest), "{floats} {nearest}");
    assert_eq!(floats["alone"], nearest["alone"]);
    let said = fine(&desk, "kit.toml", "110kg --warm-up");
    let alone = format!("{} with each load built on its own", floats["alone"]);
    assert!(said.contains(&alone), "{said}");
    // The bar is about the load: no warm-up.
    assert_eq!(lines(&fine(&desk, "kit.toml", "20kg --warm-up"))[1], "20 kg: empty bar");
    let screen = fine(&desk, "kit.toml", "60kg 80kg --json");
    let screen: serde_json::Value = serde_json::from_str(&screen).unwrap();
    assert_eq!(screen["handled"], 4);
    assert_eq!(screen["steps"][1]["mass"], 8_000_000_000_000_i64);
}

#[test]
fn a_mixed_kit_puts_pounds_and_kilograms_on_one_bar() {
    let desk = desk();
    desk.write("mixed.toml", changed(CELLAR_KIT, "[kit]\n", "[kit]\nmixed = true\n"));
    assert!(fine(&desk, "mixed.toml", "60kg").contains("60 kg: 20 kg a side"));
    // 45 + 90 lb is 61.2349 kg, and 20 kg + 90 lb 60.8233133 kg: pounds by NIST SP 811, appendix B.
    let said = wrong(&desk, "mixed.toml", "61kg");
    assert!(said.contains("this kit cannot build 61 kg on the long bar"), "{said}");
    assert!(said.contains("nearest are 60.8233133 kg (45 lb a side)"), "{said}");
    // Two pound plates and two of 20 kg on the pound bar: 135 lb and 40 kg.
    let said = fine(&desk, "mixed.toml", "135lb");
    assert!(said.contains("135 lb: 45 lb a side"), "{said}");
}

#[test]
fn what_cannot_be_says_what_can() {
    let desk = desk();
    let cases: [(&str, &[&str]); 15] = [
        ("91kg", &["this kit cannot build 91 kg on the long bar", "90 kg (20 + 10 + 5 kg a side)"]),
        ("60kg 91kg 100kg", &["cannot build 91 kg", "92.5 kg ("]),
        (
            "15kg",
            &["15 kg is lighter than the long bar can be", "the lightest is 20 kg (empty bar)"],
        ),
        (
            "2000kg",
            &[
                "2000 kg is heavier than this kit builds",
                "the heaviest is 172.5 kg (20 + 20 + 10 + 10 + 5 + 5 + 2.5 + 2.5 + 1.25 kg",
            ],
        ),
        ("91kg --warm-up", &["this kit cannot build 91 kg"]),
        ("0kg", &["\"0kg\": a load must be above zero"]),
        ("0.0lb", &["above zero"]),
        ("92.5", &["\"92.5\": Write the unit too", "92.5 kg"]),
        ("NaNkg", &["\"NaNkg\"", "92.5 kg"]),
        ("infkg", &["\"infkg\""]),
        ("1e3kg", &["\"1e3kg\""]),
        ("99999999999kg", &["at most 2000 kg"]),
        ("60.0005kg", &["at most three decimals"]),
        ("-- -60kg", &["\"-60kg\""]),
        ("60kg --bar tube", &["no bar \"tube\"", "This kit has long bar, axle and pound bar."]),
    ];
    for (typed, wanted) in cases {
        let said = wrong(&desk, "kit.toml", typed);
        for part in wanted {
            assert!(said.contains(part), "{typed}: {part} in: {said}");
        }
    }
    let many = vec!["60kg"; 201].join(" ");
    assert!(wrong(&desk, "kit.toml", &many).contains("at most 200 loads at a time; these are 201"));
    // Taken for an option; what to type instead is said.
    assert!(wrong(&desk, "kit.toml", "-60kg").contains("-- -6"));
}

#[test]
fn a_kit_with_a_fault_is_refused_with_its_place() {
    let desk = desk();
    let said = |kit: &str| {
        desk.write("bad.toml", kit);
        wrong(&desk, "bad.toml", "60kg")
    };
    let bare = "[kit]\nplate = [{ mass = \"10 kg\", count = 4 }]\n";
    let found = said(bare);
    assert!(found.contains("bad.toml:1:1: The kit has no bar."), "{found}");
    assert!(found.contains("Add `bar = [{ name"), "{found}");
    let found = said("[kit]\nbar = [{ name = \"long bar\", mass = \"20 kg\" }]\n");
    assert!(found.contains("60 kg is heavier than this kit builds on the long bar"), "{found}");
    assert!(found.contains("20 kg (empty bar)"), "{found}");
    let found = said(&changed(CELLAR_KIT, "[kit]\n", "[kit]\nmixed = \"yes\"\n"));
    assert!(found.contains("bad.toml:2:9: `mixed` can't be \"yes\"."), "{found}");
    assert!(found.contains("Write `true` or `false`"), "{found}");
    let found = said(&changed(
        CELLAR_KIT,
        "count = 2 },\n  { mass = \"45",
        "count = 3 },\n  { mass = \"45",
    ));
    assert!(found.contains("one plate has no pair"), "{found}");
    let found = said("");
    assert!(
        found.contains("bad.toml:1:1: The plan is empty.") && found.contains("[kit]"),
        "{found}"
    );
    assert!(wrong(&desk, "none.toml", "60kg").contains("none.toml"));
}
