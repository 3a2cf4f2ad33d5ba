//! The calls themselves, by the names of the C library.

// Each is called by C, with what the C library's own function of that name would be given.
#![allow(clippy::missing_safety_doc, missing_docs, unreachable_pub, reason = "the C library's own")]

use std::ffi::{CStr, c_char, c_int, c_long, c_uint, c_void};

use crate::fault::{Fate, Kind, counts, die, fails, fate, path_of};
use crate::trace::record;

/// Does a system call as its fate says. `half` is what is done instead where half of it is.
fn as_fated(
    kind: Kind,
    call: impl Fn() -> c_long,
    half: impl Fn() -> c_long,
    done: impl Fn(c_long),
) -> c_long {
    let finish = |gave: c_long| {
        if gave >= 0 {
            done(gave);
        }
        gave
    };
    match fate(kind) {
        Fate::Done => finish(call()),
        Fate::Fails(number) => {
            fails(number);
            -1
        }
        Fate::Half => finish(half()),
        Fate::Last => {
            finish(call());
            die()
        }
    }
}

fn text(path: &CStr) -> String {
    path.to_string_lossy().into_owned()
}

fn where_now(fd: c_int) -> i64 {
    // SAFETY: takes no memory of ours.
    unsafe { libc::syscall(libc::SYS_lseek, fd, 0, libc::SEEK_CUR) }
}

unsafe fn written(fd: c_int, from: *const c_void, size: usize, at: Option<i64>) -> isize {
    let call = |size: usize| {
        // SAFETY: the caller gives memory of that size.
        unsafe {
            match at {
                Some(at) => libc::syscall(libc::SYS_pwrite64, fd, from, size, at),
                None => libc::syscall(libc::SYS_write, fd, from, size),
            }
        }
    };
    let Some(path) = path_of(fd) else {
        let gave = call(size);
        if fd == libc::STDOUT_FILENO && gave > 0 {
            // What was said, among what was done: the model of the disk holds the one against the other.
            // SAFETY: as much was read from there by the kernel.
            let bytes = unsafe { std::slice::from_raw_parts(from.cast::<u8>(), gave as usize) };
            record("said", "", &format!(",\"bytes\":{gave}"), bytes);
        }
        return gave as isize;
    };
    let begin = at.unwrap_or_else(|| where_now(fd));
    let done = |done: c_long| {
        // What a file opened to append to took stands at its end.
        let place = if at.is_none() { where_now(fd) - done } else { begin };
        // SAFETY: as much was read from there by the kernel.
        let bytes = unsafe { std::slice::from_raw_parts(from.cast::<u8>(), done as usize) };
        record("write", &path, &format!(",\"at\":{place},\"bytes\":{done}"), bytes);
    };
    as_fated(Kind::Write, || call(size), || call(size / 2), done) as isize
}

#[unsafe(no_mangle)]
pub unsafe extern "C" fn write(fd: c_int, from: *const c_void, size: usize) -> isize {
    unsafe { written(fd, from, size, None) }
}

#[unsafe(no_mangle)]
pub unsafe extern "C" fn pwrite64(fd: c_int, from: *const c_void, size: usize, at: i64) -> isize {
    unsafe { written(fd, from, size, Some(at)) }
}

#[unsafe(no_mangle)]
pub unsafe extern "C" fn pwrite(fd: c_int, from: *const c_void, size: usize, at: i64) -> isize {
    unsafe { written(fd, from, size, Some(at)) }
}

unsafe fn got(fd: c_int, to: *mut c_void, size: usize, at: Option<i64>) -> isize {
    let call = || {
        // SAFETY: the caller gives memory of that size.
        unsafe {
            match at {
                Some(at) => libc::syscall(libc::SYS_pread64, fd, to, size, at),
                None => libc::syscall(libc::SYS_read, fd, to, size),
            }
        }
    };
    if path_of(fd).is_none() {
        return call() as isize;
    }
    as_fated(Kind::Read, call, call, |_| {}) as isize
}

#[unsafe(no_mangle)]
pub unsafe extern "C" fn read(fd: c_int, to: *mut c_void, size: usize) -> isize {
    unsafe { got(fd, to, size, None) }
}

#[unsafe(no_mangle)]
pub unsafe extern "C" fn pread64(fd: c_int, to: *mut c_void, size: usize, at: i64) -> isize {
    unsafe { got(fd, to, size, Some(at)) }
}

#[unsafe(no_mangle)]
pub unsafe extern "C" fn pread(fd: c_int, to: *mut c_void, size: usize, at: i64) -> isize {
    unsafe { got(fd, to, size, Some(at)) }
}

fn flushed(fd: c_int, number: c_long) -> c_int {
    // SAFETY: takes no memory of ours.
    let call = || unsafe { libc::syscall(number, fd) };
    match path_of(fd) {
        Some(path) => {
            as_fated(Kind::Flush, call, call, |_| record("flush", &path, "", &[])) as c_int
        }
        None => call() as c_int,
    }
}

#[unsafe(no_mangle)]
pub extern "C" fn fsync(fd: c_int) -> c_int {
    flushed(fd, libc::SYS_fsync)
}

#[unsafe(no_mangle)]
pub extern "C" fn fdatasync(fd: c_int) -> c_int {
    flushed(fd, libc::SYS_fdatasync)
}

fn cut_to(fd: c_int, size: i64) -> c_int {
    // SAFETY: takes no memory of ours.
    let call = || unsafe { libc::syscall(libc::SYS_ftruncate, fd, size) };
    match path_of(fd) {
        Some(path) => {
            let done = |_| record("cut", &path, &format!(",\"at\":{size}"), &[]);
            as_fated(Kind::Cut, call, call, done) as c_int
        }
        None => call() as c_int,
    }
}

