//! A second client, which shares no code with ours: `curl`, which signs for S3 by itself.

use std::io::Write;
use std::process::{Command, Stdio};

use crate::server::{PASSWORD, Server, USER};

/// Reads a file; the status and what came.
pub(crate) fn get(server: &Server, folder: &str, name: &str) -> (u16, Vec<u8>) {
    ask(server, &format!("{}/{folder}/{name}", server.base()), None, "")
}

/// Holds a file against what should be in it.
pub(crate) fn sees(server: &Server, folder: &str, name: &str, content: &[u8]) {
    let (status, found) = get(server, folder, name);
    let same = found == content;
    assert!(status == 200 && same, "{}: {status}, {} bytes", server.kind.name, found.len());
}

/// Writes a file.
pub(crate) fn put(server: &Server, folder: &str, name: &str, content: &[u8]) -> u16 {
    let url = format!("{}/{folder}/{name}", server.base());
    ask(server, &url, Some(content), "").0
}

/// Writes over a file with a request not to (`If-None-Match: *`), puts back what was there, and says what came of it.
pub(crate) fn puts_if_absent(server: &Server, folder: &str, name: &str, content: &[u8]) -> String {
    let url = format!("{}/{folder}/{name}", server.base());
    let (_, before) = get(server, folder, name);
    let (status, _) = ask(server, &url, Some(content), "header = \"If-None-Match: *\"\n");
    let replaced = get(server, folder, name).1 != before;
    put(server, folder, name, &before);
    let what = if replaced { "replaces the file" } else { "leaves the file" };
    format!("asked by PUT not to replace, it answers {status} and {what}")
}

/// Asks for an address, or writes there; `more` are lines of the client's settings.
pub(crate) fn ask(
    server: &Server,
    url: &str,
    content: Option<&[u8]>,
    more: &str,
) -> (u16, Vec<u8>) {
    let folder = tempfile::tempdir().unwrap();
    let config = folder.path().join("config");
    // In a file: what stands behind a program's name can be read by everybody.
    let mut text = format!(
        "url = \"{url}\"\nuser = \"{USER}:{PASSWORD}\"\nsilent\nnoproxy = \"*\"\nwrite-out = \"%{{stderr}}%{{http_code}}\"\n"
    );
    if server.kind.is_s3 {
        text += "aws-sigv4 = \"aws:amz:us-east-1:s3\"\n";
        // Of a body it works out no hash by itself.
        text += "header = \"x-amz-content-sha256: UNSIGNED-PAYLOAD\"\n";
    }
    text += more;
    let body = folder.path().join("body");
    if let Some(content) = content {
        std::fs::write(&body, content).unwrap();
        text += &format!("upload-file = \"{}\"\n", body.display());
    }
    std::fs::File::create(&config).unwrap().write_all(text.as_bytes()).unwrap();
    let mut curl = Command::new("curl");
    let output = curl.arg("-K").arg(&config).stdin(Stdio::null()).output().unwrap();
    let status = String::from_utf8_lossy(&output.stderr).trim().parse();
    (status.unwrap_or_else(|_| panic!("curl {url}: {output:?}")), output.stdout)
}
