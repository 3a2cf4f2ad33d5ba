//! The reason for a load.

use super::able::whole_text;
use super::load::load_text;
use super::plain::{day, flagged};
use crate::load::{Decision, MaxBasis, Reason};
use crate::mass::{Mass, MassUnit};
use crate::say::load as say;

/// Why `load` is what it is, in one line.
pub(crate) fn why(reason: &Reason, load: Option<Mass>, unit: MassUnit) -> String {
    let text = |mass: &Mass| load_text(*mass, unit);
    match reason {
        Reason::FirstTime => say::first_time().to_owned(),
        Reason::Start { nearest: false, .. } => say::start().to_owned(),
        Reason::Start { planned, nearest: true } => say::start_nearest(text(planned)),
        Reason::SayReserve { last, .. } => say::say_reserve(text(last)),
        Reason::Found { last, reps, reserve, leave, capped: false } => {
            say::found(text(last), reps, reserve, leave)
        }
        Reason::Found { last, reps, reserve, leave, capped: true } => {
            say::found_capped(text(last), reps, reserve, leave)
        }
        Reason::OtherReps { reps, leave, max, last, on } => {
            let what = say::reserve(*reps, leave, whole_text(*max, unit));
            let what = say::other_reps(say::max_estimate(what));
            match (last, on) {
                (Some(last), Some(on)) => say::other_reps_last(what, text(last), day(*on)),
                _ => what,
            }
        }
        Reason::Percent { percent, max, basis } => {
            based(say::percent(percent, max_text(*max, *basis, unit)), *basis)
        }
        Reason::Reserve { reps, leave, max, basis } => {
            based(say::reserve(*reps, leave, max_text(*max, *basis, unit)), *basis)
        }
        Reason::Fixed { nearest: false, .. } => say::fixed().to_owned(),
        Reason::Fixed { planned, nearest: true } => say::fixed_nearest(text(planned)),
        Reason::FixedCapped { planned, last } => say::fixed_capped(text(planned), text(last)),
        Reason::Free => say::free().to_owned(),
        Reason::Step { last, by, capped: false, on } => say::step(text(by), text(last), day(*on)),
        Reason::Step { last, by, capped: true, on } => {
            say::step_capped(text(by), text(last), day(*on))
        }
        Reason::Earned { last, by, reps, asked, capped: false, on } => {
            say::earned(text(by), text(last), day(*on), reps, asked)
        }
        Reason::Earned { last, by, reps, asked, capped: true, on } => {
            say::earned_capped(text(by), text(last), day(*on), reps, asked)
        }
        Reason::WayBack { last, by, best, on } => {
            say::way_back(text(by), text(best), text(last), day(*on))
        }
        Reason::OnceMore { last, on } => say::once_more(text(last), day(*on)),
        Reason::MoreReps { last, next: Some(next), on, .. } => {
            say::more_reps(text(last), day(*on), text(next))
        }
        Reason::MoreReps { last, next: None, on, .. } => {
            say::more_reps_heaviest(text(last), day(*on))
        }
        Reason::NextBuild { last, on, .. } => say::next_build(text(last), day(*on)),
        Reason::AtTop { last, next: Some(next), on, .. } => {
            say::at_top(text(last), day(*on), text(next))
        }
        Reason::AtTop { last, next: None, on, .. } => say::at_top_heaviest(text(last), day(*on)),
        Reason::Missed { last, set, reps, asked, on }
        | Reason::Held { last, set, reps, asked, on } => {
            say::missed(text(last), day(*on), set, reps, asked)
        }
        Reason::BackOff { last, on, sessions } => {
            let how = missed(*sessions);
            match lighter(*last, load) {
                Some(percent) => say::back_off(percent, text(last), day(*on), how),
                None => say::back_off_lightest(text(last), day(*on), how),
            }
        }
        Reason::HeldBack { last, weeks, on } => say::held_back(*weeks, text(last), day(*on)),
        Reason::EasedIn { last, weeks, on } => match lighter(*last, load) {
            Some(percent) => say::eased_in(*weeks, percent, text(last), day(*on)),
            None => say::eased_in_reps(*weeks, text(last), day(*on)),
        },
        Reason::Unfinished { last, done, of, on } => {
            say::unfinished(text(last), day(*on), done, *of)
        }
        Reason::InDoubt { last, set, on } => say::in_doubt(text(last), day(*on), set),
        Reason::LeftOut { last, set, on } => say::left_out(text(last), day(*on), set),
        Reason::Flagged { last, place, severity, on } => {
            let flag = flagged(*place, *severity, &[], *on);
            match last {
                Some(last) => say::flagged_from(text(last), flag),
                None => say::flagged(flag),
            }
        }
        Reason::Withdrawn { place, severity, on, .. } => {
            say::withdrawn(flagged(*place, *severity, &[], *on))
        }
        Reason::AfterPain { last, place, severity, on } => {
            let flag = flagged(*place, *severity, &[], *on);
            match lighter(*last, load) {
                Some(percent) => say::after_pain(percent, flag),
                None => say::after_pain_same(text(last), flag),
            }
        }
        Reason::Easy { of } => say::easy_week(lighter(*of, load).unwrap_or(0), text(of)),
        Reason::NotInThisRoom { last, on } if load.is_none() => {
            say::none_near(text(last), day(*on))
        }
        Reason::NotInThisRoom { last, on } => say::next_lighter(text(last), day(*on)),
        Reason::OverTheCap { last, .. } => say::also_cap(text(last)),
        Reason::Coach { decision, last, words } => {
            let coach = match decision {
                Decision::Accept => say::coach_accepted(),
                Decision::Change => say::coach_changed(),
                Decision::Refuse => say::coach_refused(),
            };
            let coach = match last {
                // What is kept is that load.
                Some(last) if *decision != Decision::Refuse => {
                    say::coach_last_time(coach, text(last))
                }
                _ => coach.to_owned(),
            };
            if words.is_empty() { coach } else { say::coach_said(coach, words) }
        }
    }
}

