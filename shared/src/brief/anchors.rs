//! Anchors, decided.

use crate::brief::{Ask, Given, Taken};
use crate::figure::Unit;
use crate::site_plan::SitePlan;
use crate::site_plan::anchors::{Coating, Hole, Lubrication, Size, StrengthClass, Tool};
use crate::source::Source;
use crate::units::{Length, Moment, Pressure, megapascal, millimetre, newton_metre};

/// Complete answers about the studs.
#[derive(Debug, Clone, PartialEq)]
pub struct Anchors {
    /// Number of studs.
    pub count: Given<f64>,
    /// Thread size.
    pub size: Given<Size>,
    /// Length of a stud.
    pub length: Given<Length>,
    /// Embedment.
    pub embedment: Given<Length>,
    /// Circle.
    pub circle_diameter: Given<Length>,
    /// Strength class.
    pub strength_class: Given<StrengthClass>,
    /// Hole.
    pub hole_diameter: Given<Length>,
    /// Bond strength, cracked.
    pub bond_strength: Given<Pressure>,
    /// Bond strength, uncracked.
    pub bond_strength_uncracked: Given<Pressure>,
    /// The product's largest torque; none: not known.
    pub max_torque: Option<Moment>,
    /// Torque that is meant; none: recommend one.
    pub torque: Option<Moment>,
    /// Temperature of the concrete, °C.
    pub concrete_temperature_c: Given<f64>,
    /// Whether the concrete may be cracked.
    pub cracked: Given<bool>,
    /// State of the thread.
    pub lubrication: Given<Lubrication>,
    /// What tightens.
    pub tool: Given<Tool>,
    /// Coating.
    pub coating: Given<Coating>,
    /// Hole wet or dry.
    pub hole: Given<Hole>,
    /// The person's own figures, for what comes from a product's sheet.
    pub stated: crate::site_plan::Anchors,
}

/// Decides the studs' unknowns.
pub fn resolve(plan: &SitePlan, ask: &mut Ask) -> Anchors {
    let said = &plan.anchors;
    let house = Source::judgement("house default");
    let mut mm = |field, said, value, why: &str, effect: &str| {
        ask.number(field, Unit::Millimetre, said, millimetre::new, value, Taken::new(why, effect, house))
    };
    let length = mm("anchors.length_mm", said.length_mm, 200.0, "a usual length for a pier's stud", "how deep it can go");
    let embedment = mm("anchors.embedment_mm", said.embedment_mm, 125.0, "a usual depth for this size", "resistance of bond and cone");
    let circle_diameter =
        mm("anchors.circle_diameter_mm", said.circle_diameter_mm, 320.0, "clear of the column, inside the plate", "force in each stud");
    let hole_diameter =
        mm("anchors.hole_diameter_mm", said.hole_diameter_mm, 18.0, "two millimetres more than the stud", "resin in each hole");
    Anchors {
        count: ask.number(
            "anchors.count",
            Unit::Count,
            said.count.map(f64::from),
            |n| n,
            4.0,
            Taken::new("four stand square and level easily", "force in each stud", house),
        ),
        size: ask.choice(
            "anchors.size",
            said.size,
            Size::M16,
            Size::key,
            Taken::new("the usual stud of a pier", "stiffness and resistance", house),
        ),
        length,
        embedment,
        circle_diameter,
        hole_diameter,
        strength_class: ask.choice(
            "anchors.strength_class",
            said.strength_class,
            StrengthClass::C8_8,
            StrengthClass::key,
            Taken::new("the usual class", "proof load", house),
        ),
        bond_strength: ask.number(
            "anchors.bond_strength_mpa",
            Unit::Megapascal,
            said.bond_strength_mpa,
            megapascal::new,
            1.38,
            Taken::new(
                "the least value a code allows without a product's approval: a placeholder",
                "resistance of the bond",
                Source::new("ACI 318", "19", "Table 17.6.5.2.5", crate::source::Standing::SecondHand),
            ),
        ),
        bond_strength_uncracked: ask.number(
            "anchors.bond_strength_uncracked_mpa",
            Unit::Megapascal,
            said.bond_strength_uncracked_mpa,
            megapascal::new,
            4.48,
            Taken::new(
                "the least value a code allows without a product's approval: a placeholder",
                "resistance of the bond",
                Source::new("ACI 318", "19", "Table 17.6.5.2.5", crate::source::Standing::SecondHand),
            ),
        ),
        max_torque: said.max_torque_n_m.map(newton_metre::new),
        torque: said.torque_n_m.map(newton_metre::new),
        concrete_temperature_c: ask.number(
            "anchors.concrete_temperature_c",
            Unit::Celsius,
            said.concrete_temperature_c,
            |v| v,
            10.0,
            Taken::new("a cool spring day", "time before the nuts may be turned", house),
        ),
        cracked: ask.choice(
            "anchors.cracked",
            said.cracked,
            true,
            |yes| if yes { "true" } else { "false" },
            Taken::new("a block in the ground may crack as it dries", "resistance of cone and bond", house),
        ),
        lubrication: ask.choice(
            "anchors.lubrication",
            said.lubrication,
            Lubrication::Oiled,
            Lubrication::key,
            Taken::new("as most studs come", "preload from torque", house),
        ),
        tool: ask.choice(
            "anchors.tool",
            said.tool,
            Tool::TorqueWrench,
            Tool::key,
            Taken::new("a wrench is on the list of materials", "scatter of the preload", house),
        ),
        coating: ask.choice(
            "anchors.coating",
            said.coating,
            Coating::Zinc,
            Coating::key,
            Taken::new("the usual finish", "corrosion out of doors", house),
        ),
        hole: ask.choice(
            "anchors.hole",
            said.hole,
            Hole::Dry,
            Hole::key,
            Taken::new("drilled in dry weather", "bond and curing time", house),
        ),
        stated: said.clone(),
    }
}
