//! The door: the one object a shell holds. Screens out, taps in.
//!
//! Every method takes the moment it happens at, returns a whole screen or report, and may be called
//! from any thread. What a tap says is on disk before its screen comes back.

mod carrier;
mod crew;
mod error;
mod free;
mod guard;
mod pages;
mod restore;
mod server;
mod server_work;
mod verified;
mod who;

use std::sync::Mutex;

use catalogue::Language;
use chrono::NaiveDate;

use crate::coach::{
    self, Answer, BoardScreen, LoggedSet, MaxGiven, MaxLine, MemberScreen, NoteGiven, NoteLine,
    PlanSummary, Proposal, ProposalNamed, SetNamed, SetsScreen,
};
use crate::device::{self, Device, Keystore, LetGo, Start};
use crate::history::{self, Export};
use crate::id::{PersonId, RecordId};
use crate::instant::Instant;
use crate::session::{
    self, Answers, Ask, Correction, Kept, QuestionScreen, Row, SessionScreen, Tap, Typed,
};
use crate::store;
use guard::caught;

pub use crate::device::KeptAside;
pub use error::{Field, HoldfastError, Thing};
pub use free::{
    check_plan, phone_words, plates, platform_trouble, platform_words, put_file, speak,
};
pub use pages::{first_run, restore_page, server_page};
pub use restore::Restore;
pub use server::{Server, ServerAnswer, ServerHeader, ServerNext, ServerRequest, ServerWant};
pub use server_work::ServerWork;
pub use verified::Verified;
use verified::verified;
pub use who::Who;

/// Result with the surface's own error.
pub type HoldfastResult<T> = std::result::Result<T, HoldfastError>;

/// The one object a shell holds.
///
/// Every call may wait for the disk, so it belongs on a thread that may wait. Calls from several
/// threads take turns.
#[cfg_attr(feature = "ffi", derive(uniffi::Object))]
pub struct Holdfast {
    held: Mutex<Held>,
}

/// What is behind the door now.
enum Held {
    /// A device.
    Open(Box<State>),
    /// A device whose database was let go of to be put right: the next call tries again.
    LetGo(Box<LetGo>),
    /// Nothing any more.
    Shut,
}

/// What is behind an open door: the device, and what a session keeps in memory between two calls.
struct State {
    device: Device,
    session: Kept,
    /// The language that what is kept was drawn in.
    drawn_in: Language,
}

#[cfg_attr(feature = "ffi", uniffi::export)]
impl Holdfast {
    /// Starts on a device: makes its home folder, its identity and its database.
    ///
    /// `keystore`: 32 bytes, drawn once, that the system's keystore keeps for this device alone: keys and recovery code lie wrapped
    /// with them in the home. None where there is no such place, as on a desk.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`] when somebody has started there already, or for the name;
    /// [`HoldfastError::Storage`] when the folder cannot be written.
    #[cfg_attr(feature = "ffi", uniffi::constructor)]
    pub fn start(
        home: String,
        start: Start,
        at: Instant,
        keystore: Option<Vec<u8>>,
    ) -> HoldfastResult<Holdfast> {
        caught(|| Ok(Holdfast::of(device::started(home, start, Keystore::of(keystore)?, at)?)))
    }

    /// Opens a device that was started before.
    ///
    /// A damaged database is moved aside and rebuilt; [`Holdfast::who`] says so.
    ///
    /// # Errors
    /// [`HoldfastError::NotFound`] when nobody has started there; [`HoldfastError::TooNew`] when
    /// the data was written by a newer version; [`Field::Keystore`] when the keystore's key does not open the
    /// keys: nothing is changed then, and a shell tries again, or asks for the recovery code.
    #[cfg_attr(feature = "ffi", uniffi::constructor)]
    pub fn open(home: String, at: Instant, keystore: Option<Vec<u8>>) -> HoldfastResult<Holdfast> {
        caught(|| Ok(Holdfast::of(device::opened(home, Keystore::of(keystore)?, at)?)))
    }

    /// Who uses the device, and how it opened.
    pub fn who(&self) -> HoldfastResult<Who> {
        self.with(|state| who::who(&state.device))
    }

    /// Logs the language that whoever uses the device reads, or that they leave it to the shell. What
    /// the program speaks is another matter: see [`speak`].
    pub fn choose_language(&self, language: Option<Language>, at: Instant) -> HoldfastResult<Who> {
        self.at(at, |state, at| {
            state.device.choose_language(language, at)?;
            who::who(&state.device)
        })
    }

    /// The session screen now.
    pub fn today(&self, at: Instant) -> HoldfastResult<SessionScreen> {
        self.screen(at, |state, at| session::screen(&mut state.device, &mut state.session, at))
    }

    /// The session screen now with a row chosen by hand: its key and what can be typed are about that
    /// row, until something is logged. Without a row it follows the day again.
    pub fn choose(&self, row: Option<Row>, at: Instant) -> HoldfastResult<SessionScreen> {
        self.screen(at, |state, at| session::choose(&mut state.device, &mut state.session, row, at))
    }

