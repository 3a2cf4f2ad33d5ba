//! Proposals worked by hand. What holds of all of them is tried on histories by chance, in
//! `tests/src/laws`.

mod away;
mod care;
mod first;
mod misses;
mod poor_rooms;
mod shares;
mod up;

use chrono::{Days, NaiveDate};

use super::*;
use crate::care::Place;
use crate::fixtures::{self, kg};
use crate::mass::MassUnit;
use crate::plan::{Bell, Step};

const PLATES: [&str; 6] = ["20", "15", "10", "5", "2.5", "1.25"];

fn builds() -> Builds {
    on_bar(20, &PLATES)
}

/// Two pairs of each plate.
fn on_bar(mass: i64, plates: &[&str]) -> Builds {
    let plates: Vec<(Mass, u32)> = plates.iter().map(|mass| (kg(mass), 4)).collect();
    let mut kit = fixtures::kit("0", &plates);
    (kit.bars[0].mass, kit.bars[0].name) = (Mass::kg(mass), format!("of {mass} kg"));
    fixtures::builds(&kit)
}

fn bells(masses: &[i64]) -> Builds {
    let unit = MassUnit::Kg;
    let bells = masses.iter().map(|mass| Bell { mass: Mass::kg(*mass), unit, count: 2 });
    Builds::bells(&bells.collect::<Vec<_>>(), unit)
}

/// 8, 6 and 5 or more.
fn climb() -> Scheme {
    Scheme { reps: vec![8, 6, 5], open: true }
}

fn straight(sets: usize, reps: u32) -> Scheme {
    Scheme { reps: vec![reps; sets], open: false }
}

fn steps() -> StepRule {
    let step = |mass| vec![Step { mass, unit: MassUnit::Kg }];
    StepRule {
        step: step(kg("2.5")),
        earned_step: step(kg("5")),
        earned_by: 2,
        // What is usual where a plan says nothing.
        back_off_percent: 5,
        top: 20,
    }
}

fn day(date: &str) -> NaiveDate {
    date.parse().unwrap()
}

fn record(n: u8) -> RecordId {
    RecordId(crate::id::random([n; 16]))
}

/// A history that grows session by session, three days apart unless it says otherwise.
struct Log {
    rule: LoadRule,
    scheme: Scheme,
    builds: Builds,
    history: History,
}

impl Log {
    fn new(scheme: Scheme) -> Log {
        let history = History { date: Some(day("2026-09-01")), ..History::default() };
        Log { rule: LoadRule::Step(steps()), scheme, builds: builds(), history }
    }

    fn date(&self) -> NaiveDate {
        self.history.date.unwrap()
    }

    /// Lets days pass.
    fn wait(mut self, days: u64) -> Log {
        self.history.date = Some(self.date() + Days::new(days));
        self
    }

    /// A session with these loads and reps, set by set, of what was proposed for it.
    fn did(self, sets: &[(&str, u32)]) -> Log {
        self.session(sets, false).wait(3)
    }

    /// The same in an easy week.
    fn easily(self, sets: &[(&str, u32)]) -> Log {
        self.session(sets, true).wait(3)
    }

    /// The same, all at one load.
    fn all_at(self, load: &str, reps: &[u32]) -> Log {
        let sets: Vec<(&str, u32)> = reps.iter().map(|reps| (load, *reps)).collect();
        self.did(&sets)
    }

    fn session(mut self, sets: &[(&str, u32)], easy: bool) -> Log {
        let next = self.loads();
        let proposed = |next: &NextLoad| {
            let NextLoad { load, reps, open, .. } = *next;
            ProposedSet { load, reps, open }
        };
        let place = self.history.times.len() as u8 + 1;
        let done = |(at, (load, reps)): (usize, &(&str, u32))| SetDone {
            record: record(place * 10 + at as u8),
            set: at as u32 + 1,
            load: Some(match load.strip_prefix('-') {
                Some(less) => Mass::ZERO - kg(less),
                None => kg(load),
            }),
            reps: *reps,
            reserve: None,
            counts: true,
            aside: false,
            bar: Some(self.builds.bar.clone()),
        };
        let on = self.date();
        self.history.times.push(Time {
            session: record(place),
            on,
            placed: i64::from(place) * 100,
            scheme: self.scheme.clone(),
            easy,
            proposed: next.sets.iter().map(proposed).collect(),
            max: next.max,
            sets: sets.iter().enumerate().map(done).collect(),
        });
        self.history.days.push(on);
        self
    }

    /// Flags pain now; the place and time of clearing it come with it.
    fn hurts(mut self, severity: u32, cleared: bool) -> Log {
        let cleared = cleared.then_some(i64::from(self.history.times.len() as u8) * 100 + 50);
        let (place, sign, own, on) = (Place::Knee, false, true, self.date());
        let flag = Flag { record: record(200), place, severity, sign, on, own, cleared };
        self.history.flags.push(flag);
        self
    }

    /// The coach's loads, given now.
    fn ruled(mut self, loads: &[&str]) -> Log {
        let loads = loads.iter().map(|load| Some(kg(load))).collect();
        let after = self.history.times.last().unwrap().session;
        let (record, on, words) = (record(201), self.date(), String::new());
        let decision = Decision::Change;
        self.history.ruling = Some(Ruled { record, after, on, decision, loads, words });
        self
    }

    fn loads(&self) -> NextLoads {
        next_loads(&self.rule, &self.scheme, &self.builds, &self.history, None)
    }

    fn next(&self) -> Vec<NextLoad> {
        self.loads().sets
    }

    /// `50 x 8, 60 x 6, 70 x 5+`.
    fn says(&self) -> String {
        let one = |next: &NextLoad| {
            let load = next.load.map_or("-".into(), |load| load.number(MassUnit::Kg));
            format!("{load} x {}{}", next.reps, if next.open { "+" } else { "" })
        };
        self.next().iter().map(one).collect::<Vec<_>>().join(", ")
    }

    fn reason(&self, set: usize) -> Reason {
        self.next()[set - 1].reason.clone()
    }
}
