//! The whole page: what the board says, and what stands before and after the members.

use askama::Template;
use holdfast_core::care;
use holdfast_core::coach::{Attention, BoardRow, BoardScreen, MemberScreen, Proposal};
use holdfast_core::plan::Protocol;

use super::chart::Painted;
use super::marked::Marked;
use super::section::Section;
use super::words::{self, dated};
use crate::print::words::{day_of_year, reading, scheme};
use crate::say;

/// The page as its template reads it.
#[derive(Template)]
#[template(path = "report/page.html")]
pub(super) struct Page<'a> {
    title: String,
    heading: &'a str,
    made_for: Marked,
    arrivals: &'a [String],
    rows: Vec<Row<'a>>,
    proposals: Vec<Offer<'a>>,
    sections: Vec<Section<'a>>,
    cautions: [&'static str; 4],
    errors: Vec<String>,
}

/// A member on the board.
struct Row<'a> {
    name: &'a str,
    /// Where the member's own section is, if there is one.
    section: Option<String>,
    trained: String,
    last: Option<Marked>,
    load: u32,
    looks: Vec<Look<'a>>,
}

/// Something to look at.
pub(super) struct Look<'a> {
    pub(super) word: &'a str,
    pub(super) class: &'static str,
    pub(super) text: &'a str,
}

/// A next load to answer.
struct Offer<'a> {
    name: &'a str,
    proposal: &'a Proposal,
    /// The piece, and its reps set by set.
    piece: Marked,
    after: Marked,
    answer: Option<&'a str>,
}

impl<'a> Page<'a> {
    pub(super) fn new(board: &'a BoardScreen, members: &'a [MemberScreen]) -> Painted<Page<'a>> {
        let sections: Painted<Vec<Section<'a>>> = members
            .iter()
            .enumerate()
            .map(|(index, member)| Section::new(anchor(index), member, board.date))
            .collect();
        let row = |row: &'a BoardRow| {
            let index = members.iter().position(|member| member.person == row.person);
            Row {
                name: &row.name,
                section: index.map(anchor),
                trained: trained(row),
                last: row.last.map(|last| dated(last, board.date)),
                load: row.week_load,
                looks: looks(&row.attention),
            }
        };
        let offers = |row: &'a BoardRow| {
            row.proposals.iter().map(|proposal| Offer {
                name: &row.name,
                proposal,
                piece: piece(proposal),
                after: Marked::new([dated(proposal.on, board.date)], |[on]| say::report::after(on)),
                answer: proposal.ruled_text.as_deref(),
            })
        };
        Ok(Page {
            title: say::report::title(day_of_year(board.date), &board.heading),
            heading: &board.heading,
            made_for: words::made_for(board.date),
            arrivals: &board.arrivals,
            rows: board.rows.iter().map(row).collect(),
            proposals: board.rows.iter().flat_map(offers).collect(),
            sections: sections?,
            cautions: care::always(),
            errors: Protocol::ALL.iter().map(|protocol| measure_error(*protocol)).collect(),
        })
    }
}

/// The same for everything that is looked at, in the order it is given.
pub(super) fn looks(attention: &[Attention]) -> Vec<Look<'_>> {
    attention
        .iter()
        .map(|attention| Look {
            word: &attention.word,
            class: words::class(attention.kind),
            text: &attention.text,
        })
        .collect()
}

fn anchor(index: usize) -> String {
    format!("member-{}", index + 1)
}

fn trained(row: &BoardRow) -> String {
    if row.trained > row.planned {
        say::report::trained_more(row.trained, row.planned)
    } else {
        say::report::trained(row.trained, row.planned)
    }
}

fn piece(proposal: &Proposal) -> Marked {
    let reps = scheme(&proposal.scheme);
    Marked::new([Marked::name(&proposal.piece)], |[piece]| say::report::piece_and_reps(piece, reps))
}

/// The measurement error of a protocol.
fn measure_error(protocol: Protocol) -> String {
    let error = reading(protocol.mdc95_tenths(), protocol.unit().text());
    say::report::measurement_error(words::protocol(protocol), error, protocol.source())
}
