//! A device and the moment it is at.

use std::cell::RefCell;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU64, Ordering};

use holdfast_core::coach::PlanSummary;
use holdfast_core::exchange::{CarriedFile, ExchangeDid, ExchangeReport, ExchangeStep, ListedFile};
use holdfast_core::journal::Role;
use holdfast_core::session::{Row, SessionScreen, Tap};
use holdfast_core::{
    Holdfast, HoldfastResult, Instant, MassUnit, PairDid, PairScreen, RecoveryDid, Restore, Start,
    put_file,
};

use crate::{Carrier, at, later};

/// A device in a folder. Its two clocks move when they are told to, and a second with each tap.
pub struct Device {
    /// The one object.
    pub holdfast: Holdfast,
    /// Its folder.
    pub home: PathBuf,
    now: RefCell<Instant>,
}

impl Device {
    /// Starts a device for somebody in a folder, on the first evening of the plans of the checks. Two
    /// devices of one `chance` would have one identity.
    ///
    /// # Errors
    /// As [`Holdfast::start`].
    pub fn start(home: PathBuf, name: &str, role: Role, chance: u8) -> HoldfastResult<Device> {
        let chance = (0..80).map(|index| chance.wrapping_mul(31).wrapping_add(index)).collect();
        Device::started(home, Start { role, name: name.into(), unit: MassUnit::Kg, chance })
    }

    /// Starts a device as given, on the same evening.
    ///
    /// # Errors
    /// As [`Holdfast::start`].
    pub fn started(home: PathBuf, start: Start) -> HoldfastResult<Device> {
        let now = at("2026-11-02", 18);
        let holdfast = Holdfast::start(text(&home), start, now.clone(), None)?;
        Ok(Device { holdfast, home, now: RefCell::new(now) })
    }

    /// Starts a device on a phone, whose keystore holds these bytes.
    ///
    /// # Errors
    /// As [`Holdfast::start`].
    pub fn on_a_phone(home: PathBuf, start: Start, keystore: [u8; 32]) -> HoldfastResult<Device> {
        let now = at("2026-11-02", 18);
        let holdfast = Holdfast::start(text(&home), start, now.clone(), Some(keystore.into()))?;
        Ok(Device { holdfast, home, now: RefCell::new(now) })
    }

    /// Opens it again there, once it was shut.
    ///
    /// # Errors
    /// As [`Holdfast::open`].
    pub fn again_on_a_phone(&self, keystore: [u8; 32]) -> HoldfastResult<Device> {
        let (home, now) = (self.home.clone(), self.now());
        let holdfast = Holdfast::open(text(&home), now.clone(), Some(keystore.into()))?;
        Ok(Device { holdfast, home, now: RefCell::new(now) })
    }

    /// Starts a device with a recovery code and what a carrier has, and fetches what there is.
    ///
    /// # Errors
    /// As [`Restore::text`], [`Holdfast::restore`] and [`Holdfast::exchange`].
    pub fn restored(
        home: PathBuf,
        code: &str,
        carrier: &Carrier,
        (chance, now): (u8, Instant),
    ) -> HoldfastResult<Device> {
        let search = Restore::begin(code.into())?;
        let mut did = ExchangeDid::Begin;
        loop {
            did = match search.step(did)? {
                ExchangeStep::ListFiles => ExchangeDid::Listed { files: carrier.listing() },
                ExchangeStep::Get { names } => {
                    let mut files = carrier.files();
                    files.retain(|file| names.contains(&file.name));
                    ExchangeDid::Got { files, unread: Vec::new() }
                }
                ExchangeStep::Put { .. } | ExchangeStep::Done { .. } => break,
            };
        }
        search.text()?;
        let chance = (0..64).map(|at| chance.wrapping_mul(37).wrapping_add(at)).collect();
        let holdfast = Holdfast::restore(text(&home), &search, chance, now.clone(), None)?;
        let device = Device { holdfast, home, now: RefCell::new(now) };
        device.exchange(carrier)?;
        Ok(device)
    }

    /// The recovery code, as long as it is on the device.
    ///
    /// # Errors
    /// As [`Holdfast::recovery`].
    pub fn code(&self) -> HoldfastResult<Option<String>> {
        Ok(self.holdfast.recovery(RecoveryDid::Show, self.now())?.code)
    }

    /// Types two groups of the recovery code back, and gives the code: from now on it is on paper alone.
    ///
    /// # Errors
    /// As [`Holdfast::recovery`].
    pub fn on_paper(&self) -> HoldfastResult<String> {
        let shown = self.holdfast.recovery(RecoveryDid::Show, self.now())?;
        let code = shown.code.unwrap_or_default();
        let group = |number: &u32| code.split('-').nth(*number as usize - 1).unwrap_or_default();
        let groups: Vec<&str> = shown.groups.iter().map(group).collect();
        let did = RecoveryDid::Confirm { groups: groups.join(" ") };
        self.holdfast.recovery(did, self.now())?;
        Ok(code)
    }

