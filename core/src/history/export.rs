//! Everything this device knows, as plain tables and as the journals' own lines.

use std::collections::BTreeSet;

use rusqlite::Connection;
use serde::Serialize;

use super::{flags, set_aside};
use crate::error::Result;
use crate::id::PersonId;
use crate::instant::Instant;
use crate::journal::{
    Discomfort, Finish, Held, Lift, Max, Note, OptionTaken, Range, Session, WindowDone,
};
use crate::mass::Mass;
use crate::store::{Logged, PrivateNote, Query, date_of, journal_lines, people, private_notes};

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
    /// The athlete's notes for nobody else, apart from all that may be handed on; none where there is none.
    pub private: Option<Table>,
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

const SET_COLUMNS: &[&str] = &[
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
    "track",
    "easy_week",
    // What was proposed for it when the piece was begun, and when it was logged.
    "proposed_10ng",
    "proposed",
    "planned_10ng",
    "planned",
    "training_max_10ng",
    "training_max",
    // The athlete gave the reps, or a key said "as planned"; empty where the entry does not say.
    "counted",
];

fn set_cells(lift: &Lift, left_out: bool) -> Vec<String> {
    let [exact, load] = mass(lift.load);
    let [proposed_exact, proposed] = mass(lift.was_proposed().and_then(|set| set.load));
    let [planned_exact, planned] = mass(lift.planned);
    let [max_exact, max] = mass(lift.max);
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
        left_out.to_string(),
        lift.track().to_owned(),
        lift.easy.to_string(),
        proposed_exact,
        proposed,
        planned_exact,
        planned,
        max_exact,
        max,
        text(lift.counted),
    ]
}

const FLAG_COLUMNS: &[&str] = &["movement", "place", "severity_1_10", "piece", "signs", "cleared"];

fn flag_cells(flag: &Discomfort, cleared: bool) -> Vec<String> {
    let signs: Vec<&str> = flag.signs.iter().map(|sign| sign.text()).collect();
    vec![
        text(flag.exercise.as_ref()),
        flag.place.text().to_owned(),
        flag.severity.to_string(),
        text(flag.piece.as_ref()),
        signs.join(" "),
        cleared.to_string(),
    ]
}

/// Makes the export.
pub(crate) fn export(connection: &Connection) -> Result<Export> {
    let people = people(connection)?;
    let names = people.into_iter().map(|(person, (_, profile))| (person, profile.name)).collect();
    let make = Maker { connection, names };
    let aside = set_aside(connection)?;
    let mut cleared = BTreeSet::new();
    for (person, _) in &make.names {
        let flags = flags(connection, *person)?;
        cleared.extend(flags.cleared.iter().map(|(flag, _)| flag.record));
    }
    let tables = vec![
        make.table("sessions", &["day", "block", "week"], |session: &Session| {
            vec![session.day.clone(), session.block.clone(), session.week.to_string()]
        })?,
        make.table("finishes", &["session", "rpe_0_10", "minutes"], |finish: &Finish| {
            vec![finish.session.to_string(), text(finish.rpe), finish.minutes.to_string()]
        })?,
        make.table_of("sets", SET_COLUMNS, |logged: &Logged<Lift>| {
            set_cells(&logged.body, aside.contains(&logged.record))
        })?,
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
        // The member is who wrote it.
        make.table("notes", NOTE_COLUMNS, |note: &Note| {
            let mut cells = vec![make.name(note.person)];
            cells.extend(note_cells(note));
            cells
        })?,
        make.table_of("discomfort", FLAG_COLUMNS, |logged: &Logged<Discomfort>| {
            flag_cells(&logged.body, cleared.contains(&logged.record))
        })?,
    ];
    let journal = journal_lines(connection)?;
    Ok(Export { tables, private: private_table(connection)?, journal })
}

const NOTE_COLUMNS: &[&str] = &["athlete", "session", "about", "piece", "movement", "words"];

