//! Small words: dates, durations, counts, names of things.

use chrono::NaiveDate;

use crate::care::{Place, Sign};
use crate::journal::Decision;
use crate::plan::{Because, MeasureUnit, Protocol};

/// `Tue 10 Nov`.
pub(crate) fn day(date: NaiveDate) -> String {
    date.format("%a %-d %b").to_string()
}

/// `1 set`, `3 sets`, `3 entries`.
pub(crate) fn count(number: u64, one: &str) -> String {
    match one.strip_suffix("ry") {
        _ if number == 1 => format!("1 {one}"),
        Some(stem) => format!("{number} {stem}ries"),
        None => format!("{number} {one}s"),
    }
}

/// `2 min`, `1 min 30 s`, `45 s`: whole seconds, rounded down, so that nobody is told time that
/// was not held.
pub(crate) fn clock_time(ms: i64) -> String {
    let (minutes, seconds) = (ms / 60_000, ms % 60_000 / 1000);
    match (minutes, seconds) {
        (0, seconds) => format!("{seconds} s"),
        (minutes, 0) => format!("{minutes} min"),
        (minutes, seconds) => format!("{minutes} min {seconds} s"),
    }
}

/// Tenths as a decimal with their unit: `11.5 cm`.
pub(crate) fn tenths(tenths: i64, unit: MeasureUnit) -> String {
    let sign = if tenths < 0 { "-" } else { "" };
    let (whole, rest) = (tenths.abs() / 10, tenths.abs() % 10);
    let symbol = match unit {
        MeasureUnit::Centimetre => " cm",
        MeasureUnit::Degree => "°",
    };
    format!("{sign}{whole}.{rest}{symbol}")
}

/// `a, b and c`.
pub(crate) fn list(items: &[String]) -> String {
    match items {
        [] => String::new(),
        [one] => one.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

pub(crate) fn because(because: Because) -> &'static str {
    match because {
        Because::Grip => "grip",
        Because::LowBack => "low back",
        Because::OverheadRange => "overhead range",
        Because::SoreLegs => "sore legs",
        Because::NoEquipment => "no equipment",
    }
}

pub(crate) fn place(place: Place) -> &'static str {
    match place {
        Place::Neck => "neck",
        Place::Shoulder => "shoulder",
        Place::Elbow => "elbow",
        Place::Wrist => "wrist",
        Place::UpperBack => "upper back",
        Place::LowBack => "low back",
        Place::Hip => "hip",
        Place::Knee => "knee",
        Place::Ankle => "ankle",
        Place::Muscle => "muscle",
        Place::Other => "elsewhere",
    }
}

pub(crate) fn sign(sign: Sign) -> &'static str {
    match sign {
        Sign::SaddleNumbness => "numbness between the legs",
        Sign::BladderOrBowel => "new bladder or bowel trouble",
        Sign::LegWeakness => "a weak leg",
        Sign::PainInBothLegs => "pain into both legs",
        Sign::DarkUrine => "dark urine",
        Sign::ChestPain => "chest pain",
    }
}

pub(crate) fn protocol(protocol: Protocol) -> &'static str {
    match protocol {
        Protocol::SitAndReach => "sit and reach",
        Protocol::FingertipToFloor => "fingertip to floor",
        Protocol::KneeToWall => "knee to wall",
        Protocol::ShinAngle => "shin angle in a lunge",
    }
}

pub(crate) fn decision(decision: Decision) -> &'static str {
    match decision {
        Decision::Accept => "accepted",
        Decision::Change => "changed",
        Decision::Refuse => "refused",
    }
}
