//! One-rep maxes: what an athlete tested, and what a coach sets as a training maximum.

use chrono::{Days, NaiveDate};
use rusqlite::Connection;
use serde::Serialize;

use super::sets::whose;
use crate::device::Device;
use crate::error::{Error, Field, Result, Thing};
use crate::history::set_aside;
use crate::id::PersonId;
use crate::instant::Instant;
use crate::journal::{Lift, Max, Role};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Block, Exercise, Lifted};
use crate::say;
use crate::store::{Draft, Logged, Query, date_of, is_coach};
use crate::words;

/// The heaviest that is taken without a question. Chosen well over what was ever lifted once with a bar, no
/// source.
const HEAVIEST_KG: i64 = 1_000;
/// A max under that share of the heaviest load lifted lately looks like a slip. Chosen, no source.
const FAR: i64 = 2;
/// So does one of more than so many percent of what the sets done lately say, or of the max before it. Sets with many
/// left say less than there is. Chosen, no source.
const FAR_PERCENT: u32 = 130;
/// Where nothing was lifted lately that much is asked about. Chosen, no source.
const UNHEARD_KG: i64 = 200;
/// Reps beyond which an equation says nothing (Reynolds et al., J Strength Cond Res 2006;20:584-592).
const MOST_REPS: u32 = 10;
/// Lately: half a year.
const LATELY_DAYS: u64 = 182;

/// A one-rep max to log.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct MaxGiven {
    /// The member's name or identity; none for an athlete's own.
    pub member: Option<String>,
    /// The movement, or the option, by its name or its key.
    pub movement: String,
    /// The load; none takes back the latest that this person gave.
    pub load: Option<Mass>,
    /// True to log a load that is far from what was lifted lately; without it that is an error that names what
    /// was lifted.
    pub anyway: bool,
}

/// A one-rep max on a member's page.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct MaxLine {
    /// What is lifted.
    pub exercise: Exercise,
    /// Its name.
    pub movement: String,
    /// The load.
    pub load: Mass,
    /// The date it was logged on.
    pub date: NaiveDate,
    /// True for a single that was lifted, false for a training maximum that the coach set.
    pub tested: bool,
    /// All of it in one line.
    pub text: String,
}

/// Logs a single that an athlete tested, or a training maximum that a coach sets for a member. Gives it as it
/// stands then; none where one was taken back.
///
/// # Errors
/// For a member or a movement that is not here, and a load that cannot be.
pub(crate) fn give_max(
    device: &mut Device,
    given: &MaxGiven,
    at: &Instant,
) -> Result<Option<MaxLine>> {
    let own = device.profile()?;
    let (person, profile) = whose(device, given.member.as_deref())?;
    let tested = own.role == Role::Athlete;
    let Some(plan) = device.block_for(at.date())? else {
        let reason = if tested { say::tap::no_plan() } else { say::coach::no_plan_yet() };
        return Err(Error::missing(Thing::Plan, reason));
    };
    let block = plan.block;
    let exercise = exercise_named(&block, &given.movement)?;
    let Some(load) = given.load else {
        take_back(device, own.person, person, &exercise, at)?;
        return Ok(None);
    };
    can_be(&block, &exercise, load, profile.unit)?;
    if !given.anyway {
        is_near(device.reader(), person, &exercise, load, (at.date(), profile.unit))?;
    }
    device
        .append(at, vec![Draft::new(Max { person, exercise: exercise.clone(), load, tested })])?;
    if !tested {
        device.cut_after_saving();
    }
    let all = maxes(device.reader(), person, Some(&block), profile.unit, at.date())?;
    Ok(all.into_iter().rfind(|line| line.exercise == exercise))
}

/// A member's one-rep maxes, the earliest first.
pub(super) fn maxes(
    connection: &Connection,
    person: PersonId,
    block: Option<&Block>,
    unit: MassUnit,
    date: NaiveDate,
) -> Result<Vec<MaxLine>> {
    let mut lines = Vec::new();
    for max in Query::default().read::<Max>(connection)? {
        let theirs = max.body.person == person;
        let counts = theirs && (max.person == person || is_coach(connection, max.person)?);
        if counts && date_of(&max) <= date {
            lines.push(line(&max, block, unit));
        }
    }
    Ok(lines)
}

fn line(max: &Logged<Max>, block: Option<&Block>, unit: MassUnit) -> MaxLine {
    let Max { ref exercise, load, tested, .. } = max.body;
    let movement = block.map_or_else(|| exercise.to_string(), |block| block.name_of(exercise));
    let (date, load_text) = (date_of(max), words::load_text(load, unit));
    let text = if tested {
        say::coach::max_tested(&movement, load_text, words::day(date))
    } else {
        say::coach::max_set(&movement, load_text, words::day(date))
    };
    MaxLine { exercise: exercise.clone(), movement, load, date, tested, text }
}

