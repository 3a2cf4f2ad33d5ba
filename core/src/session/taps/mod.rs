//! From a tap to what is logged.

mod clocked;
mod hold;
mod hurt;
mod sets;
mod undo;

pub(crate) use hurt::clear_flags;
pub(crate) use undo::undo;

use super::log::SessionLog;
use super::sheet::Sheet;
use super::tap::Tap;
use crate::error::{Error, Field, Result, Thing};
use crate::instant::Instant;
use crate::journal::{Finish, Part, PutOff, RestAct, RestMark, Until};
use crate::plan::{Piece, PieceKind};
use crate::store::Draft;
use crate::words;

/// Turns a tap in a running session into drafts.
pub(crate) struct Taps<'a> {
    pub(crate) sheet: Sheet<'a>,
    pub(crate) log: &'a SessionLog,
    pub(crate) at: &'a Instant,
}

impl Taps<'_> {
    /// What the tap logs, all of it together.
    pub(crate) fn drafts(&self, tap: Tap) -> Result<Vec<Draft>> {
        match tap {
            Tap::Begin { .. } => {
                let reason = "a session is running already: finish it first";
                Err(Error::invalid(Field::Session, reason))
            }
            Tap::LogSet { piece, set, load, reps, reserve } => {
                self.log_set(&piece, set, load, reps, reserve).map(one)
            }
            Tap::Rest { act } => self.rest(act).map(one),
            Tap::TakeOption { piece, movement, option } => {
                self.take_option(&piece, movement, option).map(one)
            }
            Tap::LogWindow { piece, window, reps, spare } => {
                self.log_window(&piece, window, reps, spare.map(|spare| spare.0)).map(one)
            }
            Tap::Clock { piece, act, station } => self.clock(&piece, act, station).map(one),
            Tap::LogHold { piece, held, said } => {
                self.log_hold(&piece, held.into_iter().map(|held| held.0).collect(), said)
            }
            Tap::LogRange { piece, when, readings } => self.log_range(&piece, when, &readings),
            Tap::Flag { piece, movement, place, severity, signs } => {
                self.flag(&piece, movement, place, severity, signs).map(one)
            }
            Tap::ClearFlags { flags } => {
                clear_flags(&self.sheet.snapshot.flags, &flags, Some(self.log.id()))
            }
            Tap::PutOff { piece, part, until } => self.put_off(&piece, part, until).map(one),
            Tap::Undo => Err(Error::invalid(Field::Undo, "nothing is logged in this session yet")),
            Tap::Finish { rpe, minutes } => self.finish(rpe, minutes),
        }
    }

    fn piece(&self, name: &str) -> Result<&Piece> {
        self.sheet.day.piece(name).ok_or_else(|| {
            let names: Vec<String> =
                self.sheet.day.pieces.iter().map(|piece| format!("\"{}\"", piece.name)).collect();
            Error::not_found(Thing::Piece, name, format!("this day has {}", words::list(&names)))
        })
    }

    /// Ends the rest after the last set, or makes it longer.
    fn rest(&self, act: RestAct) -> Result<Draft> {
        let rest = super::rest::rest(self.log, self.sheet.day, self.at);
        let rest = rest.ok_or_else(|| Error::invalid(Field::Rest, "no rest is running"))?;
        Ok(Draft::new(RestMark {
            session: self.log.id(),
            piece: rest.piece,
            set: rest.set,
            act,
            at: self.at.clone(),
        }))
    }

    /// Puts off what is not logged yet. A clock that runs is stopped first: it would be out of reach.
    fn put_off(&self, name: &str, part: Part, until: Until) -> Result<Draft> {
        let kind = &self.piece(name)?.kind;
        let fits = match (part, kind) {
            (Part::Work, PieceKind::Note(_)) => false,
            (Part::Work, _) => true,
            (Part::Before | Part::After, PieceKind::Hold(hold)) => hold.measure.is_some(),
            (Part::Before | Part::After, _) => false,
        };
        if !fits {
            let reason = format!("\"{name}\" has nothing there to put off");
            return Err(Error::invalid(Field::Piece, reason));
        }
        if part == Part::Work && self.clock_stands_in_the_way(name, kind) {
            let reason = format!("the clock of \"{name}\" was begun: log or stop it first");
            return Err(Error::invalid(Field::Clock, reason));
        }
        let (session, piece, at) = (self.log.id(), name.to_owned(), self.at.clone());
        Ok(Draft::new(PutOff { session, piece, part, until, at }))
    }

    /// Ends the session, or rates it again. What its clocks counted and nobody logged is logged with it:
    /// nobody looks for it afterwards.
    fn finish(&self, rpe: Option<u32>, minutes: Option<u32>) -> Result<Vec<Draft>> {
        within(Field::Rpe, rpe.unwrap_or(0), 10)?;
        let ms = self.log.gone_on_ms(self.at);
        let counted = u32::try_from(ms / 60_000).unwrap_or(0).clamp(1, 300);
        let minutes = minutes.unwrap_or(counted);
        within(Field::Minutes, minutes, 600)?;
        let finish = Finish { session: self.log.id(), rpe, minutes };
        let before = self.log.finish.as_ref().map(|finish| finish.record);
        let mut drafts = if before.is_none() { self.end_clocks()? } else { Vec::new() };
        drafts.push(Draft::new_or_corrected(before, finish));
        Ok(drafts)
    }
}

fn one(draft: Draft) -> Vec<Draft> {
    vec![draft]
}

fn within(field: Field, value: u32, most: u32) -> Result<()> {
    if value <= most {
        return Ok(());
    }
    Err(Error::invalid(field, format!("{value} is too many: from 0 to {most}")))
}
