//! What a device holds: its identity, its home folder, its store and shelf, and plans that were read
//! once.

mod aside;
mod checkup;
mod first_leaf;
mod identity;
mod key_files;
mod lock;
mod news;
mod open;
mod owner;
mod pairing;
mod place;
mod plans;
mod private;
mod rebuild;
mod salvage;
mod standing;
mod start;
mod tail;
mod unsaid;

use std::path::PathBuf;
use std::sync::Arc;

use catalogue::Language;
use rusqlite::Connection;

use crate::error::{Error, Field, Result};
use crate::exchange::{
    self, Bag, CarriedFile, ENTRIES_A_LEAF, ExchangeDid, ExchangeStep, Seals, Shelf, Signer,
    TakenAlong, Traffic, Trusted, unpublished,
};
use crate::id::{CrewId, PersonId};
use crate::instant::Instant;
use crate::journal::{Profile, Role};
use crate::mass::MassUnit;
use crate::say;
use crate::store::{Draft, Query, Store, Written, people};
use crate::trust::{Kept, Standing};
use lock::HomeLock;
use plans::Plans;
pub(crate) use plans::Published;
use tail::Tail;

pub use aside::KeptAside;
pub(crate) use checkup::Checkup;
pub(crate) use identity::Identity;
pub(crate) use key_files::Keystore;
pub use pairing::{PairDid, PairFiles, PairScreen, PairStep};
pub(crate) use rebuild::Rebuilt;
pub use start::Start;
pub(crate) use start::{LetGo, opened, restored, started};

/// The state behind the surface.
pub(crate) struct Device {
    home: PathBuf,
    /// Held as long as the device is open.
    lock: Arc<HomeLock>,
    /// When it was opened.
    opened_at: Instant,
    pub(crate) store: Store,
    shelf: Shelf,
    tail: Tail,
    /// A full check that runs beside everything else.
    pub(crate) checkup: Option<Checkup>,
    pub(crate) identity: Identity,
    pub(crate) kept: Arc<Kept>,
    keystore: Keystore,
    /// Who counts.
    pub(crate) standing: Standing,
    pub(crate) rebuilt: Option<Rebuilt>,
    /// True when the home was copied and has just become another device.
    pub(crate) renewed: bool,
    /// True when the home lies elsewhere than before and the recovery code is on paper alone: only its person knows
    /// whether it was moved or copied.
    pub(crate) elsewhere: bool,
    pub(crate) traffic: Traffic,
    /// Who counted when the running exchange began.
    before: Option<Standing>,
    plans: Plans,
    /// Blocks whose plan this version cannot read, as of the last time plans were looked for: the last one
    /// that can be read stays in force.
    pub(crate) unread_plans: Vec<String>,
    /// Why leaves could not be put on the shelf, the last time it was tried.
    pub(crate) shelf_trouble: Option<String>,
}

/// How often the entries that no leaf holds yet are counted: counting costs as much as a tenth of a
/// commit.
const COUNT_EVERY: u64 = 20;

impl Device {
    pub(crate) fn reader(&self) -> &Connection {
        self.store.reader()
    }

    pub(crate) fn person(&self) -> PersonId {
        self.identity.profile.person
    }

    /// Who uses the device, as the journal has it now.
    pub(crate) fn profile(&self) -> Result<Profile> {
        let query = Query { person: Some(self.person()), ..Query::default() };
        let logged = query.last::<Profile>(self.reader())?;
        let profile = logged.map_or_else(|| self.identity.profile.clone(), |logged| logged.body);
        // What somebody may do is never what an entry says.
        let role = if self.identity.trusted().own().coach { Role::Coach } else { Role::Athlete };
        Ok(Profile { role, ..profile })
    }

    /// The crew, once its coach was compared in person.
    pub(crate) fn crew(&self) -> Option<CrewId> {
        self.trusted().crew()
    }

    /// Whose device this is, and whose crew it is in.
    pub(crate) fn trusted(&self) -> Trusted {
        self.identity.trusted()
    }

    /// Logs the language that whoever uses the device reads; none for whatever a shell speaks.
    pub(crate) fn choose_language(
        &mut self,
        language: Option<Language>,
        at: &Instant,
    ) -> Result<()> {
        let profile = Profile { language, ..self.profile()? };
        self.log_profile(profile, at)
    }

    /// Logs the unit that whoever uses the device reads masses in.
    pub(crate) fn choose_unit(&mut self, unit: MassUnit, at: &Instant) -> Result<()> {
        let profile = Profile { unit, ..self.profile()? };
        self.log_profile(profile, at)
    }

    fn log_profile(&mut self, profile: Profile, at: &Instant) -> Result<()> {
        let query = Query { person: Some(self.person()), ..Query::default() };
        let logged = query.last::<Profile>(self.reader())?;
        let draft = Draft::new_or_corrected(logged.map(|logged| logged.record), profile);
        self.append(at, vec![draft]).map(drop)
    }

    /// Refuses what only a coach does; `refused` says so to whoever's device it is.
    pub(crate) fn require_coach(&self, refused: impl FnOnce(String) -> String) -> Result<()> {
        let profile = self.profile()?;
        match profile.role {
            Role::Coach => Ok(()),
            Role::Athlete => Err(Error::invalid(Field::Role, refused(profile.name))),
        }
    }

