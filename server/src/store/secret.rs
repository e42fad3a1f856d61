//! The secret of a link: random, shown once, stored as a digest only.

use std::fmt;

use data_encoding::BASE32_NOPAD_NOCASE;
use sha2::{Digest, Sha256};

use super::StoreFailure;

/// Random bytes in a secret: 160 bits, which fill 32 letters without a remainder.
const BYTES: usize = 20;
/// Letters in a secret.
const LETTERS: usize = 32;

/// A link's secret, in lower-case letters and digits that cannot be mistaken in an address.
#[derive(Clone, PartialEq, Eq)]
pub struct Secret(String);

impl Secret {
    /// A new one from the system's random numbers.
    pub(super) fn new() -> Result<Self, StoreFailure> {
        let mut bytes = [0; BYTES];
        getrandom::fill(&mut bytes).map_err(StoreFailure::Random)?;
        Ok(Self(
            BASE32_NOPAD_NOCASE.encode(&bytes).to_ascii_lowercase(),
        ))
    }

    /// A secret as typed or linked, when it has the form of one.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let well_formed = text.len() == LETTERS
            && text
                .bytes()
                .all(|b| b.is_ascii_lowercase() || (b'2'..=b'7').contains(&b));
        well_formed.then(|| Self(text.to_owned()))
    }

    /// What the store keeps.
    pub(super) fn digest(&self) -> [u8; 32] {
        Sha256::digest(self.0.as_bytes()).into()
    }

    /// The secret itself, for the page that shows it once and for links.
    #[must_use]
    pub fn reveal(&self) -> &str {
        &self.0
    }
}

/// A name for a new plan: 80 random bits, no secret.
pub(super) fn plan_id() -> Result<String, StoreFailure> {
    let mut bytes = [0; 10];
    getrandom::fill(&mut bytes).map_err(StoreFailure::Random)?;
    Ok(BASE32_NOPAD_NOCASE.encode(&bytes).to_ascii_lowercase())
}

/// A word for a plan's printed sheets: 130 random bits in 26 letters.
pub(super) fn sheet_token() -> Result<String, StoreFailure> {
    let mut bytes = [0; BYTES];
    getrandom::fill(&mut bytes).map_err(StoreFailure::Random)?;
    let mut token = BASE32_NOPAD_NOCASE.encode(&bytes).to_ascii_lowercase();
    token.truncate(26);
    Ok(token)
}

impl fmt::Debug for Secret {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Secret(…)")
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;

    #[test]
    fn two_secrets_differ_are_read_back_and_do_not_show_in_a_log() {
        let (one, two) = (Secret::new().unwrap(), Secret::new().unwrap());
        assert_ne!(one, two);
        assert_eq!(Secret::parse(one.reveal()), Some(one.clone()));
        assert!(!format!("{one:?}").contains(one.reveal()));
    }

    #[test]
    fn what_has_not_the_form_of_a_secret_is_none() {
        for text in [
            "",
            "abc",
            &"a".repeat(33),
            &"A".repeat(32),
            &"1".repeat(32),
            "' OR 1=1 --                     ",
        ] {
            assert!(Secret::parse(text).is_none(), "{text}");
        }
    }
}
