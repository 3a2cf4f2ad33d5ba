//! Leaves written, opened, and altered in every way there is.

use data_encoding::BASE64URL_NOPAD;
use proptest::prelude::*;

use super::first_line::FIRST_LINE_BYTES;
use super::*;
use crate::id::DeviceId;
use crate::instant::Instant;
use crate::journal::{EntryId, Hlc};
use crate::trust::tests::{device, person};
use crate::trust::{LEAF, crew_of, person_of};

/// A coach and two members, each with one device and a paper.
pub(crate) struct Somebody {
    pub(crate) person: Keys,
    pub(crate) device: Keys,
    pub(crate) certificate: Certificate,
}

pub(crate) fn somebody(number: u8) -> Somebody {
    let (person, device) = (person(number), device(number));
    let certificate = Certificate::sign(&person, &device.public(), 1);
    Somebody { person, device, certificate }
}

impl Somebody {
    pub(crate) fn id(&self) -> PersonId {
        self.certificate.person()
    }

    pub(super) fn expects(&self, coach: &Somebody) -> Expected {
        let member = (self.id() != coach.id()).then(|| self.id());
        Expected { crew: crew(coach), founder: coach.id(), member }
    }
}

pub(crate) fn crew(coach: &Somebody) -> CrewId {
    crew_of(&coach.person.public().sign)
}

pub(super) fn audience(coach: &Somebody, member: &Somebody) -> Audience {
    Audience {
        founder: vec![coach.device.public().open],
        member: vec![member.device.public().open],
        papers: vec![coach.person.public().open, member.person.public().open],
    }
}

pub(crate) fn entry(device: DeviceId, number: u64) -> Entry {
    let at =
        Instant { wall_ms: 1_793_728_800_000, offset_min: 60, boot_ms: 0, boot_id: "b".into() };
    let hlc = Hlc { ms: at.wall_ms, count: number as u16 as _ };
    let body = serde_json::value::RawValue::from_string("{\"name\":\"Zoë\"}".into()).unwrap();
    Entry::write(EntryId { device, number }, hlc, &at, None, Vec::new(), "profile", body).unwrap()
}

pub(super) fn leaf(
    writer: &Somebody,
    of: &Somebody,
    coach: &Somebody,
    numbers: &[u64],
) -> SealedLeaf {
    let follows = Follows::nothing(crew(coach), of.id(), &writer.certificate);
    let entries =
        numbers.iter().map(|number| entry(writer.certificate.device(), *number)).collect();
    SealedLeaf::write(writer.certificate, (crew(coach), of.id()), follows, Vec::new(), entries)
}

/// The text of a leaf with another body, signed by its writer all the same.
pub(super) fn signed(writer: &Somebody, body: &str) -> Vec<u8> {
    let content = first_line::content_hash(body.as_bytes());
    let first = first_line::write(&writer.certificate, &content, &writer.device);
    [first.as_bytes(), body.as_bytes()].concat()
}

pub(super) fn fault(text: &[u8]) -> Option<SealedFault> {
    SealedLeaf::read(text).err()
}

#[test]
fn a_leaf_is_opened_by_the_two_people_of_its_thread() {
    let (coach, ana, ben) = (somebody(1), somebody(2), somebody(3));
    let leaf = leaf(&ana, &ana, &coach, &[3, 4, 9]);
    let file = leaf.seal(&ana.device, &audience(&coach, &ana)).unwrap();
    let name = leaf.name(&file);
    assert_eq!(SealedName::parse(&name.to_string()), Some(name));
    for (who, expects) in [(&coach, coach.expects(&coach)), (&ana, ana.expects(&coach))] {
        // The paper opens it too.
        for keys in [&who.device, &who.person] {
            assert_eq!(SealedLeaf::open(&name, &file, &[keys], &expects), Ok(leaf.clone()));
        }
    }
    let opened = SealedLeaf::open(&name, &file, &[&ben.device, &ben.person], &ben.expects(&coach));
    assert_eq!(opened, Err(SealedFault::NotForUs));
    assert_eq!(leaf.header.previous.len(), 64);
    assert_eq!((leaf.header.sequence, leaf.header.count), (1, 3));
    // Sealed again it is another file of the same leaf.
    let again = leaf.seal(&ana.device, &audience(&coach, &ana)).unwrap();
    assert_ne!(again, file);
    assert_eq!(
        SealedLeaf::open(&leaf.name(&again), &again, &[&ana.device], &ana.expects(&coach)),
        Ok(leaf)
    );
}