    /// Opens what lies in a folder, at a moment.
    ///
    /// # Errors
    /// As [`Holdfast::open`].
    pub fn open(home: PathBuf, now: Instant) -> HoldfastResult<Device> {
        let holdfast = Holdfast::open(text(&home), now.clone(), None)?;
        Ok(Device { holdfast, home, now: RefCell::new(now) })
    }

    /// The device's moment.
    pub fn now(&self) -> Instant {
        self.now.borrow().clone()
    }

    /// Puts both clocks, the zone and the boot at a moment.
    pub fn put_at(&self, now: Instant) {
        *self.now.borrow_mut() = now;
    }

    /// Lets time pass.
    pub fn pass(&self, ms: i64) {
        let now = later(&self.now.borrow(), ms);
        self.put_at(now);
    }

    /// Sets the wall clock on by so much, or back; no time passes.
    pub fn set_wall(&self, ms: i64) {
        self.now.borrow_mut().wall_ms += ms;
    }

    /// Goes to six in the evening of a date.
    pub fn go_to(&self, date: &str) {
        self.pass(at(date, 18).wall_ms - self.now().wall_ms);
    }

    /// Off for a while, and on again: another boot.
    ///
    /// # Errors
    /// As [`Holdfast::open`].
    pub fn reboot(&mut self, off_ms: i64) -> HoldfastResult<()> {
        let now = self.now.get_mut();
        now.wall_ms += off_ms;
        now.boot_ms = 0;
        now.boot_id.push('\'');
        self.kill()
    }

    /// The app is killed and opened again: on what it left, in another folder, for this process cannot die
    /// and still holds the first.
    ///
    /// # Errors
    /// As [`Holdfast::open`].
    pub fn kill(&mut self) -> HoldfastResult<()> {
        let left = self.left();
        self.holdfast = Holdfast::open(text(&left), self.now(), None)?;
        self.home = left;
        Ok(())
    }

    /// Opens what lies on disk now: the folder itself once the device is shut, and while it is open a copy
    /// of it, as a power cut would leave it.
    ///
    /// # Errors
    /// As [`Holdfast::open`].
    pub fn open_again(&self) -> HoldfastResult<Holdfast> {
        let shut = self.holdfast.who().is_err();
        let home = if shut { self.home.clone() } else { self.left() };
        Holdfast::open(text(&home), self.now(), None)
    }

    /// A copy of the folder as it lies on disk now.
    fn left(&self) -> PathBuf {
        static COUNT: AtomicU64 = AtomicU64::new(0);
        let count = COUNT.fetch_add(1, Ordering::Relaxed);
        let left = self.home.with_extension(format!("left-{count}"));
        self.copy_to(&left);
        left
    }

    /// Taps a second after the last tap.
    ///
    /// # Errors
    /// As [`Holdfast::tap`].
    pub fn tap(&self, tap: Tap) -> HoldfastResult<SessionScreen> {
        self.pass(1000);
        self.tap_now(tap)
    }

    /// Taps at this very moment.
    ///
    /// # Errors
    /// As [`Holdfast::tap`].
    pub fn tap_now(&self, tap: Tap) -> HoldfastResult<SessionScreen> {
        self.holdfast.tap(tap, None, self.now())
    }

    /// Presses the one key of a screen that is shown; where it only waits, that does nothing.
    ///
    /// # Errors
    /// As [`Holdfast::tap`].
    pub fn press(&self, shown: &SessionScreen) -> HoldfastResult<SessionScreen> {
        match shown.here.key.tap.clone() {
            Some(tap) => self.answer(shown, tap),
            None => self.today(),
        }
    }

    /// Answers a screen that is shown with a tap, as any key on it does.
    ///
    /// # Errors
    /// As [`Holdfast::tap`].
    pub fn answer(&self, shown: &SessionScreen, tap: Tap) -> HoldfastResult<SessionScreen> {
        self.holdfast.tap(tap, Some(shown.revision), self.now())
    }

    /// The screen now.
    ///
    /// # Errors
    /// As [`Holdfast::today`].
    pub fn today(&self) -> HoldfastResult<SessionScreen> {
        self.holdfast.today(self.now())
    }

    /// The screen now with a row chosen by hand.
    ///
    /// # Errors
    /// As [`Holdfast::choose`].
    pub fn choose(&self, row: Option<Row>) -> HoldfastResult<SessionScreen> {
        self.holdfast.choose(row, self.now())
    }

