//! The demo: a crew of simulated bodies plays three weeks through the same calls a phone makes.
//!
//! Only the bodies are made up (see [`people`]): every load, clock, file and word on the board comes
//! from the core.

mod pairing;
mod people;
mod rules;
mod train;

use std::fs;
use std::path::{Path, PathBuf};

use chrono::NaiveDate;
use holdfast_core::coach::Answer;
use holdfast_core::journal::Role;
use holdfast_core::load::Decision;
use holdfast_core::plan::{Block, Planned, read_plan};
use holdfast_core::{Holdfast, HoldfastError, Instant, MassUnit, Start};
use indicatif::{ProgressBar, ProgressStyle};
use owo_colors::OwoColorize;
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;

use crate::args::Demo;
use crate::carrier::exchange;
use crate::commands::report_html;
use crate::fault::{Fault, Outcome};
use crate::{home, print, say};
use people::{Member, crew};

const PLAN: &str = include_str!("../../demo/plan.toml");
const MARK: &str = "made-by-holdfast-demo";
const COACH: &str = "Maren";

/// Somebody's device in the demo.
struct Seat {
    holdfast: Holdfast,
    member: Option<Member>,
}

/// Plays the demo in a folder.
pub(crate) fn run(asked: &Demo) -> Outcome {
    let Demo { dir, seed, members, weeks } = asked;
    clear_stage(dir)?;
    let text = PLAN.replace("weeks  = 3", &format!("weeks  = {weeks}"));
    let carrier = dir.join("carrier");
    let block = read_plan(text.as_bytes())
        .map_err(|problems| Fault::Typed(say::fault::demo_plan(format!("{problems:?}"))))?;
    let plan = dir.join("plan.toml");
    fs::write(&plan, &text).map_err(Fault::file(&plan))?;
    let mut chance = ChaCha8Rng::seed_from_u64(*seed);
    let days = block.planned_until(block.ends());
    let members = crew(*members as usize);
    let bar = progress(days.len() as u64 * members.len() as u64);

    let sunday = block.starts.pred_opt().unwrap_or(block.starts);
    let coach =
        seat(dir, COACH, Role::Coach, MassUnit::Kg, None, &mut chance, evening(sunday, 18))?;
    coach.holdfast.publish("plan.toml".into(), text.clone().into_bytes(), evening(sunday, 19))?;
    let mut seats = Vec::new();
    for member in members {
        let (name, unit) = (member.name.clone(), member.unit);
        let at = evening(block.starts, 18);
        seats.push(seat(dir, &name, Role::Athlete, unit, Some(member), &mut chance, at)?);
    }
    for (seat, number) in seats.iter().zip(1..) {
        let at = evening(block.starts, 18);
        pairing::pair(&coach.holdfast, &seat.holdfast, (*seed, number), &at)?;
        exchange(&coach.holdfast, &carrier, &at)?;
        exchange(&seat.holdfast, &carrier, &at)?;
    }
    let mut told = Vec::new();
    for planned in &days {
        let mut there = Vec::new();
        let day = heading(&seats, planned)?;
        for seat in &seats {
            bar.inc(1);
            let Some(member) = &seat.member else { continue };
            if member.is_there(planned.date, &block) {
                let at = evening(planned.date, 18);
                bar.set_message(say::demo::training(&member.name, planned.date));
                let done = train::train(&seat.holdfast, member, at, planned.week, &mut chance)?;
                exchange(&seat.holdfast, &carrier, &done)?;
                there.push(member.name.as_str());
            }
        }
        told.push(format!("  {day:<45}{}\n", there.join(say::demo::comma())));
        if planned.date == last_of_week(&block, planned.week) {
            sunday_evening(&coach, &seats, &carrier, &block, planned.week)?;
        }
    }
    bar.finish_and_clear();
    let end = block.ends();
    let board = coach.holdfast.board(end)?;
    let report = dir.join("report.html");
    fs::write(&report, report_html(&coach.holdfast, end)?).map_err(Fault::file(&report))?;
    let files = fs::read_dir(&carrier).map_err(Fault::file(&carrier))?.count();
    for seat in seats.iter().chain([&coach]) {
        seat.holdfast.shut()?;
    }
    print::out(&format!(
        "{}\n{} {} {}\n{}\n{}",
        say::demo::title().bold(),
        say::demo::published(block.weeks, COACH),
        say::demo::carried(seats.len()),
        say::demo::files(files),
        told.concat(),
        print::board(&board)
    ))?;
    print::out(&going_on(dir))
}

/// A planned day with its date and week, as its session is headed.
fn heading(seats: &[Seat], planned: &Planned) -> Outcome<String> {
    let Some(seat) = seats.first() else { return Ok(planned.day.clone()) };
    let at = evening(planned.date, 17);
    Ok(seat.holdfast.preview(planned.date, Some(planned.day.clone()), at)?.heading)
}