/// The movement, or the option, of a name or a key.
fn exercise_named(block: &Block, named: &str) -> Result<Exercise> {
    let wanted = named.trim().to_lowercase();
    let all = block.movements.iter().flat_map(|movement| {
        let options = movement.options.iter().map(|option| Some(option.key.as_str()));
        std::iter::once(None).chain(options).map(|option| movement.exercise(option))
    });
    let all: Vec<Exercise> = all.collect();
    let is_it = |exercise: &&Exercise| {
        exercise.to_string() == wanted || block.name_of(exercise).to_lowercase() == wanted
    };
    all.iter().find(is_it).cloned().ok_or_else(|| {
        let lifted = block.movements.iter().filter(|movement| is_lifted(movement.lifted));
        let names: Vec<String> = lifted.map(|movement| movement.name.clone()).collect();
        let reason = match names.as_slice() {
            [] => say::coach::no_movement_lifted(named.trim()),
            names => say::coach::no_such_movement(named.trim(), words::list(names)),
        };
        Error::invalid(Field::Movement, reason)
    })
}

/// True where a load is what is lifted: of a body a share means nothing.
fn is_lifted(lifted: Lifted) -> bool {
    match lifted {
        Lifted::Bar | Lifted::Bell | Lifted::Pair | Lifted::Machine => true,
        Lifted::Body | Lifted::Added | Lifted::Assisted => false,
    }
}

fn can_be(block: &Block, exercise: &Exercise, load: Mass, unit: MassUnit) -> Result<()> {
    if !block.lifted(exercise).is_some_and(is_lifted) {
        let reason = say::coach::no_max_of_a_body(block.name_of(exercise));
        return Err(Error::invalid(Field::Movement, reason));
    }
    if load <= Mass::ZERO {
        return Err(Error::invalid(Field::Load, say::tap::load_zero()));
    }
    if load > Mass::kg(HEAVIEST_KG) {
        let most = words::load_text(Mass::kg(HEAVIEST_KG), unit);
        let reason = say::coach::max_too_heavy(words::load_text(load, unit), most);
        return Err(Error::invalid(Field::Load, reason));
    }
    Ok(())
}

/// Refuses a max far from what the sets of the last half year say, and the maxes before it; says what that was.
fn is_near(
    connection: &Connection,
    person: PersonId,
    exercise: &Exercise,
    load: Mass,
    (today, unit): (NaiveDate, MassUnit),
) -> Result<()> {
    let subject = exercise.to_string();
    let query = Query { person: Some(person), subject: Some(&subject), ..Query::default() };
    let aside = set_aside(connection)?;
    let since = today.checked_sub_days(Days::new(LATELY_DAYS)).unwrap_or(today);
    let lifts = query.read::<Lift>(connection)?;
    let lately = lifts
        .iter()
        .filter(|lift| date_of(lift) >= since && !lift.body.doubt && !aside.contains(&lift.record));
    let lately: Vec<&Logged<Lift>> = lately.collect();
    let heaviest = lately.iter().filter_map(|lift| Some((lift.body.load?, date_of(lift)))).max();
    let says = lately
        .iter()
        .filter_map(|lift| Some((says_once(&lift.body)?, lift.body.load?, date_of(lift))));
    let maxes = maxes(connection, person, None, unit, today)?;
    let known = maxes.iter().rev().find(|max| max.exercise == *exercise && max.date >= since);
    let known = known.map(|max| (max.load, max.load, max.date));
    let text = |load| words::load_text(load, unit);
    let far = |(once, _, _): &(Mass, Mass, NaiveDate)| load > once.percent(FAR_PERCENT);
    let most = says.chain(known).max();
    let reason = match (most, heaviest) {
        (Some(most), _) if far(&most) => {
            say::coach::max_far_above(text(load), text(most.1), words::day(most.2))
        }
        (None, _) if load > Mass::kg(UNHEARD_KG) => say::coach::max_unheard_of(text(load)),
        (_, Some((heaviest, on))) if load * FAR < heaviest => {
            say::coach::max_far_below(text(load), text(heaviest), words::day(on))
        }
        _ => return Ok(()),
    };
    Err(Error::invalid(Field::Load, reason))
}

/// What a set says could be lifted once, by Epley's equation (Poundage chart, 1985, as in LeSuer et al., J Strength Cond
/// Res 1997;11:211-213).
fn says_once(lift: &Lift) -> Option<Mass> {
    let reps = lift.reps.saturating_add(lift.reserve.unwrap_or(0)).min(MOST_REPS);
    let load = lift.load.filter(|_| lift.reps > 0)?;
    let once = i128::from(load.ten_ng) * (30 + i128::from(reps)) / 30;
    Some(Mass { ten_ng: i64::try_from(once).ok()? })
}

/// Takes back the latest max of a member's exercise that this person gave.
fn take_back(
    device: &mut Device,
    writer: PersonId,
    person: PersonId,
    exercise: &Exercise,
    at: &Instant,
) -> Result<()> {
    let subject = format!("{person}/{exercise}");
    let query = Query { person: Some(writer), subject: Some(&subject), ..Query::default() };
    let Some(last) = query.last::<Max>(device.reader())? else {
        return Err(Error::invalid(Field::Load, say::coach::no_max_to_take_back()));
    };
    device.append(at, vec![Draft::take_back(last.record)])?;
    device.cut_after_saving();
    Ok(())
}
