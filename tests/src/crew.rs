//! A coach, athletes and what carries files between them.

use std::cell::Cell;
use std::path::Path;

use holdfast_core::HoldfastResult;
use holdfast_core::journal::Role;
use tempfile::TempDir;

use crate::pairing::pair;
use crate::taps::begin;
use crate::{Carrier, Device, SMALL_PLAN};

/// A coach, athletes and a carrier, with a plan that everybody has.
pub struct Crew {
    /// The coach.
    pub coach: Device,
    /// The athletes, in the order they were named.
    pub athletes: Vec<Device>,
    /// The carrier.
    pub carrier: Carrier,
    /// How many joined later.
    joined: Cell<u8>,
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
        coach.publish(plan)?;
        coach.exchange(&carrier)?;
        let mut athletes = Vec::new();
        for (name, chance) in names.iter().zip(1..) {
            let athlete = Device::start(home(name), name, Role::Athlete, chance)?;
            pair(&coach, &athlete, chance)?;
            athlete.exchange(&carrier)?;
            athletes.push(athlete);
        }
        Ok(Crew { coach, athletes, carrier, joined: Cell::new(0), folder })
    }

    /// An athlete, Ines, whose session of the small plan has begun.
    ///
    /// # Errors
    /// As [`Crew::start`].
    pub fn running() -> Result<Crew, Box<dyn std::error::Error>> {
        let crew = Crew::start(SMALL_PLAN, &["Ines"])?;
        crew.athletes[0].go_to("2026-11-03");
        crew.athletes[0].tap(begin())?;
        Ok(crew)
    }

    /// Pairs somebody's device with the coach's, and fetches what there is for it.
    ///
    /// # Errors
    /// As [`Device::pair`] and [`Device::exchange`].
    pub fn join(&self, member: &Device) -> HoldfastResult<()> {
        let chance = self.joined.get() + 100;
        self.joined.set(chance - 99);
        pair(&self.coach, member, chance)?;
        member.exchange(&self.carrier).map(drop)
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
