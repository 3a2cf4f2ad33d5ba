//! Rows that several pages have.

use super::act::{PageAct, PageAsk};
use super::record::{PageRow, PageSign};
use crate::coach::{Attention, AttentionKind};
use crate::exchange::web::ServerKind;
use crate::say::page as say;

/// The first of them begins a part of the page.
pub(super) fn headed(mut rows: Vec<PageRow>, heading: &str) -> Vec<PageRow> {
    if let Some(first) = rows.first_mut() {
        first.heading = Some(heading.to_owned());
    }
    rows
}

/// What adds a carrier: a folder, or a server by its form.
pub(super) fn adds_carrier() -> [PageRow; 2] {
    let add = |title: &str, does| PageRow { does: Some(does), ..PageRow::titled(title) };
    let form = PageAsk::Server { kind: ServerKind::WebDav, address: String::new() };
    [
        add(say::add_folder(), PageAct::KeepFolder),
        add(say::add_server(), PageAct::Open { page: form }),
    ]
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
