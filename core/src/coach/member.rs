//! A member's page.

use chrono::NaiveDate;
use rusqlite::Connection;
use serde::Serialize;

use super::attention::{Attention, attention};
use super::find::find;
use super::notes::{NoteLine, note_lines};
use super::one_rep_max::{MaxLine, maxes};
use super::open::proposals;
use super::proposal::Proposal;
use super::series::{
    LiftSeries, RangeSeries, RegionMinutes, lift_series, range_series, region_minutes,
};
use super::strength::{StrengthSeries, strength_series};
use super::week::{SessionLine, WeekLine, compared, weeks};
use crate::device::Device;
use crate::error::Result;
use crate::history::{in_order, is_cleared, set_aside};
use crate::id::{PersonId, RecordId};
use crate::journal::{Discomfort, Finish, Held, Lift, OptionTaken, Profile, Range, Session};
use crate::load::{Prepared, session_load, volume_load};
use crate::mass::MassUnit;
use crate::plan::Exercise;
use crate::say;
use crate::store::{Logged, Query, date_of};
use crate::words;

/// Everything about one member.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct MemberScreen {
    /// The member.
    pub person: PersonId,
    /// Their name.
    pub name: String,
    /// The unit they read masses in.
    pub unit: MassUnit,
    /// What to look at, the most pressing first.
    pub attention: Vec<Attention>,
    /// Next loads.
    pub proposals: Vec<Proposal>,
    /// Sessions, the earliest first.
    pub sessions: Vec<SessionLine>,
    /// Weeks, the earliest first.
    pub weeks: Vec<WeekLine>,
    /// How the latest days' load compares with the weeks before, in words: a description, not a
    /// risk. None before four weeks.
    pub load_text: Option<String>,
    /// Lifts by movement and scheme.
    pub lifts: Vec<LiftSeries>,
    /// The estimated one-rep max, exercise by exercise.
    pub strengths: Vec<StrengthSeries>,
    /// One-rep maxes that were tested, and those that the coach set; the earliest first.
    pub maxes: Vec<MaxLine>,
    /// Range measures.
    pub ranges: Vec<RangeSeries>,
    /// Time under stretch by week and part of the body.
    pub regions: Vec<RegionMinutes>,
    /// Options taken, the earliest first.
    pub options: Vec<OptionLine>,
    /// Notes of athlete and coach, the earliest first.
    pub notes: Vec<NoteLine>,
    /// Discomfort flags, the earliest first.
    pub discomfort: Vec<DiscomfortLine>,
}

/// An option taken.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct OptionLine {
    /// The date.
    pub date: NaiveDate,
    /// The movement's name.
    pub movement: String,
    /// The option's name.
    pub option: String,
    /// The reason in words.
    pub because: String,
}

/// A discomfort flag on a member's page.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct DiscomfortLine {
    /// The flag.
    pub flag: RecordId,
    /// The date.
    pub date: NaiveDate,
    /// The movement's or stretch's name; none where no movement brings it on.
    pub movement: Option<String>,
    /// Where, in words.
    pub place: String,
    /// How bad, 1 to 10.
    pub severity: u32,
    /// The emergency signs that came with it, in words.
    pub signs: Vec<String>,
    /// All of it in one line, but its date and whether it is open.
    pub text: String,
    /// True until somebody clears it.
    pub open: bool,
}

/// Makes a member's page for a date, found by name or identity.
pub(crate) fn member(device: &mut Device, name: &str, date: NaiveDate) -> Result<MemberScreen> {
    let (person, profile) = find(device.reader(), name)?;
    if person != device.person() {
        device.require_coach(say::device::only_coaches_see_others)?;
    }
    let plan = device.block_for(date)?;
    let block = plan.as_ref().map(|plan| &*plan.block);
    let own = person == device.person();
    page(device.reader(), person, &profile, block, date, own)
}

