//! A library that stands before the C library's file calls (`LD_PRELOAD`): it counts those on files
//! below one folder, writes down what they did, and lets the n-th fail, fall short, or kill the process
//! before or after it. What a disk, a full file system and a power cut do, at every point where they can.
//!
//! It is told by environment variables:
//!
//! | variable | meaning |
//! |---|---|
//! | `FAULTS_ROOT` | the folder whose files count; without it nothing does |
//! | `FAULTS_KINDS` | the kinds that count, with commas: `write,flush,rename,link,unlink,cut,open,read,folder`; without it all but `read` |
//! | `FAULTS_AT` | the call that fails, counted from 1; without it none does |
//! | `FAULTS_HOW` | `eio`, `enospc`, `short` (half of a write, then the disk is full), `before`, `after` (kills) |
//! | `FAULTS_ON` | `once` (only that call) or `stays` (all calls of its kind from then on) |
//! | `FAULTS_COUNT` | a file that gets one line a counted call: its kind |
//! | `FAULTS_TRACE` | a file that gets what each call did, with the bytes: see `trace.rs` |

#[cfg(target_os = "linux")]
mod calls;
#[cfg(target_os = "linux")]
mod fault;
#[cfg(target_os = "linux")]
mod trace;
