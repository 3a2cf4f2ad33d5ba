//! A season of an athlete, session by session.
//!
//! Strength of 25 to 250 kg to begin with. Stretches of 3 to 8 weeks in turn: progress of 0.2 to 1.2 % a
//! week, less as the months go by, and plateaus, one in ten of them a slow loss. One to three sessions a
//! week, one gap in twenty-five a week longer. Blocks of four weeks with a target of 3 to 15 reps, loads
//! from a wrong idea of the max (5 %), 2 % more each week, on a 2.5 kg grid. Three to five sets; the last one
//! is open, in half to all sessions. Half of the athletes rate the other sets, seven in ten of them.
//! Chosen, no source.

use chrono::{Days, NaiveDate};
use holdfast_core::load::strength::{Evidence, SetSeen};
use holdfast_core::{Mass, MassUnit};
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

use super::behaviour::{BEHAVIOURS, Behaviour};
use super::body::Body;
use super::chance::Chance;

/// One athlete's training of one movement.
pub struct Lifter {
    /// In the order of days.
    pub sessions: Vec<Session>,
}

/// One session.
pub struct Session {
    /// The date.
    pub on: NaiveDate,
    /// The natural logarithm of the true one-rep max that day in kilograms, fresh and in usual form.
    pub max: f64,
    /// The sets as they were logged, in order.
    pub seen: Vec<SetSeen>,
    /// The set whose band is scored, if one was done that can be.
    pub scored: Option<Scored>,
}

/// A set that a band is scored on, whether its reps were logged or not.
#[derive(Clone, Copy)]
pub struct Scored {
    /// Its load.
    pub load: Mass,
    /// How many sets of the day came before it.
    pub before: u32,
    /// The reps that were counted, or would have been.
    pub reps: u32,
}

/// Sessions of a season.
const SESSIONS: usize = 40;

/// Reps commonly written into a plan.
const TARGETS: [u32; 9] = [3, 5, 5, 5, 8, 8, 10, 12, 15];

/// So many athletes of a behaviour, drawn from a seed.
pub fn crew(behaviour: Behaviour, seed: u64, athletes: usize) -> Vec<Lifter> {
    let place = BEHAVIOURS.iter().position(|other| *other == behaviour).unwrap() as u64;
    let mut chance = Chance(ChaCha8Rng::seed_from_u64(seed.wrapping_mul(31).wrapping_add(place)));
    (0..athletes).map(|_| lifter(&mut chance, behaviour)).collect()
}

/// Weeks of progress and plateau.
struct Progress {
    first: f64,
    rate: f64,
    left: u32,
}

impl Progress {
    fn session(&mut self, chance: &mut Chance, day: u64, a_week: u32) -> f64 {
        if self.left == 0 {
            self.left = chance.whole(3, 8) * a_week;
            let flat = if chance.happens(0.1) { -0.003 } else { 0.0 };
            let up = self.first * 0.5_f64.powf(day as f64 / 182.0);
            self.rate = if self.rate > 0.0 { flat } else { up };
        }
        self.left -= 1;
        self.rate
    }
}

/// What an athlete's season is made of.
struct Athlete {
    behaviour: Behaviour,
    body: Body,
    opens: f64,
    rates: bool,
    /// The one target of half of the athletes.
    own: Option<u32>,
}

/// The plan of a block: the target, and the log of the load that is wanted, off the grid.
struct Plan {
    target: u32,
    wanted: f64,
}

fn lifter(chance: &mut Chance, behaviour: Behaviour) -> Lifter {
    let body = Body::draw(chance, behaviour);
    let mut level = (80.0 * (0.35 * chance.normal()).exp()).clamp(25.0, 250.0).ln();
    let a_week = chance.whole(1, 3);
    let opens = chance.between(0.5, 1.0);
    let rates = chance.happens(0.5) && behaviour.may_rate();
    let own = chance.happens(0.5).then(|| chance.pick(&TARGETS));
    let athlete = Athlete { behaviour, body, opens, rates, own };
    let first = chance.between(0.002, 0.012);
    let fall = chance.between(0.003, 0.012);
    let away = chance.whole(10, 30) as usize;
    let slip = chance.whole(4, 38) as usize;
    let mut progress = Progress { first, rate: 0.0, left: 0 };
    let mut plan = Plan { target: 5, wanted: 0.0 };
    let (mut day, mut in_block, mut slipped) = (0, 0, false);
    let monday = NaiveDate::from_ymd_opt(2026, 1, 5).unwrap();
    let mut sessions = Vec::new();
    for at in 0..SESSIONS {
        let gap = gap(chance, a_week, behaviour == Behaviour::Layoff && at == away);
        day += if at == 0 { 0 } else { gap };
        let (weeks, long) = (gap as f64 / 7.0, gap > 30);
        let gain = progress.session(chance, day, a_week);
        level += if long { -fall * (weeks - 1.0) } else { gain * weeks };
        let weeks = if long { 1.0 } else { weeks };
        level += 0.001 * chance.normal() * (weeks * f64::from(a_week)).sqrt();
        let new = in_block >= 4 * a_week || at == 0 || long;
        in_block = if new { 1 } else { in_block + 1 };
        athlete.plan(chance, &mut plan, level, new, weeks);
        let on = monday.checked_add_days(Days::new(day)).unwrap();
        let mut session = athlete.train(chance, &plan, level, on);
        if behaviour == Behaviour::Typo && at >= slip && !slipped {
            slipped = mistype(chance, &mut session);
        }
        sessions.push(session);
    }
    Lifter { sessions }
}