/// Makes the folder ready: an earlier demo's files go, anything else stays and is an error.
fn clear_stage(dir: &Path) -> Outcome {
    let mark = dir.join(MARK);
    let used = dir.exists() && fs::read_dir(dir).map_err(Fault::file(dir))?.next().is_some();
    if used && !mark.exists() {
        return Err(Fault::at(dir, say::fault::demo_not_empty()));
    }
    if used {
        fs::remove_dir_all(dir).map_err(Fault::file(dir))?;
    }
    fs::create_dir_all(dir).map_err(Fault::file(dir))?;
    fs::write(&mark, format!("{}\n", say::demo::mark())).map_err(Fault::file(&mark))
}

fn progress(steps: u64) -> ProgressBar {
    // Drawn on standard error, and only on a terminal.
    let style = ProgressStyle::with_template("{bar:30} {pos}/{len} {msg}");
    let bar = ProgressBar::new(steps);
    bar.with_style(style.unwrap_or_else(|_| ProgressStyle::default_bar()))
}

fn seat(
    dir: &Path,
    name: &str,
    role: Role,
    unit: MassUnit,
    member: Option<Member>,
    chance: &mut ChaCha8Rng,
    at: Instant,
) -> Outcome<Seat> {
    // Drawn apart, so that what a device needs to be one changes nobody's story.
    let mut seed = [0; 48];
    chance.fill_bytes(&mut seed);
    let mut drawn = [0; 32];
    drawn.copy_from_slice(&seed[..32]);
    let mut bytes = vec![0; 80];
    ChaCha8Rng::from_seed(drawn).fill_bytes(&mut bytes);
    let folder = home::text(&device_dir(dir, name))?;
    let start = Start { role, name: name.into(), unit, chance: bytes };
    Ok(Seat { holdfast: Holdfast::start(folder, start, at, None)?, member })
}

/// A folder name anybody can type.
fn device_dir(dir: &Path, name: &str) -> PathBuf {
    let plain: String = name.to_lowercase().replace('ø', "o").replace(' ', "-");
    dir.join("devices").join(plain)
}

/// An hour of an evening in the demo's zone, an hour east of UTC.
fn evening(date: NaiveDate, hour: u32) -> Instant {
    let wall = date.and_hms_opt(hour, 0, 0).unwrap_or_default().and_utc().timestamp_millis();
    let wall_ms = wall - 3_600_000;
    Instant { wall_ms, offset_min: 60, boot_ms: wall_ms, boot_id: "demo".into() }
}

fn last_of_week(block: &Block, week: u32) -> NaiveDate {
    let days = block.planned_until(block.ends());
    days.iter().rfind(|day| day.week == week).map_or(block.ends(), |day| day.date)
}

/// The coach fetches, answers what needs an answer, and the members fetch the answers.
fn sunday_evening(
    coach: &Seat,
    seats: &[Seat],
    carrier: &Path,
    block: &Block,
    week: u32,
) -> Outcome {
    let sunday = block.starts + chrono::Days::new(u64::from(week) * 7 - 1);
    exchange(&coach.holdfast, carrier, &evening(sunday, 20))?;
    if week < block.weeks {
        let board = coach.holdfast.board(sunday)?;
        for (person, proposal, change) in rules::answers(&board) {
            let answer = |decision, loads| Answer {
                person,
                exercise: proposal.exercise.clone(),
                track: proposal.track.clone(),
                decision,
                loads,
                words: rules::WORDS.into(),
                anyway: false,
            };
            let at = evening(sunday, 20);
            match coach.holdfast.answer(answer(Decision::Change, change), at.clone()) {
                // The room has no load between: the whole step then.
                Err(HoldfastError::Invalid { .. }) => {
                    coach.holdfast.answer(answer(Decision::Accept, Vec::new()), at)?;
                }
                done => done?,
            }
        }
    }
    exchange(&coach.holdfast, carrier, &evening(sunday, 21))?;
    for seat in seats {
        exchange(&seat.holdfast, carrier, &evening(sunday, 22))?;
    }
    Ok(())
}

fn going_on(dir: &Path) -> String {
    let me = std::env::args().next().unwrap_or_else(|| "holdfast".into());
    let devices = dir.join("devices");
    let (ines, coach, carrier) = (devices.join("ines"), devices.join("maren"), dir.join("carrier"));
    let (ines, coach, carrier) = (ines.display(), coach.display(), carrier.display());
    let left = [
        say::demo::devices(devices.display()),
        say::demo::carrier(&carrier),
        say::demo::report(dir.join("report.html").display()),
        say::demo::plan(dir.join("plan.toml").display()),
    ];
    format!(
        "\n{}\n  {}\n\n{}\n  \
         {me} --home {ines} today --day \"Squat evening\"\n  \
         {me} --home {ines} session --day \"Squat evening\"\n  \
         {me} --home {ines} exchange --carrier {carrier}\n  \
         {me} --home {coach} exchange --carrier {carrier}\n  \
         {me} --home {coach} board\n  \
         {me} --home {coach} member Ines\n  \
         {me} --home {coach} answer Ines \"Back squat\" accept\n",
        say::demo::left_behind().bold(),
        left.join("\n  "),
        say::demo::to_go_on().bold(),
    )
}
