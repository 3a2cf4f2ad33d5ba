//! What looks published and is not: other bytes under a name where nothing can be replaced, and leaves that one reader
//! alone is not shown.

use std::cell::RefCell;
use std::collections::BTreeMap;

use holdfast_core::DeviceId;
use holdfast_core::exchange::sealed::SealedName;
use holdfast_core::exchange::{
    CarriedFile, ExchangeDid, ExchangeReport, ExchangeStep, FailedFile, ListedFile,
};
use holdfast_tests::train::squats;
use holdfast_tests::{Crew, Device, SMALL_PLAN};

/// A server that replaces nothing, as one that knows `If-None-Match`.
#[derive(Default)]
struct Server(RefCell<BTreeMap<String, Vec<u8>>>);

impl Server {
    /// One exchange, by somebody who is shown other bytes of the same size in some files.
    fn exchange(&self, device: &Device, spoilt: impl Fn(&str) -> bool) -> ExchangeReport {
        let listed = |(name, content): (&String, &Vec<u8>)| ListedFile {
            name: name.clone(),
            bytes: content.len() as u64,
        };
        let listing = self.0.borrow().iter().map(listed).collect();
        let get = |names: &[String]| {
            let one = |name: &String| {
                let mut content = self.0.borrow().get(name)?.clone();
                if spoilt(name) {
                    *content.last_mut()? ^= 1;
                }
                Some(CarriedFile { name: name.clone(), content })
            };
            names.iter().filter_map(one).collect()
        };
        let put = |files: Vec<CarriedFile>| {
            let mut new = 0;
            for CarriedFile { name, content } in files {
                let mut there = self.0.borrow_mut();
                new += u32::from(!there.contains_key(&name));
                there.entry(name).or_insert(content);
            }
            Ok(new)
        };
        device.exchange_by(listing, get, put).unwrap()
    }

    /// How many files there are of each leaf of a device, by its place in whichever lane.
    fn files_of(&self, device: &Device) -> BTreeMap<u64, usize> {
        let writer = device.holdfast.who().unwrap().device;
        let mut files = BTreeMap::new();
        for name in self.0.borrow().keys().filter_map(|name| SealedName::parse(name)) {
            if name.device == writer {
                *files.entry(name.sequence).or_default() += 1;
            }
        }
        files
    }
}

fn crew() -> (Crew, Server) {
    let crew = Crew::start(SMALL_PLAN, &["Ines"]).unwrap();
    let server = Server::default();
    squats(&crew.athletes[0], "2026-11-03", &[(50, 8)]);
    for device in [&crew.athletes[0], &crew.coach] {
        server.exchange(device, |_| false);
    }
    (crew, server)
}

fn sessions(coach: &Device) -> usize {
    coach.holdfast.sets(Some("Ines".into()), None, 9).unwrap().sessions.len()
}

/// Rotten or cut short, whatever lies there: the writer finds it, and it reaches the others under a new name.
#[test]
fn what_rots_where_nothing_is_replaced_is_sealed_again() {
    type Rots = fn(&mut Vec<u8>);
    let ways: [Rots; 3] =
        [|content| content[200] ^= 1, |content| content.truncate(700), |content| content.clear()];
    for (way, rots) in ways.into_iter().enumerate() {
        let (crew, server) = crew();
        let ines = &crew.athletes[0];
        squats(ines, "2026-11-05", &[(55, 8)]);
        server.exchange(ines, |_| false);
        let before = server.files_of(ines);
        let last = *before.last_key_value().unwrap().0;
        let own = ines.holdfast.who().unwrap().device;
        let is_last = |name: &str| {
            SealedName::parse(name).is_some_and(|name| (name.device, name.sequence) == (own, last))
        };
        server
            .0
            .borrow_mut()
            .iter_mut()
            .filter(|file| is_last(file.0))
            .for_each(|file| rots(file.1));
        server.exchange(&crew.coach, |_| false);
        assert_eq!(sessions(&crew.coach), 1, "way {way}");
        server.exchange(ines, |_| false);
        assert_eq!(server.files_of(ines)[&last], 2, "way {way}: one more file");
        server.exchange(&crew.coach, |_| false);
        assert_eq!(sessions(&crew.coach), 2, "way {way}");
        // Well again, nothing more is made.
        for _ in 0..4 {
            server.exchange(ines, |_| false);
        }
        assert_eq!(server.files_of(ines)[&last], 2, "way {way}");
    }
}

