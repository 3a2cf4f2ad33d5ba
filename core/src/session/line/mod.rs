//! What a typed line means at the row at hand: the same words in every shell that has a keyboard.
//!
//! Nothing typed is ignored in silence: a line means all that it says, or it is refused with a sentence that
//! shows what of it means nothing.

mod correction;
mod extra;
mod flag;
mod help;
mod hold;
mod listed;
mod set;
mod timed;
mod token;

pub(in crate::session) use timed::tenths;

use super::screen::{
    BarView, OptionView, PieceKindView, Question, Row, SessionScreen, SessionState, SideKeyKind,
};
use super::tap::Tap;
use crate::clock::Act;
use crate::error::{Error, Field, Result};
use crate::journal::{Part, Until};
use crate::plan::MeasuredWhen;
use crate::say;

pub(crate) use correction::read_correction;
pub use help::line_help;

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
    // Some keyboards begin every line with a capital.
    let command = first.to_lowercase();
    match command.as_str() {
        "quit" | "q" => return alone(first, rest, Typed::Leave),
        "?" | "help" => return alone(first, rest, Typed::Help),
        "sheet" => return alone(first, rest, Typed::Sheet),
        "undo" => return alone(first, rest, Typed::Tap { tap: Tap::Undo }),
        "skip" | "later" => return alone(first, rest, later(screen)?),
        "right" => return right(first, rest, screen),
        "clear" => return alone(first, rest, clear(screen)),
        "finish" => return finish(rest),
        "option" => return option(rest, screen),
        "bar" => return bar(rest, screen),
        "flag" => return flag::read(rest, screen),
        "extra" => return extra::read(rest, screen),
        "note" => return note(rest, screen, false),
        "private" => return note(rest, screen, true),
        _ => {}
    }
    let Some(row) = &screen.here.row else { return Err(wrong(say::line::session_not_begun())) };
    if let Some(act) = act(&command)
        && let Row::Window { piece, .. } | Row::Hold { piece } = row
    {
        return clock(piece, act, first, rest);
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
            let (set, words) = numbered(Counted::Set, &words, *set)?;
            set::read(&words.join(" "), piece, set, screen.unit)
        }
        Row::Window { piece, window } => {
            let (window, words) = numbered(Counted::Window, &words, *window)?;
            timed::window(&words.join(" "), piece, window)
        }
        Row::Measure { piece, when } => {
            timed::measure(&words, piece, *when, sides_of(piece, screen))
        }
        Row::Hold { piece } => {
            let held = if command == "held" { rest } else { &words[..] };
            hold::read(held, piece, sides_of(piece, screen))
        }
        Row::Finish => finish(&words),
    }
}

/// A command that nothing may follow.
fn alone(command: &str, rest: &[&str], typed: Typed) -> Result<Typed> {
    match rest {
        [] => Ok(typed),
        rest => Err(wrong(say::line::nothing_after(rest.join(" "), command))),
    }
}

/// The one key; where it waits, what for.
fn pressed(screen: &SessionScreen) -> Result<Typed> {
    let key = &screen.here.key;
    match (&key.tap, &screen.here.form) {
        (Some(pressed), _) => tap(pressed.clone()),
        (None, _) if screen.state == SessionState::Finished => Ok(Typed::Leave),
        (None, _) if key.asks == Some(Question::Rpe) && screen.afterwards => {
            Err(wrong(say::line::type_a_rating_and_minutes()))
        }
        (None, _) if key.asks == Some(Question::Rpe) => Err(wrong(say::line::type_a_rating())),
        (None, Some(form)) if key.asks.is_some() => Err(wrong(say::line::type_this(&form.hint))),
        (None, _) => Err(wrong(match &key.more {
            Some(why) => say::line::key_waits(&key.words, why),
            None => key.words.clone(),
        })),
    }
}

fn later(screen: &SessionScreen) -> Result<Typed> {
    let Some(row) = &screen.here.row else { return Err(wrong(say::line::session_not_running())) };
    let (piece, part) = match row {
        Row::Measure { piece, when: MeasuredWhen::Before } => (piece, Part::Before),
        Row::Measure { piece, when: MeasuredWhen::After } => (piece, Part::After),
        Row::Set { piece, .. } | Row::Window { piece, .. } | Row::Hold { piece } => {
            (piece, Part::Work)
        }
        Row::Finish => return Err(wrong(say::line::nothing_to_put_off())),
    };
    Ok(Typed::Tap { tap: Tap::PutOff { piece: piece.clone(), part, until: Until::Later } })
}

