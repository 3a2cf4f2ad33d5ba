//! Plates for loads somebody asks about: needs a kit and no device.

use serde::Serialize;

use super::bar::side_view;
use super::screen::PlateView;
use crate::error::{Error, Field, Result, Thing};
use crate::load::{RampError, WarmUpFor, ramp_with_warm_up, warm_up};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Bar, Builds, Kit, read_kit};
use crate::say::plates as say;
use crate::words;

/// What is asked.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PlatesAsked {
    /// The loads in order, as typed: `92.5 kg`, `205lb`.
    pub loads: Vec<String>,
    /// The bar's name; without it, the first bar marked in the first load's unit, else the first.
    pub bar: Option<String>,
    /// True to begin with the warm-up for the first load.
    pub warm_up: bool,
    /// True where the lift starts on the floor: its warm-up has no set with the empty bar.
    pub from_floor: bool,
}

/// The builds of some loads on one bar, in words.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct PlatesScreen {
    /// One line: the bar and what it weighs empty.
    pub heading: String,
    /// One for each load, in order.
    pub steps: Vec<PlatesStep>,
    /// Plates put on or taken off a side over all steps, until the bar is empty again.
    pub handled: u32,
    /// The same were each load built on its own, with the fewest plates.
    pub alone: u32,
    /// The same in words, and whether fewer would do.
    pub handling: String,
}

/// One load.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct PlatesStep {
    /// The load.
    pub mass: Mass,
    /// The load in words.
    pub load: String,
    /// Reps of a warm-up set; none for a load that was asked for.
    pub warm_up_reps: Option<u32>,
    /// The plates of a side, from the inside outwards.
    pub per_side: Vec<Mass>,
    /// The same to draw.
    pub plates: Vec<PlateView>,
    /// The same in words.
    pub build: String,
    /// What to do to each side, in words.
    pub change: String,
    /// Plates put on or taken off a side.
    pub handled: u32,
}

/// The builds of some loads on one bar of a kit, with the least plate handling. `text` is a plan, of
/// which only `[kit]` is read, or has only that; `source_name` is what errors call it.
///
/// # Errors
/// Every problem of the kit; a load that is none or that the kit cannot build, with the nearest it can; a
/// bar the kit has not.
pub(crate) fn plates(source_name: &str, text: &[u8], asked: &PlatesAsked) -> Result<PlatesScreen> {
    let kit = read_kit(text)
        .map_err(|problems| Error::Plan { source_name: source_name.to_owned(), problems })?;
    let loads = asked.loads.iter().map(|text| load(text)).collect::<Result<Vec<Mass>>>()?;
    let [first, ..] = loads.as_slice() else {
        return Err(Error::invalid(Field::Load, say::name_one()));
    };
    let bar = bar(&kit, asked, *first)?;
    let builds = Builds::bar(&kit, bar);
    let sets = if asked.warm_up {
        let lift = WarmUpFor { from_floor: asked.from_floor, warm: false };
        warm_up(&builds, *first, lift, kit.warm_up_rule(bar.unit))
    } else {
        Vec::new()
    };
    let ramp = ramp_with_warm_up(&builds, &sets, &loads).map_err(|error| {
        let of_one = matches!(&error, RampError::Unbuildable { index, .. } if *index >= sets.len());
        let field = if of_one { Field::Load } else { Field::Loads };
        Error::invalid(field, words::ramp_error(&error, &bar.name, bar.unit))
    })?;
    let steps = ramp.steps.iter().enumerate().map(|(at, step)| PlatesStep {
        mass: step.build.mass,
        load: words::exact_text(step.build.mass, bar.unit),
        warm_up_reps: sets.get(at).map(|set| set.reps),
        plates: side_view(&step.build.per_side, Some(step), bar.unit),
        per_side: step.build.per_side.clone(),
        build: words::plates_text(&step.build.per_side, bar.unit),
        change: words::change_text(step, bar.unit),
        handled: step.handled(),
    });
    Ok(PlatesScreen {
        heading: bar_text(bar),
        steps: steps.collect(),
        handled: ramp.handled,
        alone: ramp.alone,
        handling: words::handling_text(&ramp),
    })
}

fn load(text: &str) -> Result<Mass> {
    // What was typed may hold anything, line breaks too.
    let typed = text.escape_debug();
    let wrong = match Mass::parse(text, None) {
        Ok(Mass::ZERO) => say::above_zero(typed),
        Ok(load) => return Ok(load),
        Err(error) => say::not_a_load(typed, error),
    };
    Err(Error::invalid(Field::Load, wrong))
}

fn bar<'k>(kit: &'k Kit, asked: &PlatesAsked, first: Mass) -> Result<&'k Bar> {
    let unit = if first.is_exact_in(MassUnit::Kg) { MassUnit::Kg } else { MassUnit::Lb };
    let Some(name) = &asked.bar else {
        // The reader refuses a kit without a bar.
        return kit.bar_for(unit).ok_or_else(|| Error::missing(Thing::Bar, say::no_bar()));
    };
    bar_typed(kit, name)
}

/// The bar of a kit that somebody typed.
pub(super) fn bar_typed<'k>(kit: &'k Kit, typed: &str) -> Result<&'k Bar> {
    kit.bar_typed(typed).ok_or_else(|| {
        let reason = say::no_such_bar(words::list(&kit.bar_names()));
        Error::not_found(Thing::Bar, typed, reason)
    })
}

/// A bar in one line: its name and what it weighs empty, collars included.
pub(super) fn bar_text(bar: &Bar) -> String {
    let (name, mass) = (&bar.name, bar.mass.text(bar.unit));
    if bar.collars == Mass::ZERO {
        return say::bar(name, mass);
    }
    let both = (bar.mass + bar.collars).text(bar.unit);
    say::bar_with_collars(name, mass, bar.collars.text(bar.unit), both)
}
