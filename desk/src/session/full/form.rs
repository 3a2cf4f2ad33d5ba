//! What is filled in: a short line, or a list to choose from.

use holdfast_core::care::{Place, Sign};
use holdfast_core::session::{Tap, place_text, sign_text};

use crate::say;

/// A line being typed.
#[derive(Debug)]
pub(super) struct Typing {
    /// What is asked.
    pub(super) ask: String,
    /// What can be typed.
    pub(super) hint: String,
    /// What is typed so far.
    pub(super) text: String,
    /// Why the line was not taken.
    pub(super) wrong: Option<String>,
    /// What becomes of it.
    pub(super) then: Then,
}

/// What becomes of a typed line.
#[derive(Debug)]
pub(super) enum Then {
    /// The core reads it.
    Line,
    /// A set or a movement that nobody planned.
    Extra,
    /// A rating ends the session.
    Rating,
    /// How bad a discomfort is.
    Severity(Hurt),
}

/// A discomfort being told.
#[derive(Clone, Debug)]
pub(super) struct Hurt {
    /// None where it is of the session as a whole.
    pub(super) piece: Option<String>,
    pub(super) movement: Option<String>,
    pub(super) place: Place,
    pub(super) severity: u32,
}

/// The most characters of a line.
const LONGEST: usize = 120;

impl Typing {
    /// A line with what is typed of it already.
    pub(super) fn new(ask: String, hint: String, typed: &str, then: Then) -> Typing {
        Typing { ask, hint, text: typed.to_owned(), wrong: None, then }
    }

    /// How bad a discomfort is.
    pub(super) fn severity(hurt: Hurt) -> Typing {
        let ask = say::full::how_bad(place_text(hurt.place));
        let hint = say::full::how_bad_hint().to_owned();
        Typing::new(ask, hint, "", Then::Severity(hurt))
    }

    /// Adds a character, unless it is none that a line can have or the line is full.
    pub(super) fn add(&mut self, typed: char) {
        if !typed.is_control() && self.text.chars().count() < LONGEST {
            self.text.push(typed);
        }
    }
}

/// A list to choose from.
#[derive(Debug)]
pub(super) struct Picker {
    /// What is asked.
    pub(super) ask: String,
    /// The choices.
    pub(super) items: Vec<Item>,
    /// The choice at hand.
    pub(super) at: usize,
    /// What becomes of it.
    pub(super) choice: Choice,
}

/// A choice in words.
#[derive(Debug)]
pub(super) struct Item {
    /// What it is.
    pub(super) text: String,
    /// Why it is suggested.
    pub(super) more: Option<String>,
}

/// What the choices of a list stand for.
#[derive(Debug)]
pub(super) enum Choice {
    /// A tap each.
    Tap(Vec<Tap>),
    /// Places where it can hurt.
    Place { piece: Option<String>, movement: Option<String>, places: Vec<Place> },
    /// Signs to mark, any number of them.
    Signs { hurt: Hurt, marked: Vec<bool> },
}

impl Picker {
    /// A list of taps.
    pub(super) fn taps(ask: impl Into<String>, items: Vec<(Item, Tap)>) -> Picker {
        let (items, taps) = items.into_iter().unzip();
        Picker { ask: ask.into(), items, at: 0, choice: Choice::Tap(taps) }
    }

    /// Where it hurts.
    pub(super) fn places(piece: Option<String>, movement: Option<String>) -> Picker {
        let places = Place::ALL.to_vec();
        let items = places.iter().map(|place| Item::of(place_text(*place))).collect();
        Picker {
            ask: match &piece {
                Some(piece) => say::full::where_it_hurts(piece),
                None => say::full::where_it_hurts_anywhere().to_owned(),
            },
            items,
            at: 0,
            choice: Choice::Place { piece, movement, places },
        }
    }

    /// Whether an emergency sign comes with it.
    pub(super) fn signs(hurt: Hurt) -> Picker {
        let items = Sign::ASKED.iter().map(|sign| Item::of(sign_text(*sign))).collect();
        Picker {
            ask: say::full::which_signs().into(),
            items,
            at: 0,
            choice: Choice::Signs { hurt, marked: vec![false; Sign::ASKED.len()] },
        }
    }

    /// Moves by so many, stopping at the ends.
    pub(super) fn go(&mut self, by: isize) {
        let last = self.items.len().saturating_sub(1);
        self.at = self.at.saturating_add_signed(by).min(last);
    }

    /// Marks the choice at hand, or takes the mark back.
    pub(super) fn mark(&mut self) {
        if let Choice::Signs { marked, .. } = &mut self.choice
            && let Some(marked) = marked.get_mut(self.at)
        {
            *marked = !*marked;
        }
    }

    /// A choice's line.
    pub(super) fn line(&self, index: usize) -> String {
        let text = self.items.get(index).map_or("", |item| item.text.as_str());
        let here = if index == self.at { ">" } else { " " };
        match &self.choice {
            Choice::Signs { marked, .. } => {
                let mark = if marked.get(index) == Some(&true) { "[x]" } else { "[ ]" };
                format!("{here} {mark} {text}")
            }
            _ => format!("{here} {text}"),
        }
    }
}

impl Item {
    /// A choice without more about it.
    pub(super) fn of(text: &str) -> Item {
        Item { text: text.into(), more: None }
    }
}

/// The signs marked.
pub(super) fn signs(marked: &[bool]) -> Vec<Sign> {
    let marked = Sign::ASKED.iter().zip(marked).filter(|(_, marked)| **marked);
    marked.map(|(sign, _)| *sign).collect()
}
