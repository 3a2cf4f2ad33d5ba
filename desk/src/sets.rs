//! Sets as they were logged: the list, corrections, what a coach leaves out, and one-rep maxes.

use chrono::NaiveDate;
use clap::Args as ClapArgs;
use holdfast_core::coach::{LoggedSet, MaxGiven, SetNamed, SetsScreen};
use holdfast_core::session::Correction;
use holdfast_core::{Field, Holdfast, HoldfastError, Mass};
use owo_colors::OwoColorize;

use crate::fault::{Fault, Outcome};
use crate::now::{now, today};
use crate::print::words::day;
use crate::{print, say};

/// So many of the latest sessions are listed where nothing else is said.
const LATEST_SESSIONS: u32 = 3;

/// Which sets to list.
#[derive(Debug, ClapArgs)]
pub(crate) struct Sets {
    #[arg(long, value_name = "DATE")]
    pub(crate) on: Option<NaiveDate>,
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..=1000))]
    pub(crate) sessions: Option<u32>,
    #[arg(long, value_name = "NAME")]
    pub(crate) member: Option<String>,
    #[arg(long)]
    pub(crate) json: bool,
}

/// A set and what was really done.
#[derive(Debug, ClapArgs)]
pub(crate) struct Correct {
    pub(crate) date: NaiveDate,
    pub(crate) piece: String,
    #[arg(value_parser = clap::value_parser!(u32).range(1..=100))]
    pub(crate) set: u32,
    #[arg(required = true, value_name = "DONE", allow_negative_numbers = true)]
    pub(crate) what: Vec<String>,
    #[arg(long, value_name = "N")]
    pub(crate) session: Option<u32>,
}

/// A member's set to leave out.
#[derive(Debug, ClapArgs)]
pub(crate) struct LeaveOut {
    pub(crate) name: String,
    pub(crate) date: NaiveDate,
    pub(crate) piece: String,
    #[arg(value_parser = clap::value_parser!(u32).range(1..=100))]
    pub(crate) set: u32,
    #[arg(long, value_name = "N")]
    pub(crate) session: Option<u32>,
    #[arg(long)]
    pub(crate) count: bool,
}

/// A one-rep max.
#[derive(Debug, ClapArgs)]
pub(crate) struct OneRepMax {
    pub(crate) movement: String,
    #[arg(allow_hyphen_values = true)]
    pub(crate) load: String,
    #[arg(long, value_name = "NAME")]
    pub(crate) member: Option<String>,
    #[arg(long)]
    pub(crate) anyway: bool,
}

/// Lists sets, each with what names it in a correction.
pub(crate) fn sets(holdfast: &Holdfast, asked: Sets) -> Outcome {
    if asked.on.is_some() && asked.sessions.is_some() {
        return Err(Fault::Typed(say::sets::on_or_sessions().into()));
    }
    let own = asked.member.is_none();
    let latest = asked.sessions.unwrap_or(LATEST_SESSIONS);
    let screen = holdfast.sets(asked.member, asked.on, latest)?;
    if asked.json { print::json(&screen) } else { print::out(&listed(&screen, own)) }
}

fn listed(screen: &SetsScreen, own: bool) -> String {
    let mut text = format!("{}\n", screen.name.bold());
    for session in &screen.sessions {
        let heading = format!("{} ({})", session.heading, session.date);
        text += &format!("\n{}\n", heading.bold());
        session.notes.iter().for_each(|note| text += &format!("  {note}\n"));
        let mut rows = print::table(&[]);
        for set in &session.sets {
            let set_number = say::sets::set(set.set);
            let done = std::iter::once(&set.text).chain(&set.notes);
            let done: Vec<&str> = done.map(String::as_str).collect();
            rows.add_row([set.piece.as_str(), &set_number, &done.join("\n")]);
        }
        text += &print::indented(&rows, 2);
    }
    let first = screen.sessions.first().and_then(|session| {
        let set = session.sets.last()?;
        Some((session.date, set.piece.as_str(), set.set))
    });
    text += &match (first, own) {
        (None, _) => format!("\n{}\n", say::sets::none()),
        (Some((date, piece, set)), true) => {
            format!("\n{}\n", say::sets::how_to_correct(date, quoted(piece), set).dimmed())
        }
        (Some((date, piece, set)), false) => {
            let name = quoted(&screen.name);
            format!("\n{}\n", say::sets::how_to_leave_out(name, date, quoted(piece), set).dimmed())
        }
    };
    text
}

