//! The Kotlin kit against the real core.

use std::path::Path;
use std::process::Command;

use crate::bindings::{self, kotlin_folder, library_folder};
use crate::steps::{Done, install, is_there, root, run, step};

const OTHERWISE: &str = "install a JDK of version 17 or later and Maven, then run this again";

/// Holds kit and screens against their formatter, compiles them, runs their tests, draws the screens, and makes the kit's
/// documentation.
pub(crate) fn check() -> Done {
    step("JDK and Maven", tools)?;
    let planted = library_folder("planted");
    step("Kotlin formatting", || {
        run(maven(&planted).args(["spotless:check", "--projects", "kit,ui,app,window"])).map_err(
            |error| format!("{error}; to fix it: mvn spotless:apply -pl kit,ui,app,window"),
        )
    })?;
    bindings::for_checks()?;
    // Tests, then documentation: what is public and undocumented is an error.
    step("Kotlin kit and screens", || run(maven(&planted).arg("prepare-package")))
}

/// Installs what is missing.
pub(crate) fn tools() -> Done {
    let mut missing = Vec::new();
    if !is_there("javac", "-version") {
        missing.push("default-jdk-headless");
    }
    if !is_there("mvn", "--version") {
        missing.push("maven");
    }
    // What screens are drawn with where nobody has a display: the phone's font, and what the drawing library links.
    let drawn = [
        (
            "/usr/share/fonts/truetype/roboto/unhinted/RobotoTTF/Roboto-Bold.ttf",
            "fonts-roboto-unhinted",
        ),
        ("/usr/lib/x86_64-linux-gnu/libGL.so.1", "libgl1"),
        ("/usr/lib/x86_64-linux-gnu/libfontconfig.so.1", "libfontconfig1"),
    ];
    missing.extend(
        drawn.iter().filter(|(file, _)| !Path::new(file).exists()).map(|(_, package)| *package),
    );
    if missing.is_empty() { Ok(()) } else { install(&missing, OTHERWISE) }
}

/// Maven over `android/`, with the generated code and a library to load.
pub(crate) fn maven(library: &Path) -> Command {
    let mut maven = Command::new("mvn");
    maven.current_dir(root().join("android")).args(["-B", "-q", "-ntp"]);
    // Without a language a JVM cannot name a file `Zoë`.
    maven.env("LC_ALL", "C.UTF-8");
    maven.arg(format!("-Dholdfast.bindings={}", kotlin_folder().display()));
    maven.arg(format!("-Dholdfast.library={}", library.display()));
    maven.arg(format!("-Dholdfast.otherLibrary={}", library_folder("other").display()));
    maven
}
