//! What the measurements of a pier say, in the reader's units: the same on the page, in the plan's chapter and on the sheet.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Unit, Units, significant};
use stillground::proof::{Agreement, Fitted, Range};
use stillground::stages::motion::Motion;
use stillground::units::{hertz, megapascal, newton_metre_per_radian};

/// What stands where no figure is known.
pub const UNKNOWN: &str = "not known";
/// What stands where the measurements say nothing.
pub const NOT_TOLD: &str = "not told by these measurements";

/// An unknown as planned and after the measurements.
#[derive(Debug, Clone)]
pub struct UnknownLine {
    /// What.
    pub what: &'static str,
    /// As planned.
    pub planned: String,
    /// The middle and nine of ten, or that nothing was told.
    pub found: String,
}

/// A measurement beside what was foreseen.
#[derive(Debug, Clone)]
pub struct AgreementLine {
    /// Which.
    pub what: String,
    /// As measured.
    pub measured: String,
    /// What the plan foresaw.
    pub foreseen: String,
    /// What the fitted pier shows.
    pub fitted: String,
    /// In words.
    pub says: String,
}

/// A figure of the plan beside this pier's.
#[derive(Debug, Clone)]
pub struct FigureLine {
    /// Which.
    pub what: &'static str,
    /// As planned.
    pub planned: String,
    /// As this pier has it.
    pub fitted: String,
}