/// A name as it is typed: in quotes where a blank is in it.
fn quoted(name: &str) -> String {
    if name.contains(char::is_whitespace) { format!("\"{name}\"") } else { name.to_owned() }
}

/// Corrects a set of the athlete's own, says that it is right, or takes it back.
pub(crate) fn correct(holdfast: &Holdfast, typed: Correct) -> Outcome {
    let Correct { date: on, piece, set, what, session } = typed;
    let named = SetNamed { member: None, on, piece: piece.clone(), set, session };
    let before = match holdfast.find_set(named) {
        Err(HoldfastError::Invalid { field: Field::Role, reason }) => {
            let typed = say::sets::leave_out(on, quoted(&piece), set);
            return Err(Fault::Typed(say::sets::coach_leaves_out(reason, typed)));
        }
        found => found?,
    };
    let correction = holdfast.read_correction(what.join(" "))?;
    let after = holdfast.correct(before.lift, correction, now())?;
    let (name, was) = (set_name(&before, on), &before.text);
    let said = match after {
        Some(after) if after.doubt => {
            let typed = say::sets::correct_right(on, quoted(&after.piece), after.set);
            say::sets::corrected_still_odd(name, &after.text, was, typed)
        }
        Some(after) if after.text == *was || before.doubt && same(&before, &after) => {
            say::sets::confirmed(name, &after.text)
        }
        Some(after) => say::sets::corrected(name, &after.text, was),
        None => say::sets::taken_back(name, was, on),
    };
    print::out(&format!("{said}\n{}\n", print::where_it_goes(holdfast)?))
}

fn same(before: &LoggedSet, after: &LoggedSet) -> bool {
    (before.load, before.reps, before.reserve) == (after.load, after.reps, after.reserve)
}

fn set_name(set: &LoggedSet, on: NaiveDate) -> String {
    say::sets::name(&set.piece, set.set, day(on, today()))
}

/// Leaves a member's set out, or counts it again.
pub(crate) fn leave_out(holdfast: &Holdfast, typed: LeaveOut) -> Outcome {
    let LeaveOut { name, date: on, piece, set, session, count } = typed;
    let named = SetNamed { member: Some(name), on, piece, set, session };
    let found = holdfast.find_set(named)?;
    let after = holdfast.set_aside(found.lift, !count, now())?.unwrap_or(found);
    let name = set_name(&after, on);
    let said = if count {
        say::sets::counts_again(name, &after.text)
    } else {
        say::sets::left_out(name, &after.text)
    };
    print::out(&format!("{said}\n{}\n", print::where_it_goes(holdfast)?))
}

/// Logs a one-rep max: an athlete's own that was tested, or a training max that a coach sets.
pub(crate) fn one_rep_max(holdfast: &Holdfast, typed: OneRepMax) -> Outcome {
    let OneRepMax { movement, load, member, anyway } = typed;
    let unit = holdfast.sets(member.clone(), None, 1)?.unit;
    let load = match holdfast.read_correction(load.clone()) {
        Ok(Correction::NotDone) => None,
        _ => {
            let wrong = |error| Fault::Typed(say::sets::wrong_load(&load, error));
            Some(Mass::parse_signed(&load, Some(unit)).map_err(wrong)?)
        }
    };
    let given = MaxGiven { member, movement, load, anyway };
    let said = match holdfast.give_max(given, now())? {
        Some(line) => line.text,
        None => say::sets::max_taken_back().to_owned(),
    };
    print::out(&format!("{said}\n{}\n", print::where_it_goes(holdfast)?))
}
