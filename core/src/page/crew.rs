//! Who is in the crew; taking somebody in; the recovery code.

use qrcodegen::{QrCode, QrCodeEcc};

use super::act::{PageAct, PageAsk};
use super::record::{PageBlock, PageCode, PageField, PageKey, PageRow, PageScreen};
use crate::crew::{self as known, RecoveryDid};
use crate::device::{Device, PairDid, PairScreen, PairStep};
use crate::error::{Error, Field, Result};
use crate::instant::Instant;
use crate::journal::Role;
use crate::say::page as say;

pub(super) fn page(device: &mut Device) -> Result<PageScreen> {
    let mut page = PageScreen::titled(say::crew());
    for person in known::screen(device, None)?.people {
        let devices = person.devices.iter().map(|device| say::device(device.number, &device.state));
        let text = person.state.into_iter().chain(devices).collect::<Vec<_>>().join("\n");
        let mut row = PageRow::titled(person.name);
        row.text = (!text.is_empty()).then_some(text);
        row.value = (person.coach).then(|| say::coach().to_owned());
        page.rows.push(row);
    }
    let coach = device.profile()?.role == Role::Coach;
    if device.crew().is_none() {
        page.said.push(say::no_crew_yet().to_owned());
    }
    let words = if coach { say::let_somebody_in() } else { say::join_a_crew() };
    let joins = coach || device.crew().is_none();
    page.key = joins.then(|| PageKey::moves(words, PageAct::Open { page: PageAsk::Pairing }));
    Ok(page)
}

/// Does what somebody did in a pairing, and draws where it stands.
pub(crate) fn pairing(device: &mut Device, did: PairDid, at: &Instant) -> Result<PageScreen> {
    let coach = device.profile()?.role == Role::Coach;
    let shown = device.pair(did, at)?;
    let mut page = PageScreen::titled(title(coach, &shown));
    let said = shown.told.clone().into_iter().chain([shown.ask.clone()]);
    page.said.extend(said);
    if shown.step == PairStep::Compare {
        // What to do with the words stands above them.
        page.said.reverse();
    }
    page.said.extend(shown.earlier.clone());
    page.code = shown.code.as_deref().map(code).transpose()?;
    page.words = shown.words.clone();
    page.rows = (1..)
        .zip(&shown.lines)
        .map(|(line, words)| {
            let does = Some(PageAct::Pick { line: Some(line) });
            PageRow { does, ..PageRow::titled(words) }
        })
        .collect();
    let scans = PageKey::moves(say::scan(), PageAct::Scan);
    let typed = PageField { optional: true, ..PageField::empty(say::or_type_it()) };
    let types = PageKey::moves(say::take_typed(), PageAct::TypedCode);
    let shares = PageKey::moves(say::share_code(), PageAct::ShareCode);
    let stops = PageKey::moves(say::stop_pairing(), PageAct::StopPairing);
    match (shown.step, coach) {
        (PairStep::Nothing, true) => {
            page.key = Some(PageKey::moves(say::invite(), PageAct::Invite))
        }
        (PairStep::Nothing, false) => {
            page.fields.push(typed);
            page.beside_key.push(types);
            page.key = Some(scans);
        }
        (PairStep::Shows, _) => {
            let label = say::or_type_theirs().to_owned();
            page.fields.push(PageField { label, ..typed });
            page.beside_key.extend([types, shares, stops]);
            page.key = Some(PageKey::moves(say::scan_theirs(), PageAct::Scan));
        }
        (PairStep::Compare, _) => {
            page.beside_key.push(PageKey::moves(say::words_differ(), matched(false, false)));
            if shown.earlier.is_some() {
                page.beside_key.push(PageKey::saves(say::match_and_share(), matched(true, true)));
            }
            page.key = Some(
                PageKey::saves(say::words_match(), matched(true, false))
                    .more(say::joins())
                    .once_read(),
            );
        }
        (PairStep::Pick, _) => {
            let none = PageKey::moves(say::none_of_them(), PageAct::Pick { line: None });
            page.beside_key.extend([none, shares, stops]);
            page.key = Some(PageKey::waits(say::touch_the_line()));
        }
        (PairStep::Done, coach) => {
            if shown.earlier.is_some() && !coach {
                page.beside_key.push(PageKey::saves(say::share_earlier(), PageAct::ShareEarlier));
            }
            if coach {
                page.beside_key.push(PageKey::moves(say::invite_next(), PageAct::Invite));
            }
            let exchange = PageAct::Open { page: PageAsk::Exchange { carriers: Vec::new() } };
            page.key = Some(PageKey::moves(say::to_exchange(), exchange));
        }
    }
    Ok(page)
}

fn title(coach: bool, shown: &PairScreen) -> String {
    match (coach, &shown.name) {
        (true, Some(name)) => say::let_in(name),
        (true, None) => say::let_somebody_in().to_owned(),
        (false, _) => say::join_a_crew().to_owned(),
    }
}

fn matched(matches: bool, share_earlier: bool) -> PageAct {
    PageAct::Match { matches, share_earlier }
}

/// A code as a QR code of medium error correction: some 15 % of it may be smudged (ISO/IEC 18004).
fn code(text: &str) -> Result<PageCode> {
    let drawn = QrCode::encode_text(text, QrCodeEcc::Medium)
        .map_err(|_| Error::invalid(Field::Pairing, say::no_room_for_code().to_owned()))?;
    let side = drawn.size();
    let modules = (0..side).flat_map(|y| (0..side).map(move |x| (x, y)));
    Ok(PageCode {
        text: text.to_owned(),
        side: side.unsigned_abs(),
        dark: modules.map(|(x, y)| drawn.get_module(x, y)).collect(),
    })
}

/// Does what somebody did about the recovery code, and draws where it stands.
pub(crate) fn recovery(device: &mut Device, did: RecoveryDid, _at: &Instant) -> Result<PageScreen> {
    let shown = known::recovery(device, did)?;
    let mut page = PageScreen::titled(say::recovery_code());
    page.said.push(shown.ask.clone());
    page.said.push(say::code_is_for().to_owned());
    if let Some(code) = &shown.code {
        page.block =
            Some(PageBlock { heading: in_two_lines(code), text: say::nobody_looks().to_owned() });
        let label = say::type_back(words_of(&shown.groups));
        page.fields.push(PageField::empty(label));
        page.key = Some(PageKey::saves(say::it_is_on_paper(), PageAct::ConfirmCode).once_typed());
    } else if shown.kept {
        let show = PageAct::Open { page: PageAsk::Recovery { shown: true } };
        page.key = Some(PageKey::moves(say::show_code(), show));
    }
    Ok(page)
}

/// Four groups a line, so that the third and the eighth are found without counting all.
fn in_two_lines(code: &str) -> String {
    let groups: Vec<&str> = code.split('-').collect();
    let lines: Vec<String> = groups.chunks(4).map(|line| line.join("-")).collect();
    lines.join("\n")
}

fn words_of(groups: &[u32]) -> String {
    let groups: Vec<String> = groups.iter().map(u32::to_string).collect();
    crate::words::list(&groups)
}
