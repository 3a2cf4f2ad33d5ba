//! From what was typed to what is done.

use std::fs;
use std::path::{Path, PathBuf};

use chrono::NaiveDate;
use holdfast_core::companion::{
    Answer as CoreAnswer, CarriedFile, PlatesAsked, Start as CoreStart, Tap, plates as plates_for,
    put_file,
};
use holdfast_core::journal::{Decision, Role};
use holdfast_core::review::{DiscomfortLine, MemberScreen};
use holdfast_core::{Holdfast, Instant, Mass, MassUnit};
use owo_colors::OwoColorize;

use crate::args::{Answer, Args, Command, DecisionArg, Plates, RoleArg, Start, UnitArg};
use crate::carrier::{Exchanged, exchange};
use crate::fault::{Fault, Outcome};
use crate::home;
use crate::now::{evening_of, now, today};
use crate::{demo, hold, print, session};

/// Does what was typed.
pub(crate) fn run(args: Args) -> Outcome {
    // These need no device.
    let (home, command) = match args.command {
        Command::Demo(demo) => return demo::run(&demo.dir, demo.seed),
        Command::Check { plan } => return check(&plan),
        Command::Plates(asked) => return plates(asked),
        Command::Hold(hold) => return hold::run(&hold),
        command => (home::folder(args.home)?, command),
    };
    if let Command::Start(start) = command {
        return begin(&home, start);
    }
    let companion = home::open(&home)?;
    let done = with_device(&companion, command);
    companion.close()?;
    done
}

fn with_device(companion: &Holdfast, command: Command) -> Outcome {
    match command {
        Command::Publish { plan, carrier } => publish(companion, &plan, &carrier),
        Command::Today { on, day, json } => show_day(companion, on, day, json),
        Command::Session(asked) => session::run(companion, asked),
        Command::Exchange { carrier } => {
            if !carrier.exists() {
                let reason = "no such folder: check the spelling, or make it first".into();
                return Err(Fault::File { path: carrier.display().to_string(), reason });
            }
            let exchanged = exchange(companion, &carrier, &now())?;
            print::out(&exchanged_text(companion, &exchanged)?)
        }
        Command::Board { on, json } => {
            let board = companion.board(on.unwrap_or_else(today))?;
            if json { print::json(&board) } else { print::out(&print::board(&board)) }
        }
        Command::Member { name, on, json } => {
            let page = page_of(companion, name, on.unwrap_or_else(today))?;
            if json { print::json(&page) } else { print::out(&print::member(&page)) }
        }
        Command::Answer(given) => answer(companion, given),
        Command::Clear { member, movement } => clear(companion, member, movement),
        Command::Report { out, on } => report(companion, &out, on.unwrap_or_else(today)),
        Command::Export { dir } => export(companion, &dir),
        // Handled before a device was opened.
        Command::Demo(_)
        | Command::Check { .. }
        | Command::Plates(_)
        | Command::Hold(_)
        | Command::Start(_) => Ok(()),
    }
}

fn begin(folder: &Path, start: Start) -> Outcome {
    let mut chance = vec![0; 48];
    getrandom::fill(&mut chance)
        .map_err(|error| Fault::Typed(format!("this system gives no random bytes: {error}")))?;
    let role = match start.role {
        RoleArg::Coach => Role::Coach,
        RoleArg::Athlete => Role::Athlete,
    };
    let unit = match start.unit {
        UnitArg::Kg => MassUnit::Kg,
        UnitArg::Lb => MassUnit::Lb,
    };
    let name = start.name;
    let start = CoreStart { role, name, unit, chance };
    let companion = Holdfast::start(home::text(folder)?, start, now())?;
    let who = companion.who()?;
    companion.close()?;
    let next = match who.role {
        Role::Coach => "publish PLAN.toml --carrier DIR",
        Role::Athlete => "exchange --carrier DIR",
    };
    let folder = folder.display();
    print::out(&format!(
        "{} starts as {} in {folder}\nNext: holdfast --home {folder} {next}\n",
        who.name.bold(),
        who.role.text(),
    ))
}

fn read(path: &Path) -> Outcome<Vec<u8>> {
    fs::read(path).map_err(Fault::file(path))
}

