//! What the person said: the document that the interface takes and the store keeps. Any answer may be "not known".
//!
//! One section a file; each number stands with its unit, its range and the reason for it.

pub mod anchors;
pub mod block;
pub mod chosen;
pub mod commissioning;
pub mod excavation;
pub mod floor;
pub mod load;
pub mod pier;
pub mod prices;
pub mod site;
pub mod work;
pub mod yard;

use serde::{Deserialize, Serialize};

pub use anchors::Anchors;
pub use block::Block;
pub use commissioning::{Commissioning, State};
pub use excavation::Excavation;
pub use floor::{Floor, Stand};
pub use load::Load;
pub use pier::Pier;
pub use prices::Prices;
pub use site::Site;
pub use work::Work;
pub use yard::Yard;

use crate::field::{
    Answer, Because, Kind, NumberField, Other, OtherField, Problem, Problems, choice, other, words,
};
use crate::figure::Units;
use crate::source::Source;
use crate::stock::Stock;
use crate::text;

/// Version of the document that this engine reads.
pub const SCHEMA_VERSION: u32 = 1;
/// What this planner takes where nothing better is known.
pub(crate) const HOUSE: Source = Source::judgement("the planner's own choice");
/// Longest title, in characters.
pub const TITLE_LENGTH: usize = 500;

choice! {
    /// What the telescope is for; it sets how still the pier must be.
    pub enum Use {
        /// Looking with the eye.
        Visual = "visual", "Looking with the eye";
        /// Short frames of planets and the moon.
        Planetary = "planetary", "Short frames of the moon and planets";
        /// Long exposures.
        DeepSky = "deep_sky", "Long exposures";
    }
}

choice! {
    /// Code by which the anchors are judged; both are calculated.
    pub enum Code {
        /// EN 1992-4 and its family.
        Eurocode = "eurocode", "EN 1992-4, the European one";
        /// ACI 318-19.
        Aci = "aci", "ACI 318-19, the American one";
    }
}

/// A plan as the person gave it. `null` or a missing field means "not known".
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SitePlan {
    /// Version of this document, 1.
    pub schema_version: u32,
    /// What the plan is called.
    #[serde(default)]
    pub title: Option<String>,
    /// What the telescope is for.
    #[serde(default, rename = "use")]
    pub purpose: Option<Use>,
    /// Units for reading; the document itself is always metric.
    #[serde(default)]
    pub units: Option<Units>,
    /// Code for the anchors' verdict.
    #[serde(default)]
    pub code: Option<Code>,
    /// Which parts are sold where the pier is built; apart from the units and from the code.
    #[serde(default)]
    pub stock: Option<Stock>,
    /// Which rows of the catalogue are kept where the parts come from; left out: all of them.
    #[serde(default, skip_serializing_if = "Yard::is_empty")]
    pub yard: Yard,
    /// Site and soil.
    #[serde(default)]
    pub site: Site,
    /// Excavation.
    #[serde(default)]
    pub excavation: Excavation,
    /// Footing.
    #[serde(default)]
    pub block: Block,
    /// Pier.
    #[serde(default)]
    pub pier: Pier,
    /// Load.
    #[serde(default)]
    pub load: Load,
    /// Anchors.
    #[serde(default)]
    pub anchors: Anchors,
    /// Observing floor.
    #[serde(default)]
    pub floor: Floor,
    /// When and with how many people the work is done.
    #[serde(default)]
    pub work: Work,
    /// What the reader was quoted.
    #[serde(default)]
    pub prices: Prices,
    /// What there is of the pier; left out: it is planned.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub state: Option<State>,
    /// What was measured of a pier that stands.
    #[serde(default, skip_serializing_if = "Commissioning::is_empty")]
    pub commissioning: Commissioning,
    /// Answers that the planner found and the person took, by path.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub chosen: Vec<String>,
}

impl Answer for Units {
    const KIND: Kind = Kind::Choice(&["metric", "imperial"]);
    const ANSWERS: &'static [(&'static str, &'static str)] = &[
        ("metric", "Metres, kilograms, newton metres"),
        ("imperial", "Feet and inches, pounds, pound-force feet"),
    ];

    fn name(&self) -> Option<&'static str> {
        Some(match self {
            Self::Metric => "metric",
            Self::Imperial => "imperial",
        })
    }

    fn named(name: &str) -> Option<Self> {
        match name {
            "metric" => Some(Self::Metric),
            "imperial" => Some(Self::Imperial),
            _ => None,
        }
    }
}

