//! The build driver: `cargo task check` runs every check there is.

mod android;
mod bindings;
mod cross;
mod fuzz;
mod kotlin;
mod licences;
mod measure;
mod mend;
mod phone;
mod planted;
mod python;
mod reference;
mod rust;
mod scale;
mod season;
mod servers;
mod steps;
mod swift;
mod wide;

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Parser, Subcommand, ValueEnum};

use steps::Done;

/// Holdfast's build driver.
#[derive(Debug, Parser)]
#[command(name = "cargo task", arg_required_else_help = true, after_help = parts())]
struct Args {
    #[command(subcommand)]
    command: Command,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Run every check but the wide ones, or one part; what a part lacks is installed where that is
    /// allowed
    Check {
        /// The part; all but `wide` when left out
        part: Option<Part>,
    },
    /// Generate Kotlin and Swift from the library
    Bindings,
    /// Measure the bindings: size, and what a call costs in each language
    Measure,
    /// Measure what a large crew costs its coach, beside bare work on the same rows: a quarter of an hour,
    /// and 5 GB of disk
    Scale,
    /// Play seasons of forty simulated lifters and print what came of their proposals: half a minute
    Season,
    /// Plant each bug that the core has for tests, and count the stories of a crew until one catches it: minutes
    Planted,
    /// Run fuzzers for long, one after the other: needs cargo and a C++ compiler
    Fuzz(fuzz::Asked),
    /// Open the phone's screens in a window, on an athlete's home or on the demo's data: needs a display, a JDK and Maven
    Phone {
        /// The home folder; the demo's, when left out
        home: Option<PathBuf>,
    },
    /// Draw the phone's screens, and put those that the README shows into docs/pictures
    Pictures,
    /// Build the library for Android devices and then the app, by Gradle: needs Android's SDK and NDK, cargo-ndk and Gradle
    Android,
    /// Build the library for Apple devices into ios/Kit
    Ios,
}

/// A part of the checks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum Part {
    /// Formatting, lints, licences, documentation and tests of the Rust code: needs cargo alone
    Rust,
    /// The numbers of reference libraries in tests/reference, made again: needs Python 3.11 and a
    /// package index
    Reference,
    /// Carriers against real servers on this machine's loopback, Apache, nginx, WsgiDAV and versitygw, and
    /// leaves opened by stock age and gzip, and the app's own carrier against two of them: needs Debian's packages, a JDK, Maven,
    /// Python 3.11, and a package index and a Go module proxy
    Servers,
    /// What each fuzzer in fuzz/ has kept, and 2,000 new inputs each: needs a C++ compiler, which Debian's packages
    /// bring
    Fuzz,
    /// The Kotlin kit and the phone's screens against the real core, clicked and drawn: needs a JDK, Maven, and Debian's packages
    Kotlin,
    /// The Swift kit against the real core: needs Swift 6
    Swift,
    /// The same questions asked much longer, in release; not part of a plain check. The program is
    /// killed 5,000 times while it logs; the strength model keeps its promises for 200,000 simulated
    /// athletes and holds what the same model in Python does; the laws of loads hold on a million
    /// histories and 200 seasons are as expected; the core's properties and random stories are tried 20,000
    /// times each; stories of a whole crew with everything against it come out right, two hours of them at a time until a
    /// million were played; each planted bug is caught by them; carriers work with rclone, lighttpd, a SeaweedFS cluster
    /// that loses a server, and Syncthing between two folders. Half an hour and those two, once it is built; needs cargo,
    /// Debian's packages, Python 3.11, and a package index and a Go module proxy
    Wide,
}

impl Part {
    /// What a plain `cargo task check` runs.
    fn is_usual(self) -> bool {
        self != Part::Wide
    }

    fn check(self) -> Done {
        match self {
            Part::Rust => rust::check(),
            Part::Reference => reference::check(),
            Part::Servers => servers::check(),
            Part::Fuzz => fuzz::check(),
            Part::Kotlin => kotlin::check(),
            Part::Swift => swift::check(),
            Part::Wide => wide::check(),
        }
    }
}

/// The parts of the checks in plain words, below the commands.
fn parts() -> String {
    let mut text = String::from("Parts of the checks, each run by `cargo task check PART`:");
    for part in Part::value_variants().iter().filter_map(ValueEnum::to_possible_value) {
        let help = part.get_help().map(ToString::to_string).unwrap_or_default();
        text += &format!("\n  {:<10} {help}", part.get_name());
    }
    text
}

fn main() -> ExitCode {
    let done = match Args::parse().command {
        Command::Check { part: Some(part) } => part.check(),
        Command::Check { part: None } => Part::value_variants()
            .iter()
            .filter(|variant| variant.is_usual())
            .try_for_each(|variant| variant.check()),
        Command::Bindings => bindings::generate().map(drop),
        Command::Measure => measure::all(),
        Command::Scale => scale::all(),
        Command::Season => season::all(),
        Command::Planted => planted::all(),
        Command::Fuzz(asked) => fuzz::long(&asked),
        Command::Phone { home } => phone::window(home),
        Command::Pictures => phone::pictures(),
        Command::Android => android::app(),
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

#[cfg(test)]
mod tests {
    use clap::CommandFactory;

    use super::*;

    #[test]
    fn the_help_names_every_part_and_what_the_wide_one_holds() {
        let help = Args::command().render_long_help().to_string();
        for part in ["rust", "reference", "servers", "fuzz", "kotlin", "swift", "wide"] {
            assert!(help.contains(&format!("\n  {part} ")), "{part} in {help}");
        }
        for what in ["5,000 times", "random stories", "in release", "SeaweedFS"] {
            assert!(help.contains(what), "{what} in {help}");
        }
    }

    #[test]
    fn a_plain_check_leaves_out_the_wide_one_alone() {
        let left_out = Part::value_variants().iter().filter(|variant| !variant.is_usual());
        assert_eq!(left_out.collect::<Vec<_>>(), [&Part::Wide]);
    }
}