/// Where everything rots for ever nobody writes for ever.
#[test]
fn a_server_that_spoils_everything_is_given_up_on() {
    let (crew, server) = crew();
    let ines = &crew.athletes[0];
    let own = ines.holdfast.who().unwrap().device;
    let of_own = |name: &str| SealedName::parse(name).is_some_and(|name| name.device == own);
    for _ in 0..12 {
        server.exchange(ines, of_own);
    }
    let files = server.files_of(ines);
    assert!(files.values().all(|files| (2..=4).contains(files)), "{files:?}");
}

/// The writer is shown the right bytes and the coach others: what the coach's leaves name of Ines's lane tells it, once two
/// of them name less than there is.
#[test]
fn what_the_other_side_never_hears_of_is_sealed_again() {
    for for_ever in [false, true] {
        let (crew, server) = crew();
        let (ines, coach) = (&crew.athletes[0], &crew.coach);
        squats(ines, "2026-11-05", &[(55, 8)]);
        server.exchange(ines, |_| false);
        let own: DeviceId = ines.holdfast.who().unwrap().device;
        let last = *server.files_of(ines).last_key_value().unwrap().0;
        let first_file = server.0.borrow().keys().find_map(|name| {
            let parsed = SealedName::parse(name)?;
            ((parsed.device, parsed.sequence) == (own, last)).then(|| name.clone())
        });
        let is_spoilt = |name: &str| match for_ever {
            false => first_file.as_deref() == Some(name),
            true => SealedName::parse(name)
                .is_some_and(|name| (name.device, name.sequence) == (own, last)),
        };
        let mut rounds = 0;
        while sessions(coach) < 2 && rounds < 10 {
            rounds += 1;
            coach.publish(&format!("{SMALL_PLAN}\n# {rounds}\n")).unwrap();
            server.exchange(coach, is_spoilt);
            let files = server.files_of(ines)[&last];
            // One more for every two leaves that do not name it.
            assert_eq!(files, 1 + usize::min((rounds - 1) / 2, 3), "round {rounds}");
            server.exchange(ines, |_| false);
        }
        let (heard, files) = (sessions(coach), server.files_of(ines)[&last]);
        match for_ever {
            false => assert_eq!((heard, rounds, files), (2, 3, 2)),
            true => assert_eq!((heard, rounds, files), (1, 10, 4)),
        }
        // Another leaf of hers was never lacking.
        assert!(server.files_of(ines).iter().all(|(at, files)| *at == last || *files == 1));
    }
}

/// A share that is read-only for a time says nothing of what can be replaced: what lies there rotten is written again once it
/// can be, whoever wrote it.
#[test]
fn what_cannot_be_written_just_now_is_not_given_up() {
    let (crew, server) = crew();
    let ines = &crew.athletes[0];
    let coachs = crew.coach.holdfast.who().unwrap().device;
    let is_coachs = |name: &str| SealedName::parse(name).is_some_and(|name| name.device == coachs);
    server.exchange(ines, |_| false);
    let mut files = server.0.borrow_mut();
    files.iter_mut().filter(|(name, _)| is_coachs(name)).for_each(|(_, file)| file[300] ^= 1);
    drop(files);
    let offered = |read_only: bool| {
        let mut offered = Vec::new();
        let mut did = ExchangeDid::Begin;
        // That nothing could be written is an error, and no matter here.
        while let Ok(step) = ines.step(did.clone()) {
            did = match step {
                ExchangeStep::ListFiles => {
                    let files = server.0.borrow();
                    let listed = files.iter().map(|(name, content)| ListedFile {
                        name: name.clone(),
                        bytes: content.len() as u64,
                    });
                    ExchangeDid::Listed { files: listed.collect() }
                }
                ExchangeStep::Get { names } => {
                    let files = server.0.borrow();
                    let got = names.into_iter().filter_map(|name| {
                        let content = files.get(&name)?.clone();
                        Some(CarriedFile { name, content })
                    });
                    ExchangeDid::Got { files: got.collect(), unread: Vec::new() }
                }
                ExchangeStep::Put { files } => {
                    offered.extend(files.iter().map(|file| file.name.clone()));
                    let failed = |file: &CarriedFile| FailedFile {
                        name: file.name.clone(),
                        reason: "read-only".into(),
                    };
                    match read_only {
                        true => {
                            let unwritten = files.iter().map(failed).collect();
                            ExchangeDid::Put { written: 0, unwritten }
                        }
                        false => ExchangeDid::Put { written: 0, unwritten: Vec::new() },
                    }
                }
                ExchangeStep::Done { .. } => break,
            };
        }
        offered.retain(|name| is_coachs(name));
        offered
    };
    let first = offered(true);
    assert!(!first.is_empty());
    assert_eq!(offered(true), first, "tried another time");
    // Written and there all the same: now it is given up, for the coach to seal again.
    assert_eq!(offered(false), first);
    assert!(offered(false).is_empty());
}
