//! What somebody can lift now, and what to expect of it.

use super::plain::decimals;
use crate::load::strength::{Ended, Trend};
use crate::mass::{Mass, MassUnit};
use crate::say;

/// `estimated one-rep max 86 kg, probably 80 to 92`.
pub(crate) fn able(low: Mass, likely: Mass, high: Mass, unit: MassUnit) -> String {
    say::able::max(whole_text(likely, unit), whole(low, unit), whole(high, unit))
}

/// A mass nobody lifts as it stands, such as an estimate: to the whole kilogram or pound, `86 kg`.
pub(super) fn whole_text(mass: Mass, unit: MassUnit) -> String {
    format!("{} {}", whole(mass, unit), unit.symbol())
}

fn whole(mass: Mass, unit: MassUnit) -> i64 {
    mass.for_drawing(unit).round() as i64
}

/// `expect 6 to 9`.
pub(crate) fn expected_reps(low: u32, high: u32) -> String {
    match (low, high) {
        (0, 0) => say::able::no_rep().to_owned(),
        (low, high) if low == high => say::able::reps(low),
        (low, high) => say::able::reps_between(low, high),
    }
}

/// `8 of your last 10 open sets ended inside the expected range`, to the athlete's own eyes or another's;
/// nothing of a single one.
pub(crate) fn ended(ended: Ended, own: bool) -> Option<String> {
    let Ended { inside, of, .. } = ended;
    let said = if own { say::able::ended } else { say::able::ended_of_theirs };
    (of > 1).then(|| said(inside, of))
}

/// `+0.8 % a week over 35 days (-0.1 to +1.7 %)`; says so where it may as well be none.
pub(crate) fn trend(trend: &Trend) -> String {
    let percent = |share: f64| decimals(&format!("{:+.1}", share * 100.0));
    let week = trend.per_week;
    let days = (trend.to - trend.from).num_days();
    let (likely, low, high) = (percent(week.likely), percent(week.low), percent(week.high));
    if week.low < 0.0 && week.high > 0.0 {
        say::able::trend_maybe_none(days, likely, low, high)
    } else {
        say::able::trend(days, likely, low, high)
    }
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};

    use super::*;

    #[test]
    fn an_estimate_is_whole_in_every_unit_and_language() {
        let said = |unit| {
            let [low, likely, high] =
                [80_049, 85_700, 91_800].map(|grams| Mass::thousandths(grams, MassUnit::Kg));
            able(low, likely, high, unit)
        };
        assert_eq!(said(MassUnit::Kg), "estimated one-rep max 86 kg, probably 80 to 92");
        // 176.5, 188.9 and 202.4 lb.
        assert_eq!(said(MassUnit::Lb), "estimated one-rep max 189 lb, probably 176 to 202");
        let german = speaking(Language::De, || (said(MassUnit::Kg), expected_reps(6, 9)));
        assert_eq!(german.0, "geschätztes 1RM 86 kg, wahrscheinlich 80 bis 92");
        assert_eq!(german.1, "6 bis 9 zu erwarten");
    }
}
