//! The proposals there are for a member, and the one that is meant.

use chrono::NaiveDate;
use rusqlite::Connection;

use super::called::{call, which};
use super::find::find;
use super::proposal::{Proposal, view};
use crate::device::{Device, Published};
use crate::error::{Error, Result, Thing};
use crate::history::upcoming;
use crate::id::PersonId;
use crate::load::Prepared;
use crate::mass::MassUnit;
use crate::say;

/// Which proposal is meant.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct ProposalNamed {
    /// The member's name or identity.
    pub member: String,
    /// The movement's name or key, the piece's name, or what the board calls it.
    pub movement: String,
    /// The piece's name, or its track's, beside the movement; needed where a movement has several proposals.
    pub piece: Option<String>,
}

/// Every proposal for a member, as it would be on a date, from the strength pieces of a block: one a
/// piece, for what was lifted in it last.
pub(super) fn proposals(
    connection: &Connection,
    person: PersonId,
    unit: MassUnit,
    block: &Prepared,
    date: NaiveDate,
) -> Result<Vec<Proposal>> {
    let all = upcoming(connection, person, unit, block, date)?;
    let view = |(piece, strength, proposed)| view(block, unit, piece, strength, proposed);
    Ok(call(all.into_iter().filter_map(view).collect()))
}

/// The same from the block that is in force on the date, with that block.
pub(super) fn open(
    device: &mut Device,
    person: PersonId,
    unit: MassUnit,
    date: NaiveDate,
) -> Result<(Vec<Proposal>, Published)> {
    let plan = device.block_for(date)?;
    let plan = plan.ok_or_else(|| Error::missing(Thing::Plan, say::coach::no_plan_yet()))?;
    let open = proposals(device.reader(), person, unit, &plan.block, date)?;
    Ok((open, plan))
}

/// Finds the proposal that is meant, as it would be on a date.
pub(crate) fn find_proposal(
    device: &mut Device,
    named: &ProposalNamed,
    date: NaiveDate,
) -> Result<Proposal> {
    device.require_coach(say::device::only_coaches_answer)?;
    let (person, profile) = find(device.reader(), &named.member)?;
    let (open, _) = open(device, person, profile.unit, date)?;
    which(&open, &profile.name, &named.movement, named.piece.as_deref()).cloned()
}
