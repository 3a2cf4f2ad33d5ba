//! The board and every member's page as one file, for a coach to read in the evening, keep and
//! print.
//!
//! The file asks for nothing: no script, no picture, font or style from elsewhere. It decides
//! nothing either: every number is the core's, and the same input gives the same bytes.

mod chart;
mod marked;
mod page;
mod section;
mod words;

#[cfg(test)]
mod tests;

use askama::Template;
use holdfast_core::coach::{BoardScreen, MemberScreen};
use plotters::drawing::DrawingAreaErrorKind;

use crate::print::units::together;

/// Why there is no report.
#[derive(Debug, thiserror::Error)]
pub(crate) enum ReportError {
    /// A chart could not be drawn.
    #[error("{}", crate::say::report::chart_not_drawn(.0))]
    Chart(#[from] DrawingAreaErrorKind<std::io::Error>),
    /// The page could not be filled in.
    #[error("{}", crate::say::report::page_not_filled(.0))]
    Page(#[from] askama::Error),
}

/// Makes the report: one HTML file of the board and of the members' pages, in the order given.
///
/// # Errors
/// [`ReportError`] says which part could not be made; nothing in the input leads to one.
pub(crate) fn html(board: &BoardScreen, members: &[MemberScreen]) -> Result<String, ReportError> {
    Ok(together(&page::Page::new(board, members)?.render()?))
}
