//! An exchange under way: what is fetched, what is written.

use std::collections::{BTreeMap, BTreeSet};
use std::io;
use std::path::Path;

use super::forget::{forgotten, is_forgotten};
use super::heal::Rotten;
use super::last;
use super::left_alone::{Known, MOST_TRIES, keep_few, leave_alone, left_alone};
use super::looked::Look;
use super::own::{MAX_LISTING, Own, is_for_us};
use super::portion::{BYTES_A_STEP, FILES_A_STEP, in_turn, some_of};
use super::sealed::{FileHash, LanePart, MAX_SEALED_BYTES, SealedFault, SealedName, is_as_named};
use super::take_in::{Reader, take_in};
use super::{
    AsideFile, CarriedFile, ExchangeReport, ExchangeStep, FailedFile, ListedFile, is_post, ledger,
    sha256,
};
use crate::error::{Error, Result};
use crate::id::PersonId;
use crate::instant::Instant;
use crate::planted::{Planted, planted};
use crate::say;
use crate::store::Store;

/// So many files fetched for nothing end the fetching: somebody fills the carrier. The next exchange goes on behind them.
const MOST_FAILED: usize = 200;
/// Files that this device has and fetches all the same, to see whether they lie there as they were
/// written: the newest, and some of the rest.
const CHECKED_AGAIN: u64 = 4;

/// An exchange that was begun.
#[derive(Default)]
pub(super) struct Running {
    /// What the carrier lists of ours, each with its size there.
    there: BTreeMap<SealedName, u64>,
    /// Names still to fetch, with their sizes, the last one first.
    get: Vec<(SealedName, u64)>,
    /// Names still to write, the last one first; none before everything is fetched.
    put: Option<Vec<SealedName>>,
    /// What of ours lies there as it was not written.
    rotten: Rotten,
    /// Crewmates' files that are not there yet, with their sizes.
    carried: BTreeMap<SealedName, u64>,
    /// What is listed of a server; none at a carrier whose files lie side by side.
    look: Option<Look>,
    /// What a shell was last told to fetch.
    asked: Vec<SealedName>,
    /// What was taken to be there unlisted, and is not as it was written.
    lost: Vec<SealedName>,
    /// The last leaf that was here before.
    since: i64,
    pub(super) all_read: bool,
    /// How many files were fetched for nothing.
    failed: usize,
    /// Files that could not be written there.
    unwritten: Vec<FailedFile>,
    /// One's last leaf in each thread when it was worked out what to bring.
    brings: Vec<(PersonId, i64)>,
    report: ExchangeReport,
}

impl Running {
    /// One that begins; `since` is the last leaf that was here before.
    pub(super) fn since(since: i64) -> Running {
        Running { since, all_read: true, ..Running::default() }
    }

    /// What it lists, once that was chosen.
    pub(super) fn looks(&mut self, look: Look) {
        self.look = Some(look);
    }

    /// What a shell wrote.
    pub(super) fn written(&mut self, written: u32, unwritten: Vec<FailedFile>) {
        self.report.put += written;
        self.rotten.not_written(&unwritten);
        self.unwritten.extend(unwritten);
    }

    /// How far it has brought each thread; none where a file could not be written.
    pub(super) fn brought(&mut self) -> Option<Vec<(PersonId, i64)>> {
        self.unwritten.is_empty().then(|| std::mem::take(&mut self.brings))
    }

    /// True for a file that lies in a folder which is not listed.
    fn passes_by(&self, name: &SealedName) -> bool {
        self.look.as_ref().is_some_and(|look| look.passes_by(&LanePart::of(name)))
    }

    /// True for a file that is there, by the listing or unlisted.
    pub(super) fn is_there(&self, name: &SealedName) -> bool {
        self.there.contains_key(name) || self.passes_by(name)
    }

    /// The files here but for those that are there unlisted: what an exchange costs follows what may be new.
    fn here(&self, store: &Store) -> Result<BTreeMap<SealedName, u64>> {
        match &self.look {
            Some(look) => ledger::files_but(store.reader(), |part| look.passes_by(part)),
            None => ledger::files(store.reader()),
        }
    }