fn note_cells(note: &Note) -> [String; 5] {
    let (about, piece) = (text(note.about), text(note.piece.as_ref()));
    [note.session.to_string(), about, piece, text(note.exercise.as_ref()), note.words.clone()]
}

fn private_table(connection: &Connection) -> Result<Option<Table>> {
    let notes = private_notes(connection, None)?;
    if notes.is_empty() {
        return Ok(None);
    }
    let row = |kept: &PrivateNote| {
        let mut cells = vec![Instant::by_wall(kept.wall_ms, kept.offset_min).date().to_string()];
        cells.extend(note_cells(&kept.note));
        TableRow { cells }
    };
    let columns = ["date"].iter().chain(&NOTE_COLUMNS[1..]).map(|name| (*name).to_owned());
    let (columns, rows) = (columns.collect(), notes.iter().map(row).collect());
    Ok(Some(Table { name: "private_notes".to_owned(), columns, rows }))
}

#[cfg(test)]
mod tests {
    use serde::de::DeserializeOwned;
    use serde_json::{Value, json};

    use super::*;
    use crate::care::{Place, Sign};
    use crate::fixtures;
    use crate::plan::Scheme;

    /// A record with another value in each of its fields in turn, and whether its row then reads otherwise.
    fn told<T: Serialize + DeserializeOwned>(
        of: &T,
        others: &Value,
        cells: impl Fn(&T) -> Vec<String>,
    ) -> Vec<(String, bool)> {
        let (written, before) = (serde_json::to_value(of).unwrap(), cells(of));
        let fields = written.as_object().unwrap().keys();
        let told = fields.map(|field| {
            let mut changed = written.clone();
            changed[field] = others[field].clone();
            let changed: T = serde_json::from_value(changed).unwrap();
            (field.clone(), cells(&changed) != before)
        });
        told.collect()
    }

    fn untold(told: &[(String, bool)]) -> Vec<&str> {
        told.iter().filter(|(_, told)| !told).map(|(field, _)| field.as_str()).collect()
    }

    /// A field that is new in an entry stands in the export too, or here.
    #[test]
    fn whatever_an_entry_says_of_a_set_or_a_flag_has_its_column() {
        let scheme = Scheme { reps: vec![8, 6], open: false };
        let lift = fixtures::lift(scheme, Mass::kg(50), 8);
        let proposed = json!({ "load": Mass::kg(55), "reps": 8, "open": false });
        let others = json!({
            "session": "00000000-0000-4000-8000-000000000000", "piece": "Other", "track": "heavy",
            "exercise": "other", "scheme": { "reps": [8], "open": true }, "easy": true,
            "proposed": [proposed], "max": Mass::kg(90), "set": 2, "planned": Mass::kg(45),
            "load": Mass::kg(40), "reps": 7, "reserve": 1, "counted": true, "doubt": true,
            "bar": "short bar", "side": [Mass::kg(10)], "at": null, "on": "2026-11-03",
        });
        assert_eq!(set_cells(&lift, false).len(), SET_COLUMNS.len());
        // Its date stands in the row already; plates and the clock's reading are in the journal.
        let told_of = told(&lift, &others, |lift| set_cells(lift, false));
        assert_eq!(untold(&told_of), ["at", "on", "side"]);
        let flag = Discomfort {
            session: None,
            piece: None,
            exercise: None,
            place: Place::Knee,
            severity: 3,
            signs: Vec::new(),
            on: None,
        };
        let others = json!({
            "session": lift.session, "piece": "Squat", "exercise": "squat", "place": "hip",
            "severity": 4, "signs": ["dark-urine"], "on": "2026-11-03",
        });
        assert_eq!(flag_cells(&flag, false).len(), FLAG_COLUMNS.len());
        let told_of = told(&flag, &others, |flag| flag_cells(flag, false));
        assert_eq!(untold(&told_of), ["on", "session"]);
        let signs = vec![Sign::DarkUrine, Sign::ChestPain];
        let flag = Discomfort { signs, ..flag };
        assert_eq!(flag_cells(&flag, true)[4..], ["dark-urine chest-pain", "true"]);
    }
}
