//! From what was typed to what is done.

use std::fs::{self, File};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::time::Duration;

use chrono::NaiveDate;
use holdfast_core::coach::{DiscomfortLine, MemberScreen};
use holdfast_core::exchange::CarriedFile;
use holdfast_core::journal::Role;
use holdfast_core::session::{PlatesAsked, Tap};
use holdfast_core::{
    Holdfast, HoldfastError, Instant, KeptAside, Language, MassUnit, Start as CoreStart,
    check_plan, plates as plates_for, put_file,
};
use owo_colors::OwoColorize;

use crate::args::{Args, Command, LanguageArg, Plates, RoleArg, Start, UnitArg};
use crate::carrier::{exchanged_text, taken_along};
use crate::fault::{Fault, Outcome};
use crate::home;
use crate::now::{evening_of, now, today};
use crate::{
    answer, carriers, crew, demo, flag, hold, note, pair, print, say, session, sets, watch,
};

/// Does what was typed.
pub(crate) fn run(args: Args) -> Outcome {
    let language_asked = args.lang.is_some_and(|named| !named.is_empty());
    // These need no device; a check asks one that is there.
    let (home, command) = match args.command {
        Command::Demo(demo) => return demo::run(&demo),
        Command::Check { plan, strict } => {
            return check(args.home, language_asked, &plan, strict);
        }
        Command::Plates(asked) => return plates(asked),
        Command::Hold(hold) => return hold::run(&hold),
        Command::Restore(asked) => return crew::restore(&home::folder(args.home)?, &asked),
        Command::Carrier { what } => return carriers::run(&home::folder(args.home)?, what),
        // Holds the device only while it exchanges.
        Command::Exchange { carrier, watch: true, every } => {
            let home = home::folder(args.home)?;
            must_be_there(&home, &carrier)?;
            return watch::run(&home, &carrier, Duration::from_secs(every), language_asked);
        }
        command => (home::folder(args.home)?, command),
    };
    if let Command::Start(start) = command {
        return begin(&home, start);
    }
    let (holdfast, told) = home::open(&home, language_asked)?;
    // These say so themselves, or say it in another language now.
    let says_so = matches!(command, Command::Verify | Command::Language { .. });
    let done = with_device(&home, &holdfast, command);
    if !says_so && done.is_ok() {
        home::tell_repaired(&holdfast, told)?;
    }
    holdfast.shut()?;
    done
}

/// Refuses a carrier that is neither kept under a name nor a folder.
fn must_be_there(home: &Path, carrier: &Path) -> Outcome {
    if carrier.exists() || carriers::is_kept(home, carrier)? {
        return Ok(());
    }
    Err(carriers::missing(home, carrier))
}

fn with_device(home: &Path, holdfast: &Holdfast, command: Command) -> Outcome {
    match command {
        Command::Publish { plan, carrier } => publish(home, holdfast, &plan, &carrier),
        Command::Today { on, day, json } => show_day(holdfast, on, day, json),
        Command::Invite(typed) => pair::invite(home, holdfast, typed),
        Command::Join(typed) => pair::join(home, holdfast, typed),
        Command::Crew { json } => crew::show(holdfast, json),
        Command::TakeOut { name, device } => crew::take_out(holdfast, name, device),
        Command::Forget(asked) => crew::forget(home, holdfast, &asked),
        Command::StopDevice { device } => crew::stop(holdfast, device),
        Command::Recovery(asked) => crew::recovery(holdfast, &asked),
        Command::Session(asked) => session::run(holdfast, asked),
        Command::Exchange { carrier, .. } => {
            must_be_there(home, &carrier)?;
            let exchanged = carriers::exchange_with(home, holdfast, &carrier)?;
            print::out(&exchanged_text(&exchanged))
        }
        Command::TakeAlong { from } => print::out(&taken_along(holdfast, &from)?),
        Command::Board { on, json } => {
            let board = holdfast.board(on.unwrap_or_else(today))?;
            if json { print::json(&board) } else { print::out(&print::board(&board)) }
        }
        Command::Member { name, on, json } => {
            let date = on.unwrap_or_else(today);
            let page = page_of(holdfast, name, date)?;
            if json { print::json(&page) } else { print::out(&print::member(&page, date)) }
        }
        Command::Answer(given) => answer::run(holdfast, given),
        Command::Sets(asked) => sets::sets(holdfast, asked),
        Command::Correct(typed) => sets::correct(holdfast, typed),
        Command::LeaveOut(typed) => sets::leave_out(holdfast, typed),
        Command::Max(typed) => sets::one_rep_max(holdfast, typed),
        Command::Note(typed) => note::run(holdfast, typed),
        Command::Flag(given) => flag::run(holdfast, given),
        Command::Clear { member, movement } => clear(holdfast, member, movement),
        Command::Report { out, on } => report(holdfast, &out, on.unwrap_or_else(today)),
        Command::Export { dir } => export(holdfast, &dir),
        Command::Verify => verify(holdfast),
        Command::Aside { name } => aside(holdfast, name),
        Command::Language { choice } => choose_language(holdfast, choice),
        // Handled before a device was opened.
        Command::Demo(_)
        | Command::Check { .. }
        | Command::Plates(_)
        | Command::Hold(_)
        | Command::Carrier { .. }
        | Command::Restore(_)
        | Command::Start(_) => Ok(()),
    }
}

