//! The screens of one scripted session, which Kotlin and Swift must see as they are here.
//!
//! The kits under `android/kit` and `ios/Kit` play the same script and hold what they see against
//! the file this check keeps, `bindings/fixtures/screens.snap.json`. A step added here is added there.

use std::collections::BTreeMap;

use holdfast_core::care::Place;
use holdfast_core::clock::Act;
use holdfast_core::companion::{Answer, CarriedFile, ListedFile, Start, Tap};
use holdfast_core::journal::{Decision, Role};
use holdfast_core::plan::MeasuredWhen;
use holdfast_core::{Holdfast, Instant, Mass, MassUnit};
use holdfast_tests::{SMALL_PLAN, at};
use serde::Serialize;
use serde_json::{Value, json};
use tempfile::TempDir;

/// Somebody's device, and what everybody's devices have shown so far.
struct Player {
    companion: Holdfast,
    now: Instant,
}

impl Player {
    fn start(home: &TempDir, role: Role, name: &str, unit: MassUnit, chance: u8) -> Player {
        let folder = home.path().join(name).to_string_lossy().into_owned();
        let chance = (chance..chance + 48).collect();
        let now = at("2026-11-02", 18);
        let start = Start { role, name: name.into(), unit, chance };
        Player { companion: Holdfast::start(folder, start, now.clone()).unwrap(), now }
    }

    fn exchange(&self, carrier: &mut BTreeMap<String, Vec<u8>>) -> Value {
        let list = |(name, content): (&String, &Vec<u8>)| ListedFile {
            name: name.clone(),
            bytes: content.len() as u64,
        };
        let plan = self.companion.offer(carrier.iter().map(list).collect()).unwrap();
        let get = |name: String| CarriedFile { content: carrier[&name].clone(), name };
        let report =
            self.companion.absorb(plan.get.into_iter().map(get).collect(), self.now.clone());
        let plan = self.companion.offer(carrier.iter().map(list).collect()).unwrap();
        carrier.extend(plan.put.into_iter().map(|file| (file.name, file.content)));
        value(report.unwrap())
    }

    fn go_to(&mut self, date: &str) {
        self.now = at(date, 18);
    }

    fn pass(&mut self, ms: i64) {
        self.now.wall_ms += ms;
        self.now.boot_ms += ms;
    }

    fn tap(&mut self, tap: Tap) -> Value {
        self.pass(1_000);
        value(self.companion.tap(tap, self.now.clone()).unwrap())
    }

    fn today(&self) -> Value {
        value(self.companion.today(self.now.clone()).unwrap())
    }
}

fn value(shown: impl Serialize) -> Value {
    serde_json::to_value(shown).unwrap()
}

fn set(load: Mass, reps: Option<u32>) -> Tap {
    Tap::LogSet { piece: "Squat".into(), set: None, load: Some(load), reps, reserve: None }
}

fn clock(piece: &str) -> Tap {
    Tap::Clock { piece: piece.into(), act: Act::Begin, station: None }
}

fn range(when: MeasuredWhen, tenths: i64) -> Tap {
    Tap::LogRange { piece: "Calves".into(), when, side: Some(1), tenths }
}

fn option(option: Option<&str>) -> Tap {
    Tap::TakeOption { piece: "Squat".into(), movement: None, option: option.map(str::to_owned) }
}

fn flag(severity: u32) -> Tap {
    let (piece, place) = ("Squat".into(), Place::Knee);
    Tap::Flag { piece, movement: None, place, severity, signs: vec![] }
}

