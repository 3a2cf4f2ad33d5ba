//! A season played out: forty invented lifters, 24 weeks, and what is expected of their proposals, which
//! was written down first (`docs/season.md`).

mod expected;
mod read;
mod seen;

pub use expected::{Bar, EXPECTED, Expectation, Season, Source};
pub use read::Reading;
pub use seen::{Diary, Group, Lifted, Moment, Pain, Session, Slip};
