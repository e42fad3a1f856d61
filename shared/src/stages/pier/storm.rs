//! The column's tube against the loads at its foot.

use crate::brief::Brief;
use crate::field::Path;
use crate::figure::{Kilonewton, KilonewtonMetre, Megapascal, One, Unit};
use crate::notes::{Check, Notes, Working};
use crate::paths;
use crate::rules::en_1993_1_1_2005::{buckling, resistance};
use crate::rules::en_10210_2_2006::section as tube;
use crate::site_plan::Code;
use crate::source::Source;
use crate::stages::loads::{self, Load, Loads};
use crate::stages::pier::section::Section;
use crate::stages::steel::Grade;
use crate::units::{Force, Moment, Pressure, newton, newton_metre};

/// Partial factor of a permanent action, EN 1990 Table A1.2(B).
pub const WEIGHT_FACTOR: f64 = 1.35;
/// Where the factors come from.
const EN_1990: Source = Source::from_memory("EN 1990", "2002", "Table A1.2(B) and 6.4.3.3");

/// What pushes and bends the column at its foot.
#[derive(Debug, Clone, PartialEq)]
pub struct FootForces {
    /// Largest force across the column, characteristic.
    pub shear: Force,
    /// Largest moment, characteristic.
    pub moment: Moment,
}

/// Partial factor of a load; the tube is always judged by EN 1993.
fn factor(load: &Load) -> f64 {
    loads::factor(Code::Eurocode, load.accidental)
}

/// Finds the largest of all loads.
pub fn foot_forces(loads: &Loads) -> FootForces {
    let none = FootForces {
        shear: newton::new(0.0),
        moment: newton_metre::new(0.0),
    };
    loads.all.iter().fold(none, |found, load| FootForces {
        shear: found.shear.max(load.shear),
        moment: found.moment.max(load.moment),
    })
}

/// The tube under one load.
struct Use {
    weight: Force,
    moment: Moment,
    bending: Moment,
    chi: f64,
    used: f64,
}

impl Use {
    fn of(brief: &Brief, section: &Section, strength: Pressure, load: &Load) -> Self {
        let pier = &brief.pier;
        let moment = load.moment * factor(load);
        let weight = load.axial * WEIGHT_FACTOR;
        let squash = resistance::compression(section.area, strength);
        let critical = buckling::critical(section.bending, pier.height.value);
        let slenderness = (squash / critical).value.sqrt();
        let chi = buckling::reduction_factor(slenderness, buckling::ALPHA_FACTOR);
        let modulus = tube::elastic_modulus(pier.outside_diameter.value, section.counted_wall);
        let bending = resistance::bending(modulus, strength);
        Self {
            weight,
            moment,
            bending,
            chi,
            used: resistance::use_ratio(weight, squash * chi, moment, bending),
        }
    }
}

/// Holds the tube with its weight against each load. The one that uses most counts, which need not be the one that bends most:
/// a person on a ladder also weighs on the column.
pub fn checks(brief: &Brief, section: &Section, loads: &Loads, notes: &mut Notes) {
    let pier = &brief.pier;
    let (outside, wall) = (pier.outside_diameter.value, pier.wall.value);
    let strength = Grade::of(pier.steel.value).yield_strength(wall);
    let under_each = loads
        .all
        .iter()
        .map(|load| (load, Use::of(brief, section, strength, load)));
    let Some((worst, found)) = under_each.max_by(|a, b| a.1.used.total_cmp(&b.1.used)) else {
        return;
    };
    let (used, chi) = (found.used, found.chi);
    let fields: &[Path] = paths![
        pier.outside_diameter_mm,
        pier.wall_mm,
        pier.steel,
        pier.height_m,
        site.design_gust_m_s,
        load.enclosure,
    ];
    let class = resistance::class(outside, section.counted_wall, strength);
    let title = "Is the column strong enough at its foot?";
    notes.check(if class < 4 {
        Check::at_most("pier.strength", title, used, 1.0, One, resistance::SOURCE)
            .note(format!(
                "The worst is {}: weight and bending at the foot with partial factors {WEIGHT_FACTOR} and {}, χ = {chi:.2}. \
                 Stillness asks far more of a column than strength does.",
                worst.title,
                factor(worst)
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
    workings(section, worst, strength, &found, notes);
}

fn workings(section: &Section, worst: &Load, strength: Pressure, found: &Use, notes: &mut Notes) {
    notes.working(
        Working::new(
            "pier.foot_moment",
            format!("Moment at the foot of the column: {}", worst.title),
            "M_Ed = γ M",
            EN_1990,
        )
        .with("γ", factor(worst), One)
        .with("M", worst.moment, KilonewtonMetre)
        .gives("M_Ed", found.moment, KilonewtonMetre),
    );
    notes.working(
        Working::new(
            "pier.use",
            "Use of the column's section",
            "N_Ed/(χ A f_y) + M_Ed/M_Rd",
            resistance::SOURCE,
        )
        .with("N_Ed", found.weight, Kilonewton)
        .with("χ", found.chi, One)
        .with("A", section.area.value * 1e6, Unit::SquareMillimetre)
        .with("f_y", strength, Megapascal)
        .with("M_Ed", found.moment, KilonewtonMetre)
        .with("M_Rd", found.bending, KilonewtonMetre)
        .gives("use", found.used, One),
    );
}
