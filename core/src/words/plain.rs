//! Small words: dates, durations, counts, names of things.

use chrono::NaiveDate;

use crate::care::{Place, Sign};
use crate::device::Rebuilt;
use crate::load::Decision;
use crate::plan::{Because, MeasureUnit, MeasuredWhen, Protocol};

/// What was put right on opening.
pub(crate) fn rebuilt(rebuilt: &Rebuilt) -> String {
    let Rebuilt { aside, from_leaves, salvaged } = rebuilt;
    let entries = count(*from_leaves, "entry");
    let back = format!("{entries} came back from this device's leaf files");
    match aside {
        Some(aside) => format!(
            "the database was damaged and is kept as {aside}. A new one was built: {back}, and \
             {salvaged} that no leaf held yet from the damaged file"
        ),
        None => format!("the database was missing, or part of it: {back}"),
    }
}

/// What waits for the next exchange.
pub(crate) fn waiting(entries: u64) -> String {
    format!("{} saved here for the next exchange", count(entries, "entry"))
}

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

/// A side's name: of two, left and right; with more, its number; none of one.
pub(crate) fn side(side: u32, of: u32) -> Option<String> {
    match (side, of) {
        (_, ..=1) => None,
        (1, 2) => Some("left".into()),
        (2, 2) => Some("right".into()),
        (side, _) => Some(format!("side {side}")),
    }
}

/// The same where it is only known whether there is another: readings of one side name none.
pub(crate) fn side_of_two(number: Option<u32>) -> Option<String> {
    number.and_then(|number| side(number, 2))
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

/// `before, left: 10.5 cm`.
pub(crate) fn reading(
    when: MeasuredWhen,
    side: Option<u32>,
    reading: i64,
    protocol: Protocol,
) -> String {
    let when = match when {
        MeasuredWhen::Before => "before",
        MeasuredWhen::After => "after",
    };
    let side = side_of_two(side).map_or(String::new(), |side| format!(", {side}"));
    format!("{when}{side}: {}", tenths(reading, protocol.unit()))
}

/// `knee 5/10, flagged Tue 10 Nov`.
pub(crate) fn flagged(at: Place, severity: u32, on: NaiveDate) -> String {
    format!("{} {severity}/10, flagged {}", place(at), day(on))
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
