//! A lifter goes through the season with a book: lifts what is proposed as well as it goes, stops by sense,
//! flags what hurts, and sometimes types it wrong.

use chrono::{Days, NaiveDate};
use holdfast_core::Mass;
use holdfast_core::load::NextLoad;

use super::book::{Book, Typed};
use super::cast::Member;
use super::expected::SEVERE;
use super::lifter::Set;
use super::seen::{Diary, Lifted, Moment, Pain, Session, Slip};
use super::slip::{Then, slipped, then};
use super::world::{Calendar, Day};
use crate::lifters::Chance;

/// What slips there are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Slips {
    /// None.
    None,
    /// All of them, repaired whenever somebody sees them.
    All,
    /// Repaired in the session, or not at all.
    AtOnce,
}

/// Somebody in the midst of a season.
struct Trainee<'a> {
    member: Member,
    book: &'a mut dyn Book,
    slips: Slips,
    diary: Diary,
    /// The open flag: how bad, and when it is gone.
    hurts: Option<(u32, NaiveDate)>,
    /// What was typed wrong and is still to be repaired: when, which slip, and the set as it was.
    wrong: Vec<(NaiveDate, usize, NaiveDate, u32, Option<Typed>)>,
}

/// Plays a season.
pub(super) fn play(
    member: Member,
    calendar: &Calendar,
    book: &mut dyn Book,
    slips: Slips,
) -> Diary {
    let diary = Diary {
        group: member.group,
        name: member.name.clone(),
        rule: member.rule().clone(),
        scheme: member.scheme().clone(),
        builds: member.builds.clone(),
        sessions: Vec::new(),
        absences: calendar.absences.clone(),
        pains: Vec::new(),
        slips: Vec::new(),
        after_easy: Vec::new(),
        after_repair: Vec::new(),
        max: (member.athlete.max, member.athlete.max),
    };
    let mut trainee = Trainee { member, book, slips, diary, hurts: None, wrong: Vec::new() };
    let mut before: Option<NaiveDate> = None;
    for day in &calendar.days {
        let last = trainee.diary.sessions.iter().rev().find(|session| !session.sets.is_empty());
        let away = last.map_or(0, |last| (day.on - last.on).num_days());
        let days = before.map_or(0, |before| (day.on - before).num_days());
        trainee.member.athlete.rest(days, away);
        before = Some(day.on);
        trainee.comes(day);
    }
    trainee.diary.max.1 = trainee.member.athlete.max;
    trainee.diary
}

