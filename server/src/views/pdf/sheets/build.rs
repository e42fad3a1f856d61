//! The sheets to build from: pit, block, pier, studs.

use stillground::figure::{
    Count, CubicMetre, Day, Degree, Kilogram, KilonewtonPerCubicMetre, Kilopascal,
    MeganewtonMetrePerRadian, MeganewtonPerMetre, Metre, Millilitre, Millimetre, Unit,
};
use stillground::notes::When;
use stillground::units::{
    kilonewton, kilopascal, megapascal, metre, metre_per_second, newton_metre,
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
        .with("Unit weight", ground.unit_weight, KilonewtonPerCubicMetre)
        .maybe(
            "Net bearing pressure presumed, the least",
            ground.presumed_bearing.map(kilopascal::get),
            Unit::Kilopascal,
            "a ground engineer has to say",
        )
        .with("Depth of frost", ground.frost_depth, Metre)
        .maybe(
            "Highest groundwater below ground",
            ground.groundwater_depth.map(metre::get),
            Unit::Metre,
            "deep, or not known",
        )
        .with(
            "Slope of the sides that stands",
            ground.safe_slope_deg,
            Degree,
        )
        .put(flow);
    if let Some(source) = &sheet.brief.site.stated.climate_source {
        flow.small(&format!(
            "Where the figures of frost, temperature and gust come from: {source}"
        ));
    }
    flow.heading("The pit");
    Figures::new(sheet.brief.units)
        .with("Length at ground level, west to east", pit.length, Metre)
        .with("Width at ground level, south to north", pit.width, Metre)
        .with("Depth", pit.depth, Metre)
        .with("Soil to dig", pit.volume, CubicMetre)
        .with("Spoil when loose", pit.spoil_volume, CubicMetre)
        .with("Barrow loads", f64::from(pit.barrow_loads), Count)
        .with("Skips", f64::from(pit.skips), Count)
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
        .with("Length, west to east", block.length, Metre)
        .with("Width, south to north", block.width, Metre)
        .with("Base below ground", block.depth, Metre)
        .with("Top above ground", block.upstand, Metre)
        .with("Concrete in place", block.volume, CubicMetre)
        .with("Concrete to order", block.order_volume, CubicMetre)
        .words("Strength class", sheet.brief.block.concrete.value.key())
        .with("Mass", block.mass, Kilogram)
        .with(
            "Largest pressure under the base",
            block.bearing_pressure,
            Kilopascal,
        )
        .with("Holes may be drilled after", block.drill_after, Day)
        .with("Full load may come after", block.load_after, Day)
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
        .with("Height with its plates", pier.height, Metre)
        .with("Outside diameter", pier.outside_diameter, Millimetre)
        .with("Wall", pier.wall, Millimetre)
        .words("The column is", fill_words(sheet.brief.pier.fill.value))
        .words("Steel", sheet.brief.pier.steel.value.key())
        .with("Base plate, side", pier.plate_side, Millimetre)
        .with("Base plate, thickness", pier.plate_thickness, Millimetre)
        .with("Mass of column, fill and plates", pier.mass, Kilogram)
        .with(
            "Stiffness of the base joint",
            pier.base_joint_stiffness,
            MeganewtonMetrePerRadian,
        )
        .with(
            "Stiffness at the top",
            pier.top_stiffness,
            MeganewtonPerMetre,
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
        .with("Studs", anchors.studs.len() as f64, Count)
        .words("Thread", said.size.value.key())
        .words("Strength class", said.strength_class.value.key())
        .with("Length of a stud", said.length.value, Millimetre)
        .with("Embedment", anchors.embedment, Millimetre)
        .with("Hole, diameter", anchors.hole_diameter, Millimetre)
        .with("Hole, depth", anchors.hole_depth, Millimetre)
        .with(
            "Resin for all holes, with waste",
            anchors.resin_volume,
            Millilitre,
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
