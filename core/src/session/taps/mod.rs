//! From a tap to what is logged.

mod bar;
mod clocked;
mod extra;
mod hold;
mod hurt;
mod sets;
mod sure;
mod undo;

pub(crate) use hurt::clear_flags;
pub(crate) use sets::{can_be, within_set};
pub(crate) use sure::confirmed;
pub(crate) use undo::{to_undo, undo};

use super::log::SessionLog;
use super::sheet::Sheet;
use super::tap::Tap;
use crate::error::{Error, Field, Result, Thing};
use crate::instant::Instant;
use crate::journal::{Finish, Part, PutOff, RestAct, RestMark, Until};
use crate::mass::Mass;
use crate::plan::{Piece, PieceKind};
use crate::say;
use crate::store::Draft;
use crate::words;

/// What was done of a set, as far as it was said.
#[derive(Clone, Copy)]
struct Did {
    load: Option<Mass>,
    reps: Option<u32>,
    reserve: Option<u32>,
}

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
            Tap::Begin { .. } | Tap::WriteAfterwards { .. } => {
                let open = &self.log.session.body;
                let reason = say::tap::session_running(&open.day, words::day(open.date));
                Err(Error::invalid(Field::Session, reason))
            }
            Tap::LogSet { piece, set, load, reps, reserve } => {
                self.log_set(&piece, set, load, reps, reserve).map(one)
            }
            // Of whatever session.
            Tap::Correct { .. } => {
                Err(Error::invalid(Field::Session, say::tap::session_not_running()))
            }
            Tap::Sure { lift } => self.sure(lift).map(one),
            Tap::LogExtra { movement, set, load, reps, reserve } => {
                let did = Did { load, reps, reserve };
                self.log_extra(&self.unplanned(&movement)?, &movement, set, did).map(one)
            }
            Tap::Rest { act } => self.rest(act).map(one),
            Tap::TakeOption { piece, movement, option } => {
                self.take_option(&piece, movement, option).map(one)
            }
            Tap::TakeBar { piece, bar } => self.take_bar(&piece, &bar).map(one),
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
            // Of no session.
            Tap::FlagBetween { .. } => {
                Err(Error::invalid(Field::Session, say::tap::session_not_running()))
            }
            Tap::ClearFlags { flags } => {
                clear_flags(&self.sheet.snapshot.flags.open, &flags, Some(self.log.id()))
            }
            // A private one is no entry.
            Tap::Note { row, words, .. } => {
                self.note(row.as_ref(), &words).map(Draft::new).map(one)
            }
            Tap::PutOff { piece, part, until } => self.put_off(&piece, part, until).map(one),
            Tap::Undo => Err(Error::invalid(Field::Undo, say::tap::nothing_to_undo())),
            Tap::Finish { rpe, minutes } => self.finish(rpe, minutes),
        }
    }

    pub(super) fn piece(&self, name: &str) -> Result<&Piece> {
        self.sheet.day.piece(name).ok_or_else(|| {
            let names = self.sheet.day.pieces.iter().map(|piece| say::tap::quoted(&piece.name));
            let names: Vec<String> = names.collect();
            Error::not_found(Thing::Piece, name, say::tap::day_pieces(words::list(&names)))
        })
    }

    /// Ends the rest after the last set, or makes it longer.
    fn rest(&self, act: RestAct) -> Result<Draft> {
        let Sheet { block, day, .. } = self.sheet;
        let rest = super::rest::rest(self.log, block, day, self.sheet.unit(), self.at);
        let rest = rest.ok_or_else(|| Error::invalid(Field::Rest, say::tap::rest_not_running()))?;
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
            return Err(Error::invalid(Field::Piece, say::tap::nothing_to_put_off(name)));
        }
        if part == Part::Work && self.clock_stands_in_the_way(name, kind) {
            return Err(Error::invalid(Field::Clock, say::tap::clock_begun(name)));
        }
        let (session, piece, at) = (self.log.id(), name.to_owned(), self.at.clone());
        Ok(Draft::new(PutOff { session, piece, part, until, at }))
    }

    /// Ends the session, or rates it again. What its clocks counted and nobody logged is logged with it:
    /// nobody looks for it afterwards.
    fn finish(&self, rpe: Option<u32>, minutes: Option<u32>) -> Result<Vec<Draft>> {
        within(Field::Rpe, rpe.unwrap_or(0), 10, say::tap::rating_too_high)?;
        let minutes = minutes.or_else(|| self.minutes_gone());
        let minutes = minutes
            .ok_or_else(|| Error::invalid(Field::Minutes, say::tap::minutes_afterwards()))?;
        within(Field::Minutes, minutes, 600, say::tap::minutes_too_many)?;
        let finish = Finish { session: self.log.id(), rpe, minutes, on: self.log.on() };
        let before = self.log.finish.as_ref().map(|finish| finish.record);
        let mut drafts = if before.is_none() { self.end_clocks()? } else { Vec::new() };
        drafts.push(Draft::new_or_corrected(before, finish));
        Ok(drafts)
    }
}

impl Taps<'_> {
    /// The minutes since the session was begun; none for one written afterwards, but those said before.
    fn minutes_gone(&self) -> Option<u32> {
        if self.log.is_afterwards() {
            return self.log.finish.as_ref().map(|finish| finish.body.minutes);
        }
        let ms = self.log.gone_on_ms(self.at);
        Some(u32::try_from(ms / 60_000).unwrap_or(0).clamp(1, 300))
    }
}

fn one(draft: Draft) -> Vec<Draft> {
    vec![draft]
}

/// Refuses a value over the most there can be; `too_many` says so.
fn within(field: Field, value: u32, most: u32, too_many: fn(u32, u32) -> String) -> Result<()> {
    if value <= most {
        return Ok(());
    }
    Err(Error::invalid(field, too_many(value, most)))
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};

    use super::*;

    #[test]
    fn how_many_there_are_is_said_in_both_languages() {
        let said = || {
            [
                say::tap::no_such_set(1, 2),
                say::tap::no_such_set(3, 4),
                say::tap::all_windows_logged(12),
                say::tap::no_such_station(2, "Corners", 3),
                say::tap::sides_are(1, "Calves"),
            ]
        };
        assert_eq!(
            said(),
            [
                "This piece has 1 set; there is no set 2.",
                "This piece has 3 sets; there is no set 4.",
                "All 12 windows are logged. Name one to correct it.",
                "\"Corners\" has 2 stations; there is no station 3.",
                "\"Calves\" has 1 side."
            ]
        );
        assert_eq!(
            speaking(Language::De, said),
            [
                "Dieser Teil hat 1 Satz; einen Satz 2 gibt es nicht.",
                "Dieser Teil hat 3 Sätze; einen Satz 4 gibt es nicht.",
                "Alle 12 Fenster sind eingetragen. Nenne eines, um es zu korrigieren.",
                "„Corners“ hat 2 Stationen; eine Station 3 gibt es nicht.",
                "„Calves“ hat 1 Seite."
            ]
        );
    }

    #[test]
    fn what_is_too_much_is_named_with_the_most_there_can_be() {
        let refused = |value| within(Field::Rpe, value, 10, say::tap::rating_too_high);
        assert!(refused(10).is_ok());
        let Err(Error::Invalid { reason, .. }) = refused(11) else { panic!("11 is taken") };
        assert_eq!(reason, "11 is too high. The rating goes from 0 to 10.");
    }
}
