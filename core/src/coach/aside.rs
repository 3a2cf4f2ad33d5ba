//! Sets that a coach leaves out of what is proposed. They stay as the athlete logged them.

use crate::device::Device;
use crate::error::{Error, Field, Result};
use crate::history;
use crate::id::RecordId;
use crate::instant::Instant;
use crate::journal::{Lift, SetAside};
use crate::say;
use crate::store::{Draft, Query};

/// Leaves a member's set out, or counts it again.
///
/// # Errors
/// For a set that is not here, and where nothing would change.
pub(crate) fn set_aside(
    device: &mut Device,
    lift: RecordId,
    aside: bool,
    at: &Instant,
) -> Result<()> {
    device.require_coach(say::device::only_coaches_leave_out)?;
    let query = Query { record: Some(lift), ..Query::default() };
    if query.last::<Lift>(device.reader())?.is_none() {
        return Err(Error::invalid(Field::Set, say::coach::set_not_here()));
    }
    let reason = match (aside, history::set_aside(device.reader())?.contains(&lift)) {
        (true, true) => say::coach::left_out_already(),
        (false, false) => say::coach::not_left_out(),
        _ => {
            device.append(at, vec![Draft::new(SetAside { lift, aside })])?;
            device.cut_after_saving();
            return Ok(());
        }
    };
    Err(Error::invalid(Field::Set, reason))
}