    /// Refuses what only a coach, or only an athlete, does.
    pub(crate) fn require(&self, role: Role) -> Result<()> {
        require_of(&self.profile()?, role)
    }

    /// Logs drafts durably, and cuts a leaf when there is enough for one.
    pub(crate) fn append(&mut self, at: &Instant, drafts: Vec<Draft>) -> Result<Written> {
        let written = self.store.append(at, drafts)?;
        self.tail.add(&written.entries);
        let due = written.entries.iter().any(|entry| entry.id.number % COUNT_EVERY == 0);
        if due && unpublished(self.reader())? >= ENTRIES_A_LEAF {
            self.cut_after_saving();
        }
        Ok(written)
    }

    /// Cuts leaves after something was committed. Trouble with the shelf is told later: what was
    /// saved must never be reported as not saved.
    pub(crate) fn cut_after_saving(&mut self) {
        self.shelf_trouble = self.cut_leaves().err().map(|error| error.to_string());
    }

    /// Cuts what is logged into leaves, once the crew is known.
    pub(crate) fn cut_leaves(&mut self) -> Result<()> {
        let Some(crew) = self.crew() else { return Ok(()) };
        // Nothing is cut for nobody, and what no leaf holds keeps its second place.
        if !self.belongs() {
            return Ok(());
        }
        let trusted = self.trusted();
        let (keys, trusted, standing) = (&self.kept.keys, &trusted, &self.standing);
        let signer = Signer { keys, trusted, crew, standing };
        _ = self.shelf.cut(&mut self.store, &signer)?;
        self.tail.clear();
        Ok(())
    }

    /// Lets go of a check that has ended.
    pub(crate) fn settle(&mut self) -> Result<()> {
        // What it found is put right by the next call, which asks for that first.
        if self.checkup.as_ref().is_some_and(|checkup| checkup.is_over() && !checkup.found()) {
            self.checkup = None;
            self.store.moves_again()?;
        }
        Ok(())
    }

    /// Leaves one tidy database file behind.
    pub(crate) fn shut(self) -> Result<()> {
        let Device { checkup, store, .. } = self;
        // A check that still reads would keep the log from being written into the file.
        drop(checkup);
        store.close()
    }

    /// Takes an exchange one step on.
    pub(crate) fn exchange(&mut self, did: ExchangeDid, at: &Instant) -> Result<ExchangeStep> {
        if let Some(step) = self.join_by_leaf(&did)? {
            return Ok(step);
        }
        let Some(crew) = self.crew() else {
            return Err(Error::invalid(Field::Exchange, say::pairing::not_in_a_crew()));
        };
        if did == ExchangeDid::Begin {
            self.before = Some(self.standing.clone());
        }
        let (trusted, kept) = (&self.trusted(), &*Arc::clone(&self.kept));
        let (store, shelf, standing) = (&mut self.store, &self.shelf, &mut self.standing);
        let bag = &Bag::of(&self.home);
        let own = exchange::Own { store, shelf, bag, kept, trusted, standing, crew };
        let mut step = self.traffic.step(own, did, at)?;
        if let ExchangeStep::Done { report } = &mut step {
            let before = self.before.take();
            if let Some(brought) = self.traffic.brought.take().filter(|_| self.belongs()) {
                self.store.write(|tx| exchange::note_exchange(tx, &brought, at))?;
            }
            // Whoever found it, or took it, has no use for the code.
            if self.is_ended() && self.kept.recovery.is_some() {
                self.forget_recovery()?;
            }
            if self.identity.restoring {
                self.is_restored()?;
            } else if let Some(before) = before {
                let people = people(self.reader())?.into_iter();
                let names = people.map(|(person, (_, profile))| (person, profile.name)).collect();
                report.told =
                    news::news(&before, &self.standing, &self.identity.certificate, &names);
            }
        }
        Ok(step)
    }

    /// How many entries of this device's own no exchange has brought yet.
    pub(crate) fn waiting(&self) -> Result<usize> {
        exchange::waiting(self.reader(), self.identity.device)
    }

    /// The folders of a server, of those named, that the exchange under way has to list.
    pub(crate) fn look_into(
        &mut self,
        carrier: &str,
        folders: Vec<String>,
        at: &Instant,
    ) -> Result<Vec<String>> {
        let Some(crew) = self.crew() else { return Ok(Vec::new()) };
        let own = (&mut self.store, &Bag::of(&self.home), crew);
        let look = exchange::Look::begin(own, (carrier, &folders), at.wall_ms)?;
        let folders = look.folders();
        self.traffic.looks(look);
        Ok(folders)
    }

    /// Holds every signature, hash and chain of its leaves against each other.
    pub(crate) fn seals(&self) -> Result<Seals> {
        exchange::seals(&self.store, &self.shelf, &self.kept, &self.trusted())
    }

    /// Takes a crewmate's files along, unopened: the next exchange delivers them.
    pub(crate) fn take_along(&self, files: &[CarriedFile]) -> Result<TakenAlong> {
        Bag::of(&self.home).take(files)
    }
}

/// Refuses what only a coach, or only an athlete, does, of a profile already read.
pub(crate) fn require_of(profile: &Profile, role: Role) -> Result<()> {
    let refused = match role {
        _ if profile.role == role => return Ok(()),
        Role::Athlete => say::device::only_athletes_run_sessions(&profile.name),
        Role::Coach => say::device::only_coaches(&profile.name),
    };
    Err(Error::invalid(Field::Role, refused))
}
