//! Everything this device knows, as plain tables and as the journals' own lines.

use rusqlite::Connection;
use serde::Serialize;

use super::set_aside;
use crate::error::Result;
use crate::id::PersonId;
use crate::journal::{
    Discomfort, Finish, Held, Lift, Max, OptionTaken, Range, Session, WindowDone,
};
use crate::mass::Mass;
use crate::store::{Logged, Query, date_of, journal_lines, people};

/// A table of text cells.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Table {
    /// The table's name.
    pub name: String,
    /// The columns' names; units stand in them.
    pub columns: Vec<String>,
    /// The rows, each with as many cells as there are columns.
    pub rows: Vec<TableRow>,
}

/// A row of a [`Table`].
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct TableRow {
    /// The cells.
    pub cells: Vec<String>,
}

/// Everything a device knows.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Export {
    /// What is logged, as tables.
    pub tables: Vec<Table>,
    /// Every entry's line as it was written, device by device.
    pub journal: Vec<String>,
}

struct Maker<'a> {
    connection: &'a Connection,
    names: Vec<(PersonId, String)>,
}

impl Maker<'_> {
    fn name(&self, person: PersonId) -> String {
        let who = self.names.iter().find(|(known, _)| *known == person);
        who.map_or_else(|| person.to_string(), |(_, name)| name.clone())
    }

    fn table<T: crate::journal::Kind>(
        &self,
        name: &str,
        columns: &[&str],
        cells: impl Fn(&T) -> Vec<String>,
    ) -> Result<Table> {
        self.table_of(name, columns, |logged: &Logged<T>| cells(&logged.body))
    }

    /// The same where a row needs more than what its record says.
    fn table_of<T: crate::journal::Kind>(
        &self,
        name: &str,
        columns: &[&str],
        cells: impl Fn(&Logged<T>) -> Vec<String>,
    ) -> Result<Table> {
        let logged: Vec<Logged<T>> = Query::default().read(self.connection)?;
        let rows = logged.iter().map(|logged| {
            let mut row = vec![self.name(logged.person), date_of(logged).to_string()];
            row.extend(cells(logged));
            TableRow { cells: row }
        });
        let columns = ["member", "date"].iter().chain(columns).map(|found| (*found).to_owned());
        Ok(Table { name: name.to_owned(), columns: columns.collect(), rows: rows.collect() })
    }
}

fn text<T: ToString>(value: Option<T>) -> String {
    value.map_or(String::new(), |value| value.to_string())
}

fn mass(load: Option<Mass>) -> [String; 2] {
    // The exact integer, and the same for people.
    [text(load.map(|load| load.ten_ng)), text(load)]
}

/// Makes the export.
pub(crate) fn export(connection: &Connection) -> Result<Export> {
    let people = people(connection)?;
    let names = people.into_iter().map(|(person, (_, profile))| (person, profile.name)).collect();
    let make = Maker { connection, names };
    let aside = set_aside(connection)?;
    let tables = vec![
        make.table("sessions", &["day", "block", "week"], |session: &Session| {
            vec![session.day.clone(), session.block.clone(), session.week.to_string()]
        })?,
        make.table("finishes", &["session", "rpe_0_10", "minutes"], |finish: &Finish| {
            vec![finish.session.to_string(), text(finish.rpe), finish.minutes.to_string()]
        })?,
        make.table_of(
            "sets",
            &[
                "session",
                "piece",
                "movement",
                "scheme",
                "set",
                "asked",
                "reps",
                "reserve",
                "load_10ng",
                "load",
                "bar",
                "may_be_slip",
                "left_out",
            ],
            |logged: &Logged<Lift>| {
                let lift = &logged.body;
                let [exact, load] = mass(lift.load);
                vec![
                    lift.session.to_string(),
                    lift.piece.clone(),
                    lift.exercise.to_string(),
                    lift.scheme.key(),
                    lift.set.to_string(),
                    lift.target().to_string(),
                    lift.reps.to_string(),
                    text(lift.reserve),
                    exact,
                    load,
                    text(lift.bar.as_ref()),
                    lift.doubt.to_string(),
                    aside.contains(&logged.record).to_string(),
                ]
            },
        )?,
        // The member is who wrote it: an athlete who tested, or a coach.
        make.table(
            "maxes",
            &["athlete", "movement", "tested", "load_10ng", "load"],
            |max: &Max| {
                let [exact, load] = mass(Some(max.load));
                let (athlete, tested) = (make.name(max.person), max.tested.to_string());
                vec![athlete, max.exercise.to_string(), tested, exact, load]
            },
        )?,
        make.table(
            "windows",
            &[
                "piece",
                "movement",
                "window",
                "asked",
                "reps",
                "spare_ms",
                "margin_ms",
                "load_10ng",
                "load",
            ],
            |done: &WindowDone| {
                let [exact, load] = mass(done.load);
                vec![
                    done.piece.clone(),
                    done.exercise.to_string(),
                    done.window.to_string(),
                    done.asked.to_string(),
                    done.reps.to_string(),
                    text(done.spare_ms),
                    done.margin_ms.to_string(),
                    exact,
                    load,
                ]
            },
        )?,
        make.table(
            "holds",
            &[
                "piece",
                "stretch",
                "region",
                "side",
                "technique",
                "asked_ms",
                "held_ms",
                "short",
                "said",
            ],
            |held: &Held| {
                vec![
                    held.piece.clone(),
                    held.stretch.clone(),
                    held.region.clone(),
                    held.side.to_string(),
                    held.technique.text().to_owned(),
                    held.asked_ms.to_string(),
                    held.held_ms.to_string(),
                    held.short.map_or(String::new(), |short| short.text().to_owned()),
                    held.said.clone().unwrap_or_default(),
                ]
            },
        )?,
        make.table(
            "ranges",
            &["piece", "protocol", "when", "side", "tenths", "unit"],
            |range: &Range| {
                vec![
                    range.piece.clone(),
                    range.protocol.text().to_owned(),
                    range.when.text().to_owned(),
                    text(range.side),
                    range.tenths.to_string(),
                    range.protocol.unit().text().to_owned(),
                ]
            },
        )?,
        make.table(
            "options",
            &["piece", "movement", "option", "because"],
            |taken: &OptionTaken| {
                let because = taken.because.map_or("", |because| because.text());
                vec![
                    taken.piece.clone(),
                    taken.movement.clone(),
                    text(taken.option.clone()),
                    because.to_owned(),
                ]
            },
        )?,
        make.table(
            "discomfort",
            &["movement", "place", "severity_1_10"],
            |discomfort: &Discomfort| {
                vec![
                    text(discomfort.exercise.as_ref()),
                    discomfort.place.text().to_owned(),
                    discomfort.severity.to_string(),
                ]
            },
        )?,
    ];
    let journal = journal_lines(connection)?;
    Ok(Export { tables, journal })
}
