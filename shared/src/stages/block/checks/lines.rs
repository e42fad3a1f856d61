//! The lines of calculation behind the block's figures.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Notes, Working};
use crate::rules::en_1991_1_1_2002::person;
use crate::rules::en_1991_1_4_2005::gust;
use crate::rules::en_1997_1_2004::{eccentric_base as base, uplift};
use crate::source::Source;
use crate::stages::block::actions::{self, Actions, top_above_base};
use crate::stages::block::outline::{Outline, density};
use crate::units::{
    cubic_metre, gravity, kilogram, kilogram_per_cubic_metre, kilonewton, kilonewton_metre,
    kilopascal, metre, metre_per_second, square_metre,
};

use super::stand;

/// Writes them down.
pub(super) fn workings(brief: &Brief, outline: &Outline, actions: &Actions, notes: &mut Notes) {
    for line in [
        volume(outline),
        mass(outline),
        weight(outline, actions),
        leaning(brief, outline),
        ladder(brief, outline),
    ] {
        notes.working(line);
    }
    for line in [wind(brief), gust_moment(brief, outline)] {
        notes.working(line);
    }
    for line in [
        lift(brief, outline, actions),
        eccentricity(actions),
        pressure(outline, actions),
        tipping(outline, actions),
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
    .with("L", metre::get(outline.length), Unit::Metre)
    .with("W", metre::get(outline.width), Unit::Metre)
    .with("D", metre::get(outline.depth), Unit::Metre)
    .with("u", metre::get(outline.upstand), Unit::Metre)
    .gives("V", cubic_metre::get(outline.volume()), Unit::CubicMetre)
}

fn mass(outline: &Outline) -> Working {
    let source = Source::common_practice("2300 to 2400 kg to the cubic metre");
    Working::new("block.mass", "Mass of the block", "m = ρ V", source)
        .with(
            "ρ",
            kilogram_per_cubic_metre::get(density()),
            Unit::KilogramPerCubicMetre,
        )
        .with("V", cubic_metre::get(outline.volume()), Unit::CubicMetre)
        .gives("m", kilogram::get(outline.mass()), Unit::Kilogram)
}

fn weight(outline: &Outline, actions: &Actions) -> Working {
    let source = Source::derived("weight over area");
    Working::new(
        "block.resting_pressure",
        "Pressure under the base when nobody touches the pier",
        "q₀ = N / (L W)",
        source,
    )
    .with("N", kilonewton::get(actions.weight), Unit::Kilonewton)
    .with("L", metre::get(outline.length), Unit::Metre)
    .with("W", metre::get(outline.width), Unit::Metre)
    .gives(
        "q₀",
        kilonewton::get(actions.weight) / square_metre::get(outline.plan()),
        Unit::Kilopascal,
    )
}

fn leaning(brief: &Brief, outline: &Outline) -> Working {
    let (push, arm) = (
        person::leaning(),
        top_above_base(brief, outline) + brief.load.centre_above_pier.value,
    );
    Working::new(
        "block.leaning_moment",
        "Moment of a person who leans on the telescope",
        "M = H h",
        person::SOURCE,
    )
    .with("H", kilonewton::get(push), Unit::Kilonewton)
    .with("h", metre::get(arm), Unit::Metre)
    .gives(
        "M",
        kilonewton_metre::get(push * arm),
        Unit::KilonewtonMetre,
    )
}

fn ladder(brief: &Brief, outline: &Outline) -> Working {
    let title = "Moment of a ladder with a person on it, hung from the column";
    let column = brief.pier.outside_diameter.value;
    Working::new(
        "block.ladder_moment",
        title,
        "M = H h + W a, H = W/4, a = D/2 + 0.4 m",
        person::LADDER_SOURCE,
    )
    .with(
        "W",
        kilonewton::get(person::climber() * gravity()),
        Unit::Kilonewton,
    )
    .with("h", metre::get(top_above_base(brief, outline)), Unit::Metre)
    .with("D", metre::get(column), Unit::Metre)
    .gives(
        "M",
        kilonewton_metre::get(actions::ladder(brief, outline).moment),
        Unit::KilonewtonMetre,
    )
}

fn gust_moment(brief: &Brief, outline: &Outline) -> Working {
    let (pier, load, top) = (&brief.pier, &brief.load, top_above_base(brief, outline));
    let formula = "M = q (1.3 A (h + z) + 1.2 H D (h − H/2))";
    Working::new(
        "block.gust_moment",
        "Moment of the storm's gust on telescope and column",
        formula,
        gust::SOURCE,
    )
    .with(
        "q",
        kilopascal::get(gust::pressure(brief.site.design_gust.value)),
        Unit::Kilopascal,
    )
    .with(
        "A",
        square_metre::get(load.wind_area.value),
        Unit::SquareMetre,
    )
    .with("h", metre::get(top), Unit::Metre)
    .with("z", metre::get(load.centre_above_pier.value), Unit::Metre)
    .with("H", metre::get(pier.height.value), Unit::Metre)
    .with("D", metre::get(pier.outside_diameter.value), Unit::Metre)
    .gives(
        "M",
        kilonewton_metre::get(actions::wind(brief, outline).moment),
        Unit::KilonewtonMetre,
    )
}

fn wind(brief: &Brief) -> Working {
    let speed = brief.site.design_gust.value;
    Working::new(
        "block.gust_pressure",
        "Pressure of the storm's gust",
        "q = ½ ρ v², ρ = 1.25 kg/m³",
        gust::SOURCE,
    )
    .with("v", metre_per_second::get(speed), Unit::MetrePerSecond)
    .gives(
        "q",
        kilopascal::get(gust::pressure(speed)),
        Unit::Kilopascal,
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
    .with("L", metre::get(outline.length), Unit::Metre)
    .with("W", metre::get(outline.width), Unit::Metre)
    .with("D", metre::get(outline.depth), Unit::Metre)
    .with("z_w", water, Unit::Metre)
    .gives("U", kilonewton::get(actions.lift), Unit::Kilonewton)
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
    .with("N", kilonewton::get(actions.weight), Unit::Kilonewton)
    .with("e", eccentricity, Unit::Metre)
    .with("B", side, Unit::Metre)
    .with("L", metre::get(outline.longer()), Unit::Metre)
    .gives(
        "q",
        stand::largest_pressure(outline, actions).map_or(f64::NAN, kilopascal::get),
        Unit::Kilopascal,
    )
}

fn tipping(outline: &Outline, actions: &Actions) -> Working {
    Working::new(
        "block.righting_moment",
        "Moment that holds the block upright",
        "M_stb = (0.9 N − U) B / 2",
        stand::EQU_SOURCE,
    )
    .with("N", kilonewton::get(actions.weight), Unit::Kilonewton)
    .with("U", kilonewton::get(actions.lift), Unit::Kilonewton)
    .with("B", metre::get(outline.shorter()), Unit::Metre)
    .gives(
        "M_stb",
        kilonewton_metre::get(stand::righting(outline, actions)),
        Unit::KilonewtonMetre,
    )
}
