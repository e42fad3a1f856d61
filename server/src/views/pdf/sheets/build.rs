//! The sheets to build from: pit, block, pier, studs.

use stillground::notes::{Stage, When};
use stillground::stages::{
    anchors::figures as studs, block::figures as block, excavation::figures as pit,
    ground::figures as ground, pier::figures as column,
};

use super::figures::figures;
use super::steps::steps;
use super::{cautions_of, check_lines, draw};
use crate::views::pdf::Sheet;
use crate::views::pdf::flow::Flow;

/// Site and pit.
pub fn site(flow: &mut Flow, sheet: &Sheet<'_>) {
    draw(flow, sheet, "pit");
    flow.heading("The ground");
    if let Some(why) = &sheet.design.ground.ask_an_engineer {
        flow.paragraph(why);
    }
    figures(
        flow,
        sheet,
        &[
            ground::SHEAR_MODULUS,
            ground::SHEAR_WAVE_SPEED,
            ground::UNIT_WEIGHT,
            ground::PRESUMED_BEARING,
            ground::FROST_DEPTH,
            ground::GROUNDWATER,
            ground::SAFE_SLOPE,
        ],
    );
    if let Some(source) = &sheet.brief.site.stated.climate_source {
        flow.small(&format!(
            "Where the figures of frost, temperature and gust come from: {source}"
        ));
    }
    flow.heading("The pit");
    figures(
        flow,
        sheet,
        &[
            pit::LENGTH,
            pit::WIDTH,
            pit::DEPTH,
            pit::VOLUME,
            pit::SPOIL_VOLUME,
            pit::BARROW_LOADS,
            pit::SKIPS,
            pit::DIGGING,
        ],
    );
    steps(flow, sheet, &[When::Digging]);
    check_lines(flow, sheet, Stage::Excavation);
    cautions_of(flow, sheet, &[When::Digging]);
}

/// Block and formwork.
pub fn block(flow: &mut Flow, sheet: &Sheet<'_>) {
    draw(flow, sheet, "section");
    flow.heading("The block");
    figures(
        flow,
        sheet,
        &[
            block::LENGTH,
            block::WIDTH,
            block::DEPTH,
            block::UPSTAND,
            block::VOLUME,
            block::ORDER_VOLUME,
            block::CONCRETE,
            block::MASS,
            block::BEARING_PRESSURE,
            block::DRILL_AFTER,
            block::LOAD_AFTER,
        ],
    );
    steps(flow, sheet, &[When::Pouring]);
    check_lines(flow, sheet, Stage::Block);
    cautions_of(flow, sheet, &[When::Pouring]);
}

/// Pier and plate.
pub fn pier(flow: &mut Flow, sheet: &Sheet<'_>) {
    draw(flow, sheet, "column");
    flow.heading("The pier");
    figures(
        flow,
        sheet,
        &[
            column::HEIGHT,
            column::OUTSIDE_DIAMETER,
            column::WALL,
            column::FILL,
            column::STEEL,
            column::PLATE_SIDE,
            column::PLATE_THICKNESS,
            column::MASS,
            column::BASE_JOINT,
            column::TOP_STIFFNESS,
        ],
    );
    steps(flow, sheet, &[When::Lifting, When::Wiring]);
    check_lines(flow, sheet, Stage::Pier);
    cautions_of(flow, sheet, &[When::Lifting, When::Wiring]);
}

/// Studs and holes.
pub fn studs(flow: &mut Flow, sheet: &Sheet<'_>) {
    let anchors = &sheet.design.anchors;
    draw(flow, sheet, "studs");
    flow.heading("Studs, holes and resin");
    figures(
        flow,
        sheet,
        &[
            studs::STUDS,
            studs::THREAD,
            studs::STRENGTH_CLASS,
            studs::LENGTH,
            studs::EMBEDMENT,
            studs::HOLE_DIAMETER,
            studs::HOLE_DEPTH,
            studs::RESIN,
            studs::TORQUE_STATED,
            studs::TORQUE_MAXIMUM,
            studs::PRELOAD,
        ],
    );
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
    check_lines(flow, sheet, Stage::Anchors);
    cautions_of(
        flow,
        sheet,
        &[When::Drilling, When::Bonding, When::Tightening],
    );
}
