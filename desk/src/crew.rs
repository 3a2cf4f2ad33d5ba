//! The crew at a terminal: who is in it, who is taken out, which device is stopped, the recovery code, and starting anew
//! with it.

use std::path::{Path, PathBuf};

use clap::Args as ClapArgs;
use holdfast_core::{CrewScreen, Holdfast, RecoveryDid, RecoveryScreen, Restore as Search};
use owo_colors::OwoColorize;

use crate::carrier::exchanged_text;
use crate::carriers::{Deleted, delete_forgotten, exchange_with, is_kept, typed_unseen};
use crate::fault::{Fault, Outcome};
use crate::now::now;
use crate::{home, print, say};

/// The variable that a recovery code may come in.
const CODE: &str = "HOLDFAST_RECOVERY_CODE";

/// What to do with the recovery code.
#[derive(Debug, ClapArgs)]
#[group(multiple = false)]
pub(crate) struct Recovery {
    #[arg(long)]
    confirm: bool,
    #[arg(long)]
    age: bool,
    #[arg(long)]
    moved: bool,
    #[arg(long)]
    copied: bool,
}

/// From where a log is restored.
#[derive(Debug, ClapArgs)]
pub(crate) struct Restore {
    #[arg(long, value_name = "DIR")]
    carrier: PathBuf,
    #[arg(long)]
    lost: bool,
}

/// Shows the crew.
pub(crate) fn show(holdfast: &Holdfast, json: bool) -> Outcome {
    let screen = holdfast.crew()?;
    if json { print::json(&screen) } else { print::out(&crew_text(&screen)) }
}

fn crew_text(screen: &CrewScreen) -> String {
    let mut text = String::new();
    for person in &screen.people {
        text += &format!("{}\n", person.name.bold());
        if let Some(state) = &person.state {
            text += &format!("  {state}\n");
        }
        for device in &person.devices {
            text += &format!("  {}\n", say::command::device_numbered(device.number, &device.state));
        }
    }
    if let Some(told) = &screen.told {
        text += &format!("{}\n", told.bold());
    }
    text
}

/// Takes a member, or one of their devices, out of the crew.
pub(crate) fn take_out(holdfast: &Holdfast, name: String, device: Option<u32>) -> Outcome {
    print::out(&crew_text(&holdfast.remove(name, device, now())?))
}

/// Whom a coach forgets, and where.
#[derive(Debug, ClapArgs)]
pub(crate) struct Forget {
    #[arg(required_unless_present = "carrier")]
    name: Option<String>,
    #[arg(long, value_name = "DIR")]
    carrier: Option<PathBuf>,
}

/// Drops all that this device has of somebody, and deletes their files on a carrier.
pub(crate) fn forget(home: &Path, holdfast: &Holdfast, asked: &Forget) -> Outcome {
    let mut text = String::new();
    if let Some(name) = &asked.name {
        let done = holdfast.forget(name.clone(), now())?;
        text += &format!("{}\n", done.told.bold());
        for place in done.not_reached {
            text += &format!("  {place}\n");
        }
    }
    if let Some(carrier) = &asked.carrier {
        let Deleted { deleted, failed } = delete_forgotten(home, holdfast, carrier)?;
        text += &format!("{}\n", say::command::deleted_there(deleted));
        for (name, reason) in failed {
            text += &format!("  {}\n", say::command::not_deleted(name, reason));
        }
    } else {
        text += &format!("{}\n", say::command::next_forget());
    }
    print::out(&text)
}

/// Stops a device of one's own.
pub(crate) fn stop(holdfast: &Holdfast, device: u32) -> Outcome {
    let code = code_unless_kept(holdfast)?;
    print::out(&crew_text(&holdfast.stop(device, code, now())?))
}

fn code_unless_kept(holdfast: &Holdfast) -> Outcome<Option<String>> {
    let kept = holdfast.recovery(RecoveryDid::Look, now())?.kept;
    if kept { Ok(None) } else { code().map(Some) }
}

fn code() -> Outcome<String> {
    typed_unseen(CODE, say::command::recovery_code(CODE))
}

/// Does what was asked with the recovery code.
pub(crate) fn recovery(holdfast: &Holdfast, asked: &Recovery) -> Outcome {
    let looked = holdfast.recovery(RecoveryDid::Look, now())?;
    if asked.age {
        let shown = holdfast.recovery(RecoveryDid::Show, now())?.code;
        let code = shown.map_or_else(code, Ok)?;
        return print::out(&format!("{}\n", Search::begin(code)?.age_key()));
    }
    let did = match (asked, &looked.groups[..]) {
        (Recovery { moved: true, .. }, _) => RecoveryDid::Moved,
        (Recovery { copied: true, .. }, _) => {
            RecoveryDid::Copied { code: code_unless_kept(holdfast)? }
        }
        (Recovery { confirm: true, .. }, [first, second]) => {
            let ask = say::command::type_groups(first, second);
            RecoveryDid::Confirm { groups: typed_unseen(CODE, ask)? }
        }
        _ if looked.elsewhere => RecoveryDid::Look,
        _ => RecoveryDid::Show,
    };
    print::out(&recovery_text(&holdfast.recovery(did, now())?))
}

fn recovery_text(screen: &RecoveryScreen) -> String {
    let mut text = String::new();
    if let Some(code) = &screen.code {
        text += &format!("\n    {}\n\n", code.bold());
    }
    text += &format!("{}\n", screen.ask);
    if screen.elsewhere {
        text += &format!("{}\n", say::command::next_moved());
    } else if screen.kept {
        text += &format!("{}\n", say::command::next_confirm());
    }
    text
}

/// Sets this device up with a recovery code and what a carrier has.
pub(crate) fn restore(folder: &Path, asked: &Restore) -> Outcome {
    let carrier = &asked.carrier;
    let kept = folder.is_dir() && is_kept(folder, carrier)?;
    if !carrier.exists() && !kept {
        return Err(crate::carriers::missing(folder, carrier));
    }
    let typed = code()?;
    let search = Search::begin(typed.clone())?;
    exchange_with(folder, &search, carrier)?;
    print::out(&format!("{}\n", search.text()?.bold()))?;
    let mut chance = vec![0; 64];
    getrandom::fill(&mut chance).map_err(|error| Fault::Typed(say::fault::no_randomness(error)))?;
    let holdfast = Holdfast::restore(home::text(folder)?, &search, chance, now(), None)?;
    let mut text = String::new();
    let mut exchanged = exchange_with(folder, &holdfast, carrier)?;
    text += &exchanged_text(&exchanged);
    if asked.lost {
        let crew = holdfast.crew()?;
        let own = crew.people.into_iter().filter(|person| person.is_you);
        for device in own.flat_map(|person| person.devices) {
            if device.standing && !device.is_this {
                let told = holdfast.stop(device.number, Some(typed.clone()), now())?.told;
                text += &format!("{}\n", told.unwrap_or_default().bold());
            }
        }
        exchanged = exchange_with(folder, &holdfast, carrier)?;
        text += &exchanged_text(&exchanged);
    }
    holdfast.shut()?;
    let shown = folder.display();
    text += &format!(
        "{}\n{}\n",
        say::command::restored_at(&shown),
        say::command::next_for_restored(&shown)
    );
    print::out(&text)
}
