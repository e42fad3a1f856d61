//! The stage to which a check, a calculation, a caution or an opinion belongs.

use super::{Caution, Check, Opinion, Working};

/// A stage of the design.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Stage {
    /// What acts at the column's foot.
    Loads,
    /// The ground.
    Ground,
    /// The pit.
    Excavation,
    /// The block.
    Block,
    /// How stiffly the ground holds the block.
    GroundStiffness,
    /// The column.
    Pier,
    /// The joint at the column's foot.
    Joint,
    /// The studs.
    Anchors,
    /// The floor.
    Floor,
    /// The star.
    Motion,
    /// True north.
    North,
    /// The work as a whole: what holds for every plan.
    Work,
}

impl Stage {
    /// Every stage that calculates, in the order of the work.
    pub const ALL: [Self; 11] = [
        Self::Loads,
        Self::Ground,
        Self::Excavation,
        Self::Block,
        Self::GroundStiffness,
        Self::Pier,
        Self::Joint,
        Self::Anchors,
        Self::Floor,
        Self::Motion,
        Self::North,
    ];

    /// The stage that a name begins with. This is the one place that reads it from a name; names never change.
    pub fn of(id: &str) -> Self {
        match id.split('.').next().unwrap_or(id) {
            "loads" => Self::Loads,
            "ground" => Self::Ground,
            "excavation" => Self::Excavation,
            "block" => Self::Block,
            "ground_stiffness" => Self::GroundStiffness,
            "pier" | "column" => Self::Pier,
            "joint" => Self::Joint,
            "anchors" => Self::Anchors,
            "floor" => Self::Floor,
            "motion" => Self::Motion,
            "north" => Self::North,
            _ => Self::Work,
        }
    }
}

impl Check {
    /// The stage that made it.
    pub fn stage(&self) -> Stage {
        Stage::of(self.id)
    }
}

impl Working {
    /// The stage that made it.
    pub fn stage(&self) -> Stage {
        Stage::of(self.id)
    }
}

impl Caution {
    /// The stage whose danger it is.
    pub fn stage(&self) -> Stage {
        Stage::of(self.id)
    }
}

impl Opinion {
    /// The stage on which it is an opinion.
    pub fn stage(&self) -> Stage {
        Stage::of(self.of)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::decided::design_plan;
    use crate::halfspace::NoShelf;
    use crate::site_plan::SitePlan;

    #[test]
    fn every_check_calculation_and_opinion_has_a_stage() {
        let design = design_plan(&SitePlan::unknown(), &NoShelf).unwrap();
        let stages: Vec<(&str, Stage)> = (design.checks.iter().map(|one| (one.id, one.stage())))
            .chain(design.workings.iter().map(|one| (one.id, one.stage())))
            .chain(design.opinions.iter().map(|one| (one.of, one.stage())))
            .collect();
        // Counted on the plan that leaves everything open.
        assert!(stages.len() > 100, "{}", stages.len());
        let without: Vec<_> = stages
            .iter()
            .filter(|(_, stage)| *stage == Stage::Work)
            .collect();
        assert!(without.is_empty(), "{without:?}");
    }
}
