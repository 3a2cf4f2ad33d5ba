//! The build driver: `cargo task check` runs every check there is.

mod bindings;
mod licences;
mod steps;

use std::process::ExitCode;

use clap::{Parser, Subcommand, ValueEnum};

/// Holdfast's build driver.
#[derive(Debug, Parser)]
#[command(name = "cargo task", arg_required_else_help = true)]
struct Args {
    #[command(subcommand)]
    command: Command,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Generate Kotlin and Swift from the library
    Bindings,
    /// Run every check, or one part of them
    Check {
        /// The part; all of them when left out
        part: Option<Part>,
    },
}

/// A part of the checks.
#[derive(Clone, Copy, Debug, ValueEnum)]
enum Part {
    /// Formatting, lints, licences, documentation and tests of the Rust code: needs cargo alone
    Rust,
}

fn main() -> ExitCode {
    let done = match Args::parse().command {
        Command::Bindings => bindings::generate_all(),
        Command::Check { part: None | Some(Part::Rust) } => steps::rust(),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(failed) => {
            eprintln!("check failed: {failed}");
            ExitCode::FAILURE
        }
    }
}
