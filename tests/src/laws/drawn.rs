//! A plan, a room and a history by chance: somebody who mostly does what is proposed, and sometimes anything.

use chrono::{Days, NaiveDate};
use holdfast_core::care::Place;
use holdfast_core::load::{
    Decision, Flag, History, KnownMax, NextLoad, NextLoads, ProposedSet, Ruled, SetDone, Time,
    next_loads, next_loads_and_answer,
};
use holdfast_core::plan::{Builds, Easy, LoadRule, Scheme, Step, StepRule};
use holdfast_core::{Mass, RecordId};
use rand::{Rng, RngExt};

use super::room;

/// Everything a proposal is worked out from.
#[derive(Clone, Debug)]
pub struct Case {
    /// The rule.
    pub rule: LoadRule,
    /// Reps set by set.
    pub scheme: Scheme,
    /// What the bar of the day builds, or the room.
    pub builds: Builds,
    /// The same of every bar of the room, where sessions take now this one, now that; otherwise empty.
    pub bars: Vec<Builds>,
    /// What was lifted.
    pub history: History,
    /// Names for records still to be made.
    pub names: u64,
}

impl Case {
    /// The proposal.
    pub fn next(&self) -> Vec<NextLoad> {
        self.loads().sets
    }

    /// The same with the coach's answer beside what holds it, in a usual week or an easy one.
    pub fn answered(&self, easy: Option<&Easy>) -> Vec<NextLoad> {
        let (rule, scheme, builds) = (&self.rule, &self.scheme, &self.builds);
        next_loads_and_answer(rule, scheme, builds, &self.history, easy).sets
    }

    /// The proposal, with the training max.
    pub fn loads(&self) -> NextLoads {
        next_loads(&self.rule, &self.scheme, &self.builds, &self.history, None)
    }

    /// The day the loads are for.
    pub fn date(&self) -> NaiveDate {
        self.history.date.unwrap_or_default()
    }

    /// The same on a later day.
    pub fn later(&self, days: u64) -> Case {
        let mut later = self.clone();
        later.history.date = Some(self.date() + Days::new(days));
        later
    }

    /// Takes one of the bars, where there are several.
    pub fn take_a_bar(&mut self, chance: &mut impl Rng) {
        if !self.bars.is_empty() {
            self.builds = self.bars[chance.random_range(0..self.bars.len())].clone();
        }
    }

    /// A new name.
    pub fn name(&mut self) -> RecordId {
        self.names += 1;
        let mut bytes = [0; 16];
        bytes[..8].copy_from_slice(&self.names.to_le_bytes());
        // Fixed bits of a random UUID.
        bytes[6] = 0x40;
        bytes[8] = 0x80;
        RecordId(uuid::Uuid::from_bytes(bytes))
    }

    /// Does the session that is proposed for the day, each set as `does` says: load, reps, whether it counts;
    /// none for one that is skipped.
    pub fn train(
        &mut self,
        easy: bool,
        mut does: impl FnMut(&NextLoad) -> Option<(Mass, u32, bool)>,
    ) {
        let NextLoads { sets: next, max } = self.loads();
        let proposed = next.iter().map(|next| {
            let NextLoad { load, reps, open, .. } = *next;
            ProposedSet { load, reps, open }
        });
        let proposed = proposed.collect();
        let (session, placed, on) = (self.name(), self.placed() + 10, self.date());
        let mut sets = Vec::new();
        for next in &next {
            if let Some((load, reps, counts)) = does(next) {
                let (record, set) = (self.name(), next.set);
                let (load, reserve, aside) = (Some(load), None, false);
                let bar = self.builds.has_plates().then(|| self.builds.bar.clone());
                sets.push(SetDone { record, set, load, reps, reserve, counts, aside, bar });
            }
        }
        if sets.is_empty() {
            return;
        }
        let scheme = self.scheme.clone();
        self.history.times.push(Time { session, on, placed, scheme, easy, proposed, max, sets });
        self.also_on(on);
    }

    /// Adds a day on which the exercise was logged.
    pub fn also_on(&mut self, on: NaiveDate) {
        self.history.days.push(on);
        self.history.days.sort();
        self.history.days.dedup();
    }

    /// The place of the last session in logical time.
    pub fn placed(&self) -> i64 {
        self.history.times.iter().map(|time| time.placed).max().unwrap_or(0)
    }
}