/// `right` says what the key beside the one key says; `right 1` names a set of the piece at hand.
fn right(command: &str, rest: &[&str], screen: &SessionScreen) -> Result<Typed> {
    let [number] = rest else { return alone(command, rest, sure(screen)?) };
    let number: u32 = number.parse().map_err(|_| wrong(say::line::not_a_set(*number)))?;
    let name = screen.here.row.as_ref().and_then(Row::piece);
    let piece = screen.pieces.iter().find(|piece| Some(piece.name.as_str()) == name);
    let lift = match piece.map(|piece| &piece.kind) {
        Some(PieceKindView::Strength { view }) => {
            let set = view.sets.iter().find(|set| set.set == number);
            set.and_then(|set| set.done.as_ref()).map(|done| done.lift)
        }
        _ => None,
    };
    lift.map(|lift| Typed::Tap { tap: Tap::Sure { lift } })
        .ok_or_else(|| wrong(say::line::no_set_to_confirm(number)))
}

/// The set that looks like a slip is none: what the key beside the one key says.
fn sure(screen: &SessionScreen) -> Result<Typed> {
    let key = screen.here.side_keys.iter().find(|key| key.kind == SideKeyKind::Sure);
    let sure = key.and_then(|key| key.tap.clone());
    sure.map(|tap| Typed::Tap { tap }).ok_or_else(|| wrong(say::line::nothing_to_confirm()))
}

fn clear(screen: &SessionScreen) -> Typed {
    let piece = screen.here.row.as_ref().and_then(Row::piece);
    let piece = screen.pieces.iter().find(|shown| Some(shown.name.as_str()) == piece);
    let flags = piece.map_or(&[][..], |piece| &piece.flags);
    Typed::Tap { tap: Tap::ClearFlags { flags: flags.iter().map(|flag| flag.flag).collect() } }
}

/// The rating, and how long it took where that is said: `7`, `7 60`, `7, 60 min`.
fn finish(rest: &[&str]) -> Result<Typed> {
    let Some((rating, after)) = rest.split_first() else {
        return tap(Tap::Finish { rpe: None, minutes: None });
    };
    let rpe = match rating.trim_end_matches(',').parse() {
        Ok(rpe @ 0..=10) => rpe,
        _ => return Err(wrong(say::line::not_a_rating(rest.join(" ")))),
    };
    let minutes = match after {
        [] => None,
        [number] => number.parse().ok(),
        [number, unit] if listed::is(unit, say::line::minutes_typed) => number.parse().ok(),
        _ => None,
    };
    if minutes.is_none() && !after.is_empty() {
        return Err(wrong(say::line::not_minutes(after.join(" "))));
    }
    tap(Tap::Finish { rpe: Some(rpe), minutes })
}

/// `option KEY`; `option none` goes back. In an interval piece that is about the window at hand.
fn option(rest: &[&str], screen: &SessionScreen) -> Result<Typed> {
    let row = screen.here.row.as_ref();
    let name = row.and_then(Row::piece);
    let piece = screen.pieces.iter().find(|piece| Some(piece.name.as_str()) == name);
    let options = piece.map_or(&[][..], |piece| &piece.options);
    if options.is_empty() {
        return Err(wrong(say::line::no_options()));
    }
    let keys: Vec<&str> = options.iter().map(|option| option.key.as_str()).collect();
    let keys = keys.join(say::line::between());
    let typed = rest.join(" ");
    let at_hand = movement_at_hand(screen);
    // By its key, or as it is named; a word is enough where no other option has it.
    let is = |text: &str| text.to_lowercase() == typed.to_lowercase();
    let by_name = options.iter().find(|option| is(&option.key) || is(&option.name));
    let part = |option: &&OptionView| {
        !typed.is_empty() && option.name.to_lowercase().contains(&typed.to_lowercase())
    };
    let mut parts = options.iter().filter(part);
    let only = parts.next().filter(|_| parts.next().is_none());
    let (movement, option) = match by_name.or(only) {
        Some(option) => (Some(option.movement.clone()), Some(option.key.clone())),
        None if typed.eq_ignore_ascii_case("none") => (at_hand, None),
        None if typed.is_empty() => return Err(wrong(say::line::which_option(keys))),
        None => return Err(wrong(say::line::not_an_option(typed, keys))),
    };
    let piece = name.unwrap_or_default().to_owned();
    tap(Tap::TakeOption { piece, movement, option })
}

