//! What a typed line means at the row at hand: the same words in every shell that has a keyboard.

mod flag;
mod set;

use super::screen::{PieceKindView, Question, Row, SessionScreen, SessionState};
use super::tap::{SideReading, Tap};
use crate::care::{Place, Sign};
use crate::clock::Act;
use crate::error::{Error, Field, Result};
use crate::instant::Millis;
use crate::journal::{Part, Until};
use crate::plan::MeasuredWhen;

/// What a line asks for.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum Typed {
    /// A tap.
    Tap {
        /// The tap.
        tap: Tap,
    },
    /// To show the whole day.
    Sheet,
    /// To say what can be typed.
    Help,
    /// To leave the session open.
    Leave,
}

fn tap(tap: Tap) -> Result<Typed> {
    Ok(Typed::Tap { tap })
}

fn wrong(reason: impl Into<String>) -> Error {
    Error::invalid(Field::Words, reason)
}

/// Reads a line. An empty one presses the one key.
pub(super) fn read(typed: &str, screen: &SessionScreen) -> Result<Typed> {
    let words: Vec<&str> = typed.split_whitespace().collect();
    let Some((first, rest)) = words.split_first() else { return pressed(screen) };
    match *first {
        "quit" | "q" => return alone(rest, Typed::Leave),
        "?" | "help" => return alone(rest, Typed::Help),
        "sheet" => return alone(rest, Typed::Sheet),
        "undo" => return alone(rest, Typed::Tap { tap: Tap::Undo }),
        "skip" | "later" => return alone(rest, later(screen)?),
        "clear" => return alone(rest, clear(screen)),
        "finish" => return finish(rest),
        "option" => return option(rest, screen),
        "flag" => return flag::read(rest, screen),
        _ => {}
    }
    let Some(row) = &screen.here.row else {
        return Err(wrong("no session is running: Enter begins it"));
    };
    if let Some(act) = act(first)
        && let (Row::Window { piece, .. } | Row::Hold { piece }, rest) = (row, rest)
    {
        return clock(piece, act, rest);
    }
    match row {
        Row::Set { piece, set } => {
            if let Some(answer) = reserve(&words, screen) {
                let (piece, set) = (piece.clone(), Some(*set));
                return tap(Tap::LogSet {
                    piece,
                    set,
                    load: None,
                    reps: None,
                    reserve: Some(answer),
                });
            }
            let (set, words) = numbered("set", &words, *set)?;
            set::read(&words.join(" "), piece, set, screen.unit)
        }
        Row::Window { piece, window } => {
            let (window, words) = numbered("window", &words, *window)?;
            self::window(&words, piece, window)
        }
        Row::Measure { piece, when } => measure(&words, piece, *when, screen),
        Row::Hold { piece } => hold(&words, piece, screen),
        Row::Finish => finish(&words),
    }
}

/// Nothing typed may be ignored in silence.
fn alone(rest: &[&str], typed: Typed) -> Result<Typed> {
    match rest {
        [] => Ok(typed),
        rest => Err(wrong(format!("\"{}\" means nothing here", rest.join(" ")))),
    }
}

/// The one key; where it waits, what for.
fn pressed(screen: &SessionScreen) -> Result<Typed> {
    let key = &screen.here.key;
    match (&key.tap, &screen.here.form) {
        (Some(pressed), _) => tap(pressed.clone()),
        (None, _) if screen.state == SessionState::Finished => Ok(Typed::Leave),
        (None, _) if key.asks == Some(Question::Rpe) => {
            Err(wrong("type a rating from 0 to 10, or `finish` to end without one"))
        }
        (None, Some(form)) if key.asks.is_some() => Err(wrong(format!("type {}", form.hint))),
        (None, _) => {
            let more = key.more.as_ref().map_or(String::new(), |more| format!(". {more}"));
            Err(wrong(format!("{}{more}", key.words)))
        }
    }
}

fn later(screen: &SessionScreen) -> Result<Typed> {
    let Some(row) = &screen.here.row else { return Err(wrong("no session is running")) };
    let (piece, part) = match row {
        Row::Measure { piece, when: MeasuredWhen::Before } => (piece, Part::Before),
        Row::Measure { piece, when: MeasuredWhen::After } => (piece, Part::After),
        Row::Set { piece, .. } | Row::Window { piece, .. } | Row::Hold { piece } => {
            (piece, Part::Work)
        }
        Row::Finish => return Err(wrong("nothing is left to put off")),
    };
    Ok(Typed::Tap { tap: Tap::PutOff { piece: piece.clone(), part, until: Until::Later } })
}

