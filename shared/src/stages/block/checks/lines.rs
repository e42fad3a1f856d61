//! The lines of calculation behind the block's figures.

use crate::brief::Brief;
use crate::figure::{
    CubicMetre, Kilogram, KilogramPerCubicMetre, Kilonewton, KilonewtonMetre, Metre, Unit,
};
use crate::notes::{Notes, Working};
use crate::rules::en_1997_1_2004::{eccentric_base as base, uplift};
use crate::source::Source;
use crate::stages::block::actions::{Actions, at_base, foot_above_base};
use crate::stages::block::outline::{Outline, density};
use crate::stages::loads::{Load, Loads};
use crate::units::{kilonewton, kilonewton_metre, kilopascal, metre, square_metre};

use super::stand;

/// Writes them down.
pub(super) fn workings(
    brief: &Brief,
    outline: &Outline,
    actions: &Actions,
    loads: &Loads,
    notes: &mut Notes,
) {
    for line in [volume(outline), mass(outline), weight(outline, actions)] {
        notes.working(line);
    }
    for (load, id) in [
        ("leaning", "block.leaning_moment"),
        ("ladder", "block.ladder_moment"),
        ("gust", "block.gust_moment"),
        ("knock", "block.knock_moment"),
    ] {
        if let Some(line) = moment(brief, outline, loads.of(load), id) {
            notes.working(line);
        }
    }
    for line in [
        lift(brief, outline, actions),
        eccentricity(actions),
        pressure(outline, actions),
        overturning(outline, actions),
    ] {
        notes.working(line);
    }
}

fn volume(outline: &Outline) -> Working {
    Working::new(
        "block.volume",
        "Volume of the block",
        "V = L W (D + u)",
        Source::derived("volume of a box"),
    )
    .with("L", outline.length, Metre)
    .with("W", outline.width, Metre)
    .with("D", outline.depth, Metre)
    .with("u", outline.upstand, Metre)
    .gives("V", outline.volume(), CubicMetre)
}

fn mass(outline: &Outline) -> Working {
    let source = Source::common_practice("2300 to 2400 kg to the cubic metre");
    Working::new("block.mass", "Mass of the block", "m = ρ V", source)
        .with("ρ", density(), KilogramPerCubicMetre)
        .with("V", outline.volume(), CubicMetre)
        .gives("m", outline.mass(), Kilogram)
}

fn weight(outline: &Outline, actions: &Actions) -> Working {
    let source = Source::derived("weight over area");
    Working::new(
        "block.resting_pressure",
        "Pressure under the base when nobody touches the pier",
        "q₀ = N / (L W)",
        source,
    )
    .with("N", actions.weight, Kilonewton)
    .with("L", outline.length, Metre)
    .with("W", outline.width, Metre)
    .gives(
        "q₀",
        kilonewton::get(actions.weight) / square_metre::get(outline.plan()),
        Unit::Kilopascal,
    )
}

/// A load at the column's foot, carried down to the base.
fn moment(
    brief: &Brief,
    outline: &Outline,
    load: Option<&Load>,
    id: &'static str,
) -> Option<Working> {
    let load = load?;
    Some(
        Working::new(
            id,
            format!("Moment about the base's centre: {}", load.title),
            "M = M_f + H (D + u + g)",
            Source::derived("statics: the moment at the column's foot, and its push on the lever down to the base"),
        )
        .with("M_f", load.moment, KilonewtonMetre)
        .with("H", load.shear, Kilonewton)
        .with("D", outline.depth, Metre)
        .with("u", outline.upstand, Metre)
        .with("g", brief.pier.gap.value, Metre)
        .gives(
            "M", at_base(load, foot_above_base(brief, outline)), KilonewtonMetre,
        ),
    )
}

fn lift(brief: &Brief, outline: &Outline, actions: &Actions) -> Working {
    let water = brief
        .site
        .groundwater_depth
        .value
        .map_or(f64::NAN, metre::get);
    Working::new(
        "block.lift",
        "Lift of the groundwater",
        "U = γ_w L W (D − z_w), nought above the water",
        uplift::SOURCE,
    )
    .with("L", outline.length, Metre)
    .with("W", outline.width, Metre)
    .with("D", outline.depth, Metre)
    .with("z_w", water, Unit::Metre)
    .gives("U", actions.lift, Kilonewton)
}

fn eccentricity(actions: &Actions) -> Working {
    let worst = actions.worst();
    let (moment, weight) = (
        kilonewton_metre::get(worst.moment),
        kilonewton::get(actions.weight),
    );
    Working::new(
        "block.eccentricity",
        format!("How far off the centre the force acts: {}", worst.name),
        "e = M / N",
        base::EDGE_SOURCE,
    )
    .with("M", moment, Unit::KilonewtonMetre)
    .with("N", weight, Unit::Kilonewton)
    .gives("e", moment / weight, Unit::Metre)
}

fn pressure(outline: &Outline, actions: &Actions) -> Working {
    let side = metre::get(outline.shorter());
    let eccentricity =
        kilonewton_metre::get(actions.worst().moment) / kilonewton::get(actions.weight);
    let formula = if eccentricity <= side / 6.0 {
        "q = N / (B L) (1 + 6 e / B)"
    } else {
        "q = 2 N / (3 L (B/2 − e))"
    };
    Working::new(
        "block.bearing_pressure",
        "Largest pressure under the base's edge",
        formula,
        base::EDGE_SOURCE,
    )
    .with("N", actions.weight, Kilonewton)
    .with("e", eccentricity, Unit::Metre)
    .with("B", side, Unit::Metre)
    .with("L", outline.longer(), Metre)
    .gives(
        "q",
        stand::largest_pressure(outline, actions).map_or(f64::NAN, kilopascal::get),
        Unit::Kilopascal,
    )
}

fn overturning(outline: &Outline, actions: &Actions) -> Working {
    Working::new(
        "block.righting_moment",
        "Moment that holds the block upright",
        "M_stb = (0.9 N − 1.1 U) B / 2",
        stand::EQU_SOURCE,
    )
    .with("N", actions.weight, Kilonewton)
    .with("U", actions.lift, Kilonewton)
    .with("B", outline.shorter(), Metre)
    .gives(
        "M_stb",
        stand::stabilising_moment(outline, actions),
        KilonewtonMetre,
    )
}
