//! A session: on a full screen where there is one, otherwise line by line, as through a pipe.

mod full;
mod line;
mod step;

use std::io::{BufRead, IsTerminal};

use holdfast_core::Holdfast;
use holdfast_core::clock::Act;
use holdfast_core::companion::{PieceView, SessionScreen, SessionState, Tap};
use holdfast_core::plan::MeasuredWhen;
use owo_colors::OwoColorize;

use crate::args::Session;
use crate::fault::{Fault, Outcome};
use crate::now::now;
use crate::print;
use line::Line;
use step::{Skipped, Step, follow};

/// Runs a session: on a full screen where that is possible and wanted, otherwise line by line.
pub(crate) fn run(companion: &Holdfast, asked: Session) -> Outcome {
    if crate::full::possible() && !asked.plain {
        let noise = asked.quiet.noise();
        return full::run(companion, asked.day, noise);
    }
    by_line(companion, asked.day)
}

/// Runs a session until it is finished, left, or the input ends. Everything logged is on disk when
/// its line says saved.
fn by_line(companion: &Holdfast, day: Option<String>) -> Outcome {
    let mut screen = companion.today(now())?;
    let resumed =
        screen.state == SessionState::Running && day.as_ref().is_none_or(|day| *day == screen.day);
    let mut input = std::io::stdin().lock();
    if screen.state == SessionState::Finished && day.is_none() {
        print::out(&print::sheet(&screen))?;
        print::out(
            "\nFinished. `undo` opens it again, a number rates it anew, Enter leaves it. Another day \
             is begun by its name: session --day NAME\n> ",
        )?;
        let tap = match ask(&mut input)?.as_deref() {
            Some("undo") => Tap::Undo,
            Some(typed) if !typed.is_empty() => match typed.parse() {
                Ok(effort) => Tap::Finish { effort: Some(effort), minutes: None },
                Err(_) => {
                    return Err(Fault::Typed("`undo`, a rating from 0 to 10, or Enter".into()));
                }
            },
            _ => return Ok(()),
        };
        let reopened = tap == Tap::Undo;
        (screen, _) = do_tap(companion, screen, tap)?;
        if !reopened {
            return Ok(());
        }
    } else if !resumed {
        screen = companion.tap(Tap::Begin { day }, now())?;
    }
    print::out(&print::sheet(&screen))?;
    print::out(&format!("\n{}\n", line::HELP_LINE.dimmed()))?;
    let mut skipped = Skipped::default();
    loop {
        // A running clock has moved since the last line.
        screen = companion.today(now())?;
        let step = follow(&screen, &skipped);
        print::out(&format!("\n{}{}\n> ", asked(&screen, &step), prompt(&screen, &step)))?;
        let Some(typed) = ask(&mut input)? else { return left_open(companion) };
        // So has it while the line was typed.
        screen = companion.today(now())?;
        let step = follow(&screen, &skipped);
        if let Some(why) = step::not_yet(&screen, &step).filter(|_| typed.is_empty()) {
            print::out(&format!("{why}\n"))?;
            continue;
        }
        // Pain may come when nothing is left to do: it is flagged on the last piece.
        let late = step == Step::Finish && typed.starts_with("flag");
        let step = if late { last_piece(&screen).unwrap_or(step) } else { step };
        match line::parse(&typed, &step, screen.unit) {
            Ok(Line::Quit) => return left_open(companion),
            Ok(Line::Help) => print::out(&line::help(&step))?,
            Ok(Line::Sheet) => print::out(&print::sheet(&screen))?,
            Ok(Line::Skip) => match step::stays(&screen, &step) {
                Some(instead) => print::out(&format!("not passed over: {instead}\n"))?,
                None => skipped.add(&step),
            },
            Ok(Line::Clear) => {
                let flags = step.flags(&screen);
                if flags.is_empty() {
                    print::out("no flag is open on this piece\n")?;
                }
                for flag in flags {
                    (screen, _) = do_tap(companion, screen, Tap::ClearFlag { flag })?;
                }
            }
            Ok(Line::Taps(taps)) => {
                for tap in taps {
                    let done;
                    (screen, done) = do_tap(companion, screen, tap)?;
                    // What was typed together is taken together: the rest waits for a better line.
                    if !done {
                        break;
                    }
                }
            }
            Err(wrong) => print::out(&format!("{} {wrong}\n", "not understood:".yellow()))?,
        }
        if screen.state == SessionState::Finished {
            return print::out("Finished. The next exchange carries it to your coach.\n");
        }
    }
}

