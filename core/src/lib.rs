//! Holdfast's core: everything that decides, and nothing that draws, sends or asks for the time.
//!
//! Data has one direction: plan and journal go into the store, the store gives screens. A tap
//! becomes an entry, the entry is committed, the screen is read back.
//!
//! # A coach, an athlete and a folder
//!
//! A shell holds one [`Holdfast`] a device. It passes the moment of each call, and draws the screen that
//! comes back.
//!
//! ```
//! use std::fs;
//! use std::path::Path;
//!
//! use holdfast_core::exchange::{CarriedFile, ExchangeDid, ExchangeReport, ExchangeStep, ListedFile};
//! use holdfast_core::journal::Role;
//! use holdfast_core::session::{PieceKindView, SessionState, Tap};
//! use holdfast_core::{Holdfast, Instant, MassUnit, PairDid, Start, put_file};
//!
//! # type Done<T> = Result<T, Box<dyn std::error::Error>>;
//! /// Carries an exchange out, with a folder as the carrier: the core says what to do next.
//! fn exchange(device: &Holdfast, folder: &Path, at: &Instant) -> Done<ExchangeReport> {
//!     let mut did = ExchangeDid::Begin;
//!     loop {
//!         did = match device.exchange(did, at.clone())? {
//!             ExchangeStep::ListFiles => {
//!                 let mut files = Vec::new();
//!                 for file in fs::read_dir(folder)? {
//!                     let file = file?;
//!                     let name = file.file_name().to_string_lossy().into_owned();
//!                     files.push(ListedFile { name, bytes: file.metadata()?.len() });
//!                 }
//!                 ExchangeDid::Listed { files }
//!             }
//!             ExchangeStep::Get { names } => {
//!                 let mut files = Vec::new();
//!                 for name in names {
//!                     files.push(CarriedFile { content: fs::read(folder.join(&name))?, name });
//!                 }
//!                 ExchangeDid::Got { files, unread: Vec::new() }
//!             }
//!             ExchangeStep::Put { files } => {
//!                 let mut written = 0;
//!                 for file in &files {
//!                     written += u32::from(put_file(folder, file)?);
//!                 }
//!                 ExchangeDid::Put { written, unwritten: Vec::new() }
//!             }
//!             ExchangeStep::Done { report } => return Ok(report),
//!         };
//!     }
//! }
//!
//! # fn main() -> Done<()> {
//! # let home = tempfile::tempdir()?;
//! # let folder = |name: &str| home.path().join(name).to_string_lossy().into_owned();
//! // Six in the evening of Tuesday, 3 November 2026.
//! let mut at =
//!     Instant { wall_ms: 1_793_728_800_000, offset_min: 0, boot_ms: 60_000, boot_id: "first".into() };
//! // Identities are made from the system's source of chance; here they are always the same.
//! let start = |role, name: &str, chance| Start {
//!     role,
//!     name: name.into(),
//!     unit: MassUnit::Kg,
//!     chance: vec![chance; 80],
//! };
//!
//! let coach = Holdfast::start(folder("maren"), start(Role::Coach, "Maren", 1), at.clone(), None)?;
//! let plan = r#"
//!     block = { name = "Cellar", starts = 2026-11-02, weeks = 3 }
//!     movement.press-up = { name = "Press-up", pattern = "push", lifted = "body" }
//!
//!     [[day]]
//!     name  = "Evening"
//!     on    = ["tuesday"]
//!     piece = [{ kind = "strength", name = "Push", movement = "press-up", reps = [10, 8] }]
//! "#;
//! let summary = coach.publish("plan.toml".into(), plan.into(), at.clone())?;
//! assert_eq!(summary.block, "Cellar");
//!
//! let ines = Holdfast::start(folder("ines"), start(Role::Athlete, "Ines", 2), at.clone(), None)?;
//! // In one room: each scans what the other shows. Then Ines reads four words, and Maren finds their line.
//! let scan = |code: Option<String>| PairDid::Scan { text: code.unwrap_or_default(), chance: vec![3; 32] };
//! let invited = coach.pair(PairDid::Invite { chance: vec![4; 32] }, at.clone())?;
//! let answered = ines.pair(scan(invited.code), at.clone())?;
//! let opened = coach.pair(scan(answered.code), at.clone())?;
//! let words = ines.pair(scan(opened.code), at.clone())?.words.join(" ");
//! let line = (1..).zip(&opened.lines).find(|(_, line)| **line == words).map(|(line, _)| line);
//! coach.pair(PairDid::Pick { line, label: None }, at.clone())?;
//! ines.pair(PairDid::Match { matches: true, share_earlier: true }, at.clone())?;
//!
//! let carrier = home.path().join("carrier");
//! fs::create_dir(&carrier)?;
//! // What is for Ines goes into her thread, and what is the coach's alone into another.
//! assert_eq!(exchange(&coach, &carrier, &at)?.put, 2);
//! assert_eq!(exchange(&ines, &carrier, &at)?.leaves, 1);
//! assert_eq!(ines.today(at.clone())?.state, SessionState::Ready);
//!
//! // A tap is on disk before its screen comes back. What is left out is taken as planned.
//! ines.tap(Tap::Begin { day: None }, None, at.clone())?;
//! at.wall_ms += 30_000;
//! at.boot_ms += 30_000;
//! let set = Tap::LogSet { piece: "Push".into(), set: None, load: None, reps: Some(12), reserve: None };
//! let screen = ines.tap(set, None, at.clone())?;
//! let PieceKindView::Strength { view } = &screen.pieces[0].kind else { panic!("no strength piece") };
//! assert_eq!(view.sets[0].done.as_ref().map(|set| set.reps), Some(12));
//! # Ok(())
//! # }
//! ```
//!
//! # Without a device
//!
//! A plan is checked, and a bar is loaded, without one:
//!
//! ```
//! use holdfast_core::session::PlatesAsked;
//! use holdfast_core::{HoldfastError, check_plan, plates};
//!
//! let plan = "[block]\nname = \"Cellar\"\nstarts = 2026-11-04\nweeks = 3\n";
//! match check_plan("plan.toml".into(), plan.into(), None) {
//!     // No day, and a first day that is no Monday.
//!     Err(HoldfastError::Plan { problems, .. }) => {
//!         let places: Vec<_> = problems.iter().map(|problem| (problem.line, problem.column)).collect();
//!         assert_eq!(places, [(1, 1), (3, 10)]);
//!     }
//!     other => panic!("{other:?}"),
//! }
//!
//! let kit = r#"
//!     [kit]
//!     bar   = [{ name = "long bar", mass = "20 kg" }]
//!     plate = [{ mass = "10 kg", count = 2 }, { mass = "5 kg", count = 4 }]
//! "#;
//! let asked = PlatesAsked { loads: vec!["50 kg".into()], ..PlatesAsked::default() };
//! let screen = plates("kit.toml", kit.as_bytes(), &asked).unwrap();
//! assert_eq!(screen.steps[0].per_side.len(), 2);
//! ```

