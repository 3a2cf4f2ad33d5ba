//! The companion: the one object a shell holds. Screens out, taps in.
//!
//! Every method takes the moment it happens at, returns a whole screen or report, and may be called
//! from any thread. What a tap says is on disk before its screen comes back.

mod able;
mod athlete;
mod bar;
mod carry;
mod coach;
mod device;
mod error;
mod pace;
mod plates;
mod reading;
mod rest;
mod ruling;
mod screen;
mod session_log;
mod sheet;
mod tap;
mod taps;
mod timed;

use std::any::Any;
use std::panic::{self, AssertUnwindSafe};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};

use chrono::NaiveDate;
use serde::Serialize;

use crate::error::{Error, Result};
use crate::id::{CrewId, DeviceId, PersonId, RecordId, random};
use crate::instant::Instant;
use crate::journal::{Profile, Role};
use crate::mass::MassUnit;
use crate::review::{self, BoardScreen, Export, MemberScreen};
use crate::store::{self, Draft, Identity, Rebuilt, people};
use crate::words;
use device::Device;

pub use crate::exchange::{AsideFile, CarriedFile, ExchangePlan, ListedFile};
pub use carry::ExchangeReport;
pub use coach::{Answer, PlanSummary};
pub use error::CompanionError;
pub use pace::FewerReps;
pub use plates::{PlatesAsked, PlatesScreen, PlatesStep, plates};
pub use rest::{RestBasis, RestView};
pub use screen::*;
pub use tap::Tap;

/// Result with the surface's own error.
pub type CompanionResult<T> = std::result::Result<T, CompanionError>;

/// How somebody starts on a device.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Start {
    /// Coach or athlete.
    pub role: Role,
    /// The name others see.
    pub name: String,
    /// The unit they read masses in.
    pub unit: MassUnit,
    /// At least 48 bytes from the system's source of chance: identities are made from them.
    pub chance: Vec<u8>,
}

/// Who uses a device, and how it opened.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Who {
    /// The person.
    pub person: PersonId,
    /// The device.
    pub device: DeviceId,
    /// Their name.
    pub name: String,
    /// Coach or athlete.
    pub role: Role,
    /// The unit they read masses in.
    pub unit: MassUnit,
    /// True once the device belongs to a crew.
    pub in_crew: bool,
    /// The coaches whose profiles have arrived.
    pub coaches: Vec<String>,
    /// What was put right on opening, in words; empty when all was well.
    pub opening: String,
}

/// The one object a shell holds.
pub struct Companion {
    device: Mutex<Option<Device>>,
}

const MAX_NAME_CHARS: usize = 40;

impl Companion {
    /// Starts on a device: makes its home folder, its identity and its database.
    ///
    /// # Errors
    /// [`CompanionError::Invalid`] when somebody has started there already, or for the name;
    /// [`CompanionError::Storage`] when the folder cannot be written.
    pub fn start(home: String, start: Start, at: Instant) -> CompanionResult<Companion> {
        caught(|| Companion::started(home, start, at))
    }

    fn started(home: String, start: Start, at: Instant) -> CompanionResult<Companion> {
        let folder = PathBuf::from(&home);
        if folder.join(store::DATABASE).exists() && Identity::read(&folder)?.is_none() {
            let reason = "there is a database here but no device.json: put that file back, or \
                          choose another folder";
            return Err(Error::invalid("home", reason).into());
        }
        if let Some(known) = Identity::read(&folder)? {
            let reason =
                format!("{home} is {}'s already; choose another folder", known.profile.name);
            return Err(Error::invalid("home", reason).into());
        }
        let name = valid_name(&start.name)?;
        let [device, person, crew] = chances(&start.chance)?.map(random);
        let crew = (start.role == Role::Coach).then_some(CrewId(crew));
        let profile =
            Profile { person: PersonId(person), name, role: start.role, unit: start.unit, crew };
        let identity = Identity { device: DeviceId(device), profile: profile.clone() };
        identity.settle(&folder)?;
        let (mut store, rebuilt) = store::open(&folder, &identity, &at, true)?;
        store.log(&at, vec![Draft::new(profile)])?;
        Ok(Companion::of(Device::new(folder, identity, at, store, rebuilt)))
    }

