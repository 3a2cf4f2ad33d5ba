//! An exchange as steps. The core says what to do with the carrier, a shell does that and nothing else,
//! and says what came of it:
//!
//! list the files there; fetch these, some at a time; write these, some at a time; done, with a report.
//!
//! A shell may stop between any two steps: what was taken in is kept, and the next exchange begins
//! with the list again.

use std::collections::BTreeSet;

use super::looked::Look;
use super::own::Own;
use super::running::Running;
use super::sealed::SealedName;
use super::{AsideFile, ExchangeDid, ExchangeReport, ExchangeStep, ledger};
use crate::error::{Error, Field, Result};
use crate::id::PersonId;
use crate::instant::Instant;
use crate::say;

/// What a device knows of its carrier.
#[derive(Default)]
pub(crate) struct Traffic {
    /// Files left alone: known until they are fetched whole.
    pub(crate) aside: Vec<AsideFile>,
    /// True when the last exchange read every file that it wanted.
    pub(crate) all_read: bool,
    /// One's last leaf in each thread that the last exchange brought; none where it could not write every file that the
    /// carrier did not have.
    pub(crate) brought: Option<Vec<(PersonId, i64)>>,
    running: Option<Running>,
}

impl Traffic {
    /// Takes in what a shell did, and says what it does next.
    pub(crate) fn step(
        &mut self,
        mut own: Own<'_>,
        did: ExchangeDid,
        at: &Instant,
    ) -> Result<ExchangeStep> {
        if did == ExchangeDid::Begin {
            let since = ledger::arrived(own.store.reader())?;
            self.running = Some(Running::since(since));
            return Ok(ExchangeStep::ListFiles);
        }
        let Some(mut running) = self.running.take() else {
            return Err(Error::invalid(Field::Exchange, say::exchange::none_running()));
        };
        match did {
            ExchangeDid::Begin => {}
            ExchangeDid::Listed { files } => {
                running.list(&mut own, &files)?;
                running.check_again(own.store, at)?;
            }
            ExchangeDid::Got { files, unread } => running.take_in(&mut own, &files, &unread, at)?,
            ExchangeDid::Put { written, unwritten } => running.written(written, unwritten),
        }
        let step = running.next(&mut own)?;
        match &step {
            ExchangeStep::Done { report } => {
                self.all_read = running.all_read;
                self.brought = running.brought();
                self.remember(&running, report);
            }
            _ => self.running = Some(running),
        }
        Ok(step)
    }

    /// Notes what the exchange under way lists, before it does.
    pub(crate) fn looks(&mut self, look: Look) {
        if let Some(running) = &mut self.running {
            running.looks(look);
        }
    }

    /// What was tried and left alone stays known as long as the carrier still has it so, with the reason
    /// that was given last: a reason is in the language that was spoken then.
    fn remember(&mut self, running: &Running, report: &ExchangeReport) {
        let new: BTreeSet<&str> = report.aside.iter().map(|file| file.name.as_str()).collect();
        let there =
            |name: &str| SealedName::parse(name).is_some_and(|name| running.is_there(&name));
        self.aside.retain(|known| there(&known.name) && !new.contains(known.name.as_str()));
        self.aside.extend(report.aside.iter().cloned());
        self.aside.sort();
    }
}
