//! A season played out: forty invented lifters, 24 weeks, and what is expected of their proposals, which
//! was written down first (`docs/season.md`).

mod book;
mod cast;
mod expected;
mod lifter;
mod paper;
mod phone;
mod plain;
mod read;
mod seen;
mod slip;
mod table;
mod train;
mod world;

pub use expected::{Bar, EXPECTED, Expectation, LIFTERS, Season, Source};
pub use read::Reading;
pub use seen::{Diary, Group, Lifted, Moment, Pain, Session, Slip};
pub use table::{broken, table};

use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

use crate::lifters::Chance;
use cast::{Member, cast};
use paper::Paper;
use phone::Phone;
use plain::Plain;
use train::{Slips, play};
use world::{Calendar, calendar};

/// Plays seasons, each from a seed of its own, the first one from this.
pub fn seasons(seed: u64, many: u64) -> Season {
    let mut season = Season::default();
    for seed in (0..many).map(|more| seed.wrapping_add(more)) {
        season.ours.extend(with_rules(seed));
        season.plain.extend(played(seed, Slips::None, Plain::of));
    }
    season
}

/// The same lifters and days whoever asks.
fn drawn(seed: u64) -> Vec<(Member, Calendar)> {
    let mut chance = Chance(ChaCha8Rng::seed_from_u64(seed));
    let members = cast(&mut chance);
    let with = |member: Member| {
        let calendar = calendar(&mut chance, &member);
        (member, calendar)
    };
    members.into_iter().map(with).collect()
}

fn played<B: book::Book>(seed: u64, slips: Slips, book: impl Fn(&Member) -> B) -> Vec<Diary> {
    let play = |(member, calendar): (Member, Calendar)| {
        let mut book = book(&member);
        play(member, &calendar, &mut book, slips)
    };
    drawn(seed).into_iter().map(play).collect()
}

/// What lifters who train with real devices saw.
#[derive(Debug, Default)]
pub struct OnPhones {
    /// Lifters.
    pub lifters: usize,
    /// Proposals compared with those of the function.
    pub compared: u64,
    /// Times a coach's board told that somebody is at the top.
    pub told: u64,
    /// What differed.
    pub differ: Vec<String>,
}

/// Plays a season of some of the forty on real devices: a phone, its coach's, and what carries files between them.
/// The percent plans are left out: no tap sets the training max they begin with.
pub fn on_phones(seed: u64, which: impl Fn(usize) -> bool) -> OnPhones {
    let mut all = OnPhones::default();
    for (at, (member, calendar)) in drawn(seed).into_iter().enumerate() {
        if !which(at) || member.group == Group::Percent {
            continue;
        }
        let (mut phone, name) = (Phone::of(&member), member.name.clone());
        let on_paper = play(member, &calendar, &mut phone, Slips::AtOnce);
        all.lifters += usize::from(!on_paper.sessions.is_empty());
        all.compared += phone.compared;
        all.told += phone.told;
        all.differ.extend(phone.differ.iter().map(|differ| format!("{name} {differ}")));
    }
    all
}

fn with_rules(seed: u64) -> Vec<Diary> {
    let mut ours = played(seed, Slips::All, Paper::of);
    let twins = played(seed, Slips::None, Paper::of);
    for (diary, twin) in ours.iter_mut().zip(&twins) {
        diary.after_repair = after_repair(diary, twin);
    }
    ours
}

/// The proposals after slips that were repaired before the next session, beside those of a twin who made none.
/// After one that was not, the two go their own ways; so they do where the first loads are being found.
fn after_repair(diary: &Diary, twin: &Diary) -> Vec<Compared> {
    let mut found = Vec::new();
    let first = diary.working().next().map(|session| session.on);
    for slip in &diary.slips {
        let next = diary.sessions.iter().find(|session| session.on > slip.on);
        let Some(next) = next else { break };
        let mut until = diary.slips.iter().filter(|slip| slip.on < next.on);
        let in_time = until.all(|slip| {
            let repaired = slip.repaired.is_some_and(|repaired| repaired <= next.on);
            repaired && !slip.aside && Some(slip.on) != first
        });
        let other = twin.sessions.iter().find(|session| session.on == next.on);
        let Some(other) = other.filter(|_| in_time) else { break };
        found.push((next.on, next.first().to_vec(), other.first().to_vec()));
    }
    found
}

type Compared =
    (chrono::NaiveDate, Vec<holdfast_core::load::NextLoad>, Vec<holdfast_core::load::NextLoad>);
