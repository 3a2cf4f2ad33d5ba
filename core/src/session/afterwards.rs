//! A session that is written afterwards: the device was off, or nobody had it at hand.
//!
//! It stands at its own date in everything that is worked out from it. Loads are proposed as they were on that
//! date; no clock and no rest runs for it; how long it took is asked, for nobody counted.

use chrono::NaiveDate;

use super::begin::planned;
use super::lately::{WEEKS, is_lately};
use super::log::SessionLog;
use crate::device::Device;
use crate::error::{Error, Field, Result};
use crate::instant::Instant;
use crate::journal::Session;
use crate::say;
use crate::store::{Draft, Query};

/// Begins a session of an earlier date, or goes on with the one of that day that is logged already: left open, or
/// finished without a set that was done.
pub(super) fn begin(
    device: &mut Device,
    date: NaiveDate,
    day: Option<String>,
    at: &Instant,
) -> Result<Vec<Draft>> {
    if !is_lately(date, at) || date == at.date() {
        return Err(Error::invalid(Field::Date, say::tap::afterwards_dates(WEEKS)));
    }
    let session = Session { afterwards: true, ..planned(device, date, day, at)? };
    let query = Query {
        person: Some(device.person()),
        subject: Some(""),
        scheme: Some(""),
        ..Query::default()
    };
    let mut all = query.read::<Session>(device.reader())?;
    all.retain(|other| other.body.date == date && other.body.day == session.day);
    let Some(other) = all.pop() else { return Ok(vec![Draft::new(session)]) };
    let log = SessionLog::read(device.reader(), other)?;
    let (record, other) = (log.id(), log.session.body);
    let opened = Draft::correct(record, Session { afterwards: true, at: session.at, ..other });
    // Finished too early, or a set forgotten: its end is taken back with what it said, and asked again.
    let end = log.finish.map(|finish| Draft::take_back(finish.record));
    Ok([opened].into_iter().chain(end).collect())
}
