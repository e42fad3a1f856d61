//! What is filled in by hand, and what hangs on the observatory's wall.

use stillground::figure::{Celsius, Metre, Millimetre};

use crate::lettering::Face;
use crate::views::pdf::Sheet;
use crate::views::pdf::flow::{BODY, Flow};
use crate::views::pdf::table::{Cell, table};

/// Record of the work.
pub fn record(flow: &mut Flow, sheet: &Sheet<'_>) {
    flow.paragraph(
        "Fill in as you go, and keep the sheet with the plan. Where what you find differs from the plan, stop and ask before going on.",
    );
    let rows: Vec<Vec<Cell>> = planned(sheet)
        .into_iter()
        .map(|(what, plan)| {
            vec![
                what.into(),
                plan.into(),
                Cell::Blank,
                Cell::Blank,
                Cell::Blank,
            ]
        })
        .collect();
    table(
        flow,
        &[
            ("What", 1.7),
            ("Plan", 1.1),
            ("Found", 1.2),
            ("Date", 0.8),
            ("By", 0.8),
        ],
        &rows,
    );
    torque(flow, sheet);
}

fn planned(sheet: &Sheet<'_>) -> Vec<(&'static str, String)> {
    let (units, design) = (sheet.brief.units, sheet.design);
    let water = design.ground.groundwater_depth.map_or_else(
        || "none expected".to_owned(),
        |depth| units.say(depth, Metre),
    );
    vec![
        (
            "Soil met at the bottom",
            sheet.brief.site.soil.value.key().replace('_', " "),
        ),
        (
            "Depth of the pit",
            units.say(design.excavation.depth, Metre),
        ),
        ("Water in the pit, depth to it", water),
        (
            "Concrete: class on the delivery note",
            sheet.brief.block.concrete.value.key().to_owned(),
        ),
        ("Concrete: slump", "as ordered".to_owned()),
        (
            "Air temperature while pouring",
            units.say(sheet.brief.work.temperature_c.value, Celsius),
        ),
        (
            "Holes: depth, each measured",
            units.say(design.anchors.hole_depth, Millimetre),
        ),
        ("Resin: product, batch, use by", "write down".to_owned()),
        (
            "Temperature of the concrete when bonding",
            units.say(sheet.brief.anchors.concrete_temperature_c.value, Celsius),
        ),
        ("Plate level, east–west", "bubble in the middle".to_owned()),
        (
            "Plate level, south–north",
            "bubble in the middle".to_owned(),
        ),
        ("Mark of north on the plate", "true north".to_owned()),
    ]
}

fn torque(flow: &mut Flow, sheet: &Sheet<'_>) {
    if sheet.design.anchors.studs.is_empty() {
        return;
    }
    flow.heading("Torque at each nut");
    flow.lead(&sheet.design.anchors.torque.says);
    let rows: Vec<Vec<Cell>> = (1..=sheet.design.anchors.studs.len())
        .map(|stud| {
            vec![
                stud.to_string().into(),
                Cell::Blank,
                Cell::Blank,
                Cell::Blank,
                Cell::Blank,
                Cell::Blank,
            ]
        })
        .collect();
    table(
        flow,
        &[
            ("Stud", 0.4),
            ("First pass", 1.0),
            ("Second pass", 1.0),
            ("Full", 1.0),
            ("After a day", 1.0),
            ("After a week", 1.0),
        ],
        &rows,
    );
}

/// Wall card: the same sentences as on the page's card, and what keeps the pier free.
pub fn card(flow: &mut Flow, sheet: &Sheet<'_>) {
    let mut lines = sheet.design.motion.where_to_stand.clone();
    if lines.is_empty() {
        lines.push(
            "Nothing can be said yet of where to stand: the ground has to be known first."
                .to_owned(),
        );
    }
    lines.push(
        "Nothing may bridge the gap round the pier: no mat, no cable pulled tight, no leaf."
            .to_owned(),
    );
    lines.push("Check the nuts a week after they were tightened, and every spring.".to_owned());
    for line in lines {
        flow.styled(Face::Text, BODY * 1.7, &line);
    }
    let fitted = sheet.design.fitted.as_ref();
    let measured = fitted
        .filter(|fitted| !fitted.agreement.is_empty())
        .and_then(|fitted| fitted.motion.as_ref());
    if let Some(motion) = measured {
        flow.heading("As this pier was measured");
        for line in &motion.where_to_stand {
            flow.styled(Face::Text, BODY * 1.7, line);
        }
    }
}
