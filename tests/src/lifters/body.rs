//! How the lifters are made.
//!
//! It is not the model's own twin. What an athlete really does:
//!
//! - **Curve.** The share of the one-rep max that can be lifted `r` times is a mix, in proportions of
//!   the athlete's own, of an exponential and of a hyperbola (as work and critical power make it),
//!   with an asymptote of 20 to 45 % of the athlete's own, through the reps they have at 70 %: 16 with a
//!   standard deviation of 4, cut at 6 and 26 (Zourdos et al., J Strength Cond Res
//!   2021;35(2S):S158-165). The model's curve is a mean of three other shapes.
//! - **Strength.** 25 to 250 kg to begin with. Stretches of 3 to 8 weeks in turn: progress of 0.2 to 1.2 % a
//!   week, less as the months go by, and plateaus, one in ten of them a slow loss. Missed weeks, one
//!   in twelve; four in ten go away once for 2 to 4 weeks and lose 0.7 % a week from the second on.
//! - **Form.** Of the day, Student's t with four degrees of freedom, scale 1.5 %, at most 12 %.
//! - **Sets.** Three to five of the same load, each making the next weaker by 0.3 to 2 %. Reps are what
//!   is whole of the athlete's capacity plus an error that grows with the reps; one open set in
//!   seven is stopped a rep early.
//! - **Plan.** Blocks of four weeks with a target of 3 to 15 reps, loads from a wrong idea of the max
//!   (5 %), 2 % more each week, on a 2.5 kg grid. The last set is open, in half to all sessions. Half of
//!   the athletes rate the other sets.
//! - **Ratings.** The reps really left, called too low by 15 % of them and by the athlete's own bias (0.7
//!   reps), with an error of 0.8 reps and a quarter of the reps left more: about 1 rep near
//!   failure, more than 2 at 7 to 10 away (Hackett et al., J Strength Cond Res 2017;31(8):2162-2168).
//!
//! All of these but the two cited are chosen, no source.

use chrono::{Days, NaiveDate};
use holdfast_core::Mass;
use holdfast_core::load::strength::{Evidence, SetSeen};
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

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
    /// The true one-rep max that day, fresh and in usual form, kilograms.
    pub max: f64,
    /// The sets, in order.
    pub seen: Vec<SetSeen>,
}

impl Session {
    /// The open set, if there was one.
    pub fn open(&self) -> Option<&SetSeen> {
        self.seen.last().filter(|set| set.evidence == Evidence::Open)
    }
}

/// What could well be otherwise than it was chosen.
#[derive(Clone, Copy)]
pub struct World {
    /// Mean reps at 70 % of the one-rep max.
    pub reps_at_70: f64,
    /// The least and the most that a set takes from the next.
    pub tires: (f64, f64),
    /// The scale of the form of the day.
    pub form: f64,
}

impl World {
    /// As it was chosen.
    pub const USUAL: World = World { reps_at_70: 16.0, tires: (0.003, 0.02), form: 0.015 };
}

/// What does not change of a lifter.
pub(crate) struct Body {
    asymptote: f64,
    at_70: f64,
    hyperbolic: f64,
    /// What a set takes from the next.
    pub(crate) tires: f64,
    form: f64,
    /// Of the reps left that this lifter says.
    pub(crate) bias: f64,
}

impl Body {
    /// Draws one.
    pub(crate) fn draw(chance: &mut Chance, world: World) -> Body {
        let reps = loop {
            let reps = world.reps_at_70 + 4.0 * chance.normal();
            if (6.0..=26.0).contains(&reps) {
                break reps;
            }
        };
        Body {
            asymptote: chance.between(0.20, 0.45),
            // Sixteen whole reps are sixteen and a half of capacity.
            at_70: reps + 0.5,
            hyperbolic: chance.between(0.0, 1.0),
            tires: chance.between(world.tires.0, world.tires.1),
            form: world.form,
            bias: 0.7 * chance.normal(),
        }
    }

    /// The share of the one-rep max that goes up `reps` times; above 1 for less than one.
    pub(crate) fn share(&self, reps: f64) -> f64 {
        if reps < 1.0 {
            return 1.0 + 0.05 * (1.0 - reps);
        }
        let (above, at_70) = (1.0 - self.asymptote, 0.7 - self.asymptote);
        let (more, more_at_70) = (reps - 1.0, self.at_70 - 1.0);
        let work = more_at_70 * at_70 / (above - at_70);
        let hyperbola = work / (work + more);
        let exponential = (at_70 / above).powf(more / more_at_70);
        let mixed = self.hyperbolic * hyperbola + (1.0 - self.hyperbolic) * exponential;
        self.asymptote + above * mixed
    }

    /// The reps, not whole, that a share of the one-rep max goes up.
    pub(crate) fn capacity(&self, share: f64) -> f64 {
        let (mut low, mut high) = (-20.0, 200.0);
        for _ in 0..40 {
            let middle = (low + high) / 2.0;
            if self.share(middle) > share { low = middle } else { high = middle }
        }
        low
    }
}

