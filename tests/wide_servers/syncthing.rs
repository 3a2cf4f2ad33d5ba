//! Two Syncthing instances on loopback that keep two folders the same, each with a home of its own.

use std::collections::BTreeMap;
use std::fs;
use std::net::TcpListener;
use std::path::{Path, PathBuf};
use std::process::{Child, Command};
use std::thread::sleep;
use std::time::{Duration, Instant as Clock};

use tempfile::TempDir;

use crate::server::spawn;

/// Two folders, and what keeps them the same.
pub(crate) struct Pair {
    folder: TempDir,
    sides: [Side; 2],
}

struct Side {
    /// How others know it.
    id: String,
    port: u16,
    process: Option<Child>,
}

impl Pair {
    /// Both run. With `kbps` neither sends more than so many kibibytes a second, after the first half of a mebibyte.
    pub(crate) fn start(kbps: u32) -> Pair {
        let folder = tempfile::tempdir().unwrap();
        // Both held at once, so that they are not the same.
        let taken = [0, 1].map(|_| TcpListener::bind("127.0.0.1:0").unwrap());
        let ports = taken.map(|port| port.local_addr().unwrap().port());
        let sides = [0, 1].map(|side| {
            let home = folder.path().join(format!("home-{side}"));
            fs::create_dir_all(folder.path().join(format!("folder-{side}"))).unwrap();
            let mut make = syncthing(&home);
            make.args(["generate", "--no-default-folder", "--skip-port-probing", "--home"]);
            let made = make.arg(&home).output().unwrap();
            assert!(made.status.success(), "{made:?}");
            let id = syncthing(&home).arg("--device-id").arg("--home").arg(&home).output().unwrap();
            let id = String::from_utf8(id.stdout).unwrap().trim().to_owned();
            Side { id, port: ports[side], process: None }
        });
        let mut pair = Pair { folder, sides };
        for side in [0, 1] {
            let config = pair.config(side, kbps);
            fs::write(pair.home(side).join("config.xml"), config).unwrap();
            pair.run(side);
        }
        // The mark of a folder that is looked after.
        pair.wait("neither has begun", |pair| {
            [0, 1].iter().all(|side| pair.files(*side).join(".stfolder").exists())
        });
        pair
    }

    /// The folder of a side.
    pub(crate) fn files(&self, side: usize) -> PathBuf {
        self.folder.path().join(format!("folder-{side}"))
    }

    fn home(&self, side: usize) -> PathBuf {
        self.folder.path().join(format!("home-{side}"))
    }

    /// Starts a side.
    pub(crate) fn run(&mut self, side: usize) {
        let home = self.home(side);
        let mut serve = syncthing(&home);
        serve.args(["serve", "--no-browser", "--no-upgrade", "--home"]).arg(&home);
        self.sides[side].process = Some(spawn(&mut serve, &home, "Syncthing"));
    }

    /// Ends a side at once, as a power cut would.
    pub(crate) fn kill(&mut self, side: usize) {
        if let Some(mut process) = self.sides[side].process.take() {
            process.kill().unwrap();
            process.wait().unwrap();
        }
    }

    /// What lies in a side's folder and is not hidden.
    pub(crate) fn seen(&self, side: usize) -> BTreeMap<String, Vec<u8>> {
        self.list(side).into_iter().filter(|(name, _)| !name.starts_with('.')).collect()
    }

    /// What is on its way into a side's folder.
    pub(crate) fn on_the_way(&self, side: usize) -> Vec<String> {
        self.list(side).into_keys().filter(|name| name.starts_with(".syncthing.")).collect()
    }

    fn list(&self, side: usize) -> BTreeMap<String, Vec<u8>> {
        let mut files = BTreeMap::new();
        for file in fs::read_dir(self.files(side)).unwrap() {
            let path = file.unwrap().path();
            let name = path.file_name().unwrap().to_string_lossy().into_owned();
            // One that is being renamed may be gone.
            if path.is_file()
                && let Ok(content) = fs::read(&path)
            {
                files.insert(name, content);
            }
        }
        files
    }

