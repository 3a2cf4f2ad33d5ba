//! What is listed at a server: what may be new. Whatever the server loses or gets late, nothing is missed for it.

use std::collections::{BTreeMap, BTreeSet};

use holdfast_core::exchange::sealed::{LanePart, PLACES_A_PART, SealedName};
use holdfast_core::exchange::{CarriedFile, ExchangeDid, ExchangeReport, ExchangeStep, ListedFile};
use holdfast_tests::taps::{begin_day, finish};
use holdfast_tests::{Crew, Device, SMALL_PLAN, seed_or};
use rand::RngExt;
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::SeedableRng;

const DAY_MS: i64 = 24 * 60 * 60 * 1000;

/// A server in memory: a folder for each part of a lane.
#[derive(Clone, Default)]
struct Server {
    files: BTreeMap<String, Vec<u8>>,
    /// Names that it does not show for now, though the files are there.
    withheld: BTreeSet<String>,
    /// Folders and files listed in the last exchange.
    folders: usize,
    listed: usize,
}

fn part(name: &str) -> String {
    LanePart::of(&SealedName::parse(name).unwrap()).to_string()
}

impl Server {
    fn exchange(&mut self, device: &Device) -> ExchangeReport {
        (self.folders, self.listed) = (0, 0);
        let mut did = ExchangeDid::Begin;
        loop {
            did = match device.step(did).unwrap() {
                ExchangeStep::ListFiles => ExchangeDid::Listed { files: self.list(device) },
                ExchangeStep::Get { names } => {
                    let shown = names.into_iter().filter(|name| !self.withheld.contains(name));
                    let files = shown.filter_map(|name| {
                        let content = self.files.get(&name)?.clone();
                        Some(CarriedFile { name, content })
                    });
                    ExchangeDid::Got { files: files.collect(), unread: Vec::new() }
                }
                ExchangeStep::Put { files } => {
                    let written = files.len() as u32;
                    self.files.extend(files.into_iter().map(|file| (file.name, file.content)));
                    ExchangeDid::Put { written, unwritten: Vec::new() }
                }
                ExchangeStep::Done { report } => return report,
            };
        }
    }

    fn list(&mut self, device: &Device) -> Vec<ListedFile> {
        let folders: BTreeSet<String> = self.files.keys().map(|name| part(name)).collect();
        let named = folders.into_iter().chain(["photos".into(), "pairing".into()]).collect();
        let place = "https://files.example.org/crew/".to_owned();
        let wanted = device.holdfast.to_look_into(place, named, device.now()).unwrap();
        let shown: Vec<ListedFile> = (self.files.iter())
            .filter(|(name, _)| wanted.contains(&part(name)) && !self.withheld.contains(*name))
            .map(|(name, content)| ListedFile { name: name.clone(), bytes: content.len() as u64 })
            .collect();
        (self.folders, self.listed) = (wanted.len(), shown.len());
        shown
    }

    fn names(&self) -> BTreeSet<String> {
        self.files.keys().cloned().collect()
    }
}

/// A session, and with it a leaf.
fn evening(device: &Device) {
    device.pass(DAY_MS);
    device.tap(begin_day("Any evening")).unwrap();
    device.tap(finish(7, 60)).unwrap();
    device.holdfast.cut_leaves().unwrap();
}

/// The names of the leaves that lie on a device.
fn shelf(device: &Device) -> BTreeSet<String> {
    let files = std::fs::read_dir(device.home.join("leaves")).unwrap();
    let names = files.map(|file| file.unwrap().file_name().into_string().unwrap());
    names.filter(|name| SealedName::parse(name).is_some()).collect()
}

/// The leaves that a device wrote, in order.
fn leaves_of(server: &Server, device: &Device) -> Vec<String> {
    let writer = device.holdfast.who().unwrap().device;
    let by_it = |name: &&String| SealedName::parse(name).unwrap().device == writer;
    server.files.keys().filter(by_it).cloned().collect()
}

/// With three times the history an exchange lists as much.
#[test]
fn a_listing_grows_with_what_may_be_new() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let (ines, coach) = (&crew.athletes[0], &crew.coach);
    let mut server = Server::default();
    let mut most = Vec::new();
    for leaves in [70, 140] {
        for _ in 0..leaves {
            evening(ines);
        }
        coach.pass(leaves * DAY_MS);
        for _ in 0..2 {
            server.exchange(ines);
            server.exchange(coach);
        }
        let mut of = |device| {
            server.exchange(device);
            (server.folders, server.listed)
        };
        most.push([of(ines), of(coach)]);
    }
    assert!(server.files.len() > 210, "{}", server.files.len());
    println!("folders and files listed: {most:?} of {}", server.files.len());
    for [ines, coach] in most {
        // Her own lane's last part and the coach's to her; the coach has one more, to the crew.
        assert!(ines.0 == 2 && coach.0 == 3, "{ines:?} {coach:?}");
        assert!(coach.1 as u64 <= 3 * PLACES_A_PART, "{coach:?}");
    }
    // What is new is found at once.
    evening(ines);
    assert_eq!(server.exchange(ines).put, 1);
    assert_eq!(server.exchange(coach).leaves, 1);
}

