//! Every crate that is built must come under a licence of the list in `deny.toml`.

use std::env;
use std::fs;
use std::process::Command;

use serde::Deserialize;
use serde_json::Value;

use crate::steps::{Done, root};

/// Holds every package of the lock file against the list.
pub(crate) fn check() -> Done {
    let policy = policy()?;
    let mut all = packages("Cargo.toml")?;
    // Fuzzers have a lock file of their own.
    all.extend(packages("fuzz/Cargo.toml")?);
    let mut wrong = Vec::new();
    for package in &all {
        let text = |field: &str| package[field].as_str().unwrap_or_default().to_owned();
        let (name, version, licence) = (text("name"), text("version"), text("license"));
        // Some older crates write "MIT/Apache-2.0".
        let fits =
            spdx::Expression::parse_mode(&licence, spdx::ParseMode::LAX).is_ok_and(|wanted| {
                wanted.evaluate(|term| policy.allows(&name, &term.license.to_string()))
            });
        if !fits {
            wrong.push(format!("{name} {version}: \"{licence}\""));
        }
    }
    if wrong.is_empty() {
        eprintln!("   {} packages, all under a licence of deny.toml", all.len());
        return Ok(());
    }
    Err(format!("not under a licence of deny.toml:\n  {}", wrong.join("\n  ")))
}

/// What `deny.toml` says of licences.
#[derive(Deserialize)]
struct Policy {
    /// Those that every package may come under.
    allow: Vec<String>,
    /// Those of one package alone.
    #[serde(default)]
    exceptions: Vec<Exception>,
}

#[derive(Deserialize)]
struct Exception {
    #[serde(rename = "crate")]
    package: String,
    allow: Vec<String>,
}

impl Policy {
    fn allows(&self, package: &str, licence: &str) -> bool {
        let of_package = self.exceptions.iter().filter(|exception| exception.package == package);
        let lists = of_package.map(|exception| &exception.allow).chain([&self.allow]);
        lists.flatten().any(|allowed| allowed == licence)
    }
}

fn policy() -> Result<Policy, String> {
    #[derive(Deserialize)]
    struct Deny {
        licenses: Policy,
    }
    let path = root().join("deny.toml");
    let text = fs::read_to_string(&path).map_err(|error| format!("deny.toml: {error}"))?;
    let deny: Deny = toml::from_str(&text).map_err(|error| format!("deny.toml: {error}"))?;
    Ok(deny.licenses)
}

fn packages(manifest: &str) -> Result<Vec<Value>, String> {
    let cargo = env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let output = Command::new(cargo)
        .args(["metadata", "--format-version", "1", "--locked", "--manifest-path", manifest])
        .current_dir(root())
        .output()
        .map_err(|error| format!("cargo cannot be started: {error}"))?;
    if !output.status.success() {
        return Err(String::from_utf8_lossy(&output.stderr).into_owned());
    }
    let read: Value = serde_json::from_slice(&output.stdout).map_err(|error| error.to_string())?;
    read["packages"].as_array().cloned().ok_or_else(|| "cargo metadata has no packages".into())
}
