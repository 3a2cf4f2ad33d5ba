//! What must hold in the end.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use holdfast_core::exchange::CarriedFile;
use holdfast_core::exchange::sealed::SealedFault;
use rusqlite::Connection;

use super::acts::FOR_NOBODY;
use super::{ANA, BEN, Done, MAREN, NAMES, World};

/// An entry: its device, its number, its digest.
pub(super) type Line = (String, i64, i64);

impl World {
    /// What open devices say.
    pub(super) fn check(&self) -> Done {
        self.everybody_has_the_same()?;
        self.nothing_forged_counts()?;
        self.who_counts_is_who_should()?;
        self.nobody_reads_what_is_not_for_them()
    }

    /// What lies in the homes of devices that are shut.
    pub(super) fn check_homes(&mut self) -> Done {
        for seat in &self.seats {
            let _ = seat.device.holdfast.shut();
        }
        let held: Vec<Held> = self.seats.iter().map(|seat| Held::of(&seat.device.home)).collect();
        self.nothing_is_lost(&held)?;
        self.what_ended_still_counts(&held)?;
        self.threads_are_the_same_on_both_sides(&held)?;
        self.lanes_are_chains_of_one_thread(&held)?;
        self.others_seal_again_only_for_those_who_are_gone()?;
        self.codes_are_gone()
    }

    /// Honest devices of somebody's who is in the crew.
    pub(super) fn honest(&self, who: usize) -> Vec<usize> {
        let stands = |at: &usize| {
            let seat = &self.seats[*at];
            seat.who == who && self.in_crew[who] && !seat.stolen && !seat.ended
        };
        (0..self.seats.len()).filter(stands).collect()
    }

    fn state(&self, at: usize) -> Result<String, String> {
        let state =
            self.seats[at].device.holdfast.state_text().map_err(|error| error.to_string())?;
        let ours = |line: &&str| !self.tolerated.iter().any(|record| line.starts_with(record));
        Ok(state.lines().filter(ours).collect::<Vec<_>>().join("\n"))
    }

    fn everybody_has_the_same(&self) -> Result<(), String> {
        for who in [MAREN, ANA, BEN] {
            let devices = self.honest(who);
            let Some(first) = devices.first() else { continue };
            let state = self.state(*first)?;
            for other in &devices[1..] {
                let others = self.state(*other)?;
                if state != others {
                    let apart = apart(&state, &others);
                    return Err(format!("{} {first} and {other} differ: {apart}", NAMES[who]));
                }
            }
        }
        Ok(())
    }

    fn nothing_forged_counts(&self) -> Result<(), String> {
        for who in [MAREN, ANA, BEN] {
            for at in self.honest(who) {
                let state = self.state(at)?;
                let out = self.while_out.iter().filter(|(who, _)| !self.in_crew[*who]);
                let mut forged = self.forged.iter().chain(out.map(|(_, record)| record));
                if let Some(forged) = forged.find(|record| state.contains(*record)) {
                    return Err(format!("{} {at} counts what was forged: {forged}", NAMES[who]));
                }
            }
        }
        Ok(())
    }

    fn who_counts_is_who_should(&self) -> Result<(), String> {
        for coach in self.honest(MAREN) {
            let crew =
                self.seats[coach].device.holdfast.crew().map_err(|error| error.to_string())?;
            for (who, writer) in self.writers.iter().enumerate() {
                let person = crew.people.iter().find(|person| person.person == writer.person());
                let Some(person) = person else {
                    return Err(format!("{coach} does not know {}", NAMES[who]));
                };
                if person.standing != self.in_crew[who] {
                    return Err(format!("{coach}: {} in crew: {}", NAMES[who], person.standing));
                }
                let known: BTreeMap<String, bool> = person
                    .devices
                    .iter()
                    .map(|device| (device.device.to_string(), device.standing))
                    .collect();
                for seat in self.seats.iter().filter(|seat| seat.who == who) {
                    let id = seat.id.to_string();
                    let should = self.in_crew[who] && !seat.ended;
                    // One that never wrote anything is known to nobody.
                    if known.get(&id).is_some_and(|stands| *stands != should) {
                        return Err(format!(
                            "{coach}: a device of {} stands: {should} it should",
                            NAMES[who]
                        ));
                    }
                }
                if known.len() > self.seats.iter().filter(|seat| seat.who == who).count() {
                    return Err(format!("{coach}: {} has devices that are nobody's", NAMES[who]));
                }
            }
        }
        Ok(())
    }