/// Days since the session before.
fn gap(chance: &mut Chance, a_week: u32, away: bool) -> u64 {
    let usual = 7.0 / f64::from(a_week) + f64::from(chance.whole(0, 2)) - 1.0;
    let usual = usual.round_ties_even().max(1.0) as u64;
    usual + if chance.happens(0.04) { 7 } else { 0 } + if away { 56 } else { 0 }
}

/// Mistypes an open set, if there is a counted one; its band is not scored then.
fn mistype(chance: &mut Chance, session: &mut Session) -> bool {
    let which = chance.pick(&[0, 1, 2, 3, 4]) as usize;
    let counted = |set: &&mut SetSeen| set.evidence == Evidence::Counted;
    let Some(set) = session.seen.last_mut().filter(counted) else { return false };
    match [2.2, 1.0 / 2.2, 1.25, 0.8].get(which) {
        Some(factor) => set.load.ten_ng = (set.load.ten_ng as f64 * factor).round() as i64,
        None => set.reps += 10,
    }
    session.scored = None;
    true
}

impl Athlete {
    fn plan(&self, chance: &mut Chance, plan: &mut Plan, level: f64, new: bool, weeks: f64) {
        if self.behaviour == Behaviour::Seventy {
            plan.target = 10;
            plan.wanted += 0.02 * weeks;
            let at = level + 0.7_f64.ln();
            if new || (plan.wanted - at).abs() > 0.05 {
                plan.wanted = at + 0.02 * chance.normal();
            }
        } else if new {
            plan.target = self.own.unwrap_or_else(|| chance.pick(&TARGETS));
            let thought = level + 0.05 * chance.normal() - 0.05;
            // Epley's equation, as a coach may use it.
            plan.wanted = thought - (f64::from(plan.target) / 30.0).ln_1p();
        } else {
            plan.wanted += 0.02 * weeks;
        }
    }

    fn train(&self, chance: &mut Chance, plan: &Plan, level: f64, on: NaiveDate) -> Session {
        let (behaviour, target) = (self.behaviour, plan.target);
        let grid = (plan.wanted.exp() / 2.5).round_ties_even().max(1.0);
        let load = Mass::thousandths(grid as i64 * 2_500, MassUnit::Kg);
        let strength = level + Body::form(chance);
        let sets = chance.whole(3, 5);
        let is_open = chance.happens(self.opens) && behaviour != Behaviour::Rated;
        let (mut seen, mut scored) = (Vec::new(), None);
        for before in 0..sets {
            let last = before + 1 == sets;
            let done = self.body.reps(chance, strength, before, (grid * 2.5).ln());
            let count = self.count(chance, done, target);
            let open = last && is_open;
            let press = done >= target && chance.happens(behaviour.presses());
            let left = self.body.said(chance, done.saturating_sub(target));
            let says = self.rates && chance.happens(0.7) || behaviour == Behaviour::Rated;
            let (reps, evidence) = match (open, done < target) {
                (true, _) if press => (target, Evidence::AsPlanned),
                (true, _) => (count, Evidence::Counted),
                (false, true) => (done, Evidence::Short),
                (false, false) if says => (target, Evidence::Reserve(left)),
                (false, false) => (target, Evidence::AsPlanned),
            };
            seen.push(SetSeen { on, load, reps, target, open, evidence });
            let can_be = if behaviour == Behaviour::Rated { last } else { open };
            // Whoever counts now and then is scored on what they count.
            let hidden = behaviour == Behaviour::KeyMix && press;
            if can_be && !hidden {
                scored = Some(Scored { load, before, reps: count });
            }
        }
        Session { on, max: level, seen, scored }
    }

    /// Where an open set is stopped of which so many reps could be done.
    fn count(&self, chance: &mut Chance, done: u32, target: u32) -> u32 {
        let least = match self.behaviour {
            Behaviour::Short => 1,
            Behaviour::Sticky => target,
            _ => return done - u32::from(done > 1 && chance.happens(1.0 / 7.0)),
        };
        done.saturating_sub(chance.whole(1, 3)).max(done.min(least))
    }
}
