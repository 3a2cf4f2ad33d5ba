//! A set that is logged, of whatever day: what was really done, that it is right, or that it was not done.

use super::fields::{Answers, Choice, QuestionField, QuestionScreen};
use super::keys::{saves, waits};
use super::load::{LoadField, example, take_typed};
use super::set::{MOST_REPS, reserve};
use crate::device::Device;
use crate::error::Result;
use crate::id::RecordId;
use crate::say::question as say;
use crate::session::correct::{Own, own};
use crate::session::{Correction, Key, Tap};
use crate::words::{self, Remarks};

/// The question about one of the athlete's own sets.
pub(super) fn logged(
    device: &mut Device,
    lift: RecordId,
    mut answers: Answers,
) -> Result<QuestionScreen> {
    let Own { set, session, builds, lifted, movement, unit } = own(device, lift)?;
    let typed = take_typed(&mut answers, lifted, unit);
    answers.load = answers.load.or(set.load);
    answers.reps = answers.reps.or(Some(set.reps));
    answers.reserve = answers.reserve.or(set.reserve);
    let undone = answers.undone;
    let mut fields = Vec::new();
    if !undone {
        let label = if builds.is_some() { say::load() } else { say::any_load() };
        let load =
            LoadField { label, builds: builds.as_ref(), unit, named: &|_| None, or_none: false };
        fields.extend(set.load.map(|_| load.field(&answers)));
        let reps = (answers.reps.unwrap_or_default(), 0..=MOST_REPS);
        let then = |reps| Answers { reps: Some(reps), ..answers.clone() };
        fields.push(QuestionField::count(say::good_reps().into(), reps, then));
        fields.push(reserve(&answers, false));
    }
    let then = Answers { undone: !undone, ..answers.clone() };
    fields.push(QuestionField::rows(vec![Choice::new(say::was_not_done(), undone, then)]));
    let said = |load: Option<_>, reps, reserve| {
        let load = load.map(|load| words::load_text(load, unit));
        words::set_done(load.as_deref(), reps, reserve, Remarks::default())
    };
    let (was, reps) = (said(set.load, set.reps, set.reserve), answers.reps.unwrap_or_default());
    let is_other = (answers.load, reps, answers.reserve) != (set.load, set.reps, set.reserve);
    let corrects = |correction| Tap::Correct { lift, correction };
    let key = if undone {
        saves(say::take_back(&was), Some(say::not_counted().into()), corrects(Correction::NotDone))
    } else if !typed {
        waits(&say::type_load(example(builds.as_ref(), unit)))
    } else if is_other {
        let Answers { load, reserve, .. } = answers;
        let done = Correction::Done { load, reps: Some(reps), reserve };
        saves(say::save(said(load, reps, reserve)), Some(say::logged_as(&was)), corrects(done))
    } else if set.doubt {
        saves(say::is_right(&was), Some(say::counts_then().into()), corrects(Correction::Right))
    } else {
        Key { more: None, ..waits(say::change_what_is_wrong()) }
    };
    let about = Some(say::set_of(&movement, set.set));
    let title = say::what_lifted_on(words::day(session.date));
    Ok(QuestionScreen { title, about, sign: None, fields, key })
}