/// An athlete with so many leaves that the server holds all, in parts that were seen to be whole.
fn settled(leaves: u32) -> (Crew, Server) {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let mut server = Server::default();
    (0..leaves).for_each(|_| evening(&crew.athletes[0]));
    crew.coach.put_at(crew.athletes[0].now());
    for _ in 0..2 {
        server.exchange(&crew.athletes[0]);
        server.exchange(&crew.coach);
    }
    (crew, server)
}

/// Where a whole folder is gone, everything is listed in the same exchange, and brought again.
#[test]
fn where_a_folder_is_gone_everything_is_looked_at() {
    let (crew, mut server) = settled(100);
    let ines = &crew.athletes[0];
    let (whole, own) = (server.names(), leaves_of(&server, ines));
    let lost = part(&own[40]);
    server.files.retain(|name, _| part(name) != lost && *name != own[3]);
    assert!(server.names().len() + 32 < whole.len());
    server.exchange(ines);
    assert_eq!(server.names(), whole);
}

/// Files that are gone from a folder are noticed when it is listed again, within two weeks; then everything is looked at.
#[test]
fn where_a_file_is_gone_everything_is_looked_at_within_two_weeks() {
    let (crew, mut server) = settled(170);
    let ines = &crew.athletes[0];
    let (whole, own) = (server.names(), leaves_of(&server, ines));
    for part in 0..5 {
        server.files.remove(&own[part * 32 + 7]).unwrap();
    }
    let mut days = 0;
    while server.names() != whole {
        ines.pass(DAY_MS);
        days += 1;
        let before = server.names().len();
        server.exchange(ines);
        if server.names().len() > before {
            server.exchange(ines);
            assert_eq!(server.names(), whole, "after {days} days");
        }
        assert!(days < 14);
    }
    // A clock that was set back makes nothing look new.
    ines.set_wall(ines.now().wall_ms - 400 * DAY_MS);
    server.files.remove(&own[3]).unwrap();
    server.exchange(ines);
    assert_eq!(server.names(), whole);
}

/// What is fetched to see whether it lies there, and does not, is written again, and then everything is looked at.
#[test]
fn a_file_that_is_looked_for_and_gone_is_brought_again() {
    let (crew, mut server) = settled(100);
    let ines = &crew.athletes[0];
    let (whole, own) = (server.names(), leaves_of(&server, ines));
    // One file is left in each folder.
    server.files.retain(|name, _| own.iter().step_by(32).any(|left| left == name));
    server.exchange(ines);
    assert!(own[..96].iter().filter(|name| server.files.contains_key(*name)).count() > 3);
    server.exchange(ines);
    let is_hers = |name: &String| own.contains(name) || shelf(ines).contains(name);
    assert!(whole.iter().filter(|name| is_hers(name)).all(|name| server.files.contains_key(name)));
}

/// The same for a file that lies there with other bytes of as many.
#[test]
fn a_file_that_rots_unlisted_is_brought_again() {
    let (crew, mut server) = settled(100);
    let ines = &crew.athletes[0];
    let (sound, own) = (server.files.clone(), leaves_of(&server, ines));
    for name in &own[..96] {
        server.files.get_mut(name).unwrap()[40] ^= 1;
    }
    server.exchange(ines);
    let mended = own[..96].iter().filter(|name| server.files[*name] == sound[*name]).count();
    assert!((3..=5).contains(&mended), "{mended}");
}

/// A phone that was restored from a backup writes on under places that were taken. The leaves of its second history lie in a
/// part that looked whole: the first of them in a part that is listed says so, and the others are found as soon as they
/// are shown, however late.
#[test]
fn a_second_history_in_a_part_that_was_whole_is_found() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let (mut server, coach) = (Server::default(), &crew.coach);
    (0..20).for_each(|_| evening(&crew.athletes[0]));
    crew.athletes[0].holdfast.shut().unwrap();
    let copy = crew.folder().join("copy");
    crew.athletes[0].copy_to(&copy);
    let now = crew.athletes[0].now();
    let phone = Device::open(crew.athletes[0].home.clone(), now.clone()).unwrap();
    (0..20).for_each(|_| evening(&phone));
    coach.put_at(phone.now());
    server.exchange(&phone);
    let first = server.names();
    let other = Device::open(copy, now).unwrap();
    other.pass(1_000);
    (0..20).for_each(|_| evening(&other));
    server.exchange(&other);
    let second: BTreeSet<String> = server.names().difference(&first).cloned().collect();
    let (late, shown): (Vec<String>, Vec<String>) =
        second.iter().cloned().partition(|name| part(name).ends_with("-00000001"));
    assert!(late.len() > 8 && shown.len() > 4, "{} {}", late.len(), shown.len());
    let shows = |server: &mut Server, withheld: &[String], times: u32| {
        server.withheld = withheld.iter().cloned().collect();
        (0..times).for_each(|_| _ = server.exchange(coach));
        shelf(coach)
    };
    // The first is still arriving, at its full size, when the part is full of leaves that are here.
    let zeros = vec![0; server.files[&late[0]].len()];
    let arrived = server.files.insert(late[0].clone(), zeros).unwrap();
    let others: Vec<String> = second.iter().filter(|name| **name != late[0]).cloned().collect();
    assert!(shows(&mut server, &others, 3).is_superset(&first));
    server.files.insert(late[0].clone(), arrived);
    // It is fetched, and the part looks whole once more.
    assert!(shows(&mut server, &others, 2).contains(&late[0]));
    let here = shows(&mut server, &late[1..], 3);
    assert!(shown.iter().all(|name| here.contains(name)));
    assert!(shows(&mut server, &[], 1).is_superset(&second));
}

