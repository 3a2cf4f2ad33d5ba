//! What can be typed after `holdfast`.

use std::path::PathBuf;

use chrono::NaiveDate;
use clap::{Args as ClapArgs, Parser, Subcommand, ValueEnum};

use crate::full::sound::Noise;

/// Training days for a group without signal: plan, train, log, carry, review.
#[derive(Debug, Parser)]
#[command(name = "holdfast", version, about, max_term_width = 100, arg_required_else_help = true)]
pub(crate) struct Args {
    /// The device's folder; without it, HOLDFAST_HOME, then the system's data folder
    #[arg(long, global = true, value_name = "DIR", env = "HOLDFAST_HOME")]
    pub(crate) home: Option<PathBuf>,
    #[command(subcommand)]
    pub(crate) command: Command,
}

/// One command each.
#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Play a whole crew through three weeks in a folder, and show the coach's board
    Demo(Demo),
    /// Start on this device, as coach or athlete
    Start(Start),
    /// Check a plan without publishing it
    Check {
        /// The plan, a TOML file
        plan: PathBuf,
    },
    /// Work out the plates for loads on one bar; needs no device
    ///
    /// One load gives its build a side. Several give a ramp: the builds in this order with the
    /// fewest plates put on or taken off, where only the outermost plates can come off. The bar
    /// starts empty and the last build stays on. Nothing is rounded: a load that the kit cannot
    /// build is an error that names the nearest it can. In a kit that says `mixed = true`, plates
    /// in kg and in lb go onto one bar.
    Plates(Plates),
    /// Publish a plan (coach)
    Publish {
        /// The plan, a TOML file
        plan: PathBuf,
        /// The folder that carries files between devices
        #[arg(long, value_name = "DIR")]
        carrier: PathBuf,
    },
    /// Show today's session with its loads (athlete)
    Today {
        /// Another date, such as 2026-11-20
        #[arg(long, value_name = "DATE")]
        on: Option<NaiveDate>,
        /// A day of the block by its name
        #[arg(long, value_name = "NAME")]
        day: Option<String>,
        /// The screen as JSON, as a phone would get it
        #[arg(long)]
        json: bool,
    },
    /// Train: log sets, windows, holds and measures, full-screen or line by line (athlete)
    Session(Session),
    /// Time a stretch: needs no plan and no home, writes nothing
    Hold(Hold),
    /// Bring and fetch files through a carrier folder
    Exchange {
        /// The folder that carries files between devices
        #[arg(long, value_name = "DIR")]
        carrier: PathBuf,
    },
    /// Show who needs a look, and why (coach)
    Board {
        /// The date it is made for
        #[arg(long, value_name = "DATE")]
        on: Option<NaiveDate>,
        /// The board as JSON
        #[arg(long)]
        json: bool,
    },
    /// Show a member's page (a coach sees anybody's, an athlete their own)
    Member {
        /// The member's name; an athlete's own page without it
        name: Option<String>,
        /// The date it is made for
        #[arg(long, value_name = "DATE")]
        on: Option<NaiveDate>,
        /// The page as JSON
        #[arg(long)]
        json: bool,
    },
    /// Answer a proposed load (coach); the next exchange carries it
    Answer(Answer),
    /// Clear discomfort flags: an athlete their own, a coach a member's after talking with them
    Clear {
        /// The member's name (coach)
        #[arg(long, value_name = "NAME")]
        member: Option<String>,
        /// The movement, as the page names it; all open flags without it
        movement: Option<String>,
    },
    /// Write the board and every member's page as one HTML file (coach)
    Report {
        /// The file to write
        out: PathBuf,
        /// The date it is made for
        #[arg(long, value_name = "DATE")]
        on: Option<NaiveDate>,
    },
    /// Write everything this device knows as CSV, JSON and journal lines
    Export {
        /// The folder to write into; it must be empty or not there yet
        dir: PathBuf,
    },
}

/// Where and how the demo plays.
#[derive(Debug, ClapArgs)]
pub(crate) struct Demo {
    /// The folder to play in; an earlier demo there is played over
    #[arg(long, value_name = "DIR", default_value = "holdfast-demo")]
    pub(crate) dir: PathBuf,
    /// What chance starts from: the same seed plays the same demo, byte for byte
    #[arg(long, default_value_t = 1)]
    pub(crate) seed: u64,
}