#[unsafe(no_mangle)]
pub extern "C" fn ftruncate(fd: c_int, size: i64) -> c_int {
    cut_to(fd, size)
}

#[unsafe(no_mangle)]
pub extern "C" fn ftruncate64(fd: c_int, size: i64) -> c_int {
    cut_to(fd, size)
}

unsafe fn opened(folder: c_int, path: *const c_char, flags: c_int, mode: c_uint) -> c_int {
    // SAFETY: the caller gives a path that ends with a zero.
    let (name, call) = unsafe {
        let call =
            || libc::syscall(libc::SYS_openat, folder, path, flags | libc::O_LARGEFILE, mode);
        (CStr::from_ptr(path), call)
    };
    if !counts(name) {
        return call() as c_int;
    }
    let new = flags & libc::O_CREAT != 0;
    let exists = || {
        // SAFETY: as above.
        new && unsafe { libc::syscall(libc::SYS_faccessat, folder, path, 0) } == 0
    };
    let before = exists();
    let done = |_| {
        let path = text(name);
        if new && !before {
            record("create", &path, "", &[]);
        } else if flags & libc::O_TRUNC != 0 {
            record("cut", &path, ",\"at\":0", &[]);
        }
    };
    let kind = if new && !before { Kind::Open } else { Kind::Read };
    as_fated(kind, call, call, done) as c_int
}

#[unsafe(no_mangle)]
pub unsafe extern "C" fn open(path: *const c_char, flags: c_int, mode: c_uint) -> c_int {
    unsafe { opened(libc::AT_FDCWD, path, flags, mode) }
}

#[unsafe(no_mangle)]
pub unsafe extern "C" fn open64(path: *const c_char, flags: c_int, mode: c_uint) -> c_int {
    unsafe { opened(libc::AT_FDCWD, path, flags, mode) }
}

#[unsafe(no_mangle)]
pub unsafe extern "C" fn openat(
    folder: c_int,
    path: *const c_char,
    flags: c_int,
    mode: c_uint,
) -> c_int {
    unsafe { opened(folder, path, flags, mode) }
}

#[unsafe(no_mangle)]
pub unsafe extern "C" fn openat64(
    folder: c_int,
    path: *const c_char,
    flags: c_int,
    mode: c_uint,
) -> c_int {
    unsafe { opened(folder, path, flags, mode) }
}

unsafe fn named(
    kind: Kind,
    from: *const c_char,
    to: *const c_char,
    call: impl Fn() -> c_long,
) -> c_int {
    // SAFETY: the caller gives paths that end with a zero.
    let (from, to) = unsafe { (CStr::from_ptr(from), CStr::from_ptr(to)) };
    if !counts(to) {
        return call() as c_int;
    }
    let done = |_| record(kind.name(), &text(from), &format!(",\"to\":{:?}", text(to)), &[]);
    as_fated(kind, &call, &call, done) as c_int
}

#[unsafe(no_mangle)]
pub unsafe extern "C" fn rename(from: *const c_char, to: *const c_char) -> c_int {
    let cwd = libc::AT_FDCWD;
    unsafe {
        named(Kind::Rename, from, to, || libc::syscall(libc::SYS_renameat2, cwd, from, cwd, to, 0))
    }
}

#[unsafe(no_mangle)]
pub unsafe extern "C" fn link(from: *const c_char, to: *const c_char) -> c_int {
    unsafe { linkat(libc::AT_FDCWD, from, libc::AT_FDCWD, to, 0) }
}

#[unsafe(no_mangle)]
pub unsafe extern "C" fn linkat(
    from_folder: c_int,
    from: *const c_char,
    to_folder: c_int,
    to: *const c_char,
    flags: c_int,
) -> c_int {
    unsafe {
        named(Kind::Link, from, to, || {
            libc::syscall(libc::SYS_linkat, from_folder, from, to_folder, to, flags)
        })
    }
}

unsafe fn gone(folder: c_int, path: *const c_char, flags: c_int) -> c_int {
    // SAFETY: the caller gives a path that ends with a zero.
    let (name, call) = unsafe {
        (CStr::from_ptr(path), || libc::syscall(libc::SYS_unlinkat, folder, path, flags))
    };
    if !counts(name) {
        return call() as c_int;
    }
    let done = |_| record("unlink", &text(name), "", &[]);
    as_fated(Kind::Unlink, call, call, done) as c_int
}

#[unsafe(no_mangle)]
pub unsafe extern "C" fn unlink(path: *const c_char) -> c_int {
    unsafe { gone(libc::AT_FDCWD, path, 0) }
}

#[unsafe(no_mangle)]
pub unsafe extern "C" fn unlinkat(folder: c_int, path: *const c_char, flags: c_int) -> c_int {
    unsafe { gone(folder, path, flags) }
}

#[unsafe(no_mangle)]
pub unsafe extern "C" fn mkdir(path: *const c_char, mode: c_uint) -> c_int {
    // SAFETY: the caller gives a path that ends with a zero.
    let (name, call) = unsafe {
        (CStr::from_ptr(path), || libc::syscall(libc::SYS_mkdirat, libc::AT_FDCWD, path, mode))
    };
    if !counts(name) {
        return call() as c_int;
    }
    as_fated(Kind::Folder, call, call, |_| record("folder", &text(name), "", &[])) as c_int
}
