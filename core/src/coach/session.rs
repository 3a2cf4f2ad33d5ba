//! One session of somebody as it was logged: its sets, and everything else that was done in it.

use crate::device::Device;
use crate::error::{Error, Field, Result};
use crate::id::RecordId;
use crate::journal::{Body, Finish, Session};
use crate::plan::Exercise;
use crate::say;
use crate::store::{Logged, Query};
use crate::words::{self, Names};

use super::sets::{SessionSets, session_sets, whose};

/// A session.
pub(crate) struct OneSession {
    /// The day's name.
    pub(crate) day: String,
    /// Its sets, with notes.
    pub(crate) sets: SessionSets,
    /// Windows, holds, readings, options and discomfort, a line each, in order.
    pub(crate) others: Vec<String>,
    /// How it ended, once it did.
    pub(crate) finish: Option<Finish>,
    /// True for one's own: its sets can be corrected.
    pub(crate) own: bool,
}

/// Finds a session of a member, or one's own where nobody is named.
pub(crate) fn session(
    device: &mut Device,
    name: Option<&str>,
    session: RecordId,
) -> Result<OneSession> {
    let (person, profile) = whose(device, name)?;
    let query = Query { record: Some(session), person: Some(person), ..Query::default() };
    let found = query.last::<Session>(device.reader())?;
    let found =
        found.ok_or_else(|| Error::invalid(Field::Session, say::page::no_such_session()))?;
    let of_it = || Query { session: Some(session), person: Some(person), ..Query::default() };
    let bodies = of_it().bodies(None, device.reader())?;
    let finish = of_it().last::<Finish>(device.reader())?.map(|finish| finish.body);
    let block = device.block(found.body.plan, None)?;
    let name_of = |exercise: &Exercise| match &block {
        Some(block) => block.name_of(exercise),
        None => exercise.to_string(),
    };
    let others = lines(bodies, &Names { unit: profile.unit, of: &name_of });
    let (own, day) = (person == device.person(), found.body.day.clone());
    let sets = session_sets(device, found, &profile)?;
    Ok(OneSession { day, sets, others, finish, own })
}

/// What is no set, in the order it was done; the sides of a hold stand together.
fn lines(bodies: Vec<Logged<Body>>, names: &Names<'_>) -> Vec<String> {
    let told = bodies.into_iter().map(|logged| logged.body).filter(is_told);
    let mut lines: Vec<Vec<Body>> = Vec::new();
    for body in told {
        match (&body, lines.iter_mut().find(|line| is_of_one_hold(line, &body))) {
            (Body::Held(_), Some(line)) => line.push(body),
            _ => lines.push(vec![body]),
        }
    }
    lines.iter().map(|line| words::logged(line, names)).collect()
}

/// Sets have rows of their own; how a clock was driven is nobody's question afterwards.
fn is_told(body: &Body) -> bool {
    matches!(
        body,
        Body::WindowDone(_)
            | Body::Held(_)
            | Body::Range(_)
            | Body::Discomfort(_)
            | Body::OptionTaken(_)
            | Body::BarTaken(_)
    )
}

fn is_of_one_hold(line: &[Body], body: &Body) -> bool {
    match (line.first(), body) {
        (Some(Body::Held(first)), Body::Held(held)) => first.piece == held.piece,
        _ => false,
    }
}
