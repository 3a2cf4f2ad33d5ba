//! Carriers by name: kept, listed, removed. A password comes from standard input or a variable, never from an
//! argument, which everybody on the machine could read.

use std::env;
use std::fs;
use std::io::{BufRead, IsTerminal};
use std::path::{Path, PathBuf};

use carry::{Carried, Line, Named, carriers, keep_carriers};
use clap::{Args as ClapArgs, Subcommand};
use holdfast_core::Holdfast;
use holdfast_core::exchange::ExchangeReport;
use holdfast_core::exchange::web::{Carrier, NO_REGION, S3, Secret, WebDav};

use crate::carrier::{Steps, alone, exchange, exchange_over, list as listed};
use crate::fault::{Fault, Outcome};
use crate::now::now;
use crate::{print, say};

/// The variable that a password may come in.
pub(crate) const PASSWORD: &str = "HOLDFAST_CARRIER_PASSWORD";

/// The longest name of a carrier.
const MAX_NAME: usize = 32;

/// What to do with carriers.
#[derive(Debug, Subcommand)]
pub(crate) enum Carriers {
    Add(Box<Add>),
    List,
    Remove { name: String },
}

/// A carrier to be kept.
#[derive(Debug, ClapArgs)]
pub(crate) struct Add {
    name: String,
    address: String,
    #[arg(long, value_name = "NAME")]
    user: Option<String>,
    #[arg(long, value_name = "NAME", requires = "key_id")]
    bucket: Option<String>,
    #[arg(long, value_name = "NAME", requires = "bucket")]
    key_id: Option<String>,
    #[arg(long, value_name = "NAME", default_value = NO_REGION)]
    region: String,
    #[arg(long, value_name = "NAME", default_value = "")]
    prefix: String,
    #[arg(long)]
    path_style: bool,
    #[arg(long)]
    unencrypted: bool,
}

/// Exchanges with a carrier that is kept by its name, otherwise with a folder.
pub(crate) fn exchange_with(
    home: &Path,
    steps: &dyn Steps,
    named: &Path,
) -> Outcome<ExchangeReport> {
    let kept = carriers(home)?;
    match named.to_str().and_then(|name| kept.get(name)) {
        Some(Carrier::Folder { path }) => exchange(steps, Path::new(path), &now()),
        Some(server) => exchange_over(steps, &open(server)?, &now()),
        None => exchange(steps, named, &now()),
    }
}

/// What came of deleting files.
#[derive(Default)]
pub(crate) struct Deleted {
    /// How many are gone.
    pub(crate) deleted: u32,
    /// Those that are not, and why.
    pub(crate) failed: Vec<(String, String)>,
}

/// Deletes on a carrier what is of somebody this device has forgotten.
pub(crate) fn delete_forgotten(home: &Path, holdfast: &Holdfast, named: &Path) -> Outcome<Deleted> {
    let kept = carriers(home)?;
    let mut done = Deleted::default();
    let folder = match named.to_str().and_then(|name| kept.get(name)) {
        Some(Carrier::Folder { path }) => Path::new(path).to_owned(),
        Some(server) => {
            let line = open(server)?;
            for name in holdfast.forgotten_files(line.leaves()?)? {
                match alone(line.forget(&name))? {
                    Ok(_) => done.deleted += 1,
                    Err(reason) => done.failed.push((name, reason)),
                }
            }
            return Ok(done);
        }
        None if !named.is_dir() => return Err(missing(home, named)),
        None => named.to_owned(),
    };
    for name in holdfast.forgotten_files(listed(&folder)?)? {
        match fs::remove_file(folder.join(&name)) {
            Ok(()) => done.deleted += 1,
            Err(error) => done.failed.push((name, error.to_string())),
        }
    }
    Ok(done)
}

/// The folder of a carrier, where it is one.
pub(crate) fn folder_of(home: &Path, named: &Path) -> Outcome<Option<PathBuf>> {
    let kept = carriers(home)?;
    Ok(match named.to_str().and_then(|name| kept.get(name)) {
        Some(Carrier::Folder { path }) => Some(PathBuf::from(path)),
        Some(_) => None,
        None => Some(named.to_owned()),
    })
}

