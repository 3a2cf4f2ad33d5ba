//! A set that nobody planned: which movement, the load, the reps.

use super::Of;
use super::fields::{Answers, Choice, QuestionField, QuestionScreen};
use super::keys::{saves, waits};
use super::load::{LoadField, example, take_typed};
use super::set::{KEYS, MOST_REPS};
use crate::plan::{Builds, Exercise, PieceKind};
use crate::say::question as say;
use crate::session::{SessionState, Tap};
use crate::words::{self, Remarks};

impl Of<'_> {
    /// While a session runs. The plan's movements can be touched; anything else is typed.
    pub(super) fn extra(&self, mut answers: Answers) -> Option<QuestionScreen> {
        if self.screen.state != SessionState::Running {
            return None;
        }
        let block = self.snapshot.block.as_ref()?;
        let words = answers.words.clone();
        let typed = words.as_deref().map(str::trim).filter(|words| !words.is_empty());
        let movement = typed.map(str::to_owned).or_else(|| answers.movement.clone());
        // A name that the plan has means its movement, however it came.
        let exercise = movement.as_ref().and_then(|movement| match typed {
            Some(name) => block.lifted_named(name),
            None => Some(Exercise::of(movement)),
        });
        let lifted = exercise.as_ref().and_then(|exercise| block.lifted(exercise));
        let is_load = take_typed(&mut answers, lifted, self.screen.unit);
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
                no_load: false,
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
        let builds = exercise.map(|exercise| block.builds(&exercise, self.screen.unit));
        if movement.is_some() {
            fields.push(self.extra_load(builds, &answers));
            fields.push(reps(&answers));
        }
        let key = match (movement, answers.reps) {
            (None, _) => waits(say::choose_movement()),
            (Some(_), _) if !is_load => waits(&say::type_load(example(builds, self.screen.unit))),
            (Some(_), _) if answers.load.is_none() && !answers.no_load => {
                waits(say::choose_load_or_none())
            }
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
        let label = if builds.is_some() { say::load() } else { say::any_load() };
        let unit = self.screen.unit;
        LoadField { label, builds, unit, named: &|_| None, or_none: true }.field(answers)
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
