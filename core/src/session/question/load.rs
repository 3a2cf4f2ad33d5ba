//! A load by hand: in steps that the room can build, or typed.

use super::fields::{Answers, Choice, QuestionField, TypedNumber};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Builds, Lifted};
use crate::say::question as say;
use crate::words;

/// Takes what was typed for the load, which is then answered by steps again. False where it is no load that `lifted` can have:
/// nothing may be saved for it, and least of all what was proposed.
pub(super) fn take_typed(answers: &mut Answers, lifted: Option<Lifted>, unit: MassUnit) -> bool {
    let Some(typed) = answers.typed.take() else { return true };
    // A phone's keys for numbers have no minus, and assistance is nothing else.
    let signed = |load: Mass| match lifted {
        Some(Lifted::Assisted) if load > Mass::ZERO => Mass::ZERO - load,
        _ => load,
    };
    answers.no_load = false;
    let load = Mass::parse_signed(&typed, Some(unit)).ok().map(signed);
    answers.load = load.filter(|load| match lifted {
        Some(lifted) => words::wrong_load(lifted, *load, unit).is_none(),
        None => *load > Mass::ZERO,
    });
    answers.load.is_some()
}

/// A load with its neighbours.
pub(super) struct LoadField<'a> {
    /// What it is.
    pub(super) label: &'a str,
    /// The loads there are; none where the room's are not known.
    pub(super) builds: Option<&'a Builds>,
    pub(super) unit: MassUnit,
    /// What stands below the next lighter or heavier load, where that is no plain number.
    pub(super) named: &'a dyn Fn(Mass) -> Option<String>,
    /// True where less than the lightest is no load at all.
    pub(super) or_none: bool,
}

impl LoadField<'_> {
    /// Before one is chosen, more leads to the lightest.
    pub(super) fn field(&self, answers: &Answers) -> QuestionField {
        let unit = self.unit;
        let to = |load: Option<Mass>| {
            let words = match load {
                Some(load) => (self.named)(load).unwrap_or_else(|| load.number(unit)),
                None => say::no_load().to_owned(),
            };
            Choice::new(words, false, Answers { load, no_load: load.is_none(), ..answers.clone() })
        };
        let none = || self.or_none.then(|| to(None));
        let (less, more) = match answers.load {
            Some(load) => {
                let less = self.lighter(load).map(|less| to(Some(less))).or_else(none);
                (less, self.heavier(load))
            }
            None => (none().filter(|_| !answers.no_load), Some(self.lightest())),
        };
        let value = match answers.load {
            Some(load) => Some(load.number(unit)),
            None => answers.no_load.then(|| say::no_load().to_owned()),
        };
        QuestionField::Stepper {
            label: self.label.into(),
            unit: (!answers.no_load).then(|| unit.symbol().into()),
            value,
            less,
            more: more.map(|load| to(Some(load))),
            typed: Some(TypedNumber { words: say::type_it().into(), then: answers.clone() }),
        }
    }

    fn known(&self) -> Option<&Builds> {
        self.builds.filter(|builds| builds.loads().next().is_some())
    }

    fn lightest(&self) -> Mass {
        lightest(self.builds, self.unit)
    }

    fn lighter(&self, load: Mass) -> Option<Mass> {
        match self.known() {
            Some(builds) => builds.below(load).map(|build| build.mass),
            None => Some(load - step(self.unit)).filter(|less| *less > Mass::default()),
        }
    }

    fn heavier(&self, load: Mass) -> Option<Mass> {
        match self.known() {
            Some(builds) => builds.above(load).map(|build| build.mass),
            None => Some(load + step(self.unit)),
        }
    }
}

/// A load to type: the lightest there is, by its number.
pub(super) fn example(builds: Option<&Builds>, unit: MassUnit) -> String {
    lightest(builds, unit).number(unit)
}

fn lightest(builds: Option<&Builds>, unit: MassUnit) -> Mass {
    builds.and_then(Builds::lightest).map_or(step(unit), |build| build.mass)
}

/// Where the room's loads are not known: 2.5 kg or 5 lb. Common practice, no source.
fn step(unit: MassUnit) -> Mass {
    match unit {
        MassUnit::Kg => Mass { ten_ng: MassUnit::Kg.ten_ng() * 5 / 2 },
        MassUnit::Lb => Mass { ten_ng: MassUnit::Lb.ten_ng() * 5 },
    }
}
