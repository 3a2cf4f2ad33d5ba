//! A session screen, drawn from its snapshot.

use chrono::NaiveDate;

use super::came_to::came_to;
use super::key::At;
use super::rows::{follow, piece_of, rows, stands_at};
use super::said::Saved;
use super::screen::{
    CueView, Notice, NoticeKind, PieceKindView, PieceView, Row, SessionScreen, SessionState,
};
use super::sheet::Sheet;
use super::snapshot::Snapshot;
use super::went_by::WentBy;
use super::{Kept, rest};
use crate::care::{Felt, advice_for, long_holds_before_strength};
use crate::device::Device;
use crate::instant::Instant;
use crate::plan::{Block, Exercise};
use crate::say::screen as say;
use crate::words;

/// Draws what is on screen at a moment.
pub(super) fn draw(
    snapshot: &Snapshot,
    device: &Device,
    kept: &mut Kept,
    at: &Instant,
) -> SessionScreen {
    let mut pieces = Vec::new();
    let mut resting = None;
    if let (Some(block), Some(day)) = (&snapshot.block, snapshot.day()) {
        let sheet = Sheet { snapshot, block, day, now: at };
        pieces = sheet.pieces();
        let unit = snapshot.profile.unit;
        resting = snapshot.log.as_ref().and_then(|log| rest::rest(log, block, day, unit, at));
        kept.went_by.look(&sheet.passed(), at);
    } else {
        kept.went_by = WentBy::default();
    }
    for piece in &mut pieces {
        piece.stands_at = stands_at(piece);
    }
    let rows = if snapshot.log.is_some() { rows(&pieces) } else { Vec::new() };
    kept.chosen.take_if(|chosen| !rows.contains(chosen));
    // Nothing comes next in a session that is over.
    let next = || match snapshot.state {
        SessionState::Finished => Row::Finish,
        _ => follow(&pieces, snapshot.log.as_ref()),
    };
    let row = (!rows.is_empty()).then(|| kept.chosen.clone().unwrap_or_else(next));
    let chosen = kept.chosen.is_some();
    let saved = kept.saved.as_ref().filter(|_| snapshot.log.is_some());
    let odd = saved.and_then(|saved| {
        let row = saved.row.as_ref()?;
        Some((row, doubt(row, &pieces)?))
    });
    let asked = odd.as_ref().map(|(row, _)| *row);
    let (pieces_are, rest) = (pieces.as_slice(), resting.as_ref());
    let of = At { snapshot, pieces: pieces_are, rest, row: row.as_ref(), chosen, asked };
    let here = of.here(&kept.went_by);
    let came_to = match row {
        Some(Row::Finish) => came_to(snapshot, &pieces),
        _ => Vec::new(),
    };
    SessionScreen {
        revision: snapshot.last_number,
        name: snapshot.profile.name.clone(),
        unit: snapshot.profile.unit,
        date: snapshot.planned.as_ref().map_or_else(|| at.date(), |planned| planned.date),
        state: snapshot.state,
        afterwards: snapshot.is_afterwards(),
        heading: heading(snapshot, at.date()),
        block: snapshot.block.as_ref().map(|block| block.name.clone()),
        day: snapshot.day().map(|day| day.name.clone()),
        days: snapshot
            .block
            .as_ref()
            .map_or(Vec::new(), |block| block.days.iter().map(|day| day.name.clone()).collect()),
        doubt: odd.map(|(_, doubt)| doubt),
        here,
        rows,
        cues: cues(&pieces, resting.as_ref().and_then(|rest| rest.cue.clone())),
        pieces,
        came_to,
        notices: notices(snapshot, device),
        notes: super::notes::on_the_whole(snapshot),
        flags: super::flags::open(snapshot),
        saved: None,
        saved_text: saved.map(|saved| saved.text.clone()),
        saved_line: saved.map(Saved::line),
        undone: None,
        ignored: false,
        unpublished: snapshot.unpublished,
        unpublished_text: (snapshot.unpublished > 0).then(|| words::waiting(snapshot.unpublished)),
        rest: resting,
    }
}

