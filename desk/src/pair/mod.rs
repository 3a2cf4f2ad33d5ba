//! Pairing at a terminal: a coach takes somebody in, a member joins.

mod post;
mod qr;

use std::path::Path;

use holdfast_core::{Holdfast, PairDid, PairScreen, PairStep};
use owo_colors::OwoColorize;
pub(crate) use post::Over;

use crate::args::{Invite, Join, LineArg};
use crate::fault::{Fault, Outcome};
use crate::now::now;
use crate::{print, say};

/// What a coach does.
pub(crate) fn invite(home: &Path, holdfast: &Holdfast, typed: Invite) -> Outcome {
    let Invite { code, line, name, svg, stop, over } = typed;
    let did = match (stop, line, code) {
        (true, ..) => PairDid::Stop,
        (_, Some(line), _) => {
            let line = match line {
                LineArg::One => Some(1),
                LineArg::Two => Some(2),
                LineArg::Three => Some(3),
                LineArg::None => None,
            };
            PairDid::Pick { line, label: name }
        }
        (.., Some(text)) => PairDid::Scan { text, chance: Vec::new() },
        _ => match holdfast.pair(PairDid::Look, now())?.step {
            PairStep::Shows | PairStep::Pick => PairDid::Look,
            PairStep::Nothing | PairStep::Compare | PairStep::Done => {
                PairDid::Invite { chance: chance()? }
            }
        },
    };
    let screen = carried(home, holdfast, did, &over)?;
    let next = match screen.step {
        PairStep::Shows => Some(match &over.carrier {
            Some(carrier) => say::pair::next_answer_over(carrier.display()),
            None => say::pair::next_answer().to_owned(),
        }),
        PairStep::Pick => Some(say::pair::next_line().to_owned()),
        PairStep::Nothing | PairStep::Compare | PairStep::Done => None,
    };
    shown(&screen, next.as_deref(), svg.as_deref())
}

/// What a member does.
pub(crate) fn join(home: &Path, holdfast: &Holdfast, typed: Join) -> Outcome {
    let Join { code, matches, differ, all, svg, stop, over } = typed;
    let did = match code {
        _ if stop => PairDid::Stop,
        _ if matches || differ => PairDid::Match { matches, share_earlier: all },
        _ if all => PairDid::ShareEarlier,
        Some(text) => PairDid::Scan { text, chance: chance()? },
        None => PairDid::Look,
    };
    let screen = carried(home, holdfast, did, &over)?;
    let next = match screen.step {
        PairStep::Shows => Some(match &over.carrier {
            Some(carrier) => say::pair::next_code_over(carrier.display()),
            None => say::pair::next_code().to_owned(),
        }),
        PairStep::Compare if screen.earlier.is_some() => {
            Some(say::pair::next_match_or_all().to_owned())
        }
        PairStep::Compare => Some(say::pair::next_match().to_owned()),
        PairStep::Done if screen.earlier.is_some() => Some(say::pair::next_all().to_owned()),
        PairStep::Nothing | PairStep::Pick | PairStep::Done => None,
    };
    shown(&screen, next.as_deref(), svg.as_deref())
}

/// Does a step, and what follows from it on the carrier, where there is one.
fn carried(home: &Path, holdfast: &Holdfast, did: PairDid, over: &Over) -> Outcome<PairScreen> {
    let screen = holdfast.pair(did, now())?;
    let Some(carrier) = &over.carrier else { return Ok(screen) };
    post::over(home, holdfast, carrier, over.watch)
}

fn chance() -> Outcome<Vec<u8>> {
    let mut chance = vec![0; 32];
    getrandom::fill(&mut chance).map_err(|error| Fault::Typed(say::fault::no_randomness(error)))?;
    Ok(chance)
}

/// Prints a screen: the code, what to do, and what to type next.
fn shown(screen: &PairScreen, next: Option<&str>, svg: Option<&Path>) -> Outcome {
    let mut text = String::new();
    if let Some(code) = &screen.code {
        text += &format!("{}\n{code}\n\n", qr::drawn(code)?);
        if let Some(path) = svg {
            std::fs::write(path, qr::svg(code)?).map_err(Fault::file(path))?;
        }
    }
    if let Some(told) = &screen.told {
        text += &format!("{told}\n");
    }
    if let Some(earlier) = &screen.earlier {
        text += &format!("{earlier}\n");
    }
    text += &format!("{}\n", screen.ask.bold());
    if !screen.words.is_empty() {
        text += &format!("\n    {}\n\n", screen.words.join("  ").bold());
    }
    for (number, line) in (1..).zip(&screen.lines) {
        text += &format!("  {number}  {line}\n");
    }
    if let Some(next) = next {
        text += &format!("{next}\n");
    }
    print::out(&text)
}
