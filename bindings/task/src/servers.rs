//! Carriers against real servers. Each server is installed here; one that cannot be had is named, and never left out.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::bindings;
use crate::kotlin;
use crate::python::Environment;
use crate::rust::program;
use crate::steps::{Done, cargo_command, copy, install, root, run, step, target};

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

/// What `cargo task check wide` wants beside these.
const WIDE_PACKAGES: [(&str, &str); 5] = [
    ("rclone", "/usr/bin/rclone"),
    ("lighttpd", "/usr/sbin/lighttpd"),
    ("lighttpd-mod-webdav", "/usr/lib/lighttpd/mod_webdav.so"),
    ("syncthing", "/usr/bin/syncthing"),
    ("curl", "/usr/bin/curl"),
];

/// SeaweedFS, which Debian has not, by the file that pins its commit.
const WEED: &str = "tests/wide_servers/weed/go.mod";

const OTHERWISE: &str = "install Apache with mod_dav, nginx with its dav-ext module, curl, openssl, age and gzip \
                         where Debian has them, then run this again";

const WIDE_OTHERWISE: &str = "install rclone, lighttpd with mod_webdav, Syncthing and curl where Debian has them, then run this again";

/// Installs what is missing and runs the checks.
pub(crate) fn check() -> Done {
    step("Apache, nginx, curl, openssl and age", || debian(&PACKAGES, OTHERWISE))?;
    step("WsgiDAV", python)?;
    step("versitygw", versitygw)?;
    // One check goes through the real program.
    step("program", program)?;
    step("carriers against real servers", || tests("servers"))?;
    step("JDK and Maven", kotlin::tools)?;
    bindings::generate()?;
    step("a phone's carrier against real servers", phone)
}

/// The app's carrier over the network, which sends by another library than this one's.
fn phone() -> Done {
    let mut maven = kotlin::maven(&bindings::library_folder("plain"));
    maven.arg(format!("-Dholdfast.servers={}", folder().display()));
    maven.args(["--projects", "app", "--also-make", "test", "-Dtest=ServersCheck"]);
    run(maven.arg("-Dsurefire.failIfNoSpecifiedTests=false"))
}

/// The same with more servers, a cluster that loses one and a file synchroniser: minutes.
pub(crate) fn wide() -> Done {
    step("rclone, lighttpd, Syncthing and curl", || debian(&WIDE_PACKAGES, WIDE_OTHERWISE))?;
    // Go is in it.
    step("Go", python)?;
    step("SeaweedFS", seaweedfs)?;
    step("program", program)?;
    step("carriers against more servers", || tests("wide_servers"))
}

/// Installs those of Debian's packages that are missing.
fn debian(packages: &[(&str, &str)], otherwise: &str) -> Done {
    let missing: Vec<&str> = packages
        .iter()
        .filter(|(_, file)| !Path::new(file).exists())
        .map(|(package, _)| *package)
        .collect();
    if missing.is_empty() { Ok(()) } else { install(&missing, otherwise) }
}

/// Installs what comes from Python's index.
fn python() -> Done {
    let folder = folder().join("python");
    fs::create_dir_all(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    Environment { folder, requirements: "tests/servers/requirements.txt" }.packages()
}

/// Runs a target of checks that want servers.
fn tests(target: &str) -> Done {
    let test = ["test", "--workspace", "--test", target, "--locked"];
    // One after the other, so that what each prints stays together.
    let shown = ["--", "--nocapture", "--test-threads", "1"];
    run(cargo_command().args(test).args(shown).env("HOLDFAST_SERVERS", folder()))
}

/// Where the servers are that no package of the system brings.
fn folder() -> PathBuf {
    target().join("servers")
}

/// Builds the S3-compatible server, unless that has been done.
fn versitygw() -> Done {
    built("versitygw", S3, |go, programs| run(go.args(["install", S3]).env("GOBIN", programs)))
}

/// Builds the cluster's one program, unless that has been done.
fn seaweedfs() -> Done {
    let pinned = root().join(WEED);
    let module = fs::read_to_string(&pinned).map_err(|error| format!("{WEED}: {error}"))?;
    let required = module.lines().find_map(|line| line.strip_prefix("require "));
    let version = required.ok_or_else(|| format!("{WEED} requires nothing"))?;
    built("weed", version, |go, programs| {
        // Go writes beside the file what it finds that the module needs.
        let folder = folder().join("weed");
        copy(&pinned, &folder.join("go.mod"))?;
        let build = ["build", "-mod=mod", "-o"];
        go.current_dir(&folder).args(build).arg(programs.join("weed"));
        run(go.arg("github.com/seaweedfs/seaweedfs/weed"))
    })
}

/// Builds a program of a version with Go, unless that has been done.
fn built(name: &str, version: &str, build: impl FnOnce(&mut Command, &Path) -> Done) -> Done {
    let programs = folder().join("bin");
    let (program, kept) = (programs.join(name), programs.join(format!("{name}.version")));
    if program.exists() && fs::read_to_string(&kept).is_ok_and(|built| built == version) {
        return Ok(());
    }
    // From the same index as WsgiDAV: Debian's is older than these want.
    let mut go = Command::new(folder().join("python/bin/go"));
    build(&mut go, &programs).map_err(|error| {
        format!("{name} cannot be built; it needs a Go module proxy that can be reached: {error}")
    })?;
    fs::write(&kept, version).map_err(|error| format!("{}: {error}", kept.display()))
}
