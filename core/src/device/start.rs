//! Starting on a device, and opening it again.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::identity::Before;
use super::lock::HomeLock;
use super::open::{DATABASE, Look, Parts, open};
use super::owner::Owner;
use super::{Device, Identity, Keystore, Rebuilt, key_files, place};
use crate::error::{Error, Field, Result, Thing};
use crate::exchange::{Found, Traffic, flush_folder};
use crate::instant::Instant;
use crate::journal::{Here, Profile, Role};
use crate::mass::MassUnit;
use crate::say;
use crate::store::{Draft, Query, is_damage, last_number};
use crate::trust::{Certificate, Kept, Keys, Recovery, crew_of};

const MAX_NAME_CHARS: usize = 40;

/// How somebody starts on a device.
#[derive(Clone, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Start {
    /// Coach or athlete.
    pub role: Role,
    /// The name others see.
    pub name: String,
    /// The unit they read masses in.
    pub unit: MassUnit,
    /// At least 80 bytes from the system's source of chance: keys are made from them, and identities from keys.
    pub chance: Vec<u8>,
}

/// Makes a device's home folder, identity and database.
pub(crate) fn started(
    home: String,
    start: Start,
    keystore: Keystore,
    at: Instant,
) -> Result<Device> {
    let name = valid_name(&start.name)?;
    let (recovery, keys) = drawn(&start.chance)?;
    let certificate = Certificate::sign(&recovery.keys(), &keys.public(), 1);
    let (person, device) = (certificate.person(), certificate.device());
    let founded = || crew_of(&certificate.person_keys().sign);
    let (role, unit) = (start.role, start.unit);
    let crew = (role == Role::Coach).then(founded);
    let profile = Profile { person, name, role, unit, language: None, crew };
    let founder = (role == Role::Coach).then_some(certificate);
    let (own, before, restoring) = (profile.clone(), Vec::new(), false);
    let identity = Identity {
        device,
        certificate,
        founder,
        shares_from: None,
        profile: own,
        restoring,
        before,
    };
    let kept = Kept { keys, recovery: Some(recovery) };
    let mut device = begun(home, identity, (kept, keystore), at)?;
    let opened_at = device.opened_at.clone();
    device.append(&opened_at, vec![Draft::new(profile)])?;
    Ok(device)
}

/// Opens a device that was started before.
pub(crate) fn opened(home: String, keystore: Keystore, at: Instant) -> Result<Device> {
    let folder = PathBuf::from(&home);
    let nobody = || Error::not_found(Thing::Device, &home, say::device::nobody_started());
    // A folder that is nobody's device is left as it is.
    if !Identity::is_in(&folder) {
        if folder.join(DATABASE).exists() {
            return Err(Error::invalid(Field::Home, say::device::database_without_identity()));
        }
        return Err(nobody());
    }
    let lock = Arc::new(HomeLock::take(&folder)?);
    let Some(identity) = Identity::read(&folder)? else { return Err(nobody()) };
    let copied = place::is_copied(&folder);
    let kept = Arc::new(key_files::read(&folder, &identity.certificate, &keystore)?);
    let at = kept.moment(at);
    let mut device = at_home(folder, lock, (identity, kept, keystore), at, Look::Usual)?;
    let last = match settled(&mut device, copied) {
        Err(error) if is_damage(&error) => {
            device = LetGo::of(device).opened()?;
            settled(&mut device, copied)?
        }
        done => done?,
    };
    match (copied, device.kept.recovery.clone()) {
        (true, Some(recovery)) => device = renewed(device, last, &recovery)?,
        // Only the person makes another device theirs. Until they say whether it was moved or copied, and type the
        // code, two copies would log under one device's numbers: both histories are kept and shown.
        (true, None) => {
            device.elsewhere = true;
            return Ok(device);
        }
        (false, _) => {}
    }
    place::note(&device.home);
    Ok(device)
}

/// Opens a device on another's journal: everything of a person that a carrier has will be read with the recovery secret,
/// which is forgotten once that is done.
pub(crate) fn restored(
    home: String,
    recovery: Recovery,
    found: Found,
    chance: &[u8],
    keystore: Keystore,
    at: Instant,
) -> Result<Device> {
    let keys = chance
        .split_first_chunk()
        .and_then(|(sign, rest)| Some(Keys::new(sign, rest.first_chunk()?)));
    let keys = keys.ok_or_else(|| {
        Error::invalid(Field::Chance, say::crew::more_random_bytes(64, chance.len()))
    })?;
    let index = super::standing::next_index(found.highest)?;
    let certificate = Certificate::sign(&recovery.keys(), &keys.public(), index);
    // A coach founded the crew: which of the coach's devices says so is all one.
    let coach = found.founder.person() == certificate.person();
    let founder = if coach { certificate } else { found.founder };
    let mut profile = found.profile.unwrap_or_else(|| Profile {
        person: certificate.person(),
        name: say::crew::unnamed().to_owned(),
        role: Role::Athlete,
        unit: MassUnit::Kg,
        language: None,
        crew: None,
    });
    profile.role = if coach { Role::Coach } else { Role::Athlete };
    let identity = Identity {
        device: certificate.device(),
        certificate,
        founder: Some(founder),
        profile,
        shares_from: None,
        restoring: true,
        before: Vec::new(),
    };
    let kept = Kept { keys, recovery: Some(recovery) };
    begun(home, identity, (kept, keystore), at)?.announced()
}

