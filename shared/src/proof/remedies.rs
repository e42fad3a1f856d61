//! What can be done to a pier that stands, each worked out on the piers that the measurements allow.

use crate::brief::Given;
use crate::proof::Planned;
use crate::proof::changed::Changed;
use crate::proof::fitted::Remedy;
use crate::proof::pier::Standing;
use crate::proof::sampler::Sampled;
use crate::proof::verdict::thirds;
use crate::site_plan::pier::{Fill, Levelling};
use crate::stages::motion::rig::Axis;
use crate::stages::pier;
use crate::units::{millimetre, newton_metre_per_radian};

/// Least gain in frequency that is worth the work.
const WORTH: f64 = 1.01;

/// A name, what to do, the answer of the plan and its new value, and the pier afterwards.
type Offered = (
    &'static str,
    String,
    Option<&'static str>,
    Option<String>,
    Option<(Standing, Changed)>,
);

/// What would help, most first.
#[must_use]
pub fn find(planned: &Planned, standing: &Standing, sampled: &Sampled) -> Vec<Remedy> {
    let brief = planned.brief;
    let rebuilt = |change: &dyn Fn(&mut crate::brief::Brief)| {
        let mut brief = brief.clone();
        change(&mut brief);
        let found = pier::stage(&brief, planned.block, planned.loads).value;
        let joint = newton_metre_per_radian::get(found.base_joint_stiffness)
            / newton_metre_per_radian::get(planned.pier.base_joint_stiffness);
        let other = standing.rebuilt(&brief, planned, &found)?;
        Some((
            other,
            Changed {
                joint,
                ..Changed::NOTHING
            },
        ))
    };
    let same = |changed: Changed| Some((standing.clone(), changed));
    let diameter = millimetre::get(brief.pier.outside_diameter.value);
    let wider = (1.3 * diameter / 5.0).round() * 5.0;
    let mut offered: Vec<Offered> = Vec::new();
    if brief.pier.fill.value == Fill::None {
        offered.push((
            "fill_concrete",
            "Fill the column with concrete.".to_owned(),
            Some("pier.fill"),
            Some("concrete".to_owned()),
            rebuilt(&|brief| brief.pier.fill = Given::said(Fill::Concrete)),
        ));
    }
    if brief.pier.levelling.value == Levelling::Nuts {
        offered.push((
            "grout",
            "Pack grout under the base plate, so that it no longer stands on nuts alone."
                .to_owned(),
            Some("pier.levelling"),
            Some("grout".to_owned()),
            rebuilt(&|brief| brief.pier.levelling = Given::said(Levelling::Grout)),
        ));
    }
    offered.push((
        "wider_tube",
        format!(
            "Put a tube of {} mm in the place of this one.",
            crate::figure::significant(wider, 4)
        ),
        Some("pier.outside_diameter_mm"),
        Some(crate::figure::significant(wider, 4)),
        rebuilt(&|brief| brief.pier.outside_diameter = Given::said(millimetre::new(wider))),
    ));
    offered.push((
        "backfill",
        "Dig out the loose ground beside the block and compact it in layers, or cast a collar round the block.".to_owned(),
        None,
        None,
        same(Changed { held: true, ..Changed::NOTHING }),
    ));
    offered.push((
        "stiffer_mount",
        "Make the mount and its fixing twice as stiff: tighten its bolts, leave out half-columns and tall plates.".to_owned(),
        None,
        None,
        same(Changed { mount: 2.0, ..Changed::NOTHING }),
    ));
    offered.push((
        "weight_down",
        "Bring the weights closer to the pier's top: a third less height.".to_owned(),
        None,
        None,
        same(Changed {
            centre: 0.67,
            ..Changed::NOTHING
        }),
    ));
    let few: Vec<_> = sampled.posterior.iter().step_by(5).collect();
    let middle = |standing: &Standing, changed: &Changed| {
        let at = |draw: &&crate::proof::sampler::Draw| {
            Some(standing.mounted_changed(&draw.at, Axis::X, changed)?.hertz[0])
        };
        thirds(few.iter().filter_map(at)).map(|found| found[1])
    };
    let Some(from) = middle(standing, &Changed::NOTHING) else {
        return Vec::new();
    };
    let mut found: Vec<Remedy> = offered
        .into_iter()
        .filter_map(|(id, says, field, value, other)| {
            let (other, changed) = other?;
            let to = middle(&other, &changed)?;
            (to > WORTH * from).then(|| Remedy {
                id,
                says,
                frequency_from_hz: from,
                frequency_to_hz: to,
                stiffer_ratio: (to / from).powi(2),
                field,
                value,
            })
        })
        .collect();
    found.sort_by(|a, b| b.frequency_to_hz.total_cmp(&a.frequency_to_hz));
    found
}
