//! What is at hand on a session screen: its row in words, its clock, its keys, what can be typed.

use super::clock_view::rest_clock;
use super::key::At;
use super::rows::{is_done, is_timed, piece_of, running_window, set_of};
use super::screen::{
    ClockView, Form, Here, IntervalView, PieceKindView, PieceState, PieceView, Question, Row,
    SessionState, SideKey, SideKeyKind,
};
use super::tap::Tap;
use super::went_by::WentBy;
use crate::clock::{Act, Phase};
use crate::journal::{Part, RestAct, Until};
use crate::plan::MeasuredWhen;
use crate::say::screen as say;
use crate::words;

impl At<'_> {
    /// What is at hand.
    pub(super) fn here(&self, went_by: &WentBy) -> Here {
        let key = self.key();
        let done = self.row.is_some_and(|row| is_done(row, self.pieces));
        Here {
            row: self.row.cloned(),
            chosen: self.chosen,
            done,
            title: self.title(),
            place: self.place(),
            line: self.line(),
            notes: self.notes(),
            movement: self.movement(),
            clock: self.clock(went_by),
            side_keys: self.side_keys(),
            form: self.form(key.asks),
            key,
        }
    }

    pub(super) fn piece(&self) -> Option<&PieceView> {
        piece_of(self.pieces, self.row?)
    }

    /// The coach's words right before the piece at hand; those after the last piece at the end.
    fn notes(&self) -> Vec<String> {
        let name = self.row.and_then(Row::piece);
        let here = self.pieces.iter().position(|piece| Some(piece.name.as_str()) == name);
        let before = &self.pieces[..here.unwrap_or(self.pieces.len())];
        let own = before.iter().rev().map_while(|piece| match &piece.kind {
            PieceKindView::Note { text } => Some(say::titled(&piece.name, text)),
            _ => None,
        });
        let mut notes: Vec<String> = own.collect();
        notes.reverse();
        if self.row == Some(&Row::Finish) && self.snapshot.state == SessionState::Running {
            let open = self.not_done();
            notes.extend((!open.is_empty()).then(|| say::not_done(words::list(&open))));
            // Nothing is proposed from these, and tomorrow nobody knows.
            let unit = self.snapshot.profile.unit;
            let doubted = self.doubted();
            let doubted = doubted.iter().map(|lift| words::logged_set(&lift.body, unit));
            let doubted: Vec<String> = doubted.collect();
            notes.extend((!doubted.is_empty()).then(|| say::in_doubt(words::list(&doubted))));
        }
        notes
    }

    /// What of the day is not logged, piece by piece.
    fn not_done(&self) -> Vec<String> {
        let log = self.snapshot.log.as_ref();
        let of_piece = |piece: &PieceView| {
            let open = !matches!(piece.state, PieceState::Done | PieceState::Note);
            let work = open.then(|| match &piece.progress {
                Some(progress) => say::piece_so_far(&piece.name, progress),
                None => piece.name.clone(),
            });
            let measure = |(when, part)| {
                let row = Row::Measure { piece: piece.name.clone(), when };
                let off = log.and_then(|log| log.put_off(&piece.name, part));
                let open = off.is_some() && !is_done(&row, self.pieces);
                open.then(|| words::put_off(&piece.name, part))
            };
            let before = (MeasuredWhen::Before, Part::Before);
            let measures = [before, (MeasuredWhen::After, Part::After)];
            let measures = measures.into_iter().filter_map(measure);
            work.into_iter().chain(measures).collect::<Vec<String>>()
        };
        self.pieces.iter().flat_map(of_piece).collect()
    }

    fn movement(&self) -> Option<String> {
        match self.row? {
            row @ (Row::Set { .. } | Row::Window { .. }) => {
                Some(self.exercise(row, self.piece()?)?.movement)
            }
            Row::Hold { .. } | Row::Measure { .. } | Row::Finish => None,
        }
    }

    fn title(&self) -> String {
        match (self.row, self.piece().map(|piece| &piece.kind)) {
            (Some(Row::Set { set, .. }), Some(PieceKindView::Strength { view })) => {
                let planned = view.sets.iter().filter(|set| !set.extra).count();
                match set_of(view, *set) {
                    Some(shown) if shown.extra => say::extra_set(&view.movement, set),
                    _ => say::set(&view.movement, set, planned),
                }
            }
            (Some(Row::Window { piece, window }), Some(PieceKindView::Interval { view })) => {
                // The clock over it may still count an earlier one.
                if running_window(view).is_some_and(|counts| counts < *window) {
                    say::window_next(piece, window, view.windows.len())
                } else {
                    say::window(piece, window, view.windows.len())
                }
            }
            (Some(Row::Hold { piece }), Some(PieceKindView::Hold { view })) => {
                say::titled(piece, &view.stretch)
            }
            (Some(Row::Measure { piece, when }), Some(PieceKindView::Hold { view })) => {
                let name = view.range.as_ref().map_or("", |range| range.name.as_str());
                match when {
                    MeasuredWhen::Before => say::measure_before(piece, name),
                    MeasuredWhen::After => say::measure_after(piece, name),
                }
            }
            _ if self.snapshot.state == SessionState::Finished => say::finished().into(),
            (Some(Row::Finish), _) if self.not_done().is_empty() => say::all_logged().into(),
            (Some(Row::Finish), _) => say::not_all_logged().into(),
            _ => self.snapshot.day().map_or(String::new(), |day| day.name.clone()),
        }
    }

    fn place(&self) -> Option<String> {
        match (self.row?, &self.piece()?.kind) {
            (Row::Set { set, .. }, PieceKindView::Strength { view }) => {
                let planned = view.sets.iter().filter(|set| !set.extra).count();
                let extra = set_of(view, *set).is_some_and(|shown| shown.extra);
                Some(if extra { say::place_extra(set) } else { say::place_set(set, planned) })
            }
            (Row::Window { window, .. }, PieceKindView::Interval { view }) => {
                Some(say::place_window(window, view.windows.len()))
            }
            _ => None,
        }
    }

    fn line(&self) -> String {
        let title = self.title();
        match (self.row, self.piece().map(|piece| &piece.kind)) {
            (Some(Row::Set { set, .. }), Some(PieceKindView::Strength { view })) => {
                self.set_line(&title, view, *set)
            }
            (Some(Row::Window { window, .. }), Some(PieceKindView::Interval { view })) => {
                let asked = view.windows.iter().find(|shown| shown.window == *window);
                say::titled(title, asked.map_or("", |asked| asked.asked_text.as_str()))
            }
            (Some(Row::Measure { .. }), Some(PieceKindView::Hold { view })) => {
                let range = view.range.as_ref();
                let unit = range.map_or("", |range| range.unit.as_str());
                if range.is_some_and(|range| range.sides == 2) {
                    say::reading_of_two(title, unit)
                } else {
                    say::reading_of_one(title, unit)
                }
            }
            (Some(Row::Hold { .. }), Some(PieceKindView::Hold { view })) => {
                say::titled(self.row.and_then(Row::piece).unwrap_or_default(), &view.heading)
            }
            (Some(Row::Finish), _) if self.snapshot.state == SessionState::Running => {
                how_hard(self.snapshot.is_afterwards()).into()
            }
            _ => title,
        }
    }

    /// The clock to show with the row: its own until it is logged, or the rest before a set.
    fn clock(&self, went_by: &WentBy) -> Option<ClockView> {
        let (row, piece) = (self.row?, self.piece()?);
        if is_done(row, self.pieces) && !is_timed(piece) {
            return None;
        }
        match (&piece.kind, row) {
            (PieceKindView::Strength { .. }, _) => self.rest.map(rest_clock),
            (PieceKindView::Interval { view }, _) => {
                // One that is over stays as long as it asks for windows that nobody logged.
                let stays =
                    |clock: &ClockView| clock.phase != Phase::Done || clock.question.is_some();
                let clock = view.clock.clone().filter(stays)?;
                Some(ClockView { went_by: went_by.line(&piece.name), ..clock })
            }
            (PieceKindView::Hold { view }, Row::Hold { .. }) => {
                let clock = view.clock.clone()?;
                let line = went_by.line(&piece.name).filter(|_| clock.phase != Phase::Done);
                Some(ClockView { went_by: line, ..clock })
            }
            _ => None,
        }
    }

    fn side_keys(&self) -> Vec<SideKey> {
        use SideKeyKind as Kind;
        let mut keys = Vec::new();
        let mut add = |kind, words: &str, tap| {
            keys.push(SideKey { kind, words: words.to_owned(), tap });
        };
        let running = self.snapshot.state == SessionState::Running;
        if self.snapshot.state == SessionState::Finished {
            add(Kind::Undo, say::undo(), Some(Tap::Undo));
            if let Some((words, tap)) = self.sure() {
                add(Kind::Sure, &words, Some(tap));
            }
            add(Kind::Finish, say::rate_again(), None);
            return keys;
        }
        let (Some(row), true) = (self.row, running) else { return keys };
        let piece = self.piece();
        // At the session's end too: it may hurt from all of it.
        add(Kind::Hurts, say::it_hurts(), None);
        if let Some((words, tap)) = self.sure() {
            add(Kind::Sure, &words, Some(tap));
        }
        if let Some(piece) = piece {
            let begins = |act| act == Act::Begin && self.snapshot.is_afterwards();
            for (kind, words, act) in clock_acts(piece, row) {
                if begins(act) {
                    continue;
                }
                let tap = Tap::Clock { piece: piece.name.clone(), act, station: None };
                add(kind, words, Some(tap));
            }
        }
        let rests = self.rest.is_some_and(|rest| rest.left.is_some());
        if rests && matches!(row, Row::Set { .. }) {
            add(Kind::Minute, say::minute_more(), Some(Tap::Rest { act: RestAct::Minute }));
        }
        if let Some(PieceKindView::Interval { view }) = piece.map(|piece| &piece.kind)
            && can_start_elsewhere(view)
            && !self.snapshot.is_afterwards()
        {
            add(Kind::Station, say::start_elsewhere(), None);
        }
        if row != &Row::Finish {
            add(Kind::Other, say::type_it(), None);
        }
        add(Kind::Undo, say::undo(), Some(Tap::Undo));
        if piece.is_some_and(|piece| !piece.options.is_empty()) {
            add(Kind::Option, say::options(), None);
        }
        if piece.is_some_and(|piece| !piece.flags.is_empty()) {
            add(Kind::Clear, say::clear_flag(), None);
        }
        let has_all = match piece.map(|piece| &piece.kind) {
            Some(PieceKindView::Strength { view }) => view.next_set.is_none(),
            Some(_) => false,
            None => true,
        };
        if has_all {
            add(Kind::Extra, say::extra_work(), None);
        }
        if let Some(tap) = self.later() {
            add(Kind::Later, say::put_off(), Some(tap));
        }
        // There the one key does it.
        if row != &Row::Finish {
            add(Kind::Finish, say::finish(), None);
        }
        keys
    }

    /// What puts the row's piece, or its measure, off; none where a clock would be left behind.
    pub(super) fn later(&self) -> Option<Tap> {
        let (row, piece) = (self.row?, self.piece()?);
        let part = match row {
            Row::Measure { when: MeasuredWhen::Before, .. } => Part::Before,
            Row::Measure { when: MeasuredWhen::After, .. } => Part::After,
            _ if is_timed(piece) => return None,
            _ if self.snapshot.day()?.piece(&piece.name).is_none() => return None,
            _ => Part::Work,
        };
        Some(Tap::PutOff { piece: piece.name.clone(), part, until: Until::Later })
    }

    fn form(&self, asks: Option<Question>) -> Option<Form> {
        let row = self.row?;
        let done = is_done(row, self.pieces);
        let form = |what: String, by_hand, hint: &str| Form {
            ask: words::ask(&what, done, by_hand),
            hint: hint.to_owned(),
        };
        let sides = match self.piece().map(|piece| &piece.kind) {
            Some(PieceKindView::Hold { view }) => view.sides.len(),
            _ => 1,
        };
        Some(match row {
            Row::Set { set, .. } => form(self.title(), false, &self.set_hint(*set, asks)),
            Row::Window { .. } => form(self.title(), false, say::hint_window()),
            Row::Measure { .. } if sides == 2 => {
                form(self.title(), false, say::hint_two_readings())
            }
            Row::Measure { .. } => form(self.title(), false, say::hint_one_reading()),
            Row::Hold { piece } => {
                let hint = if sides == 1 { say::hint_held() } else { say::hint_held_sides() };
                form(piece.clone(), true, hint)
            }
            Row::Finish => rating_form(self.snapshot.is_afterwards()),
        })
    }
}

