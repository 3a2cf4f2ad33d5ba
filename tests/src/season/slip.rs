//! Slips of the finger: what is typed instead of what was lifted.

use holdfast_core::{Mass, MassUnit};

use super::book::Typed;
use crate::lifters::Chance;

/// What becomes of a slip.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Then {
    /// Corrected before the next set.
    AtOnce,
    /// Corrected so many days later.
    Later(u64),
    /// The coach sets the set aside so many days later.
    Aside(u64),
    /// Nobody ever sees it.
    Never,
}

/// A set typed wrong: ten times the load, a digit dropped, a digit beside the right one, two digits swapped, or
/// the reps' last digit twice.
pub(super) fn slipped(right: Typed, unit: MassUnit, chance: &mut Chance) -> Typed {
    let kind = chance.whole(0, 4);
    let (at, up) = (chance.whole(0, 1) as usize, chance.happens(0.5));
    let tenths = right.load.for_drawing(unit).abs() * 10.0;
    let text = format!("{}", tenths.round() as i64 / 10);
    let mut digits: Vec<u8> = text.bytes().map(|digit| digit - b'0').collect();
    let at = at.min(digits.len() - 1);
    match kind {
        0 => digits.push(0),
        1 if digits.len() > 1 => drop(digits.remove(at)),
        2 => digits[at] = if up { digits[at] + 1 } else { digits[at].wrapping_sub(1) }.min(9),
        3 if digits.len() > 1 => digits.swap(0, 1),
        _ => digits.clear(),
    }
    let whole = digits.iter().fold(0_i64, |whole, digit| whole * 10 + i64::from(*digit));
    let typed = Mass::thousandths(whole * 1000, unit);
    let typed = if right.load < Mass::ZERO { Mass::ZERO - typed } else { typed };
    let most = Mass::kg(900);
    if digits.is_empty() || typed == right.load || whole == 0 || typed > most {
        return Typed { reps: right.reps * 11 + u32::from(right.reps == 0), ..right };
    }
    Typed { load: typed, ..right }
}

/// What becomes of it: one that is asked about is seen at once in six of ten cases, later in three, and set
/// aside by the coach in one; of the others half are seen before the next session.
pub(super) fn then(doubt: bool, chance: &mut Chance) -> Then {
    let share = chance.between(0.0, 1.0);
    match (doubt, share) {
        (true, ..0.6) => Then::AtOnce,
        (true, ..0.9) => Then::Later(chance.whole(1, 5).into()),
        (true, _) => Then::Aside(6),
        (false, ..0.5) => Then::Later(1),
        (false, _) => Then::Never,
    }
}
