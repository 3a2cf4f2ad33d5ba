//! From text to [`Block`], with every problem at once.

mod block;
mod day;
mod duration;
mod easy;
mod fault;
mod field;
mod fields;
mod given;
mod hold;
mod interval;
mod kit;
mod lines;
mod load;
mod movement;
mod part;
mod piece;
mod problems;
mod quantity;
mod review;
mod room;
mod stack;
mod strength;
mod syntax;
mod warm_up;
mod words;

#[cfg(test)]
mod tests;

use std::borrow::Cow;

use toml::Spanned;
use toml::de::DeTable;

use self::problems::Problems;
use super::{Block, Kit, Problem};
use crate::say;

pub use review::{Reviewed, SetAt, Whereabouts, review_plan};

/// The largest plan text: it must fit one journal line with room for escapes.
pub const MAX_PLAN_BYTES: usize = 30 * 1024;

/// Reads a plan text.
///
/// # Errors
/// Every problem found, in the order of the text.
pub fn read_plan(bytes: &[u8]) -> Result<Block, Vec<Problem>> {
    let mut problems = Problems::new(bytes);
    let text = text(bytes, say::plan::start_plan, &mut problems);
    let block = text.and_then(|text| block::read(tree(&text).get_ref(), &problems));
    problems.or(block)
}

/// Reads the kit of a plan text, which may have nothing else; what else there is is not read.
///
/// # Errors
/// Every problem found in the kit, in the order of the text; a kit without a bar is one.
pub fn read_kit(bytes: &[u8]) -> Result<Kit, Vec<Problem>> {
    let mut problems = Problems::new(bytes);
    let text = text(bytes, say::plan::start_kit, &mut problems);
    let kit = text.and_then(|text| kit::read_alone(tree(&text).get_ref(), &problems));
    problems.or(kit)
}

/// The text of a plan that can be taken for TOML; `start` says how an empty one begins.
fn text<'b>(
    bytes: &'b [u8],
    start: impl FnOnce() -> &'static str,
    problems: &mut Problems<'_>,
) -> Option<Cow<'b, str>> {
    if bytes.len() > MAX_PLAN_BYTES {
        let (size, limit) = (words::thousands(bytes.len()), words::thousands(MAX_PLAN_BYTES));
        let what = say::plan::too_large(size, limit);
        problems.wrong(0, what, say::plan::split_into_blocks().to_owned());
        return None;
    }
    let text = match std::str::from_utf8(bytes) {
        Ok(text) => text,
        Err(error) => {
            let at = error.valid_up_to();
            let byte = bytes.get(at).copied().unwrap_or_default();
            let what = say::plan::not_text(format!("{byte:02X}"));
            problems.wrong(at, what, say::plan::save_as_text().to_owned());
            return None;
        }
    };
    let text = syntax::sound(text, problems)?;
    if tree(&text).get_ref().is_empty() && !problems.any() {
        problems.wrong(0, say::plan::empty().to_owned(), start().to_owned());
        return None;
    }
    Some(text)
}

fn tree(text: &str) -> Spanned<DeTable<'_>> {
    DeTable::parse_recoverable(text).0
}
