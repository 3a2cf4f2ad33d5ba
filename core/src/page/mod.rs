//! Pages: the places of a phone beside a session, drawn from records as a session's screens are. A shell draws any page the
//! same way; what stands on one, in which order and in which words, is decided here.

mod act;
mod board;
mod chart;
mod choices;
mod crew;
mod exchange;
mod first_run;
mod history;
mod kit;
mod movement;
mod record;
mod restore;
mod rows;
mod server;
mod session;
mod this_phone;

pub use act::{PageAct, PageAsk, StartAnswers};
pub use choices::{Heard, PhoneChoices, Shade, TextSize};
pub(crate) use crew::{pairing, recovery};
pub(crate) use first_run::first_run;
pub use record::{
    Chart, ChartMark, ChartPoint, PageBlock, PageCode, PageField, PageKey, PageNumber, PageRow,
    PageScreen, PageSign,
};
pub use restore::RestoreAnswers;
pub(crate) use restore::restore;
pub(crate) use server::page as server;

use crate::crew::RecoveryDid;
use crate::device::{Device, PairDid};
use crate::error::Result;
use crate::instant::Instant;
use crate::journal::Role;
use crate::say::page as say;

/// The key that leads home: to the day, or to a coach's board.
fn home(device: &Device) -> Result<PageKey> {
    let words = match device.profile()?.role {
        Role::Athlete => say::back_to_today(),
        Role::Coach => say::back_to_board(),
    };
    Ok(PageKey::moves(words, PageAct::Home))
}

/// Draws a page.
pub(crate) fn page(device: &mut Device, ask: PageAsk, at: &Instant) -> Result<PageScreen> {
    match ask {
        PageAsk::History { member } => history::page(device, member, at),
        PageAsk::Movement { member, movement } => movement::lifted(device, (member, &movement), at),
        PageAsk::Range { member, index } => movement::range(device, (member, index), at),
        PageAsk::Session { member, session } => session::page(device, member.as_deref(), session),
        PageAsk::Exchange { carriers } => exchange::page(device, &carriers, at),
        PageAsk::Server { kind, address } => Ok(server::page(kind, address)),
        PageAsk::Carrier { index, place } => Ok(exchange::carrier(index, place)),
        PageAsk::ThisPhone { choices } => this_phone::page(device, choices),
        PageAsk::Kit => kit::page(device, at),
        PageAsk::Crew => crew::page(device),
        PageAsk::Pairing => pairing(device, PairDid::Look, at),
        PageAsk::Recovery { shown } => {
            recovery(device, if shown { RecoveryDid::Show } else { RecoveryDid::Look }, at)
        }
        PageAsk::Cautions => Ok(this_phone::cautions()),
        PageAsk::Stored => Ok(this_phone::stored()),
        PageAsk::Board => board::page(device, at),
        PageAsk::Plan => board::plan(device, at),
    }
}
