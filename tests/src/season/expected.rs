//! What is expected of the proposals of a season. Written before there was a season to read; a number that
//! changes afterwards needs a sentence in `docs/season.md` that says why.

use super::read::{self, Reading};
use super::seen::Diary;

/// Lifters of one season.
pub const LIFTERS: usize = 40;
/// Weeks of it.
pub(super) const WEEKS: u32 = 24;

/// Sets missed, in percent of those done outside easy weeks: fewer are too easy, more too hard.
pub(super) const MISSED_PERCENT: (f64, f64) = (3.0, 15.0);
/// Near enough to the former best, in percent of it.
pub(super) const NEAR_PERCENT: u32 = 95;
/// Days without training that make a lay-off.
pub(super) const AWAY_DAYS: i64 = 21;
/// Cases of four in which somebody is back in time.
pub(super) const IN_FOUR: f64 = 75.0;
/// Sessions within which the load or the reps go up while targets are beaten.
pub(super) const STUCK_SESSIONS: usize = 3;
/// Severe from here: the load is withdrawn.
pub(super) const SEVERE: u32 = 4;
/// Days from a severe flag within which the old load is lifted again, where the flag was cleared within
/// [`CLEARED_DAYS`].
pub(super) const PAIN_DAYS: i64 = 28;
/// Flags that stayed open longer are not counted there.
pub(super) const CLEARED_DAYS: i64 = 14;
/// No load goes past so many percent of what was really lifted, or one build.
pub(super) const CAP_PERCENT: u32 = 110;
/// Strength gained less than with the plain rule, in hundredths of it, that one season's chance may make.
pub(super) const CHANCE: f64 = 0.5;

/// Seasons read together: the lifters' diaries with the load rules, and what the same lifters gained with
/// the plain rule in the same world.
#[derive(Default)]
pub struct Season {
    /// With the load rules.
    pub ours: Vec<Diary>,
    /// With the plain rule, in the same order.
    pub plain: Vec<Diary>,
}

/// Where a number comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Source {
    /// Common practice, no source.
    CommonPractice,
    /// Published.
    Published(&'static str),
    /// No number: a plain consequence of what is promised.
    Promise,
}

/// What the reading must be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bar {
    /// No case breaks it.
    Never,
    /// At least so many percent of the cases hold.
    AtLeast(f64),
    /// The cases that hold are between so many and so many percent.
    Between(f64, f64),
    /// The mean is not below this.
    NotBelow(f64),
}

/// One expectation.
pub struct Expectation {
    /// A few words.
    pub name: &'static str,
    /// Where its number comes from.
    pub source: Source,
    /// What the reading must be.
    pub bar: Bar,
    /// Reads it off.
    pub read: fn(&Season) -> Reading,
}

const COMMON: Source = Source::CommonPractice;
const PROMISE: Source = Source::Promise;
const ACSM: Source = Source::Published(
    "2 to 10 %: Kraemer et al., Med Sci Sports Exerc 2002;34:364-380; Ratamess et al. 2009;41:687-708",
);

/// All of them.
pub const EXPECTED: &[Expectation] = &[
    Expectation { name: "never up in pain", source: PROMISE, bar: Bar::Never, read: read::pain },
    Expectation {
        name: "back after a lay-off in the weeks missed plus one",
        source: COMMON,
        bar: Bar::AtLeast(IN_FOUR),
        read: read::back,
    },
    Expectation {
        name: "no one stuck while beating targets",
        source: COMMON,
        bar: Bar::Never,
        read: read::stuck,
    },
    Expectation {
        name: "no one sent up while missing",
        source: PROMISE,
        bar: Bar::Never,
        read: read::sent_up,
    },
    Expectation {
        name: "sets missed",
        source: COMMON,
        bar: Bar::Between(MISSED_PERCENT.0, MISSED_PERCENT.1),
        read: read::missed,
    },
    Expectation {
        name: "strength gained not below the plain rule",
        source: PROMISE,
        bar: Bar::NotBelow(-CHANCE),
        read: read::gained,
    },
    Expectation {
        name: "after severe pain at the old load within 4 weeks",
        source: COMMON,
        bar: Bar::AtLeast(IN_FOUR),
        read: read::after_pain,
    },
    Expectation {
        name: "every load can be built",
        source: PROMISE,
        bar: Bar::Never,
        read: read::built,
    },
    Expectation {
        name: "easy weeks cancel nothing",
        source: PROMISE,
        bar: Bar::Never,
        read: read::easy,
    },
    Expectation {
        name: "slips cause no load above 110 %",
        source: ACSM,
        bar: Bar::Never,
        read: read::slips,
    },
    Expectation {
        name: "the repair of a slip restores the proposals",
        source: PROMISE,
        bar: Bar::Never,
        read: read::repaired,
    },
];

impl Expectation {
    /// True where it holds, and there was something to read.
    pub fn holds(&self, season: &Season) -> bool {
        self.holds_within(season, 0.0)
    }

    /// The same of a few seasons, whose cases are few: shares may be three standard errors lower.
    pub fn holds_but_for_chance(&self, season: &Season) -> bool {
        self.holds_within(season, 3.0)
    }

    fn holds_within(&self, season: &Season, errors: f64) -> bool {
        let reading = (self.read)(season);
        let percent = reading.percent();
        let error = |share: f64| (share * (100.0 - share) / reading.cases as f64).sqrt();
        reading.cases > 0
            && match self.bar {
                Bar::Never => reading.held == reading.cases,
                Bar::AtLeast(least) => percent >= least - errors * error(least),
                Bar::Between(low, high) => (low..=high).contains(&percent),
                Bar::NotBelow(least) => reading.mean >= least,
            }
    }
}
