//! What waits to go out, what came, what is missing; and what carries it.

use super::act::{PageAct, PageAsk};
use super::record::{PageBlock, PageKey, PageRow, PageScreen, PageSign};
use super::rows::{adds_carrier, headed};
use crate::coach;
use crate::device::Device;
use crate::error::Result;
use crate::exchange;
use crate::instant::Instant;
use crate::say::page as say;
use crate::words;

pub(super) fn page(device: &mut Device, carriers: &[String], at: &Instant) -> Result<PageScreen> {
    let name = device.profile()?.name;
    let mut page = PageScreen { beside: Some(name), ..PageScreen::titled(say::exchange()) };
    let last = exchange::last_exchange(device.reader())?;
    let waiting = device.waiting()?;
    let belongs = device.belongs();
    page.block = Some(match (device.crew().is_some(), belongs, waiting) {
        (false, ..) => block(say::no_crew_yet(), say::join_first()),
        (true, false, _) => block(say::nothing_goes_out(), say::no_longer_counts()),
        (true, true, 0) => block(say::all_sent(), say::nothing_waits()),
        (true, true, _) => {
            let text =
                if carriers.is_empty() { say::needs_a_carrier() } else { say::goes_with_next() };
            PageBlock { heading: waits(waiting, last.as_ref(), at), text: text.to_owned() }
        }
    });
    let mut rows = Vec::new();
    if let Some(last) = &last {
        let mut row = PageRow::titled(say::last_exchange()).says(when(last, at));
        row.sign = Some(PageSign::Sent);
        rows.push(row);
    }
    for text in coach::arrivals(device)? {
        let mut row = PageRow::titled(say::not_arrived()).says(text);
        row.sign = Some(PageSign::NotArrived);
        rows.push(row);
    }
    for file in &device.traffic.aside {
        let mut row = PageRow::titled(&file.name).says(&file.reason);
        row.sign = Some(PageSign::Aside);
        rows.push(row);
    }
    let kept = (0..).zip(carriers).map(|(index, place)| {
        PageRow::opens(place, PageAsk::Carrier { index, place: place.clone() })
    });
    rows.extend(headed(kept.collect(), say::carriers()));
    rows.extend(adds_carrier());
    page.rows = rows;
    page.key = Some(match (device.crew().is_some(), carriers.is_empty()) {
        (false, _) => PageKey::moves(say::join_a_crew(), PageAct::Open { page: PageAsk::Pairing }),
        (true, true) => PageKey::waits(say::add_a_carrier_first()),
        (true, false) => PageKey::moves(say::exchange_now(), PageAct::Exchange),
    });
    Ok(page)
}

/// After so many days with no exchange it is said since when: somebody may think that their log goes out by itself.
const LONG_DAYS: i64 = 7;

/// What waits, and since when where that is long. It stands at home too.
fn waits(waiting: usize, last: Option<&Instant>, now: &Instant) -> String {
    match last {
        Some(last) if (now.date() - last.date()).num_days() > LONG_DAYS => {
            say::entries_wait_since(waiting, words::day(last.date()))
        }
        _ => say::entries_wait(waiting),
    }
}

fn block(heading: &str, text: &str) -> PageBlock {
    PageBlock { heading: heading.to_owned(), text: text.to_owned() }
}

/// `Sun 22 Nov, 18:40`, today without its day.
fn when(then: &Instant, now: &Instant) -> String {
    let time = then.time_of_day();
    if then.date() == now.date() {
        say::today_at(time)
    } else {
        say::day_at(words::day(then.date()), time)
    }
}

/// A carrier that is kept.
pub(super) fn carrier(index: u32, place: String) -> PageScreen {
    PageScreen {
        said: vec![say::carrier_is_kept().to_owned(), say::nothing_is_deleted().to_owned()],
        key: Some(PageKey::moves(say::forget_carrier(), PageAct::ForgetCarrier { index })),
        ..PageScreen::titled(place)
    }
}