    /// The lines of every journal it knows, device by device.
    ///
    /// # Panics
    /// When the core refuses.
    pub fn journal(&self) -> Vec<String> {
        self.holdfast.export().unwrap().journal
    }

    /// Publishes a plan.
    ///
    /// # Errors
    /// As [`Holdfast::publish`].
    pub fn publish(&self, plan: &str) -> HoldfastResult<PlanSummary> {
        self.holdfast.publish("plan.toml".into(), plan.as_bytes().to_vec(), self.now())
    }

    /// Takes a pairing one step on.
    ///
    /// # Errors
    /// As [`Holdfast::pair`].
    pub fn pair(&self, did: PairDid) -> HoldfastResult<PairScreen> {
        self.holdfast.pair(did, self.now())
    }

    /// Puts and gets until both sides have everything.
    ///
    /// # Errors
    /// As [`Holdfast::exchange`].
    pub fn exchange(&self, carrier: &Carrier) -> HoldfastResult<ExchangeReport> {
        let get = |names: &[String]| {
            let mut files = carrier.files();
            files.retain(|file| names.contains(&file.name));
            files
        };
        let put = |files: Vec<CarriedFile>| {
            let put = |file| put_file(carrier.folder(), file).map(u32::from);
            Ok(files.iter().map(put).collect::<HoldfastResult<Vec<u32>>>()?.iter().sum())
        };
        self.exchange_by(carrier.listing(), get, put)
    }

    /// Takes in files that something brought, whatever is in them. What the device would put on the
    /// carrier in return is dropped.
    ///
    /// # Errors
    /// As [`Holdfast::exchange`].
    pub fn take_in(&self, files: &[CarriedFile]) -> HoldfastResult<ExchangeReport> {
        let listed = |file: &CarriedFile| ListedFile {
            name: file.name.clone(),
            bytes: file.content.len() as u64,
        };
        let get = |names: &[String]| {
            files.iter().filter(|file| names.contains(&file.name)).cloned().collect()
        };
        self.exchange_by(files.iter().map(listed).collect(), get, |_| Ok(0))
    }

    /// Takes in files that nobody asked for, those too that are here already: a careless shell may.
    ///
    /// # Errors
    /// As [`Holdfast::exchange`].
    pub fn take_in_unasked(&self, files: Vec<CarriedFile>) -> HoldfastResult<()> {
        self.step(ExchangeDid::Begin)?;
        self.step(ExchangeDid::Got { files, unread: Vec::new() }).map(drop)
    }

    /// A whole exchange with a listing, and ways to get files and to put them.
    ///
    /// # Errors
    /// As [`Holdfast::exchange`], and what putting gives.
    pub fn exchange_by(
        &self,
        listing: Vec<ListedFile>,
        get: impl Fn(&[String]) -> Vec<CarriedFile>,
        mut put: impl FnMut(Vec<CarriedFile>) -> HoldfastResult<u32>,
    ) -> HoldfastResult<ExchangeReport> {
        let mut did = ExchangeDid::Begin;
        loop {
            did = match self.step(did)? {
                ExchangeStep::ListFiles => ExchangeDid::Listed { files: listing.clone() },
                ExchangeStep::Get { names } => {
                    ExchangeDid::Got { files: get(&names), unread: Vec::new() }
                }
                ExchangeStep::Put { files } => {
                    ExchangeDid::Put { written: put(files)?, unwritten: Vec::new() }
                }
                ExchangeStep::Done { report } => return Ok(report),
            };
        }
    }

    /// One step of an exchange.
    ///
    /// # Errors
    /// As [`Holdfast::exchange`].
    pub fn step(&self, did: ExchangeDid) -> HoldfastResult<ExchangeStep> {
        self.holdfast.exchange(did, self.now())
    }

    /// Copies all that lies on the device into another folder, as a backup would.
    ///
    /// # Panics
    /// When a file cannot be copied.
    pub fn copy_to(&self, folder: &Path) {
        fs::create_dir_all(folder.join("leaves")).unwrap();
        let keys = ["device.keys", "device-copy.keys"];
        for file in ["device.json", "device-copy.json", "holdfast.db"].iter().chain(&keys) {
            fs::copy(self.home.join(file), folder.join(file)).unwrap();
        }
        // What is not in the database file yet lies beside it, until the device is closed.
        for beside in ["holdfast.db-wal", "tail.jsonl", "pairing.json"] {
            if self.home.join(beside).exists() {
                fs::copy(self.home.join(beside), folder.join(beside)).unwrap();
            }
        }
        for leaf in fs::read_dir(self.home.join("leaves")).unwrap() {
            let leaf = leaf.unwrap();
            fs::copy(leaf.path(), folder.join("leaves").join(leaf.file_name())).unwrap();
        }
    }
}

fn text(home: &Path) -> String {
    home.to_string_lossy().into_owned()
}