/// The rows of the answers that stand in no section.
#[allow(
    non_upper_case_globals,
    reason = "a row has the name of its field, so that one search finds both"
)]
impl SitePlan {
    /// What the plan is called.
    pub const title: Other<String> = other!(
        "title",
        plan.title: String,
        "What the plan is called.",
        words!(
            "What is the plan called?",
            ["It stands in the title block of every drawing: the club, the garden, the pier."],
            ["The sheets will say “Untitled pier”."]
        ),
        None,
        None
    );
    /// What the telescope is for.
    pub const purpose: Other<Use> = other!(
        "use",
        plan.purpose: Use,
        "What the telescope is for.",
        words!(
            "What is the telescope for?",
            ["If you do more than one, choose the one that needs the steadiest pier."],
            []
        ),
        Some(|| Use::DeepSky),
        Some(Because {
            why: "long exposures ask the most of a pier",
            effect: "sets the limit in arcseconds; visual use would allow more",
            source: Source::judgement("strictest use"),
        })
    );
    /// Units for reading.
    pub const units: Other<Units> = other!(
        "units",
        plan.units: Units,
        "Units for reading; the document itself is always metric.",
        words!(
            "Which units do you read?",
            ["A figure may be typed in any unit, with its unit behind it. A point is always the decimal mark: 1.250 means one and a quarter."],
            ["Metric units are shown."]
        ),
        None,
        None
    );
    /// Which parts are sold where the pier is built.
    pub const stock: Other<Stock> = other!(
        "stock",
        plan.stock: Stock,
        "Which parts are sold where the pier is built; apart from the units that are shown and from the code.",
        words!(
            "What is sold where you are?",
            ["The plan chooses tube, plate, rod, concrete and bags from it. It changes neither the units you read nor the code."],
            ["Metric parts for a reader of metric units, inch parts for a reader of feet and inches."]
        ),
        None,
        None
    );
    /// Code for the anchors' verdict.
    pub const code: Other<Code> = other!(
        "code",
        plan.code: Code,
        "Code for the anchors' verdict; both are calculated.",
        words!(
            "Which code gives the verdict?",
            ["Both are calculated and both are shown."],
            []
        ),
        Some(|| Code::Eurocode),
        Some(Because {
            why: "both codes are calculated; one has to give the verdict",
            effect: "chooses which resistances the anchors are judged by",
            source: HOUSE,
        })
    );
}

impl SitePlan {
    /// A plan in which nothing is known yet.
    #[must_use]
    pub fn unknown() -> Self {
        Self {
            schema_version: SCHEMA_VERSION,
            ..Self::default()
        }
    }

    /// The family of parts that is chosen from: as said, or the one that readers of these units usually buy from.
    #[must_use]
    pub fn family(&self) -> Stock {
        self.stock
            .unwrap_or(Stock::of(self.units.unwrap_or_default()))
    }

    /// The plan's number of this path.
    #[must_use]
    pub fn number(path: &str) -> Option<&'static NumberField> {
        Self::numbers().find(|number| number.path == path)
    }

    /// The plan's answer of this path that is no number.
    #[must_use]
    pub fn other(path: &str) -> Option<&'static OtherField> {
        Self::others().find(|other| other.path == path)
    }

    /// Every number of the plan with its unit and range.
    pub fn numbers() -> impl Iterator<Item = &'static NumberField> {
        [
            Site::NUMBERS,
            Excavation::NUMBERS,
            Block::NUMBERS,
            Pier::NUMBERS,
            Load::NUMBERS,
            Anchors::NUMBERS,
            Floor::NUMBERS,
            Work::NUMBERS,
        ]
        .into_iter()
        .flatten()
    }

    /// Every other answer of the plan's sections with what it takes.
    pub fn others() -> impl Iterator<Item = &'static OtherField> {
        [
            Site::OTHERS,
            Excavation::OTHERS,
            Block::OTHERS,
            Pier::OTHERS,
            Load::OTHERS,
            Anchors::OTHERS,
            Floor::OTHERS,
            Work::OTHERS,
        ]
        .into_iter()
        .flatten()
    }

    /// Every problem of the plan at once.
    ///
    /// # Errors
    /// All fields out of range and all contradictions, each with its field, value and range.
    pub fn validate(&self) -> Result<(), Problems> {
        // Contradictions are looked for only among values that are possible at all.
        self.validate_each()?;
        let contradictions: Vec<Problem> = [
            site::contradictions,
            excavation::contradictions,
            block::contradictions,
            pier::contradictions,
            load::contradictions,
            anchors::contradictions,
            floor::contradictions,
        ]
        .into_iter()
        .flat_map(|find| find(self))
        .collect();
        none_of(contradictions)
    }

    /// Checks every answer by itself, and none against another.
    ///
    /// # Errors
    /// All fields out of range, each with its field, value and range.
    pub fn validate_each(&self) -> Result<(), Problems> {
        let units = self.units.unwrap_or_default();
        let mut problems = self.head_problems();
        for field in Self::numbers() {
            problems.extend((field.get)(self).and_then(|value| field.out_of_range(value, units)));
        }
        problems.extend(site::problems(self));
        problems.extend(floor::problems(self));
        problems.extend(work::problems(self));
        problems.extend(anchors::problems(self));
        problems.extend(prices::problems(self));
        problems.extend(commissioning::problems(self));
        problems.extend(chosen::problems(self));
        problems.extend(yard::problems(self));
        none_of(problems)
    }

    fn head_problems(&self) -> Vec<Problem> {
        let mut problems = Vec::new();
        if self.schema_version != SCHEMA_VERSION {
            problems.push(Problem {
                fields: vec!["schema_version".into()],
                value: Some(f64::from(self.schema_version)),
                said: format!("This planner reads version {SCHEMA_VERSION} of the document; this one says {}.", self.schema_version),
            });
        }
        if let Some(title) = &self.title {
            problems.extend(text_problem("title", title, TITLE_LENGTH));
        }
        problems
    }
}

/// Nothing wrong, or all that is.
fn none_of(problems: Vec<Problem>) -> Result<(), Problems> {
    if problems.is_empty() {
        Ok(())
    } else {
        Err(Problems(problems))
    }
}

/// A text that is too long or holds what cannot be printed.
pub(crate) fn text_problem(field: &str, text: &str, most: usize) -> Option<Problem> {
    let length = text.chars().count();
    let said = if length > most {
        format!("This is {length} characters long; {most} is the most that fits a title block.")
    } else {
        text::unfit(text)?.words().to_owned()
    };
    Some(Problem {
        fields: vec![field.to_owned()],
        value: None,
        said,
    })
}
