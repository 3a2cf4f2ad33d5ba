//! A crew over a cluster that loses a server in the middle of an exchange.

use std::collections::BTreeMap;
use std::thread::sleep;
use std::time::{Duration, Instant as Clock};

use carry::{Carried, Line};
use holdfast_core::exchange::ExchangeReport;
use holdfast_tests::train::squats;
use holdfast_tests::{Carrier, Crew, Device, SMALL_PLAN};

use crate::cluster::{VOLUMES, held, kill_volume, start_volume};
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

/// A cluster and a crew; what was said to be written on the way, and which volume server holds most.
struct Scene {
    server: Server,
    crew: Crew,
    laptop: Device,
    line: Line,
    written: BTreeMap<String, Vec<u8>>,
    most: usize,
}

impl Scene {
    fn set() -> Scene {
        let server = Server::start(SEAWEEDFS);
        let (crew, laptop) = crew();
        let line = open(&server.carrier());
        exchange(&crew.coach, &line).unwrap();
        let held = held(&server);
        let most = (0..held.len()).max_by_key(|number| held[*number]).unwrap();
        assert!(held[most] > 0, "it holds nothing: {held:?}");
        Scene { server, crew, laptop, line, written: BTreeMap::new(), most }
    }

    /// An exchange of an athlete with many files, in which volume servers are killed after the third.
    fn killed_in_the_middle(&mut self, killed: &[usize]) -> Result<ExchangeReport, Carried> {
        let (server, written) = (&mut self.server, &mut self.written);
        let begun = Clock::now();
        let end = exchange_seeing(&self.crew.athletes[0], &self.line, |file| {
            written.insert(file.name.clone(), file.content.clone());
            if written.len() == 3 {
                for number in killed {
                    kill_volume(server, *number);
                }
            }
        });
        assert!(self.written.len() >= 3, "it ended before the middle: {}", self.written.len());
        let (took, killed) = (begun.elapsed().as_millis(), killed.len());
        match &end {
            Ok(report) => {
                println!("SeaweedFS: {killed} of three killed: {} files in {took} ms", report.put)
            }
            Err(fault) => println!("SeaweedFS: {killed} of three killed: in {took} ms: {fault}"),
        }
        end
    }

    /// What was said to be written is there, for us and for another client.
    fn all_there(&self, when: &str) {
        for (name, content) in &self.written {
            let read = self.line.leaf(name);
            let read = read.unwrap_or_else(|fault| panic!("{when}: {name}: {fault}"));
            assert!(read.as_ref() == Some(content), "{when}: {name} is not what was written");
            curl::sees(&self.server, &name[..41], name, content);
        }
    }

    fn all(&self) -> impl Iterator<Item = &Device> {
        self.crew.athletes.iter().chain([&self.crew.coach, &self.laptop])
    }

    /// All meet twice, with nothing wrong any more: both devices of the coach have the same, and all of it.
    fn comes_right(&self) {
        for device in self.all().chain(self.all()) {
            let (report, _) = until_done(device, &self.line);
            assert!(report.aside.is_empty(), "{:?}", report.aside);
        }
        self.all_there("with all back");
        let state = |device: &Device| device.holdfast.state_text().unwrap();
        assert_eq!(state(&self.laptop), state(&self.crew.coach));
        for name in ["Ana", "Ben", "Ines"] {
            let date = "2026-11-14".parse().unwrap();
            let page = self.crew.coach.holdfast.member(name.into(), date).unwrap();
            assert_eq!(page.sessions.len(), 12, "{name}");
        }
        println!("SeaweedFS: bytes on the three: {:?}", held(&self.server));
    }
}

/// One that holds data goes in the middle, and comes back later. The crew meets without it.
#[test]
fn a_volume_server_killed_in_an_exchange_loses_nothing_that_was_acknowledged() {
    let mut scene = Scene::set();
    // Whether it goes on or says that it cannot: what it did say counts.
    let _ = scene.killed_in_the_middle(&[scene.most]);
    scene.all_there("with one killed");
    let said: Vec<String> =
        scene.all().flat_map(|device| until_done(device, &scene.line).1).collect();
    println!("SeaweedFS: with one away, what was said before all had met: {said:?}");
    scene.all_there("with one away");
    start_volume(&mut scene.server, scene.most);
    scene.comes_right();
}

/// With two of three gone no file finds two places any more.
#[test]
fn with_two_volume_servers_gone_it_says_so_and_a_later_exchange_completes() {
    let mut scene = Scene::set();
    let gone = [scene.most, (scene.most + 1) % VOLUMES];
    let begun = Clock::now();
    match scene.killed_in_the_middle(&gone) {
        Err(Carried::Web(fault)) => assert!(fault.passes(), "{fault:?}"),
        other => panic!("{other:?}"),
    }
    // SeaweedFS itself takes half a minute to say no. Asked five times, that would be three minutes.
    assert!(begun.elapsed() < Duration::from_secs(90), "{} s", begun.elapsed().as_secs());
    for number in gone {
        start_volume(&mut scene.server, number);
    }
    scene.comes_right();
}
