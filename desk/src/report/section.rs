//! A member's own section of the page.

use chrono::NaiveDate;
use holdfast_core::coach::{DiscomfortLine, MemberScreen, NoteLine, OptionLine, SessionLine};

use super::chart::{self, Figure, Painted};
use super::marked::Marked;
use super::page::{Look, looks};
use super::words::dated;
use crate::say;

/// A member's section as the template reads it.
pub(super) struct Section<'a> {
    pub(super) anchor: String,
    pub(super) name: &'a str,
    pub(super) looks: Vec<Look<'a>>,
    pub(super) sessions: Vec<Session<'a>>,
    /// How many sessions have an end but no rating, or no end, in words.
    pub(super) unrated: Option<String>,
    pub(super) figures: Vec<Figure>,
    /// One-rep maxes that were tested or set.
    pub(super) maxes: Vec<&'a str>,
    /// Options taken.
    pub(super) options: Vec<Marked>,
    pub(super) notes: Vec<Marked>,
    pub(super) discomfort: Vec<Discomfort>,
}

/// A session.
pub(super) struct Session<'a> {
    pub(super) date: Marked,
    pub(super) line: &'a SessionLine,
    pub(super) volume: String,
    /// Session RPE, minutes and session load.
    pub(super) rating: [Option<u32>; 3],
}

/// A discomfort flag.
pub(super) struct Discomfort {
    pub(super) open: bool,
    pub(super) text: Marked,
}

impl<'a> Section<'a> {
    pub(super) fn new(
        anchor: String,
        member: &'a MemberScreen,
        today: NaiveDate,
    ) -> Painted<Section<'a>> {
        let day = |date| dated(date, today);
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
            unrated: unrated(member),
            figures: figures(member)?,
            maxes: member.maxes.iter().map(|max| max.text.as_str()).collect(),
            options: member.options.iter().map(|line| option(line, today)).collect(),
            notes: member.notes.iter().map(|line| note(line, today)).collect(),
            discomfort: member.discomfort.iter().map(|line| discomfort(line, today)).collect(),
        })
    }

    /// True when there is nothing at all to show.
    pub(super) fn is_empty(&self) -> bool {
        self.looks.is_empty()
            && self.sessions.is_empty()
            && self.figures.is_empty()
            && self.maxes.is_empty()
            && self.options.is_empty()
            && self.notes.is_empty()
            && self.discomfort.is_empty()
    }
}

fn unrated(member: &MemberScreen) -> Option<String> {
    let unrated = member.sessions.iter().filter(|session| session.load.is_none()).count();
    (unrated > 0).then(|| say::report::unrated(member.sessions.len(), unrated))
}

fn option(line: &OptionLine, today: NaiveDate) -> Marked {
    let (date, because) = (dated(line.date, today), &line.because);
    let named = [date, Marked::name(&line.option), Marked::name(&line.movement)];
    Marked::new(named, |[date, option, movement]| {
        if because.is_empty() {
            say::report::took_option(date, option, movement)
        } else {
            say::report::took_option_because(date, option, movement, because)
        }
    })
}

fn note(line: &NoteLine, today: NaiveDate) -> Marked {
    Marked::new([dated(line.date, today)], |[date]| say::report::flag(date, &line.text))
}

fn discomfort(line: &DiscomfortLine, today: NaiveDate) -> Discomfort {
    let text = Marked::new([dated(line.date, today)], |[date]| say::report::flag(date, &line.text));
    Discomfort { open: line.open, text }
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
