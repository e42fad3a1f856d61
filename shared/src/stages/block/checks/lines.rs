//! The lines of calculation behind the block's figures.

use crate::brief::Brief;
use crate::figure::{
    CubicMetre, Kilogram, KilogramPerCubicMetre, Kilonewton, KilonewtonMetre, Kilopascal, Metre,
    Unit,
};
use crate::notes::{Line, Notes, Worked, Working};
use crate::rules::en_1991_1_1_2002::concrete;
use crate::rules::en_1997_1_2004::{eccentric_base as base, uplift};
use crate::source::Source;
use crate::stages::block::actions::{Actions, at_base};
use crate::stages::block::outline::Outline;
use crate::stages::loads::{Load, Loads};
use crate::units::{Length, Mass, Volume, kilonewton, kilopascal, metre, square_metre};

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
    notes.workings.extend(lift(brief, outline));
    if let Some(off) = eccentricity(actions) {
        let off = off.noted(notes);
        notes.working(pressure(outline, actions, off));
    }
    notes.working(overturning(outline, actions));
}

fn volume(outline: &Outline) -> Working {
    Line::new(
        "block.volume",
        "Volume of the block",
        "V = L W (D + u)",
        Source::derived("volume of a box"),
    )
    .with("L", outline.length, Metre)
    .with("W", outline.width, Metre)
    .with("D", outline.depth, Metre)
    .with("u", outline.upstand, Metre)
    .gives("V", CubicMetre, |(l, w, d, u)| -> Volume {
        l * w * (d + u)
    })
    .working
}

fn mass(outline: &Outline) -> Working {
    let source = concrete::SOURCE;
    Line::new("block.mass", "Mass of the block", "m = ρ V", source)
        .with("ρ", concrete::density(), KilogramPerCubicMetre)
        .with("V", outline.volume(), CubicMetre)
        .gives("m", Kilogram, |(density, volume)| -> Mass {
            volume * density
        })
        .working
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
        Line::new(
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
        .gives("M", KilonewtonMetre, |(moment, push, depth, upstand, gap)| {
            at_base(moment, push, depth + upstand + gap)
        })
        .working,
    )
}

fn lift(brief: &Brief, outline: &Outline) -> Option<Working> {
    let water = brief.site.groundwater_depth.value?;
    Some(
        Line::new(
            "block.lift",
            "Lift of the groundwater",
            "U = γ_w L W (D − z_w), zero above the water",
            uplift::SOURCE,
        )
        .with("L", outline.length, Metre)
        .with("W", outline.width, Metre)
        .with("D", outline.depth, Metre)
        .with("z_w", water, Metre)
        .gives("U", Kilonewton, |(length, width, depth, water)| {
            uplift::lift(length * width, depth, water)
        })
        .working,
    )
}

fn eccentricity(actions: &Actions) -> Option<Worked<Length>> {
    let worst = actions.worst();
    let _ = base::eccentricity(worst.moment, actions.weight)?;
    Some(
        Line::new(
            "block.eccentricity",
            format!("How far off the centre the force acts: {}", worst.name),
            "e = M / N",
            base::EDGE_SOURCE,
        )
        .with("M", worst.moment, KilonewtonMetre)
        .with("N", actions.weight, Kilonewton)
        .gives("e", Metre, |(moment, weight)| {
            base::eccentricity(moment, weight).unwrap_or(metre::new(f64::NAN))
        }),
    )
}

fn pressure(outline: &Outline, actions: &Actions, eccentricity: Length) -> Working {
    let formula = if eccentricity <= outline.shorter() / 6.0 {
        "q = N / (B L) (1 + 6 e / B)"
    } else {
        "q = 2 N / (3 L (B/2 − e))"
    };
    Line::new(
        "block.bearing_pressure",
        "Largest pressure under the base's edge",
        formula,
        base::EDGE_SOURCE,
    )
    .with("N", actions.weight, Kilonewton)
    .with("e", eccentricity, Metre)
    .with("B", outline.shorter(), Metre)
    .with("L", outline.longer(), Metre)
    .gives("q", Kilopascal, |(weight, eccentricity, along, across)| {
        base::edge_pressure(weight, eccentricity, along, across)
            .unwrap_or(kilopascal::new(f64::NAN))
    })
    .working
}

fn overturning(outline: &Outline, actions: &Actions) -> Working {
    Line::new(
        "block.righting_moment",
        "Moment that holds the block upright",
        "M_stb = (0.9 N − 1.1 U) B / 2",
        stand::EQU_SOURCE,
    )
    .with("N", actions.weight, Kilonewton)
    .with("U", actions.lift, Kilonewton)
    .with("B", outline.shorter(), Metre)
    .gives("M_stb", KilonewtonMetre, |(weight, lift, side)| {
        stand::holding(weight, lift, side)
    })
    .working
}
