//! The reason for a load.

use super::able::whole_text;
use super::load::load_text;
use super::plain::{day, flagged};
use super::training_max::{based, max_text};
use crate::load::{CAP_PERCENT, Decision, Reason};
use crate::mass::{Mass, MassUnit};
use crate::say::load as say;

/// Why `load` is what it is, in one line.
pub(crate) fn why(reason: &Reason, load: Option<Mass>, unit: MassUnit) -> String {
    let text = |mass: &Mass| load_text(*mass, unit);
    match reason {
        Reason::FirstTime => say::first_time().to_owned(),
        Reason::Start { nearest: false, .. } => say::start().to_owned(),
        Reason::Start { planned, nearest: true } => say::start_nearest(text(planned)),
        Reason::TooHeavy { last } => say::too_heavy(text(last)),
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
        Reason::JustMade { last, reps, on } => say::just_made(text(last), reps, day(*on)),
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
        Reason::MoreReps { last, next: Some(next), on, reps } => {
            say::more_reps(reps, text(last), day(*on), text(next))
        }
        Reason::MoreReps { last, next: None, on, reps } => {
            say::more_reps_heaviest(reps, text(last), day(*on))
        }
        Reason::NextBuild { last, on, reps } => say::next_build(reps, text(last), day(*on)),
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
            match lighter(*last, load, unit) {
                Some(less) => say::back_off(less, text(last), how, day(*on)),
                None => say::back_off_lightest(text(last), day(*on), how),
            }
        }
        Reason::HeldBack { last, weeks, on } => say::held_back(*weeks, text(last), day(*on)),
        Reason::EasedIn { last, weeks, on } => match lighter(*last, load, unit) {
            Some(less) => say::eased_in(*weeks, less, text(last), day(*on)),
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
            match lighter(*last, load, unit) {
                Some(less) => say::after_pain(less, flag),
                None => say::after_pain_same(text(last), flag),
            }
        }
        Reason::Easy { of } => match lighter(*of, load, unit) {
            Some(less) => say::easy_week(less, text(of)),
            None => say::easy_week_same(text(of)),
        },
        Reason::NotInThisRoom { last, on } if load.is_none() => {
            say::none_near(text(last), day(*on))
        }
        Reason::NotInThisRoom { last, on } => say::next_lighter(text(last), day(*on)),
        Reason::OverTheCap { last, most } => over_the_cap(*last, *most, unit),
        Reason::Answered { load, words, .. } => {
            let answer = match load {
                Some(load) => say::answered(text(load)),
                None => say::answered_none().to_owned(),
            };
            if words.is_empty() { answer } else { say::coach_said(answer, words) }
        }
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
            other => why(other, None, unit),
        };
        if !said.contains(&one) {
            said.push(one);
        }
    }
    (!said.is_empty()).then(|| say::also(super::list(&said)))
}

/// Percent of what is added to a body or taken off it mean nothing: there it is the next load.
fn over_the_cap(last: Mass, most: Mass, unit: MassUnit) -> String {
    if is_a_tenth(last, most) {
        say::also_cap(load_text(last, unit))
    } else {
        say::also_most(load_text(most, unit), load_text(last, unit))
    }
}

/// True where the most after a load is a tenth over it.
pub(crate) fn is_a_tenth(last: Mass, most: Mass) -> bool {
    last > Mass::ZERO && most == last.percent(CAP_PERCENT)
}

fn missed(sessions: u32) -> &'static str {
    match sessions {
        1 => say::missed_much(),
        2 => say::missed_twice(),
        _ => say::missed_thrice(),
    }
}

