//! SeaweedFS as a cluster: a master, three volume servers that hold what is in the files, each file on two of them, and
//! a filer that knows their names and speaks S3.

use std::fs;
use std::net::TcpListener;
use std::path::Path;
use std::process::Command;
use std::thread::sleep;
use std::time::{Duration, Instant as Clock};

use crate::curl;
use crate::server::{BUCKET, LANE, LEAF, PASSWORD, Server, USER, installed, spawn};

/// How many volume servers there are. The master is started before them.
pub(crate) const VOLUMES: usize = 3;
/// Whose port stands where, after those of the volume servers; the last is the one by which S3 speaks to its own.
const MASTER: usize = VOLUMES;
const FILER: usize = VOLUMES + 1;
const OWN: usize = VOLUMES + 2;
/// Each speaks to the others at a port so much higher. Another one can be said, and is not heeded everywhere.
const HIGHER: u16 = 10_000;
/// Another copy on another server of the same rack.
const TWICE: &str = "001";

/// The master and the volume servers.
pub(crate) fn beside(folder: &Path) -> Vec<Command> {
    let ports = ports(folder);
    let at = folder.join("master");
    fs::create_dir_all(&at).unwrap();
    let mut master = weed(folder);
    // It would tell its makers of itself, and look for other masters.
    master.args(["master", "-ip=127.0.0.1", "-peers=none", "-telemetry=false"]);
    master.arg(format!("-port={}", ports[MASTER]));
    master.arg(format!("-defaultReplication={TWICE}")).arg("-volumeSizeLimitMB=64");
    master.arg(format!("-mdir={}", at.display()));
    let volumes = (0..VOLUMES).map(|number| volume(folder, number));
    [master].into_iter().chain(volumes).collect()
}

/// One volume server.
fn volume(folder: &Path, number: usize) -> Command {
    let (ports, at) = (ports(folder), folder.join(format!("volume-{number}")));
    fs::create_dir_all(&at).unwrap();
    let mut volume = weed(folder);
    volume.args(["volume", "-ip=127.0.0.1", "-max=30", "-preStopSeconds=0"]);
    volume.arg(format!("-port={}", ports[number]));
    volume.arg(format!("-dir={}", at.display())).arg(format!("-mserver={}", master_at(&ports)));
    volume
}

/// The filer, whose S3 listens to the port.
pub(crate) fn start(folder: &Path, port: u16) -> Command {
    let (ports, at) = (ports(folder), folder.join("filer"));
    fs::create_dir_all(&at).unwrap();
    let keys = folder.join("s3.json");
    fs::write(
        &keys,
        format!(
            "{{\"identities\":[{{\"name\":\"crew\",\"credentials\":[{{\"accessKey\":\"{USER}\",\
             \"secretKey\":\"{PASSWORD}\"}}],\"actions\":[\"Admin\",\"Read\",\"Write\",\"List\"]}}]}}"
        ),
    )
    .unwrap();
    let mut filer = weed(folder);
    filer.args(["filer", "-ip=127.0.0.1", "-s3", "-s3.port.iceberg=0", "-s3.port.lance=0"]);
    // A mistyped bucket is to be an error.
    filer.arg("-s3.autoCreateBucket=false").arg(format!("-s3.port={port}"));
    filer.arg(format!("-port={}", ports[FILER])).arg(format!("-s3.port.grpc={}", ports[OWN]));
    filer.arg(format!("-s3.config={}", keys.display()));
    filer.arg(format!("-defaultReplicaPlacement={TWICE}"));
    filer.arg(format!("-defaultStoreDir={}", at.display()));
    filer.arg(format!("-master={}", master_at(&ports)));
    filer
}

/// Makes the bucket, and waits until files can be written: until the volume servers are known.
pub(crate) fn ready(server: &Server) {
    let begun = Clock::now();
    // A lane's folder stays when all in it was deleted, so what is tried is tried in another bucket.
    let other = server.base().replace(BUCKET, "tried");
    let file = format!("{other}/{LANE}/{LEAF}");
    let put = |url: &str| curl::ask(server, url, Some(b"is it there"), "").0;
    loop {
        let said = [put(&server.base()), put(&other), put(&file)];
        if said.iter().all(|said| matches!(said, 200 | 409)) {
            return;
        }
        let log = fs::read_to_string(server.own("out.log")).unwrap_or_default();
        let end = log.get(log.len().saturating_sub(4_000)..).unwrap_or_default();
        assert!(begun.elapsed() < Duration::from_secs(90), "SeaweedFS: {said:?}\n{end}");
        sleep(Duration::from_millis(200));
    }
}

/// Ends a volume server at once, as a power cut would.
pub(crate) fn kill_volume(server: &mut Server, number: usize) {
    let process = &mut server.processes[1 + number];
    process.kill().unwrap();
    process.wait().unwrap();
}

/// Starts a volume server again on what it holds.
pub(crate) fn start_volume(server: &mut Server, number: usize) {
    let folder = server.own("");
    server.processes[1 + number] = spawn(&mut volume(&folder, number), &folder, server.kind.name);
}

/// How many bytes each volume server holds.
pub(crate) fn held(server: &Server) -> [u64; VOLUMES] {
    let bytes = |number: usize| {
        let files = fs::read_dir(server.own(&format!("volume-{number}"))).unwrap();
        let files = files.map(|file| file.unwrap());
        let data = files.filter(|file| file.path().extension().is_some_and(|end| end == "dat"));
        // A volume with nothing in it has eight bytes.
        data.map(|file| file.metadata().unwrap().len().saturating_sub(8)).sum()
    };
    std::array::from_fn(bytes)
}

fn weed(folder: &Path) -> Command {
    let mut weed = Command::new(installed("bin/weed"));
    weed.arg(format!("-logdir={}", folder.display())).current_dir(folder);
    weed
}

fn master_at(ports: &[u16]) -> String {
    format!("127.0.0.1:{}", ports[MASTER])
}

/// The ports of all but S3: drawn once, so that what is started again is found again.
fn ports(folder: &Path) -> Vec<u16> {
    let kept = folder.join("ports");
    if let Ok(ports) = fs::read_to_string(&kept) {
        return ports.lines().map(|port| port.parse().unwrap()).collect();
    }
    // All held at once, so that no two are the same.
    let (mut ports, mut taken) = (Vec::new(), Vec::new());
    while ports.len() <= OWN {
        let one = TcpListener::bind("127.0.0.1:0").unwrap();
        let port = one.local_addr().unwrap().port();
        let other = port.checked_add(HIGHER).map(|port| TcpListener::bind(("127.0.0.1", port)));
        if let Some(Ok(other)) = other {
            ports.push(port);
            taken.push((one, other));
        }
    }
    let lines: Vec<String> = ports.iter().map(u16::to_string).collect();
    fs::write(&kept, lines.join("\n")).unwrap();
    ports
}