#[test]
fn screens_are_the_same_in_every_language() {
    let homes = TempDir::new().unwrap();
    let mut carrier = BTreeMap::new();
    let mut coach = Player::start(&homes, Role::Coach, "Märta", MassUnit::Kg, 0);
    let mut zoe = Player::start(&homes, Role::Athlete, "Zoë", MassUnit::Kg, 60);
    let mut jun = Player::start(&homes, Role::Athlete, "Łucja 純", MassUnit::Lb, 120);
    let mut seen = Vec::new();

    let text = SMALL_PLAN.as_bytes().to_vec();
    let plan = coach.companion.publish("small-plan.toml".into(), text, coach.now.clone());
    seen.push(value(plan.unwrap()));
    for player in [&coach, &zoe, &jun] {
        seen.push(player.exchange(&mut carrier));
        seen.push(value(player.companion.who().unwrap()));
    }

    zoe.go_to("2026-11-03");
    seen.push(zoe.today());
    seen.push(zoe.tap(Tap::Begin { day: None }));
    seen.push(zoe.tap(set(Mass::kg(50), None)));
    seen.push(zoe.tap(option(Some("box-squat"))));
    seen.push(zoe.tap(option(None)));
    seen.push(zoe.tap(set(Mass::kg(60), Some(6))));
    seen.push(zoe.tap(set(Mass::kg(70), Some(8))));
    seen.push(zoe.tap(clock("Corners")));
    zoe.pass(53_000);
    let window =
        |spare_ms| Tap::LogWindow { piece: "Corners".into(), window: None, reps: None, spare_ms };
    seen.push(zoe.tap(window(None)));
    seen.push(zoe.tap(window(Some(4_000))));
    seen.push(zoe.tap(range(MeasuredWhen::Before, 100)));
    seen.push(zoe.tap(clock("Calves")));
    zoe.pass(135_000);
    seen.push(zoe.today());
    zoe.pass(60_000);
    seen.push(zoe.tap(Tap::LogHold { piece: "Calves".into(), held_ms: vec![], said: None }));
    seen.push(zoe.tap(range(MeasuredWhen::After, 130)));
    seen.push(zoe.tap(flag(6)));
    seen.push(zoe.tap(Tap::Undo));
    seen.push(zoe.tap(flag(4)));
    seen.push(zoe.tap(Tap::Finish { effort: Some(7), minutes: Some(60) }));

    jun.go_to("2026-11-03");
    seen.push(jun.tap(Tap::Begin { day: None }));
    for (pounds, reps) in [(95, 8), (115, 6), (135, 3)] {
        seen.push(jun.tap(set(Mass::lb(pounds), Some(reps))));
    }
    seen.push(jun.tap(Tap::Finish { effort: None, minutes: None }));

    let date = "2026-11-04".parse().unwrap();
    coach.go_to("2026-11-04");
    for player in [&zoe, &jun, &coach] {
        seen.push(player.exchange(&mut carrier));
    }
    seen.push(value(coach.companion.board(date).unwrap()));
    let page = coach.companion.member("łucja 純".into(), date).unwrap();
    let asked = &page.proposals[0];
    let answer = Answer {
        person: page.person,
        subject: asked.subject.clone(),
        scheme: asked.scheme.clone(),
        decision: Decision::Accept,
        loads: vec![],
        words: "Gut so – weiter!".into(),
    };
    seen.push(value(&page));
    coach.companion.answer(answer, coach.now.clone()).unwrap();
    let page = coach.companion.member("Zoë".into(), date).unwrap();
    seen.push(value(&page));
    let flag = page.discomfort[0].flag;
    coach.companion.clear_flag(page.person, flag, coach.now.clone()).unwrap();
    for player in [&coach, &zoe, &jun] {
        seen.push(player.exchange(&mut carrier));
    }
    zoe.go_to("2026-11-05");
    seen.push(zoe.today());
    jun.go_to("2026-11-04");
    let next = "2026-11-05".parse().unwrap();
    seen.push(value(jun.companion.preview(next, None, jun.now.clone()).unwrap()));
    seen.push(value(coach.companion.export().unwrap()));

    let mut settings = insta::Settings::new();
    settings.set_snapshot_path("../../bindings/fixtures");
    settings.set_prepend_module_to_snapshot(false);
    let shown = serde_json::to_vec_pretty(&json!(seen)).unwrap();
    settings.bind(|| insta::assert_binary_snapshot!("screens.json", shown));
}
