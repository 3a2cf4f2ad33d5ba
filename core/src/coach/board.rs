//! The board: every member on one page, those who need a look first.

use chrono::NaiveDate;
use rusqlite::Connection;
use serde::Serialize;

use super::arrivals::arrivals;
use super::attendance::attendance;
use super::attention::{Attention, attention};
use super::open::proposals;
use super::proposal::Proposal;
use crate::device::Device;
use crate::error::Result;
use crate::id::PersonId;
use crate::journal::{Finish, Role, Session};
use crate::load::{Prepared, session_load};
use crate::plan::Block;
use crate::say;
use crate::store::{Query, people, removed};
use crate::words;

/// The coach's overview.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct BoardScreen {
    /// The block's name; none without a plan.
    pub block: Option<String>,
    /// The date it is made for.
    pub date: NaiveDate,
    /// One line to head the screen.
    pub heading: String,
    /// Members, those who need a look first.
    pub rows: Vec<BoardRow>,
    /// What has not arrived, or arrived damaged.
    pub arrivals: Vec<String>,
}

/// One member on the board.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct BoardRow {
    /// The member.
    pub person: PersonId,
    /// Their name.
    pub name: String,
    /// Sessions of the block up to the date, on planned days or others.
    pub trained: u32,
    /// Days planned in the block up to the date, and those of that week that were trained before their date.
    pub planned: u32,
    /// The date last trained.
    pub last: Option<NaiveDate>,
    /// Session load of the last seven days, in rpe times minutes.
    pub week_load: u32,
    /// What to look at, the most pressing first.
    pub attention: Vec<Attention>,
    /// Next loads to answer.
    pub proposals: Vec<Proposal>,
}

/// Makes the board for a date.
pub(crate) fn board(device: &mut Device, date: NaiveDate) -> Result<BoardScreen> {
    device.require_coach(say::device::only_coaches_see_the_board)?;
    let plan = device.block_for(date)?;
    let block = plan.as_ref().map(|plan| &*plan.block);
    let mut arrivals = arrivals(device)?;
    let aside = device.traffic.aside.iter();
    arrivals.extend(aside.map(|file| say::coach::left_alone(&file.name, &file.reason)));
    arrivals.extend(device.unread_plans.iter().map(say::screen::plan_unread));
    of_all(device.reader(), block, date, arrivals)
}

fn of_all(
    connection: &Connection,
    block: Option<&Prepared>,
    date: NaiveDate,
    arrivals: Vec<String>,
) -> Result<BoardScreen> {
    let (people, removed) = (people(connection)?, removed(connection)?);
    let mut rows = Vec::new();
    if let Some(block) = block {
        for (person, (_, profile)) in &people {
            if profile.role == Role::Athlete && !removed.contains(person) {
                let proposals = proposals(connection, *person, profile.unit, block, date)?;
                let attention =
                    attention(connection, *person, profile.unit, block, &proposals, date)?;
                let mut row = row(connection, *person, profile.name.clone(), block, date)?;
                row.attention = attention;
                row.proposals = proposals;
                rows.push(row);
            }
        }
    }
    rows.sort_by_key(|row| {
        (row.attention.first().map_or(u8::MAX, |first| first.kind as u8), row.name.clone())
    });
    let week = block.and_then(|block| Some((block, block.week_of(date)?)));
    let heading = match (block, week) {
        (_, Some((block, week))) => say::coach::heading_in_week(&block.name, week, block.weeks),
        (Some(block), None) if date < block.starts => {
            say::coach::heading_to_start(&block.name, words::day(block.starts))
        }
        (Some(block), None) => say::coach::heading_ended(&block.name, words::day(block.ends())),
        (None, None) => say::coach::heading_no_plan().into(),
    };
    let block = block.map(|block| block.name.clone());
    Ok(BoardScreen { block, date, heading, rows, arrivals })
}

fn row(
    connection: &Connection,
    person: PersonId,
    name: String,
    block: &Block,
    date: NaiveDate,
) -> Result<BoardRow> {
    let query = Query { person: Some(person), ..Query::default() };
    let mut sessions = query.read::<Session>(connection)?;
    sessions.retain(|session| session.body.date <= date);
    let finishes = query.read::<Finish>(connection)?;
    let load_of = |session: &crate::store::Logged<Session>| {
        let finish = finishes.iter().find(|finish| finish.body.session == session.record)?;
        Some(session_load(finish.body.rpe?, finish.body.minutes))
    };
    let week =
        sessions.iter().filter(|session| (0..7).contains(&(date - session.body.date).num_days()));
    let of_block = |session: &&crate::store::Logged<Session>| session.body.block == block.name;
    let days = attendance(block, &sessions, date);
    let planned = days.iter().filter(|of| of.planned.date <= date || of.trained).count();
    Ok(BoardRow {
        person,
        name,
        trained: sessions.iter().filter(of_block).count() as u32,
        planned: planned as u32,
        last: sessions.iter().map(|session| session.body.date).max(),
        week_load: week.filter_map(load_of).sum(),
        attention: Vec::new(),
        proposals: Vec::new(),
    })
}
