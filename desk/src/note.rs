//! Notes on a session of any day, or on a set of it.

use chrono::NaiveDate;
use clap::Args as ClapArgs;
use holdfast_core::Holdfast;
use holdfast_core::coach::{NoteGiven, SetOfPiece};
use holdfast_core::session::NoteFrom;

use crate::fault::Outcome;
use crate::now::{now, today};
use crate::print::words::day;
use crate::{print, say};

/// A note to write, or to take back.
#[derive(Debug, ClapArgs)]
pub(crate) struct Note {
    #[arg(value_name = "WORDS", required_unless_present = "take_back")]
    pub(crate) words: Vec<String>,
    #[arg(long, value_name = "NAME")]
    pub(crate) member: Option<String>,
    #[arg(long, value_name = "DATE")]
    pub(crate) on: Option<NaiveDate>,
    #[arg(long, value_name = "PIECE", requires = "set")]
    pub(crate) piece: Option<String>,
    #[arg(long, value_name = "N", requires = "piece", value_parser = clap::value_parser!(u32).range(1..=100))]
    pub(crate) set: Option<u32>,
    #[arg(long, value_name = "N", requires = "on")]
    pub(crate) session: Option<u32>,
    #[arg(long)]
    pub(crate) private: bool,
    #[arg(long, conflicts_with = "words")]
    pub(crate) take_back: bool,
}

/// Writes a note, or takes one back, and says who reads it.
pub(crate) fn run(holdfast: &Holdfast, typed: Note) -> Outcome {
    let Note { words, member, on, piece, set, session, private, take_back } = typed;
    let set = piece.zip(set).map(|(piece, set)| SetOfPiece { piece, set });
    let words = (!take_back).then(|| words.join(" "));
    let line = holdfast.note(NoteGiven { member, on, set, session, words, private }, now())?;
    let noted = say::command::noted(day(line.date, today()), &line.text);
    let said = if take_back { say::command::note_taken_back(noted) } else { noted };
    let after = match line.from {
        NoteFrom::Private => say::command::note_stays(),
        NoteFrom::Athlete | NoteFrom::Coach => print::where_it_goes(holdfast)?,
    };
    print::out(&format!("{said}\n{after}\n"))
}