    /// A question as a screen: what can be touched, and the key that takes the answer. `answers` is what a touch led to; none
    /// begins the question. Nothing is logged by asking: the key's tap does that.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`] where nothing of the kind can be asked now.
    pub fn question(
        &self,
        ask: Ask,
        answers: Option<Answers>,
        at: Instant,
    ) -> HoldfastResult<QuestionScreen> {
        self.at(at, |state, at| {
            session::question(&mut state.device, &mut state.session, &ask, answers, at)
        })
    }

    /// What is planned for another date, or a day by its name, with the loads as they stand.
    pub fn preview(
        &self,
        date: NaiveDate,
        day: Option<String>,
        at: Instant,
    ) -> HoldfastResult<SessionScreen> {
        self.screen(at, |state, at| session::preview(&mut state.device, at, date, day.as_deref()))
    }

    /// Does what a tap says. When the screen comes back, it is on disk.
    ///
    /// `answers` is the revision of the screen that the tap answers, where it answers one: a key's tap
    /// that comes twice is done once.
    pub fn tap(
        &self,
        tap: Tap,
        answers: Option<u64>,
        at: Instant,
    ) -> HoldfastResult<SessionScreen> {
        self.screen(at, |state, at| {
            session::tap(&mut state.device, &mut state.session, tap, answers, at)
        })
    }

    /// What a typed line means at the row at hand: a tap to do, or something to show. Nothing is logged
    /// by reading it.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`] with what can be typed instead.
    pub fn read_line(&self, typed: String, at: Instant) -> HoldfastResult<Typed> {
        self.at(at, |state, at| {
            session::read_line(&mut state.device, &mut state.session, &typed, at)
        })
    }

    /// What a line `flag knee 4` means that is typed while no session is on screen: a tap of the session that runs,
    /// otherwise one of today and of no movement. Nothing is logged by reading it.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`] with what can be typed instead.
    pub fn read_flag(&self, typed: String, at: Instant) -> HoldfastResult<Typed> {
        self.at(at, |state, at| {
            session::read_flag(&mut state.device, &mut state.session, &typed, at)
        })
    }

    /// Reads a plan text without publishing it. `source_name` is what errors call it. A coach's device tells what its
    /// athletes meet in it from where they are; the loads of athletes who trained in the last twelve weeks count.
    ///
    /// # Errors
    /// [`HoldfastError::Plan`] with every problem and its place.
    pub fn check_plan(
        &self,
        source_name: String,
        text: Vec<u8>,
        today: NaiveDate,
    ) -> HoldfastResult<PlanSummary> {
        self.read_on(today, |state| coach::check(&state.device, &source_name, &text, today))
    }

    /// Publishes a plan text: the next exchange carries it. `source_name` is what errors call it.
    ///
    /// # Errors
    /// [`HoldfastError::Plan`] with every problem and its place.
    pub fn publish(
        &self,
        source_name: String,
        text: Vec<u8>,
        at: Instant,
    ) -> HoldfastResult<PlanSummary> {
        self.at(at, |state, at| coach::publish(&mut state.device, &source_name, &text, at))
    }

    /// The coach's board for a date.
    pub fn board(&self, date: NaiveDate) -> HoldfastResult<BoardScreen> {
        self.read_on(date, |state| coach::board(&mut state.device, date))
    }

    /// A member's page for a date, by name or identity. An athlete sees their own.
    ///
    /// # Errors
    /// [`HoldfastError::NotFound`] with the names there are.
    pub fn member(&self, name: String, date: NaiveDate) -> HoldfastResult<MemberScreen> {
        self.read_on(date, |state| coach::member(&mut state.device, &name, date))
    }

    /// A member's sets as they were logged: those of a date, otherwise of the latest sessions that have any. An
    /// athlete sees their own, and names nobody.
    ///
    /// # Errors
    /// [`HoldfastError::NotFound`] with the names there are.
    pub fn sets(
        &self,
        name: Option<String>,
        on: Option<NaiveDate>,
        latest: u32,
    ) -> HoldfastResult<SetsScreen> {
        self.with(|state| coach::sets(&mut state.device, name.as_deref(), on, latest))
    }

    /// Finds the set that is meant by its date, piece and number.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`] and [`HoldfastError::NotFound`] with what there is instead.
    pub fn find_set(&self, named: SetNamed) -> HoldfastResult<LoggedSet> {
        self.with(|state| coach::find_set(&mut state.device, &named))
    }

    /// What a typed correction of a set means. Nothing is logged by reading it.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`] with what can be typed instead.
    pub fn read_correction(&self, typed: String) -> HoldfastResult<Correction> {
        self.with(|state| session::read_correction(&typed, state.device.profile()?.unit))
    }

    /// Corrects one of the athlete's own sets, of whatever day, whether a session runs or not. Gives it as it
    /// stands now; none where it was taken back.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`] with what of it cannot be; nothing is saved then.
    pub fn correct(
        &self,
        lift: RecordId,
        correction: Correction,
        at: Instant,
    ) -> HoldfastResult<Option<LoggedSet>> {
        self.at(at, |state, at| {
            session::correct(&mut state.device, lift, correction, at)?;
            coach::logged_set(&mut state.device, lift)
        })
    }