    /// Works out what to fetch from a listing.
    pub(super) fn list(&mut self, own: &mut Own<'_>, listing: &[ListedFile]) -> Result<()> {
        let here = self.here(own.store)?;
        let forgotten = forgotten(own.store.reader(), own.store.device())?;
        let left_alone = left_alone(own.store.reader())?;
        keep_few(own.store, &left_alone, listing, |name| self.passes_by(name))?;
        if let Some(look) = &self.look {
            look.note(own.store, &here, listing, &left_alone)?;
        }
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
                Some(name) if !is_for_us(own.store.own(), own.crew, name.lane()) => {}
                Some(name)
                    if is_forgotten(&forgotten, own.crew, name.lane())
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
                    // Written again under another name, it came; nothing arrives for that long.
                    Some(Known::Torn(tries)) if *tries >= MOST_TRIES && has_place(&here, &name) => {
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
    pub(super) fn check_again(&mut self, store: &Store, at: &Instant) -> Result<()> {
        let there: Vec<_> =
            self.there.iter().filter(|(name, _)| !self.rotten.is_given_up(name)).collect();
        let listed = there.len() as u64;
        let count = listed + self.look.as_ref().map_or(0, Look::places_passed_by);
        let drawn = sha256(&at.wall_ms.to_be_bytes());
        let drawn = u64::from_str_radix(&drawn[..8], 16).unwrap_or(0);
        let some = (0..CHECKED_AGAIN.min(count)).map(|next| (drawn % count + next) % count);
        let places: BTreeSet<u64> = some.chain(listed.checked_sub(1)).collect();
        let mut chosen = Vec::new();
        for place in places {
            let listed = usize::try_from(place).ok().and_then(|place| there.get(place));
            match (listed, &self.look) {
                (Some((name, bytes)), _) => chosen.push((**name, **bytes)),
                (None, Some(look)) => {
                    if let Some((part, place)) = look.place_passed_by(place - there.len() as u64) {
                        chosen.extend(ledger::file_at(store.reader(), &part, place)?);
                    }
                }
                (None, None) => {}
            }
        }
        self.get.extend(chosen);
        Ok(())
    }

    /// What was taken to be there unlisted, and is not, is written again, and everything listed next time.
    fn miss(
        &mut self,
        store: &mut Store,
        files: &[CarriedFile],
        unread: &[FailedFile],
    ) -> Result<()> {
        let Some(look) = &self.look else { return Ok(()) };
        let answered: BTreeSet<&str> = (files.iter().map(|file| file.name.as_str()))
            .chain(unread.iter().map(|file| file.name.as_str()))
            .collect();
        let is_gone = |name: &SealedName| {
            look.passes_by(&LanePart::of(name)) && !answered.contains(name.to_string().as_str())
        };
        let gone: Vec<SealedName> =
            std::mem::take(&mut self.asked).into_iter().filter(is_gone).collect();
        if !gone.is_empty() {
            look.forget(store)?;
        }
        self.lost.extend(gone);
        Ok(())
    }

    /// Takes in files that were fetched. One bad file never stops the others.
    pub(super) fn take_in(
        &mut self,
        own: &mut Own<'_>,
        files: &[CarriedFile],
        unread: &[FailedFile],
        at: &Instant,
    ) -> Result<()> {
        self.all_read &= unread.is_empty();
        self.report.aside.extend(unread.iter().map(AsideFile::unread));
        self.miss(own.store, files, unread)?;
        // This device has them: what lies there rotten is written again.
        let mut fresh = Vec::new();
        for file in files {
            let named = SealedName::parse(&file.name);
            match named.as_ref().filter(|name| self.is_there(name)) {
                Some(name)
                    if !is_as_named(name, &file.content) && !planted(Planted::SizeIsEnough) =>
                {
                    if self.there.remove(name).is_none() {
                        self.lost.push(*name);
                    }
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

    pub(super) fn next(&mut self, own: &mut Own<'_>) -> Result<ExchangeStep> {
        if self.failed >= MOST_FAILED && !self.get.is_empty() {
            let reason = say::exchange::too_many_failed(self.failed, self.get.len());
            let name = say::exchange::whole_folder().into();
            self.report.aside.push(AsideFile { name, reason });
            self.get.clear();
            self.all_read = false;
        }
        let names = some_of(&mut self.get, |(_, bytes)| *bytes);
        if !names.is_empty() {
            self.asked = names.iter().map(|(name, _)| *name).collect();
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
        let mut rotten = std::mem::take(&mut self.rotten);
        let sealed = rotten.give_up((store, shelf, &signer), |name| self.is_there(name))?;
        self.rotten = rotten;
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
            let new = shelf.cut(store, &signer)?;
            self.brings = last::ends(store.reader(), store.device())?;
            if !own.standing.stands(&own.trusted.certificate) {
                self.put = Some(Vec::new());
                return Ok(Vec::new());
            }
            let here = self.here(own.store)?;
            let mut lacking = std::mem::take(&mut self.lost);
            // One that was sealed again lies in a part that was whole without it.
            lacking.extend(new.into_iter().filter(|name| self.passes_by(name)));
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

/// True when a file of the same place in a lane is here.
fn has_place(here: &BTreeMap<SealedName, u64>, name: &SealedName) -> bool {
    let first = SealedName { hash: FileHash::of(&[]), ..*name };
    let next = here.range(first..).next();
    next.is_some_and(|(other, _)| SealedName { hash: name.hash, ..*other } == *name)
}
