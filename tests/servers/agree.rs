//! What each server does with each operation, held against what a second client sees.

use holdfast_core::journal::Role;
use holdfast_tests::pairing::pair;
use holdfast_tests::train::squats;
use holdfast_tests::{Crew, Device, SMALL_PLAN};

use crate::curl;
use crate::meet;
use crate::server::{LANE, LEAF, Server};
use crate::servers::{ALL, version};

const POST: &str = "0123456789abcdef-2-fedcba9876543210.pair";

#[test]
fn a_file_goes_there_and_back_and_a_second_client_sees_the_same() {
    for kind in ALL {
        let server = Server::start(kind);
        println!("{}: {}", kind.name, version(kind));
        let line = server.line();
        let name = kind.name;
        let nothing = line.list(None, None).unwrap();
        assert_eq!((nothing.folders.len(), nothing.files.len(), nothing.refused), (0, 0, 0));
        // A lane that nobody has written to is empty, and a file that is not there is no fault.
        let empty = line.list(Some(LANE), None).unwrap();
        assert_eq!((empty.files.len(), empty.whole), (0, true), "{name}");
        assert_eq!(line.get(LANE, LEAF).unwrap(), None, "{name}");

        let content: Vec<u8> = (0..70_000_u32).map(|byte| (byte % 251) as u8).collect();
        assert!(line.put(LANE, LEAF, content.clone()).unwrap(), "{name}");
        curl::sees(&server, LANE, LEAF, &content);
        assert!(line.get(LANE, LEAF).unwrap() == Some(content), "{name}");

        // What a second client writes is found as well.
        let other = LEAF.replace("00000001", "00000002");
        assert!((200..300).contains(&curl::put(&server, LANE, &other, b"of another")), "{name}");
        let got = line.get(LANE, &other).unwrap();
        assert_eq!(got.as_deref(), Some(&b"of another"[..]), "{name}");
        // A message of a pairing lies in a folder of its own, and is no leaf.
        assert!(line.bring(POST, b"sealed".to_vec()).unwrap(), "{name}");
        let posts = line.posts().unwrap();
        assert_eq!((posts.len(), posts[0].name.as_str()), (1, POST), "{name}");
        assert_eq!(line.leaf(POST).unwrap().as_deref(), Some(&b"sealed"[..]), "{name}");
        assert!(line.leaves().unwrap().iter().all(|file| file.name != POST), "{name}");

        let root = line.list(None, None).unwrap();
        assert_eq!(root.folders, [LANE, "pairing"], "{name}");
        assert_eq!(root.refused, 0, "{name}");
        let lane = line.list(Some(LANE), None).unwrap();
        let listed: Vec<_> =
            lane.files.iter().map(|file| (file.name.as_str(), file.bytes)).collect();
        assert_eq!(listed, [(LEAF, 70_000), (other.as_str(), 10)], "{name}");
        let after = line.list(Some(LANE), Some(LEAF)).unwrap();
        assert_eq!(after.files.len(), 1, "{name}");

        assert!(line.delete(LANE, LEAF).unwrap(), "{name}");
        assert_eq!(curl::get(&server, LANE, LEAF).0, 404, "{name}");
        assert_eq!(line.delete(LANE, LEAF).unwrap(), kind.is_s3, "{name}: S3 does not say");
    }
}

/// nginx and rclone replace a file though asked not to (`If-None-Match: *`), so nothing of ours asks WebDAV so.
#[test]
fn a_file_that_is_there_stays_as_it_is_on_every_server() {
    for kind in ALL {
        let server = Server::start(kind);
        let line = server.line();
        assert!(line.put(LANE, LEAF, b"first".to_vec()).unwrap(), "{}", kind.name);
        assert!(!line.put(LANE, LEAF, b"second".to_vec()).unwrap(), "{}", kind.name);
        curl::sees(&server, LANE, LEAF, b"first");
        println!("{}: {}", kind.name, curl::puts_if_absent(&server, LANE, LEAF, b"third"));
        // Nothing is left lying about.
        let lane = line.list(Some(LANE), None).unwrap();
        assert_eq!(lane.files.len(), 1, "{}: {:?}", kind.name, lane.files);
    }
}

/// Two phones may carry one crewmate's file at the same time.
#[test]
fn two_that_write_one_file_at_once_leave_it_whole() {
    for kind in ALL {
        let server = Server::start(kind);
        let content = vec![7_u8; 300_000];
        let written: Vec<bool> = std::thread::scope(|scope| {
            let write = |chance| {
                let (server, content) = (&server, content.clone());
                scope.spawn(move || {
                    let carrier = server.carrier();
                    let line = carry::Line::open(&carrier, crate::server::now, chance).unwrap();
                    line.put(LANE, LEAF, content).unwrap()
                })
            };
            let both: Vec<_> = [1, 1_000, 2_000].map(write).into_iter().collect();
            both.into_iter().map(|one| one.join().unwrap()).collect()
        });
        assert!(written.contains(&true), "{}", kind.name);
        curl::sees(&server, LANE, LEAF, &content);
        let lane = server.line().list(Some(LANE), None).unwrap();
        assert_eq!(lane.files.len(), 1, "{}: {:?}", kind.name, lane.files);
    }
}

/// A coach and an athlete who meet on each server: the plan goes out, the log comes back, and neither the server nor
/// anybody who looks into it can read a word.
#[test]
fn a_crew_exchanges_over_each_server() {
    for kind in ALL {
        let server = Server::start(kind);
        let (line, name) = (server.line(), kind.name);
        let crew = Crew::start(SMALL_PLAN, &[]).unwrap();
        let ines = Device::start(crew.folder().join("ines"), "Ines", Role::Athlete, 1).unwrap();
        pair(&crew.coach, &ines, 1).unwrap();
        let exchange = |device: &Device| meet::exchange(device, &line).unwrap();
        assert!(exchange(&crew.coach).put >= 2, "{name}");
        assert_eq!(exchange(&ines).leaves, 1, "{name}");
        squats(&ines, "2026-11-03", &[(50, 8), (60, 6), (70, 6)]);
        exchange(&ines);
        assert!(exchange(&crew.coach).entries >= 5, "{name}");
        let page =
            crew.coach.holdfast.member("Ines".into(), "2026-11-03".parse().unwrap()).unwrap();
        assert_eq!(page.sessions[0].sets, 3, "{name}");
        assert_eq!((exchange(&ines).put, exchange(&crew.coach).put), (0, 0), "{name}: no more");
        for file in line.leaves().unwrap() {
            let content = line.leaf(&file.name).unwrap().unwrap();
            assert!(content.starts_with(b"age-encryption.org/v1\n"), "{name}");
            let words = [&b"Ines"[..], b"Maren", b"squat", b"lift"];
            let read = |word: &&[u8]| content.windows(word.len()).any(|part| part == *word);
            assert!(!words.iter().any(read), "{name}");
        }
    }
}
