//! A coach's answer to a proposal, as it is typed.

use holdfast_core::coach::{Answer as CoreAnswer, Proposal, ProposalNamed};
use holdfast_core::load::Decision;
use holdfast_core::{Field, Holdfast, HoldfastError, Mass};
use owo_colors::OwoColorize;

use crate::args::{Answer, DecisionArg};
use crate::fault::{Fault, Outcome};
use crate::now::{now, today};
use crate::{print, say};

/// Answers, and says what is proposed then.
pub(crate) fn run(holdfast: &Holdfast, given: Answer) -> Outcome {
    let page = holdfast.member(given.name.clone(), today())?;
    let (movement, piece) = (given.movement, given.piece);
    let named = ProposalNamed { member: given.name, movement, piece };
    let Proposal { exercise, track, .. } = match holdfast.find_proposal(named, today()) {
        Err(HoldfastError::Invalid { field: Field::Piece, reason }) => {
            return Err(Fault::Typed(say::fault::which_proposal(reason)));
        }
        found => found?,
    };
    let read = |text: &String| Mass::parse_signed(text, Some(page.unit));
    let loads: Result<Vec<Mass>, _> = given.load.iter().map(read).collect();
    let loads = loads.map_err(|error| Fault::Typed(say::fault::wrong_load(error)))?;
    let decision = match given.decision {
        DecisionArg::Accept => Decision::Accept,
        DecisionArg::Change => Decision::Change,
        DecisionArg::Refuse => Decision::Refuse,
    };
    let words = given.words;
    let ruling = CoreAnswer {
        person: page.person,
        exercise: exercise.clone(),
        track: track.clone(),
        decision,
        loads,
        words,
        anyway: given.anyway,
    };
    holdfast.answer(ruling, now())?;
    let after = holdfast.member(page.person.to_string(), today())?;
    let proposal = after
        .proposals
        .iter()
        .find(|proposal| proposal.exercise == exercise && proposal.track == track);
    let name = page.name.bold();
    let answered = match proposal {
        Some(found) => {
            say::command::answered(name, &found.called, &found.last_text, &found.next_text)
        }
        None => say::command::answer_saved(name),
    };
    let held = proposal.and_then(|found| found.held.as_ref());
    let held = held.map_or(String::new(), |held| format!("{}\n", held.yellow()));
    print::out(&format!("{answered}\n{held}{}\n", print::where_it_goes(holdfast)?))
}
