//! The same entries in three general-purpose libraries of replicated data, each in the model it is fastest with: one
//! map, an entry's line of JSON as the value, one document a writer.

use automerge::transaction::Transactable;
use automerge::{ActorId, AutoCommit, ObjType, ROOT, ReadDoc};
use loro::{ExportMode, LoroDoc};
use yrs::updates::decoder::Decode;
use yrs::{Doc, Map, ReadTxn, StateVector, Transact, Update};

/// A whole document as it lies on disk, and what another writer adds to it.
pub struct Saved {
    /// The document.
    pub base: Vec<u8>,
    /// What is new.
    pub new: Vec<u8>,
}

/// A library.
pub trait Peer {
    /// What it is called.
    const NAME: &str;
    /// A document of the lines, whose keys begin at a number, and an update with those that are new.
    fn save(from: usize, lines: &[String], new: &[String]) -> Saved;
    /// Loads the document, takes in what is new, and gives the whole document back, with how many entries are in it.
    fn merge(saved: &Saved) -> (Vec<u8>, usize);
    /// Documents of several writers, loaded and merged into one: how many entries are in it.
    fn merge_all(documents: &[Vec<u8>]) -> usize;
}

fn key(at: usize) -> String {
    format!("{at:08}")
}

/// Automerge.
pub struct Automerge;

impl Automerge {
    /// The map must be one map for all writers: the same first change, by the same actor.
    fn begun() -> AutoCommit {
        let mut document = AutoCommit::new().with_actor(ActorId::from([0; 16]));
        document.put_object(ROOT, "entries", ObjType::Map).unwrap();
        document.commit();
        document.with_actor(ActorId::random())
    }

    fn add(document: &mut AutoCommit, lines: &[String], from: usize) {
        let (_, entries) = document.get(ROOT, "entries").unwrap().unwrap();
        for (at, line) in lines.iter().enumerate() {
            document.put(&entries, key(from + at), line.as_str()).unwrap();
        }
        document.commit();
    }

    fn count(document: &AutoCommit) -> usize {
        let Some((_, entries)) = document.get(ROOT, "entries").unwrap() else { return 0 };
        document.length(&entries)
    }
}

impl Peer for Automerge {
    const NAME: &str = "automerge";

    fn save(from: usize, lines: &[String], new: &[String]) -> Saved {
        let mut document = Automerge::begun();
        Automerge::add(&mut document, lines, from);
        let base = document.save();
        let mut other = document.fork();
        let heads = other.get_heads();
        Automerge::add(&mut other, new, from + lines.len());
        Saved { base, new: other.save_after(&heads) }
    }

    fn merge(saved: &Saved) -> (Vec<u8>, usize) {
        let mut document = AutoCommit::load(&saved.base).unwrap();
        document.load_incremental(&saved.new).unwrap();
        (document.save(), Automerge::count(&document))
    }

    fn merge_all(documents: &[Vec<u8>]) -> usize {
        let mut all = AutoCommit::load(&documents[0]).unwrap();
        for document in &documents[1..] {
            all.merge(&mut AutoCommit::load(document).unwrap()).unwrap();
        }
        Automerge::count(&all)
    }
}

/// Loro.
pub struct Loro;

impl Peer for Loro {
    const NAME: &str = "loro";

    fn save(from: usize, lines: &[String], new: &[String]) -> Saved {
        let document = LoroDoc::new();
        let add = |document: &LoroDoc, lines: &[String], from: usize| {
            let entries = document.get_map("entries");
            for (at, line) in lines.iter().enumerate() {
                entries.insert(&key(from + at), line.as_str()).unwrap();
            }
            document.commit();
        };
        add(&document, lines, from);
        let base = document.export(ExportMode::Snapshot).unwrap();
        let other = LoroDoc::new();
        other.import(&base).unwrap();
        let seen = other.oplog_vv();
        add(&other, new, from + lines.len());
        Saved { base, new: other.export(ExportMode::updates(&seen)).unwrap() }
    }

    fn merge(saved: &Saved) -> (Vec<u8>, usize) {
        let document = LoroDoc::new();
        document.import(&saved.base).unwrap();
        document.import(&saved.new).unwrap();
        let count = document.get_map("entries").len();
        (document.export(ExportMode::Snapshot).unwrap(), count)
    }

    fn merge_all(documents: &[Vec<u8>]) -> usize {
        let all = LoroDoc::new();
        for document in documents {
            all.import(document).unwrap();
        }
        all.get_map("entries").len()
    }
}

/// Yrs.
pub struct Yrs;

impl Yrs {
    fn add(document: &Doc, lines: &[String], from: usize) {
        let entries = document.get_or_insert_map("entries");
        let mut transaction = document.transact_mut();
        for (at, line) in lines.iter().enumerate() {
            entries.insert(&mut transaction, key(from + at), line.as_str());
        }
    }

    fn take(document: &Doc, update: &[u8]) {
        document.transact_mut().apply_update(Update::decode_v1(update).unwrap()).unwrap();
    }

    fn count(document: &Doc) -> usize {
        let entries = document.get_or_insert_map("entries");
        entries.len(&document.transact()) as usize
    }

    fn whole(document: &Doc) -> Vec<u8> {
        document.transact().encode_state_as_update_v1(&StateVector::default())
    }
}

impl Peer for Yrs {
    const NAME: &str = "yrs";

    fn save(from: usize, lines: &[String], new: &[String]) -> Saved {
        let document = Doc::new();
        Yrs::add(&document, lines, from);
        let base = Yrs::whole(&document);
        let other = Doc::new();
        Yrs::take(&other, &base);
        let seen = other.transact().state_vector();
        Yrs::add(&other, new, from + lines.len());
        let new = other.transact().encode_state_as_update_v1(&seen);
        Saved { base, new }
    }

    fn merge(saved: &Saved) -> (Vec<u8>, usize) {
        let document = Doc::new();
        Yrs::take(&document, &saved.base);
        Yrs::take(&document, &saved.new);
        (Yrs::whole(&document), Yrs::count(&document))
    }

    fn merge_all(documents: &[Vec<u8>]) -> usize {
        let all = Doc::new();
        documents.iter().for_each(|document| Yrs::take(&all, document));
        Yrs::count(&all)
    }
}
