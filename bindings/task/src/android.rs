//! The app for Android: the library for its devices, the bindings, then Gradle. Both need Google's SDK.

use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::bindings;
use crate::steps::{Done, cargo_command, is_there, root, run, step};

/// The ABIs of Android devices, as rustc names their targets: phones of today, old ones, emulators.
const ABIS: [(&str, &str); 3] = [
    ("arm64-v8a", "aarch64-linux-android"),
    ("armeabi-v7a", "armv7-linux-androideabi"),
    ("x86_64", "x86_64-linux-android"),
];

/// The oldest Android, as android/app/build.gradle.kts has it.
const OLDEST: &str = "28";

/// From this NDK on a library is laid out for pages of 16 KB.
const NDK: u32 = 28;

/// The largest page of a phone.
const PAGE: u64 = 16 * 1024;

/// Builds the library for three ABIs into `android/kit/src/main/jniLibs`, then the app.
pub(crate) fn app() -> Done {
    let ndk = missing(&|name| env::var_os(name).map(PathBuf::from), &is_there)?;
    let targets: Vec<_> = ABIS.iter().map(|(_, target)| *target).collect();
    step("targets", || add_targets(&targets))?;
    let surface = bindings::generate()?;
    let out = root().join("android/kit/src/main/jniLibs");
    step("library for Android", || {
        let mut cargo = cargo_command();
        cargo.env(bindings::SURFACE, &surface).env("ANDROID_NDK_HOME", &ndk);
        cargo.arg("ndk").arg("--output-dir").arg(&out).args(["--platform", OLDEST]);
        for (abi, _) in ABIS {
            cargo.args(["--target", abi]);
        }
        run(cargo.args(["build", "--package", "holdfast-ffi", "--profile", "mobile", "--locked"]))
    })?;
    step("pages of 16 KB", || {
        ABIS.iter().try_for_each(|(abi, _)| is_laid_out(&out.join(abi).join("libholdfast.so")))
    })?;
    step("app", || {
        let mut gradle = Command::new("gradle");
        run(gradle.current_dir(root().join("android")).arg(":app:assembleRelease"))
    })
}

/// The NDK's folder, where everything is there that a build takes.
///
/// # Errors
/// The first thing that is missing, and how to have it.
fn missing(
    variable: &dyn Fn(&str) -> Option<PathBuf>,
    is_there: &dyn Fn(&str, &str) -> bool,
) -> Result<PathBuf, String> {
    let folder = |name| variable(name).filter(|folder| folder.is_dir());
    if folder("ANDROID_HOME").or_else(|| folder("ANDROID_SDK_ROOT")).is_none() {
        return Err(
            "there is no Android SDK here: install its command line tools with platform 36, set \
                    ANDROID_HOME to its folder and run this again"
                .into(),
        );
    }
    let ndk = folder("ANDROID_NDK_HOME");
    let Some(ndk) = ndk.filter(|folder| version_of(folder).is_some_and(|major| major >= NDK))
    else {
        return Err(format!(
            "there is no Android NDK of version r{NDK} or later here: install one, set ANDROID_NDK_HOME to its \
             folder and run this again"
        ));
    };
    if !is_there("cargo-ndk", "--version") && !is_there("cargo", "ndk") {
        return Err(
            "cargo-ndk is missing: cargo install cargo-ndk --locked, then run this again".into()
        );
    }
    if !is_there("gradle", "--version") {
        return Err("Gradle is missing: install version 8.13 or later, then run this again".into());
    }
    Ok(ndk)
}

/// The first number of an NDK's version, from the file that says it.
fn version_of(ndk: &Path) -> Option<u32> {
    let text = fs::read_to_string(ndk.join("source.properties")).ok()?;
    let line = text.lines().find_map(|line| line.strip_prefix("Pkg.Revision"))?;
    line.trim_start_matches([' ', '=']).split('.').next()?.parse().ok()
}

/// Refuses a library of 64 bits that a phone with pages of 16 KB would not load. Those of 32 bits have small pages.
fn is_laid_out(library: &Path) -> Done {
    let said = |what: &str| format!("{}: {what}", library.display());
    let bytes = fs::read(library).map_err(|error| said(&error.to_string()))?;
    match smallest_alignment(&bytes) {
        Some(Some(align)) if align < PAGE => {
            Err(said(&format!("is laid out for pages of {align} bytes; use NDK r{NDK} or later")))
        }
        Some(_) => Ok(()),
        None => Err(said("is no library")),
    }
}

