//! Review: what a coach should look at, and a member's page, as data that any shell can draw.

mod attention;
mod board;
mod export;
mod member;
mod proposal;
mod range;
mod series;
mod strength;
mod week;

pub use attention::{Attention, AttentionKind};
pub(crate) use board::board;
pub use board::{BoardRow, BoardScreen};
pub(crate) use export::export;
pub use export::{Export, Table, TableRow};
pub(crate) use member::member;
pub use member::{DiscomfortLine, MemberScreen, ScaledLine, SessionLine};
pub(crate) use proposal::proposals;
pub use proposal::{Proposal, ProposedSet};
pub(crate) use range::judge as judge_range;
pub use series::{LiftPoint, LiftSeries, RangePoint, RangeSeries, RegionMinutes};
pub use strength::{StrengthPoint, StrengthSeries};
pub use week::WeekLine;
