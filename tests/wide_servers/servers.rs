//! How rclone and lighttpd are set up, with no more than each needs: docs/carriers.md shows the same to people.

use std::fs;
use std::path::Path;
use std::process::Command;

use crate::cluster;
use crate::server::{Kind, PASSWORD_LINE, first_line, installed};

pub(crate) const RCLONE: Kind = Kind::webdav("rclone", rclone);
pub(crate) const LIGHTTPD: Kind = Kind::webdav("lighttpd", lighttpd);
pub(crate) const SEAWEEDFS: Kind = Kind {
    has_files: false,
    beside: cluster::beside,
    ready: cluster::ready,
    ..Kind::s3("SeaweedFS", cluster::start)
};

/// All of them. None is ever left out: where one cannot be started, its checks fail.
pub(crate) const ALL: [Kind; 3] = [RCLONE, LIGHTTPD, SEAWEEDFS];
pub(crate) const WEBDAV: [Kind; 2] = [RCLONE, LIGHTTPD];
pub(crate) const S3: [Kind; 1] = [SEAWEEDFS];

/// What the server calls itself.
pub(crate) fn version(kind: Kind) -> String {
    match kind.name {
        "rclone" => first_line(Command::new("rclone").arg("version")),
        "lighttpd" => first_line(Command::new("/usr/sbin/lighttpd").arg("-v")),
        // Built from a commit, which the program itself does not know.
        _ => {
            let said = first_line(Command::new(installed("bin/weed")).arg("version"));
            let built = fs::read_to_string(installed("bin/weed.version")).unwrap();
            format!("{said}, {built}")
        }
    }
}

fn rclone(folder: &Path, port: u16) -> Command {
    fs::write(folder.join("passwords"), PASSWORD_LINE).unwrap();
    let mut rclone = Command::new("rclone");
    rclone.args(["serve", "webdav", "--addr", &format!("127.0.0.1:{port}"), "--htpasswd"]);
    rclone.arg(folder.join("passwords")).arg("--config").arg(folder.join("rclone.conf"));
    rclone.arg(folder.join("files"));
    rclone
}

fn lighttpd(folder: &Path, port: u16) -> Command {
    let at = folder.display();
    fs::write(folder.join("passwords"), PASSWORD_LINE).unwrap();
    fs::create_dir_all(folder.join("uploads")).unwrap();
    fs::write(
        folder.join("lighttpd.conf"),
        format!(
            "server.modules = (\"mod_auth\", \"mod_authn_file\", \"mod_webdav\")\n\
             server.bind = \"127.0.0.1\"\nserver.port = {port}\nserver.document-root = \"{at}/files\"\n\
             server.errorlog = \"{at}/error.log\"\nserver.upload-dirs = (\"{at}/uploads\")\n\
             $HTTP[\"url\"] =~ \"^/\" {{\n  webdav.activate = \"enable\"\n\
             auth.backend = \"htpasswd\"\n  auth.backend.htpasswd.userfile = \"{at}/passwords\"\n\
             auth.require = (\"\" => (\"method\" => \"basic\", \"realm\" => \"crew\", \"require\" => \"valid-user\"))\n}}\n"
        ),
    )
    .unwrap();
    let mut lighttpd = Command::new("/usr/sbin/lighttpd");
    lighttpd.arg("-D").arg("-f").arg(folder.join("lighttpd.conf"));
    lighttpd
}