fn clear(screen: &SessionScreen) -> Typed {
    let piece = screen.here.row.as_ref().and_then(Row::piece);
    let piece = screen.pieces.iter().find(|shown| Some(shown.name.as_str()) == piece);
    let flags = piece.map_or(&[][..], |piece| &piece.flags);
    Typed::Tap { tap: Tap::ClearFlags { flags: flags.iter().map(|flag| flag.flag).collect() } }
}

fn finish(rest: &[&str]) -> Result<Typed> {
    let rpe = match rest {
        [] => None,
        [rating] => match rating.parse() {
            Ok(rpe @ 0..=10) => Some(rpe),
            _ => return Err(wrong(format!("\"{rating}\"; a rating from 0 to 10"))),
        },
        more => return Err(wrong(format!("\"{}\"; one rating from 0 to 10", more.join(" ")))),
    };
    tap(Tap::Finish { rpe, minutes: None })
}

/// `option KEY`; `option none` goes back. In an interval piece that is about the window at hand.
fn option(rest: &[&str], screen: &SessionScreen) -> Result<Typed> {
    let row = screen.here.row.as_ref();
    let name = row.and_then(Row::piece);
    let piece = screen.pieces.iter().find(|piece| Some(piece.name.as_str()) == name);
    let options = piece.map_or(&[][..], |piece| &piece.options);
    if options.is_empty() {
        return Err(wrong("there are no options here"));
    }
    let keys: Vec<&str> = options.iter().map(|option| option.key.as_str()).collect();
    let usage = || wrong(format!("say which option: {}, or none", keys.join(", ")));
    let [key] = rest else { return Err(usage()) };
    let at_hand = movement_at_hand(screen);
    let (movement, option) = match options.iter().find(|option| option.key == *key) {
        Some(option) => (Some(option.movement.clone()), Some(option.key.clone())),
        None if *key == "none" => (at_hand, None),
        None => return Err(usage()),
    };
    let piece = name.unwrap_or_default().to_owned();
    tap(Tap::TakeOption { piece, movement, option })
}

/// The movement of the window at hand; a piece with one movement needs none.
fn movement_at_hand(screen: &SessionScreen) -> Option<String> {
    let Some(Row::Window { piece, window }) = &screen.here.row else { return None };
    let piece = screen.pieces.iter().find(|shown| shown.name == *piece)?;
    let PieceKindView::Interval { view } = &piece.kind else { return None };
    let shown = view.windows.iter().find(|shown| shown.window == *window)?;
    Some(shown.exercise.movement.clone())
}

/// A number alone answers what the key asks: `2` to how many reps were left is not two reps done.
fn reserve(words: &[&str], screen: &SessionScreen) -> Option<u32> {
    let [number] = words else { return None };
    let asked = screen.here.key.asks == Some(Question::Reserve);
    number.parse().ok().filter(|_| asked)
}

/// `skip` puts a piece off: a clock's own skip has another word.
fn act(word: &str) -> Option<Act> {
    match word {
        "next" => Some(Act::Skip),
        "skip" => None,
        word => Act::from_text(word),
    }
}

fn clock(piece: &str, act: Act, rest: &[&str]) -> Result<Typed> {
    let station = match (act, rest) {
        (_, []) => None,
        (Act::Begin, [number]) => {
            let number = number.parse();
            Some(number.map_err(|_| wrong("`begin N`, N the station to start at"))?)
        }
        (_, rest) => return Err(wrong(format!("\"{}\" means nothing here", rest.join(" ")))),
    };
    tap(Tap::Clock { piece: piece.to_owned(), act, station })
}

/// `set 2 60 x 7` names another set than the one at hand; the rest of the line says what was done.
fn numbered<'t>(word: &str, words: &[&'t str], next: u32) -> Result<(u32, Vec<&'t str>)> {
    match words {
        [first, number, rest @ ..] if *first == word => {
            let number = number.parse().map_err(|_| wrong(format!("`{word} N`, N a number")))?;
            Ok((number, rest.to_vec()))
        }
        [first] if *first == word => Err(wrong(format!("`{word} N`, N a number"))),
        words => Ok((next, words.to_vec())),
    }
}

fn numbers(words: &[&str], wanted: &str) -> Result<Vec<u32>> {
    let number = |word: &&str| word.parse().map_err(|_| wrong(format!("\"{word}\"; {wanted}")));
    words.iter().map(number).collect()
}

