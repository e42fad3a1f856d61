//! The chapters of a plan: what its first page leads to, each a page of its own.

/// A chapter.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Chapter {
    /// Every drawing, and the files to print.
    Drawings,
    /// What to order or hire.
    Order,
    /// What is done on which day, and what can hurt.
    Days,
    /// What moves the star, and what people may do.
    Stillness,
    /// How the studs are set and tightened.
    Studs,
    /// Every check, and the rules of thumb beside the calculation.
    Checks,
    /// What was taken because nobody said it.
    Taken,
    /// Every figure, and how it was found.
    Calculations,
    /// The studs for whoever checks.
    Engineer,
    /// What was entered while it was built.
    Recorded,
    /// What the finished pier measured, beside what was foreseen.
    Proof,
}

impl Chapter {
    /// Every chapter, in the order of the list.
    pub const ALL: [Self; 11] = [
        Self::Drawings,
        Self::Order,
        Self::Days,
        Self::Stillness,
        Self::Studs,
        Self::Checks,
        Self::Taken,
        Self::Calculations,
        Self::Engineer,
        Self::Recorded,
        Self::Proof,
    ];

    /// Its name in an address, after the plan's.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Drawings => "drawings",
            Self::Order => "order",
            Self::Days => "days",
            Self::Stillness => "stillness",
            Self::Studs => "studs",
            Self::Checks => "checks",
            Self::Taken => "taken",
            Self::Calculations => "calculations",
            Self::Engineer => "engineer",
            Self::Recorded => "recorded",
            Self::Proof => "proof",
        }
    }

    /// Its name on a page.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Drawings => "Drawings",
            Self::Order => "Order",
            Self::Days => "Days",
            Self::Stillness => "Stillness",
            Self::Studs => "Studs",
            Self::Checks => "Checks",
            Self::Taken => "Assumptions",
            Self::Calculations => "Calculations",
            Self::Engineer => "For the checking engineer",
            Self::Recorded => "What was recorded",
            Self::Proof => "Proof",
        }
    }

    /// Names that parts of it had when the plan was one page: an address that ends in one leads to the chapter in the list.
    #[must_use]
    pub const fn once_named(self) -> &'static [&'static str] {
        match self {
            Self::Drawings => &["drawings", "take"],
            Self::Order => &["materials"],
            Self::Days => &["schedule", "cautions", "ages", "north"],
            Self::Stillness => &["stillness", "star", "people", "hold"],
            Self::Studs => &["setting", "nuts", "codes"],
            Self::Checks => &["checks", "thumbs"],
            Self::Taken => &["assumptions"],
            Self::Calculations => &["workings", "figures"],
            Self::Engineer => &["engineer"],
            Self::Recorded => &["record"],
            Self::Proof => &[],
        }
    }

    /// The chapter that has a drawing: what the star does stands with its stillness, everything else with the drawings.
    #[must_use]
    pub fn with_drawing(name: &str) -> Self {
        match name {
            "tilt-map" | "trail" | "history" | "spectrum" | "modes" | "budget" => Self::Stillness,
            "measure-knock" | "measure-lean" | "measure-pull" | "measure-walk"
            | "measure-level" | "agreement" | "tilt-map-pier" => Self::Proof,
            _ => Self::Drawings,
        }
    }

    /// The chapter with this name in an address.
    #[must_use]
    pub fn from_slug(slug: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|chapter| chapter.slug() == slug)
    }
}
