//! The pieces of a day as one athlete sees them: loads worked out, logs filled in.

use super::able::able_view;
use super::bar::OnTheBar;
use super::reading::Reading;
use super::screen::{
    ExpectedReps, FlagView, OptionView, PieceView, SetDoneView, SetView, StrengthView, WindowView,
};
use super::screen::{HoldView, IntervalView, RangeView, ReadingView, SideView};
use super::session_log::SessionLog;
use crate::care::advice_for;
use crate::clock::{
    HoldPhase, HoldSpec, IntervalPhase, IntervalSpec, Mark, hold_state, interval_state,
};
use crate::instant::Instant;
use crate::journal::Lift;
use crate::load::strength::RepsBand;
use crate::load::{Able, NextLoad, Prepared, Rack, next_loads};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Day, Hold, Interval, MeasuredWhen, Piece, Strength, Work};
use crate::review::judge_range;
use crate::store::{Logged, brake, date_of, set_done};
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

    fn log(&self) -> Option<&SessionLog> {
        self.reading.log.as_ref()
    }

    fn unit(&self) -> MassUnit {
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
        let fresh = !self.log().is_some_and(|log| log.lifts.iter().any(|it| it.body.piece == name));
        let bar = OnTheBar::new(self.block, rack, &loads, unit, fresh);
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
                        doubt: doubt(
                            lift.body.load,
                            lift.body.planned,
                            self.rack_of(lift),
                            self.unit(),
                        ),
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

    fn interval(&self, name: &str, interval: &Interval) -> IntervalView {
        let spec = IntervalSpec::of(interval);
        let run = self.log().map(|log| log.marks(name, |run, at| interval_over(&spec, run, at)));
        let windows: Vec<WindowView> = (1..=interval.windows())
            .filter_map(|window| {
                let station = interval.station(window)?;
                let done = self.log().and_then(|log| log.window(name, window));
                let spare_ms = done.and_then(|done| done.body.spare_ms);
                let subject = self.reading.subject(name, &station.movement);
                let load = self.block.station_load(&subject, station.load);
                Some(WindowView {
                    window,
                    movement: self.block.name_of(&subject),
                    key: station.movement.clone(),
                    asked: station.reps,
                    load_text: self.load_text(load),
                    reps: done.map(|done| done.body.reps),
                    spare_ms,
                    spare_text: spare_ms.map_or(String::new(), words::clock_time),
                    tight: spare_ms.is_some_and(|spare| spare < interval.margin_ms),
                })
            })
            .collect();
        let mut movements: Vec<&str> = Vec::new();
        for station in &interval.stations {
            if !movements.contains(&station.movement.as_str()) {
                movements.push(&station.movement);
            }
        }
        let subjects: Vec<String> =
            movements.iter().map(|movement| self.reading.subject(name, movement)).collect();
        let subjects: Vec<&str> = subjects.iter().map(String::as_str).collect();
        IntervalView {
            name: name.to_owned(),
            window_ms: interval.window_ms,
            window_text: words::clock_time(interval.window_ms),
            rounds: interval.rounds,
            margin_ms: interval.margin_ms,
            margin_text: words::clock_time(interval.margin_ms),
            next_window: windows.iter().find(|window| window.reps.is_none()).map(|it| it.window),
            windows,
            options: self.options(name, &movements),
            flags: self.flag_views(&subjects),
            clock: run
                .filter(|run| !run.is_empty())
                .map(|run| interval_state(&spec, &run, self.now)),
        }
    }

    fn hold(&self, name: &str, hold: &Hold) -> HoldView {
        let spec = HoldSpec::of(hold);
        let stretch = self.block.stretch(&hold.stretch);
        let run = self.log().map(|log| log.marks(name, |run, at| hold_over(&spec, run, at)));
        let sides = (1..=hold.sides).map(|side| {
            let held = self.log().and_then(|log| log.hold(name, side));
            let held_ms = held.map(|held| held.body.held_ms);
            SideView { side, held_ms, held_text: held_ms.map_or(String::new(), words::clock_time) }
        });
        HoldView {
            name: name.to_owned(),
            stretch: stretch.map_or(hold.stretch.clone(), |stretch| stretch.name.clone()),
            region: stretch.map_or(String::new(), |stretch| stretch.region.clone()),
            hold_ms: hold.hold_ms,
            hold_text: words::clock_time(hold.hold_ms),
            technique: hold.technique,
            sides: sides.collect(),
            range: self.range(name, hold),
            flags: self.flag_views(&[&hold.stretch]),
            clock: run.filter(|run| !run.is_empty()).map(|run| hold_state(&spec, &run, self.now)),
        }
    }

    fn range(&self, name: &str, hold: &Hold) -> Option<RangeView> {
        let protocol = hold.measure?;
        let logged = self.log().map_or(&[][..], |log| &log.ranges);
        let readings: Vec<ReadingView> = logged
            .iter()
            .filter(|it| it.body.piece == name && it.body.protocol == protocol)
            .map(|it| ReadingView {
                when: it.body.when,
                side: it.body.side,
                tenths: it.body.tenths,
                text: words::tenths(it.body.tenths, protocol.unit()),
            })
            .collect();
        let of = |when, side| {
            readings.iter().find(|it| it.when == when && it.side == side).map(|it| it.tenths)
        };
        let mut sides: Vec<Option<u32>> = readings.iter().map(|reading| reading.side).collect();
        sides.sort_unstable();
        sides.dedup();
        let judged = sides.into_iter().filter_map(|side| {
            let (before, after) = (of(MeasuredWhen::Before, side)?, of(MeasuredWhen::After, side)?);
            let side = side.map_or(String::new(), |side| format!("side {side}: "));
            Some(format!("{side}{}", judge_range(protocol, before, after)))
        });
        Some(RangeView {
            protocol,
            name: words::protocol(protocol).to_owned(),
            sides: hold.sides,
            judged: judged.collect(),
            readings,
        })
    }

    fn movement_name(&self, piece: &str, movement: &str) -> String {
        self.block.name_of(&self.reading.subject(piece, movement))
    }

    fn options(&self, piece: &str, movements: &[&str]) -> Vec<OptionView> {
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

    fn flag_views(&self, subjects: &[&str]) -> Vec<FlagView> {
        let on_them =
            self.reading.flags.iter().filter(|flag| subjects.contains(&flag.body.subject.as_str()));
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

    fn load_text(&self, load: Option<Mass>) -> String {
        load.map_or(String::new(), |load| words::load_text(load, self.unit()))
    }
}

fn expected((able, load): (&Able, Mass)) -> ExpectedReps {
    let RepsBand { low, high, .. } = able.strength.expected_reps(load);
    ExpectedReps { low, high, text: words::expected_reps(low, high) }
}

/// What is odd about a load somebody logged: perhaps a slip of the finger.
fn doubt(load: Option<Mass>, planned: Option<Mass>, rack: &Rack, unit: MassUnit) -> String {
    let Some(load) = load else { return String::new() };
    let near = [rack.at_or_below(load), rack.above(load)].into_iter().flatten();
    let near: Vec<String> = near.map(|build| words::load_text(build.mass, unit)).collect();
    if !near.is_empty() && rack.exactly(load).is_none() {
        let load = words::load_text(load, unit);
        return format!("this room cannot build {load}: nearest is {}", near.join(" or "));
    }
    // A fifth off what was proposed: common practice, no source.
    match planned {
        Some(planned) if load > planned.percent(120) || load < planned.percent(80) => {
            format!("far from the {} proposed", words::load_text(planned, unit))
        }
        _ => String::new(),
    }
}

/// True when a hold's clock with these marks is over at a moment.
pub(crate) fn hold_over(spec: &HoldSpec, run: &[Mark], at: &Instant) -> bool {
    matches!(hold_state(spec, run, at).phase, HoldPhase::Done { .. })
}

/// True when an interval's clock with these marks is over at a moment.
pub(crate) fn interval_over(spec: &IntervalSpec, run: &[Mark], at: &Instant) -> bool {
    matches!(interval_state(spec, run, at).phase, IntervalPhase::Done { .. })
}
