//! Kotlin and Swift from the unstripped library: stripping takes the metadata away.

use std::fs;
use std::path::{Path, PathBuf};

use uniffi_bindgen::bindings::{
    GenerateOptions, SwiftBindingsOptions, TargetLanguage, generate as uniffi_generate,
    generate_swift_bindings,
};

use crate::steps::{Done, cargo, copy, root, step, target};

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

/// Builds the library and generates both languages.
pub(crate) fn generate() -> Done {
    step("library", || build("plain", &[]))?;
    step("bindings", || {
        let library = library_folder("plain").join(library_name());
        let kotlin = kotlin_folder();
        clear(&kotlin)?;
        let options = GenerateOptions {
            languages: vec![TargetLanguage::Kotlin],
            source: utf8(&library)?.into(),
            out_dir: utf8(&kotlin)?.into(),
            ..GenerateOptions::default()
        };
        uniffi_generate(options).map_err(|error| format!("Kotlin: {error}"))?;
        swift(&library)?;
        eprintln!("   Kotlin in {}, Swift in {}", kotlin.display(), swift_folder().display());
        Ok(())
    })
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
            config: None,
        };
        generate_swift_bindings(options).map_err(|error| format!("Swift: {error}"))?;
    }
    Ok(())
}

/// The libraries the kits' checks load: one with a planted fault, one of another surface.
pub(crate) fn for_checks() -> Done {
    generate()?;
    step("library with a planted panic", || build("planted", &["planted-panic"]))?;
    step("library of another version", || build("other", &["other-surface"]))
}

/// Builds the library with some features and puts it aside.
fn build(kind: &str, features: &[&str]) -> Done {
    let features = features.join(",");
    cargo(&["build", "--package", "holdfast-ffi", "--locked", "--features", &features])?;
    let built = target().join("debug").join(library_name());
    copy(&built, &library_folder(kind).join(library_name()))
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
