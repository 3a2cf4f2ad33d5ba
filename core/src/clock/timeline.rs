//! The engine under both clocks: time to get ready, then turns of work with a switch between them.
//!
//! A clock is one position on its course. Running moves it along, a skip moves it to the end of the
//! stretch it is in, extending makes the course longer from there on. All else is read off the
//! position by arithmetic, so a course of a billion windows costs no more than one of three.
//! Positions are `i128`: no spec and no marks overflow one.

use super::{Act, During, EXTEND_MS, FAR_MS, Mark, Trust};
use crate::instant::Elapsed;
use crate::instant::Instant;

/// The stretches of a clock: ready, work, switch, work, ..., work. An interval's switch is 0.
#[derive(Clone, Debug)]
pub(super) struct Course {
    /// Milliseconds to get ready.
    pub(super) ready: i128,
    /// Milliseconds of one turn, before it is extended.
    pub(super) work: i128,
    /// Milliseconds between one turn and the next.
    pub(super) switch: i128,
    /// How many turns.
    pub(super) turns: u32,
    /// The longest that extending makes a turn; none when turns cannot be extended.
    pub(super) longest: Option<i128>,
    /// Turns made longer and by how much, in their order.
    extra: Vec<(u32, i128)>,
}

/// Where on its course a clock is.
#[derive(Clone, Copy, Debug)]
pub(super) struct Spot {
    pub(super) during: During,
    /// The turn it is in, or that comes next, from 1.
    pub(super) turn: u32,
    /// Milliseconds of this stretch that are over.
    pub(super) spent_ms: i64,
    /// Milliseconds of this stretch that are left, more than 0.
    pub(super) left_ms: i64,
}

/// What a clock says.
#[derive(Clone, Copy, Debug)]
pub(super) enum Standing {
    NotBegun,
    Live { spot: Spot, paused: bool },
    Done { ran_out: bool, ago_ms: i64 },
}

/// What the marks made of a course by some moment.
#[derive(Clone, Debug)]
pub(super) struct Timeline {
    pub(super) course: Course,
    /// What the position rests on.
    pub(super) trust: Trust,
    run: Run,
    /// Milliseconds along the course, skipped ones included. Runs on past the end, so that what it
    /// is past the end by is how long ago the end was.
    position: i128,
    /// The position at the last mark.
    at_mark: i128,
    cuts: Vec<Cut>,
    /// True when a skip was what reached the end.
    skipped_out: bool,
}

#[derive(Clone, Copy, Debug)]
enum Run {
    NotBegun,
    Running,
    Paused,
    Stopped { ago: i128 },
}

/// A turn that a skip ended short, and the milliseconds it was short by.
#[derive(Clone, Copy, Debug)]
struct Cut {
    turn: u32,
    lost: i128,
}

impl Course {
    /// A course from lengths in milliseconds; one below 0 is taken as 0.
    pub(super) fn new(ready_ms: i64, work_ms: i64, switch_ms: i64, turns: u32) -> Course {
        let length = |ms: i64| i128::from(ms.max(0));
        Course {
            ready: length(ready_ms),
            work: length(work_ms),
            switch: length(switch_ms),
            turns,
            longest: None,
            extra: Vec::new(),
        }
    }

    /// Milliseconds a turn was made longer by.
    fn extra_of(&self, turn: u32) -> i128 {
        self.extra.iter().find(|(of, _)| *of == turn).map_or(0, |(_, extra)| *extra)
    }

    /// Milliseconds of a turn, with what it was made longer by.
    pub(super) fn work_of(&self, turn: u32) -> i128 {
        self.work + self.extra_of(turn)
    }

    /// The position at which a turn, counted from 1, starts.
    pub(super) fn start(&self, turn: u32) -> i128 {
        let before = self.extra.iter().filter(|(of, _)| *of < turn).map(|(_, extra)| extra);
        let plain = i128::from(turn.saturating_sub(1)) * (self.work + self.switch);
        self.ready + plain + before.sum::<i128>()
    }

    /// The position of the end.
    pub(super) fn end(&self) -> i128 {
        if self.turns == 0 { self.ready } else { self.start(self.turns) + self.work_of(self.turns) }
    }

    /// The turn that `position` is in or in the switch after, from 1; past the last when over.
    pub(super) fn turn_at(&self, position: i128) -> u32 {
        let mut past = (position - self.ready).max(0);
        for (turn, extra) in &self.extra {
            // As if no later turn had been made longer, the position is at or before this one's end.
            let end = i128::from(*turn) * (self.work + self.switch);
            if past < end {
                break;
            }
            if past < end + extra {
                return *turn;
            }
            past -= extra;
        }
        let whole = past.checked_div(self.work + self.switch).unwrap_or(i128::from(self.turns));
        u32::try_from(whole).unwrap_or(u32::MAX).saturating_add(1)
    }

    fn spot(&self, position: i128) -> Option<Spot> {
        if position >= self.end() {
            return None;
        }
        let spot = |during, turn, from: i128, to: i128| {
            let (spent_ms, left_ms) = (whole_ms(position - from), whole_ms(to - position));
            Some(Spot { during, turn, spent_ms, left_ms })
        };
        if position < self.ready {
            return spot(During::Ready, 1, 0, self.ready);
        }
        let turn = self.turn_at(position);
        let start = self.start(turn);
        let rest = start + self.work_of(turn);
        if position < rest {
            spot(During::Work, turn, start, rest)
        } else {
            spot(During::Switch, turn.saturating_add(1), rest, rest + self.switch)
        }
    }