/// What is asked of a set or a movement that nobody planned: the line `extra 60 x 8`.
pub fn extra_form() -> Form {
    Form { ask: say::log_extra().into(), hint: say::hint_extra().into() }
}

/// What is asked at the end of a session, wherever it is ended: the line `finish 7`, or only `finish`; of one
/// written afterwards `finish 7 60`.
pub fn rating_form(afterwards: bool) -> Form {
    let hint = if afterwards { say::hint_rating_afterwards() } else { say::hint_rating() };
    Form { ask: how_hard(afterwards).into(), hint: hint.into() }
}

fn how_hard(afterwards: bool) -> &'static str {
    if afterwards { say::how_hard_and_long() } else { say::how_hard() }
}

/// What can be done to the clock of a row's piece, besides what the one key does.
fn clock_acts(piece: &PieceView, row: &Row) -> Vec<(SideKeyKind, &'static str, Act)> {
    let (clock, holds) = match (&piece.kind, row) {
        (PieceKindView::Interval { view }, _) => (view.clock.as_ref(), false),
        (PieceKindView::Hold { view }, Row::Hold { .. }) => (view.clock.as_ref(), true),
        _ => return Vec::new(),
    };
    let Some(clock) = clock.filter(|clock| clock.phase != Phase::Done) else {
        let begins = matches!(&piece.kind, PieceKindView::Interval { view } if begins_beside(view));
        return if begins {
            vec![(SideKeyKind::Begin, say::start_clock(), Act::Begin)]
        } else {
            Vec::new()
        };
    };
    let mut acts = Vec::new();
    if holds && !clock.paused && matches!(clock.phase, Phase::Hold | Phase::Push | Phase::LetGo) {
        acts.push((SideKeyKind::Extend, say::seconds_more(), Act::Extend));
    }
    if !holds {
        acts.push(if clock.paused {
            (SideKeyKind::Resume, say::go_on(), Act::Resume)
        } else {
            (SideKeyKind::Pause, say::pause(), Act::Pause)
        });
    }
    acts.push((SideKeyKind::Next, say::skip_to_next(), Act::Skip));
    acts.push((SideKeyKind::Stop, say::stop(), Act::Stop));
    acts
}

/// Once a window is logged, or the clock is over, the one key logs windows and begins no clock.
fn begins_beside(view: &IntervalView) -> bool {
    let key_logs = view.clock.is_some() || view.windows.iter().any(|window| window.reps.is_some());
    key_logs && view.next_window.is_some()
}

/// In a full room not everybody starts at the first station.
pub(super) fn can_start_elsewhere(view: &IntervalView) -> bool {
    let over = view.clock.as_ref().is_none_or(|clock| clock.phase == Phase::Done);
    // What is logged is counted from the station that was started at.
    let logged = view.windows.iter().any(|window| window.reps.is_some());
    over && !logged && view.stations.len() > 1
}
