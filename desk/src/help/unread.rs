//! What was typed and cannot be read, told in the language that is spoken: clap has no words in others.

use clap::error::{ContextKind, ContextValue, ErrorKind};
use clap::{Arg, Command, Error};

use crate::fault::Fault;
use crate::say;

/// What is wrong. Where help was asked for, it is shown and the program ends.
pub(super) fn fault(command: &Command, error: Error) -> Fault {
    match sentence(command, &error) {
        Some(sentence) => Fault::Arguments(sentence),
        None => error.exit(),
    }
}

/// True for what is more likely a value than the name of an argument: a number with a dash before it.
fn is_a_value(argument: &str) -> bool {
    argument.trim_start_matches('-').starts_with(|first: char| first.is_ascii_digit())
}

/// What is wrong in a sentence; none for help, and for what this program's arguments never are.
pub(super) fn sentence(command: &Command, error: &Error) -> Option<String> {
    let of = |kind| error.get(kind).map_or_else(Vec::new, texts);
    let first = |kind| of(kind).into_iter().next();
    let argument = || of(ContextKind::InvalidArg).join(", ");
    let help = say::fault::see_help();
    Some(match error.kind() {
        ErrorKind::InvalidSubcommand => {
            let typed = first(ContextKind::InvalidSubcommand)?;
            match first(ContextKind::SuggestedSubcommand) {
                Some(other) => say::fault::no_command_but(typed, other, help),
                None => say::fault::no_command(typed, help),
            }
        }
        ErrorKind::UnknownArgument => match first(ContextKind::SuggestedArg) {
            Some(other) => say::fault::no_argument_but(argument(), other, help),
            // Clap gives this advice in words where a value could stand.
            None if error.get(ContextKind::Suggested).is_some() && is_a_value(&argument()) => {
                say::fault::no_argument_dash(argument())
            }
            None => say::fault::no_argument(argument(), help),
        },
        ErrorKind::MissingRequiredArgument => say::fault::argument_missing(argument(), help),
        ErrorKind::ArgumentConflict => {
            let others = of(ContextKind::PriorArg);
            match others.is_empty() || others == of(ContextKind::InvalidArg) {
                true => say::fault::argument_twice(argument(), help),
                false => say::fault::arguments_exclude(argument(), others.join(", "), help),
            }
        }
        ErrorKind::InvalidValue => {
            let (value, choices) = (first(ContextKind::InvalidValue)?, of(ContextKind::ValidValue));
            if value.is_empty() {
                say::fault::value_missing(argument(), help)
            } else {
                say::fault::value_not_among(value, argument(), choices.join(", "))
            }
        }
        ErrorKind::ValueValidation => {
            let value = first(ContextKind::InvalidValue)?;
            let text = text_of(command, &argument()).unwrap_or_else(|| help.to_owned());
            match is_no_day(&value) {
                true => say::fault::no_such_day(value),
                false => say::fault::value_wrong(value, argument(), text),
            }
        }
        _ => return None,
    })
}

/// True for what is written like a date and is none: the 31st of November.
fn is_no_day(value: &str) -> bool {
    let parts: Vec<&str> = value.split('-').collect();
    let digits =
        |part: &&str, count| part.len() == count && part.chars().all(|c| c.is_ascii_digit());
    matches!(parts.as_slice(), [year, month, day]
        if digits(year, 4) && digits(month, 2) && digits(day, 2))
}

fn texts(value: &ContextValue) -> Vec<String> {
    match value {
        ContextValue::String(text) => vec![text.clone()],
        ContextValue::Strings(texts) => texts.clone(),
        _ => Vec::new(),
    }
}

/// What help says of the argument that is shown so.
fn text_of(command: &Command, shown: &str) -> Option<String> {
    let is_it = |arg: &&Arg| arg.to_string() == shown;
    let here = command.get_arguments().find(is_it).and_then(|arg| arg.get_help());
    let below = || command.get_subcommands().find_map(|below| text_of(below, shown));
    here.map(|text| text.to_string()).or_else(below)
}
