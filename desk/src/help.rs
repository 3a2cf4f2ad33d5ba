//! What `--help` says, in the language that is spoken.
//!
//! Clap knows the shape of commands and arguments from [`crate::args`], and gets every word about them here.

mod unread;

use std::ffi::OsString;

use clap::builder::PossibleValue;
use clap::{Arg, ArgAction, Command, CommandFactory, Error, FromArgMatches};

use crate::args::Args;
use crate::fault::Outcome;
use crate::say;

/// Reads what was typed. Where that asks for help, it is shown and ends the program.
pub(crate) fn parse() -> Outcome<Args> {
    let mut command = command();
    read(&mut command, std::env::args_os()).map_err(|error| unread::fault(&command, error))
}

fn read(command: &mut Command, typed: impl IntoIterator<Item = OsString>) -> Result<Args, Error> {
    let matches = command.try_get_matches_from_mut(typed)?;
    Args::from_arg_matches(&matches)
}

/// The program's command with a text for everything.
fn command() -> Command {
    let mut command = described(Args::command());
    // Its own options for help come to each command now, and are given their texts with the others.
    command.build();
    worded(command)
}

/// A command and those below it with what they do.
fn described(command: Command) -> Command {
    let about = about(command.get_name()).unwrap_or_default();
    let command = command.about(about).mut_subcommands(described);
    match more(command.get_name()) {
        Some(more) => command.long_about(format!("{about}.\n\n{more}")),
        None => command,
    }
}

/// A command and those below it with all other words.
fn worded(command: Command) -> Command {
    let name = command.get_name().to_owned();
    let about = about(&name).unwrap_or_default();
    let mut command = command
        .about(about)
        .subcommand_help_heading(say::help::commands())
        .subcommand_value_name(say::help::value_command())
        .mut_args(|arg| with_words(&name, arg))
        .mut_subcommands(worded);
    // Clap's words in it have no other door.
    let usage = command.render_usage().to_string().replace("[OPTIONS]", say::help::usage_options());
    let usage = usage.strip_prefix("Usage: ").unwrap_or(&usage);
    let (style, heading) = (*command.get_styles().get_usage(), say::help::usage());
    command.help_template(format!(
        "{{about-with-newline}}\n{style}{heading}{style:#} {usage}\n\n{{all-args}}"
    ))
}

/// An argument with its text, its heading and the name of its value.
fn with_words(command: &str, arg: Arg) -> Arg {
    let text = argument(command, arg.get_id().as_str()).unwrap_or_default();
    let text = with_more(text.to_owned(), &arg);
    let arg = arg.help(text).hide_default_value(true).hide_possible_values(true).hide_env(true);
    let arg = match arg.get_action() {
        ArgAction::Help if more(command).is_some() => {
            arg.help(say::help::help_short()).long_help(say::help::help_long())
        }
        _ => arg,
    };
    let named = arg.get_value_names().and_then(|names| value(names.first()?));
    let arg = match named {
        Some(name) => arg.value_name(name),
        None => arg,
    };
    let everywhere = matches!(arg.get_id().as_str(), "home" | "lang");
    match arg.get_index() {
        Some(index) => arg.help_heading(say::help::arguments()).display_order(index),
        // After the command's own.
        None if everywhere => arg.help_heading(say::help::options()).display_order(900),
        None => arg.help_heading(say::help::options()),
    }
}

/// The text with what an argument is when it is left out, what it can be, and the variable that stands
/// in for it.
fn with_more(text: String, arg: &Arg) -> String {
    let mut text = text;
    let takes = arg.get_action().takes_values();
    let choices = if takes { arg.get_possible_values() } else { Vec::new() };
    let choices: Vec<&str> = choices.iter().map(PossibleValue::get_name).collect();
    if !choices.is_empty() {
        text = say::help::with_choices(text, choices.join(", "));
    }
    let default = arg.get_default_values().first().filter(|_| takes);
    if let Some(default) = default.filter(|default| !default.is_empty()) {
        text = say::help::with_default(text, default.to_string_lossy());
    }
    if let Some(variable) = arg.get_env() {
        text = say::help::with_variable(text, variable.to_string_lossy());
    }
    text
}

