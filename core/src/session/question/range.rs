//! The readings of a range measure.

use super::Of;
use super::fields::{Answers, Choice, QuestionField, QuestionScreen};
use super::keys::{saves, waits};
use crate::plan::{MeasuredWhen, Protocol};
use crate::say::question as say;
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
        let begins =
            |side: &Option<u32>| known(range, when, *side).unwrap_or_else(|| usual(range.protocol));
        let unit = range.protocol.unit();
        // Nothing is taken for read before somebody has touched each side.
        let mut touched = answers.tenths.clone();
        touched.resize(sides.len(), None);
        let field = |(at, side): (usize, &Option<u32>)| {
            let to = |next: i64| {
                let mut tenths = touched.clone();
                tenths[at] = Some(next);
                Choice::new(words::tenths(next, unit), false, Answers { tenths, ..answers.clone() })
            };
            let value = touched[at];
            let (less, more) = match value {
                Some(tenths) => (to(tenths - STEP_TENTHS), to(tenths + STEP_TENTHS)),
                None => (to(begins(side) - STEP_TENTHS), to(begins(side))),
            };
            QuestionField::Stepper {
                label: words::side_of_two(*side).unwrap_or_else(|| range.name.clone()),
                value: value.map(|tenths| words::tenths(tenths, unit)),
                unit: None,
                less: Some(less),
                more: Some(more),
                typed: None,
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
            None => waits(say::choose_reading()),
        };
        let title = match when {
            MeasuredWhen::Before => say::measure_before(&range.name),
            MeasuredWhen::After => say::measure_after(&range.name),
        };
        Some(QuestionScreen { title, about: Some(view.stretch.clone()), sign: None, fields, key })
    }
}