    /// Leaves a member's set out of what is proposed, or counts it again; it stays as it was logged. Gives it as
    /// it stands now.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`] where nothing would change.
    pub fn set_aside(
        &self,
        lift: RecordId,
        aside: bool,
        at: Instant,
    ) -> HoldfastResult<Option<LoggedSet>> {
        self.at(at, |state, at| {
            coach::set_aside(&mut state.device, lift, aside, at)?;
            coach::logged_set(&mut state.device, lift)
        })
    }

    /// Logs a one-rep max: an athlete's own that was tested, or a training maximum that a coach sets for a
    /// member. Percent rules go by the latest. None where one was taken back.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`] for a load or a movement that cannot be, [`HoldfastError::NotFound`] for a
    /// member, with what there is instead.
    pub fn give_max(&self, given: MaxGiven, at: Instant) -> HoldfastResult<Option<MaxLine>> {
        self.at(at, |state, at| coach::give_max(&mut state.device, &given, at))
    }

    /// Finds the proposal of a member that is meant, as it would be on a date.
    ///
    /// # Errors
    /// [`HoldfastError::NotFound`] with what there is; [`HoldfastError::Invalid`] with the pieces where several are
    /// called so.
    pub fn find_proposal(&self, named: ProposalNamed, date: NaiveDate) -> HoldfastResult<Proposal> {
        self.read_on(date, |state| coach::find_proposal(&mut state.device, &named, date))
    }

    /// Answers a proposal: it reaches the member with the next exchange.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`] for a load past the cap, with the most that is allowed.
    pub fn answer(&self, answer: Answer, at: Instant) -> HoldfastResult<()> {
        self.at(at, |state, at| coach::answer(&mut state.device, answer, at))
    }

    /// Writes a note on a session of any day, or on a set of it, or takes one's own latest there back. An athlete's is for
    /// the coach, unless it is private; a coach's is for the athlete. The next exchange carries it.
    ///
    /// # Errors
    /// [`HoldfastError::Invalid`] and [`HoldfastError::NotFound`] with what there is instead; nothing is saved then.
    pub fn note(&self, given: NoteGiven, at: Instant) -> HoldfastResult<NoteLine> {
        self.at(at, |state, at| coach::give_note(&mut state.device, given, at))
    }

    /// Clears a member's discomfort flag, after talking with them.
    pub fn clear_flag(&self, person: PersonId, flag: RecordId, at: Instant) -> HoldfastResult<()> {
        self.at(at, |state, at| coach::clear_flag(&mut state.device, person, flag, at))
    }

    /// Cuts what is logged into leaves: call it when the app leaves the foreground.
    pub fn cut_leaves(&self) -> HoldfastResult<()> {
        self.with(|state| state.device.cut_leaves())
    }

    /// Looks at everything there is in the home: every page, line and file. What is damaged is built again.
    pub fn verify(&self) -> HoldfastResult<Verified> {
        self.let_go();
        self.with(|state| verified(&state.device))
    }

    /// Damaged databases that were kept, and what can still be read of them.
    pub fn aside(&self) -> HoldfastResult<Vec<KeptAside>> {
        self.with(|state| state.device.aside())
    }

    /// Everything this device knows.
    pub fn export(&self) -> HoldfastResult<Export> {
        self.with(|state| history::export(state.device.reader()))
    }

    /// Closes the device, leaving one tidy database file. Closing twice is harmless.
    pub fn shut(&self) -> HoldfastResult<()> {
        caught(|| match self.take() {
            Held::Open(state) => Ok(state.device.shut()?),
            Held::LetGo(_) | Held::Shut => Ok(()),
        })
    }
}

// What stays on this side: checks and support ask for it, shells do not.
impl Holdfast {
    /// Folds the whole journal again and says whether that changed anything: it never should.
    pub fn refold(&self) -> HoldfastResult<bool> {
        self.with(|state| {
            let before = store::dump(state.device.reader())?;
            state.device.store.refold()?;
            Ok(store::dump(state.device.reader())? != before)
        })
    }

    /// The folded state as text: equal texts mean equal states. For tests and for support.
    pub fn state_text(&self) -> HoldfastResult<String> {
        self.with(|state| store::dump(state.device.reader()))
    }

    fn of(device: Device) -> Holdfast {
        Holdfast { held: Mutex::new(Held::Open(Box::new(State::of(device)))) }
    }
}

impl State {
    fn of(device: Device) -> State {
        State { device, session: Kept::default(), drawn_in: catalogue::spoken() }
    }

    /// Forgets what was drawn in another language than the one that is spoken now.
    fn draw_as_spoken(&mut self) {
        if self.drawn_in != catalogue::spoken() {
            self.drawn_in = catalogue::spoken();
            self.session = Kept::default();
        }
    }
}
