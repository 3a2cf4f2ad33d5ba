//! Builds and plate handling.

use super::load::{load_text, plates_text};
use super::plain::count;
use crate::load::{Proof, Ramp, RampError, RampStep};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Build, MAX_PLATES_A_SIDE};

/// A load with every digit it has, where the reader's unit or the other shows it exactly, and in
/// kilograms otherwise.
pub(crate) fn exact_text(load: Mass, unit: MassUnit) -> String {
    if load.is_exact_in(MassUnit::Kg) || load.is_exact_in(MassUnit::Lb) {
        load_text(load, unit)
    } else {
        load.every_digit()
    }
}

/// Plates with their unit and no more: `20 + 5 kg`.
pub(crate) fn plates_short(plates: &[Mass], unit: MassUnit) -> String {
    plates_text(plates, unit).replace(" a side", "")
}

/// Plates without their unit, where one unit does for all: `20 + 5`; none for an empty bar.
pub(crate) fn plates_alone(plates: &[Mass], unit: MassUnit) -> Option<String> {
    if plates.is_empty() {
        return None;
    }
    if plates.iter().any(|plate| !plate.is_exact_in(unit)) {
        return Some(plates_short(plates, unit));
    }
    let plates: Vec<String> = plates.iter().map(|plate| plate.number(unit)).collect();
    Some(plates.join(" + "))
}

/// What is done to each side for a load: `take off 2.5, put on 20 + 5 kg`.
pub(crate) fn change_text(step: &RampStep, unit: MassUnit) -> String {
    let plates = |plates: &[Mass]| plates_short(plates, unit);
    match (step.off.as_slice(), step.on.as_slice()) {
        ([], []) => "nothing to change".into(),
        ([], on) => format!("put on {}", plates(on)),
        (off, []) => format!("take off {}", plates(off)),
        (off, on) => format!("take off {}, put on {}", plates(off), plates(on)),
    }
}

/// What a ramp takes altogether.
pub(crate) fn handling_text(ramp: &Ramp) -> String {
    let plates = count(u64::from(ramp.handled), "plate");
    let proof = match ramp.proof {
        Proof::Least => "no order of plates needs fewer".to_owned(),
        Proof::NotLess { than } => {
            format!("too many choices to try all: perhaps fewer would do, but not under {than}")
        }
    };
    format!("{plates} put on or taken off a side; {proof}")
}

/// Why a ramp on a bar cannot be built, and what can.
pub(crate) fn ramp_error(error: &RampError, bar: &str, unit: MassUnit) -> String {
    let build = |build: &Build| {
        format!("{} ({})", exact_text(build.mass, unit), plates_text(&build.per_side, unit))
    };
    match error {
        RampError::Unbuildable { below: Some(below), above: Some(above), .. } => {
            let (below, above) = (build(below), build(above));
            format!("this kit cannot build it on the {bar}; nearest are {below} and {above}")
        }
        RampError::Unbuildable { below: None, above: Some(above), .. } => {
            format!("lighter than the {bar} can be; the lightest is {}", build(above))
        }
        RampError::Unbuildable { below: Some(below), .. } => {
            let full = below.per_side.len() == MAX_PLATES_A_SIDE;
            let limit = if full {
                format!("; {MAX_PLATES_A_SIDE} plates a side are the most")
            } else {
                String::new()
            };
            let below = build(below);
            format!("heavier than this kit can build on the {bar}; the heaviest is {below}{limit}")
        }
        RampError::Unbuildable { .. } => format!("there is nothing to load on the {bar}"),
        RampError::TooMany { .. } => error.to_string(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn changes_read_in_the_order_they_are_done() {
        let build = Build { mass: Mass::kg(60), per_side: Vec::new() };
        let step = |off: &[Mass], on: &[Mass]| {
            let step = RampStep { build: build.clone(), off: off.into(), on: on.into() };
            change_text(&step, MassUnit::Kg)
        };
        let (five, twenty, pounds) = (Mass::kg(5), Mass::kg(20), Mass::lb(45));
        assert_eq!(step(&[], &[twenty, five]), "put on 20 + 5 kg");
        assert_eq!(step(&[five], &[twenty]), "take off 5 kg, put on 20 kg");
        assert_eq!(step(&[five], &[]), "take off 5 kg");
        assert_eq!(step(&[], &[twenty, pounds]), "put on 20 kg + 45 lb");
        assert_eq!(step(&[], &[]), "nothing to change");
    }

    /// 20 kg and 4 x 45 lb of 0.45359237 kg exactly (NIST SP 811, appendix B): 101.6466266 kg.
    #[test]
    fn a_mixed_load_shows_every_digit() {
        let mixed = Mass::kg(20) + Mass::lb(45) * 4;
        assert_eq!(exact_text(mixed, MassUnit::Kg), "101.6466266 kg");
        assert_eq!(exact_text(Mass::lb(225), MassUnit::Kg), "102.1 kg (225 lb)");
        assert_eq!(exact_text(Mass::kg(60), MassUnit::Kg), "60 kg");
    }

    #[test]
    fn a_full_bar_says_what_keeps_it_from_more() {
        let said = |plates| {
            let per_side = vec![Mass::kg(10); plates];
            let mass = Mass::kg(20) + Mass::kg(10) * (2 * plates as i64);
            let below = Some(Build { mass, per_side });
            let error =
                RampError::Unbuildable { index: 0, load: Mass::kg(500), below, above: None };
            ramp_error(&error, "long bar", MassUnit::Kg)
        };
        assert!(said(10).ends_with("a side); 10 plates a side are the most"), "{}", said(10));
        assert!(said(9).ends_with("a side)"), "{}", said(9));
    }
}
