//! TLS, through the real program: a certificate that the system trusts, one that it does not, one that has expired, one of another
//! host.

use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};

use holdfast_tests::{Desk, program};

use crate::server::{Kind, PASSWORD, Server, USER};
use crate::servers::apache_with;

const TLS: Kind = Kind::webdav("Apache with TLS", tls);
const EXPIRED: Kind = Kind::webdav("Apache, expired", expired);

fn tls(folder: &Path, port: u16) -> Command {
    served(folder, port, "20200101000000Z", "20480101000000Z")
}

fn expired(folder: &Path, port: u16) -> Command {
    served(folder, port, "20200101000000Z", "20200201000000Z")
}

/// Apache with a certificate for 127.0.0.1 that holds between two dates.
fn served(folder: &Path, port: u16, from: &str, to: &str) -> Command {
    let at = folder.display();
    fs::write(
        folder.join("ca.conf"),
        format!(
            "[ca]\ndefault_ca = own\n[own]\nnew_certs_dir = {at}\ndatabase = {at}/index\nrand_serial = yes\n\
             default_md = sha256\npolicy = named\nx509_extensions = leaf\n[named]\ncommonName = supplied\n\
             [leaf]\nbasicConstraints = critical,CA:FALSE\nsubjectAltName = IP:127.0.0.1\n\
             [req]\ndistinguished_name = name\n[name]\n"
        ),
    )
    .unwrap();
    fs::write(folder.join("index"), "").unwrap();
    let openssl = |args: &[&str]| {
        let mut openssl = Command::new("openssl");
        let output = openssl.current_dir(folder).args(args).output().unwrap();
        assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    };
    openssl(&[
        "req",
        "-new",
        "-newkey",
        "ec",
        "-pkeyopt",
        "ec_paramgen_curve:P-256",
        "-nodes",
        "-config",
        "ca.conf",
        "-subj",
        "/CN=crew",
        "-keyout",
        "key.pem",
        "-out",
        "asked.pem",
    ]);
    openssl(&[
        "ca",
        "-selfsign",
        "-batch",
        "-notext",
        "-config",
        "ca.conf",
        "-keyfile",
        "key.pem",
        "-in",
        "asked.pem",
        "-startdate",
        from,
        "-enddate",
        to,
        "-out",
        "certificate.pem",
    ]);
    apache_with(
        folder,
        port,
        &format!(
            "LoadModule ssl_module /usr/lib/apache2/modules/mod_ssl.so\nSSLSessionCache none\nSSLEngine on\n\
             SSLCertificateFile {at}/certificate.pem\nSSLCertificateKeyFile {at}/key.pem\n"
        ),
    )
}

/// Keeps a carrier by the real program, on a system that trusts the server's certificate or does not.
fn add(desk: &Desk, server: &Server, host: &str, trusts: bool) -> (bool, String) {
    let url = format!("https://{host}:{}/crew", server.port);
    let mut add = Command::new(program());
    add.args(["--home", &desk.path("ana"), "carrier", "add", "club", &url, "--user", USER]);
    add.env("HOLDFAST_CARRIER_PASSWORD", PASSWORD).env("LC_ALL", "C").env_remove("HOLDFAST_LANG");
    if trusts {
        add.env("SSL_CERT_FILE", server.own("certificate.pem"));
    }
    let output = add.stdin(Stdio::null()).output().unwrap();
    let said = [output.stdout, output.stderr].concat();
    let said = String::from_utf8_lossy(&said).into_owned();
    assert!(!said.contains(PASSWORD), "{said}");
    (output.status.success(), said)
}

#[test]
fn a_certificate_is_trusted_as_the_system_trusts_it() {
    let desk = Desk::new();
    desk.fine("ana", &["start", "--as", "athlete", "--name", "Ana"], "");
    let server = Server::start(TLS);
    let refused = |(fine, said): (bool, String), why: &str| {
        assert!(!fine && said.contains("is not trusted") && said.contains(why), "{said}");
        println!("{said}");
    };
    refused(add(&desk, &server, "127.0.0.1", false), "UnknownIssuer");
    refused(add(&desk, &server, "localhost", true), "localhost");
    let old = Server::start(EXPIRED);
    refused(add(&desk, &old, "127.0.0.1", true), "expired");
    assert!(desk.fine("ana", &["carrier", "list"], "").contains("No carrier is kept."));
    let (fine, said) = add(&desk, &server, "127.0.0.1", true);
    assert!(fine && said.contains("It answers, and the password fits."), "{said}");
}
