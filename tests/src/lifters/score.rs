//! What bands and intervals hold, and how near the model and single equations come.

use std::collections::VecDeque;

use holdfast_core::load::strength::{Evidence, MOST_REPS, SetSeen, Strength, strength};
use holdfast_core::{Mass, MassUnit};

use super::equations::{EQUATIONS, Equation, WAYS};
use super::season::{Lifter, Scored, Session};

/// A share of cases.
#[derive(Clone, Copy, Default)]
pub struct Share {
    inside: f64,
    /// How many cases.
    pub count: f64,
}

impl Share {
    fn add(&mut self, inside: bool) {
        self.inside += f64::from(u8::from(inside));
        self.count += 1.0;
    }

    /// In percent.
    pub fn percent(&self) -> f64 {
        100.0 * self.inside / self.count
    }
}

/// Errors of one way of reading strength.
#[derive(Clone, Copy, Default)]
pub struct Errors {
    squares: f64,
    of_max: f64,
    off: f64,
    of_reps: f64,
}

impl Errors {
    fn max(&mut self, truth: f64, said: f64) {
        self.squares += (said - truth).powi(2);
        self.of_max += 1.0;
    }

    fn reps(&mut self, truth: u32, said: u32) {
        self.off += f64::from(truth.min(MOST_REPS).abs_diff(said));
        self.of_reps += 1.0;
    }

    /// Root mean square of the log of said over true one-rep max, in percent.
    pub fn max_percent(&self) -> f64 {
        100.0 * (self.squares / self.of_max).sqrt()
    }

    /// Mean absolute error of the reps of open sets to come.
    pub fn reps_off(&self) -> f64 {
        self.off / self.of_reps
    }
}

/// What the model and the equations said of a crew. Sessions are counted from 1; "late" is from the tenth.
#[derive(Default)]
pub struct Score {
    /// Reps inside their band in sessions 2 to 9, 10 to 20, 21 and later.
    pub in_band: [Share; 3],
    width: f64,
    /// Athletes whose own share of late bands that held is 65 to 95 %.
    pub athletes: Share,
    /// The true one-rep max inside its interval in sessions 2 to 9, and late.
    pub in_interval: [Share; 2],
    halves: Vec<f64>,
    /// Late sessions in which the one-rep max is shown.
    pub shown: Share,
    /// The true one-rep max inside its interval, where that is shown.
    pub shown_holds: Share,
    shown_halves: Vec<f64>,
    /// True mean change a week over a trend's days inside the trend's interval.
    pub in_trend: Share,
    /// Late sessions whose last set, with two reps more, would have lowered by more than 0.1 % what is
    /// foretold at its load, and the lower end of the one-rep max.
    pub backwards: [Share; 2],
    /// The model's late errors.
    pub model: Errors,
    /// By equation, by way.
    pub plain: [[Errors; WAYS.len()]; EQUATIONS.len()],
}

/// The session from which on somebody is known.
const LATE: usize = 10;

/// Foretells every session of every athlete from those before it.
///
/// # Panics
/// When the core refuses what somebody did.
pub fn score(crew: &[Lifter]) -> Score {
    let mut score = Score::default();
    crew.iter().for_each(|lifter| score.lifter(lifter));
    score.halves.sort_by(f64::total_cmp);
    score.shown_halves.sort_by(f64::total_cmp);
    score
}

fn median(sorted: &[f64]) -> f64 {
    let (low, high) = ((sorted.len().max(1) - 1) / 2, sorted.len() / 2);
    sorted.get(low).zip(sorted.get(high)).map_or(f64::NAN, |(low, high)| (low + high) / 2.0)
}

impl Score {
    fn lifter(&mut self, lifter: &Lifter) {
        let mut known: Vec<SetSeen> = Vec::new();
        let mut read = VecDeque::new();
        let mut own = Share::default();
        for (at, session) in (1..).zip(&lifter.sessions) {
            if let Some(now) = strength(&known, session.on).unwrap() {
                let late = at >= LATE;
                self.interval(&now, session, late);
                if let Some(scored) = &session.scored {
                    let inside = self.band(&now, scored, at);
                    if late {
                        own.add(inside);
                    }
                }
                if late {
                    self.equations(&read, session);
                    self.trend(&now, lifter);
                    // One in five: it asks the model twice more.
                    if at % 5 == 0 {
                        self.turned(&known, session);
                    }
                }
            }
            known.extend(&session.seen);
            read.push_front(session.read());
            read.truncate(3);
        }
        if own.count >= 12.0 {
            self.athletes.add((65.0..=95.0).contains(&own.percent()));
        }
    }

    fn band(&mut self, now: &Strength, scored: &Scored, at: usize) -> bool {
        let band = now.expected_reps(scored.load, scored.before);
        let inside = (band.low..=band.high).contains(&scored.reps.min(MOST_REPS));
        let part = match at {
            ..LATE => 0,
            LATE..=20 => 1,
            _ => 2,
        };
        self.in_band[part].add(inside);
        if part > 0 {
            self.width += f64::from(band.high - band.low + 1);
            self.model.reps(scored.reps, band.likely);
        }
        inside
    }

