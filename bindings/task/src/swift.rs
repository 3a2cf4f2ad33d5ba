//! The Swift kit against the real core.

use std::path::{Path, PathBuf};
use std::process::Command;

use crate::bindings::{self, library_folder};
use crate::steps::{Done, is_there, root, run, step, target};

/// Compiles the kit and runs its tests.
pub(crate) fn check() -> Done {
    step("Swift", tools)?;
    bindings::for_checks()?;
    step("Swift kit", || run(swift("test", &library_folder("planted")).arg("--parallel")))
}

/// Makes sure there is a Swift: this system's, or Debian's in a root of its own.
pub(crate) fn tools() -> Done {
    if is_there("swift", "--version") { Ok(()) } else { run(&mut in_root(&["swift", "--version"])) }
}

/// A SwiftPM command over `ios/Kit`, with a library to link and load.
pub(crate) fn swift(command: &str, library: &Path) -> Command {
    let swift = ["swift", command];
    let mut swift = if is_there("swift", "--version") {
        let mut native = Command::new(swift[0]);
        native.arg(swift[1]);
        native
    } else {
        in_root(&swift)
    };
    swift.arg("--package-path").arg(root().join("ios/Kit"));
    swift.arg("--scratch-path").arg(scratch());
    swift.arg("-Xlinker").arg(format!("-L{}", library.display()));
    if cfg!(target_os = "linux") {
        // Swift 6.0 there leaves a symbol of its Observation library undefined; nothing calls it.
        swift.args(["-Xlinker", "--allow-shlib-undefined"]);
    }
    swift.env("HOLDFAST_LIBRARY", library);
    swift.env("LD_LIBRARY_PATH", library).env("DYLD_LIBRARY_PATH", library);
    swift.env("HOLDFAST_OTHER_LIBRARY", library_folder("other"));
    swift.env("HOLDFAST_FIXTURES", root().join("bindings/fixtures"));
    swift
}

/// Where SwiftPM builds.
pub(crate) fn scratch() -> PathBuf {
    target().join("swift")
}

/// A command inside Debian's Swift root, which is made on first use.
fn in_root(command: &[&str]) -> Command {
    let mut script = Command::new("bash");
    script.arg(root().join("ios/in-swift-root")).arg(root()).arg(target()).args(command);
    script
}
