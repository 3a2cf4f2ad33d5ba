//! The bounds of what an entry may say. A tap cannot log anything outside them; a file can say
//! anything. What is outside counts as unreadable: kept and carried, never shown or added up.

use chrono::{Datelike, NaiveDate};

use super::Body;
use crate::mass::Mass;

const DAY_MS: i64 = 24 * 60 * 60 * 1000;

/// True when every number of a body is one that a tap could have logged.
pub(crate) fn is_sane(body: &Body) -> bool {
    match body {
        Body::Lift(it) => {
            let reps = it.scheme.reps.iter().all(|reps| *reps <= 1000);
            let scheme = it.scheme.reps.len() <= 100 && reps;
            let loads = [it.load, it.planned].into_iter().flatten().all(mass);
            scheme && loads && it.set <= 100 && it.reps <= 1000 && it.reserve.unwrap_or(0) <= 100
        }
        Body::WindowDone(it) => {
            let times = [it.spare_ms.unwrap_or(0), it.margin_ms].into_iter().all(duration);
            times && it.load.is_none_or(mass) && it.reps.max(it.asked).max(it.window) <= 10_000
        }
        Body::Held(it) => duration(it.held_ms) && duration(it.asked_ms) && it.side <= 100,
        Body::Range(it) => (-100_000..=100_000).contains(&it.tenths) && it.side.unwrap_or(0) <= 100,
        Body::Discomfort(it) => (1..=10).contains(&it.severity),
        Body::Finish(it) => it.rpe.unwrap_or(0) <= 10 && it.minutes <= 10_000,
        Body::Session(it) => date(it.date) && it.week <= 1_000,
        Body::Ruling(it) => it.loads.len() <= 100 && it.loads.iter().flatten().all(|it| mass(*it)),
        Body::ClockMark(it) => it.station.unwrap_or(1) <= 100,
        Body::RestMark(it) => it.set <= 100,
        // Texts and names: a line's own length bounds them.
        Body::Profile(_)
        | Body::PlanText(_)
        | Body::OptionTaken(_)
        | Body::Cleared(_)
        | Body::PutOff(_)
        | Body::TakenBack(_) => true,
    }
}

fn mass(mass: Mass) -> bool {
    (Mass::ZERO..=Mass::kg(5_000)).contains(&mass)
}

fn duration(ms: i64) -> bool {
    (0..=DAY_MS).contains(&ms)
}

fn date(date: NaiveDate) -> bool {
    (1970..=9999).contains(&date.year())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::id::{RecordId, random};
    use crate::journal::{Finish, Range};
    use crate::plan::{MeasuredWhen, Protocol};

    #[test]
    fn what_no_tap_can_log_does_not_count() {
        let session = RecordId(random([1; 16]));
        let finish = |rpe, minutes| Body::Finish(Finish { session, rpe: Some(rpe), minutes });
        assert!(is_sane(&finish(10, 600)));
        assert!(!is_sane(&finish(11, 60)));
        assert!(!is_sane(&finish(5, u32::MAX)));
        let range = |tenths| {
            Body::Range(Range {
                session,
                piece: String::new(),
                protocol: Protocol::KneeToWall,
                when: MeasuredWhen::Before,
                side: None,
                tenths,
            })
        };
        assert!(is_sane(&range(-400)));
        assert!(!is_sane(&range(i64::MAX)));
        assert!(!is_sane(&range(-100_001)));
        assert!(date("2026-11-25".parse().unwrap()));
        assert!(!date(NaiveDate::MAX));
        assert!(mass(Mass::kg(1_800)) && !mass(Mass { ten_ng: i64::MAX }) && !mass(Mass::kg(-1)));
    }
}
