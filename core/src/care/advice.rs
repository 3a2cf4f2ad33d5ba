//! What is said when somebody flags discomfort.

use serde::Serialize;

use super::{Place, Sign};
use crate::say::care as say;

/// What to tell an athlete who flags discomfort.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Advice {
    /// True when care is needed at once.
    pub urgent: bool,
    /// The words, a sentence or two each.
    pub lines: Vec<String>,
    /// How many of the lines, from the first, are never left out, however little room there is: what to
    /// do now, and when it is an emergency.
    pub always: u32,
}

/// The usual cautions, shown with every plan and report.
pub fn always() -> [&'static str; 4] {
    [say::never_diagnoses(), say::stop_on(), say::safety_bars(), say::see_a_doctor()]
}

/// A rating from which the piece itself should stop, not only its progression. Common practice, no
/// source.
pub const STOP_FROM: u32 = 4;

/// Where discomfort was felt, seen from what is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Felt {
    /// In this very movement.
    Here,
    /// In another one, or another option of it.
    Elsewhere,
    /// In none that is named.
    Unnamed,
}

/// What to say about discomfort of a severity from 1 to 10 at a place, with any emergency signs.
pub fn advice_for(place: Place, severity: u32, signs: &[Sign], felt: Felt) -> Advice {
    if !signs.is_empty() {
        // The most urgent alone: nothing else is to be weighed against it.
        return Advice { urgent: true, lines: vec![say::stop_now().to_owned()], always: 1 };
    }
    let do_now = match (severity >= STOP_FROM, felt) {
        (true, Felt::Here) => say::leave_movement(),
        (true, Felt::Elsewhere | Felt::Unnamed) => say::leave_what_hurts(),
        (false, _) => say::go_lighter(),
    };
    let mut lines = vec![do_now.to_owned()];
    if matches!(place, Place::LowBack | Place::UpperBack) {
        lines.push(say::back_signs().to_owned());
    }
    if place == Place::Muscle {
        lines.push(say::muscle_signs().to_owned());
    }
    let always = lines.len() as u32;
    let loads = match (severity >= STOP_FROM, felt) {
        (true, Felt::Here) => say::loads_gone(),
        (false, Felt::Here) => say::loads_stay(),
        (true, Felt::Unnamed) => say::loads_gone_there(),
        (false, Felt::Unnamed) | (_, Felt::Elsewhere) => say::loads_held(),
    };
    lines.push(loads.to_owned());
    Advice { urgent: false, lines, always }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn any_emergency_sign_is_urgent_whatever_the_rating() {
        for sign in Sign::ALL {
            let advice = advice_for(Place::Other, 1, &[*sign], Felt::Here);
            assert!(advice.urgent && advice.always == 1);
            assert_eq!(advice.lines[0], "Stop now and get emergency care.");
        }
        assert!(!advice_for(Place::Other, 10, &[], Felt::Here).urgent);
    }

    #[test]
    fn a_back_is_told_the_signs_to_watch_for() {
        let lines = advice_for(Place::LowBack, 2, &[], Felt::Here).lines.join(" ");
        assert!(lines.contains("numbness") && lines.contains("emergency care"));
    }

    /// What is said of the loads is what becomes of them.
    #[test]
    fn the_loads_are_gone_only_where_it_hurts_badly() {
        let said = |severity, felt| advice_for(Place::Knee, severity, &[], felt).lines.join(" ");
        assert!(said(4, Felt::Here).contains("There is no load for this movement"));
        assert!(said(3, Felt::Here).contains("stay as they are"));
        assert!(said(3, Felt::Unnamed).contains("go no higher"));
        assert!(said(4, Felt::Unnamed).contains("There is no load for what loads this place"));
        for severity in [3, 4] {
            assert!(!said(severity, Felt::Unnamed).contains("this movement"), "{severity}");
            assert!(said(severity, Felt::Elsewhere).contains("go no higher"), "{severity}");
        }
    }

    /// What is asked for is shown in words of its own, and old journals have one sign more.
    #[test]
    fn the_signs_asked_for_are_all_but_one_that_journals_have() {
        let unasked = |sign: &&Sign| !Sign::ASKED.contains(sign);
        assert_eq!(Sign::ALL.iter().filter(unasked).collect::<Vec<_>>(), [&Sign::PainInBothLegs]);
        let old =
            "saddle-numbness bladder-or-bowel leg-weakness pain-in-both-legs dark-urine chest-pain";
        assert!(old.split(' ').all(|word| Sign::from_text(word).is_some()));
    }

    #[test]
    fn emergencies_are_said_in_german_too() {
        let said =
            || advice_for(Place::Knee, 1, &[Sign::Dizziness], Felt::Here).lines.swap_remove(0);
        let german = catalogue::speaking(catalogue::Language::De, said);
        assert_eq!(german, "Hör sofort auf und hol dir notärztliche Hilfe.");
    }

    /// However small a screen is, it says what to do and what is an emergency.
    #[test]
    fn what_to_do_and_what_is_an_emergency_is_never_left_out() {
        for place in Place::ALL {
            for (severity, signs) in [(2, &[][..]), (5, &[]), (2, &[Sign::ChestPain])] {
                let Advice { lines, always, .. } = advice_for(*place, severity, signs, Felt::Here);
                let (kept, left_out) = lines.split_at(always as usize);
                assert!(!kept.is_empty(), "{place:?} {severity}");
                assert!(left_out.iter().all(|line| !line.contains("at once")), "{left_out:?}");
            }
        }
    }
}