/// Draws a case.
pub fn drawn(chance: &mut impl Rng) -> Case {
    let (builds, bars) = room::drawn(chance);
    let scheme = scheme(chance);
    let rule = rule(chance, &builds, &scheme);
    let start = builds.loads().nth(chance.random_range(0..builds.loads().count().min(40)));
    let mut case = Case { rule, scheme, builds, bars, history: History::default(), names: 0 };
    case.history.start = start.into_iter().collect();
    case.history.date = NaiveDate::from_ymd_opt(2026, 1, 5);
    known_max(&mut case, chance);
    let clumsy = chance.random_range(0.0..0.8);
    let hurts = if chance.random_bool(0.3) { 0.1 } else { 0.0 };
    for _ in 0..chance.random_range(1..=14) {
        session(&mut case, chance, clumsy, hurts);
        let gap = match chance.random_range(0..10) {
            0 => chance.random_range(14..21),
            1 => chance.random_range(21..160),
            _ => chance.random_range(1..10),
        };
        case.history.date = Some(case.date() + Days::new(gap));
        case.take_a_bar(chance);
        if chance.random_bool(0.03) {
            known_max(&mut case, chance);
        }
    }
    if chance.random_bool(0.15) {
        ruling(&mut case, chance);
    }
    if chance.random_bool(0.3) {
        case = case.later(chance.random_range(0..60));
    }
    case
}

fn scheme(chance: &mut impl Rng) -> Scheme {
    let sets = chance.random_range(1..=5);
    let straight = chance.random_bool(0.5);
    let mut reps = chance.random_range(1..=15);
    let mut all = Vec::new();
    for _ in 0..sets {
        all.push(reps);
        if !straight {
            reps = (reps - reps.min(chance.random_range(0..3))).max(1);
        }
    }
    Scheme { reps: all, open: chance.random_bool(0.5) }
}

fn rule(chance: &mut impl Rng, builds: &Builds, scheme: &Scheme) -> LoadRule {
    let unit = builds.unit;
    let step = |thousandths| vec![Step { mass: Mass::thousandths(thousandths, unit), unit }];
    let usual = [1_000, 1_250, 2_500, 5_000][chance.random_range(0..4)];
    // Now and then a plan's larger step is the smaller one.
    let larger = if chance.random_bool(0.3) { usual / 2 } else { usual * 2 };
    let earned = if chance.random_bool(0.5) { step(larger) } else { Vec::new() };
    let most = scheme.reps.iter().copied().max().unwrap_or(1);
    if chance.random_bool(0.1) {
        let load = builds.loads().nth(chance.random_range(0..builds.loads().count()));
        return LoadRule::Fixed { loads: load.into_iter().collect() };
    }
    if chance.random_bool(0.15) && !builds.is_picks() {
        let step = if chance.random_bool(0.8) { step(usual) } else { Vec::new() };
        let back_off_percent = chance.random_range(1..=20);
        if chance.random_bool(0.3) {
            let reserve = chance.random_range(0..=3);
            return LoadRule::Reserve { reserve, step, back_off_percent };
        }
        let percents = scheme.reps.iter().map(|reps| 95 - reps.min(&20) * 2).collect();
        return LoadRule::Percent { percents, step, back_off_percent };
    }
    LoadRule::Step(StepRule {
        step: step(usual),
        earned_step: earned,
        earned_by: chance.random_range(1..=3),
        back_off_percent: chance.random_range(1..=20),
        top: if chance.random_bool(0.8) { 20 } else { most + chance.random_range(0..4) },
    })
}

fn session(case: &mut Case, chance: &mut impl Rng, clumsy: f64, hurts: f64) {
    if chance.random_bool(hurts) {
        flag(case, chance);
    }
    let builds = case.builds.clone();
    let loads: Vec<Mass> = builds.loads().collect();
    let easy = chance.random_bool(0.05);
    let flops = chance.random_bool(clumsy);
    let does = |next: &NextLoad| {
        let own = loads[chance.random_range(0..loads.len().min(40))];
        let load = next.load.or(next.carried).unwrap_or(own);
        let other = |load| match chance.random_range(0..20) {
            0 => builds.below(load).map(|build| build.mass),
            1 => builds.above(load).map(|build| build.mass),
            2 if chance.random_bool(0.2) => Some(own),
            _ => None,
        };
        let mut other = other;
        let load = other(load).unwrap_or(load);
        let reps = match chance.random_range(0..20) {
            0..3 if flops => next.reps.saturating_sub(1),
            3..5 if flops => next.reps.saturating_sub(chance.random_range(1..5)),
            5..8 => next.reps + chance.random_range(1..5),
            _ => next.reps,
        };
        let counts = !chance.random_bool(0.03);
        (!chance.random_bool(0.04)).then_some((load, reps, counts))
    };
    case.train(easy, does);
    if chance.random_bool(hurts) {
        flag(case, chance);
    }
    if chance.random_bool(0.1) {
        let other = case.date() + Days::new(chance.random_range(0..20));
        case.also_on(other);
    }
}

