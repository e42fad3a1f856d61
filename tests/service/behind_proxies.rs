//! The samples for proxies in `deploy/proxies` as they stand there, run by nginx, HAProxy and Caddy with TLS on loopback:
//! pages, forms, prints and cookies work below a path, and the visitor's address, host and scheme come through.
//!
//! A sample is changed in nothing but ports, certificates and where logs go.

use std::fs;
use std::io::Write;
use std::net::{SocketAddr, TcpListener, TcpStream};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::Duration;

use stillground_server::config::Settings;
use stillground_tests::http::{Answer, parse};
use stillground_tests::service::{Service, start_with};

const BASE: &str = "/planner";

/// A proxy that runs; it is told to stop when dropped.
struct Proxy {
    child: Child,
    socket: SocketAddr,
    folder: tempfile::TempDir,
}

impl Drop for Proxy {
    fn drop(&mut self) {
        let id = self.child.id().to_string();
        let _ = Command::new("kill").args(["-TERM", &id]).status();
        let _ = self.child.wait();
    }
}

impl Proxy {
    /// Starts a program on a sample that was fitted to a folder, this port and the service's.
    fn start(service: &Service, sample: &str, fit: Fit, words: &[&str]) -> Self {
        let folder = tempfile::tempdir().unwrap();
        certificate(folder.path());
        let socket = free();
        let text = fs::read_to_string(
            stillground_tests::workspace()
                .join("deploy/proxies")
                .join(sample),
        )
        .unwrap();
        let text = text.replace("127.0.0.1:8080", &service.socket.to_string());
        fs::write(
            folder.path().join("conf"),
            fit(&text, folder.path(), socket.port()),
        )
        .unwrap();
        let child = Command::new(words[0])
            .args(&words[1..])
            .current_dir(folder.path())
            .env("HOME", folder.path())
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(fs::File::create(folder.path().join("said")).unwrap())
            .spawn()
            .unwrap_or_else(|error| panic!("{}: {error}; tests/run installs it", words[0]));
        let proxy = Self {
            child,
            socket,
            folder,
        };
        for _ in 0..400 {
            if TcpStream::connect(socket).is_ok() {
                return proxy;
            }
            std::thread::sleep(Duration::from_millis(25));
        }
        let said = fs::read_to_string(proxy.folder.path().join("said")).unwrap_or_default();
        panic!("{sample} does not answer: {said}");
    }

    /// Sends a request over TLS as a visitor at an address of this machine, by the host that the certificate names.
    fn ask(&self, from: &str, method: &str, path: &str, head: &str, body: &[u8]) -> Answer {
        let mut bytes = format!(
            "{method} {path} HTTP/1.1\r\nhost: pier.example\r\nconnection: close\r\n{head}"
        );
        if !body.is_empty() {
            bytes.push_str(&format!("content-length: {}\r\n", body.len()));
        }
        bytes.push_str("\r\n");
        let mut line = Command::new("openssl")
            .args(["s_client", "-quiet", "-verify_return_error", "-connect"])
            .arg(self.socket.to_string())
            .args(["-servername", "pier.example", "-bind"])
            .arg(format!("{from}:0"))
            .args(["-CAfile", "crt"])
            .current_dir(self.folder.path())
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .expect("openssl");
        let mut input = line.stdin.take().unwrap();
        input.write_all(bytes.as_bytes()).unwrap();
        input.write_all(body).unwrap();
        input.flush().unwrap();
        let output = line.wait_with_output().unwrap();
        drop(input);
        parse(&output.stdout).unwrap_or_else(|| {
            panic!(
                "{method} {path}: {} {}",
                String::from_utf8_lossy(&output.stdout),
                String::from_utf8_lossy(&output.stderr)
            )
        })
    }
}

/// Fits a sample to a folder and a port.
type Fit = fn(&str, &Path, u16) -> String;

fn free() -> SocketAddr {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    listener.local_addr().unwrap()
}

fn certificate(folder: &Path) {
    let made = Command::new("bash")
        .args(["-c", "openssl req -x509 -newkey rsa:2048 -nodes -days 30 -subj /CN=pier.example -addext subjectAltName=DNS:pier.example -keyout key -out crt && cat crt key > both"])
        .current_dir(folder)
        .output()
        .expect("openssl");
    assert!(made.status.success());
}

fn planner() -> Service {
    start_with(Settings {
        base_path: Some(BASE.to_owned()),
        hosts: Some("pier.example".to_owned()),
        trusted_proxies: Some("127.0.0.1".to_owned()),
        ..Settings::default()
    })
}

