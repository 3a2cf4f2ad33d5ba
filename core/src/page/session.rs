//! One session: every set as it was logged, to be corrected by whoever lifted it, and what else was done.

use super::act::PageAct;
use super::record::{PageRow, PageScreen};
use super::rows::headed;
use crate::coach::{self, LoggedSet, OneSession};
use crate::device::Device;
use crate::error::Result;
use crate::id::RecordId;
use crate::say::page as say;
use crate::session::Ask;
use crate::words;

pub(super) fn page(
    device: &mut Device,
    member: Option<&str>,
    session: RecordId,
) -> Result<PageScreen> {
    let OneSession { day, sets, others, finish, own } = coach::session(device, member, session)?;
    let mut page = PageScreen::titled(day);
    page.beside = Some(words::day(sets.date));
    if let Some(finish) = finish {
        let rated = finish.rpe.map(|rpe| say::rated(rpe, finish.minutes));
        page.said.extend(rated.or_else(|| Some(say::took(finish.minutes))));
    }
    page.said.extend((own && !sets.sets.is_empty()).then(|| say::touch_to_correct().to_owned()));
    page.said.extend(sets.notes);
    let mut piece = None;
    for set in sets.sets {
        let begins = piece.as_ref() != Some(&set.piece);
        piece = Some(set.piece.clone());
        let heading = begins.then(|| set.piece.clone());
        page.rows.push(PageRow { heading, ..row(set, own) });
    }
    let others = others.into_iter().map(PageRow::titled).collect();
    page.rows.extend(headed(others, say::also_logged()));
    page.key = Some(super::home(device)?);
    Ok(page)
}

fn row(set: LoggedSet, own: bool) -> PageRow {
    let LoggedSet { lift, movement, text, notes, set, .. } = set;
    let below: Vec<String> = [movement].into_iter().chain(notes).collect();
    let does = own.then_some(PageAct::Ask { ask: Ask::Logged { lift } });
    PageRow { does, ..PageRow::titled(text).says(below.join("\n")).worth(say::set_number(set)) }
}
