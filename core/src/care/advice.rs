//! What is said when somebody flags discomfort.

use serde::Serialize;

use super::{Place, Sign};

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
pub const ALWAYS: [&str; 4] = [
    "Holdfast counts and suggests. It does not know you and never diagnoses.",
    "Stop on sharp or spreading pain, numbness, weakness, dizziness or chest pain.",
    "Heavy sets need safety bars or somebody to spot you, and the room's own rules come first.",
    "See a doctor or physiotherapist about pain that stays, and before starting after illness, \
     injury or pregnancy.",
];

/// A rating from which the piece itself should stop, not only its progression. Common practice, no
/// source.
pub const STOP_FROM: u32 = 4;

/// What to say about discomfort of a severity from 1 to 10 at a place, with any emergency signs.
pub fn advice_for(place: Place, severity: u32, signs: &[Sign]) -> Advice {
    let mut lines = Vec::new();
    if !signs.is_empty() {
        lines.push(
            "Stop now and get emergency care: what you ticked can be serious and should be looked \
             at by a doctor today."
                .to_owned(),
        );
        return Advice { urgent: true, lines, always: 1 };
    }
    if severity >= STOP_FROM {
        lines.push("Leave this movement for today. An option that does not hurt is fine.".into());
    } else {
        lines.push("Go lighter or take an option; stop if it gets worse.".into());
    }
    if matches!(place, Place::LowBack | Place::UpperBack) {
        lines.push(
            "With new numbness between the legs, new trouble with bladder or bowel, or a weak leg: \
             emergency care at once."
                .into(),
        );
    }
    if place == Place::Muscle {
        lines.push(
            "Pain far beyond the usual soreness, weakness or dark urine in the next days: stop and \
             get medical care at once."
                .into(),
        );
    }
    let always = lines.len() as u32;
    lines.push(
        "Loads for this movement stay where they are until you or your coach clear the flag. Pain \
         that stays is for a doctor or physiotherapist."
            .into(),
    );
    Advice { urgent: false, lines, always }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn any_emergency_sign_is_urgent_whatever_the_rating() {
        for sign in Sign::ALL {
            let advice = advice_for(Place::Other, 1, &[*sign]);
            assert!(advice.urgent && advice.lines[0].contains("emergency care"));
        }
        assert!(!advice_for(Place::Other, 10, &[]).urgent);
    }

    #[test]
    fn a_back_is_told_the_signs_to_watch_for() {
        let lines = advice_for(Place::LowBack, 2, &[]).lines.join(" ");
        assert!(lines.contains("numbness") && lines.contains("emergency care"));
    }

    /// However small a screen is, it says what to do and what is an emergency.
    #[test]
    fn what_to_do_and_what_is_an_emergency_is_never_left_out() {
        for place in Place::ALL {
            for (severity, signs) in [(2, &[][..]), (5, &[]), (2, &[Sign::ChestPain])] {
                let Advice { lines, always, .. } = advice_for(*place, severity, signs);
                let (kept, left_out) = lines.split_at(always as usize);
                assert!(!kept.is_empty(), "{place:?} {severity}");
                assert!(left_out.iter().all(|line| !line.contains("at once")), "{left_out:?}");
            }
        }
    }
}
