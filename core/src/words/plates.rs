//! Builds and plate handling.

use super::load::{load_text, plates_short, plates_text};
use super::plain::decimals;
use crate::load::{MOST_LOADS, Proof, Ramp, RampError, RampStep};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Build, MAX_PLATES_A_SIDE};
use crate::say::plates as say;

/// A load with every digit it has, where the reader's unit or the other shows it exactly, and in
/// kilograms otherwise.
pub(crate) fn exact_text(load: Mass, unit: MassUnit) -> String {
    if load.is_exact_in(MassUnit::Kg) || load.is_exact_in(MassUnit::Lb) {
        load_text(load, unit)
    } else {
        decimals(&load.every_digit())
    }
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

/// What is done to each side for a load: `take off 2.5 kg, put on 20 + 5 kg`.
pub(crate) fn change_text(step: &RampStep, unit: MassUnit) -> String {
    let plates = |plates: &[Mass]| plates_short(plates, unit);
    match (step.off.as_slice(), step.on.as_slice()) {
        ([], []) => say::nothing_to_change().to_owned(),
        ([], on) => say::put_on(plates(on)),
        (off, []) => say::take_off(plates(off)),
        (off, on) => say::take_off_put_on(plates(off), plates(on)),
    }
}

/// What a ramp takes altogether.
pub(crate) fn handling_text(ramp: &Ramp) -> String {
    match ramp.proof {
        Proof::Least if ramp.alone > ramp.handled => {
            say::handled_least_together(ramp.handled, ramp.alone)
        }
        Proof::Least => say::handled_least(ramp.handled),
        Proof::NotLess { than } => say::handled_at_least(ramp.handled, than),
    }
}

/// Why a ramp on a bar cannot be built, and what can.
pub(crate) fn ramp_error(error: &RampError, bar: &str, unit: MassUnit) -> String {
    let build = |build: &Build| {
        say::build(exact_text(build.mass, unit), plates_text(&build.per_side, unit))
    };
    let (load, below, above) = match error {
        RampError::Unbuildable { load, below, above, .. } => (load, below, above),
        RampError::TooMany { found } => return say::too_many(MOST_LOADS, found),
    };
    match (below, above) {
        (Some(below), Some(above)) => say::between(load, bar, build(below), build(above)),
        (None, Some(above)) => say::too_light(load, bar, build(above)),
        (Some(below), None) if below.per_side.len() == MAX_PLATES_A_SIDE => {
            say::bar_full(load, bar, build(below), MAX_PLATES_A_SIDE)
        }
        (Some(below), None) => say::too_heavy(load, bar, build(below)),
        (None, None) => say::nothing_to_load(bar),
    }
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};

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
    fn what_cannot_be_built_says_what_can() {
        let build = |plates, each: i64| {
            let per_side = vec![Mass::kg(each); plates];
            Some(Build { mass: Mass::kg(20 + 2 * each * plates as i64), per_side })
        };
        let said = |below, above| {
            let error = RampError::Unbuildable { index: 0, load: Mass::kg(500), below, above };
            ramp_error(&error, "long bar", MassUnit::Kg)
        };
        assert_eq!(
            said(build(10, 10), None),
            "500 kg is heavier than the long bar takes; the heaviest is 220 kg (10 + 10 + 10 + 10 + 10 + 10 \
             + 10 + 10 + 10 + 10 kg a side), with 10 plates a side at most"
        );
        assert_eq!(
            said(build(1, 10), None),
            "500 kg is heavier than this kit builds on the long bar; the heaviest is 40 kg (10 kg a side)"
        );
        assert_eq!(
            said(build(1, 10), build(1, 15)),
            "this kit cannot build 500 kg on the long bar; the nearest are 40 kg (10 kg a side) and 50 kg \
             (15 kg a side)"
        );
    }

    #[test]
    fn plates_are_handled_in_both_languages() {
        let said = |handled, alone, proof| {
            handling_text(&Ramp { steps: Vec::new(), handled, alone, proof })
        };
        let until = "plates put on or taken off each side, until the bar is empty again";
        assert_eq!(said(2, 2, Proof::Least), format!("2 {until}; nothing needs fewer"));
        assert_eq!(
            said(8, 12, Proof::Least),
            format!("8 {until}; 12 with each load built on its own")
        );
        let german = speaking(Language::De, || said(3, 3, Proof::NotLess { than: 2 }));
        assert!(german.starts_with("je Seite 3 Scheiben "), "{german}");
        let step = RampStep {
            build: Build { mass: Mass::kg(60), per_side: Vec::new() },
            off: vec![Mass::kg(5)],
            on: vec![Mass::kg(20)],
        };
        let german = speaking(Language::De, || change_text(&step, MassUnit::Kg));
        assert_eq!(german, "5 kg abnehmen, 20 kg auflegen");
    }
}
