//! The changes that are tried.

mod people;

use crate::brief::Brief;
use crate::field::{Answer, Number, Other, Path};
use crate::figure::{Measure, Unit};
use crate::rules::tubes::{self, Tube};
use crate::site_plan::SitePlan;
use crate::site_plan::floor::{FloorKind, Soles};
use crate::site_plan::load::Enclosure;
use crate::site_plan::pier::{Fill, Levelling};
use crate::stages::block::Block;
use crate::stages::motion::improvement::{NewField, NewValue};
use crate::units::{metre, millimetre, newton_metre_per_radian};
use crate::{path, row};

pub(crate) use people::stands_farther_out;

/// How much wider or deeper a block is tried, in steps of 50 mm or 2 in.
const MORE_STEPS: f64 = 4.0;
/// From here on a mount is as good as rigid, N m/rad.
const AS_GOOD_AS_RIGID_N_M_PER_RAD: f64 = 1e8;

/// A changed plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// What is changed, in words.
    pub words: String,
    /// Its fields.
    pub fields: Vec<NewField>,
    /// The plan with them.
    pub plan: SitePlan,
}

impl Change {
    fn new(plan: &SitePlan, words: String) -> Self {
        Self {
            words,
            fields: Vec::new(),
            plan: plan.clone(),
        }
    }

    /// Sets a number.
    fn number<M: Measure>(mut self, row: Number<M>, value: f64) -> Self {
        (row.row.set)(&mut self.plan, Some(value));
        self.with(row.row.path, NewValue::Number(value))
    }

    /// Sets a choice.
    fn choice<T: Answer>(mut self, row: Other<T>, value: T) -> Self {
        let key = value.name().unwrap_or_default().to_owned();
        (row.set)(&mut self.plan, Some(value));
        self.with(row.row.path, NewValue::Text(key))
    }

    fn with(mut self, field: Path, value: NewValue) -> Self {
        self.fields.push(NewField { field, value });
        self
    }
}

/// All that is worth trying in this plan.
pub fn all(plan: &SitePlan, brief: &Brief, built: &Block) -> Vec<Change> {
    let mut changes = column(plan, brief);
    changes.extend(block(plan, brief, built));
    changes.extend(people::people(plan, brief));
    changes.extend(choices(plan, brief));
    changes
}

fn column(plan: &SitePlan, brief: &Brief) -> Vec<Change> {
    let (outside, wall) = (
        millimetre::get(brief.pier.outside_diameter.value),
        millimetre::get(brief.pier.wall.value),
    );
    let say = |value| brief.units.to_measure(value).to_string();
    let mut changes = Vec::new();
    if let Some(tube) =
        tubes::thicker(brief.stock.value, outside, wall).filter(|tube| plan.yard.keeps_tube(tube))
    {
        let words = format!("the column's wall {} → {}", say(wall), say(tube.wall_mm));
        changes.push(with_tube(
            plan,
            brief,
            &Tube {
                outside_mm: outside,
                ..tube
            },
            words,
        ));
    }
    if let Some(tube) =
        tubes::larger(brief.stock.value, outside, wall).filter(|tube| plan.yard.keeps_tube(tube))
    {
        let words = format!(
            "the column {} → {}, wall {}",
            say(outside),
            say(tube.outside_mm),
            say(tube.wall_mm)
        );
        changes.push(with_tube(plan, brief, &tube, words));
    }
    changes
}

fn with_tube(plan: &SitePlan, brief: &Brief, tube: &Tube, words: String) -> Change {
    let mut change = Change::new(plan, words);
    if change.plan.pier.tube.take().is_some() {
        change.fields.push(NewField {
            field: path!(pier.tube),
            value: NewValue::Nothing,
        });
    }
    let change = change
        .number(row!(pier.outside_diameter_mm), tube.outside_mm)
        .number(row!(pier.wall_mm), tube.wall_mm);
    // The base plate keeps its margin round a larger column.
    let more = tube.outside_mm - millimetre::get(brief.pier.outside_diameter.value);
    match plan.pier.plate_side_mm {
        Some(side) if more > 0.0 => change.number(
            row!(pier.plate_side_mm),
            brief.stock.value.side_up_mm(side + more),
        ),
        _ => change,
    }
}

