//! What this version of the planner judges differently from the one before.

use askama::Template;
use stillground::design::ENGINE_VERSION;

use super::frame::Frame;

/// The version that the changes are counted from.
const BEFORE: &str = "0.1";

/// A rule that changed.
#[derive(Debug, Clone, Copy)]
pub struct Changed {
    /// What it is about.
    pub about: &'static str,
    /// What was judged before.
    pub was: &'static str,
    /// What is judged now.
    pub is: &'static str,
}

/// The rules that changed since then.
const CHANGES: &[Changed] = &[
    Changed {
        about: "The verdict",
        was: "A list of checks, all of one kind.",
        is: "Three questions: build it, still when left alone, and what people may do. Only the checks of building forbid anything.",
    },
    Changed {
        about: "Standing, walking, sitting, shifting, a second person, a door, a bump",
        was: "Each was a check, and failed where the star moved by more than the limit.",
        is: "No check. Each has its cost in star width and its rule for an exposure.",
    },
    Changed {
        about: "Proof of the finished pier",
        was: "One frequency, one move at each place and one time, held against the plan’s ranges.",
        is: "Knocks, leans, pulls and a walk, each on a page of its own. They are fitted together, and this pier’s figures stand beside the \
             plan’s. What was entered before can be taken into the plan.",
    },
    Changed {
        about: "Stillness with nobody there",
        was: "Each movement was held against a limit in arcseconds.",
        is: "By how much wider wind, warmth and drift make the star over one exposure, at worst, with a rigid load on the pier. The \
             arcseconds stand beside it.",
    },
    Changed {
        about: "What would help most",
        was: "Ordered by arcseconds.",
        is: "Ordered by the growth of the star at worst, which is told first.",
    },
    Changed {
        about: "Checks that could not be made",
        was: "“Not known”, and the plan went on.",
        is: "“Ask”: somebody has to look before it is built.",
    },
    Changed {
        about: "Figures that equal their limit",
        was: "Could fail by the last digit of the calculation.",
        is: "Do not fail.",
    },
    Changed {
        about: "A tonne of concrete at least",
        was: "A check.",
        is: "A rule of thumb, told beside the calculation.",
    },
    Changed {
        about: "A pit too small for a block as stiff as a metre cube",
        was: "A check, and failed however small the telescope.",
        is: "Told with the rule of the metre cube. What the star does decides.",
    },
    Changed {
        about: "A block with its base below the groundwater",
        was: "Its hold against tipping and sliding was less by the lift of the water once; the soil below the water counted as moist soil less \
              the water's weight.",
        is: "Less by eleven tenths of the lift, as EN 1990 has it for what tips; the soil below the water counts with its own weight when full.",
    },
    Changed {
        about: "Frost that goes deeper than the block",
        was: "Gripped sides that the block does not have.",
        is: "Grips the sides down to the base. What it does below the base is the check of the base's depth.",
    },
    Changed {
        about: "A vertical face of the pit",
        was: "Could hold in sand or gravel by a dampness that dries out.",
        is: "Never holds in sand, gravel, fill or where water seeps; clay and silt stand for hours, and not above a stated height.",
    },
    Changed {
        about: "A face that will not stand",
        was: "A caution.",
        is: "Trench sheets and struts in the order, a task to line the faces as the pit is dug, and the caution at its step.",
    },
    Changed {
        about: "Strength of the soil",
        was: "The least that the word for it allows.",
        is: "A measured one where it is stated; then the tables' presumed pressure is held at its high end.",
    },
    Changed {
        about: "A block on, in or just above rock",
        was: "Jumped in stiffness within a hand's breadth of rock, and failed the frost check on sound rock.",
        is: "Is held by the rock without a jump; no frost is judged on sound rock.",
    },
    Changed {
        about: "A storm that tips the block; a ladder on the column",
        was: "Bearing was told as a distance from the block's middle, and the load that bends the column most was judged, though another used more of it.",
        is: "Where the force falls outside the base, nothing of it bears; of the column's loads the one that uses most of it counts.",
    },
    Changed {
        about: "Wind on a thick column",
        was: "Moved the star by up to four tenths less at a little more wind, where the flow round the column changes.",
        is: "A faster wind never moves the star less.",
    },
    Changed {
        about: "Thread in the nuts",
        was: "The length of the studs alone was checked.",
        is: "Also whether the nut on a stud has hold of as much thread as it needs to be as strong as the stud.",
    },
];

/// The page.
#[derive(Template)]
#[template(path = "pages/versions.html")]
pub struct VersionsPage {
    /// The frame.
    pub frame: Frame,
    /// This version.
    pub version: &'static str,
    /// The version that the changes are counted from.
    pub before: &'static str,
    /// What changed.
    pub changes: &'static [Changed],
}

impl VersionsPage {
    /// The page in its frame.
    #[must_use]
    pub const fn in_frame(frame: Frame) -> Self {
        Self {
            frame,
            version: ENGINE_VERSION,
            before: BEFORE,
            changes: CHANGES,
        }
    }
}
