//! The laws, and what they share. Heavier compares set by set; a load that was withdrawn, or is the athlete's choice,
//! is lightest.

use chrono::NaiveDate;
use holdfast_core::Mass;
use holdfast_core::load::{NextLoad, NextLoads, Reason, Time};
use holdfast_core::plan::LoadRule;
use rand::RngExt;
use rand_chacha::ChaCha8Rng;

use super::drawn::Case;
use super::{able, answered, changed, down, hurts, shares, up};

/// A case and what is proposed for it.
pub struct Seen<'a> {
    /// The case.
    pub case: &'a Case,
    /// The proposal.
    pub next: Vec<NextLoad>,
    /// The training max behind it.
    pub max: Option<Mass>,
}

impl Seen<'_> {
    /// Works out the proposal of a case.
    pub fn of(case: &Case) -> Seen<'_> {
        let NextLoads { sets: next, max } = case.loads();
        Seen { case, next, max }
    }
}

/// A law: true where the case is one it speaks of.
pub type Law = fn(&Seen<'_>, &mut ChaCha8Rng) -> Result<bool, String>;

/// All of them.
pub const LAWS: &[(&str, Law)] = &[
    ("a flag never makes a load heavier", changed::flags),
    ("a miss never makes a load heavier", changed::misses),
    ("a later day never makes a load heavier", changed::later),
    ("more reps never make a load lighter", changed::more_reps),
    ("a set in doubt is as one not logged", changed::doubts),
    ("easy weeks and other days change nothing", changed::outside),
    ("with a flag open no load is above the carried one, severe not to the end", hurts::open_flags),
    ("severe pain and signs take the load away", hurts::withdrawn),
    ("the first time after pain is lighter, after mild pain no heavier", hurts::cleared),
    ("what severe pain took comes back with each session made", hurts::climb_back),
    ("an answer of the coach is never exceeded", answered::exceeded),
    ("an answer that something holds is said", answered::held),
    ("an answer stands until the track is trained", answered::stands),
    ("an answer of four weeks ago raises nothing", answered::old),
    ("training uses an answer up", answered::used_up),
    ("every load can be built, inside a tenth or one build", up::built),
    ("what goes up goes no further than its rule", up::no_further),
    ("beating the target by the margin earns the larger step", up::earned),
    ("more lifted than proposed goes up from the proposal", up::from_the_proposal),
    ("made as proposed no set gets lighter", up::made),
    ("made as proposed, another bar takes nothing away", up::another_bar),
    ("made as proposed twice running something goes up", up::progress),
    ("no set goes above a load just missed", down::just_missed),
    ("what was not made goes no higher than was proposed", down::not_made),
    ("missed twice it is lighter", down::missed_twice),
    ("after two weeks nothing goes up", down::two_weeks),
    ("after three weeks it is lighter or for fewer reps", down::after_weeks),
    ("fewer reps than were just made at a load are not asked for below it", able::fewer_reps),
    ("made as asked no set gets lighter by the first share", able::first_share),
    ("a training max goes up by its step, a tenth at most", shares::step),
    ("a tested max goes up by a tenth at most", shares::tested),
    ("a training max is held by a miss and lowered by the second", shares::missed),
    ("weeks away lower a training max", shares::away),
    ("a share of a training max is rounded down", shares::rounded),
];

/// What was seen, where a law is broken.
pub(super) fn says(broken: bool, seen: impl FnOnce() -> String) -> Result<bool, String> {
    if broken { Err(seen()) } else { Ok(true) }
}

/// The loads of a proposal and why.
pub(super) fn text(next: &[NextLoad]) -> String {
    let one = |next: &NextLoad| {
        let load = next.load.map_or("-".into(), |load| load.to_string());
        format!("{load} x {} ({:?})", next.reps, next.reason)
    };
    next.iter().map(one).collect::<Vec<_>>().join("; ")
}

pub(super) fn pair(before: &[NextLoad], after: &[NextLoad]) -> String {
    format!("{}\n-> {}", text(before), text(after))
}

pub(super) fn heavier(after: &[NextLoad], before: &[NextLoad]) -> bool {
    after.iter().zip(before).any(|(after, before)| after.load > before.load)
}

pub(super) fn one<T: Copy>(of: &[T], chance: &mut ChaCha8Rng) -> Option<T> {
    (!of.is_empty()).then(|| of[chance.random_range(0..of.len())])
}

/// True where the plan gives the loads, or a percentage of what carries over: those are counted from another
/// load than last time's.
pub(super) fn is_fixed(case: &Case) -> bool {
    !matches!(case.rule, LoadRule::Step(_))
}

/// True where loads are shares of a training max.
pub(super) fn is_share(case: &Case) -> bool {
    matches!(case.rule, LoadRule::Percent { .. } | LoadRule::Reserve { .. })
}

/// True where neither a coach nor a flag says anything.
pub(super) fn is_plain(case: &Case) -> bool {
    case.history.ruling.is_none() && case.history.flags.is_empty()
}

/// True where a load is above another, and the room has one that is not.
pub(super) fn is_above(case: &Case, load: Option<Mass>, most: Mass) -> bool {
    load > Some(most) && case.builds.at_or_below(most).is_some()
}

/// True for a load that a coach gave.
pub(super) fn is_answer(next: &NextLoad) -> bool {
    matches!(next.reason, Reason::Coach { .. })
}

/// True for a set with fewer reps than asked and fewer than the plan's.
pub(super) fn is_missed(time: &Time, set: u32) -> bool {
    let least = time.asked(set).min(time.scheme.target(set).unwrap_or(0));
    time.set(set).is_some_and(|done| done.reps < least)
}

/// True for a session with such a set.
pub(super) fn any_missed(time: &Time) -> bool {
    (1..=time.scheme.sets()).any(|set| is_missed(time, set))
}

/// Days since the exercise was last trained, on whatever track; none where that was not on the last day of this one.
pub(super) fn days_away(case: &Case, last: NaiveDate) -> Option<i64> {
    let between = case.history.days.iter().any(|day| *day > last);
    (!between).then(|| (case.date() - last).num_days())
}

/// Tenths of a percent that so many days take off: 10 % after three weeks, 2.5 for each further one, 30 at most.
pub(super) fn tenths_off(days: i64) -> Option<i64> {
    (days >= 21).then(|| (100 + 25 * ((days - 21) / 7)).min(300))
}

/// A load less so many tenths of a percent.
pub(super) fn less(load: Mass, tenths: i64) -> Mass {
    let left = i128::from(load.ten_ng) * i128::from(1000 - tenths);
    Mass { ten_ng: left.div_euclid(1000) as i64 }
}

/// Trains as proposed on the day, and goes on a week with the same bar.
pub(super) fn as_proposed(case: &Case) -> Option<Case> {
    let mut case = case.clone();
    let possible = case.next().iter().all(|next| next.load.is_some());
    case.train(false, |next| Some((next.load?, next.reps, true)));
    possible.then(|| case.later(7))
}

/// True while a flag is open.
pub(super) fn is_flagged(case: &Case) -> bool {
    case.history.flags.iter().any(|flag| flag.cleared.is_none())
}
