//! The phone's screens where there is no phone: in a window, and as pictures.

use std::path::{Path, PathBuf};

use crate::bindings::{self, library_folder};
use crate::kotlin::{self, maven};
use crate::steps::{Done, cargo_command, copy, root, run, step};

/// What the README shows.
const SHOWN: [&str; 12] = [
    "today",
    "set",
    "rest",
    "open-set",
    "hold-push-1",
    "movement",
    "exchange-waiting",
    "pairing-compare",
    "board",
    "finished",
    "set-corrected",
    "server-s3",
];

/// Opens somebody's home in a window of a phone's size; the demo's athlete, played first where there is none, when none is
/// named. A folder that is not there yet, or is empty, begins with the first start.
pub(crate) fn window(home: Option<PathBuf>) -> Done {
    step("tools", kotlin::tools)?;
    let home = match home {
        Some(home) => home,
        None => demo()?,
    };
    let begins = std::fs::read_dir(&home).map_or(true, |mut files| files.next().is_none());
    if !begins && !home.join("device.json").is_file() {
        return Err(format!("{} is no home of a device", home.display()));
    }
    bindings::generate()?;
    let mut maven = maven(&library_folder("plain"));
    maven.arg(format!("-Dholdfast.home={}", absolute(&home)?.display()));
    run(maven.args(["--projects", "window", "--also-make", "-DskipTests", "package"]))
}

fn demo() -> Result<PathBuf, String> {
    let home = root().join("holdfast-demo/devices/ines");
    if !home.is_dir() {
        let mut demo = cargo_command();
        demo.args(["run", "--release", "--locked", "-p", "desk", "--", "demo"]);
        step("demo", || run(demo.current_dir(root())))?;
    }
    Ok(home)
}

fn absolute(path: &Path) -> Result<PathBuf, String> {
    std::path::absolute(path).map_err(|error| format!("{}: {error}", path.display()))
}

/// Draws the screens again, and puts those that the README shows into docs/pictures.
pub(crate) fn pictures() -> Done {
    draw(&[])?;
    let drawn = root().join("android/ui/target/pictures");
    SHOWN.iter().try_for_each(|name| {
        let file = format!("{name}.png");
        copy(&drawn.join(&file), &root().join("docs/pictures").join(&file))
    })
}

/// Draws every screen on every phone there is: small, large, a tablet; light and dark; both sizes of text and both languages.
pub(crate) fn everywhere() -> Done {
    draw(&["-Dholdfast.everywhere=true"])
}

fn draw(more: &[&str]) -> Done {
    step("tools", kotlin::tools)?;
    bindings::generate()?;
    let mut maven = maven(&library_folder("plain"));
    maven.args(["--projects", "ui", "--also-make", "test"]).args(more);
    maven.args([
        "-Dtest=PicturesTest,PlacesPicturesTest",
        "-Dsurefire.failIfNoSpecifiedTests=false",
    ]);
    step("screens", || run(&mut maven))
}
