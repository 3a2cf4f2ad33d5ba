//! The checks that take minutes.

use crate::phone;
use crate::planted;
use crate::servers;
use crate::steps::{Done, cargo, cargo_command, run, step};

/// How often each property and each random story of the core is tried, 256 times otherwise; and how many
/// draws that a property has no use for are passed over, 1,024 otherwise.
const TRIED: [(&str, &str); 2] =
    [("PROPTEST_CASES", "20000"), ("PROPTEST_MAX_GLOBAL_REJECTS", "1000000")];

/// Runs the wide checks in release.
pub(crate) fn check() -> Done {
    // The wide checks run the real program.
    step("program", || {
        cargo(&[
            "build",
            "--release",
            "--package",
            "desk",
            "--package",
            "holdfast-faults",
            "--locked",
        ])
    })?;
    step("wide checks", || {
        // One after the other, so that what each prints stays together.
        let shown = ["--", "--nocapture", "--test-threads", "1"];
        let wide =
            ["test", "--release", "--package", "holdfast-tests", "--test", "wide", "--locked"];
        run(cargo_command().args(wide).args(shown))
    })?;
    servers::wide()?;
    phone::everywhere()?;
    step("planted bugs", planted::all)?;
    step("the core's properties", || {
        let args = ["test", "--release", "--package", "holdfast-core", "--lib", "--locked"];
        run(cargo_command().args(args).envs(TRIED))
    })
}
