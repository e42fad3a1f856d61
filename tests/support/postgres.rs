//! A PostgreSQL server of the tests' own: in a folder of its own, on a free loopback port, stopped by its own `pg_ctl`.
//!
//! PostgreSQL refuses to run as root; the tests then run it as the `postgres` user of the package.

use std::fs;
use std::net::TcpListener;
use std::os::unix::fs::{MetadataExt, PermissionsExt};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::atomic::{AtomicU32, Ordering};
use std::sync::{Arc, Mutex, Weak};

use tempfile::TempDir;

/// Who runs the server when the tests run as root.
const USER: &str = "postgres";

/// A server with databases of the tests'. It stops when it is dropped.
pub struct Cluster {
    folder: TempDir,
    port: u16,
    programs: PathBuf,
    databases: AtomicU32,
}

/// The server that the tests of one process share; it lives as long as one of them holds it.
///
/// # Panics
/// When it cannot be started.
#[must_use]
pub fn shared() -> Arc<Cluster> {
    static SHARED: Mutex<Weak<Cluster>> = Mutex::new(Weak::new());
    let mut shared = SHARED
        .lock()
        .unwrap_or_else(std::sync::PoisonError::into_inner);
    shared.upgrade().unwrap_or_else(|| {
        let cluster = Arc::new(Cluster::start());
        *shared = Arc::downgrade(&cluster);
        cluster
    })
}

impl Cluster {
    /// Makes a server in a new folder and starts it.
    ///
    /// # Panics
    /// When PostgreSQL is not installed or does not start.
    #[must_use]
    pub fn start() -> Self {
        let folder = TempDir::new().expect("a folder for the server");
        let cluster = Self {
            folder,
            port: free_port(),
            programs: programs(),
            databases: AtomicU32::new(0),
        };
        if is_root() {
            fs::set_permissions(cluster.folder.path(), fs::Permissions::from_mode(0o711))
                .expect("a folder that can be entered");
            fs::create_dir(cluster.data()).expect("a folder for its data");
            run(Command::new("chown").arg(USER).arg(cluster.data()));
        }
        cluster.program(
            "initdb",
            &[
                "--auth=trust",
                "--username=postgres",
                "--encoding=UTF8",
                "--locale=C",
                "--no-sync",
            ],
        );
        cluster.watch();
        cluster.resume();
        cluster
    }

    /// A test that is killed drops nothing: a watch of its own then stops the server, and ends when the folder is gone.
    fn watch(&self) {
        let script = "while kill -0 \"$1\" 2>/dev/null && [ -d \"$2\" ]; do sleep 1; done; \
                      [ -d \"$2\" ] || exit 0; shift 2; \"$@\"; rm -rf \"$(dirname \"$PWD\")\"";
        let stop = self.command("pg_ctl", &["stop", "-w", "-s", "-m", "immediate"]);
        let mut watch = Command::new("sh");
        watch
            .args(["-c", script, "watch", &std::process::id().to_string()])
            .arg(self.data());
        watch
            .arg(stop.get_program())
            .args(stop.get_args())
            .current_dir(self.data());
        let _ = watch
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn();
    }

    /// Makes an empty database; its URL.
    #[must_use]
    pub fn database(&self) -> String {
        let name = format!("plans_{}", self.databases.fetch_add(1, Ordering::Relaxed));
        self.query("postgres", &format!("CREATE DATABASE {name}"));
        self.url(&name)
    }

    /// The URL of a database.
    #[must_use]
    pub fn url(&self, name: &str) -> String {
        format!("postgres://postgres@127.0.0.1:{}/{name}", self.port)
    }

    /// Asks a database; what `psql` prints.
    ///
    /// # Panics
    /// When it refuses.
    #[must_use]
    pub fn ask(&self, url: &str, sql: &str) -> String {
        run(Command::new(self.programs.join("psql")).args([
            "--no-psqlrc",
            "-qtAX",
            "-v",
            "ON_ERROR_STOP=1",
            "-c",
            sql,
            url,
        ]))
        .trim()
        .to_owned()
    }

    fn query(&self, name: &str, sql: &str) {
        let _ = self.ask(&self.url(name), sql);
    }

    /// Starts the server again after [`Cluster::halt`].
    pub fn resume(&self) {
        let options = format!(
            "-p {} -c listen_addresses=127.0.0.1 -c unix_socket_directories='' -c max_connections=200 -c shared_buffers=64MB",
            self.port
        );
        self.program(
            "pg_ctl",
            &[
                "start",
                "-w",
                "-s",
                "-t",
                "60",
                "-o",
                &options,
                "-l",
                &self.data().join("log").display().to_string(),
            ],
        );
    }

    /// Stops the server: `fast` ends connections in order, `immediate` as a crash would.
    pub fn halt(&self, mode: &str) {
        self.program("pg_ctl", &["stop", "-w", "-s", "-t", "60", "-m", mode]);
    }

