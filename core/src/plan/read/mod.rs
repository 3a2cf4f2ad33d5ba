//! From text to [`Block`], with every problem at once.

mod block;
mod day;
mod duration;
mod fault;
mod field;
mod fields;
mod hold;
mod interval;
mod kit;
mod lines;
mod load;
mod movement;
mod piece;
mod problems;
mod quantity;
mod room;
mod strength;
mod syntax;
mod words;

#[cfg(test)]
mod tests;

use toml::de::DeTable;

use self::problems::Problems;
use super::{Block, Problem};

/// The largest plan text: it must fit one journal line with room for escapes.
pub const MAX_PLAN_BYTES: usize = 30 * 1024;

/// Reads a plan text.
///
/// # Errors
/// Every problem found, in the order of the text.
pub fn read_plan(bytes: &[u8]) -> Result<Block, Vec<Problem>> {
    let mut problems = Problems::new(bytes);
    let block = read(bytes, &mut problems);
    problems.or(block)
}

fn read(bytes: &[u8], problems: &mut Problems<'_>) -> Option<Block> {
    if bytes.len() > MAX_PLAN_BYTES {
        let (size, limit) = (words::thousands(bytes.len()), words::thousands(MAX_PLAN_BYTES));
        let what = format!("the plan has {size} bytes, and {limit} is the most");
        problems.wrong(0, what, "split it into blocks".to_owned());
        return None;
    }
    let text = match std::str::from_utf8(bytes) {
        Ok(text) => text,
        Err(error) => {
            let at = error.valid_up_to();
            let byte = bytes.get(at).copied().unwrap_or_default();
            let what = format!("the plan is not UTF-8 text: byte 0x{byte:02X} can't be read");
            problems.wrong(at, what, "save the file again as UTF-8 text".to_owned());
            return None;
        }
    };
    let text = syntax::sound(text, problems)?;
    let (tree, _) = DeTable::parse_recoverable(&text);
    if tree.get_ref().is_empty() && !problems.any() {
        let help = "start with [block] and its `name`, `starts` and `weeks`, \
                    then a [[day]] with its pieces";
        problems.wrong(0, "the plan is empty".to_owned(), help.to_owned());
        return None;
    }
    block::read(tree.get_ref(), problems)
}
