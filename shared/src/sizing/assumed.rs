//! What sizing chose, written down as assumed, with why.

use crate::brief::{Brief, Given};
use crate::field::{NumberField, Path};
use crate::figure::Unit;
use crate::notes::{AssumedValue, Assumption};
use crate::site_plan::SitePlan;
use crate::source::Source;
use crate::units::millimetre;
use crate::{path, row};

/// Why something was chosen.
pub(super) struct Because {
    why: &'static str,
    source: Source,
}

/// Everything is enough.
pub(super) const ENOUGH: Because = Because {
    why: "block and column sized together: the least to dig, and on it the lightest column, that may be built and keeps the star within the limit",
    source: Source::judgement(
        "least digging, then the lightest column, with which every check of building holds and the star stays within the limit",
    ),
};
/// It may be built and is not still.
pub(super) const MAY_BE_BUILT: Because = Because {
    why: "the lightest column that may be built on this block: no size that fits keeps the star within the limit",
    source: Source::judgement(
        "the lightest column with which every check of building holds, where none keeps the star within the limit",
    ),
};

/// Writes down as assumed what was chosen and not said.
pub(super) fn mark(said: &SitePlan, brief: &mut Brief, made: &SitePlan, because: &Because) {
    for row in [
        row!(block.length_m).row,
        row!(block.width_m).row,
        row!(block.depth_m).row,
    ] {
        if let (Some(value), None) = ((row.get)(made), (row.get)(said)) {
            let effect = "stiffness, mass, and concrete to order";
            brief.assumptions.push(number(row, value, effect, because));
        }
    }
    let tube_said = said.pier.tube.is_some();
    let column = &mut brief.pier;
    let lengths = [
        (
            row!(pier.outside_diameter_mm).row,
            &mut column.outside_diameter,
            "stiffness of the column, and how far warmth on one side bends it",
        ),
        (
            row!(pier.wall_mm).row,
            &mut column.wall,
            "stiffness of the column",
        ),
    ];
    for (row, length, effect) in lengths {
        if (row.get)(said).is_none() && !tube_said {
            *length = Given::assumed(length.value);
            let value = millimetre::get(length.value);
            brief.assumptions.push(number(row, value, effect, because));
        }
    }
    if said.anchors.size != made.anchors.size {
        let key = brief.anchors.size.value.key();
        brief.anchors.size = Given::assumed(brief.anchors.size.value);
        brief.assumptions.push(choice(
            path!(anchors.size),
            key,
            "stiffness and resistance",
            because,
        ));
    }
    if let (Some(thickness), None) = (made.pier.plate_thickness_mm, said.pier.plate_thickness_mm) {
        let plate = &mut brief.pier.plate_thickness;
        *plate = Given::assumed(plate.value);
        let row = row!(pier.plate_thickness_mm).row;
        let effect = "stiffness and resistance of the joint";
        brief
            .assumptions
            .push(number(row, thickness, effect, because));
    }
    let column = &mut brief.pier;
    if said.pier.fill.is_none() {
        let key = column.fill.value.key();
        column.fill = Given::assumed(column.fill.value);
        brief
            .assumptions
            .push(choice(path!(pier.fill), key, "mass and damping", because));
    }
    if said.pier.levelling.is_none() {
        let key = column.levelling.value.key();
        column.levelling = Given::assumed(column.levelling.value);
        brief.assumptions.push(choice(
            path!(pier.levelling),
            key,
            "the joint's stiffness",
            because,
        ));
    }
}

fn number(row: NumberField, value: f64, effect: &str, because: &Because) -> Assumption {
    assumed(
        row.path,
        AssumedValue::Number(value),
        row.unit,
        effect,
        because,
    )
}

fn choice(field: Path, key: &str, effect: &str, because: &Because) -> Assumption {
    let key = AssumedValue::Text(key.to_owned());
    assumed(field, key, Unit::One, effect, because)
}

fn assumed(
    field: Path,
    value: AssumedValue,
    unit: Unit,
    effect: &str,
    because: &Because,
) -> Assumption {
    Assumption {
        field,
        value,
        unit,
        why: because.why.to_owned(),
        effect: effect.to_owned(),
        source: because.source,
    }
}
