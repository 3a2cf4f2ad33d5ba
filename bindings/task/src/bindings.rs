//! Kotlin and Swift from the unstripped library: stripping takes the metadata away.

use std::fs;
use std::path::{Path, PathBuf};

use sha2::{Digest, Sha256};
use uniffi_bindgen::bindings::{
    GenerateOptions, SwiftBindingsOptions, TargetLanguage, generate as uniffi_generate,
    generate_swift_bindings,
};
use uniffi_bindgen::macro_metadata::extract_from_bytes;

use crate::mend;
use crate::steps::{Done, cargo_command, copy, root, run, step, target};

/// The variable that hands the surface's digest to the library's build.
pub(crate) const SURFACE: &str = "HOLDFAST_SURFACE";

/// The folder of the generated Kotlin.
pub(crate) fn kotlin_folder() -> PathBuf {
    target().join("bindings/kotlin")
}

/// The folder of the generated Swift: SwiftPM takes sources from inside its package only.
pub(crate) fn swift_folder() -> PathBuf {
    root().join("ios/Kit/Generated")
}

/// Where a library for the kits' checks is put, so that no other build writes over it.
pub(crate) fn library_folder(kind: &str) -> PathBuf {
    target().join("bindings").join(kind)
}

/// Builds the library and generates both languages. Gives the surface's digest, for the libraries of
/// devices.
pub(crate) fn generate() -> Result<String, String> {
    let mut surface = String::new();
    step("library", || {
        surface = build("plain", &[])?;
        Ok(())
    })?;
    step("bindings", || {
        let library = library_folder("plain").join(library_name());
        let kotlin = kotlin_folder();
        clear(&kotlin)?;
        let options = GenerateOptions {
            languages: vec![TargetLanguage::Kotlin],
            source: utf8(&library)?.into(),
            out_dir: utf8(&kotlin)?.into(),
            config_override: Some(config()?.into()),
            ..GenerateOptions::default()
        };
        uniffi_generate(options).map_err(|error| format!("Kotlin: {error}"))?;
        mend::kotlin(&kotlin.join("holdfast/core/holdfast.kt"), &surface)?;
        swift(&library)?;
        mend::swift(&swift_folder(), &surface)?;
        eprintln!("   Kotlin in {}, Swift in {}", kotlin.display(), swift_folder().display());
        Ok(())
    })?;
    Ok(surface)
}

/// Swift sources in one module, the C header and its module map in another.
fn swift(library: &Path) -> Done {
    let folder = swift_folder();
    for (module, is_source) in [("HoldfastCore", true), ("HoldfastCoreFFI", false)] {
        let out = folder.join(module);
        // These alone: the library for devices lies beside them.
        clear(&out)?;
        let options = SwiftBindingsOptions {
            generate_swift_sources: is_source,
            generate_headers: !is_source,
            generate_modulemap: !is_source,
            source: utf8(library)?.into(),
            out_dir: utf8(&out)?.into(),
            xcframework: false,
            module_name: Some("HoldfastCoreFFI".into()),
            modulemap_filename: Some("module.modulemap".into()),
            metadata_no_deps: true,
            link_frameworks: Vec::new(),
            config: Some(config()?.into()),
        };
        generate_swift_bindings(options).map_err(|error| format!("Swift: {error}"))?;
    }
    Ok(())
}

/// The libraries the kits' checks load: one with a planted fault, one of another surface.
pub(crate) fn for_checks() -> Done {
    generate()?;
    step("library with a planted panic", || {
        build("planted", &["holdfast-ffi/planted-panic"]).map(drop)
    })?;
    step("library of another version", || build("other", &["holdfast-ffi/other-surface"]).map(drop))
}

/// Builds the library with some features and puts it aside. It carries the digest of its surface,
/// which only a library that is built can tell: where that changed, its last and smallest crate is
/// built once more.
fn build(kind: &str, features: &[&str]) -> Result<String, String> {
    let (features, kept) = (features.join(","), library_folder(kind).join("surface"));
    let built = target().join("debug").join(library_name());
    let mut carried = fs::read_to_string(&kept).unwrap_or_default();
    loop {
        let mut cargo = cargo_command();
        // With the whole workspace, so that the packages below it are those of the tests.
        cargo.args(["build", "--workspace", "--lib", "--locked", "--features", &features]);
        run(cargo.env(SURFACE, &carried))?;
        let surface = surface_of(&built)?;
        if surface == carried {
            break;
        }
        carried = surface;
    }
    copy(&built, &library_folder(kind).join(library_name()))?;
    fs::write(&kept, &carried).map_err(|error| format!("{}: {error}", kept.display()))?;
    Ok(carried)
}

/// The digest of all that crosses, as the library itself describes it: names, order and types of
/// every record's fields, every variant, every function. A changed comment counts as well, which
/// does no harm: code and library come from one build.
fn surface_of(library: &Path) -> Result<String, String> {
    let said = |error: &dyn std::fmt::Display| format!("{}: {error}", library.display());
    let bytes = fs::read(library).map_err(|error| said(&error))?;
    let mut items = extract_from_bytes(&bytes).map_err(|error| said(&error))?;
    items.sort();
    let digest = Sha256::digest(format!("{items:?}"));
    Ok(digest.iter().take(8).map(|byte| format!("{byte:02x}")).collect())
}

/// How the generated code is named.
fn config() -> Result<String, String> {
    utf8(&root().join("bindings/uniffi.toml")).map(str::to_owned)
}

/// The library's file name on this system.
pub(crate) fn library_name() -> String {
    use std::env::consts::{DLL_PREFIX, DLL_SUFFIX};
    format!("{DLL_PREFIX}holdfast{DLL_SUFFIX}")
}

/// Empties a folder: nothing of an earlier surface may stay behind.
pub(crate) fn clear(folder: &Path) -> Done {
    let _ = fs::remove_dir_all(folder);
    fs::create_dir_all(folder).map_err(|error| format!("{}: {error}", folder.display()))
}

fn utf8(path: &Path) -> Result<&str, String> {
    path.to_str().ok_or_else(|| format!("{} is not UTF-8", path.display()))
}
