//! The sheets to build from: pit, block, pier, studs.

use stillground::figure::Unit;
use stillground::notes::When;
use stillground::units::{
    cubic_metre, day, kilogram, kilonewton, kilonewton_per_cubic_metre, kilopascal, megapascal,
    metre, metre_per_second, millilitre, millimetre, newton_metre, newton_metre_per_radian,
    newton_per_metre,
};

use super::figures::Figures;
use super::steps::steps;
use super::{cautions_of, check_lines, draw};
use crate::drawing::section::words::fill_words;
use crate::views::pdf::Sheet;
use crate::views::pdf::flow::Flow;

/// Site and pit.
pub fn site(flow: &mut Flow, sheet: &Sheet<'_>) {
    let (ground, pit) = (&sheet.design.ground, &sheet.design.excavation);
    draw(flow, sheet, "pit");
    flow.heading("The ground");
    if let Some(why) = &ground.ask_an_engineer {
        flow.paragraph(why);
    }
    Figures::new(sheet.brief.units)
        .spread(
            "Shear modulus at the small strains of a pier",
            ground.shear_modulus.map(|g| g.map(megapascal::get)),
            Unit::Megapascal,
        )
        .spread(
            "Speed of shear waves",
            ground
                .shear_wave_speed
                .map(|v| v.map(metre_per_second::get)),
            Unit::MetrePerSecond,
        )
        .with(
            "Unit weight",
            kilonewton_per_cubic_metre::get(ground.unit_weight),
            Unit::KilonewtonPerCubicMetre,
        )
        .maybe(
            "Net bearing pressure presumed, the least",
            ground.presumed_bearing.map(kilopascal::get),
            Unit::Kilopascal,
            "a ground engineer has to say",
        )
        .with(
            "Depth of frost",
            metre::get(ground.frost_depth),
            Unit::Metre,
        )
        .maybe(
            "Highest groundwater below ground",
            ground.groundwater_depth.map(metre::get),
            Unit::Metre,
            "deep, or not known",
        )
        .with(
            "Slope of the sides that stands",
            ground.safe_slope_deg,
            Unit::Degree,
        )
        .put(flow);
    if let Some(source) = &sheet.brief.site.stated.climate_source {
        flow.small(&format!(
            "Where the figures of frost, temperature and gust come from: {source}"
        ));
    }
    flow.heading("The pit");
    Figures::new(sheet.brief.units)
        .with(
            "Length at ground level, west to east",
            metre::get(pit.length),
            Unit::Metre,
        )
        .with(
            "Width at ground level, south to north",
            metre::get(pit.width),
            Unit::Metre,
        )
        .with("Depth", metre::get(pit.depth), Unit::Metre)
        .with(
            "Soil to dig",
            cubic_metre::get(pit.volume),
            Unit::CubicMetre,
        )
        .with(
            "Spoil when loose",
            cubic_metre::get(pit.spoil_volume),
            Unit::CubicMetre,
        )
        .with("Barrow loads", f64::from(pit.barrow_loads), Unit::Count)
        .with("Skips", f64::from(pit.skips), Unit::Count)
        .with("Time to dig", pit.digging_h, Unit::Hour)
        .put(flow);
    steps(flow, sheet, &[When::Digging]);
    check_lines(flow, sheet, "excavation.");
    cautions_of(flow, sheet, &[When::Digging]);
}

/// Block and formwork.
pub fn block(flow: &mut Flow, sheet: &Sheet<'_>) {
    let block = &sheet.design.block;
    draw(flow, sheet, "section");
    flow.heading("The block");
    Figures::new(sheet.brief.units)
        .with(
            "Length, west to east",
            metre::get(block.length),
            Unit::Metre,
        )
        .with(
            "Width, south to north",
            metre::get(block.width),
            Unit::Metre,
        )
        .with("Base below ground", metre::get(block.depth), Unit::Metre)
        .with("Top above ground", metre::get(block.upstand), Unit::Metre)
        .with(
            "Concrete in place",
            cubic_metre::get(block.volume),
            Unit::CubicMetre,
        )
        .with(
            "Concrete to order",
            cubic_metre::get(block.order_volume),
            Unit::CubicMetre,
        )
        .words("Strength class", sheet.brief.block.concrete.value.key())
        .with("Mass", kilogram::get(block.mass), Unit::Kilogram)
        .with(
            "Largest pressure under the base",
            kilopascal::get(block.bearing_pressure),
            Unit::Kilopascal,
        )
        .with(
            "Holes may be drilled after",
            day::get(block.drill_after),
            Unit::Day,
        )
        .with(
            "Full load may come after",
            day::get(block.load_after),
            Unit::Day,
        )
        .put(flow);
    steps(flow, sheet, &[When::Pouring]);
    check_lines(flow, sheet, "block.");
    cautions_of(flow, sheet, &[When::Pouring]);
}