fn discomfort_line(
    flag: &Logged<Discomfort>,
    movement: Option<String>,
    open: bool,
) -> DiscomfortLine {
    let Discomfort { place, severity, ref signs, .. } = flag.body;
    let place = words::place(place).to_owned();
    let signs: Vec<String> = signs.iter().map(|sign| words::sign(*sign).to_owned()).collect();
    let text = match (&movement, signs.as_slice()) {
        (Some(movement), []) => say::coach::flag(&place, severity, movement),
        (Some(movement), signs) => {
            say::coach::flag_with_signs(&place, severity, movement, words::list(signs))
        }
        (None, []) => say::coach::flag_alone(&place, severity),
        (None, signs) => say::coach::flag_alone_with_signs(&place, severity, words::list(signs)),
    };
    let (flag, date) = (flag.record, date_of(flag));
    DiscomfortLine { flag, date, movement, place, severity, signs, text, open }
}

fn page(
    connection: &Connection,
    person: PersonId,
    profile: &Profile,
    block: Option<&Prepared>,
    date: NaiveDate,
    own: bool,
) -> Result<MemberScreen> {
    let query = Query { person: Some(person), ..Query::default() };
    let unit = profile.unit;
    let (proposals, attention) = match block {
        Some(block) => {
            let proposals = proposals(connection, person, unit, block, date)?;
            let attention = attention(connection, person, unit, block, &proposals, date)?;
            (proposals, attention)
        }
        None => (Vec::new(), Vec::new()),
    };
    let lifts = in_order(query.read::<Lift>(connection)?);
    let finishes = query.read::<Finish>(connection)?;
    let aside = set_aside(connection)?;
    // What may be a slip, and what the coach left out, is in no sum and no chart.
    let counts = |lift: &Logged<Lift>| !lift.body.doubt && !aside.contains(&lift.record);
    let (counted, others): (Vec<_>, Vec<_>) = lifts.into_iter().partition(counts);
    let mut sessions: Vec<SessionLine> = Vec::new();
    for session in in_order(query.read::<Session>(connection)?) {
        let is_of_it = |lift: &&Logged<Lift>| lift.body.session == session.record;
        let of_it = || counted.iter().filter(is_of_it);
        let finish = finishes.iter().find(|finish| finish.body.session == session.record);
        let finish = finish.map(|finish| &finish.body);
        sessions.push(SessionLine {
            session: session.record,
            date: session.body.date,
            day: session.body.day,
            sets: of_it().chain(others.iter().filter(is_of_it)).count() as u32,
            volume: volume_load(of_it().map(|lift| (lift.body.reps, lift.body.load))),
            rpe: finish.and_then(|finish| finish.rpe),
            minutes: finish.map(|finish| finish.minutes),
            load: finish.and_then(|finish| Some(session_load(finish.rpe?, finish.minutes))),
        });
    }
    let name = |exercise: &Exercise| {
        block.map_or_else(|| exercise.to_string(), |block| block.name_of(exercise))
    };
    let taken = query.read::<OptionTaken>(connection)?;
    let options = taken.iter().filter_map(|taken| {
        let option = taken.body.option.as_ref()?;
        Some(OptionLine {
            date: date_of(taken),
            movement: name(&Exercise::of(&taken.body.movement)),
            option: name(&Exercise::option_of(&taken.body.movement, option)),
            because: taken.body.because.map_or("", words::because).to_owned(),
        })
    });
    let mut discomfort = Vec::new();
    for flag in query.read::<Discomfort>(connection)? {
        let open = !is_cleared(connection, flag.record, person)?;
        let movement = flag.body.exercise.as_ref().map(&name);
        discomfort.push(discomfort_line(&flag, movement, open));
    }
    Ok(MemberScreen {
        person,
        name: profile.name.clone(),
        unit,
        attention,
        proposals,
        weeks: weeks(&sessions, date),
        load_text: compared(&sessions, date),
        sessions,
        lifts: lift_series(block.map(|block| &**block), &counted),
        strengths: strength_series(block.map(|block| &**block), &counted, date, unit, own),
        maxes: maxes(connection, person, block.map(|block| &**block), unit, date)?,
        ranges: range_series(&in_order(query.read::<Range>(connection)?)),
        regions: region_minutes(&in_order(query.read::<Held>(connection)?)),
        options: options.collect(),
        notes: note_lines(connection, (person, profile), own)?,
        discomfort,
    })
}
