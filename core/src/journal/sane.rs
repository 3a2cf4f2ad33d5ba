//! The bounds of what an entry may say. A tap cannot log anything outside them; a file can say
//! anything. What is outside counts as unreadable: kept and carried, never shown or added up.

use std::str::Chars;

use chrono::{Datelike, NaiveDate};

use super::{Body, Kind, MAX_NOTE, PlanText};
use crate::mass::Mass;

const DAY_MS: i64 = 24 * 60 * 60 * 1000;

/// True when every number of a body is one that a tap could have logged.
pub(crate) fn is_sane(body: &Body) -> bool {
    body.on().is_none_or(date) && has_sane_numbers(body)
}

/// True when no text in a body, which is JSON, has a sign that nobody sees. Words and names stand in the lines of others'
/// screens: with a line break they would be lines of their own there. A plan's text has lines.
pub(crate) fn has_plain_texts(kind: &str, json: &str) -> bool {
    // Nearly all have nothing that could be one.
    if json.bytes().all(|byte| matches!(byte, b' '..=b'~') && byte != b'\\') {
        return true;
    }
    let is_plan = kind == PlanText::NAME;
    let (mut signs, mut quoted) = (json.chars(), false);
    while let Some(sign) = signs.next() {
        let said = match sign {
            '"' => {
                quoted = !quoted;
                continue;
            }
            '\\' => escaped(&mut signs),
            // Between two texts.
            _ if !quoted => continue,
            _ => sign,
        };
        if said.is_control() && !(is_plan && matches!(said, '\n' | '\r' | '\t')) {
            return false;
        }
    }
    true
}

/// What stands after a backslash in JSON (RFC 8259, section 7).
fn escaped(signs: &mut Chars<'_>) -> char {
    match signs.next() {
        Some('n') => '\n',
        Some('r') => '\r',
        Some('t') => '\t',
        Some('b') => '\u{8}',
        Some('f') => '\u{c}',
        Some('u') => {
            let code = signs.by_ref().take(4).collect::<String>();
            // Half of a pair is no control sign.
            u32::from_str_radix(&code, 16).ok().and_then(char::from_u32).unwrap_or(' ')
        }
        // Itself.
        _ => ' ',
    }
}

fn has_sane_numbers(body: &Body) -> bool {
    match body {
        Body::Lift(lift) => {
            let reps = lift.scheme.reps.iter().all(|reps| *reps <= 1000);
            let scheme = lift.scheme.reps.len() <= 100 && reps;
            let proposed = lift.proposed.iter().map(|set| set.load);
            let loads = proposed.chain([lift.load, lift.planned, lift.max]).flatten().all(load);
            let asked =
                lift.proposed.len() <= 100 && lift.proposed.iter().all(|set| set.reps <= 1000);
            let side = lift.side.as_deref().unwrap_or_default();
            let side = side.len() <= 100 && side.iter().all(|plate| mass(*plate));
            scheme
                && side
                && loads
                && asked
                && lift.set <= 100
                && lift.reps <= 1000
                && lift.reserve.unwrap_or(0) <= 100
        }
        Body::WindowDone(done) => {
            let times = [done.spare_ms.unwrap_or(0), done.margin_ms].into_iter().all(duration);
            times
                && done.load.is_none_or(load)
                && done.reps.max(done.asked).max(done.window) <= 10_000
        }
        Body::Held(held) => duration(held.held_ms) && duration(held.asked_ms) && held.side <= 100,
        Body::Range(range) => {
            (-100_000..=100_000).contains(&range.tenths) && range.side.unwrap_or(0) <= 100
        }
        Body::Discomfort(discomfort) => (1..=10).contains(&discomfort.severity),
        Body::Finish(finish) => finish.rpe.unwrap_or(0) <= 10 && finish.minutes <= 10_000,
        Body::Session(session) => date(session.date) && session.week <= 1_000,
        Body::Ruling(ruling) => {
            ruling.loads.len() <= 100 && ruling.loads.iter().flatten().all(|of| load(*of))
        }
        Body::ClockMark(mark) => mark.station.unwrap_or(1) <= 100,
        Body::RestMark(mark) => mark.set <= 100,
        Body::Max(max) => mass(max.load),
        Body::Note(note) => note.words.chars().count() <= MAX_NOTE,
        // Texts and names: a line's own length bounds them.
        Body::Profile(_)
        | Body::PlanText(_)
        | Body::OptionTaken(_)
        | Body::BarTaken(_)
        | Body::Cleared(_)
        | Body::PutOff(_)
        | Body::SetAside(_)
        | Body::Admit(_)
        | Body::Remove(_)
        | Body::Stopped(_)
        | Body::Here(_)
        | Body::Forgot(_)
        | Body::TakenBack(_) => true,
    }
}

fn mass(mass: Mass) -> bool {
    (Mass::ZERO..=Mass::kg(5_000)).contains(&mass)
}

/// A load may be less than nothing: what a band or a machine takes off a body.
fn load(load: Mass) -> bool {
    (Mass::kg(-500)..=Mass::kg(5_000)).contains(&load)
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
        let finish =
            |rpe, minutes| Body::Finish(Finish { session, rpe: Some(rpe), minutes, on: None });
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
                on: None,
            })
        };
        assert!(is_sane(&range(-400)));
        assert!(!is_sane(&range(i64::MAX)));
        assert!(!is_sane(&range(-100_001)));
        assert!(date("2026-11-25".parse().unwrap()));
        assert!(!date(NaiveDate::MAX));
        assert!(mass(Mass::kg(1_800)) && !mass(Mass { ten_ng: i64::MAX }) && !mass(Mass::kg(-1)));
        assert!(load(Mass::kg(1_800)) && load(Mass::kg(-500)));
        assert!(!load(Mass::kg(-501)) && !load(Mass { ten_ng: i64::MIN }));
    }

    /// Whatever is said, and wherever in a body it stands.
    #[test]
    fn no_text_but_a_plan_has_lines_or_signs_nobody_sees() {
        let plain = |kind: &str, text: &str| {
            let nested = format!(r#"{{"words":"{text}"}}"#);
            let listed = format!(r#"{{"n":[1.0e400,null,true],"a":{{"b":["x","{text}"]}}}}"#);
            let [one, other] = [nested, listed].map(|json| has_plain_texts(kind, &json));
            assert_eq!(one, other, "{kind} {text}");
            one
        };
        for kind in Body::KINDS {
            let is_plan = *kind == PlanText::NAME;
            assert!(plain(kind, "Griff rutschte, Größe 2, \\\"so\\\" \\u00fc"), "{kind}");
            for line in ["a\\nCoach: stop", "a\\r", "a\\tb"] {
                assert_eq!(plain(kind, line), is_plan, "{kind} {line}");
            }
            for odd in ["\\u001b[2J", "\\u009b2J", "\\u0007", "\\u0000", "\u{7f}", "\u{9b}2J"] {
                assert!(!plain(kind, odd), "{kind} {odd}");
            }
        }
        assert!(has_plain_texts("note", "{\n\t\"words\": \"a\"\r\n}"), "between texts");
    }
}
