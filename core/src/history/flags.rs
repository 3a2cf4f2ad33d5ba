//! Discomfort flags: which are open, and which of them hold an exercise back.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use rusqlite::Connection;

use crate::care::{Place, STOP_FROM, is_loaded_by};
use crate::error::Result;
use crate::id::{PersonId, RecordId};
use crate::journal::{Cleared, Discomfort};
use crate::load::Flag;
use crate::plan::{Block, Exercise};
use crate::store::{Logged, Query, date_of, is_coach};

/// A person's discomfort flags.
#[derive(Clone, Debug, Default)]
pub(crate) struct Flags {
    /// Those nobody has cleared, the earliest first.
    pub(crate) open: Vec<Logged<Discomfort>>,
    /// Those that were cleared, with when in logical time.
    pub(crate) cleared: Vec<(Logged<Discomfort>, i64)>,
}

/// Reads a person's flags. The athlete whose flag it is may clear it, and a coach. Nobody else's word counts.
pub(crate) fn flags(connection: &Connection, person: PersonId) -> Result<Flags> {
    let query = Query { person: Some(person), ..Query::default() };
    let all = query.read::<Discomfort>(connection)?;
    let mut flags = Flags::default();
    let cleared = if all.is_empty() { BTreeMap::new() } else { cleared(connection, person)? };
    for flag in all {
        match cleared.get(&flag.record) {
            Some(placed) => flags.cleared.push((flag, *placed)),
            None => flags.open.push(flag),
        }
    }
    Ok(flags)
}

/// When each flag that was cleared was so first.
fn cleared(connection: &Connection, person: PersonId) -> Result<BTreeMap<RecordId, i64>> {
    let mut when = BTreeMap::new();
    for cleared in Query::default().read::<Cleared>(connection)? {
        if cleared.person == person || is_coach(connection, cleared.person)? {
            when.entry(cleared.body.flag).or_insert(cleared.placed);
        }
    }
    Ok(when)
}

/// A person's discomfort flags that nobody has cleared, the earliest first.
pub(crate) fn open_flags(
    connection: &Connection,
    person: PersonId,
) -> Result<Vec<Logged<Discomfort>>> {
    Ok(flags(connection, person)?.open)
}

/// True when the athlete whose flag it is, or a coach, has cleared it.
pub(crate) fn is_cleared(
    connection: &Connection,
    flag: RecordId,
    person: PersonId,
) -> Result<bool> {
    Ok(cleared(connection, person)?.contains_key(&flag))
}

impl Flags {
    /// Those that were raised by the end of a date.
    pub(crate) fn until(&self, date: NaiveDate) -> Flags {
        let open = self.open.iter().filter(|flag| date_of(flag) <= date);
        let cleared = self.cleared.iter().filter(|(flag, _)| date_of(flag) <= date);
        Flags { open: open.cloned().collect(), cleared: cleared.cloned().collect() }
    }

    /// The flags that concern an exercise: those on itself, on its movement or another option of it, and on
    /// another movement that loads the same place. Severe pain and emergency signs concern them all. Taking an option
    /// that does not hurt is what options are for: a flag that names an exercise takes the load of this one alone away.
    pub(crate) fn on(&self, exercise: &Exercise, block: &Block) -> Vec<Flag> {
        let flag = |flag: &Logged<Discomfort>, cleared: Option<i64>| {
            let Discomfort { place, severity, ref signs, exercise: ref of, .. } = flag.body;
            let own = of.as_ref() == Some(exercise) || stops(&flag.body, exercise, block);
            let (sign, severe) = (!signs.is_empty(), severity >= STOP_FROM);
            let near = of.as_ref().is_some_and(|of| of.is_near(exercise));
            let concerns = own || sign || severe || near || is_loaded(place, exercise, block);
            let (record, on) = (flag.record, date_of(flag));
            concerns.then_some(Flag { record, place, severity, sign, on, own, cleared })
        };
        let cleared = self.cleared.iter().filter_map(|(of, placed)| flag(of, Some(*placed)));
        let open = self.open.iter().filter_map(|of| flag(of, None));
        cleared.chain(open).collect()
    }
}

/// True for pain from which an exercise itself stops: felt in it, or in no movement that is named, where it loads the
/// place.
pub(crate) fn stops(flag: &Discomfort, exercise: &Exercise, block: &Block) -> bool {
    let here = match &flag.exercise {
        Some(of) => of == exercise,
        None => is_loaded(flag.place, exercise, block),
    };
    here && flag.severity >= STOP_FROM
}

fn is_loaded(place: Place, exercise: &Exercise, block: &Block) -> bool {
    block.pattern_of(exercise).is_some_and(|pattern| is_loaded_by(place, pattern))
}
