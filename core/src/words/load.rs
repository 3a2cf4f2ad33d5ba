//! Loads, plates and the reason for a load.

use super::able::whole_text;
use super::name::pattern;
use super::plain::{day, flagged};
use crate::load::{Decision, HardWork, Reason};
use crate::mass::{Mass, MassUnit};
use crate::say::load as say;

/// A load in the reader's unit; where that is not exact, the exact one behind it.
pub(crate) fn load_text(load: Mass, unit: MassUnit) -> String {
    let other = unit.other();
    if load.is_exact_in(unit) || !load.is_exact_in(other) {
        return load.text(unit);
    }
    say::exact_behind(load.text(unit), load.text(other))
}

/// The plates of one side, outermost last: `20 + 5 kg a side`, and `20 kg + 45 lb a side` where not
/// all are marked in the bar's unit.
pub(crate) fn plates_text(per_side: &[Mass], unit: MassUnit) -> String {
    if per_side.is_empty() {
        return say::empty_bar().to_owned();
    }
    say::a_side(plates_short(per_side, unit))
}

/// Plates with their unit and no more: `20 + 5 kg`; an empty bar says so.
pub(crate) fn plates_short(plates: &[Mass], unit: MassUnit) -> String {
    if plates.is_empty() {
        return say::empty_bar().to_owned();
    }
    if plates.iter().any(|plate| !plate.is_exact_in(unit)) {
        let plates: Vec<String> = plates.iter().map(|plate| plate.exact_text()).collect();
        return plates.join(" + ");
    }
    let plates: Vec<String> = plates.iter().map(|plate| plate.number(unit)).collect();
    format!("{} {}", plates.join(" + "), unit.symbol())
}

