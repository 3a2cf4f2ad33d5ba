//! An exchange as steps. The core says what to do with the carrier, a shell does that and nothing else,
//! and says what came of it:
//!
//! list the files there; fetch these, some at a time; write these, some at a time; done, with a report.
//!
//! A shell may stop between any two steps: what was taken in is kept, and the next exchange begins
//! with the list again.

use std::collections::{BTreeMap, BTreeSet};
use std::io;
use std::path::Path;

use super::forget::{forgotten, is_forgotten};
use super::heal::Rotten;
use super::left_alone::{Known, keep_few, leave_alone, left_alone};
use super::members::Trusted;
use super::portion::{BYTES_A_STEP, FILES_A_STEP, in_turn, some_of};
use super::sealed::{MAX_SEALED_BYTES, SealedFault, SealedName, is_as_named, lane_tag};
use super::signer::Signer;
use super::take_in::{Reader, take_in};
use super::{
    AsideFile, Bag, CarriedFile, ExchangeDid, ExchangeReport, ExchangeStep, FailedFile, ListedFile,
    Shelf, is_post, ledger, sha256,
};
use crate::error::{Error, Field, Result};
use crate::id::CrewId;
use crate::instant::Instant;
use crate::planted::{Planted, planted};
use crate::say;
use crate::store::Store;
use crate::trust::{Kept, Standing};

/// The most names of one listing that are looked at: a folder with more is not a carrier's.
pub const MAX_LISTING: usize = 100_000;

/// So many files fetched for nothing end the fetching: somebody fills the carrier. The next exchange goes on behind them.
const MOST_FAILED: usize = 200;
/// Files that this device has and fetches all the same, to see whether they lie there as they were
/// written: the newest, and some of the rest.
const CHECKED_AGAIN: usize = 4;

/// What an exchange works on.
pub(crate) struct Own<'a> {
    pub(crate) store: &'a mut Store,
    pub(crate) shelf: &'a Shelf,
    pub(crate) bag: &'a Bag,
    pub(crate) kept: &'a Kept,
    pub(crate) trusted: &'a Trusted,
    /// Who counts, as of now.
    pub(crate) standing: &'a mut Standing,
    /// The crew: nothing is exchanged before there is one.
    pub(crate) crew: CrewId,
}

/// What a device knows of its carrier.
#[derive(Default)]
pub(crate) struct Traffic {
    /// Files left alone: known until they are fetched whole.
    pub(crate) aside: Vec<AsideFile>,
    /// True when the last exchange read every file that it wanted.
    pub(crate) all_read: bool,
    running: Option<Running>,
}

/// An exchange that was begun.
#[derive(Default)]
struct Running {
    /// What the carrier has of ours, each with its size there.
    there: BTreeMap<SealedName, u64>,
    /// Names still to fetch, with their sizes, the last one first.
    get: Vec<(SealedName, u64)>,
    /// Names still to write, the last one first; none before everything is fetched.
    put: Option<Vec<SealedName>>,
    /// What of ours lies there as it was not written.
    rotten: Rotten,
    /// Crewmates' files that are not there yet, with their sizes.
    carried: BTreeMap<SealedName, u64>,
    /// The last leaf that was here before.
    since: i64,
    all_read: bool,
    /// How many files were fetched for nothing.
    failed: usize,
    /// Files that could not be written there.
    unwritten: Vec<FailedFile>,
    report: ExchangeReport,
}

impl Own<'_> {
    /// True for a file that may be for this device. A member's has one thread, and works out what its lanes are called
    /// by; a coach's has all.
    fn is_for_us(&self, name: &SealedName) -> bool {
        let own = self.store.own();
        own.coach || lane_tag(self.crew, own.person, name.device) == name.tag
    }

    /// What seals, and what it seals from.
    fn sealing(&mut self) -> (Signer<'_>, &Shelf, &mut Store) {
        let (keys, trusted, crew) = (&self.kept.keys, self.trusted, self.crew);
        (Signer { keys, trusted, crew, standing: &*self.standing }, self.shelf, self.store)
    }
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
            self.running = Some(Running { since, all_read: true, ..Running::default() });
            return Ok(ExchangeStep::ListFiles);
        }
        let Some(mut running) = self.running.take() else {
            return Err(Error::invalid(Field::Exchange, say::exchange::none_running()));
        };
        match did {
            ExchangeDid::Begin => {}
            ExchangeDid::Listed { files } => {
                running.list(&mut own, &files)?;
                running.check_again(at);
            }
            ExchangeDid::Got { files, unread } => running.take_in(&mut own, &files, &unread, at)?,
            ExchangeDid::Put { written, unwritten } => {
                running.report.put += written;
                running.rotten.not_written(&unwritten);
                running.unwritten.extend(unwritten);
            }
        }
        let step = running.next(&mut own)?;
        match &step {
            ExchangeStep::Done { report } => {
                self.all_read = running.all_read;
                self.remember(&running, report);
            }
            _ => self.running = Some(running),
        }
        Ok(step)
    }

    /// What was tried and left alone stays known as long as the carrier still has it so, with the reason
    /// that was given last: a reason is in the language that was spoken then.
    fn remember(&mut self, running: &Running, report: &ExchangeReport) {
        let new: BTreeSet<&str> = report.aside.iter().map(|file| file.name.as_str()).collect();
        let there = |name: &str| {
            SealedName::parse(name).is_some_and(|name| running.there.contains_key(&name))
        };
        self.aside.retain(|known| there(&known.name) && !new.contains(known.name.as_str()));
        self.aside.extend(report.aside.iter().cloned());
        self.aside.sort();
    }
}

