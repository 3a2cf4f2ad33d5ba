//! What a typed line means at a step.

use holdfast_core::care::{Place, Sign};
use holdfast_core::clock::Act;
use holdfast_core::companion::Tap;
use holdfast_core::{Mass, MassError, MassUnit};

use super::step::Step;
use super::{clock, measures};

/// The one line shown at the start.
pub(crate) const HELP_LINE: &str =
    "Enter: done as planned. ?: everything else. quit: leave it open.";

/// What a line asks for.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Line {
    /// Taps to do.
    Taps(Vec<Tap>),
    /// Pass over the rest of the piece.
    Skip,
    /// Clear the flags that are open on the piece.
    Clear,
    /// Show the whole sheet.
    Sheet,
    /// Say what can be typed.
    Help,
    /// Leave the session open.
    Quit,
}

/// What can be typed at a step.
pub(crate) fn help(step: &Step) -> String {
    let here = match step {
        Step::Set { .. } => {
            "  Enter          the set as planned\n  7              seven reps at the planned load\n  \
             60 x 7         another load, in your unit\n  60 x 7 r2      with two reps in reserve\n  \
             set 1 60 x 7   corrects a set\n"
        }
        Step::Window { .. } => {
            "  Enter          the window as asked\n  12             twelve reps\n  12 8           \
             twelve reps, 8 s to spare\n  window 1 12 8  corrects a window\n  begin 2        \
             starts the clock at station 2; `begin` at the first\n  next           the clock: ends this window, goes to the next\n  \
             pause, resume, stop   the clock\n"
        }
        Step::Measure { .. } => "  10.5 11        the reading, one a side\n",
        Step::Hold { .. } => {
            "  Enter          starts the clock; again: logs what was held\n  held 120 95    by hand, \
             seconds a side\n  held 120 60 cramp in the calf   the same, with why a side is short\n  \
             next           the clock: ends this side, goes to the next\n  \
             pause, resume, extend, stop  the clock\n"
        }
        Step::Finish => "  7              the session's rating, 0 to 10\n",
    };
    let always = "  option KEY     take an option; `option none` goes back\n  \
                  flag PLACE N   discomfort, 1 to 10: it stops this movement's progression\n  \
                  clear          clears the flags on this piece\n  \
                  undo           takes back what was logged last, and further each time\n  \
                  skip           goes to the next piece for now; at a reading past the reading\n  \
                  sheet          shows the whole day\n  \
                  finish 7       ends the session, with its rating from 0 to 10\n  \
                  quit           leaves it open to go on later\n";
    let (places, signs) = (Place::words().join(", "), Sign::words().join(", "));
    format!("{here}{always}  places: {places}\n  emergency signs, added after N: {signs}\n")
}

/// Reads a line.
///
/// # Errors
/// What can be typed instead.
pub(crate) fn parse(typed: &str, step: &Step, unit: MassUnit) -> Result<Line, String> {
    let words: Vec<&str> = typed.split_whitespace().collect();
    let first = words.first().copied().unwrap_or("");
    match first {
        "quit" | "q" => return Ok(Line::Quit),
        "?" | "help" => return Ok(Line::Help),
        "sheet" => return Ok(Line::Sheet),
        "skip" => return Ok(Line::Skip),
        "clear" => return Ok(Line::Clear),
        "undo" => return Ok(Line::Taps(vec![Tap::Undo])),
        "finish" => return finish(words.get(1).copied()),
        "option" => return option(words.get(1).copied(), step),
        "flag" => return flag(&words, step),
        _ => {}
    }
    let piece = step.name().unwrap_or_default();
    // `skip` passes over a piece: a clock's own skip has another word.
    let act = match first {
        "next" => Some(Act::Skip),
        _ => Act::from_text(first),
    };
    if let (Some(act), Step::Window { .. } | Step::Hold { .. }) = (act, step) {
        let station = words.get(1).filter(|_| act == Act::Begin).map(|word| word.parse());
        let station = station.transpose().map_err(|_| "`begin N`, N the station to start at")?;
        return Ok(Line::Taps(vec![Tap::Clock { piece: piece.to_owned(), act, station }]));
    }
    match step {
        Step::Set { piece, set, .. } => {
            let (set, typed) = numbered("set", &words, typed, *set)?;
            log_set(&typed, piece, set, unit)
        }
        Step::Window { piece, window, .. } => {
            let (window, typed) = numbered("window", &words, typed, *window)?;
            let words: Vec<&str> = typed.split_whitespace().collect();
            let numbers = numbers(&words, "reps, or reps and seconds to spare: `12` or `12 8`")?;
            let (reps, spare) = match numbers.as_slice() {
                [] => (None, None),
                [reps] => (Some(*reps), None),
                [reps, spare] => (Some(*reps), Some(i64::from(*spare) * 1000)),
                _ => return Err("two numbers at the most: reps and seconds to spare".into()),
            };
            let (piece, window) = (piece.clone(), Some(window));
            Ok(Line::Taps(vec![Tap::LogWindow { piece, window, reps, spare_ms: spare }]))
        }
        Step::Measure { piece, when, sides } => {
            let wanted = *sides as usize;
            let read: Option<Vec<i64>> = words.iter().map(|word| tenths(word)).collect();
            match read {
                Some(read) if read.len() == wanted => {
                    Ok(Line::Taps(measures(piece, *when, &read, *sides)))
                }
                _ if wanted == 2 => {
                    Err("two readings, one a side, such as `10.5 11`; or `skip`".into())
                }
                _ => Err("one reading, such as `10.5`; or `skip`".into()),
            }
        }
        Step::Hold { piece, clock: running, sides } => hold(&words, piece, *running, *sides),
        Step::Finish if words.is_empty() => {
            Err("a rating from 0 to 10; `finish` alone ends without one".into())
        }
        Step::Finish => finish(words.first().copied()),
    }
}

