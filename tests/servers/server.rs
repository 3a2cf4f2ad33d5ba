//! A server's process: started on a free port, waited for, and ended.

use std::fs::{self, File, Permissions};
use std::net::{TcpListener, TcpStream};
use std::os::unix::fs::PermissionsExt;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant as Clock, SystemTime, UNIX_EPOCH};

use carry::Line;
use holdfast_core::Instant;
use holdfast_core::exchange::web::{Carrier, S3, Secret, WebDav};
use tempfile::TempDir;

pub(crate) const USER: &str = "ines";
pub(crate) const PASSWORD: &str = "Tr0mb0ne-never-shown";
pub(crate) const BUCKET: &str = "cellar";
pub(crate) const LANE: &str = "0123456789abcdef0123456789abcdef-00c0ffee";
pub(crate) const LEAF: &str =
    "0123456789abcdef0123456789abcdef-00c0ffee-00000001-fedcba9876543210.leaf";

/// One of the servers: what it is called, and how it is started.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Kind {
    pub(crate) name: &'static str,
    pub(crate) is_s3: bool,
    /// Writes its settings into a folder and gives the command that serves `files` inside it.
    pub(crate) start: fn(&Path, u16) -> Command,
}

/// A server that runs. It is ended when it is dropped.
pub(crate) struct Server {
    pub(crate) kind: Kind,
    pub(crate) port: u16,
    folder: TempDir,
    process: Child,
}

impl Server {
    pub(crate) fn start(kind: Kind) -> Server {
        let folder = tempfile::tempdir().unwrap();
        let files = folder.path().join("files");
        fs::create_dir_all(files.join("crew")).unwrap();
        fs::create_dir_all(files.join(BUCKET)).unwrap();
        // Apache serves as a user of its own.
        fs::set_permissions(folder.path(), Permissions::from_mode(0o777)).unwrap();
        for inner in ["", "crew", BUCKET] {
            fs::set_permissions(files.join(inner), Permissions::from_mode(0o777)).unwrap();
        }
        let port = free_port();
        let process = run(kind, folder.path(), port);
        let server = Server { kind, port, folder, process };
        server.wait();
        server
    }

    /// Ends it at once, as a power cut would.
    pub(crate) fn kill(&mut self) {
        self.process.kill().unwrap();
        self.process.wait().unwrap();
    }

    pub(crate) fn start_again(&mut self) {
        self.process = run(self.kind, self.folder.path(), self.port);
        self.wait();
    }

    fn wait(&self) {
        let begun = Clock::now();
        while TcpStream::connect(("127.0.0.1", self.port)).is_err() {
            let log = fs::read_to_string(self.folder.path().join("out.log")).unwrap_or_default();
            assert!(begun.elapsed() < Duration::from_secs(20), "{}: {log}", self.kind.name);
            sleep(Duration::from_millis(50));
        }
    }

    /// A file of the server's own.
    pub(crate) fn own(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// The folder whose lanes are the carrier's.
    pub(crate) fn files(&self) -> PathBuf {
        self.folder.path().join("files").join(if self.kind.is_s3 { BUCKET } else { "crew" })
    }

    pub(crate) fn base(&self) -> String {
        self.base_at(self.port)
    }

    fn base_at(&self, port: u16) -> String {
        let folder = if self.kind.is_s3 { BUCKET } else { "crew" };
        format!("http://127.0.0.1:{port}/{folder}")
    }

    pub(crate) fn carrier(&self) -> Carrier {
        self.carrier_at(self.port, PASSWORD)
    }

    /// The carrier behind another port, or with another password.
    pub(crate) fn carrier_at(&self, port: u16, password: &str) -> Carrier {
        if self.kind.is_s3 {
            return Carrier::S3(S3 {
                endpoint: format!("http://127.0.0.1:{port}"),
                region: "us-east-1".into(),
                bucket: BUCKET.into(),
                prefix: String::new(),
                key_id: USER.into(),
                secret: Secret::new(password),
                path_style: true,
                unencrypted: false,
            });
        }
        Carrier::WebDav(WebDav {
            url: self.base_at(port),
            user: USER.into(),
            password: Secret::new(password),
            unencrypted: false,
        })
    }

    pub(crate) fn line(&self) -> Line {
        open(&self.carrier())
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        let _ = self.process.kill();
        let _ = self.process.wait();
    }
}

pub(crate) fn open(carrier: &Carrier) -> Line {
    Line::open(carrier, now, 7).unwrap()
}

pub(crate) fn now() -> Instant {
    let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap();
    let wall_ms = i64::try_from(since.as_millis()).unwrap();
    Instant { wall_ms, offset_min: 0, boot_ms: 0, boot_id: String::new() }
}

pub(crate) fn free_port() -> u16 {
    TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap().port()
}

fn run(kind: Kind, folder: &Path, port: u16) -> Child {
    let log = File::options().create(true).append(true).open(folder.join("out.log")).unwrap();
    let mut command = (kind.start)(folder, port);
    command.stdin(Stdio::null()).stdout(log.try_clone().unwrap()).stderr(log);
    command.spawn().unwrap_or_else(|error| panic!("{}: {error}", kind.name))
}
