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
mod doubt;
mod error;
mod guard;
mod pace;
mod plates;
mod reading;
mod rest;
mod ruling;
mod screen;
mod session_log;
mod sheet;
mod start;
mod tap;
mod taps;
mod timed;

use std::path::Path;
use std::sync::Mutex;

use chrono::NaiveDate;

use crate::error::{Error, Result};
use crate::id::{PersonId, RecordId};
use crate::instant::Instant;
use crate::journal::{Profile, Role};
use crate::review::{self, BoardScreen, Export, MemberScreen};
use crate::store::{self, people};
use crate::words;
use device::Device;
use guard::caught;

pub use crate::exchange::{AsideFile, CarriedFile, ExchangePlan, ListedFile};
pub use carry::ExchangeReport;
pub use coach::{Answer, PlanSummary};
pub use error::CompanionError;
pub use pace::FewerReps;
pub use plates::{PlatesAsked, PlatesScreen, PlatesStep, plates};
pub use rest::{RestBasis, RestView};
pub use screen::*;
pub use start::{Start, Who};
pub use tap::Tap;

/// Result with the surface's own error.
pub type CompanionResult<T> = std::result::Result<T, CompanionError>;

/// The one object a shell holds.
pub struct Companion {
    device: Mutex<Option<Device>>,
}

impl Companion {
    /// Starts on a device: makes its home folder, its identity and its database.
    ///
    /// # Errors
    /// [`CompanionError::Invalid`] when somebody has started there already, or for the name;
    /// [`CompanionError::Storage`] when the folder cannot be written.
    pub fn start(home: String, start: Start, at: Instant) -> CompanionResult<Companion> {
        caught(|| Ok(Companion::of(start::started(home, start, at)?)))
    }

    /// Opens a device that was started before.
    ///
    /// A damaged database is moved aside and rebuilt; [`Companion::who`] says so.
    ///
    /// # Errors
    /// [`CompanionError::NotFound`] when nobody has started there; [`CompanionError::TooNew`] when
    /// the data was written by a newer version.
    pub fn open(home: String, at: Instant) -> CompanionResult<Companion> {
        caught(|| Ok(Companion::of(start::opened(home, at)?)))
    }

    /// Who uses the device, and how it opened.
    pub fn who(&self) -> CompanionResult<Who> {
        self.with(start::who)
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
}

/// Publishes a file in a folder: temporary name, flush, rename without replacing, flush the folder.
/// Says whether it was not there yet. For shells whose carrier is a plain folder.
///
/// # Errors
/// [`CompanionError::Storage`] names the file.
pub fn put_file(folder: &Path, file: &CarriedFile) -> CompanionResult<bool> {
    Ok(store::publish(folder, &file.name, &file.content)?)
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
