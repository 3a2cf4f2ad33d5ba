//! Many files, and large ones.

use std::time::Instant;

use crate::curl;
use crate::server::{LANE, LEAF, Server};
use crate::servers::ALL;

/// More than a page of S3 holds.
#[test]
fn a_listing_of_1200_files_is_whole() {
    for kind in ALL {
        let server = Server::start(kind);
        let name = |number: u32| LEAF.replace("00000001", &format!("{number:08}"));
        let wanted: Vec<_> = (1..=1_200).map(name).collect();
        server.lay(&wanted, b"sealed");
        let line = server.line();
        let begun = Instant::now();
        let listing = line.list(Some(LANE), None).unwrap();
        println!("{}: 1,200 files listed in {} ms", kind.name, begun.elapsed().as_millis());
        assert!(listing.whole && listing.refused == 0, "{}", kind.name);
        let listed: Vec<_> = listing.files.iter().map(|file| file.name.clone()).collect();
        assert_eq!(listed, wanted, "{}", kind.name);
        assert!(listing.files.iter().all(|file| file.bytes == 6), "{}", kind.name);

        let rest = line.list(Some(LANE), Some(&name(1_150))).unwrap();
        assert_eq!(rest.files.len(), 50, "{}", kind.name);
    }
}

#[test]
fn the_largest_leaf_goes_there_and_back_and_25_small_ones_are_timed() {
    for kind in ALL {
        let server = Server::start(kind);
        let line = server.line();
        let large = vec![0x5a; 4 * 1024 * 1024];
        assert!(line.put(LANE, LEAF, large.clone()).unwrap(), "{}", kind.name);
        assert!(line.get(LANE, LEAF).unwrap() == Some(large), "{}", kind.name);
        // One byte more than a leaf may have is not brought.
        let name = LEAF.replace("00000001", "00000002");
        let larger = vec![0x5a; 4 * 1024 * 1024 + 1];
        assert!((200..300).contains(&curl::put(&server, LANE, &name, &larger)), "{}", kind.name);
        let refused = line.get(LANE, &name).unwrap_err();
        assert!(refused.to_string().contains("4194304"), "{}: {refused}", kind.name);

        // A plan for a crew of 25: a file in each of as many lanes.
        let begun = Instant::now();
        for lane in 0..25 {
            let lane = LANE.replace("00c0ffee", &format!("{lane:08}"));
            assert!(line.put(&lane, &name, vec![1; 4_096]).unwrap(), "{}", kind.name);
        }
        println!("{}: 25 files into 25 new lanes in {} ms", kind.name, begun.elapsed().as_millis());
    }
}
