//! What can be done to a pier that stands, each worked out on the piers that the measurements allow.

mod column;
mod floor;
mod ground;
mod load;

use crate::brief::resolve;
use crate::cast::Cast;
use crate::changing::changed;
use crate::field::Path;
use crate::halfspace::{Before, Shelf, SmallShelf};
use crate::path;
use crate::proof::Planned;
use crate::proof::changed::Changed;
use crate::proof::fitted::Remedy;
use crate::proof::moments::thirds;
use crate::proof::pier::Standing;
use crate::proof::sampler::{Draw, Sampled};
use crate::site_plan::commissioning::Commissioning;
use crate::stages::ground_stiffness;
use crate::stages::motion::improvement::{NewField, NewValue};
use crate::stages::motion::rig::Axis;
use crate::units::{metre, newton_metre_per_radian};

/// Least gain in stiffness that is worth the work.
const WORTH: f64 = 1.03;
/// Least gain in tilt that is.
const WORTH_TILT: f64 = 1.1;
/// Of the piers that fit, every so many is worked out again.
const EVERY: usize = 5;
/// Shapes of block that are looked at: the one that stands and the one with a collar, each with its sides held so far.
const SHAPES: usize = 16;

/// What a remedy does.
enum After {
    /// The pier swings otherwise.
    Swing(Box<(Standing, Changed)>),
    /// A person tilts it otherwise: as it stands and afterwards, arcsec.
    Tilt([f64; 2]),
}

/// A remedy before it is worked out.
struct Offered {
    id: &'static str,
    says: String,
    fields: Vec<NewField>,
    not_in_plan: Option<&'static str>,
    after: After,
}

/// What all of them start from.
struct Situation<'a> {
    planned: &'a Planned<'a>,
    said: &'a Commissioning,
    standing: &'a Standing,
    draws: Vec<&'a Draw>,
    /// What was solved for the pier as it stands, before the shelf that was brought.
    shelf: Before<'a>,
}

impl Situation<'_> {
    /// The same pier with something done to it that needs no other column and no other block.
    fn same(&self, changed: Changed) -> After {
        After::Swing(Box::new((self.standing.clone(), changed)))
    }

    /// The pier that comes of the plan with these answers: by its stages, so that whoever makes the change finds it again.
    /// Ground, side contact, base joint, column and mount are as far from the new plan's as they were found from the old.
    fn remade(&self, fields: &[NewField]) -> Option<After> {
        let planned = self.planned;
        let plan = changed(planned.plan, planned.plan, fields)?;
        let brief = resolve(&plan).ok()?;
        let cast = Cast::of(&brief);
        let (ground, block, pier) = (&cast.ground.value, &cast.block.value, &cast.pier.value);
        let stiffness = ground_stiffness::stage(&brief, ground, block, &self.shelf).value;
        let mut other = Standing::of(
            &brief,
            self.said,
            ground,
            block,
            &stiffness,
            pier,
            &cast.floor.value,
            &self.shelf,
        )?;
        other.prior = self.standing.prior;
        let joint = newton_metre_per_radian::get(pier.base_joint_stiffness)
            / newton_metre_per_radian::get(planned.pier.base_joint_stiffness);
        let mount = newton_metre_per_radian::get(brief.load.mount_stiffness.value)
            / newton_metre_per_radian::get(planned.brief.load.mount_stiffness.value);
        Some(After::Swing(Box::new((
            other,
            Changed {
                joint,
                mount,
                ..Changed::NOTHING
            },
        ))))
    }

    /// These answers, and the sizes of the block where the plan left them open: it stands, and is as large as it is.
    fn on_this_block(&self, mut fields: Vec<NewField>) -> Vec<NewField> {
        let (said, block) = (&self.planned.plan.block, self.planned.block);
        let sizes = [
            (path!(block.length_m), said.length_m, block.length),
            (path!(block.width_m), said.width_m, block.width),
            (path!(block.depth_m), said.depth_m, block.depth),
        ];
        for (field, said, found) in sizes {
            if said.is_none() && !fields.iter().any(|new| new.field == field) {
                fields.push(number(field, metre::get(found)));
            }
        }
        fields
    }

    /// The middle of the first frequency, of a pier and what is done to it.
    fn hertz(&self, standing: &Standing, changed: &Changed) -> Option<f64> {
        let of =
            |draw: &&Draw| Some(standing.mounted_changed(&draw.at, Axis::X, changed)?.hertz[0]);
        thirds(self.draws.iter().filter_map(of)).map(|found| found[1])
    }

    /// How many times less a push at the telescope turns it afterwards, in the middle.
    fn stiffer(&self, standing: &Standing, changed: &Changed) -> Option<f64> {
        let of = |draw: &&Draw| {
            let before = self
                .standing
                .pushed_changed(&draw.at, Axis::X, &Changed::NOTHING);
            before / standing.pushed_changed(&draw.at, Axis::X, changed)
        };
        thirds(self.draws.iter().map(of)).map(|found| found[1])
    }
}

/// What would help, most first.
pub fn find(
    planned: &Planned,
    said: &Commissioning,
    standing: &Standing,
    sampled: &Sampled,
    shelf: &dyn Shelf,
) -> Vec<Remedy> {
    let inner = SmallShelf::holding(SHAPES);
    for solved in standing.solved() {
        inner.put(&solved.shape, std::sync::Arc::clone(solved));
    }
    let situation = Situation {
        planned,
        said,
        standing,
        draws: sampled.posterior.iter().step_by(EVERY).collect(),
        shelf: inner.before(shelf),
    };
    let Some(from) = situation.hertz(standing, &Changed::NOTHING) else {
        return Vec::new();
    };
    let mut found: Vec<(f64, Remedy)> = [
        column::offered(&situation),
        ground::offered(&situation),
        load::offered(&situation),
        floor::offered(&situation),
    ]
    .into_iter()
    .flatten()
    .filter_map(|offered| worked_out(&situation, from, offered))
    .collect();
    found.sort_by(|a, b| b.0.total_cmp(&a.0));
    found.into_iter().map(|(_, remedy)| remedy).collect()
}

/// How much it gains, and the remedy; none where it gains nothing to speak of.
fn worked_out(situation: &Situation, from: f64, offered: Offered) -> Option<(f64, Remedy)> {
    let (to, stiffer, tilt) = match offered.after {
        After::Swing(after) => {
            let (standing, changed) = *after;
            (
                situation.hertz(&standing, &changed)?,
                situation.stiffer(&standing, &changed)?,
                None,
            )
        }
        After::Tilt(tilt) => (from, 1.0, Some(tilt)),
    };
    let gain = match tilt {
        Some([before, after]) => {
            (after > 0.0 && before > WORTH_TILT * after).then(|| before / after)?
        }
        None => (stiffer > WORTH).then_some(stiffer)?,
    };
    Some((
        gain,
        Remedy {
            id: offered.id,
            says: offered.says,
            frequency_from_hz: from,
            frequency_to_hz: to,
            stiffer_ratio: stiffer,
            tilt_from_arcsec: tilt.map(|tilt| tilt[0]),
            tilt_to_arcsec: tilt.map(|tilt| tilt[1]),
            fields: offered.fields,
            not_in_plan: offered.not_in_plan,
        },
    ))
}

fn number(field: Path, value: f64) -> NewField {
    NewField {
        field,
        value: NewValue::Number(value),
    }
}

fn choice(field: Path, key: &str) -> NewField {
    NewField {
        field,
        value: NewValue::Text(key.to_owned()),
    }
}