fn block(plan: &SitePlan, brief: &Brief, block: &Block) -> Vec<Change> {
    let [length, width, depth] = [block.length, block.width, block.depth].map(metre::get);
    let say = |value| brief.units.say(value, Unit::Metre);
    let pit = &brief.excavation;
    let sized = |words: String, length: f64, width: f64, depth: f64| {
        let to = plan.block.side_contact_to_m;
        let change = Change::new(plan, words)
            .number(row!(block.length_m), length)
            .number(row!(block.width_m), width)
            .number(row!(block.depth_m), depth);
        // A contact that ended at the base still does.
        if to.is_some_and(|to| (to - metre::get(block.depth)).abs() < 1e-9) {
            change.number(row!(block.side_contact_to_m), depth)
        } else {
            change
        }
    };
    let mut changes = Vec::new();
    let (from, to) = (
        metre::get(block.side_contact_from),
        metre::get(block.side_contact_to),
    );
    if from > 0.0 || to < depth {
        changes.push(
            sized(
                "the block hard against the soil to its full depth".into(),
                length,
                width,
                depth,
            )
            .number(row!(block.side_contact_from_m), 0.0)
            .number(row!(block.side_contact_to_m), depth),
        );
    }
    let stock = brief.stock.value;
    let more = stock.steps_m(MORE_STEPS);
    // An inch is no whole number of millimetres.
    let tidy = |value: f64| {
        let digits = stock.either(1e3, 1e7);
        (value * digits).round() / digits
    };
    let (wider, broader) = (tidy(length + more), tidy(width + more));
    if wider <= metre::get(pit.max_length.value) && broader <= metre::get(pit.max_width.value) {
        changes.push(sized(
            format!(
                "the block {} by {} instead of {} by {}",
                say(wider),
                say(broader),
                say(length),
                say(width)
            ),
            wider,
            broader,
            depth,
        ));
    }
    let deeper = tidy(depth + more);
    if deeper <= metre::get(pit.max_depth.value) {
        changes.push(sized(
            format!("the block {} deep instead of {}", say(deeper), say(depth)),
            length,
            width,
            deeper,
        ));
    }
    changes
}

fn tidy(value: f64) -> f64 {
    (value * 1e3).round() / 1e3
}

/// A mount twice as stiff, unless it is rigid as it is.
fn mount(plan: &SitePlan, brief: &Brief) -> Option<Change> {
    let stiffness = newton_metre_per_radian::get(brief.load.mount_stiffness.value);
    let words = "a mount twice as stiff, on the same pier".to_owned();
    (stiffness < AS_GOOD_AS_RIGID_N_M_PER_RAD).then(|| {
        let change = Change::new(plan, words);
        match plan.load.mount_frequency_hz {
            // Twice as stiff trembles √2 times as fast.
            Some(hertz) => change.number(row!(load.mount_frequency_hz), 2f64.sqrt() * hertz),
            None => change.number(row!(load.mount_stiffness_n_m_per_rad), 2.0 * stiffness),
        }
    })
}

fn choices(plan: &SitePlan, brief: &Brief) -> Vec<Change> {
    let mut changes = Vec::new();
    if brief.pier.levelling.value == Levelling::Nuts {
        changes.push(
            Change::new(
                plan,
                "a bed of grout under the base plate instead of an open gap on nuts".into(),
            )
            .choice(row!(pier.levelling), Levelling::Grout),
        );
    }
    if brief.pier.fill.value == Fill::None {
        changes.push(
            Change::new(plan, "dry sand in the column".into()).choice(row!(pier.fill), Fill::Sand),
        );
    }
    if brief.floor.soles.value == Soles::Hard {
        changes.push(Change::new(plan, "soft soles".into()).choice(row!(floor.soles), Soles::Soft));
    }
    changes.extend(mount(plan, brief));
    if brief.floor.kind.value != FloorKind::Deck {
        changes.push(
            Change::new(
                plan,
                "a deck on posts along the walls instead of feet on the ground beside the block"
                    .into(),
            )
            .choice(row!(floor.kind), FloorKind::Deck),
        );
    }
    if brief.load.enclosure.value == Enclosure::RollOff {
        changes.push(
            Change::new(
                plan,
                "a dome with a slit instead of walls with a roof that rolls away".into(),
            )
            .choice(row!(load.enclosure), Enclosure::Dome),
        );
    }
    if brief.load.enclosure.value == Enclosure::Open {
        changes.push(
            Change::new(
                plan,
                "walls round the telescope, with a roof that rolls away".into(),
            )
            .choice(row!(load.enclosure), Enclosure::RollOff),
        );
    }
    let shaded = tidy(brief.load.thermal_difference_k.value / 2.0);
    changes.push(
        Change::new(
            plan,
            "the column shaded and wrapped, so that its sides differ by half as much".into(),
        )
        .number(row!(load.thermal_difference_k), shaded),
    );
    changes
}