/// The last piece of the day that can be flagged, as a step of it.
fn last_piece(screen: &SessionScreen) -> Option<Step> {
    screen.pieces.iter().rev().find_map(|piece| {
        let piece = match piece {
            PieceView::Strength { view } => view.name.clone(),
            PieceView::Interval { view } => view.name.clone(),
            PieceView::Hold { view } => view.name.clone(),
            PieceView::Note { .. } => return None,
        };
        Some(Step::Hold { piece, sides: 1, clock: false })
    })
}

/// Reads a line; none when the input has ended.
fn ask(input: &mut impl BufRead) -> Outcome<Option<String>> {
    let mut typed = String::new();
    let read =
        input.read_line(&mut typed).map_err(|error| Fault::Typed(format!("input: {error}")))?;
    if !std::io::stdin().is_terminal() {
        // The answer's own line, as a terminal would have echoed it.
        print::out(&format!("{}\n", typed.trim_end()))?;
    }
    Ok((read > 0).then(|| typed.trim().to_owned()))
}

/// Does a tap and says that it is saved; what cannot be is said, and nothing is lost. Says whether
/// it was done.
fn do_tap(companion: &Holdfast, screen: SessionScreen, tap: Tap) -> Outcome<(SessionScreen, bool)> {
    match companion.tap(tap.clone(), now()) {
        Ok(after) => {
            let number = after.saved.map_or(String::new(), |number| format!(" {number}"));
            print::out(&format!("{}{number}: {}\n", "saved".green(), said(&tap, &after)))?;
            if let Tap::Flag { piece, .. } = &tap {
                print::out(&flags_of(&after, piece))?;
            }
            if let Some(doubt) = doubt_of(&after, &tap) {
                let word = "really?".yellow();
                print::out(&format!("  {word} {doubt}; `undo` if it was a slip\n"))?;
            }
            Ok((after, true))
        }
        Err(error) => {
            print::out(&format!("{} {error}\n", "not saved:".red()))?;
            Ok((screen, false))
        }
    }
}

/// What is odd about what a tap logged.
fn doubt_of<'a>(screen: &'a SessionScreen, tap: &Tap) -> Option<&'a str> {
    let doubt = match tap {
        Tap::LogSet { piece, set, .. } => screen.pieces.iter().find_map(|it| match it {
            PieceView::Strength { view } if view.name == *piece => {
                let logged = view.sets.iter().find(|it| Some(it.set) == *set)?;
                logged.done.as_ref().map(|done| done.doubt.as_str())
            }
            _ => None,
        }),
        Tap::LogHold { piece, .. } => screen.pieces.iter().find_map(|it| match it {
            PieceView::Hold { view } if view.name == *piece => Some(view.doubt.as_str()),
            _ => None,
        }),
        _ => None,
    };
    doubt.filter(|doubt| !doubt.is_empty())
}

fn left_open(companion: &Holdfast) -> Outcome {
    companion.settle()?;
    print::out("Left open: everything logged is kept, and `session` goes on from here.\n")
}

/// What a clock asks about, and how the rest stands, a line each.
fn asked(screen: &SessionScreen, step: &Step) -> String {
    let line = match step.piece(screen) {
        Some(PieceView::Strength { .. }) => {
            screen.rest.as_ref().map_or(String::new(), |rest| format!("rest: {}", rest.words))
        }
        Some(PieceView::Interval { view }) => view.ask.clone(),
        Some(PieceView::Hold { view }) => view.ask.clone(),
        Some(PieceView::Note { .. }) | None => String::new(),
    };
    if line.is_empty() { line } else { format!("{}\n", line.yellow()) }
}

fn prompt(screen: &SessionScreen, step: &Step) -> String {
    match (step, step.piece(screen)) {
        (Step::Set { set, .. }, Some(PieceView::Strength { view })) => {
            let shown = view.sets.iter().find(|it| it.set == *set);
            shown.map_or(String::new(), |set| print::set_line(view, set))
        }
        (Step::Window { window, .. }, Some(PieceView::Interval { view })) => {
            let clock = match &view.clock {
                Some(state) => format!(" [{}]", step::interval_text(state)),
                None => " (`begin` starts the clock)".into(),
            };
            let shown = view.windows.iter().find(|it| it.window == *window);
            shown.map_or(String::new(), |window| print::window_line(view, window)) + &clock
        }
        (Step::Measure { when, .. }, Some(PieceView::Hold { view })) => {
            let range = view.range.as_ref();
            let name = range.map_or("", |range| range.name.as_str());
            let sides = range.map_or(1, |range| range.sides);
            let each = if sides == 2 { ", a number for each side" } else { "" };
            let unit = range.map_or("", |range| range.protocol.unit().text());
            format!("{}, {name} {} the hold in {unit}{each}", view.name, when.text())
        }
        (Step::Hold { .. }, Some(PieceView::Hold { view })) => {
            match view.clock.as_ref().filter(|_| step::is_to_log(view)) {
                Some(state) => {
                    format!("{} [{}]: Enter logs what was held", view.name, step::hold_text(state))
                }
                None => {
                    let seconds =
                        vec![(view.hold_ms / 1000).to_string(); view.sides.len()].join(" ");
                    format!("{}: Enter starts the clock, or by hand `held {seconds}`", view.name)
                }
            }
        }
        _ => "All done. How hard was the whole session, 0 to 10?".into(),
    }
}

