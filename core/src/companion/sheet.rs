//! The pieces of a day as one athlete sees them: loads worked out, logs filled in.

use super::able::able_view;
use super::bar::OnTheBar;
use super::doubt::doubt;
use super::reading::Reading;
use super::screen::{
    ExpectedReps, FlagView, OptionView, PieceView, SetDoneView, SetView, StrengthView,
};
use super::session_log::SessionLog;
use crate::care::advice_for;
use crate::instant::Instant;
use crate::journal::Lift;
use crate::load::strength::RepsBand;
use crate::load::{Able, NextLoad, Prepared, Rack, next_loads};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Day, Piece, Strength, Work};
use crate::store::{Logged, brake, date_of, family, set_done};
use crate::words;

/// What is lifted in a strength piece, what carries it, the loads proposed for it, and what the
/// athlete can lift now.
pub(crate) struct Proposed<'a> {
    pub subject: String,
    pub rack: &'a Rack,
    pub loads: Vec<NextLoad>,
    pub able: Option<Able>,
}

/// What a sheet is made from.
pub(crate) struct Sheet<'a> {
    pub reading: &'a Reading,
    pub block: &'a Prepared,
    pub day: &'a Day,
    pub now: &'a Instant,
}

impl Sheet<'_> {
    /// Every piece of the day.
    pub(crate) fn pieces(&self) -> Vec<PieceView> {
        self.day.pieces.iter().map(|piece| self.piece(piece)).collect()
    }

    fn piece(&self, piece: &Piece) -> PieceView {
        let name = &piece.name;
        match &piece.work {
            Work::Strength(strength) => PieceView::Strength { view: self.strength(name, strength) },
            Work::Interval(interval) => PieceView::Interval { view: self.interval(name, interval) },
            Work::Hold(hold) => PieceView::Hold { view: self.hold(name, hold) },
            Work::Note(note) => PieceView::Note { name: name.clone(), text: note.text.clone() },
        }
    }

    pub(super) fn log(&self) -> Option<&SessionLog> {
        self.reading.log.as_ref()
    }

    pub(super) fn unit(&self) -> MassUnit {
        self.reading.profile.unit
    }

    /// What is proposed for a strength piece.
    pub(crate) fn proposal(&self, piece: &str, strength: &Strength) -> Proposed<'_> {
        let subject = self.reading.subject(piece, &strength.movement);
        let rack = self.block.rack(&subject, self.unit());
        let mut history = self.reading.history(piece);
        history.flag = brake(&self.reading.flags, &subject);
        if let Some(log) = self.log() {
            let of =
                |lift: &&Logged<Lift>| lift.body.piece == piece && lift.body.subject == subject;
            history.so_far = log.lifts.iter().filter(of).map(set_done).collect();
        }
        let loads = next_loads(&strength.load, &strength.scheme, rack, &history);
        Proposed { subject, rack, loads, able: history.able }
    }

    fn strength(&self, name: &str, strength: &Strength) -> StrengthView {
        let Proposed { subject, rack, loads, able } = self.proposal(name, strength);
        let unit = self.unit();
        let lifts = self.log().map_or(&[][..], |log| &log.lifts);
        let done: Vec<&Lift> =
            lifts.iter().map(|lift| &lift.body).filter(|lift| lift.piece == name).collect();
        let bar = OnTheBar::new(self.block, rack, &loads, unit, &done);
        let sets: Vec<SetView> = loads
            .iter()
            .map(|next| {
                let set = next.set;
                let done = self.log().and_then(|log| log.lift(name, set));
                let open = strength.scheme.is_open(set);
                SetView {
                    set,
                    asked: strength.scheme.target(set).unwrap_or(0),
                    open,
                    expected: able.as_ref().zip(next.load.filter(|_| open)).map(expected),
                    load: bar.load(set),
                    why: words::why(&next.reason, self.unit()),
                    reason: next.reason.clone(),
                    from: next.from.clone(),
                    done: done.map(|lift| SetDoneView {
                        load: lift.body.load,
                        load_text: self.load_text(lift.body.load),
                        reps: lift.body.reps,
                        reserve: lift.body.reserve,
                        made: lift.body.made(),
                        movement: self.block.name_of(&lift.body.subject),
                        doubt: doubt(&lift.body, self.rack_of(lift), self.unit()),
                        conflict: lift.heads > 1,
                    }),
                }
            })
            .collect();
        StrengthView {
            name: name.to_owned(),
            movement: self.movement_name(name, &strength.movement),
            bar: rack.bar.clone(),
            able: able.map(|able| able_view(able, unit)),
            warm_up: bar.warm_up(),
            next_set: sets.iter().find(|set| set.done.is_none()).map(|set| set.set),
            sets,
            rest_ms: strength.rest_ms,
            rest_text: words::clock_time(strength.rest_ms),
            options: self.options(name, &[&strength.movement]),
            flags: self.flag_views(&[&subject]),
            subject,
        }
    }

    fn rack_of(&self, lift: &Logged<Lift>) -> &Rack {
        self.block.rack(&lift.body.subject, self.unit())
    }

    fn movement_name(&self, piece: &str, movement: &str) -> String {
        self.block.name_of(&self.reading.subject(piece, movement))
    }

    pub(super) fn options(&self, piece: &str, movements: &[&str]) -> Vec<OptionView> {
        let found = movements.iter().filter_map(|movement| self.block.movement(movement));
        found
            .flat_map(|movement| {
                let taken = self.log().and_then(|log| log.option(piece, &movement.key));
                // What the day before worked hard, and an option would spare.
                let hard = self.reading.hard.iter().find(|it| it.pattern == movement.pattern);
                movement.options.iter().map(move |option| {
                    let hard = hard.filter(|hard| option.pattern != hard.pattern);
                    OptionView {
                        movement: movement.key.clone(),
                        key: option.key.clone(),
                        name: option.name.clone(),
                        because: option.because,
                        because_text: words::because(option.because).to_owned(),
                        taken: taken == Some(option.key.as_str()),
                        suggested: hard.map_or(String::new(), words::spared),
                        from: hard.map_or(Vec::new(), |hard| hard.from.clone()),
                    }
                })
            })
            .collect()
    }

    pub(super) fn flag_views(&self, subjects: &[&str]) -> Vec<FlagView> {
        let on_them = self.reading.flags.iter().filter(|flag| {
            subjects.iter().any(|subject| family(subject) == family(&flag.body.subject))
        });
        let mut views: Vec<FlagView> = on_them
            .map(|flag| FlagView {
                flag: flag.record,
                place: flag.body.place,
                severity: flag.body.severity,
                advice: advice_for(flag.body.place, flag.body.severity, &flag.body.signs),
                text: format!(
                    "{} {}/10, flagged {}",
                    words::place(flag.body.place),
                    flag.body.severity,
                    words::day(date_of(flag))
                ),
            })
            .collect();
        views.sort_by_key(|view| !view.advice.urgent);
        views
    }

    pub(super) fn load_text(&self, load: Option<Mass>) -> String {
        load.map_or(String::new(), |load| words::load_text(load, self.unit()))
    }
}

fn expected((able, load): (&Able, Mass)) -> ExpectedReps {
    let RepsBand { low, high, .. } = able.strength.expected_reps(load);
    ExpectedReps { low, high, text: words::expected_reps(low, high) }
}