/// What else speaks for less, in one line; none where nothing does.
pub(crate) fn also(others: &[Reason], unit: MassUnit) -> Option<String> {
    let mut said: Vec<String> = Vec::new();
    for other in others {
        let one = match other {
            Reason::HeldBack { weeks, .. } | Reason::EasedIn { weeks, .. } => {
                say::also_away(*weeks)
            }
            Reason::BackOff { sessions, .. } => missed(*sessions).to_owned(),
            Reason::Missed { set, reps, asked, .. } => say::also_missed(set, reps, asked),
            Reason::Unfinished { .. } => say::also_unfinished().to_owned(),
            Reason::OverTheCap { last, .. } => say::also_cap(load_text(*last, unit)),
            other => why(other, None, unit),
        };
        if !said.contains(&one) {
            said.push(one);
        }
    }
    (!said.is_empty()).then(|| say::also(super::list(&said)))
}

fn missed(sessions: u32) -> &'static str {
    match sessions {
        1 => say::missed_much(),
        2 => say::missed_twice(),
        _ => say::missed_thrice(),
    }
}

/// An estimate is said in whole units; what was tested, set or stepped from that exactly.
fn max_text(max: Mass, basis: MaxBasis, unit: MassUnit) -> String {
    if basis == MaxBasis::Estimate { whole_text(max, unit) } else { load_text(max, unit) }
}

fn based(what: String, basis: MaxBasis) -> String {
    match basis {
        MaxBasis::Estimate => say::max_estimate(what),
        MaxBasis::Tested { on } => say::max_tested(what, day(on)),
        MaxBasis::Coach { on } => say::max_coach(what, day(on)),
        MaxBasis::Again => say::max_again(what),
        MaxBasis::Up => say::max_up(what),
        MaxBasis::Missed => say::max_missed(what),
        MaxBasis::BackOff => say::max_back_off(what),
        MaxBasis::Away => say::max_away(what),
    }
}

/// How much lighter a load is than the last one, in whole percent of it. A rule takes off its own percent
/// and the room rounds down from there: what is said is what was really taken off. None where nothing was.
fn lighter(last: Mass, load: Option<Mass>) -> Option<i64> {
    let less = i128::from((last - load?).ten_ng);
    let last = i128::from(last.ten_ng.max(1));
    let percent = (less > 0).then(|| (less * 100 + last / 2) / last)?;
    i64::try_from(percent.max(1)).ok()
}
