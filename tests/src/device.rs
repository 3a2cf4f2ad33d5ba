//! A device and the moment it is at.

use std::cell::RefCell;
use std::fs;
use std::path::{Path, PathBuf};

use holdfast_core::companion::{ExchangeReport, PlanSummary, SessionScreen, Start, Tap, put_file};
use holdfast_core::journal::Role;
use holdfast_core::{Companion, CompanionResult, Instant, MassUnit};

use crate::{Carrier, at, later};

/// A device in a folder. Its two clocks move when they are told to, and a second with each tap.
pub struct Device {
    /// The one object.
    pub companion: Companion,
    /// Its folder.
    pub home: PathBuf,
    now: RefCell<Instant>,
}

impl Device {
    /// Starts a device for somebody in a folder, on the first evening of the plans of the checks. Two
    /// devices of one `chance` would have one identity.
    ///
    /// # Errors
    /// As [`Companion::start`].
    pub fn start(home: PathBuf, name: &str, role: Role, chance: u8) -> CompanionResult<Device> {
        let chance = (0..48).map(|index| chance.wrapping_mul(31).wrapping_add(index)).collect();
        Device::started(home, Start { role, name: name.into(), unit: MassUnit::Kg, chance })
    }

    /// Starts a device as given, on the same evening.
    ///
    /// # Errors
    /// As [`Companion::start`].
    pub fn started(home: PathBuf, start: Start) -> CompanionResult<Device> {
        let now = at("2026-11-02", 18);
        let companion = Companion::start(text(&home), start, now.clone())?;
        Ok(Device { companion, home, now: RefCell::new(now) })
    }

    /// Opens what lies in a folder, at a moment.
    ///
    /// # Errors
    /// As [`Companion::open`].
    pub fn open(home: PathBuf, now: Instant) -> CompanionResult<Device> {
        let companion = Companion::open(text(&home), now.clone())?;
        Ok(Device { companion, home, now: RefCell::new(now) })
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
    /// As [`Companion::open`].
    pub fn reboot(&mut self, off_ms: i64) -> CompanionResult<()> {
        let now = self.now.get_mut();
        now.wall_ms += off_ms;
        now.boot_ms = 0;
        now.boot_id.push('\'');
        self.kill()
    }

    /// The app is killed and opened again.
    ///
    /// # Errors
    /// As [`Companion::open`].
    pub fn kill(&mut self) -> CompanionResult<()> {
        self.companion = self.open_again()?;
        Ok(())
    }

    /// Another opening of the same folder, as another process makes it.
    ///
    /// # Errors
    /// As [`Companion::open`].
    pub fn open_again(&self) -> CompanionResult<Companion> {
        Companion::open(text(&self.home), self.now())
    }

    /// Taps a second after the last tap.
    ///
    /// # Errors
    /// As [`Companion::tap`].
    pub fn tap(&self, tap: Tap) -> CompanionResult<SessionScreen> {
        self.pass(1000);
        self.tap_now(tap)
    }

    /// Taps at this very moment.
    ///
    /// # Errors
    /// As [`Companion::tap`].
    pub fn tap_now(&self, tap: Tap) -> CompanionResult<SessionScreen> {
        self.companion.tap(tap, self.now())
    }

    /// The screen now.
    ///
    /// # Errors
    /// As [`Companion::today`].
    pub fn today(&self) -> CompanionResult<SessionScreen> {
        self.companion.today(self.now())
    }

    /// Publishes a plan.
    ///
    /// # Errors
    /// As [`Companion::publish`].
    pub fn publish(&self, plan: &str) -> CompanionResult<PlanSummary> {
        self.companion.publish("plan.toml".into(), plan.as_bytes().to_vec(), self.now())
    }

    /// Puts and gets until both sides have everything.
    ///
    /// # Errors
    /// As [`Companion::absorb`].
    pub fn exchange(&self, carrier: &Carrier) -> CompanionResult<ExchangeReport> {
        let plan = self.companion.offer(carrier.listing())?;
        let wanted = carrier.files().into_iter().filter(|file| plan.get.contains(&file.name));
        let report = self.companion.absorb(wanted.collect(), self.now())?;
        for file in self.companion.offer(carrier.listing())?.put {
            put_file(carrier.folder(), &file)?;
        }
        Ok(report)
    }

    /// Copies all that lies on the device into another folder, as a backup would.
    ///
    /// # Panics
    /// When a file cannot be copied.
    pub fn copy_to(&self, folder: &Path) {
        fs::create_dir_all(folder.join("leaves")).unwrap();
        for file in ["device.json", "holdfast.db"] {
            fs::copy(self.home.join(file), folder.join(file)).unwrap();
        }
        // What is not in the database file yet lies beside it, until the device is closed.
        let log = "holdfast.db-wal";
        if self.home.join(log).exists() {
            fs::copy(self.home.join(log), folder.join(log)).unwrap();
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
