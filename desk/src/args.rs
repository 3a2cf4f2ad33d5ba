//! What can be typed after `holdfast`; what it is for says [`crate::help`].

use std::path::PathBuf;

use chrono::NaiveDate;
use clap::{Args as ClapArgs, Parser, Subcommand, ValueEnum};

use crate::carriers;
use crate::crew;
use crate::full::sound::Noise;
use crate::language::VARIABLE;
use crate::note;
use crate::pair::Over;
use crate::sets;

/// Training for a group with no phone signal: plan, train, log, carry, review.
#[derive(Debug, Parser)]
#[command(name = "holdfast", version, max_term_width = 100, arg_required_else_help = true)]
pub(crate) struct Args {
    #[arg(long, global = true, value_name = "DIR", env = "HOLDFAST_HOME")]
    pub(crate) home: Option<PathBuf>,
    // Read before anything else is: see `language`.
    #[arg(long, global = true, value_name = "LANG", env = VARIABLE)]
    pub(crate) lang: Option<String>,
    #[command(subcommand)]
    pub(crate) command: Command,
}

/// One command each.
#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    Demo(Demo),
    Start(Start),
    Check {
        plan: PathBuf,
        #[arg(long)]
        strict: bool,
    },
    Plates(Plates),
    Publish {
        plan: PathBuf,
        #[arg(long, value_name = "DIR")]
        carrier: PathBuf,
    },
    Today {
        #[arg(long, value_name = "DATE")]
        on: Option<NaiveDate>,
        #[arg(long, value_name = "NAME")]
        day: Option<String>,
        #[arg(long)]
        json: bool,
    },
    Invite(Invite),
    Join(Join),
    Crew {
        #[arg(long)]
        json: bool,
    },
    TakeOut {
        name: String,
        #[arg(long, value_name = "N")]
        device: Option<u32>,
    },
    Forget(crew::Forget),
    StopDevice {
        #[arg(value_name = "N")]
        device: u32,
    },
    Recovery(crew::Recovery),
    Restore(crew::Restore),
    Session(Session),
    Hold(Hold),
    Exchange {
        #[arg(long, value_name = "DIR")]
        carrier: PathBuf,
        #[arg(long)]
        watch: bool,
        #[arg(long, value_name = "SECONDS", requires = "watch", default_value_t = 60, hide_default_value = true, value_parser = clap::value_parser!(u64).range(5..=86_400))]
        every: u64,
    },
    TakeAlong {
        #[arg(value_name = "DIR")]
        from: PathBuf,
    },
    Carrier {
        #[command(subcommand)]
        what: carriers::Carriers,
    },
    Board {
        #[arg(long, value_name = "DATE")]
        on: Option<NaiveDate>,
        #[arg(long)]
        json: bool,
    },
    Member {
        name: Option<String>,
        #[arg(long, value_name = "DATE")]
        on: Option<NaiveDate>,
        #[arg(long)]
        json: bool,
    },
    Answer(Answer),
    Sets(sets::Sets),
    Correct(sets::Correct),
    LeaveOut(sets::LeaveOut),
    Max(sets::OneRepMax),
    Note(note::Note),
    Flag(Flag),
    Clear {
        movement: Option<String>,
        #[arg(long, value_name = "NAME")]
        member: Option<String>,
    },
    Report {
        out: PathBuf,
        #[arg(long, value_name = "DATE")]
        on: Option<NaiveDate>,
    },
    Export {
        dir: PathBuf,
    },
    Verify,
    Aside {
        name: Option<String>,
    },
    Language {
        #[arg(value_enum, value_name = "LANG")]
        choice: LanguageArg,
    },
}

/// What somebody can choose to read.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum LanguageArg {
    En,
    De,
    System,
}

/// How a coach takes somebody in.
#[derive(Debug, ClapArgs)]
pub(crate) struct Invite {
    pub(crate) code: Option<String>,
    #[arg(long, value_enum, value_name = "LINE", conflicts_with = "code")]
    pub(crate) line: Option<LineArg>,
    #[arg(long, value_name = "NAME", requires = "line")]
    pub(crate) name: Option<String>,
    #[arg(long, value_name = "FILE")]
    pub(crate) svg: Option<PathBuf>,
    #[arg(long, conflicts_with_all = ["code", "line"])]
    pub(crate) stop: bool,
    #[command(flatten)]
    pub(crate) over: Over,
}

/// The line that a member reads.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum LineArg {
    #[value(name = "1")]
    One,
    #[value(name = "2")]
    Two,
    #[value(name = "3")]
    Three,
    None,
}

/// How a member joins.
#[derive(Debug, ClapArgs)]
pub(crate) struct Join {
    pub(crate) code: Option<String>,
    #[arg(long = "match", conflicts_with_all = ["code", "differ"])]
    pub(crate) matches: bool,
    #[arg(long, conflicts_with = "code")]
    pub(crate) differ: bool,
    #[arg(long, conflicts_with_all = ["code", "differ", "stop"])]
    pub(crate) all: bool,
    #[arg(long, value_name = "FILE")]
    pub(crate) svg: Option<PathBuf>,
    #[arg(long, conflicts_with_all = ["code", "matches", "differ"])]
    pub(crate) stop: bool,
    #[command(flatten)]
    pub(crate) over: Over,
}

