//! Which call fails, and how.

use std::ffi::CStr;
use std::sync::OnceLock;
use std::sync::atomic::{AtomicI32, AtomicU64, Ordering};

use crate::trace;

/// What a call does to a file.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    Write,
    Flush,
    Rename,
    Link,
    Unlink,
    Cut,
    Open,
    Read,
    Folder,
}

impl Kind {
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Kind::Write => "write",
            Kind::Flush => "flush",
            Kind::Rename => "rename",
            Kind::Link => "link",
            Kind::Unlink => "unlink",
            Kind::Cut => "cut",
            Kind::Open => "open",
            Kind::Read => "read",
            Kind::Folder => "folder",
        }
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum How {
    Fail(i32),
    Short,
    Before,
    After,
}

struct Told {
    root: String,
    kinds: Option<String>,
    at: u64,
    how: How,
    stays: bool,
    count: Option<String>,
}

static TOLD: OnceLock<Option<Told>> = OnceLock::new();
static SEEN: AtomicU64 = AtomicU64::new(0);
static COUNT_FD: AtomicI32 = AtomicI32::new(-1);

fn told() -> Option<&'static Told> {
    let read = || {
        let var = |name: &str| std::env::var(name).ok().filter(|value| !value.is_empty());
        let how = match var("FAULTS_HOW").as_deref() {
            Some("enospc") => How::Fail(libc::ENOSPC),
            Some("short") => How::Short,
            Some("before") => How::Before,
            Some("after") => How::After,
            _ => How::Fail(libc::EIO),
        };
        Some(Told {
            root: var("FAULTS_ROOT")?,
            kinds: var("FAULTS_KINDS"),
            at: var("FAULTS_AT").and_then(|at| at.parse().ok()).unwrap_or(0),
            how,
            stays: var("FAULTS_ON").as_deref() == Some("stays"),
            count: var("FAULTS_COUNT"),
        })
    };
    TOLD.get_or_init(read).as_ref()
}

/// What is to become of a call.
pub(crate) enum Fate {
    /// It is done as it is.
    Done,
    /// It fails with an error number.
    Fails(i32),
    /// Half of it is done.
    Half,
    /// It is done, and then the process dies.
    Last,
}

/// True where files below the folder count and the path is one.
pub(crate) fn counts(path: &CStr) -> bool {
    told().is_some_and(|told| path.to_bytes().starts_with(told.root.as_bytes()))
}

/// The path of an open file, when it counts.
pub(crate) fn path_of(fd: i32) -> Option<String> {
    told()?;
    let mut path = [0_u8; 4096];
    let link = format!("/proc/self/fd/{fd}\0");
    // SAFETY: the name ends with a zero, and the room's size is told.
    let long = unsafe {
        libc::syscall(
            libc::SYS_readlinkat,
            libc::AT_FDCWD,
            link.as_ptr(),
            path.as_mut_ptr(),
            path.len(),
        )
    };
    let long = usize::try_from(long).ok()?;
    let path = std::str::from_utf8(path.get(..long)?).ok()?;
    path.starts_with(&told()?.root).then(|| path.to_owned())
}

/// Counts a call, and says what is to become of it.
pub(crate) fn fate(kind: Kind) -> Fate {
    let Some(told) = told() else { return Fate::Done };
    let wanted = match &told.kinds {
        Some(kinds) => kinds.split(',').any(|name| name == kind.name()),
        None => kind != Kind::Read,
    };
    if !wanted {
        return Fate::Done;
    }
    let number = SEEN.fetch_add(1, Ordering::SeqCst) + 1;
    if let Some(count) = &told.count {
        note(count, kind);
    }
    let hit = number == told.at || (told.stays && told.at > 0 && number > told.at);
    match (hit, told.how) {
        (false, _) => Fate::Done,
        (true, How::Fail(number)) => Fate::Fails(number),
        (true, How::Short) if kind == Kind::Write => Fate::Half,
        (true, How::Short) => Fate::Fails(libc::ENOSPC),
        (true, How::Before) => die(),
        (true, How::After) => Fate::Last,
    }
}

/// The process is gone, as after SIGKILL: nothing is tidied up.
pub(crate) fn die() -> ! {
    // SAFETY: takes no memory of ours.
    unsafe {
        libc::syscall(libc::SYS_kill, libc::getpid(), libc::SIGKILL);
        libc::_exit(137)
    }
}

/// Sets the error number of the calling thread.
pub(crate) fn fails(number: i32) {
    // SAFETY: the C library gives each thread a place for it.
    unsafe { *libc::__errno_location() = number };
}

fn note(path: &str, kind: Kind) {
    let mut fd = COUNT_FD.load(Ordering::SeqCst);
    if fd < 0 {
        fd = trace::append_to(path);
        COUNT_FD.store(fd, Ordering::SeqCst);
    }
    trace::put(fd, format!("{}\n", kind.name()).as_bytes());
}
