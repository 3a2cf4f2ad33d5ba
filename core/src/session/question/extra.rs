//! A set that nobody planned: which movement, the load, the reps.

use super::Of;
use super::fields::{Answers, Choice, QuestionField, QuestionScreen};
use super::keys::{saves, waits};
use super::set::{KEYS, MOST_REPS, heavier, lighter, step};
use crate::plan::{Builds, Exercise, PieceKind};
use crate::say::question as say;
use crate::session::{SessionState, Tap};
use crate::words::{self, Remarks};

impl Of<'_> {
    /// While a session runs. The plan's movements can be touched; anything else is typed.
    pub(super) fn extra(&self, answers: Answers) -> Option<QuestionScreen> {
        if self.screen.state != SessionState::Running {
            return None;
        }
        let block = self.snapshot.block.as_ref()?;
        let typed = answers.words.as_deref().map(str::trim).filter(|words| !words.is_empty());
        // What the day has sets of is logged there.
        let planned = self.snapshot.day()?.pieces.iter().filter_map(|piece| match &piece.kind {
            PieceKind::Strength(strength) => {
                Some(self.snapshot.exercise(&piece.name, &strength.movement))
            }
            _ => None,
        });
        let planned: Vec<Exercise> = planned.collect();
        let others = block.movements.iter();
        let others = others.filter(|movement| !planned.contains(&Exercise::of(&movement.key)));
        let movements = others.map(|movement| {
            let chosen = typed.is_none() && answers.movement.as_ref() == Some(&movement.key);
            let then = Answers {
                movement: Some(movement.key.clone()),
                words: None,
                load: None,
                ..answers.clone()
            };
            Choice::new(movement.name.clone(), chosen, then)
        });
        let movements: Vec<Choice> = movements.collect();
        let mut fields = Vec::new();
        if !movements.is_empty() {
            fields.push(QuestionField::rows(movements));
        }
        let label = say::or_another_movement().to_owned();
        fields.push(QuestionField::Words { label, then: answers.clone() });
        let movement = typed.map(str::to_owned).or_else(|| answers.movement.clone());
        if let Some(movement) = &movement {
            let builds =
                typed.is_none().then(|| block.builds(&Exercise::of(movement), self.screen.unit));
            fields.push(self.extra_load(builds, &answers));
            fields.push(reps(&answers));
        }
        let key = match (movement, answers.reps) {
            (None, _) => waits(say::choose_movement()),
            (_, None) => waits(say::choose_reps()),
            (Some(movement), Some(reps)) => {
                let load = answers.load.map(|load| words::load_text(load, self.screen.unit));
                let done = words::set_done(load.as_deref(), reps, None, Remarks::default());
                let (load, reserve) = (answers.load, None);
                let named =
                    typed.map_or_else(|| block.name_of(&Exercise::of(&movement)), str::to_owned);
                saves(
                    say::save(&done),
                    // With no load too it has to be seen what is saved.
                    Some(match answers.load {
                        Some(_) => named,
                        None => say::without_load(named),
                    }),
                    Tap::LogExtra { movement, set: None, load, reps: Some(reps), reserve },
                )
            }
        };
        let title = say::what_else().to_owned();
        let about = self.screen.day.clone();
        Some(QuestionScreen { title, about, sign: None, fields, key })
    }

    /// In steps that the room can build, where the plan says what is lifted. Less than the lightest is none.
    fn extra_load(&self, builds: Option<&Builds>, answers: &Answers) -> QuestionField {
        let unit = self.screen.unit;
        let to = |load: Option<crate::mass::Mass>| Answers { load, ..answers.clone() };
        let choice = |load: Option<crate::mass::Mass>| {
            let words = load.map_or_else(|| say::no_load().to_owned(), |load| load.number(unit));
            Choice::new(words, false, to(load))
        };
        let (less, more) = match (answers.load, builds) {
            (Some(load), Some(builds)) => {
                (Some(choice(lighter(builds, load, unit))), heavier(builds, load, unit))
            }
            (Some(load), None) => {
                let less = load - step(unit);
                (Some(choice((less > Default::default()).then_some(less))), Some(load + step(unit)))
            }
            (None, builds) => {
                let lightest = builds.and_then(Builds::lightest).map(|build| build.mass);
                (None, lightest.or(Some(step(unit))))
            }
        };
        QuestionField::Stepper {
            label: if builds.is_some() { say::load() } else { say::any_load() }.into(),
            value: answers.load.map(|load| load.number(unit)),
            unit: Some(unit.symbol().into()),
            less,
            more: more.map(|load| choice(Some(load))),
        }
    }
}

fn reps(answers: &Answers) -> QuestionField {
    let then = |reps: u32| Answers { reps: Some(reps), ..answers.clone() };
    match answers.reps {
        Some(reps) if reps > KEYS => {
            QuestionField::count(say::good_reps().into(), (reps, 0..=MOST_REPS), then)
        }
        chosen => {
            let label = Some(say::good_reps().to_owned());
            let mut field = QuestionField::numbers(label, 1..=KEYS, chosen, then);
            if let QuestionField::Choices { choices, .. } = &mut field {
                choices.push(Choice::new(say::or_more(KEYS + 1), false, then(KEYS + 1)));
            }
            field
        }
    }
}
