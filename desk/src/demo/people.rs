//! The demo's members: invented people with simulated bodies.
//!
//! A body here is a largest single load for each movement, a pace, and habits. Reps at a load follow
//! the Epley line backwards (reps = 30 x (largest / load - 1)), which is a way to make up a body and
//! nothing the core knows of.

use chrono::NaiveDate;
use holdfast_core::care::Place;
use holdfast_core::plan::Block;
use holdfast_core::{Mass, MassUnit};

/// A simulated member.
#[derive(Clone, Debug)]
pub(crate) struct Member {
    /// Their name.
    pub(crate) name: String,
    /// The unit they read masses in.
    pub(crate) unit: MassUnit,
    /// The largest single load by movement.
    pub(crate) largest: [(&'static str, Mass); 2],
    /// What they choose the first time, set by set, by movement.
    pub(crate) first: [(&'static str, Vec<Mass>); 2],
    /// Milliseconds a rep in an interval piece.
    pub(crate) pace_ms: i64,
    /// How hard they find a usual session, 0 to 10.
    pub(crate) rpe: u32,
    /// Options they take: movement and option.
    pub(crate) options: &'static [(&'static str, &'static str)],
    /// Discomfort: the week it comes, the piece, where and how bad.
    pub(crate) hurts: Option<(u32, &'static str, Place, u32)>,
    /// Milliseconds of the second side they really hold.
    pub(crate) second_side_ms: i64,
    /// Knee to wall on the first evening in tenths of a centimetre, and gained each week.
    pub(crate) range: (i64, i64),
    /// The last week they come.
    pub(crate) until_week: u32,
}

/// Weeks after the first in which somebody gains range: invented, as all of them are.
pub(crate) const GAINS_FOR: i64 = 8;

impl Member {
    /// True when they come on a date.
    pub(crate) fn is_there(&self, date: NaiveDate, block: &Block) -> bool {
        block.week_of(date).is_some_and(|week| week <= self.until_week)
    }
}

fn kg(loads: &[i64]) -> Vec<Mass> {
    loads.iter().map(|load| Mass::thousandths(load * 100, MassUnit::Kg)).collect()
}

fn lb(loads: &[i64]) -> Vec<Mass> {
    loads.iter().map(|load| Mass::lb(*load)).collect()
}

/// A crew of so many: the six below, and others with bodies and habits like theirs.
pub(crate) fn crew(members: usize) -> Vec<Member> {
    let six = six();
    let member = |index: usize| {
        let (like, round) = (&six[index % six.len()], index / six.len());
        let name =
            if round == 0 { like.name.clone() } else { format!("{} {}", like.name, round + 1) };
        Member { name, ..like.clone() }
    };
    (0..members).map(member).collect()
}

fn six() -> Vec<Member> {
    let usual = Member {
        name: String::new(),
        unit: MassUnit::Kg,
        largest: [("back-squat", Mass::kg(76)), ("bent-row", Mass::kg(53))],
        first: [("back-squat", kg(&[400, 475, 525, 550])), ("bent-row", kg(&[325, 350, 375]))],
        pace_ms: 2_800,
        rpe: 6,
        options: &[],
        hurts: None,
        second_side_ms: 120_000,
        range: (95, 2),
        until_week: u32::MAX,
    };
    vec![
        // Goes up every week.
        Member {
            name: "Ines".into(),
            largest: [("back-squat", Mass::kg(88)), ("bent-row", Mass::kg(58))],
            first: [("back-squat", kg(&[450, 500, 550, 600])), ("bent-row", kg(&[350, 375, 400]))],
            pace_ms: 2_400,
            range: (80, 11),
            ..usual.clone()
        },
        // Reads pounds and lifts on the pound bar.
        Member {
            name: "Wyatt".into(),
            unit: MassUnit::Lb,
            largest: [("back-squat", Mass::lb(208)), ("bent-row", Mass::lb(138))],
            first: [("back-squat", lb(&[115, 135, 145, 155])), ("bent-row", lb(&[75, 85, 95]))],
            rpe: 7,
            ..usual.clone()
        },
        // Spares the low back.
        Member {
            name: "Saoirse".into(),
            options: &[
                ("back-squat", "box-squat"),
                ("bent-row", "bench-row"),
                ("bell-swing", "hip-bridge"),
            ],
            range: (102, -1),
            ..usual.clone()
        },
        // His knee complains in the second week.
        Member {
            name: "Bram".into(),
            hurts: Some((2, "Squat", Place::Knee, 5)),
            second_side_ms: 80_000,
            pace_ms: 4_200,
            ..usual.clone()
        },
        // Began close to what she can do, and sticks.
        Member {
            name: "Yuki".into(),
            largest: [
                ("back-squat", Mass::thousandths(68_500, MassUnit::Kg)),
                ("bent-row", Mass::kg(52)),
            ],
            first: [("back-squat", kg(&[450, 500, 550, 575])), ("bent-row", kg(&[325, 350, 375]))],
            rpe: 8,
            ..usual.clone()
        },
        // Comes for a week and is not seen again.
        Member { name: "Søren".into(), until_week: 1, ..usual },
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    /// However long the demo plays, and however many: the reading is one that can be logged, 0 to 30 cm.
    #[test]
    fn nobody_reaches_further_than_can_be_logged() {
        for member in crew(60) {
            let (first, gained) = member.range;
            for weeks in 0..=GAINS_FOR {
                let at = first + weeks * gained;
                assert!((0..=300 - 8 - 4).contains(&(at - 4)), "{}: {at}", member.name);
            }
        }
    }
}
