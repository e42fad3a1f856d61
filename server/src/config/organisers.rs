//! Who the organisers are: those who have one of the passwords, and those whom a proxy of ours has let in.

use std::fmt;
use std::path::Path;

use axum::http::HeaderName;
use sha2::{Digest, Sha256};

use super::read::{secret, secret_text};

/// Fewest letters of a password.
const SHORTEST: usize = 16;
/// Most letters of an organiser's name.
const LONGEST_NAME: usize = 40;
/// What an organiser is called whose password stands in a file without names.
const NAMELESS: &str = "organiser";

/// The organisers; with none there is no shelf.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Organisers {
    /// Those who have a password of their own.
    pub with_password: Vec<Keeper>,
    /// Those whom a proxy names.
    pub by_proxy: Option<ByProxy>,
}

/// Somebody with a password.
#[derive(Clone, PartialEq, Eq)]
pub struct Keeper {
    /// What they are called in the log.
    pub name: String,
    digest: [u8; 32],
}

/// Somebody whom a proxy of ours let in, and how it says so.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ByProxy {
    /// The header in which it names them.
    pub header: HeaderName,
    /// Whom it may name.
    pub names: Vec<String>,
}

impl Organisers {
    /// Whether there is any.
    #[must_use]
    pub fn are_there(&self) -> bool {
        !self.with_password.is_empty() || self.by_proxy.is_some()
    }

    /// Whose password a text is. Each is compared to its end, so that time tells nothing.
    #[must_use]
    pub fn whose(&self, text: &str) -> Option<&Keeper> {
        self.with_password
            .iter()
            .fold(None, |found, keeper| match keeper.is(text) {
                true => Some(keeper),
                false => found,
            })
    }
}

impl Keeper {
    fn new(name: &str, password: &str) -> Result<Self, String> {
        if password.chars().count() < SHORTEST {
            return Err(format!(
                "a password has fewer than {SHORTEST} letters, that of {name}; openssl rand -hex 24 gives a good one"
            ));
        }
        Ok(Self {
            name: name.to_owned(),
            digest: Sha256::digest(password).into(),
        })
    }

    /// Whether a text is the password. Digests are compared, all of their bytes.
    #[must_use]
    pub fn is(&self, text: &str) -> bool {
        let found: [u8; 32] = Sha256::digest(text).into();
        found
            .iter()
            .zip(&self.digest)
            .fold(0, |different, (a, b)| different | (a ^ b))
            == 0
    }

    /// A digest of the digest: what a session remembers, so that it ends when its password changes or goes.
    #[must_use]
    pub fn mark(&self) -> [u8; 32] {
        Sha256::digest(self.digest).into()
    }
}

impl fmt::Debug for Keeper {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Keeper({}, …)", self.name)
    }
}

/// Reads the passwords: one line is one password; of several lines, each is `name: password`.
pub(super) fn read(file: &Path) -> Result<Vec<Keeper>, String> {
    let shown = file.display();
    let text = secret_text(file)?;
    let lines: Vec<&str> = text
        .lines()
        .map(str::trim)
        .filter(|line| !line.is_empty())
        .collect();
    let read = match lines.as_slice() {
        [_] | [] => secret(file).and_then(|password| {
            let one = Keeper::new(NAMELESS, &password);
            one.map(|one| vec![one])
                .map_err(|said| format!("({shown}): {said}"))
        })?,
        many => many
            .iter()
            .filter(|line| !line.starts_with('#'))
            .map(|line| named(line))
            .collect::<Result<Vec<_>, _>>()
            .map_err(|said| format!("({shown}): {said}"))?,
    };
    for (i, one) in read.iter().enumerate() {
        if read[..i]
            .iter()
            .any(|other| other.name == one.name || other.digest == one.digest)
        {
            return Err(format!(
                "({shown}): two lines have the same name or the same password, that of {}",
                one.name
            ));
        }
    }
    Ok(read)
}

