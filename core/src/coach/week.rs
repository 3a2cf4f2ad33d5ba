//! A member's weeks: how much, how even, and how the latest compares. All of it describes; none of
//! it is a risk.

use std::collections::BTreeMap;

use chrono::{Days, NaiveDate};
use serde::Serialize;

use super::series::monday;
use crate::id::RecordId;
use crate::load::{DayLoad, Spread, days, smoothed_ratio, week};
use crate::mass::Mass;
use crate::words;

/// A session on a member's page.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct SessionLine {
    /// The session.
    pub session: RecordId,
    /// The date.
    pub date: NaiveDate,
    /// The day's name.
    pub day: String,
    /// Sets logged.
    pub sets: u32,
    /// Volume load: reps times load.
    pub volume: Mass,
    /// Session RPE, 0 to 10.
    pub rpe: Option<u32>,
    /// How long, once ended.
    pub minutes: Option<u32>,
    /// Session RPE times minutes.
    pub load: Option<u32>,
}

/// A week on a member's page.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct WeekLine {
    /// The Monday.
    pub week_of: NaiveDate,
    /// Sessions trained.
    pub sessions: u32,
    /// Session load: the sum of rpe times minutes over the sessions that were rated.
    pub load: u32,
    /// Volume load.
    pub volume: Mass,
    /// Days with a session that nobody rated: their load is not known.
    pub unrated_days: u32,
    /// Mean daily load over its standard deviation, that of the week's own seven days; none while
    /// the week runs, with a day unrated, and where all days are alike.
    pub monotony: Option<String>,
    /// Weekly load times monotony; none where that is.
    pub strain: Option<String>,
}

/// The weeks that were trained in, the earliest first.
pub(crate) fn weeks(sessions: &[SessionLine], date: NaiveDate) -> Vec<WeekLine> {
    let mut weeks: BTreeMap<NaiveDate, Vec<&SessionLine>> = BTreeMap::new();
    for session in sessions {
        weeks.entry(monday(session.date)).or_default().push(session);
    }
    weeks.into_iter().map(|(week_of, sessions)| line(week_of, &sessions, date)).collect()
}

fn line(week_of: NaiveDate, sessions: &[&SessionLine], date: NaiveDate) -> WeekLine {
    let sunday = week_of.checked_add_days(Days::new(6)).unwrap_or(week_of);
    let known = daily(sessions.iter().copied(), week_of, sunday);
    let unrated = known.iter().filter(|day| **day == DayLoad::Missing).count();
    let seven: Option<[DayLoad; 7]> = known.try_into().ok().filter(|_| sunday <= date);
    // The week's seven days are all there is of it: the population's deviation.
    let summed = seven.and_then(|seven| week(&seven, Spread::Population).ok());
    let decimal = catalogue::spoken().decimal().to_string();
    let text = |number: Option<f64>, digits: usize| {
        number.map(|number| format!("{number:.digits$}").replace('.', &decimal))
    };
    WeekLine {
        week_of,
        sessions: sessions.len() as u32,
        load: sessions.iter().filter_map(|session| session.load).sum(),
        volume: sessions.iter().map(|session| session.volume).sum(),
        unrated_days: unrated as u32,
        monotony: text(summed.and_then(|summed| summed.monotony), 2),
        strain: text(summed.and_then(|summed| summed.strain), 0),
    }
}

/// How the latest days' load compares with the weeks before, in words; none before four weeks.
pub(crate) fn compared(sessions: &[SessionLine], date: NaiveDate) -> Option<String> {
    let first = sessions.first()?.date;
    if (date - first).num_days() < 27 {
        return None;
    }
    let days = daily(sessions.iter().filter(|session| session.date <= date), first, date);
    let ratio = smoothed_ratio(&days).ok().flatten();
    ratio.map(words::load_compared)
}

fn daily<'a>(
    sessions: impl Iterator<Item = &'a SessionLine>,
    first: NaiveDate,
    last: NaiveDate,
) -> Vec<DayLoad> {
    let load = |session: &SessionLine| {
        let load = session.load.map_or(DayLoad::Missing, |load| DayLoad::Load(f64::from(load)));
        (session.date, load)
    };
    let sessions: Vec<(NaiveDate, DayLoad)> = sessions.map(load).collect();
    // A day nobody trained on is a rest day. Ten years and more are too many days to look at.
    days(&sessions, first, last, DayLoad::Rest).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn session(date: &str, load: Option<u32>) -> SessionLine {
        SessionLine {
            session: RecordId(uuid::Uuid::nil()),
            date: date.parse().unwrap(),
            day: String::new(),
            sets: 0,
            volume: Mass::kg(1000),
            rpe: None,
            minutes: None,
            load,
        }
    }

    /// A made-up week of 300, 420 and 450 with four days of rest: mean 167.142857, deviation of the
    /// seven days 197.608147, so monotony 0.845830 and strain 989.6209 (computed with numpy).
    #[test]
    fn a_week_is_summed_as_reference_libraries_sum_it() {
        let sessions = [
            session("2026-11-02", Some(300)),
            session("2026-11-04", Some(420)),
            session("2026-11-06", Some(450)),
        ];
        let over = "2026-11-08".parse().unwrap();
        let week = &weeks(&sessions, over)[0];
        assert_eq!((week.sessions, week.load, week.volume), (3, 1170, Mass::kg(3000)));
        assert_eq!((week.monotony.as_deref(), week.strain.as_deref()), (Some("0.85"), Some("990")));
        let running = &weeks(&sessions, "2026-11-07".parse().unwrap())[0];
        assert_eq!((running.monotony.as_deref(), running.load), (None, 1170));
        let unrated = [session("2026-11-02", Some(300)), session("2026-11-03", None)];
        let week = &weeks(&unrated, over)[0];
        assert_eq!((week.unrated_days, week.monotony.as_deref(), week.load), (1, None, 300));
    }

    /// 21 days of 400, then 7 of 600: 573.30 over 478.72 is 1.20 (computed with pandas).
    #[test]
    fn the_latest_load_is_described_only_after_four_weeks() {
        let first: NaiveDate = "2026-10-01".parse().unwrap();
        let days = first.iter_days().take(28).enumerate();
        let sessions: Vec<SessionLine> = days
            .map(|(day, date)| session(&date.to_string(), Some(if day < 21 { 400 } else { 600 })))
            .collect();
        let last = sessions[27].date;
        let text = compared(&sessions, last).unwrap();
        assert!(text.starts_with("recent load is 1.20 times"), "{text}");
        assert_eq!(compared(&sessions, last.pred_opt().unwrap()), None);
    }
}