/// `set 2 60 x 7` names another set than the next one; the rest of the line says what was done.
fn numbered(word: &str, words: &[&str], typed: &str, next: u32) -> Result<(u32, String), String> {
    match words {
        [first, number, rest @ ..] if *first == word => {
            let number = number.parse().map_err(|_| format!("`{word} N`, N a number"))?;
            Ok((number, rest.join(" ")))
        }
        _ => Ok((next, typed.to_owned())),
    }
}

fn numbers(words: &[&str], wanted: &str) -> Result<Vec<u32>, String> {
    words.iter().map(|word| word.parse().map_err(|_| format!("\"{word}\"; {wanted}"))).collect()
}

fn log_set(typed: &str, piece: &str, set: u32, unit: MassUnit) -> Result<Line, String> {
    let typed = typed.to_lowercase().replace('×', "x");
    let typed = typed.as_str();
    let (done, reserve) = match typed.rsplit_once('r') {
        Some((done, reserve)) if !reserve.is_empty() => {
            let reserve = reserve.trim().parse();
            (done, Some(reserve.map_err(|_| "reps in reserve are a number: `60 x 7 r2`")?))
        }
        _ => (typed, None),
    };
    let (load, reps) = match done.split_once('x') {
        Some((load, reps)) => (Some(load.trim()), reps.trim()),
        None => (None, done.trim()),
    };
    let usage = || format!("\"{typed}\"; reps, or load x reps: `7` or `60 x 7`");
    let load = match load.map(|load| Mass::parse(load, Some(unit))).transpose() {
        Ok(load) => load,
        Err(MassError::Form) => return Err(usage()),
        Err(error) => return Err(format!("\"{typed}\"; {error}")),
    };
    let reps = match reps {
        "" => None,
        reps => Some(reps.parse().map_err(|_| usage())?),
    };
    Ok(Line::Taps(vec![Tap::LogSet {
        piece: piece.to_owned(),
        set: Some(set),
        load,
        reps,
        reserve,
    }]))
}

fn hold(words: &[&str], piece: &str, running: bool, sides: u32) -> Result<Line, String> {
    match words {
        [] if running => Ok(Line::Taps(vec![Tap::LogHold {
            piece: piece.to_owned(),
            held_ms: Vec::new(),
            said: None,
        }])),
        [] => Ok(Line::Taps(clock(piece, Act::Begin))),
        ["held", typed @ ..] if !typed.is_empty() => {
            // What is no number any more is why a side is short.
            let is_number = |word: &&&str| word.parse::<u32>().is_ok();
            let (seconds, why) = typed.split_at(typed.iter().take_while(is_number).count());
            let seconds = numbers(seconds, "seconds a side: `held 120 95`")?;
            if seconds.len() != sides as usize {
                let wanted = if sides == 1 { "a number" } else { "a number for each side" };
                return Err(format!(
                    "{wanted}, in whole seconds, 0 for a side left out; words after that say why"
                ));
            }
            let held_ms = seconds.into_iter().map(|seconds| i64::from(seconds) * 1000).collect();
            let said = (!why.is_empty()).then(|| why.join(" "));
            Ok(Line::Taps(vec![Tap::LogHold { piece: piece.to_owned(), held_ms, said }]))
        }
        _ => Err("Enter for the clock, or the seconds by hand: `held 120 95`".into()),
    }
}

fn finish(effort: Option<&str>) -> Result<Line, String> {
    let effort = effort
        .map(|typed| typed.parse().map_err(|_| format!("\"{typed}\"; a rating from 0 to 10")));
    Ok(Line::Taps(vec![Tap::Finish { effort: effort.transpose()?, minutes: None }]))
}

fn option(key: Option<&str>, step: &Step) -> Result<Line, String> {
    let (Step::Set { piece, options, .. } | Step::Window { piece, options, .. }) = step else {
        return Err("there are no options here".into());
    };
    let keys: Vec<&str> = options.iter().map(|(_, key)| key.as_str()).collect();
    let known = options.iter().find(|(_, known)| Some(known.as_str()) == key);
    // In an interval piece going back is about the window at hand.
    let at_hand = match step {
        Step::Window { movement, .. } => Some(movement.clone()),
        _ => None,
    };
    let (movement, option) = match (key, known) {
        (Some("none"), _) => (at_hand, None),
        (Some(_), Some((movement, key))) => (Some(movement.clone()), Some(key.clone())),
        _ => return Err(format!("say which option: {}, or none", keys.join(", "))),
    };
    Ok(Line::Taps(vec![Tap::TakeOption { piece: piece.clone(), movement, option }]))
}

