//! The ways to measure a pier: how each is done, how long it takes, what it tells, and what can go wrong.

use stillground::figure::Units;
use stillground::site_plan::commissioning::MeasurementKind;
use stillground::stages::cautions::measuring::Pulls;

/// A way to measure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    /// A knock.
    Knock,
    /// A lean.
    Lean,
    /// A pull.
    Pull,
    /// A walk.
    Walk,
    /// A level and a straightedge, the torque again, the gap.
    Level,
}

impl Way {
    /// All of them, the easiest that tells most first.
    pub const ALL: [Self; 5] = [Self::Knock, Self::Lean, Self::Pull, Self::Walk, Self::Level];

    /// Its name in an address.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Knock => "knock",
            Self::Lean => "lean",
            Self::Pull => "pull",
            Self::Walk => "walk",
            Self::Level => "level",
        }
    }

    /// The way with this name in an address.
    #[must_use]
    pub fn from_slug(slug: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|way| way.slug() == slug)
    }

    /// Its name on a page.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Knock => "A knock",
            Self::Lean => "A lean",
            Self::Pull => "A pull",
            Self::Walk => "A walk",
            Self::Level => "Level and straightedge",
        }
    }

    /// What it measures, where that takes several figures.
    #[must_use]
    pub const fn kind(self) -> Option<MeasurementKind> {
        match self {
            Self::Knock => Some(MeasurementKind::Knock),
            Self::Lean => Some(MeasurementKind::Lean),
            Self::Pull => Some(MeasurementKind::Pull),
            Self::Walk | Self::Level => None,
        }
    }

    /// Its drawing.
    #[must_use]
    pub const fn drawing(self) -> &'static str {
        match self {
            Self::Knock => "measure-knock",
            Self::Lean => "measure-lean",
            Self::Pull => "measure-pull",
            Self::Walk => "measure-walk",
            Self::Level => "measure-level",
        }
    }

    /// Its caution.
    #[must_use]
    pub const fn caution(self) -> &'static str {
        match self {
            Self::Knock => "measure.knock",
            Self::Lean | Self::Walk => "measure.lean",
            Self::Pull => "measure.pull",
            Self::Level => "measure.level",
        }
    }

    /// How long it takes, with what.
    #[must_use]
    pub const fn takes(self) -> &'static str {
        match self {
            Self::Knock => "ten minutes and a telephone",
            Self::Lean => "twenty minutes on a clear night and two people",
            Self::Pull => "ten minutes, a luggage scale and two people",
            Self::Walk => "ten minutes on a clear night and two people",
            Self::Level => "fifteen minutes, a level, a straightedge and feeler gauges",
        }
    }

    /// What it tells.
    #[must_use]
    pub const fn tells(self) -> &'static str {
        match self {
            Self::Knock => {
                "With mount and telescope on, it tells how fast the whole pier swings. With nothing on the pier, it tells the base joint from the mount."
            }
            Self::Lean => "It tells how stiff the ground is.",
            Self::Pull => {
                "At the pier’s top it tells how stiff base joint and column are; at the telescope, the mount."
            }
            Self::Walk => {
                "It shows whether the star moves as much as foreseen while somebody walks the usual route."
            }
            Self::Level => {
                "It shows whether plate and column stand as they were set, and whether anything touches the pier."
            }
        }
    }

    /// How it is done, step by step.
    #[must_use]
    pub fn steps(self, units: Units, stands: bool) -> Vec<String> {
        match self {
            Self::Knock => [
                "Lay a telephone flat on the pier’s top, its long side north and south, and tape it down. Start an app that writes its accelerometer to a file, as fast as it can.",
                "Wait ten seconds. Knock once at the top with the heel of the hand, along east and west. Wait ten seconds. Knock three times so, then three times along north and south.",
                "Where mount and telescope come off easily, do the same with nothing on the pier.",
            ]
            .map(str::to_owned)
            .to_vec(),
            Self::Lean => [
                "Mark a place beside the block, and measure how far east and how far north of the pier’s axis it is.",
                "Follow a star high in the sky, guiding off and tracking on, and write its place each second.",
                "Somebody whose weight is known stands away for half a minute, on the place for half a minute, and so three times. Write “on” and “off” beside the rows, or note the times.",
            ]
            .map(str::to_owned)
            .to_vec(),
            Self::Pull => pull(&Pulls::new(units)),
            Self::Walk => [
                "Follow a star high in the sky at the exposure that you use, guiding off and tracking on.",
                if stands {
                    "Somebody walks the usual route at an easy pace while one exposure runs."
                } else {
                    "Somebody walks the plan’s route at an easy pace while one exposure runs."
                },
                "Measure the star’s trail from end to end, in pixels, and multiply it by the seconds of arc in a pixel.",
            ]
            .map(str::to_owned)
            .to_vec(),
            Self::Level => [
                "Lay the level on the base plate, east to west, then north to south; turn it end for end and take the middle.",
                "Hold a straightedge or a plumb line against the column on two sides, and measure the gap at the foot.",
                if stands {
                    "Try each nut of the base plate with a short spanner and without force, and feel whether one moves."
                } else {
                    "A week after tightening, note at which torque each nut begins to turn on."
                },
                "Run a sheet of paper all round the gap between floor and pier.",
            ]
            .map(str::to_owned)
            .to_vec(),
        }
    }

    /// What can go wrong.
    #[must_use]
    pub const fn wrong(self) -> &'static str {
        match self {
            Self::Knock => {
                "A lorry, wind, a telephone that slides, a second knock too soon. A record that is cut off, short or noisy is answered for what it is, or refused."
            }
            Self::Lean => {
                "Guiding that takes the step back, a star near the horizon, wind, a step smaller than the seeing. Two people on the place, or a nearer place, help more than further visits."
            }
            Self::Pull => {
                "A pull that is not level, a strap that slips up, a clutch of the mount that gives way."
            }
            Self::Walk => {
                "Guiding that takes the movement back, wind, seeing that is wider than the trail."
            }
            Self::Level => "A level out of true, grit under it.",
        }
    }
}

fn pull(pulls: &Pulls) -> Vec<String> {
    let Pulls {
        light,
        firm,
        at_telescope,
    } = pulls;
    vec![
        "Put a strap round the pier at its top and hook a luggage scale to it. Measure how high above the ground it is.".to_owned(),
        format!(
            "Pull level and slowly to {} or {} (the scale shows {} or {}), and hold for ten seconds while somebody reads how far the star moves.",
            light.force, firm.force, light.on_scale, firm.on_scale
        ),
        "Let go slowly. The star has to come back. If it does not, something slipped: stop, and look at the nuts.".to_owned(),
        format!(
            "To learn of the mount, pull at the telescope’s own centre as well, with {} at most.",
            at_telescope.force
        ),
    ]
}
