//! Figures of what lies below: the ground, the pit and the block.

use stillground::design::Design;
use stillground::figure::Unit;
use stillground::units::{
    cubic_metre, day, kilogram, kilonewton_per_cubic_metre, kilopascal, megapascal, metre,
    metre_per_second, newton_metre_per_radian,
};

use super::{Row, row, spread};

pub(super) fn ground(design: &Design) -> Vec<Row> {
    let ground = &design.ground;
    let mut rows = Vec::new();
    rows.extend(spread(
        "Shear modulus of the ground",
        ground.shear_modulus,
        megapascal::get,
        Unit::Megapascal,
        "ground.shear_modulus",
    ));
    rows.extend(spread(
        "Speed of shear waves",
        ground.shear_wave_speed,
        metre_per_second::get,
        Unit::MetrePerSecond,
        "ground.shear_wave_speed",
    ));
    rows.push(row(
        "Unit weight",
        kilonewton_per_cubic_metre::get(ground.unit_weight),
        Unit::KilonewtonPerCubicMetre,
        "ground.unit_weight",
    ));
    rows.push(row(
        "Poisson’s ratio",
        ground.poisson_ratio,
        Unit::One,
        "ground.poisson_ratio",
    ));
    let bearing = ground.presumed_bearing.map(kilopascal::get);
    rows.push((
        "Net bearing pressure presumed, the least".into(),
        bearing,
        Unit::Kilopascal,
        "ground.presumed_bearing",
    ));
    rows.push(row(
        "Depth of frost",
        metre::get(ground.frost_depth),
        Unit::Metre,
        "ground.frost_depth",
    ));
    rows
}

pub(super) fn excavation(design: &Design) -> Vec<Row> {
    let pit = &design.excavation;
    vec![
        row(
            "Pit, east to west",
            metre::get(pit.length),
            Unit::Metre,
            "excavation.length",
        ),
        row(
            "Pit, north to south",
            metre::get(pit.width),
            Unit::Metre,
            "excavation.width",
        ),
        row(
            "Pit, depth",
            metre::get(pit.depth),
            Unit::Metre,
            "excavation.depth",
        ),
        row(
            "Ground to dig",
            cubic_metre::get(pit.volume),
            Unit::CubicMetre,
            "excavation.volume",
        ),
        row(
            "Heap of spoil, loosened",
            cubic_metre::get(pit.spoil_volume),
            Unit::CubicMetre,
            "excavation.spoil_volume",
        ),
        row(
            "Spoil at least this far from the edge",
            metre::get(pit.spoil_distance),
            Unit::Metre,
            "excavation.spoil_distance",
        ),
        row(
            "Barrow loads",
            f64::from(pit.barrow_loads),
            Unit::Count,
            "excavation.barrow_loads",
        ),
        row(
            "Hours of digging",
            pit.digging_h,
            Unit::Hour,
            "excavation.digging",
        ),
    ]
}

pub(super) fn footing(design: &Design) -> Vec<Row> {
    let block = &design.block;
    let stiffness = &design.ground_stiffness;
    vec![
        row(
            "Block, east to west",
            metre::get(block.length),
            Unit::Metre,
            "block.length",
        ),
        row(
            "Block, north to south",
            metre::get(block.width),
            Unit::Metre,
            "block.width",
        ),
        row(
            "Block, depth of its base",
            metre::get(block.depth),
            Unit::Metre,
            "block.depth",
        ),
        row(
            "Concrete in place",
            cubic_metre::get(block.volume),
            Unit::CubicMetre,
            "block.volume",
        ),
        row(
            "Concrete to order",
            cubic_metre::get(block.order_volume),
            Unit::CubicMetre,
            "block.order_volume",
        ),
        row(
            "Mass of the block",
            kilogram::get(block.mass),
            Unit::Kilogram,
            "block.mass",
        ),
        row(
            "Largest pressure under it",
            kilopascal::get(block.bearing_pressure),
            Unit::Kilopascal,
            "block.bearing_pressure",
        ),
        row(
            "Days before drilling",
            day::get(block.drill_after),
            Unit::Day,
            "block.drill_after",
        ),
        row(
            "Days before full load",
            day::get(block.load_after),
            Unit::Day,
            "block.load_after",
        ),
        (
            "Ground against rocking, east–west".into(),
            stiffness
                .typical
                .rocking_y
                .map(|k| newton_metre_per_radian::get(k) / 1e6),
            Unit::MeganewtonMetrePerRadian,
            "ground_stiffness.rocking_y",
        ),
        (
            "Ground against rocking, north–south".into(),
            stiffness
                .typical
                .rocking_x
                .map(|k| newton_metre_per_radian::get(k) / 1e6),
            Unit::MeganewtonMetrePerRadian,
            "ground_stiffness.rocking_x",
        ),
    ]
}
