//! Loads and plates.

use super::name::pattern;
use crate::load::HardWork;
use crate::mass::{Mass, MassUnit};
use crate::plan::Lifted;
use crate::say::{load as say, tap};

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

/// Why an option is suggested: `hard squat work the day before (4 sets): this spares it`.
pub(crate) fn spared(hard: &HardWork) -> String {
    say::spared(hard.from.len(), pattern(hard.pattern))
}

/// Why what is lifted cannot have a load: above zero is what is lifted, from zero up what is added to a body, up
/// to zero what is taken off one.
pub(crate) fn wrong_load(lifted: Lifted, load: Mass, unit: MassUnit) -> Option<String> {
    match lifted {
        Lifted::Bar | Lifted::Bell | Lifted::Pair | Lifted::Body | Lifted::Machine => {
            (load <= Mass::ZERO).then(|| tap::load_zero().to_owned())
        }
        Lifted::Added => (load < Mass::ZERO).then(|| tap::load_below_zero().to_owned()),
        Lifted::Assisted => {
            let less = || load_text(Mass::ZERO - load, unit);
            (load > Mass::ZERO).then(|| tap::load_not_minus(less()))
        }
    }
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};

    use super::*;

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
}