    fn interval(&mut self, now: &Strength, session: &Session, late: bool) {
        let Some(max) = now.estimate() else { return };
        let inside = (max.low.ln()..=max.high.ln()).contains(&session.max);
        self.in_interval[usize::from(late)].add(inside);
        if !late {
            return;
        }
        let half = 50.0 * (max.high / max.low).ln();
        self.halves.push(half);
        self.shown.add(now.max().is_some());
        if now.max().is_some() {
            self.shown_holds.add(inside);
            self.shown_halves.push(half);
        }
        self.model.max(session.max, max.likely.ln());
    }

    fn trend(&mut self, now: &Strength, lifter: &Lifter) {
        let Some(trend) = now.trend() else { return };
        let max = |on| lifter.sessions.iter().find(|session| session.on == on).unwrap().max;
        let weeks = (trend.to - trend.from).num_days() as f64 / 7.0;
        let change = ((max(trend.to) - max(trend.from)) / weeks).exp_m1();
        self.in_trend.add((trend.per_week.low..=trend.per_week.high).contains(&change));
    }

    /// Asks what two more reps in the session's last set would have changed.
    fn turned(&mut self, known: &[SetSeen], session: &Session) {
        let last = *session.seen.last().unwrap();
        let before = session.seen.len() as u32 - 1;
        let foretold = |more: u32| {
            let mut sets = [known, &session.seen].concat();
            sets.last_mut().unwrap().reps += more;
            let now = strength(&sets, last.on).unwrap()?;
            Some([now.foretell(last.load, before).0, now.estimate()?.low.ln()])
        };
        let Some((less, more)) = foretold(0).zip(foretold(2)) else { return };
        for ((share, less), more) in self.backwards.iter_mut().zip(less).zip(more) {
            share.add(more < less - 0.001);
        }
    }

    fn equations(&mut self, read: &VecDeque<(f64, u32)>, session: &Session) {
        let few = read.iter().find(|row| row.1 <= 10).or(read.front());
        for (errors, equation) in self.plain.iter_mut().zip(&EQUATIONS) {
            let max = |(load, reps): &(f64, u32)| load * (equation.over)(f64::from(*reps));
            let best = read.iter().map(max).fold(0.0, f64::max);
            let said = [read.front().map_or(best, max), best, few.map_or(best, max)];
            for (errors, said) in errors.iter_mut().zip(said) {
                errors.max(session.max, said.ln());
                if let Some(scored) = &session.scored {
                    errors.reps(scored.reps, equation.reps(said, kg(scored.load)));
                }
            }
        }
    }

    /// The mean number of counts in a late band.
    pub fn width(&self) -> f64 {
        self.width / (self.in_band[1].count + self.in_band[2].count)
    }

    /// The least errors of the equations in one-rep max and in reps, each with whose they are. Without
    /// Mayhew's, which is for the bench press only.
    pub fn best(&self) -> [(f64, &'static str); 2] {
        let general = self.plain.iter().zip(&EQUATIONS).filter(|(_, equation)| equation.general);
        let all = || general.clone().flat_map(|(ways, of)| ways.iter().map(|way| (way, of.name)));
        let least = |of: fn(&Errors) -> f64| {
            let all = all().map(|(errors, name)| (of(errors), name));
            all.min_by(|one, other| one.0.total_cmp(&other.0)).unwrap()
        };
        [least(Errors::max_percent), least(Errors::reps_off)]
    }

    /// Everything `tests/reference/strength.json` has of a behaviour, under its names.
    pub fn columns(&self) -> [(&'static str, f64); 12] {
        let [early, middle, late] = self.in_band.map(|part| part.percent());
        let [max_early, max_late] = self.in_interval.map(|part| part.percent());
        [
            ("early", early),
            ("middle", middle),
            ("late", late),
            ("width", self.width()),
            ("athletes", self.athletes.percent()),
            ("max_early", max_early),
            ("max_late", max_late),
            ("max_error", self.model.max_percent()),
            ("max_half", median(&self.halves)),
            ("shown", self.shown.percent()),
            ("shown_holds", self.shown_holds.percent()),
            ("shown_half", median(&self.shown_halves)),
        ]
    }
}

impl Session {
    /// What an equation is given of a session: the open set as it was logged; else the last one, with the
    /// reps said to be left.
    fn read(&self) -> (f64, u32) {
        let set = self.seen.last().unwrap();
        let left = if let Evidence::Reserve(left) = set.evidence { left } else { 0 };
        (kg(set.load), (set.reps + left).clamp(1, MOST_REPS))
    }
}

impl Equation {
    /// Whole reps at a load from a one-rep max, by the same equation.
    fn reps(&self, max: f64, load: f64) -> u32 {
        let (mut low, mut high) = (0.0, f64::from(MOST_REPS) + 0.5);
        for _ in 0..30 {
            let middle = (low + high) / 2.0;
            if (self.over)(middle) < max / load { low = middle } else { high = middle }
        }
        low.round() as u32
    }
}

fn kg(load: Mass) -> f64 {
    load.for_drawing(MassUnit::Kg)
}