/// Keeps the language that somebody chose, and says so in it.
fn choose_language(holdfast: &Holdfast, choice: LanguageArg) -> Outcome {
    let chosen = match choice {
        LanguageArg::En => Some(Language::En),
        LanguageArg::De => Some(Language::De),
        LanguageArg::System => None,
    };
    holdfast.choose_language(chosen, now())?;
    match chosen {
        Some(language) => {
            catalogue::speak(language);
            print::out(&format!("{}\n", say::command::language_chosen()))
        }
        None => print::out(&format!("{}\n", say::command::language_of_system())),
    }
}

fn begin(folder: &Path, start: Start) -> Outcome {
    let mut chance = vec![0; 80];
    getrandom::fill(&mut chance).map_err(|error| Fault::Typed(say::fault::no_randomness(error)))?;
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
    let holdfast = Holdfast::start(home::text(folder)?, start, now(), None)?;
    let who = holdfast.who()?;
    holdfast.shut()?;
    let (name, folder) = (who.name.bold(), folder.display());
    let (started, next) = match who.role {
        Role::Coach => {
            let (publish, invite) =
                (say::command::next_for_coach(&folder), say::command::then_invite(&folder));
            (say::command::started_as_coach(&folder, name), format!("{publish}\n{invite}"))
        }
        Role::Athlete => (
            say::command::started_as_athlete(&folder, name),
            say::command::next_for_athlete(&folder),
        ),
    };
    print::out(&format!("{started}\n{next}\n"))
}

fn read(path: &Path) -> Outcome<Vec<u8>> {
    fs::read(path).map_err(Fault::file(path))
}

fn check(home: Option<PathBuf>, language_asked: bool, plan: &Path, strict: bool) -> Outcome {
    let source_name = plan.display().to_string();
    let text = read(plan)?;
    let summary = match home::open_if_there(home, language_asked) {
        Some((holdfast, told)) => {
            let checked = holdfast.check_plan(source_name.clone(), text, today());
            home::tell_repaired(&holdfast, told)?;
            holdfast.shut()?;
            checked?
        }
        None => check_plan(source_name.clone(), text, Some(today()))?,
    };
    if strict && !summary.notes.is_empty() {
        let problems = summary.notes;
        return Err(HoldfastError::Plan { source_name, problems }.into());
    }
    let heading = summary.heading.bold();
    print::out(&format!("{heading}\n{}\n", summary.lines.join("\n")))?;
    print::out(&print::notes(&source_name, &summary.notes))?;
    let end = match summary.notes.len() {
        0 => say::command::no_problems().to_owned(),
        notes => say::command::no_problems_but_notes(notes),
    };
    print::out(&format!("{end}\n"))
}

fn plates(given: Plates) -> Outcome {
    let asked = PlatesAsked {
        loads: given.loads,
        bar: given.bar,
        warm_up: given.warm_up,
        from_floor: given.from_floor,
    };
    let screen = plates_for(&given.kit.display().to_string(), &read(&given.kit)?, &asked)?;
    if given.json { print::json(&screen) } else { print::out(&print::plates(&screen)) }
}

fn publish(home: &Path, holdfast: &Holdfast, plan: &Path, carrier: &Path) -> Outcome {
    let source_name = plan.display().to_string();
    let summary = holdfast.publish(source_name.clone(), read(plan)?, now())?;
    print::out(&print::notes(&source_name, &summary.notes))?;
    let plan = summary.heading.bold();
    let published = if summary.replaced {
        say::command::published_again(plan)
    } else {
        say::command::published(plan)
    };
    // Said before it is delivered: without a connection it is published all the same, and the next exchange brings it.
    print::out(&format!("{published}\n"))?;
    print::out(&exchanged_text(&carriers::exchange_with(home, holdfast, carrier)?))
}

fn show_day(
    holdfast: &Holdfast,
    on: Option<NaiveDate>,
    day: Option<String>,
    json: bool,
) -> Outcome {
    let screen = match (on, day) {
        (None, None) => holdfast.today(now())?,
        (on, day) => {
            let at: Instant = on.map_or_else(now, evening_of);
            holdfast.preview(at.date(), day, at)?
        }
    };
    if json { print::json(&screen) } else { print::out(&print::sheet(&screen)) }
}

/// True for a movement of that name, in whatever case it was typed.
fn is_called(movement: &str, typed: &str) -> bool {
    typed.trim().to_lowercase() == movement.to_lowercase()
}

