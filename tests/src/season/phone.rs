//! A phone and its coach's device, with the history kept beside them on paper: both propose, and what they do
//! not agree on is kept.

use chrono::NaiveDate;
use holdfast_core::care::Place;
use holdfast_core::coach::{Answer, AttentionKind};
use holdfast_core::journal::Role;
use holdfast_core::load::{Decision, NextLoad, Reason};
use holdfast_core::session::{SessionScreen, Tap};
use holdfast_core::{Mass, PersonId, Start};

use super::book::{Book, Typed};
use super::cast::Member;
use super::paper::{Paper, WORDS};
use crate::pairing::pair;
use crate::taps::{begin_day, clear, finish, flag_in};
use crate::views::{piece, strength};
use crate::{Carrier, Device, MINUTE, at};

/// A device in its athlete's hand.
pub(super) struct Phone {
    paper: Paper,
    athlete: Device,
    coach: Device,
    carrier: Carrier,
    person: PersonId,
    /// Where the two differ.
    pub(super) differ: Vec<String>,
    /// Proposals that were compared.
    pub(super) compared: u64,
    /// Boards that told the coach that somebody is at the top.
    pub(super) told: u64,
    _folder: tempfile::TempDir,
}

impl Phone {
    /// The member's plan is published, and fetched.
    pub(super) fn of(member: &Member) -> Phone {
        let folder = tempfile::tempdir().unwrap();
        let carrier = Carrier::new(folder.path().join("carrier"));
        let coach = Device::start(folder.path().join("coach"), "Maren", Role::Coach, 200).unwrap();
        coach.publish(&member.plan).unwrap();
        coach.exchange(&carrier).unwrap();
        let chance = (0..80).map(|index| 31 + index).collect();
        let start = Start { role: Role::Athlete, name: "Ines".into(), unit: member.unit, chance };
        let athlete = Device::started(folder.path().join("athlete"), start).unwrap();
        pair(&coach, &athlete, 1).unwrap();
        athlete.exchange(&carrier).unwrap();
        let person = athlete.holdfast.who().unwrap().person;
        let (paper, differ) = (Paper::of(member), Vec::new());
        let (compared, told, _folder) = (0, 0, folder);
        Phone { paper, athlete, coach, carrier, person, differ, compared, told, _folder }
    }

    fn tap(&self, tap: Tap) -> SessionScreen {
        self.athlete.tap(tap.clone()).unwrap_or_else(|error| panic!("{tap:?}: {error}"))
    }

    fn log_set(&self, typed: Typed) -> SessionScreen {
        let Typed { set, load, reps, left: reserve } = typed;
        let (piece, set, load, reps) = ("Lift".into(), Some(set), Some(load), Some(reps));
        self.tap(Tap::LogSet { piece, set, load, reps, reserve })
    }

    /// What the screen proposes, set by set: load, reps, whether it is open, and why.
    fn shown(&self) -> Vec<(u32, Option<Mass>, u32, bool, Reason)> {
        let screen = self.athlete.today().unwrap();
        let sets = strength(&screen).sets.iter();
        sets.map(|set| {
            let load = set.load.as_ref().map(|load| load.mass);
            (set.set, load, set.asked, set.open, set.reason.clone())
        })
        .collect()
    }

    /// Everybody fetches what there is.
    fn carry(&self) {
        for device in [&self.athlete, &self.coach, &self.athlete] {
            device.exchange(&self.carrier).unwrap();
        }
    }

    /// Whoever can go no further stands on the coach's board.
    fn tells(&mut self, on: NaiveDate, next: &[NextLoad]) {
        let end = next.last().map(|next| &next.reason);
        if !matches!(end, Some(Reason::AtTop { .. })) {
            return;
        }
        self.carry();
        let board = self.coach.holdfast.board(on).unwrap();
        let stalled = |row: &holdfast_core::coach::BoardRow| {
            row.attention.iter().any(|look| look.kind == AttentionKind::Stall)
        };
        if board.rows.iter().any(stalled) {
            self.told += 1;
        } else {
            self.differ.push(format!("{on}: at the top, and the coach is not told"));
        }
    }
}

impl Book for Phone {
    fn next(&mut self, on: NaiveDate) -> Vec<NextLoad> {
        let next = self.paper.next(on);
        if self.athlete.now().date() != on {
            self.athlete.go_to(&on.to_string());
            self.tells(on, &next);
        }
        let key =
            |next: &NextLoad| (next.set, next.load, next.reps, next.open, next.reason.clone());
        let (paper, shown) = (next.iter().map(key).collect::<Vec<_>>(), self.shown());
        self.compared += 1;
        // A set that is done is shown as it was asked for.
        let done = self.paper.done();
        let differ = paper.iter().zip(&shown).any(|(paper, shown)| {
            if done.contains(&paper.0) { paper.0 != shown.0 } else { paper != shown }
        });
        if differ || paper.len() != shown.len() {
            self.differ.push(format!("{on}: on paper {paper:?}\nshown {shown:?}"));
        }
        next
    }

    fn begin(&mut self, on: NaiveDate) {
        self.paper.begin(on);
        if self.athlete.now().date() != on {
            self.athlete.go_to(&on.to_string());
        }
        self.tap(begin_day("Evening"));
    }

    fn log(&mut self, typed: Typed) -> bool {
        self.athlete.pass(2 * MINUTE);
        self.log_set(typed);
        self.paper.log(typed)
    }

    fn correct(&mut self, typed: Typed) {
        self.log_set(typed);
        self.paper.correct(typed);
    }

    fn repair(&mut self, _: NaiveDate, _: u32, _: Option<Typed>) {}

    fn flag(&mut self, severity: u32) {
        self.tap(flag_in("Lift", Place::Shoulder, severity, &[]));
        self.paper.flag(severity);
    }

    fn clear(&mut self) {
        let screen = self.athlete.today().unwrap();
        for open in &piece(&screen, "Lift").flags {
            self.tap(clear(open.flag));
        }
        self.paper.clear();
    }

    fn finish(&mut self) {
        self.tap(finish(7, 45));
        self.paper.finish();
    }

    fn refuse(&mut self, on: NaiveDate) {
        self.carry();
        self.coach.put_at(at(&on.to_string(), 20));
        let board = self.coach.holdfast.board(on).unwrap();
        let row = board.rows.iter().find(|row| row.person == self.person).unwrap();
        let Some(proposal) = row.proposals.first() else { return };
        let answer = Answer {
            person: self.person,
            exercise: proposal.exercise.clone(),
            track: proposal.track.clone(),
            decision: Decision::Refuse,
            loads: Vec::new(),
            words: WORDS.into(),
            anyway: false,
        };
        self.coach.holdfast.answer(answer, self.coach.now()).unwrap();
        self.paper.refuse(on);
        self.carry();
    }

    fn without_easy(&self, on: NaiveDate) -> Option<Vec<NextLoad>> {
        self.paper.without_easy(on)
    }
}
