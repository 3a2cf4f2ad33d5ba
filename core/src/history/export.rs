//! Everything this device knows, as plain tables and as the journals' own lines.

use rusqlite::Connection;
use serde::Serialize;

use crate::error::Result;
use crate::id::PersonId;
use crate::journal::{Discomfort, Finish, Held, Lift, OptionTaken, Range, Session, WindowDone};
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
    fn table<T: crate::journal::Kind>(
        &self,
        name: &str,
        columns: &[&str],
        cells: impl Fn(&T) -> Vec<String>,
    ) -> Result<Table> {
        let logged: Vec<Logged<T>> = Query::default().read(self.connection)?;
        let rows = logged.iter().map(|logged| {
            let who = self.names.iter().find(|(person, _)| *person == logged.person);
            let who = who.map_or_else(|| logged.person.to_string(), |(_, name)| name.clone());
            let mut row = vec![who, date_of(logged).to_string()];
            row.extend(cells(&logged.body));
            TableRow { cells: row }
        });
        let columns = ["member", "date"].iter().chain(columns).map(|it| (*it).to_owned());
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
    let tables = vec![
        make.table("sessions", &["day", "block", "week"], |it: &Session| {
            vec![it.day.clone(), it.block.clone(), it.week.to_string()]
        })?,
        make.table("finishes", &["session", "rpe_0_10", "minutes"], |it: &Finish| {
            vec![it.session.to_string(), text(it.rpe), it.minutes.to_string()]
        })?,
        make.table(
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
            ],
            |it: &Lift| {
                let [exact, load] = mass(it.load);
                vec![
                    it.session.to_string(),
                    it.piece.clone(),
                    it.exercise.to_string(),
                    it.scheme.key(),
                    it.set.to_string(),
                    it.target().to_string(),
                    it.reps.to_string(),
                    text(it.reserve),
                    exact,
                    load,
                ]
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
            |it: &WindowDone| {
                let [exact, load] = mass(it.load);
                vec![
                    it.piece.clone(),
                    it.exercise.to_string(),
                    it.window.to_string(),
                    it.asked.to_string(),
                    it.reps.to_string(),
                    text(it.spare_ms),
                    it.margin_ms.to_string(),
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
            |it: &Held| {
                vec![
                    it.piece.clone(),
                    it.stretch.clone(),
                    it.region.clone(),
                    it.side.to_string(),
                    it.technique.text().to_owned(),
                    it.asked_ms.to_string(),
                    it.held_ms.to_string(),
                    it.short.map_or(String::new(), |short| short.text().to_owned()),
                    it.said.clone().unwrap_or_default(),
                ]
            },
        )?,
        make.table(
            "ranges",
            &["piece", "protocol", "when", "side", "tenths", "unit"],
            |it: &Range| {
                vec![
                    it.piece.clone(),
                    it.protocol.text().to_owned(),
                    it.when.text().to_owned(),
                    text(it.side),
                    it.tenths.to_string(),
                    it.protocol.unit().text().to_owned(),
                ]
            },
        )?,
        make.table("options", &["piece", "movement", "option", "because"], |it: &OptionTaken| {
            let because = it.because.map_or("", |because| because.text());
            vec![it.piece.clone(), it.movement.clone(), text(it.option.clone()), because.to_owned()]
        })?,
        make.table("discomfort", &["movement", "place", "severity_1_10"], |it: &Discomfort| {
            vec![it.exercise.to_string(), it.place.text().to_owned(), it.severity.to_string()]
        })?,
    ];
    let journal = journal_lines(connection)?;
    Ok(Export { tables, journal })
}
