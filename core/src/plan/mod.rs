//! Plans: blocks, days, pieces, options and kit, and the text they are written in.

mod block;
mod keyword;
mod kit;
mod measure;
mod movement;
mod piece;
mod problem;
mod read;
mod scheme;

pub(crate) use keyword::keyword;

pub use block::{Block, Day, Planned};
pub use kit::{Bar, Bell, Kit, PlateStack};
pub use measure::{MeasureUnit, MeasuredWhen, Protocol};
pub use movement::{Because, Lifted, Movement, MovementOption, Pattern, Stretch};
pub use piece::{
    Hold, Interval, LoadRule, Note, Piece, Station, Step, StepRule, Strength, Technique, Work,
};
pub use problem::Problem;
pub use read::{MAX_PLAN_BYTES, read_kit, read_plan};
pub use scheme::Scheme;
