//! Where the athletes are in the pieces of a plan that nobody has yet: from the histories they will go on with.

use chrono::{Days, NaiveDate};
use rusqlite::Connection;

use crate::error::Result;
use crate::history::{Flags, For, bar_taken, flags, lifted_last, past, propose};
use crate::id::PersonId;
use crate::journal::{Profile, Role, Session};
use crate::load::{NextLoad, Prepared, made_lately};
use crate::plan::{Block, Exercise, LoadRule, Piece, PieceKind, SetAt, Strength, Whereabouts};
use crate::store::{Query, people, removed};

/// Whoever trained last before so many weeks is told nothing about: after eleven weeks away no load falls any
/// further, and where they are nobody knows. Common practice, no source.
const ACTIVE_WEEKS: u64 = 12;

/// Where every athlete is in every piece of a block whose loads go up by steps, or are given by it. Whoever has not trained at all
/// counts, as somebody whose loads nobody knows.
pub(super) fn whereabouts(
    connection: &Connection,
    block: Block,
    today: NaiveDate,
) -> Result<Vec<Whereabouts>> {
    let follows = |strength: &Strength| match strength.load {
        LoadRule::Step(_) | LoadRule::Fixed { .. } => true,
        LoadRule::Percent { .. } | LoadRule::Reserve { .. } | LoadRule::Free => false,
    };
    let block = Prepared::new(block);
    let mut found = Vec::new();
    let removed = removed(connection)?;
    for (person, (_, profile)) in people(connection)? {
        let trains = profile.role == Role::Athlete && !removed.contains(&person);
        if !trains || !is_active(connection, person, today)? {
            continue;
        }
        let flags = flags(connection, person)?;
        let athlete = Athlete { connection, person, profile, flags, block: &block, today };
        for day in &block.days {
            for piece in &day.pieces {
                match &piece.kind {
                    PieceKind::Strength(strength) if follows(strength) => {
                        found.push(athlete.whereabouts(&day.name, piece, strength)?);
                    }
                    PieceKind::Strength(_)
                    | PieceKind::Interval(_)
                    | PieceKind::Hold(_)
                    | PieceKind::Note(_) => {}
                }
            }
        }
    }
    Ok(found)
}

fn is_active(connection: &Connection, person: PersonId, today: NaiveDate) -> Result<bool> {
    let query = Query { person: Some(person), ..Query::default() };
    let sessions = query.read::<Session>(connection)?;
    let last = sessions.iter().map(|session| session.body.date).max();
    let since = today.checked_sub_days(Days::new(ACTIVE_WEEKS * 7)).unwrap_or(today);
    Ok(last.is_none_or(|last| last >= since))
}

/// An athlete, and the block that is to be theirs.
struct Athlete<'a> {
    connection: &'a Connection,
    person: PersonId,
    profile: Profile,
    flags: Flags,
    block: &'a Prepared,
    today: NaiveDate,
}

impl Athlete<'_> {
    fn whereabouts(&self, day: &str, piece: &Piece, strength: &Strength) -> Result<Whereabouts> {
        let (connection, person, track) =
            (self.connection, self.person, strength.track(&piece.name));
        let last = lifted_last(connection, person, self.block, strength, track)?;
        let sets = match &last {
            Some(exercise) => self.sets(piece, strength, exercise)?,
            // The first time is found by feel, or is the plan's start.
            None => Vec::new(),
        };
        Ok(Whereabouts {
            name: self.profile.name.clone(),
            unit: self.profile.unit,
            day: day.to_owned(),
            piece: piece.name.clone(),
            exercise: last.unwrap_or_else(|| Exercise::of(&strength.movement)),
            sets,
        })
    }

    /// Where the sets are of somebody who lifted this before: what they carry; where that is from other reps, what
    /// they would begin with.
    fn sets(&self, piece: &Piece, strength: &Strength, exercise: &Exercise) -> Result<Vec<SetAt>> {
        let Athlete { connection, person, block, today, .. } = *self;
        let past = past(connection, person, block, (piece, strength), exercise, For::on(today))?;
        let unit = self.profile.unit;
        let on = For::on(today);
        let bar = bar_taken(connection, (person, unit), block, strength, exercise, on)?;
        let (lifted, none) = ((exercise.clone(), bar.as_deref()), Vec::new());
        let proposed = propose(block, unit, strength, lifted, past, &self.flags, none);
        let at = |next: &NextLoad| {
            let NextLoad { set, load, carried, .. } = *next;
            let made = made_lately(&strength.scheme, proposed.builds, &proposed.history, set);
            let carries = carried.is_some();
            Some(SetAt { set, load: carried.or(load)?, carried: carries, proposed: load, made })
        };
        Ok(proposed.next.sets.iter().filter_map(at).collect())
    }
}
