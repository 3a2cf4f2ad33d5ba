//! Holdfast in a terminal: the whole loop, for the coach's laptop and for anyone who wants to try
//! it. It draws and types; the core decides.

mod args;
mod carrier;
mod commands;
mod demo;
mod fault;
mod full;
mod hold;
mod home;
mod now;
mod print;
mod report;
mod session;

use std::process::ExitCode;

use clap::Parser;

fn main() -> ExitCode {
    print::choose_colour();
    match commands::run(args::Args::parse()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(fault) => {
            fault.show();
            fault.exit_code()
        }
    }
}
