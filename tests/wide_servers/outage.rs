//! A crew over a cluster that loses a server in the middle of an exchange.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::thread::sleep;
use std::time::{Duration, Instant as Clock};

use carry::{Carried, Line};
use holdfast_core::exchange::ExchangeReport;
use holdfast_tests::train::squats;
use holdfast_tests::{Carrier, Crew, Device, SMALL_PLAN};

use crate::cluster::{held, kill_volume, start_volume};
use crate::curl;
use crate::meet::{exchange, exchange_seeing};
use crate::server::{Server, open};
use crate::servers::SEAWEEDFS;

/// A coach with two devices and three athletes, each with sessions that are nowhere else yet.
fn crew() -> (Crew, Device) {
    let crew = Crew::start(SMALL_PLAN, &["Ana", "Ben", "Ines"]).unwrap();
    let code = crew.coach.on_paper().unwrap();
    let home = crew.folder().join("laptop");
    let laptop = Device::restored(home, &code, &crew.carrier, (7, crew.athletes[0].now())).unwrap();
    for athlete in &crew.athletes {
        for day in 3..=14 {
            squats(athlete, &format!("2026-11-{day:02}"), &[(50, 8), (60, 6), (70, 6)]);
            // A leaf for each session, on a carrier that is lost.
            let lost = Carrier::new(crew.folder().join("lost"));
            athlete.exchange(&lost).unwrap();
        }
    }
    (crew, laptop)
}

/// Exchanges until it comes to an end, with what was said before that.
fn until_done(device: &Device, line: &Line) -> (ExchangeReport, Vec<String>) {
    let (begun, mut said) = (Clock::now(), Vec::new());
    loop {
        match exchange(device, line) {
            Ok(report) => return (report, said),
            Err(fault @ (Carried::Web(_) | Carried::Offline(_))) => said.push(fault.to_string()),
            Err(fault) => panic!("{fault}"),
        }
        assert!(begun.elapsed() < Duration::from_secs(180), "it never ends: {said:?}");
        sleep(Duration::from_secs(1));
    }
}

/// A volume server that holds data is killed after some files of an exchange were written, and comes back later. What was said to be
/// written is there all along, and in the end both devices of the coach have the same.
#[test]
fn a_volume_server_killed_in_an_exchange_loses_nothing_that_was_acknowledged() {
    let mut server = Server::start(SEAWEEDFS);
    let (crew, laptop) = crew();
    let line = open(&server.carrier());
    exchange(&crew.coach, &line).unwrap();
    let before = held(&server);
    let most = (0..before.len()).max_by_key(|number| before[*number]).unwrap();
    assert!(before[most] > 0, "it holds nothing: {before:?}");

    // In the middle: after the third file of many.
    let (written, mut files) = (RefCell::new(BTreeMap::new()), 0);
    let begun = Clock::now();
    let first = exchange_seeing(&crew.athletes[0], &line, |file| {
        written.borrow_mut().insert(file.name.clone(), file.content.clone());
        files += 1;
        if files == 3 {
            kill_volume(&mut server, most);
        }
    });
    assert!(files >= 3, "it ended before the middle: {files}");
    let took = begun.elapsed().as_millis();
    match &first {
        Ok(report) => println!("SeaweedFS: one of three killed, {} files in {took} ms", report.put),
        Err(fault) => println!("SeaweedFS: one of three killed, after {took} ms: {fault}"),
    }
    let all_there = |server: &Server, when: &str| {
        for (name, content) in written.borrow().iter() {
            let read = line.leaf(name).unwrap_or_else(|fault| panic!("{when}: {name}: {fault}"));
            assert!(read.as_ref() == Some(content), "{when}: {name} is not what was written");
            curl::sees(server, &name[..41], name, content);
        }
    };
    all_there(&server, "with one killed");

    // All the others meet while it is away.
    for device in crew.athletes.iter().chain([&crew.coach, &laptop]) {
        let (_, said) = until_done(device, &line);
        println!("SeaweedFS: with one away, faults before it was done: {said:?}");
    }
    all_there(&server, "with one away");
    start_volume(&mut server, most);
    for _ in 0..2 {
        for device in crew.athletes.iter().chain([&crew.coach, &laptop]) {
            let (report, _) = until_done(device, &line);
            assert!(report.aside.is_empty(), "{:?}", report.aside);
        }
    }
    all_there(&server, "with all back");
    let state = |device: &Device| device.holdfast.state_text().unwrap();
    assert_eq!(state(&laptop), state(&crew.coach));
    for name in ["Ana", "Ben", "Ines"] {
        let page = crew.coach.holdfast.member(name.into(), "2026-11-14".parse().unwrap()).unwrap();
        assert_eq!(page.sessions.len(), 12, "{name}");
    }
    println!("SeaweedFS: bytes on the three, before {before:?} and after {:?}", held(&server));
}
