//! Exchanging again and again: what a coach's laptop does by itself while it is open.

use std::path::{Path, PathBuf};
use std::time::Duration;

use carry::Carried;
use holdfast_core::exchange::{AsideFile, ExchangeReport};
use holdfast_core::{Field, HoldfastError};

use crate::carrier::exchanged_text;
use crate::fault::{Fault, Outcome};
use crate::now::now;
use crate::{carriers, home, print, say};

/// How an exchange that is tried again ends.
enum Round {
    /// It was done.
    Done(ExchangeReport),
    /// It was not, and waiting may help: there is no connection, or the carrier is away.
    Away(String),
    /// Another program uses the device just now.
    Busy,
}

/// Exchanges every so often until it is ended from outside. Between two exchanges other commands can use the device.
///
/// # Errors
/// What waiting does not mend, such as a password that is no longer right.
pub(crate) fn run(at: &Path, carrier: &Path, every: Duration, language_asked: bool) -> Outcome {
    let mut watch = Watch { folder: carriers::folder_of(at, carrier)?, ..Watch::default() };
    let mut first = true;
    loop {
        let round = watch.round(at, carrier, language_asked)?;
        if std::mem::take(&mut first) {
            // In the language of whoever's device it is.
            let named = carrier.display();
            print::out(&format!("{}\n", say::command::watching(named, every.as_secs())))?;
        }
        if let Some(text) = watch.said(round) {
            let time = now().local().format("%H:%M").to_string();
            print::out(&format!("{time}  {text}"))?;
        }
        std::thread::sleep(every);
    }
}

/// What was told so far, so that nothing is told twice.
#[derive(Default)]
struct Watch {
    /// The carrier's folder, where it is one.
    folder: Option<PathBuf>,
    aside: Vec<AsideFile>,
    away: bool,
}

impl Watch {
    fn round(&self, at: &Path, carrier: &Path, language_asked: bool) -> Outcome<Round> {
        // A stick that was pulled out: its folder is not made anew on the disk below.
        if let Some(folder) = self.folder.as_ref().filter(|folder| !folder.is_dir()) {
            return Ok(Round::Away(Fault::at(folder, say::fault::carrier_missing()).to_string()));
        }
        let exchanged = home::open(at, language_asked).and_then(|(holdfast, _)| {
            let report = carriers::exchange_with(at, &holdfast, carrier);
            holdfast.shut()?;
            report
        });
        match exchanged {
            Ok(report) => Ok(Round::Done(report)),
            Err(Fault::Holdfast(HoldfastError::Invalid { field: Field::Home, .. })) => {
                Ok(Round::Busy)
            }
            Err(Fault::Carried(Carried::Offline(reason))) => Ok(Round::Away(reason.to_string())),
            Err(fault) => Err(fault),
        }
    }

    /// What is new since the last time; none where nothing is.
    fn said(&mut self, round: Round) -> Option<String> {
        match round {
            Round::Busy => None,
            Round::Away(reason) => {
                (!std::mem::replace(&mut self.away, true)).then(|| format!("{reason}\n"))
            }
            Round::Done(report) => {
                let back = std::mem::take(&mut self.away);
                let moved = report.leaves > 0 || report.put > 0 || !report.told.is_empty();
                let known = self.aside == report.aside;
                self.aside.clone_from(&report.aside);
                (moved || back || !known).then(|| exchanged_text(&report))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn report(leaves: u32, aside: &[&str]) -> Round {
        let aside =
            aside.iter().map(|name| AsideFile { name: (*name).to_owned(), reason: "torn".into() });
        Round::Done(ExchangeReport { leaves, aside: aside.collect(), ..ExchangeReport::default() })
    }

    #[test]
    fn only_what_is_new_is_said() {
        let mut watch = Watch::default();
        assert_eq!(watch.said(report(0, &[])), None);
        assert!(watch.said(report(2, &[])).unwrap().contains('2'));
        assert!(watch.said(report(0, &["a"])).unwrap().contains("torn"));
        assert_eq!(watch.said(report(0, &["a"])), None, "it is known");
        assert_eq!(watch.said(Round::Busy), None);
        assert_eq!(watch.said(Round::Away("no connection".into())).unwrap(), "no connection\n");
        assert_eq!(watch.said(Round::Away("no connection".into())), None);
        assert!(watch.said(report(0, &["a"])).is_some(), "it works again");
        assert_eq!(watch.said(report(0, &["a"])), None);
    }
}