/// Pier and plate.
pub fn pier(flow: &mut Flow, sheet: &Sheet<'_>) {
    let pier = &sheet.design.pier;
    draw(flow, sheet, "column");
    flow.heading("The pier");
    Figures::new(sheet.brief.units)
        .with(
            "Height with its plates",
            metre::get(pier.height),
            Unit::Metre,
        )
        .with(
            "Outside diameter",
            millimetre::get(pier.outside_diameter),
            Unit::Millimetre,
        )
        .with("Wall", millimetre::get(pier.wall), Unit::Millimetre)
        .words("The column is", fill_words(sheet.brief.pier.fill.value))
        .words("Steel", sheet.brief.pier.steel.value.key())
        .with(
            "Base plate, side",
            millimetre::get(pier.plate_side),
            Unit::Millimetre,
        )
        .with(
            "Base plate, thickness",
            millimetre::get(pier.plate_thickness),
            Unit::Millimetre,
        )
        .with(
            "Mass of column, fill and plates",
            kilogram::get(pier.mass),
            Unit::Kilogram,
        )
        .with(
            "Stiffness of the base joint",
            newton_metre_per_radian::get(pier.base_joint_stiffness) / 1e6,
            Unit::MeganewtonMetrePerRadian,
        )
        .with(
            "Stiffness at the top",
            newton_per_metre::get(pier.top_stiffness) / 1e6,
            Unit::MeganewtonPerMetre,
        )
        .put(flow);
    steps(flow, sheet, &[When::Lifting, When::Wiring]);
    check_lines(flow, sheet, "pier.");
    cautions_of(flow, sheet, &[When::Lifting, When::Wiring]);
}

/// Studs and holes.
pub fn studs(flow: &mut Flow, sheet: &Sheet<'_>) {
    let (anchors, said) = (&sheet.design.anchors, &sheet.brief.anchors);
    draw(flow, sheet, "studs");
    flow.heading("Studs, holes and resin");
    Figures::new(sheet.brief.units)
        .with("Studs", anchors.studs.len() as f64, Unit::Count)
        .words("Thread", said.size.value.key())
        .words("Strength class", said.strength_class.value.key())
        .with(
            "Length of a stud",
            millimetre::get(said.length.value),
            Unit::Millimetre,
        )
        .with(
            "Embedment",
            millimetre::get(anchors.embedment),
            Unit::Millimetre,
        )
        .with(
            "Hole, diameter",
            millimetre::get(anchors.hole_diameter),
            Unit::Millimetre,
        )
        .with(
            "Hole, depth",
            millimetre::get(anchors.hole_depth),
            Unit::Millimetre,
        )
        .with(
            "Resin for all holes, with waste",
            millilitre::get(anchors.resin_volume),
            Unit::Millilitre,
        )
        .maybe(
            "Torque stated",
            said.torque.map(newton_metre::get),
            Unit::NewtonMetre,
            "none stated",
        )
        .maybe(
            "The product's largest torque",
            said.max_torque.map(newton_metre::get),
            Unit::NewtonMetre,
            "not known: ask for it before tightening",
        )
        .spread(
            "Preload of a stud",
            anchors.preload.map(|preload| preload.map(kilonewton::get)),
            Unit::Kilonewton,
        )
        .put(flow);
    if !anchors.governing.is_empty() {
        flow.paragraph(&format!(
            "What would give first: {}.",
            anchors.governing.trim_end_matches('.')
        ));
    }
    draw(flow, sheet, "stud-detail");
    draw(flow, sheet, "torque");
    flow.heading("The torque of “180 kilos”");
    anchors
        .torque
        .lesson
        .says
        .iter()
        .chain([&anchors.torque.lesson.own.says])
        .for_each(|said| flow.paragraph(said));
    steps(
        flow,
        sheet,
        &[When::Drilling, When::Bonding, When::Tightening],
    );
    check_lines(flow, sheet, "anchors.");
    cautions_of(
        flow,
        sheet,
        &[When::Drilling, When::Bonding, When::Tightening],
    );
}