/// Wherever a file is altered or cut, it is left alone: by its name, and also where the name is made to fit.
#[test]
fn no_altered_file_is_taken_in() {
    let (coach, ana) = (somebody(1), somebody(2));
    let leaf = leaf(&ana, &ana, &coach, &[1]);
    let file = leaf.seal(&ana.device, &audience(&coach, &ana)).unwrap();
    let name = leaf.name(&file);
    let open = |name: &SealedName, file: &[u8]| {
        SealedLeaf::open(name, file, &[&ana.device], &ana.expects(&coach))
    };
    for at in 0..file.len() {
        let mut turned = file.clone();
        turned[at] ^= 1 << (at % 8);
        assert_eq!(open(&name, &turned), Err(SealedFault::Torn), "byte {at}");
        let renamed = open(&leaf.name(&turned), &turned);
        assert!(renamed.is_err(), "byte {at}");
    }
    for length in 0..file.len() {
        let cut = &file[..length];
        assert_eq!(open(&name, cut), Err(SealedFault::Torn));
        let renamed = open(&leaf.name(cut), cut);
        assert!(
            matches!(
                renamed,
                Err(SealedFault::Envelope | SealedFault::Altered | SealedFault::NotForUs)
            ),
            "{length} bytes: {renamed:?}"
        );
    }
    let longer = [&file[..], &[0]].concat();
    assert_eq!(open(&leaf.name(&longer), &longer), Err(SealedFault::Altered));
}

/// What a recipient could do who knows the key of a file: every bit of the text turned, sealed honestly.
#[test]
fn no_altered_text_is_signed() {
    let (coach, ana) = (somebody(1), somebody(2));
    let text = leaf(&ana, &ana, &coach, &[1]).text(&ana.device);
    assert_eq!(text.iter().position(|byte| *byte == b'\n'), Some(FIRST_LINE_BYTES - 1));
    assert_eq!(FIRST_LINE_BYTES, 363);
    for bit in 0..text.len() * 8 {
        let mut turned = text.clone();
        turned[bit / 8] ^= 1 << (bit % 8);
        let fault = fault(&turned);
        if bit / 8 < FIRST_LINE_BYTES {
            assert!(fault.is_some(), "bit {bit}");
        } else {
            assert_eq!(fault, Some(SealedFault::Signature), "bit {bit}");
        }
    }
    for length in 0..text.len() {
        assert!(fault(&text[..length]).is_some(), "{length} bytes");
    }
}

/// Signatures that are good for something else, and certificates that do not belong to them.
#[test]
fn a_signature_is_for_this_leaf_alone() {
    let (coach, ana, ben) = (somebody(1), somebody(2), somebody(3));
    let leaf = leaf(&ana, &ana, &coach, &[1]);
    let body = body(&leaf.header_line, &leaf.entries);
    let with = |certificate: &Certificate, signature: &[u8; 64]| {
        let first = format!(
            "holdfast-leaf-1 {} {}\n",
            certificate.text(),
            BASE64URL_NOPAD.encode(signature)
        );
        [first.into_bytes(), body.clone()].concat()
    };
    let digest = ana.certificate.digest();
    let good = ana.device.sign(&LEAF, &[&digest, &leaf.content]);
    assert_eq!(SealedLeaf::read(&with(&ana.certificate, &good)), Ok(leaf.clone()));
    let labels = [*b"holdfast/cert/1\0", *b"holdfast/stop/1\0", *b"holdfast/pair/1\0", [0; 16]];
    for label in labels {
        let other = ana.device.sign(&label, &[&digest, &leaf.content]);
        assert_eq!(fault(&with(&ana.certificate, &other)), Some(SealedFault::Signature));
    }
    let wrong = [
        ben.device.sign(&LEAF, &[&digest, &leaf.content]),
        ana.person.sign(&LEAF, &[&digest, &leaf.content]),
        ana.device.sign(&LEAF, &[&leaf.content, &digest]),
        ana.device.sign(&LEAF, &[&leaf.content]),
        ana.device.sign(&LEAF, &[&[0; 32], &leaf.content]),
    ];
    for wrong in wrong {
        assert_eq!(fault(&with(&ana.certificate, &wrong)), Some(SealedFault::Signature));
    }
    // Ben certifies Ana's device as his own: its signature names another certificate.
    let stolen = Certificate::sign(&ben.person, &ana.device.public(), 1);
    assert_eq!(fault(&with(&stolen, &good)), Some(SealedFault::Signature));
    // And signed by the device, the header names another person.
    let by_device = ana.device.sign(&LEAF, &[&stolen.digest(), &leaf.content]);
    assert_eq!(fault(&with(&stolen, &by_device)), Some(SealedFault::NotTheWriters));
    // A device's keys the other way round: nobody can sign as the key that opens.
    let public = ana.device.public();
    let swapped = crate::trust::PublicKeys { sign: public.open, open: public.sign };
    let swapped = Certificate::sign(&ana.person, &swapped, 1);
    let signature = ana.device.sign(&LEAF, &[&swapped.digest(), &leaf.content]);
    assert!(matches!(
        fault(&with(&swapped, &signature)),
        Some(SealedFault::Certificate | SealedFault::Signature)
    ));
    for first in ["holdfast-leaf-2 ", "holdfast-leaf-9 "] {
        let text = String::from_utf8(with(&ana.certificate, &good))
            .unwrap()
            .replace("holdfast-leaf-1 ", first);
        let found = first[14..15].parse().unwrap();
        assert_eq!(fault(text.as_bytes()), Some(SealedFault::Newer { found }));
    }
}

