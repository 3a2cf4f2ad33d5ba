//! Turns the Fluent files in `messages` into code: see the crate `catalogue`.
#![allow(clippy::print_stdout, clippy::panic, reason = "how a build script talks, and fails")]

use std::path::Path;

fn main() {
    println!("cargo::rerun-if-changed=messages");
    let into = std::env::var_os("OUT_DIR").unwrap_or_default();
    if let Err(problems) = catalogue::build::build(Path::new("messages"), Path::new(&into)) {
        panic!("\n{problems}\n");
    }
}
