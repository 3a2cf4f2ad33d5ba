//! The one object.

use std::sync::Arc;

use chrono::NaiveDate;
use holdfast_core::companion::{
    Answer, CarriedFile, ExchangePlan, ExchangeReport, ListedFile, PlanSummary, SessionScreen,
    Start, Tap, Who,
};
use holdfast_core::review::{BoardScreen, Export, MemberScreen};
use holdfast_core::{CompanionError, Instant, PersonId, RecordId};

type Result<T> = std::result::Result<T, CompanionError>;

/// The one object a shell holds: screens out, taps in. The core calls it its companion, a name that
/// Kotlin keeps for itself.
///
/// Every call may wait for the disk, so it belongs on a thread that may wait. Calls from several
/// threads take turns. What a tap says is on disk before its screen comes back.
#[derive(uniffi::Object)]
pub struct Holdfast {
    core: holdfast_core::Companion,
}

#[uniffi::export]
impl Holdfast {
    /// Starts on a device: makes its home folder, its identity and its database.
    #[uniffi::constructor]
    pub fn start(home: String, start: Start, at: Instant) -> Result<Arc<Holdfast>> {
        let core = holdfast_core::Companion::start(home, start, at)?;
        Ok(Arc::new(Holdfast { core }))
    }

    /// Opens a device that was started before. A damaged database is moved aside and rebuilt;
    /// `who` says so.
    #[uniffi::constructor]
    pub fn open(home: String, at: Instant) -> Result<Arc<Holdfast>> {
        let core = holdfast_core::Companion::open(home, at)?;
        Ok(Arc::new(Holdfast { core }))
    }

    /// Who uses the device, and how it opened.
    pub fn who(&self) -> Result<Who> {
        self.core.who()
    }

    /// The session screen now.
    pub fn today(&self, at: Instant) -> Result<SessionScreen> {
        self.core.today(at)
    }

    /// What is planned for another date, or a day by its name, with the loads as they stand.
    pub fn preview(
        &self,
        date: NaiveDate,
        day: Option<String>,
        at: Instant,
    ) -> Result<SessionScreen> {
        self.core.preview(date, day, at)
    }

    /// Does what a tap says. When the screen comes back, it is on disk.
    pub fn tap(&self, tap: Tap, at: Instant) -> Result<SessionScreen> {
        self.core.tap(tap, at)
    }

    /// Publishes a plan text: the next exchange carries it.
    pub fn publish(&self, source_name: String, text: Vec<u8>, at: Instant) -> Result<PlanSummary> {
        self.core.publish(source_name, text, at)
    }

    /// The coach's board for a date.
    pub fn board(&self, date: NaiveDate) -> Result<BoardScreen> {
        self.core.board(date)
    }

    /// A member's page for a date, by name or identity.
    pub fn member(&self, name: String, date: NaiveDate) -> Result<MemberScreen> {
        self.core.member(name, date)
    }

    /// Answers a proposal: it reaches the member with the next exchange.
    pub fn answer(&self, answer: Answer, at: Instant) -> Result<()> {
        self.core.answer(answer, at)
    }

    /// Clears a member's discomfort flag, after talking with them.
    pub fn clear_flag(&self, person: PersonId, flag: RecordId, at: Instant) -> Result<()> {
        self.core.clear_flag(person, flag, at)
    }

    /// Cuts what is logged into leaves: call it when the app leaves the foreground.
    pub fn settle(&self) -> Result<()> {
        self.core.settle()
    }

    /// First half of an exchange: says what to put on a carrier and what to get from it.
    pub fn offer(&self, listing: Vec<ListedFile>) -> Result<ExchangePlan> {
        self.core.offer(listing)
    }

    /// Second half: takes in the files that were got.
    pub fn absorb(&self, files: Vec<CarriedFile>, at: Instant) -> Result<ExchangeReport> {
        self.core.absorb(files, at)
    }

    /// Everything this device knows.
    pub fn export(&self) -> Result<Export> {
        self.core.export()
    }

    /// Closes the device, leaving one tidy database file. Closing twice is harmless.
    pub fn shut(&self) -> Result<()> {
        self.core.close()
    }
}

/// Reads a plan text without publishing it. `source_name` is what errors call it.
#[uniffi::export]
pub(crate) fn check_plan(source_name: String, text: Vec<u8>) -> Result<PlanSummary> {
    holdfast_core::Companion::check_plan(source_name, text)
}

/// An error in words, for whoever holds the device.
#[uniffi::export]
pub(crate) fn explain(error: CompanionError) -> String {
    error.to_string()
}