    /// Waits until both folders have the same, and as much of it as `enough` asks for. Gives how long that took.
    pub(crate) fn same(&self, why: &str, enough: impl Fn(&Pair) -> bool) -> Duration {
        let begun = Clock::now();
        self.wait(why, |pair| {
            let is_still = |side| pair.on_the_way(side).is_empty();
            enough(pair) && is_still(0) && is_still(1) && pair.seen(0) == pair.seen(1)
        });
        begun.elapsed()
    }

    /// Waits for something; `why` is said where it does not come.
    pub(crate) fn wait(&self, why: &str, is_so: impl Fn(&Pair) -> bool) {
        let begun = Clock::now();
        while !is_so(self) {
            if begun.elapsed() > Duration::from_secs(120) {
                let seen = [0, 1].map(|side| (self.seen(side).len(), self.on_the_way(side)));
                let logs = [0, 1].map(|side| self.log(side));
                panic!("Syncthing: {why}: {seen:?}\n{}\n{}", logs[0], logs[1]);
            }
            sleep(Duration::from_millis(20));
        }
    }

    fn log(&self, side: usize) -> String {
        let log = fs::read_to_string(self.home(side).join("out.log")).unwrap_or_default();
        let from = log.len().saturating_sub(2_000);
        log.get(from..).unwrap_or_default().to_owned()
    }

    /// No more than two that know each other need: nothing is announced, and nobody else is asked.
    fn config(&self, side: usize, kbps: u32) -> String {
        let own = &self.sides[side];
        let ids: String =
            self.sides.iter().map(|side| format!("<device id=\"{}\"/>", side.id)).collect();
        let device = |side: &Side| {
            format!(
                "<device id=\"{}\" name=\"{}\"><address>tcp://127.0.0.1:{}</address></device>\n",
                side.id, side.port, side.port
            )
        };
        let devices: String = self.sides.iter().map(device).collect();
        format!(
            "<configuration version=\"35\">\n\
             <folder id=\"crew\" path=\"{}\" type=\"sendreceive\" rescanIntervalS=\"1\" fsWatcherEnabled=\"true\" \
             fsWatcherDelayS=\"1\">{ids}<maxConflicts>10</maxConflicts></folder>\n{devices}<gui enabled=\"false\"/>\n<options>\n\
             <listenAddress>tcp://127.0.0.1:{}</listenAddress>\n\
             <globalAnnounceEnabled>false</globalAnnounceEnabled>\n\
             <localAnnounceEnabled>false</localAnnounceEnabled>\n<relaysEnabled>false</relaysEnabled>\n\
             <natEnabled>false</natEnabled>\n<stunKeepaliveStartS>0</stunKeepaliveStartS>\n\
             <crashReportingEnabled>false</crashReportingEnabled>\n<urAccepted>-1</urAccepted>\n\
             <autoUpgradeIntervalH>0</autoUpgradeIntervalH>\n<startBrowser>false</startBrowser>\n\
             <reconnectionIntervalS>1</reconnectionIntervalS>\n<maxSendKbps>{kbps}</maxSendKbps>\n\
             <limitBandwidthInLan>true</limitBandwidthInLan>\n</options>\n</configuration>\n",
            self.files(side).display(),
            own.port
        )
    }
}

impl Drop for Pair {
    fn drop(&mut self) {
        for side in [0, 1] {
            self.kill(side);
        }
    }
}

/// The program, which then has no second process that starts it again when it dies.
fn syncthing(home: &Path) -> Command {
    fs::create_dir_all(home).unwrap();
    let mut syncthing = Command::new("syncthing");
    syncthing.env("STMONITORED", "1").env("HOME", home);
    syncthing
}

/// What the program calls itself.
pub(crate) fn version() -> String {
    crate::server::first_line(Command::new("syncthing").arg("--version"))
}
