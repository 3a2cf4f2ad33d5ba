//! A block: days that repeat for some weeks in one room.

use chrono::{Datelike, Days, NaiveDate, Weekday};
use serde::{Deserialize, Serialize};

use super::{
    Bar, Exercise, Kit, Lifted, Machine, Movement, MovementOption, Pattern, Piece, PieceKind,
    Strength, Stretch, is_called,
};
use crate::mass::MassUnit;

/// A coach's plan for some weeks.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Block {
    /// Names the block: publishing the same name again replaces it.
    pub name: String,
    /// The first day of week 1, a Monday.
    pub starts: NaiveDate,
    /// How many weeks.
    pub weeks: u32,
    /// Weeks that are made easier.
    #[serde(default)]
    pub easy: Option<Easy>,
    /// What the room has.
    pub kit: Kit,
    /// Movements that pieces refer to.
    pub movements: Vec<Movement>,
    /// Stretches that pieces refer to.
    pub stretches: Vec<Stretch>,
    /// Training days.
    pub days: Vec<Day>,
}

/// Weeks that are made easier: what is lifted in them changes no later load.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Easy {
    /// Which, counted from 1.
    pub weeks: Vec<u32>,
    /// How much lighter, in percent of the load that would be proposed.
    pub percent: u32,
    /// How many sets fewer; at least one is left.
    pub sets: u32,
}

/// A training day and when it comes round.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Day {
    /// The name on screen, unique in the block.
    pub name: String,
    /// Weekdays it is trained on.
    pub on: Vec<Weekday>,
    /// Weeks it is trained in, counted from 1; all of them when empty.
    pub weeks: Vec<u32>,
    /// What is done, in order.
    pub pieces: Vec<Piece>,
}

/// A day of a block on a date.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Planned {
    /// The date.
    pub date: NaiveDate,
    /// The week of the block, counted from 1.
    pub week: u32,
    /// The day's name.
    pub day: String,
}

impl Block {
    /// The last day of the last week.
    pub fn ends(&self) -> NaiveDate {
        let days = u64::from(self.weeks).saturating_mul(7).saturating_sub(1);
        self.starts.checked_add_days(Days::new(days)).unwrap_or(NaiveDate::MAX)
    }

    /// The week `date` falls in, counted from 1, when it falls in the block.
    pub fn week_of(&self, date: NaiveDate) -> Option<u32> {
        if date < self.starts || date > self.ends() {
            return None;
        }
        u32::try_from((date - self.starts).num_days() / 7 + 1).ok()
    }

    /// What makes the week of `date` easier, where it is an easy one.
    pub fn easy_on(&self, date: NaiveDate) -> Option<&Easy> {
        let week = self.week_of(date)?;
        self.easy.as_ref().filter(|easy| easy.weeks.contains(&week))
    }

    /// The days planned on `date`, in the order they were written.
    pub fn on(&self, date: NaiveDate) -> Vec<Planned> {
        let Some(week) = self.week_of(date) else { return Vec::new() };
        self.days
            .iter()
            .filter(|day| day.on.contains(&date.weekday()))
            .filter(|day| day.weeks.is_empty() || day.weeks.contains(&week))
            .map(|day| Planned { date, week, day: day.name.clone() })
            .collect()
    }

    /// The first day planned on or after `date`.
    pub fn next_from(&self, date: NaiveDate) -> Option<Planned> {
        let first = date.max(self.starts);
        first
            .iter_days()
            .take_while(|date| *date <= self.ends())
            .find_map(|date| self.on(date).into_iter().next())
    }

    /// Every planned day up to and including `until`.
    pub fn planned_until(&self, until: NaiveDate) -> Vec<Planned> {
        let last = until.min(self.ends());
        let dates = self.starts.iter_days().take_while(|date| *date <= last);
        dates.flat_map(|date| self.on(date)).collect()
    }

    /// Finds a day by name.
    pub fn day(&self, name: &str) -> Option<&Day> {
        self.days.iter().find(|day| day.name == name)
    }

    /// Finds the first piece of sets of a name, on whatever day.
    pub fn strength(&self, piece: &str) -> Option<&Strength> {
        let named = self.days.iter().filter_map(|day| day.piece(piece));
        let mut strengths = named.filter_map(|piece| match &piece.kind {
            PieceKind::Strength(strength) => Some(strength),
            _ => None,
        });
        strengths.next()
    }