fn flag(words: &[&str], step: &Step) -> Result<Line, String> {
    let usage =
        || format!("`flag PLACE N`, N from 1 to 10, with one of {}", Place::words().join(", "));
    let [_, place, severity, rest @ ..] = words else { return Err(usage()) };
    let place = Place::from_text(place).ok_or_else(usage)?;
    let severity = severity.parse().map_err(|_| usage())?;
    let Some(piece) = step.name() else { return Err("no piece is left to flag".into()) };
    let piece = piece.to_owned();
    // An interval has several movements: a word that is no sign says which.
    let signs = rest.iter().filter_map(|word| Sign::from_text(word)).collect();
    let movement = rest.iter().find(|word| Sign::from_text(word).is_none());
    let at_hand = match step {
        Step::Window { movement, .. } => Some(movement.clone()),
        _ => None,
    };
    let movement = movement.map(|word| (*word).to_owned()).or(at_hand);
    Ok(Line::Taps(vec![Tap::Flag { piece, movement, place, severity, signs }]))
}

/// `10.5` as 105 tenths.
fn tenths(word: &str) -> Option<i64> {
    let (sign, word) = word.strip_prefix('-').map_or((1, word), |word| (-1, word));
    let word = word.replace(',', ".");
    let (whole, tenth) = word.split_once('.').unwrap_or((&word, "0"));
    let digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
    if whole.is_empty() || whole.len() > 4 || tenth.len() != 1 || !digits(whole) || !digits(tenth) {
        return None;
    }
    Some(sign * (whole.parse::<i64>().ok()? * 10 + tenth.parse::<i64>().ok()?))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn set_step() -> Step {
        Step::Set { piece: "Squat".into(), movement: "Back squat".into(), set: 2, options: vec![] }
    }

    fn set(typed: &str) -> (Option<String>, Option<u32>, Option<u32>) {
        match parse(typed, &set_step(), MassUnit::Kg).unwrap() {
            Line::Taps(taps) => match taps.as_slice() {
                [Tap::LogSet { load, reps, reserve, .. }] => {
                    (load.map(|load| load.to_string()), *reps, *reserve)
                }
                other => panic!("{other:?}"),
            },
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn a_set_is_one_key_or_a_few() {
        assert_eq!(set(""), (None, None, None));
        assert_eq!(set("7"), (None, Some(7), None));
        assert_eq!(set("62.5x7"), (Some("62.5 kg".into()), Some(7), None));
        assert_eq!(set("135 lb x 7 r2"), (Some("135 lb".into()), Some(7), Some(2)));
        assert_eq!(set("7 r 2"), (None, Some(7), Some(2)));
    }

    #[test]
    fn what_makes_no_sense_says_what_would() {
        for typed in ["x", "sixty", "60 x", "-5", "60 x -7", "60 kg", "7 r", "7 rr2"] {
            let read = parse(typed, &set_step(), MassUnit::Kg);
            let fine = matches!(&read, Ok(Line::Taps(taps)) if matches!(taps[0], Tap::LogSet { reps: None, .. }));
            assert!(read.is_err() || fine, "{typed}: {read:?}");
        }
        assert!(parse("flag knee", &set_step(), MassUnit::Kg).unwrap_err().contains("low-back"));
    }

    #[test]
    fn a_hold_by_hand_takes_words_after_its_seconds() {
        let step = Step::Hold { piece: "Calves".into(), clock: true, sides: 2 };
        let held = |typed| match parse(typed, &step, MassUnit::Kg)? {
            Line::Taps(taps) => match taps.as_slice() {
                [Tap::LogHold { held_ms, said, .. }] => {
                    Ok::<_, String>((held_ms.clone(), said.clone()))
                }
                other => panic!("{other:?}"),
            },
            other => panic!("{other:?}"),
        };
        assert_eq!(held("held 120 95"), Ok((vec![120_000, 95_000], None)));
        let why = Some("cramp after 60 s".to_owned());
        assert_eq!(held("held 120 60 cramp after 60 s"), Ok((vec![120_000, 60_000], why)));
        for typed in ["held 120", "held cramp", "held 1 2 3", "held 120 -5", "held 120 9.5"] {
            assert!(held(typed).unwrap_err().contains("a number for each side"), "{typed}");
        }
    }

    #[test]
    fn readings_are_tenths() {
        assert_eq!(tenths("10.5"), Some(105));
        assert_eq!(tenths("-3"), Some(-30));
        assert_eq!(tenths("10,5"), Some(105));
        for word in ["", "x", "10.55", "1.", ".5", "99999", "--1"] {
            assert_eq!(tenths(word), None, "{word}");
        }
    }
}