/// A line `name: password`. What stands in it is not repeated, since it may be a password.
fn named(line: &str) -> Result<Keeper, String> {
    let (name, password) = line
        .split_once(": ")
        .filter(|(name, _)| is_name(name))
        .ok_or("with more than one line, each has to be a name and a password, ann: PASSWORD")?;
    Keeper::new(name, password.trim())
}

/// Reads the names that a proxy may say, between commas.
pub(super) fn names(text: &str) -> Result<Vec<String>, String> {
    let name = |part: &str| {
        let part = part.trim();
        is_name(part).then(|| part.to_owned()).ok_or_else(|| {
            format!("\u{201c}{part}\u{201d} is no name: letters, digits and . - _ @, at most {LONGEST_NAME}; write ann,ben")
        })
    };
    text.split(',').map(name).collect()
}

fn is_name(text: &str) -> bool {
    let plain = |letter: char| letter.is_alphanumeric() || ".-_@".contains(letter);
    !text.is_empty() && text.chars().count() <= LONGEST_NAME && text.chars().all(plain)
}

/// Reads the name of a header that a proxy may set for this and nothing else reads.
pub(super) fn header(text: &str) -> Result<HeaderName, String> {
    const OTHERS: [&str; 12] = [
        "authorization",
        "cookie",
        "forwarded",
        "from",
        "host",
        "origin",
        "referer",
        "user-agent",
        "x-forwarded-for",
        "x-forwarded-host",
        "x-forwarded-proto",
        "x-real-ip",
    ];
    text.to_ascii_lowercase()
        .parse::<HeaderName>()
        .ok()
        .filter(|name| !OTHERS.contains(&name.as_str()) && !name.as_str().starts_with("sec-"))
        .ok_or_else(|| {
            "write a header that your proxy sets anew for each request and that means nothing else, for instance Remote-User"
                .to_owned()
        })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;

    fn of(text: &str) -> Result<Organisers, String> {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("passwords");
        std::fs::write(&file, text).unwrap();
        read(&file).map(|with_password| Organisers {
            with_password,
            by_proxy: None,
        })
    }

    #[test]
    fn each_line_is_somebody_and_one_line_is_a_password_as_it_stands() {
        let one = of("a: password of one line\n").unwrap();
        assert_eq!(one.whose("a: password of one line").unwrap().name, NAMELESS);
        let two = of("ann: the first of the two\n# gone: the old one of hers\n\nben: the second of the two\n").unwrap();
        assert_eq!(two.whose("the second of the two").unwrap().name, "ben");
        assert!(two.whose("the old one of hers").is_none());
        assert!(two.whose("ann: the first of the two").is_none());
        assert_ne!(two.with_password[0].mark(), two.with_password[1].mark());
        assert!(!format!("{two:?}").contains("second of"), "never shown");
    }

    #[test]
    fn a_file_that_may_hold_something_else_is_refused_and_not_repeated() {
        for wrong in [
            "",
            "short\n",
            "a password of one line\nand a note on the second line\n",
            "ann: the first of the two\nben: short\n",
            "ann: the first of the two\nann: the second of the two\n",
            "ann: the first of the two\nben: the first of the two\n",
        ] {
            let said = of(wrong).unwrap_err();
            for word in ["short", "note", "first of"] {
                assert!(!said.contains(word), "{said}");
            }
        }
    }

    #[test]
    fn a_proxys_word_is_a_header_of_its_own_and_names_are_plain() {
        assert_eq!(header("Remote-User").unwrap().as_str(), "remote-user");
        for wrong in ["Cookie", "host", "a b", "", "Sec-Fetch-Site", "X-Real-IP"] {
            assert!(header(wrong).is_err(), "{wrong}");
        }
        assert_eq!(names("ann, ben@club").unwrap(), ["ann", "ben@club"]);
        assert!(names("ann,").is_err() && names("a b").is_err());
    }
}