    /// Opens a device that was started before.
    ///
    /// A damaged database is moved aside and rebuilt; [`Companion::who`] says so.
    ///
    /// # Errors
    /// [`CompanionError::NotFound`] when nobody has started there; [`CompanionError::TooNew`] when
    /// the data was written by a newer version.
    pub fn open(home: String, at: Instant) -> CompanionResult<Companion> {
        caught(|| Companion::opened(home, at))
    }

    fn opened(home: String, at: Instant) -> CompanionResult<Companion> {
        let folder = PathBuf::from(&home);
        let Some(identity) = Identity::read(&folder)? else {
            let reason = "nobody has started here yet: start as coach or athlete first";
            return Err(Error::not_found(home, reason).into());
        };
        let (mut store, rebuilt) = store::open(&folder, &identity, &at, false)?;
        let known = people(store.reader())?;
        if !known.contains_key(&identity.profile.person) {
            // The journal came back without its first leaf, or the first start was cut short.
            store.log(&at, vec![Draft::new(identity.profile.clone())])?;
        }
        Ok(Companion::of(Device::new(folder, identity, at, store, rebuilt)))
    }

    /// Who uses the device, and how it opened.
    pub fn who(&self) -> CompanionResult<Who> {
        self.with(|device| {
            let profile = device.profile()?;
            Ok(Who {
                person: profile.person,
                device: device.identity.device,
                name: profile.name,
                role: profile.role,
                unit: profile.unit,
                in_crew: profile.crew.is_some(),
                coaches: people(device.reader())?
                    .into_values()
                    .map(|(_, profile)| profile)
                    .filter(|profile| profile.role == Role::Coach)
                    .map(|profile| profile.name)
                    .collect(),
                opening: opening_text(device.rebuilt.as_ref()).unwrap_or_default(),
            })
        })
    }

    /// The session screen now.
    pub fn today(&self, at: Instant) -> CompanionResult<SessionScreen> {
        self.with(|device| {
            device.require(Role::Athlete, "a session")?;
            athlete::screen(device, &at, None)
        })
    }

    /// What is planned for another date, or a day by its name, with the loads as they stand.
    pub fn preview(
        &self,
        date: NaiveDate,
        day: Option<String>,
        at: Instant,
    ) -> CompanionResult<SessionScreen> {
        self.with(|device| {
            device.require(Role::Athlete, "a session")?;
            athlete::preview(device, &at, date, day.as_deref())
        })
    }

    /// Does what a tap says. When the screen comes back, it is on disk.
    pub fn tap(&self, tap: Tap, at: Instant) -> CompanionResult<SessionScreen> {
        self.with(|device| athlete::tap(device, tap, &at))
    }

    /// Reads a plan text without publishing it. `source_name` is what errors call it.
    ///
    /// # Errors
    /// [`CompanionError::Plan`] with every problem and its place.
    pub fn check_plan(source_name: String, text: Vec<u8>) -> CompanionResult<PlanSummary> {
        caught(|| Ok(coach::check(&source_name, &text)?))
    }

    /// Publishes a plan text: the next exchange carries it.
    ///
    /// # Errors
    /// As [`Companion::check_plan`].
    pub fn publish(
        &self,
        source_name: String,
        text: Vec<u8>,
        at: Instant,
    ) -> CompanionResult<PlanSummary> {
        self.with(|device| coach::publish(device, &source_name, &text, &at))
    }

    /// The coach's board for a date.
    pub fn board(&self, date: NaiveDate) -> CompanionResult<BoardScreen> {
        self.with(|device| {
            device.require(Role::Coach, "the board")?;
            let plan = device.block_for(date)?;
            let block = plan.as_ref().map(|plan| &*plan.block);
            let mut board = review::board(device.reader(), block, date)?;
            let aside = device.aside.iter();
            board
                .arrivals
                .extend(aside.map(|file| format!("{} left alone: {}", file.name, file.reason)));
            Ok(board)
        })
    }

    /// A member's page for a date. An athlete sees their own.
    ///
    /// # Errors
    /// [`CompanionError::NotFound`] with the names there are.
    pub fn member(&self, name: String, date: NaiveDate) -> CompanionResult<MemberScreen> {
        self.with(|device| {
            let (person, profile) = find_member(device, &name)?;
            let plan = device.block_for(date)?;
            let block = plan.as_ref().map(|plan| &*plan.block);
            review::member(device.reader(), person, &profile, block, date)
        })
    }

