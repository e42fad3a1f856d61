//! A slab on the ground: over how much of it a weight is spread.

use std::f64::consts::PI;

use crate::brief::Brief;
use crate::figure::{Megapascal, Metre, Millimetre, One, Unit};
use crate::notes::{Notes, Working};
use crate::rules::hogg_1938::plate::{self, QUARTILE_RADII};
use crate::site_plan::floor::FloorKind;
use crate::stages::floor::{Floor, Footprint};
use crate::stages::ground::Ground;
use crate::units::{Length, megapascal, metre};

/// Modulus of elasticity of a floor slab's concrete, MPa.
const SLAB_MODULUS_MPA: f64 = 30_000.0;
/// Points on each of the two rings; with six a ring's second moments are the same in every direction.
const RING_POINTS: usize = 6;
/// A slab that bridges the block bears this far beyond its sides.
const BRIDGE_BEARING_M: f64 = 0.1;

/// Characteristic length of the slab on this ground; none for other floors, or where the ground's stiffness is unknown.
pub fn spread(brief: &Brief, ground: &Ground, notes: &mut Notes) -> Option<Length> {
    if brief.floor.kind.value != FloorKind::Slab {
        return None;
    }
    let modulus = ground.shear_modulus?.typical;
    let thickness = brief.floor.slab_thickness.value;
    let stiffness = plate::slab_stiffness_n_m(megapascal::new(SLAB_MODULUS_MPA), thickness);
    let length = plate::characteristic_length(stiffness, modulus, ground.poisson_ratio);
    notes.working(
        Working::new(
            "floor.slab_spread",
            "Distance over which the slab spreads a weight",
            "l = (E h³ (1 − ν) / (12 (1 − 0.2²) G))^(1/3)",
            plate::SOURCE,
        )
        .with("E", SLAB_MODULUS_MPA, Unit::Megapascal)
        .with("h", thickness, Millimetre)
        .with("ν", ground.poisson_ratio, One)
        .with("G", modulus, Megapascal)
        .gives("l", length, Metre),
    );
    Some(length)
}

/// Two rings of points round the place that stand for the slab's pressure: half of the weight at each quartile's radius.
/// Near an edge of the slab the rings shrink, so that they stay on it and their centre stays the place.
pub fn footprints(floor: &Floor, x: f64, y: f64) -> Option<Vec<Footprint>> {
    let [bx, by] = floor.block_half_m;
    if x.abs() <= bx && y.abs() <= by {
        return floor.passes_over_block().then(|| bridged(floor, x, y));
    }
    let spread = metre::get(floor.slab_spread?);
    let factor = (to_edge(floor, x, y) / (QUARTILE_RADII[1] * spread)).min(1.0);
    let share_ratio = 0.5 / RING_POINTS as f64;
    let ring = |(k, radius): (usize, f64)| {
        (0..RING_POINTS).map(move |i| {
            // The second ring is turned by half a step against the first.
            let angle = 2.0 * PI * (i as f64 + 0.5 * k as f64) / RING_POINTS as f64;
            Footprint {
                x_m: x + radius * angle.cos(),
                y_m: y + radius * angle.sin(),
                share_ratio,
            }
        })
    };
    Some(
        QUARTILE_RADII
            .map(|radius| radius * spread * factor)
            .into_iter()
            .enumerate()
            .flat_map(ring)
            .collect(),
    )
}

/// Distance from a place on the slab to its nearest edge, the hole over the block among them.
fn to_edge(floor: &Floor, x: f64, y: f64) -> f64 {
    let outer =
        (0.5 * metre::get(floor.length) - x.abs()).min(0.5 * metre::get(floor.width) - y.abs());
    let [bx, by] = floor.block_half_m;
    let hole = (x.abs() - bx).max(0.0).hypot((y.abs() - by).max(0.0));
    outer.min(hole).max(0.0)
}

/// A weight over the block on a slab that bridges it: the four corners beyond the block, by the lever rule.
fn bridged(floor: &Floor, x: f64, y: f64) -> Vec<Footprint> {
    let [hx, hy] = floor.block_half_m.map(|half| half + BRIDGE_BEARING_M);
    [(-1.0, -1.0), (1.0, -1.0), (-1.0, 1.0), (1.0, 1.0)]
        .into_iter()
        .map(|(i, j)| Footprint {
            x_m: i * hx,
            y_m: j * hy,
            share_ratio: 0.25 * (1.0 + i * x / hx) * (1.0 + j * y / hy),
        })
        .collect()
}
