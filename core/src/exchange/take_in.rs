//! Taking in a leaf, wherever it came from: a carrier, or the device's own shelf.

use std::collections::BTreeSet;
use std::panic::resume_unwind;
use std::sync::mpsc::{SyncSender, sync_channel};
use std::thread::{Builder, ScopedJoinHandle};

use catalogue::{speaking, spoken};
use rusqlite::Transaction;

use super::forget::forgotten;
use super::members::{self, Trusted, settle};
use super::sealed::{Expected, SealedFault, SealedLeaf, SealedName};
use super::signer::Signer;
use super::{CarriedFile, Shelf, counting, ledger};
use crate::error::Result;
use crate::id::PersonId;
use crate::journal::{Body, Hlc, body_of};
use crate::planted::{Planted, planted};
use crate::store::Store;
use crate::trust::{Counts, Kept, Keys, Lane, Recovery, Standing};

/// What a device takes leaves in with.
pub(crate) struct Reader<'a> {
    pub(crate) kept: &'a Kept,
    pub(crate) trusted: &'a Trusted,
    pub(crate) standing: &'a mut Standing,
}

/// What came of a leaf.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct TakenIn {
    /// Entries that were new, and count so far.
    pub(crate) new: u64,
}

/// What came of a file: or why it was left alone.
pub(crate) type Outcome = std::result::Result<TakenIn, SealedFault>;

/// An opened file: its name and size, the leaf, and the body of each of its entries.
type Opened =
    std::result::Result<((SealedName, usize), SealedLeaf, Vec<Option<Body>>), SealedFault>;

/// Opened leaves that wait for their turn at most: a few, for one may have 16 MiB.
const AHEAD: usize = 4;
/// From so many files on they are opened beside the writing. Fewer are opened sooner than a thread is begun.
const BESIDE: usize = 4;

/// What opens files: nothing of it changes.
#[derive(Clone, Copy)]
struct Opener<'a> {
    kept: &'a Kept,
    trusted: &'a Trusted,
}

impl Opener<'_> {
    /// Whose leaves are taken in; none before there is a crew.
    fn expected(self) -> Option<Expected> {
        let founder = self.trusted.founder?.person();
        let own = self.trusted.own();
        let member = (!own.coach).then_some(own.person);
        Some(Expected { crew: self.trusted.crew()?, founder, member })
    }

    /// Opens a file.
    fn open(
        self,
        file: &CarriedFile,
    ) -> std::result::Result<(SealedName, SealedLeaf), SealedFault> {
        let name = SealedName::parse(&file.name).ok_or(SealedFault::Foreign)?;
        let expected = self.expected().ok_or(SealedFault::OtherCrew)?;
        // As long as the recovery secret lies here, what was sealed to the paper opens too: before others knew this
        // device they could not seal to it.
        let paper = self.kept.recovery.as_ref().map(Recovery::keys);
        let keys: Vec<&Keys> =
            [Some(&self.kept.keys), paper.as_ref()].into_iter().flatten().collect();
        let leaf = SealedLeaf::open(&name, &file.content, &keys, &expected)?;
        Ok((name, leaf))
    }

    /// Opens a file, or what was kept of it for this device alone.
    fn open_here(
        self,
        shelf: &Shelf,
        file: &CarriedFile,
    ) -> std::result::Result<(SealedName, SealedLeaf), SealedFault> {
        let shut = match self.open(file) {
            Err(SealedFault::NotForUs) => SealedFault::NotForUs,
            other => return other,
        };
        let (Some(name), Some(expected)) = (SealedName::parse(&file.name), self.expected()) else {
            return Err(shut);
        };
        let copy = shelf.own_copy(&name).ok_or(shut)?;
        let leaf = SealedLeaf::open_own(&name, &copy, &self.kept.keys, &expected)?;
        Ok((name, leaf))
    }

    /// Opens files in their order and hands each on, then puts those that are for this device on the shelf.
    fn open_all(
        self,
        files: &[&CarriedFile],
        forgotten: &BTreeSet<PersonId>,
        shelf: &Shelf,
        next: SyncSender<Opened>,
    ) -> Result<()> {
        let mut sound = Vec::new();
        for file in files {
            let opened =
                self.open_here(shelf, file).and_then(|(name, leaf)| match leaf.header.of {
                    of if forgotten.contains(&of) && !planted(Planted::FetchedAgain) => {
                        Err(SealedFault::NotForUs)
                    }
                    _ => {
                        let bodies = bodies(&leaf);
                        Ok(((name, file.content.len()), leaf, bodies))
                    }
                });
            if let Ok(((name, _), ..)) = &opened {
                sound.push((*name, file.content.as_slice()));
            }
            if next.send(opened).is_err() {
                // Whoever waits for them has given up, and says why.
                return Ok(());
            }
        }
        // Whoever waits for them knows that these were all.
        drop(next);
        shelf.put(&sound)
    }
}