/// Whole, signed and sealed to the reader, and not theirs to take in.
#[test]
fn a_leaf_counts_in_its_crew_and_thread_alone() {
    let (coach, ana, ben, other) = (somebody(1), somebody(2), somebody(3), somebody(4));
    let all = Audience {
        founder: vec![coach.device.public().open, other.device.public().open],
        member: vec![ana.device.public().open, ben.device.public().open],
        papers: Vec::new(),
    };
    let open = |leaf: &SealedLeaf, writer: &Somebody, reader: &Somebody, of: &Somebody| {
        let file = leaf.seal(&writer.device, &all).unwrap();
        SealedLeaf::open(&leaf.name(&file), &file, &[&reader.device], &reader.expects(of)).map(drop)
    };
    let plan = leaf(&coach, &ana, &coach, &[1]);
    assert_eq!(open(&plan, &coach, &ana, &coach), Ok(()));
    assert_eq!(open(&plan, &coach, &coach, &coach), Ok(()));
    // The coach's word for Ana, sealed again to Ben by somebody who received it.
    assert_eq!(open(&plan, &coach, &ben, &coach), Err(SealedFault::OtherThread));
    // A member writes in another's thread.
    let strangers = leaf(&ben, &ana, &coach, &[1]);
    for reader in [&coach, &ana] {
        assert_eq!(open(&strangers, &ben, reader, &coach), Err(SealedFault::OtherThread));
    }
    // Another crew's leaf, whoever is in it.
    assert_eq!(open(&plan, &coach, &ana, &other), Err(SealedFault::OtherCrew));
    let theirs = leaf(&ana, &ana, &other, &[1]);
    assert_eq!(open(&theirs, &ana, &coach, &coach), Err(SealedFault::OtherCrew));
    // The right file under a name of another lane, place or device.
    let file = plan.seal(&coach.device, &all).unwrap();
    let name = plan.name(&file);
    for wrong in [
        SealedName { tag: lane_tag(crew(&coach), ben.id(), name.device), ..name },
        SealedName { sequence: 2, ..name },
        SealedName { device: ben.certificate.device(), ..name },
    ] {
        let opened = SealedLeaf::open(&wrong, &file, &[&ana.device], &ana.expects(&coach));
        assert_eq!(opened, Err(SealedFault::OtherName));
    }
    assert_eq!(person_of(&coach.person.public().sign), coach.id());
}