fn check(plan: &Path) -> Outcome {
    let summary = Holdfast::check_plan(plan.display().to_string(), read(plan)?)?;
    print::out(&format!(
        "{}\n{}\nNothing to mend.\n",
        summary.heading.bold(),
        summary.lines.join("\n")
    ))
}

fn plates(given: Plates) -> Outcome {
    let asked = PlatesAsked { loads: given.loads, bar: given.bar, warm_up: given.warm_up };
    let screen = plates_for(&given.kit.display().to_string(), &read(&given.kit)?, &asked)?;
    if given.json { print::json(&screen) } else { print::out(&print::plates(&screen)) }
}

fn publish(companion: &Holdfast, plan: &Path, carrier: &Path) -> Outcome {
    let summary = companion.publish(plan.display().to_string(), read(plan)?, now())?;
    let exchanged = exchange(companion, carrier, &now())?;
    let replaced = if summary.replaced { " (replaces the earlier version)" } else { "" };
    let text = format!("published {}{replaced}\n", summary.heading.bold());
    print::out(&(text + &exchanged_text(companion, &exchanged)?))
}

fn show_day(
    companion: &Holdfast,
    on: Option<NaiveDate>,
    day: Option<String>,
    json: bool,
) -> Outcome {
    let screen = match (on, day) {
        (None, None) => companion.today(now())?,
        (on, day) => {
            let at: Instant = on.map_or_else(now, evening_of);
            companion.preview(at.date(), day, at)?
        }
    };
    if json { print::json(&screen) } else { print::out(&print::sheet(&screen)) }
}

fn exchanged_text(companion: &Holdfast, exchanged: &Exchanged) -> Outcome<String> {
    let report = &exchanged.report;
    let joined = if report.joined {
        format!("joined the crew of {}; ", companion.who()?.coaches.join(" and "))
    } else {
        String::new()
    };
    let fetched = match report.leaves {
        0 => "nothing new to fetch".to_owned(),
        leaves => format!(
            "fetched {} with {} new",
            files(u64::from(leaves)),
            counted(report.entries, "entry", "entries")
        ),
    };
    let mut text = format!("{joined}brought {}, {fetched}\n", files(exchanged.put as u64));
    for file in report.aside.iter().take(SHOWN_ASIDE) {
        text += &format!("{} {}: {}\n", "left alone:".yellow().bold(), file.name, file.reason);
    }
    if report.aside.len() > SHOWN_ASIDE {
        let more = files((report.aside.len() - SHOWN_ASIDE) as u64);
        text += &format!("{} and {more} more\n", "left alone:".yellow().bold());
    }
    Ok(text)
}

/// Files left alone that are named one by one.
const SHOWN_ASIDE: usize = 8;

fn files(count: u64) -> String {
    counted(count, "file", "files")
}

fn counted(count: u64, one: &str, more: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { more })
}

/// Finds a movement on a page by its name or by the key its history is kept under.
fn same(typed: &str, subject: &str, movement: &str) -> bool {
    let typed = typed.trim().to_lowercase();
    typed == subject || typed == movement.to_lowercase()
}

fn answer(companion: &Holdfast, given: Answer) -> Outcome {
    let page = companion.member(given.name.clone(), today())?;
    let named = page.proposals.iter().find(|it| {
        // A piece's name tells two schemes of one movement apart.
        same(&given.movement, &it.subject, &it.movement) || same(&given.movement, "", &it.piece)
    });
    let subject = named.map_or(given.movement.clone(), |proposal| proposal.subject.clone());
    let scheme = named.map_or(String::new(), |proposal| proposal.scheme.clone());
    let read = |text: &String| Mass::parse(text, Some(page.unit));
    let loads: Result<Vec<Mass>, _> = given.load.iter().map(read).collect();
    let loads = loads.map_err(|error| Fault::Typed(format!("--load: {error}")))?;
    let decision = match given.decision {
        DecisionArg::Accept => Decision::Accept,
        DecisionArg::Change => Decision::Change,
        DecisionArg::Refuse => Decision::Refuse,
    };
    let words = given.words;
    let ruling = CoreAnswer {
        person: page.person,
        subject: subject.clone(),
        scheme: scheme.clone(),
        decision,
        loads,
        words,
    };
    companion.answer(ruling, now())?;
    let after = companion.member(page.person.to_string(), today())?;
    let proposal = after.proposals.iter().find(|it| it.subject == subject && it.scheme == scheme);
    let next = proposal.map_or(String::new(), |it| {
        format!("{}: {} -> {}", it.movement, it.last_text, it.next_text)
    });
    print::out(&format!("{}, {next}\nThe next exchange carries it.\n", page.name.bold()))
}

