//! Asks the linker to keep one of several functions with the same code: generic code of every crate
//! repeats itself. Only where the linker is LLVM's, which others need not be.

use std::env;

fn main() {
    println!("cargo::rerun-if-changed=build.rs");
    let target = |part| env::var(format!("CARGO_CFG_TARGET_{part}")).unwrap_or_default();
    let (system, chip) = (target("OS"), target("ARCH"));
    if system == "android" || (system == "linux" && chip == "x86_64") {
        println!("cargo::rustc-cdylib-link-arg=-Wl,--icf=all");
    }
}
