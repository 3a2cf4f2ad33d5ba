//! Reads a season: case by case, whether an expectation holds.

use chrono::{Days, NaiveDate};
use holdfast_core::load::{NextLoad, Reason};
use holdfast_core::plan::LoadRule;
use holdfast_core::{Mass, MassUnit};

use super::expected::{
    AWAY_DAYS, CAP_PERCENT, CLEARED_DAYS, NEAR_PERCENT, PAIN_DAYS, SEVERE, STUCK_SESSIONS, Season,
};
use super::seen::{Diary, Lifted, Session};

/// What was read.
#[derive(Clone, Debug, Default)]
pub struct Reading {
    /// Cases it speaks of.
    pub cases: u64,
    /// Those in which it holds; of the sets missed, those that were.
    pub held: u64,
    /// The mean of what is measured, where it is a mean.
    pub mean: f64,
    /// The first cases that break it, in words.
    pub broken: Vec<String>,
}

/// So many broken cases are told.
const TOLD: usize = 5;

impl Reading {
    fn case(&mut self, holds: bool, say: impl FnOnce() -> String) {
        self.cases += 1;
        self.held += u64::from(holds);
        if !holds && self.broken.len() < TOLD {
            self.broken.push(say());
        }
    }

    /// Cases that hold, in percent.
    pub fn percent(&self) -> f64 {
        100.0 * self.held as f64 / self.cases as f64
    }
}

/// What a set is told by.
fn set_text(next: &NextLoad) -> String {
    let load = next.load.map_or("-".to_owned(), |load| load.to_string());
    format!("{load} x {} ({:?})", next.reps, next.reason)
}

fn text(next: &[NextLoad]) -> String {
    next.iter().map(set_text).collect::<Vec<_>>().join("; ")
}

fn same(one: &[NextLoad], other: &[NextLoad]) -> bool {
    let key = |next: &NextLoad| (next.set, next.load, next.reps, next.open);
    one.iter().map(key).eq(other.iter().map(key))
}

/// What was done last in a set before a session, outside easy weeks.
fn done_before(diary: &Diary, before: usize, set: u32) -> Option<&Lifted> {
    let working = diary.sessions[..before].iter().filter(|session| !session.easy);
    working.rev().find_map(|session| session.set(set))
}

/// What was proposed for that.
fn proposed_before(diary: &Diary, before: usize, set: u32) -> Option<Mass> {
    let working = diary.sessions[..before].iter().filter(|session| !session.easy);
    let last = working.rev().find(|session| session.set(set).is_some())?;
    last.first().iter().find(|next| next.set == set)?.load
}

/// With an open flag no set is above its carried load, nor above what was lifted last in it; from 4 there is no
/// load at all.
pub(super) fn pain(season: &Season) -> Reading {
    let mut reading = Reading::default();
    for diary in &season.ours {
        for (at, session) in diary.sessions.iter().enumerate() {
            for moment in session.moments.iter().filter(|moment| !moment.flags.is_empty()) {
                let severe = moment.flags.iter().any(|severity| *severity >= SEVERE);
                let fine = |next: &NextLoad| {
                    // Of a set typed wrong nobody knows what was lifted.
                    let before = done_before(diary, at, next.set).filter(|done| !done.slipped);
                    let before = before.map(|done| done.load);
                    let up = next.load > next.carried && next.carried.is_some();
                    !(up || before.is_some() && next.load > before || severe && next.load.is_some())
                };
                reading.case(moment.next.iter().all(fine), || {
                    format!("{} {}: {}", diary.name, session.on, text(&moment.next))
                });
            }
        }
    }
    reading
}

/// A lay-off and the way back: the last day before, the first after, and the heaviest load made before.
pub(super) struct LayOff {
    /// Whole weeks between the two days.
    pub(super) weeks: i64,
    /// Days from the first day back to the first load near the former best; none where that was not in the
    /// season.
    pub(super) days: Option<i64>,
    /// True where the time that is given to be back was there, without pain or another lay-off in it.
    pub(super) counts: bool,
    told: String,
}