/// Where and how the demo plays.
#[derive(Debug, ClapArgs)]
pub(crate) struct Demo {
    #[arg(long, value_name = "DIR", default_value = "holdfast-demo")]
    pub(crate) dir: PathBuf,
    #[arg(long, default_value_t = 1)]
    pub(crate) seed: u64,
    #[arg(long, value_name = "N", default_value_t = 6, value_parser = clap::value_parser!(u32).range(1..=1000))]
    pub(crate) members: u32,
    #[arg(long, value_name = "N", default_value_t = 3, value_parser = clap::value_parser!(u32).range(1..=26))]
    pub(crate) weeks: u32,
}

/// What is not to be heard of cues.
#[derive(Debug, ClapArgs)]
pub(crate) struct Quiet {
    #[arg(long)]
    pub(crate) no_speech: bool,
    #[arg(long)]
    pub(crate) no_bell: bool,
}

impl Quiet {
    /// What may be heard.
    pub(crate) fn noise(&self) -> Noise {
        Noise { bell: !self.no_bell, speech: !self.no_speech }
    }
}

/// How a session is shown.
#[derive(Debug, ClapArgs)]
pub(crate) struct Session {
    #[arg(long, value_name = "DATE")]
    pub(crate) on: Option<NaiveDate>,
    #[arg(long, value_name = "NAME")]
    pub(crate) day: Option<String>,
    #[arg(long)]
    pub(crate) plain: bool,
    #[command(flatten)]
    pub(crate) quiet: Quiet,
}

/// How a stretch is timed.
#[derive(Debug, ClapArgs)]
pub(crate) struct Hold {
    #[arg(allow_negative_numbers = true, value_parser = clap::value_parser!(u32).range(1..=1800))]
    pub(crate) seconds: u32,
    #[arg(long, default_value_t = 1, value_name = "N", allow_negative_numbers = true,
          value_parser = clap::value_parser!(u32).range(1..=i64::from(holdfast_core::clock::MAX_SIDES)))]
    pub(crate) sides: u32,
    #[arg(long, value_name = "SECONDS", requires = "relax", allow_negative_numbers = true,
          value_parser = clap::value_parser!(u32).range(1..=600))]
    pub(crate) contract: Option<u32>,
    #[arg(long, value_name = "SECONDS", requires = "contract", allow_negative_numbers = true,
          value_parser = clap::value_parser!(u32).range(1..=600))]
    pub(crate) relax: Option<u32>,
    #[arg(long, default_value_t = 5, value_name = "SECONDS", allow_negative_numbers = true,
          value_parser = clap::value_parser!(u32).range(0..=600))]
    pub(crate) ready: u32,
    #[arg(long, value_name = "SECONDS", allow_negative_numbers = true,
          value_parser = clap::value_parser!(u32).range(0..=600))]
    pub(crate) switch: Option<u32>,
    #[arg(long)]
    pub(crate) plain: bool,
    #[command(flatten)]
    pub(crate) quiet: Quiet,
}

/// How somebody starts.
#[derive(Debug, ClapArgs)]
pub(crate) struct Start {
    #[arg(long = "as", value_enum, value_name = "ROLE")]
    pub(crate) role: RoleArg,
    #[arg(long)]
    pub(crate) name: String,
    #[arg(long, value_enum, default_value = "kg")]
    pub(crate) unit: UnitArg,
}

/// Plates for loads.
#[derive(Debug, ClapArgs)]
pub(crate) struct Plates {
    #[arg(required = true, value_name = "LOAD")]
    pub(crate) loads: Vec<String>,
    #[arg(long, value_name = "FILE")]
    pub(crate) kit: PathBuf,
    #[arg(long, value_name = "NAME")]
    pub(crate) bar: Option<String>,
    #[arg(long)]
    pub(crate) warm_up: bool,
    #[arg(long, requires = "warm_up")]
    pub(crate) from_floor: bool,
    #[arg(long)]
    pub(crate) json: bool,
}

/// A coach's answer.
#[derive(Debug, ClapArgs)]
pub(crate) struct Answer {
    pub(crate) name: String,
    pub(crate) movement: String,
    #[arg(value_enum)]
    pub(crate) decision: DecisionArg,
    #[arg(long, value_name = "NAME")]
    pub(crate) piece: Option<String>,
    #[arg(long, value_name = "LOAD", allow_hyphen_values = true)]
    pub(crate) load: Vec<String>,
    #[arg(long, default_value = "")]
    pub(crate) words: String,
    #[arg(long)]
    pub(crate) anyway: bool,
}

/// Discomfort between two sessions.
#[derive(Debug, ClapArgs)]
pub(crate) struct Flag {
    #[arg(required = true, value_name = "WHERE")]
    pub(crate) felt: Vec<String>,
    #[arg(long, value_name = "NAME")]
    pub(crate) movement: Option<String>,
    #[arg(long, value_name = "DATE")]
    pub(crate) on: Option<NaiveDate>,
}

/// Coach or athlete.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum RoleArg {
    Coach,
    Athlete,
}

/// Kilograms or pounds.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum UnitArg {
    Kg,
    Lb,
}

/// Accept, change or refuse.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum DecisionArg {
    Accept,
    Change,
    Refuse,
}
