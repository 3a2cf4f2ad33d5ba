//! What is written to disk and drawn on screens, as it is today: a change here is a change of a
//! format, and needs a decision.

use holdfast_core::Mass;
use holdfast_core::care::Place;
use holdfast_core::clock::Act;
use holdfast_core::journal::{RestAct, Until};
use holdfast_core::plan::MeasuredWhen;
use holdfast_core::session::{SideKeyKind, Tap};
use holdfast_tests::taps::{
    begin, begin_day, clear, clock, finish, flag, held, kg, option, put_off, range, set, squat,
    window,
};
use holdfast_tests::views::flags;
use holdfast_tests::{Crew, SMALL_PLAN, Writer};

/// A crew in which every kind of entry that an athlete writes is written once.
fn one_of_each() -> Crew {
    let crew = Crew::start(SMALL_PLAN, &["Zoë"]).unwrap();
    let zoe = &crew.athletes[0];
    zoe.go_to("2026-11-03");
    zoe.tap(begin()).unwrap();
    zoe.tap(kg(50)).unwrap();
    zoe.tap(squat(Some(1), None, Some(9), Some(1))).unwrap();
    zoe.tap(set(Some(Mass::lb(135)), None)).unwrap();
    zoe.tap(Tap::Undo).unwrap();
    zoe.tap(Tap::Rest { act: RestAct::Minute }).unwrap();
    zoe.tap(option(Some("box-squat"))).unwrap();
    zoe.tap(window(None, None, Some(9_000))).unwrap();
    zoe.tap(range(MeasuredWhen::Before, Some(1), 100)).unwrap();
    zoe.tap(clock("Calves", Act::Begin)).unwrap();
    zoe.pass(100_000);
    zoe.tap(held(&[], None)).unwrap();
    zoe.tap(put_off("Corners", Until::Later)).unwrap();
    let hip = flags(&zoe.tap(flag(Place::Hip, 2, &[])).unwrap())[0].flag;
    zoe.tap(clear(hip)).unwrap();
    zoe.tap(flag(Place::Knee, 3, &[])).unwrap();
    zoe.tap(finish(7, 45)).unwrap();
    zoe.exchange(&crew.carrier).unwrap();
    crew
}

#[test]
fn leaves_are_written_as_before() {
    let crew = one_of_each();
    let mut text = String::new();
    let maren = Writer::at(&crew.coach);
    for file in crew.carrier.files() {
        // Sealing draws by chance: what is sealed is the same each time.
        let leaf = maren.opens(&maren, &file);
        text += &format!("--- {}\n{}\n", &file.name[..50], leaf.header_line);
        text.extend(leaf.entries.iter().map(|entry| format!("{}\n", entry.raw)));
    }
    // The plan's own text is another file's business.
    let plan = serde_json::to_string(SMALL_PLAN).unwrap();
    insta::assert_snapshot!("leaves", text.replace(&plan, "\"(the plan)\""));
}

#[test]
fn screens_are_drawn_as_before() {
    let crew = one_of_each();
    insta::assert_json_snapshot!("session_screen", crew.athletes[0].today().unwrap());
    crew.coach.exchange(&crew.carrier).unwrap();
    let date = "2026-11-03".parse().unwrap();
    insta::assert_json_snapshot!("board_screen", crew.coach.holdfast.board(date).unwrap());
    let page = crew.coach.holdfast.member("Zoë".into(), date).unwrap();
    insta::assert_json_snapshot!("member_screen", page);
}

/// Whatever is tapped: the screen that comes back is the one a fresh start would show, for nothing
/// is kept that is not on disk. Only what this process has given aloud no other can know.
mod kept {
    use proptest::prelude::*;

    use super::*;

    fn any_tap() -> impl Strategy<Value = Tap> {
        let maybe = proptest::option::of::<std::ops::Range<u32>>;
        prop_oneof![
            4 => (maybe(1..4), proptest::option::of(20_i64..100), maybe(0..12))
                .prop_map(|(set, load, reps)| squat(set, load, reps, None)),
            2 => (maybe(1..5), 0_i64..60_000)
                .prop_map(|(number, spare)| window(number, None, Some(spare))),
            1 => any::<bool>().prop_map(|on| option(on.then_some("box-squat"))),
            3 => (any::<bool>(), proptest::sample::select(Act::ALL))
                .prop_map(|(holds, act)| clock(if holds { "Calves" } else { "Corners" }, act)),
            1 => any::<bool>().prop_map(|end| {
                Tap::Rest { act: if end { RestAct::End } else { RestAct::Minute } }
            }),
            1 => (proptest::sample::select(&["Squat", "Corners", "Calves"]), any::<bool>())
                .prop_map(|(piece, later)| {
                    put_off(piece, if later { Until::Later } else { Until::Left })
                }),
            1 => Just(Tap::ClearFlags { flags: vec![] }),
            1 => Just(held(&[], None)),
            1 => (0_i64..300).prop_map(|tenths| range(MeasuredWhen::Before, None, tenths)),
            1 => (1_u32..11).prop_map(|severity| flag(Place::Hip, severity, &[])),
            2 => Just(Tap::Undo),
            1 => Just(finish(5, 30)),
            1 => Just(begin_day("Any evening")),
        ]
    }

    proptest! {
        #![proptest_config(ProptestConfig { cases: 12, ..ProptestConfig::default() })]

        #[test]
        fn a_screen_is_what_is_on_disk(taps in proptest::collection::vec((any_tap(), 0_i64..90_000), 1..25)) {
            let crew = Crew::start(SMALL_PLAN, &["Zoë"]).unwrap();
            let zoe = &crew.athletes[0];
            zoe.go_to("2026-11-03");
            zoe.tap(begin()).unwrap();
            for (tap, pause) in taps {
                zoe.pass(pause);
                let tap = match tap {
                    Tap::ClearFlags { .. } => {
                        let shown = zoe.today().unwrap();
                        let open = flags(&shown).iter().map(|flag| flag.flag);
                        Tap::ClearFlags { flags: open.collect() }
                    }
                    tap => tap,
                };
                // A tap that cannot be changes nothing, and that is checked the same way.
                let shown = zoe.tap(tap.clone()).ok();
                let mut fresh = zoe.open_again().unwrap().today(zoe.now()).unwrap();
                let mut shown = shown.unwrap_or_else(|| zoe.today().unwrap());
                shown.saved = None;
                shown.undone = None;
                // A correction back to what stood before is told as saved, and undo takes it for one of its
                // own: what is taken back next is then told only once the journal is read again.
                let latest = format!("\"n\":{},", shown.revision);
                let corrected = |line: &String| line.contains(&latest) && line.contains("\"par\":");
                let corrected = zoe.journal().iter().any(corrected);
                for screen in [&mut shown, &mut fresh] {
                    screen.here.clock.iter_mut().for_each(|clock| clock.went_by = None);
                    if corrected {
                        (screen.saved_text, screen.saved_line, screen.doubt) = (None, None, None);
                        // What a question asks about, its key answers.
                        screen.here.side_keys.retain(|key| key.kind != SideKeyKind::Sure);
                    }
                }
                prop_assert_eq!(shown, fresh, "after {:?}", tap);
            }
            prop_assert!(!zoe.holdfast.refold().unwrap());
        }
    }
}