    /// Has the server speak TLS with a certificate of its own from now on.
    ///
    /// # Panics
    /// When it does not take it.
    pub fn encrypt(&self, certificate: &[u8], key: &[u8]) {
        self.halt("fast");
        for (name, text) in [("server.crt", certificate), ("server.key", key)] {
            let file = self.data().join(name);
            fs::write(&file, text).expect("a file in the server's folder");
            fs::set_permissions(&file, fs::Permissions::from_mode(0o600))
                .expect("a file that only its owner reads");
            if is_root() {
                run(Command::new("chown").arg(USER).arg(&file));
            }
        }
        let settings = self.data().join("postgresql.auto.conf");
        fs::write(settings, "ssl = on\n").expect("the server's settings");
        self.resume();
    }

    /// Makes an empty database whose files are in a folder; its URL.
    ///
    /// # Panics
    /// When the folder cannot be given to the server.
    #[must_use]
    pub fn database_in(&self, folder: &Path) -> String {
        run(Command::new("chown").arg(USER).arg(folder));
        self.query(
            "postgres",
            &format!("CREATE TABLESPACE small LOCATION '{}'", folder.display()),
        );
        self.query("postgres", "CREATE DATABASE small TABLESPACE small");
        self.url("small")
    }

    /// Stops the server's processes where they are, as a machine that hangs would, or lets them go on.
    ///
    /// # Panics
    /// When its processes cannot be found.
    pub fn freeze(&self, frozen: bool) {
        let signal = if frozen { "-STOP" } else { "-CONT" };
        run(Command::new("kill")
            .arg(signal)
            .args(self.processes().iter().map(u32::to_string)));
    }

    /// The numbers of the server's processes, the first first.
    ///
    /// # Panics
    /// When they cannot be found.
    #[must_use]
    pub fn processes(&self) -> Vec<u32> {
        let file =
            fs::read_to_string(self.data().join("postmaster.pid")).expect("a server that runs");
        let first = file.lines().next().expect("its number");
        let children = Command::new("ps")
            .args(["-o", "pid=", "--ppid", first])
            .output()
            .expect("a list of its processes");
        let children = String::from_utf8_lossy(&children.stdout).into_owned();
        std::iter::once(first)
            .chain(children.split_whitespace())
            .filter_map(|number| number.parse().ok())
            .collect()
    }

    fn data(&self) -> PathBuf {
        self.folder.path().join("data")
    }

    fn command(&self, name: &str, words: &[&str]) -> Command {
        let program = self.programs.join(name);
        let mut command = if is_root() {
            let mut command = Command::new("setpriv");
            command
                .arg(format!("--reuid={USER}"))
                .arg(format!("--regid={USER}"))
                .arg("--clear-groups")
                .arg(program);
            command
        } else {
            Command::new(program)
        };
        command
            .args(words)
            .arg("-D")
            .arg(self.data())
            .current_dir("/")
            .stdin(Stdio::null());
        command
    }

    /// Runs one of the server's programs; its output goes nowhere, since the server would hold it open.
    fn program(&self, name: &str, words: &[&str]) {
        let status = self
            .command(name, words)
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .status()
            .expect("a program of PostgreSQL");
        assert!(
            status.success(),
            "{name}: {status}\n{}",
            fs::read_to_string(self.data().join("log")).unwrap_or_default()
        );
    }
}

impl Drop for Cluster {
    fn drop(&mut self) {
        let _ = self
            .command("pg_ctl", &["stop", "-w", "-s", "-m", "immediate"])
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .status();
    }
}

/// A free port below those that the system hands out by itself: none of the services started meanwhile takes it.
fn free_port() -> u16 {
    static NEXT: AtomicU32 = AtomicU32::new(0);
    let first = std::process::id().wrapping_mul(7);
    let port = || {
        u16::try_from(20_000 + first.wrapping_add(NEXT.fetch_add(1, Ordering::Relaxed)) % 12_000)
            .expect("a port")
    };
    (0..100)
        .map(|_| port())
        .find(|&port| TcpListener::bind(("127.0.0.1", port)).is_ok())
        .expect("a free port")
}

fn run(command: &mut Command) -> String {
    let output = command.output().expect("a command that runs");
    assert!(
        output.status.success(),
        "{command:?}: {}",
        String::from_utf8_lossy(&output.stderr)
    );
    String::from_utf8_lossy(&output.stdout).into_owned()
}

fn is_root() -> bool {
    fs::metadata("/proc/self").is_ok_and(|own| own.uid() == 0)
}

/// The folder of PostgreSQL's programs: Debian keeps those of each version apart, others have them in the path.
fn programs() -> PathBuf {
    let of_debian = fs::read_dir("/usr/lib/postgresql")
        .into_iter()
        .flatten()
        .flatten()
        .map(|version| version.path().join("bin"));
    let found = of_debian.filter(|bin| bin.join("initdb").is_file()).max();
    let in_path = || {
        std::env::split_paths(&std::env::var_os("PATH")?)
            .find(|folder| folder.join("initdb").is_file())
    };
    found.or_else(in_path).unwrap_or_else(|| {
        panic!(
            "PostgreSQL is not installed: no initdb in {}",
            Path::new("/usr/lib/postgresql").display()
        )
    })
}
