//! A person stops a device of their own with the recovery code: one that was lost, stolen or sold.

use std::collections::BTreeSet;

use super::CrewScreen;
use super::recovery::typed_or_kept;
use super::screen::{numbered, screen};
use crate::device::Device;
use crate::error::{Error, Field, Result};
use crate::exchange::{threads_of, tops};
use crate::id::PersonId;
use crate::instant::Instant;
use crate::journal::Stopped;
use crate::say::crew as say;
use crate::store::Draft;
use crate::trust::{Head, Lane, Stop};

/// Stops a device. What is here of what it wrote stays and counts; what comes later does not. In a thread it never wrote
/// in nothing of it counts.
pub(crate) fn stop(
    device: &mut Device,
    number: u32,
    code: Option<&str>,
    at: &Instant,
) -> Result<CrewScreen> {
    let before = screen(device, None)?;
    let you = before.people.iter().find(|person| person.is_you);
    let Some(you) = you else { return Err(Error::invalid(Field::Crew, say::no_devices_yet())) };
    let stopped = numbered(you, number)?;
    if stopped.is_this {
        return Err(Error::invalid(Field::Crew, say::not_this_device()));
    }
    let recovery = typed_or_kept(device, code)?;
    let keys = recovery.keys();
    let mut drafts = Vec::new();
    for of in threads(device, &stopped)? {
        let lane = Lane { device: stopped.device, of };
        let nothing = (0, [0; 32]);
        let tops = tops(device.reader(), lane)?;
        for (sequence, content) in if tops.is_empty() { vec![nothing] } else { tops } {
            let head = Head { device: stopped.device, of, sequence, content };
            let stop = Stop::sign(&keys, head).text();
            drafts.push(Draft::new(Stopped { of, stop }));
        }
    }
    device.append_and_settle(at, drafts)?;
    screen(device, Some(say::device_was_stopped(number)))
}

/// The threads in which a device may have written: those of everybody known for a coach's.
fn threads(device: &Device, stopped: &super::CrewDevice) -> Result<BTreeSet<PersonId>> {
    let mut threads: BTreeSet<PersonId> =
        threads_of(device.reader(), stopped.device)?.into_iter().collect();
    match device.trusted().own().coach {
        true => threads.extend(device.standing.people.keys()),
        false => threads.extend([device.person()]),
    }
    Ok(threads)
}
