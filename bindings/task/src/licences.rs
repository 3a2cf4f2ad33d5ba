//! Every crate that is built must come under a licence of the list in `deny.toml`.

use std::env;
use std::fs;
use std::process::Command;

use serde_json::Value;

use crate::steps::{Done, root};

/// Holds every package of the lock file against the list.
pub(crate) fn check() -> Done {
    let allowed = allowed()?;
    let packages = packages()?;
    let mut wrong = Vec::new();
    for package in &packages {
        let text = |field: &str| package[field].as_str().unwrap_or_default().to_owned();
        let (name, version, licence) = (text("name"), text("version"), text("license"));
        // Some older crates write "MIT/Apache-2.0".
        let fits =
            spdx::Expression::parse_mode(&licence, spdx::ParseMode::LAX).is_ok_and(|wanted| {
                wanted.evaluate(|term| allowed.contains(&term.license.to_string()))
            });
        if !fits {
            wrong.push(format!("{name} {version}: \"{licence}\""));
        }
    }
    if wrong.is_empty() {
        eprintln!("   {} packages, all under a licence of deny.toml", packages.len());
        return Ok(());
    }
    Err(format!("not under a licence of deny.toml:\n  {}", wrong.join("\n  ")))
}

fn allowed() -> Result<Vec<String>, String> {
    let path = root().join("deny.toml");
    let text = fs::read_to_string(&path).map_err(|error| format!("deny.toml: {error}"))?;
    let table: toml::Table = text.parse().map_err(|error| format!("deny.toml: {error}"))?;
    let list = table
        .get("licenses")
        .and_then(|table| table.get("allow"))
        .and_then(|allow| allow.as_array());
    let list = list.ok_or("deny.toml has no list licenses.allow")?;
    Ok(list.iter().filter_map(|item| item.as_str().map(str::to_owned)).collect())
}

fn packages() -> Result<Vec<Value>, String> {
    let cargo = env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let output = Command::new(cargo)
        .args(["metadata", "--format-version", "1", "--locked"])
        .current_dir(root())
        .output()
        .map_err(|error| format!("cargo cannot be started: {error}"))?;
    if !output.status.success() {
        return Err(String::from_utf8_lossy(&output.stderr).into_owned());
    }
    let read: Value = serde_json::from_slice(&output.stdout).map_err(|error| error.to_string())?;
    read["packages"].as_array().cloned().ok_or_else(|| "cargo metadata has no packages".into())
}
