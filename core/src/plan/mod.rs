//! Plans: blocks, days, pieces, options and kit, and the text they are written in.

mod block;
mod builds;
mod exercise;
mod keyword;
mod kit;
mod measure;
mod movement;
mod piece;
mod problem;
mod rack;
mod read;
mod scheme;

pub(crate) use builds::MAX_PLATES_A_SIDE;
pub(crate) use keyword::keyword;

pub use block::{Block, Day, Easy, Planned};
pub use builds::{Build, Builds, LoadKind};
pub use exercise::Exercise;
pub use kit::{Bar, Bell, Kit, Machine, PlateStack, Stack, WarmUpRule};
pub use measure::{MeasureUnit, MeasuredWhen, Protocol};
pub use movement::{Because, Lifted, Movement, MovementOption, Pattern, Stretch};
pub(crate) use piece::FASTEST_REP_MS;
pub use piece::{
    HOLD_READY_MS, HOLD_SWITCH_MS, Hold, Interval, LoadRule, Note, Piece, PieceKind, Station, Step,
    StepRule, Strength, Technique,
};
pub use problem::Problem;
pub use rack::Rack;
pub use read::{MAX_PLAN_BYTES, Reviewed, SetAt, Whereabouts, read_kit, read_plan, review_plan};
pub use scheme::Scheme;

/// True where a name is the one that somebody typed, in whatever case and with whatever space around it.
pub(crate) fn is_called(name: &str, typed: &str) -> bool {
    name.trim().to_lowercase() == typed.trim().to_lowercase()
}
