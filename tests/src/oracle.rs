//! Reading what the reference scripts printed, and comparing numbers with it.

use std::fs;
use std::path::Path;

use serde::de::DeserializeOwned;

/// What `tests/reference/<topic>.py` printed.
///
/// # Panics
/// When there is no such topic, or it has another shape.
pub fn reference<T: DeserializeOwned>(topic: &str) -> T {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("reference");
    let text = fs::read_to_string(folder.join(format!("{topic}.json"))).unwrap();
    serde_json::from_str(&text).unwrap()
}

/// Holds a number within a relative distance of what is expected.
///
/// # Panics
/// When it is further off.
#[track_caller]
pub fn near(found: f64, expected: f64, relative: f64) {
    let off = (found - expected).abs();
    assert!(off <= relative * expected.abs(), "found {found}, expected {expected}");
}

/// Holds a number to what was printed with so many decimals: within half of the last one.
///
/// # Panics
/// When it is further off.
#[track_caller]
pub fn printed(found: f64, expected: f64, decimals: i32) {
    let half = 0.5 * 10.0_f64.powi(-decimals);
    // Beside the half, what a floating number itself cannot hold.
    let allowed = half + 2.0 * f64::EPSILON * expected.abs();
    assert!((found - expected).abs() <= allowed, "found {found}, printed {expected}");
}