fn window(words: &[&str], piece: &str, window: u32) -> Result<Typed> {
    let numbers = numbers(words, "reps, or reps and seconds to spare: `12` or `12 8`")?;
    let (reps, spare) = match numbers.as_slice() {
        [] => (None, None),
        [reps] => (Some(*reps), None),
        [reps, spare] => (Some(*reps), Some(Millis(i64::from(*spare) * 1000))),
        _ => return Err(wrong("two numbers at the most: reps and seconds to spare")),
    };
    tap(Tap::LogWindow { piece: piece.to_owned(), window: Some(window), reps, spare })
}

fn measure(
    words: &[&str],
    piece: &str,
    when: MeasuredWhen,
    screen: &SessionScreen,
) -> Result<Typed> {
    let sides = sides_of(piece, screen);
    let read: Option<Vec<i64>> = words.iter().map(|word| tenths(word)).collect();
    let read = read.filter(|read| read.len() == sides as usize).ok_or_else(|| {
        wrong(if sides == 2 {
            "two readings, left and right: `10.5 11`; or `skip`"
        } else {
            "one reading: `10.5`; or `skip`"
        })
    })?;
    let side = |index: u32| (sides == 2).then_some(index);
    let readings = (1..).zip(read);
    let readings =
        readings.map(|(index, tenths)| SideReading { side: side(index), tenths }).collect();
    tap(Tap::LogRange { piece: piece.to_owned(), when, readings })
}

fn sides_of(piece: &str, screen: &SessionScreen) -> u32 {
    let piece = screen.pieces.iter().find(|shown| shown.name == piece);
    match piece.map(|piece| &piece.kind) {
        Some(PieceKindView::Hold { view }) => view.sides.len() as u32,
        _ => 1,
    }
}

/// `held 120 60 cramp in the calf`; the word may be left out. What is no number any more is why a side
/// is short.
fn hold(words: &[&str], piece: &str, screen: &SessionScreen) -> Result<Typed> {
    let sides = sides_of(piece, screen);
    let typed = match words {
        ["held", typed @ ..] => typed,
        typed => typed,
    };
    let is_number = |word: &&&str| word.parse::<u32>().is_ok();
    let (seconds, why) = typed.split_at(typed.iter().take_while(is_number).count());
    if seconds.len() != sides as usize {
        let wanted = if sides == 1 { "a number" } else { "a number for each side" };
        return Err(wrong(format!(
            "{wanted}, in whole seconds, 0 for a side left out; words after that say why"
        )));
    }
    let seconds = numbers(seconds, "seconds a side: `held 120 95`")?;
    let held = seconds.into_iter().map(|seconds| Millis(i64::from(seconds) * 1000)).collect();
    let said = (!why.is_empty()).then(|| why.join(" "));
    tap(Tap::LogHold { piece: piece.to_owned(), held, said })
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

/// What can be typed at the row at hand.
pub fn line_help(screen: &SessionScreen) -> String {
    let here = match &screen.here.row {
        Some(Row::Set { .. }) => {
            "  Enter          what the key says\n  7              seven reps at the planned load\n  \
             60 x 7         another load, in your unit\n  60 x 7, 2 left with two reps in reserve\n  \
             set 1 60 x 7   corrects a set\n"
        }
        Some(Row::Window { .. }) => {
            "  Enter          what the key says\n  12             twelve reps\n  12 8           \
             twelve reps, 8 s to spare\n  window 1 12 8  corrects a window\n  begin 2        \
             starts the clock at station 2; `begin` at the first\n  next           the clock: ends this window, goes to the next\n  \
             pause, resume, stop   the clock\n"
        }
        Some(Row::Measure { .. }) => "  10.5 11        the readings, left and right\n",
        Some(Row::Hold { .. }) => {
            "  Enter          what the key says\n  held 120 95    by hand, \
             seconds left and right\n  held 120 60 cramp in the calf   the same, with why a side is short\n  \
             next           the clock: ends this side, goes to the next\n  \
             pause, resume, extend, stop  the clock\n"
        }
        Some(Row::Finish) | None => "  7              the session's rating, 0 to 10\n",
    };
    let always = "  option KEY     take an option; `option none` goes back\n  \
                  flag PLACE N   discomfort, 1 to 10: it stops this movement's progression\n  \
                  clear          clears the flags on this piece\n  \
                  undo           takes back what was logged last, and further each time\n  \
                  skip           puts this piece off; at a reading only the reading\n  \
                  sheet          shows the whole day\n  \
                  finish 7       ends the session, with its rating from 0 to 10\n  \
                  quit           leaves it open to go on later\n";
    let (places, signs) = (Place::words().join(", "), Sign::words().join(", "));
    format!("{here}{always}  places: {places}\n  emergency signs, added after N: {signs}\n")
}
