//! Two people in one room pair their devices.

use std::path::Path;

use holdfast_core::{HoldfastResult, PairDid, PairScreen};

use crate::{Device, run};

/// A code that a screen shows, scanned.
pub fn scan(shown: &PairScreen, chance: u8) -> PairDid {
    PairDid::Scan { text: shown.code.clone().unwrap_or_default(), chance: vec![chance; 32] }
}

/// The line that has the words.
pub fn line_of(opened: &PairScreen, compared: &PairScreen) -> Option<u32> {
    let read = compared.words.join(" ");
    (1..).zip(&opened.lines).find(|(_, line)| **line == read).map(|(line, _)| line)
}

/// Pairs a member's device with the coach's, and gives the screens that both see, in turn. Two pairings of one coach
/// need two `chance`.
///
/// # Errors
/// As [`holdfast_core::Holdfast::pair`].
pub fn pair(coach: &Device, member: &Device, chance: u8) -> HoldfastResult<[PairScreen; 6]> {
    let invite = PairDid::Invite { chance: (0..32).map(|at| chance.wrapping_add(at)).collect() };
    let invited = coach.pair(invite)?;
    let answered = member.pair(scan(&invited, chance))?;
    let opened = coach.pair(scan(&answered, chance))?;
    let compared = member.pair(scan(&opened, chance))?;
    let line = line_of(&opened, &compared);
    let picked = coach.pair(PairDid::Pick { line, label: None })?;
    let matched = member.pair(PairDid::Match { matches: line.is_some(), share_earlier: true })?;
    Ok([invited, answered, opened, compared, picked, matched])
}

/// The same with the program, as two people type it.
///
/// # Panics
/// When a command fails.
pub fn pair_by_hand(coach: &Path, member: &Path) {
    let said = |home: &Path, args: &[&str]| {
        let ran = run(home, args, "");
        assert!(ran.fine, "{args:?}: {ran:?}");
        ran.out
    };
    let code = |said: &str| {
        let shown = said.lines().find(|line| line.starts_with("HF1:"));
        shown.unwrap_or_else(|| panic!("no code: {said}")).to_owned()
    };
    let invited = code(&said(coach, &["invite"]));
    let answered = code(&said(member, &["join", &invited]));
    let opened = said(coach, &["invite", &answered]);
    let compared = said(member, &["join", &code(&opened)]);
    let words = compared.lines().find_map(|line| line.strip_prefix("    "));
    let words = words.unwrap_or_else(|| panic!("no words: {compared}")).replace("  ", " ");
    let numbered = opened.lines().filter_map(|line| line.strip_prefix("  "));
    let line = numbered.filter_map(|line| line.split_once("  ")).find(|(_, line)| *line == words);
    let (line, _) = line.unwrap_or_else(|| panic!("{words}: {opened}"));
    said(coach, &["invite", "--line", line]);
    said(member, &["join", "--match"]);
}
