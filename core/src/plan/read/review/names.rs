//! Names that look alike and are not the same, and characters nobody sees.

use super::Review;
use super::place::Path;
use crate::plan::read::words::clip;
use crate::say::plan_note as say;

pub(super) fn review(review: &Review<'_>) {
    let block = review.block;
    let top = Path::new();
    hidden(review, &top.key("block").key("name"), &block.name);
    let kit = top.key("kit");
    let bars = block.kit.bars.iter().map(|bar| bar.name.as_str());
    alike(review, each(&kit.key("bar"), bars));
    let machines = block.kit.machines.iter().map(|machine| machine.name.as_str());
    alike(review, each(&kit.key("machine"), machines));
    let mut exercises = Vec::new();
    for movement in &block.movements {
        let at = top.key("movement").key(&movement.key);
        exercises.push((at.key("name"), movement.name.as_str()));
        for option in &movement.options {
            let at = at.key("option").key(&option.key);
            exercises.push((at.key("name"), option.name.as_str()));
        }
    }
    alike(review, exercises);
    let stretches = block.stretches.iter();
    let stretches = stretches.map(|of| (top.key("stretch").key(&of.key).key("name"), &*of.name));
    alike(review, stretches.collect());
    alike(review, each(&top.key("day"), block.days.iter().map(|day| day.name.as_str())));
    // A piece keeps a history under its name, whatever its day.
    alike(review, review.pieces().map(|(_, piece, at)| (at.key("name"), &*piece.name)).collect());
    let tracks = review.strengths().filter_map(|placed| {
        let track = placed.kind.track.as_deref()?;
        Some((placed.at.key("track"), track))
    });
    alike(review, tracks.collect());
}

fn each<'n>(list: &Path<'n>, names: impl Iterator<Item = &'n str>) -> Vec<(Path<'n>, &'n str)> {
    names.enumerate().map(|(index, name)| (list.index(index).key("name"), name)).collect()
}

/// Notes names that differ only in what nobody would tell apart, and each with a hidden character.
fn alike(review: &Review<'_>, names: Vec<(Path<'_>, &str)>) {
    let mut seen: Vec<(String, &str, u32)> = Vec::new();
    for (at, name) in names {
        hidden(review, &at, name);
        let plain = plain(name);
        match seen.iter().find(|(known, written, _)| *known == plain && *written != name) {
            Some((_, written, line)) => {
                let what = say::names_alike(clip(name), clip(written), *line);
                review.note(&at, what, say::write_names_alike());
            }
            None => seen.push((plain, name, review.line(&at))),
        }
    }
}

fn hidden(review: &Review<'_>, at: &Path<'_>, name: &str) {
    let mut before = ' ';
    for letter in name.chars() {
        // These shape the character before them: emoji, and letters of some scripts.
        let shaping = matches!(letter, '\u{200c}' | '\u{200d}' | '\u{fe00}'..='\u{fe0f}');
        if is_invisible(letter) && (!shaping || before.is_ascii()) {
            let code = format!("U+{:04X}", u32::from(letter));
            review.note(at, say::hidden_character(clip(name), code), say::type_name_again());
            return;
        }
        before = letter;
    }
}

/// The name as somebody reads it aloud: small letters, one blank between words, nothing invisible.
fn plain(name: &str) -> String {
    let seen: String = name.chars().filter(|letter| !is_invisible(*letter)).collect();
    let words: Vec<String> = seen.split_whitespace().map(str::to_lowercase).collect();
    words.join(" ")
}

/// Unicode's property Default_Ignorable_Code_Point (Unicode Character Database,
/// DerivedCoreProperties.txt, version 14.0).
fn is_invisible(letter: char) -> bool {
    matches!(letter,
        '\u{ad}' | '\u{34f}' | '\u{61c}' | '\u{115f}'..='\u{1160}' | '\u{17b4}'..='\u{17b5}'
        | '\u{180b}'..='\u{180f}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}'
        | '\u{2060}'..='\u{206f}' | '\u{3164}' | '\u{fe00}'..='\u{fe0f}' | '\u{feff}'
        | '\u{ffa0}' | '\u{fff0}'..='\u{fff8}' | '\u{1bca0}'..='\u{1bca3}'
        | '\u{1d173}'..='\u{1d17a}' | '\u{e0000}'..='\u{e0fff}')
}
