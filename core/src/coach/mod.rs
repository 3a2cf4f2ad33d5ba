//! A coach's side: the board, a member's page, answers to proposals, publishing.

mod answer;
mod attendance;
mod attention;
mod board;
mod find;
mod member;
mod proposal;
mod publish;
mod ruling;
mod series;
mod strength;
mod week;

pub(crate) use answer::{answer, clear_flag};
pub use attention::{Attention, AttentionKind};
pub(crate) use board::board;
pub use board::{BoardRow, BoardScreen};
pub(crate) use member::member;
pub use member::{DiscomfortLine, MemberScreen, OptionLine};
pub use proposal::{Proposal, ProposedSet};
pub use publish::PlanSummary;
pub(crate) use publish::{check, publish};
pub use ruling::Answer;
pub use series::{LiftPoint, LiftSeries, RangePoint, RangeSeries, RegionMinutes};
pub use strength::{StrengthPoint, StrengthSeries};
pub use week::{SessionLine, WeekLine};