/// The smallest alignment of what is loaded of a library of 64 bits; `Some(None)` for one of 32 bits.
fn smallest_alignment(elf: &[u8]) -> Option<Option<u64>> {
    // System V ABI, chapter 4: class, then where the program headers are, how large and how many.
    let number = |at: usize, size: usize| -> Option<u64> {
        let bytes = elf.get(at..at.checked_add(size)?)?;
        Some(bytes.iter().rev().fold(0, |sum, byte| sum << 8 | u64::from(*byte)))
    };
    if elf.get(..4)? != b"\x7fELF" {
        return None;
    }
    if *elf.get(4)? != 2 {
        return Some(None);
    }
    let first = usize::try_from(number(32, 8)?).ok()?;
    let (size, count) =
        (usize::try_from(number(54, 2)?).ok()?, usize::try_from(number(56, 2)?).ok()?);
    const LOADED: u64 = 1;
    let mut smallest = None;
    for header in 0..count {
        let at = first.checked_add(header.checked_mul(size)?)?;
        if number(at, 4)? == LOADED {
            let align = number(at.checked_add(48)?, 8)?;
            smallest = Some(smallest.map_or(align, |least: u64| least.min(align)));
        }
    }
    smallest.map(Some)
}

pub(crate) fn add_targets(targets: &[&str]) -> Done {
    let mut rustup = Command::new("rustup");
    run(rustup.current_dir(root()).args(["target", "add"]).args(targets))
        .map_err(|error| format!("the Rust libraries for these devices are missing: {error}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A library of 64 bits with these parts: kind and alignment.
    fn library(parts: &[(u32, u64)]) -> Vec<u8> {
        let mut elf = vec![0; 64];
        elf[..5].copy_from_slice(b"\x7fELF\x02");
        elf[32] = 64;
        elf[54] = 56;
        elf[56] = u8::try_from(parts.len()).unwrap();
        for (kind, align) in parts {
            let mut header = vec![0; 56];
            header[..4].copy_from_slice(&kind.to_le_bytes());
            header[48..].copy_from_slice(&align.to_le_bytes());
            elf.extend(header);
        }
        elf
    }

    #[test]
    fn a_library_for_small_pages_is_told_from_one_for_large_ones() {
        let least = |parts: &[(u32, u64)]| smallest_alignment(&library(parts));
        assert_eq!(least(&[(1, 16_384), (2, 8), (1, 16_384)]), Some(Some(16_384)));
        assert_eq!(least(&[(1, 65_536), (1, 4_096)]), Some(Some(4_096)));
        assert_eq!(least(&[(2, 8)]), None);
        let mut old = library(&[(1, 4_096)]);
        old[4] = 1;
        assert_eq!(smallest_alignment(&old), Some(None));
        for torn in 0..120 {
            smallest_alignment(&library(&[(1, 4_096)])[..torn]);
        }
        assert_eq!(smallest_alignment(b"no library"), None);
    }

    #[test]
    fn what_is_missing_is_said_one_at_a_time() {
        let folder = env::temp_dir().join(format!("holdfast-android-{}", std::process::id()));
        let (sdk, ndk) = (folder.join("sdk"), folder.join("ndk"));
        fs::create_dir_all(&sdk).unwrap();
        fs::create_dir_all(&ndk).unwrap();
        let said = |names: &[&str], tools: &[&str]| {
            let variable = |name: &str| {
                let at = if name == "ANDROID_HOME" { &sdk } else { &ndk };
                names.contains(&name).then(|| at.clone())
            };
            missing(&variable, &|tool, _| tools.contains(&tool))
        };
        let both = ["ANDROID_HOME", "ANDROID_NDK_HOME"];
        let first = |names: &[&str], tools: &[&str]| said(names, tools).unwrap_err();
        assert!(first(&[], &[]).starts_with("there is no Android SDK here"));
        assert!(
            first(&["ANDROID_HOME"], &[]).starts_with("there is no Android NDK of version r28")
        );
        fs::write(ndk.join("source.properties"), "Pkg.Desc = Android NDK\nPkg.Revision = 27.2.1\n")
            .unwrap();
        assert!(first(&both, &[]).contains("r28 or later"));
        fs::write(ndk.join("source.properties"), "Pkg.Desc = Android NDK\nPkg.Revision = 28.2.1\n")
            .unwrap();
        assert!(first(&both, &[]).starts_with("cargo-ndk is missing"));
        assert!(first(&both, &["cargo-ndk"]).starts_with("Gradle is missing"));
        assert_eq!(said(&both, &["cargo-ndk", "gradle"]), Ok(ndk.clone()));
        fs::remove_dir_all(folder).unwrap();
    }

    #[test]
    fn gradle_packs_the_abis_that_are_built() {
        let text = fs::read_to_string(root().join("android/app/build.gradle.kts")).unwrap();
        let listed = ABIS.map(|(abi, _)| format!("\"{abi}\"")).join(", ");
        assert!(text.contains(&format!("abiFilters += listOf({listed})")), "{listed}");
        assert!(text.contains(&format!("minSdk = {OLDEST}")));
        assert!(text.contains(&format!("ndkVersion = \"{NDK}.")));
    }
}