impl<'a> Reader<'a> {
    fn opener(&self) -> Opener<'a> {
        Opener { kept: self.kept, trusted: self.trusted }
    }

    /// Opens a file that lies on the shelf.
    pub(super) fn open(
        &self,
        shelf: &Shelf,
        file: &CarriedFile,
    ) -> std::result::Result<(SealedName, SealedLeaf), SealedFault> {
        self.opener().open_here(shelf, file)
    }

    /// True for a file that is a leaf for this device.
    pub(crate) fn opens(kept: &Kept, trusted: &Trusted, name: &SealedName, bytes: &[u8]) -> bool {
        let file = CarriedFile { name: name.to_string(), content: bytes.to_vec() };
        Opener { kept, trusted }.open(&file).is_ok()
    }

    /// True when a file is a leaf of one's own that one does not know.
    fn is_lost(&self, store: &Store, file: &CarriedFile) -> Result<bool> {
        let named = SealedName::parse(&file.name);
        if named.is_none_or(|name| name.device != store.device()) {
            return Ok(false);
        }
        let Ok((_, leaf)) = self.opener().open(file) else { return Ok(false) };
        let lane = Lane { device: leaf.header.device, of: leaf.header.of };
        Ok(!ledger::is_here(store.reader(), lane, &leaf.content)?)
    }
}

/// Takes in files that came together, and says of each what came of it. When this returns, all that was taken in is on
/// disk: their files on the shelf first, then the rows of all of them in one transaction. What a stop leaves between the
/// two lies on the shelf unknown: the check that is due after it takes it in from there.
///
/// # Errors
/// When the disk refuses: then nothing of them is known.
pub(crate) fn take_in(
    store: &mut Store,
    shelf: &Shelf,
    reader: &mut Reader<'_>,
    files: &[&CarriedFile],
    wall_ms: i64,
) -> Result<Vec<Outcome>> {
    if files.is_empty() {
        return Ok(Vec::new());
    }
    catch_up(store, shelf, reader, files)?;
    let forgotten = &forgotten(store.reader(), store.device())?;
    let opener = reader.opener();
    let mut standing: Option<Standing> = None;
    let (mut outcomes, mut latest) = (Vec::new(), Hlc::default());
    std::thread::scope(|scope| {
        // Opening is the work of a processor, and writing waits for the disk: the one goes on beside the other.
        let beside = files.len() >= BESIDE;
        let (give, next) = sync_channel(if beside { AHEAD } else { files.len() });
        let language = spoken();
        let open = move || speaking(language, || opener.open_all(files, forgotten, shelf, give));
        let opening = match beside {
            true => {
                let running = Builder::new().spawn_scoped(scope, open);
                Opening::Beside(running.map_err(|error| shelf.refused(error))?)
            }
            false => Opening::Done(open()),
        };
        store.write(|tx| {
            for opened in next {
                outcomes.push(match opened {
                    Ok((_, leaf, _)) if is_ignored(tx, opener.trusted, &leaf)? => {
                        Err(SealedFault::NotForUs)
                    }
                    Ok(((name, bytes), leaf, bodies)) => {
                        let file = (&name, bytes);
                        let now = standing.as_ref().unwrap_or(reader.standing);
                        let (taken, settled) =
                            insert(tx, opener.trusted, now, file, &leaf, bodies)?;
                        standing = settled.or(standing.take());
                        let times = leaf.entries.iter().map(|entry| entry.hlc);
                        latest = times.fold(latest, |latest, hlc| latest.observe(hlc, wall_ms));
                        Ok(taken)
                    }
                    Err(fault) => Err(fault),
                });
            }
            opening.done()
        })
    })?;
    if let Some(settled) = standing {
        *reader.standing = settled;
    }
    store.observe(latest, wall_ms);
    Ok(outcomes)
}

