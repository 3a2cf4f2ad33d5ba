//! Rows that several pages have.

use super::record::{PageRow, PageSign};
use crate::coach::{Attention, AttentionKind};

/// The first of them begins a part of the page.
pub(super) fn headed(mut rows: Vec<PageRow>, heading: &str) -> Vec<PageRow> {
    if let Some(first) = rows.first_mut() {
        first.heading = Some(heading.to_owned());
    }
    rows
}

/// What there is to look at, as a row.
pub(super) fn told(attention: &Attention) -> PageRow {
    let sign = match attention.kind {
        AttentionKind::Pain => PageSign::Pain,
        AttentionKind::Stall => PageSign::Stalled,
        AttentionKind::Away => PageSign::Away,
        AttentionKind::Note => PageSign::Note,
        AttentionKind::Conflict => PageSign::Versions,
        AttentionKind::Options => PageSign::Option,
        AttentionKind::Rushed => PageSign::Rushed,
        AttentionKind::Slip => PageSign::Check,
        AttentionKind::Progress => PageSign::Up,
    };
    PageRow {
        sign: Some(sign),
        word: Some(attention.word.clone()),
        text: Some(attention.text.clone()),
        ..PageRow::default()
    }
}
