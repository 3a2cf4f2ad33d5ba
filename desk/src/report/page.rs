//! The whole page: what the board says, and what stands before and after the members.

use askama::Template;
use holdfast_core::care;
use holdfast_core::coach::{Attention, BoardRow, BoardScreen, MemberScreen, Proposal};
use holdfast_core::plan::Protocol;

use super::chart::Painted;
use super::section::Section;
use super::words::{self, Day};

/// The page as its template reads it.
#[derive(Template)]
#[template(path = "report/page.html")]
pub(super) struct Page<'a> {
    heading: &'a str,
    date: Day,
    arrivals: &'a [String],
    rows: Vec<Row<'a>>,
    proposals: Vec<Offer<'a>>,
    sections: Vec<Section<'a>>,
    cautions: [&'static str; care::ALWAYS.len()],
    errors: Vec<MeasureError>,
}

/// A member on the board.
struct Row<'a> {
    name: &'a str,
    /// Where the member's own section is, if there is one.
    section: Option<String>,
    trained: u32,
    planned: u32,
    last: Option<Day>,
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
    on: Day,
    answer: Option<&'a str>,
}

/// The measurement error of a protocol.
struct MeasureError {
    protocol: String,
    error: String,
    source: &'static str,
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
                trained: row.trained,
                planned: row.planned,
                last: row.last.map(|last| Day::on(board.date, last)),
                load: row.week_load,
                looks: looks(&row.attention),
            }
        };
        let offers = |row: &'a BoardRow| {
            row.proposals.iter().map(|proposal| Offer {
                name: &row.name,
                proposal,
                on: Day::on(board.date, proposal.on),
                answer: proposal.ruled_text.as_deref(),
            })
        };
        Ok(Page {
            heading: &board.heading,
            date: Day::whole(board.date),
            arrivals: &board.arrivals,
            rows: board.rows.iter().map(row).collect(),
            proposals: board.rows.iter().flat_map(offers).collect(),
            sections: sections?,
            cautions: care::ALWAYS,
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

fn measure_error(protocol: Protocol) -> MeasureError {
    let error = words::tenths(protocol.mdc95_tenths(), false);
    MeasureError {
        protocol: protocol.text().replace('-', " "),
        error: format!("{error} {}", protocol.unit().text()),
        source: protocol.source(),
    }
}