/// Weeks of progress and plateau.
struct Progress {
    rate: f64,
    left: u32,
}

impl Progress {
    fn week(&mut self, chance: &mut Chance, week: u32) -> f64 {
        if self.left == 0 {
            self.left = chance.whole(3, 8);
            let flat = if chance.happens(0.1) { -0.003 } else { 0.0 };
            let up = chance.between(0.002, 0.012) * 0.5_f64.powf(f64::from(week) / 26.0);
            self.rate = if self.rate > 0.0 { flat } else { up };
        }
        self.left -= 1;
        self.rate
    }
}

/// So many lifters, drawn from a seed.
pub fn lifters(seed: u64, many: usize, world: World) -> Vec<Lifter> {
    let mut chance = Chance(ChaCha8Rng::seed_from_u64(seed));
    (0..many).map(|_| lifter(&mut chance, world)).collect()
}

/// Reps commonly written into a plan.
const TARGETS: [u32; 9] = [3, 5, 5, 5, 8, 8, 10, 12, 15];

fn lifter(chance: &mut Chance, world: World) -> Lifter {
    let body = Body::draw(chance, world);
    let mut max = (80.0 * (0.35 * chance.normal()).exp()).clamp(25.0, 250.0);
    let rates = chance.happens(0.5);
    let open = chance.between(0.5, 1.0);
    let a_week = chance.whole(1, 3);
    let weeks = chance.whole(16, 36);
    let away = chance.happens(0.4).then(|| (chance.whole(4, weeks - 4), chance.whole(2, 4)));
    let mut progress = Progress { rate: 0.0, left: 0 };
    let mut plan = Plan { target: 5, load: 0.0 };
    let monday = NaiveDate::from_ymd_opt(2026, 1, 5).unwrap();
    let mut sessions = Vec::new();
    for week in 0..weeks {
        let off =
            away.map_or(
                0,
                |(from, long)| {
                    if (from..from + long).contains(&week) { week - from + 1 } else { 0 }
                },
            );
        if off > 0 {
            max *= if off > 1 { 0.993 } else { 1.0 };
            continue;
        }
        if week % 4 == 0 || plan.load == 0.0 {
            plan = Plan::draw(chance, max);
        } else {
            plan.load *= 1.02;
        }
        let gained = progress.week(chance, week);
        if chance.happens(1.0 / 12.0) {
            continue;
        }
        for session in 0..a_week {
            max *= (gained / f64::from(a_week) + 0.001 * chance.normal()).exp();
            let day = u64::from(week * 7 + session * 7 / a_week + chance.whole(0, 1));
            let last = week + 2 >= weeks;
            let of_the_day =
                if last && chance.happens(0.5) { Plan::draw(chance, max) } else { plan };
            let is_open = chance.happens(open);
            let on = monday.checked_add_days(Days::new(day)).unwrap();
            let seen = train(chance, &body, max, of_the_day, on, is_open, rates);
            sessions.push(Session { on, max, seen });
        }
    }
    Lifter { sessions }
}

#[derive(Clone, Copy)]
struct Plan {
    target: u32,
    load: f64,
}

impl Plan {
    fn draw(chance: &mut Chance, max: f64) -> Plan {
        let target = chance.pick(&TARGETS);
        let thought = max * (0.05 * chance.normal() - 0.03).exp();
        // Epley's equation, as a coach may use it.
        let load = thought / (1.0 + f64::from(target) / 30.0);
        Plan { target, load }
    }
}

fn train(
    chance: &mut Chance,
    body: &Body,
    max: f64,
    plan: Plan,
    on: NaiveDate,
    open: bool,
    rates: bool,
) -> Vec<SetSeen> {
    let form = (body.form * chance.heavy()).clamp(-0.12, 0.12);
    let grid = (plan.load / 2.5).round().max(1.0);
    let load = Mass::thousandths(grid as i64 * 2_500, holdfast_core::MassUnit::Kg);
    let sets = chance.whole(3, 5);
    let mut seen = Vec::new();
    for set in 0..sets {
        let able = max * (form - body.tires * f64::from(set)).exp();
        let capacity = body.capacity(grid * 2.5 / able);
        let capacity = capacity + (0.2 + 0.05 * capacity.max(0.0)) * chance.normal();
        let reps = capacity.max(0.0).floor() as u32;
        if open && set + 1 == sets {
            let early = u32::from(reps > 1 && chance.happens(1.0 / 7.0));
            seen.push(SetSeen { on, load, reps: reps - early, evidence: Evidence::Open });
        } else if rates && chance.happens(0.7) && reps > 0 {
            let done = reps.min(plan.target);
            let left = f64::from(reps - done);
            let error = (0.8 + 0.25 * left) * chance.normal() + body.bias - 0.15 * left;
            let said = (left + error).round().max(0.0) as u32;
            seen.push(SetSeen { on, load, reps: done, evidence: Evidence::Reserve(said) });
        } else {
            let reps = reps.min(plan.target);
            seen.push(SetSeen { on, load, reps, evidence: Evidence::Plain });
        }
    }
    seen
}
