//! The readings of a range measure.

use super::Of;
use super::fields::{Answers, Choice, QuestionField, QuestionScreen, TypedNumber};
use super::keys::{saves, waits};
use crate::journal::Range;
use crate::plan::{MeasuredWhen, Protocol};
use crate::say::question as say;
use crate::session::line::tenths;
use crate::session::{PieceKindView, RangeView, SideReading, Tap};
use crate::words;

/// A step: half a centimetre or half a degree. A tape shows no more.
const STEP_TENTHS: i64 = 5;

/// Where the steps begin without an earlier reading. Common practice, no source.
fn usual(protocol: Protocol) -> i64 {
    match protocol {
        Protocol::SitAndReach => 0,
        Protocol::FingertipToFloor | Protocol::KneeToWall => 100,
        Protocol::ShinAngle => 400,
    }
}

/// The reading of a side that is on screen already, the latest.
fn known(range: &RangeView, when: MeasuredWhen, side: Option<u32>) -> Option<i64> {
    let of_side = || range.readings.iter().filter(|reading| reading.side == side);
    let same = of_side().rfind(|reading| reading.when == when);
    same.or_else(|| of_side().next_back()).map(|reading| reading.tenths)
}

impl Of<'_> {
    /// The reading of an earlier day: the latest before the same hold, the same way.
    fn read_last(&self, piece: &str, protocol: Protocol, side: Option<u32>) -> Option<i64> {
        let same = |reading: &&Range| {
            reading.piece == piece && reading.protocol == protocol && reading.side == side
        };
        let last = |when| self.read.iter().filter(same).rfind(|reading| reading.when == when);
        let last = last(MeasuredWhen::Before).or_else(|| last(MeasuredWhen::After))?;
        Some(last.tenths)
    }

    pub(super) fn range(
        &self,
        piece: &str,
        when: MeasuredWhen,
        answers: Answers,
    ) -> Option<QuestionScreen> {
        let PieceKindView::Hold { view } = self.kind(piece)? else { return None };
        let range = view.range.as_ref()?;
        let sides: Vec<Option<u32>> = match range.sides {
            2 => vec![Some(1), Some(2)],
            _ => vec![None],
        };
        let last = |side: Option<u32>| self.read_last(piece, range.protocol, side);
        let begins = |side: &Option<u32>| {
            let known = known(range, when, *side).or_else(|| last(*side));
            known.unwrap_or_else(|| usual(range.protocol))
        };
        let unit = range.protocol.unit();
        // Nothing is taken for read before somebody has touched each side.
        let mut touched = answers.tenths.clone();
        touched.resize(sides.len(), None);
        let mut is_reading = true;
        if let (Some(text), Some(at)) = (&answers.typed, answers.side)
            && let Some(touched) = touched.get_mut(at as usize)
        {
            *touched =
                tenths(text.trim()).filter(|tenths| range.protocol.sane_tenths().contains(tenths));
            is_reading = touched.is_some();
        }
        let answers = Answers { typed: None, side: None, tenths: touched.clone(), ..answers };
        let field = |(at, side): (usize, &Option<u32>)| {
            let to = |next: i64| {
                let mut tenths = touched.clone();
                tenths[at] = Some(next);
                let then = Answers { tenths, ..answers.clone() };
                let sane = range.protocol.sane_tenths().contains(&next);
                sane.then(|| Choice::new(words::tenths(next, unit), false, then))
            };
            let value = touched[at];
            let (less, more) = match value {
                Some(tenths) => (to(tenths - STEP_TENTHS), to(tenths + STEP_TENTHS)),
                None => (to(begins(side) - STEP_TENTHS), to(begins(side))),
            };
            let side_name = words::side_of_two(*side).unwrap_or_else(|| range.name.clone());
            let then = Answers { side: Some(at as u32), ..answers.clone() };
            QuestionField::Stepper {
                label: match last(*side) {
                    Some(last) => say::side_last(side_name, words::tenths(last, unit)),
                    None => side_name,
                },
                value: value.map(|tenths| words::tenths(tenths, unit)),
                unit: None,
                less,
                more,
                typed: Some(TypedNumber { words: say::type_it().into(), then }),
            }
        };
        let fields = sides.iter().enumerate().map(field).collect();
        let readings: Option<Vec<SideReading>> = (sides.iter().zip(&touched))
            .map(|(side, tenths)| Some(SideReading { side: *side, tenths: (*tenths)? }))
            .collect();
        let key = match readings {
            Some(readings) => {
                let said: Vec<String> =
                    (readings.iter()).map(|reading| words::tenths(reading.tenths, unit)).collect();
                let tap = Tap::LogRange { piece: piece.to_owned(), when, readings };
                saves(say::save(words::list(&said)), None, tap)
            }
            None if !is_reading => {
                let sane = range.protocol.sane_tenths();
                let [low, high] =
                    [*sane.start(), *sane.end()].map(|tenths| words::tenths(tenths, unit));
                waits(&say::type_reading(low, high))
            }
            None => waits(say::choose_reading()),
        };
        let title = match when {
            MeasuredWhen::Before => say::measure_before(&range.name),
            MeasuredWhen::After => say::measure_after(&range.name),
        };
        Some(QuestionScreen { title, about: Some(view.stretch.clone()), sign: None, fields, key })
    }
}