/// What a command does.
fn about(command: &str) -> Option<&'static str> {
    Some(match command {
        "holdfast" => say::help::about(),
        "help" => say::help::help_command(),
        "demo" => say::help::demo(),
        "start" => say::help::start(),
        "check" => say::help::check(),
        "plates" => say::help::plates(),
        "publish" => say::help::publish(),
        "today" => say::help::today(),
        "invite" => say::help::invite(),
        "join" => say::help::join(),
        "crew" => say::help::crew(),
        "take-out" => say::help::take_out(),
        "forget" => say::help::forget(),
        "stop-device" => say::help::stop_device(),
        "recovery" => say::help::recovery(),
        "restore" => say::help::restore(),
        "session" => say::help::session(),
        "hold" => say::help::hold(),
        "exchange" => say::help::exchange(),
        "take-along" => say::help::take_along(),
        "carrier" => say::help::carrier_command(),
        "add" => say::help::carrier_add(),
        "list" => say::help::carrier_list(),
        "remove" => say::help::carrier_remove(),
        "board" => say::help::board(),
        "member" => say::help::member(),
        "answer" => say::help::answer(),
        "sets" => say::help::sets(),
        "correct" => say::help::correct(),
        "leave-out" => say::help::leave_out(),
        "note" => say::help::note(),
        "max" => say::help::max(),
        "flag" => say::help::flag(),
        "clear" => say::help::clear(),
        "report" => say::help::report(),
        "export" => say::help::export(),
        "verify" => say::help::verify(),
        "aside" => say::help::aside(),
        "language" => say::help::language(),
        _ => return None,
    })
}

/// More about a command, where one line does not say it all.
fn more(command: &str) -> Option<&'static str> {
    (command == "plates").then(say::help::plates_more)
}

