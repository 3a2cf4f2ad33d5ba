//! The library for Apple devices, which needs a vendor's SDK.

use std::process::Command;

use crate::android::add_targets;
use crate::bindings;
use crate::steps::{Done, cargo_command, is_there, run, step, target};

/// Devices, simulators on both kinds of Mac, and a Mac itself.
const APPLE: [&str; 4] =
    ["aarch64-apple-ios", "aarch64-apple-ios-sim", "x86_64-apple-ios", "aarch64-apple-darwin"];

/// The oldest systems the library is built for, as `ios/Kit/Package.swift` has them.
const OLDEST: [(&str, &str); 2] =
    [("IPHONEOS_DEPLOYMENT_TARGET", "17.0"), ("MACOSX_DEPLOYMENT_TARGET", "14.0")];

/// Builds the library for Apple devices into `ios/Kit/Generated/HoldfastCoreFFI.xcframework`.
pub(crate) fn ios() -> Done {
    if !is_there("xcodebuild", "-version") {
        return Err("there is no Xcode here: on a Mac, install it (version 16 or later) and run \
                    this again"
            .into());
    }
    step("targets", || add_targets(&APPLE))?;
    let surface = bindings::generate()?;
    step("library for Apple devices", || {
        for target in APPLE {
            let mut build = cargo_command();
            build.args(["build", "--package", "holdfast-ffi", "--profile", "mobile", "--locked"]);
            run(build.args(["--target", target]).envs(OLDEST).env(bindings::SURFACE, &surface))?;
        }
        Ok(())
    })?;
    step("xcframework", || {
        let built = |target_name: &str| target().join(target_name).join("mobile/libholdfast.a");
        // One library a platform: the two simulators' are joined.
        let simulators = target().join("libholdfast-simulators.a");
        let mut lipo = Command::new("lipo");
        lipo.arg("-create").args([built(APPLE[1]), built(APPLE[2])]);
        run(lipo.arg("-output").arg(&simulators))?;
        let headers = bindings::swift_folder().join("HoldfastCoreFFI");
        let mut create = Command::new("xcodebuild");
        create.arg("-create-xcframework");
        for library in [built(APPLE[0]), simulators, built(APPLE[3])] {
            create.arg("-library").arg(library).arg("-headers").arg(&headers);
        }
        let out = bindings::swift_folder().join("HoldfastCoreFFI.xcframework");
        // xcodebuild writes over nothing.
        bindings::clear(&out)?;
        let _ = std::fs::remove_dir(&out);
        run(create.arg("-output").arg(out))
    })
}
