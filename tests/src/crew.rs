//! Devices and a carrier in temporary folders.

use std::cell::Cell;
use std::fs;
use std::path::{Path, PathBuf};

use chrono::NaiveDate;
use holdfast_core::companion::{
    CarriedFile, ExchangeReport, ListedFile, SessionScreen, Start, Tap, put_file,
};
use holdfast_core::journal::Role;
use holdfast_core::{Holdfast, HoldfastResult, Instant, MassUnit};
use tempfile::TempDir;

/// An hour of a date at UTC, on a boot clock that runs with it.
pub fn at(date: &str, hour: u32) -> Instant {
    let date: NaiveDate = date.parse().unwrap_or_default();
    let wall_ms = date.and_hms_opt(hour, 0, 0).unwrap_or_default().and_utc().timestamp_millis();
    Instant { wall_ms, offset_min: 0, boot_ms: wall_ms, boot_id: "test".into() }
}

/// A folder that carries files. The two ends here are written apart from the desk's own, so that a
/// fault in one shows against the other.
pub struct Carrier {
    folder: PathBuf,
}

impl Carrier {
    /// A carrier in a folder.
    pub fn new(folder: impl Into<PathBuf>) -> Carrier {
        let folder = folder.into();
        let _ = fs::create_dir_all(&folder);
        Carrier { folder }
    }

    /// The folder.
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// What the folder lists.
    pub fn listing(&self) -> Vec<ListedFile> {
        let files = fs::read_dir(&self.folder).into_iter().flatten().flatten();
        let mut listed: Vec<ListedFile> = files
            .map(|file| ListedFile {
                name: file.file_name().to_string_lossy().into_owned(),
                bytes: file.metadata().map_or(0, |about| about.len()),
            })
            .collect();
        listed.sort_by(|a, b| a.name.cmp(&b.name));
        listed
    }

    /// Every file.
    pub fn files(&self) -> Vec<CarriedFile> {
        let read = |file: ListedFile| {
            let content = fs::read(self.folder.join(&file.name)).unwrap_or_default();
            CarriedFile { name: file.name, content }
        };
        self.listing().into_iter().map(read).collect()
    }
}

/// A device and the moment it is at.
pub struct Device {
    /// The one object.
    pub companion: Holdfast,
    /// Its folder.
    pub home: PathBuf,
    /// Milliseconds since the device started.
    pub now_ms: Cell<i64>,
    /// When the device started.
    pub start: Instant,
}

impl Device {
    /// Starts a device for somebody in a folder.
    ///
    /// # Errors
    /// As [`Holdfast::start`].
    pub fn start(home: PathBuf, name: &str, role: Role, chance: u8) -> HoldfastResult<Device> {
        let unit = MassUnit::Kg;
        let start = Start { role, name: name.into(), unit, chance: chances(chance) };
        Device::started(home, start)
    }

    /// Starts a device as given.
    ///
    /// # Errors
    /// As [`Holdfast::start`].
    pub fn started(home: PathBuf, start: Start) -> HoldfastResult<Device> {
        let first = at("2026-11-02", 18);
        let text = home.to_string_lossy().into_owned();
        let companion = Holdfast::start(text, start, first.clone())?;
        Ok(Device { companion, home, now_ms: Cell::new(0), start: first })
    }

    /// The device's moment.
    pub fn now(&self) -> Instant {
        let mut now = self.start.clone();
        now.wall_ms += self.now_ms.get();
        now.boot_ms += self.now_ms.get();
        now
    }

    /// Lets time pass.
    pub fn pass(&self, ms: i64) {
        self.now_ms.set(self.now_ms.get() + ms);
    }

    /// Goes to six in the evening of a date.
    pub fn go_to(&self, date: &str) {
        self.now_ms.set(at(date, 18).wall_ms - self.start.wall_ms);
    }

    /// Taps a second after the last tap.
    ///
    /// # Errors
    /// As [`Holdfast::tap`].
    pub fn tap(&self, tap: Tap) -> HoldfastResult<SessionScreen> {
        self.pass(1000);
        self.companion.tap(tap, self.now())
    }

    /// The screen now.
    ///
    /// # Errors
    /// As [`Holdfast::today`].
    pub fn today(&self) -> HoldfastResult<SessionScreen> {
        self.companion.today(self.now())
    }

    /// Closes and opens again, as after a restart.
    ///
    /// # Errors
    /// As [`Holdfast::open`].
    pub fn reopen(&mut self) -> HoldfastResult<()> {
        self.companion.close()?;
        self.companion = Holdfast::open(self.home.to_string_lossy().into_owned(), self.now())?;
        Ok(())
    }

    /// Puts and gets until both sides have everything.
    ///
    /// # Errors
    /// As [`Holdfast::absorb`].
    pub fn exchange(&self, carrier: &Carrier) -> HoldfastResult<ExchangeReport> {
        let listing = carrier.listing();
        let plan = self.companion.offer(listing.clone())?;
        let wanted = carrier.files().into_iter().filter(|file| plan.get.contains(&file.name));
        let report = self.companion.absorb(wanted.collect(), self.now())?;
        for file in self.companion.offer(carrier.listing())?.put {
            put_file(carrier.folder(), &file)?;
        }
        Ok(report)
    }
}

fn chances(chance: u8) -> Vec<u8> {
    (0..48).map(|index| chance.wrapping_mul(31).wrapping_add(index)).collect()
}

/// A coach, athletes and a carrier, with a plan that everybody has.
pub struct Crew {
    /// The coach.
    pub coach: Device,
    /// The athletes, in the order they were named.
    pub athletes: Vec<Device>,
    /// The carrier.
    pub carrier: Carrier,
    folder: TempDir,
}

impl Crew {
    /// Starts a crew whose coach has published `plan` and whose athletes have fetched it.
    ///
    /// # Errors
    /// Whatever went wrong first.
    pub fn start(plan: &str, names: &[&str]) -> Result<Crew, Box<dyn std::error::Error>> {
        let folder = TempDir::new()?;
        let carrier = Carrier::new(folder.path().join("carrier"));
        let home = |name: &str| folder.path().join("devices").join(name);
        let coach = Device::start(home("coach"), "Maren", Role::Coach, 200)?;
        coach.companion.publish("plan.toml".into(), plan.as_bytes().to_vec(), coach.now())?;
        coach.exchange(&carrier)?;
        let mut athletes = Vec::new();
        for (name, chance) in names.iter().zip(1..) {
            let athlete = Device::start(home(name), name, Role::Athlete, chance)?;
            athlete.exchange(&carrier)?;
            athletes.push(athlete);
        }
        Ok(Crew { coach, athletes, carrier, folder })
    }

    /// The crew's folder.
    pub fn folder(&self) -> &Path {
        self.folder.path()
    }

    /// Everybody exchanges, twice, so that everything reaches everybody.
    ///
    /// # Errors
    /// As [`Device::exchange`].
    pub fn exchange_all(&self) -> HoldfastResult<()> {
        for _ in 0..2 {
            for device in self.athletes.iter().chain([&self.coach]) {
                device.exchange(&self.carrier)?;
            }
        }
        Ok(())
    }
}
