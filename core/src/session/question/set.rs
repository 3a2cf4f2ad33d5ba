//! A set by hand: load, reps, reps in reserve.

use super::super::rows::set_of;
use super::super::set_line::loads_of;
use super::Of;
use super::fields::{Answers, Choice, QuestionField, QuestionScreen};
use super::keys::{saves, waits};
use super::load::{LoadField, example, take_typed};
use crate::load::Reason;
use crate::mass::{Mass, MassUnit};
use crate::plan::Builds;
use crate::say::question as say;
use crate::session::{Key, PieceKindView, SessionState, SetView, Tap};
use crate::words::{self, KeyFor, Remarks};

/// Reps in keys of their own; more are counted by steps.
pub(super) const KEYS: u32 = 12;
/// The most reps that are counted.
pub(super) const MOST_REPS: u32 = 100;
/// The most reps in reserve that anybody can tell.
const MOST_RESERVE: u32 = 5;

/// What stands behind a set by hand.
struct Hand<'a> {
    shown: &'a SetView,
    /// The loads there are; none where the set has no load.
    builds: Option<Builds>,
    answers: Answers,
    /// False where what was typed is no load.
    typed: bool,
}

impl Of<'_> {
    pub(super) fn set(
        &self,
        piece: &str,
        set: u32,
        whole: bool,
        answers: Answers,
    ) -> Option<QuestionScreen> {
        let PieceKindView::Strength { view } = self.kind(piece)? else { return None };
        let shown = set_of(view, set)?;
        let mut answers = answers;
        let lifted = self.snapshot.block.as_ref()?.lifted(&view.exercise);
        let typed = take_typed(&mut answers, lifted, self.screen.unit);
        let builds = loads_of(self.snapshot, piece, view, shown);
        let hand = Hand { shown, builds, answers, typed }.filled();
        let asks_reserve = shown.reason.is_first_time() && shown.done.is_none();
        let whole =
            whole || shown.done.is_some() || (hand.builds.is_some() && shown.load.is_none());
        let mut fields = Vec::new();
        if whole {
            fields.extend(hand.load(self.screen.unit));
        }
        if whole || shown.open {
            fields.push(hand.reps());
        }
        if whole || asks_reserve {
            fields.push(reserve(&hand.answers, asks_reserve));
        }
        Some(QuestionScreen {
            title: if whole { say::what_did_you_lift() } else { say::how_many_reps() }.into(),
            about: Some(view.movement.clone()),
            sign: None,
            fields,
            key: self.set_key(piece, &hand, asks_reserve),
        })
    }

    fn set_key(&self, piece: &str, hand: &Hand<'_>, asks_reserve: bool) -> Key {
        let Hand { shown, builds, answers, typed } = hand;
        if !typed {
            return waits(&say::type_load(example(builds.as_ref(), self.screen.unit)));
        }
        if builds.is_some() && answers.load.is_none() && shown.reason != Reason::Free {
            return waits(say::choose_load());
        }
        let Some(reps) = answers.reps else { return waits(say::choose_reps()) };
        if asks_reserve && answers.reserve.is_none() {
            return waits(say::choose_reserve());
        }
        let load = answers.load.map(|load| words::load_text(load, self.screen.unit));
        let done = words::set_done(load.as_deref(), reps, answers.reserve, Remarks::default());
        let (what, set) = (done.as_str(), shown.set);
        let running = self.screen.state == SessionState::Running;
        let rests = running && !self.screen.afterwards && shown.done.is_none();
        let more = match shown.done {
            Some(_) => Some(say::corrects_set(set)),
            None => words::key_more(&KeyFor::Set { what, set, rests }),
        };
        let tap = Tap::LogSet {
            piece: piece.to_owned(),
            set: Some(set),
            load: answers.load,
            reps: Some(reps),
            reserve: answers.reserve,
        };
        saves(say::save(what), more, tap)
    }
}

impl Hand<'_> {
    /// With what was logged, otherwise what was asked, where nothing is answered.
    fn filled(mut self) -> Self {
        let done = self.shown.done.as_ref();
        let proposed = self.shown.load.as_ref().map(|load| load.mass);
        let answers = &mut self.answers;
        answers.load = answers.load.or(done.and_then(|done| done.load)).or(proposed);
        let asked = (!self.shown.open).then_some(self.shown.asked);
        answers.reps = answers.reps.or(done.map(|done| done.reps)).or(asked);
        answers.reserve = answers.reserve.or(done.and_then(|done| done.reserve));
        self
    }

    fn load(&self, unit: MassUnit) -> Option<QuestionField> {
        let builds = Some(self.builds.as_ref()?);
        let proposed = self.shown.load.as_ref().map(|load| load.mass);
        let named = |load: Mass| (proposed == Some(load)).then(|| say::proposed(load.number(unit)));
        let label = say::load();
        Some(LoadField { label, builds, unit, named: &named, or_none: false }.field(&self.answers))
    }

    fn reps(&self) -> QuestionField {
        let (shown, answers) = (self.shown, &self.answers);
        let then = |reps: u32| Answers { reps: Some(reps), ..answers.clone() };
        match answers.reps {
            Some(reps) if !shown.open || reps > KEYS => {
                QuestionField::count(say::good_reps().into(), (reps, 0..=MOST_REPS), then)
            }
            chosen => {
                let label = Some(say::good_reps().to_owned());
                let mut field = QuestionField::numbers(label, 1..=KEYS, chosen, then);
                if let QuestionField::Choices { choices, .. } = &mut field {
                    let asked = choices.get_mut(shown.asked.saturating_sub(1) as usize);
                    asked.into_iter().for_each(|asked| asked.more.push(say::asked().into()));
                    let more = Choice::new(say::or_more(KEYS + 1), false, then(KEYS + 1));
                    let none = Choice::new("0", chosen == Some(0), then(0));
                    choices.extend([none, more]);
                }
                field
            }
        }
    }
}

/// Reps in reserve. Of a first time they find the next load, and are asked for; otherwise they may be left out.
pub(super) fn reserve(answers: &Answers, asked: bool) -> QuestionField {
    let label = if asked { say::reps_left() } else { say::reps_left_if_known() };
    let then = |left: u32| {
        let again = answers.reserve == Some(left) && !asked;
        Answers { reserve: (!again).then_some(left), ..answers.clone() }
    };
    let label = Some(label.to_owned());
    let mut field = QuestionField::numbers(label, 0..=MOST_RESERVE, answers.reserve, then);
    if let QuestionField::Choices { choices, .. } = &mut field
        && let Some(last) = choices.last_mut()
    {
        last.words = say::or_more(MOST_RESERVE);
    }
    field
}
