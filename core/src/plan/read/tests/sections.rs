//! Bad plans: the block, the kit, movements, stretches and days.

use super::{Case, PLAN, bad, check, good, places, spoilt};
use crate::mass::Mass;
use crate::plan::Builds;
use crate::plan::read::{MAX_PLAN_BYTES, read_kit, read_plan};

#[test]
fn a_text_that_is_no_plan_at_all() {
    for blank in ["", " \n\t\n", "\u{feff}", "# only a remark\n"] {
        let problems = bad(blank);
        assert_eq!(places(&problems), [(1, 1, "The plan is empty.")], "{blank:?}");
        assert!(problems[0].help.contains("[block]"));
    }
    let large = "#".repeat(MAX_PLAN_BYTES + 1);
    let problems = bad(&large);
    let what = "The plan has 30,721 bytes; 30,720 is the most.";
    assert_eq!(places(&problems), [(1, 1, what)]);
    assert_eq!(problems[0].help, "Split it into blocks.");
    let problems = read_plan(b"# \xc3\xbc\n# \xc3\xbc \xfc\n").unwrap_err();
    let what = "The plan is not UTF-8 text: byte 0xFC can't be read.";
    assert_eq!(places(&problems), [(2, 5, what)]);
    let problems = bad("[kit]\n");
    assert_eq!(places(&problems), [(1, 1, "A plan needs `block`."), (1, 1, "A plan needs `day`.")]);
}

#[test]
fn the_block() {
    let long = format!("\"{}\"", "x".repeat(61));
    let cases: &[Case<'_>] = &[
        ("name = \"Cellar\"\n", "", 1, 1, "A block needs `name`", "Add `name = "),
        ("\"Cellar\"", "\"\"", 2, 8, "`name` is empty", "at least one letter"),
        ("\"Cellar\"", "\" \"", 2, 8, "`name` is empty", "at least one letter"),
        ("\"Cellar\"", &long, 2, 8, "`name` has 61 characters", "Shorten it by 1 character"),
        ("\"Cellar\"", "\"a\\tb\"", 2, 8, "can't be shown (U+0009)", "on one line"),
        ("\"Cellar\"", "7", 2, 8, "`name` can't be 7.", "double quotes"),
        ("2026-11-02", "2026-11-03", 3, 10, "2026-11-03 is a Tuesday", "before is 2026-11-02"),
        ("2026-11-02", "2026-11-08", 3, 10, "2026-11-08 is a Sunday", "after is 2026-11-09"),
        (
            "2026-11-02",
            "\"2026-11-02\"",
            3,
            10,
            "`starts` can't be \"2026-11-02\".",
            "quotes: `2026-11-02`",
        ),
        (
            "2026-11-02",
            "2026-11-02T08:00:00",
            3,
            10,
            "`starts` can't be 2026-11-02T08:00:00.",
            "year-month-day",
        ),
        ("2026-11-02", "08:00:00", 3, 10, "`starts` can't be 08:00:00.", "year-month-day"),
        ("weeks = 3", "weeks = 0", 4, 9, "`weeks` can't be 0.", "from 1 to 26."),
        ("weeks = 3", "weeks = 27", 4, 9, "`weeks` can't be 27.", "from 1 to 26."),
        ("weeks = 3", "weeks = \"3\"", 4, 9, "`weeks` can't be \"3\".", "without quotes: `3`"),
        ("weeks = 3", "weeks = 3.0", 4, 9, "`weeks` can't be 3.0.", "from 1 to 26, without quotes"),
        ("weeks = 3", "week = 3", 4, 1, "A block has no `week`", "Did you mean `weeks`?"),
        ("weeks = 3", "weeks = 3\ncolour = 1", 5, 1, "`colour`", "Possible keys: `name`, "),
        ("[kit]", "[kits]", 6, 2, "A plan has no `kits`", "Did you mean `kit`?"),
    ];
    check(cases);
}

