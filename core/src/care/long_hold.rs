//! Long static holds right before lifting.

use std::collections::BTreeMap;

use crate::plan::{Day, PieceKind, Technique};

/// From so long on, for one muscle, static stretching was seen to cost strength and power: 4.6 %
/// less, tested 3 to 5 minutes later and mostly without moving in between; shorter ones cost 1.1 %
/// (Behm et al., Appl Physiol Nutr Metab 2016;41:1-11).
pub const LONG_HOLD_MS: i64 = 60_000;

/// Long static holds that come before lifting on the same day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LongHold {
    /// The stretch's key.
    pub stretch: String,
    /// How long it is held a side before the lifting, in milliseconds; several holds added up.
    pub held_ms: i64,
    /// The name of the first strength piece after it.
    pub before: String,
}

/// Finds the stretches of a day that are held still for [`LONG_HOLD_MS`] or more, in one piece or in
/// several, before a strength piece: the usual caution is to hold them after it. Each is named once.
/// Contract-relax is not counted: its study gives no length from which it costs.
pub fn long_holds_before_strength(day: &Day) -> Vec<LongHold> {
    let mut held: BTreeMap<&str, i64> = BTreeMap::new();
    let mut found: Vec<LongHold> = Vec::new();
    for piece in &day.pieces {
        match &piece.kind {
            PieceKind::Hold(hold) if hold.technique == Technique::Static => {
                let sum = held.entry(&hold.stretch).or_default();
                *sum = sum.saturating_add(hold.hold_ms.max(0));
            }
            PieceKind::Strength(_) => {
                for (stretch, held_ms) in &held {
                    let new = found.iter().all(|found| found.stretch != *stretch);
                    if *held_ms >= LONG_HOLD_MS && new {
                        let (stretch, before) = ((*stretch).to_owned(), piece.name.clone());
                        found.push(LongHold { stretch, held_ms: *held_ms, before });
                    }
                }
            }
            _ => {}
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::{Hold, LoadRule, Note, Piece, Scheme, Strength};

    fn hold(stretch: &str, hold_ms: i64, technique: Technique) -> PieceKind {
        let stretch = stretch.to_owned();
        let (contract_ms, relax_ms) = (0, 0);
        let sides = 2;
        PieceKind::Hold(Hold {
            stretch,
            hold_ms,
            sides,
            technique,
            ready_ms: 0,
            switch_ms: 0,
            contract_ms,
            relax_ms,
            measure: None,
        })
    }

    fn lift() -> PieceKind {
        let scheme = Scheme { reps: vec![5], open: false };
        PieceKind::Strength(Strength {
            movement: "squat".into(),
            scheme,
            rest_ms: 0,
            rest_said: false,
            track: None,
            bar: None,
            load: LoadRule::Free,
            start: Vec::new(),
        })
    }

    fn found(work: Vec<PieceKind>) -> Vec<(String, i64, String)> {
        let piece = |(number, kind)| Piece { name: format!("piece {number}"), kind };
        let pieces = (1..).zip(work).map(piece).collect();
        let day = Day { name: "day".into(), on: vec![], weeks: vec![], pieces };
        let lines = long_holds_before_strength(&day).into_iter();
        lines.map(|found| (found.stretch, found.held_ms, found.before)).collect()
    }

    #[test]
    fn only_a_minute_or_more_held_still_before_lifting_counts() {
        use Technique::{ContractRelax, Static};
        let calf = |ms, technique| hold("calf", ms, technique);
        assert_eq!(found(vec![calf(59_999, Static), lift()]), []);
        assert_eq!(found(vec![calf(120_000, ContractRelax), lift()]), []);
        assert_eq!(found(vec![lift(), calf(120_000, Static)]), []);
        assert_eq!(found(vec![calf(i64::MIN, Static), lift()]), []);
        let one = ("calf".to_owned(), 60_000, "piece 2".to_owned());
        assert_eq!(found(vec![calf(60_000, Static), lift(), lift()]), [one]);
    }

    #[test]
    fn holds_of_one_stretch_are_added_up_to_the_lift_they_come_before() {
        let note = PieceKind::Note(Note { text: String::new() });
        let half = || hold("calf", 30_000, Technique::Static);
        let day = vec![half(), lift(), half(), hold("hip", i64::MAX, Technique::Static), note];
        assert_eq!(found(day.clone()), []);
        let day: Vec<PieceKind> = day.into_iter().chain([lift()]).collect();
        let line = |stretch: &str, ms| (stretch.to_owned(), ms, "piece 6".to_owned());
        assert_eq!(found(day), [line("calf", 60_000), line("hip", i64::MAX)]);
    }
}