mod error;
#[cfg(feature = "ffi")]
mod ffi;
#[cfg(test)]
mod fixtures;
mod id;
mod instant;
mod mass;
#[cfg_attr(not(feature = "planted"), allow(unreachable_pub, reason = "tests alone reach it"))]
mod planted;
#[cfg_attr(
    not(feature = "ffi"),
    allow(dead_code, reason = "some are only said across the bindings")
)]
mod say;

mod crew;
mod device;
mod door;
mod store;
pub mod trust;
mod words;

pub mod care;
pub mod clock;
pub mod coach;
pub mod exchange;
pub mod history;
pub mod journal;
pub mod load;
pub mod motion;
pub mod page;
pub mod plan;
pub mod session;

/// For fuzzers alone: readers that stand behind a seal or a signature, where bytes drawn by chance never come.
#[cfg(feature = "fuzz")]
pub mod fuzz {
    pub use crate::exchange::sealed::inside::{pack, scan, signed_text, unpack};
    pub use crate::journal::fuzz::{body_of, line_with, raw_body_of};
}

pub use catalogue::Language;
pub use crew::{CrewDevice, CrewPerson, CrewScreen, Forgotten, RecoveryDid, RecoveryScreen};
pub use device::{PairDid, PairFiles, PairScreen, PairStep, Start};
pub use door::{
    Field, Holdfast, HoldfastError, HoldfastResult, KeptAside, Restore, Server, ServerAnswer,
    ServerHeader, ServerNext, ServerRequest, ServerWant, ServerWork, Thing, Verified, Who,
    check_plan, first_run, phone_words, plates, platform_trouble, platform_words, put_file,
    restore_page, server_page, speak,
};
pub use id::{CrewId, DeviceId, PersonId, RecordId};
pub use instant::{Instant, Millis};
pub use mass::{Mass, MassError, MassUnit};
#[cfg(feature = "planted")]
pub use planted::{Planted, plant, planted_now};

#[cfg(feature = "ffi")]
uniffi::setup_scaffolding!("holdfast");
