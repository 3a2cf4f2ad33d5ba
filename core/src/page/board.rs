//! A coach's home: everybody, those who need a look first; and the plan.

use super::PhoneChoices;
use super::act::{PageAct, PageAsk};
use super::record::{PageKey, PageRow, PageScreen, PageSign};
use super::rows::{headed, told};
use crate::coach;
use crate::device::Device;
use crate::error::Result;
use crate::instant::Instant;
use crate::say::page as say;
use crate::words;

pub(super) fn page(device: &mut Device, at: &Instant) -> Result<PageScreen> {
    let board = coach::board(device, at.date())?;
    let mut page = PageScreen::titled(words::day(at.date()));
    page.beside = Some(device.profile()?.name);
    page.said.push(board.heading);
    if board.rows.is_empty() {
        page.said.push(say::nobody_yet().to_owned());
    }
    for member in &board.rows {
        let opens = PageAct::Open { page: PageAsk::History { member: Some(member.name.clone()) } };
        let last = member.last.map_or_else(|| say::never_trained().to_owned(), words::day);
        let row = PageRow { does: Some(opens), ..PageRow::titled(&member.name).worth(last) };
        page.rows.push(match member.attention.first() {
            Some(first) => {
                let told = told(first);
                PageRow { sign: told.sign, word: told.word, text: told.text, ..row }
            }
            None => row.says(say::as_planned()),
        });
    }
    let missing = board
        .arrivals
        .into_iter()
        .map(|text| PageRow { sign: Some(PageSign::NotArrived), ..PageRow::titled(text) });
    page.rows.extend(headed(missing.collect(), say::not_arrived()));
    let place = |words: &str, page| PageKey::moves(words, PageAct::Open { page });
    page.beside_key = vec![
        place(say::plan(), PageAsk::Plan),
        place(say::exchange(), PageAsk::Exchange { carriers: Vec::new() }),
        place(say::this_phone(), PageAsk::ThisPhone { choices: PhoneChoices::default() }),
    ];
    page.key =
        Some(PageKey::moves(say::let_somebody_in(), PageAct::Open { page: PageAsk::Pairing }));
    Ok(page)
}

/// The plan that is trained by, and how another comes.
pub(super) fn plan(device: &mut Device, at: &Instant) -> Result<PageScreen> {
    let mut page = PageScreen::titled(say::plan());
    match device.block_for(at.date())? {
        Some(plan) => {
            let block = &plan.block;
            page.beside = Some(block.name.clone());
            page.said.push(say::plan_runs(
                words::day(block.starts),
                words::day(block.ends()),
                block.weeks,
            ));
            let days = block.days.iter().map(|day| {
                let pieces: Vec<String> =
                    day.pieces.iter().map(|piece| piece.name.clone()).collect();
                PageRow::titled(&day.name).says(words::list(&pieces))
            });
            page.rows = headed(days.collect(), say::days());
        }
        None => page.said.push(say::no_plan_published().to_owned()),
    }
    page.said.push(say::a_plan_is_a_file().to_owned());
    page.key = Some(
        PageKey::moves(say::publish_a_plan(), PageAct::Publish).more(say::next_exchange_carries()),
    );
    Ok(page)
}