    /// Answers a proposal: it reaches the member with the next exchange.
    ///
    /// # Errors
    /// [`CompanionError::Invalid`] for a load past the cap, with the most that is allowed.
    pub fn answer(&self, answer: Answer, at: Instant) -> CompanionResult<()> {
        self.with(|device| coach::answer(device, answer, &at))
    }

    /// Clears a member's discomfort flag, after talking with them.
    pub fn clear_flag(&self, person: PersonId, flag: RecordId, at: Instant) -> CompanionResult<()> {
        self.with(|device| coach::clear_flag(device, person, flag, &at))
    }

    /// Cuts what is logged into leaves: call it when the app leaves the foreground.
    pub fn settle(&self) -> CompanionResult<()> {
        self.with(Device::cut_leaves)
    }

    /// First half of an exchange: says what to put on a carrier and what to get from it.
    pub fn offer(&self, listing: Vec<ListedFile>) -> CompanionResult<ExchangePlan> {
        self.with(|device| carry::offer(device, &listing))
    }

    /// Second half: takes in the files that were got.
    pub fn absorb(&self, files: Vec<CarriedFile>, at: Instant) -> CompanionResult<ExchangeReport> {
        self.with(|device| carry::absorb(device, &files, &at))
    }

    /// Everything this device knows.
    pub fn export(&self) -> CompanionResult<Export> {
        self.with(|device| review::export(device.reader()))
    }

    /// Folds the whole journal again and says whether that changed anything: it never should.
    pub fn refold(&self) -> CompanionResult<bool> {
        self.with(|device| {
            let before = store::dump(device.reader())?;
            device.store.refold()?;
            Ok(store::dump(device.reader())? != before)
        })
    }

    /// The folded state as text: equal texts mean equal states. For tests and for support.
    pub fn state_text(&self) -> CompanionResult<String> {
        self.with(|device| store::dump(device.reader()))
    }

    /// Closes the device, leaving one tidy database file. Closing twice is harmless.
    pub fn close(&self) -> CompanionResult<()> {
        caught(|| match self.lock().take() {
            Some(device) => Ok(device.store.close()?),
            None => Ok(()),
        })
    }

    fn of(device: Device) -> Companion {
        Companion { device: Mutex::new(Some(device)) }
    }

    fn lock(&self) -> MutexGuard<'_, Option<Device>> {
        // A panic while the lock was held left the database as its last commit; go on from there.
        self.device.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn with<T>(&self, work: impl FnOnce(&mut Device) -> Result<T>) -> CompanionResult<T> {
        let mut held = self.lock();
        let Some(device) = held.as_mut() else {
            return Err(Error::invalid("companion", "it is closed: open it again").into());
        };
        // Whatever a panic leaves half done in memory is dropped below and read anew from the disk.
        let done = panic::catch_unwind(AssertUnwindSafe(|| work(device)));
        let error = match done {
            // The checks on opening passed, but a page went bad since: put right what can be.
            Ok(Err(error)) if store::is_damage(&error) => None,
            Ok(done) => return Ok(done?),
            Err(panic) => Some(CompanionError::Unexpected { reason: said(&*panic) }),
        };
        let mut put_right = "it was damaged and is whole again".to_owned();
        if let Some(device) = held.take() {
            // A second panic leaves the companion closed, which says to open it again.
            let device = caught(|| Ok(reopened(device)?))?;
            put_right = opening_text(device.rebuilt.as_ref()).unwrap_or(put_right);
            *held = Some(device);
        }
        let reason = format!("{put_right}. What you just did was not saved: do it again");
        Err(error.unwrap_or(CompanionError::Storage { path: "the database".into(), reason }))
    }
}

/// Lets go of a database and opens it again; one that turned out damaged is built anew.
fn reopened(device: Device) -> Result<Device> {
    let (home, identity, at) = (device.home.clone(), device.identity.clone(), device.seen.clone());
    drop(device);
    let (store, rebuilt) = store::open(&home, &identity, &at, false)?;
    Ok(Device::new(home, identity, at, store, rebuilt))
}

/// Makes an error of a panic: a shell meets no other kind. What was half done is dropped with it.
fn caught<T>(work: impl FnOnce() -> CompanionResult<T>) -> CompanionResult<T> {
    panic::catch_unwind(AssertUnwindSafe(work))
        .unwrap_or_else(|panic| Err(CompanionError::Unexpected { reason: said(&*panic) }))
}

