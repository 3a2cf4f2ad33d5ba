//! Loads, plates and the reason for a load.

use super::plain::{count, day, decision, place};
use crate::load::{HardWork, Reason};
use crate::mass::{Mass, MassUnit};

/// A load in the reader's unit; where that is not exact, the exact one behind it.
pub(crate) fn load_text(load: Mass, unit: MassUnit) -> String {
    let other = unit.other();
    if load.is_exact_in(unit) || !load.is_exact_in(other) {
        return load.text(unit);
    }
    format!("{} ({})", load.text(unit), load.text(other))
}

/// The plates of one side, outermost last: `20 + 5 kg a side`, and `20 kg + 45 lb a side` where not
/// all are marked in the bar's unit.
pub(crate) fn plates_text(per_side: &[Mass], unit: MassUnit) -> String {
    if per_side.is_empty() {
        return "empty bar".into();
    }
    if per_side.iter().any(|plate| !plate.is_exact_in(unit)) {
        let plates: Vec<String> = per_side.iter().map(Mass::to_string).collect();
        return format!("{} a side", plates.join(" + "));
    }
    let plates: Vec<String> = per_side.iter().map(|plate| plate.number(unit)).collect();
    format!("{} {} a side", plates.join(" + "), unit.symbol())
}

/// Why a load is what it is, in one line.
pub(crate) fn why(reason: &Reason, unit: MassUnit) -> String {
    let text = |mass: &Mass| load_text(*mass, unit);
    match reason {
        Reason::FirstTime => {
            "first time: choose a light load, log it, and say how many more reps you could have done"
                .into()
        }
        Reason::SayReserve { last, reps } => format!(
            "first time: say how many more than {reps} reps you could have done with {}, and this set \
             gets a load",
            text(last)
        ),
        Reason::Found { last, reps, reserve, leave, capped } => format!(
            "first time: {} for {reps} with {reserve} left; this should leave {leave}{}",
            text(last),
            if *capped { ", at most a fourth more at once" } else { "" }
        ),
        Reason::Percent { percent, max, capped, weeks, low } => format!(
            "{percent} % of about {}, {}what you can lift once now{}",
            text(max),
            lower_end(*low),
            bounds(capped.map(|last| text(&last)), *weeks)
        ),
        Reason::Reserve { reps, leave, max, capped, weeks, low } => format!(
            "{reps} reps should leave {leave}: from about {}, {}what you can lift once now{}",
            text(max),
            lower_end(*low),
            bounds(capped.map(|last| text(&last)), *weeks)
        ),
        Reason::Fixed { capped: None, nearest: false, .. } => "set by the plan".into(),
        Reason::Fixed { planned, capped: None, nearest: true } => {
            format!("the plan says {}: the nearest this bar builds", text(planned))
        }
        Reason::Fixed { planned, capped: Some(last), .. } => format!(
            "the plan says {}; {} last time, and a tenth more is the most in one go",
            text(planned),
            text(last)
        ),
        Reason::Free => "your own choice".into(),
        Reason::Step { last, by, capped, on } => format!(
            "{} on {}, all reps made: {} more{}",
            text(last),
            day(*on),
            text(by),
            cap(*capped)
        ),
        Reason::Earned { last, by, reps, asked, capped, on } => format!(
            "{} on {}, open set {reps} for {asked}: {} more{}",
            text(last),
            day(*on),
            text(by),
            cap(*capped)
        ),
        Reason::Missed { last, set, reps, asked, on } => format!(
            "{} on {}, set {set} stopped at {reps} of {asked}: the same again",
            text(last),
            day(*on)
        ),
        Reason::BackOff { last, percent, on } => {
            format!("{} on {}, missed twice in a row: {percent} % less", text(last), day(*on))
        }
        Reason::EasedIn { last, weeks, percent, on } => format!(
            "{} on {}, {} away: {percent} % less to come back",
            text(last),
            day(*on),
            count(u64::from(*weeks), "week")
        ),
        Reason::Unfinished { last, done, of, on } => format!(
            "{} on {}, {done} of {} done: the same again",
            text(last),
            day(*on),
            count(u64::from(*of), "set")
        ),
        Reason::Flagged { last, place: at, severity, on } => {
            let held = last
                .as_ref()
                .map_or(String::new(), |last| format!("; {} as last time", text(last)));
            format!("{} flagged {severity}/10 on {}: no step up{held}", place(*at), day(*on))
        }
        Reason::NoLegalStep { last, above, allowed, on } => {
            let next = match above {
                Some(above) => {
                    format!("the next build is {}, the cap {}", text(above), text(allowed))
                }
                None => "no heavier build in this room".into(),
            };
            format!("{} on {}; {next}: stay, and add a rep to each set", text(last), day(*on))
        }
        Reason::NotInThisRoom { last, on } => {
            format!(
                "{} on {}; this room cannot build it: the nearest lighter",
                text(last),
                day(*on)
            )
        }
        Reason::Coach { decision: how, last, words } => {
            let last =
                last.as_ref().map_or(String::new(), |last| format!(" (last time {})", text(last)));
            let said = if words.is_empty() { String::new() } else { format!(": \"{words}\"") };
            format!("coach {}{last}{said}", decision(*how))
        }
    }
}

/// A scheme that was never done before starts carefully.
fn lower_end(low: bool) -> &'static str {
    if low { "new in this scheme, so the lower end of " } else { "" }
}

/// What kept a load of somebody's strength lower.
fn bounds(last: Option<String>, weeks: u32) -> String {
    let away = match weeks {
        0 => String::new(),
        weeks => format!("; lighter after {} away", count(u64::from(weeks), "week")),
    };
    let capped = last.map_or(String::new(), |last| {
        format!("; {last} last time, and a tenth more is the most in one go")
    });
    format!("{away}{capped}")
}

/// Why an option is suggested: `squat was worked hard the day before (4 sets): this spares it`.
pub(crate) fn spared(hard: &HardWork) -> String {
    let (pattern, sets) = (hard.pattern.text(), count(hard.from.len() as u64, "set"));
    format!("{pattern} was worked hard the day before ({sets}): this spares it")
}

fn cap(capped: bool) -> &'static str {
    if capped { ", the most in one go" } else { "" }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn loads_read_in_the_athletes_unit_with_the_exact_one_behind() {
        let load = Mass::thousandths(92_500, MassUnit::Kg);
        assert_eq!(load_text(load, MassUnit::Kg), "92.5 kg");
        assert_eq!(load_text(load, MassUnit::Lb), "203.9 lb (92.5 kg)");
        // Neither unit has it exactly, so no exact one is behind it.
        assert_eq!(load_text(load + Mass::lb(1), MassUnit::Lb), "204.9 lb");
        assert_eq!(plates_text(&[Mass::lb(45), Mass::lb(5)], MassUnit::Lb), "45 + 5 lb a side");
        let mixed = [Mass::kg(20), Mass::lb(45)];
        assert_eq!(plates_text(&mixed, MassUnit::Kg), "20 kg + 45 lb a side");
        assert_eq!(plates_text(&[], MassUnit::Lb), "empty bar");
    }
}