/// What is odd about what was logged in a row.
fn doubt(row: &Row, pieces: &[PieceView]) -> Option<String> {
    match (row, &piece_of(pieces, row)?.kind) {
        (Row::Set { set, .. }, PieceKindView::Strength { view }) => {
            view.sets.iter().find(|shown| shown.set == *set)?.done.as_ref()?.doubt.clone()
        }
        (Row::Window { window, .. }, PieceKindView::Interval { view }) => {
            view.windows.iter().find(|shown| shown.window == *window)?.doubt.clone()
        }
        (Row::Hold { .. }, PieceKindView::Hold { view }) => view.doubt.clone(),
        _ => None,
    }
}

/// The cues ahead, of whichever clock runs, soonest first.
fn cues(pieces: &[PieceView], rest: Option<CueView>) -> Vec<CueView> {
    let of_piece = |piece: &PieceView| match &piece.kind {
        PieceKindView::Interval { view } => view.clock.as_ref().map(|clock| clock.cues.clone()),
        PieceKindView::Hold { view } => view.clock.as_ref().map(|clock| clock.cues.clone()),
        PieceKindView::Strength { .. } | PieceKindView::Note { .. } => None,
    };
    let clocks = pieces.iter().filter_map(of_piece).flatten();
    let mut cues: Vec<CueView> = clocks.chain(rest).collect();
    cues.sort_by_key(|cue| cue.due_in);
    cues
}

fn heading(snapshot: &Snapshot, today: NaiveDate) -> String {
    match &snapshot.block {
        Some(block) => of_block(snapshot, block, today),
        None => say::no_plan().into(),
    }
}

fn of_block(snapshot: &Snapshot, block: &Block, today: NaiveDate) -> String {
    match (&snapshot.planned, snapshot.state) {
        (Some(planned), SessionState::DayOff) => {
            say::day_off(&planned.day, words::day(planned.date))
        }
        (Some(planned), _) => {
            let (day, date) = (&planned.day, words::day(planned.date));
            if planned.date > block.ends() {
                say::day_after_block(day, date, &block.name, words::day(block.ends()))
            } else {
                say::planned_day(day, date, planned.week, block.weeks)
            }
        }
        (None, _) => {
            let (name, end) = (&block.name, words::day(block.ends()));
            if today > block.ends() {
                say::block_ended(name, end)
            } else {
                say::block_without_days(name, end)
            }
        }
    }
}

/// What should be read first, the most pressing first.
fn notices(snapshot: &Snapshot, device: &Device) -> Vec<Notice> {
    let mut notices = Vec::new();
    for flag in snapshot.flags.open.iter().filter(|flag| !flag.body.signs.is_empty()) {
        let body = &flag.body;
        let advice = advice_for(body.place, body.severity, &body.signs, Felt::Unnamed);
        let care = |text| Notice { kind: NoticeKind::Care, text };
        notices.extend(advice.lines.into_iter().map(care));
    }
    let warning = |text| Notice { kind: NoticeKind::Warning, text };
    notices.extend(device.rebuilt.as_ref().map(|rebuilt| warning(rebuilt.text())));
    let trouble = device.shelf_trouble.as_ref();
    notices.extend(trouble.map(|trouble| warning(say::not_ready_for_exchange(trouble))));
    notices.extend(device.unread_plans.iter().map(|block| warning(say::plan_unread(block))));
    if snapshot.conflicts > 0 {
        notices.push(warning(say::devices_disagree(snapshot.conflicts)));
    }
    let info = |text| Notice { kind: NoticeKind::Info, text };
    let written = snapshot.is_afterwards() && snapshot.state == SessionState::Running;
    notices.extend(written.then(|| info(say::written_afterwards().into())));
    if let Some((day, date)) = &snapshot.left_open {
        notices.push(info(say::left_open(day, words::day(*date), date)));
    }
    if let (Some(block), Some(day)) = (&snapshot.block, snapshot.day()) {
        notices.extend(long_holds_before_strength(day).into_iter().map(|long| {
            let stretch = block.name_of(&Exercise::of(&long.stretch));
            info(words::long_hold(&stretch, long.held_ms, &long.before))
        }));
    }
    if let Some(planned) = &snapshot.planned
        && snapshot.state != SessionState::DayOff
    {
        let others = snapshot.block.iter().flat_map(|block| block.on(planned.date));
        let others: Vec<String> =
            others.map(|other| other.day).filter(|day| *day != planned.day).collect();
        notices.extend((!others.is_empty()).then(|| info(words::other_days(&others))));
    }
    notices
}