/// The opening of files that came together.
enum Opening<'scope> {
    Done(Result<()>),
    Beside(ScopedJoinHandle<'scope, Result<()>>),
}

impl Opening<'_> {
    /// Waits until all are opened and on the shelf.
    fn done(self) -> Result<()> {
        match self {
            Opening::Done(done) => done,
            Opening::Beside(running) => running.join().unwrap_or_else(|panic| resume_unwind(panic)),
        }
    }
}

/// A bug that tests plant: one's own leaf that one does not know is none.
fn is_ignored(tx: &Transaction<'_>, trusted: &Trusted, leaf: &SealedLeaf) -> Result<bool> {
    let lane = Lane { device: leaf.header.device, of: leaf.header.of };
    Ok(planted(Planted::OwnLeafIgnored)
        && lane.device == trusted.certificate.device()
        && !ledger::is_here(tx, lane, &leaf.content)?)
}

/// Where one's own leaf comes that one does not know, this device goes on from a backup, or was copied. What it logged
/// since is cut first, so that it follows what it followed.
fn catch_up(
    store: &mut Store,
    shelf: &Shelf,
    reader: &Reader<'_>,
    files: &[&CarriedFile],
) -> Result<()> {
    let Some(crew) = reader.trusted.crew() else { return Ok(()) };
    for file in files {
        if !planted(Planted::OwnLeafIgnored) && reader.is_lost(store, file)? {
            let (keys, trusted) = (&reader.kept.keys, reader.trusted);
            let signer = Signer { keys, trusted, crew, standing: &*reader.standing };
            return shelf.cut(store, &signer).map(drop);
        }
    }
    Ok(())
}

/// What each entry of a leaf says, where this reader can interpret it.
pub(super) fn bodies(leaf: &SealedLeaf) -> Vec<Option<Body>> {
    leaf.entries.iter().map(|entry| body_of(&entry.raw)).collect()
}

pub(super) fn insert(
    tx: &Transaction<'_>,
    trusted: &Trusted,
    standing: &Standing,
    file: (&SealedName, usize),
    leaf: &SealedLeaf,
    bodies: Vec<Option<Body>>,
) -> Result<(TakenIn, Option<Standing>)> {
    let lane = Lane { device: leaf.header.device, of: leaf.header.of };
    let certified = members::add_certificate(tx, &leaf.certificate)?;
    let counts = match certified {
        // Whose it is comes out below.
        true => Counts::Unknown,
        false => standing.counts(lane, &leaf.content),
    };
    let new = ledger::insert(tx, leaf, counts)?;
    ledger::add_file(tx, file, leaf)?;
    let mut taken = TakenIn::default();
    if !new {
        return Ok((taken, None));
    }
    match counts {
        Counts::Yes => taken.new = counting::admit(tx, standing, lane, &leaf.entries, bodies)?,
        _ => counting::hold(tx, lane, &leaf.content, &leaf.entries)?,
    }
    // Nobody else's leaf says so: a line does not name its writer.
    if lane.device == trusted.certificate.device() {
        ledger::posted(tx, leaf)?;
    }
    let spoken = leaf.entries.iter().any(|entry| members::is_of_people(&entry.kind));
    if !(certified || spoken || standing.is_limited(lane.device)) {
        return Ok((taken, None));
    }
    let settled = settle(tx, trusted)?;
    let now = settled.counts(lane, &leaf.content);
    if counts != Counts::Yes && now == Counts::Yes {
        taken.new = leaf.entries.len() as u64;
    }
    Ok((taken, Some(settled)))
}

#[cfg(test)]
mod tests {
    use std::fs;

    use super::super::sealed::Audience;
    use super::super::sealed::tests::{Somebody, somebody};
    use super::super::tests::{chain_of, coachs};
    use super::*;

