//! Corrections of a set of any day, whether a session runs or not.

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::bars::builds_of;
use super::doubt::{is_repair, is_slip};
use super::taps::{can_be, confirmed, within_set};
use crate::device::Device;
use crate::error::{Error, Field, Result, Thing};
use crate::id::RecordId;
use crate::instant::Instant;
use crate::journal::{Lift, Role, Session};
use crate::load::Prepared;
use crate::mass::{Mass, MassUnit};
use crate::plan::{Builds, Lifted};
use crate::say;
use crate::store::{Draft, Logged, Query};

/// What an athlete says of a set that is logged.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "correction", rename_all = "kebab-case")]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum Correction {
    /// This was done. What is left out stays as it was logged.
    Done {
        /// The load lifted.
        load: Option<Mass>,
        /// Good reps.
        reps: Option<u32>,
        /// Reps in reserve.
        reserve: Option<u32>,
    },
    /// It is right as it was logged, however it looks.
    Right,
    /// It was not done: it is taken back.
    NotDone,
}

/// Corrects one of the athlete's own sets, of whatever day.
///
/// # Errors
/// What of it cannot be; nothing is saved then.
pub(crate) fn correct(
    device: &mut Device,
    lift: RecordId,
    correction: Correction,
    at: &Instant,
) -> Result<()> {
    let draft = drafted(device, lift, correction)?;
    device.append(at, vec![draft]).map(drop)
}

/// What a correction logs.
pub(super) fn drafted(
    device: &mut Device,
    lift: RecordId,
    correction: Correction,
) -> Result<Draft> {
    let found = find(device, lift)?;
    Ok(match correction {
        Correction::Right => confirmed(lift, &found.body)?,
        Correction::NotDone => Draft::take_back(lift),
        Correction::Done { load, reps, reserve } => {
            Draft::correct(lift, done(device, &found, load, reps, reserve)?)
        }
    })
}

/// The set as it was done.
fn done(
    device: &mut Device,
    found: &Logged<Lift>,
    load: Option<Mass>,
    reps: Option<u32>,
    reserve: Option<u32>,
) -> Result<Lift> {
    let before = &found.body;
    let said_again = (load.is_some() || before.load.is_none()) && reps.is_some();
    let lift = Lift {
        load: load.or(before.load),
        reps: reps.unwrap_or(before.reps),
        reserve: reserve.or(before.reserve),
        ..before.clone()
    };
    if lift == *before && !(before.doubt && said_again) {
        return Err(Error::invalid(Field::Set, say::tap::logged_like_that()));
    }
    within_set(lift.reps, lift.reserve)?;
    let block = block_of(device, before)?.map(|(_, block)| block);
    let block =
        block.ok_or_else(|| Error::missing(Thing::Plan, say::tap::plan_of_set_not_here()))?;
    let unit = device.profile()?.unit;
    if let Some(load) = load {
        can_be(&block, load, &lift.exercise, unit)?;
    }
    let builds = builds_of(&block, &lift, unit);
    let slip = is_slip(&lift, builds) && !(said_again && is_repair(&lift, before, builds));
    let doubt = lift.is_doubted(before, said_again, slip);
    // No plates were named for another load.
    let side = lift.side.clone().filter(|_| lift.load == before.load);
    Ok(Lift { doubt, side, ..lift })
}

/// One of the athlete's own sets, and what it takes to correct it.
pub(super) struct Own {
    pub(super) set: Lift,
    pub(super) session: Session,
    /// The loads there were; none where nobody knows.
    pub(super) builds: Option<Builds>,
    /// How the plan's kit loads it; none where the plan does not know it.
    pub(super) lifted: Option<Lifted>,
    /// What was lifted.
    pub(super) movement: String,
    pub(super) unit: MassUnit,
}

/// Finds one of the athlete's own sets.
pub(super) fn own(device: &mut Device, lift: RecordId) -> Result<Own> {
    let set = find(device, lift)?.body;
    let unit = device.profile()?.unit;
    let (session, block) = block_of(device, &set)?
        .ok_or_else(|| Error::missing(Thing::Plan, say::tap::plan_of_set_not_here()))?;
    // What the plan does not know means what the athlete says.
    let lifted = block.lifted(&set.exercise);
    let builds = lifted.map(|_| builds_of(&block, &set, unit).clone());
    let movement = block.name_of(&set.exercise);
    Ok(Own { set, session, builds, lifted, movement, unit })
}

fn find(device: &Device, lift: RecordId) -> Result<Logged<Lift>> {
    let profile = device.profile()?;
    if profile.role != Role::Athlete {
        let reason = say::device::only_athletes_correct(&profile.name);
        return Err(Error::invalid(Field::Role, reason));
    }
    let query = Query { record: Some(lift), person: Some(profile.person), ..Query::default() };
    let found = query.last::<Lift>(device.reader())?;
    found.ok_or_else(|| Error::invalid(Field::Set, say::tap::set_not_yours()))
}

/// The session of a set and the plan it was trained by.
fn block_of(device: &mut Device, lift: &Lift) -> Result<Option<(Session, Arc<Prepared>)>> {
    let query = Query { record: Some(lift.session), ..Query::default() };
    let Some(session) = query.last::<Session>(device.reader())? else { return Ok(None) };
    let block = device.block(session.body.plan, None)?;
    Ok(block.map(|block| (session.body, block)))
}
