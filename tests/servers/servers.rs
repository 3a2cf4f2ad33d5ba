//! How each server is set up, with no more than it needs: docs/carriers.md shows the same to people.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::server::{Kind, PASSWORD, PASSWORD_LINE, USER, first_line, installed};

pub(crate) const APACHE: Kind = Kind::webdav("Apache mod_dav", apache);
pub(crate) const NGINX: Kind = Kind::webdav("nginx dav", nginx);
pub(crate) const WSGIDAV: Kind = Kind::webdav("WsgiDAV", wsgidav);
pub(crate) const VERSITYGW: Kind = Kind::s3("versitygw", versitygw);

/// All of them. None is ever left out: where one cannot be started, its checks fail.
pub(crate) const ALL: [Kind; 4] = [APACHE, NGINX, WSGIDAV, VERSITYGW];
pub(crate) const WEBDAV: [Kind; 3] = [APACHE, NGINX, WSGIDAV];
pub(crate) const S3: [Kind; 1] = [VERSITYGW];

/// What the server calls itself.
pub(crate) fn version(kind: Kind) -> String {
    if kind.is_s3 {
        // The program knows none of its own.
        return fs::read_to_string(installed("bin/versitygw.version")).unwrap();
    }
    let (program, arg) = match kind.name {
        "Apache mod_dav" => (PathBuf::from("/usr/sbin/apache2"), "-v"),
        "nginx dav" => (PathBuf::from("/usr/sbin/nginx"), "-v"),
        _ => (installed("python/bin/wsgidav"), "--version"),
    };
    first_line(Command::new(program).arg(arg))
}

fn apache(folder: &Path, port: u16) -> Command {
    apache_with(folder, port, "")
}

/// Apache with more settings.
pub(crate) fn apache_with(folder: &Path, port: u16, more: &str) -> Command {
    let modules = "/usr/lib/apache2/modules";
    let load: String = [
        ("mpm_event", "mod_mpm_event"),
        ("authn_core", "mod_authn_core"),
        ("authn_file", "mod_authn_file"),
        ("authz_core", "mod_authz_core"),
        ("authz_user", "mod_authz_user"),
        ("auth_basic", "mod_auth_basic"),
        ("dav", "mod_dav"),
        ("dav_fs", "mod_dav_fs"),
    ]
    .iter()
    .map(|(name, file)| format!("LoadModule {name}_module {modules}/{file}.so\n"))
    .collect();
    let at = folder.display();
    fs::write(folder.join("passwords"), PASSWORD_LINE).unwrap();
    fs::write(
        folder.join("apache.conf"),
        format!(
            "{load}{more}ServerRoot {at}\nServerName 127.0.0.1\nListen 127.0.0.1:{port}\nPidFile {at}/pid\n\
             ErrorLog {at}/error.log\nUser www-data\nGroup www-data\nDocumentRoot {at}/files\n\
             DavLockDB {at}/locks\n\
             <Directory {at}/files>\n  Dav On\n  AuthType Basic\n  AuthName crew\n\
             AuthUserFile {at}/passwords\n  Require valid-user\n</Directory>\n\
             <Directory {at}/files/readonly>\n  <LimitExcept GET PROPFIND OPTIONS>\n\
             Require all denied\n  </LimitExcept>\n</Directory>\n\
             <Directory {at}/files/small>\n  LimitRequestBody 1000\n</Directory>\n"
        ),
    )
    .unwrap();
    // One process, which a single signal ends.
    let mut apache = Command::new("/usr/sbin/apache2");
    apache.arg("-X").arg("-f").arg(folder.join("apache.conf"));
    apache
}

fn nginx(folder: &Path, port: u16) -> Command {
    let at = folder.display();
    fs::write(folder.join("passwords"), PASSWORD_LINE).unwrap();
    let temporary: String = ["client_body", "proxy", "fastcgi", "uwsgi", "scgi"]
        .iter()
        .map(|kind| format!("  {kind}_temp_path {at}/{kind};\n"))
        .collect();
    fs::write(
        folder.join("nginx.conf"),
        format!(
            "load_module /usr/lib/nginx/modules/ngx_http_dav_ext_module.so;\n\
             daemon off;\nmaster_process off;\npid {at}/pid;\nerror_log {at}/error.log;\nevents {{}}\n\
             http {{\n{temporary}  access_log off;\n  server {{\n    listen 127.0.0.1:{port};\n\
             root {at}/files;\n    client_max_body_size 8m;\n    auth_basic crew;\n\
             auth_basic_user_file {at}/passwords;\n\
             location / {{\n      dav_methods PUT DELETE MKCOL MOVE;\n\
             dav_ext_methods PROPFIND OPTIONS;\n    }}\n\
             location /readonly/ {{ dav_ext_methods PROPFIND OPTIONS; }}\n\
             location /small/ {{\n      client_max_body_size 1k;\n      dav_methods PUT DELETE MKCOL MOVE;\n\
             dav_ext_methods PROPFIND OPTIONS;\n    }}\n\
             location /full/ {{\n      dav_ext_methods PROPFIND OPTIONS;\n\
             if ($request_method = PUT) {{ return 507; }}\n    }}\n\
             location /old/ {{ return 301 http://localhost:{port}/crew/; }}\n  }}\n}}\n"
        ),
    )
    .unwrap();
    let mut nginx = Command::new("/usr/sbin/nginx");
    nginx.arg("-e").arg(folder.join("error.log")).arg("-p").arg(folder);
    nginx.arg("-c").arg(folder.join("nginx.conf"));
    nginx
}

fn wsgidav(folder: &Path, port: u16) -> Command {
    let at = folder.display();
    fs::write(
        folder.join("wsgidav.yaml"),
        format!(
            "host: 127.0.0.1\nport: {port}\nserver: cheroot\nprovider_mapping:\n  \"/\": {at}/files\n\
             http_authenticator:\n  accept_basic: true\n  accept_digest: false\n  default_to_digest: false\n\
             simple_dc:\n  user_mapping:\n    \"*\":\n      {USER}:\n        password: \"{PASSWORD}\"\n"
        ),
    )
    .unwrap();
    let mut wsgidav = Command::new(installed("python/bin/wsgidav"));
    wsgidav.arg("--config").arg(folder.join("wsgidav.yaml"));
    wsgidav
}

fn versitygw(folder: &Path, port: u16) -> Command {
    let mut versitygw = Command::new(installed("bin/versitygw"));
    versitygw.env("ROOT_ACCESS_KEY", USER).env("ROOT_SECRET_KEY", PASSWORD);
    versitygw.arg("--port").arg(format!("127.0.0.1:{port}")).arg("posix");
    versitygw.arg(folder.join("files"));
    versitygw
}
