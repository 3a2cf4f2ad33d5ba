//! From a tap to what is logged.

mod clocked;
mod undo;

pub(crate) use undo::undo;

use super::session_log::SessionLog;
use super::sheet::{Proposed, Sheet};
use super::tap::Tap;
use crate::care::{Place, Sign};
use crate::error::{Error, Result};
use crate::id::RecordId;
use crate::instant::Instant;
use crate::journal::{Body, Cleared, Discomfort, Finish, Lift, OptionTaken};
use crate::plan::{LoadRule, Piece, Work};
use crate::store::Draft;
use crate::words;

const MAX_REPS: u32 = 1000;
const MAX_RESERVE: u32 = 10;

/// Turns a tap in a running session into drafts.
pub(crate) struct Taps<'a> {
    pub sheet: Sheet<'a>,
    pub log: &'a SessionLog,
    pub at: &'a Instant,
}

impl Taps<'_> {
    /// What the tap logs.
    pub(crate) fn drafts(&self, tap: Tap) -> Result<Vec<Draft>> {
        match tap {
            Tap::Begin { .. } => {
                Err(Error::invalid("session", "a session is running already: finish it first"))
            }
            Tap::LogSet { piece, set, load, reps, reserve } => {
                self.log_set(&piece, set, load, reps, reserve).map(one)
            }
            Tap::TakeOption { piece, movement, option } => {
                self.take_option(&piece, movement, option).map(one)
            }
            Tap::LogWindow { piece, window, reps, spare_ms } => {
                self.log_window(&piece, window, reps, spare_ms).map(one)
            }
            Tap::Clock { piece, act, station } => self.clock(&piece, act, station).map(one),
            Tap::LogHold { piece, held_ms, said } => self.log_hold(&piece, held_ms, said),
            Tap::LogRange { piece, when, side, tenths } => {
                self.log_range(&piece, when, side, tenths).map(one)
            }
            Tap::Flag { piece, movement, place, severity, signs } => {
                self.flag(&piece, movement, place, severity, signs).map(one)
            }
            Tap::ClearFlag { flag } => self.clear_flag(flag).map(one),
            Tap::Undo => Err(Error::invalid("undo", "nothing is logged in this session yet")),
            Tap::Finish { effort, minutes } => self.finish(effort, minutes),
        }
    }

    fn piece(&self, name: &str) -> Result<&Piece> {
        self.sheet.day.piece(name).ok_or_else(|| {
            let names: Vec<String> =
                self.sheet.day.pieces.iter().map(|piece| format!("\"{}\"", piece.name)).collect();
            Error::not_found(
                format!("piece \"{name}\""),
                format!("this day has {}", words::list(&names)),
            )
        })
    }

    fn log_set(
        &self,
        name: &str,
        set: Option<u32>,
        load: Option<crate::mass::Mass>,
        reps: Option<u32>,
        reserve: Option<u32>,
    ) -> Result<Draft> {
        let Work::Strength(strength) = &self.piece(name)?.work else {
            return Err(Error::invalid("piece", format!("\"{name}\" has no sets")));
        };
        let sets = strength.scheme.sets();
        let next = || (1..=sets).find(|set| self.log.lift(name, *set).is_none());
        let set = set.or_else(next).ok_or_else(|| {
            Error::invalid(
                "set",
                format!(
                    "all {} are logged; name one to correct it",
                    words::count(u64::from(sets), "set")
                ),
            )
        })?;
        let asked = strength
            .scheme
            .target(set)
            .ok_or_else(|| Error::invalid("set", format!("set {set} of {sets} there is not")))?;
        let Proposed { subject, loads: proposed, .. } = self.sheet.proposal(name, strength);
        let planned = proposed.iter().find(|next| next.set == set).and_then(|next| next.load);
        let logged = self.log.lift(name, set);
        let before = logged.and_then(|lift| lift.body.load);
        let load = load.or(before).or(planned);
        if load.is_none() && strength.load != LoadRule::Free {
            return Err(Error::invalid(
                "load",
                "none is proposed for this set: say the load you used",
            ));
        }
        if load.is_some_and(|load| load <= crate::mass::Mass::ZERO) {
            return Err(Error::invalid("load", "a load is more than nothing"));
        }
        // A correction changes what it names and nothing else.
        let before = logged.map(|lift| &lift.body);
        let reps = reps.or(before.map(|lift| lift.reps)).unwrap_or(asked);
        let reserve = reserve.or(before.and_then(|lift| lift.reserve));
        let subject = before.map_or(subject, |lift| lift.subject.clone());
        let planned = before.map_or(planned, |lift| lift.planned);
        // Nor does it start the rest again.
        let at = before.map_or_else(|| Some(self.at.clone()), |lift| lift.at.clone());
        within("reps", reps, MAX_REPS)?;
        within("reps in reserve", reserve.unwrap_or(0), MAX_RESERVE)?;
        let lift = Lift {
            session: self.log.id(),
            piece: name.to_owned(),
            subject,
            scheme: strength.scheme.clone(),
            set,
            planned,
            load,
            reps,
            reserve,
            at,
        };
        Ok(new_or_corrected(logged.map(|lift| lift.record), lift))
    }

    fn take_option(
        &self,
        name: &str,
        movement: Option<String>,
        option: Option<String>,
    ) -> Result<Draft> {
        let movement = self.movement(name, movement)?;
        let known = self.sheet.block.movement(&movement);
        let found = match &option {
            None => None,
            Some(key) => Some(known.and_then(|it| it.option(key)).ok_or_else(|| {
                let keys =
                    known.map(|it| it.options.iter().map(|option| option.key.clone()).collect());
                let keys: Vec<String> = keys.unwrap_or_default();
                let offer = if keys.is_empty() {
                    "it has none".into()
                } else {
                    format!("it has {}", words::list(&keys))
                };
                Error::not_found(format!("option \"{key}\" of {movement}"), offer)
            })?),
        };
        let taken = OptionTaken {
            session: self.log.id(),
            piece: name.to_owned(),
            movement: movement.clone(),
            because: found.map(|option| option.because),
            option,
        };
        let before = self.log.options.iter().rev();
        let before =
            before.into_iter().find(|it| it.body.piece == name && it.body.movement == movement);
        Ok(new_or_corrected(before.map(|it| it.record), taken))
    }

    /// The movement meant: the one named, or the only one the piece has.
    fn movement(&self, name: &str, movement: Option<String>) -> Result<String> {
        let all: Vec<String> = match &self.piece(name)?.work {
            Work::Strength(strength) => vec![strength.movement.clone()],
            Work::Interval(interval) => {
                let mut keys: Vec<String> =
                    interval.stations.iter().map(|station| station.movement.clone()).collect();
                keys.sort();
                keys.dedup();
                keys
            }
            Work::Hold(hold) => vec![hold.stretch.clone()],
            Work::Note(_) => Vec::new(),
        };
        match (movement, all.as_slice()) {
            (None, [only]) => Ok(only.clone()),
            (Some(movement), all) if all.contains(&movement) => Ok(movement),
            (_, []) => Err(Error::invalid("piece", format!("\"{name}\" has no movement"))),
            (_, all) => Err(Error::invalid(
                "movement",
                format!("\"{name}\" has {}: say which", words::list(all)),
            )),
        }
    }

    fn flag(
        &self,
        name: &str,
        movement: Option<String>,
        place: Place,
        severity: u32,
        signs: Vec<Sign>,
    ) -> Result<Draft> {
        if !(1..=10).contains(&severity) {
            return Err(Error::invalid("severity", "from 1 (barely there) to 10 (the worst)"));
        }
        let movement = self.movement(name, movement)?;
        let subject = self.sheet.reading.subject(name, &movement);
        let session = self.log.id();
        // Only a flag that is still open is corrected: pain that comes back is a new flag.
        let open = |record| self.sheet.reading.flags.iter().any(|flag| flag.record == record);
        let mut before = self.log.flags.iter().rev();
        let before = before.find(|it| it.body.subject == subject && open(it.record));
        let flag = Discomfort { session, piece: name.to_owned(), subject, place, severity, signs };
        Ok(new_or_corrected(before.map(|it| it.record), flag))
    }

    fn clear_flag(&self, flag: RecordId) -> Result<Draft> {
        let open = self.sheet.reading.flags.iter().any(|open| open.record == flag);
        clear_flag(open, flag, Some(self.log.id()))
    }

    /// Ends the session, or rates it anew. What its clocks counted and nobody logged is logged with it:
    /// nobody looks for it afterwards.
    fn finish(&self, effort: Option<u32>, minutes: Option<u32>) -> Result<Vec<Draft>> {
        within("effort", effort.unwrap_or(0), 10)?;
        let ms = self.log.gone_on_ms(self.at);
        let counted = u32::try_from(ms / 60_000).unwrap_or(0).clamp(1, 300);
        let minutes = minutes.unwrap_or(counted);
        within("minutes", minutes, 600)?;
        let finish = Finish { session: self.log.id(), effort, minutes };
        let before = self.log.finish.as_ref().map(|finish| finish.record);
        let mut drafts = if before.is_none() { self.end_clocks()? } else { Vec::new() };
        drafts.push(new_or_corrected(before, finish));
        Ok(drafts)
    }
}

/// The entry that clears an open flag.
pub(crate) fn clear_flag(open: bool, flag: RecordId, session: Option<RecordId>) -> Result<Draft> {
    if open {
        return Ok(Draft::new(Cleared { flag, session }));
    }
    Err(Error::not_found("flag", "it is cleared already, or was never raised"))
}

fn one(draft: Draft) -> Vec<Draft> {
    vec![draft]
}

fn new_or_corrected(record: Option<RecordId>, body: impl Into<Body>) -> Draft {
    match record {
        Some(record) => Draft::correct(record, body),
        None => Draft::new(body),
    }
}

fn within(field: &str, value: u32, most: u32) -> Result<()> {
    if value <= most {
        return Ok(());
    }
    Err(Error::invalid(field, format!("{value} is too many: from 0 to {most}")))
}