/// What a planner behind any of them has to be.
fn works(proxy: &Proxy, service: &Service) {
    let visitor = "127.0.0.2";
    let page = proxy.ask(visitor, "GET", "/planner/", "", b"");
    assert_eq!(page.status, 200, "{}", page.text());
    assert!(
        page.header("strict-transport-security")
            .contains("max-age=31536000")
    );
    let sheet = page.text();
    let style = sheet
        .split("href=\"")
        .find(|rest| rest.starts_with("/planner/static/"))
        .and_then(|rest| rest.split('"').next())
        .expect("a style sheet below the base path");
    assert_eq!(proxy.ask(visitor, "GET", style, "", b"").status, 200);

    // A form, of a browser that says where it comes from by its origin alone.
    let form =
        "content-type: application/x-www-form-urlencoded\r\norigin: https://pier.example\r\n";
    let begun = proxy.ask(visitor, "POST", "/planner/new", form, b"code=");
    assert_eq!(begun.status, 303, "{}", begun.text());
    assert!(
        begun.header("set-cookie").contains("Secure"),
        "TLS is spoken"
    );
    let site = begun.header("location").to_owned();
    assert!(site.starts_with("/planner/p/"), "{site}");
    let root = site.trim_end_matches("/short/ground");
    let made = proxy.ask(
        visitor,
        "POST",
        &format!("{root}/links"),
        form,
        b"right=view&do=replace",
    );
    assert!(
        made.text()
            .contains("value=\"https://pier.example/planner/p/"),
        "host and scheme come through: {}",
        made.text()
    );
    let print = proxy.ask(visitor, "GET", &format!("{root}/plan.pdf"), "", b"");
    assert_eq!((print.status, &print.body[..5]), (200, b"%PDF-".as_slice()));
    let foreign =
        "content-type: application/x-www-form-urlencoded\r\norigin: http://pier.example\r\n";
    assert_eq!(
        proxy
            .ask(visitor, "POST", "/planner/new", foreign, b"code=")
            .status,
        403,
        "another scheme is another site"
    );

    // A visitor who writes another address each time is still one, and another visitor pays for nothing of it.
    let wrong = |from: &str, n: u32| {
        let lie = format!("x-forwarded-for: 198.51.100.{n}\r\nforwarded: for=198.51.100.{n}\r\n");
        let path = format!("/planner/p/{}/site", "x".repeat(32));
        proxy.ask(from, "GET", &path, &lie, b"").status
    };
    let answers: Vec<u16> = (1..=24).map(|n| wrong(visitor, n)).collect();
    assert_eq!(answers[0], 404);
    assert!(answers.contains(&429), "{answers:?}");
    assert_eq!(wrong("127.0.0.3", 1), 404, "another visitor");
    assert_eq!(service.get("/planner/health/live").status, 200);
}

#[test]
fn the_sample_for_nginx_works() {
    let service = planner();
    let fit: Fit = |text, folder, port| {
        let at = folder.display();
        let text = text
            .replace("listen 443 ssl", &format!("listen 127.0.0.1:{port} ssl"))
            .replace("/etc/ssl/certs/pier.example.pem", &format!("{at}/crt"))
            .replace("/etc/ssl/private/pier.example.key", &format!("{at}/key"))
            .replace("/var/log/nginx/", &format!("{at}/"));
        let temporary: String = ["client_body", "proxy", "fastcgi", "uwsgi", "scgi"]
            .iter()
            .map(|name| format!("{name}_temp_path {at}/{name};\n"))
            .collect();
        format!(
            "daemon off; master_process off; pid {at}/pid; error_log stderr;\nevents {{}}\nhttp {{\n{temporary}{text}}}\n"
        )
    };
    let words = ["nginx", "-p", ".", "-c", "conf"];
    let proxy = Proxy::start(&service, "nginx.conf", fit, &words);
    works(&proxy, &service);
    let log = fs::read_to_string(proxy.folder.path().join("stillground.log")).unwrap();
    assert!(
        log.contains("127.0.0.2") && log.contains(" 404 "),
        "a ban by log works: {log}"
    );
    assert!(
        !log.contains("/p/"),
        "no address of a plan stands in it: {log}"
    );
}

#[test]
fn the_sample_for_haproxy_works() {
    let service = planner();
    let fit: Fit = |text, folder, port| {
        text.replace("bind :443", &format!("bind 127.0.0.1:{port}"))
            .replace(
                "/etc/haproxy/pier.example.pem",
                &folder.join("both").display().to_string(),
            )
    };
    let words = ["haproxy", "-db", "-f", "conf"];
    let proxy = Proxy::start(&service, "haproxy.cfg", fit, &words);
    works(&proxy, &service);
}

#[test]
fn the_sample_for_caddy_works() {
    let service = planner();
    let fit: Fit = |text, folder, port| {
        let at = folder.display();
        text.replace(
            "pier.example {",
            &format!(
                "{{\n\tadmin off\n\tauto_https disable_redirects\n}}\nhttps://pier.example:{port} {{\n\tbind 127.0.0.1\n\ttls {at}/crt {at}/key"
            ),
        )
    };
    let words = ["caddy", "run", "--config", "conf", "--adapter", "caddyfile"];
    let proxy = Proxy::start(&service, "Caddyfile", fit, &words);
    works(&proxy, &service);
}
