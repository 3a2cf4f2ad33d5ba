//! What tells proposals apart: a member may have several of one movement.

use super::proposal::Proposal;
use crate::error::{Error, Field, Result, Thing};
use crate::plan::is_called;
use crate::say;
use crate::words;

/// Nobody's proposal: those there are.
pub(super) fn no_such(open: &[Proposal], name: &str, typed: &str) -> Error {
    let known: Vec<String> = open.iter().map(|open| open.called.clone()).collect();
    let reason = match known.as_slice() {
        [] => say::coach::no_proposals(name),
        known => say::coach::proposals_for(name, words::list(known)),
    };
    Error::not_found(Thing::Proposal, typed, reason)
}

/// The only one that is called so; which are meant where there are several.
pub(super) fn which<'a>(
    open: &'a [Proposal],
    name: &str,
    typed: &str,
    piece: Option<&str>,
) -> Result<&'a Proposal> {
    let is_meant = |of: &&Proposal| {
        is_lifted_as(of, typed) || is_apart(of, typed) || is_called(&of.called, typed)
    };
    let meant: Vec<&Proposal> = open.iter().filter(is_meant).collect();
    let piece_is = |of: &&&Proposal| piece.is_none_or(|piece| is_apart(of, piece));
    let found: Vec<&Proposal> = meant.iter().filter(piece_is).copied().collect();
    if let [only] = found.as_slice() {
        return Ok(only);
    }
    let first = match meant.as_slice() {
        [] => return Err(no_such(open, name, typed)),
        [_] => return Err(no_such(open, name, piece.unwrap_or(typed))),
        [first, ..] => first,
    };
    let among = if found.is_empty() { &meant } else { &found };
    let apart = |of: &&Proposal| say::tap::quoted(apart(of, open).as_deref().unwrap_or(&of.piece));
    let pieces: Vec<String> = among.iter().map(apart).collect();
    let of_one = meant.iter().all(|of| is_called(&of.movement, &first.movement));
    let movement = if of_one { &first.movement } else { typed };
    let reason = say::coach::which_proposal(name, movement, words::list(&pieces));
    Err(Error::invalid(Field::Piece, reason))
}

/// Calls each by its movement, and by its piece too where another has the same movement.
pub(super) fn call(mut all: Vec<Proposal>) -> Vec<Proposal> {
    let called: Vec<String> = all
        .iter()
        .map(|of| match apart(of, &all) {
            Some(apart) => say::coach::movement_of_piece(&of.movement, apart),
            None => of.movement.clone(),
        })
        .collect();
    for (of, called) in all.iter_mut().zip(called) {
        of.called = called;
    }
    all
}

/// What tells one apart from the others of its movement: its piece, its track where two pieces are called the
/// same, or both. None where there is no other.
fn apart(of: &Proposal, all: &[Proposal]) -> Option<String> {
    let alike = |other: &&Proposal| is_called(&other.movement, &of.movement);
    if all.iter().filter(alike).count() < 2 {
        return None;
    }
    let says = |name: &&String| {
        all.iter().filter(alike).filter(|other| is_apart(other, name)).count() == 1
    };
    let (piece, track, both) = (of.piece.clone(), of.track.clone(), both(of));
    Some([&piece, &track].into_iter().find(says).unwrap_or(&both).clone())
}

fn both(of: &Proposal) -> String {
    say::coach::piece_and_track(&of.piece, &of.track)
}

fn is_lifted_as(of: &Proposal, typed: &str) -> bool {
    is_called(&of.exercise.to_string(), typed) || is_called(&of.movement, typed)
}

fn is_apart(of: &Proposal, typed: &str) -> bool {
    is_called(&of.piece, typed) || is_called(&of.track, typed) || is_called(&both(of), typed)
}

#[cfg(test)]
mod tests {
    use chrono::NaiveDate;
    use proptest::prelude::*;

    use super::*;
    use crate::id::{RecordId, random};
    use crate::plan::Exercise;

    fn proposal(movement: &str, piece: &str, track: &str) -> Proposal {
        Proposal {
            exercise: Exercise::of(movement),
            movement: movement.into(),
            called: String::new(),
            bar: None,
            piece: piece.into(),
            scheme: "5-5".into(),
            track: track.into(),
            after: RecordId(random([1; 16])),
            on: NaiveDate::from_ymd_opt(2026, 11, 10).unwrap(),
            sets: Vec::new(),
            last_text: String::new(),
            next_text: String::new(),
            why: String::new(),
            others: None,
            held: None,
            ruled: None,
            ruled_text: None,
        }
    }

    fn said(found: Result<&Proposal>) -> String {
        found.map_or_else(|error| error.to_string(), |found| found.piece.clone())
    }

    #[test]
    fn two_of_one_movement_are_a_question() {
        let all = call(vec![
            proposal("Squat", "Squat light", "Squat light"),
            proposal("Press", "Press", "Press"),
            proposal("Squat", "Squat", "Squat"),
        ]);
        let called: Vec<&str> = all.iter().map(|of| of.called.as_str()).collect();
        assert_eq!(called, ["Squat (Squat light)", "Press", "Squat (Squat)"]);
        let which = |typed, piece| said(which(&all, "Ana", typed, piece));
        let asked = "Ana has more than one proposal for Squat: \"Squat light\" and \"Squat\". Name the piece.";
        assert_eq!(which("squat", None), asked);
        assert_eq!(which("Squat", Some("Press")), asked);
        for (typed, piece) in
            [("squat LIGHT", None), ("Squat", Some("squat light")), ("squat (squat light)", None)]
        {
            assert_eq!(which(typed, piece), "Squat light");
        }
        assert_eq!(which("Squat", Some("SQUAT")), "Squat");
        assert_eq!(which("press", None), "Press");
        let none = which("Press", Some("Squat"));
        assert!(none.starts_with("There is no proposal \"Squat\""), "{none}");
        let none = which("Bench", None);
        assert!(none.ends_with("for Squat (Squat light), Press and Squat (Squat)."), "{none}");
    }

    proptest! {
        /// Whatever pieces and tracks are called: no two look alike, what tells one apart finds it, and nothing
        /// that is typed is taken for one of several.
        #[test]
        fn no_two_are_taken_for_each_other(
            drawn in proptest::collection::vec(("[ab]", "[abc]", "[abc]"), 0..7),
            typed in "[abcABC]",
        ) {
            let mut all: Vec<Proposal> = Vec::new();
            for (movement, piece, track) in drawn {
                let new = proposal(&movement, &piece, &track);
                if !all.iter().any(|of| of.exercise == new.exercise && of.track == new.track) {
                    all.push(new);
                }
            }
            let all = call(all);
            for (at, of) in all.iter().enumerate() {
                let alike = all.iter().filter(|other| other.called == of.called);
                prop_assert_eq!(alike.count(), 1);
                let apart = apart(of, &all);
                let found = which(&all, "Ana", &of.movement, apart.as_deref());
                // A piece may be called as another movement is.
                let other = |other: &Proposal| {
                    other.movement != of.movement && is_apart(other, &of.movement)
                        && apart.as_ref().is_none_or(|apart| is_apart(other, apart))
                };
                if !all.iter().any(other) {
                    prop_assert_eq!(found.ok().map(|found| &found.called), Some(&all[at].called));
                }
            }
            let so = |of: &&Proposal| is_lifted_as(of, &typed) || is_apart(of, &typed);
            prop_assert_eq!(which(&all, "Ana", &typed, None).is_ok(), all.iter().filter(so).count() == 1);
        }
    }
}
