//! The load rules as a function: the history is kept in hand, as the core reads it from its journal.

use chrono::NaiveDate;
use holdfast_core::care::Place;
use holdfast_core::load::{
    Decision, Flag, History, KnownMax, NextLoad, NextLoads, ProposedSet, Ruled, SetDone, Time,
    next_loads,
};
use holdfast_core::plan::{Block, Builds, LoadRule, Scheme};
use holdfast_core::{Mass, MassUnit, RecordId};

use super::book::{Book, Typed};
use super::cast::Member;

/// What the coach says with an answer.
pub(super) const WORDS: &str = "The same once more.";

/// A history, and the rule that reads it.
pub(super) struct Paper {
    rule: LoadRule,
    scheme: Scheme,
    builds: Builds,
    block: Block,
    history: History,
    running: Option<Time>,
    names: u64,
}

impl Paper {
    pub(super) fn of(member: &Member) -> Paper {
        let mut paper = Paper {
            rule: member.rule().clone(),
            scheme: member.scheme().clone(),
            builds: member.builds.clone(),
            block: member.block.clone(),
            history: History::default(),
            running: None,
            names: 0,
        };
        if let Some(load) = member.tested() {
            let record = paper.name();
            let on = member.block.starts;
            paper.history.max = Some(KnownMax { record, load, placed: 0, on, tested: true });
        }
        paper
    }

    fn name(&mut self) -> RecordId {
        self.names += 1;
        let mut bytes = [0; 16];
        // Behind the bits that a random UUID has fixed: in front of them the 257th name would be the first again.
        bytes[6] = 0x40;
        bytes[8] = 0x80;
        let names = (self.names as u32).to_be_bytes();
        bytes[12..].copy_from_slice(&names);
        RecordId(uuid::Uuid::from_bytes(bytes))
    }

    /// The sets done in the session at hand.
    pub(super) fn done(&self) -> Vec<u32> {
        self.running.iter().flat_map(|time| &time.sets).map(|done| done.set).collect()
    }

    /// Logical time: every name is later than those before.
    fn now(&self) -> i64 {
        self.names as i64
    }

    fn loads(&self, history: &History, on: NaiveDate) -> NextLoads {
        let easy = self.block.easy_on(on);
        next_loads(&self.rule, &self.scheme, &self.builds, history, easy)
    }

    fn on(&self, on: NaiveDate) -> History {
        let so_far = self.running.iter().flat_map(|time| time.sets.clone()).collect();
        History { date: Some(on), so_far, ..self.history.clone() }
    }

    /// As the app asks about it: over what was proposed by more than a tenth and a build, or under it by a fifth or
    /// three picks; of picks, and where nothing was proposed, what the room cannot build; thirty reps and three
    /// times the plan's.
    fn is_slip(&self, typed: Typed, planned: Option<Mass>) -> bool {
        let first = self.scheme.target(typed.set).unwrap_or(0);
        let far = |planned: Mass| {
            let next = self.builds.above(planned).map_or(planned, |build| build.mass);
            if self.builds.is_picks() {
                let under = self.builds.loads().filter(|load| (typed.load..planned).contains(load));
                let odd = self.builds.exactly(typed.load).is_none();
                let step = planned + Mass::thousandths(2_500, MassUnit::Kg);
                return typed.load > next.max(step) || under.count() >= 3 || odd;
            }
            typed.load > planned.percent(110).max(next) || typed.load < planned.percent(80)
        };
        planned.map_or_else(|| self.builds.exactly(typed.load).is_none(), far)
            || typed.reps > (first * 3).max(30)
    }
}

impl Book for Paper {
    fn next(&mut self, on: NaiveDate) -> Vec<NextLoad> {
        self.loads(&self.on(on), on).sets
    }

    fn begin(&mut self, on: NaiveDate) {
        let (session, scheme) = (self.name(), self.scheme.clone());
        let (proposed, sets, max) = (Vec::new(), Vec::new(), None);
        let (placed, easy) = (self.now(), self.block.easy_on(on).is_some());
        self.running = Some(Time { session, on, placed, scheme, easy, proposed, max, sets });
    }

    fn log(&mut self, typed: Typed) -> bool {
        let record = self.name();
        let on = self.running.as_ref().map(|time| time.on).unwrap_or_default();
        let NextLoads { sets: next, max } = self.loads(&self.on(on), on);
        let planned = next.iter().find(|next| next.set == typed.set).and_then(|next| next.load);
        let doubt = self.is_slip(typed, planned);
        let placed = self.now();
        let Some(time) = &mut self.running else { return doubt };
        let proposed =
            |next: &NextLoad| ProposedSet { load: next.load, reps: next.reps, open: next.open };
        time.proposed = next.iter().map(proposed).collect();
        time.max = max.or(time.max);
        time.placed = placed;
        let Typed { set, load, reps, left: reserve } = typed;
        let load = Some(load);
        // Nobody in a season takes another bar.
        let (counts, aside, bar) = (!doubt, false, None);
        time.sets.push(SetDone { record, set, load, reps, reserve, counts, aside, bar });
        doubt
    }

    fn correct(&mut self, typed: Typed) {
        let sets = self.running.iter_mut().flat_map(|time| &mut time.sets);
        for done in sets.filter(|done| done.set == typed.set) {
            (done.load, done.reps, done.counts) = (Some(typed.load), typed.reps, true);
        }
    }

    fn repair(&mut self, on: NaiveDate, set: u32, right: Option<Typed>) {
        let times = self.history.times.iter_mut().filter(|time| time.on == on);
        for done in times.flat_map(|time| &mut time.sets).filter(|done| done.set == set) {
            match right {
                Some(right) => {
                    (done.load, done.reps, done.counts) = (Some(right.load), right.reps, true);
                }
                None => done.counts = false,
            }
        }
    }

    fn flag(&mut self, severity: u32) {
        let record = self.name();
        let on = self.running.as_ref().map(|time| time.on).unwrap_or_default();
        let (place, sign, own, cleared) = (Place::Shoulder, false, true, None);
        self.history.flags.push(Flag { record, place, severity, sign, on, own, cleared });
    }

    fn clear(&mut self) {
        self.name();
        let now = self.now();
        for flag in self.history.flags.iter_mut().filter(|flag| flag.cleared.is_none()) {
            flag.cleared = Some(now);
        }
    }

    fn finish(&mut self) {
        let Some(time) = self.running.take().filter(|time| !time.sets.is_empty()) else { return };
        self.history.days.push(time.on);
        self.history.times.push(time);
    }

    fn refuse(&mut self, on: NaiveDate) {
        let next = self.next(on);
        let Some(after) = self.history.last().map(|time| time.session) else { return };
        let (record, decision) = (self.name(), Decision::Refuse);
        let loads = next.iter().map(|next| next.carried).collect();
        let words = WORDS.to_owned();
        self.history.ruling = Some(Ruled { record, after, on, decision, loads, words });
    }

    fn without_easy(&self, on: NaiveDate) -> Option<Vec<NextLoad>> {
        let mut history = self.on(on);
        history.times.retain(|time| !time.easy);
        Some(self.loads(&history, on).sets)
    }
}