fn clear(companion: &Holdfast, member: Option<String>, movement: Option<String>) -> Outcome {
    let own = companion.who()?.role == Role::Athlete;
    let page = page_of(companion, member, today())?;
    let open = page.discomfort.iter().filter(|line| line.open);
    let meant = |line: &&DiscomfortLine| {
        movement.as_ref().is_none_or(|movement| same(movement, "", &line.movement))
    };
    let mut text = String::new();
    for line in open.filter(meant) {
        if own {
            companion.tap(Tap::ClearFlag { flag: line.flag }, now())?;
        } else {
            companion.clear_flag(page.person, line.flag, now())?;
        }
        text += &format!("cleared: {} {}/10 in {}\n", line.place, line.severity, line.movement);
    }
    if text.is_empty() {
        return Err(Fault::Typed(format!("{} has no such open flag", page.name)));
    }
    print::out(&(text + "The next exchange carries it.\n"))
}

/// A member's page: the one named, or an athlete's own.
fn page_of(companion: &Holdfast, name: Option<String>, on: NaiveDate) -> Outcome<MemberScreen> {
    let who = companion.who()?;
    let name = match (name, who.role) {
        (Some(name), _) => name,
        (None, Role::Athlete) => who.person.to_string(),
        (None, Role::Coach) => return Err(Fault::Typed("say which member".into())),
    };
    Ok(companion.member(name, on)?)
}

fn report(companion: &Holdfast, out: &Path, on: NaiveDate) -> Outcome {
    let html = report_html(companion, on)?;
    fs::write(out, html).map_err(Fault::file(out))?;
    print::out(&format!("wrote {}\n", out.display()))
}

/// The report of a crew.
pub(crate) fn report_html(companion: &Holdfast, on: NaiveDate) -> Outcome<String> {
    let board = companion.board(on)?;
    let mut pages = Vec::new();
    for row in &board.rows {
        pages.push(companion.member(row.person.to_string(), on)?);
    }
    crate::report::html(&board, &pages).map_err(|error| Fault::Typed(error.to_string()))
}

fn export(companion: &Holdfast, dir: &Path) -> Outcome {
    fs::create_dir_all(dir).map_err(Fault::file(dir))?;
    let taken = fs::read_dir(dir).map_err(Fault::file(dir))?.next().is_some();
    if taken {
        let reason = "not empty; name a folder that is not there yet";
        return Err(Fault::File { path: dir.display().to_string(), reason: reason.into() });
    }
    let export = companion.export()?;
    let mut written: Vec<PathBuf> = Vec::new();
    let mut write = |name: String, content: Vec<u8>| -> Outcome {
        put_file(dir, &CarriedFile { name: name.clone(), content })?;
        written.push(dir.join(name));
        Ok(())
    };
    for table in &export.tables {
        let mut sheet = csv::Writer::from_writer(Vec::new());
        let rows = table.rows.iter().map(|row| &row.cells);
        for row in std::iter::once(&table.columns).chain(rows) {
            sheet.write_record(row).map_err(|error| Fault::Typed(error.to_string()))?;
        }
        let content = sheet.into_inner().map_err(|error| Fault::Typed(error.to_string()))?;
        write(format!("{}.csv", table.name), content)?;
    }
    let tables = serde_json::to_vec_pretty(&export.tables)
        .map_err(|error| Fault::Typed(error.to_string()))?;
    write("tables.json".into(), tables)?;
    let mut lines = export.journal.join("\n").into_bytes();
    lines.push(b'\n');
    write("journal.jsonl".into(), lines)?;
    let names: Vec<String> = written.iter().map(|path| format!("  {}\n", path.display())).collect();
    print::out(&format!("wrote\n{}", names.concat()))
}
