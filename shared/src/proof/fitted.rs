//! What was found, as it stands in a design.

use serde::Serialize;

use crate::stages::motion::Motion;
use crate::stages::motion::improvement::NewField;

/// An unknown after all measurements: five, fifty and ninety-five of a hundred. Null where the measurements contradict each
/// other.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Range {
    /// Below it lies one of twenty.
    pub low: Option<f64>,
    /// The middle.
    pub typical: Option<f64>,
    /// Above it lies one of twenty.
    pub high: Option<f64>,
    /// Whether the measurements told of it; where not, this is what the plan said.
    pub told: bool,
}

/// A measurement beside what was foreseen and what the fitted pier would show.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Agreement {
    /// Which.
    pub measurement: String,
    /// What was measured.
    pub measured: f64,
    /// Standard deviation of the measurement over itself, with what the model is wrong by.
    pub sd_ratio: f64,
    /// What the plan foresees.
    pub foreseen: f64,
    /// Where nine of ten piers of the plan's ranges would be.
    pub foreseen_between: [f64; 2],
    /// What the fitted pier shows.
    pub fitted: Option<f64>,
    /// Where nine of ten fitted piers are.
    pub fitted_between: Option<[f64; 2]>,
    /// How far what was measured lies from what was foreseen, in standard deviations of all that is uncertain.
    pub surprise: f64,
    /// The same from what all other measurements say; null where that is not known.
    pub left_out: Option<f64>,
    /// Unit of the figures.
    pub unit: &'static str,
    /// In words.
    pub says: String,
}

/// Something that was said or assumed and is unlikely to be right.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Suspect {
    /// The plan's answer, or `commissioning` where a measurement is suspected.
    pub field: String,
    /// How far it is from what the plan said, in standard deviations of the plan's range.
    pub shift: f64,
    /// In words.
    pub says: String,
}

/// The measurement that would decide most.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Next {
    /// A name.
    pub id: &'static str,
    /// What to do.
    pub says: String,
}

/// What can be done to a pier that stands.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Remedy {
    /// A name that does not change.
    pub id: &'static str,
    /// What to do.
    pub says: String,
    /// First frequency as it stands and afterwards, each the middle of what is likely.
    pub frequency_from_hz: f64,
    /// Afterwards.
    pub frequency_to_hz: f64,
    /// How many times less a push at the telescope turns it. What adds weight may be stiffer and swing no faster.
    pub stiffer_ratio: f64,
    /// Tilt of the top under a person at the worst place, as it stands and afterwards; null where the remedy is for the
    /// swing and not for steps.
    pub tilt_from_arcsec: Option<f64>,
    /// Afterwards.
    pub tilt_to_arcsec: Option<f64>,
    /// The plan's answers that it changes; empty where it is done on the pier and no answer says it.
    pub fields: Vec<NewField>,
    /// What is done on the pier and stands in no answer of the plan.
    pub not_in_plan: Option<&'static str>,
}

/// What a symptom points to.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SymptomSays {
    /// Which: the name of the plan's answer.
    pub symptom: &'static str,
    /// The parts that it points to.
    pub points_to: Vec<&'static str>,
    /// Whether the fit says the same; null where it cannot tell.
    pub agrees: Option<bool>,
    /// In words.
    pub says: String,
}

/// Two unknowns that these measurements bind to each other.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Together {
    /// One of them.
    pub first: &'static str,
    /// The other.
    pub second: &'static str,
    /// How much they go together among the piers that fit, −1 to 1.
    pub correlation: f64,
    /// In words.
    pub says: String,
}

/// Shares of the first swing's strain energy.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Shares {
    /// Ground.
    pub ground: Range,
    /// Joint.
    pub joint: Range,
    /// Column.
    pub column: Range,
    /// Mount.
    pub mount: Range,
}

/// What the measurements say of the pier.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Fitted {
    /// Whether there is an answer; otherwise the figures contradict each other.
    pub holds: bool,
    /// Ground.
    pub shear_modulus_mpa: Range,
    /// Share of the sides that the ground holds, from the base up.
    pub side_contact_ratio: Range,
    /// Joint.
    pub base_joint_stiffness_n_m_per_rad: Range,
    /// Column with its fill, over the plan's.
    pub column_stiffness_ratio: Range,
    /// Mount.
    pub mount_stiffness_n_m_per_rad: Range,
    /// First frequency with mount and telescope.
    pub frequency_hz: Range,
    /// Where it gives.
    pub shares: Shares,
    /// Each measurement.
    pub agreement: Vec<Agreement>,
    /// How often a pier of this plan would differ as much as all measurements together do.
    pub chance_ratio: Option<f64>,
    /// The same in words.
    pub says: Vec<String>,
    /// What is unlikely to be right, most suspicious first.
    pub suspects: Vec<Suspect>,
    /// Unknowns of which the measurements say nothing.
    pub not_told: Vec<&'static str>,
    /// Unknowns that cannot be told apart, those that go together most first.
    pub together: Vec<Together>,
    /// What each symptom points to.
    pub symptoms: Vec<SymptomSays>,
    /// The one further measurement that would decide most.
    pub next: Option<Next>,
    /// What would help, most first.
    pub remedies: Vec<Remedy>,
    /// What the star does on this pier.
    pub motion: Option<Motion>,
}