/// Why `load` is what it is, in one line.
pub(crate) fn why(reason: &Reason, load: Option<Mass>, unit: MassUnit) -> String {
    let text = |mass: &Mass| load_text(*mass, unit);
    match reason {
        Reason::FirstTime => say::first_time().to_owned(),
        Reason::SayReserve { last, .. } => say::say_reserve(text(last)),
        Reason::Found { last, reps, reserve, leave, capped: false } => {
            say::found(text(last), reps, reserve, leave)
        }
        Reason::Found { last, reps, reserve, leave, capped: true } => {
            say::found_capped(text(last), reps, reserve, leave)
        }
        Reason::Percent { percent, max, capped, weeks, low } => {
            let max = whole_text(*max, unit);
            let of = if *low { say::percent_low(percent, max) } else { say::percent(percent, max) };
            bounded(of, capped.map(|last| text(&last)), *weeks)
        }
        Reason::Reserve { reps, leave, max, capped, weeks, low } => {
            let max = whole_text(*max, unit);
            let should = if *low {
                say::reserve_low(*reps, leave, max)
            } else {
                say::reserve(*reps, leave, max)
            };
            bounded(should, capped.map(|last| text(&last)), *weeks)
        }
        Reason::Fixed { capped: None, nearest: false, .. } => say::fixed().to_owned(),
        Reason::Fixed { planned, capped: None, nearest: true } => say::fixed_nearest(text(planned)),
        Reason::Fixed { planned, capped: Some(last), .. } => {
            bounded(say::fixed_other(text(planned)), Some(text(last)), 0)
        }
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
        Reason::Missed { last, set, reps, asked, on } => {
            say::missed(text(last), day(*on), set, reps, asked)
        }
        Reason::BackOff { last, on, .. } => match lighter(*last, load) {
            Some(percent) => say::back_off(percent, text(last), day(*on)),
            None => say::back_off_lightest(text(last), day(*on)),
        },
        Reason::EasedIn { last, weeks, on, .. } => match lighter(*last, load) {
            Some(percent) => say::eased_in(*weeks, percent, text(last), day(*on)),
            None => say::eased_in_lightest(*weeks, text(last), day(*on)),
        },
        Reason::Unfinished { last, done, of, on } => {
            say::unfinished(text(last), day(*on), done, *of)
        }
        Reason::Flagged { last, place, severity, on } => {
            let flag = flagged(*place, *severity, &[], *on);
            match last {
                Some(last) => say::flagged_from(text(last), flag),
                None => say::flagged(flag),
            }
        }
        Reason::NoLegalStep { last, above: Some(above), allowed, on } => {
            say::no_step(text(last), text(above), text(allowed), day(*on))
        }
        Reason::NoLegalStep { last, above: None, on, .. } => say::no_heavier(text(last), day(*on)),
        Reason::NotInThisRoom { last, on } => say::next_lighter(text(last), day(*on)),
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

/// How much lighter a load is than the last one, in whole percent of it. A rule takes off its own percent
/// and the room rounds down from there: what is said is what was really taken off. None where nothing was.
fn lighter(last: Mass, load: Option<Mass>) -> Option<i64> {
    let less = i128::from((last - load?).ten_ng);
    let last = i128::from(last.ten_ng.max(1));
    let percent = (less > 0).then(|| (less * 100 + last / 2) / last)?;
    i64::try_from(percent.max(1)).ok()
}

/// What kept a load of somebody's strength, or of the plan, lower.
fn bounded(load: String, last: Option<String>, weeks: u32) -> String {
    let away = (weeks > 0).then(|| say::lighter_after(weeks));
    let most = last.map(say::at_most_a_tenth);
    away.into_iter().chain(most).fold(load, say::and_then)
}

/// Why an option is suggested: `hard squat work the day before (4 sets): this spares it`.
pub(crate) fn spared(hard: &HardWork) -> String {
    say::spared(hard.from.len(), pattern(hard.pattern))
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};
    use chrono::NaiveDate;

    use super::*;
    use crate::care::Place;
    use crate::fixtures::kg;

    fn on() -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, 11, 10).unwrap()
    }

    fn both(reason: &Reason, load: Option<&str>) -> [String; 2] {
        let said = || why(reason, load.map(kg), MassUnit::Kg);
        [said(), speaking(Language::De, said)]
    }

    #[test]
    fn loads_read_in_the_athletes_unit_with_the_exact_one_behind() {
        let load = Mass::thousandths(92_500, MassUnit::Kg);
        assert_eq!(load_text(load, MassUnit::Kg), "92.5 kg");
        assert_eq!(load_text(load, MassUnit::Lb), "203.9 lb (92.5 kg)");
        // Neither unit has it exactly, so no exact one is behind it.
        assert_eq!(load_text(load + Mass::lb(1), MassUnit::Lb), "204.9 lb");
        assert_eq!(plates_text(&[Mass::lb(45), Mass::lb(5)], MassUnit::Lb), "45 + 5 lb a side");
        let mixed = [Mass::kg(20), Mass::lb(45)];
        assert_eq!(plates_text(&mixed, MassUnit::Kg), "20 kg + 45 lb a side");
        assert_eq!(plates_text(&[], MassUnit::Lb), "empty bar");
        let german = speaking(Language::De, || plates_text(&mixed, MassUnit::Kg));
        assert_eq!(german, "20 kg + 45 lb je Seite");
    }

    /// 50 to 45 is 10 %; 27.5 to 22.5 is 18.2 %, whatever percent the rule asked for.
    #[test]
    fn the_percent_said_is_the_percent_done() {
        let back_off = |last| Reason::BackOff { last: kg(last), percent: 5, on: on() };
        let [english, german] = both(&back_off("50"), Some("45"));
        assert_eq!(english, "10 % lighter: 50 kg on Tue 10 Nov, missed twice in a row");
        assert_eq!(german, "10 % leichter: 50 kg am Di 10. Nov., zweimal in Folge nicht geschafft");
        let [english, _] = both(&back_off("27.5"), Some("22.5"));
        assert!(english.starts_with("18 % lighter: "), "{english}");
        let [english, _] = both(&back_off("20"), Some("20"));
        assert_eq!(english, "the lightest load here: 20 kg on Tue 10 Nov, missed twice in a row");
        let eased = Reason::EasedIn { last: kg("60"), weeks: 3, percent: 10, on: on() };
        let [english, german] = both(&eased, Some("52.5"));
        assert_eq!(english, "13 % lighter after 3 weeks away: 60 kg on Tue 10 Nov");
        assert_eq!(german, "13 % leichter nach 3 Wochen Trainingspause: 60 kg am Di 10. Nov.");
        let [english, _] = both(&eased, Some("60"));
        assert_eq!(english, "the lightest load here after 3 weeks away: 60 kg on Tue 10 Nov");
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
    }

    #[test]
    fn what_keeps_a_load_lower_is_said_after_it() {
        let percent = |weeks, capped: Option<&str>, low| Reason::Percent {
            percent: 75,
            max: kg("85.7"),
            capped: capped.map(kg),
            weeks,
            low,
        };
        let english = |reason| both(&reason, Some("60"))[0].clone();
        assert_eq!(
            english(percent(0, None, false)),
            "75 % of 86 kg, the lower end of the estimated one-rep max"
        );
        assert_eq!(
            english(percent(3, Some("55"), false)),
            "75 % of 86 kg, the lower end of the estimated one-rep max; lighter after 3 weeks away; \
             at most a tenth over last time's 55 kg"
        );
        assert_eq!(
            english(percent(0, None, true)),
            "new sets and reps: 75 % of 86 kg, the lower end of the estimated one-rep max"
        );
        let reserve = Reason::Reserve {
            reps: 1,
            leave: 2,
            max: kg("86"),
            capped: None,
            weeks: 0,
            low: false,
        };
        let [english, german] = both(&reserve, Some("60"));
        assert_eq!(
            english,
            "1 rep should leave 2 in reserve, from 86 kg, the lower end of the estimated one-rep max"
        );
        assert!(german.starts_with("nach 1 Wiederholung "), "{german}");
    }

    #[test]
    fn sets_and_words_of_others_stand_where_they_belong() {
        let unfinished = Reason::Unfinished { last: kg("60"), done: 1, of: 3, on: on() };
        let [english, german] = both(&unfinished, Some("60"));
        assert_eq!(english, "same again: 60 kg on Tue 10 Nov, 1 of 3 sets done");
        assert_eq!(german, "noch einmal dasselbe: 60 kg am Di 10. Nov., 1 von 3 Sätzen gemacht");
        let flagged =
            Reason::Flagged { last: Some(kg("55")), place: Place::Knee, severity: 5, on: on() };
        let [english, german] = both(&flagged, Some("55"));
        assert_eq!(english, "no step up from 55 kg: knee 5/10, flagged Tue 10 Nov");
        assert_eq!(german, "nicht über 55 kg: Knie 5/10, gemeldet Di 10. Nov.");
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
}
