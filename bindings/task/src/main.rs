//! The build driver: `cargo task check` runs every check there is.

mod bindings;
mod cross;
mod kotlin;
mod licences;
mod measure;
mod reference;
mod rust;
mod steps;
mod swift;

use std::process::ExitCode;

use clap::{Parser, Subcommand, ValueEnum};

use steps::Done;

/// Holdfast's build driver.
#[derive(Debug, Parser)]
#[command(name = "cargo task", arg_required_else_help = true)]
struct Args {
    #[command(subcommand)]
    command: Command,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Run every check, or one part of them; what a part lacks is installed where that is allowed
    Check {
        /// The part; all of them when left out
        part: Option<Part>,
    },
    /// Generate Kotlin and Swift from the library
    Bindings,
    /// Measure the bindings: size, and what a call costs in each language
    Measure,
    /// Build the library for Android devices into android/kit
    Android,
    /// Build the library for Apple devices into ios/Kit
    Ios,
}

/// A part of the checks.
#[derive(Clone, Copy, Debug, ValueEnum)]
enum Part {
    /// Formatting, lints, licences, documentation and tests of the Rust code: needs cargo alone
    Rust,
    /// The numbers of reference libraries in tests/reference, made again: needs Python 3.11 and a
    /// package index
    Reference,
    /// The Kotlin kit against the real core: needs a JDK and Maven
    Kotlin,
    /// The Swift kit against the real core: needs Swift 6
    Swift,
}

impl Part {
    fn check(self) -> Done {
        match self {
            Part::Rust => rust::check(),
            Part::Reference => reference::check(),
            Part::Kotlin => kotlin::check(),
            Part::Swift => swift::check(),
        }
    }
}

fn main() -> ExitCode {
    let done = match Args::parse().command {
        Command::Check { part: Some(part) } => part.check(),
        Command::Check { part: None } => {
            Part::value_variants().iter().try_for_each(|it| it.check())
        }
        Command::Bindings => bindings::generate(),
        Command::Measure => measure::all(),
        Command::Android => cross::android(),
        Command::Ios => cross::ios(),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(failed) => {
            eprintln!("failed: {failed}");
            ExitCode::FAILURE
        }
    }
}
