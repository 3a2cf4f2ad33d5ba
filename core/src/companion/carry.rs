//! The exchange as a shell drives it: a listing in, a plan out; files in, a report out.

use std::collections::BTreeSet;

use serde::Serialize;

use super::device::Device;
use crate::error::Result;
use crate::exchange::{self, AsideFile, CarriedFile, ExchangePlan, ListedFile};
use crate::instant::Instant;
use crate::journal::Profile;
use crate::store::{Ask, Draft};

/// What an exchange brought.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct ExchangeReport {
    /// Files taken in.
    pub leaves: u32,
    /// Entries that were new.
    pub entries: u64,
    /// Files of these left alone, and why.
    pub aside: Vec<AsideFile>,
    /// True when this device has just become part of a crew.
    pub joined: bool,
}

/// Cuts what is logged into leaves and works out what to put and get.
pub(crate) fn offer(device: &mut Device, listing: &[ListedFile]) -> Result<ExchangePlan> {
    device.cut_leaves()?;
    let plan = exchange::plan(&device.store, listing)?;
    // What was tried and left alone stays known until it is fetched whole.
    let wanted: BTreeSet<&String> = plan.get.iter().collect();
    device.aside.retain(|known| wanted.contains(&known.name));
    device.aside.extend(plan.aside.iter().cloned());
    Ok(plan)
}

/// Takes in files that were got. One bad file never stops the others.
pub(crate) fn absorb(
    device: &mut Device,
    files: &[CarriedFile],
    at: &Instant,
) -> Result<ExchangeReport> {
    let mut report = ExchangeReport::default();
    device.forget_reading();
    for file in files {
        let profile = device.profile()?;
        match exchange::absorb(&mut device.store, profile.crew, file, at.wall_ms)? {
            Ok((crew, new)) => {
                report.leaves += 1;
                report.entries += new;
                if profile.crew.is_none() {
                    let ask = Ask { person: Some(device.person()), ..Ask::default() };
                    let own = ask.last::<Profile>(device.reader())?;
                    let joined = Profile { crew: Some(crew), ..profile };
                    let draft = match own {
                        Some(own) => Draft::correct(own.record, joined),
                        None => Draft::new(joined),
                    };
                    device.log(at, vec![draft])?;
                    report.joined = true;
                }
            }
            Err(aside) => report.aside.push(aside),
        }
    }
    report.aside.sort();
    device.aside.extend(report.aside.iter().cloned());
    device.aside.sort();
    device.aside.dedup();
    Ok(report)
}