    /// Ana's leaves, sealed to the coach.
    fn files(coach: &Somebody, ana: &Somebody, leaves: u64) -> Vec<CarriedFile> {
        let founder = vec![coach.certificate.device_keys().open];
        let audience = Audience { founder, ..Audience::default() };
        let sealed = |leaf: SealedLeaf| {
            let content = leaf.seal(&ana.device, &audience).unwrap();
            CarriedFile { name: leaf.name(&content).to_string(), content }
        };
        chain_of(coach, ana, leaves).into_iter().map(sealed).collect()
    }

    /// A coach's device with a shelf, and how it takes files in.
    struct Coachs {
        store: Store,
        trusted: Trusted,
        standing: Standing,
        kept: Kept,
        home: tempfile::TempDir,
    }

    impl Coachs {
        fn new() -> (Coachs, Somebody, Somebody) {
            let (coach, ana) = (somebody(1), somebody(2));
            let (store, trusted, standing) = coachs(&coach, &ana);
            let kept = Kept { keys: somebody(1).device, recovery: None };
            let home = tempfile::tempdir().unwrap();
            (Coachs { store, trusted, standing, kept, home }, coach, ana)
        }

        fn take_in(&mut self, files: &[CarriedFile]) -> Result<Vec<Outcome>> {
            let Coachs { store, trusted, standing, kept, home } = self;
            let shelf = Shelf::of(home.path())?;
            let files: Vec<&CarriedFile> = files.iter().collect();
            take_in(store, &shelf, &mut Reader { kept, trusted, standing }, &files, 0)
        }

        /// How many leaves the database knows, and how many files lie on the shelf.
        fn counts(&self) -> (u64, usize) {
            let shelf = Shelf::of(self.home.path()).unwrap();
            (ledger::leaves(self.store.reader()).unwrap(), shelf.names().unwrap().len())
        }
    }

    /// Few and many, opened here and beside: what came of each stands in its place, and only the sound ones are known.
    #[test]
    fn each_file_has_its_outcome_whatever_lies_beside_it() {
        for count in [0, 1, BESIDE as u64 - 1, BESIDE as u64, 10 * AHEAD as u64] {
            let (mut device, coach, ana) = Coachs::new();
            let mut files = files(&coach, &ana, count);
            for file in files.iter_mut().skip(1).step_by(3) {
                file.content[300] ^= 1;
            }
            let outcomes = device.take_in(&files).unwrap();
            assert_eq!(outcomes.len(), files.len());
            for (at, outcome) in outcomes.iter().enumerate() {
                let torn = at % 3 == 1;
                let wanted = if torn { Err(SealedFault::Torn) } else { Ok(TakenIn { new: 1 }) };
                assert_eq!(*outcome, wanted, "{at} of {count}");
            }
            let sound = outcomes.iter().flatten().count();
            assert_eq!(device.counts(), (sound as u64, sound));
        }
    }

    /// A database that refuses ends the opening of what is left; a shelf that refuses keeps the rows out. Afterwards
    /// everything is taken in as if nothing had been.
    #[test]
    fn where_one_of_both_refuses_nothing_is_known() {
        let (mut device, coach, ana) = Coachs::new();
        let files = files(&coach, &ana, 10 * AHEAD as u64);
        let read_only = |device: &Coachs, on: bool| {
            device.store.reader().pragma_update(None, "query_only", on).unwrap();
        };
        read_only(&device, true);
        assert!(device.take_in(&files).is_err());
        read_only(&device, false);
        assert_eq!(device.counts().0, 0);
        let shelf = device.home.path().join("leaves");
        fs::remove_dir_all(&shelf).unwrap();
        let name = |file: &CarriedFile| shelf.join(&file.name);
        fs::create_dir_all(name(&files[30])).unwrap();
        assert!(device.take_in(&files).is_err());
        assert_eq!(device.counts().0, 0);
        fs::remove_dir(name(&files[30])).unwrap();
        let taken = device.take_in(&files).unwrap();
        assert!(taken.iter().all(|taken| *taken == Ok(TakenIn { new: 1 })), "{taken:?}");
        assert_eq!(device.counts(), (files.len() as u64, files.len()));
    }
}