    /// Finds a movement by key.
    pub fn movement(&self, key: &str) -> Option<&Movement> {
        self.movements.iter().find(|movement| movement.key == key)
    }

    /// Finds a movement, and the option of it if one is meant.
    pub fn lifted_in(&self, exercise: &Exercise) -> Option<(&Movement, Option<&MovementOption>)> {
        let movement = self.movement(&exercise.movement)?;
        match &exercise.option {
            None => Some((movement, None)),
            Some(option) => Some((movement, Some(movement.option(option)?))),
        }
    }

    /// What carries the load of a movement, or an option of one.
    pub fn lifted(&self, exercise: &Exercise) -> Option<Lifted> {
        let (movement, option) = self.lifted_in(exercise)?;
        Some(option.map_or(movement.lifted, |option| option.lifted))
    }

    /// The bar for an exercise in a piece, or whatever the piece: the one that the piece names,
    /// otherwise the option, otherwise the movement; otherwise the first that is marked in `unit`.
    pub fn bar_for(
        &self,
        piece: Option<&Strength>,
        exercise: &Exercise,
        unit: MassUnit,
    ) -> Option<&Bar> {
        let lifted = self.lifted_in(exercise);
        let named = piece
            .and_then(|piece| piece.bar.as_deref())
            .or_else(|| lifted.and_then(|(_, option)| option?.bar.as_deref()))
            .or_else(|| lifted.and_then(|(movement, _)| movement.bar.as_deref()));
        named.and_then(|name| self.kit.bar(name)).or_else(|| self.kit.bar_for(unit))
    }

    /// The machine for an exercise: the one that the option names, otherwise the movement; otherwise the
    /// kit's first.
    pub fn machine_for(&self, exercise: &Exercise) -> Option<&Machine> {
        let lifted = self.lifted_in(exercise);
        let named = lifted
            .and_then(|(_, option)| option?.machine.as_deref())
            .or_else(|| lifted.and_then(|(movement, _)| movement.machine.as_deref()));
        named.and_then(|name| self.kit.machine(name)).or_else(|| self.kit.machines.first())
    }

    /// What the body does in a movement, or an option of one.
    pub fn pattern_of(&self, exercise: &Exercise) -> Option<Pattern> {
        let (movement, option) = self.lifted_in(exercise)?;
        Some(option.map_or(movement.pattern, |option| option.pattern))
    }

    /// The name of a movement, an option or a stretch; its key where this block does not know it.
    pub fn name_of(&self, exercise: &Exercise) -> String {
        let lifted = self.lifted_in(exercise);
        let lifted =
            lifted.map(|(movement, option)| option.map_or(&movement.name, |option| &option.name));
        let stretched = || self.stretch(&exercise.movement).map(|stretch| &stretch.name);
        lifted.or_else(stretched).map_or_else(|| exercise.to_string(), String::clone)
    }

    /// The movement, or the option of one, that a text names by key or by name, in whatever case.
    pub fn lifted_named(&self, text: &str) -> Option<Exercise> {
        let same = |name: &str| is_called(name, text);
        self.movements.iter().find_map(|movement| {
            if same(&movement.key) || same(&movement.name) {
                return Some(movement.exercise(None));
            }
            let named = movement.options.iter().find(|option| {
                let exercise = movement.exercise(Some(&option.key));
                same(&option.key) || same(&option.name) || same(&exercise.to_string())
            });
            named.map(|option| movement.exercise(Some(&option.key)))
        })
    }

    /// The movement, option or stretch that a text names by key or by name, in whatever case.
    pub fn named(&self, text: &str) -> Option<Exercise> {
        let same = |name: &str| is_called(name, text);
        let stretch = || self.stretches.iter().find(|of| same(&of.key) || same(&of.name));
        self.lifted_named(text).or_else(|| Some(Exercise::of(&stretch()?.key)))
    }

    /// Finds a stretch by key.
    pub fn stretch(&self, key: &str) -> Option<&Stretch> {
        self.stretches.iter().find(|stretch| stretch.key == key)
    }
}

impl Day {
    /// Finds a piece by name.
    pub fn piece(&self, name: &str) -> Option<&Piece> {
        self.pieces.iter().find(|piece| piece.name == name)
    }
}
