//! Holdfast in a terminal: the whole loop, for the coach's laptop and for anyone who wants to try
//! it. It draws and types; the core decides.

mod answer;
mod args;
mod carrier;
mod carriers;
mod commands;
mod crew;
mod demo;
mod fault;
mod flag;
mod full;
mod help;
mod hold;
mod home;
mod language;
mod note;
mod now;
mod pair;
mod print;
mod progress;
mod report;
mod say;
mod session;
mod sets;
mod watch;

use std::process::ExitCode;

fn main() -> ExitCode {
    print::choose_colour();
    let spoken = language::begin(std::env::args_os().skip(1), |name| std::env::var_os(name));
    match spoken.and_then(|()| help::parse()).and_then(commands::run) {
        Ok(()) => ExitCode::SUCCESS,
        Err(fault) => {
            fault.show();
            fault.exit_code()
        }
    }
}