impl Running {
    /// Works out what to fetch from a listing.
    fn list(&mut self, own: &mut Own<'_>, listing: &[ListedFile]) -> Result<()> {
        let here = ledger::files(own.store.reader())?;
        let forgotten = forgotten(own.store.reader(), own.store.device())?;
        let left_alone = left_alone(own.store.reader())?;
        keep_few(own.store, &left_alone, listing)?;
        let (mut aside, mut waiting) = (Vec::new(), Vec::new());
        self.carried = own.bag.files();
        for file in listing.iter().take(MAX_LISTING) {
            // Hidden files are a file synchroniser's own, or one of ours half-written; those of a pairing are not for here.
            if file.name.starts_with('.') || is_post(&file.name) {
                continue;
            }
            let named = SealedName::parse(&file.name);
            // A crewmate's, and there: whoever carried it is done.
            if let Some(name) = named.as_ref()
                && self.carried.get(name) == Some(&file.bytes)
            {
                self.carried.remove(name);
                own.bag.delivered(name);
            }
            match named {
                None => aside.push(AsideFile::of(&file.name, &SealedFault::Foreign)),
                // Somebody else's thread: nothing to say of it.
                Some(name) if !own.is_for_us(&name) => {}
                Some(name)
                    if is_forgotten(&forgotten, own.crew, &name)
                        && !planted(Planted::FetchedAgain) => {}
                Some(name) if here.contains_key(&name) => {
                    if let Some(Known::Useless(_)) = left_alone.get(&(name, file.bytes)) {
                        self.rotten.was_given_up(&name);
                    }
                    self.there.insert(name, file.bytes);
                }
                Some(_) if file.bytes > MAX_SEALED_BYTES as u64 => {
                    let fault = SealedFault::TooLarge { bytes: file.bytes };
                    aside.push(AsideFile::of(&file.name, &fault));
                }
                Some(name) => match left_alone.get(&(name, file.bytes)) {
                    Some(Known::Useless(reason)) if reason.is_empty() => {}
                    Some(Known::Useless(reason)) => {
                        aside.push(AsideFile::again(&file.name, reason));
                    }
                    Some(Known::Torn(tries)) => waiting.push((*tries, name, file.bytes)),
                    None => waiting.push((0, name, file.bytes)),
                },
            }
        }
        if listing.len() > MAX_LISTING {
            let reason = say::exchange::too_many_files(listing.len(), MAX_LISTING);
            let name = say::exchange::whole_folder().into();
            aside.push(AsideFile { name, reason });
        }
        self.get.extend(in_turn(waiting).into_iter().rev());
        self.report.aside.extend(aside);
        Ok(())
    }

    /// Chooses files to fetch although this device has them: the newest, and some of the others, other ones
    /// each time. Not in turn by the clock: who exchanges every evening would look at the same ones for ever.
    fn check_again(&mut self, at: &Instant) {
        let there: Vec<_> =
            self.there.iter().filter(|(name, _)| !self.rotten.is_given_up(name)).collect();
        let count = there.len();
        let drawn = sha256(&at.wall_ms.to_be_bytes());
        let drawn = usize::from_str_radix(&drawn[..8], 16).unwrap_or(0);
        let some = (0..CHECKED_AGAIN.min(count)).map(|next| (drawn % count + next) % count);
        let places: BTreeSet<usize> = some.chain(count.checked_sub(1)).collect();
        let chosen = places.into_iter().map(|place| (*there[place].0, *there[place].1));
        self.get.extend(chosen);
    }

