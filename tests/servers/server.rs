//! A server's process: started on a free port, waited for, and ended.

use std::env;
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
/// User and SHA-1 of the password in base64, as most servers read it.
pub(crate) const PASSWORD_LINE: &str = "ines:{SHA}n+QxL75f2TLM5OXSS/Jpnlmf91A=\n";
pub(crate) const BUCKET: &str = "cellar";
pub(crate) const LANE: &str = "0123456789abcdef0123456789abcdef-00c0ffee";
pub(crate) const LEAF: &str =
    "0123456789abcdef0123456789abcdef-00c0ffee-00000001-fedcba9876543210.leaf";

/// One of the servers: what it is called, and how it is started.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Kind {
    pub(crate) name: &'static str,
    pub(crate) is_s3: bool,
    /// True where what it serves lies in `files` as it is, to be looked at behind its back.
    pub(crate) has_files: bool,
    /// The programs that it needs beside it, with their settings in a folder.
    pub(crate) beside: fn(&Path) -> Vec<Command>,
    /// Writes its settings into a folder and gives the command that serves `files` inside it.
    pub(crate) start: fn(&Path, u16) -> Command,
    /// What is left to do once it listens.
    pub(crate) ready: fn(&Server),
}

impl Kind {
    /// One program that serves a folder by WebDAV.
    pub(crate) const fn webdav(name: &'static str, start: fn(&Path, u16) -> Command) -> Kind {
        let (beside, ready) = (alone as fn(&Path) -> Vec<Command>, at_once as fn(&Server));
        Kind { name, is_s3: false, has_files: true, beside, start, ready }
    }

    /// One program that serves a folder as S3.
    pub(crate) const fn s3(name: &'static str, start: fn(&Path, u16) -> Command) -> Kind {
        Kind { is_s3: true, ..Kind::webdav(name, start) }
    }
}

fn alone(_: &Path) -> Vec<Command> {
    Vec::new()
}

fn at_once(_: &Server) {}

/// A server that runs. It is ended when it is dropped.
pub(crate) struct Server {
    pub(crate) kind: Kind,
    pub(crate) port: u16,
    folder: TempDir,
    /// Those beside it, in their order, and last its own.
    pub(crate) processes: Vec<Child>,
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
        let processes = run(kind, folder.path(), port);
        let server = Server { kind, port, folder, processes };
        server.wait();
        server
    }

    /// Ends it at once, and all beside it, as a power cut would.
    pub(crate) fn kill(&mut self) {
        for process in &mut self.processes {
            process.kill().unwrap();
        }
        for process in &mut self.processes {
            process.wait().unwrap();
        }
    }

    pub(crate) fn start_again(&mut self) {
        self.processes = run(self.kind, self.folder.path(), self.port);
        self.wait();
    }

    fn wait(&self) {
        let begun = Clock::now();
        while TcpStream::connect(("127.0.0.1", self.port)).is_err() {
            let log = fs::read_to_string(self.folder.path().join("out.log")).unwrap_or_default();
            assert!(begun.elapsed() < Duration::from_secs(60), "{}: {log}", self.kind.name);
            sleep(Duration::from_millis(50));
        }
        (self.kind.ready)(self);
    }

    /// Lays files into a lane: behind the server's back where its files lie there as they are.
    pub(crate) fn lay(&self, names: &[String], content: &[u8]) {
        let lane = self.files().join(LANE);
        if self.kind.has_files {
            fs::create_dir_all(&lane).unwrap();
            for name in names {
                fs::write(lane.join(name), content).unwrap();
            }
            return;
        }
        std::thread::scope(|scope| {
            for names in names.chunks(names.len().div_ceil(8)) {
                let put = move |name: &String| self.line().put(LANE, name, content.to_vec());
                scope.spawn(move || assert!(names.iter().all(|name| put(name).unwrap())));
            }
        });
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
        for process in &mut self.processes {
            let _ = process.kill();
            let _ = process.wait();
        }
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

fn run(kind: Kind, folder: &Path, port: u16) -> Vec<Child> {
    let beside = (kind.beside)(folder);
    let all = beside.into_iter().chain([(kind.start)(folder, port)]);
    let spawned = |mut command| spawn(&mut command, folder, kind.name);
    all.map(spawned).collect()
}

/// Starts a program whose output goes into a folder.
pub(crate) fn spawn(command: &mut Command, folder: &Path, name: &str) -> Child {
    let log = File::options().create(true).append(true).open(folder.join("out.log")).unwrap();
    command.stdin(Stdio::null()).stdout(log.try_clone().unwrap()).stderr(log);
    command.spawn().unwrap_or_else(|error| panic!("{name}: {error}"))
}

/// A program that `cargo task check` installed for this.
pub(crate) fn installed(program: &str) -> PathBuf {
    let folder = env::var_os("HOLDFAST_SERVERS");
    let folder = folder.unwrap_or_else(|| panic!("run this by `cargo task check`"));
    Path::new(&folder).join(program)
}

/// The first line that a program says of itself.
pub(crate) fn first_line(command: &mut Command) -> String {
    let said = command.output().unwrap();
    let said = [said.stdout, said.stderr].concat();
    String::from_utf8_lossy(&said).lines().next().unwrap_or_default().to_owned()
}