/// Makes a home folder of an identity and its keys, and opens it.
fn begun(
    home: String,
    identity: Identity,
    (kept, keystore): (Kept, Keystore),
    at: Instant,
) -> Result<Device> {
    let folder = PathBuf::from(&home);
    // What is refused leaves no folder behind, and changes none.
    if !at.is_sane() {
        return Err(Error::invalid(Field::Clock, say::device::clock_not_set()));
    }
    make_home(&folder)?;
    let lock = Arc::new(HomeLock::take(&folder)?);
    if folder.join(DATABASE).exists() && Identity::read(&folder)?.is_none() {
        return Err(Error::invalid(Field::Home, say::device::database_without_identity()));
    }
    if let Some(known) = Identity::read(&folder)? {
        let reason = say::device::folder_taken(home, known.profile.name);
        return Err(Error::invalid(Field::Home, reason));
    }
    for_its_owner(&folder)?;
    // Without its keys a device that says who it is could never sign; without that, keys are nobody's.
    key_files::write(&folder, &kept, &keystore)?;
    identity.write(&folder)?;
    let at = kept.moment(at);
    let device = at_home(folder, lock, (identity, Arc::new(kept), keystore), at, Look::New)?;
    place::note(&device.home);
    Ok(device)
}

/// What must be on disk before anything is done, and what must not be any more; gives the number of the device's last
/// entry. What a copied home had logged and in no leaf yet is cut: the device it was copied from may never bring it.
fn settled(device: &mut Device, copied: bool) -> Result<u64> {
    known(device)?;
    if copied {
        device.cut_leaves()?;
    }
    let last = last_number(device.reader(), device.identity.device)?;
    device.forget_again()?;
    Ok(last)
}

/// Makes another device of a home that was copied: the one it was copied from goes on under its own
/// numbers, from the `last` it had written here.
fn renewed(device: Device, last: u64, recovery: &Recovery) -> Result<Device> {
    let mut device = device;
    let rebuilt = device.rebuilt.take();
    device.become_another(last, recovery)?;
    let device = LetGo::of(device).opened()?;
    Device { rebuilt, renewed: true, ..device }.announced()
}

impl Device {
    /// The home was moved: it is the same device as before.
    pub(crate) fn moved(&mut self) {
        self.elsewhere = false;
        place::note(&self.home);
    }

    /// The home is a copy: it becomes a device of its own, which is open once it was let go of and opened again.
    pub(crate) fn copied(&mut self, recovery: &Recovery) -> Result<()> {
        self.cut_leaves()?;
        let last = last_number(self.reader(), self.identity.device)?;
        self.become_another(last, recovery)?;
        self.moved();
        Ok(())
    }

    fn become_another(&mut self, last: u64, recovery: &Recovery) -> Result<()> {
        let own = self.identity.device;
        let keys = place::another(recovery, own, &self.home, &self.opened_at);
        let certificate = Certificate::sign(&recovery.keys(), &keys.public(), self.next_index()?);
        let kept = Kept { keys, recovery: self.kept.recovery.clone() };
        let mut identity = self.identity.clone();
        identity.before.push(Before { device: own, last });
        identity.device = certificate.device();
        identity.certificate = certificate;
        key_files::write(&self.home, &kept, &self.keystore)?;
        identity.write(&self.home)?;
        self.identity = identity;
        self.kept = Arc::new(kept);
        Ok(())
    }

    /// Says in the journal that this device writes from now on: its first leaf makes it known to the others.
    pub(crate) fn say_here(&mut self, at: &Instant) -> Result<()> {
        self.append(at, vec![Draft::new(Here {})]).map(drop)
    }

    fn announced(mut self) -> Result<Device> {
        let at = self.opened_at.clone();
        self.say_here(&at)?;
        Ok(self)
    }
}

/// Logs who uses the device, where its own journal does not say so: another device of theirs is no answer.
fn known(device: &mut Device) -> Result<()> {
    let first = device.identity.certificate.index() == 1;
    if !first && last_number(device.reader(), device.identity.device)? == 0 {
        // Started with the recovery code, or become another device, and stopped before it had said so.
        let at = device.opened_at.clone();
        device.say_here(&at)?;
    }
    if !is_known(device)? {
        // The journal came back without its first leaf, or the first start was cut short.
        let (at, profile) = (device.opened_at.clone(), device.identity.profile.clone());
        device.append(&at, vec![Draft::new(profile)])?;
    }
    Ok(())
}

