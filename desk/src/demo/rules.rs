//! What the demo's coach decides on a Sunday.

use holdfast_core::coach::{AttentionKind, BoardRow, BoardScreen, Proposal};
use holdfast_core::plan::Exercise;
use holdfast_core::{Mass, PersonId};

/// What the coach tells the member.
pub(crate) const WORDS: &str = "Half the step this time: keep the last reps as deep as the first.";

/// The coach halves the step of whoever goes up fastest in the squat and has nothing else to look at.
pub(crate) fn answers(board: &BoardScreen) -> Vec<(PersonId, Proposal, Vec<Mass>)> {
    let step = |proposal: &Proposal| {
        let set = proposal.sets.last()?;
        Some(set.next? - set.last?)
    };
    let well = |row: &&BoardRow| {
        row.attention.first().is_some_and(|first| first.kind == AttentionKind::Progress)
    };
    let rows = board.rows.iter().filter(well);
    let rows = rows.flat_map(|row| row.proposals.iter().map(|proposal| (row.person, proposal)));
    let rows = rows.filter(|(_, proposal)| proposal.exercise == Exercise::of("back-squat"));
    let fastest = rows.max_by_key(|(_, proposal)| step(proposal).unwrap_or(Mass::ZERO));
    let answer = fastest.and_then(|(person, proposal)| {
        let (last, step) = (proposal.sets.last()?.last?, step(proposal)?);
        let half = step.percent(50);
        (half > Mass::ZERO).then(|| (person, proposal.clone(), vec![last + half]))
    });
    answer.into_iter().collect()
}