/// The lay-offs of a lifter.
pub(super) fn lay_offs(diary: &Diary) -> Vec<LayOff> {
    let end = diary.sessions.last().map(|session| session.on);
    let of = |(from, to): &(NaiveDate, NaiveDate)| {
        let before: Vec<&Session> = diary.working().filter(|session| session.on < *from).collect();
        let mut after = diary.working().filter(|session| session.on >= *to);
        let (last, back) = (before.last()?.on, after.next()?.on);
        let gap = (back - last).num_days();
        let made = before.iter().filter(|session| (last - session.on).num_days() <= 182);
        let made = made.flat_map(|session| &session.sets).filter(|done| done.made());
        let best = made.map(|done| done.load).max().filter(|_| gap >= AWAY_DAYS)?;
        let near = if diary.builds.is_picks() {
            diary.builds.below(best).map_or(best, |build| build.mass)
        } else {
            best.percent(NEAR_PERCENT)
        };
        let there =
            |session: &&Session| session.sets.iter().any(|done| done.made() && done.load >= near);
        let found = diary.working().filter(|session| session.on >= back).find(there);
        let (weeks, days) = (gap / 7, found.map(|session| (session.on - back).num_days()));
        let until = back + Days::new(7 * (weeks as u64 + 1));
        let within = |day: NaiveDate| day >= back && day <= until;
        let in_time = days.is_some_and(|days| back + Days::new(days as u64) <= until);
        let disturbed = diary.pains.iter().any(|pain| within(pain.on))
            || diary.absences.iter().any(|(away, _)| within(*away));
        let counts = in_time || (!disturbed && end.is_some_and(|end| end >= until));
        let told = format!("{} back on {back} after {weeks} weeks, best {best}", diary.name);
        Some(LayOff { weeks, days, counts, told })
    };
    diary.absences.iter().filter_map(of).collect()
}

/// After a lay-off of three weeks or more, a load of at least 95 % of the former best is made within the weeks
/// missed plus one. Of picks: one pick below it.
pub(super) fn back(season: &Season) -> Reading {
    let mut reading = Reading::default();
    for lay_off in season.ours.iter().flat_map(lay_offs).filter(|lay_off| lay_off.counts) {
        let in_time = lay_off.days.is_some_and(|days| days <= 7 * (lay_off.weeks + 1));
        reading.case(in_time, || format!("{}: {:?} days", lay_off.told, lay_off.days));
    }
    reading
}

/// All sets made at the loads proposed, and the last one with a rep to spare, done or said.
fn beaten(session: &Session, sets: u32) -> bool {
    let made = (1..=sets).all(|set| {
        let proposed = session.first().iter().find(|next| next.set == set);
        let enough = |load| proposed.is_none_or(|next| Some(load) >= next.load);
        session
            .set(set)
            .is_some_and(|done| done.reps >= done.asked && enough(done.load) && !done.slipped)
    });
    let spare = session
        .set(sets)
        .is_some_and(|done| done.reps > done.asked || done.left.is_some_and(|left| left >= 1));
    made && spare
}

/// What a percentage is taken of.
fn training_max(next: &NextLoad) -> Option<Mass> {
    match next.reason {
        Reason::Percent { max, .. } => Some(max),
        _ => None,
    }
}

