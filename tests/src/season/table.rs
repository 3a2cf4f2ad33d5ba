//! The season as a table: by group of lifters, and expectation by expectation.

use std::fmt::Write as _;

use super::expected::{Bar, EXPECTED, Season};
use super::read;
use super::seen::{Diary, Group};

/// All groups, as they stand in the table.
const GROUPS: [(Group, &str); 10] = [
    (Group::Novice, "novices"),
    (Group::Trained, "trained"),
    (Group::Strong, "strong"),
    (Group::Pounds, "pounds"),
    (Group::Holes, "kits with holes"),
    (Group::Bells, "bells"),
    (Group::Added, "added load"),
    (Group::Assisted, "assisted"),
    (Group::Percent, "percent"),
    (Group::Fixed, "fixed"),
];

/// The middle one; none of none.
fn median(mut of: Vec<i64>) -> Option<i64> {
    of.sort_unstable();
    of.get(of.len() / 2).copied()
}

fn weeks(days: Option<i64>) -> String {
    days.map_or("-".to_owned(), |days| format!("{:.1}", days as f64 / 7.0))
}

fn line(name: &str, ours: &[&Diary], plain: &[&Diary]) -> String {
    let missed = |diaries: &[&Diary]| read::missed_in(diaries.iter().copied());
    let gained = |diaries: &[&Diary]| {
        let sum: f64 = diaries.iter().map(|diary| diary.gained().exp_m1()).sum();
        100.0 * sum / diaries.len() as f64
    };
    let away: Vec<_> = ours.iter().flat_map(|diary| read::lay_offs(diary)).collect();
    let away: Vec<_> = away.iter().filter(|lay_off| lay_off.counts).collect();
    let back = median(away.iter().filter_map(|lay_off| lay_off.days).collect());
    let missing = median(away.iter().map(|lay_off| lay_off.weeks * 7).collect());
    let pains: Vec<_> = ours.iter().flat_map(|diary| read::severe_pains(diary)).collect();
    let pains: Vec<_> = pains.iter().filter(|pain| pain.3).collect();
    let again = median(pains.iter().filter_map(|pain| pain.2).collect());
    let sets = missed(ours);
    format!(
        "| {name} | {} | {} | {:.1} | {:.1} | {:.1} | {:.1} | {} | {} | {} | {} | {} |",
        ours.len(),
        sets.cases,
        sets.percent(),
        missed(plain).percent(),
        gained(ours),
        gained(plain),
        away.len(),
        weeks(missing),
        weeks(back),
        pains.len(),
        weeks(again),
    )
}

/// The tables, as `docs/season.md` keeps them.
pub fn table(season: &Season) -> String {
    let mut text = String::from(
        "| lifters | seasons | sets | missed, % | plain rule | strength gained, % | plain rule | lay-offs | \
         weeks away | weeks to be back | severe pain | weeks to the old load |\n\
         |---|---|---|---|---|---|---|---|---|---|---|---|\n",
    );
    let of = |diaries: &[Diary], group: Option<Group>| -> Vec<usize> {
        let there = |at: &usize| group.is_none_or(|group| diaries[*at].group == group);
        (0..diaries.len()).filter(there).collect()
    };
    let groups = GROUPS.iter().map(|(group, name)| (Some(*group), *name)).chain([(None, "all")]);
    for (group, name) in groups {
        let which = of(&season.ours, group);
        let ours: Vec<_> = which.iter().map(|at| &season.ours[*at]).collect();
        let plain: Vec<_> = which.iter().map(|at| &season.plain[*at]).collect();
        let _ = writeln!(text, "{}", line(name, &ours, &plain));
    }
    text += "\n| expectation | cases | read | must be | holds |\n|---|---|---|---|---|\n";
    for expected in EXPECTED {
        let reading = (expected.read)(season);
        let (read, must) = match expected.bar {
            Bar::Never => {
                let broken = reading.cases - reading.held;
                (format!("{broken} broken"), "0 broken".to_owned())
            }
            Bar::AtLeast(least) => (format!("{:.0} %", reading.percent()), format!("{least} %")),
            Bar::Between(low, high) => {
                (format!("{:.1} %", reading.percent()), format!("{low} to {high} %"))
            }
            Bar::NotBelow(least) => (format!("{:+.2}", reading.mean), format!("from {least:+}")),
        };
        let holds = if expected.holds(season) { "yes" } else { "**no**" };
        let (name, cases) = (expected.name, reading.cases);
        let _ = writeln!(text, "| {name} | {cases} | {read} | {must} | {holds} |");
    }
    text
}

/// What breaks the expectations, a few cases of each, in words.
pub fn broken(season: &Season) -> String {
    let broken = EXPECTED.iter().filter(|expected| !expected.holds(season));
    let told = broken.map(|expected| {
        let reading = (expected.read)(season);
        let cases = format!("{} of {}", reading.held, reading.cases);
        format!(
            "{} ({cases}, mean {:.2}):\n  {}",
            expected.name,
            reading.mean,
            reading.broken.join("\n  ")
        )
    });
    told.collect::<Vec<_>>().join("\n")
}