    /// Makes a turn longer, unless it would become too long. Turns are extended in their order.
    fn extend(&mut self, turn: u32) {
        let by = i128::from(EXTEND_MS);
        if self.longest.is_none_or(|longest| self.work_of(turn) + by > longest) {
            return;
        }
        match self.extra.last_mut() {
            Some((of, extra)) if *of == turn => *extra += by,
            _ => self.extra.push((turn, by)),
        }
    }
}

impl Timeline {
    /// Follows the marks, in the order given, up to `now`.
    pub(super) fn fold(course: Course, marks: &[Mark], now: &Instant) -> Timeline {
        let mut line = Timeline {
            course,
            trust: Trust::Boot,
            run: Run::NotBegun,
            position: 0,
            at_mark: 0,
            cuts: Vec::new(),
            skipped_out: false,
        };
        let mut last = marks.first().map_or(now, |mark| &mark.at);
        for mark in marks {
            last = line.pass(last, &mark.at);
            line.act(mark.act);
        }
        line.at_mark = line.position;
        line.pass(last, now);
        line
    }

    /// Lets the time from `last` to `next` pass, and gives the moment to count on from.
    fn pass<'a>(&mut self, last: &'a Instant, next: &'a Instant) -> &'a Instant {
        let passed = match next.elapsed_since(last) {
            // Counting on from the earlier moment would count the time between them twice.
            Elapsed::Boot(_) if next.boot_ms < last.boot_ms => return last,
            Elapsed::Boot(ms) => Some((ms, Trust::Boot)),
            Elapsed::Wall(ms) => Some((ms, Trust::Wall)),
            Elapsed::Unknown => None,
        };
        let end = self.course.end();
        let counted = match &mut self.run {
            // Nothing runs, so nothing depends on how long it was.
            Run::NotBegun | Run::Paused => return next,
            Run::Running => (&mut self.position, end),
            Run::Stopped { ago } => (ago, 0),
        };
        let (reached, end) = counted;
        let far = |ms: i64| *reached + i128::from(ms) > end + i128::from(FAR_MS);
        let trust = match passed {
            Some((ms, Trust::Wall)) if far(ms) => Trust::Unknown,
            Some((ms, trust)) => {
                *reached += i128::from(ms);
                trust
            }
            None => Trust::Unknown,
        };
        self.trust = self.trust.max(trust);
        next
    }

    fn act(&mut self, act: Act) {
        let over = self.position >= self.course.end();
        match (act, self.run) {
            (Act::Begin, Run::NotBegun) => self.run = Run::Running,
            (_, Run::NotBegun | Run::Stopped { .. }) => {}
            _ if over => {}
            (Act::Pause, Run::Running) => self.run = Run::Paused,
            (Act::Resume, Run::Paused) => self.run = Run::Running,
            (Act::Extend, _) => self.extend(),
            (Act::Skip, _) => self.skip(),
            (Act::Stop, _) => self.run = Run::Stopped { ago: 0 },
            (Act::Begin | Act::Pause | Act::Resume, _) => {}
        }
    }

    fn extend(&mut self) {
        let spot = self.course.spot(self.position);
        if let Some(Spot { during: During::Work, turn, .. }) = spot {
            self.course.extend(turn);
        }
    }

    fn skip(&mut self) {
        let Some(spot) = self.course.spot(self.position) else { return };
        let lost = i128::from(spot.left_ms);
        self.position += lost;
        if spot.during == During::Work {
            self.cuts.push(Cut { turn: spot.turn, lost });
        }
        if self.position >= self.course.end() {
            // Done runs on even when it was reached from a pause, to know how long ago it was.
            self.skipped_out = true;
            self.run = Run::Running;
        }
    }

    /// What the clock says.
    pub(super) fn standing(&self) -> Standing {
        let paused = match self.run {
            Run::NotBegun => return Standing::NotBegun,
            Run::Stopped { ago } => {
                return Standing::Done { ran_out: false, ago_ms: whole_ms(ago) };
            }
            Run::Paused => true,
            Run::Running => false,
        };
        match self.course.spot(self.position) {
            Some(spot) => Standing::Live { spot, paused },
            None => Standing::Done {
                ran_out: !self.skipped_out,
                ago_ms: whole_ms(self.position - self.course.end()),
            },
        }
    }

    /// The position that cues lie ahead of, when anything lies ahead without a further mark.
    pub(super) fn running_from(&self) -> Option<i128> {
        let running = matches!(self.run, Run::Running) && self.position <= self.course.end();
        running.then_some(self.position)
    }

    /// The positions at the last mark and now, when the clock has run since.
    pub(super) fn run_since_mark(&self) -> Option<(i128, i128)> {
        let ran = matches!(self.run, Run::Running) && self.position > self.at_mark;
        ran.then_some((self.at_mark, self.position))
    }

    /// Milliseconds to the end if nothing is done and it runs on; none when it is not live.
    pub(super) fn ends_in_ms(&self) -> Option<i64> {
        let live = matches!(self.standing(), Standing::Live { .. });
        live.then(|| whole_ms(self.course.end() - self.position))
    }

    /// Milliseconds of work really done in a turn counted from 1.
    pub(super) fn worked_ms(&self, turn: u32) -> i64 {
        let start = self.course.start(turn);
        let reached = (self.position - start).clamp(0, self.course.work_of(turn));
        whole_ms(reached - self.cut_from(turn))
    }

    /// Milliseconds that a skip cut from a turn.
    pub(super) fn cut_from(&self, turn: u32) -> i128 {
        self.cuts.iter().filter(|cut| cut.turn == turn).map(|cut| cut.lost).sum()
    }
}

/// Milliseconds for the outside; more than it can hold is its most.
pub(super) fn whole_ms(ms: i128) -> i64 {
    i64::try_from(ms).unwrap_or(i64::MAX)
}