fn flag(case: &mut Case, chance: &mut impl Rng) {
    let open = case.history.flags.iter().position(|flag| flag.cleared.is_none());
    let placed = case.placed();
    if let Some(open) = open {
        case.history.flags[open].cleared = Some(placed + 1);
        return;
    }
    let record = case.name();
    case.history.flags.push(Flag {
        record,
        place: Place::Knee,
        severity: if chance.random_bool(0.5) { 2 } else { chance.random_range(1..=10) },
        sign: chance.random_bool(0.05),
        on: case.date(),
        own: chance.random_bool(0.7),
        cleared: None,
    });
}

/// A one-rep max that is tested, or set by the coach.
fn known_max(case: &mut Case, chance: &mut impl Rng) {
    if !matches!(case.rule, LoadRule::Percent { .. } | LoadRule::Reserve { .. }) {
        return;
    }
    let (record, on, placed) = (case.name(), case.date(), case.placed() + 5);
    let count = case.builds.loads().count();
    let at = if placed > 5 { chance.random_range(0..count) } else { count / 2 };
    let load = case.builds.loads().nth(at).unwrap_or(Mass::kg(60));
    let tested = chance.random_bool(0.7);
    case.history.max = Some(KnownMax { record, load, placed, on, tested });
}

fn ruling(case: &mut Case, chance: &mut impl Rng) {
    let Some(after) = case.history.times.last().map(|time| time.session) else { return };
    let loads: Vec<Mass> = case.builds.loads().collect();
    let near = |load: Option<Mass>| {
        let at = load.and_then(|load| loads.iter().position(|other| *other >= load))?;
        let at = (at + chance.random_range(0..6)).saturating_sub(3).min(loads.len() - 1);
        Some(loads[at])
    };
    let loads = case.next().iter().map(|next| next.load).map(near).collect();
    let decision = match chance.random_range(0..10) {
        0 | 1 => Decision::Refuse,
        2 => Decision::Accept,
        _ => Decision::Change,
    };
    let (record, on, words) = (case.name(), case.date(), String::new());
    case.history.ruling = Some(Ruled { record, after, on, decision, loads, words });
}

impl std::fmt::Display for Case {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let text = |load: Option<Mass>| load.map_or("-".to_owned(), |load| load.exact_text());
        writeln!(f, "rule {:?}\nscheme {}", self.rule, self.scheme.key())?;
        let loads: Vec<String> =
            self.builds.loads().map(|load| text(Some(load))).take(60).collect();
        writeln!(f, "{:?}: {}", self.builds.kind, loads.join(" "))?;
        for time in &self.history.times {
            let set = |set: u32| {
                let proposed = time.proposed.get(set as usize - 1);
                let asked = proposed.map_or(String::new(), |asked| {
                    format!("{} x {}", text(asked.load), asked.reps)
                });
                let done = time.sets.iter().find(|done| done.set == set);
                let done = done.map_or("skipped".to_owned(), |done| {
                    let doubt = if done.counts { "" } else { " in doubt" };
                    format!("{} x {}{doubt}", text(done.load), done.reps)
                });
                format!("{asked} -> {done}")
            };
            let sets: Vec<String> = (1..=time.proposed.len() as u32).map(set).collect();
            let easy = if time.easy { " easy" } else { "" };
            writeln!(f, "{} ({}){easy}: {}", time.on, time.placed, sets.join(" | "))?;
        }
        let History { days, flags, ruling, date, .. } = &self.history;
        writeln!(f, "days {days:?}\nflags {flags:?}\nruling {ruling:?}\nfor {date:?}")
    }
}