/// Each of these is signed by its writer.
#[test]
fn a_header_is_read_strictly() {
    let (coach, ana) = (somebody(1), somebody(2));
    let leaf = leaf(&ana, &ana, &coach, &[5, 6]);
    let lines: Vec<&str> = leaf.entries.iter().map(|entry| entry.raw.as_str()).collect();
    let header = leaf.header_line.as_str();
    let text =
        |header: &str, lines: &[&str]| signed(&ana, &format!("{header}\n{}\n", lines.join("\n")));
    assert_eq!(SealedLeaf::read(&text(header, &lines)), Ok(leaf.clone()));
    // What a later app adds means nothing to this one.
    let later = header.replace("\"reads\":1", "\"reads\":2,\"more\":[1]");
    assert!(SealedLeaf::read(&text(&later, &lines)).is_ok());
    let id = |number: u8| somebody(number).certificate.device();
    let seen = |heads: &str| header.replace("\"seen\":[]", &format!("\"seen\":[{heads}]"));
    let head = |number: u8, sequence: &str| {
        format!("[\"{}\",{sequence},\"0123456789abcdef\"]", id(number))
    };
    let many =
        |heads: u8| (10..10 + heads).map(|number| head(number, "1")).collect::<Vec<_>>().join(",");
    assert!(SealedLeaf::read(&text(&seen(&many(16)), &lines)).is_ok());
    let headers = [
        ("17 seen", seen(&many(17))),
        ("one twice", seen(&format!("{},{}", head(9, "1"), head(9, "2")))),
        ("its own", seen(&head(2, "1"))),
        ("2^63", seen(&head(9, "9223372036854775808"))),
        ("seen 0", seen(&head(9, "0"))),
        ("no hash", seen(&head(9, "1").replace("0123", "012X"))),
        ("a field twice", header.replace("\"leaf\":1", "\"leaf\":1,\"leaf\":1")),
        ("the count twice", header.replace("\"count\":2", "\"count\":2,\"count\":2")),
        ("depth 4", header.replace("\"reads\":1", "\"reads\":1,\"a\":[[[1]]]")),
        (
            "5 kB",
            header.replace("\"reads\":1", &format!("\"reads\":1,\"a\":\"{}\"", "x".repeat(5000))),
        ),
        ("format 0", header.replace("\"leaf\":1", "\"leaf\":0")),
        ("place 0", header.replace("\"sequence\":1", "\"sequence\":0")),
        ("a high place", header.replace("\"sequence\":1", "\"sequence\":90000001")),
        ("half a hash", header.replace(&leaf.header.previous, &leaf.header.previous[..32])),
        (
            "large letters",
            header.replace(&leaf.header.previous, &leaf.header.previous.to_uppercase()),
        ),
        ("no count", header.replace("\"count\":2,", "")),
        ("too few", header.replace("\"count\":2", "\"count\":3")),
        ("a byte order mark", format!("\u{feff}{header}")),
        ("no object", "[]".into()),
    ];
    for (what, header) in headers {
        assert!(
            matches!(fault(&text(&header, &lines)), Some(SealedFault::Header { .. })),
            "{what}"
        );
    }
    // What is quoted of a header moves no cursor, and has an end.
    for odd in ["\\u007f", "\\u009b", &"a".repeat(3_000)] {
        for (field, instead) in [
            ("\"leaf\":1", format!("\"leaf\":\"{odd}\"")),
            ("\"crew\":\"", format!("\"crew\":\"{odd}")),
            ("\"reads\":1", format!("\"reads\":\"{odd}\"")),
        ] {
            let said = fault(&text(&header.replace(field, &instead), &lines)).unwrap().to_string();
            assert!(!said.contains(char::is_control) && said.chars().count() < 400, "{said:?}");
        }
    }
    let newer = header.replace("\"leaf\":1", "\"leaf\":2");
    assert_eq!(fault(&text(&newer, &lines)), Some(SealedFault::Newer { found: 2 }));
    let high = entry(leaf.header.device, (1 << 40) + 1).raw;
    let bodies: [(&str, Vec<&str>); 6] = [
        ("falling", vec![lines[1], lines[0]]),
        ("one number twice", vec![lines[0], lines[0]]),
        ("2^40", vec![lines[0], &high]),
        ("one too many", [&lines[..], &lines[..1]].concat()),
        ("no entry", vec![lines[0], "{}"]),
        ("an empty line", vec![lines[0], ""]),
    ];
    for (what, lines) in bodies {
        assert!(matches!(fault(&text(header, &lines)), Some(SealedFault::Line { .. })), "{what}");
    }
    let body = format!("{header}\n{}\n", lines.join("\n"));
    for (what, body) in [
        ("carriage returns", body.replace('\n', "\r\n")),
        ("no last newline", body.trim_end().to_owned()),
        ("no header", String::new()),
    ] {
        assert_eq!(fault(&signed(&ana, &body)), Some(SealedFault::NotText), "{what}");
    }
    let not_text = [
        &first_line::write(&ana.certificate, &first_line::content_hash(b"\xff\n"), &ana.device)
            .into_bytes()[..],
        b"\xff\n",
    ]
    .concat();
    assert_eq!(fault(&not_text), Some(SealedFault::NotText));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn every_leaf_comes_back(numbers in prop::collection::btree_set(1..1000_u64, 1..40), sequence in 0..90_000_000_u64, heads in prop::collection::btree_map(10..60_u8, 1..1000_u64, 0..16)) {
        let (coach, ana) = (somebody(1), somebody(2));
        let device = ana.certificate.device();
        let entries = numbers.into_iter().map(|number| entry(device, number)).collect();
        let seen = heads.into_iter().map(|(number, head)| {
            LaneHead::new(somebody(number).certificate.device(), head, &[number; 32])
        });
        let follows = Follows { sequence: sequence.min(89_999_999), content: [7; 32] };
        let leaf = SealedLeaf::write(ana.certificate, (crew(&coach), ana.id()), follows, seen.collect(), entries);
        let file = leaf.seal(&ana.device, &audience(&coach, &ana)).unwrap();
        let opened = SealedLeaf::open(&leaf.name(&file), &file, &[&coach.device], &coach.expects(&coach));
        prop_assert_eq!(opened, Ok(leaf));
    }

    #[test]
    fn anything_can_be_a_text(text in prop::collection::vec(any::<u8>(), 0..500), rest in ".{0,300}") {
        let ana = somebody(2);
        let _ = (fault(&text), fault(&signed(&ana, &rest)), fault(&signed(&ana, &format!("{rest}\n"))));
    }
}
