//! What calls did, written down for a model of the disk.
//!
//! A record is a line of JSON, `{"do":"write","path":"...","at":0,"bytes":12}`, and for a write the bytes
//! behind it. Paths are as the kernel has them.

use std::sync::atomic::{AtomicI32, Ordering};
use std::sync::{Mutex, OnceLock, PoisonError};

static PATH: OnceLock<Option<String>> = OnceLock::new();
static FD: AtomicI32 = AtomicI32::new(-1);
static ORDER: Mutex<()> = Mutex::new(());

/// Opens a file to append to, past every function of this library.
pub(crate) fn append_to(path: &str) -> i32 {
    let name = format!("{path}\0");
    let flags = libc::O_WRONLY | libc::O_CREAT | libc::O_APPEND | libc::O_CLOEXEC;
    // SAFETY: the name ends with a zero.
    let fd =
        unsafe { libc::syscall(libc::SYS_openat, libc::AT_FDCWD, name.as_ptr(), flags, 0o600) };
    i32::try_from(fd).unwrap_or(-1)
}

/// Writes all of it, past every function of this library.
pub(crate) fn put(fd: i32, mut bytes: &[u8]) {
    while !bytes.is_empty() {
        // SAFETY: the memory is ours, and its size is told.
        let done = unsafe { libc::syscall(libc::SYS_write, fd, bytes.as_ptr(), bytes.len()) };
        match usize::try_from(done) {
            Ok(done) if done > 0 => bytes = bytes.get(done..).unwrap_or_default(),
            _ => return,
        }
    }
}

/// Writes a record, when somebody asked for them.
pub(crate) fn record(what: &str, path: &str, rest: &str, bytes: &[u8]) {
    let told = PATH.get_or_init(|| std::env::var("FAULTS_TRACE").ok());
    let Some(trace) = told else { return };
    let _turn = ORDER.lock().unwrap_or_else(PoisonError::into_inner);
    let mut fd = FD.load(Ordering::SeqCst);
    if fd < 0 {
        fd = append_to(trace);
        FD.store(fd, Ordering::SeqCst);
    }
    let mut all = format!("{{\"do\":\"{what}\",\"path\":{path:?}{rest}}}\n").into_bytes();
    all.extend_from_slice(bytes);
    put(fd, &all);
}