fn clear(holdfast: &Holdfast, member: Option<String>, movement: Option<String>) -> Outcome {
    let own = holdfast.who()?.role == Role::Athlete;
    let page = page_of(holdfast, member, today())?;
    let open = page.discomfort.iter().filter(|line| line.open);
    let meant = |line: &&DiscomfortLine| {
        movement
            .as_ref()
            .is_none_or(|typed| line.movement.as_ref().is_some_and(|of| is_called(of, typed)))
    };
    let mut text = String::new();
    for line in open.filter(meant) {
        if own {
            holdfast.tap(Tap::ClearFlags { flags: vec![line.flag] }, None, now())?;
        } else {
            holdfast.clear_flag(page.person, line.flag, now())?;
        }
        text += &say::command::cleared(&line.text);
        text.push('\n');
    }
    if text.is_empty() {
        let none = match movement {
            Some(movement) => say::fault::no_flag_for(page.name, movement),
            None => say::fault::no_such_flag(page.name),
        };
        return Err(Fault::Typed(none));
    }
    print::out(&format!("{text}{}\n", print::where_it_goes(holdfast)?))
}

/// Writes a file as a whole or not at all: what lay there before stays until the new one is complete.
/// What is no plain file, such as a pipe, is written to as it comes.
fn write_whole(path: &Path, bytes: &[u8]) -> Outcome {
    if path.exists() && !path.is_file() {
        return fs::write(path, bytes).map_err(Fault::file(path));
    }
    let mut name = path.as_os_str().to_owned();
    name.push(".tmp");
    let temporary = PathBuf::from(name);
    let written = File::create(&temporary).and_then(|mut file| {
        file.write_all(bytes)?;
        file.sync_all()?;
        fs::rename(&temporary, path)
    });
    written.map_err(|error| {
        let _ = fs::remove_file(&temporary);
        Fault::file(path)(error)
    })
}

/// Looks at everything there is in the home.
fn verify(holdfast: &Holdfast) -> Outcome {
    let found = holdfast.verify()?;
    let all = say::command::verified(found.entries, found.leaves);
    let mut text: String = found.repaired.iter().map(|repaired| format!("{repaired}\n")).collect();
    if found.trouble.is_empty() {
        text += &format!("{all}\n");
        let sent = (found.chains > 0).then(|| say::command::seals(found.signed, found.chains));
        text.extend(sent.map(|sent| format!("{sent}\n")));
        let shut = (found.unopened > 0).then(|| say::command::unopened(found.unopened));
        text.extend(shut.map(|shut| format!("{shut}\n")));
    } else {
        text += &format!("{}\n", say::command::not_all_well());
    }
    for trouble in &found.trouble {
        text += &format!("  {trouble}\n");
    }
    print::out(&text)
}

/// Lists damaged databases that were kept, or prints what only the one named has.
fn aside(holdfast: &Holdfast, name: Option<String>) -> Outcome {
    let kept = holdfast.aside()?;
    let Some(name) = name else {
        let line = |kept: &KeptAside| say::command::kept(&kept.name, kept.entries, kept.only_here);
        let lines: Vec<String> = kept.iter().map(line).collect();
        let none = say::command::nothing_kept().to_owned();
        let text = if lines.is_empty() { none } else { lines.join("\n") };
        return print::out(&format!("{text}\n"));
    };
    match kept.into_iter().find(|kept| kept.name == name) {
        Some(kept) => {
            print::out(&kept.lines.iter().map(|line| format!("{line}\n")).collect::<String>())
        }
        None => Err(Fault::Typed(say::fault::nothing_kept_by_name(name))),
    }
}

/// A member's page: the one named, or an athlete's own.
fn page_of(holdfast: &Holdfast, name: Option<String>, on: NaiveDate) -> Outcome<MemberScreen> {
    let who = holdfast.who()?;
    let name = match (name, who.role) {
        (Some(name), _) => name,
        (None, Role::Athlete) => who.person.to_string(),
        (None, Role::Coach) => return Err(Fault::Typed(say::fault::name_a_member().into())),
    };
    Ok(holdfast.member(name, on)?)
}

fn report(holdfast: &Holdfast, out: &Path, on: NaiveDate) -> Outcome {
    let html = report_html(holdfast, on)?;
    write_whole(out, html.as_bytes())?;
    print::out(&format!("{}\n", say::command::wrote(out.display())))
}

/// The report of a crew.
pub(crate) fn report_html(holdfast: &Holdfast, on: NaiveDate) -> Outcome<String> {
    let board = holdfast.board(on)?;
    let mut pages = Vec::new();
    for row in &board.rows {
        pages.push(holdfast.member(row.person.to_string(), on)?);
    }
    crate::report::html(&board, &pages).map_err(|error| Fault::Typed(error.to_string()))
}

fn export(holdfast: &Holdfast, dir: &Path) -> Outcome {
    fs::create_dir_all(dir).map_err(Fault::file(dir))?;
    let taken = fs::read_dir(dir).map_err(Fault::file(dir))?.next().is_some();
    if taken {
        return Err(Fault::at(dir, say::fault::export_not_empty()));
    }
    let export = holdfast.export()?;
    let mut written: Vec<PathBuf> = Vec::new();
    let mut write = |name: String, content: Vec<u8>| -> Outcome {
        put_file(dir, &CarriedFile { name: name.clone(), content })?;
        written.push(dir.join(name));
        Ok(())
    };
    for table in export.tables.iter().chain(&export.private) {
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
    print::out(&format!("{}\n{}", say::command::wrote_files(), names.concat()))
}
