//! Finding what a carrier has of a person, with nothing but their recovery code: which crew they are in, who founded it,
//! how many devices they had, what they are called. Little is fetched: of each lane the first file.

use std::collections::{BTreeMap, BTreeSet, VecDeque};

use super::own::MAX_LISTING;
use super::sealed::{MAX_SEALED_BYTES, SealedFault, SealedLeaf, SealedName, Tag, lane_tag};
use super::{CarriedFile, ExchangeReport, ListedFile};
use super::{ExchangeDid, ExchangeStep};
use crate::error::{Error, Field, Result};
use crate::id::{CrewId, DeviceId};
use crate::journal::{Body, Hlc, Profile, body_of};
use crate::say;
use crate::trust::{Certificate, Keys, Recovery, crew_of, person_of};

/// Files of a lane that are tried, where the first cannot be opened.
const TRIES: usize = 3;
/// Files fetched in one step.
const FILES_A_STEP: usize = 32;

/// What was found of a person.
#[derive(Clone, Debug)]
pub(crate) struct Found {
    /// A device of the coach who founded the crew.
    pub(crate) founder: Certificate,
    /// The highest place that one of the person's devices has.
    pub(crate) highest: u8,
    /// How many devices of theirs were seen.
    pub(crate) devices: usize,
    /// The last of their profiles that was seen.
    pub(crate) profile: Option<Profile>,
}

/// A search that is under way.
pub(crate) struct Finding {
    own: Keys,
    /// Files to try, by device and lane, the first one first.
    lanes: BTreeMap<(DeviceId, Tag), VecDeque<SealedName>>,
    crews: BTreeSet<CrewId>,
    /// Somebody else's devices, by the crew that their person would have founded.
    founders: BTreeMap<CrewId, Certificate>,
    devices: BTreeMap<DeviceId, u8>,
    profile: Option<(Hlc, Profile)>,
}

impl Finding {
    pub(crate) fn new(recovery: &Recovery) -> Finding {
        Finding {
            own: recovery.keys(),
            lanes: BTreeMap::new(),
            crews: BTreeSet::new(),
            founders: BTreeMap::new(),
            devices: BTreeMap::new(),
            profile: None,
        }
    }

    /// Takes in what a shell did, and says what it does next. Nothing is ever written to the carrier.
    pub(crate) fn step(&mut self, did: ExchangeDid) -> ExchangeStep {
        match did {
            ExchangeDid::Begin => return ExchangeStep::ListFiles,
            ExchangeDid::Listed { files } => self.list(&files),
            ExchangeDid::Got { files, .. } => files.iter().for_each(|file| self.look(file)),
            ExchangeDid::Put { .. } => {}
        }
        let mut names = Vec::new();
        for files in self.lanes.values_mut() {
            if names.len() < FILES_A_STEP {
                names.extend(files.pop_front().map(|name| name.to_string()));
            }
        }
        self.lanes.retain(|_, files| !files.is_empty());
        match names.is_empty() {
            true => ExchangeStep::Done { report: ExchangeReport::default() },
            false => ExchangeStep::Get { names },
        }
    }

    fn list(&mut self, files: &[ListedFile]) {
        for file in files.iter().take(MAX_LISTING) {
            if file.bytes > MAX_SEALED_BYTES as u64 {
                continue;
            }
            if let Some(name) = SealedName::parse(&file.name) {
                let lane = (name.device, name.tag);
                self.lanes.entry(lane).or_default().push_back(name);
            }
        }
        for files in self.lanes.values_mut() {
            files.make_contiguous().sort();
            files.truncate(TRIES);
        }
    }

    fn look(&mut self, file: &CarriedFile) {
        let Some(name) = SealedName::parse(&file.name) else { return };
        let leaf = match SealedLeaf::open_any(&name, &file.content, &[&self.own]) {
            Ok(leaf) => leaf,
            // A lane of somebody else's thread: no other file of it opens either.
            Err(SealedFault::NotForUs) => {
                self.lanes.remove(&(name.device, name.tag));
                return;
            }
            Err(_) => return,
        };
        // One of a device says all that is asked: its other files stay where they are.
        self.lanes.retain(|(device, _), _| *device != name.device);
        let person = person_of(&self.own.public().sign);
        if leaf.certificate.person() != person {
            let founded = crew_of(&leaf.certificate.person_keys().sign);
            self.founders.entry(founded).or_insert(leaf.certificate);
            return;
        }
        let crew = leaf.header.crew;
        self.crews.insert(crew);
        self.devices.insert(name.device, leaf.certificate.index());
        for entry in &leaf.entries {
            if let Some(Body::Profile(profile)) = body_of(&entry.raw)
                && profile.person == person
                && self.profile.as_ref().is_none_or(|(hlc, _)| *hlc < entry.hlc)
            {
                self.profile = Some((entry.hlc, profile));
            }
        }
        // A member has one thread, and works out what its lanes are called by.
        if crew == crew_of(&self.own.public().sign) {
            self.founders.insert(crew, leaf.certificate);
        } else {
            self.lanes.retain(|(device, tag), _| lane_tag(crew, person, *device) == *tag);
        }
    }

    /// What was found.
    ///
    /// # Errors
    /// [`Field::Recovery`] where it is not enough to go on from.
    pub(crate) fn found(&self) -> Result<Found> {
        let refused = |reason: &str| Error::invalid(Field::Recovery, reason);
        let crew = match self.crews.len() {
            0 => return Err(refused(say::crew::nothing_opens())),
            1 => self.crews.first().copied(),
            _ => None,
        };
        // One home is one crew: somebody with the person's device wrote for another.
        let Some(crew) = crew else { return Err(refused(say::crew::two_crews())) };
        let founder = match self.founders.get(&crew) {
            Some(founder) => *founder,
            None => return Err(refused(say::crew::no_coach_found())),
        };
        Ok(Found {
            founder,
            highest: self.devices.values().copied().max().unwrap_or_default(),
            devices: self.devices.len(),
            profile: self.profile.as_ref().map(|(_, profile)| profile.clone()),
        })
    }
}