    /// Neither with a device's keys nor with the paper.
    fn nobody_reads_what_is_not_for_them(&self) -> Result<(), String> {
        let maren = &self.writers[MAREN];
        for (name, content) in self.files.iter() {
            let Some(leaf) = self.opened(name, content) else { continue };
            if leaf.entries.iter().any(|entry| entry.raw.contains(FOR_NOBODY)) {
                return Err(format!("a private note is in {name}"));
            }
        }
        for name in self.sealed_by.keys().filter(|name| !self.injected.contains(*name)) {
            let Some(content) = self.files.get(name) else { continue };
            let Some(leaf) = self.opened(name, content) else { continue };
            let file = CarriedFile { name: name.clone(), content: content.clone() };
            for (who, member) in [(ANA, &self.writers[ANA]), (BEN, &self.writers[BEN])] {
                let others = leaf.header.of != member.person();
                if others && !matches!(member.reads(maren, &file), Err(SealedFault::NotForUs)) {
                    return Err(format!("{} opens {name}", NAMES[who]));
                }
            }
        }
        Ok(())
    }

    /// What an honest device holds of its own is on every honest device that it is for.
    fn nothing_is_lost(&self, held: &[Held]) -> Done {
        for who in [MAREN, ANA, BEN] {
            for at in self.honest(who) {
                let own = self.seats[at].id.0.simple().to_string();
                for (of, name) in NAMES.iter().enumerate() {
                    let thread = self.writers[of].person().0.simple().to_string();
                    let theirs = |line: &&Line| {
                        line.0 == own
                            && !self.enemys.contains(&line.1)
                            && match who {
                                MAREN => {
                                    held[at].heard.contains(&((*line).clone(), thread.clone()))
                                }
                                _ => of == who,
                            }
                    };
                    let lines: Vec<&Line> = held[at].lines.iter().filter(theirs).collect();
                    for reader in self.honest(of).into_iter().chain(self.honest(MAREN)) {
                        let lacks = lines.iter().find(|line| !held[reader].lines.contains(**line));
                        if let Some(lacks) = lacks {
                            return Err(format!(
                                "{} {at} wrote {lacks:?} in {name}'s thread, and {} {reader} lacks it",
                                NAMES[who], NAMES[self.seats[reader].who]
                            ));
                        }
                    }
                }
            }
        }
        Ok(())
    }
}

/// What a home holds.
pub(super) struct Held {
    pub(super) lines: BTreeSet<Line>,
    /// Entries of the coach's, each with a thread that it is in.
    pub(super) heard: BTreeSet<(Line, String)>,
    pub(super) leaves: Vec<Leaf>,
}

/// A leaf as a home has it.
pub(super) struct Leaf {
    pub(super) device: String,
    pub(super) of: String,
    pub(super) content: Vec<u8>,
    pub(super) previous: Vec<u8>,
    pub(super) sequence: i64,
    /// The devices that it has seen something of.
    pub(super) seen: Vec<String>,
}

impl Held {
    pub(super) fn of(home: &Path) -> Held {
        let database = Connection::open(home.join("holdfast.db")).expect("a database");
        let lines = read(&database, "SELECT lower(hex(device)), n, digest, '' FROM entry");
        let heard =
            read(&database, "SELECT lower(hex(device)), n, digest, lower(hex(of)) FROM heard");
        let line = |row: &(Line, String)| row.0.clone();
        let lines = lines.iter().map(line).collect();
        Held { lines, heard: heard.into_iter().collect(), leaves: leaves(&database) }
    }
}

fn leaves(database: &Connection) -> Vec<Leaf> {
    let sql =
        "SELECT lower(hex(device)), lower(hex(of)), content, previous, sequence, header FROM leaf";
    let mut statement = database.prepare(sql).expect("a query");
    let leaf = |row: &rusqlite::Row<'_>| {
        let header: String = row.get(5)?;
        let header: serde_json::Value = serde_json::from_str(&header).expect("a header");
        let seen = header["seen"].as_array().into_iter().flatten();
        let device = |seen: &serde_json::Value| seen[0].as_str().map(|id| id.replace('-', ""));
        Ok(Leaf {
            device: row.get(0)?,
            of: row.get(1)?,
            content: row.get(2)?,
            previous: row.get(3)?,
            sequence: row.get(4)?,
            seen: seen.filter_map(device).collect(),
        })
    };
    let rows = statement.query_map([], leaf).expect("rows");
    rows.collect::<rusqlite::Result<_>>().expect("rows")
}

fn read(database: &Connection, sql: &str) -> Vec<(Line, String)> {
    let mut statement = database.prepare(sql).expect("a query");
    let rows = statement
        .query_map([], |row| Ok(((row.get(0)?, row.get(1)?, row.get(2)?), row.get(3)?)))
        .expect("rows");
    rows.collect::<rusqlite::Result<_>>().expect("rows")
}

/// The lines that only one of two states has.
fn apart(one: &str, other: &str) -> String {
    let (one, other): (BTreeSet<&str>, BTreeSet<&str>) =
        (one.lines().collect(), other.lines().collect());
    let only = |a: &BTreeSet<&str>, b: &BTreeSet<&str>| {
        a.difference(b).take(4).map(|line| (*line).to_owned()).collect::<Vec<_>>()
    };
    format!("only one: {:?}; only the other: {:?}", only(&one, &other), only(&other, &one))
}