#[test]
fn the_kit() {
    let bar = "mass = \"20 kg\" }";
    let many = format!("[{}]", "{ mass = \"1 kg\", count = 2 }, ".repeat(41));
    let cases: &[Case<'_>] = &[
        ("\"20 kg\"", "20", 7, 36, "`mass` can't be 20.", "\"20 kg\" or \"20 lb\""),
        ("\"20 kg\"", "20.5", 7, 36, "`mass` can't be 20.5.", "\"20.5 kg\" or \"20.5 lb\""),
        ("\"20 kg\"", "-20", 7, 36, "`mass` can't be -20.", "in double quotes with its unit"),
        ("\"20 kg\"", "\"20\"", 7, 36, "`mass` can't be \"20\".", "unit too: \"20 kg\""),
        ("\"20 kg\"", "\"3 st\"", 7, 36, "`mass` can't be \"3 st\".", "a number and a unit"),
        (
            "\"20 kg\"",
            "\"9000 kg\"",
            7,
            36,
            "`mass` can't be \"9000 kg\".",
            "at most 2000 kg or 4000 lb",
        ),
        (
            "\"20 kg\"",
            "\"0.0001 kg\"",
            7,
            36,
            "`mass` can't be \"0.0001 kg\".",
            "at most three decimals",
        ),
        ("\"20 kg\"", "\"0 kg\"", 7, 36, "`mass` can't be \"0 kg\".", "Write a weight above zero."),
        ("\"20 kg\"", "true", 7, 36, "`mass` can't be true.", "\"92.5 kg\""),
        (
            bar,
            "mass = \"20 kg\", collars = \"5 lb\" }",
            7,
            55,
            "`collars` can't be \"5 lb\".",
            "Write it in kg, like its bar.",
        ),
        (bar, "mass = \"20 kg\", count = 51 }", 7, 53, "`count` can't be 51.", "from 1 to 50."),
        (
            bar,
            "mass = \"20 kg\", length = 2 }",
            7,
            45,
            "A bar has no `length`.",
            "`collars` and `count`",
        ),
        (bar, "count = 2 }", 7, 8, "A bar needs `mass`", "Add `mass = \"20 kg\"`"),
        ("bar = [{", "bar = [\"x\", {", 7, 8, "`bar` can't hold \"x\".", "Write `bar = ["),
        (
            "plate = [",
            "plate = [\n  { mass = \"10.0 kg\", count = 2 },",
            10,
            12,
            "10 kg is already listed on line 9",
            "add the counts up",
        ),
        ("bar = [", "mixed = 1\nbar = [", 7, 9, "`mixed` can't be 1.", "quotes"),
        (
            "bar = [",
            "warm-up = {}\nbar = [",
            7,
            11,
            "This sets nothing for warm-ups.",
            "Write `warm-up",
        ),
        ("bar = [", "warm-up = 5\nbar = [", 7, 11, "`warm-up` can't be 5.", "Write `warm-up"),
        (
            "bar = [",
            "warm-up = { smallest = \"5 kg\", multiple = \"10 lb\" }\nbar = [",
            7,
            43,
            "`multiple` can't be \"10 lb\".",
            "Write it in kg, like `smallest`.",
        ),
        (
            "bar = [",
            "warm-up = { multiple = \"0 kg\" }\nbar = [",
            7,
            24,
            "`multiple` can't be \"0 kg\".",
            "above zero",
        ),
        (
            "bar = [",
            "warm-up = { smalest = \"5 kg\" }\nbar = [",
            7,
            13,
            "`warm-up` has no `smalest`",
            "mean `smallest`?",
        ),
        ("bar = [", "mix = true\nbar = [", 7, 1, "A kit has no `mix`", "mean `mixed`?"),
        ("count = 4", "count = 3", 9, 29, "`count` is 3; one plate has no pair.", "2 or 4"),
        ("count = 4", "count = 1", 9, 29, "`count` can't be 1.", "from 2 to 200."),
        (", count = 4", "", 9, 3, "A plate needs `count`", "Add `count = 4`"),
        ("count = 2 }]\n", "count = 101 }]\n", 12, 35, "`count` can't be 101.", "from 1 to 100."),
        (
            "bell = [",
            "bell = [{ mass = \"16 kg\", count = 1 }, ",
            12,
            49,
            "16 kg is already listed on line 12",
            "List each weight once and add the counts up.",
        ),
    ];
    check(cases);
    let problems = bad(&spoilt("plate = [", &format!("plate = {many}\nplates = [")));
    assert_eq!(places(&problems)[0], (8, 9, "`plate` has 41 entries; 40 is the most."));
    assert!(problems[1].what.contains("A kit has no `plates`"), "{problems:#?}");
    let problems = bad(&spoilt("plate = [", "plate = 3\nplates = ["));
    assert_eq!(places(&problems)[0], (8, 9, "`plate` can't be 3."));
    let twice = "bar = [{ name = \"long bar\", mass = \"15 kg\" }, ";
    let problems = bad(&spoilt("bar = [", twice));
    let what = "The bar on line 7 is called \"long bar\" too.";
    assert_eq!(places(&problems), [(7, 56, what)]);
}

