//! A coach's side: the board, a member's page, answers to proposals, publishing.

mod answer;
mod aside;
mod attendance;
mod attention;
mod board;
mod find;
mod member;
mod one_rep_max;
mod proposal;
mod publish;
mod ruling;
mod series;
mod sets;
mod strength;
mod week;
mod whereabouts;

pub(crate) use answer::{answer, clear_flag};
pub(crate) use aside::set_aside;
pub use attention::{Attention, AttentionKind};
pub(crate) use board::board;
pub use board::{BoardRow, BoardScreen};
pub(crate) use member::member;
pub use member::{DiscomfortLine, MemberScreen, OptionLine};
pub(crate) use one_rep_max::give_max;
pub use one_rep_max::{MaxGiven, MaxLine};
pub use proposal::{Proposal, ProposedSet};
pub use publish::PlanSummary;
pub(crate) use publish::{check, check_alone, publish};
pub use ruling::Answer;
pub use series::{LiftPoint, LiftSeries, RangePoint, RangeSeries, RegionMinutes};
pub use sets::{LoggedSet, SessionSets, SetNamed, SetsScreen};
pub(crate) use sets::{find_set, logged_set, sets};
pub use strength::{StrengthPoint, StrengthSeries};
pub use week::{SessionLine, WeekLine};
