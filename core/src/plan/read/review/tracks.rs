//! Which pieces share a history, where that may not be meant.

use super::{Placed, Review};
use crate::plan::Strength;
use crate::plan::read::words::clip;
use crate::say::plan_note as say;

pub(super) fn review(review: &Review<'_>) {
    let all: Vec<Placed<'_, Strength>> = review.strengths().collect();
    for (index, placed) in all.iter().enumerate() {
        let before = all.get(..index).unwrap_or_default();
        let same = |other: &&Placed<'_, Strength>| other.kind.movement == placed.kind.movement;
        if let Some(track) = &placed.kind.track {
            // A piece without a track has one under its own name.
            let named = |other: &&Placed<'_, Strength>| other.kind.track.as_ref() == Some(track);
            let first = before.iter().find(|other| named(other) && !same(other));
            if let (Some(first), None) = (first, before.iter().filter(same).find(named)) {
                let line = review.line(&first.at.key("track"));
                let at = placed.at.key("track");
                review.note(&at, say::track_of_two(clip(track), line), say::name_other_track());
            }
            continue;
        }
        let mut untracked = before.iter().filter(same).filter(|other| other.kind.track.is_none());
        let scheme = &placed.kind.scheme;
        let found = untracked.find_map(|other| {
            let named_alike = other.piece.name == placed.piece.name;
            (named_alike != (other.kind.scheme == *scheme)).then_some((other, named_alike))
        });
        if let Some((other, named_alike)) = found {
            let line = review.line(&other.at.key("name"));
            let what = match named_alike {
                true => say::one_history(clip(&placed.piece.name), line),
                false => {
                    say::two_histories(clip(&placed.piece.name), clip(&other.piece.name), line)
                }
            };
            let help = if named_alike { say::track_apart() } else { say::track_together() };
            review.note(&placed.at.key("name"), what, help);
        }
    }
}