#[test]
fn a_kit_that_mixes_units() {
    // 10 kg and twice 10 lb a side: 20 + 2 x (10 + 4.5359237) kg is in no unit's thousandths, so
    // what a plan can write is still a load of one unit; but the pounds count for the kg bar.
    let pounds = "mass = \"10 lb\", count = 4 },\n  { mass = \"2.5 kg\"";
    let mixed = spoilt("mass = \"2.5 kg\"", pounds).replace("plate = [", "mixed = true\nplate = [");
    let block = good(&mixed);
    assert!(block.kit.mixed && !good(&spoilt("plate = [", "mixed = false\nplate = [")).kit.mixed);
    let builds = Builds::bar(&block.kit, &block.kit.bars[0]);
    assert!(builds.exactly(Mass::kg(40) + Mass::lb(20)).is_some());
    // Plates that are few loads in each unit and too many together.
    let list = |unit: &str, odd: &[i64]| -> String {
        odd.iter().map(|mass| format!("{{ mass = \"{mass}.7 {unit}\", count = 10 }},")).collect()
    };
    let plates = format!("plate = [{}{}]", list("kg", &[1, 3, 8, 21]), list("lb", &[2, 5, 13, 34]));
    let kit = format!("[kit]\nbar = [{{ name = \"x\", mass = \"9 kg\" }}]\n{plates}\n");
    assert!(read_kit(kit.as_bytes()).is_ok());
    let problems = read_kit(format!("{kit}mixed = true\n").as_bytes()).unwrap_err();
    assert_eq!(places(&problems), [(3, 9, "`plate` makes more than 10,000 different loads.")]);
    assert!(problems[0].help.contains("`mixed = false`"), "{problems:#?}");
}

#[test]
fn a_kit_alone() {
    let kit = |text: &str| read_kit(text.as_bytes());
    assert_eq!(kit(PLAN).unwrap(), good(PLAN).kit);
    // Nothing but the kit is read.
    assert_eq!(kit(&spoilt("weeks = 3", "weeks = 99")).unwrap(), good(PLAN).kit);
    let (start, end) = (PLAN.find("[kit]").unwrap(), PLAN.find("[movement").unwrap());
    assert_eq!(kit(&PLAN[start..end]).unwrap(), good(PLAN).kit);
    let problems = kit(&spoilt("count = 4", "count = 3")).unwrap_err();
    assert_eq!(places(&problems), [(9, 29, "`count` is 3; one plate has no pair.")]);
    let problems = kit("[kit]\nname = \"Shed\"\n").unwrap_err();
    assert_eq!(places(&problems), [(1, 1, "The kit has no bar.")]);
    assert!(problems[0].help.contains("long bar"), "{problems:#?}");
    assert_eq!(places(&kit("[block]\n").unwrap_err()), [(1, 1, "A plan needs `kit`.")]);
    assert_eq!(places(&kit("[kits]\n").unwrap_err()), [(1, 2, "A plan has no `kits`.")]);
    let problems = kit("").unwrap_err();
    assert_eq!(places(&problems), [(1, 1, "The plan is empty.")]);
    assert!(problems[0].help.contains("[kit]"), "{problems:#?}");
}

#[test]
fn plates_nobody_can_sort_out() {
    let odd = [1.001, 2.003, 3.007, 5.013, 7.021, 11.033, 13.047, 17.059, 19.071, 23.083];
    let odd = odd.map(|mass| format!("{{ mass = \"{mass} kg\", count = 200 }}")).join(", ");
    let text = spoilt("plate = [", &format!("plate = [{odd},"));
    let text =
        text.replace("rule = \"step\", step = \"2.5 kg\"", "rule = \"fixed\", loads = \"41 kg\"");
    let what = "`plate` makes more than 10,000 different loads.";
    assert_eq!(places(&bad(&text)), [(8, 9, what)]);
}

