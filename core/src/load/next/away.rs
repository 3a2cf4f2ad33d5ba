//! Coming back after weeks away.

use chrono::NaiveDate;

use super::History;

/// From so many whole weeks without the movement, the first time back is lighter.
///
/// Common practice, no source, like the percentages below.
const WEEKS_AWAY: u32 = 3;
const FIRST_PERCENT: u32 = 10;
const PERCENT_A_WEEK: u32 = 5;
const MOST_PERCENT: u32 = 30;

/// Whole weeks since something was last lifted; none for a date that lies ahead.
pub fn weeks_away(last: NaiveDate, today: NaiveDate) -> u32 {
    u32::try_from((today - last).num_weeks()).unwrap_or(0)
}

/// The weeks away and the percent to take off, when it was long enough to matter.
pub(super) fn eased(history: &History) -> Option<(u32, u32)> {
    let weeks = weeks_away(history.last_lifted?, history.date?);
    let past = weeks.checked_sub(WEEKS_AWAY)?;
    let percent = FIRST_PERCENT.saturating_add(past.saturating_mul(PERCENT_A_WEEK));
    Some((weeks, percent.min(MOST_PERCENT)))
}
