//! Where a formula or a figure comes from, as a value that travels to the page.

use serde::Serialize;

/// How sure the project is of a source.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Standing {
    /// The text of the document itself was read.
    Read,
    /// Read in a second document that quotes the first.
    SecondHand,
    /// Derived here; the derivation stands in the module's documentation.
    Derived,
    /// A fact of the trade without a published source.
    CommonPractice,
    /// Known to the authors, the text not seen.
    FromMemory,
    /// An engineer's judgement, open to a better one.
    Judgement,
}

impl Standing {
    /// The words shown behind a source.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Read => "read",
            Self::SecondHand => "quoted second-hand",
            Self::Derived => "derived here",
            Self::CommonPractice => "common practice",
            Self::FromMemory => "from memory",
            Self::Judgement => "judgement",
        }
    }
}

/// One source: document, edition, clause, and how it was met.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Source {
    /// Name or number of the document, for instance `EN 1992-1-1`.
    pub document: &'static str,
    /// Edition or year; empty where there is none.
    pub edition: &'static str,
    /// Clause, table, equation or page; empty where there is none.
    pub clause: &'static str,
    /// How it was met.
    pub standing: Standing,
}

impl Source {
    /// A source of any standing.
    pub const fn new(
        document: &'static str,
        edition: &'static str,
        clause: &'static str,
        standing: Standing,
    ) -> Self {
        Self {
            document,
            edition,
            clause,
            standing,
        }
    }

    /// A document that was read itself.
    pub const fn read(document: &'static str, edition: &'static str, clause: &'static str) -> Self {
        Self::new(document, edition, clause, Standing::Read)
    }

    /// A document that was read in a second one, which quotes it.
    pub const fn second_hand(
        document: &'static str,
        edition: &'static str,
        clause: &'static str,
    ) -> Self {
        Self::new(document, edition, clause, Standing::SecondHand)
    }

    /// A document that is known and was not seen.
    pub const fn from_memory(
        document: &'static str,
        edition: &'static str,
        clause: &'static str,
    ) -> Self {
        Self::new(document, edition, clause, Standing::FromMemory)
    }

    /// A fact of the trade.
    pub const fn common_practice(what: &'static str) -> Self {
        Self::new("Common practice", "", what, Standing::CommonPractice)
    }

    /// An engineer's judgement of this project.
    pub const fn judgement(what: &'static str) -> Self {
        Self::new("Judgement", "", what, Standing::Judgement)
    }

    /// What stands between number and edition, as its publisher writes them: `EN 1992-4:2018`, `ACI 318-19`; a book's year
    /// follows a comma.
    fn joint(&self) -> &'static str {
        let begins = |with: &[&str]| with.iter().any(|start| self.document.starts_with(start));
        if begins(&["EN ", "ISO ", "VDI ", "DIN ", "BS ", "IEC "]) {
            ":"
        } else if begins(&["ACI ", "ANSI/AISC 360"]) {
            "-"
        } else {
            ", "
        }
    }

    /// Derived here, from mechanics.
    pub const fn derived(what: &'static str) -> Self {
        Self::new("Mechanics", "", what, Standing::Derived)
    }
}

impl std::fmt::Display for Source {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.document)?;
        if !self.edition.is_empty() {
            write!(f, "{}{}", self.joint(), self.edition)?;
        }
        if !self.clause.is_empty() {
            write!(f, ", {}", self.clause)?;
        }
        match self.standing {
            Standing::CommonPractice | Standing::Judgement | Standing::Derived => Ok(()),
            standing => write!(f, " ({})", standing.words()),
        }
    }
}
