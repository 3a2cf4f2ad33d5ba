//! Beginning a session: of the day planned for a date, or of one named.

use chrono::NaiveDate;

use super::snapshot::{day_names, named_day};
use crate::device::Device;
use crate::error::{Error, Field, Result, Thing};
use crate::instant::Instant;
use crate::journal::Session;
use crate::say;
use crate::store::Draft;
use crate::words;

/// What begins a session of today.
pub(super) fn begin(device: &mut Device, day: Option<String>, at: &Instant) -> Result<Draft> {
    Ok(Draft::new(planned(device, at.date(), day, at)?))
}

/// A session of a date: of the day named, otherwise of the one planned.
pub(super) fn planned(
    device: &mut Device,
    date: NaiveDate,
    day: Option<String>,
    at: &Instant,
) -> Result<Session> {
    let Some(plan) = device.block_for(date)? else {
        return Err(Error::missing(Thing::Plan, say::tap::no_plan()));
    };
    let block = &plan.block;
    let day = match day {
        Some(name) => named_day(block, &name)?,
        None => {
            let planned = block.on(date).into_iter().next();
            planned.and_then(|planned| block.day(&planned.day)).ok_or_else(|| {
                let reason = say::tap::nothing_planned(words::day(date), day_names(block));
                Error::invalid(Field::Day, reason)
            })?
        }
    };
    Ok(Session {
        plan: plan.id,
        block: block.name.clone(),
        day: day.name.clone(),
        week: block.week_of(date).unwrap_or(if date < block.starts { 1 } else { block.weeks }),
        date,
        afterwards: false,
        at: Some(at.clone()),
    })
}
