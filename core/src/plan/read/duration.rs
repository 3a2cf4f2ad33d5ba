//! Durations as a coach writes them: `90 s`, `2 min`, `1 min 30 s`.

/// Milliseconds in a second.
pub(super) const SECOND: i64 = 1000;
/// Milliseconds in a minute.
pub(super) const MINUTE: i64 = 60 * SECOND;
/// Milliseconds in an hour.
pub(super) const HOUR: i64 = 60 * MINUTE;
/// Nothing in a plan takes longer, in milliseconds.
pub(super) const LONGEST: i64 = 3 * HOUR;

/// Why a text is not a duration.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum DurationError {
    /// Not of the form `1 min 30 s`.
    Form,
    /// Longer than anything in a plan.
    TooLong,
}

/// Reads minutes, seconds or both, into milliseconds.
pub(super) fn parse(text: &str) -> Result<i64, DurationError> {
    let (minutes, rest) = part(text.trim(), "min");
    let (seconds, rest) = part(rest, "s");
    // After minutes, 60 seconds or more are more likely a slip than a wish.
    let odd = minutes.is_some() && seconds.is_some_and(|seconds| seconds >= 60);
    if !rest.is_empty() || odd || (minutes.is_none() && seconds.is_none()) {
        return Err(DurationError::Form);
    }
    let minutes = minutes.unwrap_or_default().saturating_mul(MINUTE);
    let total = minutes.saturating_add(seconds.unwrap_or_default().saturating_mul(SECOND));
    if total > LONGEST { Err(DurationError::TooLong) } else { Ok(total) }
}

/// Takes `12 unit` from the front of `text`, if it is there.
fn part<'t>(text: &'t str, unit: &str) -> (Option<i64>, &'t str) {
    let digits = text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len());
    let (number, after) = text.split_at(digits);
    match after.trim_start().strip_prefix(unit) {
        // Only a number too long for 64 bits fails to parse here.
        Some(rest) if digits > 0 => (Some(number.parse().unwrap_or(i64::MAX)), rest.trim_start()),
        _ => (None, text),
    }
}

/// A duration in milliseconds as a plan writes it, with hours where there are any.
pub(super) fn text(ms: i64) -> String {
    let parts = [(ms / HOUR, "h"), (ms % HOUR / MINUTE, "min"), (ms % MINUTE / SECOND, "s")];
    let written = parts.iter().filter(|(count, _)| *count > 0);
    let written: Vec<String> = written.map(|(count, unit)| format!("{count} {unit}")).collect();
    if written.is_empty() { "0 s".to_owned() } else { written.join(" ") }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn minutes_and_seconds_are_read_in_the_forms_people_write() {
        let good = [
            ("90 s", 90_000),
            ("45s", 45_000),
            ("2 min", 120_000),
            ("2min", 120_000),
            ("1 min 30 s", 90_000),
            (" 1min30s ", 90_000),
            ("0 s", 0),
            ("180 min", LONGEST),
        ];
        for (written, ms) in good {
            assert_eq!(parse(written), Ok(ms), "{written}");
            assert_eq!(parse(&text(ms).replace("3 h", "180 min")), Ok(ms), "{written}");
        }
    }

    #[test]
    fn anything_else_is_refused() {
        let junk = [
            "",
            "s",
            "min",
            "-5 s",
            "+5 s",
            "1.5 min",
            "1,5 min",
            "90",
            "1 h",
            "2 mins",
            "5 sec",
            "30 s 1 min",
            "1 min 60 s",
            "1 min 2 min",
            "NaN s",
            "١ s",
            "2 min and a bit",
        ];
        for written in junk {
            assert_eq!(parse(written), Err(DurationError::Form), "{written}");
        }
        for written in
            ["181 min", "10801 s", "99999999999999999999999 s", "9223372036854775807 min"]
        {
            assert_eq!(parse(written), Err(DurationError::TooLong), "{written}");
        }
    }

    #[test]
    fn long_totals_are_told_in_hours() {
        assert_eq!(text(4 * HOUR + 10 * MINUTE), "4 h 10 min");
        assert_eq!(text(MINUTE + 5 * SECOND), "1 min 5 s");
    }
}