/// A line to a carrier that is kept by its name.
pub(crate) fn line_of(home: &Path, named: &Path) -> Outcome<Line> {
    let kept = carriers(home)?;
    match named.to_str().and_then(|name| kept.get(name)) {
        Some(carrier) => open(carrier),
        None => Err(missing(home, named)),
    }
}

/// What to say of a carrier that is neither a folder nor kept by its name. A single word may be meant as either.
pub(crate) fn missing(home: &Path, named: &Path) -> Fault {
    let kept = carriers(home).unwrap_or_default();
    let is_word = named.components().count() == 1;
    let names: Vec<String> = kept.into_keys().collect();
    let reason = match is_word && !names.is_empty() {
        true => say::fault::carrier_unknown(names.join(", ")),
        false => say::fault::carrier_missing().to_owned(),
    };
    Fault::at(named, &reason)
}

/// True for the name of a carrier that is kept.
pub(crate) fn is_kept(home: &Path, named: &Path) -> Outcome<bool> {
    let kept = carriers(home)?;
    Ok(named.to_str().is_some_and(|name| kept.contains_key(name)))
}

/// Does it.
pub(crate) fn run(home: &Path, what: Carriers) -> Outcome {
    // A log is restored from a carrier before there is a device: then it is kept in the folder that becomes one.
    let adds = matches!(what, Carriers::Add(_));
    if !home.is_dir() && !adds {
        return Err(Fault::Typed(say::fault::not_set_up(home.display())));
    }
    let kept = if home.is_dir() { carriers(home)? } else { Named::new() };
    match what {
        Carriers::Add(add) => self::add(home, kept, *add),
        Carriers::List => list(&kept),
        Carriers::Remove { name } => remove(home, kept, &name),
    }
}

fn add(home: &Path, mut kept: Named, add: Add) -> Outcome {
    let of_name = |byte: u8| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'-';
    if add.name.is_empty() || add.name.len() > MAX_NAME || !add.name.bytes().all(of_name) {
        return Err(Fault::Typed(say::fault::no_such_carrier_name(&add.name, MAX_NAME)));
    }
    if kept.contains_key(&add.name) {
        return Err(Fault::Typed(say::fault::carrier_named_twice(&add.name)));
    }
    let name = add.name.clone();
    let carrier = carrier(add)?;
    if let Carrier::Folder { path } = &carrier
        && !Path::new(path).is_dir()
    {
        return Err(Fault::at(Path::new(path), say::fault::carrier_missing()));
    }
    let line = open(&carrier)?;
    // Looked at once, so that a wrong password is said now and not after the next session.
    let said = match line.list(None, None) {
        Ok(_) if matches!(carrier, Carrier::Folder { .. }) => {
            say::command::carrier_is_there().to_owned()
        }
        Ok(_) => say::command::carrier_answers().to_owned(),
        Err(Carried::Offline(offline)) => offline.to_string(),
        Err(fault) => return Err(fault.into()),
    };
    let place = place(&carrier);
    kept.insert(name.clone(), carrier);
    fs::create_dir_all(home).map_err(Fault::file(home))?;
    keep_carriers(home, &kept)?;
    print::out(&format!("{}\n{said}\n", say::command::carrier_kept(name, place)))
}