/// Whoever beats the targets three sessions running is given more load or more reps by then, unless at the top,
/// which the coach is told.
pub(super) fn stuck(season: &Season) -> Reading {
    let mut reading = Reading::default();
    for diary in &season.ours {
        if matches!(diary.rule, LoadRule::Fixed { .. } | LoadRule::Free) {
            continue;
        }
        let working: Vec<&Session> = diary.working().collect();
        for run in working.windows(STUCK_SESSIONS + 1) {
            let (last, beats) = (run[STUCK_SESSIONS], &run[..STUCK_SESSIONS]);
            let quiet = |session: &&Session| {
                let next = session.first();
                session.moments.iter().all(|moment| moment.flags.is_empty())
                    && !next.iter().any(|next| {
                        matches!(next.reason, Reason::Coach { .. } | Reason::AfterPain { .. })
                    })
            };
            let near = run.windows(2).all(|pair| (pair[1].on - pair[0].on).num_days() < 14);
            let beat = beats.iter().all(|session| beaten(session, diary.scheme.sets()));
            if !(near && beat && run.iter().all(quiet)) {
                continue;
            }
            let up = |after: &NextLoad| {
                let before = beats[0].first().iter().find(|before| before.set == after.set);
                before.is_some_and(|before| {
                    let more = after.load == before.load && after.reps > before.reps;
                    after.load > before.load || more || training_max(after) > training_max(before)
                })
            };
            let went = run[1..].iter().any(|session| session.first().iter().any(up));
            let top = last.first().iter().all(|next| matches!(next.reason, Reason::AtTop { .. }));
            reading.case(went || top, || {
                let (first, last) = (text(beats[0].first()), text(last.first()));
                format!("{} from {}: {first} -> {last}", diary.name, beats[0].on)
            });
        }
    }
    reading
}

/// No set is proposed above the load it was just missed at.
pub(super) fn sent_up(season: &Season) -> Reading {
    let mut reading = Reading::default();
    for diary in &season.ours {
        let working: Vec<&Session> = diary.working().collect();
        for pair in working.windows(2) {
            for missed in pair[0].sets.iter().filter(|done| done.missed() && !done.slipped) {
                let next = pair[1].first().iter().find(|next| next.set == missed.set);
                let Some(next) = next else { continue };
                reading.case(next.load <= Some(missed.load), || {
                    let Session { on, .. } = pair[1];
                    format!("{} {on}: missed {missed:?}, then {}", diary.name, set_text(next))
                });
            }
        }
    }
    reading
}

/// The sets missed of those done outside easy weeks.
pub(super) fn missed(season: &Season) -> Reading {
    missed_in(season.ours.iter())
}

/// The same of some lifters.
pub(super) fn missed_in<'a>(diaries: impl Iterator<Item = &'a Diary>) -> Reading {
    let mut reading = Reading::default();
    for done in diaries.flat_map(Diary::working).flat_map(|session| &session.sets) {
        reading.case(done.missed(), String::new);
    }
    reading.broken.clear();
    reading
}

/// Strength gained less what the same lifter gained with the plain rule, in hundredths, the mean of all.
pub(super) fn gained(season: &Season) -> Reading {
    let pairs = season.ours.iter().zip(&season.plain);
    let more: Vec<f64> =
        pairs.map(|(ours, plain)| 100.0 * (ours.gained() - plain.gained())).collect();
    let mut reading = Reading::default();
    for more in &more {
        reading.case(*more >= 0.0, String::new);
    }
    reading.mean = more.iter().sum::<f64>() / more.len() as f64;
    reading.broken.clear();
    reading
}

/// A severe flag that was cleared within two weeks, and days from it to the first session in which the old load
/// was made again.
pub(super) fn severe_pains(diary: &Diary) -> Vec<(NaiveDate, Mass, Option<i64>, bool)> {
    let end = diary.sessions.last().map(|session| session.on);
    let cases = diary.pains.iter().filter(|pain| {
        let days = pain.cleared.map(|cleared| (cleared - pain.on).num_days());
        pain.severity >= SEVERE && days.is_some_and(|days| days <= CLEARED_DAYS)
    });
    let of = |pain: &super::seen::Pain| {
        let flagged = diary.sessions.iter().find(|session| session.on == pain.on)?;
        let old = flagged.first().iter().filter_map(|next| next.carried).max()?;
        let there =
            |session: &&Session| session.sets.iter().any(|done| done.made() && done.load >= old);
        let found = diary.working().filter(|session| session.on > pain.on).find(there);
        let days = found.map(|session| (session.on - pain.on).num_days());
        let until = pain.on + Days::new(PAIN_DAYS as u64);
        let within = |day: NaiveDate| day > pain.on && day <= until;
        let disturbed = diary.pains.iter().any(|other| within(other.on))
            || diary.absences.iter().any(|(away, back)| *away <= until && *back > pain.on);
        let in_time = days.is_some_and(|days| days <= PAIN_DAYS);
        let counts = in_time || (!disturbed && end.is_some_and(|end| end >= until));
        Some((pain.on, old, days, counts))
    };
    cases.filter_map(of).collect()
}

