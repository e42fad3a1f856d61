//! The storm on column and load: force and moment at the foot, and whether the tube bears them.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Check, Notes, Working};
use crate::rules::en_1991_1_4_2005::{cylinder, gust as wind};
use crate::rules::en_1993_1_1_2005::{buckling, material, resistance};
use crate::rules::en_10210_2_2006::section as tube;
use crate::site_plan::load::Enclosure;
use crate::site_plan::pier::Steel;
use crate::stages::pier::section::Section;
use crate::units::{
    Force, Moment, Pressure, gravity, kilonewton, kilonewton_metre, megapascal, metre_per_second,
    newton, newton_metre, pascal,
};

/// A person who leans on the telescope or catches a fall with it, N: EN 1991-1-1 asks about this of a hand rail a metre long.
pub const LEANING_N: f64 = 500.0;
/// Partial factor of a variable action, EN 1990 Table A1.2(B).
pub const ACTION_FACTOR: f64 = 1.5;
/// Partial factor of a permanent action, EN 1990 Table A1.2(B).
pub const WEIGHT_FACTOR: f64 = 1.35;

/// Force and moment at the foot of the column, characteristic.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FootForces {
    /// Across the column.
    pub shear: Force,
    /// Bending.
    pub moment: Moment,
    /// Weight of column and load.
    pub weight: Force,
}

/// Finds the larger of the storm and a leaning person.
#[must_use]
pub fn foot_forces(brief: &Brief, section: &Section) -> FootForces {
    let (pier, load) = (&brief.pier, &brief.load);
    let gust = brief.site.design_gust.value;
    let height = pier.height.value;
    let column = wind::force(
        gust,
        pier.outside_diameter.value * height,
        cylinder::cylinder_factor(gust, pier.outside_diameter.value),
    );
    let top = wind::force(gust, load.wind_area.value, cylinder::TELESCOPE_FORCE_FACTOR);
    // A closed building keeps the storm off; only what stands open feels the gust.
    let exposed = if load.enclosure.value == Enclosure::Open {
        1.0
    } else {
        0.0
    };
    let centre = height + load.centre_above_pier.value;
    let storm = (column + top) * exposed;
    let storm_moment: Moment = (column * height * 0.5 + top * centre) * exposed;
    let leaning = newton::new(LEANING_N);
    let leaning_moment: Moment = leaning * centre;
    let weight: Force = (section.mass() + load.mass.value) * gravity();
    FootForces {
        shear: storm.max(leaning),
        moment: storm_moment.max(leaning_moment),
        weight,
    }
}

/// Yield strength of a grade.
#[must_use]
pub fn yield_strength(steel: Steel) -> Pressure {
    megapascal::new(match steel {
        Steel::S235 => 235.0,
        Steel::S275 => 275.0,
        Steel::S355 => 355.0,
    })
}

/// Holds the tube against storm, leaning person and weight.
pub fn checks(brief: &Brief, section: &Section, forces: &FootForces, notes: &mut Notes) {
    let pier = &brief.pier;
    let (outside, wall) = (pier.outside_diameter.value, pier.wall.value);
    let strength = material::yield_strength(yield_strength(pier.steel.value), wall);
    let moment = forces.moment * ACTION_FACTOR;
    let weight = forces.weight * WEIGHT_FACTOR;
    let squash = resistance::compression(section.area, strength);
    let critical = buckling::critical(section.bending, pier.height.value);
    let slenderness = (squash / critical).value.sqrt();
    let chi = buckling::reduction_factor(slenderness, buckling::ALPHA_FACTOR);
    let bending = resistance::bending(tube::elastic_modulus(outside, wall), strength);
    let used = resistance::use_ratio(weight, squash * chi, moment, bending);
    let fields: &[&str] = &[
        "pier.outside_diameter_mm",
        "pier.wall_mm",
        "pier.steel",
        "pier.height_m",
    ];
    let class = resistance::class(outside, wall, strength);
    let title = "Is the column strong enough at its foot?";
    notes.check(if class < 4 {
        Check::at_most("pier.strength", title, used, 1.0, Unit::One, resistance::SOURCE)
            .note(format!(
                "Weight and bending at the foot with partial factors {WEIGHT_FACTOR} and {ACTION_FACTOR}, χ = {chi:.2}. \
                 Stillness asks far more of a column than strength does."
            ))
            .moved_by(fields)
    } else {
        Check::unknown(
            "pier.strength",
            title,
            Unit::One,
            resistance::CLASS_SOURCE,
            "The wall is so thin for its diameter that it buckles locally before it yields; such a shell is outside these rules. \
             Take a thicker wall, or have a structural engineer check it.",
        )
        .moved_by(fields)
    });
    workings(
        brief,
        section,
        forces,
        strength,
        (moment, bending, chi, used),
        notes,
    );
}

fn workings(
    brief: &Brief,
    section: &Section,
    forces: &FootForces,
    strength: Pressure,
    (moment, bending, chi, used): (Moment, Moment, f64, f64),
    notes: &mut Notes,
) {
    let gust = brief.site.design_gust.value;
    notes.working(
        Working::new(
            "pier.gust_pressure",
            "Pressure of the design gust",
            "q = ½ ρ v²",
            wind::SOURCE,
        )
        .with("ρ", wind::AIR_DENSITY, Unit::KilogramPerCubicMetre)
        .with("v", metre_per_second::get(gust), Unit::MetrePerSecond)
        .gives(
            "q",
            pascal::get(wind::pressure(gust)) / 1e3,
            Unit::Kilopascal,
        ),
    );
    notes.working(
        Working::new(
            "pier.foot_moment",
            "Moment at the foot of the column, the larger of storm and leaning person",
            "M = max(F_column h/2 + F_top (h + e), 500 N (h + e))",
            wind::SOURCE,
        )
        .with("h", brief.pier.height.value.value, Unit::Metre)
        .with("e", brief.load.centre_above_pier.value.value, Unit::Metre)
        .gives("M", newton_metre::get(forces.moment), Unit::NewtonMetre),
    );
    notes.working(
        Working::new(
            "pier.use",
            "Use of the column's section",
            "N/(χ A f_y) + M/(W_el f_y)",
            resistance::SOURCE,
        )
        .with(
            "N",
            kilonewton::get(forces.weight * WEIGHT_FACTOR),
            Unit::Kilonewton,
        )
        .with("χ", chi, Unit::One)
        .with("A", section.area.value * 1e6, Unit::SquareMillimetre)
        .with("f_y", megapascal::get(strength), Unit::Megapascal)
        .with("M", kilonewton_metre::get(moment), Unit::KilonewtonMetre)
        .with(
            "M_Rd",
            kilonewton_metre::get(bending),
            Unit::KilonewtonMetre,
        )
        .gives("use", used, Unit::One),
    );
}
