//! The steps of a plan, in the order in which they are offered; any may be visited at any time.

/// A page of questions, or the plan itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Step {
    /// Site and soil.
    Site,
    /// Excavation.
    Excavation,
    /// Footing.
    Footing,
    /// Pier and load.
    Pier,
    /// Anchors.
    Anchors,
    /// Observing floor.
    Floor,
    /// The plan.
    Plan,
}

impl Step {
    /// Every step.
    pub const ALL: [Self; 7] = [
        Self::Site,
        Self::Excavation,
        Self::Footing,
        Self::Pier,
        Self::Anchors,
        Self::Floor,
        Self::Plan,
    ];

    /// Its name in an address.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Site => "site",
            Self::Excavation => "excavation",
            Self::Footing => "footing",
            Self::Pier => "pier",
            Self::Anchors => "anchors",
            Self::Floor => "floor",
            Self::Plan => "plan",
        }
    }

    /// Its name on a page.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Site => "Site and soil",
            Self::Excavation => "Excavation",
            Self::Footing => "Footing",
            Self::Pier => "Pier and load",
            Self::Anchors => "Anchors",
            Self::Floor => "Observing floor",
            Self::Plan => "Plan",
        }
    }

    /// The step with this name in an address.
    #[must_use]
    pub fn from_slug(slug: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|step| step.slug() == slug)
    }

    /// The step after it; the plan comes last.
    #[must_use]
    pub fn next(self) -> Self {
        let place = Self::ALL.iter().position(|step| *step == self).unwrap_or(0);
        Self::ALL.get(place + 1).copied().unwrap_or(Self::Plan)
    }
}