/// After severe pain the old load is made again within four weeks of the flag.
pub(super) fn after_pain(season: &Season) -> Reading {
    let mut reading = Reading::default();
    for diary in &season.ours {
        for (on, old, days, counts) in severe_pains(diary) {
            if counts {
                reading.case(days.is_some_and(|days| days <= PAIN_DAYS), || {
                    format!("{} flagged {on} at {old}: {days:?} days", diary.name)
                });
            }
        }
    }
    reading
}

/// Every load that is proposed can be built in the room.
pub(super) fn built(season: &Season) -> Reading {
    let mut reading = Reading::default();
    for diary in &season.ours {
        for next in diary.sessions.iter().flat_map(|session| &session.moments) {
            let fine =
                |next: &NextLoad| next.load.is_none_or(|load| diary.builds.exactly(load).is_some());
            reading.case(next.next.iter().all(fine), || {
                format!("{}: {}", diary.name, text(&next.next))
            });
        }
    }
    reading
}

/// After an easy week the proposal is what it would be without it.
pub(super) fn easy(season: &Season) -> Reading {
    compared(season, |diary| &diary.after_easy)
}

/// After the repair of a slip the proposal is what it would be without the slip.
pub(super) fn repaired(season: &Season) -> Reading {
    compared(season, |diary| &diary.after_repair)
}

type Compared = Vec<(NaiveDate, Vec<NextLoad>, Vec<NextLoad>)>;

fn compared(season: &Season, of: fn(&Diary) -> &Compared) -> Reading {
    let mut reading = Reading::default();
    for diary in &season.ours {
        for (on, was, other) in of(diary) {
            reading.case(same(was, other), || {
                format!("{} {on}: {} and not {}", diary.name, text(was), text(other))
            });
        }
    }
    reading
}

/// From a slip until it is repaired, no set is proposed above a tenth or one build over what was really lifted
/// in it last, or proposed. Of plans that step: fixed loads are the coach's own. Not of a first time: where
/// nothing is known, nothing tells a slip.
pub(super) fn slips(season: &Season) -> Reading {
    let mut reading = Reading::default();
    for diary in season.ours.iter().filter(|diary| matches!(diary.rule, LoadRule::Step(_))) {
        let first = diary.working().next().map(|session| session.on);
        for (at, session) in diary.sessions.iter().enumerate() {
            let stands = diary.slips.iter().any(|slip| {
                slip.on < session.on
                    && Some(slip.on) != first
                    && slip.repaired.is_none_or(|repaired| repaired > session.on)
            });
            for next in session.first().iter().filter(|_| stands) {
                let Some(done) = done_before(diary, at, next.set) else { continue };
                let really = done.load;
                let really = proposed_before(diary, at, next.set).unwrap_or(really).max(really);
                let up = diary.builds.above(really).map_or(really, |build| build.mass);
                let step = really + Mass::thousandths(2_500, MassUnit::Kg);
                let tenth =
                    if diary.builds.is_picks() { step } else { really.percent(CAP_PERCENT) };
                reading.case(next.load <= Some(tenth.max(up)), || {
                    let (name, on) = (&diary.name, session.on);
                    format!("{name} {on}: really {really}, then {}", set_text(next))
                });
            }
        }
    }
    reading
}