/// What the measurements say.
#[derive(Debug, Clone)]
pub struct Proof {
    /// Whether the measurements go together; otherwise there is no pier to tell of.
    pub holds: bool,
    /// In words.
    pub says: Vec<String>,
    /// What each symptom points to.
    pub symptoms: Vec<String>,
    /// What is unlikely to be right, most suspicious first.
    pub suspects: Vec<String>,
    /// Each measurement.
    pub agreement: Vec<AgreementLine>,
    /// What was unknown.
    pub unknowns: Vec<UnknownLine>,
    /// Where the slowest swing gives: part, and its share with its range.
    pub shares: Vec<(&'static str, String)>,
    /// The plan's figures and this pier's.
    pub figures: Vec<FigureLine>,
    /// The wall card as this pier has it.
    pub card: Vec<String>,
    /// The measurement that would decide most.
    pub next: Option<String>,
}

impl Proof {
    /// All of it; none where nothing was measured, or what would help was not looked for.
    #[must_use]
    pub fn of(brief: &Brief, design: &Design) -> Option<Self> {
        let fitted = design.fitted.as_ref()?;
        let units = brief.units;
        Some(Self {
            holds: fitted.holds,
            says: fitted.says.clone(),
            symptoms: fitted.symptoms.iter().map(|one| one.says.clone()).collect(),
            suspects: fitted
                .suspects
                .iter()
                .map(|suspect| suspect.says.clone())
                .collect(),
            agreement: fitted
                .agreement
                .iter()
                .map(|one| agreement(one, units))
                .collect(),
            unknowns: unknowns(brief, design, fitted),
            shares: shares(fitted),
            figures: figures(&design.motion, fitted, units),
            card: card(fitted),
            next: fitted.next.as_ref().map(|next| next.says.clone()),
        })
    }
}

/// The wall card of the fitted pier; empty where there is none.
fn card(fitted: &Fitted) -> Vec<String> {
    let motion = fitted.motion.as_ref();
    motion
        .map(|motion| motion.where_to_stand.clone())
        .unwrap_or_default()
}

fn agreement(one: &Agreement, units: Units) -> AgreementLine {
    let unit = if one.unit == "Hz" {
        Unit::Hertz
    } else {
        Unit::Arcsecond
    };
    let say = |value: f64| units.say(value, unit);
    AgreementLine {
        what: one.measurement.clone(),
        measured: say(one.measured),
        foreseen: say(one.foreseen),
        fitted: one.fitted.map_or_else(|| UNKNOWN.to_owned(), say),
        says: one.says.clone(),
    }
}

fn unknowns(brief: &Brief, design: &Design, fitted: &Fitted) -> Vec<UnknownLine> {
    let units = brief.units;
    let line = |what, planned: Option<f64>, range: Range, unit, factor: f64| {
        let say = |value: f64| units.say(value * factor, unit);
        UnknownLine {
            what,
            planned: planned.map_or_else(|| UNKNOWN.to_owned(), |value| units.say(value, unit)),
            found: between(range, say),
        }
    };
    let ground = design
        .ground
        .shear_modulus
        .map(|modulus| megapascal::get(modulus.typical));
    let joint = newton_metre_per_radian::get(design.pier.base_joint_stiffness);
    let mount = newton_metre_per_radian::get(brief.load.mount_stiffness.value);
    vec![
        line(
            "Ground stiffness (shear modulus)",
            ground,
            fitted.shear_modulus_mpa,
            Unit::Megapascal,
            1.0,
        ),
        line(
            "Side contact: share of the block’s sides that the ground holds",
            None,
            fitted.side_contact_ratio,
            Unit::PerCent,
            100.0,
        ),
        line(
            "Base joint",
            Some(joint / 1e6),
            fitted.base_joint_stiffness_n_m_per_rad,
            Unit::MeganewtonMetrePerRadian,
            1e-6,
        ),
        line(
            "Column with its fill, times as stiff as planned",
            Some(1.0),
            fitted.column_stiffness_ratio,
            Unit::One,
            1.0,
        ),
        line(
            "Mount",
            Some(mount / 1e6),
            fitted.mount_stiffness_n_m_per_rad,
            Unit::MeganewtonMetrePerRadian,
            1e-6,
        ),
    ]
}

/// The middle and where nine of ten lie.
fn between(range: Range, say: impl Fn(f64) -> String) -> String {
    match (range.told, range.low, range.typical, range.high) {
        (_, _, None, _) => "the measurements contradict each other".to_owned(),
        (false, ..) => NOT_TOLD.to_owned(),
        (true, Some(low), Some(typical), Some(high)) => {
            format!("{} ({} to {})", say(typical), say(low), say(high))
        }
        (true, _, Some(typical), _) => say(typical),
    }
}

fn shares(fitted: &Fitted) -> Vec<(&'static str, String)> {
    let parts = [
        ("Column", fitted.shares.column),
        ("Base joint", fitted.shares.joint),
        ("Ground", fitted.shares.ground),
        ("Mount", fitted.shares.mount),
    ];
    let mut parts: Vec<(&'static str, f64, String)> = parts
        .into_iter()
        .filter_map(|(name, range)| {
            let (low, typical, high) = (range.low?, range.typical?, range.high?);
            let say = |ratio: f64| significant(100.0 * ratio, 2);
            let words = format!("{}% ({} to {})", say(typical), say(low), say(high));
            Some((name, typical, words))
        })
        .collect();
    parts.sort_by(|a, b| b.1.total_cmp(&a.1));
    parts
        .into_iter()
        .map(|(name, _, words)| (name, words))
        .collect()
}

/// A figure of the motion: what, in which unit, and how it is read.
type Read = (&'static str, Unit, fn(&Motion) -> Option<f64>);

const FIGURES: [Read; 6] = [
    (
        "Star wider when left alone, expected",
        Unit::PerCent,
        |motion| {
            motion
                .left_alone
                .map(|cost| 100.0 * cost.star_growth_ratio.expected)
        },
    ),
    (
        "Star wider when left alone, at worst",
        Unit::PerCent,
        |motion| {
            motion
                .left_alone
                .map(|cost| 100.0 * cost.star_growth_ratio.worst)
        },
    ),
    (
        "Quiet distance for somebody who stands",
        Unit::Metre,
        |motion| motion.quiet_distance_m,
    ),
    (
        "Quiet distance for somebody who walks",
        Unit::Metre,
        |motion| motion.quiet_walking.map(|quiet| quiet.distance_m),
    ),
    ("Star movement in wind, peak", Unit::Arcsecond, |motion| {
        motion.wind_arcsec
    }),
    ("Settling time after a bump", Unit::Second, |motion| {
        motion.settle_s
    }),
];

fn figures(planned: &Motion, fitted: &Fitted, units: Units) -> Vec<FigureLine> {
    let say = |motion: &Motion, unit, read: fn(&Motion) -> Option<f64>| {
        read(motion).map_or_else(|| UNKNOWN.to_owned(), |value| units.say(value, unit))
    };
    let first = FigureLine {
        what: "First natural frequency",
        planned: say(planned, Unit::Hertz, |motion| {
            motion.frequencies.first().map(|f| hertz::get(*f))
        }),
        fitted: between(
            Range {
                told: true,
                ..fitted.frequency_hz
            },
            |value| units.say(value, Unit::Hertz),
        ),
    };
    let others = FIGURES.into_iter().map(|(what, unit, read)| FigureLine {
        what,
        planned: say(planned, unit, read),
        fitted: fitted
            .motion
            .as_ref()
            .map_or_else(|| UNKNOWN.to_owned(), |motion| say(motion, unit, read)),
    });
    std::iter::once(first).chain(others).collect()
}
