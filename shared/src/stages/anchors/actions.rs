//! What pulls and pushes at the foot: weight, a leaning person, a gust, a hanging ladder, a knock.

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Notes, Working};
use crate::rules::en_1991_1_1_2002::person;
use crate::rules::en_1991_1_4_2005::{cylinder, gust};
use crate::site_plan::Code;
use crate::source::{Source, Standing};
use crate::stages::pier::Pier;
use crate::units::{
    Force, Length, Moment, gravity, kilonewton, kilonewton_metre, metre, millimetre, newton,
    newton_metre, square_metre,
};

/// A knock: somebody falls against the column, or a barrow runs into it.
const KNOCK: Source = Source::judgement(
    "1.0 kN at 1 m above the foot, a person who falls against the column or a barrow that runs into it",
);
/// A knock's force, N, and its height, m.
const KNOCK_N: f64 = 1000.0;
const KNOCK_HEIGHT_M: f64 = 1.0;
/// How far beside the axis a person takes hold of the telescope, m: the end of a tube, or the counterweights' shaft.
const LEANING_ARM_M: f64 = 0.75;
/// How far beside the axis the gust on a telescope acts, in widths: EN 1991-1-4, 7.4.3, says so of signboards.
const GUST_ARM_RATIO: f64 = 0.25;
/// Where a horizontal force acts beside the axis.
const BESIDE: Source = Source::judgement(
    "a hand 0.75 m beside the axis; a gust a quarter of the telescope's width beside it, as EN 1991-1-4 7.4.3 takes it",
);
/// Partial factors of EN 1990.
const EN_1990: Source = Source::new(
    "EN 1990",
    "2002",
    "Table A1.2(B) and 6.4.3.3",
    Standing::FromMemory,
);
/// Load factors of ACI 318.
const ACI_LOADS: Source = Source::new("ACI 318", "19", "Table 5.3.1", Standing::FromMemory);

/// What acts at the foot, characteristic.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Action {
    /// Stable name.
    pub id: &'static str,
    /// In words.
    pub title: &'static str,
    /// Weight that presses.
    #[serde(rename = "weight_kn", serialize_with = "kilonewton::serialize")]
    pub weight: Force,
    /// Across the column.
    #[serde(rename = "shear_kn", serialize_with = "kilonewton::serialize")]
    pub shear: Force,
    /// Bending at the foot.
    #[serde(rename = "moment_kn_m", serialize_with = "kilonewton_metre::serialize")]
    pub moment: Moment,
    /// Twist about the column's axis, where the force acts beside it.
    #[serde(
        rename = "torsion_kn_m",
        serialize_with = "kilonewton_metre::serialize"
    )]
    pub torsion: Moment,
    /// Whether it is an accident, which has no partial factor.
    pub accidental: bool,
    /// Where it comes from.
    pub source: Source,
}

/// An action with its partial factors.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Factored {
    /// Weight that presses, at its least.
    pub weight: Force,
    /// Across the column.
    pub shear: Force,
    /// Bending at the foot.
    pub moment: Moment,
    /// Twist about the column's axis.
    pub torsion: Moment,
}

impl Action {
    /// With the code's factors; weight helps, and counts at its least.
    #[must_use]
    pub fn factored(&self, code: Code) -> Factored {
        let (weight, variable) = match (code, self.accidental) {
            (_, true) => (1.0, 1.0),
            (Code::Eurocode, false) => (1.0, 1.5),
            (Code::Aci, false) => (0.9, 1.6),
        };
        Factored {
            weight: self.weight * weight,
            shear: self.shear * variable,
            moment: self.moment * variable,
            torsion: self.torsion * variable,
        }
    }
}

