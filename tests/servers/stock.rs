//! A person opens their own files with what any Debian has: `age`, `gzip`, `sha256sum`. The commands are those of
//! docs/leaf.md.

use std::fs;
use std::io::Write;
use std::process::{Command, Stdio};

use holdfast_core::Restore;
use holdfast_tests::train::squats;
use holdfast_tests::{Crew, SMALL_PLAN, Writer};

/// What a program writes when it is given some bytes; none where it fails.
fn piped(command: &mut Command, input: &[u8]) -> Option<Vec<u8>> {
    let piped = command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::null());
    let mut child = piped.spawn().unwrap_or_else(|error| panic!("{command:?}: {error}"));
    let mut stdin = child.stdin.take().unwrap();
    let input = input.to_vec();
    let fed = std::thread::spawn(move || drop(stdin.write_all(&input)));
    let done = child.wait_with_output().unwrap();
    fed.join().unwrap();
    done.status.success().then_some(done.stdout)
}

#[test]
fn stock_programs_open_a_persons_own_files_and_no_others() {
    let crew = Crew::start(SMALL_PLAN, &["Ana", "Ben"]).unwrap();
    for athlete in &crew.athletes {
        squats(athlete, "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
    }
    crew.exchange_all().unwrap();
    let code = crew.athletes[0].on_paper().unwrap();
    let key = crew.folder().join("key");
    fs::write(&key, Restore::begin(code).unwrap().age_key()).unwrap();
    let (maren, ana) = (Writer::at(&crew.coach), Writer::at(&crew.athletes[0]));
    let (mut own, mut others, mut lifts) = (0, 0, 0);
    for file in crew.carrier.files() {
        let of_ana = maren.opens(&maren, &file).header.of == ana.person();
        let opened = piped(Command::new("age").args(["-d", "-i"]).arg(&key), &file.content);
        let Some(packed) = opened else {
            assert!(!of_ana, "{} is hers", file.name);
            others += 1;
            continue;
        };
        assert!(of_ana, "{} is not hers", file.name);
        own += 1;
        // The frame is followed by zeros, which gzip passes over.
        let text = piped(Command::new("gzip").arg("-dcq"), &packed).expect("it inflates");
        let body = piped(Command::new("tail").args(["-n", "+2"]), &text).unwrap();
        let sum = piped(&mut Command::new("sha256sum"), &body).unwrap();
        let leaf = maren.opens(&maren, &file);
        let content: String = leaf.content.iter().map(|byte| format!("{byte:02x}")).collect();
        assert!(sum.starts_with(content.as_bytes()), "{}", file.name);
        lifts += String::from_utf8(body).unwrap().matches("\"k\":\"lift\"").count();
    }
    assert_eq!(lifts, 3, "every set that she logged");
    assert!(own >= 2 && others >= 2, "{own} {others}");
    println!("age and gzip opened {own} files, and none of {others} others");
}
