//! The checks of the Rust code.

use crate::licences;
use crate::steps::{Done, cargo, cargo_command, run, step};

/// Every check of the Rust code.
pub(crate) fn check() -> Done {
    step("formatting", || {
        cargo(&["fmt", "--all", "--check"])?;
        // A workspace of its own.
        cargo(&["fmt", "--manifest-path", "fuzz/Cargo.toml", "--check"])
    })?;
    step("licences", licences::check)?;
    step("lints", || {
        cargo(&["clippy", "--workspace", "--all-targets", "--locked", "--", "-D", "warnings"])?;
        // Not among all targets, as plain tests leave it out.
        let left_out = ["--test", "wide", "--test", "servers", "--test", "wide_servers"];
        let mut clippy = cargo_command();
        clippy.args(["clippy", "--workspace"]).args(left_out);
        run(clippy.args(["--locked", "--", "-D", "warnings"]))
    })?;
    step("documentation", || {
        let args = ["doc", "--workspace", "--no-deps", "--document-private-items", "--locked"];
        run(cargo_command().args(args).env("RUSTDOCFLAGS", "-D warnings"))
    })?;
    // The command-line checks run the real program.
    step("program", program)?;
    // The examples in the documentation are among them.
    step("tests", || cargo(&["test", "--workspace", "--locked"]))
}

/// Builds the program, and with it all that tests need. What is chosen decides with which features packages are built: chosen
/// alike everywhere, each of them is built once.
pub(crate) fn program() -> Done {
    cargo(&["build", "--workspace", "--lib", "--bins", "--tests", "--locked"])
}
