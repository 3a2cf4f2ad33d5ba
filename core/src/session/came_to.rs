//! What each piece of a session came to, and what is trained next: read at a session's end, and once it is over.

use super::screen::{
    HoldView, IntervalView, PieceKindView, PieceState, PieceView, SessionState, StrengthView,
    SumView,
};
use super::snapshot::Snapshot;
use crate::plan::Planned;
use crate::say::screen as say;
use crate::words;

/// A line a piece, in order; then what is next, where the plan goes on. While the session runs what is not done stands in
/// [`super::Here::notes`], to be read first.
pub(super) fn came_to(snapshot: &Snapshot, pieces: &[PieceView]) -> Vec<SumView> {
    let over = snapshot.state == SessionState::Finished;
    let told = pieces.iter().filter_map(|piece| {
        let (done, more) = of_piece(piece)?;
        // Of what was put off it is said that it was.
        let off = matches!(piece.state, PieceState::Left | PieceState::Later);
        let put_off = || piece.progress.clone().filter(|_| off);
        let open = || over.then(|| put_off().unwrap_or_else(|| say::sum_nothing().to_owned()));
        let (done, all) = (done.or_else(open)?, piece.state == PieceState::Done);
        let (title, row) = (piece.name.clone(), piece.stands_at.clone());
        Some(SumView { title, done, more, all, row })
    });
    told.chain(next(snapshot)).collect()
}

fn of_piece(piece: &PieceView) -> Option<Came> {
    Some(match &piece.kind {
        PieceKindView::Strength { view } => sets(view),
        PieceKindView::Interval { view } => windows(view),
        PieceKindView::Hold { view } => held(view),
        PieceKindView::Note { .. } => return None,
    })
}

/// How far somebody came in what has a number; none where nothing was done.
type Came = (Option<String>, Vec<String>);

fn sets(view: &StrengthView) -> Came {
    let planned = view.sets.iter().filter(|set| !set.extra);
    let (all, done) =
        planned.fold((0, 0), |(all, done), set| (all + 1, done + u32::from(set.done.is_some())));
    let extra = view.sets.iter().filter(|set| set.extra && set.done.is_some()).count() as u32;
    let open = view.sets.iter().filter(|set| set.open && !set.extra);
    let open = open.filter_map(|set| Some(say::sum_open_set(&set.done.as_ref()?.text, set.asked)));
    let mut more: Vec<String> = open.collect();
    // All sets of what nobody planned are extra.
    if all == 0 {
        return ((extra > 0).then(|| say::sets_done(extra)), more);
    }
    more.extend((extra > 0).then(|| say::sum_extra_sets(extra)));
    ((done + extra > 0).then(|| say::sum_sets(all, done)), more)
}

fn windows(view: &IntervalView) -> Came {
    let done = view.windows.iter().filter(|window| window.reps.is_some()).count() as u32;
    let spared = view.windows.iter().filter(|window| window.spare.is_some()).count() as u32;
    let enough = view.windows.iter().filter(|window| window.spare.is_some() && !window.rushed);
    let margin = words::clock_time(view.margin.0);
    let more = (spared > 0).then(|| say::sum_to_spare(enough.count() as u32, margin));
    let all = view.windows.len() as u32;
    ((done > 0).then(|| say::sum_windows(all, done)), more.into_iter().collect())
}

fn held(view: &HoldView) -> Came {
    let held: Vec<(Option<&str>, &str)> = view
        .sides
        .iter()
        .filter_map(|side| Some((side.name.as_deref(), side.held_text.as_deref()?)))
        .collect();
    let judged = view.range.as_ref().map_or_else(Vec::new, |range| range.judged.clone());
    let done = match held.as_slice() {
        [] => None,
        [(_, left), (_, right)] if left == right => Some(say::sum_each_side(left)),
        sides => {
            let sides = sides.iter().map(|(side, held)| match side {
                Some(side) => say::sum_of_side(side, held),
                None => (*held).to_owned(),
            });
            Some(words::list(&sides.collect::<Vec<String>>()))
        }
    };
    (done, judged)
}

/// The day that is planned after this one.
fn next(snapshot: &Snapshot) -> Option<SumView> {
    let (block, today) = (snapshot.block.as_ref()?, snapshot.planned.as_ref()?);
    let Planned { date, day, .. } = block.next_from(today.date.succ_opt()?)?;
    let done = say::sum_next_day(&day, words::day(date));
    let title = say::sum_next().to_owned();
    Some(SumView { title, done, more: Vec::new(), all: false, row: None })
}