/// The open flags of a piece, with what to do.
fn flags_of(screen: &SessionScreen, name: &str) -> String {
    let of_it = screen.pieces.iter().map(|piece| match piece {
        PieceView::Strength { view } if view.name == name => print::flags(&view.flags),
        PieceView::Interval { view } if view.name == name => print::flags(&view.flags),
        PieceView::Hold { view } if view.name == name => print::flags(&view.flags),
        _ => String::new(),
    });
    of_it.collect()
}

/// What a tap did, read back from the screen after it.
fn said(tap: &Tap, after: &SessionScreen) -> String {
    match tap {
        Tap::LogSet { piece, set, .. } => {
            let found = after.pieces.iter().find_map(|it| match it {
                PieceView::Strength { view } if view.name == *piece => Some(view),
                _ => None,
            });
            let sets = found.map_or(&[][..], |view| &view.sets);
            let set = set.and_then(|set| sets.iter().find(|it| it.set == set));
            let done = set.and_then(|set| Some((set.set, set.done.as_ref()?)));
            done.map_or(piece.clone(), |(set, done)| {
                let load = if done.load_text.is_empty() {
                    String::new()
                } else {
                    format!("{} x ", done.load_text)
                };
                format!("{piece} set {set}, {load}{}", done.reps)
            })
        }
        Tap::LogWindow { piece, window, .. } => {
            format!("{piece} window {}", window.map_or("next".into(), |window| window.to_string()))
        }
        Tap::LogHold { piece, .. } => {
            let found = after.pieces.iter().find_map(|it| match it {
                PieceView::Hold { view } if view.name == *piece => Some(view),
                _ => None,
            });
            let sides = found.map_or(&[][..], |view| &view.sides);
            let held = sides.iter().filter_map(|side| Some((side, side.held_ms?)));
            let held: Vec<String> = held
                .map(|(side, ms)| {
                    let which = if sides.len() == 1 {
                        String::new()
                    } else {
                        format!("side {} ", side.side)
                    };
                    format!("{which}{} s{}", ms / 1000, print::short(side))
                })
                .collect();
            format!("{piece}, held {}", held.join(", "))
        }
        Tap::LogRange { piece, when, side, tenths } => {
            let side = side.map_or(String::new(), |side| format!("side {side} "));
            format!("{piece}, {} {side}{:.1}", when.text(), *tenths as f64 / 10.0)
        }
        Tap::Clock { piece, act, .. } => format!("{piece} clock, {}", act.text()),
        Tap::TakeOption { piece, option, .. } => {
            format!("{piece}, {}", option.as_deref().unwrap_or("the movement itself"))
        }
        Tap::Flag { piece, place, severity, .. } => {
            format!("{piece}, {} {severity}/10", place.text())
        }
        Tap::ClearFlag { .. } => "flag cleared".into(),
        Tap::Undo => format!("taken back: {}", after.undone),
        Tap::Begin { .. } => "session begun".into(),
        Tap::Finish { .. } => "session finished".into(),
    }
}

/// The taps that a measure typed for each side becomes.
fn measures(piece: &str, when: MeasuredWhen, tenths: &[i64], sides: u32) -> Vec<Tap> {
    let side = |index: usize| (sides == 2).then_some(index as u32 + 1);
    let tap = |(index, tenths): (usize, &i64)| Tap::LogRange {
        piece: piece.to_owned(),
        when,
        side: side(index),
        tenths: *tenths,
    };
    tenths.iter().enumerate().map(tap).collect()
}

/// The taps for a clock.
fn clock(piece: &str, act: Act) -> Vec<Tap> {
    vec![Tap::Clock { piece: piece.to_owned(), act, station: None }]
}

#[cfg(test)]
mod tests;