/// `bar NAME`: another bar for the piece at hand.
fn bar(rest: &[&str], screen: &SessionScreen) -> Result<Typed> {
    let (piece, bars) = bars_at_hand(screen);
    if bars.is_empty() {
        return Err(wrong(say::line::no_other_bar()));
    }
    let names: Vec<&str> = bars.iter().map(|bar| bar.name.as_str()).collect();
    match rest.join(" ") {
        typed if typed.is_empty() => {
            Err(wrong(say::line::which_bar(names.join(say::line::between()))))
        }
        bar => tap(Tap::TakeBar { piece: piece.to_owned(), bar }),
    }
}

/// The piece at hand and the bars to choose from for it.
fn bars_at_hand(screen: &SessionScreen) -> (&str, &[BarView]) {
    let name = screen.here.row.as_ref().and_then(Row::piece).unwrap_or_default();
    let piece = screen.pieces.iter().find(|piece| piece.name == name);
    match piece.map(|piece| &piece.kind) {
        Some(PieceKindView::Strength { view }) => (name, &view.bars),
        _ => (name, &[]),
    }
}

/// The movement of the window at hand; a piece with one movement needs none.
fn movement_at_hand(screen: &SessionScreen) -> Option<String> {
    let Some(Row::Window { piece, window }) = &screen.here.row else { return None };
    let piece = screen.pieces.iter().find(|shown| shown.name == *piece)?;
    let PieceKindView::Interval { view } = &piece.kind else { return None };
    let shown = view.windows.iter().find(|shown| shown.window == *window)?;
    Some(shown.exercise.movement.clone())
}

/// `note WORDS`: about the row chosen by hand where it is done, at the end about the session, otherwise about what was
/// logged last.
fn note(words: &[&str], screen: &SessionScreen, private: bool) -> Result<Typed> {
    if words.is_empty() {
        return Err(wrong(if private {
            say::line::private_what()
        } else {
            say::line::note_what()
        }));
    }
    let here = &screen.here;
    let row = match screen.state {
        SessionState::Finished => Some(Row::Finish),
        _ => here.row.clone().filter(|_| here.chosen && here.done),
    };
    tap(Tap::Note { row, words: words.join(" "), private })
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

fn clock(piece: &str, act: Act, command: &str, rest: &[&str]) -> Result<Typed> {
    let station = match (act, rest) {
        (_, []) => None,
        (Act::Begin, rest) => {
            let station = rest.join(" ");
            let number = station.parse();
            Some(number.map_err(|_| wrong(say::line::not_a_station(station)))?)
        }
        (_, rest) => return Err(wrong(say::line::nothing_after(rest.join(" "), command))),
    };
    tap(Tap::Clock { piece: piece.to_owned(), act, station })
}

/// What a piece has several of.
#[derive(Clone, Copy)]
enum Counted {
    Set,
    Window,
}

/// `set 2 60 x 7` names another set than the one at hand; the rest of the line says what was done.
fn numbered<'t, 'w>(of: Counted, words: &'w [&'t str], next: u32) -> Result<(u32, &'w [&'t str])> {
    let (word, which) = match of {
        Counted::Set => ("set", say::line::which_set()),
        Counted::Window => ("window", say::line::which_window()),
    };
    match words {
        [first, rest @ ..] if first.eq_ignore_ascii_case(word) => {
            let (typed, rest) = rest.split_first().ok_or_else(|| wrong(which))?;
            let number = typed.trim_end_matches([',', ':']).parse();
            let number = number.map_err(|_| match of {
                Counted::Set => wrong(say::line::not_a_set(typed)),
                Counted::Window => wrong(say::line::not_a_window(typed)),
            });
            Ok((number?, rest))
        }
        words => Ok((next, words)),
    }
}

/// A whole number, with digits alone.
fn whole(number: &str) -> Result<u32> {
    let digits = number.bytes().all(|byte| byte.is_ascii_digit());
    number.parse().map_err(|_| {
        wrong(if digits { say::line::too_large(number) } else { say::line::not_whole(number) })
    })
}

fn sides_of(piece: &str, screen: &SessionScreen) -> usize {
    let piece = screen.pieces.iter().find(|shown| shown.name == piece);
    match piece.map(|piece| &piece.kind) {
        Some(PieceKindView::Hold { view }) => view.sides.len(),
        _ => 1,
    }
}

#[cfg(test)]
mod tests;
