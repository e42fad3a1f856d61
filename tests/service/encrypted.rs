//! The line to PostgreSQL: with `verify-full` it is spoken only to the server that the stated authority names.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use stillground_tests::postgres::Cluster;

/// Certificates as `docs/hosting.md` has them made: an authority, and a server called `localhost` that it vouches for.
fn certificates(folder: &Path) -> (PathBuf, PathBuf) {
    let script = "set -e
        openssl req -x509 -newkey rsa:2048 -nodes -days 30 -subj '/CN=Our own authority' -keyout ca.key -out ca.crt
        openssl req -x509 -newkey rsa:2048 -nodes -days 30 -subj '/CN=Another authority' -keyout other.key -out other.crt
        openssl req -newkey rsa:2048 -nodes -subj /CN=localhost -keyout server.key -out server.csr
        printf 'subjectAltName=DNS:localhost\\nbasicConstraints=CA:FALSE\\n' > server.ext
        openssl x509 -req -in server.csr -CA ca.crt -CAkey ca.key -CAcreateserial -days 30 -extfile server.ext -out server.crt";
    let made = Command::new("bash")
        .args(["-c", script])
        .current_dir(folder)
        .output()
        .expect("openssl");
    assert!(
        made.status.success(),
        "{}",
        String::from_utf8_lossy(&made.stderr)
    );
    (folder.join("server.crt"), folder.join("server.key"))
}

/// What `stillground check` says of a database at an address with these words, and whether it is content.
fn check(cluster: &Cluster, host: &str, words: &str) -> (bool, String) {
    let data = tempfile::tempdir().expect("a folder");
    let url = format!(
        "{}?{words}",
        cluster.url("postgres").replace("127.0.0.1", host)
    );
    let said = Command::new(stillground_tests::binary::path())
        .args([
            "check",
            "--listen",
            "127.0.0.1:0",
            "--database-url",
            &url,
            "--data",
        ])
        .arg(data.path())
        .output()
        .expect("the service's binary");
    (
        said.status.success(),
        String::from_utf8_lossy(&said.stdout).into_owned(),
    )
}

#[test]
fn an_encrypted_database_is_believed_only_with_the_right_authority_and_name() {
    let folder = tempfile::tempdir().expect("a folder");
    let (certificate, key) = certificates(folder.path());
    let cluster = Cluster::start();
    cluster.encrypt(
        &fs::read(certificate).expect("a certificate"),
        &fs::read(key).expect("a key"),
    );
    let root = |name: &str| {
        format!(
            "sslmode=verify-full&sslrootcert={}",
            folder.path().join(name).display()
        )
    };

    let (content, said) = check(&cluster, "localhost", &root("ca.crt"));
    assert!(content, "the right authority and name: {said}");
    let (content, said) = check(&cluster, "localhost", &root("other.crt"));
    assert!(
        !content && said.contains("certificate"),
        "another authority: {said}"
    );
    let (content, said) = check(&cluster, "127.0.0.1", &root("ca.crt"));
    assert!(
        !content && said.contains("certificate"),
        "another name: {said}"
    );
    let (content, said) = check(&cluster, "localhost", "sslmode=verify-full");
    assert!(!content, "an authority that nobody knows: {said}");
}