/// True when the person's profile is in the journal.
fn is_known(device: &Device) -> Result<bool> {
    if device.identity.restoring {
        // It is on a carrier, and comes with the next exchange.
        return Ok(true);
    }
    let query = Query { person: Some(device.person()), ..Query::default() };
    Ok(query.last::<Profile>(device.reader())?.is_some())
}

/// A device whose database was let go of: it still holds its home, and can be opened again.
pub(crate) struct LetGo {
    home: PathBuf,
    lock: Arc<HomeLock>,
    identity: Identity,
    kept: Arc<Kept>,
    keystore: Keystore,
    opened_at: Instant,
    rebuilt: Option<Rebuilt>,
    traffic: Traffic,
}

impl LetGo {
    /// Lets go of a device's database.
    pub(crate) fn of(device: Device) -> LetGo {
        let Device { home, lock, identity, kept, keystore, opened_at, store, checkup, .. } = device;
        drop((checkup, store));
        LetGo {
            home,
            lock,
            identity,
            kept,
            keystore,
            opened_at,
            rebuilt: device.rebuilt,
            traffic: device.traffic,
        }
    }

    /// Opens it again with everything looked at; a database that turned out damaged is built again. Where
    /// that fails it can be tried again.
    pub(crate) fn opened(&mut self) -> Result<Device> {
        let (home, lock) = (self.home.clone(), Arc::clone(&self.lock));
        let own = (self.identity.clone(), Arc::clone(&self.kept), self.keystore.clone());
        let device = at_home(home, lock, own, self.opened_at.clone(), Look::Full)?;
        // What was put right before stays told, and an exchange goes on.
        let (rebuilt, traffic) = (self.rebuilt.take(), std::mem::take(&mut self.traffic));
        Ok(Device { rebuilt: device.rebuilt.or(rebuilt), traffic, ..device })
    }
}

fn at_home(
    home: PathBuf,
    lock: Arc<HomeLock>,
    (identity, kept, keystore): (Identity, Arc<Kept>, Keystore),
    at: Instant,
    look: Look,
) -> Result<Device> {
    let owner = Owner { identity: &identity, kept: &kept };
    let Parts { store, shelf, tail, rebuilt, checkup, standing } = open(&home, &owner, &at, look)?;
    Ok(Device {
        home,
        lock,
        opened_at: at,
        store,
        shelf,
        tail,
        checkup,
        identity,
        kept,
        keystore,
        standing,
        rebuilt,
        traffic: Default::default(),
        before: None,
        plans: Default::default(),
        unread_plans: Vec::new(),
        renewed: false,
        elsewhere: false,
        shelf_trouble: None,
    })
}

/// Makes the home folder of a device that starts, and makes its name, and that of each folder made for it,
/// survive a power cut.
fn make_home(home: &Path) -> Result<()> {
    let mut made = Vec::new();
    let mut missing = Some(home);
    while let Some(folder) =
        missing.filter(|folder| !folder.as_os_str().is_empty() && !folder.exists())
    {
        made.push(folder);
        missing = folder.parent();
    }
    fs::create_dir_all(home).map_err(Error::file(home))?;
    for folder in made {
        let parent = folder.parent().filter(|parent| !parent.as_os_str().is_empty());
        flush_folder(parent.unwrap_or(Path::new(".")))?;
    }
    Ok(())
}

/// What hurts somebody is nobody else's business on a shared machine.
fn for_its_owner(home: &Path) -> Result<()> {
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        let only_me = fs::Permissions::from_mode(0o700);
        fs::set_permissions(home, only_me).map_err(Error::file(home))?;
    }
    Ok(())
}

pub(super) fn valid_name(name: &str) -> Result<String> {
    let name = name.trim();
    let fits = (1..=MAX_NAME_CHARS).contains(&name.chars().count());
    if !fits || name.chars().any(char::is_control) {
        return Err(Error::invalid(Field::Name, say::device::name_length(MAX_NAME_CHARS)));
    }
    Ok(name.to_owned())
}

/// The keys of a person and of their first device.
fn drawn(chance: &[u8]) -> Result<(Recovery, Keys)> {
    let drawn = chance.split_first_chunk().and_then(|(recovery, rest)| {
        let (sign, rest) = rest.split_first_chunk()?;
        Some((Recovery::new(*recovery), Keys::new(sign, rest.first_chunk()?)))
    });
    drawn.ok_or_else(|| Error::invalid(Field::Chance, say::device::more_random_bytes(chance.len())))
}