#[test]
fn movements_and_stretches() {
    let long = format!(
        "[movement.{}]\nname = \"X\"\npattern = \"push\"\nlifted = \"body\"\n\n",
        "x".repeat(41)
    );
    let cases: &[Case<'_>] = &[
        ("[stretch.calf]", &format!("{long}[stretch.calf]"), 30, 11, "can't be a key", "1 to 40"),
        ("[movement.press-up]", "[movement.Press_Up]", 25, 11, "`Press_Up` can't be", "hyphens"),
        ("name = \"Squat\"\n", "", 14, 1, "A movement needs `name`", "Add `name"),
        ("pattern = \"squat\"\n", "", 14, 1, "A movement needs `pattern`", "Add `pattern"),
        ("lifted = \"bar\"\n", "", 14, 1, "A movement needs `lifted`", "Add `lifted"),
        (
            "\"hinge\"",
            "\"hnige\"",
            22,
            11,
            "`pattern` can't be \"hnige\"",
            "Did you mean \"hinge\"?",
        ),
        ("\"hinge\"", "\"twist\"", 22, 11, "`pattern` can't be", "Write \"squat\", \"hinge\", "),
        ("\"hinge\"", "3", 22, 11, "`pattern` can't be 3.", "word in double quotes"),
        ("\"sore-legs\"", "\"sore legs\"", 18, 48, "can't be \"sore legs\"", "mean \"sore-legs\"?"),
        (", because = \"sore-legs\"", "", 18, 18, "An option needs `because`", "\"low-back\""),
        ("option.step-up", "option.Step", 18, 8, "`Step` can't be a key", "small letters"),
        (
            "option.step-up",
            "options.step-up",
            18,
            1,
            "A movement has no `options`.",
            "mean `option`?",
        ),
        ("region = \"calves\"\n", "", 30, 1, "A stretch needs `region`", "Add `region"),
        (
            "region = \"calves\"",
            "area = \"calves\"\nregion = \"x\"",
            32,
            1,
            "`area`",
            "Possible keys: `name` and `region`.",
        ),
    ];
    check(cases);
    let problems =
        bad(&spoilt("[[day]]", "[movement]\nsquat = 1\n\n[[day]]").replace("[movement.", "[x."));
    assert!(places(&problems).contains(&(35, 9, "`squat` can't be 1.")), "{problems:#?}");
    let problems = bad("movement = [1]\nstretch = 2\n");
    let what = "`movement` can't be a list.";
    assert!(places(&problems).contains(&(1, 12, what)), "{problems:#?}");
}

#[test]
fn days() {
    let cases: &[Case<'_>] = &[
        ("name = \"Evening\"\n", "", 34, 1, "A day needs `name`", "Add `name"),
        ("on = [\"tuesday\"]\n", "", 34, 1, "A day needs `on`", "Add `on = ["),
        ("[\"tuesday\"]", "[]", 36, 6, "`on` is empty", "Write `on = ["),
        ("[\"tuesday\"]", "\"tuesday\"", 36, 6, "`on` can't be \"tuesday\".", "square brackets"),
        (
            "[\"tuesday\"]",
            "[\"Tuesday\"]",
            36,
            7,
            "`on` can't hold \"Tuesday\"",
            "mean \"tuesday\"?",
        ),
        (
            "[\"tuesday\"]",
            "[\"tue\"]",
            36,
            7,
            "`on` can't hold \"tue\"",
            "Did you mean \"tuesday\"?",
        ),
        ("[\"tuesday\"]", "[2]", 36, 7, "`on` can't hold 2.", "in double quotes"),
        ("[\"tuesday\"]", "[\"friday\", \"friday\"]", 36, 17, "\"friday\" is listed twice", "out"),
        ("\"]\n\n", "\"]\nweeks = [0]\n", 37, 10, "`weeks` can't hold 0.", "from 1 to 3."),
        ("\"]\n\n", "\"]\nweeks = [1, 4]\n", 37, 13, "`weeks` can't hold 4.", "from 1 to 3."),
        ("\"]\n\n", "\"]\nweeks = [2, 2]\n", 37, 13, "2 is listed twice", "Take one of them out."),
        ("\"]\n\n", "\"]\nweeks = []\n", 37, 9, "`weeks` is empty", "weeks = [1, 2]"),
        ("\"]\n\n", "\"]\nat = 8\n", 37, 1, "A day has no `at`", "Possible keys: `name`, `on`"),
        (
            "[[day]]",
            "[[day]]\nname = \"Evening\"\non = [\"monday\"]\npiece = [{ kind = \"note\", name = \"A\", \
             text = \"B\" }]\n\n[[day]]",
            40,
            8,
            "The name \"Evening\" is already on line 35",
            "Give each day of a block its own name.",
        ),
        (
            "[[day]]\n",
            "[[day]]\nname = \"Rest\"\non = [\"monday\"]\n[[day]]\n",
            34,
            1,
            "A day needs `piece`",
            "[[day.piece]]",
        ),
    ];
    check(cases);
    let problems = bad(&spoilt("[[day]]", "[day]"));
    assert_eq!(places(&problems), [(34, 1, "`day` can't be a table.")]);
    let problems = bad(&spoilt("[[day]]", "[[days]]").replace("[[day.", "[[days."));
    assert_eq!(places(&problems), [(34, 3, "A plan has no `days`.")]);
}