/// What is not to be heard of cues.
#[derive(Debug, ClapArgs)]
pub(crate) struct Quiet {
    /// Cues are not spoken
    #[arg(long)]
    pub(crate) no_speech: bool,
    /// Cues do not ring the terminal's bell
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
    /// A day of the block by its name, instead of the one planned today
    #[arg(long, value_name = "NAME")]
    pub(crate) day: Option<String>,
    /// Line by line, as through a pipe
    #[arg(long)]
    pub(crate) plain: bool,
    #[command(flatten)]
    pub(crate) quiet: Quiet,
}

/// How a stretch is timed.
#[derive(Debug, ClapArgs)]
pub(crate) struct Hold {
    /// Seconds each side is held, 1 to 1800
    #[arg(allow_negative_numbers = true, value_parser = clap::value_parser!(u32).range(1..=1800))]
    pub(crate) seconds: u32,
    /// Sides, 1 to 64
    #[arg(long, default_value_t = 1, value_name = "N", allow_negative_numbers = true,
          value_parser = clap::value_parser!(u32).range(1..=i64::from(holdfast_core::clock::MAX_SIDES)))]
    pub(crate) sides: u32,
    /// Seconds of each contraction, each side starting with one
    #[arg(long, value_name = "SECONDS", requires = "relax", allow_negative_numbers = true,
          value_parser = clap::value_parser!(u32).range(1..=600))]
    pub(crate) contract: Option<u32>,
    /// Seconds of each release after a contraction
    #[arg(long, value_name = "SECONDS", requires = "contract", allow_negative_numbers = true,
          value_parser = clap::value_parser!(u32).range(1..=600))]
    pub(crate) relax: Option<u32>,
    /// Seconds to get ready before the first side, 0 to 600
    #[arg(long, default_value_t = 5, value_name = "SECONDS", allow_negative_numbers = true,
          value_parser = clap::value_parser!(u32).range(0..=600))]
    pub(crate) ready: u32,
    /// Seconds to change over to the next side, 0 to 600 and no longer than the hold; when left out 10,
    /// or the hold where that is shorter
    #[arg(long, value_name = "SECONDS", allow_negative_numbers = true,
          value_parser = clap::value_parser!(u32).range(0..=600))]
    pub(crate) switch: Option<u32>,
    /// Each cue as a line, as through a pipe
    #[arg(long)]
    pub(crate) plain: bool,
    #[command(flatten)]
    pub(crate) quiet: Quiet,
}

/// How somebody starts.
#[derive(Debug, ClapArgs)]
pub(crate) struct Start {
    /// Coach or athlete
    #[arg(long = "as", value_enum, value_name = "ROLE")]
    pub(crate) role: RoleArg,
    /// The name others see
    #[arg(long)]
    pub(crate) name: String,
    /// The unit loads are written in
    #[arg(long, value_enum, default_value = "kg")]
    pub(crate) unit: UnitArg,
}

/// Plates for loads.
#[derive(Debug, ClapArgs)]
pub(crate) struct Plates {
    /// The loads in order, each with its unit, such as 92.5kg or 205lb
    #[arg(required = true, value_name = "LOAD")]
    pub(crate) loads: Vec<String>,
    /// A plan, of which only `[kit]` is read, or a TOML file with just a `[kit]`
    #[arg(long, value_name = "FILE")]
    pub(crate) kit: PathBuf,
    /// The bar by its name; without it, the first bar in the first load's unit, else the first
    #[arg(long, value_name = "NAME")]
    pub(crate) bar: Option<String>,
    /// Begin with warm-up sets for the first load: ten reps with the empty bar, then 5, 3 and 2 at 45,
    /// 65 and 85 % of it (common practice), left out where the bar is already near
    #[arg(long)]
    pub(crate) warm_up: bool,
    /// The builds as JSON
    #[arg(long)]
    pub(crate) json: bool,
}

/// A coach's answer.
#[derive(Debug, ClapArgs)]
pub(crate) struct Answer {
    /// The member's name
    pub(crate) name: String,
    /// The movement, as the board names it, or the piece's name
    pub(crate) movement: String,
    /// Accept the proposal, change it, or refuse it (last time's loads again)
    #[arg(value_enum)]
    pub(crate) decision: DecisionArg,
    /// With change: the last set's load (the others follow), or one for each set
    #[arg(long, value_name = "LOAD")]
    pub(crate) load: Vec<String>,
    /// Words for the athlete
    #[arg(long, default_value = "")]
    pub(crate) words: String,
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
