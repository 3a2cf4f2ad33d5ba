//! How far a side, a window or a rest is, as a bar of marks.

use holdfast_core::clock::Phase;
use holdfast_core::session::ClockView;

/// Cells that a bar is drawn from; as many as the widest bar has.
const CELLS: i64 = 60;

/// The marks of a clock's spans: `=` is over and `-` is to come, where one pushes `#` and `+`, and `|` is
/// when to be done. Empty for a clock without a length.
pub(crate) fn marks(clock: &ClockView) -> Vec<char> {
    let whole = clock.spans.last().map_or(0, |span| span.to.0);
    if whole <= 0 || matches!(clock.phase, Phase::Rest | Phase::RestOver | Phase::Done) {
        return Vec::new();
    }
    let at = |cell: i64| whole.saturating_mul(2 * cell + 1) / (2 * CELLS);
    let done_by = clock.mark.map(|mark| (mark.0.saturating_mul(CELLS) / whole).min(CELLS - 1));
    let mark = |cell: i64| {
        let ms = at(cell);
        let span = clock.spans.iter().find(|span| (span.from.0..span.to.0).contains(&ms));
        let push = span.is_some_and(|span| span.phase == Phase::Push);
        match (done_by == Some(cell), ms < clock.spent.0, push) {
            (true, ..) => '|',
            (false, true, true) => '#',
            (false, true, false) => '=',
            (false, false, true) => '+',
            (false, false, false) => '-',
        }
    };
    (0..CELLS).map(mark).collect()
}

/// `[=====-----]`, as wide as it may be.
pub(crate) fn bar(marks: &[char], wide: u16) -> String {
    let inside = usize::from(wide.saturating_sub(2)).min(marks.len());
    let cell = |index: usize| marks.get(index * marks.len() / inside.max(1)).copied();
    format!("[{}]", (0..inside).filter_map(cell).collect::<String>())
}

#[cfg(test)]
mod tests {
    use holdfast_core::Instant;
    use holdfast_core::clock::{Act, HoldSpec, Mark, hold_state};
    use holdfast_core::session::hold_clock;

    use super::*;

    fn drawn(contract_ms: i64, ms: i64, wide: u16) -> String {
        let spec = HoldSpec {
            ready_ms: 0,
            hold_ms: 60_000,
            switch_ms: 0,
            sides: 1,
            contract_ms,
            relax_ms: contract_ms * 2,
        };
        let at = |ms| Instant { wall_ms: ms, offset_min: 0, boot_ms: ms, boot_id: "test".into() };
        let marks_of = [Mark { act: Act::Begin, at: at(0) }];
        let clock = hold_clock(&spec, &hold_state(&spec, &marks_of, &at(ms))).unwrap();
        bar(&marks(&clock), wide)
    }

    #[test]
    fn the_bar_is_as_full_as_the_time_is_over() {
        assert_eq!(drawn(0, 0, 12), "[----------]");
        assert_eq!(drawn(0, 30_000, 12), "[=====-----]");
        assert_eq!(drawn(0, 59_900, 12), "[==========]");
        assert_eq!(drawn(0, 30_000, 2), "[]");
        assert_eq!(drawn(0, 30_000, 200).len(), 62);
        assert_eq!(drawn(0, 90_000, 12), "[]", "over");
    }

    #[test]
    fn pushing_stands_out() {
        assert_eq!(drawn(10_000, 15_000, 14), "[##=---++----]");
    }
}