/// What a panic said.
fn said(panic: &(dyn Any + Send)) -> String {
    let text = panic.downcast_ref::<String>().cloned();
    let text = text.or_else(|| panic.downcast_ref::<&str>().map(|text| (*text).to_owned()));
    text.unwrap_or_else(|| "a panic without words".into())
}

/// Publishes a file in a folder: temporary name, flush, rename without replacing, flush the folder.
/// Says whether it was not there yet. For shells whose carrier is a plain folder.
///
/// # Errors
/// [`CompanionError::Storage`] names the file.
pub fn put_file(folder: &Path, file: &CarriedFile) -> CompanionResult<bool> {
    Ok(store::publish(folder, &file.name, &file.content)?)
}

pub(crate) fn opening_text(rebuilt: Option<&Rebuilt>) -> Option<String> {
    let Rebuilt { aside, from_leaves, salvaged } = rebuilt?;
    let entries = words::count(*from_leaves, "entry");
    let back = format!("{entries} came back from this device's leaf files");
    Some(match aside {
        Some(aside) => format!(
            "the database was damaged and is kept as {aside}. A new one was built: {back}, and \
             {salvaged} that no leaf held yet from the damaged file"
        ),
        None => format!("the database was missing, or part of it: {back}"),
    })
}

fn find_member(device: &Device, name: &str) -> Result<(PersonId, Profile)> {
    let athletes: Vec<(PersonId, Profile)> = people(device.reader())?
        .into_iter()
        .map(|(person, (_, profile))| (person, profile))
        .filter(|(_, profile)| profile.role == Role::Athlete)
        .collect();
    let wanted = name.trim().to_lowercase();
    let matches = |(person, profile): &&(PersonId, Profile)| {
        profile.name.to_lowercase() == wanted || person.to_string() == wanted
    };
    let found: Vec<_> = athletes.iter().filter(matches).collect();
    let names = |of: &[(PersonId, Profile)]| {
        let names: Vec<String> = of.iter().map(|(_, profile)| profile.name.clone()).collect();
        words::list(&names)
    };
    match found.as_slice() {
        [one] => Ok((*one).clone()),
        [] if athletes.is_empty() => {
            Err(Error::not_found(format!("member \"{name}\""), "nobody's log has arrived yet"))
        }
        [] => Err(Error::not_found(
            format!("member \"{name}\""),
            format!("there are {}", names(&athletes)),
        )),
        // Names are made distinct, so this is two people with one identity: nothing to choose by.
        several => Ok((*several[0]).clone()),
    }
}

fn valid_name(name: &str) -> Result<String> {
    let name = name.trim();
    let fits = (1..=MAX_NAME_CHARS).contains(&name.chars().count());
    if !fits || name.chars().any(char::is_control) {
        let reason = format!("a name has 1 to {MAX_NAME_CHARS} characters and no line breaks");
        return Err(Error::invalid("name", reason));
    }
    Ok(name.to_owned())
}

fn chances(bytes: &[u8]) -> Result<[[u8; 16]; 3]> {
    let mut made = [[0; 16]; 3];
    if bytes.len() < 48 {
        return Err(Error::invalid("chance", "48 random bytes are needed to make identities"));
    }
    for (made, given) in made.iter_mut().zip(bytes.chunks_exact(16)) {
        made.copy_from_slice(given);
    }
    Ok(made)
}

#[cfg(test)]
mod tests {
    use tempfile::TempDir;

    use super::*;

    #[test]
    #[allow(clippy::panic, reason = "the point of it")]
    fn a_panic_is_an_error_and_leaves_nothing_half_done() {
        let home = TempDir::new().unwrap();
        let at = Instant { wall_ms: 0, offset_min: 0, boot_ms: 0, boot_id: "a".into() };
        let (role, name, unit) = (Role::Athlete, "Ines".into(), MassUnit::Kg);
        let start = Start { role, name, unit, chance: (0..48).collect() };
        let home = home.path().to_string_lossy().into_owned();
        let companion = Companion::start(home, start, at.clone()).unwrap();
        let before = companion.state_text().unwrap();
        let failed = companion.with(|device| -> Result<()> {
            device.identity.profile.name = "half done".into();
            panic!("planted in {}", "the midst");
        });
        let reason = "planted in the midst".into();
        assert_eq!(failed, Err(CompanionError::Unexpected { reason }));
        assert_eq!(companion.state_text().unwrap(), before);
        assert_eq!(companion.today(at).unwrap().name, "Ines");
    }
}
