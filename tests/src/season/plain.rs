//! The plain rule beside the load rules: all sets made as asked, the step on every set; else the same again.
//! Where the step builds nothing, the next build. It knows nothing of misses, weeks away, pain or easy weeks.

use chrono::NaiveDate;
use holdfast_core::Mass;
use holdfast_core::load::{NextLoad, Reason};
use holdfast_core::plan::{Builds, LoadRule, Scheme};

use super::book::{Book, Typed};
use super::cast::Member;
use super::paper::Paper;

/// The loads of last time, and what is lifted now.
pub(super) struct Plain {
    /// Finds the loads of the first time.
    first: Paper,
    rule: LoadRule,
    builds: Builds,
    scheme: Scheme,
    max: Option<Mass>,
    last: Vec<Typed>,
    /// True where all sets of last time were made.
    made: bool,
    running: Vec<Typed>,
}

impl Plain {
    pub(super) fn of(member: &Member) -> Plain {
        Plain {
            first: Paper::of(member),
            rule: member.rule().clone(),
            builds: member.builds.clone(),
            scheme: member.scheme().clone(),
            max: member.tested(),
            last: Vec::new(),
            made: false,
            running: Vec::new(),
        }
    }

    fn all_made(&self) -> bool {
        (1..=self.scheme.sets()).all(|set| {
            let asked = self.scheme.target(set).unwrap_or(0);
            self.running.iter().any(|done| done.set == set && done.reps >= asked)
        })
    }

    fn step(&self) -> Mass {
        let (LoadRule::Step(rule), unit) = (&self.rule, self.builds.unit) else {
            return Mass::ZERO;
        };
        let step = rule.step.iter().find(|step| step.unit == unit).or(rule.step.first());
        step.map_or(Mass::ZERO, |step| step.mass)
    }

    fn load(&self, set: u32) -> Option<Mass> {
        let built = |load| self.builds.at_or_below(load).map(|build| build.mass);
        match &self.rule {
            LoadRule::Percent { percents, .. } => built(self.max?.percent(*percents.first()?)),
            LoadRule::Step(_) => {
                let last = self.last.iter().find(|done| done.set == set).or(self.last.last())?.load;
                if !self.made {
                    return built(last).or(Some(last));
                }
                let up = built(last + self.step()).filter(|up| *up > last);
                up.or(self.builds.above(last).map(|build| build.mass)).or(Some(last))
            }
            LoadRule::Fixed { loads } => loads.first().copied(),
            LoadRule::Reserve { .. } | LoadRule::Free => None,
        }
    }
}

impl Book for Plain {
    fn next(&mut self, on: NaiveDate) -> Vec<NextLoad> {
        let mut next = self.first.next(on);
        if self.last.is_empty() && matches!(self.rule, LoadRule::Step(_)) {
            return next;
        }
        for set in 1..=self.scheme.sets() {
            let plain = NextLoad {
                set,
                load: self.load(set),
                carried: None,
                most: None,
                reps: self.scheme.target(set).unwrap_or(0),
                open: self.scheme.is_open(set),
                reason: Reason::Free,
                others: Vec::new(),
                from: Vec::new(),
            };
            match next.get_mut(set as usize - 1) {
                Some(next) => *next = plain,
                None => next.push(plain),
            }
        }
        next
    }

    fn begin(&mut self, on: NaiveDate) {
        if self.last.is_empty() {
            self.first.begin(on);
        }
    }

    fn log(&mut self, typed: Typed) -> bool {
        if self.last.is_empty() {
            self.first.log(typed);
        }
        self.running.push(typed);
        false
    }

    fn correct(&mut self, typed: Typed) {
        let running = self.running.iter_mut().filter(|done| done.set == typed.set);
        running.for_each(|done| *done = typed);
    }

    fn repair(&mut self, _: NaiveDate, set: u32, right: Option<Typed>) {
        let last = self.last.iter_mut().filter(|done| done.set == set);
        last.for_each(|done| *done = right.unwrap_or(*done));
    }

    fn flag(&mut self, _: u32) {}

    fn clear(&mut self) {}

    fn finish(&mut self) {
        if self.running.is_empty() {
            return;
        }
        self.made = self.all_made();
        for done in std::mem::take(&mut self.running) {
            self.last.retain(|last| last.set != done.set);
            self.last.push(done);
        }
        self.last.sort_by_key(|done| done.set);
        if let (true, LoadRule::Percent { step, .. }) = (self.made, &self.rule) {
            let step = step.first().map_or(Mass::ZERO, |step| step.mass);
            self.max = self.max.map(|max| max + step);
        }
    }

    fn refuse(&mut self, _: NaiveDate) {}

    fn without_easy(&self, _: NaiveDate) -> Option<Vec<NextLoad>> {
        None
    }
}
