//! Who may begin plans, who keeps the shelf, and how much may be kept.

use std::fmt;
use std::path::Path;

use sha2::{Digest, Sha256};

use super::Settings;
use super::read::{Reading, count, secret};

/// Fewest letters of the organiser's password.
const SHORTEST: usize = 16;

/// Who may do what.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Access {
    /// Who may begin a plan.
    pub creators: Creators,
    /// The organiser's password; without it there is no shelf.
    pub organiser: Option<Token>,
    /// How much may be kept.
    pub quotas: Quotas,
}

/// Who may begin a plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Creators {
    /// Whoever comes.
    #[default]
    Anyone,
    /// Whoever has a code that the organiser made.
    Invited,
    /// The organiser only.
    Organiser,
}

/// How much may be kept; `None`: no limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Quotas {
    /// Plans, those removed and not yet gone among them.
    pub plans: Option<u32>,
    /// Revisions of one plan.
    pub revisions: Option<u32>,
    /// Bytes of one plan with all its revisions, its record and its photographs.
    pub plan_bytes: Option<u32>,
}

/// What is kept where anyone may begin a plan and nothing else is said: far more than a club needs, and a bound.
pub const OPEN_QUOTAS: Quotas = Quotas {
    plans: Some(10_000),
    revisions: Some(10_000),
    plan_bytes: Some(256 * 1024 * 1024),
};

/// A number, or `none` for no limit.
fn limit(text: &str) -> Result<Option<u32>, String> {
    if text.eq_ignore_ascii_case("none") {
        Ok(None)
    } else {
        count(text).map(Some)
    }
}

/// The organiser's password, as its digest.
#[derive(Clone, PartialEq, Eq)]
pub struct Token([u8; 32]);

impl Token {
    /// Whether a text is the password. Digests are compared, all of their bytes, so that time tells nothing.
    #[must_use]
    pub fn is(&self, text: &str) -> bool {
        let found: [u8; 32] = Sha256::digest(text).into();
        found
            .iter()
            .zip(&self.0)
            .fold(0, |different, (a, b)| different | (a ^ b))
            == 0
    }

    /// A digest of the digest: what a session remembers, so that it ends when the password changes.
    #[must_use]
    pub fn mark(&self) -> [u8; 32] {
        Sha256::digest(self.0).into()
    }

    fn read(file: &Path) -> Result<Self, String> {
        let text = secret(file)?;
        if text.chars().count() < SHORTEST {
            return Err(format!(
                "({}): at least {SHORTEST} letters are needed; openssl rand -hex 24 gives a good one",
                file.display()
            ));
        }
        Ok(Self(Sha256::digest(&text).into()))
    }
}

impl fmt::Debug for Token {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Token(…)")
    }
}

impl Access {
    pub(super) fn read(reading: &mut Reading, settings: &Settings) -> Self {
        let (creators, token) = (
            settings.who_creates.as_deref(),
            settings.organiser_token_file.as_deref(),
        );
        let token = token.filter(|file| !file.as_os_str().is_empty());
        let organiser = token
            .and_then(|file| reading.take("STILLGROUND_ORGANISER_TOKEN_FILE", Token::read(file)));
        let creators = reading.or_default("STILLGROUND_WHO_CREATES", creators, Creators::parse);
        if creators != Creators::Anyone && token.is_none() {
            let said = "somebody has to let people in: name STILLGROUND_ORGANISER_TOKEN_FILE too, or write anyone";
            let _: Option<()> = reading.take("STILLGROUND_WHO_CREATES", Err(said.to_owned()));
        }
        // Where anyone may begin a plan, somebody will begin too many.
        let usual = if creators == Creators::Anyone {
            OPEN_QUOTAS
        } else {
            Quotas::default()
        };
        let mut limit = |name, text: &Option<String>, usual| {
            reading
                .optional(name, text.as_deref(), limit)
                .unwrap_or(usual)
        };
        let quotas = Quotas {
            plans: limit("STILLGROUND_MOST_PLANS", &settings.most_plans, usual.plans),
            revisions: limit(
                "STILLGROUND_MOST_REVISIONS",
                &settings.most_revisions,
                usual.revisions,
            ),
            plan_bytes: limit(
                "STILLGROUND_MOST_PLAN_BYTES",
                &settings.most_plan_bytes,
                usual.plan_bytes,
            ),
        };
        Self {
            creators,
            organiser,
            quotas,
        }
    }
}

impl Creators {
    fn parse(text: &str) -> Result<Self, String> {
        match text.to_ascii_lowercase().as_str() {
            "anyone" => Ok(Self::Anyone),
            "invited" => Ok(Self::Invited),
            "organiser" => Ok(Self::Organiser),
            _ => Err("write anyone, invited or organiser".to_owned()),
        }
    }
}