/// Every action.
#[must_use]
pub fn all(brief: &Brief, pier: &Pier) -> Vec<Action> {
    let weight: Force = (pier.mass + brief.load.mass.value) * gravity();
    let top = pier.height + brief.load.centre_above_pier.value;
    let still = newton::new(0.0);
    let (wind, wind_moment, twist) = storm(brief, pier);
    let knock_height = if pier.height > metre::new(KNOCK_HEIGHT_M) {
        metre::new(KNOCK_HEIGHT_M)
    } else {
        pier.height
    };
    let climber = person::climber();
    let ladder = person::ladder_push(climber);
    let hanging = person::hanging_moment(
        climber,
        person::ladder_arm(brief.pier.outside_diameter.value),
    ) + moment(ladder, pier.height);
    let calm = newton_metre::new(0.0);
    let action = |id, title, weight, shear, moment, source| Action {
        id,
        title,
        weight,
        shear,
        moment,
        torsion: calm,
        accidental: false,
        source,
    };
    vec![
        action(
            "rest",
            "weight at rest",
            weight,
            still,
            newton_metre::new(0.0),
            EN_1990,
        ),
        Action {
            torsion: moment(person::leaning(), metre::new(LEANING_ARM_M)),
            ..action(
                "leaning",
                "a person who leans on the telescope",
                weight,
                person::leaning(),
                moment(person::leaning(), top),
                person::SOURCE,
            )
        },
        Action {
            torsion: twist,
            ..action(
                "gust",
                "the design gust, with no roof to keep it off",
                weight,
                wind,
                wind_moment,
                gust::SOURCE,
            )
        },
        action(
            "ladder",
            "a ladder hung on the column with a person on it",
            weight + climber * gravity(),
            ladder,
            hanging,
            person::LADDER_SOURCE,
        ),
        Action {
            accidental: true,
            ..action(
                "knock",
                "a knock",
                weight,
                newton::new(KNOCK_N),
                moment(newton::new(KNOCK_N), knock_height),
                KNOCK,
            )
        },
    ]
}

fn moment(force: Force, height: Length) -> Moment {
    force * height
}

/// Force, moment and twist of the design gust; a roof may stand open when it comes.
fn storm(brief: &Brief, pier: &Pier) -> (Force, Moment, Moment) {
    let speed = brief.site.design_gust.value;
    let column = gust::force(
        speed,
        pier.outside_diameter * pier.height,
        cylinder::cylinder_factor(speed, pier.outside_diameter),
    );
    let top = gust::force(
        speed,
        brief.load.wind_area.value,
        cylinder::TELESCOPE_FORCE_FACTOR,
    );
    let centre = pier.height + brief.load.centre_above_pier.value;
    let width = metre::new(
        square_metre::get(brief.load.wind_area.value)
            .max(0.0)
            .sqrt(),
    );
    (
        column + top,
        moment(column, pier.height / 2.0) + moment(top, centre),
        moment(top, width * GUST_ARM_RATIO),
    )
}

/// The line of calculation for the action that governs.
pub fn working(action: &Action, code: Code, notes: &mut Notes) {
    let factored = action.factored(code);
    let source = if code == Code::Aci {
        ACI_LOADS
    } else {
        EN_1990
    };
    notes.working(
        Working::new(
            "anchors.action",
            format!("Worst for the studs: {}", action.title),
            "M_Ed = γ M, N_Ed at its least",
            source,
        )
        .with(
            "M",
            kilonewton_metre::get(action.moment),
            Unit::KilonewtonMetre,
        )
        .with("V_Ed", kilonewton::get(factored.shear), Unit::Kilonewton)
        .with("N_Ed", kilonewton::get(factored.weight), Unit::Kilonewton)
        .gives(
            "M_Ed",
            kilonewton_metre::get(factored.moment),
            Unit::KilonewtonMetre,
        ),
    );
}

/// The line of calculation for the stud that a twist loads most.
pub fn twist(action: &Action, code: Code, count: usize, radius: Length, notes: &mut Notes) {
    let factored = action.factored(code);
    notes.working(
        Working::new(
            "anchors.torsion",
            format!(
                "Shear of the most loaded stud under {}, with the twist of a force beside the axis",
                action.title
            ),
            "V₁ = V_Ed/n + T_Ed/(n R)",
            BESIDE,
        )
        .with("V_Ed", kilonewton::get(factored.shear), Unit::Kilonewton)
        .with(
            "T_Ed",
            kilonewton_metre::get(factored.torsion),
            Unit::KilonewtonMetre,
        )
        .with("n", count as f64, Unit::Count)
        .with("R", millimetre::get(radius), Unit::Millimetre)
        .gives(
            "V₁",
            kilonewton::get(factored.twisted_shear(radius)) / count as f64,
            Unit::Kilonewton,
        ),
    );
}

impl Factored {
    /// Shear that loads every stud as the most loaded one is: V + T/R.
    #[must_use]
    pub fn twisted_shear(&self, radius: Length) -> Force {
        self.shear + self.torsion / radius
    }

    /// How far beside the studs' middle the shear acts.
    #[must_use]
    pub fn eccentricity(&self) -> Length {
        if newton::get(self.shear) > 0.0 {
            self.torsion / self.shear
        } else {
            metre::new(0.0)
        }
    }
}