/// What an argument of a command is for.
fn argument(command: &str, id: &str) -> Option<&'static str> {
    Some(match (command, id) {
        (_, "home") => say::help::home(),
        (_, "lang") => say::help::lang(),
        (_, "help") => say::help::help(),
        (_, "version") => say::help::version(),
        ("help", "subcommand") => say::help::help_command(),
        ("check" | "publish", "plan") => say::help::plan_file(),
        ("check", "strict") => say::help::check_strict(),
        ("publish" | "exchange" | "forget" | "restore", "carrier") => say::help::carrier(),
        ("invite" | "join", "carrier") => say::help::pair_carrier(),
        ("invite" | "join", "watch") => say::help::pair_watch(),
        ("take-along", "from") => say::help::take_along_from(),
        ("add" | "remove", "name") => say::help::carrier_name(),
        ("add", "address") => say::help::carrier_address(),
        ("add", "user") => say::help::carrier_user(),
        ("add", "bucket") => say::help::carrier_bucket(),
        ("add", "key_id") => say::help::carrier_key_id(),
        ("add", "region") => say::help::carrier_region(),
        ("add", "prefix") => say::help::carrier_prefix(),
        ("add", "path_style") => say::help::carrier_path_style(),
        ("add", "unencrypted") => say::help::carrier_unencrypted(),
        ("invite", "code") => say::help::invite_code(),
        ("invite", "line") => say::help::invite_line(),
        ("invite", "name") => say::help::invite_name(),
        ("invite" | "join", "svg") => say::help::code_svg(),
        ("invite" | "join", "stop") => say::help::pair_stop(),
        ("join", "code") => say::help::join_code(),
        ("join", "matches") => say::help::join_match(),
        ("join", "all") => say::help::join_all(),
        ("join", "differ") => say::help::join_differ(),
        ("today", "on") => say::help::another_date(),
        ("board" | "member" | "report", "on") => say::help::made_for(),
        ("today", "json") => say::help::today_json(),
        ("board" | "crew" | "member" | "plates" | "sets", "json") => say::help::json(),
        ("forget", "name") => say::help::forget_name(),
        ("take-out", "name") => say::help::answer_name(),
        ("exchange", "watch") => say::help::exchange_watch(),
        ("exchange", "every") => say::help::exchange_every(),
        ("take-out", "device") => say::help::take_out_device(),
        ("stop-device", "device") => say::help::stop_device_number(),
        ("recovery", "confirm") => say::help::recovery_confirm(),
        ("recovery", "age") => say::help::recovery_age(),
        ("recovery", "moved") => say::help::recovery_moved(),
        ("recovery", "copied") => say::help::recovery_copied(),
        ("restore", "lost") => say::help::restore_lost(),
        ("demo", "dir") => say::help::demo_dir(),
        ("demo", "seed") => say::help::demo_seed(),
        ("demo", "members") => say::help::demo_members(),
        ("demo", "weeks") => say::help::demo_weeks(),
        ("start", "role") => say::help::start_as(),
        ("start", "name") => say::help::start_name(),
        ("start", "unit") => say::help::start_unit(),
        ("plates", "loads") => say::help::plates_loads(),
        ("plates", "kit") => say::help::plates_kit(),
        ("plates", "bar") => say::help::plates_bar(),
        ("plates", "warm_up") => say::help::plates_warm_up(),
        ("plates", "from_floor") => say::help::plates_from_floor(),
        ("today", "day") => say::help::today_day(),
        ("session", "on") => say::help::session_on(),
        ("session", "day") => say::help::session_day(),
        ("session", "plain") => say::help::session_plain(),
        ("session" | "hold", "no_speech") => say::help::no_speech(),
        ("session" | "hold", "no_bell") => say::help::no_bell(),
        ("hold", "seconds") => say::help::hold_seconds(),
        ("hold", "sides") => say::help::hold_sides(),
        ("hold", "contract") => say::help::hold_contract(),
        ("hold", "relax") => say::help::hold_relax(),
        ("hold", "ready") => say::help::hold_ready(),
        ("hold", "switch") => say::help::hold_switch(),
        ("hold", "plain") => say::help::hold_plain(),
        ("member", "name") => say::help::member_name(),
        ("answer", "name") => say::help::answer_name(),
        ("answer", "movement") => say::help::answer_movement(),
        ("answer", "decision") => say::help::answer_decision(),
        ("answer", "piece") => say::help::answer_piece(),
        ("answer", "load") => say::help::answer_load(),
        ("answer", "words") => say::help::answer_words(),
        ("answer", "anyway") => say::help::answer_anyway(),
        ("sets", "on") => say::help::sets_on(),
        ("sets", "sessions") => say::help::sets_sessions(),
        ("sets", "member") => say::help::sets_member(),
        ("correct" | "leave-out", "date") => say::help::set_date(),
        ("correct" | "leave-out", "piece") => say::help::set_piece(),
        ("correct" | "leave-out", "set") => say::help::set_number(),
        ("correct" | "leave-out", "session") => say::help::set_session(),
        ("correct", "what") => say::help::correct_what(),
        ("leave-out", "name") => say::help::answer_name(),
        ("leave-out", "count") => say::help::leave_out_count(),
        ("max", "movement") => say::help::max_movement(),
        ("max", "load") => say::help::max_load(),
        ("max", "member") => say::help::max_member(),
        ("max", "anyway") => say::help::max_anyway(),
        ("flag", "felt") => say::help::flag_felt(),
        ("flag", "movement") => say::help::flag_movement(),
        ("flag", "on") => say::help::flag_on(),
        ("note", "words") => say::help::note_words(),
        ("note", "member") => say::help::note_member(),
        ("note", "on") => say::help::note_on(),
        ("note", "piece") => say::help::set_piece(),
        ("note", "set") => say::help::set_number(),
        ("note", "session") => say::help::set_session(),
        ("note", "private") => say::help::note_private(),
        ("note", "take_back") => say::help::note_take_back(),
        ("clear", "member") => say::help::clear_member(),
        ("clear", "movement") => say::help::clear_movement(),
        ("report", "out") => say::help::report_out(),
        ("export", "dir") => say::help::export_dir(),
        ("aside", "name") => say::help::aside_name(),
        ("language", "choice") => say::help::language_choice(),
        _ => return None,
    })
}

/// The name of a value in help.
fn value(name: &str) -> Option<&'static str> {
    Some(match name {
        "DIR" => say::help::value_dir(),
        "CODE" => say::help::value_code(),
        "LINE" => say::help::value_line(),
        "PLAN" => say::help::value_plan(),
        "DATE" => say::help::value_date(),
        "NAME" => say::help::value_name(),
        "LANG" => say::help::value_lang(),
        "ROLE" => say::help::value_role(),
        "UNIT" => say::help::value_unit(),
        "SEED" => say::help::value_seed(),
        "WHERE" => say::help::value_where(),
        "MOVEMENT" => say::help::value_movement(),
        "ADDRESS" => say::help::value_address(),
        "OUT" | "FILE" => say::help::value_file(),
        "LOAD" => say::help::value_load(),
        "DECISION" => say::help::value_decision(),
        "WORDS" => say::help::value_words(),
        "PIECE" => say::help::value_piece(),
        "SET" => say::help::value_set(),
        "DONE" => say::help::value_done(),
        "SECONDS" => say::help::value_seconds(),
        "N" => say::help::value_count(),
        "COMMAND" => say::help::value_command(),
        _ => return None,
    })
}

#[cfg(test)]
mod tests;