/// What was typed as a carrier. It is a folder where the address is none of a server.
fn carrier(add: Add) -> Outcome<Carrier> {
    let is_web = add.address.contains("://");
    if let (Some(bucket), Some(key_id)) = (add.bucket, add.key_id) {
        return Ok(Carrier::S3(S3 {
            endpoint: add.address,
            region: add.region,
            bucket,
            prefix: add.prefix,
            key_id,
            secret: secret()?,
            path_style: add.path_style,
            unencrypted: add.unencrypted,
        }));
    }
    if !is_web {
        // Kept whole: the next command may be run in another folder.
        let path =
            std::path::absolute(&add.address).map_err(Fault::file(Path::new(&add.address)))?;
        let path = path.to_str().ok_or_else(|| Fault::at(&path, say::fault::home_not_utf8()))?;
        return Ok(Carrier::Folder { path: path.to_owned() });
    }
    Ok(Carrier::WebDav(WebDav {
        url: add.address,
        user: add.user.unwrap_or_default(),
        password: secret()?,
        unencrypted: add.unencrypted,
    }))
}

/// The password: from its variable, or the first line of standard input.
fn secret() -> Outcome<Secret> {
    typed_unseen(PASSWORD, say::command::carrier_password(PASSWORD)).map(Secret::new)
}

/// What nobody else is to see: from a variable, or the first line of standard input, asked for at a terminal.
pub(crate) fn typed_unseen(variable: &str, ask: String) -> Outcome<String> {
    // An empty variable says nothing.
    if let Some(secret) = env::var(variable).ok().filter(|secret| !secret.is_empty()) {
        return Ok(secret);
    }
    let mut line = String::new();
    let read = if std::io::stdin().is_terminal() {
        anstream::eprintln!("{ask}");
        unseen(|| std::io::stdin().lock().read_line(&mut line))
    } else {
        std::io::stdin().lock().read_line(&mut line)
    };
    read.map_err(|error| Fault::Typed(say::fault::no_input(error)))?;
    let kept = line.trim_end_matches(['\r', '\n']).len();
    line.truncate(kept);
    Ok(line)
}

/// Reads while the terminal shows nothing of what is typed.
#[cfg(unix)]
fn unseen<T>(read: impl FnOnce() -> std::io::Result<T>) -> std::io::Result<T> {
    use rustix::termios::{LocalModes, OptionalActions, tcgetattr, tcsetattr};
    let terminal = std::io::stdin();
    let before = tcgetattr(&terminal)?;
    let mut silent = before.clone();
    silent.local_modes.remove(LocalModes::ECHO);
    tcsetattr(&terminal, OptionalActions::Flush, &silent)?;
    let read = read();
    tcsetattr(&terminal, OptionalActions::Flush, &before)?;
    read
}

/// Elsewhere it is seen; whoever minds uses the variable.
#[cfg(not(unix))]
fn unseen<T>(read: impl FnOnce() -> std::io::Result<T>) -> std::io::Result<T> {
    read()
}

/// A line to a carrier, or the first thing that is wrong with its settings.
fn open(carrier: &Carrier) -> Outcome<Line> {
    let mut chance = [0; 4];
    getrandom::fill(&mut chance).map_err(|error| Fault::Typed(say::fault::no_randomness(error)))?;
    Line::open(carrier, now, u32::from_be_bytes(chance)).map_err(|faults| {
        let reasons: Vec<String> = faults.into_iter().map(|fault| fault.reason).collect();
        Fault::Typed(reasons.join("\n"))
    })
}

/// Where a carrier is, without what is secret of it.
fn place(carrier: &Carrier) -> String {
    match carrier {
        Carrier::Folder { path } => path.clone(),
        Carrier::WebDav(_) | Carrier::S3(_) => match carrier.remote() {
            Ok(Some(remote)) => remote.to_string(),
            _ => String::new(),
        },
    }
}

fn list(kept: &Named) -> Outcome {
    if kept.is_empty() {
        return print::out(&format!("{}\n", say::command::no_carriers()));
    }
    let lines = kept.iter().map(|(name, carrier)| format!("{name}  {}\n", place(carrier)));
    print::out(&lines.collect::<String>())
}

fn remove(home: &Path, mut kept: Named, name: &str) -> Outcome {
    if kept.remove(name).is_none() {
        return Err(Fault::Typed(say::fault::no_carrier_of_name(name)));
    }
    keep_carriers(home, &kept)?;
    print::out(&format!("{}\n", say::command::carrier_removed(name)))
}
