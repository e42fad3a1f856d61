//! What each link lets its holder do: one table, for pages and interface alike.

/// What a link lets its holder do; each includes those after it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, serde::Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Right {
    /// Change the plan, its links, and all below.
    Edit,
    /// Tick off work and enter measurements, and read.
    Record,
    /// Read.
    View,
}

/// What can be done with a plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Deed {
    /// Read the plan, its design, drawings, sheets and lists, and the record of its work.
    Read,
    /// Read what the reader was quoted, and what it comes to.
    ReadPrices,
    /// Tick off work, enter measurements, send photographs.
    Record,
    /// End a stop in the record by a decision.
    Decide,
    /// Read the plan as it stood before.
    ReadRevisions,
    /// Change answers and prices, look up the climate, save an old revision again.
    Change,
    /// See, replace and withdraw the links, and make a recovery code.
    Share,
}

impl Deed {
    /// Every deed.
    pub const ALL: [Self; 7] = [
        Self::Read,
        Self::ReadPrices,
        Self::Record,
        Self::Decide,
        Self::ReadRevisions,
        Self::Change,
        Self::Share,
    ];

    /// The least that a link has to be for it.
    #[must_use]
    pub const fn least(self) -> Right {
        match self {
            Self::Read => Right::View,
            // Whoever orders has the record link, and needs to know what was agreed.
            Self::ReadPrices | Self::Record => Right::Record,
            Self::Decide | Self::ReadRevisions | Self::Change | Self::Share => Right::Edit,
        }
    }
}

impl Right {
    /// Every right.
    pub const ALL: [Self; 3] = [Self::Edit, Self::Record, Self::View];

    /// Its name in the database and the interface.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Edit => "edit",
            Self::Record => "record",
            Self::View => "view",
        }
    }

    /// The right of this name.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|right| right.key() == key)
    }

    /// Whether a link of this right lets its holder do it.
    #[must_use]
    pub const fn may(self, deed: Deed) -> bool {
        self as u8 <= deed.least() as u8
    }

    /// Whether the plan may be changed.
    #[must_use]
    pub const fn may_edit(self) -> bool {
        self.may(Deed::Change)
    }

    /// Whether work may be ticked off and measurements entered.
    #[must_use]
    pub const fn may_record(self) -> bool {
        self.may(Deed::Record)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_link_may_what_the_lesser_ones_may_and_more() {
        let allowed = |right: Right| {
            Deed::ALL
                .into_iter()
                .filter(|&deed| right.may(deed))
                .count()
        };
        assert_eq!(
            [Right::View, Right::Record, Right::Edit].map(allowed),
            [1, 3, 7]
        );
    }
}
