//! A coach's device with one member in its crew, as it lies on disk; and leaves that the member writes next.

use std::fs;
use std::path::{Path, PathBuf};
use std::process;

use holdfast_core::exchange::sealed::{
    Audience, Expected, Follows, SealedHeader, SealedLeaf, SealedName,
};
use holdfast_core::exchange::{CarriedFile, ExchangeDid, ExchangeReport, ExchangeStep, ListedFile};
use holdfast_core::journal::{Entry, Role};
use holdfast_core::trust::{Certificate, Kept, Keys, crew_of};
use holdfast_core::{DeviceId, Holdfast, Instant, MassUnit, PairDid, PersonId, Start};

/// One day with a piece of each kind, every day of two weeks.
const PLAN: &[u8] = include_bytes!("../../bindings/fixtures/small-plan.toml");

/// Six in the evening of Tuesday, 3 November 2026.
pub fn now() -> Instant {
    let boot_id = "first".into();
    Instant { wall_ms: 1_793_728_800_000, offset_min: 0, boot_ms: 60_000, boot_id }
}

/// The coach's home, and the keys of both.
pub struct Homes {
    folder: PathBuf,
    coach: [u8; 32],
    keys: Keys,
    certificate: Certificate,
    header: SealedHeader,
    content: [u8; 32],
    /// The member's last number.
    pub last: u64,
}

impl Homes {
    /// Starts both and pairs them, in a folder of this process's own; in memory where the system has a place for that.
    ///
    /// # Panics
    /// Where that fails: nothing of it depends on an input.
    pub fn start() -> Homes {
        let memory = Path::new("/dev/shm");
        let folder = if memory.is_dir() { memory.into() } else { std::env::temp_dir() };
        let folder = folder.join(format!("holdfast-fuzz-{}", process::id()));
        let _ = fs::remove_dir_all(&folder);
        let start = |role, name: &str, chance| {
            let home = folder.join(name).to_string_lossy().into_owned();
            let (name, unit) = (name.to_owned(), MassUnit::Kg);
            let start = Start { role, name, unit, chance: vec![chance; 80] };
            Holdfast::start(home, start, now(), None).expect("a home")
        };
        let (maren, ines) = (start(Role::Coach, "maren", 1), start(Role::Athlete, "ines", 2));
        maren.publish("plan".into(), PLAN.to_vec(), now()).expect("a plan");
        pair(&maren, &ines);
        let (mut files, mut held) = (Vec::new(), Vec::new());
        for device in [&maren, &ines, &maren] {
            let (_, put) = exchange(device, &files);
            held.push(put.len());
            files.extend(put);
        }
        // What the member put there, opened with the member's own keys.
        let theirs = &files[held[0]];
        let name = SealedName::parse(&theirs.name).expect("a leaf");
        let read = |of: &str, device| {
            let file = fs::read(folder.join(of).join("device.keys")).expect("a key file");
            Kept::read(&file, None, device).ok().expect("keys")
        };
        let (keys, founder) = (read("ines", name.device).keys, maren.who().expect("the coach"));
        let coach = read("maren", founder.device);
        let paper = coach.recovery.as_ref().expect("not on paper yet").keys().public();
        let crew = crew_of(&paper.sign);
        let expected = Expected { crew, founder: founder.person, member: None };
        let leaf = SealedLeaf::open(&name, &theirs.content, &[&keys], &expected).expect("opens");
        for device in [maren, ines] {
            device.shut().expect("shut");
        }
        let last = leaf.entries.last().map_or(0, |entry| entry.id.number);
        let SealedLeaf { certificate, header, content, .. } = leaf;
        let coach = coach.keys.public().open;
        Homes { folder, coach, keys, certificate, header, content, last }
    }

    /// The coach's device, as it was after pairing.
    ///
    /// # Panics
    /// Where the disk does not let it be copied.
    pub fn coach(&self) -> Holdfast {
        let (from, to) = (self.folder.join("maren"), self.folder.join("copy"));
        let _ = fs::remove_dir_all(&to);
        for part in [PathBuf::new(), PathBuf::from("leaves")] {
            fs::create_dir_all(to.join(&part)).expect("a folder");
            for file in fs::read_dir(from.join(&part)).expect("a home") {
                let path = file.expect("a file").path();
                let name = path.file_name().expect("a name");
                // What says where a home lies would say that this is another.
                if path.is_file() && name != "lock" && name != "place" {
                    fs::copy(&path, to.join(&part).join(name)).expect("copied");
                }
            }
        }
        Holdfast::open(to.to_string_lossy().into_owned(), now(), None).expect("opens")
    }

    /// The member's device.
    pub fn device(&self) -> DeviceId {
        self.header.device
    }

    /// The member.
    pub fn person(&self) -> PersonId {
        self.header.person
    }

    /// The file of the member's next leaf.
    ///
    /// # Panics
    /// Where it is larger than a file may be.
    pub fn next(&self, entries: Vec<Entry>) -> CarriedFile {
        let SealedHeader { crew, of, sequence, .. } = self.header;
        let follows = Follows { sequence, content: self.content };
        let leaf = SealedLeaf::write(self.certificate, (crew, of), follows, Vec::new(), entries);
        let audience = Audience { founder: vec![self.coach], ..Audience::default() };
        let content = leaf.seal(&self.keys, &audience).expect("sealed");
        CarriedFile { name: leaf.name(&content).to_string(), content }
    }
}

fn pair(maren: &Holdfast, ines: &Holdfast) {
    let step = |device: &Holdfast, did| device.pair(did, now()).expect("a step of a pairing");
    let scan =
        |code: Option<String>| PairDid::Scan { text: code.expect("a code"), chance: vec![3; 32] };
    let invited = step(maren, PairDid::Invite { chance: vec![4; 32] });
    let answered = step(ines, scan(invited.code));
    let opened = step(maren, scan(answered.code));
    let words = step(ines, scan(opened.code)).words.join(" ");
    let line = (1..).zip(&opened.lines).find(|(_, line)| **line == words).map(|(line, _)| line);
    step(maren, PairDid::Pick { line, label: None });
    step(ines, PairDid::Match { matches: true, share_earlier: true });
}

/// An exchange with a carrier that has these files: what came of it, and what was put there.
///
/// # Panics
/// Where it fails.
pub fn exchange(device: &Holdfast, files: &[CarriedFile]) -> (ExchangeReport, Vec<CarriedFile>) {
    let (mut did, mut put) = (ExchangeDid::Begin, Vec::new());
    loop {
        did = match device.exchange(did, now()).expect("a step of an exchange") {
            ExchangeStep::ListFiles => {
                let listed = |file: &CarriedFile| ListedFile {
                    name: file.name.clone(),
                    bytes: file.content.len() as u64,
                };
                ExchangeDid::Listed { files: files.iter().map(listed).collect() }
            }
            ExchangeStep::Get { names } => {
                let wanted = files.iter().filter(|file| names.contains(&file.name));
                ExchangeDid::Got { files: wanted.cloned().collect(), unread: Vec::new() }
            }
            ExchangeStep::Put { files } => {
                let written = files.len() as u32;
                put.extend(files);
                ExchangeDid::Put { written, unwritten: Vec::new() }
            }
            ExchangeStep::Done { report } => return (report, put),
        };
    }
}