impl Trainee<'_> {
    /// Comes on a day.
    fn comes(&mut self, day: &Day) {
        self.repair(day.on);
        let easy = self.member.block.easy_on(day.on).is_some();
        let mut session =
            Session { on: day.on, week: day.week, easy, moments: Vec::new(), sets: Vec::new() };
        let (hurts, healed) = match self.hurts {
            Some((severity, until)) => (Some(severity), day.on >= until),
            None => (None, false),
        };
        if hurts.is_some_and(|severity| severity >= SEVERE) && !healed {
            // Came for something else, and looks.
            self.looks(&mut session);
            self.diary.sessions.push(session);
            return;
        }
        if day.refused && self.diary.working().next().is_some() {
            self.book.refuse(day.on - Days::new(1));
        }
        self.book.begin(day.on);
        if healed {
            self.book.clear();
            self.hurts = None;
            if let Some(pain) = self.diary.pains.last_mut() {
                pain.cleared = Some(day.on);
            }
        }
        let next = self.looks(&mut session);
        let after_easy = self.diary.sessions.iter().rev().find(|session| !session.sets.is_empty());
        if !easy
            && after_easy.is_some_and(|before| before.easy)
            && let Some(without) = self.book.without_easy(day.on)
        {
            self.diary.after_easy.push((day.on, next.clone(), without));
        }
        for set in 1..=next.len() as u32 {
            if day.pain.is_some_and(|(before, ..)| before == set) && self.hurts.is_none() {
                self.flag(day, &mut session);
            }
            if self.hurts.is_some_and(|(severity, _)| severity >= SEVERE) {
                break;
            }
            self.set(day, set, &mut session);
            let missed = session.sets.iter().filter(|done| done.missed()).count();
            // Two missed are enough for some.
            if missed >= 2 && day.chance(set).happens(0.3) {
                break;
            }
        }
        self.book.finish();
        self.member.athlete.ends(self.member.scheme().sets());
        self.diary.sessions.push(session);
    }

    /// Looks at what is proposed.
    fn looks(&mut self, session: &mut Session) -> Vec<NextLoad> {
        let next = self.book.next(session.on);
        let flags = self.hurts.iter().map(|(severity, _)| *severity).collect();
        session.moments.push(Moment { flags, next: next.clone() });
        next
    }

    fn flag(&mut self, day: &Day, session: &mut Session) {
        let Some((_, severity, days)) = day.pain else { return };
        self.member.athlete.hurts(severity);
        self.book.flag(severity);
        self.hurts = Some((severity, day.on + Days::new(days)));
        self.diary.pains.push(Pain { on: day.on, severity, cleared: None });
        self.looks(session);
    }

    /// Repairs what was typed wrong and is due.
    fn repair(&mut self, on: NaiveDate) {
        let (due, later) =
            std::mem::take(&mut self.wrong).into_iter().partition(|wrong| wrong.0 <= on);
        self.wrong = later;
        let due: Vec<_> = due;
        for (_, slip, of, set, right) in due {
            self.book.repair(of, set, right);
            self.diary.slips[slip].repaired = Some(on);
            self.diary.slips[slip].aside = right.is_none();
        }
    }

    fn set(&mut self, day: &Day, set: u32, session: &mut Session) {
        let mut chance = day.chance(set);
        let next = self.looks(session);
        let Some(next) = next.into_iter().find(|next| next.set == set) else { return };
        let first = self.member.scheme().target(set).unwrap_or(0);
        let load = self.takes(&next, first, &mut chance);
        let kg = self.member.kg(load);
        let asked = next.reps;
        let tries = Set { kg, set, asked, first, open: next.open };
        let tried = self.member.athlete.tries(tries, day.form, &mut chance);
        let said = self.member.athlete.says(tried, &mut chance);
        let last = set == self.member.scheme().sets();
        let says = next.reason.is_first_time()
            || (self.member.athlete.rates && last && !next.open && tried.left <= 5);
        let left = says.then_some(said);
        let right = Typed { set, load, reps: tried.reps, left };
        let slips = chance.happens(0.005) && self.slips != Slips::None;
        let typed =
            if slips { slipped(right, self.member.builds.unit, &mut chance) } else { right };
        let doubt = self.book.log(typed);
        let mut wrong = slips;
        if doubt && !slips {
            // Asked whether that was so, and it was.
            self.book.correct(right);
        }
        if slips {
            let then = match then(doubt, &mut chance) {
                Then::Later(_) | Then::Aside(_) if self.slips == Slips::AtOnce => Then::Never,
                then => then,
            };
            let repaired = (then == Then::AtOnce).then_some(day.on);
            let which = self.diary.slips.len();
            self.diary.slips.push(Slip { on: day.on, repaired, aside: false });
            match then {
                Then::AtOnce => {
                    self.book.correct(right);
                    wrong = false;
                }
                Then::Later(days) => {
                    self.wrong.push((day.on + Days::new(days), which, day.on, set, Some(right)));
                }
                Then::Aside(days) => {
                    self.wrong.push((day.on + Days::new(days), which, day.on, set, None));
                }
                Then::Never => {}
            }
        }
        let reps = tried.reps;
        session.sets.push(Lifted { set, load, reps, asked, first, left, slipped: wrong });
    }

    /// What somebody takes: the proposal; now and then a build less or more; by feel where there is none; and
    /// what they know where the proposal is out of all reason.
    fn takes(&self, next: &NextLoad, first: u32, chance: &mut Chance) -> Mass {
        let (feels, other) = (0.08 * chance.normal(), chance.between(0.0, 1.0));
        let member = &self.member;
        let Some(load) = next.load else {
            return member.load_of(member.athlete.can(f64::from(first) + 3.0) * feels.exp());
        };
        let working = self.diary.working().rev();
        let known =
            working.filter_map(|session| session.set(next.set)).map(|done| done.load).next();
        let above = |load| member.builds.above(load).map(|build| build.mass);
        if let Some(known) = known
            && member.kg(load) > 1.15 * member.kg(known)
            && Some(load) > above(known)
        {
            return known;
        }
        let instead = match other {
            ..0.02 => member.builds.below(load).map(|build| build.mass),
            0.02..0.03 if self.hurts.is_none() => above(load),
            _ => None,
        };
        instead.unwrap_or(load)
    }
}
