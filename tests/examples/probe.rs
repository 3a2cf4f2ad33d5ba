#![allow(missing_docs, clippy::unwrap_used, clippy::print_stdout)]
use holdfast_core::{Mass, companion::Tap};
use holdfast_tests::{Crew, DEMO_PLAN};
fn main() {
    let crew = Crew::start(DEMO_PLAN, &["Ines"]).unwrap();
    let d = &crew.athletes[0];
    d.tap(Tap::Begin { day: Some("Squat evening".into()) }).unwrap();
    for _ in 0..4 {
        d.tap(Tap::LogSet {
            piece: "Squat".into(),
            set: None,
            load: Some(Mass::kg(60)),
            reps: None,
            reserve: None,
        })
        .unwrap();
    }
    d.tap(Tap::Finish { effort: Some(5), minutes: Some(5) }).unwrap();
    d.tap(Tap::Begin { day: Some("Squat evening".into()) }).unwrap();
    for _ in 0..3 {
        d.tap(Tap::LogSet {
            piece: "Squat".into(),
            set: None,
            load: Some(Mass::kg(60)),
            reps: None,
            reserve: None,
        })
        .unwrap();
    }
    let t = std::time::Instant::now();
    let n = 20000;
    for _ in 0..n {
        std::hint::black_box(d.today().unwrap());
    }
    println!("{:?}", t.elapsed() / n);
}
