//! A coach's answers: to a proposal, and to a flag.

use super::called::no_such;
use super::open::open;
use super::proposal::Proposal;
use super::ruling::{Answer, decided};
use crate::device::Device;
use crate::error::{Error, Result, Thing};
use crate::history::open_flags;
use crate::id::{PersonId, RecordId};
use crate::instant::Instant;
use crate::journal::{Cleared, Ruling};
use crate::say;
use crate::store::{Draft, people};

/// Logs a coach's answer.
pub(crate) fn answer(device: &mut Device, answer: Answer, at: &Instant) -> Result<()> {
    device.require_coach(say::device::only_coaches_answer)?;
    let people = people(device.reader())?;
    let Some((_, profile)) = people.get(&answer.person) else {
        return Err(Error::missing(Thing::Member, say::coach::not_in_crew()));
    };
    let (open, plan) = open(device, answer.person, profile.unit, at.date())?;
    let about_it = |proposal: &&Proposal| {
        proposal.exercise == answer.exercise && proposal.track == answer.track
    };
    let Some(proposal) = open.iter().find(about_it) else {
        return Err(no_such(&open, &profile.name, &answer.exercise.to_string()));
    };
    let loads = decided(&answer, proposal, profile, &plan.block)?;
    let ruling = Ruling {
        person: answer.person,
        exercise: answer.exercise,
        scheme: proposal.scheme.clone(),
        track: Some(proposal.track.clone()),
        after: proposal.after,
        decision: answer.decision,
        loads,
        words: answer.words,
    };
    device.append(at, vec![Draft::new(ruling)])?;
    device.cut_after_saving();
    Ok(())
}

/// Clears a member's discomfort flag after talking with them.
pub(crate) fn clear_flag(
    device: &mut Device,
    person: PersonId,
    flag: RecordId,
    at: &Instant,
) -> Result<()> {
    device.require_coach(say::device::only_coaches_clear)?;
    let open = open_flags(device.reader(), person)?;
    if !open.iter().any(|open| open.record == flag) {
        return Err(Error::missing(Thing::Flag, say::coach::flag_not_open()));
    }
    device.append(at, vec![Draft::new(Cleared { flag, session: None })])?;
    device.cut_after_saving();
    Ok(())
}
