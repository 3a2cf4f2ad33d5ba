//! The demo's coach takes each member in, as two people in one room do.

use holdfast_core::{Holdfast, Instant, PairDid};
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;

use crate::fault::{Fault, Outcome};
use crate::say;

/// Pairs a member's device with the coach's. What it draws is drawn apart, and changes nobody's story.
pub(super) fn pair(
    coach: &Holdfast,
    member: &Holdfast,
    (seed, number): (u64, u64),
    at: &Instant,
) -> Outcome {
    let mut drawn = ChaCha8Rng::seed_from_u64(seed);
    drawn.set_stream(number);
    let mut chance = || {
        let mut chance = vec![0; 32];
        drawn.fill_bytes(&mut chance);
        chance
    };
    let invited = coach.pair(PairDid::Invite { chance: chance() }, at.clone())?;
    let scan =
        |text: Option<String>, chance| PairDid::Scan { text: text.unwrap_or_default(), chance };
    let answered = member.pair(scan(invited.code, chance()), at.clone())?;
    let opened = coach.pair(scan(answered.code, Vec::new()), at.clone())?;
    let compared = member.pair(scan(opened.code, chance()), at.clone())?;
    let read = compared.words.join(" ");
    let line = (1..).zip(&opened.lines).find(|(_, line)| **line == read).map(|(line, _)| line);
    if line.is_none() {
        return Err(Fault::Typed(say::demo::words_differ().into()));
    }
    coach.pair(PairDid::Pick { line, label: None }, at.clone())?;
    member.pair(PairDid::Match { matches: true, share_earlier: true }, at.clone())?;
    Ok(())
}
