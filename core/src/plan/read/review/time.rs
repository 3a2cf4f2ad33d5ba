//! Times that may not be meant: a block far away, reps that no window has room for.

use chrono::{Datelike, NaiveDate};

use super::Review;
use super::place::Path;
use crate::plan::FASTEST_REP_MS;
use crate::plan::read::duration;
use crate::say::plan_note as say;

/// A block that starts further away was likely given a wrong year.
const DAYS_AWAY: i64 = 366;

pub(super) fn review(review: &Review<'_>, today: Option<NaiveDate>) {
    let starts = review.block.starts;
    let away = today.map_or(0, |today| (starts - today).num_days());
    if away.abs() > DAYS_AWAY {
        let what = match away > 0 {
            true => say::starts_far_ahead(starts.year()),
            false => say::started_long_ago(starts.year()),
        };
        review.note(&Path::new().key("block").key("starts"), what, say::check_the_year());
    }
    let all = |weeks: &[u32]| (1..=review.block.weeks).all(|week| weeks.contains(&week));
    if review.block.easy.as_ref().is_some_and(|easy| all(&easy.weeks)) {
        let at = Path::new().key("block").key("easy").key("weeks");
        review.note(&at, say::all_weeks_easy(), say::leave_a_week());
    }
    for interval in review.intervals() {
        for (index, station) in interval.kind.stations.iter().enumerate() {
            let fastest = i64::from(station.reps) * FASTEST_REP_MS;
            let window = interval.kind.window_ms;
            if fastest > window {
                let at = interval.at.key("station").index(index).key("reps");
                let what = say::reps_past_window(station.reps, duration::text(window));
                // Whole reps only.
                review.note(&at, what, say::fewer_reps(window / FASTEST_REP_MS));
            }
        }
    }
}
