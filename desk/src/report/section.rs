//! A member's own section of the page.

use chrono::NaiveDate;
use holdfast_core::coach::{DiscomfortLine, MemberScreen, OptionLine, SessionLine};

use super::chart::{self, Figure, Painted};
use super::page::{Look, looks};
use super::words::Day;

/// A member's section as the template reads it.
pub(super) struct Section<'a> {
    pub(super) anchor: String,
    pub(super) name: &'a str,
    pub(super) looks: Vec<Look<'a>>,
    pub(super) sessions: Vec<Session<'a>>,
    /// Sessions that have an end but no rating, or no end.
    pub(super) unrated: usize,
    pub(super) figures: Vec<Figure>,
    pub(super) options: Vec<OptionTaken<'a>>,
    pub(super) discomfort: Vec<Discomfort<'a>>,
}

/// A session.
pub(super) struct Session<'a> {
    pub(super) date: Day,
    pub(super) line: &'a SessionLine,
    pub(super) volume: String,
    /// Session RPE, minutes and session load.
    pub(super) rating: [Option<u32>; 3],
}

/// An option taken.
pub(super) struct OptionTaken<'a> {
    pub(super) date: Day,
    pub(super) option: &'a OptionLine,
}

/// A discomfort flag.
pub(super) struct Discomfort<'a> {
    pub(super) date: Day,
    pub(super) discomfort: &'a DiscomfortLine,
}

impl<'a> Section<'a> {
    pub(super) fn new(
        anchor: String,
        member: &'a MemberScreen,
        today: NaiveDate,
    ) -> Painted<Section<'a>> {
        let day = |date| Day::on(today, date);
        let session = |line: &'a SessionLine| Session {
            date: day(line.date),
            line,
            volume: line.volume.text(member.unit),
            rating: [line.rpe, line.minutes, line.load],
        };
        Ok(Section {
            anchor,
            name: &member.name,
            looks: looks(&member.attention),
            sessions: member.sessions.iter().map(session).collect(),
            unrated: member.sessions.iter().filter(|session| session.load.is_none()).count(),
            figures: figures(member)?,
            options: member
                .options
                .iter()
                .map(|option| OptionTaken { date: day(option.date), option })
                .collect(),
            discomfort: member
                .discomfort
                .iter()
                .map(|discomfort| Discomfort { date: day(discomfort.date), discomfort })
                .collect(),
        })
    }

    /// True when there is nothing at all to show.
    pub(super) fn is_empty(&self) -> bool {
        self.looks.is_empty()
            && self.sessions.is_empty()
            && self.figures.is_empty()
            && self.options.is_empty()
            && self.discomfort.is_empty()
    }
}

fn figures(member: &MemberScreen) -> Painted<Vec<Figure>> {
    let mut figures = Vec::new();
    for series in &member.lifts {
        figures.extend(chart::lift(series, member.unit)?);
    }
    for series in &member.strengths {
        figures.extend(chart::strength(series, member.unit)?);
    }
    figures.extend(chart::weeks(&member.weeks)?);
    for series in &member.ranges {
        figures.extend(chart::range(series)?);
    }
    figures.extend(chart::regions(&member.regions)?);
    Ok(figures)
}