    /// Takes in files that were fetched. One bad file never stops the others.
    fn take_in(
        &mut self,
        own: &mut Own<'_>,
        files: &[CarriedFile],
        unread: &[FailedFile],
        at: &Instant,
    ) -> Result<()> {
        self.all_read &= unread.is_empty();
        self.report.aside.extend(unread.iter().map(AsideFile::unread));
        // This device has them: what lies there rotten is written again.
        let mut fresh = Vec::new();
        for file in files {
            let named = SealedName::parse(&file.name);
            match named.as_ref().filter(|name| self.there.contains_key(name)) {
                Some(name)
                    if !is_as_named(name, &file.content) && !planted(Planted::SizeIsEnough) =>
                {
                    self.there.remove(name);
                    self.rotten.found(name, file.content.len() as u64);
                }
                Some(_) => {}
                // Brought twice it is taken in once.
                None => {
                    self.there.extend(named.map(|name| (name, file.content.len() as u64)));
                    fresh.push(file);
                }
            }
        }
        let Own { store, shelf, kept, trusted, standing, .. } = own;
        let mut reader = Reader { kept, trusted, standing };
        let outcomes = take_in(store, shelf, &mut reader, &fresh, at.wall_ms)?;
        let mut faults = Vec::new();
        for (file, outcome) in fresh.into_iter().zip(outcomes) {
            match outcome {
                Ok(taken) => {
                    self.report.leaves += 1;
                    self.report.entries += taken.new;
                }
                Err(fault) => {
                    if planted(Planted::CarriedUnverified) {
                        own.bag.take(std::slice::from_ref(file))?;
                    }
                    faults.push((file, fault));
                }
            }
        }
        self.failed += faults.len();
        leave_alone(store, &faults)?;
        // Sealed to others: no fault, and nothing to say.
        faults.retain(|(_, fault)| *fault != SealedFault::NotForUs);
        self.report.aside.extend(faults.iter().map(|of| AsideFile::of(&of.0.name, &of.1)));
        Ok(())
    }

    fn next(&mut self, own: &mut Own<'_>) -> Result<ExchangeStep> {
        if self.failed >= MOST_FAILED && !self.get.is_empty() {
            let reason = say::exchange::too_many_failed(self.failed, self.get.len());
            let name = say::exchange::whole_folder().into();
            self.report.aside.push(AsideFile { name, reason });
            self.get.clear();
            self.all_read = false;
        }
        let names = some_of(&mut self.get, |(_, bytes)| *bytes);
        if !names.is_empty() {
            let names = names.into_iter().map(|(name, _)| name.to_string()).collect();
            return Ok(ExchangeStep::Get { names });
        }
        let files = self.some_to_put(own)?;
        if !files.is_empty() {
            return Ok(ExchangeStep::Put { files });
        }
        // Where nothing can be replaced, what was written again still lies there as it was.
        let names = self.rotten.written_again();
        if !names.is_empty() {
            self.there.extend(names.clone());
            return Ok(ExchangeStep::Get {
                names: names.keys().map(ToString::to_string).collect(),
            });
        }
        let (signer, shelf, store) = own.sealing();
        let is_there = |name: &SealedName| self.there.contains_key(name);
        let sealed = self.rotten.give_up((store, shelf, &signer), is_there)?;
        if !sealed.is_empty() {
            self.put = Some(sealed);
            return self.next(own);
        }
        let mut report = std::mem::take(&mut self.report);
        if let Some(first) = self.unwritten.first()
            && report.put == 0
            && report.leaves == 0
        {
            return Err(Error::file(Path::new(&first.name))(io::Error::other(
                first.reason.clone(),
            )));
        }
        report.aside.extend(self.unwritten.iter().map(AsideFile::unwritten));
        // Now that all is here: what a leaf waited for, or what ended its device, may have come after it.
        let uncounted = ledger::uncounted_since(own.store.reader(), self.since)?;
        let aside = uncounted.iter().map(|(name, why)| AsideFile::uncounted(name, *why));
        report.aside.extend(aside);
        report.aside.sort();
        report.aside.dedup();
        Ok(ExchangeStep::Done { report })
    }

    /// The next files that the carrier lacks: what this device has of its own threads, and what it carries unopened for
    /// a member without a connection.
    fn some_to_put(&mut self, own: &mut Own<'_>) -> Result<Vec<CarriedFile>> {
        if self.put.is_none() {
            // What is logged by now goes with it. Who no longer counts brings nothing, or what was forgotten would come
            // back.
            let (signer, shelf, store) = own.sealing();
            shelf.cut(store, &signer)?;
            if !own.standing.stands(&own.trusted.certificate) {
                self.put = Some(Vec::new());
                return Ok(Vec::new());
            }
            let here = ledger::files(own.store.reader())?;
            let mut lacking = Vec::new();
            for (name, bytes) in here.into_iter().rev() {
                let ours = if bytes > 0 { Some(bytes) } else { own.shelf.bytes_of(&name) };
                match self.there.get(&name) {
                    Some(_) if self.rotten.is_given_up(&name) => continue,
                    Some(there) if ours.is_none_or(|ours| ours == *there) => continue,
                    // Another size than ours was torn on the way there, and is written again.
                    Some(there) => self.rotten.found(&name, *there),
                    None => {}
                }
                lacking.push(name);
            }
            // One's own first, then what one carries for others.
            self.put = Some(self.carried.keys().rev().cloned().chain(lacking).collect());
        }
        let mut files: Vec<CarriedFile> = Vec::new();
        let mut bytes = 0;
        while files.len() < FILES_A_STEP && bytes < BYTES_A_STEP {
            let Some(name) = self.put.as_mut().and_then(Vec::pop) else { break };
            let of_others = || own.bag.read(&name);
            if let Some(content) = own.shelf.leaf(own.store, &name)?.or_else(of_others) {
                bytes += content.len() as u64;
                files.push(CarriedFile { name: name.to_string(), content });
            }
        }
        Ok(files)
    }
}
