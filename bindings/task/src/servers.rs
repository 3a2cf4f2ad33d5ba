//! Carriers against real servers. Each server is installed here; one that cannot be had is named, and never left out.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::python::Environment;
use crate::rust::program;
use crate::steps::{Done, cargo_command, install, run, step, target};

/// Debian's packages, each with what of it must be there.
const PACKAGES: [(&str, &str); 7] = [
    ("apache2-bin", "/usr/lib/apache2/modules/mod_dav_fs.so"),
    ("nginx", "/usr/sbin/nginx"),
    ("libnginx-mod-http-dav-ext", "/usr/lib/nginx/modules/ngx_http_dav_ext_module.so"),
    ("curl", "/usr/bin/curl"),
    ("openssl", "/usr/bin/openssl"),
    // With these two a person opens their own files without us.
    ("age", "/usr/bin/age"),
    ("gzip", "/usr/bin/gzip"),
];

/// The S3-compatible server, which Debian has not.
const S3: &str = "github.com/versity/versitygw/cmd/versitygw@v1.8.0";

const OTHERWISE: &str = "install Apache with mod_dav, nginx with its dav-ext module, curl, openssl, age and gzip \
                         where Debian has them, then run this again";

/// Installs what is missing and runs the checks.
pub(crate) fn check() -> Done {
    step("Apache, nginx, curl, openssl and age", || {
        let missing: Vec<&str> = PACKAGES
            .iter()
            .filter(|(_, file)| !Path::new(file).exists())
            .map(|(package, _)| *package)
            .collect();
        if missing.is_empty() { Ok(()) } else { install(&missing, OTHERWISE) }
    })?;
    step("WsgiDAV", || {
        let folder = folder().join("python");
        fs::create_dir_all(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
        Environment { folder, requirements: "tests/servers/requirements.txt" }.packages()
    })?;
    step("versitygw", versitygw)?;
    // One check goes through the real program.
    step("program", program)?;
    step("carriers against real servers", || {
        let test = ["test", "--workspace", "--test", "servers", "--locked"];
        // One after the other, so that what each prints stays together.
        let shown = ["--", "--nocapture", "--test-threads", "1"];
        run(cargo_command().args(test).args(shown).env("HOLDFAST_SERVERS", folder()))
    })
}

/// Where the servers are that no package of the system brings.
fn folder() -> PathBuf {
    target().join("servers")
}

/// Builds the S3-compatible server, unless that has been done.
fn versitygw() -> Done {
    let programs = folder().join("bin");
    let (built, kept) = (programs.join("versitygw"), programs.join("versitygw.version"));
    if built.exists() && fs::read_to_string(&kept).is_ok_and(|version| version == S3) {
        return Ok(());
    }
    // From the same index as WsgiDAV: Debian's is older than versitygw wants.
    let mut go = Command::new(folder().join("python/bin/go"));
    run(go.args(["install", S3]).env("GOBIN", &programs)).map_err(|error| {
        format!(
            "versitygw cannot be built; it needs a Go module proxy that can be reached: {error}"
        )
    })?;
    fs::write(&kept, S3).map_err(|error| format!("{}: {error}", kept.display()))
}
