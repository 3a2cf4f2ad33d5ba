//! docs/vectors: fixed keys and what follows from them, for whoever writes a second implementation. A script over
//! other libraries checks the same file: docs/vectors/check.py.

use std::path::{Path, PathBuf};

use data_encoding::HEXLOWER;
use serde_json::{Value, json};

use super::*;
use crate::instant::Instant;
use crate::journal::{EntryId, Hlc};
use crate::trust::{Answered, Head, Invited, Kept, Message, Recovery, Stop, crew_of, word_numbers};

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../docs/vectors")
}

fn hex(bytes: &[u8]) -> String {
    HEXLOWER.encode(bytes)
}

struct Member {
    recovery: Recovery,
    device: Keys,
    certificate: Certificate,
}

fn member(recovery: [u8; 16], sign: u8, open: u8) -> Member {
    let (recovery, device) = (Recovery::new(recovery), Keys::new(&[sign; 32], &[open; 32]));
    let certificate = Certificate::sign(&recovery.keys(), &device.public(), 1);
    Member { recovery, device, certificate }
}

fn coach() -> Member {
    member(*b"the coach's code", 1, 2)
}

fn ana() -> Member {
    member(*b"what is on paper", 3, 4)
}

fn said_of(of: &Member, secrets: (u8, u8)) -> Value {
    let (person, device) = (of.recovery.keys().public(), of.device.public());
    json!({
        "recovery_code": *of.recovery.code(),
        "age_key": *of.recovery.age_key(),
        "person_sign": hex(&person.sign),
        "person_open": hex(&person.open),
        "device_sign_secret": hex(&[secrets.0; 32]),
        "device_open_secret": hex(&[secrets.1; 32]),
        "device_sign": hex(&device.sign),
        "device_open": hex(&device.open),
        "person": of.certificate.person().to_string(),
        "device": of.certificate.device().to_string(),
        "certificate": of.certificate.text(),
    })
}

fn leaf() -> SealedLeaf {
    let (coach, ana) = (coach(), ana());
    let crew = crew_of(&coach.recovery.keys().public().sign);
    let (device, of) = (ana.certificate.device(), ana.certificate.person());
    let at =
        Instant { wall_ms: 1_793_728_800_000, offset_min: 60, boot_ms: 0, boot_id: "b".into() };
    let entry = |number: u64| {
        let hlc = Hlc { ms: at.wall_ms, count: number as u32 };
        let body = serde_json::value::RawValue::from_string("{\"name\":\"Zoë\"}".into()).unwrap();
        Entry::write(EntryId { device, number }, hlc, &at, None, Vec::new(), "profile", body)
            .unwrap()
    };
    let seen = vec![LaneHead(coach.certificate.device(), 3, "0123456789abcdef".into())];
    let follows = Follows::nothing(crew, of, &ana.certificate);
    SealedLeaf::write(ana.certificate, (crew, of), follows, seen, vec![entry(1), entry(4)])
}

fn vectors(sealed: &[u8]) -> Value {
    let (coach, ana, leaf) = (coach(), ana(), leaf());
    let crew = crew_of(&coach.recovery.keys().public().sign);
    let of = ana.certificate.person();
    let head = Head { device: ana.certificate.device(), of, sequence: 1, content: leaf.content };
    let stop = Stop::sign(&ana.recovery.keys(), head);
    let invited = Invited::new(coach.certificate, [5; 16]);
    let answered = Answered::new(None, invited.invitation(), ana.certificate, "Ana", [6; 16]);
    let opened = invited.take(&[answered.reply().clone()]).unwrap().unwrap();
    let numbers = word_numbers(&invited.invitation(), answered.reply(), opened.opening());
    let wrap = [7; 32];
    let kept = Kept {
        keys: Keys::new(&[3; 32], &[4; 32]),
        recovery: Some(Recovery::new(*b"what is on paper")),
    };
    json!({
        "coach": said_of(&coach, (1, 2)),
        "member": said_of(&ana, (3, 4)),
        "crew": crew.to_string(),
        "lane": {
            "tag": &*lane_tag(crew, of, ana.certificate.device()),
            "first_link": hex(&Follows::nothing(crew, of, &ana.certificate).content),
        },
        "leaf": {
            "text": String::from_utf8(leaf.text(&ana.device)).unwrap(),
            "content": hex(&leaf.content),
            "file": leaf.name(sealed).to_string(),
        },
        "stop": stop.text(),
        "pairing": {
            "coach_nonce": hex(&[5; 16]),
            "member_nonce": hex(&[6; 16]),
            "invitation": invited.invitation().text(),
            "reply": answered.reply().text(),
            "opening": opened.opening().text(),
            "post_tag": invited.invitation().post_tag(),
            "numbers": numbers,
            "words": opened.words(),
        },
        "key_file": {
            "wrap": hex(&wrap),
            "wrapped": hex(&kept.write(Some(&wrap))),
            "open": hex(&kept.write(None)),
        },
    })
}

/// All but what the sealing library draws by chance is as it was. `HOLDFAST_WRITE_VECTORS=1` writes new ones:
/// that is another format.
#[test]
fn what_follows_from_fixed_keys_stays() {
    let (path, file) = (folder().join("trust.json"), folder().join("sealed.leaf"));
    if std::env::var_os("HOLDFAST_WRITE_VECTORS").is_some() {
        let (coach, ana) = (coach(), ana());
        let audience = Audience {
            founder: vec![coach.device.public().open],
            member: vec![ana.device.public().open],
            papers: vec![coach.recovery.keys().public().open, ana.recovery.keys().public().open],
        };
        let sealed = leaf().seal(&ana.device, &audience).unwrap();
        std::fs::write(&file, &sealed).unwrap();
        let text = serde_json::to_string_pretty(&vectors(&sealed)).unwrap();
        std::fs::write(&path, text + "\n").unwrap();
    }
    let sealed = std::fs::read(&file).unwrap();
    let written: Value = serde_json::from_slice(&std::fs::read(&path).unwrap()).unwrap();
    assert_eq!(vectors(&sealed), written);
}

/// The file of docs/vectors, by each of the four who can open it.
#[test]
fn the_sealed_file_opens() {
    let sealed = std::fs::read(folder().join("sealed.leaf")).unwrap();
    let (coach, ana, leaf) = (coach(), ana(), leaf());
    let founder = coach.certificate.person();
    let crew = crew_of(&coach.recovery.keys().public().sign);
    let name = leaf.name(&sealed);
    for (who, member) in [(&coach, None), (&ana, Some(ana.certificate.person()))] {
        for keys in [&who.device, &who.recovery.keys()] {
            let expected = Expected { crew, founder, member };
            assert_eq!(SealedLeaf::open(&name, &sealed, &[keys], &expected), Ok(leaf.clone()));
        }
    }
}
