//! Kotlin and Swift from the unstripped library: stripping takes the metadata away.

use std::fs;

use uniffi_bindgen::bindings::{
    GenerateOptions, SwiftBindingsOptions, TargetLanguage, generate, generate_swift_bindings,
};

use crate::steps::{Done, cargo, target};

/// Builds the library and generates both languages below `target/bindings`.
pub(crate) fn generate_all() -> Done {
    cargo(&["build", "--package", "holdfast-ffi", "--locked"], &[])?;
    let library = target().join("debug").join(library_name());
    let source = utf8(&library)?;
    for (language, folder) in [("kotlin", "kotlin"), ("swift", "swift")] {
        let out = target().join("bindings").join(folder);
        // Nothing of an earlier surface may stay behind.
        let _ = fs::remove_dir_all(&out);
        let out_dir = utf8(&out)?;
        let done = match language {
            "kotlin" => generate(GenerateOptions {
                languages: vec![TargetLanguage::Kotlin],
                source: source.clone().into(),
                out_dir: out_dir.into(),
                ..GenerateOptions::default()
            }),
            _ => generate_swift_bindings(SwiftBindingsOptions {
                generate_swift_sources: true,
                generate_headers: true,
                generate_modulemap: true,
                source: source.clone().into(),
                out_dir: out_dir.into(),
                xcframework: false,
                module_name: None,
                modulemap_filename: Some("module.modulemap".into()),
                metadata_no_deps: true,
                link_frameworks: Vec::new(),
                config: None,
            }),
        };
        done.map_err(|error| format!("{language} bindings: {error}"))?;
        eprintln!("   {language}: {}", out.display());
    }
    Ok(())
}

/// The library's file name on this system.
pub(crate) fn library_name() -> String {
    use std::env::consts::{DLL_PREFIX, DLL_SUFFIX};
    format!("{DLL_PREFIX}holdfast{DLL_SUFFIX}")
}

fn utf8(path: &std::path::Path) -> Result<String, String> {
    path.to_str().map(str::to_owned).ok_or_else(|| format!("{} is not UTF-8", path.display()))
}