/// How much lighter a load is than the last one: in whole percent of it, and of what is taken off a body by how much
/// more that is, for near zero a percent means nothing. A rule takes off its own percent and the room rounds down from
/// there: what is said is what was really taken off. None where nothing was.
fn lighter(last: Mass, load: Option<Mass>, unit: MassUnit) -> Option<String> {
    let less = last - load?;
    if less <= Mass::ZERO {
        return None;
    }
    if last <= Mass::ZERO {
        return Some(say::more_assistance(load_text(less, unit)));
    }
    // Added to a body, nothing is left of it once it is all taken off.
    if load? <= Mass::ZERO {
        return Some(say::lighter_by(load_text(less, unit)));
    }
    let (less, last) = (i128::from(less.ten_ng), i128::from(last.ten_ng));
    let percent = ((less * 100 + last / 2) / last).clamp(1, 100);
    Some(say::lighter(percent))
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};
    use chrono::NaiveDate;

    use super::*;
    use crate::care::Place;
    use crate::fixtures::kg;
    use crate::load::MaxBasis;

    fn on() -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, 11, 10).unwrap()
    }

    fn both(reason: &Reason, load: Option<&str>) -> [String; 2] {
        let said = || why(reason, load.map(kg), MassUnit::Kg);
        [said(), speaking(Language::De, said)]
    }

    /// 50 to 45 is 10 %; 27.5 to 22.5 is 18.2 %, whatever percent the rule asked for.
    #[test]
    fn the_percent_said_is_the_percent_done() {
        let back_off = |last, sessions| Reason::BackOff { last: kg(last), on: on(), sessions };
        let [english, german] = both(&back_off("50", 2), Some("45"));
        assert_eq!(english, "10 % lighter than 50 kg: missed twice in a row, last on Tue 10 Nov");
        assert_eq!(
            german,
            "10 % leichter als 50 kg: zweimal in Folge nicht geschafft, zuletzt am Di 10. Nov."
        );
        let [english, _] = both(&back_off("27.5", 1), Some("22.5"));
        assert_eq!(english, "18 % lighter than 27.5 kg: missed by far, last on Tue 10 Nov");
        let [english, _] = both(&back_off("20", 3), Some("20"));
        assert_eq!(
            english,
            "fewer reps, nothing lighter here: 20 kg on Tue 10 Nov, missed in three sessions in a row"
        );
        let eased = Reason::EasedIn { last: kg("60"), weeks: 3, on: on() };
        let [english, german] = both(&eased, Some("52.5"));
        assert_eq!(english, "13 % lighter after 3 weeks away: 60 kg on Tue 10 Nov");
        assert_eq!(german, "13 % leichter nach 3 Wochen Trainingspause: 60 kg am Di 10. Nov.");
        let [english, _] = both(&eased, Some("60"));
        assert_eq!(
            english,
            "fewer reps after 3 weeks away: 60 kg on Tue 10 Nov, no load near below it here"
        );
    }

    /// Near zero and below it no percent means anything.
    #[test]
    fn what_is_taken_off_a_body_is_said_as_it_is() {
        let minus = |load: &str| Mass::ZERO - kg(load);
        let said = |reason: Reason| {
            let why = || why(&reason, Some(minus("25")), MassUnit::Kg);
            [why(), speaking(Language::De, why)]
        };
        let last = minus("20");
        let [english, german] = said(Reason::EasedIn { last, weeks: 4, on: on() });
        assert_eq!(english, "5 kg more assistance after 4 weeks away: -20 kg on Tue 10 Nov");
        assert!(german.starts_with("5 kg mehr Unterstützung nach 4 Wochen"), "{german}");
        let all = Reason::EasedIn { last: kg("10"), weeks: 3, on: on() };
        let all = why(&all, Some(Mass::ZERO), MassUnit::Kg);
        assert!(all.starts_with("10 kg lighter after 3 weeks away"), "{all}");
        let place = Place::Knee;
        for reason in [
            Reason::BackOff { last, on: on(), sessions: 2 },
            Reason::AfterPain { last, place, severity: 5, on: on() },
            Reason::Easy { of: last },
        ] {
            assert!(said(reason.clone()).iter().all(|said| !said.contains('%')), "{reason:?}");
        }
    }

    #[test]
    fn a_step_begins_with_what_changes() {
        let step = |capped| Reason::Step { last: kg("60"), by: kg("2.5"), capped, on: on() };
        let [english, german] = both(&step(false), Some("62.5"));
        assert_eq!(english, "up 2.5 kg: 60 kg on Tue 10 Nov, all reps made");
        assert!(
            german.ends_with(" kg mehr: 60 kg am Di 10. Nov., alle Wdh. geschafft"),
            "{german}"
        );
        let [english, _] = both(&step(true), Some("62.5"));
        assert!(english.starts_with("up 2.5 kg, the largest step allowed: 60 kg"), "{english}");
        let next = Some(kg("20"));
        let more = Reason::MoreReps { last: kg("16"), reps: 9, next, on: on() };
        let [english, german] = both(&more, Some("16"));
        assert_eq!(
            english,
            "one rep more, 9: 16 kg on Tue 10 Nov, all reps made; 20 kg is the next load here"
        );
        assert!(german.ends_with("das nächste Gewicht hier ist 20 kg"), "{german}");
    }

    #[test]
    fn a_share_names_where_the_max_comes_from() {
        let percent = |basis| Reason::Percent { percent: 75, max: kg("85.7"), basis };
        let english = |reason| both(&reason, Some("60"))[0].clone();
        assert_eq!(
            english(percent(MaxBasis::Estimate)),
            "75 % of 86 kg, the lower end of the estimated one-rep max"
        );
        assert_eq!(
            english(percent(MaxBasis::Tested { on: on() })),
            "75 % of 85.7 kg, the one-rep max tested on Tue 10 Nov"
        );
        let worked_out = Reason::Percent { percent: 70, max: kg("34.945"), basis: MaxBasis::Again };
        assert_eq!(english(worked_out), "70 % of 34.9 kg, the training max");
        let basis = MaxBasis::BackOff;
        let reserve = Reason::Reserve { reps: 1, leave: 2, max: kg("86"), basis };
        let [english, german] = both(&reserve, Some("60"));
        assert_eq!(
            english,
            "1 rep that should leave 2 in reserve, from 86 kg, the training max, lower after two misses in a row"
        );
        assert!(german.starts_with("1 Wiederholung, nach der 2 übrig sein sollten, bei 86 kg, "));
        let (last, on) = (Some(kg("70")), Some(on()));
        let other = Reason::OtherReps { reps: 8, leave: 2, max: kg("86"), last, on };
        let [english, _] = both(&other, Some("60"));
        assert_eq!(
            english,
            "new sets and reps: 8 reps that should leave 2 in reserve, from 86 kg, the lower end of the \
             estimated one-rep max; last time 70 kg on Tue 10 Nov"
        );
    }

    #[test]
    fn sets_and_words_of_others_stand_where_they_belong() {
        let unfinished = Reason::Unfinished { last: kg("60"), done: 1, of: 3, on: on() };
        let [english, german] = both(&unfinished, Some("60"));
        assert_eq!(english, "same again: 60 kg on Tue 10 Nov, 1 of 3 sets done");
        assert_eq!(german, "noch einmal dasselbe: 60 kg am Di 10. Nov., 1 von 3 Sätzen gemacht");
        let (place, severity, sign) = (Place::Knee, 5, false);
        let flagged = Reason::Flagged { last: Some(kg("55")), place, severity, on: on() };
        let [english, german] = both(&flagged, Some("55"));
        assert_eq!(english, "no step up from 55 kg: knee 5/10, flagged Tue 10 Nov");
        assert_eq!(german, "nicht über 55 kg: Knie 5/10, gemeldet Di 10. Nov.");
        let withdrawn = Reason::Withdrawn { place, severity, sign, on: on() };
        let [english, german] = both(&withdrawn, None);
        assert_eq!(english, "no load until this is cleared: knee 5/10, flagged Tue 10 Nov");
        assert_eq!(german, "kein Gewicht, bis das aufgehoben ist: Knie 5/10, gemeldet Di 10. Nov.");
        let coach = |last: Option<&str>, words: &str| Reason::Coach {
            decision: Decision::Change,
            last: last.map(kg),
            words: words.into(),
        };
        assert_eq!(both(&coach(None, ""), None)[0], "coach changed");
        let [english, german] = both(&coach(Some("60"), "deep first"), Some("50"));
        assert_eq!(english, "coach changed; last time 60 kg: \"deep first\"");
        assert_eq!(german, "vom Coach geändert; letztes Mal 60 kg: „deep first“");
    }

    #[test]
    fn what_else_speaks_for_less_stands_in_one_line() {
        let last = kg("60");
        let others = [
            Reason::EasedIn { last, weeks: 3, on: on() },
            Reason::Missed { last, set: 2, reps: 4, asked: 6, on: on() },
            Reason::OverTheCap { last, most: kg("66") },
        ];
        let said = || also(&others, MassUnit::Kg);
        let english =
            "also: 3 weeks away, set 2 stopped at 4 of 6 and more than a tenth over 60 kg";
        assert_eq!(said().as_deref(), Some(english));
        let picks = Reason::OverTheCap { last: Mass::kg(-20), most: Mass::kg(-15) };
        let picks = also(&[picks], MassUnit::Kg);
        assert_eq!(picks.as_deref(), Some("also: more than -15 kg, the most after -20 kg"));
        let german = speaking(Language::De, said).unwrap();
        assert!(
            german.starts_with("dazu: 3 Wochen Trainingspause, in Satz 2 nur 4 von 6"),
            "{german}"
        );
        assert_eq!(also(&[], MassUnit::Kg), None);
    }
}