/// A device that came later: what is sealed again for it goes into parts that looked whole, and reaches it.
#[test]
fn what_is_sealed_again_is_brought() {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let (ines, mut server) = (&crew.athletes[0], Server::default());
    crew.exchange_all().unwrap();
    let code = ines.on_paper().unwrap();
    (0..70).for_each(|_| evening(ines));
    crew.coach.put_at(ines.now());
    for _ in 0..2 {
        server.exchange(ines);
        server.exchange(&crew.coach);
    }
    let home = crew.folder().join("tablet");
    let tablet = Device::restored(home, &code, &crew.carrier, (9, ines.now())).unwrap();
    for device in [&tablet, ines, &tablet] {
        server.exchange(device);
    }
    let here: BTreeSet<String> = tablet.journal().into_iter().collect();
    assert!(ines.journal().iter().all(|line| here.contains(line)));
}

/// Seeded: a server that loses files, folders and days, and shows some late, and devices that exchange now and then. In the
/// end, two weeks later, everybody has everything, and so does the server.
#[test]
fn nothing_is_missed_whatever_a_server_loses_or_shows_late() {
    let seed = seed_or(20_261_128);
    for seed in seed..seed + 4 {
        let mut chance = ChaCha8Rng::seed_from_u64(seed);
        let crew = Crew::start(SMALL_PLAN, &["Ines", "Jon"]).unwrap();
        let mut server = Server::default();
        let mut older = server.clone();
        let devices: Vec<&Device> = crew.athletes.iter().chain([&crew.coach]).collect();
        for _ in 0..60 {
            let athlete = devices[chance.random_range(0..2)];
            let names: Vec<String> = server.names().into_iter().collect();
            let any = |chance: &mut ChaCha8Rng| {
                names.get(chance.random_range(0..names.len().max(1))).cloned()
            };
            match chance.random_range(0..20) {
                0..8 => (0..chance.random_range(1..9)).for_each(|_| evening(athlete)),
                8..14 => _ = server.exchange(devices[chance.random_range(0..3)]),
                14 => {
                    let plan = SMALL_PLAN.replace("Small", &format!("Plan {}", names.len()));
                    crew.coach.publish(&plan).unwrap();
                }
                15 => _ = any(&mut chance).map(|name| server.files.remove(&name)),
                16 => {
                    if let Some(lost) = any(&mut chance).map(|name| part(&name)) {
                        server.files.retain(|name, _| part(name) != lost);
                    }
                }
                17 => server.withheld.extend(any(&mut chance)),
                18 => server.withheld.clear(),
                _ if chance.random_bool(0.3) => server = older.clone(),
                _ => older = server.clone(),
            }
            devices.iter().for_each(|device| device.pass(DAY_MS / 2));
        }
        server.withheld.clear();
        for round in 0..2 {
            devices.iter().for_each(|device| device.pass((1 - round) * 14 * DAY_MS));
            for device in devices.iter().chain(&devices) {
                server.exchange(device);
            }
        }
        let all: BTreeSet<String> = devices.iter().flat_map(|device| shelf(device)).collect();
        assert_eq!(server.names(), all, "seed {seed}");
        assert_eq!(shelf(&crew.coach), all, "seed {seed}");
        for athlete in &crew.athletes {
            let lanes: BTreeSet<&str> = all.iter().map(|name| &name[..41]).collect();
            let named = lanes.iter().map(|lane| format!("{lane}-00000001")).collect();
            let (place, now) = ("https://elsewhere.example.org/".into(), athlete.now());
            let own = athlete.holdfast.to_look_into(place, named, now).unwrap();
            let is_own = |name: &&String| own.iter().any(|folder| folder[..41] == name[..41]);
            let of_thread: BTreeSet<String> = all.iter().filter(is_own).cloned().collect();
            assert_eq!(shelf(athlete), of_thread, "seed {seed}");
            let here: BTreeSet<String> = crew.coach.journal().into_iter().collect();
            assert!(athlete.journal().iter().all(|line| here.contains(line)), "seed {seed}");
        }
        // Two weeks on nothing more is listed than the last parts.
        server.exchange(&crew.coach);
        let lanes: BTreeSet<&str> = all.iter().map(|name| &name[..41]).collect();
        assert!(server.folders <= lanes.len(), "seed {seed}: {}", server.folders);
    }
}
